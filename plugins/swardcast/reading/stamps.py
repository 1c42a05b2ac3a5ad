"""Day and time as a station writes them, such as "23/08/2027 14:00", by a pattern in plain words."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, timezone
from typing import Final

from swardcast.errors import nearest
from swardcast.moments import FIRST_YEAR, LAST_YEAR
from swardcast.reading.schema import wrong

__all__ = ["StampPattern", "stamp_pattern"]

_PARTS: Final = {
    "year": r"(?P<year>[0-9]{4}|[0-9]{2})",
    "month": r"(?P<month>[0-9]{1,2}|[A-Za-z]{3,9}\.?)",
    "day": r"(?P<day>[0-9]{1,2})",
    "hour": r"(?P<hour>[0-9]{1,2})",
    "minute": r"(?P<minute>[0-9]{2})",
    "second": r"(?P<second>[0-9]{2}(?:\.[0-9]+)?)",
    "am/pm": r"(?P<half>[AaPp])\.?[Mm]?\.?",
}
_MONTHS: Final = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_NOON: Final = 12
_WORDS: Final = re.compile(
    r"am/pm|(?:year|month|day|hour|minute|second)(?=am/pm|year|month|day|hour|minute|second|[^a-z]|$)|T(?=hour)|[A-Za-z]+|\s+|[^A-Za-z\s]"
)
_OFFSET: Final = r"\s*(?P<offset>Z|[+-]\d{2}:?\d{2})?"
_SAMPLE: Final = {
    "year": "2027",
    "month": "08",
    "day": "23",
    "hour": "14",
    "minute": "05",
    "second": "00",
    "am/pm": "pm",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class StampPattern:
    """A way to write day and time.

    Args:
        expression: what matches it.
        has_time: whether it names an hour.
        sample: a moment written this way, for messages.
    """

    expression: re.Pattern[str]
    has_time: bool
    sample: str

    def read(self, text: str) -> datetime | None:
        """Read one stamp.

        Args:
            text: such as "23/08/2027 14:00"; 24:00 is the midnight that ends the day.

        Returns:
            The moment, naive, or aware where an offset stands behind it; None when it is no such moment.
        """
        match = self.expression.fullmatch(" ".join(text.split()))
        if match is None:
            return None
        told = match.groupdict()
        hour = _hour(told)
        minute, second = int(told.get("minute") or 0), int(float(told.get("second") or 0))
        if hour is None or (hour == 24 and (minute or second)):  # noqa: PLR2004 - the hour that ends a day
            return None
        year = _year(told["year"])
        if not FIRST_YEAR <= year <= LAST_YEAR:
            return None
        try:
            moment = datetime(  # noqa: DTZ001 - the clock of the station is told elsewhere
                year, _month(told["month"]), int(told["day"]), hour % 24, minute, second
            )
        except ValueError:
            return None
        moment += timedelta(days=hour // 24)
        return moment.replace(tzinfo=_offset(told["offset"])) if told.get("offset") else moment


def stamp_pattern(written: str) -> StampPattern:
    """Understand how day and time are written.

    Args:
        written: such as "day/month/year hour:minute" or "year-month-day".

    Returns:
        The pattern.

    Raises:
        PydanticCustomError: when it has an unknown word, or does not name day, month and year once.
    """
    parts = _WORDS.findall(written.strip())
    named = [part.lower() for part in parts if part.lower() in _PARTS]
    for part in parts:
        if part.isalpha() and part.lower() not in _PARTS and part != "T":
            raise wrong(written, f"words of: {', '.join(_PARTS)}, as in 'day/month/year'", nearest(part, _PARTS))
    if any(named.count(part) != 1 for part in ("year", "month", "day")) or len(set(named)) != len(named):
        raise wrong(written, "day, month and year once each, as in 'day/month/year' or 'year-month-day hour:minute'")
    shape = "".join(_PARTS.get(part.lower(), r"\s*" if part.isspace() else re.escape(part)) for part in parts)
    seconds = r"(?::\d{2}(?:\.\d+)?)?" if named[-1] == "minute" else ""
    has_time = "hour" in named
    sample = {**_SAMPLE, "hour": "02"} if "am/pm" in named else _SAMPLE
    return StampPattern(
        expression=re.compile(f"^{shape}{seconds}{_OFFSET if has_time else ''}$"),
        has_time=has_time,
        sample="".join(sample.get(part.lower(), " " if part.isspace() else part) for part in parts),
    )


def _hour(told: dict[str, str | None]) -> int | None:
    hour = int(told.get("hour") or 0)
    half = told.get("half")
    if half is None:
        return hour if hour <= 24 else None  # noqa: PLR2004 - 24:00 ends a day
    if not 1 <= hour <= _NOON:
        return None
    return hour % _NOON + (_NOON if half.lower() == "p" else 0)


def _year(text: str) -> int:
    year = int(text)
    return year + 2000 if len(text) == len("27") else year  # no station is older than 2000 and writes two figures


def _month(text: str) -> int:
    """Read a month by number or English name; a name that is none becomes 0, which no calendar has."""
    return int(text) if text.isdigit() else next((n for n, m in enumerate(_MONTHS, 1) if text.lower()[:3] == m), 0)


def _offset(text: str) -> timezone:
    if text == "Z":
        return UTC
    hours, minutes = int(text[1:3]), int(text[-2:])
    span = timedelta(hours=hours, minutes=minutes)
    return timezone(-span if text[0] == "-" else span)
