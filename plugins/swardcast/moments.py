"""Moments as a manager types them, and local times that do not exist."""

from __future__ import annotations

import re
from datetime import UTC, date, datetime
from typing import Final
from zoneinfo import ZoneInfo

from swardcast.errors import SwardcastError

__all__ = ["FIRST_YEAR", "LAST_YEAR", "MONTHS", "WEEKDAYS", "as_of_from", "day_from", "is_skipped"]

WEEKDAYS: Final = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS: Final = (
    "January", "February", "March", "April", "May", "June", "July",
    "August", "September", "October", "November", "December",
)  # fmt: skip

FIRST_YEAR: Final = 1900
LAST_YEAR: Final = 2200
"""Years of which we speak; days and weeks can be counted from each without leaving the calendar. Judgement."""
_DAY_ONLY: Final = re.compile(r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$")


def day_from(text: str) -> date | None:
    """Read a day such as "2027-08-23".

    Args:
        text: year-month-day.

    Returns:
        The day, or None when it is none of the calendar from `FIRST_YEAR` to `LAST_YEAR`.
    """
    if _DAY_ONLY.fullmatch(text) is None:
        return None
    try:
        day = date.fromisoformat(text)
    except ValueError:
        return None
    return day if FIRST_YEAR <= day.year <= LAST_YEAR else None


def is_skipped(local: datetime) -> bool:
    """Tell whether the clocks skip a local time, as they do for an hour in spring.

    Args:
        local: aware, in the club's time zone.

    Returns:
        True when no clock ever shows it.
    """
    return local.astimezone(UTC).astimezone(local.tzinfo).replace(tzinfo=None) != local.replace(tzinfo=None)


def as_of_from(text: str | datetime | None, zone: ZoneInfo, *, now: datetime) -> datetime:
    """Read the moment that a build is for.

    Args:
        text: such as "2027-09-14 09:30"; without a zone it is local time, without a time it is midday; None is now.
        zone: the club's time zone.
        now: the present moment, aware; only the shell knows it.

    Returns:
        An aware moment in the club's zone.

    Raises:
        SwardcastError: when it is no moment.
    """
    if text is None:
        return now.astimezone(zone)
    if isinstance(text, datetime):
        return text.replace(tzinfo=zone) if text.tzinfo is None else text.astimezone(zone)
    written = f"{text.strip()}T12:00" if _DAY_ONLY.fullmatch(text.strip()) else text.strip()
    try:
        moment = datetime.fromisoformat(written)
    except ValueError:
        message = f"{text!r} is no moment; expected one such as '2027-09-14 09:30'"
        raise SwardcastError(message) from None
    if not FIRST_YEAR <= moment.year <= LAST_YEAR:
        message = f"{text!r} is no moment of ours; expected a year from {FIRST_YEAR} to {LAST_YEAR}"
        raise SwardcastError(message)
    if moment.tzinfo is not None:
        return moment.astimezone(zone)
    local = moment.replace(tzinfo=zone)
    if is_skipped(local):
        message = f"{text!r} does not exist in the club's time: the clocks skip it"
        raise SwardcastError(message)
    return local
