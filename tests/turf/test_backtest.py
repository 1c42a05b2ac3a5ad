"""The replay on small invented records: what it may know, what counts, and its sums by hand."""

import math
from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from swardcast.turf.backtest import FIELDS, Question, Replay, days_from_each_day, replay, years_to_predict
from swardcast.turf.growth import GRASSES, growth_fraction
from swardcast.turf.milestones import days_until_growth
from swardcast.turf.series import DailySeries
from swardcast.turf.verdicts import verdict_of, verdicts

Floats = NDArray[np.float64]

CURVE = GRASSES["cool-season"].curve  # best growth at 20 C, none to speak of at -10 C
HORIZON = 200
FIRST, LAST = date(2000, 1, 1), date(2013, 12, 31)
DAYS = (LAST - FIRST).days + 1


def _record(tmean_c: Floats | float, first: date = FIRST) -> DailySeries:
    return DailySeries(first=first, tmean_c=np.broadcast_to(np.asarray(tmean_c, dtype=np.float64), DAYS).copy())


def _weather(seed: int = 3) -> Floats:
    """A year between 3 and 19 C with spells that last some days."""
    rng = np.random.default_rng(seed)
    spell = np.zeros(DAYS)
    for day in range(1, DAYS):
        spell[day] = 0.7 * spell[day - 1] + rng.normal(0, 2)
    return np.asarray(11 - 8 * np.cos(2 * np.pi * (np.arange(DAYS) - 15) / 365.25) + spell)


def _ask(**changes: object) -> Question:
    usual: dict[str, object] = {
        "curve": CURVE,
        "needs": (8.0,),
        "months": (5,),
        "days_of_month": (1,),
        "known_days": (0,),
        "training_years": 10,
    }
    return Question(**{**usual, **changes})  # type: ignore[arg-type]


def _place(day: date) -> int:
    return (day - FIRST).days


@given(st.lists(st.floats(-15, 35), min_size=HORIZON + 1, max_size=HORIZON + 5), st.floats(0.1, 60))
@settings(max_examples=40)
def test_days_from_each_day_are_what_the_milestones_count(tmean_c: list[float], need: float) -> None:
    temperatures = np.array(tmean_c)
    growth = np.array([growth_fraction(temperatures[n : n + HORIZON], CURVE) for n in range(len(tmean_c) - HORIZON)])
    expected = np.minimum(days_until_growth(growth, np.array([need])), HORIZON)
    assert days_from_each_day(temperatures, _ask(needs=(need,))) == pytest.approx(expected, abs=1e-6)


@given(st.lists(st.floats(-15, 15), min_size=HORIZON + 1, max_size=HORIZON + 1), st.floats(0, 5))
def test_warmer_days_below_the_best_temperature_never_heal_later(tmean_c: list[float], warmer_c: float) -> None:
    cold, warm = (days_from_each_day(np.array(tmean_c) + plus, _ask(needs=(4.0, 14.0))) for plus in (0.0, warmer_c))
    assert np.all(warm <= cold + 1e-9)


def test_weather_that_never_changes_is_foretold_to_the_day_by_everyone() -> None:
    cases = replay(_record(20.0), _ask()).cases
    # Ten years of training leave 2010 to 2013; at 20 C each day is a growth day.
    assert cases["year"].tolist() == [2010, 2011, 2012, 2013]
    for field in ("truth", "early", "likely", "allow_until", "always"):
        assert cases[field] == pytest.approx(8.0)
    assert cases["crps"] == pytest.approx(0.0)
    assert verdict_of(cases).skill_always is None


def test_what_came_after_the_prediction_cannot_change_it() -> None:
    known, changed = _weather(), _weather()
    today = date(2012, 5, 6)
    changed[_place(today) :] += 6
    ask = _ask(known_days=(5,), first_year=2012, days_of_month=(1,))
    one, other = (replay(_record(values), ask).cases[0] for values in (known, changed))
    for field in ("early", "likely", "allow_until", "always"):
        assert one[field] == other[field]
    assert other["truth"] < one["truth"]


def test_days_that_are_known_move_the_prediction() -> None:
    known, changed = _weather(), _weather()
    changed[_place(date(2012, 5, 1)) : _place(date(2012, 5, 6))] -= 6
    ask = _ask(known_days=(0, 5), first_year=2012)
    one, other = (replay(_record(values), ask).cases for values in (known, changed))
    assert one["likely"][0] == other["likely"][0]
    assert one["likely"][1] < other["likely"][1] - 1


def test_the_rivals_by_plain_loops() -> None:
    """The median over all start days of ten years, and the ten years' days from 1 May, counted day by day."""
    values = _weather()
    cases = replay(_record(values), _ask(first_year=2010)).cases

    def took(begin: int, end: int) -> float:
        total = 0.0
        for number in range(HORIZON):
            if begin + number >= end:  # the last 200 days run into what is not known yet; the test leaves them out
                return math.nan
            growth = math.exp(-(((values[begin + number] - 20) / 7) ** 2) / 2)
            if total + growth >= 8:
                return number + (8 - total) / growth
            total += growth
        return float(HORIZON)

    end = _place(date(2010, 1, 1))
    from_may = [took(_place(date(year, 5, 1)), end) for year in range(2000, 2010)]
    truth = took(_place(date(2010, 5, 1)), DAYS)
    errors = [abs(days - truth) for days in from_may]
    apart = [abs(a - b) for a in from_may for b in from_may]
    assert cases["truth"][0] == pytest.approx(truth)
    assert cases["climatology_crps"][0] == pytest.approx(sum(errors) / 10 - sum(apart) / 200)
    whole = sorted(days for start in range(end) if not math.isnan(days := took(start, end)))
    assert cases["always"][0] == pytest.approx(whole[len(whole) // 2], abs=1.0)


def test_a_need_that_was_reached_before_the_prediction_is_no_case() -> None:
    cases = replay(_record(20.0), _ask(needs=(4.0, 8.0), known_days=(0, 5, 10))).cases
    assert set(zip(cases["known_days"].tolist(), cases["need"].tolist(), strict=True)) == {(0, 4), (0, 8), (5, 8)}


def test_a_need_that_no_year_reaches_is_foretold_as_such() -> None:
    verdict = verdict_of(replay(_record(-10.0), _ask()).cases)
    assert (verdict.not_reached, verdict.no_date, verdict.coverage) == (1.0, 1.0, 1.0)
    assert (verdict.mean_error_days, verdict.crps_days) == (0.0, 0.0)


def test_a_year_that_never_comes_right_counts_as_the_horizon_for_everyone() -> None:
    values = np.full(DAYS, 20.0)
    values[_place(date(2012, 5, 1)) :] = -10.0
    verdict = verdict_of(replay(_record(values), _ask(first_year=2012)).cases[:1])
    # All of them said 8 days; the truth is counted as 200, so each is wrong by 192.
    assert (verdict.not_reached, verdict.no_date, verdict.coverage) == (1.0, 0.0, 0.0)
    assert verdict.mean_error_days == pytest.approx(192)
    assert verdict.bias_days == pytest.approx(-192)
    assert verdict.skill_always == pytest.approx(0)
    assert verdict.skill_climatology == pytest.approx(0)


def test_a_range_with_an_open_end_holds_a_need_that_is_not_reached() -> None:
    """Half of the past years are warm and half too cold to heal: 9 chances in 10 cannot be told."""
    years = np.array([(FIRST + timedelta(days=day)).year for day in range(DAYS)])
    values = np.where(years % 2 == 0, 15.0, -15.0)
    values[years == 2011] = -15.0
    cases = replay(_record(values), _ask(first_year=2011, months=(3,))).cases
    verdict = verdict_of(cases[cases["year"] == 2011])
    assert cases["allow_until"][0] == HORIZON
    assert (verdict.not_reached, verdict.no_date, verdict.coverage) == (1.0, 1.0, 1.0)


def test_a_start_day_counts_when_the_record_runs_on_to_the_horizon_and_not_a_day_less() -> None:
    values = _weather()
    for missing_at_the_end, cases in ((0, 2), (45, 2), (46, 1)):
        # From 1 May 2013 to the end of the year there are 245 days, 45 more than the horizon.
        record = DailySeries(first=FIRST, tmean_c=values[: DAYS - missing_at_the_end])
        played = replay(record, _ask(first_year=2012))
        assert (len(played.cases), played.left_out) == (cases, 2 - cases)


def test_a_case_with_too_many_gaps_is_left_out_and_one_with_few_counts() -> None:
    for gap_days, cases in ((1, 1), (4, 0)):
        values = _weather()
        values[_place(date(2013, 5, 3)) :][:gap_days] = np.nan  # of some 18 days
        played = replay(_record(values), _ask(first_year=2013, needs=(14.0,)))
        assert (len(played.cases), played.left_out) == (cases, 1 - cases)


def test_a_season_over_the_turn_of_the_year_is_replayed_too() -> None:
    southern = np.roll(_weather(), 182)
    cases = replay(_record(southern), _ask(months=(12,), days_of_month=(20,), needs=(14.0,), known_days=(0, 8))).cases
    assert cases["year"].tolist() == [2010, 2010, 2011, 2011, 2012, 2012]
    assert np.all(cases["truth"] < 40)
    assert np.all(np.abs(cases["likely"] - cases["truth"]) < 8)


def test_years_are_predicted_that_have_enough_whole_years_before_them() -> None:
    assert list(years_to_predict(_record(5.0), _ask())) == [2010, 2011, 2012, 2013]
    assert list(years_to_predict(_record(5.0), _ask(first_year=2012))) == [2012, 2013]
    assert list(years_to_predict(_record(5.0), _ask(training_years=14))) == []
    from_march = DailySeries(first=date(2000, 3, 1), tmean_c=np.full(12 * 366, 5.0))
    assert list(years_to_predict(from_march, _ask())) == [2011, 2012]


def test_a_record_that_is_too_short_gives_no_case() -> None:
    played = replay(_record(5.0), _ask(training_years=14))
    assert (len(played.cases), played.left_out) == (0, 0)
    assert verdicts(played) == []


def _cases(*rows: dict[str, float]) -> NDArray[np.void]:
    usual = dict.fromkeys(FIELDS, 0.0) | {"month": 5, "need": 8.0, "always": 20.0}
    kinds = np.dtype([(name, np.float64) for name in FIELDS])
    return np.array([tuple((usual | row)[name] for name in FIELDS) for row in rows], dtype=kinds)


RANGE = {"early": 10.0, "likely": 12.0, "allow_until": 15.0}
FOUR = _cases(
    {**RANGE, "truth": 10.0, "crps": 1.0, "climatology_crps": 2.0},
    {**RANGE, "truth": 15.0, "crps": 1.0, "climatology_crps": 2.0},
    {**RANGE, "truth": 16.0, "crps": 2.0, "climatology_crps": 2.0},
    {**RANGE, "truth": 13.0, "crps": 1.0, "climatology_crps": 4.0, "month": 6},
)


def test_a_verdict_by_hand() -> None:
    verdict = verdict_of(FOUR)
    assert (verdict.cases, verdict.coverage, verdict.range_days) == (4, 0.75, 5.0)
    assert verdict.in_time == 0.75
    assert verdict_of(_cases({**RANGE, "truth": 3.0})).in_time == 1
    # Errors of 12 against 10, 15, 16, 13: 2, 3, 4, 1; signed +2, -3, -4, -1.
    assert (verdict.mean_error_days, verdict.bias_days, verdict.usual_days) == (2.5, -1.5, 14.0)
    # 20 against the truths is wrong by 10, 5, 4, 7, so 6.5; the past years by 2.5; ours by 1.25.
    assert verdict.crps_days == 1.25
    assert verdict.skill_always == pytest.approx(1 - 1.25 / 6.5)
    assert verdict.skill_climatology == pytest.approx(0.5)


def test_each_month_is_judged_by_itself_when_it_has_enough_cases() -> None:
    played = Replay(cases=FOUR, left_out=0)
    assert [(one.month, one.cases) for one in verdicts(played)] == [(5, 3), (6, 1)]
    assert [one.month for one in verdicts(played, fewest_cases=2)] == [5]


def test_no_case_is_no_verdict() -> None:
    with pytest.raises(ValueError, match="no case"):
        verdict_of(FOUR[:0])
