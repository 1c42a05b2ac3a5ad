"""Limits on play in words: what was decided, until when, by whom."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.notice import Fact
from swardcast.outlook.limits import LimitInForce

__all__ = ["limit_clause", "limit_in_words"]

_SHORT: Final = 60  # letters of a limit that still fit into a title: judgement


def limit_in_words(held: LimitInForce, voice: Voice) -> Fact:
    """Say a limit with its end, where it is not simply the end of the day, and with who decided it.

    Args:
        held: the limit.
        voice: the language and the day of the reader.

    Returns:
        Its name and the sentences.
    """
    limit = held.limit
    if limit.is_lifted:
        return Fact(name=capital(limit.name), value="Lifted.")
    sentences = [f"{capital(limit.what).rstrip('.')}."]
    if limit.outlasts:
        sentences.append(f"Until {voice.day((limit.until - timedelta(minutes=1)).date())}.")
    elif (limit.until.hour, limit.until.minute) != (0, 0):
        sentences.append(f"Until {voice.time(limit.until)}.")
    if limit.decided_by:
        sentences.append(f"Decided by {limit.decided_by}.")
    return Fact(name=capital(limit.name), value=" ".join(sentences))


def limit_clause(held: LimitInForce, voice: Voice) -> str:
    """Say a limit in a title: "frost delay until 9:30am", "trolleys: none today", "preferred lies lifted".

    Args:
        held: the limit.
        voice: the language and the day of the reader.

    Returns:
        A clause without a capital or a full stop.
    """
    limit = held.limit
    if limit.is_lifted:
        return f"{limit.name} lifted"
    if limit.outlasts:
        return f"{limit.name} until {voice.day((limit.until - timedelta(minutes=1)).date())}"
    if (limit.until.hour, limit.until.minute) != (0, 0):
        return f"{limit.name} until {voice.time(limit.until)}"
    return f"{limit.name}: {limit.what.rstrip('.')}" if len(limit.what) <= _SHORT else limit.name
