"""Limits on play in words: what was decided, until when, by whom."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.notice import Fact
from swardcast.notices.words import as_clause
from swardcast.outlook.limits import LimitInForce

__all__ = ["end_of_limit", "limit_clause", "limit_in_words"]

_SHORT: Final = 60  # letters of a limit that still fit into a title: judgement


def limit_in_words(held: LimitInForce, voice: Voice) -> Fact:
    """Say a limit with its end, where it is not simply the end of the day, and with who decided it.

    Args:
        held: the limit.
        voice: the language and the day of the reader.

    Returns:
        Its name and the sentences.
    """
    name = capital(_name(held, voice))
    if held.limit.is_lifted:
        return Fact(name=name, value=voice.say("limit-lifted"))
    sentences = [voice.say("limit-holds", what=as_clause(held.limit.what))]
    if held.limit.rule and held.limit.rule not in held.limit.what:
        sentences.append(voice.say("limit-rule", rule=held.limit.rule))
    if until := _until(held, voice):
        sentences.append(voice.say("limit-until", when=until))
    if held.limit.decided_by:
        sentences.append(voice.say("limit-decided-by", who=as_clause(held.limit.decided_by)))
    return Fact(name=name, value=voice.sentences([capital(sentence) for sentence in sentences]))


def limit_clause(held: LimitInForce, voice: Voice) -> str:
    """Say a limit in a title: "frost delay until 9:30am", "trolleys: none today", "preferred lies lifted".

    Args:
        held: the limit.
        voice: the language and the day of the reader.

    Returns:
        A clause without a capital or a full stop.
    """
    name = _name(held, voice)
    if held.limit.is_lifted:
        return voice.say("limit-clause-lifted", name=name)
    if until := _until(held, voice):
        return voice.say("limit-clause-until", name=name, when=until)
    return (
        voice.say("limit-clause-holds", name=name, what=as_clause(held.limit.what))
        if len(held.limit.what) <= _SHORT
        else name
    )


def end_of_limit(held: LimitInForce, voice: Voice) -> str:
    """Say until when a limit holds.

    Args:
        held: the limit, not lifted.
        voice: the language and the day of the reader.

    Returns:
        Its last day, or the time of day at which it ends, as "until" is followed by it.
    """
    return _until(held, voice) or voice.day(_last_day(held))


def _name(held: LimitInForce, voice: Voice) -> str:
    return voice.say(f"limit-{held.limit.name.replace(' ', '-')}")


def _until(held: LimitInForce, voice: Voice) -> str:
    """The end, where it is not simply the end of the day, or ""."""
    until = held.limit.until
    if held.limit.outlasts:
        return voice.day(_last_day(held))
    return voice.time(until) if (until.hour, until.minute) != (0, 0) else ""


def _last_day(held: LimitInForce) -> date:
    return (held.limit.until - timedelta(minutes=1)).date()
