"""The columns of a search for days: names that machines know, with plain values."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import Final

from swardcast.planning.compare import count_touched
from swardcast.planning.dates import Dates
from swardcast.planning.start_days import StartDay

__all__ = ["DATE_COLUMNS", "Value"]

Value = float | str | date | bool | None


def _spare(dates: Dates, day: StartDay) -> Value:
    chances = dates.chances.get(day.day)
    return chances.often_enough if chances is not None else None


def _dry(dates: Dates, day: StartDay) -> Value:
    chances = dates.chances.get(day.day)
    return chances.dry if chances is not None else None


def _frost(dates: Dates, day: StartDay) -> Value:
    chances = dates.chances.get(day.day)
    return chances.frost if chances is not None else None


def _years(dates: Dates, day: StartDay) -> Value:
    chances = dates.chances.get(day.day)
    return chances.years if chances is not None else None


DATE_COLUMNS: Final[dict[str, Callable[[Dates, StartDay], Value]]] = {
    "day": lambda _, day: day.day,
    "possible": lambda _, day: day.is_possible,
    "last_work_day": lambda _, day: day.work_days[-1] if day.is_possible else None,
    "weighted_days": lambda _, day: day.cost.weighted_days if day.cost is not None else None,
    "weighted_days_low": lambda _, day: day.cost.low if day.cost is not None else None,
    "weighted_days_high": lambda _, day: day.cost.high if day.cost is not None else None,
    "days": lambda _, day: day.cost.days if day.cost is not None else None,
    "chance_never": lambda _, day: day.cost.never if day.cost is not None else None,
    "likely": lambda _, day: day.ends.likely if day.ends is not None else None,
    "allow_until": lambda _, day: day.ends.allow_until if day.ends is not None else None,
    "fixtures_touched": lambda _, day: count_touched(day.meets) if day.is_possible else None,
    "rests_on_forecast": lambda dates, day: dates.rests_on_forecast(day),
    "years_dry": _dry,
    "years_frost": _frost,
    "years": _years,
    "spare_days": _spare,
}
