"""How play and limits stood at many earlier moments: the log is put in order once for all of them."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

from swardcast.outlook.limits import LimitInForce, limits_in_force
from swardcast.outlook.play import latest_statement
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry, MorningStatus
from swardcast.records.plan import Play
from swardcast.records.standing import as_spoken, taken_back

__all__ = ["PastPlay"]


class PastPlay:
    """The words on play of one log, of which any earlier moment can be asked.

    Args:
        records: the club's records, from which those of every earlier moment can be made.
    """

    def __init__(self, records: ClubRecords) -> None:
        self._records = records
        self._spoken = as_spoken(records.entries)
        self._limiting = [entry for entry in self._spoken if isinstance(entry, MorningStatus) and entry.limits]
        self._taken_back = {name: at.timestamp() for name, at in taken_back(records.entries).items()}

    def limits_at(self, at: datetime) -> tuple[LimitInForce, ...]:
        """Tell which limits held at a moment, aware."""
        return limits_in_force(filter(self._stood_at(at), self._limiting), at)

    def plays_at(self, known: ClubRecords, at: datetime) -> dict[str, Play]:
        """Tell how the latest word on each surface said that play stood there.

        Args:
            known: the records as known at the moment.
            at: the moment, aware.

        Returns:
            Play by surface, of those on which anything had been said.
        """
        stood = self._stood_at(at)
        said = {name: latest_statement(name, known, self._spoken.on_surface(name), stood) for name in known.surfaces}
        return {name: latest[0] for name, latest in said.items() if latest is not None}

    def _stood_at(self, at: datetime) -> Callable[[Entry], bool]:
        """Whether an entry was known at a moment, not yet taken back, and not of a job that was out of the plan."""
        moment, today = at.timestamp(), at.astimezone(self._records.club.time_zone).date()
        announced = (job for job in self._records.jobs.values() if job.withdrawn is not None and job.announced <= today)
        gone = {job.id for job in announced if job.is_withdrawn(at)}
        ended = self._taken_back

        def stood(entry: Entry) -> bool:
            name = entry.head.id
            if entry.head.at_s > moment or (name in ended and ended[name] <= moment):
                return False
            return not gone or getattr(entry, "job", "") not in gone

        return stood
