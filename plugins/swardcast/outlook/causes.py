"""Why a published date moved."""

from __future__ import annotations

from datetime import date, timedelta
from enum import Enum
from typing import Final

from swardcast.outlook.states import DateRange, NoDate, RestsOn
from swardcast.outlook.weather_view import WeatherView
from swardcast.records.log import BackToNormal, Correction, Entry, GrowthHeldBack, Observation, PlanChange

__all__ = ["Cause", "entry_cause", "is_later", "rests_on_weather", "weather_cause"]

_STEADY_C: Final = 0.5  # nearer to the usual than this, the weather is not called warm or cold: judgement
_WARM_ENOUGH_C: Final = 18.0  # above this mean more warmth can slow cool-season grass: judgement, after the optimum
_FORECAST_DAYS: Final = 10  # days of a forecast that are compared with what was believed before: judgement


class Cause(Enum):
    """Why a published date moved."""

    ANNOUNCED = "announced"
    PLAN = "a change of plan"
    WORK = "the work itself"
    STILL_HELD_UP = "work still held up"
    WORK_TAKES_LONGER = "work takes longer"
    OBSERVED = "what was seen on the course"
    HELD_BACK = "growth held back"
    LEARNT = "what healed jobs taught"
    CORRECTED = "a correction of the log"
    PARTLY_NORMAL = "some of it is back to normal"
    COLDER = "colder weather than usual"
    WARMER = "warmer weather than usual"
    HOTTER = "hotter weather than is good for grass"
    COOLER = "cooler weather after heat"
    COLDER_FORECAST = "a colder forecast"
    WARMER_FORECAST = "a warmer forecast"
    HOTTER_FORECAST = "a forecast of heat"
    COOLER_FORECAST = "a forecast of the end of heat"
    WEATHER = "the weather"


class _Turn(Enum):
    """How temperature turned growth: too cold or too hot holds it back, warmer or cooler helps."""

    COLDER = "colder"
    WARMER = "warmer"
    HOTTER = "hotter"
    COOLER = "cooler"


_OBSERVED_WEATHER: Final = {
    _Turn.COLDER: Cause.COLDER,
    _Turn.WARMER: Cause.WARMER,
    _Turn.HOTTER: Cause.HOTTER,
    _Turn.COOLER: Cause.COOLER,
}
_FORECAST: Final = {
    _Turn.COLDER: Cause.COLDER_FORECAST,
    _Turn.WARMER: Cause.WARMER_FORECAST,
    _Turn.HOTTER: Cause.HOTTER_FORECAST,
    _Turn.COOLER: Cause.COOLER_FORECAST,
}


def _by_temperature(difference_c: float | None, mean_c: float, *, later: bool) -> _Turn | None:
    """Name the turn that explains a move, or None when temperature does not."""
    if difference_c is None or abs(difference_c) < _STEADY_C:
        return None
    if later:
        return _Turn.COLDER if difference_c < 0 else _Turn.HOTTER if mean_c > _WARM_ENOUGH_C else None
    return _Turn.WARMER if difference_c > 0 else _Turn.COOLER if mean_c > _WARM_ENOUGH_C else None


def entry_cause(entry: Entry | None, job: str) -> Cause:
    """Name the cause that an entry is.

    Args:
        entry: the entry, or None for the weather.
        job: id of the job whose date moved.

    Returns:
        The cause.
    """
    match entry:
        case Observation():
            return Cause.OBSERVED
        case GrowthHeldBack():
            return Cause.HELD_BACK
        case Correction():
            return Cause.CORRECTED
        case BackToNormal():
            return Cause.PARTLY_NORMAL if entry.job == job else Cause.LEARNT
        case PlanChange():
            return Cause.PLAN
        case None:
            return Cause.WEATHER
        case _:
            return Cause.WORK


def weather_cause(
    view: WeatherView | None, before: WeatherView | None, since: date, published: DateRange, now: DateRange
) -> Cause:
    """Name the weather that moved a date; it must speak for the way in which the date moved.

    Args:
        view: the weather as known now.
        before: as known when the date was published.
        since: the day of that.
        published: the date then.
        now: the date now.

    Returns:
        The cause; just "the weather" when no temperature explains it.
    """
    if view is None or before is None:
        return Cause.WEATHER
    later = is_later(published, now)
    observed = _by_temperature(view.warmth(since), view.mean_c(since, view.today), later=later)
    if observed is not None:
        return _OBSERVED_WEATHER[observed]
    if view.issued_at is not None and before.issued_at != view.issued_at:
        end = view.today + timedelta(days=_FORECAST_DAYS)
        told, believed = view.mean_c(view.today, end), before.mean_c(view.today, end)
        forecast = _by_temperature(told - believed, told, later=later)
        if forecast is not None:
            return _FORECAST[forecast]
    return Cause.WEATHER


def rests_on_weather(*given: DateRange) -> bool:
    """Tell whether weather can have moved a date: none moves the plan, the pace of the work, or somebody's usual time.

    Args:
        given: the date as it was told, and as it is now.

    Returns:
        Whether one of them comes from a sum, or from one that reaches no day this season.
    """
    dated = (one.rests_on is RestsOn.SUM and not one.is_fact for one in given if one.likely is not None)
    return any(dated) or any(one.likely is None and one.no_date is NoDate.NOT_THIS_SEASON for one in given)


def is_later(published: DateRange, now: DateRange) -> bool:
    """Tell whether a date moved back.

    Args:
        published: the date then.
        now: the date now; having none is later than any.

    Returns:
        Whether it did.
    """
    for old, new in ((published.likely, now.likely), (published.allow_until, now.allow_until)):
        if old != new:
            return new is None or (old is not None and new > old)
    return False
