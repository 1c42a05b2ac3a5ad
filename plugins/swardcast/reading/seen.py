"""Readings taken on the course, each in the units in which its meter speaks."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Final

from pydantic import BeforeValidator

from swardcast.quantities import QuantityError, parse_fraction, parse_length_mm, parse_roll_mm
from swardcast.reading.schema import ROLL_LIMITS, Model, wrong
from swardcast.records.course_readings import gravities_of

__all__ = ["Readings"]

_FIRMNESS: Final = "a firmness: how deep the meter sinks in, such as '8 mm', or '95 gravities' of a drop hammer"

_GRAVITIES_LEAST, _GRAVITIES_MOST = 10.0, 400.0  # from slush to a road: judgement


def _read(parse: Callable[[object], object]) -> BeforeValidator:
    """Check a reading and keep it as it was typed."""

    def read(value: object) -> str:
        try:
            parse(value)
        except QuantityError as error:
            raise wrong(error.found, error.expected, error.hint) from error
        return " ".join(str(value).split())

    return BeforeValidator(read)


def _within(parse: Callable[[object], float], least: float, most: float, said: str) -> Callable[[object], object]:
    def check(value: object) -> None:
        if not least <= parse(value) <= most:
            raise QuantityError(value, said, "Check the figure and its unit.")

    return check


def _firmness(value: object) -> None:
    hammer = gravities_of(value)
    if hammer is not None:
        if not _GRAVITIES_LEAST <= hammer <= _GRAVITIES_MOST:
            raise QuantityError(value, "10 to 400 gravities", "Check the figure and its unit.")
        return
    try:
        sinks_in_mm = parse_length_mm(value)
    except QuantityError as error:
        raise QuantityError(error.found, _FIRMNESS, error.hint) from error
    if not 0 < sinks_in_mm <= 50:  # noqa: PLR2004 - deeper is no turf: judgement
        raise QuantityError(value, "a depth up to 50 mm", "Check the figure and its unit.")


_Roll = Annotated[str, _read(_within(parse_roll_mm, *ROLL_LIMITS))]
_Firmness = Annotated[str, _read(_firmness)]
_Moisture = Annotated[str, _read(parse_fraction)]
_Cut = Annotated[str, _read(_within(parse_length_mm, 1.0, 150.0, "a height from 1 mm to 150 mm"))]
_Organic = Annotated[str, _read(_within(parse_fraction, 0.0, 0.6, "a share of the dry weight from 0 to 60 %"))]


class Readings(Model):
    """What may be read; the limits are judgement: what no meter on a course has shown."""

    green_speed: _Roll | None = None
    firmness: _Firmness | None = None
    moisture: _Moisture | None = None
    height_of_cut: _Cut | None = None
    organic_matter: _Organic | None = None

    @property
    def taken(self) -> dict[str, str]:
        """The readings that were taken, by name, as typed."""
        return {
            name.replace("_", " "): value
            for name in type(self).model_fields
            if (value := getattr(self, name)) is not None
        }
