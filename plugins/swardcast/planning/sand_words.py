"""Amounts of sand in few letters, for tables whose captions name the unit."""

from __future__ import annotations

from swardcast.language.measures import System, layers, system_of
from swardcast.language.voice import Voice
from swardcast.quantities import MASS_KG

__all__ = ["difference", "in_tonnes", "layers_in_words", "there_in_tonnes", "tonnes"]

_NOTHING_T = 0.05  # what is printed as 0.0 is a dash


def in_tonnes(mass_t: float, voice: Voice) -> float:
    """Turn a mass into the unit of a language's captions.

    Args:
        mass_t: tonnes.
        voice: the language.

    Returns:
        Tonnes, or tons of 2,000 pounds.
    """
    return mass_t if system_of(voice) is System.METRIC else mass_t * MASS_KG["t"] / MASS_KG["us ton"]


def tonnes(mass_t: float | None, voice: Voice, *, is_whole: bool = True) -> str:
    """Say a mass for a table, with one decimal, so that columns can be added up.

    Args:
        mass_t: tonnes, 0 or more, or None.
        voice: the language.
        is_whole: whether all of it is known; else a plus marks it.

    Returns:
        The number, a dash for none, words where it is not known.
    """
    if mass_t is None:
        return voice.say("planning-not-known")
    if mass_t < _NOTHING_T and is_whole:
        return voice.say("planning-none")
    said = there_in_tonnes(mass_t, voice)
    return said if is_whole else voice.say("sand-at-least", mass=said)


def there_in_tonnes(mass_t: float, voice: Voice) -> str:
    """Say what lies in a store, even if that is nothing.

    Args:
        mass_t: tonnes, below 0 for what is missing.
        voice: the language.

    Returns:
        The number with one decimal.
    """
    number = voice.number(in_tonnes(abs(mass_t), voice), decimals=1)
    return voice.say("sand-less", number=number) if mass_t <= -_NOTHING_T else number


def difference(mass_t: float, voice: Voice) -> str:
    """Say by how much something is more or less.

    Args:
        mass_t: tonnes, below 0 for less.
        voice: the language.

    Returns:
        The number with its sign, a dash for none.
    """
    if abs(mass_t) < _NOTHING_T:
        return voice.say("planning-none")
    number = voice.number(in_tonnes(abs(mass_t), voice), decimals=1)
    return voice.say("sand-more" if mass_t > 0 else "sand-less", number=number)


def layers_in_words(ends_mm: tuple[float, float] | None, voice: Voice) -> str:
    """Say a range of layers, or one where both ends are alike.

    Args:
        ends_mm: the lower and the upper end, or None.
        voice: the language.

    Returns:
        The layers, or that they are not known.
    """
    if ends_mm is None:
        return voice.say("planning-not-known")
    return layers(*ends_mm, voice)
