"""The demo's programme as members heard of it: a golden file that reads like a story."""

from __future__ import annotations

import os
import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.language.voice import Voice
from swardcast.notices.dates_in_words import range_in_words, says_allow_until, told_before_in_words
from swardcast.notices.notice import text_of
from swardcast.notices.words import places_in_words
from swardcast.outlook.states import DateRange, Work
from swardcast.outlook.story import tell_story
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Part, Play
from swardcast.records.standing import as_entered

GOLDEN = Path(__file__).parents[1] / "golden" / "demo_story.txt"
LONDON = ZoneInfo("Europe/London")


def test_the_story_is_the_one_that_was_read_by_a_person(demo_bulletin: Bulletin) -> None:
    """After a wanted change: SWARDCAST_GOLDEN=write, then read the difference."""
    story = "".join(f"{item.at:%Y-%m-%d %H:%M}  {item.title}\n" for item in reversed(demo_bulletin.items))
    if os.environ.get("SWARDCAST_GOLDEN") == "write":
        GOLDEN.write_text(story, encoding="utf-8")
    assert story == GOLDEN.read_text(encoding="utf-8")


def test_a_corrected_green_is_not_called_done(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    """At 3:50pm the log says that green 12 is done; at 6:15pm that was withdrawn."""
    states = {}
    for hour in (17, 19):
        bulletin = demo_bulletin_at(f"2027-08-24 {hour}:00")
        current = bulletin.outlook.surfaces["green-12"].current
        assert current is not None
        states[hour] = current.work
    assert states == {17: Work.HEALING, 19: Work.UNDER_WAY}


def test_work_that_was_done_before_it_was_announced_is_told_from_its_announcement_on(demo_records: ClubRecords) -> None:
    """As a correction may say of an emergency: done on 8 May, put right on the 11th, when it was announced as well."""
    name, told = "tees-solid-tining-2027", date(2027, 5, 11)
    job = replace(demo_records.jobs[name], announced=told, starts=told)
    entries = [
        replace(entry, head=replace(entry.head, true_from=entry.head.true_from - timedelta(days=3)))
        if entry.head.id == "2027-05-11-1500-tees-spiked"
        else entry
        for entry in demo_records.entries
    ]
    records = replace(demo_records, jobs={**demo_records.jobs, name: job}, entries=as_entered(entries))
    as_of = datetime(2027, 6, 1, 12, tzinfo=LONDON)
    story = tell_story(records, job, as_of, WeatherBook(records.club, records.weather))
    assert story.changes[0].at.date() == told
    assert story.changes[-1].outlook.surfaces[0].done_at == datetime(2027, 5, 8, 15, tzinfo=LONDON)


def test_yesterdays_state_is_never_repeated_as_todays(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    bulletin = demo_bulletin_at("2027-09-16 06:00")
    assert bulletin.outlook.surfaces["green-1"].play is Play.NOT_KNOWN
    assert "The last morning report was made at" in bulletin.status.sentence


def test_without_weather_history_no_date_is_given(demo_records: ClubRecords) -> None:
    from dataclasses import replace

    bare = replace(demo_records, weather=replace(demo_records.weather, history_c={}))
    bulletin = compose_bulletin(bare, datetime(2027, 9, 14, 9, 30, tzinfo=LONDON))
    notice = next(notice for notice in bulletin.notices if notice.id == "greens-renovation-2027")
    assert "no date: the weather of past years is not known here" in notice.short_answer


@pytest.mark.parametrize(
    ("days", "words"),
    [
        ((3, 10, 16), "likely by Friday 24 September; allow until Thursday 30 September"),
        ((10, 10, 10), "likely by Friday 24 September"),
        ((None, None, None), "too early to give a date: the grass is hardly growing"),
        ((-5, -2, 3), "due now; allow until Friday 17 September"),
        ((-9, -5, -2), "by now"),
        ((20, 60, 120), "some time from October to January 2028"),
        ((170, 260, 360), "some time from March to September 2028"),
        ((-60, 10, 40), "some time from September to October"),  # July is over
        ((-60, 5, 12), "likely by Sunday 19 September; allow until Sunday 26 September"),  # only one month is left
    ],
)
def test_the_same_uncertainty_gives_the_same_words(days: tuple[int | None, ...], words: str) -> None:
    """Weekdays of September 2027 by any calendar: the 14th is a Tuesday."""
    near = date(2027, 9, 14)
    early, likely, allow = (None if n is None else near + timedelta(days=n) for n in days)
    given = DateRange(early=early, likely=likely, allow_until=allow)
    assert range_in_words(given, Voice.english(near)) == words
    assert says_allow_until(given, Voice.english(near)) == ("allow until" in words)


def test_months_told_before_stay_as_they_were_told() -> None:
    told = DateRange(early=date(2027, 3, 1), likely=date(2027, 5, 20), allow_until=date(2027, 6, 10))
    voice = Voice.english(date(2027, 5, 25))
    assert told_before_in_words(told, voice) == "some time from March to June"


def test_a_day_told_before_has_its_year_once_the_new_year_has_begun() -> None:
    """ "Before that our news said usually between Tuesday 2 November and ..." is read in January as a day to come."""
    told = DateRange(early=date(2027, 11, 2), likely=date(2027, 11, 16), allow_until=date(2027, 11, 30))
    years = "likely by Tuesday 16 November 2027; allow until Tuesday 30 November 2027"
    assert told_before_in_words(told, Voice.english(date(2027, 12, 31))) == years.replace(" 2027", "")
    assert told_before_in_words(told, Voice.english(date(2028, 1, 9))) == years
    late = Voice.english(date(2028, 1, 9)), date(2027, 11, 20)
    assert told_before_in_words(told, *late) == "allow until Tuesday 30 November 2027"


def test_places_are_named_as_in_a_sentence(demo_records: ClubRecords) -> None:
    chosen = [demo_records.surfaces[f"green-{hole}"] for hole in (*range(1, 10), 14)]
    assert places_in_words(chosen, Voice.english(date(2027, 9, 14))) == "greens 1 to 9 and 14"


def test_every_sentence_of_the_demos_notices_is_short_and_whole(demo_bulletin: Bulletin) -> None:
    """At most 25 words a sentence: GOV.UK style; the short answer 40 words at most."""
    for notice in demo_bulletin.notices:
        assert len(notice.short_answer.split()) <= 40, notice.short_answer
        for section in notice.sections:
            for text in (*map(text_of, section.paragraphs), *(point.text for point in section.points)):
                for sentence in text.replace("? ", ". ").split(". "):
                    assert len(sentence.split()) <= 25, sentence
                assert "None" not in text
                assert "  " not in text


def test_work_that_never_started_is_not_called_normal_by_now(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    """In December the fairways' plan of October has passed and nobody has reported that they were begun."""
    bulletin = demo_bulletin_at("2027-12-24 09:00")
    notice = next(notice for notice in bulletin.notices if notice.id == "fairways-deep-tining-2027")
    assert "nobody has reported that it began. Back to normal: no date until the work is done." in notice.short_answer
    assert "by now" not in str(notice)
    day_by_day, how = (
        next(s for s in notice.sections if s.part is part) for part in (Part.DAY_BY_DAY, Part.HOW_THE_DATE)
    )
    assert not re.search(r"\d|planned", " ".join(fact.name + fact.value for fact in day_by_day.facts))
    assert "computed from" not in str(how)


def test_work_that_never_started_has_no_date_even_before_its_promise_has_passed(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """The path was to be begun on 15 November and promised by 15 December; on the 6th nothing is known of it."""
    notice = next(notice for notice in demo_bulletin_at("2027-12-06 08:00").notices if notice.id == "path-10-2027")
    assert notice.normal == "no date until the work is done"
    assert notice.short_answer.endswith("Back to normal: no date until the work is done.")


def test_a_date_that_crosses_competitions_names_them_and_its_cause(demo_bulletin: Bulletin) -> None:
    """On 13 September the likely date of the greens went from 29 September to 1 October: read off the story."""
    item = next(
        item for item in demo_bulletin.items if item.at.date() == date(2027, 9, 13) and "new date" in item.title
    )
    before, why, crossed = item.sentences[-3:]
    assert before == "Before that our news said likely by Wednesday 29 September; allow until Sunday 10 October."
    assert why == "Why it moved: What we saw on the course."
    days = "Visitors' day, Wednesday 29 September; Twilight nine, Wednesday 29 September, 5:30pm"
    assert crossed == f"More likely than not still healing at: {days}."
    notice = next(notice for notice in demo_bulletin.notices if notice.id == item.notice_id)
    changed = next(section for section in notice.sections if section.part is Part.WHAT_CHANGED)
    told = " ".join(text_of(paragraph) for paragraph in changed.paragraphs)
    assert told.endswith("5:30pm. Told at 12:15pm on Monday 13 September.")


def test_notes_are_news_and_the_mornings_own_words_stand_on_the_status_page(demo_bulletin: Bulletin) -> None:
    note = next(item for item in demo_bulletin.items if item.id.endswith("dry-spell"))
    assert (note.title, note.notice_id) == ("A note from the course manager", "")
    assert note.markdown.startswith("Dry and warm")
    assert demo_bulletin.status.words.startswith("Milder at last.")


def test_a_course_note_stands_on_the_status_page_for_two_weeks(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    """The dry spell was written about on 7 July at 11:30am."""
    for day, stands in ((7, True), (21, True), (22, False)):
        bulletin = demo_bulletin_at(f"2027-07-{day:02} 11:{30 if day == 7 else '00'}")
        assert any("asleep, not dead" in note.markdown for note in bulletin.status.notes) is stands, day
