"""Private notes of a period: what the club noted for itself in the plan and the log. No page of the site has them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date

from swardcast.planning.report_places import Place, in_log, in_plan
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Correction, Entry
from swardcast.records.plan import Job
from swardcast.records.standing import withdrawn_ids

__all__ = ["PrivateNote", "private_notes_in"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PrivateNote:
    """What the club noted for itself.

    Args:
        job: the job that it stands with, or None where that is the course as a whole.
        on: the day of the entry, or None in the plan.
        words: the note as typed, with whatever names are in it.
        place: where it is written.
    """

    job: Job | None
    on: date | None
    words: str
    place: Place


def private_notes_in(known: ClubRecords, jobs: Iterable[Job], first: date, last: date) -> tuple[PrivateNote, ...]:
    """Gather the private notes of a period.

    Args:
        known: the records as known at the moment of the report, with their private notes.
        jobs: the jobs of the report.
        first: the period's first day.
        last: its last day.

    Returns:
        Those of the jobs in the plan, then those of the period's entries, oldest first; none of an entry that was
        withdrawn or replaced.
    """
    of_plan = (PrivateNote(job=job, on=None, words=job.private_note, place=in_plan(job)) for job in jobs)
    return tuple(one for one in (*of_plan, *_of_log(known, first, last)) if one.words)


def _of_log(known: ClubRecords, first: date, last: date) -> Iterator[PrivateNote]:
    gone = withdrawn_ids(known.entries)
    by_id = {entry.head.id: entry for entry in known.entries}
    for entry in known.entries:
        day = entry.head.true_from.date()
        if entry.head.private_note and entry.head.id not in gone and first <= day <= last:
            job = known.jobs.get(_job_of(entry, by_id))
            yield PrivateNote(job=job, on=day, words=entry.head.private_note, place=in_log(entry.head))


def _job_of(entry: Entry, by_id: dict[str, Entry]) -> str:
    """The job that an entry, or the one that it corrects, speaks of."""
    if isinstance(entry, Correction):
        corrected = by_id.get(entry.corrects)
        return _job_of(corrected, by_id) if corrected is not None else ""
    return str(getattr(entry, "job", ""))
