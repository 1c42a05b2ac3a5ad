"""Amounts and places in words; dates are in `dates_in_words`."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from swardcast.language.voice import Voice, slug_of
from swardcast.records.club import Contact, Surface, SurfaceKind

__all__ = [
    "amount",
    "as_clause",
    "contact_in_words",
    "few_words_for",
    "holes_in_words",
    "kind_in_words",
    "percent",
    "place_list",
    "places_in_brief",
    "places_in_words",
    "whole_percent",
]

_MOST_NAMED: Final = 2
"""Places with names of their own, such as bunkers, that are named one by one; more are counted: judgement."""

_MOST_WORDS_IN_A_LINE = 12  # of a name in a short answer or a headline: judgement


def as_clause(typed: str) -> str:
    """Take the full stop off typed words that go into a sentence of ours, which brings its own."""
    return typed.rstrip(".")


def contact_in_words(contact: Contact, voice: Voice) -> str:
    """Say how the office is reached: by e-mail, by telephone, or by either.

    Args:
        contact: whom to ask.
        voice: the language.

    Returns:
        The address, the number or both; "" where the club gives neither.
    """
    if contact.email and contact.telephone:
        return voice.say("contact-email-or-telephone", email=contact.email, telephone=contact.telephone)
    return contact.email or contact.telephone


def amount(value: float, voice: Voice) -> str:
    """Say a number, rounded to two figures that people can use: 151,872 becomes "about 150,000"."""
    if value < 100:  # noqa: PLR2004 - small numbers are counted
        return voice.number(max(0.0, value))
    digits = len(str(int(value))) - 2
    return voice.say("about", number=voice.number(round(value / 10**digits) * 10**digits))


def percent(fraction: float, voice: Voice) -> str:
    """Say a share: "5.3 %", "14 %"."""
    share = 100 * fraction
    number = voice.number(share, decimals=1 if round(share, 1) < 10 else 0)  # noqa: PLR2004 - below ten a decimal tells
    return voice.say("percent", number=number)


def whole_percent(fraction: float, voice: Voice) -> str:
    """Say a share that was looked at or typed, without decimals: "5 %", "100 %"."""
    return voice.say("percent", number=voice.number(100 * fraction))


def kind_in_words(kind: SurfaceKind, count: int, voice: Voice) -> str:
    """Name a kind of surface: "green" or "greens".

    Args:
        kind: the kind.
        count: how many there are.
        voice: the language.

    Returns:
        The word in the form that goes with the count.
    """
    return voice.say(f"surface-{slug_of(kind)}", count=count)


def places_in_words(surfaces: Iterable[Surface], voice: Voice) -> str:
    """Name surfaces as in a sentence: "greens 1 to 9 and 14 and the practice green"; a club's own name for them first.

    Args:
        surfaces: the surfaces.
        voice: the language and the club's own names of sets.

    Returns:
        Their names.
    """
    return voice.joined(place_list(surfaces, voice))


def place_list(surfaces: Iterable[Surface], voice: Voice) -> list[str]:
    """Name surfaces one by one, runs of numbers together.

    Args:
        surfaces: the surfaces.
        voice: the language and the club's own names of sets.

    Returns:
        Names, by kind of surface.
    """
    chosen = list(surfaces)
    if (own := voice.set_name(surface.id for surface in chosen)) is not None:
        return [own]
    parts = []
    for kind in SurfaceKind:
        of_kind = [surface for surface in chosen if surface.kind is kind]
        if of_kind and (own := voice.set_name(surface.id for surface in of_kind)) is not None:
            parts.append(own)
            continue
        names = [None if surface.is_numbered else surface.name for surface in of_kind]
        holes = [surface.hole or 0 for surface, name in zip(of_kind, names, strict=True) if name is None]
        parts += [*_numbered(kind, sorted(holes), voice), *(name for name in names if name is not None)]
    return parts


def places_in_brief(surfaces: Iterable[Surface], voice: Voice) -> str:
    """Name surfaces as `places_in_words` does, but count those with long names where there are several of a kind.

    Args:
        surfaces: the surfaces.
        voice: the language and the club's own names of sets.

    Returns:
        "the front greenside bunker on the 7th" for one; "3 bunkers on holes 4 and 7" for more than two.
    """
    chosen = list(surfaces)
    if voice.set_name(surface.id for surface in chosen) is not None:
        return places_in_words(chosen, voice)
    parts = []
    for kind in SurfaceKind:
        of_kind = [surface for surface in chosen if surface.kind is kind]
        named = [surface for surface in of_kind if not surface.is_numbered and surface.hole is not None]
        holes = sorted({surface.hole for surface in named if surface.hole is not None})
        if len(named) <= _MOST_NAMED or voice.set_name(surface.id for surface in of_kind) is not None:
            parts += place_list(of_kind, voice) if of_kind else []
            continue
        parts += place_list((surface for surface in of_kind if surface not in named), voice)
        counted = voice.say("counted", count=len(named), kind=kind_in_words(kind, len(named), voice))
        said = holes_in_words(holes, voice)
        parts.append(voice.say("counted-on-holes", counted=counted, holes=said, count=len(holes)))
    return voice.joined(parts)


def few_words_for(surfaces: Iterable[Surface], voice: Voice) -> str:
    """Name surfaces, or count them where their names would not fit into a line: "6 bunkers".

    Args:
        surfaces: the surfaces.
        voice: the language and the club's own names of sets.

    Returns:
        A few words.
    """
    chosen = list(surfaces)
    named = places_in_words(chosen, voice)
    if len(named.split()) <= _MOST_WORDS_IN_A_LINE:
        return named
    counts = [(kind, sum(surface.kind is kind for surface in chosen)) for kind in SurfaceKind]
    return voice.joined(
        [voice.say("counted", count=count, kind=kind_in_words(kind, count, voice)) for kind, count in counts if count]
    )


def _numbered(kind: SurfaceKind, holes: Sequence[int], voice: Voice) -> list[str]:
    if not holes:
        return []
    name = kind_in_words(kind, len(holes), voice)
    return [voice.say("numbered", kind=name, holes=holes_in_words(holes, voice), count=len(holes))]


def holes_in_words(holes: Sequence[int], voice: Voice) -> str:
    """Say numbers of holes: "1 to 4, 6 and 7".

    Args:
        holes: numbers in order, at least one.
        voice: the language.

    Returns:
        Runs of three or more as a range.
    """
    runs: list[list[int]] = []
    for hole in holes:
        if runs and hole == runs[-1][-1] + 1:
            runs[-1].append(hole)
        else:
            runs.append([hole])
    said: list[str] = []
    for run in runs:
        if len(run) > 2:  # noqa: PLR2004 - "1 and 2"
            said.append(voice.say("holes-from-to", first=str(run[0]), last=str(run[-1])))
        else:
            said += [str(hole) for hole in run]
    return voice.joined(said)
