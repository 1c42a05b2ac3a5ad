"""Faults in the operations of a job are told word for word: line, field, found, expected, what to do."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.breaking import PLAN, SURFACES, assert_said, fault, replace

KINDS = (
    "one of: hollow tining, solid tining, needle tining, deep tining, sand injection, scarifying, verticutting,"
    " fraise mowing, topdressing, brushing in, overseeding, granular feed, liquid feed, wetting agent, plant protection,"
    " rolling, change of cutting height, re-turfing, seeding bare ground, bunker re-sanding, bunker liner, bunker edging,"
    " bunker drainage, drainage trenching, irrigation work, tree work, path work, temporary greens, winter protection"
)
SAND = "an amount of sand with its unit, such as '1.4 t/green', '2 mm', '0.5 kg/m2' or '100 lb/1000 ft2'"
FEED = "line «granular feed:», job 1, operation 6, granular feed"
UNPUBLISHED = "Nothing is published without it."
FIRST_TINES = "diameter: 13 mm, inside diameter: 10 mm, spacing: 50 x 50 mm, depth: 60 mm"

OPERATIONS = [
    fault(
        "an unknown kind of work",
        "- scarifying:",
        "- scarifyng:",
        f"line «scarifyng:», job 1, operation 1: found 'scarifyng'; expected {KINDS}. Did you mean 'scarifying'?",
    ),
    fault(
        "two kinds of work on one line",
        "      - rolling\n",
        "      - rolling:\n        brushing in:\n",
        "line «rolling:», job 1, operation 6: found several fields; expected one kind of work on each line,"
        " such as '- hollow tining: {...}'",
    ),
    fault(
        "a tine wider than its spacing",
        FIRST_TINES,
        "diameter: 13 mm, spacing: 12 x 50 mm, depth: 60 mm",
        "line «hollow tining:», job 1, operation 2, hollow tining: found 'tines of 13 mm at 12 x 50 mm';"
        " expected tines narrower than their spacing",
    ),
    fault(
        "a tine wider inside than outside",
        "inside diameter: 10 mm",
        "inside diameter: 14 mm",
        "line «hollow tining:», job 1, operation 2, hollow tining: found '14 mm inside 13 mm';"
        " expected an inside diameter below the outside",
    ),
    fault(
        "hollow tines of 400 mm depth",
        "depth: 60 mm",
        "depth: 400 mm",
        "line «hollow tining:», job 1, operation 2, hollow tining: found 'a depth of 400 mm';"
        " expected a depth from 1 mm to 200 mm for hollow tining",
    ),
    fault(
        "deep tines of 400 mm depth",
        "depth: 220 mm",
        "depth: 400 mm",
        "line «deep tining:», job 6, operation 1, deep tining: found 'a depth of 400 mm';"
        " expected a depth from 1 mm to 350 mm for deep tining",
    ),
    fault(
        "a diameter without a unit",
        "diameter: 16 mm",
        "diameter: 16",
        "line «deep tining:», job 6, operation 1, deep tining.diameter: found '16'; expected a length with its unit,"
        " such as '13 mm' or '1/2 in'. A number needs its unit…",
    ),
    fault(
        "a pattern with one number",
        "spacing: 50 x 50 mm",
        "spacing: 50 mm",
        "line «hollow tining:», job 1, operation 2, hollow tining.spacing: found '50 mm'; expected spacing across by spacing along"
        " with their unit, such as '50 x 50 mm'",
    ),
    fault(
        "a pattern without a unit",
        "spacing: 50 x 50 mm",
        "spacing: 50 x 50",
        "line «hollow tining:», job 1, operation 2, hollow tining.spacing: found '50 x 50'; expected spacing across by spacing along"
        " with their unit, such as '50 x 50 mm'. The unit goes at the end: '50 x 50 mm'.",
    ),
    fault(
        "no pass at all",
        "depth: 60 mm}",
        "depth: 60 mm, passes: 0}",
        "line «hollow tining:», job 1, operation 2, hollow tining.passes: found '0'; expected a whole number of passes from 1 to 50,"
        " such as '2'",
    ),
    fault(
        "blades as wide as their spacing",
        "blade: 2 mm, spacing: 25 mm",
        "blade: 9 mm, spacing: 9 mm",
        "line «scarifying:», job 1, operation 1, scarifying: found 'blades of 9 mm at 9 mm';"
        " expected blades narrower than their spacing",
    ),
    fault(
        "more turf stripped than there is",
        "- scarifying: {blade: 2 mm, spacing: 25 mm, depth: 3 mm}",
        "- fraise mowing: {depth: 15 mm, share: 120 %}",
        "line «fraise mowing:», job 1, operation 1, fraise mowing.share: found '120 %';"
        " expected a share from 0 % to 100 %",
    ),
    fault(
        "next to no turf stripped",
        "- scarifying: {blade: 2 mm, spacing: 25 mm, depth: 3 mm}",
        "- fraise mowing: {depth: 15 mm, share: 0 %}",
        "line «fraise mowing:», job 1, operation 1, fraise mowing.share: found '0 %';"
        " expected a share of the surface from 1 % to 100 %. Check the figure and its unit.",
    ),
    fault(
        "a share of stripped turf without its sign",
        "- scarifying: {blade: 2 mm, spacing: 25 mm, depth: 3 mm}",
        "- fraise mowing: {depth: 15 mm, share: 0.3}",
        "line «fraise mowing:», job 1, operation 1, fraise mowing.share: found '0.3';"
        " expected a share with its unit, such as '40 %'. A number needs its unit…",
    ),
    fault(
        "fraise mowing as deep as a tine",
        "- scarifying: {blade: 2 mm, spacing: 25 mm, depth: 3 mm}",
        "- fraise mowing: {depth: 150 mm}",
        "line «fraise mowing:», job 1, operation 1, fraise mowing.depth: found '150 mm'; expected a depth from 1 mm to 60 mm."
        " Check the figure and its unit.",
    ),
    fault(
        "fraise mowing without a depth",
        "- scarifying: {blade: 2 mm, spacing: 25 mm, depth: 3 mm}",
        "- fraise mowing",
        "line «fraise mowing», job 1, operation 1, fraise mowing.depth: found nothing; expected the field 'depth'",
    ),
    fault(
        "sand without a unit",
        "sand: 2.6 t/green",
        "sand: 2.6",
        f"line «sand: 2.6», job 2, operation 3, topdressing.sand: found '2.6'; expected {SAND}. A number needs its unit…",
    ),
    fault(
        "sand with a decimal comma",
        "sand: 0.5 kg/m2",
        "sand: '0,5 kg/m2'",
        f"line «sand: '0,5», job 5, operation 1, topdressing.sand: found '0,5 kg/m2'; expected {SAND}."
        " Write a decimal with a point: '0.5', not '0,5'.",
    ),
    fault(
        "less than no sand",
        "sand: 0.5 kg/m2",
        "sand: -0.5 kg/m2",
        f"line «sand: -0.5», job 5, operation 1, topdressing.sand: found '-0.5 kg/m2'; expected {SAND}",
    ),
    fault(
        "a seed rate a hundred times too high",
        "rate: 6 g/m2",
        "rate: 600 g/m2",
        "line «overseeding:», job 1, operation 4, overseeding.rate: found '600 g/m2'; expected a seed rate from 0.1 to 100 g/m2."
        " Check the figure and its unit.",
    ),
    fault(
        "feed without the words of its label",
        "      - rolling\n",
        "      - granular feed: {product: autumn feed}\n",
        f"{FEED}.label read by: found nothing; expected who read the label. {UNPUBLISHED}",
        f"{FEED}.label read on: found nothing; expected the day on which the label was read, such as '2027-10-01'."
        f" {UNPUBLISHED}",
        f"{FEED}.re-entry: found nothing; expected what the label says about when people may be back, in words."
        f" {UNPUBLISHED}",
        f"{FEED}.signs: found nothing; expected which signs stand and where, in words. {UNPUBLISHED}",
    ),
    fault(
        "a label that is still to be read",
        "      - rolling\n",
        "      - granular feed: {product: autumn feed, re-entry: tbc, signs: on the tees, label read by: AB,"
        " label read on: 2027-08-02}\n",
        f"{FEED}.re-entry: found 'tbc'; expected what the label says about when people may be back, in words."
        f" {UNPUBLISHED}",
    ),
    fault(
        "a waiting time as a bare number",
        "      - rolling\n",
        "      - granular feed: {product: autumn feed, re-entry: 24, signs: on the tees, label read by: AB,"
        " label read on: 2027-08-02}\n",
        f"{FEED}.re-entry: found '24'; expected what the label says about when people may be back, in words."
        f" {UNPUBLISHED}",
    ),
    fault(
        "the label's field misspelt",
        "      - rolling\n",
        "      - granular feed: {product: autumn feed, reentry: when dry, signs: on the tees, label read by: AB,"
        " label read on: 2027-08-02}\n",
        f"{FEED}.re-entry: found nothing; expected what the label says about when people may be back, in words."
        f" {UNPUBLISHED}",
        f"{FEED}.reentry: found the unknown field 'reentry'; expected one of: product, re-entry, signs, label read by,"
        " label read on, rate, water in. Did you mean 're-entry'?",
    ),
    fault(
        "feed by its old name",
        "- rolling",
        "- feeding: {product: autumn feed}",
        f"line «feeding:», job 1, operation 6: found 'feeding'; expected {KINDS}. Write 'granular feed' or 'liquid feed'.",
    ),
    fault(
        "drainage by its old name",
        "- re-turfing",
        "- drainage",
        f"line «- drainage», job 4, operation 1: found 'drainage'; expected {KINDS}. Did you mean 'drainage trenching'?",
    ),
    fault(
        "a word from elsewhere",
        "- re-turfing",
        "- aerification",
        f"line «- aerification», job 4, operation 1: found 'aerification'; expected {KINDS}. Did you mean 'hollow tining'?",
    ),
    fault(
        "a cutting height that does not change",
        "- scarifying: {blade: 2 mm, spacing: 25 mm, depth: 3 mm}",
        "- change of cutting height: {from: 4 mm, to: 4 mm}",
        "line «cutting height:», job 1, operation 1, change of cutting height: found '4 mm before and after';"
        " expected another height than before",
    ),
    fault(
        "a cutting height in centimetres by mistake",
        "- scarifying: {blade: 2 mm, spacing: 25 mm, depth: 3 mm}",
        "- change of cutting height: {to: 45 cm}",
        "line «cutting height:», job 1, operation 1, change of cutting height.to: found '45 cm';"
        " expected a cutting height from 1 mm to 300 mm. Check the figure and its unit.",
    ),
    fault(
        "a cutting height without the new one",
        "- scarifying: {blade: 2 mm, spacing: 25 mm, depth: 3 mm}",
        "- change of cutting height: {from: 4 mm}",
        "line «cutting height:», job 1, operation 1, change of cutting height.to: found nothing; expected the field 'to'",
    ),
    fault(
        "a trench as wide as a road",
        "- re-turfing",
        "- drainage trenching: {length: 120 m, width: 15 m, depth: 60 cm}",
        "line «drainage trenching:», job 4, operation 1, drainage trenching.width: found '15 m';"
        " expected a width from 10 mm to 3 m. Check the figure and its unit.",
    ),
    fault(
        "sand injected deeper than any tine",
        "- re-turfing",
        "- sand injection: {diameter: 12 mm, depth: 50 cm}",
        "line «sand injection:», job 4, operation 1, sand injection: found 'a depth of 500 mm';"
        " expected a depth from 1 mm to 350 mm for sand injection",
    ),
    fault(
        "quantities for work that has none",
        "      - rolling\n",
        "      - rolling: {passes: 2}\n",
        "line «rolling:», job 1, operation 6, rolling.passes: found the unknown field 'passes'; expected no fields below it",
    ),
    fault(
        "no operation",
        "    operations:\n      - re-turfing\n",
        "    operations: []\n",
        "line «operations: []», job 4, operations: found a list of 0; expected at least one line starting with '- '",
    ),
    fault(
        "sand as deep as a house",
        "sand: 0.5 kg/m2",
        "sand: 5 m",
        "line «sand: 5 m», job 5, operation 1, topdressing.sand: found …; expected at most … Check the figure and its unit.",
    ),
    fault(
        "a ton, which is two different masses",
        "sand: 2.6 t/green",
        "sand: 2.6 tons/green",
        f"line «sand: 2.6 tons», job 2, operation 3, topdressing.sand: found '2.6 tons/green'; expected {SAND}."
        " A ton is two different masses: write 't' for tonnes or 'US tons'.",
    ),
]


@pytest.mark.parametrize(("old", "new", "says"), OPERATIONS)
def test_a_fault_in_an_operation_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / PLAN, old, new)
    assert_said(demo_club, PLAN, says)


def test_sand_in_tonnes_needs_the_area_of_every_green(demo_club: Path) -> None:
    replace(demo_club / SURFACES, "3: 445 m2", "3: {}")
    said = (
        "line 26, job 2, operations: found sand in tonnes for green 3, whose area is not in surfaces.yaml;"
        " expected its area, or sand as a depth such as '2 mm'"
    )
    assert_said(demo_club, PLAN, (said,))
