"""How surfaces play, in words."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence

from swardcast.language.voice import Voice, slug_of
from swardcast.notices.words import holes_in_words, places_in_brief, places_in_words
from swardcast.outlook.play import OPEN
from swardcast.outlook.states import SurfaceOutlook
from swardcast.records.club import Surface, SurfaceKind
from swardcast.records.plan import Play

__all__ = [
    "from_other_markers",
    "holes_out_of_play",
    "other_markers",
    "play_clause",
    "play_clauses",
    "play_in_words",
    "tees_played_elsewhere",
]


def play_in_words(play: Play, voice: Voice, count: int = 1) -> str:
    """Say how play stands, for one surface or several: "on temporary greens".

    Args:
        play: how play stands.
        voice: the language.
        count: how many surfaces it is about.

    Returns:
        A few words without a capital.
    """
    return voice.say(f"play-{slug_of(play)}", count=count)


def holes_out_of_play(said: Iterable[tuple[Surface, Play | None]]) -> frozenset[int]:
    """Find the holes that nobody may play by the last word on them: their green or their fairway is closed.

    Args:
        said: surfaces, each with the last word on its play, or None where there is none.

    Returns:
        Their numbers; none of a hole that has another green.
    """
    every = list(said)
    closed = {(place.kind, place.hole) for place, play in every if play is Play.CLOSED}
    left = {place.hole for place, play in every if place.kind is SurfaceKind.GREEN and play is not Play.CLOSED}
    return frozenset(
        hole
        for kind, hole in closed
        if hole is not None and (kind is SurfaceKind.FAIRWAY or (kind is SurfaceKind.GREEN and hole not in left))
    )


def tees_played_elsewhere(surfaces: Iterable[SurfaceOutlook]) -> frozenset[str]:
    """Find the closed tees of holes that are in play: such a hole is played from other markers.

    Args:
        surfaces: every surface.

    Returns:
        Ids of those tees; none of a hole whose green or fairway is closed, since nobody may play it at all.
    """
    every = list(surfaces)
    in_play = {
        one.surface.hole
        for one in every
        if one.surface.kind is SurfaceKind.GREEN and one.play in (*OPEN, Play.TEMPORARY_GREEN)
    }
    out = holes_out_of_play((one.surface, one.last_play) for one in every)
    return frozenset(
        one.surface.id
        for one in every
        if one.play is Play.CLOSED and one.surface.hole in in_play and other_markers([one.surface], out)
    )


def other_markers(closed: Iterable[Surface], out_of_play: Collection[int]) -> int:
    """Count the holes that are played from other markers while some surfaces are closed.

    Only a tee that is named by its hole alone counts: of a tee with a name of its own, others may be the usual one.

    Args:
        closed: the surfaces.
        out_of_play: holes that nobody may play.

    Returns:
        How many; 0 where that cannot be said of all of them.
    """
    places = list(closed)
    if not all(one.kind is SurfaceKind.TEE and one.is_numbered and one.hole not in out_of_play for one in places):
        return 0
    return len({one.hole for one in places})


def from_other_markers(tees: Sequence[Surface], voice: Voice) -> str:
    """Say of tees that are closed how their holes are played: "hole 5 is played from other markers".

    Args:
        tees: at least one tee that is named by its hole.
        voice: the language.

    Returns:
        A clause without a capital or a full stop.
    """
    holes = sorted({tee.hole for tee in tees if tee.hole})
    return voice.say("plays-from-other-markers", holes=holes_in_words(holes, voice), count=len(holes))


def play_clause(play: Play, surfaces: Sequence[Surface], voice: Voice, *, briefly: bool = False) -> str:
    """Say how play stands on some surfaces: "greens 1 to 6 are closed", "hole 12 plays to a temporary green".

    Args:
        play: how play stands.
        surfaces: at least one surface.
        voice: the language.
        briefly: whether places with long names are counted where there are several.

    Returns:
        A clause without a capital or a full stop.
    """
    holes = sorted({surface.hole for surface in surfaces if surface.kind is SurfaceKind.GREEN and surface.hole})
    if play is Play.TEMPORARY_GREEN and len(holes) == len(surfaces):
        return voice.say("plays-holes-to-temporary-greens", holes=holes_in_words(holes, voice), count=len(holes))
    places = (places_in_brief if briefly else places_in_words)(surfaces, voice)
    return voice.say(f"plays-{slug_of(play)}", places=places, count=len(surfaces))


def play_clauses(play: Mapping[str, Play], surfaces: Mapping[str, Surface], voice: Voice) -> list[str]:
    """Say how play stands on some surfaces, those that play alike together.

    Args:
        play: how play stands, by id of the surface.
        surfaces: the club's surfaces, by id.
        voice: the language.

    Returns:
        Clauses without a capital or a full stop.
    """
    by_play: dict[Play, list[Surface]] = {}
    for name, state in play.items():
        by_play.setdefault(state, []).append(surfaces[name])
    return [play_clause(state, places, voice) for state, places in by_play.items()]
