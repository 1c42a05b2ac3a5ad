"""The language of a club: one that comes with Swardcast, the club's own phrases in it, or a language of its own."""

from __future__ import annotations

from swardcast.errors import InputNeedsAttention, Problem, nearest
from swardcast.language.catalogue import BUILT_IN, Catalogue, built_in
from swardcast.language.house_phrases import FOLDER, with_house_phrases
from swardcast.reading.files import Files

__all__ = ["catalogue_in"]


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
        hint = nearest(tag, BUILT_IN)
        problems.append(
            Problem(file="club.yaml", line=line, field="language", found=repr(tag), expected=expected, hint=hint)
        )
        return instead
    try:
        return with_house_phrases(tag, read)
    except InputNeedsAttention as error:
        problems += error.problems
        return instead
