"""What `swardcast compare` is asked: which surfaces, which day, which choices, in whose place."""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterable
from datetime import date, datetime, timedelta
from typing import Final

from pydantic_core import PydanticCustomError

from swardcast.errors import SwardcastError, nearest
from swardcast.outlook.ledger import JobFacts, job_facts
from swardcast.outlook.what_if import as_the_manager_knows
from swardcast.outlook.working_days import working_day_after
from swardcast.planning.compare import When
from swardcast.reading.choices_file import usual_choices
from swardcast.reading.schema import one_day
from swardcast.reading.selection import select_surfaces
from swardcast.records.club import Surface, SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Grooving, SandInjection, Stripping, Tining
from swardcast.records.planning import Choice
from swardcast.records.standing import standing_entries

__all__ = ["choices_asked", "day_option", "overlaps", "pace_option", "spare_days_option", "week_option", "when_asked"]

_WEEK: Final = re.compile(r"^(\d{4})-?W(\d{1,2})$", re.IGNORECASE)
_NEAR: Final = timedelta(days=14)  # work planned so near to the day compared may well be the same: judgement


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
    try:
        return date.fromisocalendar(int(match[1]), int(match[2]), 1)
    except ValueError:
        message = f"found {text!r}; expected a week that the year has"
        raise argparse.ArgumentTypeError(message) from None


def pace_option(text: str) -> float:
    """Read how many surfaces are finished in a day."""
    try:
        pace = float(text)
    except ValueError:
        pace = 0.0
    if not 0.05 <= pace <= 60:  # noqa: PLR2004 - as in a plan
        message = f"found {text!r}; expected surfaces finished in a day, from 0.05 to 60"
        raise argparse.ArgumentTypeError(message)
    return pace


def spare_days_option(text: str) -> int:
    """Read how many working days are kept free for weather."""
    if not text.isascii() or not text.isdigit() or int(text) > 30:  # noqa: PLR2004 - as in a plan
        message = f"found {text!r}; expected spare days from 0 to 30"
        raise argparse.ArgumentTypeError(message)
    return int(text)


def when_asked(options: argparse.Namespace, records: ClubRecords, as_of: datetime) -> When:
    """Settle where and when the work would be.

    Args:
        options: the command's options, with surfaces and a day or week, or with a planned job.
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        Surfaces, first day and pace; those of a planned job where the options name one and no others.

    Raises:
        SwardcastError: when something asked does not exist or cannot be.
    """
    facts = _planned(options.instead_of, records, as_of) if options.instead_of else None
    job = facts.job if facts is not None else None
    surfaces = job.surfaces if job is not None else ()
    if options.surfaces is not None:
        surfaces = _surfaces(options.surfaces, records)
    today = as_of.astimezone(records.club.time_zone).date()
    starts = _starts(options, facts, today, records)
    pace = options.surfaces_a_day or (job.surfaces_a_day if job is not None else float(len(surfaces)))
    spare = options.spare_days if options.spare_days is not None else (job.spare_days if job is not None else 0)
    return When(surfaces=surfaces, starts=starts, surfaces_a_day=pace, spare_days=spare, instead_of=job)


def _planned(name: str, records: ClubRecords, as_of: datetime) -> JobFacts:
    known = as_the_manager_knows(records, as_of)
    if name not in known.jobs:
        message = f"no job {name!r} in the plan. {nearest(name, known.jobs)}".rstrip()
        raise SwardcastError(message)
    facts = job_facts(known.jobs[name], standing_entries(known.entries))
    if facts.progress:
        message = f"{name!r} has begun (entry {facts.progress[0].head.id}); there is nothing left to choose"
        raise SwardcastError(message)
    return facts


def _surfaces(phrase: str, records: ClubRecords) -> tuple[str, ...]:
    try:
        return select_surfaces(phrase, records.surfaces)
    except PydanticCustomError as error:
        message = f"--surfaces: {_said(error)}"
        raise SwardcastError(message) from None


def _said(error: PydanticCustomError) -> str:
    told = error.context or {}
    sentence = f"found {told['found']}; expected {told['expected']}"
    return f"{sentence}. {told['hint']}" if told["hint"] else sentence


def _starts(options: argparse.Namespace, facts: JobFacts | None, today: date, records: ClubRecords) -> date:
    if options.week is not None:
        monday: date = options.week
        if monday + timedelta(days=7) <= today:
            message = f"the week of {monday} is over on {today}; name one to come, or an earlier moment by --as-of"
            raise SwardcastError(message)
        return working_day_after(max(monday, today), 0, records.club.working_days)
    day: date = options.day or (facts.starts if facts is not None else today)
    if day < today:
        message = f"{day} is over on {today}; name a day to come by --day, or an earlier moment by --as-of"
        raise SwardcastError(message)
    return day


def choices_asked(which: str, when: When, records: ClubRecords) -> tuple[Choice, ...]:
    """Collect the choices that are meant for the surfaces.

    Args:
        which: "own", "usual" or "all"; "" for the club's own where it has any, else the usual ones.
        when: where the work would be.
        records: the club's records.

    Returns:
        Choices, the club's own first.

    Raises:
        SwardcastError: when there is none.
    """
    surfaces = [records.surfaces[name] for name in when.surfaces]
    own = tuple(choice for choice in records.planning.choices if choice.is_for(surfaces) and _can_be(choice, surfaces))
    usual = tuple(choice for choice in usual_choices() if choice.is_for(surfaces))
    found = {"own": own, "usual": usual, "all": (*own, *usual)}.get(which, own or usual)
    if not found:
        kinds = ", ".join(dict.fromkeys(surface.kind.plural for surface in surfaces))
        message = (
            f"there is no choice of work for {kinds}; write some into choices.yaml of the club folder, as README tells"
        )
        raise SwardcastError(message)
    return found


def _can_be(choice: Choice, surfaces: Iterable[Surface]) -> bool:
    """Whether there is turf for work that opens turf, where a choice does not say what it is for."""
    opens = any(isinstance(one, Tining | Grooving | Stripping | SandInjection) for one in choice.operations)
    return not opens or all(surface.kind is not SurfaceKind.BUNKER for surface in surfaces)


def overlaps(when: When, records: ClubRecords, as_of: datetime) -> tuple[JobFacts, ...]:
    """Find jobs that are planned on these surfaces about that day: the choices come on top of them.

    Args:
        when: where and when the work would be.
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        What the plan and the log have of each.
    """
    known = as_the_manager_knows(records, as_of)
    entries = standing_entries(known.entries)
    found = []
    for job in known.jobs.values():
        facts = job_facts(job, entries)
        mine = when.instead_of is not None and job.id == when.instead_of.id
        if mine or facts.called_off or facts.put_off or facts.progress or not set(job.surfaces) & set(when.surfaces):
            continue
        if abs(facts.starts - when.starts) <= _NEAR:
            found.append(facts)
    return tuple(found)
