"""Sand in words: amounts in few letters, for tables whose captions name the unit; masses, prices, moisture."""

from __future__ import annotations

from swardcast.language.measures import System, layers, sand_mass, system_of
from swardcast.language.voice import Voice
from swardcast.planning.words import price_in_words
from swardcast.quantities import MASS_KG
from swardcast.records.sand_store import SandStore

__all__ = [
    "difference",
    "in_tonnes",
    "layers_in_words",
    "mass_or_none",
    "price_by_weight",
    "there_in_tonnes",
    "tonnes",
    "water_in_words",
]

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


def mass_or_none(mass_t: float | None, voice: Voice) -> str:
    """Say a mass of sand.

    Args:
        mass_t: tonnes, 0 or more, or None.
        voice: the language.

    Returns:
        The mass; a dash for none, words where it is not known.
    """
    if mass_t is None:
        return voice.say("planning-not-known")
    return sand_mass(mass_t, voice) if mass_t else voice.say("planning-none")


def price_by_weight(per_t: float, currency: str, voice: Voice) -> str:
    """Say a price of sand as weighed, by the tonne or by the ton of 2,000 pounds.

    Args:
        per_t: price of a tonne.
        currency: code of ISO 4217.
        voice: the language.

    Returns:
        The price, in the language's unit.
    """
    if system_of(voice) is System.METRIC:
        return voice.say("planning-price-a-tonne", price=price_in_words(per_t, currency, voice))
    per_ton = per_t * MASS_KG["us ton"] / MASS_KG["t"]
    return voice.say("planning-price-a-ton", price=price_in_words(per_ton, currency, voice))


def water_in_words(store: SandStore, voice: Voice) -> str:
    """Say how dry sand is turned into sand as weighed.

    Args:
        store: what the club tells of its sand.
        voice: the language.

    Returns:
        A sentence.
    """
    if store.moisture_fraction is None:
        return voice.say("planning-sand-as-dry")
    share = voice.say("percent", number=voice.figure(100 * store.moisture_fraction))
    return voice.say("planning-sand-moist", share=share, times=voice.figure(round(store.weighed_t(1.0), 3)))
