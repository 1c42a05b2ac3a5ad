"""Files that cannot be read at all, files that only look odd, and many faults at once."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from swardcast.errors import InputNeedsAttention
from swardcast.reading.folder import read_club_folder
from tests.reading.breaking import (
    CLUB,
    COUNTED,
    DONE,
    FORECAST,
    HISTORY,
    OBSERVED,
    PLAN,
    assert_said,
    problems_in,
    replace,
)

KNOWN = "only: README.md, choices.yaml, club.yaml, fixtures.ics, log, pages, phrases, plan, surfaces.yaml, templates, weather, web"


@pytest.mark.parametrize(
    ("file", "data", "said"),
    [
        pytest.param(
            CLUB,
            b"name: A\ncourse: caf\xe9\n",
            "line 2: found a character that is not UTF-8; expected text saved as UTF-8",
            id="an old Western encoding",
        ),
        pytest.param(
            OBSERVED,
            "date,tmean_c\n".encode("utf-16"),
            "line 1: found a character that is not UTF-8; expected text saved as UTF-8",
            id="two bytes a letter",
        ),
        pytest.param(
            OBSERVED,
            b"date,tmin_c,tmax_c\n2027-05-01,1\x00,2\n",
            "line 2: found the control character U+0000; expected plain text",
            id="a NUL byte",
        ),
        pytest.param(
            CLUB, b"- a\n- b\n", "line 1: found a list of 2; expected fields such as 'name: value'", id="a list"
        ),
        pytest.param(
            CLUB, b"Our club\n", "line 1: found 'Our club'; expected fields such as 'name: value'", id="words only"
        ),
        pytest.param(
            CLUB,
            b"name: A\n---\nname: B\n",
            "line 2: found '---', which is not YAML (…); expected fields such as 'name: value'",
            id="two documents in one",
        ),
        pytest.param(
            DONE,
            b"",
            "line 1: found no fields between two lines of '---'; expected '---', then fields such as 'kind: work done',"
            " then '---', then your own words",
            id="an empty entry",
        ),
        pytest.param(
            FORECAST, b"x" * 4_000_001, "the file: found 4 MB; expected at most 4 MB", id="a file too large to be typed"
        ),
    ],
)
def test_a_file_that_cannot_be_read_is_told(demo_club: Path, file: str, data: bytes, said: str) -> None:
    (demo_club / file).write_bytes(data)
    assert_said(demo_club, file, (said,))


@pytest.mark.parametrize("file", [CLUB, PLAN, DONE, OBSERVED, FORECAST])
def test_a_folder_where_a_file_should_be_is_told(demo_club: Path, file: str) -> None:
    (demo_club / file).unlink()
    (demo_club / file).mkdir()
    assert_said(demo_club, file, ("the file: found a folder; expected this file in the club folder",))


def test_a_missing_club_file_is_told(demo_club: Path) -> None:
    (demo_club / CLUB).unlink()
    assert_said(demo_club, CLUB, ("the file: found no such file; expected this file in the club folder",))


def test_an_empty_club_file_is_told_with_every_field_that_it_needs(demo_club: Path) -> None:
    (demo_club / CLUB).write_bytes(b"")
    needed = ("contact", "name", "place", "site", "time zone")
    assert_said(
        demo_club, CLUB, tuple(f"the file, {field}: found nothing; expected the field '{field}'" for field in needed)
    )


def test_a_missing_folder_is_told_with_the_command_that_makes_one(tmp_path: Path) -> None:
    with pytest.raises(InputNeedsAttention) as raised:
        read_club_folder(tmp_path / "nowhere")
    assert "found no such folder; expected a club folder; 'swardcast start DIR' makes one" in str(raised.value)


def test_a_stranger_in_the_folder_is_told_with_the_nearest_known_name(demo_club: Path) -> None:
    (demo_club / "plans").mkdir()
    said = f"the file: found a file or folder that is not part of a club folder; expected {KNOWN}. Did you mean 'plan'?"
    assert_said(demo_club, "plans", (said,))


def test_an_entry_named_as_one_of_another_year_is_told(demo_club: Path) -> None:
    (demo_club / "log" / "2028").mkdir()
    shutil.copy(demo_club / DONE, demo_club / "log" / "2028")
    name = Path(DONE).stem
    said = f"the file: found the name '{name}', which {DONE} has already; expected a name of its own for each entry"
    assert_said(demo_club, f"log/2028/{name}.md", (said,))


@pytest.mark.parametrize("file", [CLUB, PLAN, DONE, OBSERVED, HISTORY, FORECAST])
def test_a_mark_at_the_beginning_and_foreign_line_ends_are_accepted(demo_club: Path, file: str) -> None:
    as_typed = read_club_folder(demo_club)
    path = demo_club / file
    path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes().replace(b"\n", b"\r\n"))
    assert read_club_folder(demo_club) == as_typed


@pytest.mark.parametrize("file", [OBSERVED, HISTORY, FORECAST, "fixtures.ics", "README.md"])
def test_a_club_may_do_without_weather_fixtures_and_remarks(demo_club: Path, file: str) -> None:
    (demo_club / file).unlink(missing_ok=True)
    assert problems_in(demo_club) == []


def test_the_problems_of_six_files_come_at_once_sorted_by_file_and_line(demo_club: Path) -> None:
    replace(demo_club / DONE, "kind: work done", "kind: work don")
    replace(demo_club / COUNTED, "left: 7 %\nhow: counted", "left: 7\nhow: guessed")
    replace(demo_club / OBSERVED, "2027-05-01,4.5", "2027-05-01,450")
    replace(demo_club / OBSERVED, "2027-05-03,", "2027-05-33,")
    replace(demo_club / FORECAST, "tmin_c", "tmin_k")
    replace(demo_club / HISTORY, "tmax_c", "tmax_k")
    (demo_club / "notes").mkdir()
    places = [(problem.file, problem.line or 0) for problem in problems_in(demo_club)]
    assert {file for file, _ in places} == {DONE, COUNTED, OBSERVED, FORECAST, HISTORY, "notes"}
    assert [line for file, line in places if file == COUNTED] == [6, 7]
    assert [line for file, line in places if file == OBSERVED] == [2, 4]
    assert places == sorted(places)


def test_the_faults_of_club_plan_and_weather_come_at_once(demo_club: Path) -> None:
    replace(demo_club / CLUB, "latitude: 55.6", "latitude: 155.6")
    replace(demo_club / PLAN, "depth: 60 mm", "depth: 600 mm")
    replace(demo_club / OBSERVED, "2027-05-01,4.5", "2027-05-01,450")
    assert [problem.file for problem in problems_in(demo_club)] == [CLUB, PLAN, OBSERVED]


def test_the_whole_report_groups_by_file_and_ends_with_a_count(demo_club: Path) -> None:
    replace(demo_club / CLUB, "latitude: 55.6", "latitude: 155.6")
    replace(demo_club / CLUB, "longitude: -1.7", "longitude: -181")
    with pytest.raises(InputNeedsAttention) as raised:
        read_club_folder(demo_club)
    assert str(raised.value).splitlines() == [
        "club.yaml",
        "  line 6, place.latitude: found '155.6'; expected degrees north from -90 to 90. Check the figure and its unit.",
        "  line 7, place.longitude: found '-181'; expected degrees east from -180 to 180. Check the figure and its unit.",
        "2 things need attention.",
    ]
