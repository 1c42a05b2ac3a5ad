"""`swardcast reckon tines`, `grooves` and `sand`: fixed keys, sums by hand, refusals in plain words."""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from typing import Any

import pytest

from tests.cli.conftest import Done

OF_SAND = ["infill_mm", "infill_kg_per_m2", "infill_t", "density_t_per_m3"]
OF_SHARES = ["surface_disturbed_fraction", "surface_removed_fraction"]
TINES = ("--diameter", "12 mm", "--spacing", "5 x 5 cm", "--depth", "7 cm")
A_LENGTH = "a length with its unit, such as '13 mm' or '1/2 in'"


@pytest.fixture
def reckon(swardcast: Callable[..., Done]) -> Callable[..., dict[str, Any]]:
    def read(*words: str) -> dict[str, Any]:
        done = swardcast("reckon", *words, "--json")
        assert (done.code, done.err) == (0, "")
        result = json.loads(done.out)
        assert isinstance(result, dict)
        return result

    return read


def test_tines_are_as_a_soil_scientist_printed_them(reckon: Callable[..., dict[str, Any]]) -> None:
    """12 mm at 5 x 5 cm, 7 cm deep: 400 holes/m2, 4.5 %, 3.167 mm of sand; Woods 2009 and 2021."""
    result = reckon("tines", *TINES)
    assert list(result) == ["holes_per_m2", "holes", *OF_SHARES, *OF_SAND]
    assert result["holes_per_m2"] == pytest.approx(400)
    assert result["surface_disturbed_fraction"] == pytest.approx(0.045, abs=0.0005)
    assert result["surface_removed_fraction"] == result["surface_disturbed_fraction"]
    assert result["infill_mm"] == pytest.approx(3.167, abs=0.0005)
    assert (result["holes"], result["infill_t"], result["density_t_per_m3"]) == (None, None, 1.56)


def test_an_area_gives_holes_and_tonnes_in_all(reckon: Callable[..., dict[str, Any]]) -> None:
    """400 holes/m2 on 450 m2 are 180,000; 3.1667 mm at 1.5 t/m3 are 4.75 kg/m2, on 450 m2 2.1375 t."""
    result = reckon("tines", *TINES, "--area", "450 m2", "--density", "1.5 t/m3")
    assert result["holes"] == pytest.approx(180_000)
    assert result["infill_kg_per_m2"] == pytest.approx(4.75, abs=0.001)
    assert result["infill_t"] == pytest.approx(2.1375, abs=0.0005)


def test_the_inside_of_a_tine_is_removed_and_its_outside_disturbs(reckon: Callable[..., dict[str, Any]]) -> None:
    """0.470 in inside at 1.5 x 1.5 in: 7.71 % (a course manager's post, 2013); 5/8 in outside: 13.6 % by hand."""
    inch = ("--diameter", "5/8 in", "--inside-diameter", "0.470 in", "--spacing", "1.5 x 1.5 in", "--depth", "3 in")
    result = reckon("tines", *inch)
    assert result["surface_removed_fraction"] == pytest.approx(0.0771, abs=0.00005)
    assert result["surface_disturbed_fraction"] == pytest.approx(math.pi * 0.625**2 / 9)


def test_solid_tines_remove_nothing(reckon: Callable[..., dict[str, Any]]) -> None:
    result = reckon("tines", *TINES, "--solid")
    assert result["surface_removed_fraction"] == 0
    assert result["surface_disturbed_fraction"] == pytest.approx(0.045, abs=0.0005)


def test_passes_add_up(reckon: Callable[..., dict[str, Any]]) -> None:
    once, twice = reckon("tines", *TINES), reckon("tines", *TINES, "--passes", "2 passes")
    for name in ("holes_per_m2", *OF_SHARES, "infill_mm"):
        assert twice[name] == pytest.approx(2 * once[name])


def test_grooves_are_width_over_spacing(reckon: Callable[..., dict[str, Any]]) -> None:
    """3 mm blades every 25.4 mm, 1.75 in deep: 11.81 % and 5.25 mm (3 / 25.4 = 0.1181, x 44.45 mm = 5.25)."""
    result = reckon("grooves", "--blade", "3 mm", "--spacing", "1 in", "--depth", "1.75 in", "--area", "100 m2")
    assert list(result) == [*OF_SHARES, *OF_SAND]
    assert result["surface_disturbed_fraction"] == pytest.approx(0.1181, abs=0.00005)
    assert result["surface_removed_fraction"] == result["surface_disturbed_fraction"]
    assert result["infill_mm"] == pytest.approx(5.25, abs=0.001)
    assert result["infill_t"] == pytest.approx(5.25 * 1.56 * 100 / 1000)


@pytest.mark.parametrize(
    ("told", "depth_mm", "kg_per_m2"),
    [
        (("--depth", "6 mm"), 6.0, 9.0),  # Woods 2017: 6 mm at 1.5 is 9 kg/m2
        (("--rate", "81 t/ha"), 5.4, 8.1),  # Woods 2020: 81 Mg/ha is 5.4 mm
        (("--rate", "150 lb/1000 ft2"), 0.488, 0.732),  # Woods 2017: about 0.5 mm
        (("--rate", "20.3 ft3/1000 ft2"), 6.187, 9.281),  # x 0.3048
        (("--rate", "0.5 kg/m2"), 0.333, 0.5),
        (("--rate", "6 l/m2"), 6.0, 9.0),  # 1 l/m2 is 1 mm
        (("--rate", "0 mm"), 0.0, 0.0),
    ],
)
def test_sand_is_the_same_amount_in_every_unit(
    reckon: Callable[..., dict[str, Any]], told: tuple[str, str], depth_mm: float, kg_per_m2: float
) -> None:
    result = reckon("sand", *told, "--density", "1.5 t/m3", "--area", "500 m2")
    assert list(result) == ["depth_mm", "kg_per_m2", "l_per_m2", "tonnes", "density_t_per_m3"]
    assert result["depth_mm"] == pytest.approx(depth_mm, abs=0.001)
    assert result["l_per_m2"] == result["depth_mm"]
    assert result["kg_per_m2"] == pytest.approx(kg_per_m2, abs=0.001)
    assert result["tonnes"] == pytest.approx(kg_per_m2 * 500 / 1000, abs=0.001)


def test_without_an_area_there_are_no_tonnes(
    reckon: Callable[..., dict[str, Any]], swardcast: Callable[..., Done]
) -> None:
    assert reckon("sand", "--depth", "2 mm")["tonnes"] is None
    assert "tonnes: not known\n" in swardcast("reckon", "sand", "--depth", "2 mm").out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (
            ("tines", "--diameter", "50 mm", "--spacing", "50 x 60 mm", "--depth", "60 mm"),
            "swardcast reckon tines: found '50 mm'; expected a tine narrower than its spacing of 50 x 60 mm",
        ),
        (
            ("tines", *TINES, "--inside-diameter", "13 mm"),
            "swardcast reckon tines: found '13 mm inside'; expected an inside diameter of at most 12 mm",
        ),
        (
            ("tines", "--diameter", "12", "--spacing", "5 x 5 cm", "--depth", "7 cm"),
            f"argument --diameter: found '12'; expected {A_LENGTH}. A number needs its unit",
        ),
        (
            ("tines", "--diameter", "12 mm", "--spacing", "5 cm", "--depth", "7 cm"),
            "argument --spacing: found '5 cm'; expected spacing across by spacing along with their unit, such as '50 x",
        ),
        (
            ("tines", *TINES, "--passes", "0"),
            "argument --passes: found '0'; expected a whole number of passes from 1 to 50, such as '2'",
        ),
        (
            ("tines", *TINES, "--density", "15 t/m3"),
            "argument --density: found '15 t/m3'; expected a bulk density between 0.5 and 2.5 t/m3",
        ),
        (
            ("grooves", "--blade", "25 mm", "--spacing", "25 mm", "--depth", "3 mm"),
            "swardcast reckon grooves: found '25 mm'; expected a blade narrower than its spacing of 25 mm",
        ),
        (
            ("grooves", "--blade", "2 kg", "--spacing", "25 mm", "--depth", "3 mm"),
            f"argument --blade: found '2 kg'; expected {A_LENGTH}",
        ),
        (
            ("sand", "--rate", "0,5 kg/m2"),
            "Write a decimal with a point: '0.5', not '0,5'.",
        ),
        (
            ("sand", "--rate", "1.4 t"),
            "swardcast reckon sand: found '1.4 t'; expected an area for a mass of sand, such as --area '500 m2'",
        ),
        (("sand", "--depth", "2 mm", "--rate", "2 mm"), "argument --rate: not allowed with argument --depth"),
        (("sand",), "one of the arguments --depth --rate is required"),
    ],
)
def test_what_cannot_be_reckoned_is_wrong_usage_in_plain_words(
    swardcast: Callable[..., Done], words: tuple[str, ...], said: str
) -> None:
    done = swardcast("reckon", *words)
    assert (done.code, done.out) == (2, "")
    assert said in done.err
