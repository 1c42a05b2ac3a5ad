"""How much of some records is known at a moment: so that what is the same at two moments is worked out once."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass, field
from datetime import datetime, time
from math import inf

from swardcast.records.folder import ClubRecords

__all__ = ["KnownSoFar", "LogClock"]


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownSoFar:
    """How much of the records is known at a moment: what is not told apart by it is the same.

    Args:
        entries: how many entries.
        announced: how many jobs are announced.
        withdrawn: the jobs that are withdrawn.
        moment: a moment at which it is so.
    """

    entries: int
    announced: int
    withdrawn: frozenset[str]
    moment: datetime = field(compare=False)


class LogClock:
    """Tells two moments apart between which something became known of some records.

    Args:
        records: the records.

    Attributes:
        files: the files of the log that they have entries of.
        all_known: the timestamp from which on nothing more becomes known of them.
    """

    def __init__(self, records: ClubRecords) -> None:
        self._zone = records.club.time_zone
        self._entered = sorted(entry.head.at.timestamp() for entry in records.entries)
        self._announced = sorted(job.announced for job in records.jobs.values())
        self._may_go = [job for job in records.jobs.values() if job.withdrawn is not None]
        self.files = frozenset(entry.head.file for entry in records.entries)
        gone = [job.withdrawn.at.timestamp() for job in self._may_go if job.withdrawn is not None]
        days = [datetime.combine(day, time(0), tzinfo=self._zone).timestamp() for day in self._announced[-1:]]
        self.all_known = max([*self._entered[-1:], *days, *gone], default=-inf)

    def known(self, moment: datetime) -> KnownSoFar:
        """Tell how much is known.

        Args:
            moment: aware.

        Returns:
            The same for moments between which nothing became known.
        """
        today = moment.astimezone(self._zone).date()
        return KnownSoFar(
            entries=bisect_right(self._entered, moment.timestamp()),
            announced=bisect_right(self._announced, today),
            withdrawn=frozenset(job.id for job in self._may_go if job.is_withdrawn(moment)),
            moment=moment,
        )

    def last_change(self, moment: datetime) -> datetime:
        """Tell when something of them became known last, by a moment; where nothing was known yet, the moment.

        Args:
            moment: aware.

        Returns:
            A moment up to that one.
        """
        known = self.known(moment)
        days = self._announced[: known.announced][-1:]
        changes = [datetime.combine(day, time(0), tzinfo=self._zone) for day in days]
        changes += [datetime.fromtimestamp(at, self._zone) for at in self._entered[: known.entries][-1:]]
        changes += [one.withdrawn.at for one in self._may_go if one.withdrawn is not None and one.is_withdrawn(moment)]
        return max(changes, key=datetime.timestamp, default=moment)
