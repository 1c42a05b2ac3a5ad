"""What the manager may have forgotten, in words; members do not see it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from swardcast.language.voice import Voice
from swardcast.notices.words import as_clause, few_words_for
from swardcast.outlook.oversights import LeftOpen
from swardcast.records.folder import ClubRecords

__all__ = ["oversights"]


def oversights(records: ClubRecords, as_of: datetime, voice: Voice) -> Iterator[str]:
    """Say what plan and log leave open: work that nobody entered or reports on, products on surfaces that stay open.

    Args:
        records: the club's records.
        as_of: the moment, aware.
        voice: English, and the day of the reader.

    Yields:
        Sentences, each with the file and line or the entry that it rests on.
    """
    left_open = LeftOpen(records, as_of)
    for facts in left_open.never_begun():
        job = facts.job
        source = facts.changes[-1].head.id if facts.changes else f"{job.file}, line {job.line}"
        day = voice.day(facts.starts)
        yield f"{job.title} was planned from {day}; enter what happened, or move or call it off [{source}]"
    for facts, silence in left_open.not_reported():
        left = [records.surfaces[name] for name, there in facts.surfaces.items() if there.done is None]
        was = "was" if len(left) == 1 else "were"
        due = f"{few_words_for(left, voice)} {was} due to be finished by {voice.day(silence.due_by)}"
        told = "and members read that nobody has reported it"
        asked = "enter what happened, or move or call it off"
        yield f"{facts.job.title}: {due}, {told}; {asked} [{facts.progress[-1].head.id}]"
    for job, use in left_open.labels_while_open():
        places = [records.surfaces[name] for name in job.surfaces]
        stay = "stays" if len(places) == 1 else "stay"
        while_open = f"{few_words_for(places, voice)} {stay} {job.while_working.value}"
        label = f'{job.title}: the label of the {use.kind.value} says "{as_clause(use.re_entry)}"'
        yield f"{label} while {while_open}: is that right? [{job.file}, line {job.line}]"
