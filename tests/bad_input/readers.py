"""Every reader of the club's files as a function from the bytes of one file to problems, in a club that is else whole.

For `fuzz` and for the laws that Hypothesis tries: a reader gives records, or problems that name the file; it never
raises anything else.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from io import BytesIO
from pathlib import Path
from typing import Final
from zipfile import ZIP_DEFLATED, ZipFile

from swardcast.errors import InputNeedsAttention, Problem
from swardcast.reading.badge_file import BadgeError, badge_from
from swardcast.reading.choices_file import choices_from
from swardcast.reading.files import FIXTURES, Files
from swardcast.reading.fixtures_file import days_that_matter, fixtures_from
from swardcast.reading.folder import read_club_folder
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
from swardcast.reading.sheet_file import sheet_rows_from
from swardcast.reading.short_codes import alike_in_short
from swardcast.reading.sources_file import sources_from
from swardcast.reading.station_file import station_weather_from
from swardcast.reading.surfaces_file import surfaces_from
from swardcast.reading.weather_files import DailyWeather, daily_weather_from
from swardcast.reading.weather_folder import club_in, weather_in
from swardcast.reading.withdrawals import entries_of_withdrawn, led_nowhere
from swardcast.reading.yaml_text import Located
from swardcast.records.folder import ClubRecords
from swardcast.records.log_sheet import LogSheet
from swardcast.records.readings import RainCount
from swardcast.records.standing import as_entered, standing_entries
from swardcast.records.weather_setup import Clock, StationFile

__all__ = ["Readers", "cells", "packed_sheet", "problems_told", "sheet_xml"]

ENTRY: Final = "2027-08-23-1140-greens-1-to-3-done"
_LOG: Final = f"log/2027/{ENTRY}.md"
_STATION: Final = StationFile(
    day="Day", time=None, temperature=None, lowest="Low", highest="High", rain="Rain", fahrenheit=False, inches=True,
    written="day.month.year", delimiter=";", decimal_comma=True, missing=("--", "-999"), readings=False,
    rain_count=RainCount.EACH_ROW, clock=Clock.LOCAL, encoding="cp1252",
)  # fmt: skip
_LOGGER: Final = StationFile(
    day="Day", time="Time", temperature="Out", lowest=None, highest=None, rain="Rain", fahrenheit=True, inches=False,
    written="month/day/year hour:minute am/pm", delimiter=",", decimal_comma=False, missing=(), readings=True,
    rain_count=RainCount.SINCE_MIDNIGHT, clock=Clock.LOCAL, encoding="utf-16",
)  # fmt: skip
_SHEET: Final = LogSheet(
    columns={"day": "Date", "time": "Time", "kind": "What", "job": "Job", "surfaces": "Where", "sand": "Sand"},
    kinds={}, plays={}, written="day/month/year hour:minute", delimiter=";", decimal_comma=True, encoding="cp1252",
    sheet="",
)  # fmt: skip
_SVG: Final = b"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'><path d='M0 0h9v9z'/></svg>"
_STATION_ROWS: Final = b"Day;Low;High;Rain\n23.08.2027;8,5;17,1;0,4\n24.08.2027;--;14,0;-999\n"
_LOGGER_ROWS: Final = b"Station,x\nDay,Time,Out,Rain\n8/23/2027,02:05 pm,57.2,0.1\n8/23/2027,03:05 pm,58,0.2\n"
_SHEET_ROWS: Final = b"Date;Time;What;Job;Where;Sand\n26/08/2027;15:40;done;greens-renovation-2027;greens 13-15;3,2 t\n"
_PHRASES: Final = (
    b"site-over = Done with\nkind-rolling =\n    .do = Putt as you like.\n-own = a term\nsite-other = { -own }\n"
)

Reader = Callable[[bytes], list[Problem]]


class Readers:
    """The readers, beside files that are whole.

    Args:
        folder: a club folder that reads whole; files in it are written over and put right again.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.whole: ClubRecords = read_club_folder(folder)
        self._days = days_that_matter(self.whole.jobs.values(), self.whole.entries)
        self._others = [entry for entry in self.whole.entries if entry.head.id != ENTRY]
        self.by_name: Mapping[str, Reader] = {
            "club": self._club, "surfaces": self._surfaces, "plan": self._plan, "log": self._log,
            "fixtures": self._fixtures, "choices": self._choices, "sources": self._sources, "days": self._weather,
            "station": lambda data: self._station(data, _STATION), "logger": lambda data: self._station(data, _LOGGER),
            "phrases": self._phrases, "badge": self._badge, "sheet": lambda data: self._sheet(data, "answers.csv"),
            "workbook": lambda data: self._sheet(packed_sheet(data), "answers.xlsx"),
        }  # fmt: skip

    def seeds(self) -> dict[str, list[bytes]]:
        """Good files for each reader, to begin with."""

        def read(*names: str) -> list[bytes]:
            return [path.read_bytes() for name in names for path in sorted(self.folder.glob(name))]

        return {
            "club": read("club.yaml"),
            "surfaces": read("surfaces.yaml"),
            "plan": read("plan/*.yaml"),
            "log": read("log/2027/*.md"),
            "fixtures": read("fixtures.ics"),
            "choices": read("choices.yaml"),
            "sources": [_SOURCES],
            "days": read("weather/**/*.csv"),
            "station": [_STATION_ROWS],
            "logger": [_LOGGER_ROWS],
            "phrases": [_PHRASES],
            "badge": [*read("badge.svg"), _SVG],
            "sheet": [_SHEET_ROWS],
            "workbook": [_SHEET_XML],
        }

    def _files(self, name: str, data: bytes, problems: list[Problem]) -> Files:
        path = self.folder / name
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(data)
        return Files(self.folder, problems)

    def _club(self, data: bytes) -> list[Problem]:
        problems: list[Problem] = []
        before = (self.folder / "club.yaml").read_bytes()
        try:
            files = self._files("club.yaml", data, problems)
            club, document = club_in(files, problems), files.club_file()
            if club is not None and document is not None:
                planning_from(document)
                groups_from(document, file="club.yaml", surfaces=self.whole.surfaces, problems=problems)
            weather_in(files, club, problems)
        finally:
            (self.folder / "club.yaml").write_bytes(before)
        return problems

    def _document(self, data: bytes, problems: list[Problem]) -> Located | None:
        return self._files("fuzzed.yaml", data, problems).yaml("fuzzed.yaml")

    def _surfaces(self, data: bytes) -> list[Problem]:
        problems: list[Problem] = []
        document = self._document(data, problems)
        if document is not None:
            surfaces_from(document, file="fuzzed.yaml", problems=problems)
        return problems

    def _plan(self, data: bytes) -> list[Problem]:
        problems: list[Problem] = []
        document = self._document(data, problems)
        if document is not None:
            zone = self.whole.club.time_zone
            told = jobs_from(document, file="f.yaml", surfaces=self.whole.surfaces, zone=zone, problems=problems)
            jobs = {job.id: job for job in told}
            problems += [*alike_in_short(jobs.values()), *led_nowhere(jobs, zone)]
            days_that_matter(jobs.values(), ())
        return problems

    def _log(self, data: bytes) -> list[Problem]:
        problems: list[Problem] = []
        text = self._files("fuzzed.md", data, problems).text("fuzzed.md")
        if text is None:
            return problems
        jobs, surfaces = self.whole.jobs, self.whole.surfaces
        context = LogContext(zone=self.whole.club.time_zone, surfaces=surfaces, jobs=jobs)
        entries = [*entries_from(text, name=ENTRY, file=_LOG, context=context, problems=problems), *self._others]
        if not problems:
            standing = standing_entries(entries)
            problems += [
                *dangling(entries, {entry.head.id: entry.head.file for entry in entries}),
                *never_done(standing, jobs, surfaces), *moved_the_wrong_way(standing, jobs),
                *postponed_once_begun(standing), *before_the_label_was_read(standing, jobs),
                *entries_of_withdrawn(entries, jobs),
            ]  # fmt: skip
            as_entered(entries)
            days_that_matter(jobs.values(), entries)
        return problems

    def _fixtures(self, data: bytes) -> list[Problem]:
        problems: list[Problem] = []
        text = self._files("fuzzed.ics", data, problems).text("fuzzed.ics")
        if text is not None:
            zone = self.whole.club.time_zone
            fixtures_from(text, file=FIXTURES, zone=zone, days=self._days, problems=problems)
        return problems

    def _choices(self, data: bytes) -> list[Problem]:
        problems: list[Problem] = []
        document = self._document(data, problems)
        if document is not None:
            choices_from(document, file="choices.yaml", problems=problems)
        return problems

    def _sources(self, data: bytes) -> list[Problem]:
        problems: list[Problem] = []
        document = self._document(data, problems)
        if document is not None:
            sources_from(document, file="weather/sources.yaml", problems=problems)
        return problems

    def _weather(self, data: bytes) -> list[Problem]:
        problems: list[Problem] = []
        text = self._files("fuzzed.csv", data, problems).text("fuzzed.csv")
        if text is not None:
            daily_weather_from(text, file="weather/observed.csv", into=DailyWeather(), problems=problems)
        return problems

    def _station(self, data: bytes, form: StationFile) -> list[Problem]:
        problems: list[Problem] = []
        text = self._files("fuzzed.csv", data, problems).text("fuzzed.csv", form=form)
        if text is not None:
            zone, into = self.whole.club.time_zone, DailyWeather()
            station_weather_from(text, file="weather/observed.csv", form=form, zone=zone, into=into, problems=problems)
        return problems

    def _phrases(self, data: bytes) -> list[Problem]:
        problems: list[Problem] = []
        try:
            club_in(self._files("phrases/own.ftl", data, problems), problems)
        finally:
            (self.folder / "phrases" / "own.ftl").unlink()
        return problems

    def _badge(self, data: bytes) -> list[Problem]:
        try:
            badge_from("badge.svg", data)
        except BadgeError as error:
            return [Problem(file="badge.svg", found=error.found, expected=error.expected, hint=error.hint)]
        return []

    def _sheet(self, data: bytes, name: str) -> list[Problem]:
        problems: list[Problem] = []
        sheet_rows_from(data, file=name, form=_SHEET, problems=problems)
        return problems


def problems_told(reader: Reader, data: bytes) -> list[Problem]:
    """Read, and give the problems, whether they were listed or raised."""
    try:
        return reader(data)
    except InputNeedsAttention as error:
        return list(error.problems)


_SOURCES: Final = b"""sources:
  - name: A service
    used for: forecast
    credit: Weather of a service
    address: https://weather.example/
    licence: CC BY 4.0
    licence address: https://licence.example/
    fresh until: 2027-09-14T06:35:00+00:00
"""
_MAIN: Final = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"


def cells(*words: str) -> str:
    """Cells of a row, each with its text."""
    return "".join(f'<c t="inlineStr"><is><t>{word}</t></is></c>' for word in words)


def sheet_xml(rows: str, before: str = "") -> bytes:
    """The XML of a sheet with these rows, and what stands before it."""
    return f'<?xml version="1.0"?>{before}<worksheet xmlns="{_MAIN}"><sheetData>{rows}</sheetData></worksheet>'.encode()


_SHEET_XML: Final = sheet_xml(
    f'<row r="1">{cells("Date", "Time", "What", "Job", "Where", "Sand")}</row>'
    f'<row r="2"><c><v>46625</v></c><c><v>0.65</v></c>{cells("done")}<c><v>7.5</v></c>'
    '<c t="b"><v>1</v></c><c t="e"><v>#REF!</v></c></row>'
)
_RELATIONS: Final = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_PACKED: Final = {
    "[Content_Types].xml": (
        '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        '<Override PartName="/xl/workbook.xml" '
        'ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>'
        '<Override PartName="/xl/worksheets/sheet1.xml" '
        'ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>'
    ),
    "_rels/.rels": (
        '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        f'<Relationship Id="rId1" Type="{_RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>'
    ),
    "xl/workbook.xml": (
        f'<workbook xmlns="{_MAIN}" xmlns:r="{_RELATIONS}"><sheets>'
        '<sheet name="Answers" sheetId="1" r:id="rId1"/></sheets></workbook>'
    ),
    "xl/_rels/workbook.xml.rels": (
        '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        f'<Relationship Id="rId1" Type="{_RELATIONS}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>'
    ),
}


def packed_sheet(sheet: bytes) -> bytes:
    """A workbook of one sheet, its XML as given.

    Args:
        sheet: what is to stand as its sheet.

    Returns:
        The bytes of a .xlsx.
    """
    stream = BytesIO()
    with ZipFile(stream, "w", ZIP_DEFLATED) as packed:
        for name, text in _PACKED.items():
            packed.writestr(name, text)
        packed.writestr("xl/worksheets/sheet1.xml", sheet)
    return stream.getvalue()
