"""Days that somebody asks about: a year, months, or any days from one to another."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from swardcast.language.voice import Voice
from swardcast.notices.season import months_in_words
from swardcast.notices.spans import span_in_words

__all__ = ["Period", "month_of", "period_in_words", "year_of"]

_DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Period:
    """Days, the last not before the first.

    Args:
        first: the first.
        last: the last, not earlier.
    """

    first: date
    last: date

    def has(self, day: date | None) -> bool:
        """Whether a day is one of them."""
        return day is not None and self.first <= day <= self.last

    @property
    def is_of_whole_months(self) -> bool:
        """Whether it begins with the first day of a month and ends with the last of one."""
        return self.first.day == 1 and (self.last + _DAY).day == 1

    @property
    def next(self) -> Period:
        """The period that follows: as many whole months, or as many days."""
        first = self.last + _DAY
        if not self.is_of_whole_months:
            return Period(first=first, last=first + (self.last - self.first))
        months = (first.year - self.first.year) * 12 + first.month - self.first.month
        years, month = divmod(first.month - 1 + months, 12)
        return Period(first=first, last=date(first.year + years, month + 1, 1) - _DAY)


def year_of(year: int) -> Period:
    """Give a calendar year.

    Args:
        year: its number.

    Returns:
        Its days.
    """
    return Period(first=date(year, 1, 1), last=date(year, 12, 31))


def month_of(day: date) -> Period:
    """Give the month of a day.

    Args:
        day: the day.

    Returns:
        The days of its month.
    """
    first = day.replace(day=1)
    return Period(first=first, last=(first + timedelta(days=31)).replace(day=1) - _DAY)


def period_in_words(period: Period, voice: Voice) -> str:
    """Say a period: "2027", "September 2027", "August to October 2027", "23 August to 3 September 2027".

    Args:
        period: the period.
        voice: the language.

    Returns:
        The period, with its year.
    """
    first, last = period.first, period.last
    if period.is_of_whole_months:
        is_year = (first.year, first.month, last.month) == (last.year, 1, 12)
        return str(first.year) if is_year else months_in_words(first, last, voice)
    told = voice.on(date.min)  # a year that no day has, so that it is said
    return told.short_day(first) if first == last else span_in_words(first, last, told)
