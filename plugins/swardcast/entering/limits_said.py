"""Limits on play as they are typed: "placed within 6 inches, decided by the Committee, until 16 September"."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import datetime
from typing import Final

from swardcast.entering.drafts import Value
from swardcast.entering.said import day_said
from swardcast.entering.wrong import Wrong, WrongAnswer, understood
from swardcast.errors import nearest
from swardcast.reading.clock_times import clock_time
from swardcast.reading.limits import LIMITS
from swardcast.reading.local_rules import ONLY_THE_COMMITTEE
from swardcast.records.log import FROST_DELAY

__all__ = ["SAMPLES", "limit_typed", "limits_of", "limits_typed"]

SAMPLES: Final = {
    "preferred lies": "Model Local Rule E-3 until 16 September, decided by the Committee",
    "trolleys": "none today",
    "buggies": "none today",
    "carry only": "on the 6th and the 11th",
    FROST_DELAY: "nobody on the course until 9:30am",
    "practice ground": "mats only",
}
"""What may be typed for each limit."""
_FOR_ALL: Final = ("until", "decided-by")
_SAYS_NOTHING: Final = re.compile(r"^(?:all|yes|y|on|[\d\s,-]*)$", re.IGNORECASE)
_IN_EACH: Final = " ".join(f'--{name.replace(" ", "-")} "{SAMPLES[name]}"' for name in (FROST_DELAY, "preferred lies"))

_UNTIL: Final = re.compile(r"^(?P<what>.*?)(?:^|[,;]?\s+)until\s+(?P<tail>[^,;]+)$", re.IGNORECASE)
_DECIDED: Final = re.compile(r"^(?P<what>.*?)(?:^|[,;]?\s+)decided by\s+(?P<tail>[^,;]+)$", re.IGNORECASE)


def limits_of(answers: Mapping[str, str], now: datetime) -> tuple[dict[str, Value], list[Wrong]]:
    """Read all limits that a morning entry names.

    Args:
        answers: what was answered, by option: "limits", each limit by its name, "until" and "decided-by".
        now: the present moment, in the club's time.

    Returns:
        The limits as the log has them, by name, and what is wrong with the answers.
    """
    typed: dict[str, tuple[str, str]] = {}
    found: dict[str, Value] = {}
    wrongs: list[Wrong] = []
    try:
        if text := answers.get("limits", "").strip():
            typed = {name: ("limits", what) for name, what in limits_typed(text).items()}
    except WrongAnswer as error:
        wrongs.append(_wrong("limits", error))
    for name in LIMITS:
        option = name.replace(" ", "-")
        if option in answers:
            typed[name] = (option, answers[option])
    said = {word: text for word in _FOR_ALL if (text := " ".join(answers.get(word, "").split()))}
    if len(typed) != 1 and not wrongs:
        wrongs += [_of_no_one(word, text, len(typed)) for word, text in said.items()]
        said = {}
    for name, (option, what) in typed.items():
        decided_by, until = said.get("decided-by", ""), said.get("until", "")
        try:
            found[name] = limit_typed(name, what, decided_by=decided_by, until=until, now=now)
        except WrongAnswer as error:
            wrongs.append(_wrong(option, error))
    return found, wrongs


def _of_no_one(word: str, text: str, count: int) -> Wrong:
    if count:
        found, hint = f"{text!r} for {count} limits", f"Such as: {_IN_EACH}"
        return Wrong(option=word, found=found, expected="it in the words of each limit that it belongs to", hint=hint)
    expected = f"a limit that it belongs to, such as --frost-delay {SAMPLES[FROST_DELAY]!r}"
    return Wrong(option=word, found=f"{text!r} without a limit", expected=expected)


def _wrong(option: str, error: WrongAnswer) -> Wrong:
    return Wrong(option=option, found=error.found, expected=error.expected, hint=error.hint)


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
        WrongAnswer: when nothing is said of what holds, its end is no time of day and no day, two ends or deciders are
            told, or nobody is said to have adopted a Local Rule.
    """
    what, end, decider = " ".join(text.split()), "", ""
    for _ in range(2):  # the two may come in any order
        if (match := _UNTIL.match(what)) and not end and _end(match["tail"], now):
            what, end = match["what"], match["tail"]
        if (match := _DECIDED.match(what)) and not decider:
            what, decider = match["what"], match["tail"]
    if _SAYS_NOTHING.match(what):
        found = repr(text) if text.strip() else "nothing"
        raise WrongAnswer(found, f"what holds, such as {SAMPLES[name]!r}, or 'lifted'")
    end, decider = _one_of(end, until), _one_of(decider, decided_by)
    read = _end(end, now)
    if end and not read:
        raise WrongAnswer(repr(end), "an end such as '9:30am', 'Thursday 16 September' or '2027-09-16'")
    if name == "preferred lies" and not decider and what.lower() != "lifted":
        expected = "also who adopted it, such as ', decided by the Committee' behind it"
        raise WrongAnswer(repr(what), expected, ONLY_THE_COMMITTEE)
    fields: dict[str, Value] = {"what": what}
    if decider:
        fields["decided by"] = decider
    if read:
        fields["until"] = read
    return fields if len(fields) > 1 else what


def _one_of(behind: str, by_option: str) -> str:
    typed, told = " ".join(behind.split()), " ".join(by_option.split())
    if typed and told and typed != told:
        raise WrongAnswer(f"{typed!r} and {told!r}", "one of the two")
    return typed or told


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
