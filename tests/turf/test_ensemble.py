"""The weather to come: members, gaps, year boundaries, forecast, anomaly, on small invented series."""

import math
from dataclasses import replace
from datetime import date, timedelta

import numpy as np
import pytest
from numpy.typing import NDArray

from swardcast.turf.ensemble import (
    FORECAST_ERROR_C,
    FORECAST_ERROR_GROWTH_C,
    WeatherPast,
    climate_of,
    members_from_monthly,
    weather_members,
)
from swardcast.turf.series import DailySeries, same_day_in

Floats = NDArray[np.float64]

FIRST, LAST = date(2000, 1, 1), date(2019, 12, 31)
DAYS = (LAST - FIRST).days + 1
ALL_DAYS = [FIRST + timedelta(days=i) for i in range(DAYS)]
MEAN_C, AMPLITUDE_C = 11.0, 8.0
# NOAA, Comparative Climatic Data, normals 1981-2010, Detroit, in C (turf/station_normals.py).
DETROIT = np.array([-3.44, -2.11, 2.56, 9.17, 15.22, 20.72, 23.28, 22.33, 18.11, 11.39, 5.33, -0.94])


def _sine_c(day: date) -> float:
    """A climate that is coldest in mid-January, by the day's place in a leap year."""
    place = (same_day_in(day, 2000) - date(2000, 1, 1)).days
    return MEAN_C - AMPLITUDE_C * math.cos(2 * math.pi * (place - 15) / 366)


def _spells(persistence: float, seed: int = 7) -> Floats:
    """Anomalies of which a known share is left the next day (a first-order autoregression)."""
    rng = np.random.default_rng(seed)
    anomaly = np.zeros(DAYS)
    for i in range(1, DAYS):
        anomaly[i] = persistence * anomaly[i - 1] + rng.normal(0, 2)
    return anomaly


SINE = np.array([_sine_c(day) for day in ALL_DAYS])
SPELLS = climate_of(DailySeries(first=FIRST, tmean_c=SINE + _spells(0.8)))
# Each day of a year has that year's own number, so a member tells which days it was cut from.
YEAR_NUMBER = np.array([float((day.year * 7) % 20) for day in ALL_DAYS])
NUMBERED = climate_of(DailySeries(first=FIRST, tmean_c=YEAR_NUMBER))


OWN_YEAR = slice(1, None, 3)  # each past year serves thrice: ten days sooner, from the day itself, ten days later


def _observed(until: date, days: int, warmer_c: float, past: WeatherPast = SPELLS) -> DailySeries:
    first = until - timedelta(days=days)
    return DailySeries(first=first, tmean_c=past.usual_c(first, days) + warmer_c)


def test_the_climate_of_a_sine_is_that_sine_flattened_by_a_running_mean() -> None:
    past = climate_of(DailySeries(first=FIRST, tmean_c=SINE))
    # A running mean of 31 days keeps sin(31 x) / (31 sin x) of a yearly wave, x = pi / 366: 0.9883 by hand.
    kept = math.sin(31 * math.pi / 366) / (31 * math.sin(math.pi / 366))
    assert kept == pytest.approx(0.9883, abs=0.0001)
    expected = MEAN_C - kept * AMPLITUDE_C * np.cos(2 * np.pi * (np.arange(366) - 15) / 366)
    assert past.climate_c == pytest.approx(expected, abs=0.05)


def test_an_anomaly_fades_as_the_series_that_was_made_lets_it_fade() -> None:
    # An autoregression with a share of 0.8 left each day has 0.8^n left after n days.
    assert SPELLS.fading == pytest.approx(0.8 ** np.arange(1, 15), abs=0.06)


def test_a_record_with_gaps_lets_an_anomaly_fade_the_same_way() -> None:
    values = SINE + _spells(0.8)
    values[::3] = np.nan
    fading = climate_of(DailySeries(first=FIRST, tmean_c=values)).fading
    assert fading == pytest.approx(0.8 ** np.arange(1, 15), abs=0.08)


def test_half_of_what_the_last_ten_years_were_warmer_is_taken_to_last() -> None:
    # The second half of twenty years is 1 C warmer: 0.5 C above the whole, of which half lasts.
    warmer = DailySeries(first=FIRST, tmean_c=SINE + (np.arange(DAYS) >= DAYS / 2))
    past = climate_of(warmer)
    today = date(2020, 5, 1)
    ensemble = weather_members(past, None, None, start=today, today=today, days=30)
    assert past.level_c == pytest.approx(0.25, abs=0.01)
    assert ensemble.tmean_c.mean(axis=0) == pytest.approx(past.usual_c(today, 30) + 0.25, abs=0.1)


def test_ten_years_cannot_be_compared_with_a_longer_time() -> None:
    rising = np.arange(3652) / 1000
    assert climate_of(DailySeries(first=date(2010, 1, 1), tmean_c=rising)).level_c == 0


def test_each_past_year_serves_three_times_from_ten_years_on_and_five_times_before() -> None:
    for years, members in ((20, 60), (10, 30), (9, 45), (2, 10), (1, 5)):
        first = date(2020 - years, 1, 1)
        history = DailySeries(first=first, tmean_c=SPELLS.history.between(first, (date(2020, 1, 1) - first).days))
        today = date(2020, 5, 1)
        ensemble = weather_members(climate_of(history), None, None, start=today, today=today, days=60)
        assert ensemble.tmean_c.shape == (members, 60)
        assert (ensemble.observed_days, ensemble.past_years) == (0, years)


def test_the_years_are_all_there() -> None:
    ensemble = weather_members(NUMBERED, None, None, start=date(2020, 5, 1), today=date(2020, 5, 1), days=60)
    assert sorted(np.rint(ensemble.tmean_c[OWN_YEAR, 0] - NUMBERED.level_c)) == list(range(20))


def test_a_member_that_starts_ten_days_sooner_meets_a_hot_day_ten_days_later() -> None:
    values = SINE.copy()
    values[ALL_DAYS.index(date(2007, 5, 21))] += 50
    past = climate_of(DailySeries(first=FIRST, tmean_c=values))
    today = date(2020, 5, 1)
    ensemble = weather_members(past, None, None, start=today, today=today, days=60)
    hot = np.argwhere(ensemble.tmean_c - past.usual_c(today, 60) > 25)
    # 2007 is the eighth of the years, so its members are rows 21 to 23; 21 May is 20 days after 1 May.
    assert hot.tolist() == [[21, 30], [22, 20], [23, 10]]


def test_twenty_years_get_0_53_of_another_year_s_slow_part_on_top() -> None:
    """By hand: t(19) at 0.9 is 1.328, x sqrt(21 / 20) / 1.2816 = 1.0618; sqrt(1.0618^2 x 20 / 19 - 1) = 0.432.

    It goes to two of three members, so each takes sqrt(3 / 2) of it: 0.529.
    """
    today = date(2020, 5, 1)
    own = weather_members(NUMBERED, None, None, start=today, today=today, days=60).tmean_c
    next_year = np.roll(own[OWN_YEAR], -1, axis=0) - NUMBERED.level_c - NUMBERED.usual_c(today, 60)
    # The days are all alike within a year, so its slow part is its anomaly, but for the month around the turn.
    added = own[2::3] - own[OWN_YEAR]
    assert added / next_year == pytest.approx(0.529, abs=0.02)
    assert own[OWN_YEAR] - own[0::3] == pytest.approx(added, abs=0.2)


def test_a_single_year_is_given_3_degrees_both_ways() -> None:
    # Judgement of 1.5 C between years, x sqrt(2) for the difference of two; shifts of 20 and 10 days weigh sqrt(2) and
    # sqrt(1 / 2): 3.0 and 1.5 C.
    year = climate_of(DailySeries(first=date(2019, 1, 1), tmean_c=np.full(365, 12.0)))
    for today in (date(2020, 3, 1), date(2020, 8, 1), date(2020, 12, 20)):
        ensemble = weather_members(year, None, None, start=today, today=today, days=200)
        assert ensemble.past_years == 1
        assert ensemble.tmean_c == pytest.approx(np.repeat([[9.0], [10.5], [12.0], [13.5], [15.0]], 200, axis=1))


@pytest.mark.parametrize("years", [2, 3, 5, 9, 30])
def test_a_new_year_falls_within_the_range_8_times_in_10_however_few_years_are_known(years: int) -> None:
    """Invented years that differ by a normal chance of 2 C all year long; 400 histories, so 2 % by chance."""
    rng = np.random.default_rng(years)
    first, today, inside = date(2020 - years, 1, 1), date(2020, 6, 1), 0
    days = (date(2020, 1, 1) - first).days
    of_year = np.array([(first + timedelta(days=day)).year - first.year for day in range(days)])
    for _ in range(400):
        chance = rng.normal(0, 2, years + 1)
        past = climate_of(DailySeries(first=first, tmean_c=12 + chance[of_year]))
        members = weather_members(past, None, None, start=today, today=today, days=60).tmean_c[:, 30]
        low, high = np.quantile(members, [0.1, 0.9], method="inverted_cdf")
        inside += low <= 12 + chance[-1] <= high
    assert 0.74 <= inside / 400 <= 0.90


def test_a_year_that_is_asked_for_within_the_history_never_sees_its_own_future() -> None:
    today = date(2010, 5, 1)
    ensemble = weather_members(NUMBERED, None, None, start=today, today=today, days=30)
    years = np.rint(ensemble.tmean_c[OWN_YEAR, 0] - NUMBERED.level_c)
    assert years.tolist() == [float((year * 7) % 20) for year in range(2000, 2010)]


def test_a_southern_season_runs_over_the_turn_of_the_year_in_every_member() -> None:
    today = date(2020, 12, 10)
    ensemble = weather_members(NUMBERED, None, None, start=today, today=today, days=120)
    assert ensemble.past_years == 20
    # 2019 ends with the record, and goes on with the first year, 2000.
    after = [*range(2001, 2020), 2000]
    for member, year, then in zip(ensemble.tmean_c[OWN_YEAR] - NUMBERED.level_c, range(2000, 2020), after, strict=True):
        assert member[:22] == pytest.approx(float((year * 7) % 20), abs=0.5)
        assert member[22:] == pytest.approx(float((then * 7) % 20), abs=0.5)


def test_a_record_that_begins_in_spring_goes_on_after_its_end_with_the_same_calendar_day() -> None:
    first = date(2000, 4, 10)
    history = DailySeries(first=first, tmean_c=YEAR_NUMBER[ALL_DAYS.index(first) :])
    past, today = climate_of(history), date(2020, 12, 10)
    last = weather_members(past, None, None, start=today, today=today, days=60).tmean_c[OWN_YEAR][-1] - past.level_c
    # 2019 was number 13; there is no January 2000, so 2001 goes on: number 7.
    assert last[:22] == pytest.approx(13, abs=1)
    assert last[22:] == pytest.approx(7, abs=1)


def test_a_leap_day_is_an_observed_day_like_any_other() -> None:
    observed = DailySeries(first=date(2020, 2, 20), tmean_c=np.arange(10.0))
    ensemble = weather_members(SPELLS, observed, None, start=date(2020, 2, 25), today=date(2020, 3, 1), days=20)
    # 25 February to 29 February are five days; 29 February is the tenth of the series.
    assert ensemble.observed_days == 5
    assert ensemble.tmean_c[:, :5] == pytest.approx(np.broadcast_to(np.arange(5.0, 10.0), (60, 5)))
    assert ensemble.tmean_c.shape == (60, 20)


def test_a_leap_day_that_other_years_lack_starts_their_members_a_day_earlier() -> None:
    today = date(2020, 2, 29)
    ensemble = weather_members(NUMBERED, None, None, start=today, today=today, days=10)
    assert ensemble.past_years == 20
    assert np.isfinite(ensemble.tmean_c).all()
    assert same_day_in(today, 2019) == date(2019, 2, 28)
    assert same_day_in(today, 2016) == date(2016, 2, 29)


def test_the_usual_year_skips_29_february_where_there_is_none() -> None:
    places = replace(NUMBERED, climate_c=np.arange(366.0))
    # 1 January is 0, 28 February 58, 29 February 59, 1 March 60, 31 December 365.
    assert places.usual_c(date(2019, 2, 28), 2).tolist() == [58, 60]
    assert places.usual_c(date(2020, 2, 28), 3).tolist() == [58, 59, 60]
    assert places.usual_c(date(2019, 12, 31), 2).tolist() == [365, 0]


def test_a_history_that_is_too_short_gives_no_member() -> None:
    short = DailySeries(first=date(2019, 5, 1), tmean_c=np.full(80, 15.0))
    ensemble = weather_members(climate_of(short), None, None, start=date(2020, 5, 1), today=date(2020, 5, 1), days=30)
    assert ensemble.tmean_c.shape == (0, 30)
    assert ensemble.past_years == 0


def test_a_past_year_with_a_gap_of_a_fortnight_is_no_member_and_one_of_a_week_is() -> None:
    values = SINE.copy()
    values[ALL_DAYS.index(date(2005, 5, 20)) :][:14] = np.nan  # 86 of 100 days are left
    values[ALL_DAYS.index(date(2008, 5, 20)) :][:7] = np.nan  # 93 of 100 days are left
    past = climate_of(DailySeries(first=FIRST, tmean_c=values))
    ensemble = weather_members(past, None, None, start=date(2020, 5, 1), today=date(2020, 5, 1), days=60)
    assert ensemble.past_years == 19
    assert np.isfinite(ensemble.tmean_c).all()
    # The week that is missing takes the usual temperature: 2008 is the eighth year, since 2005 is left out.
    assert ensemble.tmean_c[OWN_YEAR][7, 19:26] == pytest.approx(past.usual_c(date(2020, 5, 20), 7) + past.level_c)


def test_days_that_were_not_observed_take_the_usual_temperature() -> None:
    observed = DailySeries(first=date(2020, 5, 1), tmean_c=np.array([9.0, np.nan, 9.5]))
    ensemble = weather_members(SPELLS, observed, None, start=date(2020, 5, 1), today=date(2020, 5, 5), days=10)
    usual = SPELLS.usual_c(date(2020, 5, 1), 4)
    assert ensemble.tmean_c[3, :4] == pytest.approx([9.0, usual[1], 9.5, usual[3]])


def test_observed_days_are_the_same_in_all_members_and_the_days_to_come_differ() -> None:
    today = date(2020, 5, 10)
    ensemble = weather_members(SPELLS, _observed(today, 9, 2.0), None, start=date(2020, 5, 1), today=today, days=40)
    assert ensemble.observed_days == 9
    assert np.ptp(ensemble.tmean_c[:, :9], axis=0).max() == 0
    assert np.ptp(ensemble.tmean_c[:, 9:], axis=0).min() > 0


def test_an_ensemble_that_ends_before_today_has_observed_days_only() -> None:
    today = date(2020, 5, 10)
    ensemble = weather_members(SPELLS, _observed(today, 9, 0.0), None, start=date(2020, 5, 1), today=today, days=4)
    assert ensemble.observed_days == 4
    assert ensemble.tmean_c.shape == (60, 4)


def test_an_ensemble_cannot_start_after_today() -> None:
    with pytest.raises(ValueError, match="starts at the latest today, 2020-05-01, not on 2020-05-02"):
        weather_members(SPELLS, None, None, start=date(2020, 5, 2), today=date(2020, 5, 1), days=10)


def test_an_unusual_spell_shifts_the_next_days_and_fades_within_a_fortnight() -> None:
    today = date(2020, 5, 10)
    cold, warm = (
        weather_members(SPELLS, _observed(today, 9, anomaly), None, start=today, today=today, days=40).tmean_c
        for anomaly in (-4.0, 4.0)
    )
    difference = (warm - cold).mean(axis=0)
    # 8 C apart, of which the place's own fading is left (its values are checked above).
    assert difference[:14] == pytest.approx(8.0 * SPELLS.fading)
    assert difference[0] > 4
    assert np.all(np.diff(difference[:10]) < 0)
    assert difference[14:] == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("ago", [2, 3, 4, 5])
def test_when_yesterday_is_missing_the_last_day_observed_has_faded_by_its_age(ago: int) -> None:
    today = date(2020, 5, 10)
    cold, warm = (
        weather_members(
            SPELLS, _observed(today - timedelta(days=ago - 1), 9, anomaly), None, start=today, today=today, days=40
        ).tmean_c
        for anomaly in (-4.0, 4.0)
    )
    difference = (warm - cold).mean(axis=0)
    assert difference[: 15 - ago] == pytest.approx(8.0 * SPELLS.fading[ago - 1 :])
    assert difference[15 - ago :] == pytest.approx(0.0, abs=1e-9)


def test_a_day_observed_six_days_ago_tells_nothing_of_today() -> None:
    today = date(2020, 5, 10)
    plain = weather_members(SPELLS, None, None, start=today, today=today, days=20).tmean_c
    old = _observed(today - timedelta(days=5), 9, 9.0)
    assert weather_members(SPELLS, old, None, start=today, today=today, days=20).tmean_c == pytest.approx(plain)


def test_a_member_starts_from_today_s_anomaly_instead_of_its_own_year_s() -> None:
    """Invented years that differ all year long, but fade at once: on the first day all that is left is the fading."""
    today = date(2020, 5, 10)
    all_left = replace(NUMBERED, fading=np.ones(14))
    ensemble = weather_members(all_left, _observed(today, 9, 3.0, NUMBERED), None, start=today, today=today, days=20)
    usual = NUMBERED.usual_c(today, 20)
    assert ensemble.tmean_c[:, :14] - usual[:14] == pytest.approx(3.0, abs=0.5)
    assert np.ptp(ensemble.tmean_c[:, 14]) > 15


def test_a_forecast_is_kept_in_the_mean_and_its_error_grows_day_by_day() -> None:
    today = date(2020, 5, 10)
    told = np.array([17.0, 3.0, 16.0, 5.0, 15.0])
    forecast = DailySeries(first=today, tmean_c=told)
    plain = weather_members(SPELLS, None, None, start=today, today=today, days=20).tmean_c
    ensemble = weather_members(SPELLS, None, forecast, start=today, today=today, days=20).tmean_c
    assert ensemble[:, :5].mean(axis=0) == pytest.approx(told)
    # Judgement: 1 C on the first day and a quarter of a degree more each day, but never more than the past years.
    assert (FORECAST_ERROR_C, FORECAST_ERROR_GROWTH_C) == (1.0, 0.25)
    allowed = np.minimum([1.0, 1.25, 1.5, 1.75, 2.0], plain[:, :5].std(axis=0))
    assert ensemble[:, :5].std(axis=0) == pytest.approx(allowed)
    assert np.all(np.diff(ensemble[:, :5].std(axis=0)) > 0)
    assert ensemble[:, 5:] == pytest.approx(plain[:, 5:])


def test_a_day_that_the_forecast_leaves_out_is_filled_by_the_past_years() -> None:
    today = date(2020, 5, 10)
    forecast = DailySeries(first=today, tmean_c=np.array([12.0, np.nan, 12.0]))
    plain = weather_members(SPELLS, None, None, start=today, today=today, days=5).tmean_c
    ensemble = weather_members(SPELLS, None, forecast, start=today, today=today, days=5).tmean_c
    assert ensemble[:, 1] == pytest.approx(plain[:, 1])
    assert ensemble[:, 2].mean() == pytest.approx(12.0)


@pytest.mark.parametrize("month", range(1, 13))
def test_monthly_means_are_met_in_the_middle_of_each_month(month: int) -> None:
    usual = members_from_monthly(DETROIT, date(2021, month, 15), 2).tmean_c[0]
    # The middle of a month is half a day before or after these; 7 C a month is 0.23 C a day.
    assert usual.mean() == pytest.approx(DETROIT[month - 1], abs=0.4)


def test_monthly_means_are_joined_by_straight_lines_over_the_turn_of_the_year() -> None:
    # Mid-December to mid-January is 31 days; noon of 1 January is 16 days after mid-December:
    # -0.94 + 16 / 31 x (-3.44 + 0.94) = -2.230.
    ensemble = members_from_monthly(DETROIT, date(2021, 12, 25), 20)
    assert ensemble.tmean_c.shape == (1, 20)
    assert ensemble.tmean_c[0, 7] == pytest.approx(-2.230, abs=0.001)
    assert members_from_monthly(np.full(12, 9.5), date(2020, 2, 20), 400).tmean_c == pytest.approx(9.5)


def test_scattered_days_are_laid_out_in_order_with_gaps_between() -> None:
    series = DailySeries.from_days({date(2020, 3, 2): 6.0, date(2020, 2, 28): 4.0})
    assert (series.first, series.after_last) == (date(2020, 2, 28), date(2020, 3, 3))
    assert np.isnan(series.tmean_c).tolist() == [False, True, True, False]
    assert series.between(date(2020, 3, 2), 2) == pytest.approx([6.0, np.nan], nan_ok=True)
    assert np.isnan(series.between(date(2021, 1, 1), 3)).all()
    assert len(series.between(date(2020, 3, 1), 0)) == 0
