"""The log, parted once by the jobs that it speaks of, so that nobody reads all of it for each of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from swardcast.records.log import Correction, Entry, GrowthHeldBack

__all__ = ["LogByJob"]


class LogByJob:
    """The log, parted once.

    Args:
        entries: entries, oldest first.
    """

    def __init__(self, entries: Iterable[Entry]) -> None:
        self._entries = tuple(entries)
        self._of_job: dict[str, list[int]] = {}
        self._correcting: dict[str, list[int]] = {}
        self._of_growth: list[int] = []
        for place, entry in enumerate(self._entries):
            if job := getattr(entry, "job", ""):
                self._of_job.setdefault(job, []).append(place)
            elif isinstance(entry, Correction):
                self._correcting.setdefault(entry.corrects, []).append(place)
            elif isinstance(entry, GrowthHeldBack):
                self._of_growth.append(place)

    def of(self, job: str) -> tuple[Entry, ...]:
        """Give what can be told of a job.

        Args:
            job: its id.

        Returns:
            The entries of the job, those that say where growth was held back, and what corrects any of these, oldest
            first.
        """
        about = [*self._of_job.get(job, ()), *self._of_growth]
        return tuple(self._entries[place] for place in sorted({*about, *self._corrections_of(about)}))

    def _corrections_of(self, places: Iterable[int]) -> Iterator[int]:
        """What corrects these entries, and what corrects that."""
        left = [self._entries[place].head.id for place in places]
        while left:
            for place in self._correcting.get(left.pop(), ()):
                yield place
                left.append(self._entries[place].head.id)
