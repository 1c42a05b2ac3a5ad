"""The committee's report for a period: what was planned and what came of it, from the club's own records.

It counts nothing a second time: states and dates are the outlook's, promises those of each job's story, days of
disturbance of a season those of the season's page, sand and cost those of a comparison of choices.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime

from swardcast.notices.matter import Matter
from swardcast.notices.season_job import season_job
from swardcast.notices.season_totals import KindTotals, season_totals
from swardcast.notices.spans import first_day_of_work
from swardcast.outlook.job_ranges import without_called_off
from swardcast.outlook.ledger import JobFacts, job_facts
from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.states import JobOutlook
from swardcast.outlook.story import tell_story
from swardcast.outlook.track_record import Kept, track_record
from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.what_if import as_the_manager_knows
from swardcast.planning.blocked_days import work_calendar
from swardcast.planning.periods import Period
from swardcast.planning.report_ahead import Ahead, jobs_ahead
from swardcast.planning.report_hold_ups import HoldUp, hold_ups_in
from swardcast.planning.report_job import Disturbed, ReportedJob, disturbed_by, last_day_of_disturbance
from swardcast.planning.report_notes import PrivateNote, private_notes_in
from swardcast.planning.report_readings import Readings, readings_in
from swardcast.planning.report_sand import SandOfPeriod, sand_in
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job
from swardcast.records.standing import standing_entries

__all__ = ["Report", "report_of"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Report:
    """What a period brought.

    Args:
        period: its days.
        as_of: the moment up to which the records are known, local.
        jobs: jobs that were planned for it or worked on in it, by their first day.
        withdrawn: jobs planned for it that were taken out of the plan.
        notes: what the club noted for itself on these jobs and in the period's entries.
        disturbed: jobs of which anything was worked on, healed or ended in it, by their first day.
        totals: days on which each kind of surface was disturbed in it, counted as on the page of the season.
        sand: sand, cost and other materials of it, by the days of the plan and of the log.
        readings: readings of the course.
        hold_ups: hold-ups that began in it.
        kept: promises whose end came in it, and those of jobs finished in it that have no end yet; oldest first.
        ahead: what is planned for the period that follows.
    """

    period: Period
    as_of: datetime
    jobs: tuple[ReportedJob, ...]
    withdrawn: tuple[Job, ...]
    notes: tuple[PrivateNote, ...]
    disturbed: tuple[Disturbed, ...]
    totals: tuple[KindTotals, ...]
    sand: SandOfPeriod
    readings: tuple[Readings, ...]
    hold_ups: tuple[HoldUp, ...]
    kept: tuple[Kept, ...]
    ahead: tuple[Ahead, ...]

    @property
    def today(self) -> date:
        """The day of the report."""
        return self.as_of.date()

    @property
    def known_until(self) -> date:
        """The last day of the period that is known."""
        return min(self.period.last, self.today)


def report_of(records: ClubRecords, as_of: datetime, book: WeatherBook, period: Period) -> Report:
    """Gather what a period brought.

    Assumes that a job belongs to the period when its first day, as planned or as it stands now, or a day of its work
    lies in it.

    Args:
        records: the club's records.
        as_of: the moment, aware; what was entered later does not exist.
        book: the club's weather.
        period: the days; the first is not after that moment.

    Returns:
        The report.
    """
    local = as_of.astimezone(records.club.time_zone)
    today = local.date()
    known = as_the_manager_knows(records, as_of)
    everything = replace(known, jobs={name: _heard_of(job, today) for name, job in known.jobs.items()})
    outlooks = assess_jobs(everything, as_of, book)
    entries = standing_entries(known.entries)
    facts = {name: job_facts(job, entries) for name, job in known.jobs.items()}
    order = sorted(outlooks, key=lambda name: (first_day_of_work(outlooks[name]), name))
    worked = [name for name in order if _belongs(facts[name], outlooks[name], period, today)]
    disturbing = [name for name in order if _disturbs(facts[name], outlooks[name], period, today)]
    stories = {name: tell_story(everything, outlooks[name].job, as_of, book) for name in disturbing}
    voice = records.club.voice(today)
    matters = [
        Matter(
            outlook=without_called_off(outlooks[name]),
            story=stories[name],
            records=everything,
            limits=(),
            holes_out_of_play=frozenset(),
            as_of=local,
            voice=voice,
        )
        for name in disturbing
    ]
    return Report(
        period=period,
        as_of=local,
        jobs=tuple(ReportedJob(facts=facts[name], outlook=outlooks[name]) for name in worked),
        withdrawn=tuple(job for job in records.jobs.values() if job.is_withdrawn(as_of) and period.has(job.starts)),
        notes=private_notes_in(known, [known.jobs[name] for name in worked], period.first, period.last),
        disturbed=tuple(disturbed_by(facts[name], outlooks[name], stories[name], local) for name in disturbing),
        totals=season_totals(
            [season_job(matter) for matter in matters],
            known.fixtures,
            (period.first, min(period.last, today)),
            voice,
        ),
        sand=sand_in(records, as_of, period.first, period.last),
        readings=readings_in(entries, period.first, period.last, records.planning.targets),
        hold_ups=hold_ups_in(
            entries, known.jobs, (period.first, period.last), today, work_calendar(records, period.first, today)
        ),
        kept=tuple(_kept_in(track_record(records, as_of, book), period)),
        ahead=jobs_ahead(
            [outlooks[name] for name in order], known.fixtures, period.next.first, period.next.last, today
        ),
    )


def _heard_of(job: Job, today: date) -> Job:
    """The manager knows of it, whether or not members do."""
    return replace(job, announced=min(job.announced, today))


def _belongs(facts: JobFacts, outlook: JobOutlook, period: Period, today: date) -> bool:
    if period.has(facts.job.starts) or (period.has(facts.starts) and facts.put_off is None):
        return True
    if not facts.is_begun:
        return False
    done = [work.done_at.date() for work in outlook.surfaces if work.done_at is not None]
    last = max(done) if len(done) == len(outlook.surfaces) else today
    if outlook.unreported is not None:
        last = outlook.unreported.last_report.date()
    return first_day_of_work(outlook) <= period.last and last >= period.first


def _disturbs(facts: JobFacts, outlook: JobOutlook, period: Period, today: date) -> bool:
    if not facts.is_begun:
        return False
    return first_day_of_work(outlook) <= period.last and last_day_of_disturbance(outlook, today) >= period.first


def _kept_in(kept: Sequence[Kept], period: Period) -> Sequence[Kept]:
    return [one for one in kept if period.has(one.normal_on) or (one.normal_on is None and period.has(one.done_on))]
