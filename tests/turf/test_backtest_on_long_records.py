"""Whether the ranges hold, on real records: the target and what was measured stand side by side.

The members' rules were chosen on Clemson up to 1975; the years from 1976 on were kept for this. `make bench` prints the
table for every need from 4 to 20 growth days.
"""

from __future__ import annotations

from datetime import date

import numpy as np
import pytest

from swardcast.turf.backtest import Question, replay
from swardcast.turf.climate import climate_of
from swardcast.turf.growth import GRASSES
from swardcast.turf.series import DailySeries
from swardcast.turf.verdicts import Verdict, verdict_of, verdicts
from tests.turf.long_records import clemson, melbourne

CURVE = GRASSES["cool-season"].curve
NEEDS = (4.0, 8.0, 14.0, 20.0)
HELD_BACK = 1976
FEWEST_CASES = 60  # a month and need of which fewer are left after some days is not judged by itself

COVERAGE_WANTED = (0.75, 0.88)  # of a range that is meant to hold in 80 %
SAVED_AGAINST_ALWAYS_WANTED = 0.30
SAVED_AGAINST_PAST_YEARS_WANTED = 0.05  # from the fifth day of healing on; on the day itself both know nearly the same

# Measured over the 12 months and 4 needs, Clemson, 1976 to 2020 from the 30 years before each. A share of 0.8 of 45
# years has a standard error of 0.06 if the six start days of a month come to the same, of 0.025 if none has to do with
# another: of 48 shares that are all 0.8 in truth, some fall outside the target by chance.
#              lowest  highest coverage, least saved against always, least against past years
MEASURED = {
    0: (0.758, 0.845, 0.333, 0.024),
    5: (0.739, 0.848, 0.421, 0.075),
}
# Allow until, which is meant to be kept in 0.9: all together, and the month and need where it was kept least and most.
IN_TIME = {0: (0.893, 0.818, 0.955), 5: (0.894, 0.822, 0.955)}
OUTSIDE_THE_TARGET = {(5, "March", 4.0): 0.739}
MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
          "December")  # fmt: skip


@pytest.fixture(scope="module")
def clemson_verdicts() -> list[Verdict]:
    question = Question(curve=CURVE, needs=NEEDS, known_days=(0, 5), first_year=HELD_BACK)
    return list(verdicts(replay(clemson(), question), fewest_cases=FEWEST_CASES))


@pytest.mark.parametrize("known_days", [0, 5])
def test_the_range_holds_the_day_about_8_times_in_10_in_every_month_and_for_every_need(
    clemson_verdicts: list[Verdict], known_days: int
) -> None:
    judged = [one for one in clemson_verdicts if one.known_days == known_days]
    assert len({(one.month, one.need) for one in judged}) >= 47
    lowest, highest, _, _ = MEASURED[known_days]
    assert min(one.coverage for one in judged) == pytest.approx(lowest, abs=0.001)
    assert max(one.coverage for one in judged) == pytest.approx(highest, abs=0.001)
    low, high = COVERAGE_WANTED
    outside = {
        (known_days, MONTHS[(one.month or 0) - 1], one.need): round(one.coverage, 3)
        for one in judged
        if not low <= one.coverage <= high
    }
    assert outside == {at: share for at, share in OUTSIDE_THE_TARGET.items() if at[0] == known_days}


@pytest.mark.parametrize("known_days", [0, 5])
def test_allow_until_is_kept_about_9_times_in_10_and_least_in_the_heat_of_july(
    clemson_verdicts: list[Verdict], known_days: int
) -> None:
    """Wanted: 0.9. Above 20 C warmer days are slower ones, and summers here have grown warmer since 1976."""
    judged = [one for one in clemson_verdicts if one.known_days == known_days]
    share = sum(one.in_time * one.cases for one in judged) / sum(one.cases for one in judged)
    least, most = min(judged, key=lambda one: one.in_time), max(judged, key=lambda one: one.in_time)
    assert (share, least.in_time, most.in_time) == pytest.approx(IN_TIME[known_days], abs=0.001)
    assert least.month == 7


@pytest.mark.parametrize("known_days", [0, 5])
def test_a_third_or_more_of_the_error_of_always_telling_one_number_is_saved(
    clemson_verdicts: list[Verdict], known_days: int
) -> None:
    saved = [one.skill_always or 0.0 for one in clemson_verdicts if one.known_days == known_days]
    assert min(saved) == pytest.approx(MEASURED[known_days][2], abs=0.001)
    assert min(saved) >= SAVED_AGAINST_ALWAYS_WANTED


def test_from_the_fifth_day_on_it_tells_more_than_the_past_years_alone(clemson_verdicts: list[Verdict]) -> None:
    saved = {
        days: [one.skill_climatology or 0.0 for one in clemson_verdicts if one.known_days == days] for days in (0, 5)
    }
    assert min(saved[5]) == pytest.approx(MEASURED[5][3], abs=0.001)
    assert min(saved[5]) >= SAVED_AGAINST_PAST_YEARS_WANTED
    # On the day of the work nothing was promised; it is not worse anywhere.
    assert min(saved[0]) == pytest.approx(MEASURED[0][3], abs=0.001)
    assert min(saved[0]) > 0


# Years of training: coverage of all months and needs together, on the day of the work and after five days of healing;
# wanted as above. These are the starts on the 16th. With those on the 6th and 21st, 1976 to 2020, it runs month by month
# and need by need from 0.60 to 1.00 for one year, from 0.69 to 0.93 for two, from 0.69 to 0.90 for three and five, from
# 0.73 to 0.88 for nine: with so few years a month by itself may miss the target. Two years: 0.841 and 0.806.
FEW_YEARS = {1: (0.802, 0.783), 3: (0.802, 0.790), 5: (0.801, 0.780), 9: (0.797, 0.786)}


@pytest.mark.parametrize("years", FEW_YEARS)
def test_the_range_holds_as_well_when_few_past_years_are_known(years: int) -> None:
    question = Question(
        curve=CURVE,
        needs=NEEDS,
        known_days=(0, 5),
        training_years=years,
        first_year=HELD_BACK,
        days_of_month=(16,),
    )
    cases = replay(clemson(), question).cases
    shares = tuple(verdict_of(cases[cases["known_days"] == days]).coverage for days in (0, 5))
    assert shares == pytest.approx(FEW_YEARS[years], abs=0.001)
    assert all(COVERAGE_WANTED[0] <= share <= COVERAGE_WANTED[1] for share in shares)


def test_a_southern_summer_over_new_year_is_foretold_as_well() -> None:
    """Five years of Melbourne from the five before: so few that only all months of the season together can be judged.

    Month by month the range held in 0.57 (February) to 1.00 (November) of 24 to 30 cases from four or five summers.
    """
    question = Question(curve=CURVE, needs=NEEDS, known_days=(0, 5), training_years=5, months=(1, 2, 3, 10, 11, 12))
    cases = replay(melbourne(), question).cases
    assert set(cases["year"].tolist()) == {1986, 1987, 1988, 1989, 1990}
    measured = {0: (0.833, 0.613, 0.102), 5: (0.839, 0.701, 0.318)}
    for days, (coverage, against_always, against_past) in measured.items():
        verdict = verdict_of(cases[cases["known_days"] == days])
        assert verdict.coverage == pytest.approx(coverage, abs=0.001)
        assert verdict.skill_always == pytest.approx(against_always, abs=0.001)
        assert verdict.skill_climatology == pytest.approx(against_past, abs=0.001)
        assert COVERAGE_WANTED[0] <= coverage <= COVERAGE_WANTED[1]
    assert measured[5][1] >= SAVED_AGAINST_ALWAYS_WANTED
    assert measured[5][2] >= SAVED_AGAINST_PAST_YEARS_WANTED


def _up_to_1975() -> DailySeries:
    record = clemson()
    return DailySeries(first=record.first, tmean_c=record.tmean_c[: (date(HELD_BACK, 1, 1) - record.first).days])


def test_months_of_two_years_differ_about_as_much_as_is_supposed_where_one_year_is_known() -> None:
    """Judgement: 1.5 C (few_years.SPREAD_BETWEEN_YEARS_C)."""
    for record, spread_c in ((_up_to_1975(), 1.6), (melbourne(), 1.1)):
        past = climate_of(record)
        slow = past.cut(past.slow_c, np.arange(30, len(record.tmean_c) - 30))
        assert float(slow.std()) == pytest.approx(spread_c, abs=0.05)


def test_the_last_ten_years_foretell_the_next_weeks_by_about_half_of_their_departure() -> None:
    """Judgement: half (climate.py); least squares through the origin on the mean of the next 40 days."""
    past = climate_of(_up_to_1975())
    sums = np.concatenate([[0.0], np.cumsum(past.cut(past.anomaly_c, np.arange(len(past.history.tmean_c))))])
    days = np.arange(3652, len(sums) - 41)
    before, after = (sums[days] - sums[days - 3652]) / 3652, (sums[days + 40] - sums[days]) / 40
    assert float(before @ after / (before @ before)) == pytest.approx(0.6, abs=0.05)
