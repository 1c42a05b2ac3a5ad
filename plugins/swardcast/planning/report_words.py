"""What every section of a report is made of: sentences, tables, pictures, and numbers of the records behind them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date

from swardcast.language.voice import Voice
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.pictures import Table
from swardcast.notices.promises_picture import PromisesPicture
from swardcast.notices.spans import span_in_words
from swardcast.notices.words import few_words_for, holes_in_words
from swardcast.planning.report import Report
from swardcast.planning.report_job import Promise
from swardcast.planning.report_places import Place
from swardcast.planning.report_readings_picture import ReadingsPicture
from swardcast.planning.sand_words import mass_or_none
from swardcast.records.folder import ClubRecords
from swardcast.records.planning import Planning

__all__ = ["Section", "Sources", "Telling"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A part of the report.

    Args:
        name: its name for ids: small letters and hyphens.
        title: its heading.
        lines: a list of lines, or nothing.
        sentences: paragraphs before the tables.
        tables: tables whose first column names the row.
        pictures: pictures of facts that the tables have.
        notes: paragraphs on what the tables rest on.
    """

    name: str
    title: str
    lines: tuple[str, ...] = ()
    sentences: tuple[str, ...] = ()
    tables: tuple[Table, ...] = ()
    pictures: tuple[ReadingsPicture | PromisesPicture, ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(slots=True)
class Sources:
    """Places in the club's own records, numbered as they are first named.

    Args:
        places: the places so far.
    """

    places: dict[Place, int] = field(default_factory=dict)

    def numbers(self, places: Iterable[Place], voice: Voice) -> str:
        """Name places by their numbers: "3 to 5 and 9".

        Args:
            places: the places.
            voice: the language.

        Returns:
            Numbers in order, runs of them together.
        """
        found = {self.places.setdefault(place, len(self.places) + 1) for place in dict.fromkeys(places)}
        return holes_in_words(sorted(found), voice)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Telling:
    """What the sections are said with.

    Args:
        report: the report.
        records: the club's records.
        voice: the language and the day of the report.
        sources: the places named so far.
    """

    report: Report
    records: ClubRecords
    voice: Voice
    sources: Sources

    @property
    def planning(self) -> Planning:
        """The club's prices and targets."""
        return self.records.planning

    def say(self, phrase: str, /, **values: str | float) -> str:
        """Say a phrase."""
        return self.voice.say(phrase, **values)

    def from_places(self, places: Iterable[Place]) -> str:
        """Name places by their numbers."""
        return self.sources.numbers(places, self.voice)

    def where(self, names: Iterable[str]) -> str:
        """Name surfaces in a few words."""
        return few_words_for((self.records.surfaces[name] for name in names), self.voice)

    def short_day(self, day: date | None) -> str:
        """Say a day without its weekday, or a dash."""
        return self.voice.short_day(day) if day is not None else self.say("planning-none")

    def days(self, first: date, last: date) -> str:
        """Say a span of days without weekdays."""
        return self.short_day(first) if first == last else span_in_words(first, last, self.voice)

    def number(self, value: int) -> str:
        """Say a whole number."""
        return self.voice.number(value)

    def tonnes(self, mass_t: float | None) -> str:
        """Say a mass of sand; a dash for none."""
        return mass_or_none(mass_t, self.voice)

    def promise(self, promise: Promise | None) -> str:
        """Say a date as it was told on its day."""
        if promise is None:
            return self.say("report-not-announced")
        return range_in_words(promise.normal, self.voice.on(promise.told_on), briefly=True)
