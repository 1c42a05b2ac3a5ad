"""How much undisturbed play matters to a club on which days. It stays private."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

from swardcast.records.day_spans import DaySpan

__all__ = ["USUAL_OF_A_FIXTURE", "Importance", "NamedFixtures", "Period"]

USUAL_OF_A_FIXTURE: Final = 3.0
"""What a fixture adds to its day where the club tells nothing, in ordinary days: judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Period:
    """Days of which play matters more, or less, than on ordinary ones.

    Args:
        name: what the club calls it, or "".
        span: its days.
        times: by what an ordinary day is multiplied, 0 or more.
    """

    name: str
    span: DaySpan
    times: float


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedFixtures:
    """Fixtures that matter more, or less, than others.

    Args:
        words: the name or a part of it, or an id.
        adds: what each of their days adds, in ordinary days, 0 or more.
    """

    words: str
    adds: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Importance:
    """The weight of a day: an ordinary one is 1, times its weekday and its periods; each fixture adds to it.

    Args:
        weekdays: by what a weekday is multiplied, 0 or more, by its number from Monday, 0; others count once.
        fixtures: what a competition adds to each of its days, 0 or more.
        visitors: what a visitors' day adds, or None for the same.
        named: fixtures with a weight of their own, which goes before both.
        periods: seasons.
        is_typed: whether any of it was told by the club.
    """

    weekdays: Mapping[int, float] = field(default_factory=dict)
    fixtures: float = USUAL_OF_A_FIXTURE
    visitors: float | None = None
    named: tuple[NamedFixtures, ...] = ()
    periods: tuple[Period, ...] = ()
    is_typed: bool = False
