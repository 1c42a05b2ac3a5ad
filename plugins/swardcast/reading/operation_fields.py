"""The fields of each sort of operation, with the limits of what a machine, a product or a trench can be."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Any, Final

from pydantic import AfterValidator, BeforeValidator, Field, model_validator

from swardcast.quantities import Sand, SandBasis
from swardcast.reading.schema import (
    Count,
    Fraction,
    Length,
    Model,
    SandAmount,
    SeedRate,
    Spacing,
    Text,
    Words,
    one_day,
    out_of_range,
    within,
    wrong,
)
from swardcast.records.operations import Kind

__all__ = [
    "Blades",
    "CutHeights",
    "Injection",
    "NoFields",
    "Product",
    "SandSpread",
    "Seed",
    "Strip",
    "Tines",
    "Trench",
    "depth_within",
]

_DEEPEST_MM: Final = {
    Kind.DEEP_TINING: 350.0,  # the deepest machine tines of the trade; common practice
    Kind.SAND_INJECTION: 350.0,  # no deeper than the deepest tines: judgement
}
_DEEPEST_OTHER_MM: Final = 200.0

_MOST_SAND: Final = {  # beyond anything that is spread on turf or put into a bunker: judgement
    SandBasis.DEPTH_MM: (600.0, "600 mm"),
    SandBasis.KG_PER_M2: (900.0, "900 kg/m2"),
    SandBasis.TONNES_EACH: (500.0, "500 t on each"),
    SandBasis.TONNES_IN_ALL: (5000.0, "5,000 t in all"),
}

_Tine = Annotated[Length, within(1, 40, "a tine from 1 mm to 40 mm; greens take 8 mm to 19 mm")]
_Hole = Annotated[Length, within(1, 40, "a hole from 1 mm to 40 mm")]  # as wide as a tine may be: judgement
_Blade = Annotated[Length, within(0.5, 20, "a blade from 0.5 mm to 20 mm; greens take 1 mm to 3 mm")]
_BladeSpacing = Annotated[Length, within(5, 200, "blades from 5 mm to 200 mm apart")]
_GrooveDepth = Annotated[
    Length, within(0.1, 60, "a depth from 0.1 mm to 60 mm; light scarifying works 1 mm to 2 mm deep")
]
_StripDepth = Annotated[Length, within(1, 60, "a depth from 1 mm to 60 mm")]
# From the lowest a green is cut to rough that is cut once a year: judgement.
_Cut = Annotated[Length, within(1, 300, "a cutting height from 1 mm to 300 mm")]
# From a slit for a cable to what a digger opens on a course; one pipe along all holes is about 10 km: judgement.
_TrenchLength = Annotated[Length, within(100, 20_000_000, "a length from 0.1 m to 20 km")]
_TrenchWidth = Annotated[Length, within(10, 3_000, "a width from 10 mm to 3 m")]
_TrenchDepth = Annotated[Length, within(30, 4_000, "a depth from 30 mm to 4 m")]

_SAYS_NOTHING: Final = {"?", "-", "tbc", "tba", "n/a", "to be confirmed", "to follow", "unknown", "not known", "later"}
_OF_THE_LABEL: Final = ("re-entry", "signs", "label read by", "label read on")
_NOT_PUBLISHED: Final = "Nothing is published without it."


def _sensible_sand(sand: Sand) -> Sand:
    most, said = _MOST_SAND[sand.basis]
    if not 0 < sand.amount <= most:
        raise out_of_range(f"at most {said} of sand and more than none")
    return sand


class Tines(Model):
    """Tines and their pattern."""

    diameter: _Tine
    inside_diameter: _Tine | None = None
    spacing: Spacing
    depth: Length
    passes: Count = 1

    @model_validator(mode="after")
    def _fits(self) -> Tines:
        _narrower_than_pattern("tines", self.diameter, self.spacing)
        if self.inside_diameter is not None and self.inside_diameter >= self.diameter:
            raise wrong(
                f"{self.inside_diameter:g} mm inside {self.diameter:g} mm", "an inside diameter below the outside"
            )
        return self


class Injection(Model):
    """Sand injection; everything may be left out."""

    diameter: _Hole | None = None
    spacing: Spacing | None = None
    depth: Length | None = None
    sand: Annotated[SandAmount, AfterValidator(_sensible_sand)] | None = None

    @model_validator(mode="after")
    def _fits(self) -> Injection:
        if self.diameter is not None and self.spacing is not None:
            _narrower_than_pattern("holes", self.diameter, self.spacing)
        if self.depth is not None:
            _check_depth(self.depth, Kind.SAND_INJECTION)
        return self


class Blades(Model):
    """Blades and their spacing."""

    blade: _Blade
    spacing: _BladeSpacing
    depth: _GrooveDepth
    passes: Count = 1

    @model_validator(mode="after")
    def _fits(self) -> Blades:
        if self.blade >= self.spacing:
            raise wrong(f"blades of {self.blade:g} mm at {self.spacing:g} mm", "blades narrower than their spacing")
        return self


class Strip(Model):
    """Turf shaved off."""

    depth: _StripDepth
    share: Annotated[Fraction, within(0.01, 1, "a share of the surface from 1 % to 100 %")] = 1.0


class SandSpread(Model):
    """Sand spread on turf or put into a bunker."""

    sand: Annotated[SandAmount, AfterValidator(_sensible_sand)]


class Seed(Model):
    """Seed and its rate."""

    seed: Text
    rate: Annotated[SeedRate, within(0.1, 100, "a seed rate from 0.1 to 100 g/m2")] | None = None


def _from_the_label(expected: str) -> BeforeValidator:
    """Words that stand between people and a product: typed, whole, and never left out."""

    def read(value: object) -> str:
        if not isinstance(value, str) or value.strip().lower().rstrip(".") in {"", *_SAYS_NOTHING}:
            raise wrong(value, expected, _NOT_PUBLISHED)
        return " ".join(value.split())

    return BeforeValidator(read)


def _day_of_reading(value: object) -> date:
    if value is None:
        raise wrong(value, "the day on which the label was read, such as '2027-10-01'", _NOT_PUBLISHED)
    return value if isinstance(value, date) else one_day(value)


_ReEntry = Annotated[str, _from_the_label("what the label says about when people may be back, in words")]
_Signs = Annotated[str, _from_the_label("which signs stand and where, in words")]
_Reader = Annotated[str, _from_the_label("who read the label")]
_ReadOn = Annotated[date, BeforeValidator(_day_of_reading)]


class Product(Model):
    """A product with a label; what the label asks is typed."""

    product: Text
    re_entry: Annotated[_ReEntry, Field(alias="re-entry")]
    signs: _Signs
    label_read_by: _Reader
    label_read_on: _ReadOn
    rate: Words = ""
    water_in: Words = ""

    @model_validator(mode="before")
    @classmethod
    def _nothing_left_out(cls, value: Any) -> Any:
        # What is left out is checked like an empty field, so that it is told in the same plain words.
        return {**dict.fromkeys(_OF_THE_LABEL), **value} if isinstance(value, dict) else value


class CutHeights(Model):
    """The cutting height before and from now on."""

    before: _Cut | None = Field(default=None, alias="from")
    to: _Cut

    @model_validator(mode="after")
    def _changes(self) -> CutHeights:
        if self.before == self.to:
            raise wrong(f"{self.to:g} mm before and after", "another height than before")
        return self


class Trench(Model):
    """A trench; everything may be left out."""

    length: _TrenchLength | None = None
    width: _TrenchWidth | None = None
    depth: _TrenchDepth | None = None


class NoFields(Model):
    """Work without quantities."""


def _narrower_than_pattern(what: str, diameter: float, spacing: tuple[float, float]) -> None:
    across, along = spacing
    if diameter >= min(across, along):
        raise wrong(f"{what} of {diameter:g} mm at {across:g} x {along:g} mm", f"{what} narrower than their spacing")


def _check_depth(depth: float, kind: Kind) -> None:
    deepest = _DEEPEST_MM.get(kind, _DEEPEST_OTHER_MM)
    if not 1 <= depth <= deepest:
        raise wrong(f"a depth of {depth:.10g} mm", f"a depth from 1 mm to {deepest:g} mm for {kind.value}")


def depth_within(kind: Kind) -> AfterValidator:
    """Make a check of the depth of tines.

    Args:
        kind: the kind of tining.
    """

    def check(tines: Tines) -> Tines:
        _check_depth(tines.depth, kind)
        return tines

    return AfterValidator(check)
