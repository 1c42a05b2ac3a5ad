"""The language of a club: one that comes with Swardcast, the club's own phrases in it, or a language of its own."""

from __future__ import annotations

import re
from typing import Final

from swardcast.errors import InputNeedsAttention, Problem, nearest
from swardcast.language.catalogue import BUILT_IN, Catalogue, built_in
from swardcast.language.house_phrases import FOLDER, with_house_phrases
from swardcast.reading.files import Files

__all__ = ["catalogue_in", "language_meant"]

_AS_SAID: Final = {
    "en-GB": ("uk", "gb", "british", "britain", "england", "english", "en", "ie", "irish"),
    "en-US": ("us", "usa", "american", "america"),
}
"""Words by which people name a language of ours: judgement. In ISO 3166-1 the United Kingdom is GB."""


def language_meant(tag: str) -> str:
    """Guess which language of ours somebody meant who wrote it another way.

    Args:
        tag: as written, such as "en-UK" or "American English".

    Returns:
        A question, or "" when nothing is near.
    """
    words = set(re.split(r"[^a-z]+", tag.lower()))
    for ours in sorted(_AS_SAID, reverse=True):  # "American English" is American
        if words.intersection(_AS_SAID[ours]) and words <= {"", "en", "english", *_AS_SAID[ours]}:
            return f"Did you mean {ours!r}?"
    return nearest(tag, BUILT_IN)


def catalogue_in(files: Files, tag: str, line: int | None, problems: list[Problem]) -> Catalogue:
    """Read the phrases of a club's language.

    Args:
        files: the club's files.
        tag: IETF tag of the language, as club.yaml names it.
        line: the line in which it does.
        problems: where problems are added.

    Returns:
        The catalogue; after a problem one that comes with Swardcast, so that reading can go on.
    """
    texts = {name: files.text(name) for name, _ in files.below(FOLDER, "*.ftl")}
    read = {name: text for name, text in texts.items() if text is not None}
    instead = built_in(tag if tag in BUILT_IN else BUILT_IN[0])
    if len(read) < len(texts):
        return instead
    if tag not in BUILT_IN and not read:
        known = " or ".join(repr(one) for one in BUILT_IN)
        expected = f"{known}, or a language whose phrases all stand in the club's folder {FOLDER!r}"
        hint = language_meant(tag)
        problems.append(
            Problem(file="club.yaml", line=line, field="language", found=repr(tag), expected=expected, hint=hint)
        )
        return instead
    try:
        return with_house_phrases(tag, read)
    except InputNeedsAttention as error:
        problems += error.problems
        return instead
