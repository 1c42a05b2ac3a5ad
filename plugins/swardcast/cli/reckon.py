"""`swardcast reckon`: the pure sums, for a manager at the bench."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Mapping
from typing import Any

from swardcast.cli.common import new_parser, print_json, quantity
from swardcast.quantities import (
    QuantityError,
    parse_area_m2,
    parse_count,
    parse_density_t_per_m3,
    parse_length_mm,
    parse_sand,
    parse_spacing_mm,
)

__all__ = ["parser", "run"]

_WHAT = {
    "tines": (
        "holes, share of the surface and sand for tines",
        'tines --diameter "13 mm" --spacing "50 x 50 mm" --depth "60 mm" --area "500 m2"',
    ),
    "grooves": ("share of the surface and sand for blades", 'grooves --blade "2 mm" --spacing "25 mm" --depth "3 mm"'),
    "sand": ("one amount of sand in every unit", 'sand --rate "100 lb/1000 ft2" --area "500 m2"'),
    "healing": (
        "days to each milestone",
        'healing --hollow "12.7 mm at 50.8 x 50.8 mm" --start 2027-08-23 --temperatures normals.csv',
    ),
}


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options, one set for each sum."""
    options = new_parser(name, what, f"swardcast reckon {_WHAT['tines'][1]}")
    sums = options.add_subparsers(dest="sum", metavar="SUM", required=True)
    made = {}
    for sum_name, (said, example) in _WHAT.items():
        made[sum_name] = sums.add_parser(
            sum_name,
            help=said,
            description=f"{said[:1].upper()}{said[1:]}.",
            epilog=f"Example:\n  swardcast reckon {example}",
            formatter_class=argparse.RawDescriptionHelpFormatter,
            allow_abbrev=False,
        )
        made[sum_name].add_argument("--json", action="store_true", help="print for a machine")
    _tines(made["tines"])
    _grooves(made["grooves"])
    _sand(made["sand"])
    from swardcast.cli import reckon_healing

    reckon_healing.add_options(made["healing"])
    return options


def _about_sand(options: argparse.ArgumentParser) -> None:
    options.add_argument("--area", type=quantity(parse_area_m2), help="area worked, such as '500 m2'")
    options.add_argument(
        "--density",
        type=quantity(parse_density_t_per_m3),
        default=1.56,
        help="bulk density of the sand (default: 1.56 t/m3)",
    )


def _tines(options: argparse.ArgumentParser) -> None:
    options.add_argument(
        "--diameter", type=quantity(parse_length_mm), required=True, help="outside diameter, such as '13 mm'"
    )
    options.add_argument(
        "--inside-diameter",
        type=quantity(parse_length_mm),
        help="inside diameter of a hollow tine (default: the outside)",
    )
    options.add_argument("--solid", action="store_true", help="solid tines: nothing is removed")
    options.add_argument(
        "--spacing", type=quantity(parse_spacing_mm), required=True, help="across by along, such as '50 x 50 mm'"
    )
    options.add_argument("--depth", type=quantity(parse_length_mm), required=True, help="depth, such as '60 mm'")
    options.add_argument("--passes", type=quantity(parse_count), default=1, help="passes (default: 1)")
    _about_sand(options)


def _grooves(options: argparse.ArgumentParser) -> None:
    options.add_argument(
        "--blade", type=quantity(parse_length_mm), required=True, help="width of the blade, such as '2 mm'"
    )
    options.add_argument(
        "--spacing", type=quantity(parse_length_mm), required=True, help="from blade to blade, such as '25 mm'"
    )
    options.add_argument("--depth", type=quantity(parse_length_mm), required=True, help="depth, such as '3 mm'")
    options.add_argument("--passes", type=quantity(parse_count), default=1, help="passes (default: 1)")
    _about_sand(options)


def _sand(options: argparse.ArgumentParser) -> None:
    told = options.add_mutually_exclusive_group(required=True)
    told.add_argument("--depth", type=quantity(parse_length_mm), help="depth, such as '2 mm'")
    told.add_argument(
        "--rate",
        type=quantity(parse_sand),
        help="rate or mass, such as '0.5 kg/m2', '1 ft3/1000 ft2' or '1.4 t' with --area",
    )
    _about_sand(options)


def run(options: argparse.Namespace) -> int:
    """Do the sum and print it."""
    from swardcast.cli import reckon_healing

    work: Mapping[str, Callable[[argparse.Namespace], dict[str, Any]]] = {
        "tines": reckon_tines,
        "grooves": reckon_grooves,
        "sand": reckon_sand,
        "healing": reckon_healing.reckon,
    }
    try:
        result = work[options.sum](options)
    except QuantityError as error:
        print(f"swardcast reckon {options.sum}: {error}", file=sys.stderr)
        return 2
    if options.json:
        print_json(result)
    else:
        for name, value in result.items():
            print(f"{name}: {_shown(value)}")
    return 0


def _shown(value: Any) -> str:
    if isinstance(value, dict):
        return ", ".join(f"{name.replace('_', ' ')} {_shown(inner)}" for name, inner in value.items())
    if value is None:
        return "not known"
    return f"{value:,.4g}" if isinstance(value, float) and value < 1000 else f"{value:,.0f}"  # noqa: PLR2004 - layout


def reckon_tines(options: argparse.Namespace) -> dict[str, Any]:
    """Work out holes, shares and sand of tines."""
    from swardcast.turf import geometry

    across_mm, along_mm = options.spacing
    if options.diameter >= min(options.spacing):
        raise QuantityError(
            f"{options.diameter:g} mm", f"a tine narrower than its spacing of {across_mm:g} x {along_mm:g} mm"
        )
    bore = options.inside_diameter or options.diameter
    if bore > options.diameter:
        raise QuantityError(f"{bore:g} mm inside", f"an inside diameter of at most {options.diameter:g} mm")
    per_m2 = options.passes * geometry.holes_per_m2(across_mm=across_mm, along_mm=along_mm)

    def share(diameter_mm: float) -> float:
        return geometry.hole_area_fraction(
            diameter_mm=diameter_mm, across_mm=across_mm, along_mm=along_mm, passes=options.passes
        )

    return {
        "holes_per_m2": per_m2,
        "holes": per_m2 * options.area if options.area is not None else None,
        "surface_disturbed_fraction": share(options.diameter),
        "surface_removed_fraction": 0.0 if options.solid else share(bore),
        **_infill(share(bore), options),
    }


def reckon_grooves(options: argparse.Namespace) -> dict[str, Any]:
    """Work out shares and sand of blades."""
    from swardcast.turf import geometry

    if options.blade >= options.spacing:
        raise QuantityError(f"{options.blade:g} mm", f"a blade narrower than its spacing of {options.spacing:g} mm")
    share = geometry.groove_area_fraction(width_mm=options.blade, spacing_mm=options.spacing, passes=options.passes)
    return {"surface_disturbed_fraction": share, "surface_removed_fraction": share, **_infill(share, options)}


def _infill(share: float, options: argparse.Namespace) -> dict[str, Any]:
    from swardcast.turf import sand

    depth_mm = sand.infill_mm(share, options.depth)
    rate = sand.kg_per_m2_from_depth(depth_mm, options.density)
    return {
        "infill_mm": depth_mm,
        "infill_kg_per_m2": rate,
        "infill_t": sand.tonnes_on_area(rate, options.area) if options.area is not None else None,
        "density_t_per_m3": options.density,
    }


def reckon_sand(options: argparse.Namespace) -> dict[str, Any]:
    """Turn one amount of sand into every unit."""
    from swardcast.quantities import Sand, SandBasis
    from swardcast.records.translate import sand_depth_mm
    from swardcast.turf import sand

    told = options.rate or Sand(options.depth, SandBasis.DEPTH_MM)
    depth_mm = sand_depth_mm(told, area_m2=options.area, all_area_m2=options.area, density=options.density)
    if depth_mm is None:
        raise QuantityError(f"{told.amount:g} t", "an area for a mass of sand, such as --area '500 m2'")
    rate = sand.kg_per_m2_from_depth(depth_mm, options.density)
    return {
        "depth_mm": depth_mm,
        "kg_per_m2": rate,
        "l_per_m2": depth_mm,
        "tonnes": sand.tonnes_on_area(rate, options.area) if options.area is not None else None,
        "density_t_per_m3": options.density,
    }
