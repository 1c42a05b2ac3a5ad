"""Mornings on which nothing of a job that heals can be worth telling, seen without dating anything.

On most mornings only the weather is new, and it moves a date by less than members should hear of (`moves`). Whether it
does is a matter of counting: of the equally likely cases, how many are back to normal a day before and a day after the
date that was told. Whatever is not certain is left to the whole sum.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.changes import is_only_computed
from swardcast.outlook.jobs import JobAssessor
from swardcast.outlook.memory import Memory
from swardcast.outlook.moves import MOVE_THAT_MATTERS_DAYS
from swardcast.outlook.recovery import Question, Samples
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, SurfaceWork, Work
from swardcast.outlook.weather_view import WeatherView
from swardcast.records.fixtures import Fixture
from swardcast.turf.ensemble import HORIZON_DAYS
from swardcast.turf.milestones import ALLOW_UNTIL, LIKELY, cases_at, normal_by

__all__ = ["QuietMornings"]

_LESS = timedelta(days=MOVE_THAT_MATTERS_DAYS - 1)
_DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Asked:
    """Days by which enough cases must be back to normal, and others by which not enough may be.

    Args:
        over: yesterday: by then what is over is over, and what heals is not.
        likely_by: the last day on which the likely date may lie; one later would be news.
        not_likely_by: the day before the first one.
        until_by: the last day on which "allow until" may lie.
        not_until_by: the day before the first one.
    """

    over: date
    likely_by: date
    not_likely_by: date
    until_by: date
    not_until_by: date

    @property
    def days(self) -> tuple[date, ...]:
        """All of them, in this order."""
        return self.over, self.likely_by, self.not_likely_by, self.until_by, self.not_until_by


@dataclass(slots=True, eq=False)
class QuietMornings:
    """Tells quiet mornings after a moment at which a job was assessed.

    Args:
        memory: what was worked out of the records.
        heard: how the job stood at that moment.
        at: the moment.
    """

    memory: Memory
    heard: JobOutlook
    at: datetime
    _is_steady: bool = field(init=False)
    _known: JobAssessor | None = None
    _told: object = None

    def __post_init__(self) -> None:
        self._is_steady = _is_steady(self.heard)

    def is_quiet(self, at: datetime, published: DateRange, coming: Sequence[Fixture]) -> bool:
        """Tell whether nothing can be worth telling on a morning.

        Assumes that no entry of the job itself became known since.

        Args:
            at: the morning, aware.
            published: the date for back to normal that was told.
            coming: fixtures that are not over.

        Returns:
            Whether it is certain; if so, nothing but the weather is new, and `published` stands.
        """
        if not self._is_steady:
            return False
        now = self._assessor(at)
        if now.view is None or not self._is_known_still(now):
            return False
        yesterday, heals = now.as_of.date() - _DAY, _sampled(self.heard.surfaces)
        if not heals:
            return not _has_passed(self.heard.surfaces, self.at.astimezone(now.as_of.tzinfo).date(), yesterday)
        if not published.is_given or published.is_wide:
            return False
        likely, until = published.likely, published.allow_until
        if likely is None or until is None:
            return False
        first_days = {one.first_day for one in coming}
        asked = _Asked(
            over=yesterday,
            likely_by=likely if likely in first_days else likely + _LESS,
            not_likely_by=likely - _DAY if likely - _DAY in first_days else likely - _LESS - _DAY,
            until_by=until + _LESS,
            not_until_by=until - _LESS - _DAY,
        )
        return _stands(heals, now.view, asked)

    @staticmethod
    def latest_likely(published: DateRange) -> date:
        """Give the latest day on which the likely date may lie on a quiet morning."""
        return (published.likely or date.min) + _LESS

    def _assessor(self, at: datetime) -> JobAssessor:
        return self.memory.assessor(self.heard.job.id, at, at)

    def _is_known_still(self, now: JobAssessor) -> bool:
        """Whether all that is known and believed of the work was so before."""
        name = self.heard.job.id
        if self._known is None:
            self._known = self._assessor(self.at)
            own = self._known.known.facts_of(name)
            self._is_steady = own is not None and own.is_done_before(self._known.as_of.date())
        before = self._known
        if not self._is_steady or before.view is None or now.view is None:
            return False
        if now.known is not before.known or now.course != before.course or now.view.gone is not before.view.gone:
            if self._told is None:
                self._told = _told(self._assessor(self.at), name)
            if _told(now, name) != self._told:
                return False
            self._known = now
        return True


def _told(assessor: JobAssessor, name: str) -> object:
    """All that is known and believed of a job."""
    own = assessor.known.facts_of(name)
    turns = assessor.turns(0, own) if own is not None else ()
    return own, {turn.name: turn.when for turn in turns}, assessor.believed_of(name)


def _is_steady(heard: JobOutlook) -> bool:
    """Whether all the work is done, and nothing moves its dates but, at most, growth alone."""
    if heard.work is not Work.HEALING or heard.unreported is not None or heard.is_put_off or heard.job.lasts:
        return False
    if any(work.done_at is None for work in heard.surfaces):
        return False
    heals, open_ones = _sampled(heard.surfaces), _not_said(heard.surfaces)
    return not heals or (len(heals) == len(open_ones) and heard.job.reopens_after is None)


def _not_said(works: Iterable[SurfaceWork]) -> list[SurfaceWork]:
    return [work for work in works if not work.dates[Milestone.BACK_TO_NORMAL].is_fact]


def _sampled(works: Iterable[SurfaceWork]) -> list[SurfaceWork]:
    """Those whose end is computed from the weather, and not said."""
    return [work for work in _not_said(works) if work.recovery is not None and work.job.normal_after is None]


def _has_passed(works: Iterable[SurfaceWork], since: date, yesterday: date) -> bool:
    """Whether a day passed that dates of these allow for, so that their state may be another."""
    ends = (work.dates[milestone].allow_until for work in works for milestone in Milestone)
    return any(end is not None and since <= end <= yesterday for end in ends)


def _stands(works: Iterable[SurfaceWork], view: WeatherView, asked: _Asked) -> bool:
    """Whether each surface is in its state still, and the date of the last of them where it may be."""
    questions: dict[tuple[int, bool], Question] = {}
    for work in works:
        samples = work.recovery.samples if work.recovery is not None else None
        if not isinstance(samples, Samples):
            return False
        questions[id(samples), is_only_computed(work)] = samples.question  # alike, one may be opened and one not
    last: NDArray[np.bool_] | None = None
    for (_, is_over), question in questions.items():
        normal, is_sure = _normal_by(question, view, asked.days)
        if not is_sure or (int(normal[..., 0].sum()) >= cases_at(ALLOW_UNTIL, normal[..., 0].size)) is not is_over:
            return False
        if not is_over:
            last = normal if last is None else last & normal
    if last is None:
        return False
    _, likely_by, not_likely_by, until_by, not_until_by = last.sum(axis=(0, 1)).tolist()
    likely, until = (cases_at(share, last[..., 0].size) for share in (LIKELY, ALLOW_UNTIL))
    return bool(likely_by >= likely > not_likely_by and until_by >= until > not_until_by)


def _normal_by(question: Question, view: WeatherView, days: Sequence[date]) -> tuple[NDArray[np.bool_], bool]:
    start, grass, disruption, slow = question
    asked = np.array([(day - start).days for day in days])
    longest = min(HORIZON_DAYS, max(1, int(asked.max())))
    return normal_by(view.growth_from(start, grass, longest, slow), disruption, asked)
