"""Everything a club folder tells, in one value."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime

from swardcast.records.club import Club, Surface
from swardcast.records.fixtures import Fixture
from swardcast.records.log import Entry
from swardcast.records.plan import Job
from swardcast.records.planning import Planning
from swardcast.records.weather import Weather

__all__ = ["ClubRecords"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ClubRecords:
    """A club's records.

    Args:
        club: the club.
        surfaces: surfaces by id, in the club's order.
        jobs: jobs by id, in the plan's order.
        entries: the log in the order in which it was written, as `as_entered` gives it.
        weather: the weather.
        fixtures: competitions and visitors' days, the first first; they count as known at all times, like surfaces.
        planning: what the club keeps to itself; it stands beside the club, which pages are made of, never in it.
    """

    club: Club
    surfaces: Mapping[str, Surface]
    jobs: Mapping[str, Job]
    entries: tuple[Entry, ...]
    weather: Weather
    fixtures: tuple[Fixture, ...] = ()
    planning: Planning = field(default_factory=Planning)

    def known_at(self, as_of: datetime) -> ClubRecords:
        """Leave out what nobody knew yet, and what was withdrawn by then: jobs, with the entries that speak of them.

        The weather stays whole; `outlook.weather_book` shows it as it was known at a moment.

        Args:
            as_of: the moment, aware.

        Returns:
            The records as they stood at that moment.
        """
        heard = self.heard_by(as_of)
        gone = {name for name, job in heard.jobs.items() if job.is_withdrawn(as_of)}
        if not gone:
            return heard
        return replace(
            heard,
            jobs={name: job for name, job in heard.jobs.items() if name not in gone},
            entries=tuple(entry for entry in heard.entries if getattr(entry, "job", "") not in gone),
        )

    def heard_by(self, as_of: datetime) -> ClubRecords:
        """Leave out what nobody knew yet: later entries, and jobs not announced. What was withdrawn since is there.

        Args:
            as_of: the moment, aware.

        Returns:
            The records from which those of every earlier moment can be made.
        """
        today, now = as_of.astimezone(self.club.time_zone).date(), as_of.timestamp()
        return replace(
            self,
            jobs={name: job for name, job in self.jobs.items() if job.announced <= today},
            entries=self.entries[: bisect_right(self.entries, now, key=lambda entry: entry.head.at_s)],
        )
