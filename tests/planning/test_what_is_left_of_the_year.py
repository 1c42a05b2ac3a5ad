"""What the log says of a year, and what is left of the year's aims: on a small club, by hand.

A solid tine of 8 mm at 50 x 50 mm opens pi x 64 / 4 / 2500 = 2.0106 % of the surface and takes nothing out; a hollow one of
12 mm there 4.5239 %, all of it taken out.
"""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from swardcast.language.voice import Voice
from swardcast.planning.columns import COLUMNS
from swardcast.planning.compare import Comparison
from swardcast.planning.done_this_year import DoneThisYear, done_in_year
from swardcast.planning.notes import notes_beside
from swardcast.planning.tables import tables_of
from swardcast.quantities import Sand, SandBasis
from swardcast.records.operations import Kind, SandInjection, Stripping
from swardcast.records.plan import Stretch
from swardcast.records.planning import Choice, Planning, YearlyGoal
from tests.outlook.small_club import SmallClub, moment
from tests.planning.asked import GREENS, WHEN, blades, choice, compared, comparison_of, sand, small_records, tines

SPIKES = ("solid tining: {diameter: 8 mm, spacing: 50 x 50 mm, depth: 100 mm}", "topdressing: {sand: 2 mm}")
OPENED = math.pi * 64 / 4 / 2500
GOAL = YearlyGoal(disturbed_fraction=0.10, removed_fraction=0.05, sand=Sand(8.0, SandBasis.DEPTH_MM))
VOICE = Voice.english(date(2027, 6, 7))


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    return SmallClub(tmp_path / "club")


def done(club: SmallClub, at: str = "06-07", year: int = 2027, surfaces: tuple[str, ...] = GREENS) -> DoneThisYear:
    return done_in_year(club.records(), moment(at), surfaces, year)


def with_goal(club: SmallClub, *choices: Choice) -> Comparison:
    return comparison_of(replace(club.records(), planning=Planning(goal=GOAL)), *choices)


def test_what_was_done_on_half_of_the_greens_counts_by_half(club: SmallClub) -> None:
    club.job("spikes", "05-04", *SPIKES)
    club.done("spikes", "05-04", "surfaces: green 1")
    found = done(club)
    assert found.jobs == ("spikes",)
    assert found.disturbed_fraction == pytest.approx(OPENED / 2)
    assert found.removed_fraction == 0
    assert found.sand_mm == pytest.approx(1.0)
    assert found.is_whole
    assert done(club, surfaces=("green-2",)).jobs == ()


def test_jobs_add_up_and_what_was_really_done_goes_before_the_plan(club: SmallClub) -> None:
    club.job("spikes", "05-04", *SPIKES)
    club.done("spikes", "05-04", "as done:", "  - topdressing: {sand: 3 mm}")
    club.job("cores", "05-20", "hollow tining: {diameter: 12 mm, spacing: 50 x 50 mm, depth: 60 mm}")
    club.done("cores", "05-20")
    found = done(club)
    cored = math.pi * 144 / 4 / 2500
    assert found.disturbed_fraction == pytest.approx(OPENED + cored)
    assert found.removed_fraction == pytest.approx(cored)
    assert found.sand_mm == pytest.approx(3.0)


@pytest.mark.parametrize(
    ("at", "year"), [("05-03", 2027), ("06-07", 2028), ("06-07", 2026)], ids=["not yet known", "next year", "last year"]
)
def test_only_what_an_entry_known_by_then_calls_done_in_that_year_counts(club: SmallClub, at: str, year: int) -> None:
    club.job("spikes", "05-04", *SPIKES)
    club.done("spikes", "05-04")
    club.job("planned", "06-01", *SPIKES)
    found = done(club, at, year)
    assert (found.jobs, found.disturbed_fraction, found.sand_mm) == ((), 0.0, 0.0)
    assert done(club).jobs == ("spikes",), "what is planned and not reported was not done"


def test_a_job_that_was_withdrawn_by_a_correction_was_not_done(club: SmallClub) -> None:
    club.job("spikes", "05-04", *SPIKES)
    club.done("spikes", "05-04", name="not-so")
    club.log("correction", "05-05", "correction", "corrects: not-so")
    assert done(club).jobs == ()


def test_work_of_which_nothing_is_computed_leaves_the_sum_incomplete(club: SmallClub) -> None:
    club.job("shot", "05-04", "sand injection: {sand: 1 mm}", more="    normal after: {from: 4 weeks, source: us}\n")
    club.done("shot", "05-04")
    found = done(club)
    assert (found.disturbed_fraction, found.sand_mm, found.is_whole) == (0.0, 1.0, False)


def test_what_is_left_of_the_aim_takes_fewer_times_than_a_whole_year(club: SmallClub) -> None:
    """Of 10 % there are 2.01 % done, 7.99 % left: 12 mm hollow tines take 3 times for the year, by 4.52 %, and 2 for what is
    left. Of 8 mm of sand 2 are done: 3 mm a time take 3 times, and 2 for the 6 mm that are left."""
    club.job("spikes", "05-04", *SPIKES)
    club.done("spikes", "05-04")
    (row,) = with_goal(club, choice(tines(12, 50, 50, 60), sand(3))).rows
    assert (row.times.disturbed, row.times.removed, row.times.sand) == (3, 2, 3)
    assert (row.times_left.disturbed, row.times_left.removed, row.times_left.sand) == (2, 2, 2)
    assert [COLUMNS[f"times_left_{name}"](row) for name in ("disturbed", "removed", "sand")] == [2, 2, 2]


def test_an_aim_that_is_reached_takes_no_more_times_even_of_work_that_never_would(club: SmallClub) -> None:
    """Five times 2.01 % are 10.05 % of 10 %."""
    for number in range(5):
        club.job(f"spikes-{number}", f"05-0{number + 1}", *SPIKES)
        club.done(f"spikes-{number}", f"05-0{number + 1}")
    (row,) = with_goal(club, choice(sand(1))).rows
    assert (row.times.disturbed, row.times_left.disturbed) == (math.inf, 0)
    assert (row.times.removed, row.times_left.removed) == (math.inf, math.inf)
    assert (row.times.sand, row.times_left.sand) == (8, 0)


def test_the_year_is_told_in_words_beside_its_own_table(club: SmallClub) -> None:
    """2.01 % of 10 % are 20 %; 2 mm of 8 mm are 25 %."""
    club.job("spikes", "05-04", *SPIKES)
    club.done("spikes", "05-04")
    found = with_goal(club, choice(tines(12, 50, 50, 60), sand(3)))
    planning = Planning(goal=GOAL)
    said = " ".join(notes_beside(found, planning, VOICE)).replace("\u00a0", " ")
    assert (
        "By the log, 2027 has brought so far: 2.0 % of the surface disturbed (20 % of the aim), 0.0 % of the surface removed"
        " (0 % of the aim) and 2.0 mm of sand (25 % of the aim). Work that is only planned does not count." in said
    )
    (table,) = [
        one for one in tables_of(found, planning, VOICE) if one.caption.startswith("Towards the aim of the year")
    ]
    assert table.columns[2:4] == ("Times a year, disturbed", "Still in 2027, disturbed")
    assert table.rows[0][2:-1] == ("3", "2", "2", "2", "3", "2")


def test_where_nothing_was_done_yet_that_is_said_and_there_is_no_second_column(club: SmallClub) -> None:
    found = with_goal(club, choice(sand(3)))
    planning = Planning(goal=GOAL)
    assert "The log has no work done there in 2027 yet." in " ".join(notes_beside(found, planning, VOICE))
    (table,) = [
        one for one in tables_of(found, planning, VOICE) if one.caption.startswith("Towards the aim of the year")
    ]
    assert table.columns[2:-1] == ("Times a year, disturbed", "Times a year, removed", "Times a year, sand")


def test_without_an_aim_nothing_is_said_of_the_year(club: SmallClub) -> None:
    club.job("spikes", "05-04", *SPIKES)
    club.done("spikes", "05-04")
    found = comparison_of(club.records(), choice(sand(3)))
    assert "2027 has brought" not in " ".join(notes_beside(found, Planning(), VOICE))
    assert not any("Towards" in table.caption for table in tables_of(found, Planning(), VOICE))


@pytest.mark.parametrize(
    ("operations", "deepest_mm", "said"),
    [
        ((blades(2, 25, 3), tines(12, 50, 50, 60)), 60, "3 mm and 60 mm"),
        ((tines(12, 50, 50, 60), tines(10, 50, 50, 60)), 60, "60 mm"),
        ((tines(12, 50, 50, 60), tines(8, 50, 50, 200, kind=Kind.SOLID_TINING)), 60, "60 mm"),
        ((Stripping(kind=Kind.FRAISE_MOWING, depth_mm=6, share=0.5),), 6, "6 mm"),
        ((sand(2),), 0, "–"),
    ],
    ids=["blades, then cores", "cores twice", "spikes take nothing out", "stripped turf", "sand alone"],
)
def test_how_deep_turf_is_taken_out_is_told_beside_how_much(
    tmp_path: Path, operations: tuple[Stripping, ...], deepest_mm: float, said: str
) -> None:
    records = small_records(tmp_path / "club")
    found = comparison_of(records, choice(*operations), choice(blades(2, 25, 3)))
    assert COLUMNS["removed_depth_mm"](found.rows[0]) == deepest_mm
    work = tables_of(found, records.planning, VOICE)[1]
    place = work.columns.index("Down to")
    assert work.columns[place - 1] == "Removed"
    assert work.rows[0][place].replace("\u00a0", " ") == said


def test_what_injection_takes_out_is_not_known_nor_how_deep(tmp_path: Path) -> None:
    shot = Choice(
        name="",
        operations=(SandInjection(kind=Kind.SAND_INJECTION, depth_mm=200),),
        normal_after=Stretch(from_days=28, to_days=42, source="us"),
    )
    (row,) = comparison_of(small_records(tmp_path / "club"), shot).rows
    assert COLUMNS["removed_depth_mm"](row) is None


def test_where_nothing_is_taken_out_there_is_no_column_for_its_depth(tmp_path: Path) -> None:
    records = small_records(tmp_path / "club")
    found = comparison_of(records, choice(sand(2)))
    assert "Down to" not in tables_of(found, records.planning, VOICE)[1].columns
    assert compared(small_records(tmp_path / "two"), sand(2)).amounts.removed_depths_mm == ()


def test_choices_without_a_pace_of_their_own_are_done_in_a_day_where_no_pace_is_told(tmp_path: Path) -> None:
    found = comparison_of(
        small_records(tmp_path / "club"),
        choice(sand(1)),
        replace(choice(sand(1)), surfaces_a_day=1.0),
        when=replace(WHEN, surfaces_a_day=None),
    )
    assert [row.disturbance.outlook.job.surfaces_a_day for row in found.rows] == [2.0, 1.0]


def test_how_deep_the_samples_go_is_said_to_be_assumed_where_nobody_typed_it(club: SmallClub) -> None:
    club.log("read", "05-20", "observation", "surfaces: greens 1-2", "readings: {organic matter: 6 %}")
    assumed = "You have not typed how deep your samples go, so the top 20 mm is assumed, by convention."
    records = club.records()
    found = comparison_of(records, choice(sand(1)))
    assert assumed in " ".join(notes_beside(found, records.planning, VOICE)).replace("\u00a0", " ")
    file = club.folder / "club.yaml"
    file.write_text(f"{file.read_text(encoding='utf-8')}planning: {{organic matter depth: 20 mm}}\n", encoding="utf-8")
    records = club.records()
    assert records.planning.is_layer_told
    assert assumed not in " ".join(notes_beside(found, records.planning, VOICE)).replace("\u00a0", " ")


CORING = [  # diameter in mm, times a year, share removed in a year
    ("Atkinson, McCarty and Bridges 2012: 15 % in one event", 10.9255, 1, 0.15),
    ("the same: 15 % in two events of 7.5 %", 7.7255, 2, 0.15),
    ("the same: 15 % in three events of 5 %", 6.3078, 3, 0.15),
    ("the same: 25 % in one event", 14.1047, 1, 0.25),
    ("the same: 25 % in two events of 12.5 %", 9.9736, 2, 0.25),
    ("the same: 25 % in three events of 8.33 %", 8.1434, 3, 0.25),
    ("Sorokovsky et al., as told by Woods 2021: 5 % in spring and in autumn", 6.3078, 2, 0.10),
]


@pytest.mark.parametrize(("diameter_mm", "times", "share"), [row[1:] for row in CORING], ids=[row[0] for row in CORING])
def test_a_published_years_coring_adds_up_to_its_share_of_the_surface(
    club: SmallClub, diameter_mm: float, times: int, share: float
) -> None:
    """Atkinson J.L., McCarty L.B., Bridges W.C., 2012, Agronomy Journal 104(6):1710-1715, abstract: 15 or 25 % of the surface
    a year in one, two or three events. Woods M., 3 May 2021, "An especially lucid abstract about core aeration": 5 % twice.
    They print shares and no tines: at 25 x 25 mm a share is taken by tines of 25 x sqrt(4 x share / pi) mm, by hand."""
    for number in range(times):
        work = f"hollow tining: {{diameter: {diameter_mm} mm, spacing: 25 x 25 mm, depth: 60 mm}}"
        club.job(f"cores-{number}", f"04-{number + 1:02}", work)
        club.done(f"cores-{number}", f"04-{number + 1:02}")
    found = done(club)
    assert found.removed_fraction == pytest.approx(share, abs=0.0001)
    assert found.disturbed_fraction == pytest.approx(share, abs=0.0001)
    assert len(found.jobs) == times
