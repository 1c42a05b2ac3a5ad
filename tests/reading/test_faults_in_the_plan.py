"""Faults in a programme are told word for word: line, field, found, expected, what to do."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.breaking import PLAN, assert_said, fault, replace

PLAYS = "one of: open, open with care, temporary green, closed, not known"
LABEL = "{product: a treatment, re-entry: when dry, signs: at the tee, label read by: AB, label read on: 2027-08-02}"
PHRASES = "surfaces of surfaces.yaml, such as 'greens 1-9', 'all tees' or 'green-7'"

JOBS = [
    fault(
        "a job without its first day",
        "    starts: 2027-08-20\n",
        "",
        "line «id: practice-green-renovation-2027», job 1, starts: found nothing; expected the field 'starts'",
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
        "line «starts: 2027-02-29», job 2, starts: found '2027-02-29'; expected a day that exists in the calendar",
    ),
    fault(
        "a day written the way of letters",
        "starts: 2027-08-23",
        "starts: 23 August 2027",
        "line «starts: 23 August 2027», job 2, starts: found '23 August 2027'; expected a day as year-month-day, such as '2027-08-23'",
    ),
    fault(
        "an id twice",
        "id: greens-light-sanding-2027",
        "id: greens-renovation-2027  # again",
        "line «id: greens-renovation-2027  # again», id: found 'greens-renovation-2027' a second time;"
        f" expected an id of its own; {PLAN}, line «id: greens-renovation-2027», has this one",
    ),
    fault(
        "an id with an end of a line",
        "id: greens-light-sanding-2027",
        'id: "greens-light-sanding-2027\\n"',
        "line «id: \"greens-light», job 5, id: found 'greens-light-sanding-2027\\n';"
        " expected a short name in small letters, digits and hyphens, such as 'practice-green'",
    ),
    fault(
        "an id longer than a folder's name should be",
        "id: greens-light-sanding-2027",
        f"id: {61 * 'a'}",
        f"line «{61 * 'a'}», job 5, id: found '{57 * 'a'}...'; expected a short name of at most 60 letters;"
        " this one has 61",
    ),
    fault(
        "an id that Windows keeps for a device",
        "id: greens-light-sanding-2027",
        "id: com1",
        "line «id: com1», job 5, id: found 'com1'; expected another name: Windows keeps this one for a device,"
        " so that no folder can have it",
    ),
    fault(
        "the name of the course's own news",
        "id: greens-light-sanding-2027",
        "id: course-status",
        "line «id: course-status», job 5, id: found 'course-status'; expected another name: the feeds have the"
        " course's own news under this one",
    ),
    fault(
        "an id with a blank",
        "id: greens-light-sanding-2027",
        "id: greens light sanding",
        "line «id: greens light sanding», job 5, id: found 'greens light sanding'; expected a short name in small letters, digits and hyphens,"
        " such as 'practice-green'",
    ),
    fault(
        "a green that the course does not have",
        "surfaces: greens 1-18",
        "surfaces: greens 1-19",
        "line «surfaces: greens 1-19», job 2, surfaces: found 'greens 1-19'; expected greens that stand in surfaces.yaml (holes 1 to 18);"
        " there is no green 19",
    ),
    fault(
        "a surface misspelt",
        "surfaces: the practice green",
        "surfaces: the practise green",
        f"line «surfaces: the practise green», job 1, surfaces: found 'the practise green'; expected {PHRASES}. Did you mean 'the practice green'?",
    ),
    fault(
        "a range that goes down",
        "surfaces: greens 1-18",
        "surfaces: greens 18-1",
        "line «surfaces: greens 18-1», job 2, surfaces: found 'greens 18-1'; expected a range that goes up, such as 'greens 1-18'",
    ),
    fault(
        "a kind misspelt in a range",
        "surfaces: greens 1-18",
        "surfaces: greans 1-18",
        f"line «surfaces: greans 1-18», job 2, surfaces: found 'greans 1-18'; expected {PHRASES}. Did you mean 'greens 1-18'?",
    ),
    fault(
        "work faster than anybody's",
        "surfaces a day: 6",
        "surfaces a day: 600",
        "line «surfaces a day: 600», job 2, surfaces a day: found '600'; expected surfaces finished in a day, from 0.05 to 60."
        " Check the figure and its unit.",
    ),
    fault(
        "a negative pace",
        "surfaces a day: 6",
        "surfaces a day: -6",
        "line «surfaces a day: -6», job 2, surfaces a day: found '-6'; expected surfaces finished in a day, from 0.05 to 60."
        " Check the figure and its unit.",
    ),
    fault(
        "spare days below none",
        "spare days: 2",
        "spare days: -1",
        "line «spare days: -1», job 2, spare days: found '-1'; expected spare days from 0 to 30. Check the figure and its unit.",
    ),
    fault(
        "half a spare day",
        "spare days: 2",
        "spare days: 1.5",
        "line «spare days: 1.5», job 2, spare days: found '1.5'; expected a whole number",
    ),
    fault(
        "an unknown word for play",
        "while working: closed",
        "while working: shut",
        f"line «while working: shut», job 1, while working: found 'shut'; expected {PLAYS}",
    ),
    fault(
        "work announced after it starts",
        "starts: 2027-10-11",
        "starts: 2027-01-11",
        "line «id: fairways-deep-tining-2027», job 6, announced: found 2027-05-10, after the work starts on 2027-01-11; expected a day before the work",
    ),
    fault(
        "new turf without a usual time",
        "    normal after: {from: 26 to 34 weeks, source: the club's own experience}\n",
        "",
        "line «id: tees-returfing-2027», job 4, normal after: found nothing; expected the usual time for re-turfing, such as {from: 4 to 8 weeks,"
        " source: our own experience}. No date can be computed for this kind of work.",
    ),
    fault(
        "a label read after the product is used",
        "      - re-turfing\n",
        f"      - re-turfing\n      - granular feed: {LABEL.replace('2027-08-02', '2027-09-07')}\n",
        "line «id: tees-returfing-2027», job 4, label read on: found 2027-09-07 for granular feed, after the work starts on 2027-09-06;"
        " expected a day not later than the first day of the work",
    ),
    fault(
        "players kept off a product for no time at all",
        "      - bunker re-sanding: {sand: 100 mm}\n",
        f"      - bunker re-sanding: {{sand: 100 mm}}\n      - plant protection: {LABEL}\n",
        "line «id: bunkers-resanding-2027», job 3, follow up: found nothing; expected how long players stay off after plant protection,"
        " never less than its label says, such as 'follow up: 4 to 6 hours'. Or write 'reopens after', for days. It is never computed.",
    ),
    fault(
        "new turf that is normal before it is open",
        "from: 26 to 34 weeks",
        "from: 2 to 34 weeks",
        "line «from: 2 to 34», job 4, normal after: found 14 to 238 days;"
        " expected no less than 'reopens after' (42 to 70 days). A place that is still closed is not back to normal.",
    ),
    fault(
        "temporary greens without an end",
        "      - scarifying: {blade: 2 mm, spacing: 25 mm, depth: 3 mm}\n",
        "      - scarifying: {blade: 2 mm, spacing: 25 mm, depth: 3 mm}\n      - temporary greens\n",
        "line «id: practice-green-renovation-2027», job 1, reopens after: found nothing; expected how long the temporary greens are played,"
        " such as {from: 8 to 11 weeks, source: our own experience}. The last day of the work is not their last day.",
    ),
    fault(
        "a usual time that goes down",
        "from: 26 to 34 weeks",
        "from: 34 to 26 weeks",
        "line «from: 34 to 26 weeks», job 4, normal after.from: found '34 to 26 weeks'; expected a range that goes up,"
        " such as '4 to 6 weeks'",
    ),
    fault(
        "a usual time without a unit",
        "from: 26 to 34 weeks",
        "from: 26 to 34",
        "line «from: 26 to 34,», job 4, normal after.from: found '26 to 34'; expected a range of days or weeks, such as '4 to 6 weeks'",
    ),
    fault(
        "a Local Rule that nobody adopted",
        "    while working: closed\n    why:\n      - It gets",
        "    while working: closed\n    local rules:\n      - {rule: E-4}\n    why:\n      - It gets",
        "line «{rule: E-4}», job 1, local rule 1, decided by: found nothing; expected the field 'decided by'",
    ),
    fault(
        "a Local Rule that the course manager adopted",
        "    while working: closed\n    why:\n      - It gets",
        "    while working: closed\n    local rules:\n      - {rule: E-4, decided by: the Course Manager}\n    why:\n      - It gets",
        "line «{rule: E-4», job 1, local rule 1, decided by: found 'the Course Manager'; expected the Committee that adopted it,"
        " such as 'the Committee'. Only the Committee can adopt a Local Rule.",
    ),
    fault(
        "a Local Rule without its hyphen",
        "    while working: closed\n    why:\n      - It gets",
        "    while working: closed\n    local rules:\n      - {rule: e4, decided by: the Committee}\n    why:\n      - It gets",
        "line «{rule: e4», job 1, local rule 1, rule: found 'e4'; expected the number of a Model Local Rule, such as 'E-4'."
        " Did you mean 'E-4'?",
    ),
    fault(
        "a Local Rule that ends before it begins",
        "    while working: closed\n    why:\n      - It gets",
        "    while working: closed\n    local rules:\n      - {rule: E-4, decided by: the Committee, from: 2027-09-02,"
        " until: 2027-09-01}\n    why:\n      - It gets",
        "line «{rule: E-4», job 1, local rule 1: found 'until 2027-09-01, before it begins on 2027-09-02';"
        " expected a last day not before the first",
    ),
    fault(
        "a Local Rule that is over before the work",
        "    while working: closed\n    why:\n      - It gets",
        "    while working: closed\n    local rules:\n      - {rule: E-4, decided by: the Committee, until: 2027-08-19}\n"
        "    why:\n      - It gets",
        "line «local rules:», job 1, local rules: found E-4 until 2027-08-19, before the work starts on 2027-08-20;"
        " expected a last day not before the first day of the work",
    ),
    fault(
        "a Local Rule twice for some days",
        "    while working: closed\n    why:\n      - It gets",
        "    while working: closed\n    local rules:\n      - {rule: E-4, decided by: the Committee, until: 2027-08-25}\n"
        "      - {rule: E-4, decided by: the Committee, from: 2027-08-25}\n"
        "      - {rule: E-3, decided by: the Committee}\n    why:\n      - It gets",
        "line «local rules:», job 1, local rules: found E-4 twice for the same days;"
        " expected each Local Rule once for a day",
    ),
    fault(
        "a field of a job misspelt",
        "    why:\n      - It gets",
        "    whyy:\n      - It gets",
        "line «whyy:», job 1, whyy: found the unknown field 'whyy'; expected one of: id, title, … private note."
        " Did you mean 'why'?",
    ),
]


@pytest.mark.parametrize(("old", "new", "says"), JOBS)
def test_a_fault_in_the_plan_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / PLAN, old, new)
    assert_said(demo_club, PLAN, says)
