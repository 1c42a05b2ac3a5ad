"""The sum behind a date in both Englishes: the same figures, the reader's units."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest

from swardcast.language.catalogue import built_in
from swardcast.language.voice import Voice
from swardcast.notices.explain import explain_surface
from swardcast.notices.sums import job_sums, left_formula, weeks_in_words
from swardcast.outlook.states import CourseOutlook, Milestone
from swardcast.records.club import Grass
from swardcast.turf.healing import Part
from tests.outlook.small_club import SmallClub, moment

BRITISH, AMERICAN = (Voice(catalogue=built_in(tag), near=date(2027, 6, 7)) for tag in ("en-GB", "en-US"))


@pytest.fixture(scope="module")
def course(tmp_path_factory: pytest.TempPathFactory) -> CourseOutlook:
    """Half-inch holes and heavy sand on 1 June at 20 C, looked at on 6 June."""
    club = SmallClub(Path(tmp_path_factory.mktemp("club")))
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    club.log(
        "look", "06-06", "observation", "job: spring", "disruption left: 15 %", "readings:", "  green speed: 9 ft 0 in"
    )
    return club.course(moment("06-07"))


def explained(course: CourseOutlook, voice: Voice) -> list[str]:
    parts = explain_surface(course.surfaces["green-1"], course, voice)
    return [line.replace("\u00a0", " ").replace("\u202f", " ") for part in parts for line, _ in part.lines]


@pytest.mark.parametrize(
    ("weeks", "to_go", "british"),
    [
        ((4.1, 3.8, 2.0), 3.0, "4.1 in the coming week"),
        ((4.1, 3.8, 2.0), 5.0, "4.1, then 3.8 in the coming weeks"),
        ((4.1, 3.8), 9.0, "4.1, then 3.8 and so on in the coming weeks"),
    ],
)
def test_weeks_are_counted_as_many_as_are_needed(weeks: tuple[float, ...], to_go: float, british: str) -> None:
    assert weeks_in_words(weeks, to_go, BRITISH) == british


def test_a_formula_has_its_figures_and_says_which_part_is_the_largest() -> None:
    layers = ((Part(0.433, 0.4),), (Part(0.03, 0.2), Part(0.1, 0.18), Part(0.0001, 9.0)))
    said = left_formula(layers, 1.0, BRITISH)
    assert said == "1 - (1 - 0.433 x exp(-0.400 G))(1 - the largest of [0.030 x exp(-0.200 G); 0.100 x exp(-0.180 G)])"


def test_the_american_sum_has_the_same_figures_of_growth_and_its_own_dates(course: CourseOutlook) -> None:
    ((british,), (american,)) = (job_sums(course, voice) for voice in (BRITISH, AMERICAN))
    growth = [re.findall(r"\d+\.\d", " ".join(table.rows[0].sentences)) for table in (british, american)]
    assert growth[0] == growth[1]
    assert any("was disturbed on Tuesday 1 June." in said for said in british.rows[0].sentences)
    assert any("was disturbed on Tuesday, June 1." in said for said in american.rows[0].sentences)
    assert any("for the mowing height and the fertilizing to come back" in said for said in american.rows[0].sentences)


def test_an_american_explanation_measures_in_inches_and_says_where_a_sum_is_in_millimeters(
    course: CourseOutlook,
) -> None:
    # 12.7 mm are 1/2 in and 50.8 mm are 2 in; pi x 12.7² / (4 x 50.8 x 50.8) = 4.9 %.
    british, american = explained(course, BRITISH), explained(course, AMERICAN)
    formula = "3.1416 x 12.7² / (4 x 50.8 x 50.8)"
    assert f"Hollow tining: {formula} = 4.9 % of the surface." in british
    assert f"Core aeration, worked out in millimeters: {formula} = 4.9% of the surface." in american
    assert any(line.startswith("Room for sand: holes 1/2 in inside and ") for line in american)
    assert "It is best at 20 °C." in next(line for line in british if line.startswith("Growth of a day"))
    assert "It is best at 68 °F." in next(line for line in american if line.startswith("Growth of a day"))
    assert not [line for line in american if re.search(r"\d mm\b|\d kg|tonne", line)]
    assert any("green speed 9 ft 0 in, 90% of the target" in line for line in american)
    assert len(american) == len(british)


@pytest.mark.parametrize("voice", [BRITISH, AMERICAN], ids=["British", "American"])
def test_every_milestone_and_grass_has_a_name(voice: Voice) -> None:
    names = [*(voice.name("milestone", one) for one in Milestone), *(voice.name("grass", one) for one in Grass)]
    assert len(set(names)) == len(Milestone) + len(Grass)
    assert voice.name("grass", Grass.ANNUAL_MEADOW_GRASS) == (
        "annual meadow-grass" if voice is BRITISH else "annual bluegrass"
    )
