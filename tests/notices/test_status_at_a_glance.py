"""What a member asks the course status in the rain: may I play, what is different, when is it over, what of Saturday.

The days were worked out by hand, or were read in the notices of the demo; the sentences were decided beforehand.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime
from pathlib import Path

import pytest

from swardcast.compose import Bulletin, compose_bulletin, season_of
from swardcast.errors import InputNeedsAttention
from swardcast.language.voice import Voice, capital
from swardcast.notices.as_told import NoticesAsTold
from swardcast.notices.dates_in_words import first_and_last_in_words
from swardcast.notices.status_lines import StatusLine
from swardcast.notices.words import places_in_brief
from swardcast.outlook.dates import DateRange
from swardcast.outlook.states import Milestone
from swardcast.reading.folder import read_club_folder
from swardcast.records.folder import ClubRecords
from tests.outlook.small_club import SmallClub, moment
from tests.reading.calendars import calendar

WEEKS = "    reopens after: {from: 1 to 2 weeks, source: us}\n    normal after: {from: 9 to 10 weeks, source: us}\n"
OWN = "The hole is played from the ladder, on firm ground."
CLOSED_TEE = "play: {the whole course: open, tee 1: closed}"


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def bulletin_of(club: SmallClub, day: str, time: str = "18:00") -> Bulletin:
    return compose_bulletin(club.records(), moment(day, time))


def line_of(bulletin: Bulletin, where: str) -> StatusLine:
    (line,) = (line for line in bulletin.status.lines if line.where == where)
    return line


def dates_of(bulletin: Bulletin, where: str) -> dict[str, str]:
    return {fact.name: plain(fact.value) for fact in line_of(bulletin, where).dates}


def rows_of(bulletin: Bulletin, notice_id: str) -> dict[str, str]:
    notice = next(notice for notice in bulletin.notices if notice.id == notice_id)
    return {fact.name: plain(fact.value) for section in notice.sections for fact in section.facts}


# A closed tee


def test_a_closed_tee_says_how_its_hole_is_played_in_the_sentence_the_line_and_the_plan_of_holes(
    tmp_path: Path,
) -> None:
    club = SmallClub(tmp_path)
    club.log("morning", "06-17", "morning status", CLOSED_TEE, "why: the tee is under water", time="06:40")
    status = bulletin_of(club, "06-17").status
    assert status.sentence == "The course is open, but hole 1 is played from other markers."
    (line,) = status.lines
    assert (line.where, line.play, line.meanwhile) == ("Tee 1", "closed", "The hole is played from other markers.")
    assert {hole.hole: hole.words for hole in status.holes}[1] == "tee closed, so played from other markers"


@pytest.mark.parametrize("closed", ["green 1", "fairway 1"])
def test_a_hole_that_nobody_may_play_is_not_said_to_be_played_from_other_markers(tmp_path: Path, closed: str) -> None:
    club = SmallClub(tmp_path)
    surfaces = club.folder / "surfaces.yaml"
    fairways = "fairways:\n  grass: cool-season\n  holes: {1: 9000 m2}\n"
    surfaces.write_text(surfaces.read_text(encoding="utf-8") + fairways, encoding="utf-8")
    play = f"play: {{the whole course: open, tee 1: closed, {closed}: closed}}"
    club.log("morning", "06-17", "morning status", play, time="06:40")
    status = bulletin_of(club, "06-17").status
    assert "markers" not in status.sentence
    assert "tee 1" in status.sentence
    assert [line.meanwhile for line in status.lines if "tee 1" in line.where.lower()] == [""]
    assert not any("markers" in hole.words for hole in status.holes)


def test_the_clubs_own_words_on_how_a_hole_is_played_win_in_status_and_notice(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("turf", "06-01", "re-turfing", surfaces="tee 1", more=f"{WEEKS}    meanwhile: {OWN}\n")
    club.done("turf", "06-01")
    club.log("morning", "06-02", "morning status", CLOSED_TEE, time="06:40")
    bulletin = bulletin_of(club, "06-02")
    assert line_of(bulletin, "Tee 1").meanwhile == OWN
    assert rows_of(bulletin, "turf")["Meanwhile"] == OWN


def test_without_them_the_notice_says_what_the_status_says_until_the_tee_is_open(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("turf", "06-01", "re-turfing", surfaces="tee 1", more=WEEKS)
    club.done("turf", "06-01")
    club.log("morning", "06-02", "morning status", CLOSED_TEE, time="06:40")
    said = "The hole is played from other markers."
    bulletin = bulletin_of(club, "06-02")
    assert line_of(bulletin, "Tee 1").meanwhile == rows_of(bulletin, "turf")["Meanwhile"] == said
    club.log("open", "06-10", "morning status", "play: {the whole course: open}", time="06:40")
    again = bulletin_of(club, "06-10")
    assert "Meanwhile" not in rows_of(again, "turf")
    assert not any(line.meanwhile for line in again.status.lines)


def test_the_notice_says_it_of_no_hole_that_nobody_may_play_either(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("turf", "06-01", "re-turfing", surfaces="tee 1", more=WEEKS)
    club.done("turf", "06-01")
    both = "play: {the whole course: open, tee 1: closed, green 1: closed}"
    club.log("morning", "06-02", "morning status", both, time="06:40")
    bulletin = bulletin_of(club, "06-02")
    assert not any(line.meanwhile for line in bulletin.status.lines)
    assert "Meanwhile" not in rows_of(bulletin, "turf")
    (morning,) = (item for item in bulletin.items if item.notice_id == "turf" and "done" in item.title.lower())
    then = NoticesAsTold(bulletin.records, bulletin.stories).of(morning)  # before the green was closed
    assert then is not None
    assert "Meanwhile" in [fact.name for section in then.sections for fact in section.facts]


def test_it_says_it_of_no_tee_that_has_a_name_of_its_own(tmp_path: Path) -> None:
    """Of the back tee of a hole, the others may be those from which it is usually played; it is no second hole either."""
    club = SmallClub(tmp_path)
    surfaces = club.folder / "surfaces.yaml"
    named = "  named:\n    - {id: back-1, name: the back tee on the 1st, hole: 1, area: 40 m2}\n"
    surfaces.write_text(surfaces.read_text(encoding="utf-8") + named, encoding="utf-8")
    club.job("turf", "06-01", "re-turfing", surfaces="the back tee on the 1st", more=WEEKS)
    club.done("turf", "06-01")
    closed = "play: {the whole course: open, the back tee on the 1st: closed}"
    club.log("morning", "06-02", "morning status", closed, time="06:40")
    bulletin = bulletin_of(club, "06-02")
    assert not any(line.meanwhile for line in bulletin.status.lines)
    assert "Meanwhile" not in rows_of(bulletin, "turf")


# The first and the last of a line


def test_greens_whose_days_lie_apart_have_the_first_and_the_last_of_them(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """Green 4 and green 11 heal by 17 September (swardcast explain); the notice has 1 and 11 October for the last."""
    bulletin = demo_bulletin_at("2027-09-14 09:30")
    until = "allow until Monday 11 October"
    assert dates_of(bulletin, "Greens 1 to 18")["Back to normal"] == (
        f"the first of them likely by Friday 17 September, the last likely by Friday 1 October; {until}"
    )
    assert rows_of(bulletin, "greens-renovation-2027")["Back to normal"] == f"Likely by Friday 1 October; {until}"


def test_a_line_has_the_dates_of_its_own_surfaces_and_none_later_than_the_notice(
    evenings: dict[date, Bulletin],
) -> None:
    own = 0
    for bulletin in evenings.values():
        for line in bulletin.status.lines:
            ends = [one.given for one in line.dates if one.milestone is Milestone.BACK_TO_NORMAL and one.given]
            for end in (end for end in ends if end.is_given):
                told = bulletin.stories[line.notice_id].published
                assert (end.likely or date.max) <= (told.likely or date.min), (bulletin.as_of, line.where)
                assert (end.allow_until or date.max) <= (told.allow_until or date.min), (bulletin.as_of, line.where)
                own += end != told
    assert own > 10


def test_finished_greens_keep_their_own_dates_when_nobody_reports_on_the_others_any_more(
    demo_records: ClubRecords,
) -> None:
    """The log ends on 25 August, with greens 1 to 11 done; green 12 held up; those who wait for the rest wait longer."""
    known = tuple(entry for entry in demo_records.entries if entry.head.at <= moment("08-25", "12:00"))
    bulletin = compose_bulletin(replace(demo_records, entries=known), moment("09-03", "08:00"))
    done, waiting = (dates_of(bulletin, where)["Back to normal"] for where in ("Greens 1 to 11", "Greens 13 to 18"))
    assert "likely by" in done
    assert "as last told" not in done
    assert waiting.endswith("as last told")
    assert done.split("allow until ")[1] not in waiting


@pytest.mark.parametrize(
    ("first", "words"),
    [
        ("10-02", "the first of them likely by Saturday 2 October, the last likely by Wednesday 6 October; allow until Sunday 10 October"),
        ("10-03", ""),  # three days: one date says as much
        ("09-13", "the first of them due now, the last likely by Wednesday 6 October; allow until Sunday 10 October"),
    ],
)  # fmt: skip
def test_more_than_three_days_apart_there_are_two_dates(first: str, words: str) -> None:
    last = DateRange(early=date(2027, 10, 1), likely=date(2027, 10, 6), allow_until=date(2027, 10, 10))
    days = [date.fromisoformat(f"2027-{first}"), date(2027, 10, 6)]
    assert plain(first_and_last_in_words(days, last, Voice.english(date(2027, 9, 14)))) == words
    assert first_and_last_in_words([], last, Voice.english(date(2027, 9, 14))) == ""


# A day that is given up


def _held_up(club: SmallClub, *more: str) -> None:
    club.job("spring", "06-01", surfaces="greens 1-2", more="    follow up: 30 minutes\n")
    club.log("a", "06-01", "work started", "job: spring", time="07:00")
    club.log("b", "06-01", "held up", "job: spring", "because: rain", *more, time="09:00")


def test_a_day_that_is_given_up_has_no_hour_of_today(tmp_path: Path) -> None:
    """1 June is a Tuesday. Work may go on on Wednesday; by the plan a green takes an hour, half an hour for the rest."""
    club = SmallClub(tmp_path)
    _held_up(club, "no work before: 2027-06-02")
    for time in ("09:00", "11:00", "22:00"):
        said = dates_of(bulletin_of(club, "06-01", time), "Greens 1 and 2")["Open again"]
        assert re.fullmatch(
            r"held up since 9am; no more work today; not before [\d:]+am tomorrow, Wednesday 2 June, in any case", said
        )
        assert rows_of(bulletin_of(club, "06-01", time), "spring")["Open again"].lower() == said.lower()
    assert "no time can be given" in dates_of(bulletin_of(club, "06-02", "06:00"), "Greens 1 and 2")["Open again"]


def test_of_work_held_up_with_a_day_to_go_on_members_hear_what_that_day_may_shut(tmp_path: Path) -> None:
    """1 June is a Tuesday; a green a day, so on Wednesday green 1 is done and green 2 comes on Thursday."""
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", surfaces="greens 1-2", more="    follow up: 30 minutes\n")
    club.log("open", "06-01", "morning status", "play: {the whole course: open}", time="06:30")
    club.log("a", "06-01", "work started", "job: spring", "surfaces: green 1", time="07:00")
    club.log("b", "06-01", "held up", "job: spring", "because: rain", "no work before: 2027-06-02", time="09:00")
    plays = "play: {the whole course: open, green 1: temporary green}"
    club.log("c", "06-01", "morning status", plays, time="09:10")
    bulletin = bulletin_of(club, "06-01", "11:00")
    rows = rows_of(bulletin, "spring")
    assert rows["Half done"] == "Green 1"
    assert rows["Still to do"] == "Green 2"
    assert rows["Meanwhile"] == "Hole 1 plays to a temporary green; green 2 is open."
    assert "the usual green may be a wrong green (Rule 13.1f)" in str(bulletin.notices[0].sections)
    hope = rows["When work goes on"]
    assert hope.startswith("We hope to go on tomorrow, Wednesday 2 June; then green")
    assert plain(line_of(bulletin, "Green 2").meanwhile) == hope
    assert line_of(bulletin, "Green 1").meanwhile == ""


def test_where_no_entry_gives_a_day_to_go_on_none_is_hoped_for(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    _held_up(club)
    assert "When work goes on" not in rows_of(bulletin_of(club, "06-01"), "spring")


def test_most_putts_roll_true_is_said_of_no_green_still_to_be_worked_on(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """On 25 August greens 13 to 18 are as they were until work begins. Six a day by the plan: 12 to 17 come next."""
    bulletin = demo_bulletin_at("2027-08-25 12:00")
    assert list(dates_of(bulletin, "Greens 13 to 18")) == ["Work finished", "Back to normal"]
    assert "Most putts roll true" in dates_of(bulletin, "Greens 1 to 11")
    hope = "We hope to go on tomorrow, Thursday 26 August; then greens 12 to 17 may be closed."
    assert plain(line_of(bulletin, "Greens 13 to 18").meanwhile) == hope


def test_days_that_are_given_up_move_what_is_to_come(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    _held_up(club, "no work before: 2027-06-04")
    said = dates_of(bulletin_of(club, "06-01"), "Greens 1 and 2")["Open again"]
    assert said.startswith("held up since 9am; no work before Friday 4 June; not before ")
    assert club.work("spring", moment("06-01")).finish.likely == date(2027, 6, 4)


def test_a_day_of_the_past_or_of_the_entry_is_refused(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    _held_up(club, "no work before: 2027-06-01")
    with pytest.raises(InputNeedsAttention, match="a day after 2027-06-01"):
        club.records()


def test_greens_held_up_before_they_were_begun_wait_their_turn_once_the_work_goes_on(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """On 26 August work was taken up again on greens 12 to 15; 16 to 18 were open and came the day after."""
    before = demo_bulletin_at("2027-08-25 12:00").status.lines
    assert "Greens 13 to 18" in [line.where for line in before]
    for time in ("11:30", "14:30"):
        lines = demo_bulletin_at(f"2027-08-26 {time}").status.lines
        assert not any("held up" in line.work or "16" in line.where for line in lines)


# Closed again


def test_a_tee_opened_and_closed_again_is_told_alike_in_status_and_notice_and_not_as_overdue(tmp_path: Path) -> None:
    """Done on 1 June, 1 to 2 weeks closed; opened on the 10th, closed again on the 17th while it heals."""
    club = SmallClub(tmp_path)
    club.job("turf", "06-01", "re-turfing", surfaces="tee 1", more=WEEKS)
    club.done("turf", "06-01")
    club.log("open", "06-10", "morning status", "play: {the whole course: open}", time="06:40")
    club.log("shut", "06-17", "morning status", CLOSED_TEE, "why: it was opened too early", time="06:40")
    bulletin = bulletin_of(club, "06-17")
    words = "it was opened on Thursday 10 June and is closed again; no day is known yet"
    assert dates_of(bulletin, "Tee 1")["Open again"] == words
    assert rows_of(bulletin, "turf")["Open again"].lower() == words.lower()
    (notice,) = bulletin.notices
    assert "It was opened on Thursday 10 June and is closed again" in plain(notice.short_answer)
    (line,) = bulletin.status.lines
    assert [one.given for one in line.dates if one.name == "Open again"] == [None]
    assert dates_of(bulletin_of(club, "06-10"), "Tee 1").get("Open again") is None  # it is open


# The next fixture


def test_the_next_fixtures_say_what_they_meet_in_the_words_of_the_notice(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    bulletin = demo_bulletin_at("2027-09-14 09:30")
    wednesday, saturday = bulletin.status.fixtures
    assert plain(saturday.name) == "Autumn medal, Saturday 18 September"
    greens, tees = saturday.meets
    name, _, words = plain(greens.words).partition(": ")
    assert name == "Hollow tining, scarifying and sanding the greens"  # or nobody could tell what "this work" is
    assert words == (
        "about 9 chances in 10 that some greens are still healing from this work, but most putts should roll true."
    )
    assert rows_of(bulletin, greens.notice_id)[saturday.name] == capital(words)
    assert (tees.words, tees.notice_id) == ("Tees 5 and 13 will still be closed then.", "tees-returfing-2027")
    assert plain(wednesday.name).startswith("Twilight nine, Wednesday 15 September")


@pytest.mark.parametrize(
    ("moment_", "words"),
    [
        ("2027-09-05 12:00", "As planned, tee 5 will be closed then."),
        ("2027-09-06 19:30", "Tee 5 will still be closed then."),
        ("2027-09-10 07:00", "Tee 5 will still be closed then. As planned, tee 13 will be closed then."),
    ],
)
def test_of_a_tee_whose_work_nobody_reported_as_begun_it_is_not_said_to_be_closed_still(
    moment_: str, words: str, demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    """The plan has 0.3 tees a day from Monday 6 September: four days for tee 5, then tee 13 from Friday the 10th.

    The round is on Wednesday the 8th, and on the 15th once that is over; tee 5 was begun on the 6th.
    """
    (first, *_) = demo_bulletin_at(moment_).status.fixtures
    (tees,) = (met for met in first.meets if met.notice_id == "tees-returfing-2027")
    assert tees.words == words


@pytest.mark.parametrize(
    ("begun", "on_status", "in_notice"),
    [
        (
            "surfaces: tee 1",
            "Tee 1 will still be closed then. Tee 2 may be closed then, if the work goes on.",
            "Some tees will still be closed then.",
        ),
        (
            "",
            "Tees 1 and 2 may be closed then, if the work goes on.",
            "Some tees may be closed then, if the work goes on.",
        ),
    ],
)
def test_what_is_held_up_before_it_began_is_said_alike_on_status_season_and_notice_to_close_only_if_it_goes_on(
    begun: str, on_status: str, in_notice: str, tmp_path: Path
) -> None:
    """The turf of both tees was to begin on 1 June, to open within 1 to 2 weeks; it rains, and no day is known."""
    club = SmallClub(tmp_path)
    (club.folder / "surfaces.yaml").write_text(
        "tees:\n  grass: cool-season\n  holes: {1: 250 m2, 2: 250 m2}\n", "utf-8"
    )
    event = ("UID:Match", "SUMMARY:Match", "DTSTART;VALUE=DATE:20270606")
    (club.folder / "fixtures.ics").write_text(calendar(event), encoding="utf-8", newline="")
    club.job("turf", "06-01", "re-turfing", surfaces="tees 1-2", more=WEEKS)
    if begun:
        club.log("start", "06-01", "work started", "job: turf", begun, time="08:00")
    club.log("rain", "06-01", "held up", "job: turf", "because: rain", time="10:00")
    bulletin = bulletin_of(club, "06-01")
    (match,) = bulletin.status.fixtures
    assert [met.words for met in match.meets] == [on_status]
    assert rows_of(bulletin, "turf")["Match, Sunday 6 June"] == in_notice
    (run,) = season_of(bulletin).months[0].fixtures.runs
    assert [met.words for met in run.meets] == [in_notice]


def test_no_fixture_is_told_that_is_far_or_private_or_meets_nothing(tmp_path: Path) -> None:
    """Greens 1 and 2 were holed and sanded on 1 June; the match is on the 6th."""
    club = SmallClub(tmp_path)
    events = [
        (f"UID:{name}", f"SUMMARY:{name}", f"DTSTART;VALUE=DATE:202706{day}", *more)
        for name, day, more in (("Talk", "05", ("CLASS:PRIVATE",)), ("Match", "06", ()), ("Cup", "20", ()))
    ]
    (club.folder / "fixtures.ics").write_text(calendar(*events), encoding="utf-8", newline="")
    club.log("morning", "06-02", "morning status", "play: {the whole course: open}", time="06:40")
    assert bulletin_of(club, "06-02").status.fixtures == ()  # nothing is other than usual
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    (match,) = bulletin_of(club, "06-02").status.fixtures
    assert match.name == "Match, Sunday 6 June"
    assert [(met.notice_id, "healing" in met.words) for met in match.meets] == [("spring", True)]
    assert [one.name for one in bulletin_of(club, "06-07").status.fixtures] == []  # the cup is 13 days away


def test_a_fixture_of_a_series_does_not_hide_the_day_that_members_ask_for(demo_records: ClubRecords) -> None:
    """The medal alone where it is next; a round that is over is gone."""
    zone = demo_records.club.time_zone
    wednesday = compose_bulletin(demo_records, datetime(2027, 9, 15, 21, tzinfo=zone))
    assert [plain(one.name) for one in wednesday.status.fixtures] == ["Autumn medal, Saturday 18 September"]


def test_two_series_before_it_do_not_hide_it_either(tmp_path: Path) -> None:
    """2 June is a Wednesday. Greens 1 and 2 were holed and sanded on the 1st; they heal for some three weeks."""
    club = SmallClub(tmp_path)
    weekly = ("RRULE:FREQ=WEEKLY;COUNT=6",)
    events = [
        (f"UID:{name}", f"SUMMARY:{name}", f"DTSTART;VALUE=DATE:202706{day}", *more)
        for name, day, more in (("Nine", "02", weekly), ("Roll-up", "03", weekly), ("Cup", "05", ()))
    ]
    (club.folder / "fixtures.ics").write_text(calendar(*events), encoding="utf-8", newline="")
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    told = " ".join(one.name for one in bulletin_of(club, "06-02", "08:00").status.fixtures)
    assert ("Nine" in told, "Roll-up" in told, "Cup" in told) == (True, False, True)
    later = " ".join(one.name for one in bulletin_of(club, "06-06", "08:00").status.fixtures)  # no cup is ahead
    assert ("Nine" in later, "Roll-up" in later) == (True, True)


def test_nothing_is_told_of_work_that_nobody_reports_on_as_its_notice_tells_nothing(tmp_path: Path) -> None:
    """Green 1 was done on 1 June; green 2 was begun on the 2nd, was due by the 4th, and nobody said any more."""
    club = SmallClub(tmp_path)
    match = ("UID:match", "SUMMARY:Match", "DTSTART;VALUE=DATE:20270610")
    (club.folder / "fixtures.ics").write_text(calendar(match), encoding="utf-8", newline="")
    usual = "    normal after: {from: 2 to 3 weeks, source: us}\n"
    club.job("spring", "06-01", more=f"    spare days: 2\n{usual}")
    club.done("spring", "06-01", "surfaces: green 1")
    club.log("second", "06-02", "work started", "job: spring", "surfaces: green 2", time="07:00")
    reported, silent = (bulletin_of(club, day) for day in ("06-02", "06-08"))
    assert [one.name for one in reported.status.fixtures] == ["Match, Thursday 10 June"]
    assert silent.status.fixtures == ()
    assert "Match, Thursday 10 June" in rows_of(reported, "spring")
    assert "Match, Thursday 10 June" not in rows_of(silent, "spring")


# News


def test_news_that_was_corrected_since_is_no_latest_news_but_stays_in_the_feeds(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """Greens 10 to 12 were entered as done at 3:50pm on 24 August; at 6:15pm that was corrected."""
    before, after = demo_bulletin_at("2027-08-24 18:00"), demo_bulletin_at("2027-08-24 18:15")
    (wrong,) = (item for item in before.items if "ork done on greens 10 to 12" in item.title)
    assert before.news_that_stands[0] == wrong
    assert wrong.id in [item.id for item in after.items]
    assert wrong.id not in [item.id for item in after.news_that_stands]
    assert "corrected" in after.news_that_stands[0].title.lower()


def test_of_news_of_one_moment_the_work_that_begins_first_stands_first(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """Announced together on 19 April: from 4 and 10 May, from 7, 14 and 21 June, as the plan has them."""
    news = demo_bulletin_at("2027-04-20 08:00").latest_news
    assert [item.notice_id for item in news] == [
        "greens-solid-tining-2027",
        "tees-solid-tining-2027",
        "fairways-tining-2027",
        "greens-verticutting-2027",
        "practice-green-solid-tining-2027",
    ]
    days = demo_bulletin_at("2027-09-14 09:30").latest_news
    assert [item.at for item in days] == sorted((item.at for item in days), reverse=True)


def test_of_a_withdrawn_notice_only_the_withdrawal_is_news(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    gone = "    withdrawn: {at: 2027-04-20 09:00, because: entered twice}\n"
    club.job("spring", "06-01", announced="04-01", more=gone)
    assert [item.id for item in bulletin_of(club, "04-19").news_that_stands] == ["spring/announced"]
    after = bulletin_of(club, "04-20")
    assert len(after.items) == 2
    assert [item.id for item in after.news_that_stands] == ["spring/withdrawn"]


# Once is enough


def test_the_moment_of_the_last_report_stands_in_a_line_only_where_it_is_another(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.log("one", "06-01", "morning status", "play: {the whole course: open, greens 1-2: closed}", time="06:40")
    club.log("two", "06-02", "morning status", "play: {the whole course: open, green 1: closed}", time="06:40")
    old = bulletin_of(club, "06-20").status.lines
    assert [line.is_of_another_moment for line in old] == [False]
    club.log("three", "06-03", "morning status", "play: {green 2: closed}", time="06:40")
    later = {line.where: line.is_of_another_moment for line in bulletin_of(club, "06-20").status.lines}
    assert later == {"Green 1": True, "Green 2": False}


# Long names


def test_more_than_two_bunkers_are_counted_with_their_holes_and_named_below(
    demo_records: ClubRecords, demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    voice = Voice.english(date(2027, 9, 14))
    names = ("bunker-4-left", "bunker-4-right", "bunker-7-front")
    three = [demo_records.surfaces[name] for name in names]
    assert places_in_brief(three, voice) == "3 bunkers on holes 4 and 7"
    assert "the front greenside bunker on the 7th" in places_in_brief(three[1:], voice)
    greens = [demo_records.surfaces[f"green-{hole}"] for hole in range(1, 19)]
    assert places_in_brief([*greens, *three], voice) == "greens 1 to 18 and 3 bunkers on holes 4 and 7"
    line = line_of(demo_bulletin_at("2027-09-14 09:30"), "3 bunkers on holes 4 and 7")
    assert line.surfaces == names
    assert line.named.count("greenside bunker") == 3
    assert line_of(demo_bulletin_at("2027-09-14 09:30"), "Tee 5").named == ""
    notices = {one.id: one for one in demo_bulletin_at("2027-09-14 09:30").notices}  # the list of notices does so too
    assert notices["bunkers-resanding-2027"].where_in_brief == "6 bunkers on holes 4, 7, 11 and 17"


def test_closed_bunkers_are_counted_in_the_sentence_and_still_named_in_their_line(club: Path) -> None:
    """As if four of the six were shut on the morning of 14 September."""
    entry = club / "log/2027/2027-09-14-0650-morning.md"
    text = entry.read_text(encoding="utf-8")
    four = "bunker-4-left, bunker-4-right, bunker-7-front, bunker-11-front: closed"
    entry.write_text(text.replace("bunker-11-front: closed", four), encoding="utf-8")
    records = read_club_folder(club)
    status = compose_bulletin(records, datetime(2027, 9, 14, 9, 30, tzinfo=records.club.time_zone)).status
    assert "4 bunkers on holes 4, 7 and 11 are closed" in status.sentence
    closed = [line for line in status.lines if line.play == "closed" and "bunkers" in line.where]
    assert [line.named.count("bunker") for line in closed] == [3]


# The morning after, when nobody has reported yet


def _names_of_dates(bulletin: Bulletin) -> dict[str, list[str]]:
    return {name: [date.name for date in line.dates] for line in bulletin.status.lines for name in line.surfaces}


@pytest.mark.parametrize("day", [24, 25, 26])
def test_a_night_changes_no_name_of_a_date_and_adds_no_green(
    day: int, demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    """Nothing is entered from evening to morning. On the 25th greens 13 to 18 were open, and their work held up."""
    evening = _names_of_dates(demo_bulletin_at(f"2027-08-{day} 23:50"))
    assert _names_of_dates(demo_bulletin_at(f"2027-08-{day + 1} 06:10")) == evening
    if day == 25:
        assert evening["green-13"][0] == "Work finished"


def test_a_surface_that_was_open_the_day_before_is_not_said_to_wait_for_its_opening(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("turf", "06-01", "re-turfing", surfaces="tee 1", more=WEEKS)
    club.done("turf", "06-01")
    club.log("open", "06-10", "morning status", "play: {the whole course: open}", time="06:40")
    bulletin = bulletin_of(club, "06-11", "06:00")
    assert plain(line_of(bulletin, "Tee 1").play) == "not known since Thursday 10 June (open then)"
    assert list(dates_of(bulletin, "Tee 1")) == ["Back to normal"]


def test_surfaces_that_were_not_played_alike_the_day_before_have_lines_of_their_own(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    play = "play: {the whole course: open, green 1: open with care, green 2: closed}"
    club.log("one", "06-02", "morning status", play, time="06:40")
    lines = bulletin_of(club, "06-03", "06:00").status.lines
    assert {line.where: plain(line.play) for line in lines} == {
        "Green 1": "not known since Wednesday 2 June (open with care then)",
        "Green 2": "not known since Wednesday 2 June (closed then)",
    }


# Nobody has reported since


def test_places_whose_work_or_healing_nobody_reports_on_are_not_left_out(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """In December, eleven weeks after the last report: what each notice says of its places stands on the status."""
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    bunkers = next(line for line in bulletin.status.lines if "17th" in line.named or "17th" in line.where)
    assert bunkers.surfaces == ("bunker-17-left", "bunker-17-right")
    assert plain(bunkers.work) == "no report since 15 September"
    due = "was due by Tuesday 21 September; nobody has reported them as done yet"
    assert {date.name: plain(date.value) for date in bunkers.dates}["Work finished"] == due
    greens = line_of(bulletin, "Greens 12 to 18")
    assert (greens.notice_id, greens.work) == ("greens-renovation-2027", "should be back to normal")
    assert dates_of(bulletin, "Greens 12 to 18") == {
        "Back to normal": "was due by Monday 11 October; nobody has reported it yet"
    }


def test_healing_of_whose_end_nobody_reported_is_linked_only_where_play_was_still_limited_by_it(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    club.log("one", "06-02", "morning status", "play: {the whole course: open, green 1: open with care}", time="06:40")
    lines = bulletin_of(club, "11-20").status.lines
    assert [(line.where, line.notice_id) for line in lines] == [("Green 1", "spring")]
    club.log("two", "11-01", "morning status", "play: {the whole course: open, green 1: open with care}", time="06:40")
    lines = bulletin_of(club, "11-20").status.lines  # long after the healing: for another reason
    assert [(line.where, line.notice_id) for line in lines] == [("Green 1", "")]


def test_new_turf_that_nobody_opened_is_not_said_to_heal_years_later(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """34 weeks at most from 17 September 2027 are over on 12 May; on the 1st it may still heal."""
    for moment_, words in (("2028-05-01 12:00", "healing"), ("2029-04-18 12:00", "not reported as open")):
        bulletin = demo_bulletin_at(moment_)
        assert line_of(bulletin, "Tees 5 and 13").work == words
        assert {one.id: one.work for one in bulletin.notices}["tees-returfing-2027"] == words


def test_greens_last_said_to_need_care_for_work_that_is_finished_say_which(tmp_path: Path) -> None:
    """Ropes were put out on 1 June, and nobody has reported since; a morning entry of its own needs no such reason."""
    club = SmallClub(tmp_path)
    club.job("ropes", "06-01", "winter protection", surfaces="tee 1", play="open with care")
    club.done("ropes", "06-01")
    for day in ("06-01", "06-05"):
        (line,) = bulletin_of(club, day).status.lines
        assert (line.where, line.notice_id, line.work) == ("Tee 1", "ropes", "finished")
    assert {date.name: plain(date.value) for date in line.dates} == {"Work finished": "on Tuesday 1 June"}
    club.log("two", "06-03", "morning status", "play: {the whole course: open, tee 1: open with care}", time="06:40")
    (line,) = bulletin_of(club, "06-05").status.lines
    assert (line.where, line.notice_id, line.work) == ("Tee 1", "", "")


def test_planned_work_whose_start_nobody_reported_is_not_counted_as_to_come(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """On 6 December the demo's plan has three jobs from that day on; ten before it were never entered as begun."""
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    silent = [work.notice_id for work in bulletin.status.coming if work.is_silent]
    dated = [work.notice_id for work in bulletin.status.coming if not work.is_silent]
    assert (len(dated), len(silent)) == (3, 10)
    states = {notice.id: notice.work for notice in bulletin.notices}
    assert {states[name] for name in silent} == {"no start reported"}
    assert {states[name] for name in dated} == {"planned"}
    said = bulletin.voice.say("site-coming-all", count=len(dated), silent=len(silent))
    assert said == "3 jobs to come; 10 with no start reported"
    assert bulletin.voice.say("site-coming-all", count=4, silent=0) == "All 4 jobs to come"
    assert bulletin.voice.say("site-coming-all", count=0, silent=13) == "No job to come; 13 with no start reported"


@pytest.mark.parametrize(("day", "to_come"), [("2027-12-25", 1), ("2028-01-20", 0)])
def test_what_comes_next_is_not_filled_up_with_what_should_have_begun_long_ago(
    day: str, to_come: int, demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    """By the demo's plan the pipe begins on 17 January; the three that should have begun first, in October."""
    status = demo_bulletin_at(f"{day} 08:00").status
    shown = [work.notice_id for work in status.next_work]
    october = ["greens-light-sanding-2027", "greens-autumn-feed-2027", "fairways-deep-tining-2027"]
    assert shown == (["pipe-14-2028"] if to_come else october)
    assert status.has_more_work


def test_work_postponed_to_no_known_day_is_still_to_come(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-10")
    club.log("off", "06-09", "change of plan", "job: spring", "change: postponed", "because: rain")
    bulletin = bulletin_of(club, "06-20")
    assert [work.is_silent for work in bulletin.status.coming] == [False]
    assert bulletin.notices[0].work == "postponed"


@pytest.mark.parametrize(("day", "words"), [("05-31", "on Tuesday 1 June"), ("06-01", "today, Tuesday 1 June")])
def test_work_that_should_start_today_says_so(tmp_path: Path, day: str, words: str) -> None:
    """1 June 2027 is a Tuesday by any calendar. The date stands beside it, since a poster is read on other days too."""
    club = SmallClub(tmp_path)
    club.job("spring", "06-01")
    bulletin = bulletin_of(club, day, "07:00")
    assert plain(bulletin.notices[0].short_answer).startswith(f"Work should start {words}; ")
    assert [plain(work.when) for work in bulletin.status.coming] == [f"from {words.removeprefix('on ')}"]
