"""A report in words: its sections in their order, the first of which says it all in short."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from statistics import fmean

from swardcast.language.voice import Voice, capital
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.ends import work_in_words
from swardcast.notices.pictures import Table
from swardcast.notices.promises_picture import promises_picture
from swardcast.notices.track_record import ENOUGH_JOBS, compose_track_record
from swardcast.outlook.states import Milestone, Work
from swardcast.planning.notes import made_in_words
from swardcast.planning.periods import period_in_words
from swardcast.planning.report import Report
from swardcast.planning.report_ahead import Ahead
from swardcast.planning.report_job import ReportedJob
from swardcast.planning.report_of_hold_ups import causes_in_words, hold_ups_section
from swardcast.planning.report_of_means import (
    cost_in_all,
    readings_in_short,
    readings_section,
    sand_in_all,
    sand_section,
)
from swardcast.planning.report_of_work import days_section, done_section, ended_in_words
from swardcast.planning.report_places import in_plan
from swardcast.planning.report_sand import Comes
from swardcast.planning.report_sources import sources_section, with_sources_in_short
from swardcast.planning.report_words import Section, Sources, Telling
from swardcast.planning.words import meeting_in_words
from swardcast.records.folder import ClubRecords

__all__ = ["ReportInWords", "report_in_words"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReportInWords:
    """A report as it is read.

    Args:
        title: its title.
        made: as of when it is, and that it is private.
        lead: sentences below that.
        sections: its sections; the last one tells what in the records stands behind the numbers.
    """

    title: str
    made: str
    lead: tuple[str, ...]
    sections: tuple[Section, ...]


def report_in_words(report: Report, records: ClubRecords, *, each_source: bool = False) -> ReportInWords:
    """Word a report in the club's language.

    Args:
        report: the report.
        records: the club's records.
        each_source: whether each row names its sources, by numbers of a list in the end; else that is in short.

    Returns:
        Its sections; one that has nothing to tell says so.
    """
    voice = records.club.voice(report.today)
    told = Telling(report=report, records=records, voice=voice, sources=Sources())
    lead = [voice.say("report-from-records-by-number" if each_source else "report-from-records")]
    if report.period.last >= report.today:
        lead.append(voice.say("report-so-far", day=voice.short_day(report.today)))
    sections = [
        Section(name="in-short", title=voice.say("report-summary-title"), lines=tuple(_summary(told))),
        done_section(told),
        days_section(told),
        sand_section(told),
        readings_section(told),
        hold_ups_section(told),
        _dates_section(told),
        _ahead_section(told),
    ]
    return ReportInWords(
        title=voice.say("report-title", period=period_in_words(report.period, voice)),
        made=made_in_words(report.as_of, voice),
        lead=tuple(lead),
        sections=(*sections, *sources_section(told)) if each_source else tuple(with_sources_in_short(sections, told)),
    )


def _summary(told: Telling) -> Iterator[str]:
    """A line for each of the sections that follow, but the last."""
    report, say, voice = told.report, told.say, told.voice
    jobs = len(report.jobs) + len(report.withdrawn)
    if not jobs:
        yield say("report-summary-no-jobs")
    else:
        yield say("report-summary-jobs", jobs=jobs, parts=voice.joined(list(_states(report, voice))))
    yield voice.sentences([_disturbed_days(told), *ended_in_words(report.disturbed, told)])
    yield _sand_line(told)
    yield readings_in_short(told)
    if not report.hold_ups:
        yield say("report-summary-no-hold-ups")
    else:
        yield say(
            "report-summary-hold-ups",
            count=len(report.hold_ups),
            days=sum(one.working_days for one in report.hold_ups),
            causes=causes_in_words(report.hold_ups, voice),
        )
    judged = [one for one in report.kept if one.is_judged]
    if not judged:
        yield say("report-summary-no-dates")
    else:
        yield say("report-summary-dates", count=len(judged), inside=sum(one.is_inside for one in judged))


def _states(report: Report, voice: Voice) -> Iterator[str]:
    counts = {"finished": 0, "under-way": 0, "not-begun": 0, "not-reported": 0, "called-off": 0}
    for job in report.jobs:
        counts[_state(job, report.today)] += 1
    for state, count in (*counts.items(), ("withdrawn", len(report.withdrawn))):
        if count:
            yield voice.say(f"report-jobs-{state}", count=voice.number(count))


def _state(job: ReportedJob, today: date) -> str:
    if job.outlook.work is Work.CALLED_OFF or (job.facts.called_off is not None and not job.is_done):
        return "called-off"
    if job.is_done:
        return "finished"
    if job.facts.is_begun:
        return "under-way"
    return "not-reported" if job.facts.is_overdue(today) else "not-begun"


def _disturbed_days(told: Telling) -> str:
    report = told.report
    if not report.totals:
        return told.say("report-summary-no-days")
    all_days = told.number((report.known_until - report.period.first).days + 1)
    kinds = [
        told.say(
            "report-kind-days",
            kind=one.name,
            days=told.number(one.work_days.number + one.healing_days.number),
            all=all_days,
        )
        for one in report.totals
    ]
    return told.say("report-summary-days", kinds=told.voice.listed(kinds))


def _sand_line(told: Telling) -> str:
    jobs = told.report.sand.jobs
    if not jobs:
        return told.say("report-summary-no-sand")
    planned, done = [job.planned for job in jobs], [job.done for job in jobs]
    said = [told.say("report-summary-sand", planned=_or_none(planned, told), used=_or_none(done, told))]
    if told.planning.currency:
        said.append(told.say("report-summary-cost", planned=cost_in_all(planned, told), done=cost_in_all(done, told)))
    return told.voice.sentences(said)


def _or_none(sides: Sequence[Comes], told: Telling) -> str:
    """In a sentence no sand is a word, and no dash as in a table."""
    mass = sand_in_all(sides, told)
    return told.say("report-none-of-it") if mass == told.say("planning-none") else mass


def _dates_section(told: Telling) -> Section:
    say, kept = told.say, told.report.kept
    title = say("report-dates-title")
    if not kept:
        return Section(name="dates", title=title, sentences=(say("report-no-dates"),))
    late = [one.late_days for one in kept if one.is_judged and one.late_days is not None]
    sentences = [say("report-no-dates")]
    if late:
        sentences = [
            say(
                "report-dates-counts",
                count=len(late),
                inside=sum(one.is_judged and one.is_inside for one in kept),
                missed=told.voice.number(fmean(map(abs, late)), decimals=1),
            ),
            say("report-dates-many" if len(late) >= ENOUGH_JOBS else "report-dates-few", needed=ENOUGH_JOBS),
        ]
    files = {one.job.id: in_plan(one.job) for one in kept}
    table = Table(
        caption=say("report-table-dates"),
        columns=(
            say("report-column-job"),
            say("report-column-done-on"),
            say("report-column-computed"),
            say("report-column-came"),
            say("report-column-verdict"),
            say("report-column-source"),
        ),
        rows=tuple(
            (line.what, line.work, line.computed, line.came, line.verdict, told.from_places([files[line.notice_id]]))
            for line in compose_track_record(kept, told.voice).lines
        ),
    )
    picture = promises_picture(kept, told.voice)
    return Section(
        name="dates",
        title=title,
        sentences=tuple(sentences),
        tables=(table,),
        pictures=(picture,) if picture is not None else (),
    )


def _ahead_section(told: Telling) -> Section:
    say, ahead = told.say, told.report.ahead
    title = say("report-ahead-title", period=period_in_words(told.report.period.next, told.voice))
    if not ahead:
        return Section(name="ahead", title=title, sentences=(say("report-nothing-ahead"),))
    table = Table(
        caption=say("report-table-ahead"),
        columns=(
            say("report-column-job"),
            say("report-column-where"),
            say("report-column-planned-from"),
            say("report-column-state"),
            say("report-column-normal"),
            say("report-column-meets"),
            say("report-column-source"),
        ),
        rows=tuple(_ahead_row(one, told) for one in ahead),
    )
    notes = (say("planning-fixtures"), say("planning-fixture-words")) if any(one.meets for one in ahead) else ()
    return Section(name="ahead", title=title, tables=(table,), notes=notes)


def _ahead_row(one: Ahead, told: Telling) -> tuple[str, ...]:
    job, voice = one.outlook.job, told.voice
    return (
        job.title,
        told.where(job.surfaces),
        told.short_day(one.outlook.starts),
        capital(work_in_words(one.outlook, voice)),
        capital(range_in_words(one.outlook.dates[Milestone.BACK_TO_NORMAL], voice, briefly=True)),
        voice.clauses(_meets(one, told)) or told.say("report-no-fixtures"),
        told.from_places([in_plan(job)]),
    )


def _meets(one: Ahead, told: Telling) -> Sequence[str]:
    """What each fixture meets, those that meet the same together and those of one name by their days."""
    found: dict[str, dict[str, list[str]]] = {}
    for met in one.meets:
        fixture = met.fixture
        same = found.setdefault(meeting_in_words(met, told.voice), {})
        same.setdefault(fixture.name, []).append(told.days(fixture.first_day, fixture.last_day))
    return [
        told.say(
            "report-meets", meets=meets, fixtures=told.voice.listed([_on_days(*one, told) for one in same.items()])
        )
        for meets, same in found.items()
    ]


def _on_days(name: str, days: Sequence[str], told: Telling) -> str:
    return told.say("report-fixture-days", name=name, days=told.voice.joined(days))
