"""All faults come at once: one in a file hides none in another, one in a line none on the next."""

from __future__ import annotations

from pathlib import Path

from swardcast.errors import InputNeedsAttention, Problem
from tests.reading.breaking import CLUB, DONE, MORNING, OBSERVED, PLAN, SURFACES, problems_in, replace

FIXTURES, CHOICES = "fixtures.ics", "choices.yaml"


def places(club: Path) -> list[tuple[str, str]]:
    return [(problem.file, problem.field) for problem in problems_in(club)]


def test_a_fault_in_the_club_file_hides_none_in_any_other_file(demo_club: Path) -> None:
    replace(demo_club / CLUB, "latitude: 55.6", "latitude: north")
    replace(demo_club / CLUB, 'colour: "#5d2b5a"', "colour: plum")
    replace(demo_club / CLUB, "greens 4, 11 and 16", "greens 4, 11 and 61")
    replace(demo_club / PLAN, "diameter: 16 mm", "diameter: 16")
    replace(demo_club / FIXTURES, "FREQ=WEEKLY", "FREQ=WEKLY")
    replace(demo_club / CHOICES, "surfaces a day: 4", "surfaces a day: four")
    (demo_club / "phrases").mkdir()
    (demo_club / "phrases" / "own.ftl").write_text("site-ovr = Over\n", encoding="utf-8")
    assert places(demo_club) == [
        (CHOICES, "choice 1, surfaces a day"),
        (CLUB, "place.latitude"),
        (CLUB, "house style.groups.the sheltered greens"),
        (CLUB, "look.colour"),
        (FIXTURES, "RRULE"),
        ("phrases/own.ftl", ""),
        (PLAN, "job 6, operation 1, deep tining.diameter"),
    ]


def test_the_log_is_read_as_far_as_a_broken_plan_lets_it(demo_club: Path) -> None:
    """Nothing is said of an entry's job while the plan is at fault, for it may be the one that could not be read."""
    replace(demo_club / PLAN, "diameter: 16 mm", "diameter: 16")
    replace(demo_club / DONE, "surfaces: greens 1-3", "surfaces: greens 1-33")
    replace(demo_club / MORNING, "at: 2027-08-25 06:35", "at: 2027-08-25 25:35")
    assert places(demo_club) == [
        (DONE, "surfaces"),
        (MORNING, "at"),
        (PLAN, "job 6, operation 1, deep tining.diameter"),
    ]


def test_a_fault_in_the_surfaces_hides_no_field_of_the_plan_and_no_moment_of_the_log(demo_club: Path) -> None:
    replace(demo_club / SURFACES, "1: 470 m2", "1: 470")
    replace(demo_club / PLAN, "starts: 2027-08-23", "starts: 2027-08-32")
    replace(demo_club / DONE, "at: 2027-08-23 11:40", "at: 2027-08-23 24:40")
    assert places(demo_club) == [(DONE, "at"), (PLAN, "job 2, starts"), (SURFACES, "greens.holes.1")]


def test_a_fault_in_one_job_hides_none_in_another_nor_in_its_own_words(demo_club: Path) -> None:
    replace(demo_club / PLAN, "announced: 2027-05-10", "announced: soon")
    replace(demo_club / PLAN, "starts: 2027-08-23", "starts: 2027-08-32")
    replace(demo_club / PLAN, "surfaces: tees 5 and 13", "surfaces: tees 5 and 31")
    replace(demo_club / PLAN, "      You may play from", "      ## Whats next\n      You may play from")
    assert places(demo_club) == [
        (PLAN, "announced"),
        (PLAN, "job 2, starts"),
        (PLAN, "own words"),
        (PLAN, "job 4, surfaces"),
    ]


def test_all_that_is_wrong_with_one_entry_is_told(demo_club: Path) -> None:
    replace(demo_club / DONE, "at: 2027-08-23 11:40", "at: 2027-08-23")
    replace(demo_club / DONE, "job: greens-renovation-2027", "job: greens")
    replace(demo_club / DONE, "surfaces: greens 1-3", "surfaces: greens 1-33")
    replace(demo_club / MORNING, "greens 1-11: open", "greens 1-111: open")
    replace(demo_club / MORNING, "green 12:", "grean 12:")
    replace(demo_club / MORNING, "trolleys:", "trolly:")
    assert places(demo_club) == [
        (DONE, "at"),
        (DONE, "job"),
        (DONE, "surfaces"),
        (MORNING, "play.greens 1-111"),
        (MORNING, "play.grean 12"),
        (MORNING, "limits.trolly"),
    ]


def test_all_that_is_wrong_with_one_day_of_weather_is_told_column_by_column(demo_club: Path) -> None:
    replace(demo_club / OBSERVED, "2027-05-01,4.5,11.8,0.0", "2027-05-32,cold,90,-1")
    assert places(demo_club) == [(OBSERVED, column) for column in ("date", "rain_mm", "tmax_c", "tmin_c")]


def test_a_report_lists_forty_problems_of_a_file_and_counts_the_rest() -> None:
    many = [Problem(file="a.yaml", line=line, found="x", expected="y") for line in range(1, 1043)]
    other = Problem(file="b.yaml", line=1, found="x", expected="y")
    lines = str(InputNeedsAttention([*many, other])).splitlines()
    assert len(lines) == 1 + 40 + 1 + 2 + 1
    assert lines[40:43] == ["  line 40: found x; expected y", "  and 1,002 more in this file", "b.yaml"]
    assert lines[-1] == "1043 things need attention."
