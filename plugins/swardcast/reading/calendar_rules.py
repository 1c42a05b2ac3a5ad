"""Rules of events that come back: whether they are written as RFC 5545 has them, and whether they ever come.

A rule by which no day comes is no harmless slip: who lays it out seeks a day up to the year 9999.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from swardcast.errors import nearest
from swardcast.reading.plain_words import shown

__all__ = ["faults_of_rule", "never_comes", "steps_to"]

_FREQUENCIES: Final = ("DAILY", "WEEKLY", "MONTHLY", "YEARLY")
_PARTS: Final = (
    "FREQ", "UNTIL", "COUNT", "INTERVAL", "BYSECOND", "BYMINUTE", "BYHOUR", "BYDAY", "BYMONTHDAY", "BYYEARDAY",
    "BYWEEKNO", "BYMONTH", "BYSETPOS", "WKST",
)  # fmt: skip
_NUMBER: Final = re.compile(r"^[1-9][0-9]{0,3}$")
_NUMBERS: Final = re.compile(r"^[+-]?[0-9]{1,3}(?:,[+-]?[0-9]{1,3})*$")
_BY_NUMBERS: Final = ("BYMONTHDAY", "BYYEARDAY", "BYWEEKNO", "BYMONTH", "BYSETPOS")
_WEEKDAYS: Final = ("MO", "TU", "WE", "TH", "FR", "SA", "SU")
_BY_DAY: Final = re.compile(rf"^([+-]?[0-9]{{0,2}})({'|'.join(_WEEKDAYS)})$")
_HORIZON_DAYS: Final = 28 * 365 + 7
"""In 28 years the days of the week have gone through all days of the year, leap days too (from 1901 to 2099)."""
_STEPS_A_YEAR: Final = {"DAILY": 366, "WEEKLY": 53, "MONTHLY": 12, "YEARLY": 1}


def _parts(rule: str) -> dict[str, str]:
    pairs = (pair.partition("=") for pair in rule.upper().rstrip(";").split(";"))
    return {key.strip(): value.strip() for key, _, value in pairs}


def faults_of_rule(value: str) -> Iterator[tuple[str, str, str]]:
    """Find what is wrong with a rule as it is written.

    Args:
        value: what stands behind the colon of RRULE.

    Yields:
        What was found, what was expected and a hint.

    Source: Desruisseaux 2009, RFC 5545, section 3.3.10.
    """
    rule = _parts(value)
    for key in rule:
        if key not in _PARTS:
            yield shown(key), f"parts such as {', '.join(_PARTS[:4])}, BYDAY", nearest(key, _PARTS)
    often = [key for key in ("BYHOUR", "BYMINUTE", "BYSECOND") if "," in rule.get(key, "")]
    if rule.get("FREQ") not in _FREQUENCIES or often:
        found = shown(often[0] if often else f"FREQ={rule.get('FREQ', '')}")
        yield found, f"what comes once a day at most: FREQ={', '.join(_FREQUENCIES)}", ""
    for key in ("INTERVAL", "COUNT"):
        if key in rule and not _NUMBER.fullmatch(rule[key]):
            yield shown(f"{key}={rule[key]}"), "a whole number from 1 to 9999", ""
    for key in _BY_NUMBERS:
        if key in rule and not _NUMBERS.fullmatch(rule[key]):
            yield shown(f"{key}={rule[key]}"), "whole numbers such as 1,15", ""
    if "BYDAY" in rule and not all(map(_BY_DAY.fullmatch, rule["BYDAY"].split(","))):
        yield shown(f"BYDAY={rule['BYDAY']}"), f"days of: {', '.join(_WEEKDAYS)}", ""


def steps_to(value: str, start: date, last: date) -> int:
    """Count the days, weeks, months or years that have to be gone through to lay a rule out.

    Args:
        value: a rule without faults.
        start: the day on which it begins.
        last: the last day on which it is of interest.

    Returns:
        Steps, 0 or more.
    """
    rule = _parts(value)
    years = max(0, (last - start).days) / 365
    return int(years * _STEPS_A_YEAR[rule["FREQ"]] / int(rule.get("INTERVAL", 1)))


def never_comes(value: str, start: date, last: date) -> bool:
    """Tell whether no day comes by a rule within 28 years of a day, so that one would be sought for centuries.

    The end of a rule (UNTIL, COUNT) plays no part: who lays it out meets it only on a day that comes.

    Args:
        value: a rule without faults.
        start: the day on which it begins.
        last: the last day on which it is of interest.

    Returns:
        True when none comes in the 28 years after the later of the two.
    """
    rule = _parts(value)
    if not any(key.startswith("BY") for key in rule):
        return False
    interval = int(rule.get("INTERVAL", 1))
    if interval * 366 > _HORIZON_DAYS * _STEPS_A_YEAR[rule["FREQ"]]:
        return False  # so few steps that no harm is done
    wanted = _Wanted.of(rule)
    first = max(start, last)
    days = (first + timedelta(days=number) for number in range(_HORIZON_DAYS))
    least = min(map(abs, _numbers(rule, "BYSETPOS")), default=1)
    in_period: Counter[int] = Counter()
    for day in days:
        period = _period(rule["FREQ"], day, start)
        if period % interval == 0 and wanted.has(day):
            in_period[period] += 1
            if in_period[period] >= least:
                return False
    return True


def _numbers(rule: Mapping[str, str], key: str) -> frozenset[int]:
    return frozenset(map(int, rule[key].split(","))) if key in rule else frozenset()


def _period(frequency: str, day: date, start: date) -> int:
    """The number of the day, week, month or year since the one in which a rule begins."""
    match frequency:
        case "DAILY":
            return (day - start).days
        case "WEEKLY":
            monday = start - timedelta(days=start.weekday())
            return (day - monday).days // 7
        case "MONTHLY":
            return 12 * (day.year - start.year) + day.month - start.month
        case _:
            return day.year - start.year


@dataclass(frozen=True, slots=True, kw_only=True)
class _Wanted:
    """The days that the BY parts of a rule leave over; an empty part leaves all."""

    months: frozenset[int]
    month_days: frozenset[int]
    year_days: frozenset[int]
    weeks: frozenset[int]
    weekdays: frozenset[tuple[int, int]]
    in_month: bool

    @classmethod
    def of(cls, rule: Mapping[str, str]) -> _Wanted:
        """Read them; the number of a weekday counts in months and years alone (RFC 5545, section 3.3.10, BYDAY)."""
        told = [_BY_DAY.fullmatch(one) for one in rule.get("BYDAY", "").split(",")]
        counted = rule["FREQ"] in ("MONTHLY", "YEARLY")
        return cls(
            months=_numbers(rule, "BYMONTH"),
            month_days=_numbers(rule, "BYMONTHDAY"),
            year_days=_numbers(rule, "BYYEARDAY"),
            weeks=_numbers(rule, "BYWEEKNO"),
            weekdays=frozenset(
                (int(one[1] or 0) if counted else 0, _WEEKDAYS.index(one[2])) for one in told if one is not None
            ),
            in_month=rule["FREQ"] == "MONTHLY" or "BYMONTH" in rule,
        )

    def has(self, day: date) -> bool:
        to_next_month = (day.replace(day=28) + timedelta(days=4)).replace(day=1) - day
        to_next_year = date(day.year + 1, 1, 1) - day
        of_year = day.timetuple().tm_yday
        return (
            _any_of(self.months, day.month)
            and _any_of(self.month_days, day.day, -to_next_month.days)
            and _any_of(self.year_days, of_year, -to_next_year.days)
            and _any_of(self.weeks, week := day.isocalendar().week, week - 53, week - 54)
            and self._has_weekday(day, of_year, to_next_month.days, to_next_year.days)
        )

    def _has_weekday(self, day: date, of_year: int, to_next_month: int, to_next_year: int) -> bool:
        """As a weekday, or as the first, second or last of its kind in the month or the year."""
        from_first, to_last = (day.day, to_next_month) if self.in_month else (of_year, to_next_year)
        places = (0, (from_first + 6) // 7, -((to_last + 6) // 7))
        return not self.weekdays or any((place, day.weekday()) in self.weekdays for place in places)


def _any_of(wanted: frozenset[int], *told: int) -> bool:
    return not wanted or not wanted.isdisjoint(told)
