"""The plan of the holes: how play stands on each, and what is not simply open there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from swardcast.language.voice import Voice, slug_of
from swardcast.notices.play import play_in_words, tees_played_elsewhere
from swardcast.notices.words import kind_in_words
from swardcast.outlook.states import SurfaceOutlook
from swardcast.records.club import SurfaceKind
from swardcast.records.plan import Play

__all__ = ["WORST_FIRST", "HoleMark", "HolesAlike", "hole_marks", "holes_alike", "shapes_of"]

WORST_FIRST: Final = (Play.CLOSED, Play.TEMPORARY_GREEN, Play.NOT_KNOWN, Play.OPEN_WITH_CARE, Play.OPEN)


@dataclass(frozen=True, slots=True, kw_only=True)
class HoleMark:
    """A hole in the plan of the holes.

    Args:
        hole: its number.
        play: the worst state of play on it, in words.
        play_key: the same as a name for styles.
        what: what is not simply open there, or "".
        is_part_closed: whether something is closed there though the hole itself is in play: a tee, a bunker.
    """

    hole: int
    play: str
    play_key: str
    what: str
    is_part_closed: bool

    @property
    def words(self) -> str:
        """How it stands there: what is not simply open, or else play."""
        return self.what or self.play


@dataclass(frozen=True, slots=True, kw_only=True)
class HolesAlike:
    """Holes of which the same is said.

    Args:
        holes: their numbers, in order.
        first: the mark of the first of them.
    """

    holes: tuple[int, ...]
    first: HoleMark


def holes_alike(marks: Iterable[HoleMark]) -> tuple[HolesAlike, ...]:
    """Put holes together of which the same is said.

    Args:
        marks: the holes in order.

    Returns:
        Sets of holes, by the first of each.
    """
    sets: dict[str, list[HoleMark]] = {}
    for mark in marks:
        sets.setdefault(mark.words, []).append(mark)
    return tuple(HolesAlike(holes=tuple(one.hole for one in alike), first=alike[0]) for alike in sets.values())


def shapes_of(marks: Sequence[HoleMark]) -> tuple[str, ...]:
    """Name the signs that the plan of the holes needs.

    Args:
        marks: the holes in order.

    Returns:
        Keys of play, each once.
    """
    closed = [slug_of(Play.CLOSED)] if any(mark.is_part_closed for mark in marks) else []
    return tuple(dict.fromkeys([*(mark.play_key for mark in marks), *closed]))


def hole_marks(surfaces: Iterable[SurfaceOutlook], voice: Voice) -> Iterator[HoleMark]:
    """Mark each hole of the course with the worst state of play on it.

    Args:
        surfaces: every surface.
        voice: the language and the day of the reader.

    Yields:
        A mark for each hole, in order.
    """
    by_hole: dict[int, list[SurfaceOutlook]] = {}
    every = list(surfaces)
    elsewhere = tees_played_elsewhere(every)
    for surface in every:
        if surface.surface.hole is not None:
            by_hole.setdefault(surface.surface.hole, []).append(surface)
    for hole, there in sorted(by_hole.items()):
        play = _play_of_hole(there)
        told = [surface for surface in there if surface.play not in (Play.OPEN, Play.NOT_KNOWN)]
        states = [_state_there(one, voice, is_elsewhere=one.surface.id in elsewhere) for one in told]
        yield HoleMark(
            hole=hole,
            play=play_in_words(play, voice),
            play_key=slug_of(play),
            what=voice.joined(states),
            is_part_closed=play is not Play.CLOSED and any(surface.play is Play.CLOSED for surface in there),
        )


def _play_of_hole(there: Sequence[SurfaceOutlook]) -> Play:
    """The green decides; a closed tee or bunker leaves the hole in play, and asks for care on an open one."""
    greens = [surface.play for surface in there if surface.surface.kind is SurfaceKind.GREEN]
    rest = [Play.OPEN_WITH_CARE for surface in there if surface.play not in (Play.OPEN, Play.NOT_KNOWN)]
    not_known = [Play.NOT_KNOWN for surface in there if surface.play is Play.NOT_KNOWN]
    return min([Play.OPEN, *rest, *(greens or not_known)], key=WORST_FIRST.index)


def _state_there(surface: SurfaceOutlook, voice: Voice, *, is_elsewhere: bool) -> str:
    if is_elsewhere:
        return voice.say("hole-tee-closed")
    if surface.play is Play.TEMPORARY_GREEN:
        return voice.say("hole-plays-to-temporary-green")
    there = surface.surface
    what = kind_in_words(there.kind, 1, voice) if there.is_numbered else there.name
    return voice.say("hole-state", what=what, play=play_in_words(surface.play, voice))
