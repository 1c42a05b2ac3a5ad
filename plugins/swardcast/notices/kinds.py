"""What each kind of work is, as phrases of the catalogue, and which usual cautions go with it.

To add a kind: its name in records/operations.py, its fields in reading/operations.py, its sums in
records/translate.py where it opens the turf, its phrases as `kind-<name>` in every language's catalogue, its place in
the two tables here, and a scenario in the tests.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from swardcast.language.voice import Voice, slug_of
from swardcast.notices.notice import Sentence
from swardcast.records.club import Surface, SurfaceKind
from swardcast.records.operations import Grooving, Kind, SandInjection, Stripping, Tining
from swardcast.records.plan import Job

__all__ = [
    "MOST_QUESTIONS",
    "cautions_of",
    "closed_row",
    "greens_first",
    "kind_name",
    "most_noticed_first",
    "said_of_kind",
    "surface_of",
]

MOST_QUESTIONS: Final = 5
"""Questions that a kind's phrases may hold."""

_DECIDE_A_ROUND: Final = (SurfaceKind.GREEN, SurfaceKind.TEE, SurfaceKind.FAIRWAY)

_NOTICED: Final[dict[str, tuple[str, ...]]] = {
    "temporary-greens": ("footing", "frost", "ropes"),
    "re-turfing": ("keep-clear", "new-turf", "footing", "ropes"),
    "seeding-bare-ground": ("keep-clear", "footing", "ropes"),
    "fraise-mowing": ("keep-clear", "footing"),
    "drainage-trenching": ("keep-clear", "trench", "footing", "ropes"),
    "bunker-liner": ("keep-clear", "footing", "lifting"),
    "bunker-re-sanding": ("keep-clear", "footing", "dust", "lifting"),
    "bunker-drainage": ("keep-clear", "trench", "footing", "lifting"),
    "bunker-edging": ("keep-clear", "footing"),
    "hollow-tining": ("keep-clear", "footing"),
    "sand-injection": ("keep-clear", "footing", "dust"),
    "deep-tining": ("keep-clear", "footing"),
    "solid-tining": ("keep-clear", "footing"),
    "scarifying": ("keep-clear",),
    "irrigation-work": ("keep-clear", "water-spray", "trench", "footing"),
    "path-work": ("keep-clear", "footing", "ropes"),
    "tree-work": ("tree", "keep-clear", "footing"),
    "winter-protection": ("footing", "frost", "ropes", "lifting"),
    "plant-protection": ("keep-clear", "label"),
    "needle-tining": ("keep-clear",),
    "verticutting": ("keep-clear",),
    "topdressing": ("keep-clear", "dust", "footing"),
    "overseeding": ("keep-clear",),
    "granular-feed": ("keep-clear", "label"),
    "liquid-feed": ("keep-clear", "label"),
    "wetting-agent": ("keep-clear", "label"),
    "change-of-cutting-height": ("keep-clear",),
    "brushing-in": ("keep-clear", "dust"),
    "rolling": ("keep-clear",),
}
"""Kinds of work with their usual cautions; what players notice most stands first (order: judgement)."""

_CLOSED: Final = (
    ((Tining, SandInjection), "row-holes-closed"),
    ((Stripping,), "row-grown-in"),
    ((Grooving,), "row-lines-closed"),
)

_ORDER: Final = {kind: place for place, kind in enumerate(_NOTICED)}


def most_noticed_first(kinds: Iterable[Kind]) -> list[Kind]:
    """Order kinds of work by how much players notice them.

    Args:
        kinds: kinds, as often as they come.

    Returns:
        Each once.
    """
    return sorted(dict.fromkeys(kinds), key=lambda kind: _ORDER[slug_of(kind)])


def kind_name(kind: Kind, voice: Voice) -> str:
    """Name a kind of work as inside a sentence: "hollow tining"."""
    return voice.say(f"kind-{slug_of(kind)}")


def surface_of(surfaces: Iterable[Surface]) -> str:
    """Name the kind of surface for a phrase's slot.

    Args:
        surfaces: the surfaces of a job.

    Returns:
        "green", "practice-ground" and so on, or "mixed" where there are several kinds.
    """
    kinds = list(dict.fromkeys(slug_of(surface.kind) for surface in surfaces))
    return kinds[0] if len(kinds) == 1 else "mixed"


def greens_first(surfaces: Iterable[Surface]) -> int:
    """Rank surfaces by what decides a round.

    Args:
        surfaces: the surfaces.

    Returns:
        0 where there is a green among them, then tees, fairways, and 3 for all others.
    """
    kinds = {surface.kind for surface in surfaces}
    return next((rank for rank, kind in enumerate(_DECIDE_A_ROUND) if kind in kinds), len(_DECIDE_A_ROUND))


def said_of_kind(kind: Kind, what: str, surface: str, voice: Voice) -> Sentence:
    """Say one of a kind's phrases.

    Args:
        kind: the kind of work.
        what: the phrase: "what", "see", "still", "day", "week", "then", "why", "without", "do", "q1", "a1" and so on.
        surface: as `surface_of` gives it.
        voice: the language and the day of the reader.

    Returns:
        The sentence or two, with the place of the phrase.
    """
    phrase = f"kind-{slug_of(kind)}.{what}"
    return Sentence(text=voice.say(phrase, surface=surface), source=voice.catalogue.place_of(phrase))


def closed_row(job: Job) -> str:
    """Name the phrase for the day on which what the work opened is closed.

    Args:
        job: the job.

    Returns:
        That of aeration holes, else of turf that was taken off, else of grooves, else of sand that works in.
    """
    found = (row for what, row in _CLOSED if any(isinstance(operation, what) for operation in job.operations))
    return next(found, "row-sand-worked-in")


def cautions_of(kinds: Iterable[Kind], voice: Voice) -> list[Sentence]:
    """List the usual cautions of several kinds of work, each once.

    Args:
        kinds: kinds of operation.
        voice: the language and the day of the reader.

    Returns:
        Cautions, in order of first need.
    """
    names = dict.fromkeys(caution for kind in kinds for caution in _NOTICED[slug_of(kind)])
    phrases = [f"caution-{name}" for name in names]
    return [Sentence(text=voice.say(phrase), source=voice.catalogue.place_of(phrase)) for phrase in phrases]
