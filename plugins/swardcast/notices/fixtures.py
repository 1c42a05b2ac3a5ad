"""What competitions and visitors' days meet of a job, in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.chances import FEWEST, chance_in_words
from swardcast.notices.notice import Fact, Section
from swardcast.outlook.fixtures import Basis, FixtureOutlook, Touch, fixtures_ahead, worth_telling
from swardcast.outlook.job_ranges import open_works, sampled_recoveries
from swardcast.outlook.states import JobOutlook, Work
from swardcast.records.club import SurfaceKind
from swardcast.records.fixtures import Fixture

__all__ = ["fixture_in_words", "fixtures_section", "meets_in_words"]

_HOW_KNOWN: Final = {
    Basis.COMPUTED: "Each chance is that of the first morning. It changes with the weather and the work.",
    Basis.USUAL_RANGE: "No chance is computed here: the words follow the usual range for this work.",
    Basis.NOT_KNOWN: "How the healing goes on cannot be computed here, so only the days of the work are looked at.",
}
_ALLOWED_FOR: Final = 0.1  # the chance that is left on the day of allow until, when the notice says "by now"
_IN_RANGE: Final = {
    Touch.YES: "{who} most likely not back to normal yet",
    Touch.PERHAPS: "{who} perhaps not back to normal yet",
    Touch.NO: "{who} most likely back to normal",
}


def fixtures_section(outlook: JobOutlook, fixtures: Iterable[Fixture], voice: Voice) -> Section | None:
    """Say which coming fixtures a job touches, and with what chance.

    Args:
        outlook: how the job stands.
        fixtures: the club's fixtures, the first first.
        voice: the language and the day of the reader.

    Returns:
        The section, or None where there is nothing to say.
    """
    met = fixtures_ahead(outlook, fixtures, voice.near)
    told = worth_telling(met)
    if not told:
        return None
    facts = tuple(
        Fact(name=_names_in_words([one.fixture for one in group], voice), value=f"{words}.")
        for words, group in groupby(told, key=lambda one: meets_in_words(one, outlook, voice))
    )
    in_between = ("Others in between are left out.",) if len(told) < len(met) else ()
    return Section(
        heading="Competitions and visitors' days",
        facts=facts,
        paragraphs=(" ".join((_HOW_KNOWN[told[0].basis], *in_between)),),
    )


def _names_in_words(fixtures: Iterable[Fixture], voice: Voice) -> str:
    first, *more = [fixture_in_words(fixture, voice) for fixture in fixtures]
    if len(more) > 1:
        return f"{first}, and {len(more)} more up to {more[-1]}"
    return " and ".join([first, *more])


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
        return f"{fixture.name}, {first} to {last}"
    at = f", {voice.time(fixture.starts_at)}" if fixture.starts_at is not None else ""
    return f"{fixture.name}, {first}{at}"


def meets_in_words(one: FixtureOutlook, outlook: JobOutlook, voice: Voice) -> str:
    """Say what a fixture meets of a job.

    Args:
        one: the fixture and its chances.
        outlook: how the job stands.
        voice: the language and the day of the reader.

    Returns:
        A sentence or two without the last full stop.
    """
    return capital(". ".join(_clauses(one, outlook, voice)))


def _clauses(one: FixtureOutlook, outlook: JobOutlook, voice: Voice) -> Iterator[str]:
    closed_after = outlook.job.reopens_after is not None
    if closed_after and one.in_work is not Touch.NO:
        yield f"{_some(outlook, voice)} {'most likely' if one.in_work is Touch.YES else 'perhaps'} still closed"
        return
    if one.in_work is Touch.YES:
        yield f"in the days of the work {'as planned' if outlook.work is Work.PLANNED else 'as it stands now'}"
        return
    if one.in_work is Touch.PERHAPS:
        yield "in the days of the work if weather holds it up"
    state = _state(one, outlook, voice)
    yield f"Otherwise {state}" if one.in_work is Touch.PERHAPS else state


def _state(one: FixtureOutlook, outlook: JobOutlook, voice: Voice) -> str:
    who = _some(outlook, voice)
    if one.basis is Basis.NOT_KNOWN:
        return f"it is not known how far {who} healed"
    if one.basis is Basis.USUAL_RANGE or one.not_normal is None:
        return _IN_RANGE[one.in_range or Touch.PERHAPS].format(who=who)
    if not sampled_recoveries(open_works(outlook.surfaces)):
        return "nothing is left to heal"
    healing = f"{chance_in_words(one.not_normal, voice)} that {who} still healing"
    if not _on_greens(outlook) or one.unsettled is None or one.not_normal < FEWEST:
        return healing
    if one.unsettled <= _ALLOWED_FOR:
        return f"{healing}, but most putts should roll true"
    if chance_in_words(one.unsettled, voice) == chance_in_words(one.not_normal, voice):
        return f"{healing} and putts still turn"
    return f"{healing}; {chance_in_words(one.unsettled, voice)} that putts still turn"


def _on_greens(outlook: JobOutlook) -> bool:
    return all(work.surface.kind is SurfaceKind.GREEN for work in open_works(outlook.surfaces))


def _some(outlook: JobOutlook, voice: Voice) -> str:
    """The surfaces with their verb: of several, a chance is that of the last one, so that it speaks of some."""
    works = open_works(outlook.surfaces)
    if len(works) == 1:
        return f"{works[0].surface.name} is"
    kinds: Sequence[SurfaceKind] = list(dict.fromkeys(work.surface.kind for work in works))
    return f"some {kinds[0].plural if len(kinds) == 1 else 'surfaces'} are"
