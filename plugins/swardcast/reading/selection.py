"""Surfaces as a greenkeeper names them: "greens 1-9 and 14", "all tees", "the practice green"."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import lru_cache
from typing import Final

from swardcast.errors import nearest
from swardcast.reading.schema import wrong
from swardcast.records.club import Surface, SurfaceKind

__all__ = ["means_many", "name_in_a_selection", "select_surfaces"]

_KINDS: Final = {word: kind for kind in SurfaceKind for word in (kind.value, kind.plural)}
_RANGE: Final = re.compile(
    r"^(?:(?P<kind>[a-z ]+?)\s+)?(?P<first>[0-9]{1,12})(?:\s*(?:-|–|to)\s*(?P<last>[0-9]{1,12}))?$"
)
_WHOLE: Final = {"all surfaces", "whole course", "course", "everything"}


def select_surfaces(text: object, surfaces: Mapping[str, Surface]) -> tuple[str, ...]:
    """Find the surfaces that a phrase names, in the order it names them.

    Args:
        text: the phrase; parts are parted by commas or "and", and a bare number belongs to the kind before it.
        surfaces: all surfaces by id.

    Returns:
        Ids, each once.

    Raises:
        PydanticCustomError: when a part names no surface of this course.
    """
    if isinstance(text, list):
        text = ", ".join(map(str, text))
    found = _chosen(text, _Course(surfaces)) if isinstance(text, str) else ()
    if not found:
        raise wrong(text, "surfaces, such as 'greens 1-9', 'all tees' or 'green-7'")
    return found


def name_in_a_selection(name: str) -> str:
    """Give a surface's name as phrases are compared with it: in small letters, without "the" before it.

    Args:
        name: the name as typed.

    Returns:
        The name.
    """
    return name.lower().removeprefix("the ")


def means_many(name: str, kind: SurfaceKind, count: int) -> bool:
    """Tell whether a name is understood as a kind of surface, or as the whole course, and so means other surfaces.

    Args:
        name: a name as `name_in_a_selection` gives it.
        kind: the kind of the surface that has it.
        count: how many surfaces of that kind the course has, 1 or more.

    Returns:
        True for "greens", "all tees", "course" and the like; not for "practice ground" of one that is called so, which
        goes before the kind, and not for "bunkers" where that is a single surface.
    """
    meant = _KINDS.get(name.removeprefix("all "))
    return name in _WHOLE or (meant is not None and (meant is not kind or (count > 1 and name != kind.value)))


@dataclass(frozen=True, slots=True, eq=False)
class _Course:
    """Surfaces that are the same as themselves alone, so that a phrase can be remembered with them."""

    surfaces: Mapping[str, Surface]

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Course) and other.surfaces is self.surfaces

    def __hash__(self) -> int:
        return id(self.surfaces)


@lru_cache(maxsize=256)  # a log of years names the same surfaces over and over; judgement
def _chosen(text: str, course: _Course) -> tuple[str, ...]:
    found: dict[str, None] = {}
    kind: SurfaceKind | None = None
    for part in _parts(text):
        kind, ids = _one_part(part, kind, course.surfaces)
        found.update(dict.fromkeys(ids))
    return tuple(found)


def _parts(text: str) -> Iterable[str]:
    return [part for part in re.split(r"\s*,\s*(?:and\s+)?|\s+and\s+", text.strip().lower()) if part]


def _one_part(
    part: str, kind: SurfaceKind | None, surfaces: Mapping[str, Surface]
) -> tuple[SurfaceKind | None, list[str]]:
    bare = part.removeprefix("the ")
    named = [name for name, surface in surfaces.items() if bare in (name, name_in_a_selection(surface.name))]
    if named:
        return kind, named
    if bare in _WHOLE or part in _WHOLE:
        return kind, list(surfaces)
    whole_kind = _KINDS.get(bare.removeprefix("all "))
    if whole_kind is not None:
        return whole_kind, _of_kind(whole_kind, surfaces, part)
    match = _RANGE.fullmatch(bare)
    if match is None:
        raise _unknown(part, surfaces)
    chosen = _KINDS.get(match["kind"]) if match["kind"] else kind
    if chosen is None:
        raise _unknown(part, surfaces)
    first, last = int(match["first"]), int(match["last"] or match["first"])
    if last < first:
        raise wrong(part, f"a range that goes up, such as '{chosen.plural} {last}-{first}'")
    return chosen, _in_range(chosen, first, last, surfaces, part)


def _of_kind(kind: SurfaceKind, surfaces: Mapping[str, Surface], part: str) -> list[str]:
    """All of a kind; "greens" means those of the holes, as members say it, when the holes have any."""
    ids = [name for name, surface in surfaces.items() if surface.kind is kind]
    if not ids:
        raise wrong(part, f"surfaces that stand in surfaces.yaml; it has no {kind.plural}")
    on_holes = [name for name in ids if surfaces[name].hole is not None]
    return on_holes or ids


def _in_range(kind: SurfaceKind, first: int, last: int, surfaces: Mapping[str, Surface], part: str) -> list[str]:
    """Surfaces on a run of holes; a short hole without a fairway in its middle is no mistake, a hole beyond is."""
    by_hole: dict[int, list[str]] = {}
    for name, surface in surfaces.items():
        if surface.kind is kind and surface.hole is not None:
            by_hole.setdefault(surface.hole, []).append(name)
    for end in (first, last):
        if not by_hole or not min(by_hole) <= end <= max(by_hole) or (first == last and end not in by_hole):
            known = f"holes {min(by_hole)} to {max(by_hole)}" if by_hole else "none"
            expected = f"{kind.plural} that stand in surfaces.yaml ({known}); there is no {kind.value} {end}"
            raise wrong(part, expected)
    return [name for hole in range(first, last + 1) for name in by_hole.get(hole, ())]


def _unknown(part: str, surfaces: Mapping[str, Surface]) -> Exception:
    expected = "surfaces of surfaces.yaml, such as 'greens 1-9', 'all tees' or 'green-7'"
    match = _RANGE.fullmatch(part)
    word = match["kind"] if match else None
    near = get_close_matches(word, _KINDS, n=1, cutoff=0.7) if word and word not in _KINDS else []
    if near:
        return wrong(part, expected, f"Did you mean {part.replace(str(word), near[0], 1)!r}?")
    known = [*surfaces, *(surface.name for surface in surfaces.values()), *_KINDS]
    return wrong(part, expected, nearest(part, known))
