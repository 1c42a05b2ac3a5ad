"""`planning: gaps` of club.yaml: how long turf is left alone between two kinds of work."""

from __future__ import annotations

from typing import Annotated, Final

from pydantic import BeforeValidator, Field

from swardcast.quantities import QuantityError, parse_days
from swardcast.reading.near_kinds import kind_meant
from swardcast.reading.schema import Model, one_of, wrong
from swardcast.records.gaps import KindGap
from swardcast.records.operations import Kind

__all__ = ["GapBlock", "gap_days", "gaps_from"]

_MOST_DAYS: Final = 366  # a gap is told within a year: judgement


def gap_days(value: object) -> int:
    """Read whole days between two jobs, such as "6 weeks"; raises PydanticCustomError when it is none."""
    expected = "a time from 1 day to 366 days, such as '6 weeks'"
    try:
        days = parse_days(value)
    except QuantityError as error:
        raise wrong(error.found, expected, error.hint) from error
    if not 1 <= days <= _MOST_DAYS:
        raise wrong(value, expected)
    return round(days)


_Kind = Annotated[Kind, one_of(Kind, kind_meant)]


class GapBlock(Model):
    """What is left between two kinds of work on the same surface."""

    from_: _Kind = Field(alias="from")
    to: _Kind
    at_least: Annotated[int, BeforeValidator(gap_days)]


def gaps_from(told: list[GapBlock]) -> tuple[KindGap, ...]:
    """Turn the block into records.

    Args:
        told: the block, checked.

    Returns:
        The gaps.
    """
    return tuple(KindGap(earlier=one.from_, later=one.to, least_days=one.at_least) for one in told)
