"""A voice: one language, spoken to a reader on one day."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, time
from enum import Enum
from functools import lru_cache, reduce
from typing import Final

from babel import Locale
from babel.dates import format_date, format_time
from babel.numbers import format_currency, format_decimal

from swardcast.language.catalogue import Catalogue, built_in

__all__ = ["Voice", "capital", "slug_of"]

_DAYS_KEPT: Final = 4096
"""Days said last that are kept: each stands in notice, feeds, calendar and pages; judgement."""


def capital(sentence: str) -> str:
    """Begin with a capital letter, leaving the rest as it is."""
    return sentence[:1].upper() + sentence[1:]


def slug_of(choice: Enum) -> str:
    """Name a choice as phrases do: "open-with-care"."""
    return str(choice.value).lower().replace(" ", "-")


@dataclass(frozen=True, slots=True, kw_only=True)
class Voice:
    """Says phrases, dates and numbers; nothing that a member reads comes about in another way.

    Args:
        catalogue: the language.
        near: the day of the reader: its year is left out.
        set_names: the club's own names for sets of surfaces, each with the ids of its surfaces.
    """

    catalogue: Catalogue
    near: date
    set_names: tuple[tuple[str, frozenset[str]], ...] = ()

    @classmethod
    def english(cls, near: date) -> Voice:
        """The voice of the command line, which speaks British English.

        Args:
            near: the day of the reader.

        Returns:
            The voice.
        """
        return cls(catalogue=built_in("en-GB"), near=near)

    def on(self, near: date) -> Voice:
        """The same language to a reader of another day."""
        return replace(self, near=near)

    def say(self, phrase: str, /, **values: str | float) -> str:
        """Say a phrase of the catalogue.

        Args:
            phrase: its name.
            **values: what stands in its slots; a number brings the plural form with it.

        Returns:
            The phrase.

        Raises:
            PhraseError: when there is no such phrase, or a slot stays empty.
        """
        return self.catalogue.say(phrase, values)

    def name(self, family: str, choice: Enum) -> str:
        """Say a choice: family "play" and "open with care" is the phrase "play-open-with-care".

        Args:
            family: what the phrase's name begins with.
            choice: the choice.

        Returns:
            The phrase.
        """
        return self.say(f"{family}-{slug_of(choice)}")

    def joined(self, parts: Sequence[str]) -> str:
        """Join words as in a sentence: "a", "a and b", "a, b and c"."""
        if len(parts) < 2:  # noqa: PLR2004 - one or none needs no joining
            return "".join(parts)
        first = parts[0]
        for part in parts[1:-1]:
            first = self.say("list-more", first=first, next=part)
        return self.say("list-last", first=first, last=parts[-1], count=len(parts))

    def listed(self, parts: Sequence[str]) -> str:
        """Put words in a row: "a, b, c"."""
        return reduce(lambda first, part: self.say("list-more", first=first, next=part), parts) if parts else ""

    def clauses(self, parts: Sequence[str]) -> str:
        """Put clauses in a row: "a; b; c"."""
        return reduce(lambda first, part: self.say("list-clauses", first=first, next=part), parts) if parts else ""

    def sentence(self, clause: str) -> str:
        """Make a clause a sentence: with a capital and a full stop."""
        return capital(self.say("sentence", clause=clause))

    def sentences(self, parts: Sequence[str]) -> str:
        """Put whole sentences in a row."""
        return reduce(lambda first, part: self.say("list-sentences", first=first, next=part), parts) if parts else ""

    def set_name(self, surfaces: Iterable[str]) -> str | None:
        """Give the club's own name for exactly these surfaces.

        Args:
            surfaces: their ids.

        Returns:
            The name, or None where the club has none.
        """
        wanted = frozenset(surfaces)
        return next((name for name, chosen in self.set_names if chosen == wanted), None)

    def day(self, day: date) -> str:
        """Say a day: "Friday 24 September", with the year when it is not that of the reader's day."""
        pattern = "day-pattern" if day.year == self.near.year else "day-pattern-with-year"
        return _day_in(self.catalogue.locale, self.say(pattern), day)

    def short_day(self, day: date) -> str:
        """Say a day without its weekday: "24 September"."""
        pattern = "short-day-pattern" if day.year == self.near.year else "short-day-pattern-with-year"
        return _day_in(self.catalogue.locale, self.say(pattern), day)

    def weekday(self, day: date) -> str:
        """Name the weekday of a day: "Friday"."""
        return _day_in(self.catalogue.locale, "EEEE", day)

    def tick_day(self, day: date) -> str:
        """Say a day in the fewest letters, for the axis of a picture: "24 Sep"."""
        return _day_in(self.catalogue.locale, self.say("tick-day-pattern"), day)

    def tick_day_with_year(self, day: date) -> str:
        """Say a day with its year in the fewest letters: "24 Sep 2027"."""
        return _day_in(self.catalogue.locale, self.say("tick-day-pattern-with-year"), day)

    def month(self, day: date) -> str:
        """Say a month: "September", with the year when it is not that of the reader's day."""
        pattern = "month-pattern" if day.year == self.near.year else "month-pattern-with-year"
        return _day_in(self.catalogue.locale, self.say(pattern), day)

    def month_with_year(self, day: date) -> str:
        """Say a month with its year, whatever that of the reader's day: "September 2027"."""
        return _day_in(self.catalogue.locale, self.say("month-pattern-with-year"), day)

    def tick_month(self, day: date) -> str:
        """Say a month in the fewest letters, for the axis of a picture: "Sep"."""
        return _day_in(self.catalogue.locale, self.say("tick-month-pattern"), day)

    def tick_month_with_year(self, day: date) -> str:
        """Say a month with its year in the fewest letters: "Sep 2027"."""
        return _day_in(self.catalogue.locale, self.say("tick-month-pattern-with-year"), day)

    def time(self, moment: datetime | time) -> str:
        """Say a time of day: "7:05am", "2pm", "midday", "midnight"."""
        if (moment.hour, moment.minute) == (0, 0):
            return self.say("midnight")
        if (moment.hour, moment.minute) == (12, 0):
            return self.say("midday")
        pattern = self.say("time-pattern" if moment.minute else "full-hour-pattern")
        return str(format_time(moment.replace(tzinfo=None), pattern, locale=self.catalogue.locale))

    def moment(self, moment: datetime) -> str:
        """Say a moment: "7:05am on Tuesday 14 September"."""
        return self.say("moment", time=self.time(moment), day=self.day(moment.date()))

    def number(self, value: float, *, decimals: int = 0) -> str:
        """Say a number with a fixed count of decimals: "151,872", "1.40".

        Args:
            value: the number.
            decimals: places after the point.

        Returns:
            The number as the language writes it.
        """
        places = f".{'0' * decimals}" if decimals else ""
        return str(format_decimal(value, format=f"#,##0{places}", locale=self.catalogue.locale))

    def money(self, amount: float, currency: str, *, whole: bool = True) -> str:
        """Say an amount of money: "£1,420", or with its pence "£47.35".

        Args:
            amount: 0 or more.
            currency: its code (ISO 4217).
            whole: whether pence are left out.

        Returns:
            The amount as the language writes it.
        """
        if not whole:
            return str(format_currency(amount, currency, locale=self.catalogue.locale))
        pattern = self.catalogue.locale.currency_formats["standard"].pattern.split(";")[0].replace("0.00", "0")
        told = format_currency(round(amount), currency, pattern, locale=self.catalogue.locale, currency_digits=False)
        return str(told)

    def figure(self, value: float) -> str:
        """Say a number as typed, with as many decimals as it has, up to six figures: "13", "0.8"."""
        return str(format_decimal(float(f"{value:g}"), format="#,##0.######", locale=self.catalogue.locale))


@lru_cache(maxsize=_DAYS_KEPT)
def _day_in(locale: Locale, pattern: str, day: date) -> str:
    return str(format_date(day, pattern, locale=locale))
