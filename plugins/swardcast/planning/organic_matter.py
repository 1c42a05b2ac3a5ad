"""Organic matter before and after: the club's own latest readings, and what sand makes of them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from statistics import fmean

from swardcast.quantities import parse_fraction
from swardcast.records.log import Entry, Observation
from swardcast.records.operations import Operation, SandInjection, Stripping
from swardcast.records.translate import SurfaceSums, opening_of, opens_mm
from swardcast.turf.organic_matter import diluted_fraction, filled_fraction

__all__ = ["READING", "OrganicReading", "latest_reading", "organic_after"]

READING = "organic matter"
"""Name of the reading in an entry of the log."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrganicReading:
    """What the club's readings say of several surfaces.

    Args:
        fraction: mean of the latest reading of each surface that has one, as a share of the dry mass.
        surfaces: ids of those surfaces.
        first_day: day of the oldest of them.
        last_day: day of the newest.
    """

    fraction: float
    surfaces: tuple[str, ...]
    first_day: date
    last_day: date


def latest_reading(entries: Iterable[Entry], surfaces: Sequence[str]) -> OrganicReading | None:
    """Find the latest readings of organic matter.

    Args:
        entries: entries that stand, oldest first.
        surfaces: ids of the surfaces asked about.

    Returns:
        The mean over the surfaces that have a reading, or None where none has.
    """
    latest: dict[str, tuple[float, date]] = {}
    for entry in entries:
        if not isinstance(entry, Observation):
            continue
        typed = dict(entry.readings).get(READING)
        for name in entry.surfaces if typed is not None else ():
            latest[name] = (parse_fraction(typed), entry.head.true_from.date())
    found = [name for name in surfaces if name in latest]
    if not found:
        return None
    days = [latest[name][1] for name in found]
    return OrganicReading(
        fraction=fmean(latest[name][0] for name in found),
        surfaces=tuple(found),
        first_day=min(days),
        last_day=max(days),
    )


def organic_after(
    reading: OrganicReading | None, operations: Sequence[Operation], sums: Sequence[SurfaceSums], *, layer_mm: float
) -> float | None:
    """Work out the organic matter after the work, by dilution with sand alone.

    Args:
        reading: the club's readings, or None.
        operations: what is done.
        sums: what that does to each surface.
        layer_mm: depth down to which organic matter is sampled, above 0.

    Returns:
        The mean over the surfaces, as a share of the dry mass; None without a reading, where turf is stripped,
        since then another layer lies on top that nobody has sampled, and where sand is injected, which is not computed.
    """
    if reading is None or any(isinstance(operation, Stripping | SandInjection) for operation in operations):
        return None
    return fmean(_after_on(reading.fraction, operations, one, layer_mm) for one in sums)


def _after_on(fraction: float, operations: Sequence[Operation], sums: SurfaceSums, layer_mm: float) -> float:
    filled_share = sums.infill_mm / sums.room_mm if sums.room_mm > 0 else 0.0
    filled = 0.0
    for operation in operations:
        opening, depth_mm = opening_of(operation), opens_mm(operation)
        if opening is not None and depth_mm > 0:
            filled += filled_fraction(opening.room_mm / depth_mm, depth_mm, layer_mm, filled_share)
    return diluted_fraction(
        fraction,
        layer_mm=layer_mm,
        filled=filled,
        on_top_mm=sums.surplus_mm,
        sand_density_t_per_m3=sums.density_t_per_m3,
    )
