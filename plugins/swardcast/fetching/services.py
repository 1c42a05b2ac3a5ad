"""The services that can be asked, by the names of `records.weather_setup.SERVICES`."""

from __future__ import annotations

from typing import Final

from swardcast.fetching import met_norway, open_meteo, power
from swardcast.fetching.service import Service

__all__ = ["BY_NAME"]

BY_NAME: Final = {
    "institutes": Service(record=power.RECORD, forecast=met_norway.FORECAST),
    "open-meteo": Service(record=open_meteo.RECORD, forecast=open_meteo.FORECAST),
}
"""`institutes` comes first: two public institutes, whose data any club may use, also one that takes subscriptions."""
