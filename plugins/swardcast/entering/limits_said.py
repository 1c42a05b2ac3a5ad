"""Limits on play as they are typed: "placed within 6 inches, decided by the Committee, until 16 September"."""

from __future__ import annotations

import re
from datetime import datetime
from typing import Final

from swardcast.entering.drafts import Value
from swardcast.entering.said import day_said
from swardcast.entering.wrong import WrongAnswer, understood
from swardcast.errors import nearest
from swardcast.reading.clock_times import clock_time
from swardcast.reading.limits import LIMITS

__all__ = ["limit_typed", "limits_typed"]

_UNTIL: Final = re.compile(r"^(?P<what>.*?)[,;]?\s+until\s+(?P<tail>[^,;]+)$", re.IGNORECASE)
_DECIDED: Final = re.compile(r"^(?P<what>.*?)[,;]?\s+decided by\s+(?P<tail>[^,;]+)$", re.IGNORECASE)


def limits_typed(text: str) -> dict[str, str]:
    """Read several limits: "trolleys: none today; buggies: none".

    Args:
        text: names and what holds; a semicolon parts two only before the next name.

    Returns:
        What was typed, by the limit's name.

    Raises:
        WrongAnswer: when a name is unknown or says nothing.
    """
    limits: dict[str, str] = {}
    last = ""
    for part in text.split(";"):
        name, colon, value = part.partition(":")
        word = " ".join(name.lower().split())
        if colon and word in LIMITS:
            last = word
            limits[word] = " ".join(value.split())
        elif last:
            limits[last] = f"{limits[last]}; {' '.join(part.split())}"
        else:
            expected = f"a limit, a colon and what holds; limits are: {', '.join(LIMITS)}"
            raise WrongAnswer(repr(part.strip()), expected, nearest(word, LIMITS))
    for name, value in limits.items():
        if not value:
            raise WrongAnswer(repr(f"{name}:"), f"what holds, such as '{name}: none today'")
    return limits


def limit_typed(name: str, text: str, *, decided_by: str, until: str, now: datetime) -> Value:
    """Read one limit, with who decided it and until when where that was typed behind it.

    Args:
        name: what it is about.
        text: what holds.
        decided_by: who decided it where the text does not say so, or "".
        until: its end where the text does not say so, or "".
        now: the present moment, in the club's time.

    Returns:
        The limit as the log has it.

    Raises:
        WrongAnswer: when its end is no time of day and no day, or nobody is said to have adopted a Local Rule.
    """
    what, end, decider = " ".join(text.split()), "", ""
    for _ in range(2):  # the two may come in any order
        if (match := _UNTIL.match(what)) and not end and _end(match["tail"], now):
            what, end = match["what"], match["tail"]
        if (match := _DECIDED.match(what)) and not decider:
            what, decider = match["what"], match["tail"]
    end, decider = (end or until).strip(), " ".join((decider or decided_by).split())
    read = _end(end, now)
    if end and not read:
        raise WrongAnswer(repr(end), "an end such as '9:30am', 'Thursday 16 September' or '2027-09-16'")
    if name == "preferred lies" and not decider and what.lower() != "lifted":
        expected = "also who adopted it: --decided-by, or ', decided by the Committee' behind it"
        raise WrongAnswer(repr(what), expected, "Only the Committee can adopt a Local Rule.")
    fields: dict[str, Value] = {"what": what}
    if decider:
        fields["decided by"] = decider
    if read:
        fields["until"] = read
    return fields if len(fields) > 1 else what


def _end(text: str, now: datetime) -> str:
    """Write an end as the log reads it; "" when it is none."""
    try:
        return f"{understood(lambda: clock_time(text)):%H:%M}"
    except WrongAnswer:
        pass
    try:
        return day_said(text, now.date()).isoformat()
    except WrongAnswer:
        return ""
