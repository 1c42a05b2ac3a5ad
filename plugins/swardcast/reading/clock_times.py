"""Times of day as people write them: "9:30am", "2pm", "14:30", "midday"."""

from __future__ import annotations

import re
from datetime import time
from typing import Annotated, Final

from pydantic import BeforeValidator

from swardcast.reading.schema import wrong

__all__ = ["Clock", "clock_time"]

_TWELVE: Final = re.compile(r"^(\d{1,2})(?:[:.](\d{2}))?\s*(am|pm)$")
_TWENTY_FOUR: Final = re.compile(r"^(\d{1,2}):(\d{2})$")
_WORDS: Final = {"midday": time(12), "noon": time(12)}
_EXPECTED: Final = "a time of day, such as '9:30am' or '14:30'"


def clock_time(value: object) -> time:
    """Read a time of day.

    Assumes nothing of midnight: it is the end of one day and the beginning of the next, so it is refused.

    Args:
        value: the time as written, with am or pm, or in 24 hours with a colon.

    Returns:
        The time, to the minute.

    Raises:
        PydanticCustomError: when it is none.
    """
    text = " ".join(str(value).lower().split())
    if text in _WORDS:
        return _WORDS[text]
    if text == "midnight":
        raise wrong(value, _EXPECTED, "Midnight ends one day and begins the next; write '11:59pm' or '0:00'.")
    halves = _TWELVE.fullmatch(text)
    match = halves or _TWENTY_FOUR.fullmatch(text)
    if match is None:
        hint = "Say whether it is am or pm, or write it in 24 hours." if text.replace(".", "").isdigit() else ""
        raise wrong(value, _EXPECTED, hint)
    hour, minute = int(match[1]), int(match[2] or 0)
    least, most = (1, 12) if halves else (0, 23)
    if not least <= hour <= most or minute > 59:  # noqa: PLR2004 - minutes of an hour
        raise wrong(value, _EXPECTED, "No clock shows this.")
    if halves:
        hour = hour % 12 + (12 if match[3] == "pm" else 0)
    return time(hour, minute)


Clock = Annotated[time, BeforeValidator(clock_time)]
