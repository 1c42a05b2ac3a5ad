"""The demo's members once more by plain loops, which must give the same temperatures."""

from __future__ import annotations

import csv
from datetime import date
from pathlib import Path

import numpy as np
import pytest

from swardcast.turf.ensemble import climate_of, weather_members
from swardcast.turf.series import DailySeries
from tests.conftest import DEMO
from tests.slow_weather import SlowWeather


def _daily_means(path: Path) -> dict[date, float]:
    with path.open(encoding="utf-8") as lines:
        return {
            date.fromisoformat(row["date"]): (float(row["tmin_c"]) + float(row["tmax_c"])) / 2
            for row in csv.DictReader(lines)
        }


HISTORY = _daily_means(DEMO / "weather" / "history" / "1997-2026.csv")
OBSERVED = _daily_means(DEMO / "weather" / "observed.csv")
FORECAST = _daily_means(DEMO / "weather" / "forecast" / "2027-09-14T0600.csv")


@pytest.mark.parametrize("first_year", [1997, 2018, 2022, 2024])
@pytest.mark.parametrize("unseen_days", [0, 2, 6])
def test_the_members_come_out_the_same_by_plain_loops(first_year: int, unseen_days: int) -> None:
    """Thirty, nine, five and three years; yesterday observed, two days missing, too many missing to start from."""
    today = date(2027, 9, 14)
    history = {day: value for day, value in HISTORY.items() if day.year >= first_year}
    del history[date(2025, 9, 20)]
    observed = {day: value for day, value in OBSERVED.items() if (today - day).days > unseen_days}
    ensemble = weather_members(
        climate_of(DailySeries.from_days(history)),
        DailySeries.from_days(observed),
        DailySeries.from_days(FORECAST),
        start=today,
        today=today,
        days=130,
    )
    # In December the run goes on beyond the last year of the history.
    assert ensemble.tmean_c == pytest.approx(
        np.array(SlowWeather(history, observed, FORECAST, today).members(130)), abs=0.001
    )
