"""The part "The Rules": only what the Committee adopted is in force; a few facts of the Rules of Golf hold anyway.

Facts after the Rules of Golf (The R&A and USGA, 2019, as changed in 2023); each phrase names its rule. The greenkeeper
cannot adopt a Local Rule, and nothing here infers one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from typing import Final

from swardcast.language.voice import slug_of
from swardcast.notices.limits import end_of_limit
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Section, Sentence
from swardcast.notices.spans import last_day_of_work
from swardcast.notices.words import as_clause
from swardcast.outlook.limits import LimitInForce
from swardcast.outlook.states import DateRange, NoDate
from swardcast.records.club import SurfaceKind, Tone
from swardcast.records.plan import LocalRule, Part, Play

__all__ = ["the_rules"]

_FACTS: Final[dict[str, tuple[str, ...]]] = {
    "hollow-tining": ("aeration-holes", "plugs"),
    "solid-tining": ("aeration-holes",),
    "needle-tining": ("aeration-holes",),
    "deep-tining": ("aeration-holes",),
    "drainage-trenching": ("maintenance-holes",),
    "bunker-drainage": ("maintenance-holes",),
    "irrigation-work": ("maintenance-holes",),
    "fraise-mowing": ("worn-ground",),
    "seeding-bare-ground": ("worn-ground",),
    "tree-work": ("piles",),
}
"""Facts of the Rules that a kind of work raises on any surface, by the names of their phrases."""

_FACTS_ON_GREENS: Final[dict[str, tuple[str, ...]]] = {
    "hollow-tining": ("no-repair-on-green",),
    "solid-tining": ("no-repair-on-green",),
    "scarifying": ("no-repair-on-green",),
    "verticutting": ("no-repair-on-green",),
    "topdressing": ("sand-on-green",),
    "re-turfing": ("repair-on-green",),
}
_MOST_FACTS: Final = 3  # more would bury what is in force: judgement
_ALWAYS_A_LOCAL_RULE: Final = "preferred lies"  # also where the entry does not give its number: Model Local Rule E-3
_RULES_KNOWN_FOR: Final = timedelta(days=7)
"""How long after the last entry the records still tell which Local Rules hold: judgement. A log that is kept has an
entry a week, and Committees adopt preferred lies for days or weeks."""
_EXPLAINED: Final = ("D-2", "D-3", "E-3", "E-4", "E-8", "F-1")


def the_rules(matter: Matter) -> Section:
    """Say which Local Rules are in force for the work, or that none is, and facts of the Rules that it raises.

    Args:
        matter: what the notice is made of.

    Returns:
        The part.
    """
    adopted = [paragraph for rule in matter.job.local_rules for paragraph in _in_force(rule, matter) if paragraph]
    course_rules = [*_on_the_course(matter)]
    on_course = [tuple(_limit(held, matter)) for held in course_rules if held.limit.rule]
    none = () if adopted else (_none(matter, course_rules),)
    if not none and matter.on_temporary_greens and not any(rule.rule == "D-2" for rule in matter.job.local_rules):
        none = (matter.say("rules-none-temporary-green"),)
    ask = (matter.say("rules-ask-first"),) if none and _shuts_a_place(matter) and not _silent_since(matter) else ()
    end = (matter.say("rules-full-text"),) if adopted or on_course else ()
    scores = matter.job.scores or matter.records.club.scores
    own = (Sentence(text=scores, source=matter.in_plan if matter.job.scores else "club.yaml"),) if scores else ()
    heading = (matter.say("rules-handicap-own"), *own) if own else ()
    paragraphs = ((*none, *ask), *adopted, *on_course, (*end, matter.say("rules-committee")), heading)
    return Section(
        part=Part.THE_RULES,
        heading=matter.voice.name("part", Part.THE_RULES),
        paragraphs=tuple(paragraph for paragraph in paragraphs if paragraph),
        points=tuple(_facts(matter)) if matter.records.club.tone is Tone.FULL else (),
    )


def _none(matter: Matter, course_rules: Sequence[LimitInForce]) -> Sentence:
    """What to say where the Committee adopted nothing for the work; "as it lies" would be wrong on a replaced green."""
    if matter.job.while_working is Play.TEMPORARY_GREEN or matter.on_temporary_greens:
        return matter.say("rules-none-temporary-green")
    if course_rules:
        is_said = all(held.limit.rule for held in course_rules)
        return matter.say("rules-none-of-its-own.said" if is_said else "rules-none-of-its-own")
    silent = _silent_since(matter)
    return matter.say("rules-none-known", day=matter.voice.day(silent)) if silent else matter.say("rules-none")


def _silent_since(matter: Matter) -> date | None:
    """The day of the last entry, where it is too old to tell by the records which Local Rules hold.

    A club that has no log at all adopts in its plan alone, and the plan is known.
    """
    if not matter.records.entries or matter.as_of - (last := matter.records.entries[-1].head.at) <= _RULES_KNOWN_FOR:
        return None
    return last.astimezone(matter.records.club.time_zone).date()


def _shuts_a_place(matter: Matter) -> bool:
    """Whether players can come upon a bunker, tee or fairway that is closed for the work."""
    is_green = all(work.surface.kind is SurfaceKind.GREEN for work in matter.outlook.surfaces)
    return matter.job.while_working is Play.CLOSED and not is_green


def _on_the_course(matter: Matter) -> Iterator[LimitInForce]:
    """Local Rules for the whole course that hold while players meet the work; "as it lies" would then be wrong."""
    for held in matter.limits:
        is_rule = held.limit.rule or held.limit.name == _ALWAYS_A_LOCAL_RULE
        if is_rule and held.limit.until.date() >= matter.outlook.starts:
            yield held


def _in_force(rule: LocalRule, matter: Matter) -> tuple[tuple[Sentence, ...], ...]:
    adopted = tuple(_adopted(rule, matter))
    return (adopted, tuple(_ends_early(rule, matter))) if adopted else ()


def _adopted(rule: LocalRule, matter: Matter) -> Iterator[Sentence]:
    """A Local Rule as typed: nothing of it once its last day is over."""
    near, voice = matter.voice.near, matter.voice
    if rule.until is not None and rule.until < near:
        return
    slots = {"number": rule.rule, "by": as_clause(rule.decided_by)}
    if rule.starts:
        slots["from"] = voice.day(rule.starts)
    if rule.until:
        slots["until"] = voice.day(rule.until)
    match (rule.starts is not None, rule.until is not None):
        case (True, True):
            yield matter.say("rules-in-force.from-until", source=matter.in_plan, **slots)
        case (True, False):
            yield matter.say("rules-in-force.from", source=matter.in_plan, **slots)
        case (False, True):
            yield matter.say("rules-in-force.until", source=matter.in_plan, **slots)
        case _:
            yield matter.say("rules-in-force.no-dates", source=matter.in_plan, **slots)
    if rule.says:
        yield matter.say("rules-in-force.says", source=matter.in_plan, says=rule.says)
    elif rule.rule in _EXPLAINED:
        yield matter.say(f"rules-about-{rule.rule}")


def _ends_early(rule: LocalRule, matter: Matter) -> Iterator[Sentence]:
    """That a rule ends before the work is, or is likely to be, over: who plays after it must not count on relief."""
    normal = matter.published
    if rule.until is None or matter.has_no_day:
        return
    slots = {"day": matter.voice.day(rule.until), "by": as_clause(rule.decided_by)}
    finished = last_day_of_work(matter.outlook)
    if finished is not None and not finished.is_fact and finished.likely is not None and rule.until < finished.likely:
        yield matter.say("rules-ends-before-work", source=matter.in_plan, **slots)
    elif _is_before(rule.until, normal):
        yield matter.say("rules-ends-before-normal", source=matter.in_plan, **slots)


def _is_before(day: date, normal: DateRange) -> bool:
    """Whether a day comes before back to normal is expected, also where this season does not bring it."""
    if normal.likely is None:
        return normal.no_date is NoDate.NOT_THIS_SEASON
    return day < normal.likely


def _limit(held: LimitInForce, matter: Matter) -> Iterator[Sentence]:
    limit = held.limit
    slots = {"by": as_clause(limit.decided_by), "until": end_of_limit(held, matter.voice)}
    yield matter.say("rules-on-the-course", source=held.source, number=limit.rule, **slots)
    if limit.what:
        yield matter.say("rules-it-says", source=held.source, what=as_clause(limit.what))
    elif limit.rule in _EXPLAINED:
        yield matter.say(f"rules-about-{limit.rule}")


def _facts(matter: Matter) -> list[Sentence]:
    slugs = [slug_of(kind) for kind in matter.kinds]
    names = [name for slug in slugs for name in _FACTS.get(slug, ())]
    if matter.surface == "green":
        names += [name for slug in slugs for name in _FACTS_ON_GREENS.get(slug, ())]
    return [matter.say(f"rules-fact-{name}") for name in list(dict.fromkeys(names))[:_MOST_FACTS]]
