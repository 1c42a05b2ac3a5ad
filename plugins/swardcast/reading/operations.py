"""Operations in a plan or a log entry -> records, with the limits of what a machine can do."""

from __future__ import annotations

from typing import Annotated, Any, Final

from pydantic import AfterValidator, model_validator

from swardcast.errors import nearest
from swardcast.quantities import Sand, SandBasis
from swardcast.reading.schema import Count, Fraction, Length, Model, SandAmount, SeedRate, Spacing, Text, within, wrong
from swardcast.records import operations as work
from swardcast.records.operations import Kind, Operation

__all__ = ["OperationItem", "operation_from"]

_DEEPEST_MM: Final = {Kind.DEEP_TINING: 350.0}  # the deepest machine tines of the trade; common practice
_DEEPEST_OTHER_MM: Final = 200.0

_MOST_SAND: Final = {  # beyond anything that is spread on turf or put into a bunker: judgement
    SandBasis.DEPTH_MM: (600.0, "600 mm"),
    SandBasis.KG_PER_M2: (900.0, "900 kg/m2"),
    SandBasis.TONNES_EACH: (500.0, "500 t on each"),
    SandBasis.TONNES_IN_ALL: (5000.0, "5,000 t in all"),
}

_Tine = Annotated[Length, within(1, 40, "a tine from 1 mm to 40 mm; greens take 8 mm to 19 mm")]
_Blade = Annotated[Length, within(0.5, 20, "a blade from 0.5 mm to 20 mm; greens take 1 mm to 3 mm")]
_BladeSpacing = Annotated[Length, within(5, 200, "blades from 5 mm to 200 mm apart")]
_GrooveDepth = Annotated[
    Length, within(0.1, 60, "a depth from 0.1 mm to 60 mm; light scarifying works 1 mm to 2 mm deep")
]

_StripDepth = Annotated[Length, within(1, 60, "a depth from 1 mm to 60 mm")]


class _Tines(Model):
    diameter: _Tine
    inside_diameter: _Tine | None = None
    spacing: Spacing
    depth: Length
    passes: Count = 1

    @model_validator(mode="after")
    def _fits(self) -> _Tines:
        across, along = self.spacing
        if self.diameter >= min(across, along):
            raise wrong(
                f"tines of {self.diameter:g} mm at {across:g} x {along:g} mm", "tines narrower than their spacing"
            )
        if self.inside_diameter is not None and self.inside_diameter >= self.diameter:
            raise wrong(
                f"{self.inside_diameter:g} mm inside {self.diameter:g} mm", "an inside diameter below the outside"
            )
        return self


class _Blades(Model):
    blade: _Blade
    spacing: _BladeSpacing
    depth: _GrooveDepth
    passes: Count = 1

    @model_validator(mode="after")
    def _fits(self) -> _Blades:
        if self.blade >= self.spacing:
            raise wrong(f"blades of {self.blade:g} mm at {self.spacing:g} mm", "blades narrower than their spacing")
        return self


class _Strip(Model):
    depth: _StripDepth
    share: Annotated[Fraction, within(0.01, 1, "a share of the surface from 1 % to 100 %")] = 1.0


def _sensible_sand(sand: Sand) -> Sand:
    most, said = _MOST_SAND[sand.basis]
    if not 0 < sand.amount <= most:
        raise wrong(f"{sand.amount:g}", f"at most {said} of sand and more than none", "Check the figure and its unit.")
    return sand


class _Sand(Model):
    sand: Annotated[SandAmount, AfterValidator(_sensible_sand)]


class _Seed(Model):
    seed: Text
    rate: Annotated[SeedRate, within(0.1, 100, "a seed rate from 0.1 to 100 g/m2")] | None = None


class _Feed(Model):
    product: Text
    label: Text
    label_read_by: Text


class _NoFields(Model):
    """Work without quantities."""


def _depth_within(kind: Kind) -> AfterValidator:
    deepest = _DEEPEST_MM.get(kind, _DEEPEST_OTHER_MM)

    def check(tines: _Tines) -> _Tines:
        if not 1 <= tines.depth <= deepest:
            raise wrong(f"a depth of {tines.depth:g} mm", f"a depth from 1 mm to {deepest:g} mm for {kind.value}")
        return tines

    return AfterValidator(check)


class OperationItem(Model):
    """One line of a list of operations: the kind, and its quantities below."""

    hollow_tining: Annotated[_Tines, _depth_within(Kind.HOLLOW_TINING)] | None = None
    solid_tining: Annotated[_Tines, _depth_within(Kind.SOLID_TINING)] | None = None
    needle_tining: Annotated[_Tines, _depth_within(Kind.NEEDLE_TINING)] | None = None
    deep_tining: Annotated[_Tines, _depth_within(Kind.DEEP_TINING)] | None = None
    scarifying: _Blades | None = None
    verticutting: _Blades | None = None
    fraise_mowing: _Strip | None = None
    topdressing: _Sand | None = None
    brushing_in: _NoFields | None = None
    overseeding: _Seed | None = None
    feeding: _Feed | None = None
    rolling: _NoFields | None = None
    re_turfing: _NoFields | None = None
    bunker_re_sanding: _Sand | None = None
    drainage: _NoFields | None = None

    model_config = {
        **Model.model_config,
        "alias_generator": lambda name: name.replace("re_", "re-").replace("_", " "),
    }

    @model_validator(mode="before")
    @classmethod
    def _one_kind(cls, value: Any) -> Any:
        if isinstance(value, str):
            value = {value: {}}
        if not isinstance(value, dict) or len(value) != 1:
            raise wrong(value, "one kind of work on each line, such as '- hollow tining: {...}'")
        ((kind, fields),) = value.items()
        known = [choice.value for choice in Kind]
        if kind not in known:
            raise wrong(kind, f"one of: {', '.join(known)}", nearest(kind, known))
        return {kind: {} if fields is None else fields}


def operation_from(item: OperationItem) -> Operation:
    """Turn a checked line into an operation.

    Args:
        item: the line.

    Returns:
        The operation.
    """
    ((name, fields),) = ((name, getattr(item, name)) for name in item.model_fields_set)
    kind = Kind(OperationItem.model_fields[name].alias)
    match fields:
        case _Tines():
            across_mm, along_mm = fields.spacing
            return work.Tining(
                kind=kind,
                diameter_mm=fields.diameter,
                inside_diameter_mm=fields.inside_diameter,
                across_mm=across_mm,
                along_mm=along_mm,
                depth_mm=fields.depth,
                passes=fields.passes,
            )
        case _Blades():
            return work.Grooving(
                kind=kind,
                blade_mm=fields.blade,
                spacing_mm=fields.spacing,
                depth_mm=fields.depth,
                passes=fields.passes,
            )
        case _Strip():
            return work.Stripping(kind=kind, depth_mm=fields.depth, share=fields.share)
        case _Sand():
            return work.Dressing(kind=kind, sand=fields.sand)
        case _Seed():
            return work.Seeding(kind=kind, seed=fields.seed, rate_g_per_m2=fields.rate)
        case _Feed():
            return work.Feeding(
                kind=kind, product=fields.product, label=fields.label, label_read_by=fields.label_read_by
            )
        case _:
            return work.OtherWork(kind=kind)
