"""Answers of the services, in the form that their public documentation shows, with invented weather.

NASA POWER: the GeoJSON of its daily service, version 2.9.7, for a point: `geometry.coordinates` (longitude, latitude,
height), `header.fill_value` -999 and `header.time_standard`, `parameters` with units, `properties.parameter` by day
(https://power.larc.nasa.gov/docs/services/api/temporal/daily/; form from published answers).
MET Norway: GeoJSON as at https://api.met.no/doc/ForecastJSON: `properties.meta`, then `timeseries` in UTC.
Open-Meteo: JSON as at https://open-meteo.com/en/docs/historical-weather-api, errors with `error` and `reason`.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import UTC, date, datetime, timedelta
from typing import Any

FILL = -999.0


def days_between(first: date, last: date) -> list[date]:
    return [first + timedelta(days=place) for place in range((last - first).days + 1)]


def power(
    days: dict[date, tuple[float, float, float]], *, latitude: float = 55.6, longitude: float = -1.7
) -> dict[str, Any]:
    """Lowest, highest and rain of each day; -999 for what is missing."""
    names = ("T2M_MIN", "T2M_MAX", "PRECTOTCORR")
    units = ("C", "C", "mm/day")
    return {
        "type": "Feature",
        "geometry": {"type": "Point", "coordinates": [longitude, latitude, 61.03]},
        "properties": {
            "parameter": {
                name: {f"{day:%Y%m%d}": values[place] for day, values in days.items()}
                for place, name in enumerate(names)
            }
        },
        "header": {
            "title": "NASA/POWER Source Native Resolution Daily Data",
            "api": {"version": "v2.9.7", "name": "POWER Daily API"},
            "sources": ["POWER", "MERRA2"],
            "fill_value": FILL,
            "time_standard": "LST",
            "start": f"{min(days):%Y%m%d}" if days else "",
            "end": f"{max(days):%Y%m%d}" if days else "",
        },
        "messages": [],
        "parameters": {name: {"units": unit, "longname": name} for name, unit in zip(names, units, strict=True)},
        "times": {"data": 1.2, "process": 0.03},
    }


def met_norway(
    temperatures: dict[datetime, float],
    spans: dict[datetime, tuple[float, float]] | None = None,
    *,
    latitude: float = 55.6,
    longitude: float = -1.7,
) -> dict[str, Any]:
    """Temperatures at moments of UTC, and lowest and highest of the six hours from a moment on."""
    steps = []
    for at in sorted({*temperatures, *(spans or {})}):
        details = {"air_pressure_at_sea_level": 1013.2}
        if at in temperatures:
            details["air_temperature"] = temperatures[at]
        data: dict[str, Any] = {"instant": {"details": details}}
        if spans and at in spans:
            low, high = spans[at]
            data["next_6_hours"] = {
                "summary": {"symbol_code": "cloudy"},
                "details": {"air_temperature_min": low, "air_temperature_max": high, "precipitation_amount": 0.0},
            }
        steps.append({"time": f"{at.astimezone(UTC):%Y-%m-%dT%H:%M:%SZ}", "data": data})
    return {
        "type": "Feature",
        "geometry": {"type": "Point", "coordinates": [longitude, latitude, 18]},
        "properties": {
            "meta": {
                "updated_at": "2027-09-14T05:52:00Z",
                "units": {"air_temperature": "celsius", "air_temperature_min": "celsius", "precipitation_amount": "mm"},
            },
            "timeseries": steps,
        },
    }


def open_meteo(
    days: Mapping[date, tuple[float | None, float | None, float | None]],
    *,
    latitude: float = 55.6,
    longitude: float = -1.7,
    zone: str = "Europe/London",
) -> dict[str, Any]:
    return {
        "latitude": latitude + 0.013,
        "longitude": longitude - 0.021,
        "generationtime_ms": 0.11,
        "utc_offset_seconds": 3600,
        "timezone": zone,
        "timezone_abbreviation": "BST",
        "elevation": 18.0,
        "daily_units": {
            "time": "iso8601",
            "temperature_2m_min": "°C",
            "temperature_2m_max": "°C",
            "precipitation_sum": "mm",
        },
        "daily": {
            "time": [day.isoformat() for day in days],
            "temperature_2m_min": [values[0] for values in days.values()],
            "temperature_2m_max": [values[1] for values in days.values()],
            "precipitation_sum": [values[2] for values in days.values()],
        },
    }


def hourly(first: datetime, hours: int, value: float = 12.0) -> dict[datetime, float]:
    """The same temperature at each hour from a moment on."""
    return {first + timedelta(hours=place): value for place in range(hours)}
