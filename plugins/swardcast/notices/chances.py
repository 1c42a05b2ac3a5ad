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

__all__ = ["FEWEST", "chance_in_words"]

FEWEST: Final = 0.05
"""Below it, and within as much of 1, a chance gets no figure of its own: 1 in 20, judgement."""

_BELOW: Final = (
    (FEWEST, "hardly any chance (less than 1 in 20)"),
    (0.15, "about 1 chance in 10"),
    (0.25, "about 2 chances in 10"),
    (0.35, "about 3 chances in 10"),
    (0.45, "about 4 chances in 10"),
    (0.55, "about 5 chances in 10"),
    (0.65, "about 6 chances in 10"),
    (0.75, "about 7 chances in 10"),
    (0.85, "about 8 chances in 10"),
    (1 - FEWEST, "about 9 chances in 10"),
)
_ABOVE: Final = "almost certain (more than 19 chances in 20)"


def chance_in_words(chance: float) -> str:
    """Say a chance; this is the only table of such words.

    Args:
        chance: a fraction from 0 to 1.

    Returns:
        Words that "that ..." can follow, such as "about 3 chances in 10".

    Raises:
        ValueError: when it is no chance.
    """
    if not 0 <= chance <= 1:
        message = f"{chance} is no chance; expected 0 to 1"
        raise ValueError(message)
    return next((words for below, words in _BELOW if chance < below), _ABOVE)
