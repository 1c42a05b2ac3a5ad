"""The status file: valid by its published schema at any moment, its words those of the status page, its script small."""

from __future__ import annotations

import copy
import json
import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from jsonschema.protocols import Validator

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.fetching import power
from swardcast.outlets.short_addresses import short_addresses
from swardcast.outlets.status_file import VERSION, status_artifacts
from tests.conftest import ROOT
from tests.outlets.schemas import closed, parts_of
from tests.outlook.small_club import SmallClub, moment

Json = dict[str, Any]
MOMENTS = (
    "2027-04-20 08:00", "2027-05-04 12:00", "2027-05-12 08:00", "2027-08-24 10:00", "2027-08-25 12:00",
    "2027-08-26 11:30", "2027-09-14 09:30", "2027-09-16 05:00", "2027-12-06 08:00", "2027-12-24 09:00",
)  # fmt: skip
SCRIPT = ROOT / "plugins/swardcast/outlets/static/status.js"


def _files(bulletin: Bulletin) -> dict[str, Json]:
    files = {one.path: one for one in status_artifacts(bulletin)}
    return {path: json.loads(files[path].data) for path in ("status.json", "status.schema.json")}


@pytest.fixture(scope="session")
def schema(demo_bulletin: Bulletin) -> Json:
    return _files(demo_bulletin)["status.schema.json"]


@pytest.fixture(scope="session")
def validator(schema: Json) -> Validator:
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator(schema, format_checker=Draft202012Validator.FORMAT_CHECKER)


@pytest.fixture(scope="session")
def status(demo_bulletin: Bulletin) -> Json:
    """The file on 14 September, the day after a Monday: two tees, a bunker and the greens are in work or healing."""
    return _files(demo_bulletin)["status.json"]


@pytest.mark.parametrize("at", MOMENTS)
def test_the_file_is_valid_at_any_moment(demo_bulletin_at: Callable[[str], Bulletin], schema: Json, at: str) -> None:
    """Also where nothing may stand in it that the schema does not describe."""
    file = _files(demo_bulletin_at(at))["status.json"]
    assert list(Draft202012Validator(closed(schema)).iter_errors(file)) == []
    assert file["as_of"].startswith(at.replace(" ", "T"))


@pytest.mark.parametrize("at", MOMENTS)
def test_its_words_are_those_of_the_bulletin(demo_bulletin_at: Callable[[str], Bulletin], at: str) -> None:
    bulletin = demo_bulletin_at(at)
    file = _files(bulletin)["status.json"]
    assert file["sentence"] == bulletin.status.sentence
    assert file["fresh"] is bulletin.status.fresh
    for line, said in zip(file["lines"], bulletin.status.lines, strict=True):
        assert [one["id"] for one in line["surfaces"]] == list(said.surfaces)
        for surface in said.surfaces:
            assert line["play"]["state"] == bulletin.outlook.surfaces[surface].play.value
        assert [(one["name"], one["words"]) for one in line["dates"]] == [(one.name, one.value) for one in said.dates]
    notices = {notice.id: notice for notice in bulletin.notices}
    for notice in file["notices"]:
        assert notice["headline"] == notices[notice["id"]].headline
        assert notice["short_address"] == short_addresses(bulletin)[notice["id"]]


@pytest.mark.parametrize("at", MOMENTS)
def test_dates_that_are_told_in_words_are_those_in_figures(
    demo_bulletin_at: Callable[[str], Bulletin], at: str
) -> None:
    """The only words with two days in them name the likely day and the one to allow for; none name a day without one."""
    for line in _files(demo_bulletin_at(at))["status.json"]["lines"]:
        for one in line["dates"]:
            days = re.findall(r"(?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day \d+ \w+", one["words"])
            told = [one["likely"], one["allow_until"]] if re.match("likely by .* allow until", one["words"]) else []
            assert told == [] or days == [
                f"{datetime.fromisoformat(day):%A} {int(day[-2:])} {datetime.fromisoformat(day):%B}" for day in told
            ]
            if one["words"].startswith(("likely", "due now", "by now", "on ", "some time")):
                assert one["early"] <= one["likely"] <= one["allow_until"]
            if one["words"].startswith(("no date", "too early", "held up", "was due")):
                assert (one["early"], one["likely"], one["allow_until"]) == (None, None, None)


def test_every_field_is_described(schema: Json) -> None:
    parts = dict(parts_of(schema))
    assert len(parts) > 60
    assert [path for path, part in parts.items() if len(part.get("description", "")) < 10] == []


def test_file_and_schema_have_the_same_version_and_name_each_other(schema: Json, status: Json) -> None:
    assert schema["version"] == status["version"] == VERSION
    assert schema["$id"] == status["$schema"] == "https://quillhaven.example/status.schema.json"


def test_a_field_more_does_not_break_an_older_reader(validator: Validator, status: Json) -> None:
    assert validator.is_valid({**status, "version": "1.7", "wind": {"speed_m_per_s": 3}})
    assert not validator.is_valid({**status, "version": "2.0"})


def _places(value: Any, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    if isinstance(value, dict):
        for name, part in value.items():
            yield (*path, name)
            yield from _places(part, (*path, name))
    elif isinstance(value, list) and value:
        yield from _places(value[0], (*path, 0))


def _without(value: Any, path: tuple[str | int, ...]) -> Any:
    left = copy.deepcopy(value)
    inner = left
    for step in path[:-1]:
        inner = inner[step]
    del inner[path[-1]]
    return left


def test_a_file_without_any_one_of_its_fields_fails(validator: Validator, status: Json) -> None:
    places = list(_places(status))
    assert len(places) > 60
    assert [path for path in places if validator.is_valid(_without(status, path))] == []


@pytest.mark.parametrize(
    ("path", "value"),
    [
        pytest.param(("as_of",), "2027-09-14 09:30", id="a moment without its zone"),
        pytest.param(("as_of",), "2027-13-14T09:30:00+01:00", id="a month 13"),
        pytest.param(("fresh_until",), "tomorrow", id="a moment in words"),
        pytest.param(("fresh",), "yes", id="a word for true"),
        pytest.param(("sentence",), "", id="an empty sentence"),
        pytest.param(("site",), "javascript:alert(1)", id="an address that is none of the web"),
        pytest.param(("version",), 1.0, id="a version as a number"),
        pytest.param(("club", "language"), "British English", id="a language that is no tag"),
        pytest.param(("lines", 0, "surfaces"), [], id="a line about nothing"),
        pytest.param(("lines", 0, "play", "state"), "playable", id="a state of play that does not exist"),
        pytest.param(("lines", 0, "work", "state"), "called off", id="a state of work that no line has"),
        pytest.param(("lines", 0, "dates", 0, "likely"), "1 October", id="a day in words"),
        pytest.param(("lines", 0, "dates", 0, "likely"), "2027-02-30", id="a day that does not exist"),
        pytest.param(("lines", 0, "dates", 0, "milestone"), "perfect", id="a milestone that does not exist"),
        pytest.param(("holes", 0, "hole"), "1", id="a hole as text"),
        pytest.param(("holes", 0, "hole"), 0, id="a hole 0"),
        pytest.param(("notices", 0, "revision"), 0, id="a notice that was never announced"),
        pytest.param(("notices", 0, "state", "state"), "done", id="a state of a job that does not exist"),
        pytest.param(("limits", 0, "until"), None, id="a limit without an end"),
    ],
)
def test_a_broken_file_fails(validator: Validator, status: Json, path: tuple[str | int, ...], value: object) -> None:
    broken: Any = copy.deepcopy(status)
    inner = broken
    for step in path[:-1]:
        inner = inner[step]
    inner[path[-1]] = value
    assert validator.is_valid(status)
    assert not validator.is_valid(broken)


def test_the_demo_in_september(status: Json) -> None:
    """By hand, from the log of 14 September and the golden notices of that morning."""
    assert status["entered_at"] == "2027-09-14T06:50:00+01:00"
    assert status["fresh_until"] == "2027-09-15T00:00:00+01:00"
    greens = status["lines"][0]
    assert [one["id"] for one in greens["surfaces"]] == [f"green-{hole}" for hole in range(1, 19)]
    assert (greens["play"]["state"], greens["work"]["state"]) == ("open with care", "healing")
    normal = greens["dates"][-1]
    assert (normal["milestone"], normal["likely"], normal["allow_until"]) == (
        "back to normal", "2027-10-01", "2027-10-11",
    )  # fmt: skip
    assert [hole["hole"] for hole in status["holes"]] == list(range(1, 19))
    states = {notice["id"]: notice["state"]["state"] for notice in status["notices"]}
    assert states["greens-renovation-2027"] == "healing"
    assert states["bunkers-resanding-2027"] == "under way"
    assert states["practice-green-renovation-2027"] == "back to normal"  # since the day before
    assert "greens-verticutting-2027" not in states  # since 23 June
    assert {limit["limit"]: limit["until"] for limit in status["limits"]} == {
        "trolleys": "2027-09-15T00:00:00+01:00",
        "preferred lies": "2027-09-17T00:00:00+01:00",
    }


def test_once_the_day_is_over_it_says_only_what_was_true(status: Json) -> None:
    assert status["sentence_once_over"] == (
        "We do not know yet how the course is today. This was true at 6:50am on Tuesday 14 September 2027: "
        + status["sentence"]
    )


def test_without_an_entry_of_the_day_nothing_is_fresh(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    file = _files(demo_bulletin_at("2027-09-16 05:00"))["status.json"]
    assert (file["fresh"], file["fresh_until"]) == (False, None)
    assert file["entered_at"] == "2027-09-15T06:45:00+01:00"
    assert file["sentence_once_over"] == (
        "We do not know yet how the course is today. "
        "The last morning report was made at 6:45am on Wednesday 15 September 2027."
    )
    assert {hole["play"] for hole in file["holes"]} == {"not known"}


def test_a_course_without_any_entry(tmp_path: Path, validator: Validator) -> None:
    file = _files(compose_bulletin(SmallClub(tmp_path).records(), moment("05-01")))["status.json"]
    assert (file["entered_at"], file["fresh"], file["fresh_until"], file["notices"]) == (None, False, None, [])
    assert file["sentence_once_over"] == file["sentence"]
    assert validator.is_valid(file)


def test_the_day_on_which_the_clocks_go_back_has_its_end_by_the_new_time(tmp_path: Path) -> None:
    """In Britain at 2am on 31 October 2027, the last Sunday of the month."""
    club = SmallClub(tmp_path)
    club.log("morning", "10-31", "morning status", "play: {greens 1-3: open}", time="08:00")
    file = _files(compose_bulletin(club.records(), moment("10-31", "09:00")))["status.json"]
    assert file["fresh_until"] == "2027-11-01T00:00:00+00:00"


def test_typed_words_come_through_whole(demo_bulletin: Bulletin, validator: Validator) -> None:
    typed = 'Tees & <b>greens</b> "quoted" 🏌️‍♂️ ירוק \u2028 </script>'
    (notice, *rest) = demo_bulletin.notices
    status = replace(demo_bulletin.status, sentence=typed)
    bulletin = replace(demo_bulletin, status=status, notices=(replace(notice, headline=typed), *rest))
    file = _files(bulletin)["status.json"]
    assert file["sentence"] == typed
    assert typed in file["sentence_once_over"]
    assert file["notices"][0]["headline"] == typed
    assert validator.is_valid(file)


def test_fetched_weather_is_named_as_its_licence_asks(demo_bulletin: Bulletin, validator: Validator) -> None:
    file = _files(replace(demo_bulletin, weather_sources=(power.RECORD.source,)))["status.json"]
    (source,) = file["weather_sources"]
    assert source["words"].startswith("Weather, past and recent days: NASA POWER.")
    assert source["licence_address"] == power.RECORD.source.licence_address
    assert validator.is_valid(file)


def test_a_notice_that_is_over_leaves_the_file_after_two_weeks(demo_bulletin: Bulletin) -> None:
    ended = next(one for one in demo_bulletin.notices if one.id == "practice-green-renovation-2027")

    def names(days: int) -> list[str]:
        later = replace(demo_bulletin, as_of=ended.revised_at + timedelta(days=days))
        return [notice["id"] for notice in _files(later)["status.json"]["notices"]]

    assert ended.id in names(14)
    assert ended.id not in names(15)


def test_the_site_has_the_three_files(demo_site: Path, demo_bulletin: Bulletin) -> None:
    for artifact in status_artifacts(demo_bulletin):
        assert (demo_site / artifact.path).read_bytes() == artifact.data


def test_the_script_is_small_and_puts_in_nothing_but_text() -> None:
    """It is tried in a browser by hand; here, what it must never come to hold."""
    script = SCRIPT.read_text(encoding="ascii")
    assert len(script) < 5 * 1024
    assert script.count("fetch(") == 1
    for bad in (
        "innerHTML",
        "outerHTML",
        "insertAdjacentHTML",
        "document.write",
        "eval(",
        "cookie",
        "localStorage",
        "import(",
    ):
        assert bad not in re.sub(r"/\*.*?\*/", "", script, flags=re.DOTALL)
