"""The course status, its news and what happened, as members of a British and of an American club read them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import UTC, date, datetime
from enum import Enum
from zoneinfo import ZoneInfo

import pytest

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.entering.mornings import morning_offered
from swardcast.entering.standing import standing_at
from swardcast.language.catalogue import BUILT_IN, built_in
from swardcast.language.voice import Voice, slug_of
from swardcast.notices.events import entry_in_words
from swardcast.notices.hours import Ending
from swardcast.notices.play import play_clause
from swardcast.outlook.causes import Cause
from swardcast.outlook.course import assess_course
from swardcast.outlook.fixtures import Basis
from swardcast.outlook.states import Work
from swardcast.outlook.weather_book import WeatherBook
from swardcast.quantities import Sand, SandBasis
from swardcast.reading.limits import LIMITS
from swardcast.reading.seen import Readings
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Change, EntryHead, Eye, GrowthHeldBack, HeldBackBy, Observation, Progress, Step
from swardcast.records.operations import Dressing, Kind
from swardcast.records.plan import Play

LONDON = ZoneInfo("Europe/London")
NEAR = date(2027, 8, 25)
BRITISH = Voice(catalogue=built_in("en-GB"), near=NEAR)
AMERICAN = Voice(catalogue=built_in("en-US"), near=NEAR)
HEAD = EntryHead(id="x", at=datetime(2027, 8, 25, 12, tzinfo=UTC), true_from=datetime(2027, 8, 25, 12, tzinfo=UTC), by="", words="", file="", line=1)  # fmt: skip


@pytest.fixture(scope="module")
def american_records(demo_records: ClubRecords) -> ClubRecords:
    return replace(demo_records, club=replace(demo_records.club, catalogue=built_in("en-US")))


@pytest.fixture(scope="module")
def american(american_records: ClubRecords) -> Bulletin:
    return compose_bulletin(american_records, datetime(2027, 8, 25, 12, tzinfo=LONDON))


@pytest.mark.parametrize(
    ("play", "greens", "words"),
    [
        (Play.CLOSED, "7", "green 7 is closed"),
        (Play.CLOSED, "7 8", "greens 7 and 8 are closed"),
        (Play.OPEN_WITH_CARE, "7 8 9 12", "greens 7 to 9 and 12 are open with care"),
        (Play.NOT_KNOWN, "7", "green 7 is not known"),
        (Play.TEMPORARY_GREEN, "7", "hole 7 plays to a temporary green"),
        (Play.TEMPORARY_GREEN, "8 7", "holes 7 and 8 play to temporary greens"),
    ],
)
def test_play_agrees_with_the_number_of_surfaces(
    demo_records: ClubRecords, play: Play, greens: str, words: str
) -> None:
    surfaces = [demo_records.surfaces[f"green-{hole}"] for hole in greens.split()]
    assert play_clause(play, surfaces, BRITISH) == words


def test_a_green_without_a_hole_is_named_when_it_is_a_temporary_one(demo_records: ClubRecords) -> None:
    surfaces = [demo_records.surfaces["practice-green"]]
    assert play_clause(Play.TEMPORARY_GREEN, surfaces, BRITISH) == "the practice green is on a temporary green"


def test_an_american_club_reads_the_words_of_its_own_trade(american: Bulletin) -> None:
    """On 25 August the demo's log has limits on trolleys and buggies, and rain since 7:10."""
    titles = [item.title for item in american.items]
    assert (
        "Greens 7 to 11 are open with care; hole 12 plays to a temporary green; push carts: please carry if you can;"
        " no trolleys on the 6th or the 11th; golf carts: none today"
    ) in titles  # what was typed stands as it was typed
    assert "A note from the superintendent" in titles
    assert [limit.name for limit in american.status.limits] == ["Push carts", "Golf carts"]
    line = next(line for line in american.status.lines if line.where == "Green 12")
    again = next(fact.value for fact in line.dates if fact.name == "Open again")
    assert again.startswith("held up since 7:10 AM; no more work today; not before 8:15 AM tomorrow")
    assert american.status.holds_for == "6:35 AM on Wednesday, August 25"


def test_the_first_part_of_the_sentence_is_the_larger_one(american: Bulletin) -> None:
    status = american.status
    assert (status.opening, status.rest[:4]) == ("The course is open,", "but ")
    assert status.sentence == f"{status.opening} {status.rest}"


def test_noon_is_said_as_each_language_says_it() -> None:
    noon = datetime(2027, 8, 25, 12, tzinfo=LONDON)
    assert (BRITISH.moment(noon), AMERICAN.moment(noon)) == (
        "midday on Wednesday 25 August",
        "noon on Wednesday, August 25",
    )


def test_an_observation_names_its_readings_and_leaves_them_as_typed(demo_records: ClubRecords) -> None:
    seen = Observation(
        head=HEAD, job="", surfaces=("green-9",), share_left=0.07, turf_cover=None, green_speed_mm=None,
        how=Eye.COUNTED, readings=(("green speed", "8 ft 2 in"), ("height of cut", "4.5 mm")),
    )  # fmt: skip
    assert entry_in_words(seen, demo_records, BRITISH) == (
        "Green 9: about 7\u00a0% of the first marks left (counted), green speed 8 ft 2 in, height of cut 4.5 mm."
    )
    assert entry_in_words(seen, demo_records, AMERICAN) == (
        "Green 9: about 7% of the first marks left (counted), green speed 8 ft 2 in, mowing height 4.5 mm."
    )


@pytest.mark.parametrize(
    ("sand", "british", "american"),
    [  # 1 short ton is 0.90718474 t (NIST SP 811): 1.4 t are 1.54, 25.4 mm an inch; 0.5 kg/m2 are 102.4 lb on 1,000 ft2
        (Sand(1.4, SandBasis.TONNES_EACH), "1.4 tonnes of sand each", "1.5 tons of sand each"),
        (Sand(1.0, SandBasis.TONNES_IN_ALL), "1 tonne of sand in all", "1.1 tons of sand in all"),
        (Sand(12.7, SandBasis.DEPTH_MM), "12.7 mm of sand", "1/2 in of sand"),
        (Sand(0.5, SandBasis.KG_PER_M2), "sand, 0.5 kg on a square metre", "sand, 102 lb per 1,000 sq ft"),
    ],
    ids=lambda one: one.basis.value if isinstance(one, Sand) else "",
)
def test_the_sand_really_used_has_the_units_of_the_language(
    demo_records: ClubRecords, sand: Sand, british: str, american: str
) -> None:
    dressing = Dressing(kind=Kind.TOPDRESSING, sand=sand)
    done = Progress(
        head=HEAD, step=Step.DONE, job="", surfaces=("green-9",), because="", as_done=(dressing,), play=None
    )
    assert entry_in_words(done, demo_records, BRITISH) == f"Work done on green 9. Really used: {british}."
    assert entry_in_words(done, demo_records, AMERICAN) == f"Work done on green 9. Really used: {american}."


@pytest.mark.parametrize(
    ("last", "words"),
    [
        (25, "Greens 7 and 8: growth held back by want of feed on Wednesday 25 August."),
        (27, "Greens 7 and 8: growth held back by want of feed from Wednesday 25 August to Friday 27 August."),
    ],
)
def test_growth_is_held_back_on_a_day_or_from_day_to_day(demo_records: ClubRecords, last: int, words: str) -> None:
    held = GrowthHeldBack(
        head=HEAD, by=HeldBackBy.UNFED, surfaces=("green-7", "green-8"), first_day=NEAR, last_day=date(2027, 8, last)
    )
    assert entry_in_words(held, demo_records, BRITISH) == words


def test_the_reason_written_into_the_log_speaks_as_members_do(american_records: ClubRecords) -> None:
    """Greens 7 to 12 come next on 24 August; the title stands as the plan has it."""
    now = datetime(2027, 8, 24, 6, 35, tzinfo=LONDON)
    outlook = assess_course(american_records, now, WeatherBook(american_records.club, american_records.weather))
    offered = morning_offered(standing_at(american_records, now), outlook)
    title = american_records.jobs["greens-renovation-2027"].title
    assert offered["why"] == f"Greens 7 to 12 are closed for work ({title})."


def test_sand_settles_and_grass_heals(demo_bulletin: Bulletin) -> None:
    works = {line.where.replace("\u00a0", " "): line.work for line in demo_bulletin.status.lines}
    assert works["3 bunkers on holes 4 and 7"] == "settling"
    assert works["Greens 1 to 18"] == "healing"


def test_a_date_that_came_with_a_report_of_work_done_says_so(demo_bulletin: Bulletin) -> None:
    notice = next(notice for notice in demo_bulletin.notices if notice.id == "tees-returfing-2027")
    said = " ".join(event.sentence for event in notice.events)
    assert "Work was reported as done. New date for tee 5 to open again" in said.replace("\u00a0", " ")


def test_news_of_greens_that_are_back_to_normal_gives_the_date_of_the_others_as_theirs(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """Greens 1 to 11 were called back to normal on 20 September: "likely by 1 October" can be no date of theirs."""
    items = demo_bulletin_at("2027-09-21 07:05").items
    (item,) = (one for one in items if one.id.endswith("2027-09-20-1540-greens-1-to-11-normal"))
    (said,) = (one.replace("\u00a0", " ") for one in item.sentences if "likely by" in one)
    assert said.startswith("Back to normal on greens 12 to 18: likely by Friday 1 October")


def test_a_look_at_several_greens_gives_the_largest_share_as_that(demo_bulletin: Bulletin) -> None:
    notice = next(notice for notice in demo_bulletin.notices if notice.id == "greens-renovation-2027")
    said = " ".join(event.sentence for event in notice.events).replace("\u00a0", " ")
    assert "Greens 13 to 15: up to 5.7 % of the surface disturbed (by eye: 8 % of the first marks)" in said


def _family(family: str, choices: Iterable[Enum]) -> list[str]:
    return [f"{family}-{slug_of(choice)}" for choice in choices]


SPOKEN_OF = [
    *_family("play", Play),
    *_family("plays", Play),
    *_family("status-work", (Work.UNDER_WAY, Work.HELD_UP, Work.HEALING)),
    *_family("news-all", Work),
    *_family("news-some", Work),
    *_family("cause", Cause),
    *_family("held-back", HeldBackBy),
    *_family("event", Step),
    *_family("event", Change),
    *_family("fixtures", Basis),
    *_family("hours-overdue", Ending),
    *(f"limit-{name.replace(' ', '-')}" for name in LIMITS),
    *(f"reading-{name.replace('_', '-')}" for name in Readings.model_fields),
]
"""Phrases whose names are made of a choice, so that no search of the code finds them."""


@pytest.mark.parametrize("tag", BUILT_IN)
def test_every_choice_has_its_words(tag: str) -> None:
    assert [phrase for phrase in SPOKEN_OF if not built_in(tag).has(phrase)] == []
