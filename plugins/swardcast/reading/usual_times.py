"""How long work usually takes to come back, where nothing is computed: a range and whose experience it is."""

from __future__ import annotations

from typing import Annotated, Final

from pydantic import BeforeValidator, Field

from swardcast.quantities import QuantityError, parse_days
from swardcast.reading.schema import Model, Text, wrong
from swardcast.records.plan import Stretch

__all__ = ["UsualTime", "stretch_from"]

_LONGEST_DAYS: Final = 3650.0  # a fairway rebuilt takes a year or two: judgement


def _stretch(value: object) -> tuple[float, float]:
    low, to, high = str(value).partition(" to ")
    try:
        last = parse_days(high if to else low)
        unit = " weeks" if "week" in (high or low) else " days"
        first = parse_days(low + unit if to and low.strip().replace(".", "").isdigit() else low)
    except QuantityError as error:
        raise wrong(value, "a range of days or weeks, such as '4 to 6 weeks'") from error
    if last > _LONGEST_DAYS:
        raise wrong(value, "a range of days or weeks up to 10 years, such as '4 to 6 weeks'")
    if first > last:
        raise wrong(value, "a range that goes up, such as '4 to 6 weeks'")
    return first, last


class UsualTime(Model):
    """A range of days, and its source."""

    from_to: Annotated[tuple[float, float], BeforeValidator(_stretch), Field(alias="from")]
    source: Text


def stretch_from(told: UsualTime | None) -> Stretch | None:
    """Turn a checked range into a record.

    Args:
        told: the range, or None.

    Returns:
        The same range, or None.
    """
    return Stretch(from_days=told.from_to[0], to_days=told.from_to[1], source=told.source) if told else None
