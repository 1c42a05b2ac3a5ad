"""One month of a season, ready to be shown."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from swardcast.language.voice import Voice
from swardcast.notices.season_fixtures import FixturesOfMonth

__all__ = ["MonthOfSeason", "OfMonth", "in_short", "month_after"]


@dataclass(frozen=True, slots=True, kw_only=True)
class OfMonth:
    """A job's work, or its healing, in one month; or a job that stands in no month.

    Args:
        notice_id: the notice that tells more.
        title: what, as the plan has it.
        where: where, in a few words.
        when: days of the work with its state, or when all is back to normal.
        first: the first of its days that are in the month, or None where no day is told.
        last: the last of them, or None where none is told.
        is_called_off: whether it is called off.
        goes_on: whether it heals all month, so that it neither begins to heal nor may be back to normal in it.
    """

    notice_id: str
    title: str
    where: str
    when: str
    first: date | None
    last: date | None
    is_called_off: bool = False
    goes_on: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthOfSeason:
    """One month.

    Args:
        first_day: its first day.
        name: its name with the year.
        heading: the same, and that it is over where it is.
        short_name: its name in few letters.
        is_over: whether it is before the reader's month, so that no fixture of it is to come.
        is_far: whether it is after the reader's month and the next one.
        work: the work in it, by its days; what is called off is there once, in the month for which it was planned.
        healing: what heals in it or is closed after the work, by its first day.
        fixtures: competitions and visitors' days that are still to come, by their days.
        in_short: what is in it, in a line for where it is folded.
        without_work: what is said where nothing is worked on in it.
        shows_fixtures: whether any can be to come: the club has told of some, and the month is not over.
    """

    first_day: date
    name: str
    heading: str
    short_name: str
    is_over: bool
    is_far: bool
    work: tuple[OfMonth, ...]
    healing: tuple[OfMonth, ...]
    fixtures: FixturesOfMonth
    in_short: str
    without_work: str
    shows_fixtures: bool

    @property
    def is_folded(self) -> bool:
        """Whether only a line of it is shown at first."""
        return self.is_over or self.is_far

    @property
    def heals_in_part(self) -> tuple[OfMonth, ...]:
        """The healing that begins in it, or may end in it."""
        return tuple(one for one in self.healing if not one.goes_on)

    @property
    def heals_all_of_it(self) -> tuple[OfMonth, ...]:
        """The healing that does neither."""
        return tuple(one for one in self.healing if one.goes_on)

    @property
    def last_day(self) -> date:
        """Its last day."""
        return month_after(self.first_day, 1) - timedelta(days=1)


def month_after(day: date, months: int) -> date:
    """Go on by months.

    Args:
        day: a day.
        months: how many months later; below 0 earlier.

    Returns:
        The first day of the month that lies so many months after that of the day.
    """
    count = 12 * day.year + day.month - 1 + months
    return date(count // 12, count % 12 + 1, 1)


def in_short(work: Iterable[OfMonth], healing: int, fixtures: int, voice: Voice) -> str:
    """Count what is in a month, for the line that stands for it where it is folded.

    Args:
        work: its work; what is called off does not count.
        healing: how many jobs heal or are closed in it.
        fixtures: how many fixtures are to come in it.
        voice: the language.

    Returns:
        "2 jobs, 6 healing or closed", or that nothing is announced.
    """
    jobs = sum(not one.is_called_off for one in work)
    said = (
        *([voice.say("season-count-jobs", count=jobs)] if jobs else ()),
        *([voice.say("season-count-healing", count=healing)] if healing else ()),
        *([voice.say("season-count-fixtures", count=fixtures)] if fixtures else ()),
    )
    return voice.listed(said) or voice.say("season-count-nothing")
