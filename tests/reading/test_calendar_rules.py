"""Rules by which no day comes are found, and no rule by which a day comes is taken for one of them."""

from __future__ import annotations

from datetime import date, datetime, timedelta

import pytest
from dateutil.rrule import rrulestr
from hypothesis import given, settings
from hypothesis import strategies as st

from swardcast.reading.calendar_rules import never_comes, steps_to

START, LAST = date(2027, 9, 18), date(2029, 9, 18)  # a Saturday


@pytest.mark.parametrize(
    ("rule", "never"),
    [
        ("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=29", False),
        ("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", True),
        ("FREQ=YEARLY;INTERVAL=4;BYMONTH=2;BYMONTHDAY=29", True),  # 2027 and each fourth year after it have no such day
        ("FREQ=DAILY;BYYEARDAY=366;BYMONTH=1", True),
        ("FREQ=DAILY;INTERVAL=7;BYDAY=TU", True),
        ("FREQ=DAILY;INTERVAL=7;BYDAY=SA", False),
        ("FREQ=WEEKLY;BYDAY=MO,WE;BYSETPOS=2", False),
        ("FREQ=WEEKLY;BYDAY=MO,WE;BYSETPOS=3", True),
        ("FREQ=MONTHLY;BYDAY=5MO", False),
        ("FREQ=MONTHLY;BYDAY=-6MO", True),
        ("FREQ=MONTHLY;BYMONTHDAY=31;INTERVAL=12", True),  # it begins in September, which has 30 days
        ("FREQ=YEARLY;BYDAY=53SA", False),
        ("FREQ=YEARLY;BYDAY=54SA", True),
        ("FREQ=YEARLY;BYWEEKNO=53;BYDAY=TH", False),
        ("FREQ=DAILY;UNTIL=20270920", False),
        ("FREQ=DAILY;BYDAY=-1SU;BYMONTHDAY=1", False),  # numbers count in months and years alone
        ("FREQ=WEEKLY;BYDAY=6MO", False),
    ],
)
def test_whether_a_day_ever_comes_is_told(rule: str, never: bool) -> None:
    assert never_comes(rule, START, LAST) is never


def _numbers(low: int, high: int) -> st.SearchStrategy[str]:
    number = st.integers(low, high) | st.integers(-high, -low)
    return st.lists(number, min_size=1, max_size=2).map(lambda told: ",".join(map(str, told)))


RULES = st.fixed_dictionaries(
    {"FREQ": st.sampled_from(["DAILY", "WEEKLY", "MONTHLY", "YEARLY"])},
    optional={
        "INTERVAL": st.integers(1, 14).map(str),
        "BYDAY": st.sampled_from(["MO", "SA", "TU,TH", "1MO", "-1SU"]),
        "BYMONTH": st.integers(1, 12).map(str),
        "BYMONTHDAY": _numbers(1, 31),
        "BYYEARDAY": _numbers(1, 366),
    },
)


@given(rule=RULES)
@settings(max_examples=80, derandomize=True)
def test_no_rule_is_refused_by_which_another_library_finds_a_day(rule: dict[str, str]) -> None:
    """dateutil 2.9 seeks a day up to the year 9999, so that it is asked shortly before."""
    written = ";".join(f"{key}={value}" for key, value in rule.items())
    start, last = date(9960, 9, 18), date(9962, 9, 18)
    if never_comes(written, start, last):
        days = rrulestr(written, dtstart=datetime.combine(start, datetime.min.time()))
        assert next((day for day in days if last < day.date() < last + timedelta(days=28 * 365)), None) is None, written


def test_steps_are_counted_in_days_weeks_months_and_years() -> None:
    """Two years: 731 days are 2.003 years of 366 days, 53 weeks, 12 months."""
    steps = {rule: steps_to(f"FREQ={rule}", START, LAST) for rule in ("DAILY", "WEEKLY", "MONTHLY", "YEARLY")}
    assert steps == {"DAILY": 733, "WEEKLY": 106, "MONTHLY": 24, "YEARLY": 2}
    assert steps_to("FREQ=DAILY;INTERVAL=7", START, LAST) == 104
    assert steps_to("FREQ=DAILY", LAST, START) == 0
