"""A report for a machine: the same facts as in its sections, each with the places in the records behind it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from swardcast.cli.private_tables import flat
from swardcast.language.voice import slug_of
from swardcast.outlook.states import DateRange
from swardcast.planning.costs import Cost
from swardcast.planning.report import Report
from swardcast.planning.report_job import Disturbed, Promise, ReportedJob
from swardcast.planning.report_of_hold_ups import sort_of
from swardcast.planning.report_places import Place, in_log, in_plan
from swardcast.planning.report_readings import Readings
from swardcast.planning.report_sand import SandOfJob
from swardcast.records.folder import ClubRecords

__all__ = ["report_json"]


def report_json(report: Report, records: ClubRecords) -> dict[str, Any]:
    """Lay a report out for a machine.

    Args:
        report: the report.
        records: the club's records.

    Returns:
        Values that JSON knows; days as ISO 8601 has them, masses in tonnes, money in the club's currency.
    """
    voice = records.club.voice(report.today)
    return {
        "as_of": report.as_of.isoformat(timespec="minutes"),
        "first_day": report.period.first.isoformat(),
        "last_day": report.period.last.isoformat(),
        "currency": records.planning.currency or None,
        "jobs": [_job(one) for one in report.jobs],
        "withdrawn": [
            {"id": job.id, "planned_from": job.starts.isoformat(), "sources": _named([in_plan(job)])}
            for job in report.withdrawn
        ],
        "private_notes": [
            {
                "job": one.job.id if one.job is not None else None,
                "on": flat(one.on),
                "words": one.words,
                "sources": _named([one.place]),
            }
            for one in report.notes
        ],
        "disturbed": [_disturbed(one) for one in report.disturbed],
        "days_by_kind": [
            {
                "surfaces": one.name,
                "jobs": one.jobs,
                "work_days": one.work_days.number,
                "healing_days": one.healing_days.number,
                "fixtures": one.fixtures.number,
            }
            for one in report.totals
        ],
        "sand": [_sand(one) for one in report.sand.jobs],
        "readings": [_readings(one) for one in report.readings],
        "hold_ups": [
            {
                "job": one.job.id,
                "surfaces": list(one.entry.surfaces),
                "began_on": one.began_on.isoformat(),
                "ended_on": flat(one.ended_on),
                "working_days": one.working_days,
                "cause": one.entry.because,
                "sort": sort_of(one, voice),
                "sources": _named(in_log(entry.head) for entry in (one.entry, one.ended_by) if entry is not None),
            }
            for one in report.hold_ups
        ],
        "dates": [
            {
                "job": one.job.id,
                "done_on": one.done_on.isoformat(),
                **_range("computed", one.promised),
                "normal_on": flat(one.normal_on),
                "late_days": one.late_days,
                "inside": one.is_inside if one.is_judged else None,
                "sources": _named([in_plan(one.job)]),
            }
            for one in report.kept
        ],
        "ahead": [
            {
                "job": one.outlook.job.id,
                "planned_from": one.outlook.starts.isoformat(),
                "fixtures": [
                    {"id": met.fixture.id, "in_work": met.in_work.value, "chance_not_normal": flat(met.not_normal)}
                    for met in one.meets
                ],
                "sources": _named([in_plan(one.outlook.job)]),
            }
            for one in report.ahead
        ],
    }


def _named(places: Iterable[Place]) -> list[str]:
    return [str(place) for place in places]


def _range(name: str, given: DateRange) -> dict[str, Any]:
    days = {"early": given.early, "likely": given.likely, "allow_until": given.allow_until}
    return {f"{name}_{end}": flat(day) for end, day in days.items()}


def _job(one: ReportedJob) -> dict[str, Any]:
    return {
        "id": one.job.id,
        "title": one.job.title,
        "planned_from": one.job.starts.isoformat(),
        "planned_from_now": None if one.outlook.is_put_off else one.facts.starts.isoformat(),
        "first_day": flat(one.first_day_done),
        "last_day": flat(one.last_day_done),
        "surfaces": len(one.job.surfaces),
        "surfaces_done": len(one.done),
        "done_otherwise": [work.surface.id for works, _ in one.done_otherwise for work in works],
        "state": slug_of(one.outlook.work),
        "sources": _named(one.sources),
    }


def _disturbed(one: Disturbed) -> dict[str, Any]:
    return {
        "job": one.outlook.job.id,
        "first_day": one.first.isoformat(),
        **_promise("announced", one.announced),
        **_promise("before_the_work", one.before),
        "normal_on": flat(one.normal_on),
        "days": one.days,
        "is_over": one.is_over,
        "sources": _named(one.sources),
    }


def _promise(name: str, promise: Promise | None) -> dict[str, Any]:
    if promise is None:
        return {name: None}
    told = {**_range("normal", promise.normal), "told_on": promise.told_on.isoformat()}
    return {name: {**told, "likely_days": promise.likely_days, "allowed_days": promise.allowed_days}}


def _sand(one: SandOfJob) -> dict[str, Any]:
    return {
        "job": one.job.id,
        "planned_t": flat(one.planned.sand_t),
        "used_t": flat(one.done.sand_t),
        **_cost("planned", one.planned.cost),
        **_cost("as_done", one.done.cost),
        "sources": _named(one.sources),
    }


def _cost(name: str, cost: Cost | None) -> dict[str, Any]:
    return {
        f"cost_{name}": flat(cost.in_all) if cost is not None else None,
        f"cost_{name}_is_whole": cost.is_whole if cost is not None else None,
    }


def _readings(one: Readings) -> dict[str, Any]:
    target = one.target
    return {
        "name": one.name,
        "target": target.typed if target is not None else None,
        "taken": [
            {
                "on": taken.on.isoformat(),
                "surfaces": list(taken.surfaces),
                "typed": taken.typed,
                "value": flat(taken.found.value),
                "unit": taken.found.meter.value,
                "beside_target": taken.beside.value if taken.beside is not None else None,
                "sources": _named([taken.place]),
            }
            for taken in one.taken
        ],
    }
