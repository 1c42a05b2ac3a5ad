"""What members should hear of, and when: each job replayed over the moments at which something became known.

A date once published moves only when it matters: by two days or more. Every move states its cause. Moments come
from the records (entries, and mornings on which a day's weather became known), never from the clock.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, datetime, time, timedelta
from typing import Final

from swardcast.outlook.causes import Cause, entry_cause, weather_cause
from swardcast.outlook.course import assess_jobs
from swardcast.outlook.play import statements
from swardcast.outlook.states import WIDE_RANGE_DAYS, DateRange, JobOutlook, Milestone, ReasonKind, Work
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import BackToNormal, Entry, GrowthHeldBack, Observation
from swardcast.records.plan import Job, Play
from swardcast.records.standing import standing_entries

__all__ = ["JobChange", "JobStory", "PlayChange", "play_changes", "tell_story"]

MOVE_THAT_MATTERS_DAYS: Final = 2
MOVE_OF_A_WIDE_RANGE_DAYS: Final = 14  # a range told in months does not move by days: judgement
_MORNING: Final = time(7, 0)  # when a new day's weather counts as known to members
_FOLLOWED_AFTER_DONE_DAYS: Final = 120


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class JobChange:
    """Something about a job that members should hear of.

    Args:
        id: name for life, from the record that brought it.
        at: when it became known.
        revision: 1 for the announcement, then 2, 3, ...
        became: surfaces that came into each state of work.
        back_to_normal: the published date after the change.
        before: the date published before, or None when there was none or it did not move.
        cause: why.
        outlook: how the job stood.
        because: the cause in the manager's words, or "".
        entry: the entry of this job that brought it, or None for the weather and for other jobs.
    """

    id: str
    at: datetime
    revision: int
    became: Mapping[Work, tuple[str, ...]]
    back_to_normal: DateRange
    before: DateRange | None
    cause: Cause
    outlook: JobOutlook
    because: str
    entry: Entry | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class JobStory:
    """A job's changes so far, oldest first; the last one carries the published date."""

    job: Job
    changes: tuple[JobChange, ...]

    @property
    def published(self) -> DateRange:
        """The date for back to normal that stands on the site."""
        return self.changes[-1].back_to_normal


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayChange:
    """Play on some surfaces changed from what was last stated."""

    id: str
    at: datetime
    play: Mapping[str, Play]
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Moment:
    at: datetime
    id: str
    entry: Entry | None = None


@dataclass(slots=True)
class _Teller:
    """Hears how a job stands moment by moment.

    Args:
        job: the job.
        book: the club's weather.
        without: back to normal as it would stand at a moment without its entry.
        changes: what was worth telling so far.
        heard: how the job stood at the moment before, or None.
    """

    job: Job
    book: WeatherBook
    without: Callable[[_Moment], DateRange]
    changes: list[JobChange] = field(default_factory=list)
    heard: JobOutlook | None = None

    def hear(self, moment: _Moment, outlook: JobOutlook) -> None:
        last = self.changes[-1] if self.changes else None
        became = _became(last.outlook if last else None, outlook)
        now = outlook.dates[Milestone.BACK_TO_NORMAL]
        before, self.heard = self.heard, outlook
        # An end, and no move of a date.
        said_normal = outlook.work is Work.BACK_TO_NORMAL and isinstance(moment.entry, BackToNormal)
        moved = last is not None and not said_normal and _matters(last.back_to_normal, now)
        rescheduled = last is not None and last.outlook.starts != outlook.starts
        confirmed = last is not None and said_normal and not last.back_to_normal.is_fact
        if last is not None and not (became or moved or rescheduled or confirmed):
            return
        date_told = now if last is None or moved or said_normal or rescheduled else last.back_to_normal
        cause = (
            Cause.ANNOUNCED
            if last is None
            else self._cause(moment, last, outlook, learnt=_taught(before) != _taught(outlook))
        )
        self.changes.append(
            JobChange(
                id=f"{self.job.id}/{moment.id}",
                at=moment.at,
                revision=len(self.changes) + 1,
                became=became,
                back_to_normal=date_told,
                before=last.back_to_normal if last is not None and moved else None,
                cause=cause,
                outlook=outlook,
                because=str(getattr(moment.entry, "because", "")),
                entry=moment.entry if getattr(moment.entry, "job", self.job.id) == self.job.id else None,
            )
        )

    def _cause(self, moment: _Moment, last: JobChange, outlook: JobOutlook, *, learnt: bool) -> Cause:
        """Why it changed: the entry, if the date would not have moved without it; else the weather."""
        if last.outlook.starts != outlook.starts:
            return Cause.PLAN
        now = outlook.dates[Milestone.BACK_TO_NORMAL]
        by_entry = moment.entry is not None and not _matters(last.back_to_normal, self.without(moment))
        if by_entry or not _matters(last.back_to_normal, now):
            return entry_cause(moment.entry, self.job.id)
        if learnt:
            return Cause.LEARNT
        view, before = self.book.at(moment.at), self.book.at(last.at)
        return weather_cause(view, before, last.at.date(), last.back_to_normal, now)


def tell_story(records: ClubRecords, job: Job, as_of: datetime, book: WeatherBook) -> JobStory:
    """Replay a job from its announcement to a moment.

    Args:
        records: the club's records.
        job: a job announced by then.
        as_of: the moment, aware.
        book: the club's weather.

    Returns:
        Its changes; the first is the announcement.
    """

    def without(moment: _Moment) -> DateRange:
        fewer = replace(records, entries=tuple(entry for entry in records.entries if entry is not moment.entry))
        return assess_jobs(fewer, moment.at, book, only=job.id)[job.id].dates[Milestone.BACK_TO_NORMAL]

    teller = _Teller(job=job, book=book, without=without)
    over = False  # by the sum: then no weather changes it any more, but an entry may
    for moment in _moments(records, job, as_of):
        if over and moment.entry is None:
            continue
        outlook = assess_jobs(records, moment.at, book, only=job.id)[job.id]
        teller.hear(moment, outlook)
        over = outlook.work is Work.BACK_TO_NORMAL and (over or moment.entry is None)
    return JobStory(job=job, changes=tuple(teller.changes))


def _moments(records: ClubRecords, job: Job, as_of: datetime) -> Iterator[_Moment]:
    zone = records.club.time_zone
    announced = datetime.combine(job.announced, time(0, 0), tzinfo=zone)
    entries = [entry for entry in records.entries if entry.head.at <= as_of and _concerns(entry, job, records)]
    moments = [_Moment(at=announced, id="announced")]
    moments += [
        _Moment(at=entry.head.at, id=entry.head.id, entry=entry) for entry in entries if entry.head.at > announced
    ]
    worked = [entry.head.true_from.date() for entry in entries if not isinstance(entry, Observation | GrowthHeldBack)]
    if worked:
        last = min(as_of.astimezone(zone).date(), max(worked) + timedelta(days=_FOLLOWED_AFTER_DONE_DAYS))
        moments += _mornings(records, min(worked) + timedelta(days=1), last)
    # What another job teaches can move a plan, until its own work begins.
    until = min(worked) if worked else as_of.astimezone(zone).date()
    moments += [
        _Moment(at=entry.head.at, id=entry.head.id, entry=entry)
        for entry in records.entries
        if isinstance(entry, BackToNormal)
        and entry.job != job.id
        and announced < entry.head.at
        and entry.head.true_from.date() <= until
    ]
    yield from sorted((moment for moment in moments if moment.at <= as_of), key=lambda moment: (moment.at, moment.id))


def _concerns(entry: Entry, job: Job, records: ClubRecords) -> bool:
    if getattr(entry, "job", None) == job.id:
        return True
    if isinstance(entry, GrowthHeldBack):
        return not set(entry.surfaces).isdisjoint(job.surfaces)
    corrected = getattr(entry, "corrects", None)
    return any(other.head.id == corrected and _concerns(other, job, records) for other in records.entries)


def _mornings(records: ClubRecords, first: date, last: date) -> list[_Moment]:
    """Mornings after a day whose weather was recorded: only those can move a date."""
    days = (first + timedelta(days=step) for step in range((last - first).days + 1))
    return [
        _Moment(at=datetime.combine(day, _MORNING, tzinfo=records.club.time_zone), id=f"weather-{day.isoformat()}")
        for day in days
        if day - timedelta(days=1) in records.weather.observed_c
    ]


def _taught(outlook: JobOutlook | None) -> set[str]:
    """The entries whose lessons the dates rest on."""
    recoveries = [work.recovery for work in outlook.surfaces if work.recovery is not None] if outlook else []
    return {lesson.source for recovery in recoveries for lesson in recovery.lessons}


def _became(before: JobOutlook | None, now: JobOutlook) -> dict[Work, tuple[str, ...]]:
    old = {work.surface.id: work.work for work in before.surfaces} if before else {}
    became: dict[Work, list[str]] = {}
    for work in now.surfaces:
        if work.work is not old.get(work.surface.id, Work.PLANNED):
            became.setdefault(work.work, []).append(work.surface.id)
    return {state: tuple(names) for state, names in became.items()}


def _matters(published: DateRange, now: DateRange) -> bool:
    least = MOVE_THAT_MATTERS_DAYS
    if published.early and published.allow_until and (published.allow_until - published.early).days > WIDE_RANGE_DAYS:
        least = MOVE_OF_A_WIDE_RANGE_DAYS
    for old, new in ((published.likely, now.likely), (published.allow_until, now.allow_until)):
        if (old is None) is not (new is None):
            return True
        if old is not None and new is not None and abs((new - old).days) >= least:
            return True
    return False


def play_changes(records: ClubRecords, as_of: datetime) -> list[PlayChange]:
    """Find the moments at which play became other than last stated.

    Args:
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        Changes, oldest first; the first statement counts where something is not open.
    """
    known = records.known_at(as_of)
    last: dict[str, Play] = dict.fromkeys(records.surfaces, Play.OPEN)
    changes = []
    for statement in statements(known, standing_entries(known.entries)):
        changed = {name: play for name, play in statement.play.items() if last[name] is not play}
        last.update(statement.play)
        # What work entries change is told with the job.
        if changed and statement.reason.kind is ReasonKind.MORNING_ENTRY:
            reason = statement.reason
            changes.append(PlayChange(id=reason.source, at=statement.at, play=changed, why=reason.words))
    return changes
