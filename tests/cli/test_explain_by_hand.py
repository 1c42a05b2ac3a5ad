"""`swardcast explain`: a sceptic with a pocket calculator gets what is printed, and every step names its source."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Callable
from datetime import date, timedelta

import pytest

from tests.cli.conftest import Done
from tests.cli.printed_formula import left_after, needed
from tests.conftest import DEMO

AS_OF = ("--club", str(DEMO), "--as-of", "2027-09-14 09:30")
TITLE = "Hollow tining, scarifying and sanding the greens"
NUMBER = r"(\d+(?:\.\d+)?)"


def steps(done: Done, title: str) -> dict[str, str]:
    """What a part says, without blanks that do not break, with the source of each line."""
    assert (done.code, done.err) == (0, "")
    (part,) = (part for part in json.loads(done.out) if part["heading"].startswith(title))
    return {step["says"].replace("\u00a0", " "): step["source"] for step in part["steps"]}


@pytest.fixture
def work(swardcast: Callable[..., Done]) -> dict[str, str]:
    """The steps of the greens' late-summer work on the 7th green."""
    return steps(swardcast("explain", "green-7", *AS_OF, "--json"), TITLE)


def figures(said: dict[str, str], pattern: str) -> list[float]:
    """The figures that a pattern finds in the one line that it fits."""
    found = [match for line in said if (match := re.search(pattern.replace("#", NUMBER), line))]
    assert len(found) == 1, (pattern, said)
    return [float(figure) for figure in found[0].groups()]


def test_the_share_of_blades_is_width_over_spacing(work: dict[str, str]) -> None:
    blade, spacing, share, counts = figures(
        work, r"^Scarifying: # / # = # % of the surface, of which # % counts \(a shallow cut\)\.$"
    )
    assert (blade, spacing) == (2, 25)  # as planned: blade: 2 mm, spacing: 25 mm
    assert counts == 30  # 3 mm deep, of 10 mm from which on a groove counts in full
    assert share == pytest.approx(100 * blade / spacing, abs=0.05)


def test_the_share_of_tines_is_their_area_over_the_pattern(work: dict[str, str]) -> None:
    pi, diameter, across, along, share = figures(
        work, r"^Hollow tining: # x #² / \(4 x # x #\) = # % of the surface\.$"
    )
    assert (diameter, across, along) == (13, 50, 50)
    assert share == pytest.approx(100 * pi * diameter**2 / (4 * across * along), abs=0.05)


def test_the_sand_that_stays_on_top_is_what_does_not_fit(work: dict[str, str]) -> None:
    spread, fits, surplus, hides, shown, scale, density, rate = figures(
        work,
        r"^Sand: # mm spread, # mm fits into holes and grooves, # mm stays on top and hides # % of the leaf"
        r" \(1 - exp\(-# / #\); bulk density # t/m3\)\. It works in at # per growth day\.$",
    )
    # 2.6 t on green 7's 560 m2 at 1.56 t/m3: 2600 / 560 / 1.56 = 2.976 mm
    assert spread == pytest.approx(2600 / 560 / density, abs=0.005)
    # grooves of 2 / 25 of the surface, 3 mm deep; holes of 10 mm inside diameter every 50 x 50 mm, 60 mm deep
    assert fits == pytest.approx(2 / 25 * 3 + math.pi * 10**2 / (4 * 50 * 50) * 60, abs=0.005)
    assert surplus == shown
    assert rate == 0.40
    assert surplus == pytest.approx(spread - fits, abs=0.011)
    assert hides == pytest.approx(100 * (1 - math.exp(-surplus / scale)), abs=0.6)


def test_the_room_for_sand_can_be_redone_from_what_is_printed(work: dict[str, str]) -> None:
    said = " ".join(work)
    assert "10" in re.findall(r"\d+", said)
    assert "60" in re.findall(r"\d+", said)


def formula(work: dict[str, str]) -> Callable[[float], float]:
    (said,) = (line for line in work if line.startswith("Left after G growth days"))
    return left_after(said)


def paces(work: dict[str, str], words: str) -> tuple[float, float, float]:
    """A pace and its range, in per cent."""
    middle, low, high = figures(work, rf"^Healing pace {words}: # %[^,]*, in 8 cases of 10 from # % to # %")
    return middle, low, high


def test_day_0_is_what_holes_and_sand_leave_together(work: dict[str, str]) -> None:
    (sand,) = figures(work, r"hides # % of the leaf")
    (holes,) = figures(work, r"^Open holes and grooves count as # % of the surface in play, whatever their spacing\.")
    (day_zero,) = figures(work, r"^Disturbed on day 0, .*: # % of the surface\.$")
    assert holes == 10
    assert day_zero == pytest.approx(100 * (1 - (1 - sand / 100) * (1 - holes / 100)), abs=1.0)
    assert day_zero == pytest.approx(100 * formula(work)(0), abs=0.5)


def test_the_rates_of_the_formula_are_the_printed_ones_times_the_printed_pace(work: dict[str, str]) -> None:
    (said,) = (line for line in work if line.startswith("Left after G growth days"))
    sand_rate, hole_rate, wide = figures(work, r"It works in at # per growth day")[0], *figures(work, r"close at # / #")
    pace, _, _ = paces(work, "after what was seen")
    assert (hole_rate, wide) == (2.70, 13)
    rates = [float(rate) for rate in re.findall(r"exp\(-([\d.]+) G\)", said)]
    # Sand; the grooves, of 2 mm that heal like a hole of 12 mm; the holes.
    expected = [rate * pace / 100 for rate in (sand_rate, hole_rate / 12, hole_rate / wide)]
    assert rates == pytest.approx(expected, rel=0.006)  # the pace is printed to the nearest per cent


def test_the_growth_days_needed_are_those_of_the_printed_formula(work: dict[str, str]) -> None:
    for words, threshold in (("to settle", 5), ("until the holes count as closed", 2)):
        limit, days = figures(work, rf"^Growth days needed {words} \(left: # %\): #\.$")
        assert limit == threshold
        assert days == pytest.approx(needed(formula(work), threshold / 100), abs=0.1)  # rates of three decimals


def test_the_pace_that_healed_jobs_taught_can_be_redone_from_what_is_printed(work: dict[str, str]) -> None:
    """Half of 0.24² belongs to the course, half and 0.15² to each job: a mean of logarithms with those weights."""
    healed = [float(found) for line in work for found in re.findall(r"so it healed at (\d+) % of it\.$", line)]
    assert len(healed) == 3
    of_course, of_job = 1 / 0.0288, 1 / (0.0288 + 0.0225)
    middle = of_job * sum(math.log(pace / 100) for pace in healed) / (of_course + len(healed) * of_job)
    spread = math.sqrt(1 / (of_course + len(healed) * of_job) + 0.0288)
    said = paces(work, "after that")
    assert said == pytest.approx([100 * math.exp(middle + z * spread) for z in (0, -1.2816, 1.2816)], abs=1.0)
    assert paces(work, "before anything was known of this course") == pytest.approx((100, 73.5, 136), abs=0.6)


def test_the_share_that_was_computed_for_a_look_is_that_of_the_formula_at_the_pace_before(work: dict[str, str]) -> None:
    seen, left, computed, growth, right = figures(
        work, r": # % of the first marks left, by eye\. # % of the first marks are left, where # % was computed after #"
        r" growth days; such a look is right within # %\.$",
    )  # fmt: skip
    before, after = paces(work, "after that")[0], paces(work, "after what was seen")[0]
    assert (seen, left, right) == (12, 12, 10)
    foretold = formula(work)(growth * before / after) / formula(work)(0)  # the formula has the pace after what was seen
    assert computed == pytest.approx(100 * foretold, abs=1.0)


def test_the_share_of_the_roll_that_is_missing_is_of_the_fifth_that_the_work_took(work: dict[str, str]) -> None:
    # 8 ft 10 in of 9 ft 4 in: 106 / 112 = 94.6 %; 6 in of a fifth of 112 in are 27 %.
    of_target, missing = figures(work, r"green speed 8 ft 10 in, # % of the target\. # % of the lost roll")
    assert (of_target, missing) == (95, 27)


def test_growth_gained_and_to_go_make_up_the_growth_needed(swardcast: Callable[..., Done]) -> None:
    said = steps(swardcast("explain", "green-13", *AS_OF, "--json"), TITLE)
    (need,) = figures(said, r"^Growth days needed until the holes count as closed \(left: 2 %\): #\.$")
    gained, to_go = figures(said, r"^Growth days gained up to yesterday: #, so # to go\.$")
    assert to_go > 0
    assert gained + to_go == pytest.approx(need, abs=0.001)  # as printed


def test_the_likely_day_is_the_day_of_closing_and_the_days_that_are_added(work: dict[str, str]) -> None:
    """By the printed sum it is one day; the likely day is the middle of many sums, a day off at most."""
    (line,) = (line for line in work if line.startswith("By these sums the holes closed about "))
    (added,) = figures(
        work, r"^Back to normal: # days \(the usual 13, at the pace that this course has shown\) after that\.$"
    )
    day, month = line.rstrip(".").split()[-2:]
    assert month == "September"
    (likely,) = figures(work, r"^Back to normal: likely by \w+ # September")
    assert likely == pytest.approx(float(day) + added, abs=1)
    # The 13 days of the fitted pace, over the pace that healed jobs taught.
    assert added == pytest.approx(13 / (paces(work, "after that")[0] / 100), abs=0.6)


def test_the_growth_of_a_day_is_the_printed_bell_of_the_printed_grass(
    swardcast: Callable[..., Done], work: dict[str, str]
) -> None:
    assert figures(work, r"^Growth of a day: exp\(-\(\(T - #\) / #\)² / 2\), for cool-season turf") == [20, 7]
    fourth = steps(swardcast("explain", "green-4", *AS_OF, "--json"), TITLE)
    assert figures(fourth, r"^Growth of a day: exp\(-\(\(T - #\) / #\)² / 2\), for annual meadow-grass turf") == [18, 7]


def test_the_growth_so_far_is_the_bell_summed_over_the_observed_days(work: dict[str, str]) -> None:
    """Done on 24 August: the mean of each day from then to 13 September, from weather/observed.csv itself."""
    lines = (DEMO / "weather" / "observed.csv").read_text(encoding="utf-8").splitlines()[1:]
    means = {day: (float(low) + float(high)) / 2 for day, low, high, _ in (line.split(",") for line in lines)}
    days = [(date(2027, 8, 24) + timedelta(days=count)).isoformat() for count in range(21)]
    assert days[-1] == "2027-09-13"
    growth = sum(math.exp(-(((means[day] - 20) / 7) ** 2) / 2) for day in days)
    assert figures(work, r"^Growth days gained up to yesterday: #, so")[0] == pytest.approx(growth, abs=0.06)


def test_every_step_names_its_source(work: dict[str, str]) -> None:
    sources = {source.split(",")[0] for source in work.values()}
    assert "2027-08-24-1205-greens-7-to-9-done" in sources
    assert "plan/2027-late-summer.yaml" in sources
    assert "2027-09-01-1500-greens-7-to-10-closing" in sources
    assert "2027-07-16-0820-practice-green-normal-after-spiking" in sources
    assert all(sources)


def test_a_line_of_the_plan_that_is_named_is_the_job(work: dict[str, str]) -> None:
    (source,) = {source for source in work.values() if source.startswith("plan/")}
    file, line = source.split(", line ")
    assert (DEMO / file).read_text("utf-8").splitlines()[int(line) - 1] == "  - id: greens-renovation-2027"


@pytest.mark.parametrize("name", ["green-7", "green 7", "Green 7", " GREEN-7 "])
def test_a_surface_is_found_by_id_or_name(swardcast: Callable[..., Done], name: str) -> None:
    assert swardcast("explain", name, *AS_OF) == swardcast("explain", "green-7", *AS_OF)


@pytest.mark.parametrize(
    ("name", "hint"),
    [
        ("gren-7", " Did you mean 'green-7'?"),
        ("the practise green", " Did you mean 'the practice green'?"),
        ("xyz", ""),
    ],
)
def test_an_unknown_surface_ends_with_1_and_the_nearest(swardcast: Callable[..., Done], name: str, hint: str) -> None:
    said = f"no surface {name!r}; expected an id or name of surfaces.yaml.{hint}\n"
    assert swardcast("explain", name, *AS_OF) == Done(1, "", said)


def test_work_that_is_not_computed_says_whose_range_it_is(swardcast: Callable[..., Done]) -> None:
    said = swardcast("explain", "tee-5", *AS_OF).out
    assert "It is the usual time for such work (the club's own experience).  [plan/2027-late-summer.yaml, line " in said
    assert "Growth days needed" not in said.partition("New turf on the 5th and 13th tees")[2]
