"""Faults in club.yaml and surfaces.yaml are told word for word: line, field, found, expected, what to do."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.breaking import CLUB, SURFACES, assert_said, fault, problems_in, replace

FIELDS_OF_CLUB = "one of: format, name, course, site, first address, place, time zone, language, look, entry counts for, house style, contact, decides, scores, standards, weather, log sheet, planning, cautions"  # as README lists
GRASSES = "one of: cool-season, annual meadow-grass, warm-season"
AN_AREA = "an area with its unit, such as '500 m2' or '5,400 ft2'"
A_LENGTH = "a length with its unit, such as '13 mm' or '1/2 in'"


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        fault(
            "an unknown field is told with the nearest one",
            "decides:",
            "decide:",
            f"line 17, decide: found the unknown field 'decide'; expected {FIELDS_OF_CLUB}. Did you mean 'decides'?",
        ),
        fault(
            "an unknown field below another is told by its path",
            "elevation:",
            "elevaton:",
            "line 8, place.elevaton: found the unknown field 'elevaton'; expected one of: latitude, longitude, elevation."
            " Did you mean 'elevation'?",
        ),
        fault(
            "no name",
            "name: Quillhaven Golf Club\n",
            "",
            "line 1, name: found nothing; expected the field 'name'",
        ),
        fault(
            "an empty name", "name: Quillhaven Golf Club", "name:", "line 2, name: found nothing; expected some words"
        ),
        fault(
            "no office to ask",
            "  office: the course manager's office\n",
            "",
            "line 11, contact.office: found nothing; expected the field 'office'",
        ),
        fault(
            "an unknown time zone",
            "Europe/London",
            "Europe/Londn",
            "line 9, time zone: found 'Europe/Londn'; expected a time zone by its name, such as 'Europe/London'."
            " Did you mean 'Europe/London'?",
        ),
        fault(
            "a latitude beyond the pole",
            "latitude: 55.6",
            "latitude: 155.6",
            "line 6, place.latitude: found '155.6'; expected degrees north from -90 to 90. Check the figure and its unit.",
        ),
        fault(
            "a longitude beyond the date line",
            "longitude: -1.7",
            "longitude: -181",
            "line 7, place.longitude: found '-181'; expected degrees east from -180 to 180."
            " Check the figure and its unit.",
        ),
        fault(
            "an elevation without a unit",
            "elevation: 18 m",
            "elevation: 18",
            f"line 8, place.elevation: found '18'; expected {A_LENGTH}. A number needs its unit…",
        ),
        fault(
            "a decimal comma",
            "elevation: 18 m",
            "elevation: 18,5 m",
            f"line 8, place.elevation: found '18,5 m'; expected {A_LENGTH}."
            " Write a decimal with a point: '0.5', not '0,5'.",
        ),
        fault(
            "an address without its scheme",
            "https://quillhaven.example",
            "quillhaven.example",
            "line 4, site: found 'quillhaven.example'; expected the address of the site, such as 'https://course.example'",
        ),
        fault(
            "an address with an end of a line",
            "site: https://quillhaven.example",
            'site: "https://quillhaven.example\\n"',
            "line 4, site: found 'https://quillhaven.example\\n'; expected the address of the site, such as 'https://course.example'",
        ),
        fault(
            "a host with letters beyond ASCII is named as programs know it",
            "https://quillhaven.example",
            "https://bücher.example",
            "line 4, site: found 'https://bücher.example'; expected the address of the site, such as"
            " 'https://course.example'. Write the host as programs know it: 'xn--bcher-kva.example'.",
        ),
        fault(
            "an e-mail that would bring a line of its own",
            "email: links@quillhaven.example",
            'email: "a@b.example\\nX-EVIL: 1"',
            "line 13, contact.email: found 'a@b.example\\nX-EVIL: 1'; expected an address on one line, such as"
            " 'greens@course.example', without %, ? and #",
        ),
        fault(
            "an e-mail of two addresses",
            "links@quillhaven.example",
            "a@b.example@c.example",
            "line 13, contact.email: found 'a@b.example@c.example'; expected an address on one line, such as"
            " 'greens@course.example', without %, ? and #",
        ),
        fault(
            "a telephone with a line of its own",
            "telephone: 01632 960317",
            'telephone: "+44 1632 960000\\nX: 1"',
            "line 16, contact.telephone: found '+44 1632 960000\\nX: 1'; expected digits, with '+', blanks, brackets"
            " or hyphens, such as '+44 1632 960000'",
        ),
        fault(
            "an address that no short message holds",
            "https://quillhaven.example",
            "https://quillhaven.example/" + 94 * "x",
            f"line 4, site: found 'https://quillhaven.example/{30 * 'x'}...'; expected an address of at most 120 characters,"
            " so that it fits into a short message",
        ),
        fault(
            "a language that there is not yet",
            "en-GB",
            "fr-FR",
            "line 10, language: found 'fr-FR'; expected 'en-GB' or 'en-US', or a language whose phrases all stand in the club's folder 'phrases'",
        ),
        fault(
            "a tag of a language with an underscore",
            "en-GB",
            "en_GB",
            "line 10, language: found 'en_GB'; expected the IETF tag of a language, such as 'en-GB' or 'en-US'. Did you mean 'en-GB'?",
        ),
        fault(
            "a sand as heavy as lead",
            "1.56 t/m3",
            "11.3 t/m3",
            "line 19, standards.sand density: found '11.3 t/m3'; expected a bulk density between 0.5 and 2.5 t/m3;"
            " dry sand is 1.5 to 1.72",
        ),
        fault(
            "a weekday misspelt",
            "Monday to Friday",
            "Monday to Fryday",
            "line 21, standards.working days: found 'Monday to Fryday'; expected weekdays, such as 'Monday to Friday'."
            " Did you mean 'friday'?",
        ),
        fault(
            "words where fields belong",
            "place:\n  latitude: 55.6\n  longitude: -1.7\n  elevation: 18 m",
            "place: the links",
            "line 5, place: found 'the links'; expected fields such as 'name: value'",
        ),
        fault(
            "a latitude in words",
            "latitude: 55.6",
            "latitude: north",
            "line 6, place.latitude: found 'north'; expected a number",
        ),
        fault(
            "a latitude that is true",
            "latitude: 55.6",
            "latitude: true",
            "line 6, place.latitude: found 'true'; expected a number",
        ),
    ],
)
def test_a_fault_in_the_club_file_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / CLUB, old, new)
    assert_said(demo_club, CLUB, says)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        fault(
            "a kind of surface misspelt",
            "tees:",
            "teas:",
            "line 26, teas: found the unknown field 'teas'; expected one of: greens, tees, approaches, fairways, roughs,"
            " bunkers, practice grounds. Did you mean 'tees'?",
        ),
        fault(
            "an area without a unit",
            "2: 510 m2",
            "2: 510",
            f"line 6, greens.holes.2: found '510'; expected {AN_AREA}. A number needs its unit…",
        ),
        fault(
            "a negative area", "2: 510 m2", "2: -510 m2", f"line 6, greens.holes.2: found '-510 m2'; expected {AN_AREA}"
        ),
        fault(
            "no area at all",
            "2: 510 m2",
            "2: 0 m2",
            "line 6, greens.holes.2.area: found '0 m2'; expected an area from 1 m2 to 20 ha. Check the figure and its unit.",
        ),
        fault(
            "a length for an area",
            "area: 640 m2",
            "area: 640 mm",
            f"line 24, greens.named 1, area: found '640 mm'; expected {AN_AREA}",
        ),
        fault(
            "a hole without a number",
            "2: 510 m2",
            "second: 510 m2",
            "line 6, greens.holes.second: found 'second'; expected the number of a hole, such as '7: 480 m2'",
        ),
        fault(
            "a hole without 'holes' above it, and no decimal comma",
            "  holes:\n    1: 470 m2",
            "  1: 470 m2\n  holes:",
            "line 4, greens.1: found the unknown field '1'; expected one of: grass, holes, named",
        ),
        fault(
            "an unknown grass",
            "grass: annual meadow-grass",
            "grass: meadow grass",
            f"line 8, greens.holes.4.grass: found 'meadow grass'; expected {GRASSES}. Did you mean 'annual meadow-grass'?",
        ),
        fault(
            "a hole twice",
            "2: 510 m2",
            "1: 510 m2",
            "line 6, greens.holes.1: found the same field a second time; expected it once; it stands on line 5 already",
        ),
        fault(
            "an id twice",
            "id: practice-green",
            "id: green-7",
            "line 24, greens.named 1: found 'green-7' a second time; expected an id of its own for each surface",
        ),
        fault(
            "an id with capitals and a blank",
            "id: practice-green",
            "id: Practice Green",
            "line 24, greens.named 1, id: found 'Practice Green'; expected a short name in small letters, digits and"
            " hyphens, such as 'practice-green'",
        ),
        fault(
            "a field of a hole misspelt",
            "{area: 390 m2, grass:",
            "{area: 390 m2, gras:",
            "line 8, greens.holes.4.gras: found the unknown field 'gras'; expected one of: area, grass."
            " Did you mean 'grass'?",
        ),
        fault(
            "a hole's number in words",
            "hole: 2, area: 55",
            "hole: two, area: 55",
            "line 69, bunkers.named 1, hole: found 'two'; expected a whole number",
        ),
    ],
)
def test_a_fault_in_the_surfaces_file_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    (demo_club / "plan" / "2027-late-summer.yaml").unlink()  # a surface that is gone would be missed there
    for entry in demo_club.glob("log/2027/*.md"):
        entry.unlink()
    replace(demo_club / SURFACES, old, new)
    assert_said(demo_club, SURFACES, says)


def test_greens_without_a_grass_are_told_with_the_grasses_to_choose_from(demo_club: Path) -> None:
    replace(demo_club / SURFACES, "  grass: cool-season\n", "")
    first = problems_in(demo_club)[0]
    assert (first.file, first.field) == (SURFACES, "greens.grass")
    assert str(first) == f"line 2, greens.grass: found nothing for 16 of its 19 surfaces; expected {GRASSES}"


def test_a_course_without_any_surface_is_told_what_to_write(demo_club: Path) -> None:
    (demo_club / SURFACES).write_text("greens: {}\n", encoding="utf-8")
    said = [str(problem) for problem in problems_in(demo_club) if problem.file == SURFACES]
    assert said == [
        "line 1: found no surface at all; expected greens, tees, fairways or bunkers with their holes",
    ]
