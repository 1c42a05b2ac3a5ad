"""Hours of reopening as a member reads them. 26 August 2027 is a Thursday, by any calendar."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.language.voice import Voice
from swardcast.notices.hours import Ending, hours_in_words, hours_of_all
from swardcast.notices.status_lines import StatusLine
from swardcast.outlets.message import message_text
from swardcast.outlook.reopening import HeldUp, Hours
from swardcast.reading.clock_times import clock_time
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Part
from tests.outlook.small_club import SmallClub, moment

LONDON = ZoneInfo("Europe/London")


def _at(text: str) -> datetime:
    return datetime.fromisoformat(f"2027-08-{text}").replace(tzinfo=LONDON)


def _hours(likely: str, latest: str) -> Hours:
    return Hours(early=_at(likely), likely=_at(likely), latest=_at(latest), together=("green-1",))


@pytest.mark.parametrize(
    ("likely", "latest", "as_of", "words"),
    [
        ("26 14:33", "26 15:46", "26 12:00", "likely from 2:30pm, by 4pm at the latest"),
        ("26 14:38", "26 15:45", "26 12:00", "likely from 2:45pm, by 3:45pm at the latest"),
        ("26 11:58", "26 12:00", "26 10:00", "likely from midday"),
        ("27 09:20", "27 10:50", "26 17:00", "tomorrow, Friday 27 August, likely from 9:15am, by 11am at the latest"),
        ("30 09:20", "30 10:50", "27 17:00", "Monday 30 August, likely from 9:15am, by 11am at the latest"),
        ("26 15:20", "27 08:10", "26 12:00", "likely from 3:15pm; by 8:15am tomorrow, Friday 27 August, at the latest"),
        ("27 15:20", "30 08:10", "27 12:00", "likely from 3:15pm; by 8:15am on Monday 30 August, at the latest"),
        ("26 14:33", "26 15:46", "26 14:30", "due now, by 4pm at the latest"),
        ("26 14:33", "26 15:46", "26 16:00", "due now, by 4pm at the latest"),
        ("26 14:33", "26 15:46", "26 16:01", "was due by 4pm; nobody has reported it as open yet"),
        ("27 07:00", "27 07:00", "26 17:00", "likely from 7am tomorrow, Friday 27 August"),
    ],
)
def test_the_same_hours_give_the_same_words(likely: str, latest: str, as_of: str, words: str) -> None:
    assert hours_in_words(_hours(likely, latest), _at(as_of), Voice.english(_at(as_of).date())) == words


def test_a_hold_up_says_since_when_and_no_time() -> None:
    held = HeldUp(since=_at("26 07:10"), because="rain", not_before=_at("26 13:27"), together=())
    assert hours_in_words(held, _at("26 12:00"), Voice.english(_at("26 12:00").date())) == (
        "held up since 7:10am; no time can be given until work goes on; not before 1:15pm in any case"
    )
    tomorrow = HeldUp(since=_at("26 07:10"), because="rain", not_before=_at("27 07:20"), together=())
    assert hours_in_words(tomorrow, _at("26 20:00"), Voice.english(_at("26 20:00").date())).endswith(
        "not before 7:15am tomorrow, Friday 27 August, in any case"
    )
    assert hours_in_words(held, _at("27 06:00"), Voice.english(_at("27 06:00").date())).startswith(
        "held up since 7:10am on Thursday 26 August; no time"
    )


def test_several_are_told_by_their_number_and_by_what_they_become() -> None:
    words = hours_in_words(
        _hours("26 14:33", "26 15:46"),
        _at("26 17:00"),
        Voice.english(_at("26 17:00").date()),
        count=3,
        ends=Ending.DONE,
    )
    assert words == "was due by 4pm; nobody has reported them as done yet"


def test_the_last_of_several_decides_and_a_held_one_before_it() -> None:
    first, last = _hours("26 14:33", "26 18:46"), _hours("26 15:33", "26 16:46")
    both = hours_of_all([first, last])
    assert isinstance(both, Hours)
    assert (both.likely, both.latest) == (_at("26 15:33"), _at("26 18:46"))
    held = HeldUp(since=_at("26 07:10"), because="rain", not_before=_at("26 13:27"), together=())
    assert hours_of_all([first, held, last]) is held


@given(likely=st.integers(0, 800), more=st.integers(60, 100))
def test_rounding_goes_to_the_nearest_quarter_and_then_up(likely: int, more: int) -> None:
    """The words read back by the reader of times, both in minutes after midnight."""
    begin = _at("26 00:00")
    ends = begin + timedelta(minutes=likely), begin + timedelta(minutes=likely + more)
    words = hours_in_words(
        Hours(early=begin, likely=ends[0], latest=ends[1], together=()),
        _at("25 23:00"),
        Voice.english(_at("25 23:00").date()),
    )
    _, _, times = words.partition("likely from ")
    said = [clock_time(one.replace("midnight", "12am")) for one in times.removesuffix(" at the latest").split(", by ")]
    first, last = (one.hour * 60 + one.minute for one in said)
    assert first % 15 == last % 15 == 0
    assert abs(first - likely) <= 7.5
    assert 0 <= last - (likely + more) < 15


def _line(bulletin: Bulletin, where: str) -> StatusLine:
    (line,) = (line for line in bulletin.status.lines if line.where == where)
    return line


def _facts(bulletin: Bulletin, where: str) -> dict[str, str]:
    return {fact.name: fact.value for fact in _line(bulletin, where).dates}


@pytest.fixture(scope="module")
def demo_at(demo_bulletin_at: Callable[[str], Bulletin]) -> Callable[[str], Bulletin]:
    return lambda as_of: demo_bulletin_at(f"2027-08-{as_of}")


def test_the_demo_tells_the_hours_of_a_day_of_work(demo_at: Callable[[str], Bulletin]) -> None:
    """26 August: green 12 done at 10:20, 30 to 90 minutes of follow-up: 36 to 84 in 8 cases of 10, so to 11:44."""
    bulletin = demo_at("26 11:00")
    assert _facts(bulletin, "Green 12")["Open again"] == "likely from 11:15am, by 11:45am at the latest"
    assert _facts(bulletin, "Greens 13 to 15")["Open again"].startswith("tomorrow, Friday 27 August, likely from")
    assert _line(bulletin, "Green 12").play == "closed"
    notice = next(notice for notice in bulletin.notices if notice.id == "greens-renovation-2027")
    section = next(section for section in notice.sections if section.part is Part.DAY_BY_DAY)
    rows = {fact.name: fact.value for fact in section.facts}
    assert rows["Open again: green 12"] == "Likely from 11:15am, by 11:45am at the latest"
    assert rows["Open again: greens 13 to 15"].lower() == _facts(bulletin, "Greens 13 to 15")["Open again"].lower()


def test_a_time_that_has_passed_opens_nothing(demo_at: Callable[[str], Bulletin]) -> None:
    bulletin = demo_at("26 14:30")
    assert _facts(bulletin, "Green 12")["Open again"] == "was due by 11:45am; nobody has reported it as open yet"
    assert _line(bulletin, "Green 12").play == "closed"


def test_rain_holds_the_half_done_green_and_gives_the_others_days(demo_at: Callable[[str], Bulletin]) -> None:
    bulletin = demo_at("25 12:00")
    assert _facts(bulletin, "Green 12")["Open again"].startswith("held up since 7:10am; no more work today; not before")
    assert _facts(bulletin, "Greens 13 to 18")["Work finished"].startswith("expected by")


def test_each_tee_has_the_same_range_on_every_page_while_the_other_is_worked_on(
    demo_bulletin: Bulletin, demo_records: ClubRecords
) -> None:
    """Tee 5 was laid on 9 September: 6 to 10 weeks, so 8 in the middle: 4 November; 18 November at the latest."""
    words = "usually between Thursday 21 October and Thursday 18 November"
    assert _facts(demo_bulletin, "Tee 5")["Open again"] == words
    notice = next(notice for notice in demo_bulletin.notices if notice.id == "tees-returfing-2027")
    rows = {fact.name: fact.value for section in notice.sections for fact in section.facts}
    assert rows["Open again: tee 5"].lower() == words.lower()
    assert rows["Open again: tee 13"].lower() == _facts(demo_bulletin, "Tee 13")["Open again"].lower()


def test_a_closed_tee_opens_before_it_is_back_to_normal_in_answer_and_message(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """Six to ten weeks closed, seven months to normal: who reads the second alone stays away until spring."""

    def said(moment_of: str) -> tuple[str, str]:
        notice = next(one for one in demo_bulletin_at(moment_of).notices if one.id == "tees-returfing-2027")
        answer = notice.short_answer.replace("\u00a0", " ")
        return answer, message_text(notice.in_short, "https://quillhaven.example/n/gpffx/").replace("\u00a0", " ")

    answer, message = said("2027-08-25 12:00")
    assert "All open again: usually between Tuesday 26 October and Friday 26 November. Back to normal:" in answer
    assert "All open again: usually between 26 October and 26 November." in message
    answer, message = said("2027-09-14 09:30")
    assert answer.startswith(
        "Work is going on; tees 5 and 13 are closed. All open again: usually between Friday 29 October and"
    )
    assert "All open again: usually between 29 October and 29 November." in message
    answer, message = said("2027-12-06 08:00")
    assert "nobody has reported them as open yet" in answer
    assert "Open again: was due by 26 November; nobody has reported them as open yet." in message


def test_new_turf_that_nobody_called_open_in_time_says_so(tmp_path: Path) -> None:
    """Done on 1 June, open after 1 to 2 weeks: 15 June at the latest, and still closed by the log on the 17th."""
    club = SmallClub(tmp_path)
    weeks = "    reopens after: {from: 1 to 2 weeks, source: us}\n    normal after: {from: 9 to 10 weeks, source: us}\n"
    club.job("turf", "06-01", "re-turfing", surfaces="tee 1", more=weeks)
    club.done("turf", "06-01")
    club.log("morning", "06-17", "morning status", "play: {the whole course: open, tee 1: closed}", time="06:40")
    bulletin = compose_bulletin(club.records(), moment("06-17"))
    assert _facts(bulletin, "Tee 1")["Open again"] == "was due by Tuesday 15 June; nobody has reported it as open yet"


def test_a_surface_in_play_while_it_is_worked_on_is_finished_and_not_opened(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("light", "06-01", "topdressing: {sand: 1 mm}")
    path = club.folder / "plan/light.yaml"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("while working: closed", "while working: open with care"), encoding="utf-8")
    club.log("start", "06-01", "work started", "job: light", time="07:00")
    facts = _facts(compose_bulletin(club.records(), moment("06-01", "07:10")), "Greens 1 and 2")
    assert facts["Work finished"].startswith("likely from 9am")  # 9 hours / 9 a day, two greens
    assert "Open again" not in facts
