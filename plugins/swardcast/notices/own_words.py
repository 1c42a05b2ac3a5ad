"""The manager's own words held against the measure of ours: worth another look, never an error."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from typing import Final

from swardcast.language.banned import Banned
from swardcast.language.plain import faults
from swardcast.records.folder import ClubRecords
from swardcast.records.standing import withdrawn_ids

__all__ = ["own_words_remarks"]

_ENTRY_DAYS: Final = 14
"""Days for which a log entry is looked at: after that nobody would write it anew. Judgement."""

_JOB_DAYS: Final = 90
"""Days from the start of a job for which its words are looked at: old plans stay in the folder. Judgement."""


def own_words_remarks(records: ClubRecords, as_of: datetime, banned: Sequence[Banned]) -> tuple[str, ...]:
    """Say which of the manager's own words are worth another look.

    Args:
        records: the club's records.
        as_of: the moment, aware.
        banned: words to avoid in the club's language.

    Returns:
        Remarks, each with its file and sentence; jobs first, in the plan's order, then entries, the oldest first.
    """
    told = (*_of_jobs(records, as_of), *_of_entries(records, as_of))
    return tuple(
        dict.fromkeys(f"{place}: {fault}" for place, words in told for fault in faults(words, banned, markdown=True))
    )


def _of_jobs(records: ClubRecords, as_of: datetime) -> Iterator[tuple[str, str]]:
    oldest = as_of.astimezone(records.club.time_zone).date() - timedelta(days=_JOB_DAYS)
    for job in records.jobs.values():
        if job.starts < oldest or job.is_withdrawn(as_of):
            continue
        place = f"{job.file}, line {job.line}"
        for sentences in job.why:
            yield f"{place}: why", sentences
        yield f"{place}: meanwhile", job.meanwhile
        yield f"{place}: own words", job.own_words
        for own in job.own_parts:
            yield f"{place}: own words", own.markdown


def _of_entries(records: ClubRecords, as_of: datetime) -> Iterator[tuple[str, str]]:
    withdrawn = withdrawn_ids(records.entries)
    for entry in records.entries:
        head = entry.head
        is_recent = as_of - timedelta(days=_ENTRY_DAYS) <= head.at <= as_of
        if is_recent and not head.instead_of and head.id not in withdrawn:  # what stands instead is in the same file
            yield f"{head.file}: own words", head.words
