"""The block "house style" of club.yaml: how much a notice says, how it ends, and how members call sets of surfaces."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Final

from pydantic_core import PydanticCustomError

from swardcast.errors import Problem
from swardcast.reading.schema import Model, Text, block_of, one_of, what_is_wrong
from swardcast.reading.selection import select_surfaces
from swardcast.reading.yaml_text import Located
from swardcast.records.club import Group, Surface, Tone

__all__ = ["HouseStyleBlock", "groups_from"]

_BLOCK: Final = "house style"
_GROUPS: Final = "groups"


class HouseStyleBlock(Model):
    """How the club's notices speak."""

    tone: Annotated[Tone, one_of(Tone)] = Tone.FULL
    sign_off: Text = ""
    groups: dict[str, Text] = {}


def groups_from(
    document: Located, *, file: str, surfaces: Mapping[str, Surface], problems: list[Problem]
) -> tuple[Group, ...]:
    """Read the names of sets of surfaces.

    Assumes that `club_from` tells what is wrong with the fields.

    Args:
        document: the YAML of club.yaml.
        file: its name for problems.
        surfaces: all surfaces by id.
        problems: where problems are added.

    Returns:
        Names and sets, in the order of the file; those with a problem are left out.
    """
    block = block_of(HouseStyleBlock, document, _BLOCK)
    told = block.groups if block is not None else {}
    groups: list[Group] = []
    for key, phrase in told.items():
        name = " ".join(key.split())
        try:
            group = Group(name=name, surfaces=frozenset(select_surfaces(phrase, surfaces)))
            odd = _odd(group, groups, surfaces)
        except PydanticCustomError as error:
            odd = what_is_wrong(error)
        if odd is None:
            groups.append(group)
            continue
        found, expected, hint = odd
        line = document.line((_BLOCK, _GROUPS, key))
        field = f"{_BLOCK}.{_GROUPS}.{key}"
        problems.append(Problem(file=file, line=line, field=field, found=found, expected=expected, hint=hint))
    return tuple(groups)


def _odd(group: Group, earlier: list[Group], surfaces: Mapping[str, Surface]) -> tuple[str, str, str] | None:
    """What was found, what was expected and a hint, where a name or a set is taken already."""
    if not group.name:
        return "nothing as the name of a set", "a name that members use, such as 'the front nine'", ""
    for other in earlier:
        if _bare(other.name) == _bare(group.name):
            return f"the name {group.name!r} a second time", "a name of its own for each set", ""
        if other.surfaces == group.surfaces:
            return f"the same surfaces as {other.name!r}", "each set of surfaces once", "Members need one name for it."
    try:
        meant = frozenset(select_surfaces(group.name, surfaces))
    except PydanticCustomError:
        return None  # a name that means nothing yet
    if meant != group.surfaces:
        return f"the name {group.name!r}, which already means other surfaces", "a name that means this set only", ""
    return None


def _bare(name: str) -> str:
    return name.lower().removeprefix("the ")
