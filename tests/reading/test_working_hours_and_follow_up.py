"""Working hours, breaks and follow-up work as typed, and what is said when they are mistyped."""

from __future__ import annotations

from datetime import time
from pathlib import Path

import pytest

from swardcast.reading.folder import read_club_folder
from swardcast.records.club import USUAL_WORKING_HOURS, HoursOfDay, without_breaks
from swardcast.records.plan import FollowUp
from tests.conftest import problems_of

HOURS = "  working hours: 7am to 4pm\n"
FOLLOW_UP = "    follow up: 30 to 90 minutes\n"


def _change(club: Path, name: str, old: str, new: str) -> None:
    path = club / name
    text = path.read_text(encoding="utf-8")
    assert text.count(old) == 1
    path.write_text(text.replace(old, new), encoding="utf-8")


@pytest.mark.parametrize("typed", ["6:30am to 3:30pm", "06:30 to 15:30", "6.30 am to 3.30 pm"])
def test_hours_are_read_in_either_clock(club: Path, typed: str) -> None:
    _change(club, "club.yaml", HOURS, f"  working hours: {typed}\n")
    assert read_club_folder(club).club.working_hours == HoursOfDay(begins=time(6, 30), ends=time(15, 30))


def test_without_hours_the_usual_ones_hold(club: Path) -> None:
    _change(club, "club.yaml", HOURS, "")
    assert read_club_folder(club).club.working_hours == USUAL_WORKING_HOURS


def test_breaks_are_read_as_a_list_or_a_line(club: Path) -> None:
    tea, dinner = HoursOfDay(begins=time(9, 30), ends=time(9, 45)), HoursOfDay(begins=time(12), ends=time(12, 30))
    _change(club, "club.yaml", HOURS, HOURS + "  breaks: 9:30am to 9:45am, midday to 12:30pm\n")
    assert read_club_folder(club).club.breaks == (tea, dinner)
    _change(
        club,
        "club.yaml",
        "  breaks: 9:30am to 9:45am, midday to 12:30pm\n",
        "  breaks: [9:30 to 9:45, 12pm to 12:30pm]\n",
    )
    assert read_club_folder(club).club.breaks == (tea, dinner)


def test_breaks_are_cut_out_of_the_hours() -> None:
    def span(begins: int, ends: int) -> HoursOfDay:
        return HoursOfDay(begins=time(begins), ends=time(ends))

    assert without_breaks(span(6, 15), [span(12, 13), span(9, 10), span(9, 11)]) == (
        span(6, 9),
        span(11, 12),
        span(13, 15),
    )
    assert without_breaks(span(6, 15), [span(5, 7), span(14, 18), span(20, 21)]) == (span(7, 14),)
    assert without_breaks(span(6, 15), [span(6, 10), span(10, 15)]) == ()


@pytest.mark.parametrize(
    ("typed", "minutes"),
    [
        ("1 hour", (60, 60)),
        ("30 to 90 minutes", (30, 90)),
        ("30 minutes to 2 hours", (30, 120)),
        ("1 to 2 hours", (60, 120)),
        ("1.5 hours", (90, 90)),
    ],
)
def test_follow_up_is_a_time_or_a_range(club: Path, typed: str, minutes: tuple[float, float]) -> None:
    _change(club, "plan/2027-late-summer.yaml", FOLLOW_UP, f"    follow up: {typed}\n")
    job = read_club_folder(club).jobs["greens-renovation-2027"]
    assert job.follow_up == FollowUp(from_minutes=minutes[0], to_minutes=minutes[1])


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("working hours: 7 to 4", "found '7'; expected a time of day"),
        ("working hours: 7am-4pm", "Write 'to' between the two times."),
        ("working hours: 4pm to 7am", "The second time must be later, on the same day."),
        ("working hours: 7am to 7:05am", "That is under 15 minutes."),
        ("working hours: 7am to 4:75pm", "found '4:75pm'"),
        ("working hour: 7am to 4pm", "the unknown field 'working hour'"),
        ("breaks: 6am to 10am, 9am to 5pm", "found 'breaks from the first working hour to the last'"),
        ("breaks: tea", "expected hours of the day, such as '6:30am to 3:30pm'"),
    ],
)
def test_hours_that_cannot_be_are_told_with_file_line_and_example(club: Path, typed: str, said: str) -> None:
    _change(club, "club.yaml", HOURS, f"  {typed}\n")
    (problem,) = problems_of(club)
    line = (club / "club.yaml").read_text(encoding="utf-8").split(typed)[0].count("\n") + 1
    assert problem.startswith(f"club.yaml: line {line}, standards.{typed.split(':', maxsplit=1)[0]}")
    assert said in problem


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("90", "write '90 minutes' if that is what you mean"),
        ("2 days", "For days or weeks write 'reopens after: {from: 2 to 3 days, source: ...}'."),
        ("1 to 30 hours", "For days or weeks write 'reopens after"),
        ("90 to 30 minutes", "expected a range that goes up"),
        ("a while", "expected a time up to 12 hours, such as '1 hour' or '30 to 90 minutes'"),
        ("1 houer", "Did you mean 'hour'?"),
    ],
)
def test_follow_up_that_cannot_be_is_told(club: Path, typed: str, said: str) -> None:
    _change(club, "plan/2027-late-summer.yaml", FOLLOW_UP, f"    follow up: {typed}\n")
    (problem,) = problems_of(club)
    assert "follow up" in problem
    assert said in problem
