"""The table of published recoveries: what it says of the model, and each of its days once more by a plain loop."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date, timedelta

import pytest

from swardcast.turf.healing import Opening
from swardcast.turf.published_recoveries import PUBLISHED_RECOVERIES, PublishedRecovery, Seen
from swardcast.turf.recovery_table import RecoveryRow, growth_to_milestone, recovery_table
from swardcast.turf.station_normals import MONTHLY_MEANS_C
from tests.turf.law_by_hand import HandJob, needed_by_hand

THRESHOLD = {Seen.SETTLED: 0.05, Seen.HOLES_CLOSED: 0.02, Seen.BACK_TO_NORMAL: 0.02, Seen.COMPLETE_COVER: 0.01}


def _usual_c(recovery: PublishedRecovery, day: date) -> float:
    """At noon between the middles of the months, on a calendar that has every day."""
    noon = (date(2000, day.month, day.day) - date(2000, 1, 1)).days + 0.5
    begins = [(date(2000, number, 1) - date(2000, 1, 1)).days for number in range(1, 13)]
    middles = [(begin + end) / 2 for begin, end in zip(begins, [*begins[1:], 366], strict=True)]
    middles = [middles[-1] - 366, *middles, middles[0] + 366]
    place = max(number for number, middle in enumerate(middles[:-1]) if middle <= noon)
    month, part = place - 1, (noon - middles[place]) / (middles[place + 1] - middles[place])
    here, there = (
        sum(MONTHLY_MEANS_C[name][number % 12] for name in recovery.stations) / len(recovery.stations)
        for number in (month, month + 1)
    )
    return here + part * (there - here) + recovery.warmer_by_c


def _days_by_loop(recovery: PublishedRecovery) -> float:
    job = HandJob(recovery.surplus_mm, tuple((one.lasting_share, one.heals_as_mm) for one in recovery.openings))
    need = needed_by_hand(THRESHOLD[recovery.seen], job)
    if recovery.seen is not Seen.SETTLED:
        need = max(need, *(one.lasting_share * one.half_width_mm / 0.9 for one in recovery.openings))
    found = []
    for month, day in recovery.starts:
        gained, number = 0.0, 0
        while True:
            tmean_c = _usual_c(recovery, date(2015, month, day) + timedelta(days=number))
            growth = recovery.growth_factor * math.exp(-(((tmean_c - 20) / 7) ** 2) / 2)
            growth = 0.0 if number in recovery.frost_days else growth
            if gained + growth >= need:
                found.append(number + (need - gained) / growth)
                break
            gained, number = gained + growth, number + 1
    return sum(found) / len(found) + (13.0 if recovery.seen is Seen.BACK_TO_NORMAL else 0.0)


def _rows() -> list[RecoveryRow]:
    return list(recovery_table())


def test_there_is_a_row_for_each_of_the_26_recoveries_of_which_19_are_dated() -> None:
    assert [row.recovery for row in _rows()] == list(PUBLISHED_RECOVERIES)
    assert len(_rows()) == 26
    assert sum(row.miss_days is not None for row in _rows()) == 19


@pytest.mark.parametrize("number", range(26), ids=[f"{r.name}, {r.seen.value}" for r in PUBLISHED_RECOVERIES])
def test_the_computed_day_is_that_of_a_plain_loop_over_the_days(number: int) -> None:
    assert _rows()[number].computed_days == pytest.approx(_days_by_loop(PUBLISHED_RECOVERIES[number]), abs=0.001)


def test_most_recoveries_lie_inside_what_was_seen_and_the_mean_miss_is_under_three_days() -> None:
    """Measured: 21 of 26 inside, 2.76 days off on average, no bias (0.01)."""
    misses = [row.miss_days for row in _rows() if row.miss_days is not None]
    assert sum(row.is_inside for row in _rows()) >= 19
    assert sum(map(abs, misses)) / len(misses) == pytest.approx(2.8, abs=0.2)
    assert abs(sum(misses)) / len(misses) < 1


def test_a_day_is_inside_to_the_nearest_day_and_misses_by_its_distance_from_the_middle() -> None:
    # Seen from day 10 to 14, middle 12.
    recovery = next(one for one in PUBLISHED_RECOVERIES if (one.from_day, one.to_day) == (10, 14))
    inside = {day: RecoveryRow(recovery=recovery, computed_days=day).is_inside for day in (9.4, 9.6, 14.4, 14.6)}
    assert inside == {9.4: False, 9.6: True, 14.4: True, 14.6: False}
    assert RecoveryRow(recovery=recovery, computed_days=9.5).miss_days == -2.5


def test_a_wide_opening_waits_for_its_rim() -> None:
    # Three tenths of a hole of 30 mm: ln 1.5 x 30 / 2.7 = 4.505 growth days by the law, 0.3 x 15 / 0.9 = 5 by the rim.
    wide = Opening(area_fraction=0.1, lasting_share=0.3, half_width_mm=15.0, heals_as_mm=30.0, room_mm=0.0)
    recovery = replace(PUBLISHED_RECOVERIES[5], openings=(wide,), surplus_mm=0.0)
    assert growth_to_milestone(recovery) == pytest.approx(5.0)
    # No rim holds up putts that roll true: 0.03 of the surface is less than 0.05.
    assert growth_to_milestone(replace(recovery, seen=Seen.SETTLED)) == 0


def test_a_recovery_that_says_only_later_than_has_no_miss() -> None:
    recovery = next(one for one in PUBLISHED_RECOVERIES if math.isinf(one.to_day))
    assert RecoveryRow(recovery=recovery, computed_days=recovery.from_day + 1000).miss_days is None
    assert RecoveryRow(recovery=recovery, computed_days=recovery.from_day + 1000).is_inside
    assert not RecoveryRow(recovery=recovery, computed_days=recovery.from_day - 1).is_inside


def test_what_a_source_does_not_print_is_said_to_be_assumed() -> None:
    """A year that is not printed, a spacing or heavy sand taken over: each such record says so."""
    for recovery in PUBLISHED_RECOVERIES:
        assert recovery.source
        if not recovery.name.split()[-1].isdigit():
            assert "the year is not printed" in recovery.assumed, recovery.name
        if recovery.warmer_by_c or recovery.frost_days:
            assert recovery.assumed, recovery.name


def test_the_normals_are_those_of_a_year() -> None:
    """Twelve months each; the warmest is July or August in the north, January or February in the south."""
    for name, means in MONTHLY_MEANS_C.items():
        warmest = max(range(12), key=means.__getitem__) + 1
        assert len(means) == 12
        assert warmest in ((1, 2) if name == "Bunbury" else (7, 8, 9)), name
        assert all(-10 < mean < 30 for mean in means)
