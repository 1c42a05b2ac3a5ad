"""What `swardcast compare` is asked: which surfaces, which day, which choices, in whose place."""

from __future__ import annotations

import argparse
from collections.abc import Iterable, Sequence
from datetime import date, datetime, timedelta
from typing import Final

from swardcast.cli.planning_asked import planned_job, planned_on, surfaces_asked
from swardcast.errors import SwardcastError
from swardcast.outlook.ledger import JobFacts
from swardcast.outlook.working_days import working_day_after
from swardcast.planning.compare import When
from swardcast.reading.choices_file import usual_choices
from swardcast.records.club import Surface, SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Grooving, SandInjection, Stripping, Tining
from swardcast.records.planning import Choice

__all__ = ["choices_asked", "left_out", "missing_pace", "overlaps", "when_asked"]

_NEAR: Final = timedelta(days=14)  # work planned so near to the day compared may well be the same: judgement


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
    facts = planned_job(options.instead_of, records, as_of) if options.instead_of else None
    job = facts.job if facts is not None else None
    surfaces = job.surfaces if job is not None else ()
    if options.surfaces is not None:
        surfaces = surfaces_asked(options.surfaces, records)
    today = as_of.astimezone(records.club.time_zone).date()
    starts = _starts(options, facts, today, records)
    pace = options.surfaces_a_day or (job.surfaces_a_day if job is not None else None)
    spare = options.spare_days if options.spare_days is not None else (job.spare_days if job is not None else 0)
    return When(surfaces=surfaces, starts=starts, surfaces_a_day=pace, spare_days=spare, instead_of=job)


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


def left_out(which: str, choices: Sequence[Choice], records: ClubRecords) -> int:
    """Count the club's own choices that are for other surfaces.

    Args:
        which: as for `choices_asked`.
        choices: those that it gave.
        records: the club's records.

    Returns:
        How many; none where only the usual ones were asked for.
    """
    return 0 if which == "usual" else sum(own not in choices for own in records.planning.choices)


def missing_pace(when: When, choices: Sequence[Choice]) -> str:
    """Say what has to be told of the pace of the work, which moves every date.

    Args:
        when: where and when the work would be.
        choices: the choices.

    Returns:
        What to add, or "" where there is one surface, or each choice has a pace.
    """
    count = len(when.surfaces)
    without = [choice for choice in choices if choice.surfaces_a_day is None]
    if count == 1 or when.surfaces_a_day is not None or not without:
        return ""
    some = f" (without a pace: {len(without)} of {len(choices)} choices)" if len(without) < len(choices) else ""
    return (
        f"say how many of the {count} surfaces are finished in a day, as in --surfaces-a-day 6, or with each choice in"
        f" choices.yaml, as in 'surfaces a day: 6'{some}"
    )


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
    mine = when.instead_of.id if when.instead_of is not None else ""
    near = when.starts - _NEAR, when.starts + _NEAR
    found = planned_on(when.surfaces, records, as_of, near)
    return tuple(facts for facts in found if facts.job.id != mine and not facts.progress)
