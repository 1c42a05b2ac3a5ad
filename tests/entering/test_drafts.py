"""A draft's file is read back as what was meant, whatever the words; its name is its own and sorts by time."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swardcast.entering.drafts import Draft, Value, draft_file, draft_text
from swardcast.errors import Problem
from swardcast.reading.folder import read_club_folder
from swardcast.reading.log_fields import KINDS
from swardcast.reading.log_file import entries_from, typed_fields
from swardcast.reading.log_names import LogContext
from swardcast.reading.typed_words import is_seen
from swardcast.records import log
from tests.conftest import DEMO

LONDON = ZoneInfo("Europe/London")
JOB = "greens-renovation-2027"


def small_context() -> LogContext:
    records = read_club_folder(DEMO)
    return LogContext(zone=records.club.time_zone, surfaces=records.surfaces, jobs=records.jobs)


# Words as people type them, and all that YAML gives another meaning.
WORDS = st.one_of(
    st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs")), min_size=1, max_size=60),
    st.sampled_from(
        ["no", "true", "null", "~", "1.50", "0x1F", "# nine", "a: b", "- dash", "it's", '"quoted"', "a #b", "&anchor", "*all",
         "{x: y}", "[a, b]", "---", "100%", "12:30", "ends with:", "!tag", "1_000", "|", ">", "@", "`", "% of", "\u2028", "\ufeffx"]
    ),
)  # fmt: skip
LINES = WORDS.map(lambda text: " ".join(text.split())).filter(is_seen)
MOMENTS = st.datetimes(datetime(2027, 5, 10), datetime(2029, 12, 31)).map(  # noqa: DTZ001 - the zone follows
    lambda at: (at.replace(tzinfo=ZoneInfo("UTC")).astimezone(LONDON)).replace(second=0, microsecond=0)
)
PLACES = st.sampled_from(["greens 1-9", "green 7", "greens 3, 7 and 12", "green-4, green-5"])


def fields_of_kind() -> dict[str, st.SearchStrategy[dict[str, Value]]]:
    def fields(**of: st.SearchStrategy[Any]) -> st.SearchStrategy[dict[str, Value]]:
        return st.fixed_dictionaries({name.replace("_", " "): value for name, value in of.items()})

    job = st.just(JOB)
    done = fields(job=job, surfaces=PLACES, as_done=st.just([{"topdressing": {"sand": "3.2 t/green"}}]))
    limit = st.one_of(LINES, fields(what=LINES, decided_by=LINES, until=st.just("23:59")))
    return {
        "morning status": fields(
            play=st.just({"the whole course": "open", "greens 1-6": "closed"}), why=LINES, limits=fields(trolleys=limit)
        ),
        "work started": fields(job=job, surfaces=PLACES),
        "work done": done,
        "held up": fields(job=job, surfaces=PLACES, because=LINES),
        "work resumed": fields(job=job, surfaces=PLACES, play=st.just("open with care")),
        "observation": fields(
            job=job, surfaces=PLACES, disruption_left=st.just("15 %"), how=st.just("counted"),
            readings=st.just({"green speed": "8 ft 10 in"}),
        ),
        "back to normal": fields(job=job, surfaces=PLACES),
        "change of plan": fields(job=job, change=st.just("postponed to"), starts=st.just("2029-12-31"), because=LINES),
        "growth held back": fields(cause=st.just("growth regulator"), surfaces=PLACES),
        "note to members": fields(job=job),
        "correction": fields(
            corrects=LINES, instead=fields(at=st.just("2027-05-10 00:30"), kind=st.just("held up"), job=job, because=LINES)
        ),
    }  # fmt: skip


FIELDS = fields_of_kind()
CONTEXT = small_context()


def test_every_kind_of_the_log_has_its_fields_here() -> None:
    assert set(FIELDS) == set(KINDS)


@pytest.mark.parametrize("kind", sorted(KINDS))
@settings(max_examples=60)
@given(data=st.data())
def test_a_draft_is_read_back_as_what_was_meant(kind: str, data: st.DataObject) -> None:
    draft = Draft(
        kind=kind,
        at=data.draw(MOMENTS),
        fields=data.draw(FIELDS[kind]),
        by=data.draw(st.one_of(st.just(""), LINES)),
        words=data.draw(st.one_of(st.just(""), WORDS)),
        about="about",
    )
    text = draft_text(draft)
    typed = {
        name: value for name, value in typed_fields(text, instead=False).items() if name not in ("at", "kind", "by")
    }
    assert typed == draft.fields
    problems: list[Problem] = []
    entries = entries_from(text, name="name", file="file", context=CONTEXT, problems=problems)
    assert problems == []
    head = entries[0].head
    assert (head.at, head.by, head.words) == (draft.at, draft.by.strip(), draft.words.strip())
    assert len(entries) == (2 if kind == "correction" else 1)


def test_the_text_reads_as_a_greenkeeper_would_type_it() -> None:
    draft = Draft(
        kind="work done",
        at=datetime(2027, 8, 26, 15, 45, tzinfo=LONDON),
        fields={
            "job": JOB,
            "surfaces": "greens 13-15",
            "as done": [{"topdressing": {"sand": "3.2 t/green"}}, "rolling"],
        },
        by="the course manager",
        words="Like a beach: for a week.\n",
        about="greens 13 to 15 done",
    )
    assert draft_text(draft) == (
        "---\nat: 2027-08-26 15:45\nkind: work done\njob: greens-renovation-2027\nsurfaces: greens 13-15\nas done:\n"
        "  - topdressing: {sand: 3.2 t/green}\n  - rolling\nby: the course manager\n---\n\nLike a beach: for a week.\n"
    )


def test_an_hour_that_the_clocks_repeat_keeps_its_offset() -> None:
    """The last Sunday of October 2027 is the 31st; 1:30am comes twice (British Summer Time ends at 2am)."""
    texts = []
    for fold, offset in ((0, "+01:00"), (1, "+00:00")):
        at = datetime(2027, 10, 31, 1, 30, tzinfo=LONDON, fold=fold)
        text = draft_text(Draft(kind="note to members", at=at, fields={}, about="note"))
        assert f"at: 2027-10-31 01:30{offset}" in text.replace('"', "")
        (entry,) = entries_from(text, name="n", file="f", context=CONTEXT, problems=[])
        texts.append(entry.head.at)
    assert texts[1].timestamp() - texts[0].timestamp() == 3600


def named(about: str, taken: set[str], *, minutes: int = 0) -> str:
    at = datetime(2027, 8, 23, 15, 40, tzinfo=LONDON) + timedelta(minutes=minutes)
    return draft_file(Draft(kind="work done", at=at, fields={}, about=about), taken)


def test_the_name_tells_when_where_and_what() -> None:
    assert named("greens 1 to 9 done", set()) == "log/2027/2027-08-23-1540-greens-1-to-9-done.md"
    assert (
        named("the Club's putting green: done!", set()) == "log/2027/2027-08-23-1540-the-club-s-putting-green-done.md"
    )


def test_entries_of_the_same_minute_get_names_of_their_own_that_sort_as_they_came() -> None:
    taken: set[str] = set()
    names = []
    for about in ("greens 1 to 9 started", "greens 1 to 9 done", "a note", *("the same",) * 60):
        names.append(named(about, taken))
        taken.add(names[-1].removeprefix("log/2027/").removesuffix(".md"))
    assert len(set(names)) == 63
    assert names[1] == "log/2027/2027-08-23-1540b-greens-1-to-9-done.md"
    assert sorted(names) == names
    assert names[-1] < named("next minute", taken, minutes=1)


def test_a_log_entry_of_another_minute_takes_no_letter() -> None:
    assert named("done", {"2027-08-23-1541-done", "2027-08-23-0640-morning"}).endswith("-1540-done.md")


def test_every_field_of_the_log_is_text_again() -> None:
    """A reader that turned 1.50 into 1.5 would change what the manager typed."""
    fields: Mapping[str, Value] = {"job": JOB, "because": "1.50"}
    text = draft_text(Draft(kind="held up", at=datetime(2027, 8, 23, 7, tzinfo=LONDON), fields=fields, about="x"))
    (entry,) = entries_from(text, name="n", file="f", context=CONTEXT, problems=[])
    assert isinstance(entry, log.Progress)
    assert entry.because == "1.50"
