"""Sections of a report on the work itself: what was planned and done, and for how long play was disturbed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from swardcast.language.voice import capital
from swardcast.notices.ends import work_in_words
from swardcast.notices.events import entry_in_words
from swardcast.notices.pictures import Table
from swardcast.notices.words import as_clause
from swardcast.outlook.dates import RestsOn
from swardcast.outlook.states import Work
from swardcast.planning.report_job import Disturbed, Promise, ReportedJob
from swardcast.planning.report_places import Place, in_log, in_plan
from swardcast.planning.report_words import Section, Telling
from swardcast.planning.work_in_words import all_in_words
from swardcast.records.plan import Job

__all__ = ["days_section", "done_section"]


def done_section(told: Telling) -> Section:
    """Say what was planned and what was done.

    Args:
        told: what it is said with.

    Returns:
        The section; a sentence where there was nothing.
    """
    report, say = told.report, told.say
    title = say("report-done-title")
    if not report.jobs and not report.withdrawn:
        sentences = (say("report-no-jobs"),)
        return Section(name="done", title=title, sentences=sentences, tables=tuple(_private_notes(told)))
    tables = [
        Table(
            caption=say("report-table-jobs"),
            columns=(
                say("report-column-job"),
                say("report-column-where"),
                say("report-column-planned-from"),
                say("report-column-worked"),
                say("report-column-surfaces"),
                say("report-column-state"),
                say("report-column-source"),
            ),
            rows=(*(_row(job, told) for job in report.jobs), *(_withdrawn(job, told) for job in report.withdrawn)),
        )
    ]
    if report.jobs:
        tables.append(
            Table(
                caption=say("report-table-work"),
                columns=(say("report-column-job"), say("report-column-as-planned"), say("report-column-as-done")),
                rows=tuple(
                    (job.job.title, all_in_words(job.job.operations, told.voice), _as_done(job, told))
                    for job in report.jobs
                ),
            )
        )
    changes = tuple(_changes(told))
    if changes:
        columns = (say("report-column-job"), say("report-column-day"), say("report-column-change"))
        tables.append(
            Table(caption=say("report-table-changes"), columns=(*columns, say("report-column-source")), rows=changes)
        )
    return Section(name="done", title=title, tables=(*tables, *_private_notes(told)), notes=(say("report-note-jobs"),))


def _row(job: ReportedJob, told: Telling) -> tuple[str, ...]:
    return (
        job.job.title,
        told.where(job.job.surfaces),
        _planned_from(job, told),
        _worked_on(job, told),
        told.say("report-of", done=told.number(len(job.done)), all=told.number(len(job.job.surfaces))),
        capital(work_in_words(job.outlook, told.voice)),
        told.from_places(job.sources),
    )


def _planned_from(job: ReportedJob, told: Telling) -> str:
    day = told.short_day(job.job.starts)
    if job.outlook.is_put_off:
        return told.say("report-put-off", day=day)
    if job.facts.starts == job.job.starts:
        return day
    return told.say("report-moved", day=day, now=told.short_day(job.facts.starts))


def _worked_on(job: ReportedJob, told: Telling) -> str:
    first, last = job.first_day_done, job.last_day_done
    if first is None:
        return told.say("planning-none")
    if last is not None:
        return told.days(first, last)
    if job.outlook.work is Work.CALLED_OFF or job.facts.called_off is not None:
        done = [work.done_at.date() for work in job.done if work.done_at is not None]
        return told.days(first, max(done, default=first))
    return told.say("report-since", day=told.short_day(first))


def _as_done(job: ReportedJob, told: Telling) -> str:
    if not job.done:
        return told.say("planning-none")
    sets = [
        told.say(
            "report-done-otherwise",
            places=told.where(work.surface.id for work in works),
            work=all_in_words(operations, told.voice),
        )
        for works, operations in job.done_otherwise
    ]
    return capital(told.voice.clauses(sets)) if sets else told.say("report-as-planned")


def _withdrawn(job: Job, told: Telling) -> tuple[str, ...]:
    none = told.say("planning-none")
    of = told.say("report-of", done=told.number(0), all=told.number(len(job.surfaces)))
    state = capital(told.say("report-withdrawn"))
    places = told.from_places([in_plan(job)])
    return (job.title, told.where(job.surfaces), told.short_day(job.starts), none, of, state, places)


def _changes(told: Telling) -> Iterator[tuple[str, ...]]:
    """Changes of plan as members read them, and why a job was taken out of the plan."""
    for job in told.report.jobs:
        for change in job.facts.changes:
            day = change.head.true_from.date()
            said = entry_in_words(change, told.records, told.voice)
            yield job.job.title, told.short_day(day), said, told.from_places([in_log(change.head)])
    for gone in told.report.withdrawn:
        if gone.withdrawn is not None:
            day = gone.withdrawn.at.astimezone(told.records.club.time_zone).date()
            said = told.voice.sentence(as_clause(gone.withdrawn.because))
            place = Place(gone.file, gone.withdrawn.line)
            yield gone.title, told.short_day(day), said, told.from_places([place])


def _private_notes(told: Telling) -> Iterator[Table]:
    """What the club noted for itself, as typed."""
    say, notes = told.say, told.report.notes
    if notes:
        columns = (say("report-column-about"), say("report-column-day"), say("report-column-note"))
        rows = (
            (
                one.job.title if one.job is not None else capital(told.records.club.course),
                told.short_day(one.on),
                one.words,
                told.from_places([one.place]),
            )
            for one in notes
        )
        yield Table(
            caption=say("report-table-notes"), columns=(*columns, say("report-column-source")), rows=tuple(rows)
        )


def days_section(told: Telling) -> Section:
    """Say for how long play was disturbed, beside what members were promised.

    Args:
        told: what it is said with.

    Returns:
        The section; a sentence where nothing was disturbed.
    """
    report, say = told.report, told.say
    title = say("report-disturbed-title")
    if not report.disturbed:
        return Section(name="days", title=title, sentences=(say("report-nothing-disturbed"),))
    promises = Table(
        caption=say("report-table-promises"),
        columns=(
            say("report-column-job"),
            say("report-column-announced"),
            say("report-column-before"),
            say("report-column-came"),
            say("report-column-promised-days"),
            say("report-column-came-days"),
            say("report-column-source"),
        ),
        rows=tuple(_promised(one, told) for one in report.disturbed),
    )
    kinds = Table(
        caption=say("report-table-kinds"),
        columns=(
            say("report-column-kind"),
            say("report-column-jobs"),
            say("report-column-work-days"),
            say("report-column-healing-days"),
            say("report-column-all-days"),
            say("report-column-fixtures"),
        ),
        rows=tuple(
            (
                one.name,
                *map(
                    told.number,
                    (
                        one.jobs,
                        one.work_days.number,
                        one.healing_days.number,
                        one.work_days.number + one.healing_days.number,
                        one.fixtures.number,
                    ),
                ),
            )
            for one in report.totals
        ),
    )
    notes = [say("report-note-days"), say("report-note-kinds", day=told.short_day(report.known_until))]
    if not all(one.is_over for one in report.disturbed):
        notes.append(say("report-note-not-called"))
    sentences = tuple(ended_in_words(report.disturbed, told))
    return Section(name="days", title=title, sentences=sentences, tables=(promises, kinds), notes=tuple(notes))


def _promised(one: Disturbed, told: Telling) -> tuple[str, ...]:
    said = told.promise(one.announced), told.promise(one.before)
    return (
        one.outlook.job.title,
        capital(said[0]),
        told.say("report-as-announced") if said[0] == said[1] else capital(said[1]),
        _came(one, told),
        _days_promised(one.before, told),
        _days_that_came(one, told),
        told.from_places(one.sources),
    )


def _came(one: Disturbed, told: Telling) -> str:
    """The day of the end; else how the job stands, and on how many surfaces an entry has ended it."""
    if one.normal_on is not None:
        return told.voice.short_day(one.normal_on)
    stands = work_in_words(one.outlook, told.voice)
    if not one.ended_in_part:
        return capital(stands)
    return told.say(
        "report-ended-in-part",
        count=told.number(len(one.ended_in_part)),
        all=told.number(len(one.outlook.surfaces)),
        day=told.voice.short_day(max(one.ended_in_part)),
        stands=stands,
    )


def _days_that_came(one: Disturbed, told: Telling) -> str:
    """Its days; so far, or by the sum alone, where no entry ended it."""
    days = told.number(one.days)
    if one.is_over:
        return days
    return told.say("report-days-by-sum" if one.outlook.work.is_over else "report-so-far-days", days=days)


def _days_promised(promise: Promise | None, told: Telling) -> str:
    if promise is None or promise.likely_days is None or promise.allowed_days is None:
        return told.say("planning-none")
    likely, allowed = promise.likely_days, promise.allowed_days
    if promise.normal.rests_on is RestsOn.USUAL_TIME and promise.normal.early is not None:
        first = (promise.normal.early - promise.starts).days
        return told.say("planning-usually", first=told.number(first), last=told.number(allowed))
    return told.say("planning-likely-until", likely=told.number(likely), until=told.number(allowed))


def ended_in_words(disturbed: Iterable[Disturbed], told: Telling) -> Iterator[str]:
    """Say what the jobs that are over come to, beside what was promised for them.

    Args:
        disturbed: jobs.
        told: what it is said with.

    Yields:
        A sentence, or nothing where none is over that members were promised anything of.
    """
    ended = [one for one in disturbed if one.is_compared]
    if ended:
        yield told.say(
            "report-summary-ended",
            count=len(ended),
            days=told.number(sum(one.days for one in ended)),
            likely=told.number(sum(one.likely_days for one in ended)),
            allowed=told.number(sum(one.allowed_days for one in ended)),
        )
