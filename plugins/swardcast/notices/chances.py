"""Chances in words: one table, so that the same chance reads alike everywhere.

All are out of ten, since chances that are to be compared need one denominator (Patient Information Forum, undated,
"Communicating benefits, risks and uncertainties", https://pifonline.org.uk/resources/how-to-guides/translated-health-
information-a-quick-guide/communicating-benefits-risks-and-uncertainties/: numbers beside words, "10 in 100" rather than
10 %, both out of the same number). Tenths are as fine as it gets: a chance rests on some 90 courses of weather that go
together by year and on an error of the model that is itself estimated, so that 1 in 20 is the least it can tell
(judgement).
"""

from __future__ import annotations

from typing import Final

from swardcast.language.voice import Voice

__all__ = ["FEWEST", "chance_in_words", "tenths_of"]

FEWEST: Final = 0.05
"""Below it, and within as much of 1, a chance gets no figure of its own: 1 in 20, judgement."""

_UP_TO: Final = (0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 1 - FEWEST)


def chance_in_words(chance: float, voice: Voice) -> str:
    """Say a chance; this is the only table of such words.

    Args:
        chance: a fraction from 0 to 1.
        voice: the language and the day of the reader.

    Returns:
        Words that "that ..." can follow, such as "about 3 chances in 10".

    Raises:
        ValueError: when it is no chance.
    """
    match tenths_of(chance):
        case 0:
            return voice.say("chance-hardly-any")
        case 10:
            return voice.say("chance-almost-certain")
        case tenths:
            return voice.say("chance-tenths", tenths=tenths)


def tenths_of(chance: float) -> int:
    """Round a chance to tenths, as it is told.

    Args:
        chance: a fraction from 0 to 1.

    Returns:
        0 for hardly any, 10 for almost certain, else 1 to 9.

    Raises:
        ValueError: when it is no chance.
    """
    if not 0 <= chance <= 1:
        message = f"{chance} is no chance; expected 0 to 1"
        raise ValueError(message)
    if chance < FEWEST:
        return 0
    return next((tenth for tenth, below in enumerate(_UP_TO, start=1) if chance < below), len(_UP_TO) + 1)
