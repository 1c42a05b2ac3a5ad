"""Surfaces as they are typed in an answer, and a phrase for surfaces that the log reads back as the same."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from datetime import date
from typing import Final

from swardcast.entering.wrong import WrongAnswer, understood
from swardcast.language.voice import Voice
from swardcast.notices.words import places_in_words
from swardcast.reading.selection import select_surfaces
from swardcast.records.club import Surface, SurfaceKind

__all__ = ["PLACES", "WHOLE_COURSE", "chosen_surfaces", "phrase_for", "phrase_typed"]

PLACES: Final = {kind.plural.replace(" ", "-"): kind for kind in SurfaceKind}
"""Options that name surfaces of one kind: "greens", "tees", ..."""

WHOLE_COURSE: Final = "the whole course"
"""How a morning entry names every surface."""


_NUMBERS: Final = (
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen",
    "fourteen", "fifteen", "sixteen", "seventeen", "eighteen",
)  # fmt: skip
_NUMBER: Final = re.compile(rf"\b(?:{'|'.join(_NUMBERS)})\b", re.IGNORECASE)


def phrase_typed(text: str, kind: SurfaceKind | None, surfaces: Mapping[str, Surface]) -> str:
    """Complete what was typed, so that the log can read it.

    Args:
        text: such as "1-9", "3,7,12", "four", "all" or "greens 1-9 and the practice green".
        kind: the kind that a bare number or "all" means, or None where they need their kind.
        surfaces: all surfaces by id.

    Returns:
        A phrase, still to be checked; number words are figures in it, where they are no surface's name.
    """
    words = " ".join(text.split())
    in_figures = _NUMBER.sub(lambda match: str(_NUMBERS.index(match[0].lower()) + 1), words)
    if in_figures != words and not _names_surfaces(words, surfaces):
        words = in_figures
    if kind is None:
        return words
    if words.lower() == "all":
        return f"all {kind.plural}"
    if words.isdecimal():
        return f"{kind.value} {words}"
    return f"{kind.plural} {words}" if re.match(r"^\d", words) else words


def chosen_surfaces(phrase: str, surfaces: Mapping[str, Surface]) -> tuple[str, ...]:
    """Find the surfaces that a phrase names.

    Args:
        phrase: the phrase.
        surfaces: all surfaces by id.

    Returns:
        Ids, each once.

    Raises:
        WrongAnswer: when a part names no surface of this course.
    """
    return understood(lambda: select_surfaces(phrase, surfaces))


def _names_surfaces(phrase: str, surfaces: Mapping[str, Surface]) -> bool:
    try:
        return bool(chosen_surfaces(phrase, surfaces))
    except WrongAnswer:
        return False


def phrase_for(chosen: Iterable[str], surfaces: Mapping[str, Surface]) -> str:
    """Name surfaces in words that the log reads back as the same surfaces.

    Args:
        chosen: ids of at least one surface.
        surfaces: all surfaces by id.

    Returns:
        "greens 1 to 9 and the practice green", or their ids where such words would mean others.
    """
    ids = list(dict.fromkeys(chosen))
    if len(ids) == len(surfaces):
        return WHOLE_COURSE
    words = places_in_words((surfaces[name] for name in ids), Voice.english(date.min))
    try:
        meant = set(chosen_surfaces(words, surfaces))
    except WrongAnswer:
        meant = set()
    return words if meant == set(ids) else ", ".join(ids)
