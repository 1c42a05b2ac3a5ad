"""Operations written as the plan has them: what a draft of an entry puts into the log."""

from __future__ import annotations

from typing import Final

from swardcast.quantities import Sand, SandBasis
from swardcast.records.operations import (
    Dressing,
    Grooving,
    HeightOfCut,
    Operation,
    ProductUse,
    SandInjection,
    Seeding,
    Stripping,
    Tining,
    Trenching,
)

__all__ = ["operation_in_fields"]

_SAND_UNIT: Final = {
    SandBasis.DEPTH_MM: "mm",
    SandBasis.KG_PER_M2: "kg/m2",
    SandBasis.TONNES_EACH: "t each",
    SandBasis.TONNES_IN_ALL: "t",
}


def operation_in_fields(operation: Operation) -> dict[str, str]:
    """Write an operation's quantities as the plan has them.

    Args:
        operation: the operation.

    Returns:
        Quantities with their unit by field, exact to twelve figures.
    """
    match operation:
        case Tining() | Grooving() | Stripping() | SandInjection():
            return _of_the_machine(operation)
        case Dressing():
            return {"sand": _sand(operation.sand)}
        case Seeding():
            rate = operation.rate_g_per_m2
            return {"seed": operation.seed, **({"rate": f"{rate:.12g} g/m2"} if rate is not None else {})}
        case ProductUse():
            return _of_the_product(operation)
        case HeightOfCut():
            return {**_length("from", operation.from_mm), "to": _mm(operation.to_mm)}
        case Trenching():
            long = {} if operation.length_m is None else {"length": f"{operation.length_m:.12g} m"}
            return {**long, **_length("width", operation.width_mm), **_length("depth", operation.depth_mm)}
        case _:
            return {}


def _of_the_machine(operation: Tining | Grooving | Stripping | SandInjection) -> dict[str, str]:
    match operation:
        case Tining():
            return {
                "diameter": _mm(operation.diameter_mm),
                **_length("inside diameter", operation.inside_diameter_mm),
                **_pattern(operation.across_mm, operation.along_mm),
                "depth": _mm(operation.depth_mm),
                **_passes(operation.passes),
            }
        case Grooving():
            return {
                "blade": _mm(operation.blade_mm),
                "spacing": _mm(operation.spacing_mm),
                "depth": _mm(operation.depth_mm),
                **_passes(operation.passes),
            }
        case Stripping():
            return {"depth": _mm(operation.depth_mm), "share": f"{100 * operation.share:.12g} %"}
        case SandInjection():
            return {
                **_length("diameter", operation.diameter_mm),
                **_pattern(operation.across_mm, operation.along_mm),
                **_length("depth", operation.depth_mm),
                **({"sand": _sand(operation.sand)} if operation.sand is not None else {}),
            }


def _of_the_product(use: ProductUse) -> dict[str, str]:
    return {
        "product": use.product,
        "re-entry": use.re_entry,
        "signs": use.signs,
        "label read by": use.label_read_by,
        "label read on": use.label_read_on.isoformat(),
        **({"rate": use.rate} if use.rate else {}),
        **({"water in": use.water_in} if use.water_in else {}),
    }


def _mm(value: float) -> str:
    return f"{value:.12g} mm"


def _length(field: str, value: float | None) -> dict[str, str]:
    return {} if value is None else {field: _mm(value)}


def _pattern(across_mm: float | None, along_mm: float | None) -> dict[str, str]:
    return {} if across_mm is None or along_mm is None else {"spacing": f"{across_mm:.12g} x {_mm(along_mm)}"}


def _sand(sand: Sand) -> str:
    return f"{sand.amount:.12g} {_SAND_UNIT[sand.basis]}"


def _passes(passes: int) -> dict[str, str]:
    return {"passes": str(passes)} if passes > 1 else {}
