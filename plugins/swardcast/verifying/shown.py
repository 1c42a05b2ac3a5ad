"""What a page shows, for comparing it with what else says the same."""

from __future__ import annotations

from copy import deepcopy

from lxml import html

__all__ = ["as_shown", "shown"]


def shown(element: html.HtmlElement) -> str:
    """Give the words that are read, in small letters, with single plain blanks.

    Args:
        element: a page or a part of it.

    Returns:
        Its words, without scripts, styles and what is shown later only.
    """
    copy = deepcopy(element)
    for hidden in copy.xpath(".//script | .//style | .//template"):
        hidden.drop_tree()
    for piece in copy.iter():
        piece.tail = f" {piece.tail}" if piece.tail and _parts(piece) else piece.tail
    return as_shown(copy.text_content())


def as_shown(words: str) -> str:
    """Give words as `shown` gives those of a page.

    Args:
        words: any words.

    Returns:
        The same in small letters, with single plain blanks.
    """
    return " ".join(words.split()).casefold()


def _parts(piece: html.HtmlElement) -> bool:
    return piece.tag in ("br", "p", "li", "dt", "dd", "div")
