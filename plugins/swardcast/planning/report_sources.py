"""What stands behind a report: a line for each kind of record; or every place, with the numbers of the rows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date
from typing import Final

from swardcast.notices.pictures import Table
from swardcast.planning.report_places import Place, in_log, in_plan
from swardcast.planning.report_words import Section, Telling
from swardcast.records.folder import ClubRecords
from swardcast.records.log import BackToNormal, Observation, PlanChange, Progress

__all__ = ["sources_section", "with_sources_in_short"]

_OF_ENTRIES: Final = {Progress: "work", BackToNormal: "normal", Observation: "seen", PlanChange: "change"}
_KINDS: Final = ("plan", *_OF_ENTRIES.values(), "other")


def sources_section(told: Telling) -> Iterator[Section]:
    """List each place that a row has named, by its number.

    Args:
        told: what the sections were said with.

    Yields:
        The section; none where no place was named.
    """
    lines = (
        told.say("report-source", number=told.number(number), place=_place(place, told))
        for place, number in told.sources.places.items()
    )
    yield from _section("all-sources", tuple(lines), told)


def with_sources_in_short(sections: Sequence[Section], told: Telling) -> Iterator[Section]:
    """Leave the numbers of sources out of the tables, and say in the end what there is of each kind.

    Args:
        sections: the sections, whose tables have sources in their last column, if at all.
        told: what they were said with.

    Yields:
        The sections, and one on the sources; none of these where no place was named.
    """
    heading = told.say("report-column-source")
    for section in sections:
        yield replace(section, tables=tuple(_without_last(table, heading) for table in section.tables))
    for section in _section("sources", tuple(_in_short(told)), told):
        yield replace(section, notes=(told.say("report-sources-whole"),))


def _section(name: str, lines: tuple[str, ...], told: Telling) -> Iterator[Section]:
    if lines:
        yield Section(name=name, title=told.say("report-sources-title"), lines=lines)


def _place(place: Place, told: Telling) -> str:
    if place.line is None:
        return place.file
    return told.say("report-file-and-line", file=place.file, line=str(place.line))


def _without_last(table: Table, heading: str) -> Table:
    if table.columns[-1] != heading:
        return table
    return replace(table, columns=table.columns[:-1], rows=tuple(row[:-1] for row in table.rows))


def _in_short(told: Telling) -> Iterator[str]:
    """How many places of each kind were named, with the first and the last of their days."""
    known = _kinds_and_days(told.records)
    found: dict[str, list[date]] = {}
    for place in told.sources.places:
        kind, day = known[place]
        found.setdefault(kind, []).append(day)
    for kind in _KINDS:
        if days := found.get(kind):
            yield told.say("report-sources-of", kind=kind, count=len(days), days=told.days(min(days), max(days)))


def _kinds_and_days(records: ClubRecords) -> Mapping[Place, tuple[str, date]]:
    """The kind of each place that a report can name, and its day: of a job the planned one."""
    zone = records.club.time_zone
    known = {in_plan(job): ("plan", job.starts) for job in records.jobs.values()}
    for job in records.jobs.values():
        if job.withdrawn is not None:
            known[Place(job.file, job.withdrawn.line)] = ("change", job.withdrawn.at.astimezone(zone).date())
    for entry in records.entries:
        kind, day = _OF_ENTRIES.get(type(entry), "other"), entry.head.at.astimezone(zone).date()
        known[in_log(entry.head)] = (kind, day)
    return known
