"""What several commands that plan are asked: days, pace, surfaces, a planned job."""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterator, Sequence
from datetime import date, datetime, timedelta
from typing import Final

from pydantic_core import PydanticCustomError

from swardcast.errors import SwardcastError, nearest
from swardcast.moments import FIRST_YEAR, LAST_YEAR
from swardcast.outlook.ledger import JobFacts
from swardcast.outlook.what_if import facts_as_known
from swardcast.reading.schema import one_day
from swardcast.reading.selection import select_surfaces
from swardcast.records.folder import ClubRecords

__all__ = ["add_work_options", "day_option", "planned_job", "planned_on", "surfaces_asked", "week_option"]

_WEEK: Final = re.compile(r"^(\d{4})-?W(\d{1,2})$", re.IGNORECASE)


def add_work_options(options: argparse.ArgumentParser, *, pace: str) -> None:
    """Add --surfaces, --surfaces-a-day, with what its help says, and --spare-days."""
    options.add_argument("--surfaces", metavar="WORDS", help="surfaces, such as 'greens 1-18' (default: the job's)")
    options.add_argument("--surfaces-a-day", type=_pace_option, metavar="N", help=pace)
    options.add_argument(
        "--spare-days", type=_spare_days_option, metavar="N", help="days kept free for weather (default: the job's)"
    )


def day_option(text: str) -> date:
    """Read a day."""
    try:
        return one_day(text)
    except PydanticCustomError as error:
        raise argparse.ArgumentTypeError(_said(error)) from None


def week_option(text: str) -> date:
    """Read a week, by its number (ISO 8601) or by a day in it; gives its Monday."""
    match = _WEEK.fullmatch(text.strip())
    if match is None:
        try:
            day = one_day(text)
        except PydanticCustomError:
            message = f"found {text!r}; expected a week such as '2027-W34', or a day in it"
            raise argparse.ArgumentTypeError(message) from None
        return day - timedelta(days=day.weekday())
    if not FIRST_YEAR <= int(match[1]) <= LAST_YEAR:
        message = f"found {text!r}; expected a week of the years {FIRST_YEAR} to {LAST_YEAR}"
        raise argparse.ArgumentTypeError(message)
    try:
        return date.fromisocalendar(int(match[1]), int(match[2]), 1)
    except ValueError:
        message = f"found {text!r}; expected a week that the year has"
        raise argparse.ArgumentTypeError(message) from None


def _pace_option(text: str) -> float:
    """Read how many surfaces are finished in a day."""
    try:
        pace = float(text)
    except ValueError:
        pace = 0.0
    if not 0.05 <= pace <= 60:  # noqa: PLR2004 - as in a plan
        message = f"found {text!r}; expected surfaces finished in a day, from 0.05 to 60"
        raise argparse.ArgumentTypeError(message)
    return pace


def _spare_days_option(text: str) -> int:
    """Read how many working days are kept free for weather."""
    if not text.isascii() or not text.isdigit() or int(text) > 30:  # noqa: PLR2004 - as in a plan
        message = f"found {text!r}; expected spare days from 0 to 30"
        raise argparse.ArgumentTypeError(message)
    return int(text)


def planned_job(name: str, records: ClubRecords, as_of: datetime) -> JobFacts:
    """Find a planned job that has not begun.

    Args:
        name: its id.
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        What the plan and the log have of it.

    Raises:
        SwardcastError: when there is none, or it has begun.
    """
    known = facts_as_known(records, as_of)
    if name not in known:
        message = f"no job {name!r} in the plan. {nearest(name, known)}".rstrip()
        raise SwardcastError(message)
    facts = known[name]
    if facts.progress:
        message = f"{name!r} has begun (entry {facts.progress[0].head.id}); there is nothing left to choose"
        raise SwardcastError(message)
    return facts


def planned_on(
    surfaces: Sequence[str], records: ClubRecords, as_of: datetime, days: tuple[date, date]
) -> Iterator[JobFacts]:
    """Find jobs of the plan on some of these surfaces that begin on certain days, as the plan stands.

    Args:
        surfaces: ids of the surfaces.
        records: the club's records.
        as_of: the moment, aware.
        days: the first and the last of these days.

    Yields:
        What the plan and the log have of each; not of jobs called off or postponed to no day.
    """
    for facts in facts_as_known(records, as_of).values():
        stands = not facts.called_off and not facts.put_off and days[0] <= facts.starts <= days[1]
        if stands and not set(facts.job.surfaces).isdisjoint(surfaces):
            yield facts


def surfaces_asked(phrase: str, records: ClubRecords) -> tuple[str, ...]:
    """Find the surfaces that --surfaces names.

    Args:
        phrase: words, such as 'greens 1-18'.
        records: the club's records.

    Returns:
        Ids of surfaces.

    Raises:
        SwardcastError: when they name none, or something that is not there.
    """
    try:
        return select_surfaces(phrase, records.surfaces)
    except PydanticCustomError as error:
        message = f"--surfaces: {_said(error)}"
        raise SwardcastError(message) from None


def _said(error: PydanticCustomError) -> str:
    told = error.context or {}
    sentence = f"found {told['found']}; expected {told['expected']}"
    return f"{sentence}. {told['hint']}" if told["hint"] else sentence
