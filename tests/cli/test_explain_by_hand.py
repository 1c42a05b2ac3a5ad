"""`swardcast explain`: a sceptic with a pocket calculator gets what is printed, and every step names its source."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Callable
from datetime import date, timedelta

import pytest

from tests.cli.conftest import Done
from tests.conftest import DEMO

AS_OF = ("--club", str(DEMO), "--as-of", "2027-09-14 09:30")
NUMBER = r"(\d+(?:\.\d+)?)"


def steps(done: Done, part: int) -> dict[str, str]:
    """What a part says, without blanks that do not break, with the source of each line."""
    assert (done.code, done.err) == (0, "")
    return {step["says"].replace("\u00a0", " "): step["source"] for step in json.loads(done.out)[part]["steps"]}


@pytest.fixture
def work(swardcast: Callable[..., Done]) -> dict[str, str]:
    """The steps of the greens' work on the 7th green."""
    return steps(swardcast("explain", "green-7", *AS_OF, "--json"), 1)


def figures(said: dict[str, str], pattern: str) -> list[float]:
    """The figures that a pattern finds in the one line that it fits."""
    found = [match for line in said if (match := re.search(pattern.replace("#", NUMBER), line))]
    assert len(found) == 1, (pattern, said)
    return [float(figure) for figure in found[0].groups()]


def test_the_share_of_blades_is_width_over_spacing(work: dict[str, str]) -> None:
    blade, spacing, share = figures(work, r"^Scarifying: # / # = # % of the surface\.$")
    assert (blade, spacing) == (2, 25)  # as planned: blade: 2 mm, spacing: 25 mm
    assert share == pytest.approx(100 * blade / spacing, abs=0.05)


def test_the_share_of_tines_is_their_area_over_the_pattern(work: dict[str, str]) -> None:
    pi, diameter, across, along, share = figures(
        work, r"^Hollow tining: # x #² / \(4 x # x #\) = # % of the surface\.$"
    )
    assert (diameter, across, along) == (13, 50, 50)
    assert share == pytest.approx(100 * pi * diameter**2 / (4 * across * along), abs=0.05)


def test_the_sand_that_stays_on_top_is_what_does_not_fit(work: dict[str, str]) -> None:
    spread, fits, surplus, hides, shown, scale, density = figures(
        work,
        r"^Sand: # mm spread, # mm fits into holes and grooves, # mm stays on top and hides # % of the leaf"
        r" \(1 - exp\(-# / #\); bulk density # t/m3\)\.$",
    )
    # 2.6 t on green 7's 560 m2 at 1.56 t/m3: 2600 / 560 / 1.56 = 2.976 mm
    assert spread == pytest.approx(2600 / 560 / density, abs=0.005)
    # grooves of 2 / 25 of the surface, 3 mm deep; holes of 10 mm inside diameter every 50 x 50 mm, 60 mm deep
    assert fits == pytest.approx(2 / 25 * 3 + math.pi * 10**2 / (4 * 50 * 50) * 60, abs=0.005)
    assert surplus == shown
    assert surplus == pytest.approx(spread - fits, abs=0.011)
    assert hides == pytest.approx(100 * (1 - math.exp(-surplus / scale)), abs=0.6)


def test_the_room_for_sand_can_be_redone_from_what_is_printed(work: dict[str, str]) -> None:
    said = " ".join(work)
    assert "10" in re.findall(r"\d+", said)
    assert "60" in re.findall(r"\d+", said)


def test_day_0_is_what_holes_grooves_and_sand_leave_together(work: dict[str, str]) -> None:
    (grooves,) = figures(work, r"^Scarifying: .* = # % of")
    (holes,) = figures(work, r"^Hollow tining: .* = # % of")
    (sand,) = figures(work, r"hides # % of the leaf")
    (day_zero,) = figures(work, r"^Disturbed on day 0, .*: # % of the surface\.$")
    clear = (1 - grooves / 100) * (1 - holes / 100) * (1 - sand / 100)
    assert day_zero == pytest.approx(100 * (1 - clear), abs=1.0)


def test_the_growth_days_needed_follow_from_the_printed_shares_and_rate(work: dict[str, str]) -> None:
    for words, threshold in (("to settle", 5), ("to close", 2)):
        day_zero, limit, rate, days = figures(work, rf"^Growth days needed {words}: ln\(# / #\) / # = #\.$")
        assert limit == threshold
        assert days == pytest.approx(math.log(day_zero / limit) / rate, abs=0.06)


def test_the_growth_of_a_day_is_the_printed_bell_of_the_printed_grass(
    swardcast: Callable[..., Done], work: dict[str, str]
) -> None:
    assert figures(work, r"^Growth of a day: exp\(-\(\(T - #\) / #\)² / 2\), cool-season grass") == [20, 7]
    fourth = steps(swardcast("explain", "green-4", *AS_OF, "--json"), 1)
    assert figures(fourth, r"^Growth of a day: exp\(-\(\(T - #\) / #\)² / 2\), annual meadow-grass grass") == [18, 7]


def test_the_growth_so_far_is_the_bell_summed_over_the_observed_days(work: dict[str, str]) -> None:
    """Done on 24 August: the mean of each day from then to 13 September, from weather/observed.csv itself."""
    lines = (DEMO / "weather" / "observed.csv").read_text(encoding="utf-8").splitlines()[1:]
    means = {day: (float(low) + float(high)) / 2 for day, low, high, _ in (line.split(",") for line in lines)}
    days = [(date(2027, 8, 24) + timedelta(days=count)).isoformat() for count in range(21)]
    assert days[-1] == "2027-09-13"
    growth = sum(math.exp(-(((means[day] - 20) / 7) ** 2) / 2) for day in days)
    assert figures(work, r"^Growth days gained up to yesterday: #\.$") == [pytest.approx(growth, abs=0.06)]


def test_every_step_names_its_source(work: dict[str, str]) -> None:
    sources = {source.split(",")[0] for source in work.values()}
    assert "2027-08-24-1205-greens-7-to-9-done" in sources
    assert "plan/2027-late-summer.yaml" in sources
    assert "weather/observed.csv" in sources
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
    assert "Not computed: a usual range (the club's own experience).  [plan/2027-late-summer.yaml, line " in said
    assert "Growth days needed" not in said
