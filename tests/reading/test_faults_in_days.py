"""Faults in 'importance' and 'days without work' of club.yaml: each is told with its line and what is meant."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.reading.folder import read_club_folder
from swardcast.records.day_spans import DayInYear
from swardcast.records.operations import Kind
from tests.reading.breaking import CLUB, assert_said, fault, replace

FAULTS = [
    fault(
        "a weekday misspelt",
        "Saturday: 2.37",
        "Saterday: 2.37",
        "line «Saterday», planning.importance.weekdays: found 'Saterday'; expected weekdays with their weight, such as"
        " 'Saturday: 2'. Did you mean 'Saturday'?",
    ),
    fault(
        "a weight below nothing",
        "Saturday: 2.37",
        "Saturday: -2",
        "line «Saturday», planning.importance.weekdays.Saturday: found '-2'; expected a weight from 0 to 1000, where an"
        " ordinary day is 1. Check the figure and its unit.",
    ),
    fault(
        "a name without its weight",
        "named: {Captain's day: 9.61}",
        "named: Captain's day",
        'line «named», planning.importance.named: found "Captain\'s day"; expected names of fixtures, or parts of them,'
        " with their weight, such as 'Autumn medal: 10'",
    ),
    fault(
        "a month misspelt",
        "from: 8 January,",
        "from: 8 Januray,",
        "line «from: 8 Januray», planning.importance.period 1, from: found '8 Januray'; expected a day, such as '1 July'"
        " for every year, or '1 July 2027'. Did you mean 'January'?",
    ),
    fault(
        "a day that no month has",
        "to: 26 February,",
        "to: 30 February,",
        "line «to: 30 February», planning.importance.period 1, to: found '30 February'; expected a day that exists in the"
        " calendar",
    ),
    fault(
        "a year in one of two days",
        "to: 26 February,",
        "to: 26 February 2028,",
        "line «the hush», planning.importance.period 1: found 'a year in one of the two days'; expected a year in both, or"
        " in neither for every year",
    ),
    fault(
        "a last day before the first",
        "to: 16 July 2027",
        "to: 10 July 2027",
        "line «10 July», planning.days without work.blocked 1: found 'a last day before the first'; expected 'to' not"
        " before 'from'",
    ),
    fault(
        "a country that is none",
        "public holidays: GB-ENG",
        "public holidays: GX",
        "line «public holidays», planning.days without work.public holidays: found 'GX'; expected the code of a country, or"
        " of a country and its part, such as 'IE', 'GB-ENG' or 'US-CA'",
    ),
    fault(
        "a part that the country has not",
        "public holidays: GB-ENG",
        "public holidays: GB-EGN",
        "line «public holidays», planning.days without work.public holidays: found 'GB-EGN'; expected a part of the country:"
        " GB-ENG, GB-NIR, GB-SCT, GB-WLS. Did you mean 'GB-ENG'?",
    ),
    fault(
        "days without a reason",
        ", why: half the crew is away on a course}",
        "}",
        "line «12 July», planning.days without work.blocked 1, why: found nothing; expected the field 'why'",
    ),
    fault(
        "a contractor without days",
        "{from: 6 September 2027, to: 29 October 2027, for: sand injection}",
        "{for: sand injection}",
        "line «{for: sand injection}», planning.days without work.contractor 1: found 'no days'; expected either 'on' with"
        " one day or several, or both 'from' and 'to'",
    ),
    fault(
        "a contractor for another trade's word",
        "for: sand injection}",
        "for: spiking}",
        "line «spiking», planning.days without work.contractor 1, for: found 'spiking'; expected one of: …. …",
    ),
    fault(
        "neither yes nor no",
        "    daylight: 9.3 hours",
        "    work on fixtures: sometimes",
        "line «sometimes», planning.days without work.work on fixtures: found 'sometimes'; expected 'yes' or 'no'",
    ),
    fault(
        "light without its unit",
        "daylight: 9.3 hours",
        "daylight: 9",
        "line «daylight», planning.days without work.daylight: found '9'; expected hours from sunrise to sunset, such as"
        " '9 hours'…",
    ),
    fault(
        "a frost without its unit",
        "rain: 5.3 mm",
        "frost: 0",
        "line «frost», planning.days without work.frost: found '0'; expected an air temperature with its unit, such as"
        " '14 C' or '57 F'",
    ),
    fault(
        "a flood",
        "rain: 5.3 mm",
        "rain: 53 cm",
        "line «rain: 53», planning.days without work.rain: found '53 cm'; expected rain of a day from 0.1 mm to 100 mm."
        " Check the figure and its unit.",
    ),
]


@pytest.mark.parametrize(("old", "new", "says"), FAULTS)
def test_a_fault_in_days_and_weights(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / CLUB, old, new)
    assert_said(demo_club, CLUB, says)


def test_the_demos_days_and_weights_read_as_written(demo_club: Path) -> None:
    planning = read_club_folder(demo_club).planning
    importance, without = planning.importance, planning.days_without_work
    assert importance.weekdays == {5: 2.37, 6: 2.19}
    assert (importance.fixtures, importance.visitors, importance.is_typed) == (3.43, 1.87, True)
    assert [(one.words, one.adds) for one in importance.named] == [("Captain's day", 9.61)]
    (period,) = importance.periods
    assert (period.span.first, period.span.last) == (DayInYear(month=1, day=8), DayInYear(month=2, day=26))
    assert without.public_holidays == "GB-ENG"
    assert [(one.span.first.place, one.why) for one in without.blocked] == [
        ((7, 12), "half the crew is away on a course")
    ]
    assert without.contractor[0].kinds == frozenset({Kind.SAND_INJECTION})
    assert (without.least_daylight_h, without.rain_mm, without.frost_c) == (9.3, 5.3, 0.0)
    assert not without.works_on_fixtures


@pytest.mark.parametrize(
    ("written", "month", "day", "year"),
    [
        ("1 July", 7, 1, None),
        ("July 1", 7, 1, None),
        ("29 February", 2, 29, None),
        ("2 August 2027", 8, 2, 2027),
        ("August 2, 2027", 8, 2, 2027),
        ("2027-08-02", 8, 2, 2027),
    ],
)
def test_a_day_may_be_written_in_several_ways(
    demo_club: Path, written: str, month: int, day: int, year: int | None
) -> None:
    replace(
        demo_club / CLUB,
        "- {from: 12 July 2027, to: 16 July 2027, why: half the crew is away on a course}",
        f'- {{on: ["{written}"], why: the course is shut}}',
    )
    (blocked,) = read_club_folder(demo_club).planning.days_without_work.blocked
    assert blocked.span.first == blocked.span.last == DayInYear(month=month, day=day, year=year)


def test_a_club_that_tells_nothing_has_ordinary_days_and_fixtures(demo_club: Path) -> None:
    text = (demo_club / CLUB).read_text(encoding="utf-8")
    (demo_club / CLUB).write_text(text.split("  importance:")[0], encoding="utf-8")
    planning = read_club_folder(demo_club).planning
    assert (planning.importance.is_typed, planning.importance.fixtures) == (False, 3.0)
    assert planning.days_without_work.blocked == ()


def test_a_fixture_is_for_visitors_by_its_category_or_by_its_name(demo_club: Path) -> None:
    """RFC 5545, section 3.8.1.2: the demo's "Two Coasts visitors" has the category, "Visitors' day" only the name."""
    fixtures = demo_club / "fixtures.ics"
    replace(fixtures, "SUMMARY:Two Coasts visitors", "SUMMARY:Two Coasts parties")
    found = {one.name for one in read_club_folder(demo_club).fixtures if one.is_for_visitors}
    assert found == {"Two Coasts parties", "Visitors' day"}
