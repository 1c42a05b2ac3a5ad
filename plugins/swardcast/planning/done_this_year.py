"""What the log says was done on surfaces in a year: share disturbed, share taken out, sand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from statistics import fmean

from swardcast.outlook.ledger import JobFacts, really_done_by_area
from swardcast.outlook.what_if import facts_as_known
from swardcast.planning.amounts import disturbed_by, removed_by, spread_by
from swardcast.records.folder import ClubRecords
from swardcast.records.translate import density_of, surface_sums

__all__ = ["DoneThisYear", "done_in_year"]


@dataclass(frozen=True, slots=True, kw_only=True)
class DoneThisYear:
    """What a calendar year has brought so far, the mean over the surfaces, each counted alike.

    Args:
        year: the year.
        jobs: ids of the jobs that were done on any of the surfaces.
        disturbed_fraction: share of the surface opened or stripped, passes and jobs added.
        removed_fraction: share of the surface taken out, passes and jobs added.
        sand_mm: sand spread or injected.
        is_whole: whether it holds all of that work; of some kinds nothing is computed.
    """

    year: int
    jobs: tuple[str, ...]
    disturbed_fraction: float
    removed_fraction: float
    sand_mm: float
    is_whole: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class _Piece:
    """One job that was done on one surface."""

    disturbed_fraction: float | None
    removed_fraction: float | None
    sand_mm: float | None


def done_in_year(records: ClubRecords, as_of: datetime, surfaces: Sequence[str], year: int) -> DoneThisYear:
    """Add up what was done on surfaces in a year.

    Assumes that only what an entry calls done was done, on the day of the entry; work that is planned does not count.

    Args:
        records: the club's records.
        as_of: the moment, aware; later entries are not known.
        surfaces: ids of the surfaces, at least one.
        year: the calendar year, in the club's own days.

    Returns:
        The sums.
    """
    found: dict[str, list[_Piece]] = {name: [] for name in surfaces}
    jobs: list[str] = []
    for facts in facts_as_known(records, as_of).values():
        names = [name for name in facts.job.surfaces if name in found and _done_on(facts, name, records).year == year]
        jobs += [facts.job.id] if names else []
        for name in names:
            found[name].append(_piece(facts, name, records))
    pieces = [piece for there in found.values() for piece in there]
    return DoneThisYear(
        year=year,
        jobs=tuple(jobs),
        disturbed_fraction=fmean(sum(one.disturbed_fraction or 0.0 for one in there) for there in found.values()),
        removed_fraction=fmean(sum(one.removed_fraction or 0.0 for one in there) for there in found.values()),
        sand_mm=fmean(sum(one.sand_mm or 0.0 for one in there) for there in found.values()),
        is_whole=all(None not in (one.disturbed_fraction, one.removed_fraction, one.sand_mm) for one in pieces),
    )


def _done_on(facts: JobFacts, name: str, records: ClubRecords) -> date:
    """The day on which it was finished there, or none that any year has."""
    done = facts.surfaces[name].done
    return date.min if done is None else done.head.true_from.astimezone(records.club.time_zone).date()


def _piece(facts: JobFacts, name: str, records: ClubRecords) -> _Piece:
    operations = really_done_by_area(facts.job, facts.surfaces[name], records.surfaces)
    area_m2, density = records.surfaces[name].area_m2, density_of(records.club)
    sums = surface_sums(operations, area_m2=area_m2, all_area_m2=None, density=density)
    return _Piece(
        disturbed_fraction=disturbed_by(operations, sums),
        removed_fraction=removed_by(operations, sums),
        sand_mm=spread_by(operations, area_m2=area_m2, all_area_m2=None, density_t_per_m3=density),
    )
