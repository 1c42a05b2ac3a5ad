"""How much undisturbed play matters on each day, as numbers."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta

import numpy as np
from numpy.typing import NDArray

from swardcast.records.fixtures import Fixture
from swardcast.records.importance import Importance, NamedFixtures

__all__ = ["added_by", "named_of", "weights_of"]

Floats = NDArray[np.float64]


def weights_of(first: date, days: int, importance: Importance, fixtures: Iterable[Fixture]) -> Floats:
    """Weigh each of a run of days.

    What a fixture adds is never below 0, so that one more fixture never makes a day lighter.

    Args:
        first: the first day.
        days: how many, 0 or more.
        importance: what the club tells.
        fixtures: the club's fixtures.

    Returns:
        Weights in ordinary days, 0 or more, shape (days,).
    """
    weights = np.array([_ordinary_weight(first + timedelta(days=place), importance) for place in range(days)])
    for fixture in fixtures:
        begin, end = (fixture.first_day - first).days, (fixture.last_day - first).days + 1
        weights[max(0, begin) : max(0, end)] += added_by(fixture, importance)
    return weights


def _ordinary_weight(day: date, importance: Importance) -> float:
    """Weigh a day without its fixtures.

    Args:
        day: the day.
        importance: what the club tells.

    Returns:
        Its weight in ordinary days, 0 or more: its weekday's, times those of all periods that it lies in.
    """
    weight = importance.weekdays.get(day.weekday(), 1.0)
    for period in importance.periods:
        if period.span.holds(day):
            weight *= period.times
    return weight


def added_by(fixture: Fixture, importance: Importance) -> float:
    """Tell what a fixture adds to each of its days.

    Args:
        fixture: the fixture.
        importance: what the club tells.

    Returns:
        Ordinary days, 0 or more; the largest of those names that it has, else what its sort adds.
    """
    own = [named.adds for named in importance.named if named_of(fixture, named)]
    if own:
        return max(own)
    if fixture.is_for_visitors and importance.visitors is not None:
        return importance.visitors
    return importance.fixtures


def named_of(fixture: Fixture, named: NamedFixtures) -> bool:
    """Tell whether a fixture is meant by words.

    Args:
        fixture: the fixture.
        named: the words.

    Returns:
        True where they are its id or that of its series, or stand in its name; large and small letters are the same.
    """
    words = named.words.casefold()
    return words in fixture.name.casefold() or words in (fixture.id.casefold(), fixture.series.casefold())
