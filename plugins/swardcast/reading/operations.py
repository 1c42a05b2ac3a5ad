"""Operations in a plan or a log entry -> records."""

from __future__ import annotations

import re
from typing import Annotated, Any, Final

from pydantic import BaseModel, model_validator

from swardcast.reading.near_kinds import kind_meant
from swardcast.reading.operation_fields import (
    Blades,
    CutHeights,
    Injection,
    NoFields,
    Product,
    SandSpread,
    Seed,
    Strip,
    Tines,
    Trench,
    depth_within,
)
from swardcast.reading.schema import Model, wrong
from swardcast.records import operations as work
from swardcast.records.operations import Kind, Operation

__all__ = ["OperationItem", "operation_from"]

_KNOWN: Final = tuple(kind.value for kind in Kind)


class OperationItem(Model):
    """One line of a list of operations: the kind, and its quantities below."""

    hollow_tining: Annotated[Tines, depth_within(Kind.HOLLOW_TINING)] | None = None
    solid_tining: Annotated[Tines, depth_within(Kind.SOLID_TINING)] | None = None
    needle_tining: Annotated[Tines, depth_within(Kind.NEEDLE_TINING)] | None = None
    deep_tining: Annotated[Tines, depth_within(Kind.DEEP_TINING)] | None = None
    sand_injection: Injection | None = None
    scarifying: Blades | None = None
    verticutting: Blades | None = None
    fraise_mowing: Strip | None = None
    topdressing: SandSpread | None = None
    brushing_in: NoFields | None = None
    overseeding: Seed | None = None
    granular_feed: Product | None = None
    liquid_feed: Product | None = None
    wetting_agent: Product | None = None
    plant_protection: Product | None = None
    rolling: NoFields | None = None
    change_of_cutting_height: CutHeights | None = None
    re_turfing: NoFields | None = None
    seeding_bare_ground: Seed | None = None
    bunker_re_sanding: SandSpread | None = None
    bunker_liner: NoFields | None = None
    bunker_edging: NoFields | None = None
    bunker_drainage: Trench | None = None
    drainage_trenching: Trench | None = None
    irrigation_work: Trench | None = None
    tree_work: NoFields | None = None
    path_work: NoFields | None = None
    temporary_greens: NoFields | None = None
    winter_protection: NoFields | None = None

    model_config = {
        **Model.model_config,
        "alias_generator": lambda name: re.sub(r"\bre (?=turf|sand)", "re-", name.replace("_", " ")),
    }

    @model_validator(mode="before")
    @classmethod
    def _one_kind(cls, value: Any) -> Any:
        if isinstance(value, str):
            value = {value: {}}
        if not isinstance(value, dict) or len(value) != 1:
            raise wrong(value, "one kind of work on each line, such as '- hollow tining: {...}'")
        ((kind, fields),) = value.items()
        if kind not in _KNOWN:
            raise wrong(kind, f"one of: {', '.join(_KNOWN)}", kind_meant(kind))
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
    return _opened(kind, fields) or _brought(kind, fields) or _changed(kind, fields)


def _opened(kind: Kind, fields: BaseModel) -> Operation | None:
    """What tines and blades do."""
    match fields:
        case Tines():
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
        case Injection():
            across, along = fields.spacing or (None, None)
            return work.SandInjection(
                kind=kind,
                diameter_mm=fields.diameter,
                across_mm=across,
                along_mm=along,
                depth_mm=fields.depth,
                sand=fields.sand,
            )
        case Blades():
            return work.Grooving(
                kind=kind,
                blade_mm=fields.blade,
                spacing_mm=fields.spacing,
                depth_mm=fields.depth,
                passes=fields.passes,
            )
        case Strip():
            return work.Stripping(kind=kind, depth_mm=fields.depth, share=fields.share)
        case _:
            return None


def _brought(kind: Kind, fields: BaseModel) -> Operation | None:
    """What is brought to a surface: sand, seed, a product."""
    match fields:
        case SandSpread():
            return work.Dressing(kind=kind, sand=fields.sand)
        case Seed():
            return work.Seeding(kind=kind, seed=fields.seed, rate_g_per_m2=fields.rate)
        case Product():
            return work.ProductUse(
                kind=kind,
                product=fields.product,
                re_entry=fields.re_entry,
                signs=fields.signs,
                label_read_by=fields.label_read_by,
                label_read_on=fields.label_read_on,
                rate=fields.rate,
                water_in=fields.water_in,
            )
        case _:
            return None


def _changed(kind: Kind, fields: BaseModel) -> Operation:
    match fields:
        case CutHeights():
            return work.HeightOfCut(kind=kind, from_mm=fields.before, to_mm=fields.to)
        case Trench():
            length_m = None if fields.length is None else fields.length / 1000
            return work.Trenching(kind=kind, length_m=length_m, width_mm=fields.width, depth_mm=fields.depth)
        case _:
            return work.OtherWork(kind=kind)
