"""Which entries of the log stand, and in which order they speak."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from functools import cached_property

from swardcast.records.club import Club
from swardcast.records.folder import ClubRecords
from swardcast.records.log import (
    BackToNormal,
    Correction,
    Entry,
    GrowthHeldBack,
    MorningStatus,
    NoteToMembers,
    Observation,
    PlanChange,
    Progress,
    Step,
)
from swardcast.records.log_by_job import places_by_job

__all__ = [
    "StandingEntries",
    "as_entered",
    "as_spoken",
    "counts_until",
    "morning_of",
    "notes_withdrawn",
    "rank",
    "standing_among",
    "standing_entries",
    "surfaces_named",
    "taken_back",
    "withdrawn_ids",
    "without_words_of",
]


def as_entered(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """Order entries by the moments at which they were made, oldest first; those of one minute by their names."""
    return tuple(sorted(entries, key=lambda entry: (entry.head.at_s, entry.head.id)))


def withdrawn_ids(entries: Iterable[Entry]) -> frozenset[str]:
    """Name the entries that corrections among these withdraw or replace."""
    return frozenset(entry.corrects for entry in entries if isinstance(entry, Correction))


def taken_back(entries: Iterable[Entry]) -> dict[str, datetime]:
    """Tell when entries were first withdrawn or replaced.

    Args:
        entries: entries, corrections among them, in any order.

    Returns:
        The moment, aware, by the id of the entry that stands no more.
    """
    found: dict[str, datetime] = {}
    for entry in entries:
        if isinstance(entry, Correction):
            found[entry.corrects] = min(entry.head.at, found.get(entry.corrects, entry.head.at), key=datetime.timestamp)
    return found


def counts_until(said: datetime, club: Club) -> datetime:
    """Tell until when a word on play counts; from then on nobody knows how play stands.

    Args:
        said: the moment from which it was true, aware.
        club: the club.

    Returns:
        The end of its day, or the club's own limit where that comes sooner; in the club's time.
    """
    local = said.astimezone(club.time_zone)
    end_of_day = datetime.combine(local.date() + timedelta(days=1), time(0), tzinfo=club.time_zone)
    if club.entry_counts_for_minutes is None:
        return end_of_day
    # Clocks may change in between, and hours are hours.
    too_old = said.astimezone(UTC) + timedelta(minutes=club.entry_counts_for_minutes)
    return min(end_of_day, too_old.astimezone(club.time_zone))


def morning_of(entries: Iterable[Entry], day: date) -> MorningStatus | None:
    """Find the latest morning entry, if it speaks of a day.

    Args:
        entries: entries that stand, oldest first.
        day: the local day.

    Returns:
        The entry, or None when the latest is of another day.
    """
    mornings = [entry for entry in entries if isinstance(entry, MorningStatus)]
    return mornings[-1] if mornings and mornings[-1].head.true_from.date() == day else None


def surfaces_named(entry: Entry) -> Iterable[str]:
    """Name the surfaces that an entry speaks of.

    Args:
        entry: the entry.

    Returns:
        Their ids, as often as they are named.
    """
    return [name for name, _ in entry.play] if isinstance(entry, MorningStatus) else getattr(entry, "surfaces", ())


class StandingEntries(tuple[Entry, ...]):
    """Entries that stand, in the order in which they speak, with those of a job or a surface found at once."""

    @cached_property
    def _of_jobs(self) -> Mapping[str, list[int]]:
        return places_by_job(self)

    @cached_property
    def _on_surfaces(self) -> Mapping[str, list[int]]:
        found: dict[str, list[int]] = {}
        for place, entry in enumerate(self):
            for name in dict.fromkeys(surfaces_named(entry)):
                found.setdefault(name, []).append(place)
        return found

    @cached_property
    def _held_back(self) -> Mapping[str, tuple[GrowthHeldBack, ...]]:
        found: dict[str, tuple[GrowthHeldBack, ...]] = {}
        for entry in self:
            if isinstance(entry, GrowthHeldBack):
                found |= {name: (*found.get(name, ()), entry) for name in entry.surfaces}
        return found

    def held_back_on(self, name: str) -> tuple[GrowthHeldBack, ...]:
        """Those that say that growth is held back on a surface, oldest first."""
        return self._held_back.get(name, ())

    def of_job(self, job: str) -> list[Entry]:
        """Those that speak of a job, oldest first."""
        return [self[place] for place in self._of_jobs.get(job, ())]

    def on_surface(self, name: str) -> list[Entry]:
        """Those that name a surface, oldest first."""
        return [self[place] for place in self._on_surfaces.get(name, ())]

    def since(self, moment: datetime) -> tuple[Entry, ...]:
        """Those that were true from a moment on, oldest first."""
        return self[bisect_left(self, moment.timestamp(), key=lambda entry: entry.head.true_from_s) :]

    def since_job(self, job: str) -> Iterator[Entry]:
        """All from the first that speaks of a job on, oldest first; none where none does."""
        places = self._of_jobs.get(job, ())
        return (self[place] for place in range(places[0], len(self))) if places else iter(())


def standing_entries(entries: Iterable[Entry]) -> StandingEntries:
    """Drop entries that were withdrawn or replaced, and order the rest by when they were true.

    Of two that were true at the same minute, the one written down later speaks later; of those, what speaks of the
    whole course comes before what speaks of a piece of work, and a start before its end.

    Args:
        entries: entries known so far.

    Returns:
        Entries that stand, oldest first; corrections themselves are left out.
    """
    known = tuple(entries)
    withdrawn = withdrawn_ids(known)
    return as_spoken(entry for entry in known if entry.head.id not in withdrawn)


def standing_among(spoken: StandingEntries, entries: Iterable[Entry]) -> StandingEntries:
    """Drop entries that were withdrawn or replaced, as `standing_entries` does, where their order is known.

    Args:
        spoken: these entries and perhaps more, as `as_spoken` gives them.
        entries: entries known so far.

    Returns:
        Entries that stand, oldest first.
    """
    known = tuple(entries)
    standing = {entry.head.id for entry in known} - withdrawn_ids(known)
    return StandingEntries([entry for entry in spoken if entry.head.id in standing])


def as_spoken(entries: Iterable[Entry]) -> StandingEntries:
    """Put entries in the order in which they speak, as `standing_entries` does, those taken back since among them.

    Args:
        entries: entries.

    Returns:
        The entries without corrections, the first to speak first.
    """
    return StandingEntries(sorted((entry for entry in entries if not isinstance(entry, Correction)), key=_order))


def _order(entry: Entry) -> tuple[float, float, int, str]:
    # In the hour that the clocks repeat, local times alone would not tell which came first.
    return entry.head.true_from_s, entry.head.at_s, rank(entry), entry.head.id


def notes_withdrawn(records: ClubRecords) -> dict[str, datetime]:
    """Tell which notes to members were withdrawn: wherever news is kept they lose their words.

    Args:
        records: the records as known at a moment.

    Returns:
        When each was withdrawn first, local time, by its id.
    """
    notes = {entry.head.id for entry in records.entries if isinstance(entry, NoteToMembers)}
    withdrawn = taken_back(records.entries).items()
    return {name: at.astimezone(records.club.time_zone) for name, at in withdrawn if name in notes}


def without_words_of(names: Iterable[str], records: ClubRecords) -> ClubRecords:
    """Take the manager's own words out of some entries.

    Args:
        names: ids of the entries.
        records: the records.

    Returns:
        The same records without those words.
    """
    silent = set(names)
    return replace(
        records,
        entries=tuple(
            replace(entry, head=replace(entry.head, words="")) if entry.head.id in silent else entry
            for entry in records.entries
        ),
    )


def rank(entry: Entry) -> int:
    """Rank entries of the same minute.

    Args:
        entry: an entry.

    Returns:
        0 for what speaks first, of the whole course; the end of a piece of work ranks higher than its start.
    """
    match entry:
        case MorningStatus():
            return 0
        case PlanChange():
            return 1
        case Progress(step=Step.STARTED | Step.RESUMED):
            return 2
        case Progress(step=Step.HELD_UP):
            return 3
        case Progress():
            return 4
        case Observation():
            return 5
        case BackToNormal():
            return 6
        case _:
            return 7
