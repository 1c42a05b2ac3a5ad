"""Choices in words: what each is called, whose it is, what is done."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from swardcast.language.measures import layer, length, sand_mass, sand_rate, spacing
from swardcast.language.voice import Voice, capital
from swardcast.notices.kinds import kind_name
from swardcast.notices.words import percent
from swardcast.planning.compare import Compared
from swardcast.quantities import Sand, SandBasis
from swardcast.records.operations import Dressing, Grooving, Operation, SandInjection, Stripping, Tining

__all__ = ["all_in_words", "choice_name", "operations_in_words", "source_in_words"]

_THICK_MM: Final = 10.0  # of so much sand, as in a bunker, no tenths are told: judgement


def choice_name(row: Compared, voice: Voice) -> str:
    """Name a choice: as typed, as the plan's, or by its operations.

    Args:
        row: the choice.
        voice: the language.

    Returns:
        A few words.
    """
    if row.is_planned:
        return voice.say("planning-as-planned")
    if row.choice.name:
        return row.choice.name
    return capital(voice.joined([kind_name(one.kind, voice) for one in row.choice.operations]))


def source_in_words(row: Compared, voice: Voice) -> str:
    """Say whose choice it is.

    Args:
        row: the choice.
        voice: the language.

    Returns:
        Its source as typed, the plan, or that it is the club's own.
    """
    if row.is_planned:
        return voice.say("planning-from-plan")
    return row.choice.source or voice.say("planning-own-choice")


def operations_in_words(row: Compared, voice: Voice) -> str:
    """Say what is done, with its sizes.

    Args:
        row: the choice.
        voice: the language.

    Returns:
        A clause for each operation.
    """
    return all_in_words(row.choice.operations, voice)


def all_in_words(operations: Iterable[Operation], voice: Voice) -> str:
    """Say what is done, with its sizes.

    Args:
        operations: the operations, in order.
        voice: the language.

    Returns:
        A clause for each.
    """
    return voice.clauses([_operation(one, voice) for one in operations])


def _operation(operation: Operation, voice: Voice) -> str:
    kind = kind_name(operation.kind, voice)
    match operation:
        case Tining():
            return voice.say(
                "planning-tined",
                kind=kind,
                width=_width(operation, voice),
                spacing=spacing(operation.across_mm, operation.along_mm, voice),
                depth=length(operation.depth_mm, voice),
                passes=operation.passes,
            )
        case Grooving():
            return voice.say(
                "planning-grooved",
                kind=kind,
                width=length(operation.blade_mm, voice),
                spacing=length(operation.spacing_mm, voice),
                depth=length(operation.depth_mm, voice),
                passes=operation.passes,
            )
        case Dressing():
            return voice.say("planning-sanded", kind=kind, amount=_sand(operation.sand, voice))
        case SandInjection():
            return _injected(operation, kind, voice)
        case Stripping():
            depth, share = length(operation.depth_mm, voice), percent(operation.share, voice)
            amount = voice.say("numbers-stripped", depth=depth, share=share)
            return voice.say("planning-sanded", kind=kind, amount=amount)
        case _:
            return kind


def _width(tines: Tining, voice: Voice) -> str:
    outside = length(tines.diameter_mm, voice)
    if tines.inside_diameter_mm is None:
        return outside
    return voice.say("planning-inside", outside=outside, inside=length(tines.inside_diameter_mm, voice))


def _injected(operation: SandInjection, kind: str, voice: Voice) -> str:
    """As far as it was typed."""
    parts = [kind]
    if operation.diameter_mm is not None:
        parts.append(voice.say("numbers-wide", width=length(operation.diameter_mm, voice)))
    if operation.depth_mm is not None:
        parts.append(voice.say("numbers-deep", depth=length(operation.depth_mm, voice)))
    if operation.across_mm is not None and operation.along_mm is not None:
        apart = spacing(operation.across_mm, operation.along_mm, voice)
        parts.append(voice.say("numbers-apart", spacing=apart))
    if operation.sand is not None:
        parts.append(_sand(operation.sand, voice))
    return voice.listed(parts)


def _sand(sand: Sand, voice: Voice) -> str:
    match sand.basis:
        case SandBasis.DEPTH_MM:
            thick = sand.amount >= _THICK_MM
            return length(sand.amount, voice) if thick else layer(sand.amount, voice)
        case SandBasis.KG_PER_M2:
            return sand_rate(sand.amount, voice)
        case SandBasis.TONNES_EACH:
            return voice.say("planning-on-each", mass=sand_mass(sand.amount, voice))
        case SandBasis.TONNES_IN_ALL:
            return voice.say("planning-in-all", mass=sand_mass(sand.amount, voice))
