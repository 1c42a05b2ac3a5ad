"""`swardcast reckon healing`: fixed keys, the closed form by hand, kinds of temperature files, refusals."""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest

from tests.cli.conftest import Done

WORK = ("--hollow", "12.7 mm at 50.8 x 50.8 mm", "--sand-surplus", "2.4 mm", "--start", "2027-08-23")
KEYS = ["days_to_settled", "days_to_holes_closed", "days_to_back_to_normal", "days_to_complete_cover"]
# Growth days to 5, 2 and 1 % left of 12.7 mm holes under 2.4 mm of sand: tests/turf/test_healing.py, by root finding.
SETTLED, CLOSED, COMPLETE = 7.376, 10.357, 12.785


def monthly(path: Path, *tmean_c: float) -> str:
    rows = [f"{month},{value}" for month, value in enumerate(tmean_c, start=1)]
    path.write_text("\n".join(["month,tmean_c", *rows]) + "\n", encoding="utf-8")
    return str(path)


def daily(path: Path, first: date, count: int, tmean_c: float) -> str:
    rows = [f"{first + timedelta(days=place)},{tmean_c}" for place in range(count)]
    path.write_text("\n".join(["date,tmean_c", *rows]) + "\n", encoding="utf-8")
    return str(path)


@pytest.fixture
def healing(swardcast: Callable[..., Done]) -> Callable[..., dict[str, Any]]:
    def read(file: str, *words: str) -> dict[str, Any]:
        done = swardcast("reckon", "healing", "--temperatures", file, *(words or WORK), "--json")
        assert (done.code, done.err) == (0, "")
        result = json.loads(done.out)
        assert list(result) == KEYS
        assert all(list(days) == ["early", "likely", "allow_until"] for days in result.values())
        return dict(result)

    return read


def test_at_a_steady_20_c_the_days_are_the_closed_form(healing: Callable[..., dict[str, Any]], tmp_path: Path) -> None:
    """Every day is a growth day, so the days are the growth days; then 13 days to normal; all within 0.05 of rounding.

    One chance in ten lies 1.2816 spreads of 0.24 off the middle.
    """
    result = healing(daily(tmp_path / "days.csv", date(2027, 8, 23), 250, 20.0))
    assert result["days_to_settled"]["likely"] == pytest.approx(SETTLED, abs=0.051)
    assert result["days_to_holes_closed"]["likely"] == pytest.approx(CLOSED, abs=0.051)
    assert result["days_to_back_to_normal"]["likely"] == pytest.approx(CLOSED + 13, abs=0.051)
    assert result["days_to_complete_cover"]["likely"] == pytest.approx(COMPLETE, abs=0.051)
    assert result["days_to_settled"]["early"] == pytest.approx(SETTLED * math.exp(-1.2816 * 0.24), abs=0.051)
    assert result["days_to_settled"]["allow_until"] == pytest.approx(SETTLED * math.exp(1.2816 * 0.24), abs=0.051)


def test_at_13_c_healing_takes_as_much_longer_as_the_bell_says(
    healing: Callable[..., dict[str, Any]], tmp_path: Path
) -> None:
    """13 C is one width of 7 C below the best day: exp(-1/2) of the growth, so exp(1/2) = 1.649 of the days."""
    cool = healing(daily(tmp_path / "cool.csv", date(2027, 8, 23), 250, 13.0))
    assert cool["days_to_settled"]["likely"] == pytest.approx(SETTLED * math.exp(0.5), abs=0.051)


def test_past_years_alone_serve_as_well(healing: Callable[..., dict[str, Any]], tmp_path: Path) -> None:
    """Four years that end before the start, each day at 20 C, foretell 20 C."""
    result = healing(daily(tmp_path / "past.csv", date(2022, 1, 1), 4 * 365, 20.0))
    assert result["days_to_settled"]["likely"] == pytest.approx(SETTLED, abs=0.051)


def test_warmer_normals_never_heal_later(healing: Callable[..., dict[str, Any]], tmp_path: Path) -> None:
    normals = [4.0, 4.2, 5.6, 7.6, 10.2, 13.0, 15.0, 15.0, 12.9, 9.9, 6.6, 4.4]  # a northern coast, made up
    results = [
        healing(monthly(tmp_path / "normals.csv", *(value + warmer for value in normals))) for warmer in (0.0, 1.5, 3.0)
    ]
    for name in KEYS:
        for share in ("early", "likely", "allow_until"):
            days = [result[name][share] for result in results]
            assert days == sorted(days, reverse=True)


def test_a_range_opens_upwards_and_milestones_follow_each_other(
    healing: Callable[..., dict[str, Any]], tmp_path: Path
) -> None:
    result = healing(monthly(tmp_path / "normals.csv", *[14.0] * 12))
    for days in result.values():
        assert days["early"] < days["likely"] < days["allow_until"]
    likely = [result[name]["likely"] for name in KEYS[:3]]
    assert likely == sorted(likely)


def test_where_grass_does_not_grow_no_day_is_given(
    healing: Callable[..., dict[str, Any]], swardcast: Callable[..., Done], tmp_path: Path
) -> None:
    """At -15 C growth is exp(-12.5), some 4 in a million: 200 days bring nothing."""
    file = monthly(tmp_path / "cold.csv", *[-15.0] * 12)
    nothing = {"early": None, "likely": None, "allow_until": None}
    assert healing(file) == dict.fromkeys(KEYS, nothing)
    said = swardcast("reckon", "healing", "--temperatures", file, *WORK).out
    assert "days_to_settled: early not known, likely not known, allow until not known\n" in said


@pytest.fixture
def at_20_c(healing: Callable[..., dict[str, Any]], tmp_path: Path) -> Callable[..., dict[str, Any]]:
    """Days at a steady 20 C, where each is a growth day."""
    file = daily(tmp_path / "days.csv", date(2027, 8, 23), 250, 20.0)
    return lambda *words: healing(file, *words, "--start", "2027-08-23")


def test_grooves_heal_like_holes_of_six_times_their_width(at_20_c: Callable[..., dict[str, Any]]) -> None:
    """A tenth of the surface, closing at 2.70 / 12 a day: ln(0.10 / 0.05) x 12 / 2.7 = 3.08, ln 5 x 12 / 2.7 = 7.15."""
    result = at_20_c("--grooves", "2 mm at 25 mm")
    assert result["days_to_settled"]["likely"] == pytest.approx(3.08, abs=0.051)
    assert result["days_to_holes_closed"]["likely"] == pytest.approx(7.15, abs=0.051)
    assert result["days_to_settled"] == at_20_c("--hollow", "12 mm at 25 x 25 mm")["days_to_settled"]


def test_half_of_a_solid_tines_hole_lasts(at_20_c: Callable[..., dict[str, Any]]) -> None:
    """Half of a tenth: settled at once, and ln(0.05 / 0.02) x 12 / 2.7 = 4.07 days to closed, hollow ln 5 x 12 / 2.7."""
    solid, hollow = (at_20_c(kind, "12 mm at 50 x 50 mm") for kind in ("--solid", "--hollow"))
    assert solid["days_to_settled"] == {"early": 0.0, "likely": 0.0, "allow_until": 0.0}
    assert solid["days_to_holes_closed"]["likely"] == pytest.approx(4.07, abs=0.051)
    assert hollow["days_to_holes_closed"]["likely"] == pytest.approx(7.15, abs=0.051)


@pytest.mark.parametrize("other", [("--passes", "2"), ("12 mm at 80 x 40 mm",)], ids=["two passes", "another spacing"])
def test_neither_spacing_nor_passes_change_the_days(
    at_20_c: Callable[..., dict[str, Any]], other: tuple[str, ...]
) -> None:
    """Landreth, Karcher & Richardson 2007, USGA TERO 6(19), abstract: the spacing made no difference."""
    usual = ("--hollow", "12 mm at 50 x 50 mm")
    changed = (*usual, *other) if other[0] == "--passes" else ("--hollow", *other)
    assert at_20_c(*usual) == at_20_c(*changed)


def test_quarter_inch_holes_close_in_half_the_time_of_half_inch_ones(at_20_c: Callable[..., dict[str, Any]]) -> None:
    """Landreth, Karcher & Richardson 2007, as above."""
    small, large = (
        at_20_c("--hollow", f"{size} in at 2 x 2 in")["days_to_holes_closed"]["likely"] for size in ("1/4", "1/2")
    )
    assert small / large == pytest.approx(0.5, abs=0.01)


def test_sand_alone_adds_no_days_to_back_to_normal_and_has_the_wider_range(
    at_20_c: Callable[..., dict[str, Any]],
) -> None:
    """ln(0.56920 / 0.02) / 0.40 = 8.37; nothing was fitted on sand alone: exp(1.2816 x 0.40) = 1.670 either way."""
    result = at_20_c("--sand-surplus", "2.4 mm")
    assert result["days_to_back_to_normal"] == result["days_to_holes_closed"]
    closed = result["days_to_holes_closed"]
    assert (closed["early"], closed["likely"], closed["allow_until"]) == pytest.approx((5.01, 8.37, 13.98), abs=0.06)


def test_a_tine_wider_than_any_that_was_fitted_has_the_wider_range(at_20_c: Callable[..., dict[str, Any]]) -> None:
    """The records end at 15.9 mm, so that a range of 19 mm is drawn with a spread of 0.40 as a club's own is."""
    for size, factor in (("15.9 mm", 1.360), ("19 mm", 1.670)):
        closed = at_20_c("--hollow", f"{size} at 60 x 60 mm")["days_to_holes_closed"]
        assert closed["allow_until"] / closed["likely"] == pytest.approx(factor, abs=0.01)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        pytest.param("", "line 1: found nothing; expected columns date,tmean_c or month,tmean_c", id="an empty file"),
        pytest.param(
            "date;tmean_c\n2027-08-23;15\n",
            "line 1: found date;tmean_c; expected columns date,tmean_c or month,tmean_c",
            id="semicolons",
        ),
        pytest.param(
            "date,tmean_c\n2027-08-23,15\n2027-02-30,15\n",
            "line 3: found '2027-02-30' with '15'; expected a date and a mean temperature from -60 to 60 C",
            id="a day that does not exist",
        ),
        pytest.param(
            "date,tmean_c\n2027-08-23,warm\n",
            "line 2: found '2027-08-23' with 'warm'; expected a date and a mean temperature from -60 to 60 C",
            id="a word for a number",
        ),
        pytest.param(
            "month,tmean_c\n" + "".join(f"{month},10\n" for month in range(1, 12)),
            "the file: found 11 months; expected twelve, from 1 to 12",
            id="eleven months",
        ),
        pytest.param(
            "date,tmean_c\n", "the file: found no temperature; expected a line for each day or month", id="no day"
        ),
    ],
)
def test_temperatures_that_cannot_be_used_are_told_with_their_line(
    swardcast: Callable[..., Done], tmp_path: Path, text: str, said: str
) -> None:
    (tmp_path / "t.csv").write_text(text, encoding="utf-8")
    done = swardcast("reckon", "healing", "--temperatures", str(tmp_path / "t.csv"), *WORK)
    assert (done.code, done.out) == (1, "")
    assert said in done.err


def test_a_file_that_is_not_there_ends_with_1(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    file = str(tmp_path / "nowhere.csv")
    done = swardcast("reckon", "healing", "--temperatures", file, *WORK)
    assert done == Done(1, "", f"{file}: No such file or directory\n")


def test_temperatures_that_are_not_utf_8_are_told(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    (tmp_path / "t.csv").write_bytes("date,tmean_c\n".encode("utf-16"))
    done = swardcast("reckon", "healing", "--temperatures", str(tmp_path / "t.csv"), *WORK)
    assert done.code == 1
    assert "found a character that is not UTF-8; expected text saved as UTF-8" in done.err


def test_a_day_twice_is_told(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    (tmp_path / "t.csv").write_text("date,tmean_c\n2027-08-23,15\n2027-08-23,25\n", encoding="utf-8")
    done = swardcast("reckon", "healing", "--temperatures", str(tmp_path / "t.csv"), *WORK)
    assert done.code == 1
    assert "found 2027-08-23 a second time; expected each day once" in done.err


def test_a_month_that_does_not_exist_is_told_with_its_line(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    file = monthly(tmp_path / "t.csv", *[10.0] * 13)
    done = swardcast("reckon", "healing", "--temperatures", file, *WORK)
    assert done.code == 1
    assert "line 14: found '13' with '10.0'; expected a month" in done.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--hollow", "12.7 mm", "--start", "2027-08-23"), "expected a diameter and a spacing, such as '12.7 mm at"),
        (("--hollow", "60 mm at 50 x 50 mm", "--start", "2027-08-23"), "expected a tine narrower than its spacing"),
        (("--grooves", "3 mm", "--start", "2027-08-23"), "expected a blade and its spacing, such as '3 mm at 25.4 mm'"),
        (("--grooves", "30 mm at 25 mm", "--start", "2027-08-23"), "expected a blade narrower than its spacing"),
        (("--sand-surplus", "2.4", "--start", "2027-08-23"), "A number needs its unit"),
        (
            ("--sand-surplus", "2 mm", "--start", "2027-02-30"),
            "found '2027-02-30'; expected a day such as '2027-08-23'",
        ),
        (
            ("--sand-surplus", "2 mm", "--start", "2027-08-23", "--grass", "rye"),
            "argument --grass: invalid choice: 'rye'",
        ),
        (("--start", "2027-08-23"), "expected --hollow, --solid, --grooves or --sand-surplus"),
        (("--sand-surplus", "2 mm"), "the following arguments are required: --start"),
        (
            ("--hollow", "12 mm at 50 x 50 mm", "--solid", "12 mm at 50 x 50 mm", "--start", "2027-08-23"),
            "argument --solid: not allowed with argument --hollow",
        ),
    ],
)
def test_work_that_cannot_be_reckoned_is_wrong_usage(
    swardcast: Callable[..., Done], tmp_path: Path, words: tuple[str, ...], said: str
) -> None:
    file = monthly(tmp_path / "normals.csv", *[14.0] * 12)
    done = swardcast("reckon", "healing", "--temperatures", file, *words)
    assert (done.code, done.out) == (2, "")
    assert said in done.err
