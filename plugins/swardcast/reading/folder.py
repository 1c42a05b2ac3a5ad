"""A club folder -> its records, or everything that is wrong with it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from zoneinfo import ZoneInfo

from swardcast.errors import InputNeedsAttention, Problem
from swardcast.reading.choices_file import choices_from
from swardcast.reading.club_file import zone_told
from swardcast.reading.files import CHOICES, FIXTURES, Files
from swardcast.reading.format_changes import explained, find_changes, refuse_newer
from swardcast.reading.house_style import groups_from
from swardcast.reading.log_file import entries_from
from swardcast.reading.log_names import LogContext
from swardcast.reading.log_order import (
    before_the_label_was_read,
    dangling,
    moved_the_wrong_way,
    never_done,
    postponed_once_begun,
)
from swardcast.reading.plan_file import jobs_from
from swardcast.reading.planning_block import planning_from
from swardcast.reading.short_codes import alike_in_short
from swardcast.reading.surfaces_file import surfaces_from
from swardcast.reading.weather_folder import club_in, weather_in
from swardcast.reading.withdrawals import entries_of_withdrawn, led_nowhere
from swardcast.records.club import Club, Surface
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry, is_taken_name
from swardcast.records.plan import Job
from swardcast.records.planning import Planning
from swardcast.records.standing import as_entered, standing_entries

__all__ = ["read_club_folder"]


def read_club_folder(folder: Path, unwritten: Mapping[str, str] | None = None) -> ClubRecords:
    """Read a whole club folder.

    Args:
        folder: the folder that holds club.yaml.
        unwritten: text of log entries that are to be written, by path below the folder; read as if they stood there.

    Returns:
        The club's records, complete and checked against each other.

    Raises:
        InputNeedsAttention: with every problem that was found. Those of a file that only planning needs are put into
            the records where there are no others: nothing private stops the site.
    """
    problems: list[Problem] = []
    files = Files(folder, problems, unwritten)
    if not folder.is_dir():
        raise InputNeedsAttention(
            [
                Problem(
                    file=str(folder), found="no such folder", expected="a club folder; 'swardcast start DIR' makes one"
                )
            ]
        )
    if (folder / "club.yaml").is_file():
        refuse_newer(files.club_file())
    files.report_strangers()
    files.report_unread()
    for name, _ in files.below("pages", "**/*.md"):
        files.text(name)  # of which Pelican makes pages; here its faults are told with file and line
    club = club_in(files, problems)
    surfaces = _surfaces(files, problems)
    if surfaces is not None:
        club = _with_groups(files, club, surfaces, problems)
    weather = weather_in(files, club, problems)
    zone = club.time_zone if club is not None else _zone(files)
    before = len(problems)
    jobs = _jobs(files, surfaces, zone or ZoneInfo("UTC"), problems)
    all_jobs = len(problems) == before and surfaces is not None
    entries: list[Entry] = []
    if zone is not None:
        context = LogContext(zone=zone, surfaces=surfaces, jobs=jobs, all_jobs=all_jobs)
        entries = _entries(files, context, problems)
    fixtures = _fixtures(files, zone, jobs, entries, problems)
    planning = _planning(files, club, problems)
    problems = explained(problems, find_changes(files))
    if club is None or surfaces is None or any(problem.file != CHOICES for problem in problems):
        raise InputNeedsAttention(problems)
    return ClubRecords(
        club=club,
        surfaces=surfaces,
        jobs=jobs,
        entries=tuple(entries),
        weather=weather,
        fixtures=fixtures,
        planning=replace(planning, faults=tuple(problems)),
    )


def _zone(files: Files) -> ZoneInfo | None:
    document = files.club_file()
    return zone_told(document) if document is not None else None


def _planning(files: Files, club: Club | None, problems: list[Problem]) -> Planning:
    document = files.club_file() if club is not None else None  # checked then
    planning = planning_from(document) if document is not None else Planning()
    for name, _ in files.below("", CHOICES):
        told = files.yaml(name)
        if told is not None:
            planning = replace(planning, choices=choices_from(told, file=name, problems=problems))
    return planning


def _with_groups(
    files: Files, club: Club | None, surfaces: Mapping[str, Surface], problems: list[Problem]
) -> Club | None:
    document = files.club_file()
    if document is None:
        return club
    groups = groups_from(document, file="club.yaml", surfaces=surfaces, problems=problems)
    return replace(club, groups=groups) if club is not None else None


def _surfaces(files: Files, problems: list[Problem]) -> dict[str, Surface] | None:
    document = files.yaml("surfaces.yaml")
    return surfaces_from(document, file="surfaces.yaml", problems=problems) if document is not None else None


def _jobs(
    files: Files, surfaces: Mapping[str, Surface] | None, zone: ZoneInfo, problems: list[Problem]
) -> dict[str, Job]:
    jobs: dict[str, Job] = {}
    for name, _ in files.below("plan", "*.yaml"):
        document = files.yaml(name)
        if document is None:
            continue
        for job in jobs_from(document, file=name, surfaces=surfaces, zone=zone, problems=problems):
            if job.id in jobs:
                first = jobs[job.id]
                problems.append(
                    Problem(
                        file=name,
                        line=job.line,
                        field="id",
                        found=f"{job.id!r} a second time",
                        expected=f"an id of its own; {first.file}, line {first.line}, has this one",
                    )
                )
            jobs.setdefault(job.id, job)
    problems.extend(alike_in_short(jobs.values()))
    problems.extend(led_nowhere(jobs, zone))
    return jobs


def _entries(files: Files, context: LogContext, problems: list[Problem]) -> list[Entry]:
    entries: list[Entry] = []
    seen: dict[str, str] = {}
    for name, path in files.below("log", "**/*.md"):
        stem = path.stem
        if stem in seen:
            problems.append(
                Problem(
                    file=name,
                    found=f"the name {stem!r}, which {seen[stem]} has already",
                    expected="a name of its own for each entry",
                )
            )
        if stem.endswith("-instead"):
            found, expected = (
                f"the name {stem!r}",
                "a name that does not end in '-instead', as corrections' entries do",
            )
            problems.append(Problem(file=name, found=found, expected=expected))
        if is_taken_name(stem):
            found = f"the name {stem!r}, under which the feeds have news that no entry makes"
            hint = "Begin it with its day, as in '2027-08-23-1540-done.md'."
            problems.append(Problem(file=name, found=found, expected="another name", hint=hint))
        seen.setdefault(stem, name)
        text = files.text(name)
        if text is not None:
            entries += entries_from(text, name=stem, file=name, context=context, problems=problems)
    against_each_other = list(dangling(entries, seen))
    told_already = [*problems, *against_each_other]
    if context.all_jobs and not any(problem.file.startswith("log/") for problem in told_already):
        standing = standing_entries(entries)
        against_each_other += never_done(standing, context.jobs, context.surfaces or {})
        against_each_other += moved_the_wrong_way(standing, context.jobs)
        against_each_other += postponed_once_begun(standing)
        against_each_other += before_the_label_was_read(standing, context.jobs)
        against_each_other += entries_of_withdrawn(entries, context.jobs)
    problems += (_on_its_line(problem, context) for problem in against_each_other)
    return list(as_entered(entries))


def _on_its_line(problem: Problem, context: LogContext) -> Problem:
    """Name the line of the field, where what was found is of an entry that stands in its own file."""
    document = context.documents.get(problem.file)
    if document is None:
        return problem
    is_instead = document.lines.get(("instead",)) == problem.line
    path = ("instead", problem.field) if is_instead else (problem.field,)
    return replace(problem, line=document.line(path), field=document.name(path))


def _fixtures(
    files: Files, zone: ZoneInfo | None, jobs: Mapping[str, Job], entries: list[Entry], problems: list[Problem]
) -> tuple[Fixture, ...]:
    text = next((files.text(name) for name, _ in files.below("", FIXTURES)), None)
    if text is None:
        return ()
    # Reading calendars takes a while to load, and a club may have none.
    from swardcast.reading.fixtures_file import days_that_matter, fixtures_from  # noqa: PLC0415

    days = days_that_matter(jobs.values(), entries) if zone is not None else None
    return fixtures_from(text, file=FIXTURES, zone=zone or ZoneInfo("UTC"), days=days, problems=problems)
