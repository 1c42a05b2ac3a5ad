"""How surfaces play, in words."""

from __future__ import annotations

from collections.abc import Sequence

from swardcast.language.voice import Voice, slug_of
from swardcast.notices.words import holes_in_words, places_in_words
from swardcast.records.club import Surface, SurfaceKind
from swardcast.records.plan import Play

__all__ = ["play_clause", "play_in_words"]


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


def play_clause(play: Play, surfaces: Sequence[Surface], voice: Voice) -> str:
    """Say how play stands on some surfaces: "greens 1 to 6 are closed", "hole 12 plays to a temporary green".

    Args:
        play: how play stands.
        surfaces: at least one surface.
        voice: the language.

    Returns:
        A clause without a capital or a full stop.
    """
    holes = sorted({surface.hole for surface in surfaces if surface.kind is SurfaceKind.GREEN and surface.hole})
    if play is Play.TEMPORARY_GREEN and len(holes) == len(surfaces):
        return voice.say("plays-holes-to-temporary-greens", holes=holes_in_words(holes, voice), count=len(holes))
    return voice.say(f"plays-{slug_of(play)}", places=places_in_words(surfaces, voice), count=len(surfaces))
