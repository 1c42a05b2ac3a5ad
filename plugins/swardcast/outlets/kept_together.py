"""Words of a page that must not part at the end of a line: a day and its month, a number and its sign."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from babel import Locale
from babel.dates import get_month_names, get_period_names

from swardcast.language.voice import Voice

__all__ = ["kept_together"]

_NO_BREAK: Final = "\u00a0"
_SIGNS: Final = ("%", "°C", "°F", "mm", "cm")
_LEFT_ALONE: Final = re.compile(
    r"<(script|style|svg|pre|table|textarea)\b.*?</\1>|<span [^>]*\bclass=\"sc-copy\".*?</span>|<[^>]*>", re.DOTALL
)
"""Tags, what is no running text (columns of a table may be as narrow as a word), and what is to be copied, since a
text message has no sign for such a blank."""


def kept_together(page: str, voice: Voice) -> str:
    """Put a blank that does not break between a day and its month, and between a number and its sign.

    Args:
        page: HTML.
        voice: the language, whose months and halves of the day are looked for.

    Returns:
        The HTML with the same words; tags, drawings and texts to be copied are as they were.
    """
    pairs, said, end = _pairs(voice.catalogue.locale), [], 0
    for left in _LEFT_ALONE.finditer(page):
        said += [pairs.sub(_joined, page[end : left.start()]), left[0]]
        end = left.end()
    return "".join((*said, pairs.sub(_joined, page[end:])))


def _joined(pair: re.Match[str]) -> str:
    return pair[0][:-1] + _NO_BREAK


@cache
def _pairs(locale: Locale) -> re.Pattern[str]:
    """The first word of each pair and its blank; both orders of day and month, whichever the language has."""
    months = "|".join(re.escape(str(name)) for name in get_month_names("wide", "format", locale).values())
    periods = get_period_names("abbreviated", "format", locale)
    halves = "|".join(re.escape(str(periods[half])) for half in ("am", "pm") if half in periods)
    signs = "|".join(re.escape(sign) for sign in _SIGNS)
    after_number = rf"(?:{months}|{halves})\b|(?:{signs})(?!\w)"
    return re.compile(rf"(?<!\w)\d[\d.,:]* (?={after_number})|\b(?:{months}) (?=\d{{1,2}}\b)")
