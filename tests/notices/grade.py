"""The reading grade of a text, by a library of other people's making, so that we do not judge ourselves."""

from __future__ import annotations

import re
from collections.abc import Iterable

import textstat

__all__ = ["counted", "reading_grade"]


def reading_grade(sentences: Iterable[str]) -> float:
    """The grade of Flesch and Kincaid: years of school (in the United States) that a reader needs; below 0 is easy.

    Source: Kincaid, Fishburne, Rogers and Chissom (1975), "Derivation of new readability formulas", Research Branch
    Report 8-75, US Naval Air Station Memphis. The library does the sum, with the syllables of a dictionary.
    """
    return float(textstat.flesch_kincaid_grade(_for_the_library(sentences)))


def counted(sentences: Iterable[str]) -> tuple[int, int]:
    """Words and sentences, as the library counts them; it takes two words or fewer for no sentence."""
    text = _for_the_library(sentences)
    return int(textstat.lexicon_count(text)), int(textstat.sentence_count(text))


def _for_the_library(sentences: Iterable[str]) -> str:
    """Without marks inside words: the library would end a sentence in "6.4" and in "e.g."."""
    return " ".join(f"{re.sub(r'[.!?…]', '', sentence).strip()}." for sentence in sentences)
