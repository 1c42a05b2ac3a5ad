"""Everything a club folder tells, in one value."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from swardcast.records.club import Club, Surface
from swardcast.records.log import Entry
from swardcast.records.plan import Job
from swardcast.records.weather import Weather

__all__ = ["ClubRecords"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ClubRecords:
    """A club's records.

    Args:
        club: the club.
        surfaces: surfaces by id, in the club's order.
        jobs: jobs by id, in the plan's order.
        entries: the log, oldest first.
        weather: the weather.
    """

    club: Club
    surfaces: Mapping[str, Surface]
    jobs: Mapping[str, Job]
    entries: tuple[Entry, ...]
    weather: Weather

    def known_at(self, as_of: datetime) -> ClubRecords:
        """Leave out what nobody knew yet: later entries, later forecasts, days not over, jobs not announced.

        Past years stay whole; whoever uses them takes only those that were over.

        Args:
            as_of: the moment, aware.

        Returns:
            The records as they stood at that moment.
        """
        today = as_of.astimezone(self.club.time_zone).date()
        return replace(
            self,
            jobs={name: job for name, job in self.jobs.items() if job.announced <= today},
            entries=tuple(entry for entry in self.entries if entry.head.at <= as_of),
            weather=replace(
                self.weather,
                observed_c={day: value for day, value in self.weather.observed_c.items() if day < today},
                rain_mm={day: value for day, value in self.weather.rain_mm.items() if day < today},
                forecasts=tuple(forecast for forecast in self.weather.forecasts if forecast.issued_at <= as_of),
            ),
        )
