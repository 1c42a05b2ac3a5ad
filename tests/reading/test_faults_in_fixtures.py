"""Everything that can be wrong with fixtures.ics is told with its line, in words that a greenkeeper can follow."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from random import Random
from zoneinfo import ZoneInfo

import pytest

from swardcast.errors import Problem
from swardcast.reading import fixtures_file
from swardcast.reading.fixtures_file import days_that_matter, fixtures_from
from swardcast.records.folder import ClubRecords
from tests.reading.breaking import assert_said, problems_in
from tests.reading.calendars import MEDAL, calendar, said

DAY = "DTSTART;VALUE=DATE:20270918"
DAY_OR_TIME = "expected a day such as 20270918, or a day and time such as 20270918T083000"
ONCE_A_DAY = "expected what comes once a day at most: FREQ=DAILY, WEEKLY, MONTHLY, YEARLY"

FAULTS = {
    "a misspelt zone": (
        (*MEDAL, "DTSTART;TZID=Europe/Lodnon:20270918T083000"),
        "line 7, DTSTART: found the time zone 'Europe/Lodnon'; expected one such as Europe/London, or one that the file itself describes in a VTIMEZONE. Did you mean 'Europe/London'?",
    ),
    "a month that does not exist": (
        (*MEDAL, "DTSTART;VALUE=DATE:20271318"),
        f"line 7, DTSTART: found '20271318'; {DAY_OR_TIME}",
    ),
    "a year long gone": (
        (*MEDAL, "DTSTART;VALUE=DATE:00270918"),
        f"line 7, DTSTART: found '00270918'; {DAY_OR_TIME}, from 1900 to 2200",
    ),
    "a period for a day": (
        (*MEDAL, "DTSTART;VALUE=PERIOD:20270918T080000Z/PT1H"),
        f"line 7, DTSTART: found '20270918T080000Z/PT1H'; {DAY_OR_TIME}",
    ),
    "every hour": ((*MEDAL, DAY, "RRULE:FREQ=HOURLY"), f"line 8, RRULE: found 'FREQ=HOURLY'; {ONCE_A_DAY}"),
    "every second of a day": (
        (*MEDAL, DAY, "RRULE:FREQ=DAILY;BYSECOND=0,1,2"),
        f"line 8, RRULE: found 'BYSECOND'; {ONCE_A_DAY}",
    ),
    "for ever at once": (
        (*MEDAL, DAY, "RRULE:FREQ=WEEKLY;INTERVAL=0"),
        "line 8, RRULE: found 'INTERVAL=0'; expected a whole number from 1 to 9999",
    ),
    "a misspelt part": (
        (*MEDAL, DAY, "RRULE:FREQ=WEEKLY;BYDAI=WE"),
        "line 8, RRULE: found 'BYDAI'; expected parts such as FREQ, UNTIL, COUNT, INTERVAL, BYDAY. Did you mean 'BYDAY'?",
    ),
    "no weekday": (
        (*MEDAL, DAY, "RRULE:FREQ=WEEKLY;BYDAY=WW"),
        "line 8, RRULE: found 'FREQ=WEEKLY;BYDAY=WW'; expected a rule such as FREQ=WEEKLY;BYDAY=WE",
    ),
    "a rule that no calendar knows": (
        (*MEDAL, DAY, "RRULE:FREQ=MONTHLY;BYSETPOS=999;BYDAY=MO"),
        "line 8, RRULE: found 'FREQ=MONTHLY;BYSETPOS=999;BYDAY=MO', which never comes; expected a rule by which a day comes",
    ),
    "the sixtieth Monday": (
        (*MEDAL, DAY, "RRULE:FREQ=YEARLY;BYDAY=60MO"),
        "line 8, RRULE: found 'FREQ=YEARLY;BYDAY=60MO', which never comes; expected a rule by which a day comes",
    ),
    "a rule that was dropped": (
        (*MEDAL, DAY, "EXRULE:FREQ=WEEKLY"),
        "line 8, EXRULE: found a rule of days left out, which RFC 5545 has dropped; expected EXDATE with those days",
    ),
    "no length": ((*MEDAL, DAY, "DURATION:PT3X"), "line 8, DURATION: found 'PT3X'; expected a length such as P2D (two days) or PT3H30M"),
    "backwards": ((*MEDAL, DAY, "DURATION:-P2D"), "line 8, DURATION: found '-P2D'; expected a length above nothing"),
    "two ends": (
        (*MEDAL, DAY, "DURATION:P2D", "DTEND;VALUE=DATE:20270920"),
        "line 8, DURATION: found a length beside a DTEND; expected one of the two",
    ),
    "an end before the beginning": (
        (*MEDAL, "DTSTART:20270918T083000", "DTEND:20270918T073000"),
        "line 8, DTEND: found '20270918T073000'; expected an end not before DTSTART, 20270918T083000",
    ),
    "a day and a time": (
        (*MEDAL, "DTSTART:20270918T083000", "DTEND;VALUE=DATE:20270919"),
        "line 8, DTEND: found '20270919'; expected a day where DTSTART is a day, a time where it is a time",
    ),
    "two beginnings": (
        (*MEDAL, DAY, "DTSTART;VALUE=DATE:20270919"),
        "line 8, DTSTART: found this property a second time; expected it once in an event",
    ),
    "no name for life": (
        ("SUMMARY:Medal", DAY),
        "line 4, UID: found an event without a name for life; expected a line such as 'UID:autumn-medal-2027@our-club'",
    ),
    "no day": (MEDAL, "line 4, DTSTART: found an event without its day; expected a line such as 'DTSTART;VALUE=DATE:20270918'"),
    "no name": (("UID:medal", "SUMMARY: ", DAY), "line 6, SUMMARY: found an event without a name; expected a line such as 'SUMMARY:Autumn medal'"),
    "a name like a letter": (
        ("UID:medal", "SUMMARY:" + "long " * 25, DAY),
        "line 6, SUMMARY: found 124 characters; expected a name of at most 120 characters",
    ),
    "words that hang loose": (
        (*MEDAL, DAY, "and prize giving"),
        "line 8: found 'and prize giving'; expected a property such as 'SUMMARY:Autumn medal'. A line that goes on with the one above begins with a blank.",
    ),
    "a bad day left out, below a folded line": (
        (*MEDAL, "DESCRIPTION:a", "  b", DAY, "RRULE:FREQ=DAILY", "EXDATE;VALUE=DATE:20270920,tomorrow"),
        "line 11, EXDATE: found '20270920,tomorrow'; expected days such as 20270918,20270925, or days and times",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("event", "words"), FAULTS.values(), ids=FAULTS)
def test_a_fault_in_an_event_is_told_word_for_word(event: tuple[str, ...], words: str) -> None:
    assert said(calendar(event)) == [words]


WHOLE_FILES = {
    "nothing": ("", "the file: found no calendar; expected lines from 'BEGIN:VCALENDAR' on"),
    "words": ("Medal on Saturday\n", "line 1: found 'Medal on Saturday'; expected a calendar, which begins with 'BEGIN:VCALENDAR'"),
    "an event alone": ("BEGIN:VEVENT\nEND:VEVENT\n", "line 1: found 'BEGIN:VEVENT'; expected a calendar, which begins with 'BEGIN:VCALENDAR'"),
    "no end of the event": (
        "BEGIN:VCALENDAR\nBEGIN:VEVENT\nEND:VCALENDAR\n",
        "line 3: found 'END:VCALENDAR'; expected 'END:VEVENT', since line 2 begins one",
    ),
    "cut off": ("BEGIN:VCALENDAR\nBEGIN:VEVENT\nUID:a\n", "line 2: found 'BEGIN:VEVENT' without its end; expected a line 'END:VEVENT'"),
    "another calendar than ours": ("BEGIN:VCALENDAR\nCALSCALE:JULIAN\nEND:VCALENDAR\n", "line 2, CALSCALE: found 'JULIAN'; expected GREGORIAN"),
    "a zone that says nothing": (
        calendar((*MEDAL, "DTSTART;TZID=Ours:20270918T083000"), head="BEGIN:VTIMEZONE\nTZID:Ours\nBEGIN:STANDARD\nDTSTART:when\nEND:STANDARD\nEND:VTIMEZONE\n"),
        "line 4: found a time zone that cannot be read (Expected datetime, date, or time. Got: 'when'); expected a VTIMEZONE as RFC 5545 has it",
    ),
    "one name twice": (
        calendar((*MEDAL, DAY), (*MEDAL, DAY)),
        "line 10, UID: found 'medal' a second time; expected one of its own; the event of line 4 has this one",
    ),
    "a book": ("x" * 1_000_001, "the file: found 1,000,001 characters; expected at most 1,000,000, a list of fixtures"),
}  # fmt: skip


@pytest.mark.parametrize(("text", "words"), WHOLE_FILES.values(), ids=WHOLE_FILES)
def test_a_fault_of_the_whole_file_is_told_word_for_word(text: str, words: str) -> None:
    assert said(text) == [words]


def test_all_faults_are_told_at_once() -> None:
    told = said(calendar(("UID:a", "DTSTART:x"), (*MEDAL, DAY, "RRULE:FREQ=SECONDLY")))
    assert [words.partition(":")[0] for words in told] == ["line 4, SUMMARY", "line 6, DTSTART", "line 12, RRULE"]


def test_more_fixtures_than_a_club_can_play_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each day of 2027 and 2028 is 365 + 366 = 731 fixtures."""
    monkeypatch.setattr(fixtures_file, "MOST_FIXTURES", 730)
    text = calendar((*MEDAL, "DTSTART;VALUE=DATE:20270101", "RRULE:FREQ=DAILY"))
    assert said(text) == ["line 4: found more than 730 fixtures, the last ones of 'Medal'; expected at most 730"]
    monkeypatch.setattr(fixtures_file, "MOST_FIXTURES", 731)
    assert said(text) == []


@pytest.mark.parametrize("seed", range(60))
def test_a_damaged_export_ends_in_problems_or_fixtures_and_never_in_a_traceback(demo_club: Path, seed: int) -> None:
    dice = Random(seed)  # noqa: S311 - no secret
    text = list((demo_club / "fixtures.ics").read_text(encoding="utf-8"))
    for _ in range(dice.randint(1, 8)):
        place = dice.randrange(len(text))
        text[place] = dice.choice([*'0129:;,=TZ\n \\"-X', "", "BEGIN:", "END:VEVENT\n"])
    problems: list[Problem] = []
    found = fixtures_from(
        "".join(text), file="fixtures.ics", zone=ZoneInfo("Europe/London"), days=(date(2027, 1, 1), date(2028, 1, 1)),
        problems=problems,
    )  # fmt: skip
    assert problems or found
    assert all(problem.expected for problem in problems)


def test_the_folder_tells_the_file_beside_its_other_problems(demo_club: Path) -> None:
    path = demo_club / "fixtures.ics"
    path.write_text(path.read_text(encoding="utf-8").replace("SUMMARY:Autumn medal", "SUMMARY:"), encoding="utf-8")
    assert_said(demo_club, "fixtures.ics", (
        "line 10, SUMMARY: found an event without a name; expected a line such as 'SUMMARY:Autumn medal'",))  # fmt: skip


def test_a_control_character_is_refused_and_a_club_without_the_file_has_no_fixtures(demo_club: Path) -> None:
    path = demo_club / "fixtures.ics"
    path.write_bytes(path.read_bytes().replace(b"Autumn medal", b"Autumn \x1bmedal"))
    (problem,) = problems_in(demo_club)
    assert (problem.file, problem.found) == ("fixtures.ics", "the control character U+001B")
    path.unlink()
    assert problems_in(demo_club) == []


def test_a_folder_in_the_place_of_the_file_is_told(demo_club: Path) -> None:
    (demo_club / "fixtures.ics").unlink()
    (demo_club / "fixtures.ics").mkdir()
    (problem,) = problems_in(demo_club)
    assert (problem.file, problem.found) == ("fixtures.ics", "a folder")


def test_the_days_that_matter_come_from_the_plan_and_the_log(demo_records: ClubRecords) -> None:
    """First announced 19 April 2027; last start 17 January 2028 as planned; two years later is 17 January 2030."""
    jobs = demo_records.jobs.values()
    assert days_that_matter(jobs, demo_records.entries) == (date(2027, 4, 19), date(2030, 1, 17))
    assert days_that_matter([], []) is None


def test_without_a_plan_the_file_is_still_checked() -> None:
    problems: list[Problem] = []
    london = ZoneInfo("Europe/London")
    assert fixtures_from(calendar((*MEDAL, DAY)), file="f", zone=london, days=None, problems=problems) == ()
    assert problems == []
    fixtures_from(calendar(MEDAL), file="f", zone=london, days=None, problems=problems)
    assert len(problems) == 1
