"""What competitions and visitors' days meet of a job, in words."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from itertools import groupby
from typing import Final

from swardcast.language.voice import Voice, capital, slug_of
from swardcast.notices.chances import FEWEST, chance_in_words
from swardcast.notices.notice import Fact, Section, Sentence
from swardcast.notices.words import kind_in_words, places_in_words
from swardcast.outlook.closures import Touch, begun_and_not, waits_to_begin
from swardcast.outlook.fixtures import Basis, FixtureOutlook, fixtures_ahead, worth_telling
from swardcast.outlook.job_ranges import open_works, sampled_recoveries
from swardcast.outlook.states import JobOutlook, Work
from swardcast.records.club import SurfaceKind
from swardcast.records.fixtures import Fixture

__all__ = ["fixture_in_words", "fixtures_section", "meets_in_words", "meets_nothing"]

_IN_RANGE: Final = {
    Touch.YES: "fixtures-not-normal",
    Touch.PERHAPS: "fixtures-perhaps-not-normal",
    Touch.NO: "fixtures-normal",
}
_ALLOWED_FOR: Final = 0.1  # the chance that is left on the day of allow until, when the notice says "by now"


def fixtures_section(
    outlook: JobOutlook, fixtures: Iterable[Fixture], voice: Voice, named: Collection[str] = ()
) -> Section | None:
    """Say which coming fixtures a job touches, and with what chance.

    Args:
        outlook: how the job stands.
        fixtures: the club's fixtures, the first first.
        voice: the language and the day of the reader.
        named: ids of fixtures that the notice names elsewhere, so that they are not left out here.

    Returns:
        The section, or None where there is nothing to say.
    """
    met = fixtures_ahead(outlook, fixtures, voice.near)
    told = worth_telling(met, named)
    if all(meets_nothing(one, outlook) for one in told):
        return None
    facts = tuple(
        Fact(name=_names_in_words([one.fixture for one in group], voice), value=words)
        for words, group in groupby(told, key=lambda one: meets_in_words(one, outlook, voice))
    )
    how_known = [f"fixtures-{slug_of(told[0].basis)}"]
    if len(told) < len(met):
        how_known.append("fixtures-left-out")
    said = tuple(Sentence(text=voice.say(phrase), source=voice.catalogue.place_of(phrase)) for phrase in how_known)
    return Section(heading=voice.say("fixtures-heading"), facts=facts, paragraphs=(said,))


def meets_nothing(one: FixtureOutlook, outlook: JobOutlook) -> bool:
    """Tell whether a fixture lies outside the days of work that leaves nothing to heal.

    Args:
        one: the fixture and its chances.
        outlook: how the job stands.

    Returns:
        Whether it does: then nothing can be said of it.
    """
    heals = one.basis is not Basis.COMPUTED or sampled_recoveries(open_works(outlook.surfaces))
    return one.in_work is Touch.NO and not heals


def _names_in_words(fixtures: Iterable[Fixture], voice: Voice) -> str:
    first, *more = [fixture_in_words(fixture, voice) for fixture in fixtures]
    if len(more) > 1:
        return voice.say("fixtures-more", first=first, count=len(more), last=more[-1])
    return voice.joined([first, *more])


def fixture_in_words(fixture: Fixture, voice: Voice) -> str:
    """Name a fixture with its days: "Autumn medal, Saturday 18 September"; with its time where it has one.

    Args:
        fixture: the fixture.
        voice: the language and the day of the reader.

    Returns:
        Its name and days.
    """
    first, last = voice.day(fixture.first_day), voice.day(fixture.last_day)
    if fixture.last_day > fixture.first_day:
        return voice.say("fixture-days", name=fixture.name, first=first, last=last)
    if fixture.starts_at is None:
        return voice.say("fixture-day", name=fixture.name, day=first)
    return voice.say("fixture-day-time", name=fixture.name, day=first, time=voice.time(fixture.starts_at))


def meets_in_words(one: FixtureOutlook, outlook: JobOutlook, voice: Voice, *, after_a_name: bool = False) -> str:
    """Say what a fixture meets of a job.

    Args:
        one: the fixture and its chances.
        outlook: how the job stands.
        voice: the language and the day of the reader.
        after_a_name: whether the words follow the name of the job, so that they begin without a capital.

    Returns:
        A sentence or two.
    """
    said = _sentence(one, outlook, voice)
    return said if after_a_name else capital(said)


def _sentence(one: FixtureOutlook, outlook: JobOutlook, voice: Voice) -> str:
    if outlook.job.reopens_after is not None and one.in_work is not Touch.NO:
        return _of_some(_closed(one, outlook), outlook, voice, play=slug_of(outlook.job.while_working))
    if one.in_work is Touch.YES:
        planned = outlook.work is Work.PLANNED
        return voice.say("fixtures-in-work-as-planned" if planned else "fixtures-in-work-as-it-stands")
    state = _state(one, outlook, voice)
    if one.in_work is Touch.PERHAPS:
        return voice.say("fixtures-in-work-if-held-up", state=state)
    return voice.say("sentence", clause=state)


def _closed(one: FixtureOutlook, outlook: JobOutlook) -> str:
    """The phrase for surfaces that stay closed after the work."""
    works = open_works(outlook.surfaces)
    if all(waits_to_begin(work) for work in works):
        return "fixtures-closed-if-it-goes-on"
    if one.in_work is Touch.PERHAPS:
        return "fixtures-perhaps-closed"
    begun, _ = begun_and_not(works)
    return "fixtures-closed" if begun else "fixtures-closed-by-plan"


def _state(one: FixtureOutlook, outlook: JobOutlook, voice: Voice) -> str:
    if one.basis is Basis.NOT_KNOWN:
        return _of_some("fixtures-healing-not-known", outlook, voice)
    if one.basis is Basis.USUAL_RANGE or one.not_normal is None:
        return _of_some(_IN_RANGE[one.in_range or Touch.PERHAPS], outlook, voice)
    if not sampled_recoveries(open_works(outlook.surfaces)):
        return voice.say("fixtures-nothing-to-heal")
    chance = chance_in_words(one.not_normal, voice)
    healing = _of_some("fixtures-healing", outlook, voice, chance=chance)
    if not _on_greens(outlook) or one.unsettled is None or one.not_normal < FEWEST:
        return healing
    if one.unsettled <= _ALLOWED_FOR:
        return voice.say("fixtures-but-putts-roll-true", healing=healing)
    turning = chance_in_words(one.unsettled, voice)
    if turning == chance:
        return voice.say("fixtures-and-putts-turn", healing=healing)
    return voice.say("fixtures-putts-turn", healing=healing, turning=capital(turning))


def _on_greens(outlook: JobOutlook) -> bool:
    return all(work.surface.kind is SurfaceKind.GREEN for work in open_works(outlook.surfaces))


def _of_some(phrase: str, outlook: JobOutlook, voice: Voice, **values: str) -> str:
    """Speak of the surfaces: of several, a chance is that of the last one, so that it speaks of some."""
    works = open_works(outlook.surfaces)
    kinds = {work.surface.kind for work in works}
    if len(works) == 1:
        who = places_in_words([works[0].surface], voice)
    elif len(kinds) == 1:
        who = voice.say("fixtures-some", surfaces=kind_in_words(kinds.pop(), len(works), voice))
    else:
        who = voice.say("fixtures-some-surfaces")
    return voice.say(phrase, who=who, count=len(works), **values)
