"""Weather as a club keeps it: observed days, many past years, forecasts by the moment of issue, and whom to thank."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Final

__all__ = ["COLDEST_C", "MOST_RAIN_MM", "WARMEST_C", "Forecast", "Weather", "WeatherSource"]

COLDEST_C: Final = -60.0
"""No air near a course is colder, C; judgement."""
WARMEST_C: Final = 60.0
"""No air near a course is warmer, C; judgement."""
MOST_RAIN_MM: Final = 1900.0
"""More than the wettest day on record, mm (1825 mm, La Reunion 1966; WMO archive, from memory)."""


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
class WeatherSource:
    """A service from which weather was fetched, and what its licence asks us to say.

    Args:
        name: the service as members should read it.
        used_for: what of it is used, for example "the forecast".
        credit: the sentence that the service asks for.
        address: where the service tells about itself, http or https.
        licence: name of the licence.
        licence_address: where the licence stands, http or https.
        fresh_until: the moment before which the service does not want to be asked again, aware, or None.
        last_modified: the service's own date of its answer, exactly as it gave it, or "".
    """

    name: str
    used_for: str
    credit: str
    address: str
    licence: str
    licence_address: str
    fresh_until: datetime | None = None
    last_modified: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weather:
    """All weather of a club.

    Args:
        observed_c: mean temperature of each day observed on the course, C.
        rain_mm: rain of each day observed, mm.
        history_c: mean temperature of each day of the past years, C.
        history_lowest_c: lowest temperature of each of those days of which it is known, C.
        history_rain_mm: rain of each of those days of which it is known, mm.
        forecasts: by time of issue, oldest first.
        sources: services from which some of it was fetched.
        incomplete: days that have readings, but not throughout, and so count as missing.
    """

    observed_c: Mapping[date, float]
    rain_mm: Mapping[date, float]
    history_c: Mapping[date, float]
    forecasts: tuple[Forecast, ...]
    sources: tuple[WeatherSource, ...] = ()
    incomplete: tuple[date, ...] = ()
    history_lowest_c: Mapping[date, float] = field(default_factory=dict)
    history_rain_mm: Mapping[date, float] = field(default_factory=dict)
