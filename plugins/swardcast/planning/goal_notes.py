"""What has to be said of the aims of a year, and of what the year has brought towards them."""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.language.measures import layer, length
from swardcast.language.voice import Voice
from swardcast.notices.words import percent
from swardcast.planning.compare import Comparison
from swardcast.planning.goals import goal_sand_mm
from swardcast.records.planning import Planning

__all__ = ["about_goals"]


def about_goals(comparison: Comparison, planning: Planning, voice: Voice) -> Iterator[str]:
    """Say what the club wants in a year, and how far the year has come.

    Args:
        comparison: the comparison.
        planning: the club's aims.
        voice: the language.

    Yields:
        Sentences; none where the club has no aim for these surfaces.
    """
    goal, done = planning.goal.of(comparison.surfaces), comparison.done
    aims, brought = [], []
    if goal.disturbed_fraction is not None:
        aims.append(voice.say("planning-goal-disturbed", share=_typed_share(goal.disturbed_fraction, voice)))
        share, part = percent(done.disturbed_fraction, voice), done.disturbed_fraction / goal.disturbed_fraction
        brought.append(voice.say("planning-done-disturbed", share=share, part=_part(part, voice)))
    if goal.removed_fraction is not None:
        aims.append(voice.say("planning-goal-removed", share=_typed_share(goal.removed_fraction, voice)))
        share, part = percent(done.removed_fraction, voice), done.removed_fraction / goal.removed_fraction
        brought.append(voice.say("planning-done-removed", share=share, part=_part(part, voice)))
    goal_mm = goal_sand_mm(goal, density_t_per_m3=comparison.density_t_per_m3)
    if goal_mm is not None:
        aims.append(voice.say("planning-goal-sand", layer=length(goal_mm, voice)))
        part = done.sand_mm / goal_mm
        brought.append(voice.say("planning-done-sand", layer=layer(done.sand_mm, voice), part=_part(part, voice)))
    if not aims:
        return
    yield voice.say("planning-goals", goals=voice.joined(aims))
    if any(row.days_a_year is not None for row in comparison.rows):
        yield voice.say("planning-days-a-year")
    if not done.jobs:
        yield voice.say("planning-nothing-done", year=str(done.year))
        return
    yield voice.say("planning-done", year=str(done.year), done=voice.joined(brought))
    if not done.is_whole:
        yield voice.say("planning-done-part")


def _typed_share(fraction: float, voice: Voice) -> str:
    return voice.say("percent", number=voice.figure(100 * fraction))


def _part(fraction: float, voice: Voice) -> str:
    return voice.say("percent", number=voice.number(100 * fraction))
