"""What has to be said beside the tables of first days."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from datetime import date, timedelta
from typing import Final

from swardcast.language.measures import bulk_density, length, temperature
from swardcast.language.voice import Voice
from swardcast.outlook.states import Milestone, RestsOn
from swardcast.planning.date_tables import has_frost
from swardcast.planning.date_words import touched
from swardcast.planning.dates import Dates
from swardcast.planning.start_days import StartDay
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.importance import Importance, NamedFixtures
from swardcast.records.operations import Dressing
from swardcast.records.translate import density_of

__all__ = ["UNTIL_PHRASES", "cells_in_words", "date_notes", "fixtures_end_in_words", "weights_in_words"]

_A_MONDAY: Final = date(2024, 1, 1)
UNTIL_PHRASES: Final = {
    Milestone.SETTLED: "startdays-until-settled",
    Milestone.HOLES_CLOSED: "startdays-until-holes-closed",
    Milestone.BACK_TO_NORMAL: "startdays-until-back-to-normal",
}
"""The phrase that says until when play counts as disturbed."""


def date_notes(dates: Dates, records: ClubRecords, voice: Voice) -> tuple[str, ...]:
    """Say what the tables rest on.

    Args:
        dates: what was found.
        records: the club's records, with what it keeps to itself.
        voice: the language and the day of the reader.

    Returns:
        Paragraphs.
    """
    paragraphs = [
        [_about(dates, voice), *_moved(dates, voice)],
        [
            *_disturbed(dates, voice),
            voice.say("startdays-weighted"),
            *weights_in_words(records.planning.importance, dates.not_found, voice),
        ],
        [*_rests_on(dates, voice), voice.say("startdays-others"), *_sand(dates, records, voice)],
        [*_weather(dates, records, voice), *_fixtures(dates, records, voice)],
        [voice.say("planning-no-promise")],
    ]
    return tuple(voice.sentences(paragraph) for paragraph in paragraphs)


def _about(dates: Dates, voice: Voice) -> str:
    return voice.say(
        "startdays-about",
        count=len(dates.possible),
        all=voice.number(len(dates.days)),
        first=voice.day(dates.asked.first),
        last=voice.day(dates.asked.last),
    )


def _moved(dates: Dates, voice: Voice) -> Iterator[str]:
    if dates.asked.planned_for is not None:
        yield voice.say("startdays-instead", day=voice.day(dates.asked.planned_for))


def _disturbed(dates: Dates, voice: Voice) -> Iterator[str]:
    job = dates.asked.job
    match dates.end_rests_on:
        case RestsOn.SUM:
            yield voice.say(UNTIL_PHRASES[dates.asked.until])
            yield voice.say("startdays-ranges" if dates.past_years else "startdays-no-weather")
        case RestsOn.USUAL_TIME:
            yield voice.say("startdays-until-over")
            usual = job.normal_after or job.reopens_after
            yield voice.say("startdays-usual-time", source=usual.source if usual is not None else "")
        case _:
            yield voice.say("startdays-until-over")
            yield voice.say("startdays-nothing-heals")


def weights_in_words(importance: Importance, not_found: Collection[NamedFixtures], voice: Voice) -> Iterator[str]:
    """Say what each day counts.

    Args:
        importance: what the club tells.
        not_found: of it names that no fixture has.
        voice: the language.

    Yields:
        Sentences.
    """
    if not importance.is_typed:
        yield voice.say("startdays-not-typed")
    weekdays = [
        voice.say(
            "startdays-weekday", name=voice.weekday(_A_MONDAY + timedelta(days=number)), weight=voice.figure(weight)
        )
        for number, weight in sorted(importance.weekdays.items())
    ]
    if weekdays:
        yield voice.say("startdays-weekdays", weekdays=voice.joined(weekdays))
    for period in importance.periods:
        times = voice.figure(period.times)
        if period.name:
            yield voice.say("startdays-period", name=period.name, times=times)
        else:
            yield voice.say("startdays-period-unnamed", times=times)
    weight = voice.figure(importance.fixtures)
    if importance.visitors is None:
        yield voice.say("startdays-fixture-adds", weight=weight)
    else:
        visitors = voice.figure(importance.visitors)
        yield voice.say("startdays-fixture-adds-visitors", weight=weight, visitors=visitors)
    for named in importance.named:
        if named in not_found:
            yield voice.say("startdays-not-found", name=named.words)
        else:
            yield voice.say("startdays-named-adds", name=named.words, weight=voice.figure(named.adds))


def _rests_on(dates: Dates, voice: Voice) -> Iterator[str]:
    if not dates.past_years or dates.end_rests_on is not RestsOn.SUM:
        return
    yield voice.say("planning-dates")
    yield voice.say("startdays-rests-past", count=dates.past_years)
    if dates.forecast_until is not None and dates.forecast_until >= dates.asked.first:
        yield voice.say("startdays-rests-forecast", day=voice.day(dates.forecast_until))


def _sand(dates: Dates, records: ClubRecords, voice: Voice) -> Iterator[str]:
    if any(isinstance(one, Dressing) for one in dates.asked.job.operations):
        density = density_of(records.club)
        yield voice.say("planning-sand", density=bulk_density(density, voice))


def _weather(dates: Dates, records: ClubRecords, voice: Voice) -> Iterator[str]:
    if not dates.chances:
        yield voice.say("startdays-no-rain")
        return
    limits, weather = records.planning.days_without_work, records.weather
    rain, frost = length(limits.rain_mm, voice), temperature(limits.frost_c, voice)
    if weather.history_rain_mm and weather.history_lowest_c:
        yield voice.say("startdays-lost", rain=rain, frost=frost)
    elif weather.history_rain_mm:
        yield voice.say("startdays-lost-rain", rain=rain)
    else:
        yield voice.say("startdays-lost-frost", frost=frost)
    if weather.history_rain_mm:
        yield voice.say("startdays-dry")
    if has_frost(dates):
        yield voice.say("startdays-frost")
    yield voice.say("startdays-spare")


def _fixtures(dates: Dates, records: ClubRecords, voice: Voice) -> Iterator[str]:
    if not records.fixtures:
        yield voice.say("planning-no-fixtures")
        return
    works = records.planning.days_without_work.works_on_fixtures
    yield voice.say("startdays-on-fixtures") if works else voice.say("startdays-not-on-fixtures")
    yield from fixtures_end_in_words(records.fixtures, dates.possible, voice)
    yield from cells_in_words((time.window.best for time in dates.best), voice)


def cells_in_words(days: Iterable[StartDay], voice: Voice) -> Iterator[str]:
    """Say what the cells of the table of fixtures mean.

    Args:
        days: the first days in its columns.
        voice: the language.

    Yields:
        Sentences; none where there is no such table.
    """
    if any(map(touched, days)):
        yield voice.say("startdays-fixture-cells")
        yield voice.say("planning-fixture-words")


def fixtures_end_in_words(fixtures: Iterable[Fixture], days: Iterable[StartDay], voice: Voice) -> Iterator[str]:
    """Say where the calendar ends, when work may disturb play beyond that.

    Args:
        fixtures: those that are known.
        days: first days of work.
        voice: the language and the day of the reader.

    Yields:
        A sentence, or nothing.
    """
    last_known = max((one.last_day for one in fixtures), default=None)
    ends = [(day.ends and day.ends.allow_until) or max(day.work_days, default=day.day) for day in days]
    if last_known is not None and max(ends, default=last_known) > last_known:
        yield voice.say("startdays-fixtures-end", day=voice.short_day(last_known))
