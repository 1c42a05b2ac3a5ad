"""The log, parted once by what its entries speak of, so that nobody reads all of it for each job."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cached_property

from swardcast.records.log import Correction, Entry, GrowthHeldBack

__all__ = ["LogByJob", "places_by_job"]


def places_by_job(entries: Iterable[Entry]) -> dict[str, list[int]]:
    """Part entries by the jobs that they speak of.

    Args:
        entries: entries.

    Returns:
        Their places among the entries, by job; nothing of those that speak of none.
    """
    found: dict[str, list[int]] = {}
    for place, entry in enumerate(entries):
        if job := getattr(entry, "job", ""):
            found.setdefault(job, []).append(place)
    return found


class LogByJob:
    """The log, parted once.

    Args:
        entries: entries, oldest first.

    Attributes:
        entries: the same.
    """

    def __init__(self, entries: Iterable[Entry]) -> None:
        self.entries = tuple(entries)

    def of(self, job: str) -> tuple[Entry, ...]:
        """Give what can be told of a job.

        Args:
            job: its id.

        Returns:
            The entries of the job, those that say where growth was held back, and what corrects any of these, oldest
            first.
        """
        return self.with_corrections([*self.places_of(job), *(place for place, _ in self.of_growth)])

    def speaking_of(self, job: str) -> list[Entry]:
        """Give the entries that speak of a job, oldest first."""
        return [self.entries[place] for place in self.places_of(job)]

    def places_of(self, job: str) -> Sequence[int]:
        """Give the places of these in the log."""
        return self._of_job.get(job, ())

    def with_corrections(self, places: Iterable[int]) -> tuple[Entry, ...]:
        """Give the entries at some places, and what corrects any of these, oldest first."""
        asked = set(places)
        return tuple(self.entries[place] for place in sorted(asked.union(self._corrections_of(asked))))

    @cached_property
    def of_none(self) -> list[tuple[int, Entry]]:
        """Entries that speak of no job, with their places; without corrections, which go with what they correct."""
        entries = enumerate(self.entries)
        return [(n, one) for n, one in entries if not getattr(one, "job", "") and not isinstance(one, Correction)]

    @cached_property
    def of_growth(self) -> list[tuple[int, GrowthHeldBack]]:
        """Those of them that say where growth was held back."""
        return [(place, entry) for place, entry in self.of_none if isinstance(entry, GrowthHeldBack)]

    @cached_property
    def _of_job(self) -> Mapping[str, list[int]]:
        return places_by_job(self.entries)

    @cached_property
    def _correcting(self) -> Mapping[str, list[int]]:
        found: dict[str, list[int]] = {}
        for place, entry in enumerate(self.entries):
            if isinstance(entry, Correction):
                found.setdefault(entry.corrects, []).append(place)
        return found

    def _corrections_of(self, places: Iterable[int]) -> Iterator[int]:
        """What corrects these entries, and what corrects that."""
        left = [self.entries[place].head.id for place in places]
        while left:
            for place in self._correcting.get(left.pop(), ()):
                yield place
                left.append(self.entries[place].head.id)
