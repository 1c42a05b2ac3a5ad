"""The sum behind a date in both Englishes: the same figures, the reader's units."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.language.catalogue import built_in
from swardcast.language.voice import Voice, capital
from swardcast.notices.explain import explain_surface
from swardcast.notices.sums import job_sums, left_formula, weeks_in_words
from swardcast.outlook.states import CourseOutlook, Milestone
from swardcast.records.club import Grass
from swardcast.turf.healing import Part
from tests.outlook.small_club import SmallClub, moment

BRITISH, AMERICAN = (Voice(catalogue=built_in(tag), near=date(2027, 6, 7)) for tag in ("en-GB", "en-US"))


@pytest.fixture(scope="module")
def bulletin(tmp_path_factory: pytest.TempPathFactory) -> Bulletin:
    """Half-inch holes and heavy sand on 1 June at 20 C, looked at on 6 June."""
    club = SmallClub(Path(tmp_path_factory.mktemp("club")))
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    club.log(
        "look", "06-06", "observation", "job: spring", "disruption left: 15 %", "readings:", "  green speed: 9 ft 0 in"
    )
    return compose_bulletin(club.records(), moment("06-07"))


@pytest.fixture(scope="module")
def course(bulletin: Bulletin) -> CourseOutlook:
    return bulletin.outlook


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


def test_the_american_sum_has_the_same_figures_of_growth_and_its_own_dates(bulletin: Bulletin) -> None:
    sums = (job_sums(bulletin.outlook, bulletin.stories, voice) for voice in (BRITISH, AMERICAN))
    ((british,), (american,)) = sums
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


def test_the_date_said_to_be_in_the_notice_is_the_one_that_stands_there(
    evenings: dict[date, Bulletin], demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    """A published date moves by two days or more; on some evenings the date worked out is a day beside it."""
    beside = 0
    for bulletin in (*evenings.values(), demo_bulletin_at("2027-12-06 08:00")):
        notices = {notice.id: notice for notice in bulletin.notices}
        for job in bulletin.sums:
            facts = [fact for section in notices[job.notice_id].sections for fact in section.facts]
            told = [fact.value for fact in facts if fact.name == "Back to normal"]
            assert told == [capital(job.in_the_notice)], (bulletin.as_of, job.title)
            now = bulletin.outlook.jobs[job.notice_id].dates[Milestone.BACK_TO_NORMAL]
            beside += now != bulletin.stories[job.notice_id].published
    assert beside > 0


def test_of_work_without_a_report_the_sums_tell_what_its_notice_tells(tmp_path: Path) -> None:
    """Green 1 was done on 1 June and heals; green 2 was begun, was due by the 3rd, and nobody said any more."""
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", more="    spare days: 2\n")
    club.log("begun", "06-01", "work started", "job: spring", time="07:00")
    club.done("spring", "06-01", "surfaces: green 1")
    silent = compose_bulletin(club.records(), moment("06-06"))
    ((job,), (notice,)) = silent.sums, silent.notices
    facts = {fact.name: fact.value for section in notice.sections for fact in section.facts}
    assert "as last told" in job.in_the_notice
    assert capital(job.in_the_notice) == facts["Back to normal"]
