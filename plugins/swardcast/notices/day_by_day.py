"""The part "Day by day": the day, the days after, by then; with the dates of the milestones."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from typing import Final

from swardcast.language.voice import capital, slug_of
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.ends import End, end_of, published_in_words, unopened
from swardcast.notices.fixtures import fixtures_section
from swardcast.notices.held_up import hope_to_go_on
from swardcast.notices.hole_marks import WORST_FIRST
from swardcast.notices.hours import Ending, reopening_facts, reopening_in_words
from swardcast.notices.kinds import closed_row, said_of_kind
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Fact, Section
from swardcast.notices.play import other_markers, play_clause
from swardcast.notices.spans import last_day_of_work
from swardcast.notices.words import places_in_words
from swardcast.outlook.job_ranges import open_works
from swardcast.outlook.play import OPEN
from swardcast.outlook.states import Milestone, ReasonKind, SurfaceWork, Work
from swardcast.records.club import SurfaceKind
from swardcast.records.plan import Part, Play

__all__ = ["day_by_day", "with_fixtures"]

_DAYS_SHOWN: Final = 6  # rows of planned days that a reader still takes in: judgement


def day_by_day(matter: Matter) -> Section:
    """Tell how play is affected from the day of the work until it is over.

    Args:
        matter: what the notice is made of.

    Returns:
        The part.
    """
    over = matter.outlook.work is Work.BACK_TO_NORMAL
    return Section(
        part=Part.DAY_BY_DAY,
        heading=matter.voice.name("part", Part.DAY_BY_DAY),
        facts=tuple(_end(matter) if over else _rows(matter)),
    )


def with_fixtures(matter: Matter) -> Section | None:
    """Tell which fixtures the work touches, with their chances.

    Args:
        matter: what the notice is made of.

    Returns:
        A piece that belongs to "Day by day", or None where there is nothing to say.
    """
    if matter.stands_still:
        return None  # no date of it holds any more, and no chance
    section = fixtures_section(matter.outlook, matter.records.fixtures, matter.voice, matter.fixtures_crossed)
    if section is None:
        return None
    source = f"fixtures.ics; {matter.sum_of(Milestone.BACK_TO_NORMAL)}"
    return replace(section, facts=tuple(replace(fact, source=source) for fact in section.facts))


def _log_or_plan(matter: Matter) -> str:
    """The last entry on the work, or the plan where there is none."""
    kinds = (ReasonKind.STARTED, ReasonKind.HELD_UP, ReasonKind.DONE, ReasonKind.MOVED)
    sources = [reason.source for work in matter.outlook.surfaces for reason in work.reasons if reason.kind in kinds]
    return sources[-1] if sources else matter.in_plan


def _rows(matter: Matter) -> Iterator[Fact]:
    main, surface, voice = matter.kinds[0], matter.surface, matter.voice
    if any(work.done_at is None for work in matter.outlook.surfaces):
        if matter.outlook.unreported is None:  # else nobody knows whether anybody is at work
            day = said_of_kind(main, "day", surface, voice)
            yield Fact(name=voice.say("row-the-day"), value=day.text, source=day.source)
        yield from _done_so_far(matter)
        yield from _planned_days(matter)
    yield from _meanwhile(matter)
    if not matter.has_no_day:
        yield from _ends_of_work(matter)
    elif matter.is_over_with_the_work:
        yield from _end(matter)
    if not matter.is_past_its_end:
        week = said_of_kind(main, "week", surface, voice)
        after = "row-now" if matter.outlook.work is Work.HEALING else "row-days-after"
        yield Fact(name=voice.say(after), value=week.text, source=week.source)
    if not matter.has_no_day:
        yield from _dates_of_healing(matter)
    if not matter.is_over_with_the_work:
        yield from _end(matter)
    then = said_of_kind(main, "then", surface, voice)
    yield Fact(name=voice.say("row-by-then"), value=then.text, source=then.source)


def _played_now(matter: Matter) -> Iterator[Fact]:
    """How its surfaces play while a begun green is on a temporary one, in the words of the course status."""
    plays, clauses = matter.plays, []
    if not matter.on_temporary_greens or matter.stands_still:
        return
    for play in (play for play in WORST_FIRST if play is not Play.NOT_KNOWN):
        places = [work.surface for work in matter.outlook.surfaces if plays.get(work.surface.id) is play]
        clauses += [play_clause(play, places, matter.voice)] if places else []
    said = matter.voice.sentence(matter.voice.clauses(clauses))
    yield Fact(name=matter.voice.say("row-meanwhile"), value=said, source=_log_or_plan(matter))
    held = [
        reason
        for work in matter.outlook.surfaces
        for reason in work.reasons
        if reason.kind is ReasonKind.HELD_UP and reason.words
    ]
    if held:  # the short answer has no room for it beside the temporary green
        name = matter.voice.say("row-why-held-up")
        yield Fact(name=name, value=capital(held[-1].words), source=held[-1].source)


def _meanwhile(matter: Matter) -> Iterator[Fact]:
    """How the holes are played until all is open again: the club's own words, or of closed tees from where."""
    yield from _played_now(matter)
    job, works = matter.job, open_works(matter.outlook.surfaces)
    waiting = [work for work in works if work.done_at is None or not work.dates[Milestone.REOPENING].is_fact]
    if not waiting or job.while_working in OPEN or unopened(matter.outlook, matter.voice):
        return
    name = matter.voice.say("row-meanwhile")
    if job.meanwhile:
        yield Fact(name=name, value=capital(job.meanwhile), source=matter.in_plan)
    elif job.while_working is Play.CLOSED and (
        count := other_markers((work.surface for work in waiting), matter.holes_out_of_play)
    ):
        said = matter.say("meanwhile-other-markers", count=count)
        yield Fact(name=name, value=said.text, source=said.source)


def _ends_of_work(matter: Matter) -> Iterator[Fact]:
    voice = matter.voice
    reopening = reopening_facts(matter.outlook, matter.as_of, voice)
    yield from (replace(fact, source=_log_or_plan(matter)) for fact in reopening)
    open_ended = any(work.done_at is None and work.hours is None for work in matter.outlook.surfaces)
    last_day = last_day_of_work(matter.outlook)
    if matter.outlook.work is Work.HELD_UP or matter.outlook.unreported is not None:
        yield from _left_without_a_day(matter)
        return
    if last_day is not None and (not reopening or open_ended):
        finished = capital(range_in_words(last_day, voice))
        name = "row-the-work" if matter.is_of_one_day else "row-work-finished"
        yield Fact(name=voice.say(name), value=finished, source=_log_or_plan(matter))
    if end_of(matter.outlook) is End.OPEN and not reopening:
        yield from _end(matter)


def _left_without_a_day(matter: Matter) -> Iterator[Fact]:
    """When the surfaces without hours of their own will be finished, or were due to be, as the status page has it."""
    left = [work for work in matter.outlook.surfaces if work.done_at is None and work.hours is None]
    if not left or matter.job.reopens_after is not None:
        return
    voice, name = matter.voice, matter.voice.say("row-work-finished")
    if len(left) < len(matter.outlook.surfaces):
        places = places_in_words((work.surface for work in left), voice)
        name = voice.say("hours-work-finished-where", places=places)
    when = capital(reopening_in_words(left, matter.as_of, voice, ends=Ending.DONE))
    yield Fact(name=name, value=when, source=_log_or_plan(matter))


def _done_so_far(matter: Matter) -> Iterator[Fact]:
    done = [work.surface for work in matter.outlook.surfaces if work.done_at is not None]
    begun = [w for w in matter.outlook.surfaces if w.done_at is None and w.started_at is not None]
    going = [w.surface for w in begun if w.work is Work.UNDER_WAY]
    half = [w.surface for w in begun if w.work is Work.HELD_UP]
    if matter.outlook.unreported is not None:
        going, half = [], []  # nobody knows
    held = matter.outlook.work is Work.HELD_UP  # then no day of the plan tells the others
    left = [w.surface for w in matter.outlook.surfaces if held and w.done_at is None and w.started_at is None]
    rows = (
        ("row-done-so-far", done),
        ("row-half-done", half),
        ("row-going-on", going),
        ("row-still-to-do", left),
    )
    for phrase, surfaces in rows:
        if surfaces and len(surfaces) < len(matter.outlook.surfaces):
            places = capital(places_in_words(surfaces, matter.voice))
            yield Fact(name=matter.voice.say(phrase), value=places, source=_log_or_plan(matter), is_of_today=True)


def _planned_days(matter: Matter) -> Iterator[Fact]:
    """The surfaces of each coming day of work, where there is more than one day and nothing is computed to the hour."""
    if matter.stands_still or matter.outlook.work is Work.HELD_UP:
        if (hope := hope_to_go_on(matter.outlook, matter.voice)) and not matter.stands_still:
            name = matter.voice.say("row-when-it-goes-on")
            yield Fact(name=name, value=hope, source=_log_or_plan(matter))
        return  # no day can be told before work goes on
    days: dict[date, list[SurfaceWork]] = {}
    for work in matter.outlook.surfaces:
        day = work.dates[Milestone.REOPENING].likely
        if work.started_at is None and work.hours is None and day is not None:
            days.setdefault(day, []).append(work)
    if len(days) < 2 or matter.job.reopens_after is not None or min(days) < matter.voice.near:  # noqa: PLR2004 - one day
        return
    is_slow = matter.job.surfaces_a_day < 1  # then its work took the days before too
    phrase = "row-planned-finish" if is_slow else "row-planned-day"
    state = slug_of(matter.outlook.work)
    for day, works in sorted(days.items())[:_DAYS_SHOWN]:
        places = places_in_words((work.surface for work in works), matter.voice)
        value = matter.voice.say(phrase, places=places, state=state)
        is_today = day == matter.voice.near
        yield Fact(name=matter.voice.day(day), value=value, source=matter.in_plan, is_of_today=is_today)
    if len(days) > _DAYS_SHOWN:
        last = matter.voice.day(max(days))
        name = matter.voice.say("row-further-days")
        yield Fact(name=name, value=matter.voice.say("row-until", day=last, state=state), source=matter.in_plan)


def _dates_of_healing(matter: Matter) -> Iterator[Fact]:
    works = open_works(matter.outlook.surfaces)
    if all(work.recovery is None for work in works):
        return
    if all(work.surface.kind is SurfaceKind.GREEN for work in works):
        yield from _date(matter, "row-settled", Milestone.SETTLED)
    opened = any(work.recovery is not None and work.recovery.sums.openings for work in works)
    if opened or matter.outlook.dates[Milestone.HOLES_CLOSED] != matter.published:  # else back to normal says so
        yield from _date(matter, closed_row(matter.job), Milestone.HOLES_CLOSED)


def _end(matter: Matter) -> Iterator[Fact]:
    when = capital(published_in_words(matter.published, matter.outlook, matter.voice))
    yield Fact(name=end_of(matter.outlook).name_in(matter.voice), value=when, source=matter.published_by)


def _date(matter: Matter, phrase: str, milestone: Milestone) -> Iterator[Fact]:
    given = matter.outlook.dates[milestone]
    if given.is_given:
        value = capital(range_in_words(given, matter.voice))
        yield Fact(name=matter.voice.say(phrase), value=value, source=matter.sum_of(milestone))
