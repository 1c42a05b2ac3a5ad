"""Faults in choices.yaml and in the private block of club.yaml are told like all others, all at once."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.errors import InputNeedsAttention
from swardcast.quantities import SandBasis
from swardcast.reading.choices_file import usual_choices
from swardcast.reading.folder import read_club_folder
from swardcast.records.club import SurfaceKind
from swardcast.records.operations import Dressing, Kind, Tining
from tests.reading.breaking import CLUB, assert_said, fault, problems_in, replace

CHOICES = "choices.yaml"

IN_CHOICES = [
    fault(
        "a kind of work misspelt",
        "- scarifying:",
        "- scarifyng:",
        "line «scarifyng:», choice 5, operation 1: found 'scarifyng'; expected one of: …. Did you mean 'scarifying'?",
    ),
    fault(
        "a field misspelt",
        "surfaces a day: 4",
        "surfaces a dya: 4",
        "line «surfaces a dya», choice 1, surfaces a dya: found the unknown field 'surfaces a dya'; expected one of: name,"
        " for, operations, source, surfaces a day, cost per surface, normal after. Did you mean 'surfaces a day'?",
    ),
    fault(
        "a tine without a unit",
        "diameter: 16 mm",
        "diameter: 16",
        "line «diameter: 16,», choice 3, operation 1, hollow tining.diameter: found '16'; expected a length with its unit, …",
    ),
    fault(
        "a kind of surface misspelt",
        "for: greens",
        "for: grens",
        "line «for: grens», choice 1, for: found 'grens'; expected kinds of surface: greens, tees, approaches, fairways,"
        " roughs, bunkers, practice grounds. Did you mean 'greens'?",
    ),
    fault(
        "work for which nothing is computed, without its usual time",
        "    normal after: {from: 4 to 6 weeks, source: the club's own experience}\n",
        "",
        "line «Contractor with drill and fill», choice 6: found 'sand injection, for which no date can be computed';"
        " expected 'normal after' with the usual time, such as {from: 4 to 8 weeks, source: our own experience}",
    ),
    fault(
        "a state instead of work",
        "- sand injection: {diameter: 19 mm, depth: 200 mm, spacing: 160 x 160 mm, sand: 2 t/green}",
        "- temporary greens",
        "line «Contractor with drill and fill», choice 6: found 'temporary greens'; expected work that is done and heals;"
        " this one is a state that lasts until an entry ends it",
    ),
    fault(
        "a name twice",
        "name: Fat hollow tines, wide apart",
        "name: Fine hollow tines at close spacing",
        "line 17, name: found 'Fine hollow tines at close spacing' a second time; expected a name of its own for each;"
        " line 3 has this one",
    ),
    fault(
        "no operation",
        "    operations:\n      - scarifying: {blade: 2 mm, spacing: 25 mm, depth: 15 mm}\n      - topdressing: {sand: 1 t/green}\n"
        "      - brushing in\n",
        "    operations: []\n",
        "line «operations: []», choice 5, operations: found a list of 0; expected at least one line starting with '- '",
    ),
    fault(
        "no cost",
        "cost per surface: 412.75",
        "cost per surface: -3",
        "line «cost per surface: -3», choice 6, cost per surface: found '-3'; expected an amount from 0 to 1,000,000."
        " Check the figure and its unit.",
    ),
]

IN_CLUB = [
    fault(
        "a currency that is none",
        "currency: GBP",
        "currency: pounds",
        "line «currency: pounds», planning.currency: found 'pounds'; expected a currency by its three letters (ISO 4217),"
        " such as 'GBP', 'EUR' or 'USD'",
    ),
    fault(
        "a currency misspelt",
        "currency: GBP",
        "currency: GBQ",
        "line «currency: GBQ», planning.currency: found 'GBQ'; expected a currency of ISO 4217, such as 'GBP', 'EUR' or"
        " 'USD'",
    ),
    fault(
        "prices in no currency",
        "  currency: GBP\n",
        "",
        "line «planning:», planning: found 'a price without a currency'; expected its three letters, such as"
        " 'currency: GBP'",
    ),
    fault(
        "a price without what it is for",
        "47.35 per tonne",
        "47.35",
        "line «sand price: 47.35», planning.sand price: found '47.35'; expected a price with what it is for, such as"
        " '45 per tonne' or '40 per US ton'",
    ),
    fault(
        "a price for a ton of no country",
        "47.35 per tonne",
        "47.35 per ton",
        "line «sand price», planning.sand price: found '47.35 per ton'; expected a price with what it is for, such as"
        " '45 per tonne' or '40 per US ton'. A 'ton' is 2,000 pounds to some and 1,000 kg to others: write 't' or 'US ton'.",
    ),
    fault(
        "the cost of an unknown kind of work",
        "    solid tining: 61.45",
        "    spiking: 61.45",
        "line «spiking», planning.cost per green.spiking: found 'spiking'; expected one of: …. …",
    ),
    fault(
        "an aim of sand by the tonne",
        "sand: 8.37 mm",
        "sand: 80 t",
        "line «yearly goal», planning.yearly goal.sand: found '80 t'; expected sand as a depth or a rate, such as '8 mm' or"
        " '6 kg/m2'",
    ),
    fault(
        "an aim above all that was ever seen",
        "sand: 8.37 mm",
        "sand: 835 mm",
        "line «yearly goal», planning.yearly goal.sand: found '835 mm'; expected sand of a year up to 50 mm or 80 kg/m2."
        " Check the figure and its unit.",
    ),
    fault(
        "an unknown aim",
        "surface disturbed: 17.63 %",
        "surface worked: 17.63 %",
        "line «yearly goal», planning.yearly goal.surface worked: found the unknown field 'surface worked'; expected one of:"
        " for, surface disturbed, surface removed, sand. Did you mean …?",
    ),
]


@pytest.mark.parametrize(("old", "new", "says"), IN_CHOICES)
def test_a_fault_in_choices(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / CHOICES, old, new)
    assert_said(demo_club, CHOICES, says)


@pytest.mark.parametrize(("old", "new", "says"), IN_CLUB)
def test_a_fault_in_what_the_club_keeps_to_itself(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / CLUB, old, new)
    assert_said(demo_club, CLUB, says)


def test_faults_in_several_files_are_told_at_once(demo_club: Path) -> None:
    replace(demo_club / CHOICES, "diameter: 16 mm", "diameter: 16")
    replace(demo_club / CHOICES, "for: greens", "for: grens")
    replace(demo_club / CLUB, "sand: 8.37 mm", "sand: 80 t")
    assert [problem.file for problem in problems_in(demo_club)] == [CHOICES, CHOICES, CLUB]


@pytest.mark.parametrize("text", ["", "# later\n", "choices:\n", "choices: []\n"])
def test_a_file_in_which_no_choice_stands_yet_is_as_good_as_none(demo_club: Path, text: str) -> None:
    (demo_club / CHOICES).write_text(text, encoding="utf-8")
    planning = read_club_folder(demo_club).planning
    assert (planning.choices, planning.faults) == ((), ())


def test_choices_that_cannot_meet_may_be_called_alike(demo_club: Path) -> None:
    """Line 3 is for greens, line 17 for tees: no comparison has both. In capitals it is the same name."""
    replace(demo_club / CHOICES, "Fat hollow tines, wide apart\n    for: greens", "{name}\n    for: tees")
    replace(demo_club / CHOICES, "{name}", "fine hollow tines  at close SPACING")
    assert problems_in(demo_club) == []
    replace(demo_club / CHOICES, "for: tees", "for: tees and greens")
    said = "found 'fine hollow tines at close SPACING' a second time; expected a name of its own for each"
    assert_said(demo_club, CHOICES, (f"line 17, name: {said}; line 3 has this one",))


def test_a_fault_in_choices_keeps_nothing_else_from_being_read(demo_club: Path) -> None:
    replace(demo_club / CHOICES, "- scarifying:", "- scarifyng:")
    records = read_club_folder(demo_club)
    assert (len(records.planning.faults), records.planning.choices) == (1, ())
    assert records.planning.currency == "GBP"
    assert records.jobs


def test_a_fault_in_the_private_block_of_the_club_file_is_one_of_the_club_file(demo_club: Path) -> None:
    replace(demo_club / CLUB, "sand: 8.37 mm", "sand: 80 t")
    with pytest.raises(InputNeedsAttention):
        read_club_folder(demo_club)


def test_the_demos_choices_and_prices_read_as_written(demo_club: Path) -> None:
    planning = read_club_folder(demo_club).planning
    assert [choice.name for choice in planning.choices][::5] == [
        "Fine hollow tines at close spacing",
        "Contractor with drill and fill",
    ]
    first = planning.choices[0].operations[0]
    assert isinstance(first, Tining)
    assert (first.diameter_mm, first.inside_diameter_mm, first.across_mm, first.depth_mm) == (8, 6, 35, 55)
    assert planning.choices[0].surfaces_a_day == 4
    assert planning.choices[5].cost_per_surface == 412.75
    assert planning.sand_price_per_t == pytest.approx(47.35)
    assert list(planning.work_costs) == [SurfaceKind.GREEN]
    assert planning.work_costs[SurfaceKind.GREEN][Kind.HOLLOW_TINING] == 83.65
    assert planning.goal.disturbed_fraction == pytest.approx(0.1763)


def test_a_price_per_us_ton_becomes_one_per_tonne(demo_club: Path) -> None:
    """A US ton is 2,000 lb of 0.45359237 kg (exact): 907.18474 kg; 40 for it are 44.09 a tonne."""
    replace(demo_club / CLUB, "47.35 per tonne", "40 per US ton")
    assert read_club_folder(demo_club).planning.sand_price_per_t == pytest.approx(44.0925, abs=0.0001)


def test_a_club_without_any_of_it_reads_as_before(demo_club: Path) -> None:
    (demo_club / CHOICES).unlink()
    text = (demo_club / CLUB).read_text(encoding="utf-8")
    (demo_club / CLUB).write_text(text[: text.index("# What the club keeps to itself")], encoding="utf-8")
    planning = read_club_folder(demo_club).planning
    assert (planning.choices, planning.currency, planning.organic_layer_mm) == ((), "", 20.0)


def test_each_usual_choice_has_a_source_or_the_words_that_it_has_none() -> None:
    """A source has a year or says that it has none; sizes that were not published are called common practice."""
    choices = usual_choices()
    assert len(choices) >= 20
    for choice in choices:
        dated = any(str(year) in choice.source for year in range(1995, 2027)) or "undated" in choice.source
        not_seen = "author and year not seen" in choice.source
        assert "common practice, no published source" in choice.source or dated or not_seen, choice.name


def test_a_usual_choice_that_tore_the_surface_in_its_source_says_so() -> None:
    """Ervin & Nichols 2010: after two passes in September the surface was torn, and recovery held up."""
    (twice,) = [choice for choice in usual_choices() if "Ervin" in choice.source]
    assert "two passes in September tore the surface and held its recovery up" in twice.source


def test_sand_alone_on_fairways_is_a_rate_of_fairways() -> None:
    """400 US tons over 55 acres are 7.27 US tons per acre; by hand x 0.22417 = 1.63 kg/m2."""
    (alone,) = [one for one in usual_choices() if one.name == "Sand alone" and SurfaceKind.FAIRWAY in one.fits]
    (work,) = alone.operations
    assert isinstance(work, Dressing)
    assert work.sand.basis is SandBasis.KG_PER_M2
    assert work.sand.amount == pytest.approx(400 / 55 * 0.22417, rel=0.001)


def test_every_kind_of_surface_has_usual_choices_and_so_have_some_kinds_together() -> None:
    choices = usual_choices()
    assert {kind for choice in choices for kind in choice.fits} == set(SurfaceKind)
    together = (
        {SurfaceKind.GREEN, SurfaceKind.TEE, SurfaceKind.APPROACH},
        {SurfaceKind.TEE, SurfaceKind.FAIRWAY},
        {SurfaceKind.FAIRWAY, SurfaceKind.PRACTICE_GROUND, SurfaceKind.ROUGH},
    )
    for kinds in together:
        assert any(kinds <= choice.fits for choice in choices), kinds


def test_most_kinds_of_work_that_open_turf_are_among_the_usual_choices() -> None:
    kinds = {one.kind for choice in usual_choices() for one in choice.operations}
    assert kinds >= {
        Kind.HOLLOW_TINING,
        Kind.SOLID_TINING,
        Kind.NEEDLE_TINING,
        Kind.DEEP_TINING,
        Kind.SAND_INJECTION,
        Kind.SCARIFYING,
        Kind.VERTICUTTING,
        Kind.FRAISE_MOWING,
        Kind.TOPDRESSING,
        Kind.BUNKER_SANDING,
    }


def test_usual_choices_that_may_meet_have_names_of_their_own() -> None:
    choices = usual_choices()
    for place, one in enumerate(choices):
        for other in choices[:place]:
            assert one.name != other.name or not one.fits & other.fits


def test_an_undated_source_says_so_wherever_it_is_named() -> None:
    for choice in usual_choices():
        for name in ("Pitchcare magazine, August/September issue", "Diegnau P."):
            for after in choice.source.split(name)[1:]:
                assert after.startswith(", undated"), choice.name


def test_sizes_in_inches_are_those_of_their_sources() -> None:
    """USGA West 2020: deep tines 6 in deep, 1/2 in solid tines 3 in deep; an inch is 25.4 mm."""
    (deep,) = [one for one in usual_choices() if one.name.startswith("Sand, deep tines")]
    _, first, second, _ = deep.operations
    assert isinstance(first, Tining)
    assert isinstance(second, Tining)
    assert [first.depth_mm, second.diameter_mm, second.depth_mm] == pytest.approx([152.4, 12.7, 76.2])
