"""What is in play: who says so, which word counts, until when. The small club's log is written out in each test."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from swardcast.language.voice import Voice
from swardcast.notices.limits import limit_in_words
from swardcast.notices.reasons import remarks_on
from swardcast.notices.status import compose_status
from swardcast.outlook.course import assess_course
from swardcast.outlook.states import ReasonKind, Work
from swardcast.outlook.story import tell_story
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import EntryHead, MorningStatus
from swardcast.records.plan import Play
from tests.outlook.small_club import HOLES, SmallClub, moment


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", surfaces="greens 1-3", announced="03-01")
    return club


def morning(club: SmallClub, day: str, *lines: str, time: str = "07:00", name: str = "morning") -> None:
    club.log(f"2027-{day}-{name}", day, "morning status", *lines, time=time)


def play(club: SmallClub, day: str, time: str, surface: str = "green-1") -> Play:
    return club.course(moment(day, time)).surfaces[surface].play


def limits(club: SmallClub, day: str, time: str) -> dict[str, str]:
    at = moment(day, time)
    held = (limit_in_words(one, Voice.english(at.date())) for one in club.course(at).limits)
    return {fact.name: fact.value for fact in held}


def test_a_morning_entry_rules_until_the_end_of_its_day_and_not_before_it(club: SmallClub) -> None:
    morning(club, "05-03", "play: {the whole course: open, green 1: closed}")
    assert play(club, "05-03", "06:59") is Play.NOT_KNOWN
    assert play(club, "05-03", "07:00") is Play.CLOSED
    assert play(club, "05-03", "23:59") is Play.CLOSED
    assert play(club, "05-04", "00:00") is Play.NOT_KNOWN


@pytest.mark.parametrize(
    ("operation", "planned", "after"),
    [
        ("change of cutting height: {from: 4 mm, to: 5 mm}", "open", Play.OPEN),
        ("change of cutting height: {from: 4 mm, to: 5 mm}", "open with care", Play.OPEN_WITH_CARE),
        ("rolling", "open", Play.OPEN),
        ("winter protection", "open", Play.OPEN_WITH_CARE),  # the ropes stay
        (HOLES, "open", Play.OPEN_WITH_CARE),
    ],
)
def test_work_during_which_a_green_is_simply_open_and_that_leaves_nothing_asks_for_no_care_afterwards(
    tmp_path: Path, operation: str, planned: str, after: Play
) -> None:
    club = SmallClub(tmp_path)
    club.job("job", "06-01", operation, play=planned)
    club.done("job", "06-01")
    assert play(club, "06-01", "12:00") is after


def test_work_that_left_something_after_all_asks_for_care(tmp_path: Path) -> None:
    """Rolling alone leaves nothing; the entry says that sand was spread, too, and that has to work in."""
    club = SmallClub(tmp_path)
    club.job("job", "06-01", "rolling", play="open")
    club.done("job", "06-01", "as done:", "  - rolling", "  - topdressing: {sand: 1 mm}")
    assert play(club, "06-01", "12:00") is Play.OPEN_WITH_CARE


def test_yesterdays_word_is_kept_as_yesterdays_with_its_moment(club: SmallClub) -> None:
    morning(club, "05-03", "play: {the whole course: open, green 1: closed}")
    there = club.course(moment("05-04", "09:00")).surfaces["green-1"]
    assert (there.play, there.last_play, there.said_at) == (Play.NOT_KNOWN, Play.CLOSED, moment("05-03", "07:00"))
    assert there.reasons[0].kind is ReasonKind.NO_FRESH_ENTRY


def test_a_second_entry_of_the_day_speaks_for_the_surfaces_that_it_names_alone(club: SmallClub) -> None:
    morning(club, "05-03", "play: {the whole course: closed}")
    morning(club, "05-03", "play: {greens 1-2: open}", time="10:30", name="later")
    assert play(club, "05-03", "10:30") is Play.OPEN
    assert play(club, "05-03", "10:30", "green-3") is Play.CLOSED


def test_at_the_same_minute_the_piece_of_work_speaks_after_the_whole_course(club: SmallClub) -> None:
    """By file name alone the morning entry would come last and would open a green that is being worked on."""
    club.log("a-started", "06-01", "work started", "job: spring", "surfaces: green 1", time="07:00")
    club.log("z-morning", "06-01", "morning status", "play: {the whole course: open}", time="07:00")
    assert play(club, "06-01", "07:00") is Play.CLOSED
    assert play(club, "06-01", "07:00", "green-2") is Play.OPEN


def test_started_and_done_at_the_same_minute_is_done(club: SmallClub) -> None:
    club.log("a-done", "06-01", "work done", "job: spring", "surfaces: green 1", time="15:00")
    club.log("b-started", "06-01", "work started", "job: spring", "surfaces: green 1", time="15:00")
    assert club.work("spring", moment("06-01", "15:00")).work is Work.HEALING
    records = club.records()
    story = tell_story(records, records.jobs["spring"], moment("06-01"), WeatherBook(records.club, records.weather))
    assert [change.id for change in story.changes] == ["spring/announced", "spring/a-done"]


def test_an_entry_with_a_moment_to_come_says_nothing_yet(club: SmallClub) -> None:
    morning(club, "05-03", "play: {the whole course: open}")
    morning(club, "05-03", "play: {the whole course: closed}", time="18:00", name="evening")
    assert play(club, "05-03", "17:59") is Play.OPEN
    assert play(club, "05-03", "18:00") is Play.CLOSED


def test_work_on_half_a_green_is_not_done_and_heals_nothing(club: SmallClub) -> None:
    """One half was tined; then a belt broke. Day 0 is the day on which the whole green is entered as done."""
    club.log("started", "06-01", "work started", "job: spring", "surfaces: green 1", time="07:00")
    club.log("held", "06-01", "held up", "job: spring", "surfaces: green 1", "because: a belt broke", time="09:00")
    half = club.work("spring", moment("06-01", "12:00"))
    assert (half.work, half.done_at) == (Work.HELD_UP, None)
    club.log("resumed", "06-02", "work resumed", "job: spring", "surfaces: green 1", time="07:00")
    assert club.work("spring", moment("06-02", "08:00")).work is Work.UNDER_WAY
    club.done("spring", "06-02", "surfaces: green 1")
    whole = club.work("spring", moment("06-02", "18:00"))
    assert whole.work is Work.HEALING
    assert whole.recovery is not None
    assert whole.recovery.start == moment("06-02").date()


def test_under_two_jobs_a_green_shows_the_work_going_on_and_its_dates_include_what_is_left(club: SmallClub) -> None:
    club.job("second", "06-08", HOLES, surfaces="green 1", announced="03-01")
    club.done("spring", "06-01", "surfaces: greens 1-3")
    club.log("second-started", "06-08", "work started", "job: second", "surfaces: green 1", time="07:00")
    now = moment("06-08", "08:00")
    there = club.course(now).surfaces["green-1"]
    assert there.current is not None
    assert (there.current.job.id, there.current.work) == ("second", Work.UNDER_WAY)
    assert [(other.job.id, other.work) for other in there.others] == [("spring", Work.HEALING)]
    assert club.recovery("second", now).before > 0.01
    alone = club.course(now).surfaces["green-2"]
    assert alone.current is not None
    assert (alone.current.job.id, alone.others) == ("spring", ())


def test_on_the_day_when_the_clocks_change_the_word_holds_to_the_end_of_the_day(club: SmallClub) -> None:
    """28 March 2027 has 23 hours in London: one o'clock becomes two."""
    morning(club, "03-28", "play: {the whole course: open}", time="00:30")
    assert play(club, "03-28", "23:59") is Play.OPEN
    assert play(club, "03-29", "00:00") is Play.NOT_KNOWN


def test_a_limit_without_an_end_goes_with_its_day(club: SmallClub) -> None:
    morning(club, "05-03", "play: {the whole course: open}", "limits: {buggies: none today}", "by: the deputy")
    assert limits(club, "05-03", "23:59") == {"Buggies": "None today. Decided by the deputy."}
    assert limits(club, "05-04", "00:00") == {}


def test_a_frost_delay_ends_at_its_time_and_opens_nothing_by_itself(club: SmallClub) -> None:
    frost = "limits: {frost delay: {what: nobody on the course, until: 9:30am, decided by: the course manager}}"
    morning(club, "05-03", "play: {the whole course: closed}", frost)
    said = {"Frost delay": "Nobody on the course. Until 9:30am. Decided by the course manager."}
    assert limits(club, "05-03", "09:29") == said
    assert limits(club, "05-03", "09:30") == {}
    assert play(club, "05-03", "09:30") is Play.CLOSED


def test_a_later_entry_that_does_not_name_a_limit_leaves_it_and_lifted_ends_it(club: SmallClub) -> None:
    """Greens opened at nine must not take the ban on buggies away, nor thaw the course before its time."""
    frost = "limits: {frost delay: {what: wait, until: 9:30am}, buggies: none today}"
    morning(club, "05-03", "play: {the whole course: closed}", frost)
    morning(club, "05-03", "play: {greens 1-2: open}", time="09:00", name="opened")
    assert limits(club, "05-03", "09:10") == {"Frost delay": "Wait. Until 9:30am.", "Buggies": "None today."}
    morning(club, "05-03", "play: {green 3: open}", "limits: {frost delay: lifted}", time="09:20", name="thawed")
    assert limits(club, "05-03", "09:20") == {"Buggies": "None today."}


def test_a_frost_delay_stands_first_in_the_sentence_of_the_course(club: SmallClub) -> None:
    morning(club, "05-03", "play: {the whole course: closed}", "limits: {frost delay: {what: wait, until: 9:30am}}")
    records = replace(club.records(), jobs={})
    book = WeatherBook(records.club, records.weather)
    said = {
        time: compose_status(
            assess_course(records, moment("05-03", time), book), {}, records.club, Voice.english(moment("05-03").date())
        ).sentence
        for time in ("09:29", "09:30")
    }
    assert said == {"09:29": "Frost delay until 9:30am. The course is closed.", "09:30": "The course is closed."}


def test_an_open_course_under_a_frost_delay_is_pointed_out_to_the_manager(club: SmallClub) -> None:
    morning(club, "05-03", "play: {the whole course: open}", "limits: {frost delay: {what: wait, until: 9:30am}}")
    said = "A frost delay is in force while surfaces are entered as open; it closes nothing by itself"
    assert remarks_on(club.course(moment("05-03", "09:00")), Voice.english(moment("05-03").date())) == (
        f"{said} [2027-05-03-morning]",
    )
    assert remarks_on(club.course(moment("05-03", "09:30")), Voice.english(moment("05-03").date())) == ()


def test_preferred_lies_stay_to_the_committees_day_and_no_longer(club: SmallClub) -> None:
    rule = "{what: Model Local Rule E-3, decided by: the Committee, until: 2027-05-06}"
    morning(club, "05-03", "play: {the whole course: open}", f"limits: {{preferred lies: {rule}, trolleys: none}}")
    morning(club, "05-04", "play: {the whole course: open}")
    said = {"Preferred lies": "Model Local Rule E-3. Until Thursday 6 May. Decided by the Committee."}
    assert limits(club, "05-04", "12:00") == said
    assert limits(club, "05-06", "23:59") == said  # also on a morning without an entry
    assert limits(club, "05-07", "00:00") == {}


def test_a_standing_limit_ends_when_it_is_lifted(club: SmallClub) -> None:
    rule = "{what: Model Local Rule E-3, decided by: the Committee, until: 2027-05-31}"
    morning(club, "05-03", "play: {the whole course: open}", f"limits: {{preferred lies: {rule}}}")
    morning(club, "05-05", "play: {the whole course: open}", "limits: {preferred lies: lifted}")
    assert "Preferred lies" in limits(club, "05-04", "12:00")
    assert limits(club, "05-05", "12:00") == {}


def test_a_withdrawn_morning_entry_takes_its_limits_with_it(club: SmallClub) -> None:
    morning(club, "05-03", "play: {the whole course: closed}", "limits: {trolleys: none}")
    club.log("no", "05-03", "correction", "corrects: 2027-05-03-morning", time="08:00")
    assert limits(club, "05-03", "07:59") == {"Trolleys": "None."}
    assert limits(club, "05-03", "08:00") == {}
    assert play(club, "05-03", "08:00") is Play.NOT_KNOWN


def test_nine_of_eighteen_greens_closed_is_said_in_one_sentence(demo_records: ClubRecords) -> None:
    at = moment("10-20", "07:00")
    head = EntryHead(id="nine", at=at, true_from=at, by="", words="", file="log/2027/nine.md", line=2)
    nine = {f"green-{hole}": Play.CLOSED for hole in range(1, 10)}
    play = dict.fromkeys(demo_records.surfaces, Play.OPEN) | nine
    entry = MorningStatus(head=head, play=tuple(play.items()), why="", limits=())
    outlook = assess_course(
        replace(demo_records, entries=(entry,), jobs={}), at, WeatherBook(demo_records.club, demo_records.weather)
    )
    status = compose_status(outlook, {}, demo_records.club, Voice.english(outlook.as_of.date()))
    assert status.sentence == "The course is open, but greens 1 to 9 are closed."
    marks = {mark.hole: mark.play for mark in status.holes}
    assert marks == {hole: "closed" if hole <= 9 else "open" for hole in range(1, 19)}
    assert not any(mark.is_part_closed for mark in status.holes)  # the sign of the hole says it already


def test_a_course_of_which_only_closed_greens_are_known_is_not_called_open(club: SmallClub) -> None:
    morning(club, "05-03", "play: {greens 1-3: closed}")
    records = replace(club.records(), jobs={})
    outlook = assess_course(records, moment("05-03", "08:00"), WeatherBook(records.club, records.weather))
    assert (
        compose_status(outlook, {}, records.club, Voice.english(moment("05-03").date())).sentence
        == "Greens 1 to 3 are closed; tee 1 is not known."
    )


def test_called_off_after_the_start_nothing_is_under_way_and_a_new_day_is_only_planned(club: SmallClub) -> None:
    club.log("started", "06-01", "work started", "job: spring", "surfaces: greens 1-2", time="07:00")
    club.done("spring", "06-01", "surfaces: green 1")
    off = ("job: spring", "change: called off", "because: rain")
    club.log("off", "06-01", "change of plan", *off, time="12:00")
    states = {name: club.work("spring", moment("06-01", "13:00"), name).work for name in ("green-1", "green-2")}
    assert states == {"green-1": Work.HEALING, "green-2": Work.CALLED_OFF}
    club.log(
        "on", "06-02", "change of plan", "job: spring", "change: postponed to", "starts: 2027-06-10", "because: dry"
    )
    again = club.work("spring", moment("06-02"), "green-2")
    assert (again.work, again.started_at, again.hours) == (Work.PLANNED, None, None)


def test_work_started_after_a_call_off_is_under_way(club: SmallClub) -> None:
    club.log("off", "05-30", "change of plan", "job: spring", "change: called off", "because: rain")
    assert club.work("spring", moment("05-31")).work is Work.CALLED_OFF
    club.log("started", "06-01", "work started", "job: spring", "surfaces: green 1", time="07:00")
    assert club.work("spring", moment("06-01", "08:00")).work is Work.UNDER_WAY


def test_in_the_hour_that_the_clocks_repeat_the_later_word_counts(club: SmallClub) -> None:
    """On 31 October 2027 it is ten past one twice in London, first in summer time."""
    for name, at, play_there in (("b-first", "01:50+01:00", "closed"), ("a-second", "01:10+00:00", "open")):
        club.log(name, "10-31", "morning status", f"play: {{green 1: {play_there}}}", time=at)
    assert play(club, "10-31", "07:00") is Play.OPEN


def test_with_follow_up_work_a_morning_entry_of_the_same_minute_does_not_count_as_opening(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", surfaces="green 1", more="    follow up: 1 hour\n")
    club.log("m", "06-01", "morning status", "play: {the whole course: open}", time="10:00")
    club.log("d", "06-01", "work done", "job: spring", time="10:00")
    there = club.course(moment("06-01", "10:15")).surfaces["green-1"]
    assert there.play is Play.CLOSED
    assert there.current is not None
    assert there.current.hours is not None
