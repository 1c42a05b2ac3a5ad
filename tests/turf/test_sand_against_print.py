"""Sand against figures that other people printed: depths, masses, volumes.

Each row names its source and, as its tolerance, the rounding of the print. Rows whose print does not follow
from its own inputs are tested as differing, never forced to fit.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.quantities import parse_area_m2, parse_density_t_per_m3, parse_length_mm, parse_mass_t, parse_sand
from swardcast.turf.sand import (
    DEFAULT_DENSITY_T_PER_M3,
    depth_mm_from_kg_per_m2,
    dry_t_from_moist,
    hidden_fraction,
    infill_mm,
    kg_per_m2_from_depth,
    moist_t_from_dry,
    surplus_mm,
    tonnes_on_area,
)

YD3_M3 = 0.764554857984  # (3 x 0.3048 m)^3, exact by arithmetic
POUND_T = 0.00045359237  # exact avoirdupois pound

WOODS_AUG_2017 = "Woods 20 Aug 2017, 'Sand topdressing to match grass growth', Asian Turfgrass Center"
WOODS_SEP_2017 = "Woods 3 Sep 2017, 'Sand topdressing and growth potential', Asian Turfgrass Center"
WOODS_DEC_2017 = "Woods 20 Dec 2017, 'Topdressing frequency on golf course putting greens in Japan'"
WOODS_MAY_2020 = (
    "Woods 1 May 2020, 'Sand topdressing by growth rate and clipping volume', quoting Hempfling et al. 2017, "
    "Crop Science 57:602"
)
SCHMID = "Schmid et al. 2014, Applied Turfgrass Science, quoted by Woods 3 Aug 2020, 'Updated spreadsheets ... by GP'"
WHITLARK_THOMPSON = (
    "Whitlark & Thompson 2019, 'Light and frequent topdressing programs', Green Section Record 57(9), quoted by "
    "Woods 3 Aug 2020"
)
WOODS_OCT_2021 = "Woods 28 Oct 2021, 'Sand topdressing and surface layer organic matter', Asian Turfgrass Center"
WOODS_DEC_2020 = "Woods 24 Dec 2020, 'Sand topdressing by exact depth: how to work it out', Asian Turfgrass Center"
WOODS_APR_2021 = "Woods 23 Apr 2021, 'Organic matter reduction by hollow-tines, solid-tines, and sand topdressing'"
WANG = "Wang, Hempfling, Clarke & Murphy 2018, Agronomy Journal (6):2130-2135, abstract"
SUPPLIER = "a sand supplier's page, 1 Sep 2011, 'Sand math'"
GROUNDS = "Grounds Maintenance magazine, undated, article on topdressers"
CONTRACTOR = "a deep-aeration contractor's page, undated, 'Material calculations'"
LAWN_PAGE = "a general question-and-answer page quoting a lawn site, undated"
FOOTBALL_PAGE = "a general web page, undated, on sand on football fields"
CIVIL = "civil-engineering density 1.63 g/cm3 quoted by Woods 2020; 101.8 lb/ft3 on a general calculator page, 2025"


def _mm(text: str, density: float = 1.5) -> float:
    """Depth of an amount as it is written, whether it is a depth or a rate."""
    sand = parse_sand(text)
    return sand.amount if sand.basis.value == "depth_mm" else depth_mm_from_kg_per_m2(sand.amount, density)


def _yd3(area: str, depth: str) -> float:
    """Volume in cubic yards: at 1 t/m3 tonnes are cubic metres."""
    return tonnes_on_area(kg_per_m2_from_depth(parse_length_mm(depth), 1.0), parse_area_m2(area)) / YD3_M3


MATCHING = [
    pytest.param(_mm("150 lb/1000 ft2"), 0.5, 0.05, WOODS_AUG_2017, id="S04 most a month"),
    pytest.param(_mm("1,656 lb/1000 ft2"), 5.4, 0.05, WOODS_AUG_2017, id="S05 a year"),
    pytest.param(kg_per_m2_from_depth(6, 1.5), 9, 0.05, WOODS_SEP_2017, id="S07 6 mm in kg/m2"),
    pytest.param(_mm("81 t/ha"), 5.4, 0.05, WOODS_MAY_2020, id="S09 81 t/ha"),
    # Printed as a whole number of millimetres.
    pytest.param(_mm("20.3 ft3/1000 ft2"), 6, 0.5, SCHMID, id="S10 a year in Nebraska"),
    pytest.param(_mm("25 ft3/1000 ft2"), 7.6, 0.05, WHITLARK_THOMPSON, id="S11 low end"),
    pytest.param(_mm("35 ft3/1000 ft2"), 10.7, 0.05, WHITLARK_THOMPSON, id="S11 high end"),
    pytest.param(2 / _mm("1 ft3/1000 ft2"), 6.6, 0.05, WOODS_OCT_2021, id="S14 2 mm in ft3/1000 ft2"),
    # 400 g caught on 2,000 cm2 are 2 kg/m2.
    pytest.param(depth_mm_from_kg_per_m2(0.4 / 0.2, 1.5), 1.3, 0.05, WOODS_DEC_2020, id="S15 sand caught in pans"),
    pytest.param(100 * (7.7 / _mm("20.3 ft3/1000 ft2") - 1), 25, 1, WOODS_DEC_2017, id="S17 Japan against Nebraska"),
    pytest.param(_mm("2.4 L/m2") * 2 + _mm("1.2 L/m2"), 6.0, 0.05, WANG, id="S19 litres on a square metre"),
    pytest.param(_yd3("1 ft2", "1 in"), 0.0031, 0.00005, SUPPLIER, id="S22 factor for ft2 and in"),
    pytest.param(_yd3("50,000 ft2", "1/4 in"), 39, 0.5, GROUNDS, id="S24 50,000 ft2 at a quarter inch"),
    pytest.param(parse_density_t_per_m3("100 lb/ft3") * YD3_M3 / POUND_T, 2700, 0.5, CONTRACTOR, id="S25 a cubic yard"),
    pytest.param(
        parse_mass_t("24 US tons") / parse_density_t_per_m3("100 lb/ft3") / YD3_M3,
        17.78,
        0.005,
        CONTRACTOR,
        id="S26 a load of 24 US tons",
    ),
    pytest.param(_yd3("1,000 ft2", "1/4 in"), 0.77, 0.005, LAWN_PAGE, id="S28b a quarter inch"),
    pytest.param(_yd3("1,000 ft2", "3/8 in"), 1.2, 0.05, FOOTBALL_PAGE, id="S40a three eighths"),
    pytest.param(_yd3("1,000 ft2", "1/2 in"), 1.5, 0.05, FOOTBALL_PAGE, id="S40b half an inch"),
    pytest.param(parse_density_t_per_m3("101.8 lb/ft3"), 1.63, 0.005, CIVIL, id="S42 a heavier sand"),
    # 12 mm at 5 x 5 cm is 4.524 % (row T03); 7 cm of it.
    pytest.param(infill_mm(0.045239, 70), 3.167, 0.0005, WOODS_APR_2021, id="T08 mm of sand that holes take"),
]


@pytest.mark.parametrize(("ours", "printed", "rounding", "source"), MATCHING)
def test_our_sand_sums_give_the_printed_figure(ours: float, printed: float, rounding: float, source: str) -> None:
    assert ours == pytest.approx(printed, abs=rounding), source


def test_our_volumes_differ_from_a_printed_pair_for_light_dressing_because_it_is_20_percent_high() -> None:
    # S01, Skorulski 2014, USGA Green Section, 'Too easy to take for granted': 0.005 to 0.020 in, printed as
    # 0.5 to 2.0 ft3/1000 ft2. By hand: 0.005 / 12 x 1000 = 0.417 and 0.020 / 12 x 1000 = 1.667.
    low, high = (parse_length_mm(f"{depth} in") / _mm("1 ft3/1000 ft2") for depth in ("0.005", "0.020"))
    assert (low, high) == pytest.approx((0.417, 1.667), abs=0.0005)
    assert low != pytest.approx(0.5, abs=0.05)
    assert high != pytest.approx(2.0, abs=0.05)


def test_our_volume_for_an_acre_differs_from_print_because_that_is_under_a_third_of_it() -> None:
    # S29, a general web page, undated: an acre at 1/4 in, printed 10.5 yd3. By hand: 43,560 x 0.25 / 324 = 33.6.
    volume = _yd3("1 acre", "1/4 in")
    assert volume == pytest.approx(33.6, abs=0.05)
    assert volume > 3 * 10.5


def test_our_volume_for_an_eighth_of_an_inch_differs_from_print_because_those_prints_are_not_linear() -> None:
    # S28a and S28c, a general question-and-answer page, undated: 1/8 in 0.40, 1/4 in 0.77, 3/8 in 1.14 yd3 on
    # 1,000 ft2. By hand: 1000 x 0.125 / 324 = 0.386 and three times that is 1.157.
    eighth, three_eighths = _yd3("1,000 ft2", "1/8 in"), _yd3("1,000 ft2", "3/8 in")
    assert (eighth, three_eighths) == pytest.approx((0.386, 1.157), abs=0.0005)
    assert eighth != pytest.approx(0.40, abs=0.005)
    assert three_eighths != pytest.approx(1.14, abs=0.005)


def test_our_tons_in_a_yard_differ_from_a_printed_factor_because_its_own_page_says_1_35() -> None:
    # S27, a deep-aeration contractor's page, undated: "yd3 x 1.3 = tons", though 2,700 lb are 1.35 US tons.
    tons = parse_density_t_per_m3("100 lb/ft3") * YD3_M3 / parse_mass_t("1 US ton")
    assert tons == pytest.approx(1.35, abs=0.0005)
    assert tons != pytest.approx(1.3, abs=0.04)


def test_the_density_that_is_taken_where_the_club_gives_none_lies_within_print() -> None:
    # 1.5 (Woods 2017) to 1.72 t/m3 (Minner 2004); 1.56 after Woods 3 Oct 2021, 'Sand and organic matter have
    # different bulk densities'.
    assert DEFAULT_DENSITY_T_PER_M3 == 1.56
    assert 1.5 <= DEFAULT_DENSITY_T_PER_M3 <= 1.72


@pytest.mark.parametrize(
    ("surplus", "hidden"),
    # By hand: 1 - exp(-0.3/2.85), 1 - exp(-1.2/2.85), 1 - exp(-2.4/2.85).
    [(0.0, 0.0), (0.3, 0.0999), (1.2, 0.3436), (2.4, 0.5692)],
    ids=["no surplus", "0.3 mm", "1.2 mm", "2.4 mm"],
)
def test_surplus_sand_hides_the_share_of_the_leaf_that_hand_arithmetic_gives(surplus: float, hidden: float) -> None:
    assert hidden_fraction(surplus) == pytest.approx(hidden, abs=0.00005)


@given(st.floats(0, 50), st.floats(0, 50))
def test_sand_spread_is_what_fits_into_the_holes_and_what_stays_on_top(spread: float, room: float) -> None:
    assert min(spread, room) + surplus_mm(spread, room) == pytest.approx(spread)
    assert surplus_mm(spread, room) >= 0


@given(st.floats(0, 50), st.floats(0, 50))
def test_more_surplus_never_hides_less_and_never_more_than_everything(one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert 0 <= hidden_fraction(less) <= hidden_fraction(more) <= 1


@given(st.floats(0.001, 100), st.floats(0.5, 2.5))
def test_a_depth_turned_into_a_mass_and_back_is_the_same_depth(depth: float, density: float) -> None:
    back = depth_mm_from_kg_per_m2(kg_per_m2_from_depth(depth, density), density)
    assert math.isclose(back, depth, rel_tol=1e-12)


def test_moist_sand_has_less_dry_sand_than_it_weighs() -> None:
    """A worked example of soil mechanics, seen on a page of questions: a moist unit weight of 20.5 at 25 % of water by dry
    mass is 16.4 dry. By hand 28 t at 6 % are 26.415 t dry."""
    assert dry_t_from_moist(20.5, 0.25) == pytest.approx(16.4)
    assert dry_t_from_moist(28, 0.06) == pytest.approx(26.415, abs=0.0005)
    assert dry_t_from_moist(28, 0) == 28


@given(st.floats(0.001, 1000), st.floats(0, 0.3))
def test_drying_and_wetting_undo_each_other_and_the_water_is_the_difference(dry_t: float, water: float) -> None:
    """w = (m_moist - m_dry) / m_dry."""
    moist_t = moist_t_from_dry(dry_t, water)
    assert dry_t_from_moist(moist_t, water) == pytest.approx(dry_t)
    assert (moist_t - dry_t) / dry_t == pytest.approx(water, abs=1e-9)
