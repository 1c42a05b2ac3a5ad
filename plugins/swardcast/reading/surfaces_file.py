"""surfaces.yaml -> the surfaces of a course."""

from __future__ import annotations

import re
from collections.abc import Container, Iterator, Mapping, Sequence
from typing import Annotated, Any, Final

from pydantic import BeforeValidator, field_validator

from swardcast.errors import Problem
from swardcast.quantities import QuantityError, parse_area_m2
from swardcast.reading.schema import Area, Model, Text, one_of, validated, within, wrong, wrong_name
from swardcast.reading.selection import means_many, name_in_a_selection
from swardcast.reading.yaml_text import Located, Path, field_of
from swardcast.records.club import Grass, Surface, SurfaceKind

__all__ = ["identifier", "surfaces_from"]

_ID: Final = re.compile(r"^[a-z0-9]+(?:-[a-z0-9]+)*$")
_HOLE: Final = re.compile(r"0?[1-9]|[12][0-9]|3[0-6]")
"""The number of a hole: two courses of 18."""
_LONGEST_ID: Final = 60
"""Letters: an address that holds it still fits on a line; a file's name may have 255 bytes. Judgement."""
_DEVICES: Final = {"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))}


def identifier(value: object) -> str:
    """Read an id: it becomes part of addresses and the name of a folder, also where folders know no capitals.

    So it has small letters, digits and hyphens only, is not long, and is no name that Windows keeps for devices
    (Microsoft, "Naming Files, Paths, and Namespaces"; from memory).

    Args:
        value: the id as written.

    Returns:
        The id.

    Raises:
        PydanticCustomError: when it is none.
    """
    if not _ID.fullmatch(str(value)):
        raise wrong(value, "a short name in small letters, digits and hyphens, such as 'practice-green'")
    if len(str(value)) > _LONGEST_ID:
        raise wrong(value, f"a short name of at most {_LONGEST_ID} letters; this one has {len(str(value))}")
    if str(value) in _DEVICES:
        raise wrong(value, "another name: Windows keeps this one for a device, so that no folder can have it")
    return str(value)


_GrassWord = Annotated[Grass, one_of(Grass)]
_AnArea = Annotated[Area, within(1, 200_000, "an area from 1 m2 to 20 ha")]


class _Hole(Model):
    area: _AnArea | None = None
    grass: _GrassWord | None = None


def _hole(value: object) -> Any:
    if isinstance(value, dict):
        return value
    try:
        parse_area_m2(value)
    except QuantityError as error:
        raise wrong(error.found, error.expected, error.hint) from error
    return {"area": value}


class _Named(Model):
    id: Annotated[str, BeforeValidator(identifier)]
    name: Text
    hole: Annotated[int, within(1, 36, "a hole from 1 to 36")] | None = None
    area: _AnArea | None = None
    grass: _GrassWord | None = None


class _Group(Model):
    grass: _GrassWord | None = None
    holes: dict[str, Annotated[_Hole, BeforeValidator(_hole)]] = {}
    named: list[_Named] = []

    @field_validator("holes", mode="before")
    @classmethod
    def _holes_by_number(cls, value: object) -> object:
        for name in value if isinstance(value, dict) else ():
            if not _HOLE.fullmatch(name):
                raise wrong_name((name,), "the number of a hole, such as '7: 480 m2'")
        return value


class _Surfaces(Model):
    greens: _Group = _Group()
    tees: _Group = _Group()
    approaches: _Group = _Group()
    fairways: _Group = _Group()
    roughs: _Group = _Group()
    bunkers: _Group = _Group()
    practice_grounds: _Group = _Group()


def surfaces_from(document: Located, *, file: str, problems: list[Problem]) -> dict[str, Surface] | None:
    """Read the surfaces file.

    Args:
        document: the YAML of surfaces.yaml.
        file: its name for problems.
        problems: where problems are added.

    Returns:
        Surfaces by id, or None when something is wrong.
    """
    told = validated(_Surfaces, document, file=file, problems=problems)
    if told is None:
        return None
    surfaces: dict[str, Surface] = {}
    called: dict[str, str] = {}
    groups = {kind: [*_surfaces_of(kind, getattr(told, kind.plural.replace(" ", "_")))] for kind in SurfaceKind}
    kinds = {surface.id: kind for kind, group in groups.items() for surface, _ in group}
    for kind, group in groups.items():
        for surface, path in group:
            place = (kind.plural, *path)
            line = document.line(place)
            fault = _called_twice(surface, surfaces, called, kinds)
            if fault is not None:
                found, expected = fault
                problems.append(Problem(file=file, line=line, field=field_of(place), found=found, expected=expected))
            key = surface.id if surface.id not in surfaces else f"{surface.id} of line {line}"
            surfaces[key] = surface  # so that nobody who names either of the two is blamed
            called.setdefault(name_in_a_selection(surface.name), surface.id)
        problems += _without_grass(kind, group, document, file)
    if not surfaces:
        problems.append(
            Problem(
                file=file,
                line=1,
                found="no surface at all",
                expected="greens, tees, fairways or bunkers with their holes",
            )
        )
    return surfaces or None


def _called_twice(
    surface: Surface, before: Container[str], called: Mapping[str, str], kinds: Mapping[str, SurfaceKind]
) -> tuple[str, str] | None:
    """What was found and expected where a surface is called as another is, so that words would mean both.

    `before` has the ids above it, `called` who has a name there, `kinds` every id of the file.
    """
    if surface.id in before:
        return f"{surface.id!r} a second time", "an id of its own for each surface"
    name = name_in_a_selection(surface.name)
    if name in called:
        return f"the name {surface.name!r}, which {called[name]} has already", "a name of its own for each surface"
    is_of_another = name in kinds and name != surface.id
    if is_of_another or means_many(name, surface.kind, [*kinds.values()].count(surface.kind)):
        return f"the name {surface.name!r}, which means other surfaces", "a name that only this one has"
    return None


def _without_grass(
    kind: SurfaceKind, group: Sequence[tuple[Surface, Path]], document: Located, file: str
) -> Iterator[Problem]:
    """Surfaces of turf whose grass nobody tells; once for all of a kind."""
    if kind is SurfaceKind.BUNKER:
        return
    lacking = [path for surface, path in group if surface.grass is None]
    expected = f"one of: {', '.join(g.value for g in Grass)}"
    for path in [()] if len(lacking) > 1 else lacking:
        line, field = document.line((kind.plural, *path)), field_of((kind.plural, *path, "grass"))
        found = f"nothing for {len(lacking)} of its {len(group)} surfaces" if len(lacking) > 1 else "nothing"
        yield Problem(file=file, line=line, field=field, found=found, expected=expected)


def _surfaces_of(kind: SurfaceKind, group: _Group) -> Iterator[tuple[Surface, Path]]:
    for number, hole in group.holes.items():
        surface = Surface(
            id=f"{kind.value.replace(' ', '-')}-{int(number)}",
            kind=kind,
            hole=int(number),
            name=f"{kind.value} {int(number)}",
            area_m2=hole.area,
            grass=None if kind is SurfaceKind.BUNKER else hole.grass or group.grass,
        )
        yield surface, ("holes", number)
    for place, named in enumerate(group.named):
        surface = Surface(
            id=named.id,
            kind=kind,
            hole=named.hole,
            name=named.name,
            area_m2=named.area,
            grass=None if kind is SurfaceKind.BUNKER else named.grass or group.grass,
        )
        yield surface, ("named", place)
