"""The demo club reads whole: counts and values that were worked out from its files by hand."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from swardcast.quantities import Sand, SandBasis
from swardcast.records.club import Grass, SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Change, Correction, Entry, Eye, MorningStatus, Observation, PlanChange, Progress, Step
from swardcast.records.operations import Dressing, Grooving, Kind, OtherWork, Seeding, Tining
from swardcast.records.plan import Play
from tests.conftest import DEMO

LONDON = ZoneInfo("Europe/London")


@pytest.fixture(scope="session")
def entries(demo_records: ClubRecords) -> dict[str, Entry]:
    return {entry.head.id: entry for entry in demo_records.entries}


def test_every_surface_of_the_file_is_there(demo_records: ClubRecords) -> None:
    """18 greens and the practice green, 18 tees, 14 fairways (four short holes have none), 14 bunkers."""
    kinds = [surface.kind for surface in demo_records.surfaces.values()]
    assert {kind: kinds.count(kind) for kind in set(kinds)} == {
        SurfaceKind.GREEN: 19,
        SurfaceKind.TEE: 18,
        SurfaceKind.FAIRWAY: 14,
        SurfaceKind.BUNKER: 14,
    }


def test_every_log_file_is_an_entry_and_a_correction_brings_one_more(demo_records: ClubRecords) -> None:
    files = list(DEMO.glob("log/**/*.md"))
    assert len(demo_records.entries) == len(files) + 1
    assert {Path(entry.head.file).name for entry in demo_records.entries} == {path.name for path in files}


def test_every_line_of_weather_is_a_day(demo_records: ClubRecords) -> None:
    """1997 to 2026 are thirty years, of which 2000, 2004, ... 2024 are seven leap years."""
    weather = demo_records.weather
    assert len(weather.history_c) == 30 * 365 + 7
    assert len(weather.observed_c) == len((DEMO / "weather" / "observed.csv").read_text("utf-8").splitlines()) - 1
    assert len(weather.forecasts) == len(list(DEMO.glob("weather/forecast/*.csv")))


def test_a_days_mean_lies_half_way_between_its_minimum_and_maximum(demo_records: ClubRecords) -> None:
    """2027-05-01: (4.5 + 11.8) / 2 = 8.15."""
    assert demo_records.weather.observed_c[date(2027, 5, 1)] == pytest.approx(8.15)


def test_forecasts_are_issued_in_local_time(demo_records: ClubRecords) -> None:
    issued = demo_records.weather.forecasts[-1].issued_at
    assert issued == datetime(2027, 9, 14, 6, 0, tzinfo=LONDON)
    assert issued.utcoffset() == timedelta(hours=1)


def test_the_club_is_read_with_plain_numbers(demo_records: ClubRecords) -> None:
    club = demo_records.club
    assert (club.latitude_deg, club.longitude_deg, club.elevation_m) == (55.6, -1.7, 18.0)
    assert (club.time_zone, club.sand_density_t_per_m3) == (LONDON, 1.56)
    assert club.working_days == (0, 1, 2, 3, 4)
    assert club.contact.office == "the course manager's office"


def test_a_hole_takes_the_grass_of_its_kind_unless_it_has_its_own(demo_records: ClubRecords) -> None:
    surfaces = demo_records.surfaces
    assert surfaces["green-3"].grass is Grass.COOL_SEASON
    assert surfaces["green-4"].grass is Grass.ANNUAL_MEADOW_GRASS
    assert surfaces["bunker-2-right"].grass is None
    assert (surfaces["green-4"].area_m2, surfaces["green-4"].hole, surfaces["green-4"].name) == (390.0, 4, "green 4")
    assert (surfaces["practice-green"].hole, surfaces["practice-green"].name) == (None, "the practice green")


def test_the_operations_of_a_job_come_in_order_and_in_millimetres(demo_records: ClubRecords) -> None:
    job = demo_records.jobs["greens-renovation-2027"]
    assert job.operations == (
        Grooving(kind=Kind.SCARIFYING, blade_mm=2.0, spacing_mm=25.0, depth_mm=3.0, passes=1),
        Tining(
            kind=Kind.HOLLOW_TINING,
            diameter_mm=13.0,
            inside_diameter_mm=10.0,
            across_mm=50.0,
            along_mm=50.0,
            depth_mm=60.0,
            passes=1,
        ),
        Dressing(kind=Kind.TOPDRESSING, sand=Sand(2.6, SandBasis.TONNES_EACH)),
        Seeding(kind=Kind.OVERSEEDING, seed="browntop bent", rate_g_per_m2=6.0),
        OtherWork(kind=Kind.BRUSHING_IN),
        OtherWork(kind=Kind.ROLLING),
    )


def test_a_job_names_its_surfaces_one_by_one(demo_records: ClubRecords) -> None:
    jobs = demo_records.jobs
    assert jobs["greens-renovation-2027"].surfaces == tuple(f"green-{hole}" for hole in range(1, 19))
    assert jobs["tees-returfing-2027"].surfaces == ("tee-5", "tee-13")
    assert jobs["fairways-deep-tining-2027"].surfaces == ("fairway-3", "fairway-7", "fairway-12", "fairway-15")


def test_weeks_become_days_and_a_job_without_its_own_day_is_announced_with_its_programme(
    demo_records: ClubRecords,
) -> None:
    """26 to 52 weeks are 182 to 364 days."""
    bunkers = demo_records.jobs["bunkers-resanding-2027"]
    assert bunkers.normal_after is not None
    assert (bunkers.normal_after.from_days, bunkers.normal_after.to_days) == (182, 364)
    assert bunkers.announced == date(2027, 5, 10)
    assert demo_records.jobs["greens-light-sanding-2027"].announced == date(2027, 8, 9)


def test_a_job_knows_the_line_on_which_it_stands(demo_records: ClubRecords) -> None:
    for job in demo_records.jobs.values():
        line = (DEMO / job.file).read_text(encoding="utf-8").splitlines()[job.line - 1]
        assert line == f"  - id: {job.id}"


def test_a_correction_withdraws_an_entry_and_brings_another(entries: dict[str, Entry]) -> None:
    name = "2027-08-24-1815-not-the-12th"
    withdrawal, instead = entries[name], entries[f"{name}-instead"]
    assert isinstance(withdrawal, Correction)
    assert withdrawal.corrects == "2027-08-24-1550-greens-10-to-12-done"
    assert withdrawal.head.words.startswith("I spoke too soon.")
    assert isinstance(instead, Progress)
    assert (instead.step, instead.surfaces) == (Step.DONE, ("green-10", "green-11"))
    assert instead.head.at == datetime(2027, 8, 24, 18, 15, tzinfo=LONDON)
    assert instead.head.true_from == datetime(2027, 8, 24, 15, 50, tzinfo=LONDON)
    assert instead.head.instead_of == withdrawal.corrects


def test_entries_are_in_local_time_and_the_oldest_comes_first(demo_records: ClubRecords) -> None:
    moments = [entry.head.at for entry in demo_records.entries]
    assert moments == sorted(moments)
    assert moments[0] == datetime(2027, 4, 20, 11, 0, tzinfo=LONDON)
    assert {moment.utcoffset() for moment in moments} == {timedelta(hours=1)}  # all of them in summer time


def test_a_morning_entry_states_play_and_the_later_line_wins(entries: dict[str, Entry]) -> None:
    morning = entries["2027-08-25-0635-morning"]
    assert isinstance(morning, MorningStatus)
    play = dict(morning.play)
    assert len(play) == 65
    assert play["green-11"] is Play.OPEN_WITH_CARE
    assert play["green-12"] is Play.TEMPORARY_GREEN
    assert play["green-13"] is Play.OPEN
    assert [limit.name for limit in morning.limits] == ["trolleys", "buggies"]


def test_an_observation_keeps_its_share_as_a_fraction_and_its_readings_as_typed(entries: dict[str, Entry]) -> None:
    seen = entries["2027-09-03-1120-green-9-counted"]
    assert isinstance(seen, Observation)
    assert seen.share_left == pytest.approx(0.07)
    assert (seen.how, seen.surfaces) == (Eye.COUNTED, ("green-9",))
    assert seen.readings == (("green speed", "8 ft 2 in"),)


def test_a_change_of_plan_brings_a_day(entries: dict[str, Entry]) -> None:
    change = entries["2027-08-26-1630-bunkers-postponed"]
    assert isinstance(change, PlanChange)
    assert (change.change, change.starts) == (Change.POSTPONED, date(2027, 9, 7))


def test_what_was_really_done_stands_beside_the_plan(entries: dict[str, Entry]) -> None:
    done = entries["2027-08-26-1545-greens-13-to-15-done"]
    assert isinstance(done, Progress)
    assert Dressing(kind=Kind.TOPDRESSING, sand=Sand(3.2, SandBasis.TONNES_EACH)) in done.as_done
