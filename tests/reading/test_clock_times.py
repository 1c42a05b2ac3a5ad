"""Times of day, as the plain-language style guides write them and as timetables do."""

from __future__ import annotations

from datetime import time

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic_core import PydanticCustomError

from swardcast.reading.clock_times import clock_time


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ("9:30am", time(9, 30)),
        ("9.30 am", time(9, 30)),
        ("2pm", time(14)),
        ("12pm", time(12)),
        ("12:15am", time(0, 15)),
        ("midday", time(12)),
        ("14:30", time(14, 30)),
        ("07:05", time(7, 5)),
        ("0:00", time(0)),
    ],
)
def test_a_time_is_read_as_people_write_it(written: str, told: time) -> None:
    assert clock_time(written) == told


@pytest.mark.parametrize(
    ("written", "hint"),
    [
        ("9.30", "Say whether it is am or pm, or write it in 24 hours."),
        ("9", "Say whether it is am or pm, or write it in 24 hours."),
        ("13pm", "No clock shows this."),
        ("0am", "No clock shows this."),
        ("24:00", "No clock shows this."),
        ("9:60", "No clock shows this."),
        ("midnight", "Midnight ends one day and begins the next; write '11:59pm' or '0:00'."),
        ("after lunch", ""),
    ],
)
def test_what_is_no_time_is_refused_with_the_way_to_write_it(written: str, hint: str) -> None:
    with pytest.raises(PydanticCustomError) as caught:
        clock_time(written)
    assert caught.value.context == {
        "found": repr(written),
        "expected": "a time of day, such as '9:30am' or '14:30'",
        "hint": hint,
    }


@given(st.times())
def test_every_minute_of_the_day_comes_back_from_both_ways_of_writing(moment: time) -> None:
    minute = moment.replace(second=0, microsecond=0, fold=0)
    assert clock_time(f"{minute:%H:%M}") == minute
    assert clock_time(f"{minute:%I:%M%p}") == minute  # the library's own twelve hours
