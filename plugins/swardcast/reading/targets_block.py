"""The club's own targets for readings, as typed below "planning": "3 to 5 %", "9 ft or more", "25 % or less"."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Annotated, Final

from pydantic import BeforeValidator

from swardcast.quantities import QuantityError
from swardcast.reading.schema import Model, wrong
from swardcast.records.course_readings import READINGS, Measured, measured
from swardcast.records.targets import Target

__all__ = ["Targets"]

_OR_LESS: Final = re.compile(
    r"^\s*(?:(?:at most|up to|no more than)\s+(?P<after>.+)|(?P<before>.+?)\s+or\s+(?:less|fewer))\s*$", re.I
)
_OR_MORE: Final = re.compile(r"^\s*(?:at least\s+(?P<after>.+)|(?P<before>.+?)\s+or\s+more)\s*$", re.I)
_BARE: Final = re.compile(r"^[\d.]+$")
_ONE_UNIT: Final = re.compile(
    r"^[\d.,]+\s*([^\d\s]+)$"
)  # not "9 ft 6 in", of which nobody knows what the lower end has


def _target(name: str, example: str) -> Callable[[object], Target | None]:
    expected = f"a target for {name} with its unit, such as {example}"

    def read(value: object) -> Target | None:
        if value is None or isinstance(value, Target):
            return value
        typed = " ".join(str(value).split())
        try:
            least, most = _ends(name, typed)
        except QuantityError as error:
            raise wrong(error.found, expected, error.hint) from error
        one = least or most
        if one is None:
            raise wrong(value, expected)
        if least is not None and most is not None:
            if least.meter is not most.meter:
                raise wrong(value, expected, "Both ends are to be read with the same meter.")
            if least.value >= most.value:
                raise wrong(value, f"a range that goes up, such as {example}")
        return Target(
            reading=name,
            meter=one.meter,
            least=least.value if least is not None else None,
            most=most.value if most is not None else None,
            typed=typed,
        )

    return read


def _ends(name: str, typed: str) -> tuple[Measured | None, Measured | None]:
    if match := _OR_LESS.match(typed):
        return None, measured(name, match["after"] or match["before"])
    if match := _OR_MORE.match(typed):
        return measured(name, match["after"] or match["before"]), None
    low, to, high = typed.removeprefix("from ").partition(" to ")
    if not to:
        return None, None
    most = measured(name, high)
    if _BARE.match(low) and (unit := _ONE_UNIT.match(high)):  # "3 to 5 %": the unit is said once
        low = f"{low} {unit[1]}"
    return measured(name, low), most


def _of(name: str, example: str) -> BeforeValidator:
    return BeforeValidator(_target(name, example))


class Targets(Model):
    """What the club aims at; a reading without a target is shown without one."""

    green_speed: Annotated[Target | None, _of("green speed", "'9 ft to 10 ft'")] = None
    firmness: Annotated[Target | None, _of("firmness", "'6 to 9 mm' or '80 to 100 gravities'")] = None
    moisture: Annotated[Target | None, _of("moisture", "'15 to 25 %'")] = None
    height_of_cut: Annotated[Target | None, _of("height of cut", "'3 to 4 mm'")] = None
    organic_matter: Annotated[Target | None, _of("organic matter", "'3 to 5 %' or '5 % or less'")] = None

    @property
    def told(self) -> tuple[Target, ...]:
        """Those that were typed, in the order of the readings."""
        given = (getattr(self, name.replace(" ", "_")) for name in READINGS)
        return tuple(target for target in given if target is not None)
