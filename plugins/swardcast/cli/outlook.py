"""`swardcast outlook`: how every surface stands, with dates and reasons."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterable
from datetime import date, datetime
from typing import Any

from swardcast.cli.common import add_club_options, moment_of, new_parser, print_json, records_of
from swardcast.cli.outlook_fixtures import fixture_lines, fixtures_json
from swardcast.language.voice import Voice, capital
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.hours import reopening_in_words
from swardcast.notices.limits import limit_in_words
from swardcast.notices.reasons import dated_ahead, reason_in_words
from swardcast.outlook.course import assess_course
from swardcast.outlook.job_ranges import dated_milestones
from swardcast.outlook.reopening import HeldUp, Hours
from swardcast.outlook.states import CourseOutlook, DateRange, Milestone, SurfaceOutlook, SurfaceWork
from swardcast.outlook.weather_book import WeatherBook

__all__ = ["parser", "run"]

_KEYS = {
    "reopening": Milestone.REOPENING,
    "settled": Milestone.SETTLED,
    "holes_closed": Milestone.HOLES_CLOSED,
    "back_to_normal": Milestone.BACK_TO_NORMAL,
}


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, 'swardcast outlook --club my-club --as-of "2027-09-14 09:30"')
    add_club_options(options)
    options.add_argument("--all", action="store_true", help="also list surfaces that are simply open")
    options.add_argument(
        "--fixtures", action="store_true", help="only the coming competitions and visitors' days, with their chances"
    )
    options.add_argument(
        "--json", action="store_true", help="print every surface, or with --fixtures every fixture, for a machine"
    )
    return options


def run(options: argparse.Namespace) -> int:
    """Show the outlook."""
    records = records_of(options)
    outlook = assess_course(records, moment_of(options, records), WeatherBook(records.club, records.weather))
    if options.json and options.fixtures:
        print_json(fixtures_json(outlook, records))
        return 0
    if options.json:
        print_json([_as_json(surface, Voice.english(outlook.as_of.date())) for surface in outlook.surfaces.values()])
        return 0
    if options.as_of is None:
        for remark in dated_ahead(records, outlook.as_of, Voice.english(outlook.as_of.date())):
            print(f"Worth another look: {remark}", file=sys.stderr)
    print(f"{records.club.name} as of {Voice.english(date.min).moment(outlook.as_of)}")
    for line in () if options.fixtures else (*_limits(outlook), *_lines(outlook, everything=options.all)):
        print(line)
    for line in fixture_lines(outlook, records):
        print(line)
    return 0


def _as_json(surface: SurfaceOutlook, voice: Voice) -> dict[str, Any]:
    current = surface.current
    dates = {key: _range_json(current.dates[milestone]) if current else None for key, milestone in _KEYS.items()}
    return {
        "id": surface.surface.id,
        "play": surface.play.value,
        "work": current.work.value if current else None,
        "job": current.job.id if current else None,
        **dates,
        "reopening_hours": _hours_json(current.hours) if current else None,
        "reasons": [reason_in_words(reason, voice) for reason in surface.reasons],
    }


def _range_json(given: DateRange) -> dict[str, str | None]:
    days = {"early": given.early, "likely": given.likely, "allow_until": given.allow_until}
    return {name: day.isoformat() if day else None for name, day in days.items()}


def _hours_json(hours: Hours | HeldUp | None) -> dict[str, str] | None:
    match hours:
        case None:
            return None
        case Hours():
            moments = {"early": hours.early, "likely": hours.likely, "latest": hours.latest}
        case HeldUp():
            moments = {"held_up_since": hours.since, "not_before": hours.not_before}
    return {name: moment.isoformat(timespec="minutes") for name, moment in moments.items()}


def _milestone_in_words(work: SurfaceWork, milestone: Milestone, as_of: datetime) -> str:
    if milestone is Milestone.REOPENING:
        return reopening_in_words([work], as_of, Voice.english(as_of.date()))
    return range_in_words(work.dates[milestone], Voice.english(as_of.date()))


def _limits(outlook: CourseOutlook) -> Iterable[str]:
    for held in outlook.limits:
        said = limit_in_words(held, Voice.english(outlook.as_of.date()))
        yield f"{said.name}: {said.value} [{held.source}]"


def _lines(outlook: CourseOutlook, *, everything: bool) -> Iterable[str]:
    voice = Voice.english(outlook.as_of.date())
    for surface in outlook.surfaces.values():
        current = surface.current
        if current is None and surface.play.value == "open" and not everything:
            continue
        work = f"; {current.job.title}: {current.work.value}" if current else ""
        yield f"\n{capital(surface.surface.name)} [{surface.surface.id}]: {surface.play.value}{work}"
        if current is not None:
            for milestone in dated_milestones(current):
                yield f"  {milestone.value}: {_milestone_in_words(current, milestone, outlook.as_of)}"
        for reason in surface.reasons:
            yield f"  - {reason_in_words(reason, voice)} [{reason.source}]"
