"""A mass of sand in all that an entry tells lies on the surfaces of that entry, wherever it is counted.

By hand: greens of 500 m2, sand of 1.56 t/m3. The plan has 12 t for three greens: 8 kg/m2, 4 t and 5.1282 mm on each. The
entry tells 9 t for two of them: 9 kg/m2, 4.5 t and 5.7692 mm on each.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from pathlib import Path

import pytest

from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.done_this_year import done_in_year
from swardcast.planning.periods import Period
from swardcast.planning.report import report_of
from swardcast.planning.sand_year import sand_year
from tests.outlook.small_club import SmallClub, moment

PLANNED_MM, TOLD_MM = 5.1282, 5.7692
NINE_TONNES = ("surfaces: greens 1-2", "as done:", "  - topdressing: {sand: 9 t}")


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    small = SmallClub(tmp_path / "club")
    small.job("may", "05-03", "topdressing: {sand: 12 t}", surfaces="greens 1-3")
    return small


def _spread_mm(club: SmallClub) -> list[float]:
    return [club.work("may", moment("05-06"), f"green-{hole}").sums.spread_mm for hole in (1, 2, 3)]


def _done_mm(club: SmallClub, surfaces: Sequence[str]) -> float:
    return done_in_year(club.records(), moment("05-06"), surfaces, 2027).sand_mm


def test_the_outlook_heals_what_the_entry_spread_on_its_own_surfaces(club: SmallClub) -> None:
    club.done("may", "05-03", *NINE_TONNES)
    assert _spread_mm(club) == pytest.approx([TOLD_MM, TOLD_MM, PLANNED_MM], abs=0.0001)
    works = [club.work("may", moment("05-06"), f"green-{hole}") for hole in (1, 2, 3)]
    assert [work.sums.sand_t for work in works] == pytest.approx([4.5, 4.5, 4.0])


def test_the_year_the_report_and_the_store_count_the_same_sand(club: SmallClub) -> None:
    club.done("may", "05-03", *NINE_TONNES)
    assert _done_mm(club, ("green-1",)) == pytest.approx(TOLD_MM, abs=0.0001)
    records, as_of = club.records(), moment("05-06")
    assert sand_year(records, as_of, date(2027, 5, 1), date(2027, 5, 31)).in_all.used_t == pytest.approx(9.0)
    book, may = WeatherBook(records.club, records.weather), Period(first=date(2027, 5, 1), last=date(2027, 5, 31))
    (job,) = report_of(records, as_of, book, may).sand.jobs
    assert [side.sand_t for side in (job.planned, job.done)] == pytest.approx([12.0, 9.0])


def test_the_rest_of_the_job_gets_the_sand_of_the_plan_until_an_entry_tells_of_it(club: SmallClub) -> None:
    """3 t on the third green: 6 kg/m2, 3.8462 mm; on all three the mean is (2 x 5.7692 + 3.8462) / 3 = 5.1282 mm."""
    club.done("may", "05-03", *NINE_TONNES, name="first")
    club.done("may", "05-04", "surfaces: green 3", "as done:", "  - topdressing: {sand: 3 t}", name="second")
    assert _spread_mm(club) == pytest.approx([TOLD_MM, TOLD_MM, 3.8462], abs=0.0001)
    assert _done_mm(club, ("green-1", "green-2", "green-3")) == pytest.approx(5.1282, abs=0.0001)


def test_a_later_word_that_it_is_done_keeps_what_the_first_one_told(club: SmallClub) -> None:
    club.done("may", "05-03", *NINE_TONNES, name="first")
    club.done("may", "05-04", name="all-of-it")
    assert _spread_mm(club) == pytest.approx([TOLD_MM, TOLD_MM, PLANNED_MM], abs=0.0001)
    used = sand_year(club.records(), moment("05-06"), date(2027, 5, 1), date(2027, 5, 31)).in_all.used_t
    assert used == pytest.approx(9.0 + 4.0)


def test_sand_shot_into_the_turf_is_shared_out_alike(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    usual = "    normal after: {from: 4 weeks, source: us}\n"
    club.job("shot", "05-03", "sand injection: {sand: 12 t}", surfaces="greens 1-3", more=usual)
    club.done("shot", "05-03", "surfaces: greens 1-2", "as done:", "  - sand injection: {sand: 9 t}")
    assert _done_mm(club, ("green-1",)) == pytest.approx(TOLD_MM, abs=0.0001)


def test_of_two_dressings_alike_the_entry_tells_one(tmp_path: Path) -> None:
    """12 t twice for three greens. The entry tells 12 t for two of them: 12 kg/m2 and the 8 of the second dressing are
    20 kg/m2, 12.8205 mm; in all 12 + 2 x 4 = 20 t."""
    club = SmallClub(tmp_path / "club")
    club.job("may", "05-03", *["topdressing: {sand: 12 t}"] * 2, surfaces="greens 1-3")
    club.done("may", "05-03", "surfaces: greens 1-2", "as done:", "  - topdressing: {sand: 12 t}")
    assert club.work("may", moment("05-03", "11:00")).sums.spread_mm == pytest.approx(12.8205, abs=0.0001)
    used = sand_year(club.records(), moment("05-03", "11:00"), date(2027, 5, 1), date(2027, 5, 31)).in_all.used_t
    assert used == pytest.approx(20.0)
