"""A club folder -> its records, or everything that is wrong with it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import datetime
from pathlib import Path
from typing import Final
from zoneinfo import ZoneInfo

from swardcast.errors import InputNeedsAttention, Problem, nearest
from swardcast.reading.club_file import club_from, surfaces_from
from swardcast.reading.log_file import LogContext, entries_from
from swardcast.reading.plan_file import jobs_from
from swardcast.reading.weather_files import DailyWeather, daily_weather_from, issued_at_from
from swardcast.reading.yaml_text import Located, read_yaml
from swardcast.records.club import Club, Surface
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Correction, Entry
from swardcast.records.plan import Job
from swardcast.records.weather import Forecast, Weather

__all__ = ["read_club_folder"]

_LARGEST_BYTES: Final = 8_000_000  # no file that a club types or exports is larger; judgement
_READ: Final = (
    "plan/*.yaml",
    "weather/observed.csv",
    "weather/history/*.csv",
    "weather/forecast/*.csv",
    "weather/*.py",
    "*.md",
)
_EXAMPLES: Final = (
    "plan/2027.yaml",
    "log/2027/2027-08-23-0640-morning.md",
    "weather/observed.csv",
    "weather/history/1997-2026.csv",
)
_KNOWN: Final = {"club.yaml", "surfaces.yaml", "plan", "log", "weather", "fixtures.ics", "README.md"}


def read_club_folder(folder: Path) -> ClubRecords:
    """Read a whole club folder.

    Args:
        folder: the folder that holds club.yaml.

    Returns:
        The club's records, complete and checked against each other.

    Raises:
        InputNeedsAttention: with every problem that was found.
    """
    problems: list[Problem] = []
    files = _Files(folder, problems)
    if not folder.is_dir():
        raise InputNeedsAttention(
            [
                Problem(
                    file=str(folder), found="no such folder", expected="a club folder; 'swardcast start DIR' makes one"
                )
            ]
        )
    files.report_strangers()
    files.report_unread()
    club = _club(files, problems)
    surfaces = _surfaces(files, problems)
    weather = _weather(files, club.time_zone if club is not None else ZoneInfo("UTC"), problems)
    jobs = _jobs(files, surfaces, problems) if surfaces is not None else {}
    entries: list[Entry] = []
    if club is not None and surfaces is not None and not _plan_is_broken(problems):
        entries = _entries(files, LogContext(club=club, surfaces=surfaces, jobs=jobs), problems)
    if problems or club is None or surfaces is None:
        raise InputNeedsAttention(problems)
    return ClubRecords(club=club, surfaces=surfaces, jobs=jobs, entries=tuple(entries), weather=weather)


class _Files:
    """Reads text below the club folder and turns what fails into problems."""

    def __init__(self, folder: Path, problems: list[Problem]) -> None:
        self._folder, self._problems = folder, problems

    def name(self, path: Path) -> str:
        return path.relative_to(self._folder).as_posix()

    def report_strangers(self) -> None:
        for path in sorted(self._folder.iterdir()):
            if path.name not in _KNOWN and not path.name.startswith("."):
                expected = f"only: {', '.join(sorted(_KNOWN))}"
                self._problems.append(
                    Problem(
                        file=path.name,
                        found="a file or folder that is not part of a club folder",
                        expected=expected,
                        hint=nearest(path.name, _KNOWN),
                    )
                )

    def report_unread(self) -> None:
        """A misspelt name below plan, log or weather would be passed over in silence: say so instead."""
        for path in sorted(self._folder.glob("[plw]*/**/*")):
            name = self.name(path)
            if path.is_file() and not path.name.startswith(".") and not any(path.match(like) for like in _READ):
                self._problems.append(
                    Problem(
                        file=name, found="a file that is not read", expected=f"names such as {', '.join(_EXAMPLES)}"
                    )
                )

    def text(self, relative: str) -> str | None:
        path = self._folder / relative
        if not path.is_file():
            found = "a folder" if path.is_dir() else "no such file"
            self._problems.append(Problem(file=relative, found=found, expected="this file in the club folder"))
            return None
        try:
            data = path.read_bytes()
            if len(data) > _LARGEST_BYTES:
                self._problems.append(
                    Problem(
                        file=relative,
                        found=f"{len(data) / 1e6:.0f} MB",
                        expected=f"at most {_LARGEST_BYTES / 1e6:.0f} MB",
                    )
                )
                return None
            text = data.decode("utf-8-sig").replace("\r\n", "\n")
        except UnicodeDecodeError as error:
            line = data[: error.start].count(b"\n") + 1
            self._problems.append(
                Problem(file=relative, line=line, found="a character that is not UTF-8", expected="text saved as UTF-8")
            )
            return None
        except OSError as error:
            self._problems.append(
                Problem(
                    file=relative, found=f"a file that cannot be read ({error.strerror})", expected="a readable file"
                )
            )
            return None
        return self._without_controls(text, relative)

    def _without_controls(self, text: str, relative: str) -> str | None:
        for place, character in enumerate(text):
            if character < " " and character not in "\n\t":
                line = text.count("\n", 0, place) + 1
                self._problems.append(
                    Problem(
                        file=relative,
                        line=line,
                        found=f"the control character U+{ord(character):04X}",
                        expected="plain text",
                    )
                )
                return None
        return text

    def below(self, relative: str, pattern: str) -> Iterator[tuple[str, Path]]:
        top = self._folder / relative
        for path in sorted(top.glob(pattern)) if top.is_dir() else ():
            yield self.name(path), path

    def yaml(self, relative: str) -> Located | None:
        text = self.text(relative)
        return read_yaml(text, file=relative, problems=self._problems) if text is not None else None


def _club(files: _Files, problems: list[Problem]) -> Club | None:
    document = files.yaml("club.yaml")
    return club_from(document, file="club.yaml", problems=problems) if document is not None else None


def _surfaces(files: _Files, problems: list[Problem]) -> dict[str, Surface] | None:
    document = files.yaml("surfaces.yaml")
    return surfaces_from(document, file="surfaces.yaml", problems=problems) if document is not None else None


def _plan_is_broken(problems: list[Problem]) -> bool:
    """With a broken plan every log entry would be called a stranger: first things first."""
    return any(problem.file.startswith("plan/") for problem in problems)


def _jobs(files: _Files, surfaces: Mapping[str, Surface], problems: list[Problem]) -> dict[str, Job]:
    jobs: dict[str, Job] = {}
    for name, _ in files.below("plan", "*.yaml"):
        document = files.yaml(name)
        for job in jobs_from(document, file=name, surfaces=surfaces, problems=problems) if document else ():
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
    return jobs


def _entries(files: _Files, context: LogContext, problems: list[Problem]) -> list[Entry]:
    entries: list[Entry] = []
    seen: dict[str, str] = {}
    for name, path in files.below("log", "**/*.md"):
        if path.stem in seen:
            problems.append(
                Problem(
                    file=name,
                    found=f"the name {path.stem!r}, which {seen[path.stem]} has already",
                    expected="a name of its own for each entry",
                )
            )
        seen.setdefault(path.stem, name)
        text = files.text(name)
        if text is not None:
            entries += entries_from(text, name=path.stem, file=name, context=context, problems=problems)
    problems.extend(_dangling(entries, seen))
    return sorted(entries, key=lambda entry: (entry.head.at, entry.head.id))


def _dangling(entries: list[Entry], known: Mapping[str, str]) -> Iterator[Problem]:
    by_id = {entry.head.id: entry for entry in entries}
    for entry in entries:
        if not isinstance(entry, Correction):
            continue
        head, target = entry.head, by_id.get(entry.corrects)
        if target is None and entry.corrects not in known:
            yield Problem(
                file=head.file,
                line=head.line,
                field="corrects",
                found=f"{entry.corrects!r}, which is no entry of the log",
                expected="the name of an earlier entry's file",
                hint=nearest(entry.corrects, known),
            )
        elif target is not None and (isinstance(target, Correction) or target.head.at >= head.at):
            yield Problem(
                file=head.file,
                line=head.line,
                field="corrects",
                found=f"{entry.corrects!r}, which is a correction or not earlier",
                expected="an earlier entry that is no correction",
            )


def _weather(files: _Files, zone: ZoneInfo, problems: list[Problem]) -> Weather:
    observed, history = DailyWeather(), DailyWeather()
    for name, _ in files.below("weather", "observed.csv"):
        _read_days(files, name, observed, problems)
    for name, _ in files.below("weather/history", "*.csv"):
        _read_days(files, name, history, problems)
    forecasts = []
    for name, path in files.below("weather/forecast", "*.csv"):
        issued = issued_at_from(path.stem, lambda moment: moment.replace(tzinfo=zone))
        if issued is None:
            problems.append(
                Problem(
                    file=name,
                    found=f"the name {path.stem!r}",
                    expected="the day and time of issue, such as '2027-09-01T0600.csv'",
                )
            )
            continue
        days = DailyWeather()
        _read_days(files, name, days, problems)
        forecasts.append(Forecast(issued_at=issued, tmean_c=days.tmean_c))
    return Weather(
        observed_c=observed.tmean_c,
        rain_mm=observed.rain_mm,
        history_c=history.tmean_c,
        forecasts=tuple(sorted(forecasts, key=_issue)),
    )


def _issue(forecast: Forecast) -> datetime:
    return forecast.issued_at


def _read_days(files: _Files, name: str, into: DailyWeather, problems: list[Problem]) -> None:
    text = files.text(name)
    if text is not None:
        daily_weather_from(text, file=name, into=into, problems=problems)
