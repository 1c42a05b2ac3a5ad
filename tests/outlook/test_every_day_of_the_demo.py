"""The demo replayed for every day of its programme, as the club would have published it each evening.

The golden file reads like a diary: what members heard that day, what the status page said at 6pm where it said something
new, and each piece of work whose state or date is another than the evening before.
After a wanted change: SWARDCAST_GOLDEN=write, then read the difference.
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.language.voice import Voice, capital
from swardcast.notices.words import places_in_words
from swardcast.outlook.states import Work
from swardcast.records.club import Surface
from swardcast.records.folder import ClubRecords
from tests.outlook.days_told import Followed

GOLDEN = Path(__file__).parents[1] / "golden" / "demo_days.txt"


def _works(bulletin: Bulletin, day: date) -> Iterator[tuple[str, str]]:
    for notice in bulletin.notices:
        job = bulletin.outlook.jobs[notice.id]
        by_state: dict[Work, list[Surface]] = {}
        for work in job.surfaces:
            by_state.setdefault(work.work, []).append(work.surface)
        states = "; ".join(
            f"{places_in_words(places, Voice.english(date.min))} {state.value}" for state, places in by_state.items()
        )
        yield job.job.title, f"{states}. Back to normal: {capital(notice.normal) if states else 'no more'}."


def _diary(evenings: dict[date, Bulletin]) -> Iterator[str]:
    said_of_course, said_of_work = "", dict[str, str]()
    for day, bulletin in evenings.items():
        lines = [f"  {item.at:%H:%M}  {item.title}" for item in reversed(bulletin.items) if item.at.date() == day]
        if bulletin.status.sentence != said_of_course and bulletin.status.fresh:
            lines.append(f"  6pm    {bulletin.status.sentence}")
            said_of_course = bulletin.status.sentence
        for title, said in _works(bulletin, day):
            if said_of_work.get(title) != said:
                lines.append(f"         {title}: {said}")
                said_of_work[title] = said
        if lines:
            yield f"{Voice.english(date.min).day(day)}\n" + "\n".join(lines) + "\n"


def test_the_diary_is_the_one_that_was_read_by_a_person(evenings: dict[date, Bulletin]) -> None:
    diary = "\n".join(_diary(evenings))
    if os.environ.get("SWARDCAST_GOLDEN") == "write":
        GOLDEN.write_text(diary, encoding="utf-8")
    assert diary == GOLDEN.read_text(encoding="utf-8")


def test_what_was_told_once_stays_told(evenings: dict[date, Bulletin]) -> None:
    """A feed only grows: each evening's items are the last evening's up to that moment, word for word."""
    last = list(evenings.values())[-1].items
    for day, bulletin in evenings.items():
        until = [item for item in last if item.at <= bulletin.as_of]
        assert [(item.id, item.title) for item in bulletin.items] == [(item.id, item.title) for item in until], day


CHANGED = re.compile(
    r"planned from|now from|postponed|called off|new date|still to do|back to normal|open again|a note from|withdrawn"
    r"|work (?:done|finished|under way|held up)|(?:is|are) (?:open|closed)|plays to",
    re.IGNORECASE,
)


def test_a_title_says_what_changed_before_a_telephone_cuts_it_and_names_the_job_after_that(
    evenings: dict[date, Bulletin], demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    """70 letters, or 90 for the morning's closures: two names of bunkers, as the demo typed them, take 75."""
    for bulletin in (list(evenings.values())[-1], demo_bulletin_at("2027-12-06 08:00")):
        for item in bulletin.items:
            changed = CHANGED.search(item.title)
            assert changed, item.title
            assert changed.end() <= (70 if item.notice_id else 90), item.title
            if item.notice_id:
                job = bulletin.outlook.jobs[item.notice_id].job.title
                assert changed.start() < item.title.index(job), item.title
                assert item.title.endswith((f": {job}", f" ({job})"))


def test_a_notices_revision_never_falls_and_grows_by_one_with_each_item(evenings: dict[date, Bulletin]) -> None:
    for bulletin in evenings.values():
        for notice in bulletin.notices:
            assert notice.revision == sum(item.notice_id == notice.id for item in bulletin.items)


def test_a_day_that_moved_is_told_by_the_next_morning(evenings: dict[date, Bulletin]) -> None:
    """Of a surface by two working days, of back to normal at all. Tee 13 moved in September while tee 5 stayed."""
    followed = Followed()
    assert followed.take_all(evenings.values()) == []
    assert followed.compared > 500


def test_tee_13_is_told_to_open_later_while_tee_5_stays(evenings: dict[date, Bulletin]) -> None:
    items = evenings[date(2027, 9, 17)].items
    told = [item for item in items if item.notice_id == "tees-returfing-2027" and "New date for tee" in item.title]
    assert [item.at.date() for item in reversed(told)] == [date(2027, 9, 14), date(2027, 9, 16)]
    titles = [" ".join(item.title.split()) for item in told]
    assert all(title.startswith("New date for tee 13 to open again: usually ") for title in titles), titles


def test_a_book_that_remembers_other_moments_changes_nothing(
    evenings: dict[date, Bulletin], demo_records: ClubRecords
) -> None:
    for day in (date(2027, 6, 20), date(2027, 8, 24)):
        alone = compose_bulletin(demo_records, evenings[day].as_of)
        assert (alone.items, alone.notices, alone.status) == (
            evenings[day].items,
            evenings[day].notices,
            evenings[day].status,
        )
