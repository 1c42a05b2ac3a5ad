"""Faults in a programme are told word for word: line, field, found, expected, what to do."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.breaking import PLAN, SURFACES, assert_said, fault, replace

KINDS = (
    "one of: hollow tining, solid tining, needle tining, deep tining, scarifying, verticutting, topdressing,"
    " brushing in, overseeding, feeding, rolling, re-turfing, bunker re-sanding, drainage"
)
PLAYS = "one of: open, open with care, temporary green, closed, not known"
SAND = "an amount of sand with its unit, such as '1.4 t/green', '2 mm', '0.5 kg/m2' or '100 lb/1000 ft2'"
PHRASES = "surfaces of surfaces.yaml, such as 'greens 1-9', 'all tees' or 'green-7'"
FIRST_TINES = "diameter: 13 mm, inside diameter: 10 mm, spacing: 50 x 50 mm, depth: 60 mm"

JOBS = [
    fault(
        "a job without its first day",
        "    starts: 2027-08-20\n",
        "",
        "line «id: practice-green-renovation-2027», jobs.0.starts: found nothing; expected the field 'starts'",
    ),
    fault(
        "a programme without a title",
        "programme: Late-summer programme 2027\n",
        "",
        "line «announced: 2027-05-10», programme: found nothing; expected the field 'programme'",
    ),
    fault(
        "a day that the year does not have",
        "starts: 2027-08-23",
        "starts: 2027-02-29",
        "line «starts: 2027-02-29», jobs.1.starts: found '2027-02-29'; expected a day that exists in the calendar",
    ),
    fault(
        "a day written the way of letters",
        "starts: 2027-08-23",
        "starts: 23 August 2027",
        "line «starts: 23 August 2027», jobs.1.starts: found '23 August 2027'; expected a day as year-month-day, such as '2027-08-23'",
    ),
    fault(
        "an id twice",
        "id: greens-light-sanding-2027",
        "id: greens-renovation-2027  # again",
        "line «id: greens-renovation-2027  # again», id: found 'greens-renovation-2027' a second time;"
        f" expected an id of its own; {PLAN}, line «id: greens-renovation-2027», has this one",
    ),
    fault(
        "an id with a blank",
        "id: greens-light-sanding-2027",
        "id: greens light sanding",
        "line «id: greens light sanding», jobs.4.id: found 'greens light sanding'; expected a short name in small letters, digits and hyphens,"
        " such as 'practice-green'",
    ),
    fault(
        "a green that the course does not have",
        "surfaces: greens 1-18",
        "surfaces: greens 1-19",
        "line «surfaces: greens 1-19», surfaces: found 'greens 1-19'; expected greens that stand in surfaces.yaml (holes 1 to 18);"
        " there is no green 19",
    ),
    fault(
        "a surface misspelt",
        "surfaces: the practice green",
        "surfaces: the practise green",
        f"line «surfaces: the practise green», surfaces: found 'the practise green'; expected {PHRASES}. Did you mean 'the practice green'?",
    ),
    fault(
        "a range that goes down",
        "surfaces: greens 1-18",
        "surfaces: greens 18-1",
        "line «surfaces: greens 18-1», surfaces: found 'greens 18-1'; expected a range that goes up, such as 'greens 1-18'",
    ),
    fault(
        "a kind misspelt in a range",
        "surfaces: greens 1-18",
        "surfaces: greans 1-18",
        f"line «surfaces: greans 1-18», surfaces: found 'greans 1-18'; expected {PHRASES}. Did you mean 'greens 1-18'?",
        reported="the hint names one surface, 'green-18', which would lose the other seventeen",
    ),
    fault(
        "work faster than anybody's",
        "surfaces a day: 6",
        "surfaces a day: 600",
        "line «surfaces a day: 600», jobs.1.surfaces a day: found '600'; expected surfaces finished in a day, from 0.05 to 60."
        " Check the figure and its unit.",
    ),
    fault(
        "a negative pace",
        "surfaces a day: 6",
        "surfaces a day: -6",
        "line «surfaces a day: -6», jobs.1.surfaces a day: found '-6'; expected surfaces finished in a day, from 0.05 to 60."
        " Check the figure and its unit.",
    ),
    fault(
        "spare days below none",
        "spare days: 2",
        "spare days: -1",
        "line «spare days: -1», jobs.1.spare days: found '-1'; expected spare days from 0 to 30. Check the figure and its unit.",
    ),
    fault(
        "half a spare day",
        "spare days: 2",
        "spare days: 1.5",
        "line «spare days: 1.5», jobs.1.spare days: found '1.5'; expected a whole number",
        reported="pydantic's own words reach the manager: 'a valid integer'",
    ),
    fault(
        "an unknown word for play",
        "while working: closed",
        "while working: shut",
        f"line «while working: shut», jobs.0.while working: found 'shut'; expected {PLAYS}",
    ),
    fault(
        "work announced after it starts",
        "starts: 2027-10-11",
        "starts: 2027-01-11",
        "line «id: fairways-deep-tining-2027», announced: found 2027-05-10, after the work starts on 2027-01-11; expected a day before the work",
    ),
    fault(
        "new turf without a usual time",
        "    normal after: {from: 26 to 34 weeks, source: the club's own experience}\n",
        "",
        "line «id: tees-returfing-2027», normal after: found nothing; expected the usual time for re-turfing, such as {from: 4 to 8 weeks,"
        " source: our own experience}. No date can be computed for this kind of work.",
    ),
    fault(
        "a usual time that goes down",
        "from: 26 to 34 weeks",
        "from: 34 to 26 weeks",
        "line «from: 34 to 26 weeks», jobs.3.normal after.from: found '34 to 26 weeks'; expected a range that goes up,"
        " such as '4 to 6 weeks'",
    ),
    fault(
        "a usual time without a unit",
        "from: 26 to 34 weeks",
        "from: 26 to 34",
        "line «from: 26 to 34,», jobs.3.normal after.from: found '26 to 34'; expected a range of days or weeks, such as '4 to 6 weeks'",
    ),
    fault(
        "a field of a job misspelt",
        "    why:\n      - It gets",
        "    whyy:\n      - It gets",
        "line «whyy:», jobs.0.whyy: found the unknown field 'whyy'; expected one of: id, title, … own words."
        " Did you mean 'why'?",
        reported="below a list the known fields are not found: 'expected one of: ' and no more",
    ),
]

OPERATIONS = [
    fault(
        "an unknown kind of work",
        "- scarifying:",
        "- scarifyng:",
        f"line «scarifyng:», jobs.0.operations.0: found 'scarifyng'; expected {KINDS}. Did you mean 'scarifying'?",
    ),
    fault(
        "two kinds of work on one line",
        "      - rolling\n",
        "      - rolling:\n        brushing in:\n",
        "line «rolling:», jobs.0.operations.5: found several fields; expected one kind of work on each line,"
        " such as '- hollow tining: {...}'",
    ),
    fault(
        "a tine wider than its spacing",
        FIRST_TINES,
        "diameter: 13 mm, spacing: 12 x 50 mm, depth: 60 mm",
        "line «hollow tining:», jobs.0.operations.1.hollow tining: found 'tines of 13 mm at 12 x 50 mm';"
        " expected tines narrower than their spacing",
    ),
    fault(
        "a tine wider inside than outside",
        "inside diameter: 10 mm",
        "inside diameter: 14 mm",
        "line «hollow tining:», jobs.0.operations.1.hollow tining: found '14 mm inside 13 mm';"
        " expected an inside diameter below the outside",
    ),
    fault(
        "hollow tines of 400 mm depth",
        "depth: 60 mm",
        "depth: 400 mm",
        "line «hollow tining:», jobs.0.operations.1.hollow tining: found 'a depth of 400 mm';"
        " expected a depth from 1 mm to 200 mm for hollow tining",
    ),
    fault(
        "deep tines of 400 mm depth",
        "depth: 220 mm",
        "depth: 400 mm",
        "line «deep tining:», jobs.5.operations.0.deep tining: found 'a depth of 400 mm';"
        " expected a depth from 1 mm to 350 mm for deep tining",
    ),
    fault(
        "a diameter without a unit",
        "diameter: 16 mm",
        "diameter: 16",
        "line «deep tining:», jobs.5.operations.0.deep tining.diameter: found '16'; expected a length with its unit,"
        " such as '13 mm' or '1/2 in'. A number needs its unit…",
    ),
    fault(
        "a pattern with one number",
        "spacing: 50 x 50 mm",
        "spacing: 50 mm",
        "line «hollow tining:», jobs.0.operations.1.hollow tining.spacing: found '50 mm'; expected spacing across by spacing along"
        " with their unit, such as '50 x 50 mm'",
    ),
    fault(
        "a pattern without a unit",
        "spacing: 50 x 50 mm",
        "spacing: 50 x 50",
        "line «hollow tining:», jobs.0.operations.1.hollow tining.spacing: found '50 x 50'; expected spacing across by spacing along"
        " with their unit, such as '50 x 50 mm'. The unit goes at the end: '50 x 50 mm'.",
    ),
    fault(
        "no pass at all",
        "depth: 60 mm}",
        "depth: 60 mm, passes: 0}",
        "line «hollow tining:», jobs.0.operations.1.hollow tining.passes: found '0'; expected a whole number of passes from 1 to 50,"
        " such as '2'",
    ),
    fault(
        "blades as wide as their spacing",
        "blade: 2 mm, spacing: 25 mm",
        "blade: 9 mm, spacing: 9 mm",
        "line «scarifying:», jobs.0.operations.0.scarifying: found 'blades of 9 mm at 9 mm';"
        " expected blades narrower than their spacing",
    ),
    fault(
        "sand without a unit",
        "sand: 2.6 t/green",
        "sand: 2.6",
        f"line «sand: 2.6», jobs.1.operations.2.topdressing.sand: found '2.6'; expected {SAND}. A number needs its unit…",
    ),
    fault(
        "sand with a decimal comma",
        "sand: 0.5 kg/m2",
        "sand: '0,5 kg/m2'",
        f"line «sand: '0,5», jobs.4.operations.0.topdressing.sand: found '0,5 kg/m2'; expected {SAND}."
        " Write a decimal with a point: '0.5', not '0,5'.",
    ),
    fault(
        "less than no sand",
        "sand: 0.5 kg/m2",
        "sand: -0.5 kg/m2",
        f"line «sand: -0.5», jobs.4.operations.0.topdressing.sand: found '-0.5 kg/m2'; expected {SAND}",
    ),
    fault(
        "a seed rate a hundred times too high",
        "rate: 6 g/m2",
        "rate: 600 g/m2",
        "line «overseeding:», jobs.0.operations.3.overseeding.rate: found '600'; expected a seed rate from 0.1 to 100 g/m2."
        " Check the figure and its unit.",
    ),
    fault(
        "feed without the words of its label",
        "      - rolling\n",
        "      - feeding: {product: autumn feed}\n",
        "line «feeding:», jobs.0.operations.5.feeding.label: found nothing; expected the field 'label'",
        "line «feeding:», jobs.0.operations.5.feeding.label read by: found nothing; expected the field 'label read by'",
    ),
    fault(
        "quantities for work that has none",
        "      - rolling\n",
        "      - rolling: {passes: 2}\n",
        "line «rolling:», jobs.0.operations.5.rolling.passes: found the unknown field 'passes'; expected no fields below it",
        reported="says 'expected one of: ' and no more",
    ),
    fault(
        "no operation",
        "    operations:\n      - re-turfing\n",
        "    operations: []\n",
        "line «operations: []», jobs.3.operations: found a list of 0; expected at least one line starting with '- '",
        reported="pydantic's own words reach the manager: 'List should have at least 1 item after validation, not 0'",
    ),
    fault(
        "sand as deep as a house",
        "sand: 0.5 kg/m2",
        "sand: 5 m",
        "line «sand: 5 m», jobs.4.operations.0.topdressing.sand: found …; expected at most … Check the figure and its unit.",
        reported="an amount of sand has no upper bound: metres for millimetres are accepted and hide the whole green",
    ),
    fault(
        "a ton, which is two different masses",
        "sand: 2.6 t/green",
        "sand: 2.6 tons/green",
        f"line «sand: 2.6 tons», jobs.1.operations.2.topdressing.sand: found '2.6 tons/green'; expected {SAND}."
        " A ton is two different masses: write 't' for tonnes or 'US tons'.",
        reported="the hint proposes a rate by the acre",
    ),
]


@pytest.mark.parametrize(("old", "new", "says"), [*JOBS, *OPERATIONS])
def test_a_fault_in_the_plan_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / PLAN, old, new)
    assert_said(demo_club, PLAN, says)


def test_sand_in_tonnes_needs_the_area_of_every_green(demo_club: Path) -> None:
    replace(demo_club / SURFACES, "3: 445 m2", "3: {}")
    said = (
        "line «id: greens-renovation-2027», operations: found sand in tonnes for green 3, whose area is not in surfaces.yaml;"
        " expected its area, or sand as a depth such as '2 mm'"
    )
    assert_said(demo_club, PLAN, (said,))
