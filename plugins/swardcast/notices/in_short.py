"""A notice in a line or two, for a message: what, where, how it stands, until when, in wordings that grow ever shorter.

What falls away, in this order: the weekdays; when the work is, once it has begun; the likely day, so that "allow until"
is left, or of what stays closed after the work when it opens again; the title, for the name of the main kind of work
with its place; the end. Where even that is too long, the end comes back and the place falls away, then the end too.
That work is planned, under way, held up or called off stays to the last, and so do the days of planned work: without
them it would read as if it were going on, or done. A title that names its place needs no other; beside any other title
the place stands as long as the title does.
"""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.language.voice import capital
from swardcast.notices.answer import when_it_is_over
from swardcast.notices.dates_in_words import says_allow_until
from swardcast.notices.ends import published_in_words, unopened
from swardcast.notices.headline import names_place, state_in_short
from swardcast.notices.matter import Matter
from swardcast.notices.opening import opening
from swardcast.notices.words import as_clause, few_words_for, kind_in_words
from swardcast.outlook.states import Work

__all__ = ["in_short"]


def in_short(matter: Matter) -> tuple[str, ...]:
    """Say a job in a line or two.

    Args:
        matter: what the notice is made of.

    Returns:
        Wordings of whole sentences, the fullest first, none twice.
    """
    return tuple(dict.fromkeys(_wordings(matter)))


def _wordings(matter: Matter) -> Iterator[str]:
    outlook, voice, title = matter.outlook, matter.voice, matter.job.title
    whole, *shorter = _endings(matter)
    where = _where(matter)
    if any(map(str.isalnum, title)):  # a title of nothing but pictures says nothing where there are no pictures
        beside = "" if names_place(outlook, voice) and not _is_silent_in_part(matter) else where
        fullest = _line(title, beside, _state(matter, briefly=False), matter)
        yield _sentences(fullest, whole, matter)
        yield _sentences(fullest, shorter[0], matter)
        for until in shorter:
            yield _sentences(_line(title, beside, _briefly(matter), matter), until, matter)
    kind = capital(voice.name("kind", matter.kinds[0]))
    for place in (where, ""):
        for until in (*shorter, ""):
            yield _sentences(_line(kind, place, _briefly(matter), matter), until, matter)


def _is_silent_in_part(matter: Matter) -> bool:
    """Whether some of its surfaces are done, and nobody reports on the others any more."""
    done = [work for work in matter.outlook.surfaces if work.done_at is not None]
    return matter.outlook.unreported is not None and bool(done)


def _where(matter: Matter) -> str:
    """Its surfaces in a few words; of work that nobody reports on any more those that are left, of how many."""
    works, voice = matter.outlook.surfaces, matter.voice
    if not _is_silent_in_part(matter):
        return few_words_for((work.surface for work in works), voice)
    left = [work.surface for work in works if work.unreported is not None]
    kinds = list(dict.fromkeys(work.surface.kind for work in works))
    if len(kinds) > 1:
        return few_words_for(left, voice)
    kind = kind_in_words(kinds[0], len(works), voice)
    return voice.say("counted-of", some=len(left), count=len(works), kind=kind)


def _briefly(matter: Matter) -> str:
    return _state(matter, briefly=True)


def _state(matter: Matter, *, briefly: bool) -> str:
    """How the work stands; of planned work of one day its day, and any further day that the plan keeps."""
    if matter.is_of_one_day:
        return published_in_words(matter.published, matter.outlook, matter.voice, briefly=briefly)
    return state_in_short(matter.outlook, matter.voice, briefly=briefly)


def _line(title: str, where: str, state: str, matter: Matter) -> str:
    """What, where and how it stands; a place or a state that is "" is left out."""
    say = matter.voice.say
    if where and state:
        return say("headline-with-place", title=title, where=where, when=state)
    if where:
        return say("headline-without-days", title=title, where=where)
    return say("headline", title=title, when=state) if state else title


def _sentences(what: str, until: str, matter: Matter) -> str:
    voice = matter.voice
    return voice.sentences([part for part in (voice.sentence(as_clause(what.strip())), until) if part])


def _endings(matter: Matter) -> list[str]:
    """When it is over: with weekdays, without, and only how long to allow; nothing of what was called off.

    Nor of work that is over once it is finished, and has no day: "no new day yet" or "no start reported" has said it;
    nor of work of one day, whose day has been said.
    """
    voice, published = matter.voice, matter.published
    has_no_end = (matter.outlook.is_put_off or matter.has_no_day) and matter.is_over_with_the_work
    if matter.outlook.work is Work.CALLED_OFF or matter.is_of_one_day or has_no_end:
        return ["", "", ""]
    days = [published_in_words(published, matter.outlook, voice, briefly=briefly) for briefly in (False, True)]
    until = published.allow_until
    is_said = says_allow_until(published, voice) and not matter.stands_still
    days.append(voice.say("allow-until", until=voice.short_day(until)) if until and is_said else days[1])
    ends = [when_it_is_over(matter, words).text for words in days]
    opens = [told.text for briefly in (False, True) if (told := opening(matter, briefly=briefly)) is not None]
    if not opens or matter.is_over:
        return ends
    if unopened(matter.outlook, voice):
        return [*opens, opens[-1]]  # what is not open is not back to normal
    both = [voice.sentences([said, end]) for said, end in zip(opens, ends, strict=False)]
    return [*both, opens[-1]]
