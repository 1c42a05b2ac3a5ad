"""The morning that is offered follows from the work; the preview tells what members will see change."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.entering.drafts import draft_file, draft_text
from swardcast.entering.job_words import candidates
from swardcast.entering.mornings import morning_offered
from swardcast.entering.preview import NOTHING_CHANGES, changes_in_words
from swardcast.entering.questions import next_question
from swardcast.entering.remarks import cautions
from swardcast.entering.standing import standing_at
from swardcast.entering.understanding import understand
from swardcast.outlook.course import assess_course
from swardcast.outlook.weather_book import WeatherBook
from swardcast.reading.folder import read_club_folder
from swardcast.records.folder import ClubRecords
from tests.outlook.small_club import SmallClub, moment

LONDON = ZoneInfo("Europe/London")


@pytest.mark.parametrize(
    ("as_of", "care", "closed"),
    [  # what the course manager of the demo did write on these mornings
        ("2027-08-23 06:35", "the practice green", "greens 1 to 6"),
        ("2027-08-24 06:35", "greens 1 to 6 and the practice green", "greens 7 to 12"),
        ("2027-09-10 06:35", "greens 1 to 18 and the practice green", "tees 5 and 13 and bunker-7-front"),
    ],
)
def test_the_morning_offered_is_the_one_that_the_manager_would_write(
    demo_records: ClubRecords, as_of: str, care: str, closed: str
) -> None:
    now = datetime.fromisoformat(as_of).replace(tzinfo=LONDON)
    outlook = assess_course(demo_records, now, WeatherBook(demo_records.club, demo_records.weather))
    offered = morning_offered(standing_at(demo_records, now), outlook)
    assert (offered["open"], offered["care"], offered["temporary"]) == ("the whole course", care, "")
    names = {name: surface.name for name, surface in demo_records.surfaces.items()}
    assert offered["closed"].replace(names["bunker-7-front"], "bunker-7-front") == closed


def test_no_limit_is_offered_for_enter_and_those_in_force_are_named(small: SmallClub) -> None:
    fields = "play: {the whole course: open}\nlimits:\n  trolleys: none today\n  preferred lies: {what: Rule E-3, decided by: the Committee, until: 2027-06-03}"
    small.log("rules", "06-01", "morning status", fields, time="07:00")
    records, now = small.records(), moment("06-02", "06:00")
    outlook = assess_course(records, now, WeatherBook(records.club, records.weather))
    offered = morning_offered(standing_at(records, now), outlook)
    answers = dict.fromkeys(("closed", "temporary", "care", "why"), "") | {"open": "the whole course"}
    asked = next_question("morning", answers, understand("morning", answers, records, now), offered, guided=True)
    assert asked is not None
    assert (asked.option, asked.offered) == ("limits", "")
    assert asked.before == "In force: preferred lies until Thursday 3 June. Enter leaves that as it is."


@pytest.fixture
def small(tmp_path: Path) -> SmallClub:
    club = SmallClub(tmp_path)
    club.job("tining", "06-01")
    club.log("morning", "06-01", "morning status", "play: {the whole course: open}", time="06:00")
    return club


def both(club: SmallClub, word: str, now: datetime, **answers: str) -> tuple[Bulletin, Bulletin, list[str]]:
    records = club.records()
    told = understand(word, {name.replace("_", "-"): text for name, text in answers.items()}, records, now)
    assert told.draft is not None, told
    book = WeatherBook(records.club, records.weather)
    name = draft_file(told.draft, set())
    with_it = read_club_folder(club.folder, {name: draft_text(told.draft)})
    said = list(cautions(word, told))
    return compose_bulletin(records, now, book), compose_bulletin(with_it, now, book), said


def test_work_done_tells_surfaces_date_play_and_feed_item(small: SmallClub) -> None:
    before, after, said = both(small, "done", moment("06-01", "16:00"), job="hollow-tine", sand="1.4 t/green")
    lines = changes_in_words(before, after)
    assert lines[0].startswith("Tining work: 2 greens to healing; back to normal: ")
    assert "likely by " in lines[0]
    assert "Play: greens 1 and 2 open with care (so far open)" in lines
    assert lines[-2:] == ["One new feed item:", "  Work done on greens 1 and 2 (Tining work)"]
    assert said == []


def test_a_shared_book_changes_nothing_that_is_said(small: SmallClub) -> None:
    """The second bulletin takes over what the first one worked out: it must be the one that stands alone."""
    now = moment("06-20")
    small.done("tining", "06-01")
    _, after, _ = both(small, "seen", now, job="tining", left="40 %")
    small.log(
        "seen", "06-20", "observation", "job: tining", "surfaces: greens 1 and 2", "disruption left: 40 %", time="18:00"
    )
    alone = compose_bulletin(small.records(), now)
    assert [notice.short_answer for notice in after.notices] == [notice.short_answer for notice in alone.notices]
    assert [item.title for item in after.items] == [item.title for item in alone.items]
    assert after.status == alone.status


def test_what_is_the_same_changes_nothing_for_members(small: SmallClub) -> None:
    before, after, _ = both(small, "note", moment("06-01"), words="Hello.")
    assert changes_in_words(before, before) == [NOTHING_CHANGES]
    assert "One new feed item:" in changes_in_words(before, after)


def test_surfaces_that_a_morning_leaves_unsaid_are_named(small: SmallClub) -> None:
    _, _, said = both(small, "morning", moment("06-02", "06:00"), closed="1-2")
    assert said == ["Green 3 and tee 1 stay not known: no answer names them."]


def test_what_was_said_of_a_surface_today_is_not_called_not_known(small: SmallClub) -> None:
    small.log("early", "06-02", "morning status", "play: {greens 1-3: open}", time="06:00")
    _, _, said = both(small, "morning", moment("06-02", "12:00"), closed="2")
    assert said == ["Tee 1 stays not known: no answer names it."]


def test_a_reason_that_a_second_entry_of_the_day_leaves_out_is_named(small: SmallClub) -> None:
    small.log("early", "06-02", "morning status", "play: {the whole course: open}", "why: Wet.", time="06:00")
    _, _, said = both(small, "morning", moment("06-02", "12:00"), care="2")
    assert said == ['The reason given at 6am is no longer shown: "Wet." Repeat it with --why.']
    _, _, said = both(small, "morning", moment("06-02", "12:00"), care="2", why="Still wet.")
    assert said == []


def test_the_preview_says_of_each_limit_whether_it_is_new_changed_lifted_or_stays(small: SmallClub) -> None:
    limits = "limits: {trolleys: none today, buggies: none today, practice ground: mats only}"
    small.log("rules", "06-01", "morning status", "play: {the whole course: open}", limits, time="07:00")
    told = {"frost_delay": "nobody on the course until 9:30am", "buggies": "lifted", "practice_ground": "closed"}
    before, after, _ = both(small, "morning", moment("06-01", "08:00"), open="the whole course", **told)
    (line,) = (line for line in changes_in_words(before, after) if line.startswith("Limits: "))
    assert line == (
        "Limits: trolleys: none today stays; practice ground: closed (so far practice ground: mats only); "
        "frost delay until 9:30am (new); buggies lifted"
    )


def test_the_preview_of_work_says_nothing_of_limits_that_stay(small: SmallClub) -> None:
    small.log("rules", "06-01", "morning status", "play: {tees: open}", "limits: {trolleys: none today}", time="07:00")
    before, after, _ = both(small, "done", moment("06-01", "16:00"), job="tining")
    assert not [line for line in changes_in_words(before, after) if "trolleys" in line and line.startswith("Limits")]


def where(club: SmallClub, word: str, **answers: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    told = understand(word, {"job": "tining", **answers}, club.records(), moment("06-01"))
    return told.surfaces, told.missing


def test_a_hold_up_means_what_is_under_way_and_before_the_work_all(small: SmallClub) -> None:
    assert where(small, "held-up", because="rain") == (("green-1", "green-2"), ())
    small.log("start", "06-01", "work started", "job: tining", "surfaces: green 2")
    assert where(small, "held-up", because="rain") == (("green-2",), ())


def test_work_goes_on_where_it_had_been_started_and_elsewhere_only_where_it_is_said(small: SmallClub) -> None:
    small.log("rain", "06-01", "held up", "job: tining", "because: rain")
    assert where(small, "resumed") == ((), ("surfaces",))
    assert where(small, "resumed", greens="1") == (("green-1",), ())
    answers = {"job": "tining"}
    told = understand("resumed", answers, small.records(), moment("06-01"))
    asked = next_question("resumed", answers, told, {}, guided=False)
    assert asked is not None
    assert (asked.option, asked.offered, asked.needed) == ("surfaces", "", True)
    assert asked.before == "Held up: greens 1 and 2"
    small.log("start", "06-01", "work started", "job: tining", "surfaces: green 2", time="09:00")
    assert where(small, "resumed") == (("green-2",), ())


def test_the_job_in_hand_or_held_up_is_offered_before_one_that_is_due_later(small: SmallClub) -> None:
    small.job("sanding", "06-15", "topdressing: {sand: 1 mm}")
    small.job("spiking", "06-03", "solid tining: {diameter: 8 mm, spacing: 50 x 50 mm, depth: 60 mm}")
    standing = standing_at(small.records(), moment("06-02"))
    assert [job.id for job in candidates(standing, "done")][-1] == "sanding"
    small.log("rain", "06-02", "held up", "job: tining", "because: rain")
    standing = standing_at(small.records(), moment("06-02"))
    assert [job.id for job in candidates(standing, "done")] == ["tining", "spiking", "sanding"]


def test_work_done_a_second_time_is_asked_back(small: SmallClub) -> None:
    small.done("tining", "06-01")
    _, _, said = both(small, "done", moment("06-02"), job="tining", surfaces="1")
    assert said == ["Green 1: done already, at 10am on Tuesday 1 June. The dates would begin anew."]
