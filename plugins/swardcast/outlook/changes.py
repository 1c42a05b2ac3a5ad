"""What members should hear of: decided from two bulletins, the one that stands and the one that would replace it.

Worth telling is: work on a surface came into another state; the day of the work changed or is not known any more; the
work was called off; the date of back to normal moved by two days or more, or a fixture changed sides, or the date no
longer goes with those told beside it; the day on which some surfaces open again, or are finished, moved by two working
days; the manager's word took the place of the sum; an entry was withdrawn or replaced; the manager wrote a note.
Whatever is less changes the page and makes no noise, and the date that was told stays as it was told. An end that is
only computed is told once, when all of the job should be over: nobody saw it on one surface.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from swardcast.outlook.moved_surfaces import MovedSurfaces, moved_surfaces
from swardcast.outlook.moves import crossed, matters
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, SurfaceWork, Work
from swardcast.records.fixtures import Fixture
from swardcast.records.plan import Play

__all__ = ["News", "Told", "became", "changed_play", "is_only_computed", "news_between"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Told:
    """What a bulletin tells of a job.

    Args:
        outlook: how the job stands.
        back_to_normal: the date that the bulletin gives; of one that is not out yet, what the sum says.
        withdrawn: ids of the job's entries that corrections have withdrawn.
        notes: ids of the manager's notes on the job.
        told_on: the day on which that date was first told, or None.
    """

    outlook: JobOutlook
    back_to_normal: DateRange
    withdrawn: frozenset[str] = frozenset()
    notes: frozenset[str] = frozenset()
    told_on: date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class News:
    """What of a bulletin members should hear of; empty in all parts for an announcement.

    Args:
        became: surfaces that came into each state of work.
        back_to_normal: the date to be told from now on.
        before: the date told before, where it moved, or None.
        before_told_on: the day on which that date was first told, or None.
        rescheduled: whether the first day of the work changed, or whether there is one.
        confirmed: whether the manager's word on the end takes the place of the sum.
        withdrawn: ids of entries withdrawn since.
        notes: ids of notes written since.
        crossed: coming fixtures that the date has crossed, so that they lie on its other side now.
        moved: surfaces whose own day moved: when they open again, or when the work there is finished.
    """

    became: Mapping[Work, tuple[str, ...]]
    back_to_normal: DateRange
    before: DateRange | None = None
    before_told_on: date | None = None
    rescheduled: bool = False
    confirmed: bool = False
    withdrawn: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    crossed: tuple[Fixture, ...] = ()
    moved: tuple[MovedSurfaces, ...] = ()

    @property
    def is_of_surfaces_alone(self) -> bool:
        """Whether nothing is new but the day of some surfaces."""
        others = (self.became, self.before, self.rescheduled, self.confirmed, self.withdrawn, self.notes)
        return bool(self.moved) and not any(others)


def news_between(
    before: Told | None,
    after: Told,
    today: date,
    coming: Sequence[Fixture] = (),
    weekdays: Sequence[int] = tuple(range(7)),
) -> News | None:
    """Decide what members should hear of when one bulletin takes the place of another.

    Args:
        before: what was last told of the job, or None when it is announced.
        after: the job as it stands now.
        today: the day, in the club's local time.
        coming: fixtures that are not over.
        weekdays: weekdays on which work is done, 0 for Monday.

    Returns:
        What to tell, or None when nothing is worth telling.
    """
    new_states = became(before.outlook if before else None, after.outlook)
    now = after.back_to_normal
    if before is None:
        return News(became=new_states, back_to_normal=now)
    is_over = after.outlook.work is Work.BACK_TO_NORMAL
    said_normal = is_over and now.is_fact
    clashes = _comes_too_soon(before.back_to_normal, after.outlook)
    moved = not is_over and (
        clashes or matters(before.back_to_normal, now, today, coming)
    )  # an end is no move of a date
    rescheduled = _day_told(before.outlook) != _day_told(after.outlook)
    confirmed = said_normal and not before.back_to_normal.is_fact
    withdrawn = tuple(sorted(after.withdrawn - before.withdrawn))
    notes = tuple(sorted(after.notes - before.notes))
    of_surfaces: tuple[MovedSurfaces, ...] = ()
    if not rescheduled and not is_over:
        became_other = {name for names in new_states.values() for name in names}
        of_surfaces = moved_surfaces(before.outlook, after.outlook, today, became_other, weekdays)
    if not (new_states or moved or rescheduled or confirmed or withdrawn or notes or of_surfaces):
        return None
    return News(
        became=new_states,
        back_to_normal=now
        if moved or is_over or rescheduled
        else replace(before.back_to_normal, rests_on=now.rests_on),
        before=before.back_to_normal if moved else None,
        before_told_on=before.told_on if moved else None,
        rescheduled=rescheduled,
        confirmed=confirmed,
        withdrawn=withdrawn,
        notes=notes,
        crossed=crossed(before.back_to_normal, now, coming) if moved else (),
        moved=of_surfaces,
    )


def _day_told(outlook: JobOutlook) -> date | None:
    return None if outlook.is_put_off else outlook.starts


def _comes_too_soon(published: DateRange, outlook: JobOutlook) -> bool:
    """Whether a date told in months no longer goes with that of the holes, which close before all is back to normal.

    A date told in days never falls behind so far: it moves with the second day.
    """
    closed, now = outlook.dates[Milestone.HOLES_CLOSED], outlook.dates[Milestone.BACK_TO_NORMAL]
    if not (published.is_wide and closed.is_given and now.is_given) or now.is_fact:
        return False
    return any(told < told_beside for told, told_beside in zip(published.months, closed.months, strict=True))


def became(before: JobOutlook | None, now: JobOutlook) -> dict[Work, tuple[str, ...]]:
    """Find the surfaces on which the work came into another state.

    Args:
        before: how the job stood, or None when it was not announced: then all of it was planned.
        now: how it stands.

    Returns:
        Ids of surfaces by their new state; what is back to normal by the sum alone counts as healing until all of the
        job is over.
    """
    old = {work.surface.id: _told_as(work, before) for work in before.surfaces} if before else {}
    found: dict[Work, list[str]] = {}
    for work in now.surfaces:
        state = _told_as(work, now)
        if state is not old.get(work.surface.id, Work.PLANNED):
            found.setdefault(state, []).append(work.surface.id)
    return {state: tuple(names) for state, names in found.items()}


def _told_as(work: SurfaceWork, job: JobOutlook) -> Work:
    return Work.HEALING if is_only_computed(work) and job.work is not Work.BACK_TO_NORMAL else work.work


def is_only_computed(work: SurfaceWork) -> bool:
    """Tell whether the end of the work on a surface is computed, and no entry says so.

    Args:
        work: the job on the surface.

    Returns:
        Whether it is; no where the work is not over.
    """
    return work.work is Work.BACK_TO_NORMAL and not work.dates[Milestone.BACK_TO_NORMAL].is_fact


def changed_play(before: Mapping[str, Play], after: Mapping[str, Play]) -> dict[str, Play]:
    """Decide which play members should hear of when one bulletin takes the place of another.

    Args:
        before: play on each surface as last told.
        after: play as told now.

    Returns:
        The surfaces on which it became another; what nobody knows is no news.
    """
    return {name: play for name, play in after.items() if play is not before.get(name) and play is not Play.NOT_KNOWN}
