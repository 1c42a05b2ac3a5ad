"""What a club wants to know of its weather -> questions, answers, days. Pure but for the one who asks."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta
from typing import Final

from swardcast.fetching.merging import missing_years
from swardcast.fetching.service import Answer, Days, FetchError, Place, Question, Service
from swardcast.records.club import Club
from swardcast.records.weather import Weather, WeatherSource

__all__ = ["Errand", "Fetched", "run_errand"]

_MOST_MISSING_SHARE: Final = 0.05
"""Past years with more days missing than this are refused; judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Errand:
    """What is wanted.

    Args:
        club: the club.
        weather: what is there already.
        service: whom to ask.
        observed_days: how many days before today.
        history_years: how many whole past years.
        now: the present moment, aware.
    """

    club: Club
    weather: Weather
    service: Service
    observed_days: int
    history_years: int
    now: datetime

    @property
    def today(self) -> date:
        """The day that is running, in the club's local time."""
        return self.now.astimezone(self.club.time_zone).date()

    @property
    def place(self) -> Place:
        """The place that is asked about."""
        return Place(
            latitude_deg=self.club.latitude_deg,
            longitude_deg=self.club.longitude_deg,
            elevation_m=self.club.elevation_m,
            zone=self.club.time_zone,
            contact=self.club.contact.email or self.club.site,
        )


@dataclass(slots=True, kw_only=True)
class Fetched:
    """What came back.

    Args:
        forecast: days to come, or None when the forecast that is there is still the newest.
        observed: days before today that the club lacked.
        history: days of past years that the club lacked.
        sources: services of which something is used now.
        notes: what else is worth saying, a sentence each.
    """

    forecast: Days | None = None
    observed: Days = field(default_factory=dict)
    history: Days = field(default_factory=dict)
    sources: list[WeatherSource] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)


def run_errand(errand: Errand, ask: Callable[[Question], Answer]) -> Fetched:
    """Ask for everything that is wanted and not there.

    Args:
        errand: what is wanted.
        ask: puts a question to a service.

    Returns:
        What came back, all of it checked.

    Raises:
        FetchError: when any part of it could not be had; then nothing of it should be used.
    """
    fetched = Fetched()
    _fetch_forecast(errand, ask, fetched)
    _fetch_observed(errand, ask, fetched)
    _fetch_history(errand, ask, fetched)
    if fetched.observed or fetched.history:
        fetched.sources.append(errand.service.record.source)
    return fetched


def _fetch_forecast(errand: Errand, ask: Callable[[Question], Answer], fetched: Fetched) -> None:
    forecast = errand.service.forecast
    known = _known(errand.weather.sources, forecast.source) if errand.weather.forecasts else None
    if known is not None and known.fresh_until is not None and errand.now < known.fresh_until:
        until = known.fresh_until.astimezone(errand.club.time_zone)
        fetched.notes.append(
            f"{forecast.source.name} has no newer forecast before {until:%H:%M} on {until:%Y-%m-%d} and was not asked."
        )
        return
    question = forecast.question(errand.place)
    if known is not None:
        question = replace(question, not_modified_since=known.last_modified)
    answer = ask(question)
    source = replace(
        forecast.source,
        fresh_until=answer.fresh_until,
        last_modified=answer.last_modified or question.not_modified_since,
    )
    if answer.will_end:
        fetched.notes.append(f"{source.name} says that this version of its service will end: update Swardcast.")
    fetched.sources.append(source)
    if answer.body is None:
        fetched.notes.append(f"{source.name} has no newer forecast.")
        return
    days = forecast.days(answer.body, errand.place, errand.today)
    if not days:
        message = f"{source.name} answered without a whole day from {errand.today} on"
        raise FetchError(message)
    fetched.forecast = days


def _known(sources: Iterable[WeatherSource], wanted: WeatherSource) -> WeatherSource | None:
    return next((one for one in sources if (one.name, one.used_for) == (wanted.name, wanted.used_for)), None)


def _fetch_observed(errand: Errand, ask: Callable[[Question], Answer], fetched: Fetched) -> None:
    """Days that are over and that the club lacks; today still runs."""
    wanted = [errand.today - timedelta(days=back) for back in range(errand.observed_days, 0, -1)]
    lacking = [day for day in wanted if day not in errand.weather.observed_c]
    if not lacking:
        return
    record = errand.service.record
    answer = ask(record.question(errand.place, lacking[0], lacking[-1], False))  # noqa: FBT003 - recent days
    days = record.days(answer.body, errand.place, lacking[0], lacking[-1])
    fetched.observed = {day: days[day] for day in lacking if day in days}
    later = [day for day in lacking if day not in days]
    if later:
        fetched.notes.append(f"{record.source.name} has no values yet for {_counted(later)}.")


def _fetch_history(errand: Errand, ask: Callable[[Question], Answer], fetched: Fetched) -> None:
    span = missing_years(errand.weather.history_c, errand.today, errand.history_years)
    if span is None:
        if errand.history_years:
            fetched.notes.append("Every day of those past years is there already; remove its file to fetch it anew.")
        return
    record, (first, last) = errand.service.record, span
    answer = ask(record.question(errand.place, first, last, True))  # noqa: FBT003 - whole past years
    days = record.days(answer.body, errand.place, first, last)
    asked = (last - first).days + 1
    if len(days) < (1 - _MOST_MISSING_SHARE) * asked:
        message = f"{record.source.name} gave only {len(days)} of {asked} past days"
        raise FetchError(message)
    fetched.history = {day: weather for day, weather in days.items() if day not in errand.weather.history_c}
    if asked > len(days):
        fetched.notes.append(f"{record.source.name} has no values for {asked - len(days)} of {asked} past days.")


def _counted(days: list[date]) -> str:
    return f"{days[0]}" if len(days) == 1 else f"{len(days)} days, {days[0]} to {days[-1]}"
