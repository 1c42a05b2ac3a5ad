"""`swardcast backtest`: a table for people, fixed keys for machines, refusals in plain words."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import pytest

from tests.cli.conftest import Done
from tests.conftest import DEMO

KEYS = [
    "record_from",
    "record_to",
    "predicted_years",
    "training_years",
    "grass",
    "horizon_days",
    "left_out",
    "verdicts",
]
VERDICT_KEYS = [
    "known_days",
    "month",
    "need",
    "cases",
    "usual_days",
    "not_reached",
    "no_date",
    "coverage",
    "in_time",
    "mean_error_days",
    "bias_days",
    "range_days",
    "crps_days",
    "skill_always",
    "skill_climatology",
]
SHORT = ("--months", "5", "--needs", "8", "--known", "0")


def _write(path: Path, *, years: int, tmean_c: Callable[[date], float]) -> Path:
    first = date(2000, 1, 1)
    days = [first + timedelta(days=n) for n in range((date(2000 + years, 1, 1) - first).days)]
    path.write_text("date,tmean_c\n" + "".join(f"{day},{tmean_c(day):.2f}\n" for day in days), encoding="utf-8")
    return path


@pytest.fixture
def ideal(tmp_path: Path) -> Path:
    """Six years of the best temperature for growth, so that a need of n growth days takes n days."""
    return _write(tmp_path / "ideal.csv", years=6, tmean_c=lambda _: 20.0)


def test_a_machine_gets_fixed_keys_and_the_years_that_were_predicted(
    swardcast: Callable[..., Done], ideal: Path
) -> None:
    done = swardcast("backtest", "--history", str(ideal), *SHORT, "--json")
    assert (done.code, done.err) == (0, "")
    result = json.loads(done.out)
    assert list(result) == KEYS
    # Half of six years are three of training; 2003 to 2005 are left, each with six start days in May.
    assert (result["training_years"], result["predicted_years"]) == (3, [2003, 2005])
    assert (result["record_from"], result["record_to"]) == ("2000-01-01", "2005-12-31")
    assert (result["grass"], result["horizon_days"], result["left_out"]) == ("cool-season", 200, 0)
    [verdict] = result["verdicts"]
    assert list(verdict) == VERDICT_KEYS
    assert (verdict["month"], verdict["need"], verdict["cases"]) == (5, 8.0, 18)
    assert (verdict["usual_days"], verdict["coverage"], verdict["skill_always"]) == (8.0, 1.0, None)


def test_days_off_the_best_temperature_take_longer_by_the_grass_that_is_named(
    swardcast: Callable[..., Done], tmp_path: Path
) -> None:
    mild = _write(tmp_path / "mild.csv", years=4, tmean_c=lambda _: 12.0)
    # Growth a day at 12 C: exp(-(8 / 7)^2 / 2) = 0.5205; published exp(-(8 / 5.5)^2 / 2) = 0.3472; 8 growth days.
    for grass, days in (("cool-season", 15.37), ("published cool-season", 23.04)):
        done = swardcast("backtest", "--history", str(mild), *SHORT, "--grass", grass, "--json")
        assert json.loads(done.out)["verdicts"][0]["usual_days"] == pytest.approx(days, abs=0.01)


def test_people_get_a_table_that_says_what_it_means(swardcast: Callable[..., Done]) -> None:
    done = swardcast("backtest", "--club", str(DEMO), "--months", "9", "--needs", "8,14", "--known", "0,5")
    assert (done.code, done.err) == (0, "")
    lines = done.out.splitlines()
    # The demo has the invented years 1997 to 2026: half of them train; of 2026 a September has no 200 days left.
    assert "from 2012\nto 2025, each from the 15 years before only" in done.out
    assert "the healing model's own error is no part of this" in done.out
    assert "A need not reached within 200 days counts as 200 days, for all competitors alike." in lines
    assert [line for line in lines if line.startswith("Foretold")] == [
        "Foretold on the day of the work",
        "Foretold after 5 days of healing",
    ]
    rows = [line.split() for line in lines if line.startswith("  September")]
    assert [row[1] for row in rows] == ["8", "14", "8", "14"]
    # 1 to 26 September, six starts a year for 14 years.
    assert [row[2] for row in rows] == ["84"] * 4
    assert "v. always" in done.out


def test_a_year_of_training_can_be_chosen_and_the_first_year_too(swardcast: Callable[..., Done], ideal: Path) -> None:
    words = ("--years", "1", "--first-year", "2004", "--json")
    result = json.loads(swardcast("backtest", "--history", str(ideal), *SHORT, *words).out)
    assert (result["training_years"], result["predicted_years"]) == (1, [2004, 2005])


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--months", "13"), "argument --months: found '13'; expected a whole number from 1 to 12"),
        (("--months", "May"), "argument --months: found 'May'; expected a whole number from 1 to 12"),
        (("--needs", "8,x"), "argument --needs: found 'x'; expected growth days above 0 and up to 100, such as '8'"),
        (("--needs", "nan"), "argument --needs: found 'nan'; expected growth days above 0 and up to 100, such as '8'"),
        (("--needs", "0"), "argument --needs: found '0'; expected growth days above 0 and up to 100, such as '8'"),
        (("--known", "5,-1"), "argument --known: found '-1'; expected a whole number from 0 to 100"),
        (("--years", "0"), "argument --years: found '0'; expected a whole number from 1 to 100"),
        (("--grass", "moss"), "argument --grass: invalid choice: 'moss'"),
    ],
)
def test_wrong_usage_ends_with_2_and_says_what_was_expected(
    swardcast: Callable[..., Done], words: tuple[str, str], said: str
) -> None:
    done = swardcast("backtest", *words)
    assert (done.code, done.out) == (2, "")
    assert said in done.err


def test_a_record_that_is_too_short_is_refused_with_what_would_help(
    swardcast: Callable[..., Done], ideal: Path
) -> None:
    done = swardcast("backtest", "--history", str(ideal), "--years", "6")
    assert (done.code, done.out) == (1, "")
    assert "with 6 whole years; a prediction takes 6 of them and 200 days to hold it against" in done.err
    assert "Give a longer record, a smaller --years" in done.err


def test_a_club_without_history_is_told_where_to_put_it(swardcast: Callable[..., Done], club: Path) -> None:
    for file in (club / "weather" / "history").iterdir():
        file.unlink()
    done = swardcast("backtest", "--club", str(club))
    assert (done.code, done.out) == (1, "")
    assert "weather/history has no day: put daily temperatures there, or name a file with --history" in done.err


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (b"date,tmean_c\n2000-01-01,12,5\n", "line 2: found 3 values; expected 2, one for each column"),
        (b"day,tmean_c\n2000-01-01,5\n", "found the unknown column 'day'"),
        (b"date,tmean_c\n", "found no temperature; expected a line for each day"),
        (b"date,tmean_c\n2000-01-01,\xff\n", "found a character that is not UTF-8; expected text saved as UTF-8"),
    ],
)
def test_a_broken_file_is_named_with_its_line(
    swardcast: Callable[..., Done], tmp_path: Path, text: bytes, said: str
) -> None:
    file = tmp_path / "history.csv"
    file.write_bytes(text)
    done = swardcast("backtest", "--history", str(file))
    assert (done.code, done.out) == (1, "")
    assert str(file) in done.err
    assert said in done.err


def test_a_file_that_is_not_there_is_named(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    done = swardcast("backtest", "--history", str(tmp_path / "none.csv"))
    assert done.code == 1
    assert "none.csv: No such file or directory" in done.err
