"""One job on a course without weather, with the log as a list of lines: for hours that can be worked out by hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, time
from zoneinfo import ZoneInfo

from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.reopening import HeldUp, Hours
from swardcast.outlook.states import DateRange, JobOutlook, Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.club import HoursOfDay, Surface, SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.log import EntryHead, Progress, Step
from swardcast.records.plan import FollowUp, Job, Play, Stretch

__all__ = ["LONDON", "Course", "at", "entry"]

LONDON = ZoneInfo("Europe/London")
_STEPS = {"started": Step.STARTED, "done": Step.DONE, "held": Step.HELD_UP, "resumed": Step.RESUMED}


def at(moment: str) -> datetime:
    """A moment of 2027 in the club's time: "06-07 07:00". 7 June is a Monday."""
    return datetime.fromisoformat(f"2027-{moment}").replace(tzinfo=LONDON)


def entry(when: datetime, step: str, numbers: Sequence[int], *, job: str = "job", play: Play | None = None) -> Progress:
    """An entry about surfaces by their numbers."""
    head = EntryHead(
        id=f"{when:%m%d%H%M%S}-{step}-{'-'.join(map(str, numbers))}",
        at=when,
        true_from=when,
        by="",
        words="",
        file="log",
        line=1,
    )
    kind = "tee" if job == "tees" else "green"
    names = tuple(f"{kind}-{number}" for number in numbers)
    return Progress(
        head=head,
        step=_STEPS[step],
        job=job,
        surfaces=names,
        because="rain" if step == "held" else "",
        as_done=(),
        play=play,
    )


class Course:
    """18 greens, worked on from 6:30am to 3:30pm, 6 a day: by the plan 90 minutes each."""

    def __init__(
        self,
        demo: ClubRecords,
        *,
        a_day: float = 6,
        count: int = 18,
        follow_up: tuple[float, float] | None = None,
        reopens_after: Stretch | None = None,
        hours: str = "06:30-15:30",
        breaks: Sequence[str] = (),
    ) -> None:
        greens = {f"green-{n}": _surface(SurfaceKind.GREEN, n) for n in range(1, 19)}
        tees = {f"tee-{n}": _surface(SurfaceKind.TEE, n) for n in range(1, 19)}
        job = replace(
            demo.jobs["greens-renovation-2027"],
            id="job",
            announced=date(2027, 1, 4),
            starts=date(2027, 6, 7),
            surfaces=tuple(greens)[:count],
            surfaces_a_day=a_day,
            spare_days=1,
            reopens_after=reopens_after,
            follow_up=FollowUp(from_minutes=follow_up[0], to_minutes=follow_up[1]) if follow_up else None,
        )
        self.records = replace(
            demo,
            club=replace(demo.club, working_hours=_span(hours), breaks=tuple(map(_span, breaks))),
            surfaces={**greens, **tees},
            jobs={"job": job},
            entries=(),
            weather=replace(demo.weather, observed_c={}, history_c={}, forecasts=()),
        )

    def add(self, job: Job) -> None:
        self.records = replace(self.records, jobs={**self.records.jobs, job.id: job})

    def job(self, as_of: str | datetime, *log: Progress, job: str = "job") -> JobOutlook:
        """How the job stands with such a log."""
        moment = at(as_of) if isinstance(as_of, str) else as_of
        records = replace(self.records, entries=tuple(sorted(log, key=lambda one: one.head.at)))
        return assess_jobs(records, moment, WeatherBook(records.club, records.weather))[job]

    def told(self, as_of: str | datetime, *log: Progress, job: str = "job") -> dict[int, Hours | HeldUp]:
        """Hours by number of the surface."""
        works = self.job(as_of, *log, job=job).surfaces
        return {work.surface.hole or 0: work.hours for work in works if work.hours is not None}

    def hours(self, as_of: str | datetime, *log: Progress, job: str = "job") -> dict[int, Hours]:
        return {hole: one for hole, one in self.told(as_of, *log, job=job).items() if isinstance(one, Hours)}

    def days(self, as_of: str | datetime, *log: Progress) -> dict[int, DateRange]:
        return {work.surface.hole or 0: work.dates[Milestone.REOPENING] for work in self.job(as_of, *log).surfaces}


def _surface(kind: SurfaceKind, hole: int) -> Surface:
    return Surface(
        id=f"{kind.value}-{hole}", kind=kind, hole=hole, name=f"{kind.value} {hole}", area_m2=500, grass=None
    )


def _span(text: str) -> HoursOfDay:
    begins, ends = (time.fromisoformat(part) for part in text.split("-"))
    return HoursOfDay(begins=begins, ends=ends)
