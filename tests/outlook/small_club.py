"""A small invented club whose days are all at 20 C, so that a day is a growth day and dates can be done by hand."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

from swardcast.language.voice import Voice
from swardcast.notices.explain import explain_surface
from swardcast.outlook.course import assess_course
from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.states import CourseOutlook, Milestone, Recovery, SurfaceWork
from swardcast.outlook.weather_book import WeatherBook
from swardcast.reading.folder import read_club_folder
from swardcast.records.folder import ClubRecords

__all__ = ["HOLES", "HOLES_AND_SAND", "SmallClub", "moment"]

ZONE = ZoneInfo("Europe/London")

HOLES = "hollow tining: {diameter: 12.7 mm, spacing: 50.8 x 50.8 mm, depth: 50 mm}"
HOLES_AND_SAND = (HOLES, "topdressing: {sand: 4.8544 mm}")
"""Room by hand: pi / 64 of the surface x 50 mm = 2.4544 mm, so that 2.4 mm stay on top."""

_CLUB = """
name: Saltmarsh Ladder Golf Club
course: the course
site: https://saltmarsh-ladder.example
place: {latitude: 52.0, longitude: 0.0, elevation: 10 m}
time zone: Europe/London
language: en-GB
contact: {office: the office}
decides: The course manager decides.
"""
_SURFACES = """
greens:
  grass: cool-season
  holes: {1: 500 m2, 2: 500 m2, 3: {area: 500 m2, grass: annual meadow-grass}}
tees:
  grass: cool-season
  holes: {1: 250 m2}
"""


def moment(day: str, time: str = "18:00") -> datetime:
    """A moment in 2027, in the club's own time: "06-01" is the first of June."""
    return datetime.fromisoformat(f"2027-{day} {time}").replace(tzinfo=ZONE)


class SmallClub:
    """A folder that grows by jobs and log entries, and is read whenever it is asked."""

    def __init__(self, folder: Path, *, green_speed: str = "10 ft", tmean_c: Callable[[date], float] = lambda _: 20.0):
        self.folder = folder
        standards = f"standards: {{green speed: {green_speed}}}\n" if green_speed else ""
        self._write("club.yaml", _CLUB + standards)
        self._write("surfaces.yaml", _SURFACES)
        self._weather("weather/history/2024-2026.csv", date(2024, 1, 1), 1096, tmean_c)
        self._weather("weather/observed.csv", date(2027, 3, 1), 300, tmean_c)

    def _write(self, name: str, text: str) -> None:
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")

    def _weather(self, name: str, first: date, days: int, tmean_c: Callable[[date], float]) -> None:
        run = [first + timedelta(days=number) for number in range(days)]
        rows = [f"{day},{tmean_c(day) - 4},{tmean_c(day) + 4}" for day in run]
        self._write(name, "\n".join(["date,tmin_c,tmax_c", *rows]) + "\n")

    def job(
        self,
        name: str,
        starts: str,
        *operations: str,
        surfaces: str = "greens 1-2",
        announced: str = "03-01",
        play: str = "closed",
        more: str = "",
    ) -> None:
        """Add a job of one day, in a plan file of its own."""
        work = "".join(f"      - {operation}\n" for operation in operations or HOLES_AND_SAND)
        self._write(
            f"plan/{name}.yaml",
            f"programme: Work {name}\nannounced: 2027-{announced}\njobs:\n  - id: {name}\n    title: {name.capitalize()} work\n"
            f"    starts: 2027-{starts}\n    surfaces: {surfaces}\n    operations:\n{work}    surfaces a day: 9\n"
            f"    while working: {play}\n{more}    why:\n      - It has to be.\n",
        )

    def log(self, name: str, day: str, kind: str, *fields: str, time: str = "10:00") -> str:
        """Write a log entry; gives its name."""
        lines = "".join(f"{field}\n" for field in fields)
        self._write(f"log/2027/{name}.md", f"---\nat: 2027-{day} {time}\nkind: {kind}\n{lines}---\n")
        return name

    def done(self, job: str, day: str, *fields: str, name: str = "") -> str:
        """Enter work as done."""
        return self.log(name or f"{job}-done", day, "work done", f"job: {job}", *fields)

    def normal(self, job: str, day: str, *fields: str, name: str = "") -> str:
        """Enter a job as back to normal."""
        return self.log(name or f"{job}-normal", day, "back to normal", f"job: {job}", *fields)

    def records(self) -> ClubRecords:
        return read_club_folder(self.folder)

    def course(self, as_of: datetime) -> CourseOutlook:
        records = self.records()
        return assess_course(records, as_of, WeatherBook(records.club, records.weather))

    def work(self, job: str, as_of: datetime, surface: str = "green-1") -> SurfaceWork:
        """A job on one surface, as it stands at a moment."""
        records = self.records()
        outlook = assess_jobs(records, as_of, WeatherBook(records.club, records.weather))[job]
        (found,) = (work for work in outlook.surfaces if work.surface.id == surface)
        return found

    def recovery(self, job: str, as_of: datetime, surface: str = "green-1") -> Recovery:
        found = self.work(job, as_of, surface).recovery
        assert found is not None
        return found

    def days(self, job: str, as_of: datetime, surface: str = "green-1") -> dict[Milestone, tuple[int, int, int]]:
        """Early, likely and allow until of each milestone, in days from the work."""
        work = self.work(job, as_of, surface)
        assert work.recovery is not None
        found = {}
        for milestone in (Milestone.SETTLED, Milestone.HOLES_CLOSED, Milestone.BACK_TO_NORMAL):
            given = work.dates[milestone]
            dates = [day for day in (given.early, given.likely, given.allow_until) if day is not None]
            early, likely, until = ((day - work.recovery.start).days for day in dates)
            found[milestone] = (early, likely, until)
        return found

    def explained(self, job: str, as_of: datetime, surface: str = "green-1") -> dict[str, str]:
        """What is explained of a job on a surface, without blanks that do not break: each line and its source."""
        course = self.course(as_of)
        title = f"{job.capitalize()} work"
        (part,) = (
            p
            for p in explain_surface(course.surfaces[surface], course, Voice.english(course.as_of.date()))
            if p.heading.startswith(title)
        )
        return {line.replace("\u00a0", " "): source for line, source in part.lines}
