"""Faults in weather files are told word for word; a gap is no fault."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from swardcast.reading.folder import read_club_folder
from tests.reading.breaking import FORECAST, HISTORY, OBSERVED, assert_said, fault, problems_in, replace

COLUMNS = "columns of: date, tmin_c, tmax_c, tmean_c, tmin_f, tmax_f, tmean_f, rain_mm, rain_in"
FIRST = "2027-05-01,4.5,11.8,0.0"
A_NUMBER = "a number, or nothing for a missing value"
A_DAY = "a day that exists, from 1900 to 2200, such as '2027-08-23'"
ISSUE = "the day and time of issue, such as '2027-09-01T0600.csv'"


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        fault("a day of 90 C", FIRST, "2027-05-01,4.5,90,0.0", "line 2, tmax_c: found '90'; expected -60 to 60 C"),
        fault("a night of -90 C", FIRST, "2027-05-01,-90,11.8,0", "line 2, tmin_c: found '-90'; expected -60 to 60 C"),
        fault(
            "a minimum above the maximum",
            FIRST,
            "2027-05-01,14.5,11.8,0.0",
            "line 2, tmin_c: found a minimum of 14.5 C above the maximum of 11.8 C; expected the lower of the two first",
        ),
        fault(
            "a day twice",
            "2027-05-02,",
            "2027-05-01,",
            "line 3, date: found 2027-05-01 a second time; expected each day once",
        ),
        fault(
            "a day that February does not have",
            "2027-05-01,",
            "2027-02-30,",
            f"line 2, date: found '2027-02-30'; expected {A_DAY}",
        ),
        fault(
            "a day written the other way round",
            "2027-05-01,",
            "01/05/2027,",
            f"line 2, date: found '01/05/2027'; expected {A_DAY}",
        ),
        fault(
            "a line too short", FIRST, "2027-05-01,4.5,11.8", "line 2: found 3 values; expected 4, one for each column"
        ),
        fault(
            "decimal commas",
            FIRST,
            "2027-05-01,4,5,11,8,0,0",
            "line 2: found 7 values; expected 4, one for each column",
        ),
        fault(
            "a decimal comma in quotes",
            FIRST,
            '2027-05-01,"4,5",11.8,0.0',
            f"line 2, tmin_c: found '4,5'; expected {A_NUMBER}…",
        ),
        fault(
            "a word for a number", FIRST, "2027-05-01,cold,11.8,0", f"line 2, tmin_c: found 'cold'; expected {A_NUMBER}"
        ),
        fault(
            "less than no rain", FIRST, "2027-05-01,4.5,11.8,-1", "line 2, rain_mm: found '-1'; expected 0 to 1900 mm"
        ),
        fault("not a number", FIRST, "2027-05-01,nan,11.8,0", f"line 2, tmin_c: found 'nan'; expected {A_NUMBER}"),
        fault(
            "an unknown column",
            "rain_mm",
            "rain",
            f"line 1: found the unknown column 'rain'; expected {COLUMNS}. Did you mean 'rain_mm'?",
        ),
        fault(
            "no maximum",
            "tmin_c,tmax_c,rain_mm",
            "tmin_c,rain_mm",
            "line 1: found date, tmin_c, rain_mm; expected a column date, and tmin_c with tmax_c, or tmean_c",
        ),
        fault(
            "a column twice",
            "tmin_c,tmax_c,rain_mm",
            "tmin_c,tmax_c,tmax_c",
            "line 1: found the column 'tmax_c' a second time; expected each column once",
        ),
    ],
)
def test_a_fault_in_the_observed_weather_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / OBSERVED, old, new)
    assert_said(demo_club, OBSERVED, says)


def test_semicolons_are_told_once_and_not_for_every_line(demo_club: Path) -> None:
    path = demo_club / OBSERVED
    path.write_text(path.read_text(encoding="utf-8").replace(",", ";").replace(".", ","), encoding="utf-8")
    said = "line 1: found columns parted by semicolons; expected columns parted by commas, decimals with a point"
    assert_said(demo_club, OBSERVED, (said,))


def test_an_empty_file_of_weather_is_told_with_the_columns_it_needs(demo_club: Path) -> None:
    (demo_club / OBSERVED).write_text("", encoding="utf-8")
    said = "line 1: found no columns; expected a column date, and tmin_c with tmax_c, or tmean_c"
    assert_said(demo_club, OBSERVED, (said,))


def test_of_many_bad_lines_ten_are_shown_and_the_rest_counted(demo_club: Path) -> None:
    """The file has 365 days, all of them a second time in a copy: 10 + 355."""
    (demo_club / "weather" / "history" / "again.csv").write_bytes((demo_club / HISTORY).read_bytes())
    problems = problems_in(demo_club)
    assert len(problems) == 11
    assert sorted(str(problem) for problem in problems)[-1].startswith("the file: found 355 more such lines")


@pytest.mark.parametrize("name", ["tomorrow", "2027-09-31T0600", "2027-09-14T2560", "14-09-2027"])
def test_a_forecast_named_otherwise_than_by_its_issue_is_told(demo_club: Path, name: str) -> None:
    (demo_club / FORECAST).rename(demo_club / f"weather/forecast/{name}.csv")
    said = f"the file: found the name '{name}'; expected {ISSUE}"
    assert_said(demo_club, f"weather/forecast/{name}.csv", (said,))


def test_a_missing_value_is_no_fault_and_gives_no_mean(demo_club: Path) -> None:
    replace(demo_club / OBSERVED, FIRST, "2027-05-01,M,11.8,")
    weather = read_club_folder(demo_club).weather
    assert date(2027, 5, 1) not in weather.observed_c
    assert date(2027, 5, 1) not in weather.rain_mm


def test_fahrenheit_and_inches_are_converted(demo_club: Path) -> None:
    """41 F = 5 C and 59 F = 15 C, so their mean is 10 C; half an inch of rain is 12.7 mm (NIST SP 811)."""
    (demo_club / OBSERVED).write_text("date,tmin_f,tmax_f,rain_in\n2027-05-01,41,59,0.5\n", encoding="utf-8")
    weather = read_club_folder(demo_club).weather
    assert weather.observed_c[date(2027, 5, 1)] == pytest.approx(10.0)
    assert weather.rain_mm[date(2027, 5, 1)] == pytest.approx(12.7)


def _misname_past_years(club: Path) -> None:
    (club / "weather" / "history").rename(club / "weather" / "histroy")


def _misname_observed(club: Path) -> None:
    (club / OBSERVED).rename(club / "weather" / "observd.csv")


def _second_plan_by_another_ending(club: Path) -> None:
    (club / "plan" / "2028.yml").write_text("nonsense", encoding="utf-8")


def _entry_as_plain_text(club: Path) -> None:
    (club / "log" / "2027" / "2027-09-21-0600-morning.txt").write_text("nonsense", encoding="utf-8")


@pytest.mark.parametrize(
    "misname", [_misname_past_years, _misname_observed, _second_plan_by_another_ending, _entry_as_plain_text]
)
def test_a_file_that_nobody_would_read_is_told(demo_club: Path, misname: Callable[[Path], None]) -> None:
    misname(demo_club)
    assert any("a file that is not read" in str(problem) for problem in problems_in(demo_club))
