"""A period's sand, by hand: the small club has greens of 500 m2 and a tee of 250 m2; 1 mm on a green is 0.78 t at 1.56 t/m3."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swardcast.planning.sand_year import Masses, SandYear, sand_year
from swardcast.planning.stages import Stage
from swardcast.quantities import Sand, SandBasis
from swardcast.records.club import SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Dressing, Kind
from tests.outlook.small_club import SmallClub, moment

FIRST, LAST = date(2027, 1, 1), date(2027, 12, 31)
AUTUMN = "09-30"


def year_of(club: SmallClub, at: str, *, density: float | None = None) -> SandYear:
    records = club.records()
    records = replace(records, club=replace(records.club, sand_density_t_per_m3=density))
    return sand_year(records, moment(at), FIRST, LAST)


def told(masses: Masses) -> tuple[float, float, float]:
    return round(masses.planned_t, 6), round(masses.used_t, 6), round(masses.to_come_t, 6)


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    """2 mm on two greens in May (3.12 t), 4 kg/m2 on a tee in June (1 t), 1.5 t on each of two greens in September."""
    club = SmallClub(tmp_path / "club")
    club.job("may", "05-03", "topdressing: {sand: 2 mm}")
    club.job("june", "06-07", "topdressing: {sand: 4 kg/m2}", surfaces="tee 1")
    club.job("september", "09-06", "topdressing: {sand: 1.5 t/green}")
    return club


def test_what_is_planned_stands_in_the_months_of_the_plan(club: SmallClub) -> None:
    year = year_of(club, "04-01")
    assert {month.month: told(masses) for month, masses in year.by_month().items()} == {
        5: (3.12, 0, 3.12),
        6: (1.0, 0, 1.0),
        9: (3.0, 0, 3.0),
    }
    assert told(year.in_all) == (7.12, 0, 7.12)
    assert {name: masses.planned_t for name, masses in year.by_job().items()} == {
        "may": pytest.approx(3.12),
        "june": pytest.approx(1.0),
        "september": pytest.approx(3.0),
    }


def test_what_is_done_is_used_on_its_day_and_the_rest_is_still_to_come(club: SmallClub) -> None:
    """The first green is done in May, the second in June: each takes 1.56 t."""
    club.done("may", "05-03", "surfaces: green 1", name="first")
    club.done("may", "06-01", "surfaces: green 2", name="second")
    year = year_of(club, "06-05")
    months = {month.month: told(masses) for month, masses in year.by_month().items()}
    assert months[5] == (3.12, 1.56, 0)
    assert months[6] == (1.0, 1.56, 1.0)
    assert year.by_job()["may"].against_plan_t == pytest.approx(0)


def test_an_entry_that_tells_how_much_goes_before_the_plan(club: SmallClub) -> None:
    """3 mm instead of 2 on the first green: 2.34 t of it, 0.78 t more than planned."""
    club.done("may", "05-03", "surfaces: green 1", "as done:", "  - topdressing: {sand: 3 mm}", name="first")
    club.done(
        "may",
        "05-03",
        "surfaces: green 2",
        name="second",
    )
    year = year_of(club, "05-04")
    assert told(year.by_job()["may"]) == (3.12, 3.9, 0)
    assert year.by_job()["may"].against_plan_t == pytest.approx(0.78)
    assert [move.told_by for move in year.moves if move.stage is Stage.DONE] == ["first", ""]


def test_a_mass_in_all_that_an_entry_tells_is_that_of_its_own_surfaces(club: SmallClub) -> None:
    """2 t for the first green alone, although the job has two."""
    club.done("may", "05-03", "surfaces: green 1", "as done:", "  - topdressing: {sand: 2 t}", name="first")
    year = year_of(club, "05-04")
    assert told(year.by_job()["may"]) == (3.12, 2.0, 1.56)


def test_a_mass_in_all_of_the_plan_is_shared_out_by_area(tmp_path: Path) -> None:
    """6 t on two greens of 500 m2 and a tee of 250 m2: 2.4, 2.4 and 1.2 t."""
    club = SmallClub(tmp_path / "club")
    club.job("both", "05-03", "topdressing: {sand: 6 t}", surfaces="greens 1-2 and tee 1")
    year = year_of(club, "04-01")
    assert [move.dry_t for move in year.moves if move.stage is Stage.PLANNED] == pytest.approx([2.4, 2.4, 1.2])
    assert [one.kind for one in year.kinds] == [SurfaceKind.GREEN, SurfaceKind.TEE]
    assert [one.masses.planned_t for one in year.kinds] == pytest.approx([4.8, 1.2])


def test_without_areas_it_is_shared_out_evenly_and_a_layer_is_not_known(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    club.job("mass", "05-03", "topdressing: {sand: 6 t}")
    club.job("layer", "06-07", "topdressing: {sand: 2 mm}")
    records = club.records()
    bare = {name: replace(surface, area_m2=None) for name, surface in records.surfaces.items()}
    year = sand_year(replace(records, surfaces=bare), moment("04-01"), FIRST, LAST)
    planned = [(move.job.id, move.dry_t) for move in year.moves if move.stage is Stage.PLANNED]
    assert planned == [("layer", None), ("layer", None), ("mass", 3.0), ("mass", 3.0)]
    assert year.greens.depth_mm is None


def test_a_correction_replaces_and_never_adds(club: SmallClub) -> None:
    """First 3 mm were entered on both greens, then 2.5 mm instead: 3.9 t, not 3.9 + 4.68."""
    club.done("may", "05-03", "as done:", "  - topdressing: {sand: 3 mm}", name="wrong")
    assert year_of(club, "05-03").in_all.used_t == pytest.approx(4.68)
    club.log(
        "right",
        "05-04",
        "correction",
        "corrects: wrong",
        "instead:",
        "  at: 2027-05-03 10:00",
        "  kind: work done",
        "  job: may",
        "  as done:",
        "    - topdressing: {sand: 2.5 mm}",
    )
    year = year_of(club, "05-05")
    assert year.in_all.used_t == pytest.approx(3.9)
    assert year_of(club, "05-03").in_all.used_t == pytest.approx(4.68), "nobody knew better on that evening"


def test_an_entry_withdrawn_counts_nothing(club: SmallClub) -> None:
    club.done("may", "05-03", name="wrong")
    club.log("not-so", "05-04", "correction", "corrects: wrong")
    assert told(year_of(club, "05-05").by_job()["may"]) == (3.12, 0, 3.12)


def test_what_is_called_off_stays_planned_and_is_not_to_come(club: SmallClub) -> None:
    club.done("may", "05-03", "surfaces: green 1", name="first")
    club.log("off", "05-04", "change of plan", "job: may", "change: called off", "because: Frost.")
    year = year_of(club, "05-05")
    assert told(year.by_job()["may"]) == (3.12, 1.56, 0)
    assert [move.surface.id for move in year.called_off] == ["green-2"]


def test_what_is_postponed_to_no_day_is_in_no_month(club: SmallClub) -> None:
    club.log("off", "05-01", "change of plan", "job: may", "change: postponed", "because: Frost.")
    year = year_of(club, "05-02")
    assert "may" not in year.by_job()
    assert sum(move.dry_t or 0 for move in year.without_day) == pytest.approx(3.12)


def test_late_work_counts_as_for_today(club: SmallClub) -> None:
    year = year_of(club, "07-15")
    to_come = {move.job.id: move.day for move in year.moves if move.stage is Stage.TO_COME}
    assert to_come == {"may": date(2027, 7, 15), "june": date(2027, 7, 15), "september": date(2027, 9, 6)}
    assert {move.job.id for move in year.moves if move.is_overdue} == {"may", "june"}


def test_work_not_announced_yet_is_known_to_the_manager(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    club.job("secret", "09-06", "topdressing: {sand: 2 mm}", announced="08-30")
    assert year_of(club, "05-01").in_all.planned_t == pytest.approx(3.12)


def test_a_period_takes_the_work_of_its_days_alone(club: SmallClub) -> None:
    records = club.records()
    year = sand_year(records, moment("04-01"), date(2027, 6, 7), date(2027, 9, 5))
    assert list(year.by_job()) == ["june"]
    assert not year.is_a_year
    assert sand_year(records, moment("04-01"), date(2027, 4, 1), date(2028, 3, 31)).is_a_year


def test_the_layer_on_greens_is_that_over_all_greens(club: SmallClub) -> None:
    """3.12 + 3 t on three greens of 500 m2 in all, one of which gets none: 6120 / 1500 = 4.08 kg/m2, at 1.56 2.615 mm."""
    greens = year_of(club, "04-01").greens
    assert greens.area_m2 == 1500
    assert greens.kg_per_m2 == pytest.approx(4.08)
    assert greens.depth_mm == pytest.approx(2.6154, abs=0.0001)


def test_seed_is_added_up_by_area_and_products_stand_as_typed(tmp_path: Path) -> None:
    """8 g/m2 on 500 m2 are 4 kg; the first green is done, the second is to come."""
    club = SmallClub(tmp_path / "club")
    club.job("seed", "09-06", "overseeding: {seed: browntop bent, rate: 8 g/m2}")
    club.done("seed", "09-06", "surfaces: green 1")
    (material,) = year_of(club, "09-07").materials
    assert (material.kind, material.name) == (Kind.OVERSEEDING, "browntop bent")
    assert [material.used_kg, material.to_come_kg] == pytest.approx([4.0, 4.0])


# What was printed

YEARS = [
    ("Woods 2019, 21 applications of 8.7 mm in all", "0.414286 mm", 21, 1.56, 8.7, None),
    ("Woods 2019, 12 applications of 7.1 mm in all", "0.591667 mm", 12, 1.56, 7.1, None),
    ("Woods 2021, the second year of a course: twice, 2 mm in all", "1 mm", 2, 1.56, 2.0, None),
    ("Pitchcare, undated: 2 kg/m2 a year in dressings of 0.5, by hand 1.3 mm at 1.5", "0.5 kg/m2", 4, 1.5, 1.333, 2.0),
    ("Pitchcare, undated: 8 kg/m2 in dressings of 1, by hand 5.3 mm at 1.5", "1 kg/m2", 8, 1.5, 5.333, 8.0),
    (
        "Hempfling et al. 2017, quoted in Woods 2020: 81 t/ha are 5.4 mm at 1.5, here in ten times",
        "8.1 t/ha",
        10,
        1.5,
        5.4,
        8.1,
    ),
    (
        "Schmid et al. 2014, quoted in Woods 2020: 20.3 ft3/1000 ft2, printed as 6 mm",
        "2.03 ft3/1000 ft2",
        10,
        1.56,
        6.187,
        None,
    ),
]


@pytest.mark.parametrize(
    ("amount", "times", "density", "layer_mm", "kg_per_m2"), [row[1:] for row in YEARS], ids=[row[0] for row in YEARS]
)
def test_a_published_years_dressings_add_up_to_its_total(
    tmp_path: Path, amount: str, times: int, density: float, layer_mm: float, kg_per_m2: float | None
) -> None:
    """Each dressing is a job of its own on all three greens, a week apart."""
    club = SmallClub(tmp_path / "club")
    for number in range(times):
        day = date.fromordinal(date(2027, 4, 5).toordinal() + 7 * number)
        club.job(f"dressing-{number}", f"{day:%m-%d}", f"topdressing: {{sand: {amount}}}", surfaces="greens 1-3")
    greens = year_of(club, "03-20", density=density).greens
    assert greens.depth_mm == pytest.approx(layer_mm, abs=0.001)
    if kg_per_m2 is not None:
        assert greens.kg_per_m2 == pytest.approx(kg_per_m2)


def test_six_dressings_of_twenty_tonnes_are_the_years_hundred_and_twenty(tmp_path: Path) -> None:
    """Rixon S. (STRI), undated, "Straight talking", Pitchcare: about 120 t a year for 18 holes. On 1 ha of greens by hand
    12 kg/m2, at 1.5 t/m3 8.0 mm; our greens of 1,500 m2 get 3 t of each 20."""
    club = SmallClub(tmp_path / "club")
    for month in range(4, 10):
        club.job(f"month-{month}", f"{month:02}-05", "topdressing: {sand: 3 t}", surfaces="greens 1-3")
    year = year_of(club, "03-20", density=1.5)
    assert year.in_all.planned_t / 0.15 == pytest.approx(120)
    assert year.greens.depth_mm == pytest.approx(8.0)
    assert [masses.planned_t for masses in year.by_month().values()] == pytest.approx([3.0] * 6)


def test_sand_by_volume_and_by_mass_meet_at_a_printed_density(tmp_path: Path) -> None:
    """A general calculator page of 2025 prints 101.8 lb/ft3, which is 1.631 t/m3. 3/8 in on 1,000 ft2 are by hand 31.25 ft3 or
    1.157 yd3 (a general web page prints 1.2), and so 3,181 lb = 1.443 t. Here they lie on 500 m2, 5.382 times as much."""
    club = SmallClub(tmp_path / "club")
    club.job("deep", "05-03", "topdressing: {sand: 3/8 in}", surfaces="green 1")
    year = year_of(club, "04-01", density=101.8 * 0.45359237 / 28.316846592)
    on_1000_ft2 = year.in_all.planned_t / (500 / 92.90304)
    assert on_1000_ft2 == pytest.approx(1.443, abs=0.001)


# Laws

FEW = settings(max_examples=40)
AMOUNTS = st.one_of(
    st.floats(0.1, 10).map(lambda amount: Sand(amount, SandBasis.DEPTH_MM)),
    st.floats(0.1, 10).map(lambda amount: Sand(amount, SandBasis.KG_PER_M2)),
    st.floats(0.1, 10).map(lambda amount: Sand(amount, SandBasis.TONNES_EACH)),
    st.floats(0.1, 10).map(lambda amount: Sand(amount, SandBasis.TONNES_IN_ALL)),
)
DAYS = st.integers(0, 364).map(lambda number: date.fromordinal(FIRST.toordinal() + number))


@pytest.fixture(scope="module")
def with_two_jobs(tmp_path_factory: pytest.TempPathFactory) -> ClubRecords:
    club = SmallClub(tmp_path_factory.mktemp("laws") / "club")
    club.job("one", "05-03", "topdressing: {sand: 2 mm}", surfaces="greens 1-3 and tee 1")
    club.job("two", "06-07", "topdressing: {sand: 2 mm}", surfaces="greens 1-2")
    club.done("one", "05-04", "surfaces: greens 1-2")
    return club.records()


def with_amounts(records: ClubRecords, *told: tuple[date, Sand]) -> ClubRecords:
    jobs = {
        job.id: replace(job, starts=day, operations=(Dressing(kind=Kind.TOPDRESSING, sand=sand),))
        for job, (day, sand) in zip(records.jobs.values(), told, strict=True)
    }
    return replace(records, jobs=jobs)


@FEW
@given(st.tuples(DAYS, AMOUNTS), st.tuples(DAYS, AMOUNTS), st.dates(FIRST, LAST))
def test_months_jobs_and_surfaces_each_add_up_to_the_whole(
    with_two_jobs: ClubRecords, one: tuple[date, Sand], two: tuple[date, Sand], day: date
) -> None:
    records = with_amounts(with_two_jobs, one, two)
    as_of = datetime.combine(day, datetime.min.time(), tzinfo=records.club.time_zone)
    year = sand_year(records, as_of, FIRST, LAST)
    parts: list[Callable[[SandYear], list[Masses]]] = [
        lambda year: list(year.by_month().values()),
        lambda year: list(year.by_job().values()),
        lambda year: [one.masses for one in year.kinds],
    ]
    for part in parts:
        for name in ("planned_t", "used_t", "to_come_t"):
            assert sum(getattr(masses, name) for masses in part(year)) == pytest.approx(getattr(year.in_all, name))


@FEW
@given(AMOUNTS, AMOUNTS, st.dates(FIRST, date(2027, 12, 30)))
def test_a_year_cut_in_two_has_the_sand_of_the_year(
    with_two_jobs: ClubRecords, one: Sand, two: Sand, cut: date
) -> None:
    records = with_amounts(with_two_jobs, (date(2027, 5, 3), one), (date(2027, 6, 7), two))
    halves = [
        sand_year(records, moment(AUTUMN), FIRST, cut),
        sand_year(records, moment(AUTUMN), date.fromordinal(cut.toordinal() + 1), LAST),
    ]
    whole = sand_year(records, moment(AUTUMN), FIRST, LAST).in_all
    for name in ("planned_t", "used_t", "to_come_t"):
        assert sum(getattr(half.in_all, name) for half in halves) == pytest.approx(getattr(whole, name))


def test_jobs_are_told_in_the_order_of_their_days_and_not_in_that_of_the_files(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    for name, day in (("autumn", "10-04"), ("spring", "04-05"), ("summer", "07-05")):
        club.job(name, day, "topdressing: {sand: 2 mm}")
    assert list(year_of(club, "03-01").by_job()) == ["spring", "summer", "autumn"]
