"""A notice in a line or two, for a message: what, and until when, in wordings that grow ever shorter.

What falls away, in this order: the weekdays; where the work is; when it is, once it has begun (of planned work that
stays to the last, or it would read as if it were going on); the likely day, so that "allow until" is left; the title,
for the name of the main kind of work; the end.
"""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.language.voice import capital
from swardcast.notices.answer import when_it_is_over
from swardcast.notices.headline import when_in_short
from swardcast.notices.matter import Matter
from swardcast.notices.words import as_clause, published_in_words, says_allow_until
from swardcast.outlook.states import Work

__all__ = ["in_short"]

_SAID_TO_THE_LAST = (Work.PLANNED, Work.CALLED_OFF)


def in_short(matter: Matter, headline: str) -> tuple[str, ...]:
    """Say a job in a line or two.

    Args:
        matter: what the notice is made of.
        headline: the notice's headline.

    Returns:
        Wordings of whole sentences, the fullest first, none twice.
    """
    return tuple(dict.fromkeys(_wordings(matter, headline)))


def _wordings(matter: Matter, headline: str) -> Iterator[str]:
    voice, title = matter.voice, matter.job.title
    whole, *shorter = _endings(matter)
    kind = _named(capital(voice.name("kind", matter.kinds[0])), matter)
    if any(map(str.isalnum, title)):  # a title of nothing but pictures says nothing where there are no pictures
        named = _named(title, matter)
        yield _sentences(headline, whole, matter)
        yield _sentences(headline, shorter[0], matter)
        for until in shorter:
            yield _sentences(named, until, matter)
    for until in (*shorter, ""):
        yield _sentences(kind, until, matter)


def _named(name: str, matter: Matter) -> str:
    """A name of the work, with its days where it would mislead without them."""
    if matter.outlook.work not in _SAID_TO_THE_LAST:
        return name
    return matter.voice.say("headline", title=name, when=when_in_short(matter.outlook, matter.voice))


def _sentences(what: str, until: str, matter: Matter) -> str:
    voice = matter.voice
    return voice.sentences([part for part in (voice.sentence(as_clause(what.strip())), until) if part])


def _endings(matter: Matter) -> list[str]:
    """When it is over: with weekdays, without, and only how long to allow; nothing of what was called off."""
    voice, published = matter.voice, matter.published
    if matter.outlook.work is Work.CALLED_OFF:
        return ["", "", ""]
    days = [published_in_words(published, matter.outlook, voice, briefly=briefly) for briefly in (False, True)]
    until = published.allow_until
    is_said = says_allow_until(published, voice) and not matter.is_overdue
    days.append(voice.say("allow-until", until=voice.short_day(until)) if until and is_said else days[1])
    said = [when_it_is_over(matter, words) for words in days]
    return ["" if sentence is None else sentence.text for sentence in said]
