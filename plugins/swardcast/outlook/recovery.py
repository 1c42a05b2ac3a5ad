"""When a surface is healed: the dates that follow from what is believed of it and the weather of one view."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.believed import Believed
from swardcast.outlook.sightings import Healing
from swardcast.outlook.states import DateRange, Milestone, Recovery, date_range
from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.weather_view import SlowDays, WeatherView
from swardcast.records.club import Grass
from swardcast.records.translate import SurfaceSums
from swardcast.turf.healing import HOLES_CLOSED, growth_at_pace
from swardcast.turf.milestones import Disruption, MilestoneDays

__all__ = ["Dated", "Samples", "recovery_of", "work_out"]

Question = tuple[date, Grass, Disruption, SlowDays]
"""Day 0, the grass, what has to heal and what held growth back."""

_WEEK: Final = 7
_WEEKS_SHOWN: Final = 8


def recovery_of(sums: SurfaceSums, seen: Believed, view: WeatherView) -> Recovery:
    """Date how a surface heals.

    Args:
        sums: what the work does to it.
        seen: what is believed.
        view: the weather as known.

    Returns:
        The recovery.
    """
    left, healing = seen.left, seen.left.healing
    work_out(view, [seen])
    dated, disruption = view.dated[seen], seen.disruption
    return Recovery(
        start=healing.start,
        sums=sums,
        before=seen.left_before,
        layers=healing.layers,
        day_zero=seen.day_zero,
        usual=left.usual,
        prior=left.disruption.pace,
        pace=disruption.pace,
        lessons=left.lessons,
        rim_growth_days=disruption.rim_growth_days,
        lag_days=healing.lag_days,
        growth_so_far=_gained(healing, view) if healing.start <= view.today else None,
        weeks_ahead=dated.weeks_ahead,
        closes_on=dated.closes_on,
        samples=dated.samples,
        ranges=dated.ranges,
        looks=seen.looks,
        held_back=left.held_back,
        pace_rests_on=seen.pace_rests_on,
    )


class Samples(Mapping[Milestone, NDArray[np.float64]]):
    """Days from day 0 to each milestone: they are many, so whoever keeps them keeps the question alone.

    Args:
        today: the first day not over, in the view of the weather that answers it.
        issued_at: when that view's forecast was issued, or None.
        question: day 0, the grass, what has to heal and what held growth back.
        answer: gives the days when somebody asks.
    """

    __slots__ = ("_answer", "_days", "issued_at", "question", "today")

    def __init__(
        self, today: date, issued_at: datetime | None, question: Question, answer: Callable[[], MilestoneDays]
    ) -> None:
        self.today = today
        self.issued_at = issued_at
        self.question = question
        self._answer = answer
        self._days: dict[Milestone, NDArray[np.float64]] = {}

    @classmethod
    def from_book(cls, today: date, issued_at: datetime | None, question: Question, book: WeatherBook) -> Samples:
        """Make those of a question that was answered before."""

        def answer() -> MilestoneDays:
            view = book.of(today, issued_at)
            if view is None:
                message = f"no weather of {today} is known, which was asked before"
                raise LookupError(message)
            return _days_of(question, view)

        return cls(today, issued_at, question, answer)

    def forget(self, book: WeatherBook) -> None:
        """Let go of the days; they are worked out again if somebody asks."""
        other = Samples.from_book(self.today, self.issued_at, self.question, book)
        self._answer, self._days = other._answer, {}

    def __getitem__(self, milestone: Milestone) -> NDArray[np.float64]:
        """Give the days to a milestone, shape (members, errors)."""
        if not self._days:
            days = self._answer()
            self._days = {
                Milestone.SETTLED: days.settled,
                Milestone.HOLES_CLOSED: days.holes_closed,
                Milestone.BACK_TO_NORMAL: days.back_to_normal,
            }
        return self._days[milestone]

    def __iter__(self) -> Iterator[Milestone]:
        """Name the milestones of healing."""
        return iter((Milestone.SETTLED, Milestone.HOLES_CLOSED, Milestone.BACK_TO_NORMAL))

    def __len__(self) -> int:
        """Count them."""
        return 3


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Dated:
    """What follows from day 0, the grass, the disruption and the weather of one view."""

    samples: Samples
    ranges: Mapping[Milestone, DateRange]
    weeks_ahead: tuple[float, ...]
    closes_on: date | None


def work_out(view: WeatherView, asked: Iterable[Believed]) -> None:
    """Work out dates before they are wanted: those of one day and grass together, which is much faster.

    Args:
        view: the weather as known, which remembers them.
        asked: how surfaces heal; what is alike in all that dates hang on is worked out once.
    """
    alike: dict[tuple[date, Grass, SlowDays], dict[Disruption, list[Believed]]] = {}
    for seen in asked:
        if seen not in view.dated:
            healing = seen.left.healing
            cases = alike.setdefault((healing.start, healing.grass, healing.slow), {})
            cases.setdefault(seen.disruption, []).append(seen)
    for (start, grass, slow), cases in alike.items():
        found = view.milestones_of_each(start, grass, tuple(cases), slow)
        for (disruption, those), days in zip(cases.items(), found, strict=True):
            dated = _dates_of(days, those[0].left.healing, disruption, view)
            view.dated.update(dict.fromkeys(those, dated))


def _dates_of(days: MilestoneDays, healing: Healing, disruption: Disruption, view: WeatherView) -> Dated:
    question = (healing.start, healing.grass, disruption, healing.slow)
    samples = Samples(view.today, view.issued_at, question, lambda: days)
    ranges = {name: date_range(values, healing.start) for name, values in samples.items()}
    if ranges[Milestone.BACK_TO_NORMAL].is_past(view.today):  # then hardly anybody asks for the days any more
        samples = Samples(view.today, view.issued_at, question, lambda: _days_of(question, view))
    need = growth_at_pace(disruption.layers, HOLES_CLOSED, disruption.pace.middle, disruption.rim_growth_days)
    return Dated(
        samples=samples,
        ranges=ranges,
        weeks_ahead=_weeks_ahead(healing, view),
        closes_on=_closes_on(healing, view, need),
    )


def _days_of(question: Question, view: WeatherView) -> MilestoneDays:
    start, grass, disruption, slow = question
    return view.milestones_of_each(start, grass, (disruption,), slow)[0]


def _gained(healing: Healing, view: WeatherView) -> float:
    return view.growth_between(healing.start, view.today, healing.grass, healing.slow)


def _weeks_ahead(healing: Healing, view: WeatherView) -> tuple[float, ...]:
    sums = view.growth_sums(healing.start, healing.grass, healing.slow)
    first = max(0, (view.today - healing.start).days)
    marks = sums[[min(first + week * _WEEK, len(sums) - 1) for week in range(_WEEKS_SHOWN + 1)]]
    return tuple(np.diff(marks).tolist())


def _closes_on(healing: Healing, view: WeatherView, need: float) -> date | None:
    sums = view.growth_sums(healing.start, healing.grass, healing.slow)
    reached = int(np.searchsorted(sums, need - 1e-9))
    return healing.start + timedelta(days=reached) if reached < len(sums) else None
