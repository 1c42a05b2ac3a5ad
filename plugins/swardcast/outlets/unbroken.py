"""Typed text that must stay on one line of a file whose lines mean something: calendars, headers of e-mails."""

from __future__ import annotations

import re
from typing import Final

__all__ = ["unbroken"]

_NO_TEXT: Final = re.compile(r"[\x00-\x1f\x7f-\x9f\u2028\u2029]+")
"""What breaks a line, or is a control: CONTROL of RFC 5545 section 3.1, C0 and C1 and Unicode's two separators."""


def unbroken(text: str) -> str:
    """Put a blank for whatever would break a line, or is no text.

    Args:
        text: any text.

    Returns:
        The text on one line.
    """
    return _NO_TEXT.sub(" ", text)
