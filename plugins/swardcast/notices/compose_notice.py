"""A job's outlook and story -> a notice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, datetime
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.bulletins import last_change
from swardcast.notices.events import events_of
from swardcast.notices.fixtures import fixtures_section
from swardcast.notices.hours import reopening_facts
from swardcast.notices.kinds import KIND_PHRASES, cautions_for
from swardcast.notices.notice import Fact, Notice, Section
from swardcast.notices.numbers import facts_in_numbers
from swardcast.notices.reasons import reason_in_words
from swardcast.notices.words import places_in_words, published_in_words, range_in_words
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, ReasonKind, Work
from swardcast.outlook.story import JobStory
from swardcast.records.club import Surface, SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Kind, ProductUse
from swardcast.records.plan import Play

__all__ = ["compose_notice", "main_kind"]

# The kind that players notice most names the notice's category.
_MOST_NOTICED_FIRST: Final = (
    Kind.TEMPORARY_GREENS, Kind.HOLLOW_TINING, Kind.DEEP_TINING, Kind.SOLID_TINING, Kind.RETURFING,
    Kind.SEEDING_BARE_GROUND, Kind.BUNKER_LINER, Kind.BUNKER_DRAINAGE, Kind.BUNKER_SANDING, Kind.BUNKER_EDGING,
    Kind.DRAINAGE_TRENCHING, Kind.IRRIGATION_WORK, Kind.PATH_WORK, Kind.TREE_WORK, Kind.FRAISE_MOWING,
    Kind.SAND_INJECTION, Kind.SCARIFYING, Kind.NEEDLE_TINING, Kind.PLANT_PROTECTION, Kind.VERTICUTTING,
    Kind.TOPDRESSING, Kind.WINTER_PROTECTION, Kind.OVERSEEDING, Kind.CUTTING_HEIGHT, Kind.GRANULAR_FEED,
    Kind.LIQUID_FEED, Kind.WETTING_AGENT, Kind.BRUSHING_IN, Kind.ROLLING,
)  # fmt: skip
_NOTICED_SHOWN: Final = 4  # brushing and rolling after the rest would only tire the reader
_SAID_OF_PLAY: Final = {
    Play.CLOSED: "closed",
    Play.TEMPORARY_GREEN: "out of play, with a temporary green",
    Play.OPEN_WITH_CARE: "open with care",
    Play.OPEN: "open",
    Play.NOT_KNOWN: "perhaps closed",
}
_ABOUT_HOW_SURE: Final = {
    ReasonKind.NOT_VALIDATED,
    ReasonKind.SHORT_HISTORY,
    ReasonKind.HELD_BACK,
    ReasonKind.WEATHER_MISSING,
    ReasonKind.NOT_THIS_SEASON,
    ReasonKind.NO_HISTORY,
    ReasonKind.RULE_OF_THUMB,
}


def main_kind(kinds: Sequence[Kind]) -> Kind:
    """Name the kind of work that players notice most.

    Args:
        kinds: at least one.

    Returns:
        One of them.
    """
    return min(kinds, key=_MOST_NOTICED_FIRST.index)


def compose_notice(outlook: JobOutlook, story: JobStory, records: ClubRecords, as_of: datetime, voice: Voice) -> Notice:
    """Put one job into plain words.

    Args:
        outlook: how the job stands.
        story: its changes; the last one carries the published date.
        records: the club's records as known at the moment.
        as_of: the moment of the reader, local.
        voice: the language and the day of the reader.

    Returns:
        The notice.
    """
    job = outlook.job
    kinds = [operation.kind for operation in job.operations]
    zone = records.club.time_zone
    where = places_in_words((work.surface for work in outlook.surfaces), voice)
    return Notice(
        id=job.id,
        revision=story.changes[-1].revision,
        issued_at=story.changes[0].at.astimezone(zone),
        revised_at=story.changes[-1].at.astimezone(zone),
        headline=job.title,
        where=where,
        when=_when(outlook, voice),
        work=outlook.work.value,
        short_answer=_short_answer(outlook, story.published, where, voice),
        changed=last_change(story, records, voice),
        sections=tuple(_sections(outlook, story.published, records, kinds, as_of, voice)),
        events=events_of(story, records, voice),
        category=main_kind(kinds).value,
        tags=tuple(kind.plural for kind in SurfaceKind if any(w.surface.kind is kind for w in outlook.surfaces)),
    )


def _when(outlook: JobOutlook, voice: Voice) -> str:
    if outlook.work is Work.CALLED_OFF:
        return "called off"
    last = _work_finished(outlook)
    starts = _first_day(outlook)
    if outlook.work is Work.PLANNED:
        if starts < voice.near:
            return f"was planned from {voice.day(starts)}; not started yet"
        return _days_from_to(starts, last.likely, voice, "planned ")
    if any(work.done_at is None for work in outlook.surfaces):
        return f"from {voice.day(starts)}; work still to do"
    return _days_from_to(starts, last.likely, voice, "")


def _days_from_to(first: date, last: date | None, voice: Voice, word: str) -> str:
    if last is None or last <= first:
        return f"{word}on {voice.day(first)}"
    return f"{word}from {voice.day(first)} to {voice.day(last)}"


def _first_day(outlook: JobOutlook) -> date:
    return min(
        (work.started_at.date() for work in outlook.surfaces if work.started_at is not None), default=outlook.starts
    )


def _work_finished(outlook: JobOutlook) -> DateRange:
    days = [work.done_at.date() for work in outlook.surfaces if work.done_at is not None]
    if len(days) < len(outlook.surfaces) and outlook.job.reopens_after is None:
        return outlook.dates[Milestone.REOPENING]  # the follow-up work is done on the same day, or the next morning
    return DateRange.known(max(days)) if days else DateRange.known(outlook.starts)


def _short_answer(outlook: JobOutlook, published: DateRange, where: str, voice: Voice) -> str:
    job, places = outlook.job, capital(where)
    while_working = _SAID_OF_PLAY[job.while_working]
    normal = f"Back to normal: {published_in_words(published, outlook.work, voice)}."
    plural = "is" if len(outlook.surfaces) == 1 else "are"
    match outlook.work:
        case Work.CALLED_OFF:
            because = f": {outlook.changed_because}" if outlook.changed_because else ""
            return f"This work is called off{because}. Nothing changes for play."
        case Work.PLANNED:
            starts = voice.day(outlook.starts)
            if outlook.starts < voice.near:
                return f"This work was planned from {starts}. No entry says that it has started. {normal}"
            return f"Work starts on {starts}. Each surface is {while_working} while we work on it. {normal}"
        case Work.UNDER_WAY:
            return f"Work is going on. Each surface is {while_working} while we work on it. {normal}"
        case Work.HELD_UP:
            return f"Work is held up{_held_because(outlook, voice)}. {normal}"
        case Work.HEALING:
            return f"{_while_healing(outlook, where, plural, voice)} {normal}"
        case Work.BACK_TO_NORMAL:
            if published.is_fact:
                since = range_in_words(published, voice).removeprefix("on ")
                return f"{places} {'has' if plural == 'is' else 'have'} been back to normal since {since}."
            return f"{places}: the work is over and should be back to normal."


def _held_because(outlook: JobOutlook, voice: Voice) -> str:
    words = [reason.words for work in outlook.surfaces for reason in work.reasons if reason.kind is ReasonKind.HELD_UP]
    return f": {words[-1]}" if words else ""


def _while_healing(outlook: JobOutlook, where: str, plural: str, voice: Voice) -> str:
    nothing_heals = outlook.job.normal_after is None and not any(
        w.sums.layers and w.surface.grass for w in outlook.surfaces
    )
    if outlook.job.reopens_after is not None or nothing_heals:
        reopening = range_in_words(outlook.dates[Milestone.REOPENING], voice)
        return f"The work on {where} is done. Open again: {reopening}."
    if all(work.surface.kind is SurfaceKind.GREEN for work in outlook.surfaces):
        settled = outlook.dates[Milestone.SETTLED]
        if settled.allow_until is not None and settled.allow_until <= voice.near:
            return f"{capital(where)} {plural} healing; most putts roll true by now."
        return f"{capital(where)} {plural} healing; putts may still turn."
    return f"The work on {where} is done; it still has to settle."


def _sections(
    outlook: JobOutlook,
    published: DateRange,
    records: ClubRecords,
    kinds: Sequence[Kind],
    as_of: datetime,
    voice: Voice,
) -> Iterator[Section]:
    job = outlook.job
    distinct = list(dict.fromkeys(kinds))
    yield Section(
        heading="What we do", points=tuple(KIND_PHRASES[kind].what for kind in distinct), markdown=job.own_words
    )
    noticed = sorted(distinct, key=_MOST_NOTICED_FIRST.index)[:_NOTICED_SHOWN]
    yield Section(heading="What you will notice", points=tuple(KIND_PHRASES[kind].notice for kind in noticed))
    if outlook.work is not Work.CALLED_OFF:
        yield _when_normal(outlook, published, as_of, voice)
        if (on_fixtures := fixtures_section(outlook, records.fixtures, voice)) is not None:
            yield on_fixtures
    yield Section(
        heading="Why we do it",
        paragraphs=(*job.why, KIND_PHRASES[main_kind(kinds)].why),
        facts=tuple(_readings(outlook, voice)),
    )
    numbers = facts_in_numbers(outlook, voice)
    if numbers:
        yield Section(heading="In numbers", facts=tuple(numbers))
    yield Section(heading="Rules of Golf", paragraphs=(" ".join(_RULES),))
    labels = [_label(use, voice) for use in job.operations if isinstance(use, ProductUse)]
    yield Section(heading="Please take care", points=(*labels, *cautions_for(distinct), *records.club.cautions))
    yield Section(heading="Who decides and whom to ask", paragraphs=tuple(_contact(records, voice)))


def _label(use: ProductUse, voice: Voice) -> str:
    read = f"The label was read by {use.label_read_by} on {voice.day(use.label_read_on)}."
    return f"{_sentence(f'{capital(use.product)}: {use.re_entry}')} {_sentence(f'Signs: {use.signs}')} {read}"


def _sentence(words: str) -> str:
    return words if words.endswith((".", "!", "?")) else f"{words}."


_RULES: Final = (
    "Play the ball as it lies, unless the Committee has posted a Local Rule for this work.",
    "The course manager cannot make one.",
)


def _when_normal(outlook: JobOutlook, published: DateRange, as_of: datetime, voice: Voice) -> Section:
    opened = any(work.recovery is not None and work.recovery.sums.openings for work in outlook.surfaces)
    closed = "Holes closed" if opened else "Sand worked in"
    reopening = reopening_facts(outlook, as_of, voice)
    left = any(work.done_at is None and work.hours is None for work in outlook.surfaces)
    rows = [
        *(
            [("Work finished", _work_finished(outlook))]
            if (left and not outlook.job.reopens_after) or not reopening
            else []
        ),
        ("Most putts roll true", outlook.dates[Milestone.SETTLED]),
        (closed, outlook.dates[Milestone.HOLES_CLOSED]),
    ]
    on_greens = all(work.surface.kind is SurfaceKind.GREEN for work in outlook.surfaces)
    heals = any(work.recovery is not None for work in outlook.surfaces)
    facts = reopening + [
        Fact(name=name, value=capital(range_in_words(given, voice)))
        for name, given in rows
        if given.is_given
        and (name not in ("Most putts roll true", closed) or heals)
        and (name != "Most putts roll true" or on_greens)
    ]
    facts.append(Fact(name="Back to normal", value=capital(published_in_words(published, outlook.work, voice))))
    return Section(
        heading="When it is back to normal",
        facts=tuple(facts),
        paragraphs=tuple(_how_sure(outlook, voice, heals=heals)),
    )


def _how_sure(outlook: JobOutlook, voice: Voice, *, heals: bool) -> Iterator[str]:
    if outlook.work is Work.BACK_TO_NORMAL:
        return
    if heals:
        yield (
            "Likely means an even chance. Allow until means 9 chances in 10. "
            "The dates are computed from the size of the holes, the sand, the growth so far and past years' weather."
        )
        yield "In the growing season the sum is usually within 3 days. In cold months think in weeks."
    said: dict[str, list[Surface]] = {}
    for work in outlook.surfaces:
        for reason in work.reasons:
            if reason.kind in _ABOUT_HOW_SURE:
                said.setdefault(reason_in_words(reason, voice), []).append(work.surface)
    for sentence, surfaces in said.items():
        whole = len(surfaces) == len(outlook.surfaces)
        yield (
            sentence if whole else f"{capital(places_in_words(surfaces, voice))}: {sentence[:1].lower()}{sentence[1:]}"
        )


def _readings(outlook: JobOutlook, voice: Voice) -> Iterator[Fact]:
    for reading in outlook.job.readings:
        target = f"; our aim is {reading.target}" if reading.target else ""
        on = f" ({voice.day(reading.on)})" if reading.on else ""
        yield Fact(name=capital(reading.what), value=f"{reading.found}{on}{target}")


def _contact(records: ClubRecords, voice: Voice) -> Iterator[str]:
    club = records.club
    if club.decides:
        yield club.decides
    ways = [way for way in (club.contact.email, club.contact.telephone) if way]
    yield f"Questions: {club.contact.office}{', ' + voice.joined(ways) if ways else ''}."
