"""Days on which a club does no work, and weather in which it does none. It stays private."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from swardcast.records.day_spans import DaySpan
from swardcast.records.operations import Kind

__all__ = ["USUAL_FROST_C", "USUAL_RAIN_MM", "BlockedDays", "ContractorDays", "DaysWithoutWork"]

USUAL_RAIN_MM: Final = 5.0
"""Rain from which a day is taken to be lost for work on turf, mm: judgement."""
USUAL_FROST_C: Final = 0.0
"""Lowest air temperature down to which a day is taken to be lost, C: judgement. The ground may freeze while the air is
still some degrees above; but such a frost is mostly gone by the middle of the morning. That frozen leaves must not be
walked on: Dowling 2014 (USGA, 22 January) and White, undated (USGA)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockedDays:
    """Days on which nobody works.

    Args:
        span: the days.
        why: the club's own words.
    """

    span: DaySpan
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ContractorDays:
    """The only days on which some work can begin.

    Args:
        spans: the days.
        kinds: kinds of work for which that holds; none for any.
    """

    spans: tuple[DaySpan, ...]
    kinds: frozenset[Kind] = frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class DaysWithoutWork:
    """When the club does not work, besides its weekdays off.

    Args:
        public_holidays: code of a country and its part whose public holidays are kept (ISO 3166-1 and -2, such as
            GB-ENG), or "".
        blocked: days on which nobody works.
        contractor: days on which alone some work can begin; where several speak of a kind of work, any of their days.
        works_on_fixtures: whether work goes on while a competition or a visitors' day is on.
        least_daylight_h: hours from sunrise to sunset that a day of work needs, or None.
        rain_mm: rain from which a day is lost, mm, above 0.
        frost_c: lowest air temperature down to which a day is lost, C.
    """

    public_holidays: str = ""
    blocked: tuple[BlockedDays, ...] = ()
    contractor: tuple[ContractorDays, ...] = ()
    works_on_fixtures: bool = False
    least_daylight_h: float | None = None
    rain_mm: float = USUAL_RAIN_MM
    frost_c: float = USUAL_FROST_C
