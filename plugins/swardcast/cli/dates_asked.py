"""What `swardcast dates` is asked: which job or choice of work, on which surfaces, between which days."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Final

from swardcast.cli.compare_asked import choices_asked, missing_pace
from swardcast.cli.planning_asked import planned_job, planned_on, surfaces_asked
from swardcast.errors import SwardcastError, nearest
from swardcast.outlook.ledger import JobFacts
from swardcast.outlook.states import Milestone
from swardcast.planning.compare import When, job_of_choice
from swardcast.planning.dates import Asked
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job
from swardcast.records.planning import Choice

__all__ = ["UNTIL", "asked_of", "beside", "days_asked"]

UNTIL: Final = {
    "settled": Milestone.SETTLED,
    "holes-closed": Milestone.HOLES_CLOSED,
    "back-to-normal": Milestone.BACK_TO_NORMAL,
}
"""What may end the disturbance, as options name it."""

_USUAL_SPAN: Final = timedelta(weeks=26)
_FARTHEST: Final = timedelta(days=366)  # no date is told of work more than a year ahead


def asked_of(options: argparse.Namespace, records: ClubRecords, as_of: datetime) -> Asked:
    """Settle what is asked.

    Args:
        options: the command's options, with a job, or with surfaces and a choice.
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        The job and the days.

    Raises:
        SwardcastError: when something asked does not exist or cannot be.
    """
    today = as_of.astimezone(records.club.time_zone).date()
    first, last = days_asked(options, today)
    facts = planned_job(options.job, records, as_of) if options.job else None
    if options.choice or facts is None:
        job, name = _chosen(options, facts, first, records)
    else:
        job, name = facts.job, facts.job.title
        if options.surfaces is not None:
            job = replace(job, surfaces=surfaces_asked(options.surfaces, records))
    if options.surfaces_a_day is not None:
        job = replace(job, surfaces_a_day=options.surfaces_a_day)
    if options.spare_days is not None:
        job = replace(job, spare_days=options.spare_days)
    return Asked(
        job=job,
        name=name,
        first=first,
        last=last,
        until=UNTIL[options.until],
        most=options.best,
        instead_of=options.job,
        planned_for=facts.starts if facts is not None else None,
    )


def days_asked(options: argparse.Namespace, today: date) -> tuple[date, date]:
    """Settle between which days is looked.

    Args:
        options: the command's options.
        today: the day, local.

    Returns:
        The first and the last day.

    Raises:
        SwardcastError: when they cannot be.
    """
    farthest = today + _FARTHEST
    first: date = options.first or today
    last: date = options.last or min(first + _USUAL_SPAN, farthest)
    if first < today:
        message = f"--from: {first} is over on {today}; name a day to come, or an earlier moment by --as-of"
        raise SwardcastError(message)
    for option, day in (("--from", first), ("--to", last)):
        if day > farthest:
            message = f"{option}: {day} is more than a year ahead; name a day up to {farthest}"
            raise SwardcastError(message)
    if last < first:
        message = f"--to: {last} is before {first}; name a later day"
        raise SwardcastError(message)
    return first, last


def _chosen(options: argparse.Namespace, facts: JobFacts | None, first: date, records: ClubRecords) -> tuple[Job, str]:
    """A choice of work, in a planned job's place or on surfaces that are named."""
    planned = facts.job if facts is not None else None
    surfaces = planned.surfaces if planned is not None else ()
    if options.surfaces is not None:
        surfaces = surfaces_asked(options.surfaces, records)
    pace, spare = (planned.surfaces_a_day, planned.spare_days) if planned is not None else (None, 0)
    when = When(
        surfaces=surfaces,
        starts=first,
        surfaces_a_day=options.surfaces_a_day or pace,
        spare_days=spare,
        instead_of=planned,
    )
    choice = _named(options.choice, choices_asked("all", when, records))
    if missing := missing_pace(when, [choice]):
        raise SwardcastError(missing)
    return job_of_choice(choice, 1, when, first), choice.name


def _named(name: str, choices: tuple[Choice, ...]) -> Choice:
    named = {choice.name: choice for choice in reversed(choices) if choice.name}  # the club's own goes first
    by_letters = {known.casefold(): choice for known, choice in named.items()}
    found = by_letters.get(" ".join(name.casefold().split()))
    if found is None:
        known = "; ".join(reversed(named))
        message = f"no choice {name!r} for these surfaces. {nearest(name, named)}".rstrip() + f" Choices: {known}"
        raise SwardcastError(message)
    return found


def beside(asked: Asked, records: ClubRecords, as_of: datetime) -> Iterator[str]:
    """Name the jobs that are planned on the same surfaces in that time, and count besides.

    Args:
        asked: what is asked.
        records: the club's records.
        as_of: the moment, aware.

    Yields:
        Their ids.
    """
    for facts in planned_on(asked.job.surfaces, records, as_of, (asked.first, asked.last)):
        if facts.job.id != asked.instead_of:
            yield facts.job.id
