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
        changes: how many entries were made, jobs announced, and jobs withdrawn.
        since: the timestamp of the last of these, or minus infinity.
        until: that of the next one, or infinity.
        moment: the moment, which tells nothing apart.
    """

    changes: int
    since: float
    until: float
    moment: datetime = field(compare=False)


class LogClock:
    """Tells two moments apart between which something became known of some records.

    Args:
        records: the records.
        first: the timestamp of the first moment that anybody asks for.
    """

    def __init__(self, records: ClubRecords, first: float = -inf) -> None:
        self._zone = records.club.time_zone
        announced = [job.announced for job in records.jobs.values()]
        withdrawn = [job.withdrawn.at.timestamp() for job in records.jobs.values() if job.withdrawn is not None]
        changes = (
            *(entry.head.at_s for entry in records.entries),
            *(datetime.combine(day, time(0), tzinfo=self._zone).timestamp() for day in announced),
            *withdrawn,
        )
        self._changes = sorted(at for at in changes if at >= first)

    def known(self, moment: datetime) -> KnownSoFar:
        """Tell how much is known.

        Args:
            moment: aware.

        Returns:
            The same for moments between which nothing became known.
        """
        place = bisect_right(self._changes, moment.timestamp())
        return KnownSoFar(
            changes=place,
            since=self._changes[place - 1] if place else -inf,
            until=self._changes[place] if place < len(self._changes) else inf,
            moment=moment,
        )

    def last_change(self, moment: datetime) -> datetime:
        """Tell when something of them became known last, by a moment; where nothing was known yet, the moment.

        Args:
            moment: aware.

        Returns:
            A moment up to that one.
        """
        since = self.known(moment).since
        return datetime.fromtimestamp(since, self._zone) if since > -inf else moment
