"""A notice tells the truth where a job is over, called off or late on some of its surfaces, or on all of them."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.notices.notice import Section
from swardcast.records.plan import Part
from tests.notices.one_notice import notice_of, part_of
from tests.outlook.small_club import SmallClub

OWN_WORDS = """    own words: |
      Thank you.

      ## {answer}
      **Shut** on [Tuesday](https://saltmarsh-ladder.example).

      ## Day by day
      On Tuesday all is shut.
"""
MEDAL_IN_JUNE = """BEGIN:VCALENDAR
VERSION:2.0
PRODID:-//Saltmarsh Ladder//EN
BEGIN:VEVENT
UID:before
DTSTAMP:20270101T000000Z
DTSTART;VALUE=DATE:20270530
SUMMARY:May medal
END:VEVENT
BEGIN:VEVENT
UID:after
DTSTAMP:20270101T000000Z
DTSTART;VALUE=DATE:20270612
SUMMARY:June medal
END:VEVENT
END:VCALENDAR
"""


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    return SmallClub(tmp_path)


def _texts(section: Section) -> list[str]:
    paragraphs = (sentence for paragraph in section.paragraphs for sentence in paragraph)
    return [sentence.text for sentence in (*paragraphs, *section.points)]


def _call_off(club: SmallClub, day: str) -> None:
    club.log("off", day, "change of plan", "job: spring", "change: called off", "because: The rain came.")


def test_what_was_called_off_is_not_said_to_be_done(club: SmallClub) -> None:
    """Green 1 is done, then the rest is called off: nothing is "still to do", and only green 1 heals."""
    club.job("spring", "06-01", surfaces="greens 1-2 and tee 1")
    club.done("spring", "06-01", "surfaces: green 1")
    _call_off(club, "06-02")
    notice = notice_of(club, "06-03")
    assert (notice.headline, notice.when) == ("Spring work, green 1: Tuesday 1 June", "on Tuesday 1 June")
    assert notice.answer[0].text == "Green 1 is healing; putts may still turn."
    assert _texts(part_of(notice, Part.WHERE)) == ["The work is on green 1.", "Called off on green 2 and tee 1."]
    assert "On the day" not in [fact.name for fact in part_of(notice, Part.DAY_BY_DAY).facts]
    sand = {fact.name: fact.value for fact in part_of(notice, Part.IN_NUMBERS).facts}["Sand"]
    assert sand.startswith("3.8 tonnes in all (")  # by hand: 500 m2 x 4.8544 mm x 1.56 t/m3 = 3.79 t on one green


def test_what_was_called_off_has_no_day_on_which_it_opens_again(club: SmallClub) -> None:
    club.job("spring", "06-01", more="    reopens after: {from: 2 to 3 days, source: usual here}\n")
    club.done("spring", "06-01", "surfaces: green 1")
    _call_off(club, "06-02")
    rows = [fact.name for fact in part_of(notice_of(club, "06-03"), Part.DAY_BY_DAY).facts]
    assert [name for name in rows if name.startswith("Open again")] == ["Open again"]


def test_a_part_called_off_moves_the_date_by_a_change_of_plan(club: SmallClub) -> None:
    """The tee was to be the last: without it the end comes forward, and the work itself did nothing."""
    club.job("spring", "06-01", surfaces="greens 1-2 and tee 1")
    club.done("spring", "06-01", "surfaces: green 1")
    _call_off(club, "06-02")
    changed = _texts(part_of(notice_of(club, "06-03"), Part.WHAT_CHANGED))
    assert "Why it moved: The plan changed (The rain came)." in changed


def test_what_is_back_to_normal_heals_no_more(club: SmallClub) -> None:
    club.job("spring", "06-01", surfaces="greens 1-2 and tee 1")
    club.done("spring", "06-01")
    club.normal("spring", "06-05", "surfaces: green 1 and tee 1")
    notice = notice_of(club, "06-06")
    assert notice.answer[0].text == "Green 2 is healing; putts may still turn."
    assert notice.answer[0].source == "sum: swardcast explain green-2"
    assert "Most putts roll true" in [fact.name for fact in part_of(notice, Part.DAY_BY_DAY).facts]


def test_work_that_is_late_has_no_chances_and_no_neighbours(club: SmallClub) -> None:
    """Planned for 1 June, nobody has begun by the 5th: how it meets a medal on the 12th is not known."""
    club.job("spring", "06-01")
    (club.folder / "fixtures.ics").write_text(MEDAL_IN_JUNE.replace("\n", "\r\n"), encoding="utf-8")
    in_time, late = (notice_of(club, day) for day in ("05-31", "06-05"))
    told = ["June medal" in str(notice.sections) for notice in (in_time, late)]
    assert told == [True, False]


def test_work_that_takes_longer_than_told_is_finished_on_a_day_to_come(club: SmallClub) -> None:
    """The records end on Christmas Day; by New Year's Eve the day told first has passed, and a later one is told.

    The plan keeps nine working days for weather: 20 December is a Monday, so that 31 December is the last of them.
    """
    club.job("spring", "12-20", "rolling", more="    spare days: 9\n")
    club.log("begun", "12-20", "work started", "job: spring", "surfaces: green 1")
    told = [notice_of(club, day).short_answer for day in ("12-20", "12-31")]
    going_on = "Work is going on; each green is closed while we work on it."
    assert told[0].startswith(f"{going_on} Work finished: expected by ")
    assert told[1] == f"{going_on} Work finished: likely by Friday 31 December."


def test_the_source_of_an_end_is_the_entry_that_said_so(club: SmallClub) -> None:
    """Said on a day before the computed one: the date did not move, it became a fact."""
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    entry = club.normal("spring", "06-24")
    (fact,) = part_of(notice_of(club, "06-25"), Part.DAY_BY_DAY).facts
    assert (fact.value, fact.source) == ("On Thursday 24 June", entry)


@pytest.mark.parametrize("answer", ["Instead of short answer", "Short answer"])
def test_words_typed_for_work_to_come_end_with_a_call_off(club: SmallClub, answer: str) -> None:
    club.job("spring", "06-01", more=OWN_WORDS.format(answer=answer))
    _call_off(club, "05-30")
    notice = notice_of(club, "05-31")
    assert notice.short_answer == "This work is called off: The rain came. Nothing changes for play."
    assert "Tuesday" not in f"{notice.own_words} {[section.markdown for section in notice.sections]}"
    assert (notice.own_words, notice.before_the_work) == ("", "Thank you.")


def test_a_short_answer_of_ones_own_is_plain_text(club: SmallClub) -> None:
    club.job("spring", "06-01", more=OWN_WORDS.format(answer="Instead of short answer"))
    assert notice_of(club, "05-31").short_answer == "Shut on Tuesday."


def test_what_is_added_to_the_short_answer_stands_right_below_it(club: SmallClub) -> None:
    club.job("spring", "06-01", more=OWN_WORDS.format(answer="Short answer"))
    notice = notice_of(club, "05-31")
    assert notice.own_words == "**Shut** on [Tuesday](https://saltmarsh-ladder.example).\n\nThank you."
    assert [section.part for section in notice.sections].count(Part.SHORT_ANSWER) == 0


def test_a_call_off_says_why_once_with_one_full_stop_and_counts_no_holes(club: SmallClub) -> None:
    club.job("spring", "06-01")
    _call_off(club, "05-30")
    notice = notice_of(club, "05-31")
    assert Part.IN_NUMBERS not in [section.part for section in notice.sections]
    assert _texts(part_of(notice, Part.WHAT_CHANGED)) == [
        "Called off: The rain came.",
        "Told at 10am on Sunday 30 May.",
    ]
    assert notice.events[0].sentence == "Called off: The rain came."


def test_a_local_rule_in_the_committees_sentence_ends_with_one_full_stop(club: SmallClub) -> None:
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    rule = "preferred lies: {what: Lift and place., decided by: the Committee., rule: E-3}"
    club.log("rule", "06-03", "morning status", "play: {greens 1-2: open}", f"limits: {{{rule}}}")
    told = " ".join(_texts(part_of(notice_of(club, "06-03"), Part.THE_RULES)))
    assert (
        "adopted by the Committee, holds on the whole course until Thursday 3 June. It says: Lift and place. " in told
    )


def test_a_long_list_of_places_goes_by_numbers_that_a_visitor_knows(club: SmallClub) -> None:
    named = "the greens and the tee that lie low down by the river and are wet for most of the winter"
    told = club.folder / "club.yaml"
    told.write_text(
        f"{told.read_text(encoding='utf-8')}house style: {{groups: {{{named}: greens 1-2 and tee 1}}}}\n",
        encoding="utf-8",
    )
    club.job("spring", "06-01", surfaces="greens 1-2 and tee 1")
    assert _texts(part_of(notice_of(club, "05-31"), Part.WHERE)) == ["Greens 1 and 2", "Tee 1"]


def test_long_names_are_counted_in_what_happened_and_before_what_is_said_of_some_surfaces_alone(
    club: SmallClub,
) -> None:
    """The first was done on 1 June and its two weeks are over on the 20th; three more done on the 14th have theirs."""
    surfaces = club.folder / "surfaces.yaml"
    sides = ("left", "right", "front", "back")
    named = "".join(
        f"    - {{id: {side}, name: the {side} greenside bunker on the 2nd, hole: 2, area: 50 m2}}\n" for side in sides
    )
    surfaces.write_text(f"{surfaces.read_text(encoding='utf-8')}bunkers:\n  named:\n{named}", encoding="utf-8")
    usual = "    normal after: {from: 1 to 2 weeks, source: our own experience}\n"
    club.job("sand", "06-01", "bunker re-sanding: {sand: 100 mm}", surfaces=", ".join(sides), more=usual)
    club.done("sand", "06-01", "surfaces: left", name="one")
    club.done("sand", "06-14", "surfaces: right, front, back", name="three")
    notice = notice_of(club, "06-20")
    (told,) = _texts(part_of(notice, Part.HOW_THE_DATE))
    assert told.startswith("3 bunkers on hole 2: We do not compute this date.")
    assert [event.sentence for event in notice.events if event.sentence.startswith("Work done on")] == [
        "Work done on 3 bunkers on hole 2.",
        "Work done on the left greenside bunker on the 2nd.",
    ]
