"""Weather as a club keeps it: observed days, many past years, forecasts by the moment of issue."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime

__all__ = ["Forecast", "Weather"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Forecast:
    """A forecast of daily means.

    Args:
        issued_at: when it was issued, aware.
        tmean_c: mean temperature of each day, C.
    """

    issued_at: datetime
    tmean_c: Mapping[date, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Weather:
    """All weather of a club.

    Args:
        observed_c: mean temperature of each day observed on the course, C.
        rain_mm: rain of each day observed, mm.
        history_c: mean temperature of each day of the past years, C.
        forecasts: by time of issue, oldest first.
    """

    observed_c: Mapping[date, float]
    rain_mm: Mapping[date, float]
    history_c: Mapping[date, float]
    forecasts: tuple[Forecast, ...]
