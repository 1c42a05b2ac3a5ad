"""A club that knows few past years: the range is drawn wider, and it is said so wherever reasons are shown."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from tests.cli.conftest import Done

AS_OF = ("--as-of", "2027-09-14 09:30")
HEALING = "green-16"  # in the demo it was worked on in August 2027 and is still healing


def _keep_years(club: Path, years: int) -> None:
    """Leave the last years of the demo's history, 1997 to 2026."""
    file = club / "weather" / "history" / "1997-2026.csv"
    head, *days = file.read_text(encoding="utf-8").splitlines(keepends=True)
    kept = [day for day in days if int(day[:4]) > 2026 - years]
    file.write_text(head + "".join(kept), encoding="utf-8")


def _outlook(swardcast: Callable[..., Done], club: Path, surface_id: str, as_of: str) -> dict[str, Any]:
    done = swardcast("outlook", "--club", str(club), "--as-of", as_of, "--all", "--json")
    assert (done.code, done.err) == (0, "")
    return next(surface for surface in json.loads(done.out) if surface["id"] == surface_id)


@pytest.mark.parametrize("years", [1, 4, 9])
def test_fewer_than_ten_years_are_said_in_outlook_and_explain(
    swardcast: Callable[..., Done], club: Path, years: int
) -> None:
    _keep_years(club, years)
    sentence = f"Past years of weather known here: only {years}, so the range is drawn wider."
    explained = swardcast("explain", HEALING, "--club", str(club), *AS_OF)
    told = swardcast("outlook", "--club", str(club), *AS_OF)
    assert f"  {sentence}  [weather/history]" in explained.out.splitlines()
    assert f"  - {sentence} [weather/history]" in told.out.splitlines()


@pytest.mark.parametrize("years", [10, 30])
def test_ten_years_and_more_need_no_remark(swardcast: Callable[..., Done], club: Path, years: int) -> None:
    _keep_years(club, years)
    assert "Past years of weather known here" not in swardcast("explain", HEALING, "--club", str(club), *AS_OF).out


def test_in_spring_when_weather_decides_most_the_range_widens_as_years_are_missing(
    swardcast: Callable[..., Done], club: Path
) -> None:
    """On 1 May 2027 work on this green is planned for the fourth."""
    widths = []
    for years in (30, 9, 4, 1):
        _keep_years(club, years)
        given = _outlook(swardcast, club, "green-1", "2027-05-01 09:30")["holes_closed"]
        widths.append((date.fromisoformat(given["allow_until"]) - date.fromisoformat(given["early"])).days)
    assert widths == sorted(set(widths))


def test_no_year_at_all_gives_no_date_and_a_sentence(swardcast: Callable[..., Done], club: Path) -> None:
    (club / "weather" / "history" / "1997-2026.csv").unlink()
    given = _outlook(swardcast, club, HEALING, AS_OF[1])["holes_closed"]
    assert given == {"early": None, "likely": None, "allow_until": None}
    explained = swardcast("explain", HEALING, "--club", str(club), *AS_OF).out
    assert "  There is no weather history, so no date can be computed.  [weather/history]" in explained.splitlines()
