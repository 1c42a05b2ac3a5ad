"""The season as data: valid by its published schema at any moment, its days by hand, its words those of the page."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from swardcast.compose import Bulletin, compose_bulletin, season_of
from swardcast.outlets.season_file import SEASON_VERSION, season_artifacts
from tests.outlets.schemas import closed, parts_of
from tests.outlook.small_club import SmallClub, moment

Json = dict[str, Any]
MOMENTS = ("2027-04-20 08:00", "2027-05-12 08:00", "2027-08-25 12:00", "2027-09-14 09:30", "2027-12-06 08:00")


def file_of(bulletin: Bulletin) -> Json:
    file: Json = json.loads(season_artifacts(bulletin)[0].data)
    return file


@pytest.fixture(scope="module")
def schema(demo_bulletin: Bulletin) -> Json:
    schema: Json = json.loads(season_artifacts(demo_bulletin)[1].data)
    Draft202012Validator.check_schema(schema)
    return schema


@pytest.fixture(scope="module")
def job(demo_bulletin: Bulletin) -> Json:
    """The late-summer work on the greens, on 14 September."""
    return next(one for one in file_of(demo_bulletin)["jobs"] if one["notice"] == "greens-renovation-2027")


@pytest.mark.parametrize("at", MOMENTS)
def test_the_file_is_valid_at_any_moment(demo_bulletin_at: Callable[[str], Bulletin], schema: Json, at: str) -> None:
    """Also where nothing may stand in it that the schema does not describe."""
    file = file_of(demo_bulletin_at(at))
    assert list(Draft202012Validator(closed(schema)).iter_errors(file)) == []
    assert file["as_of"].startswith(at.replace(" ", "T"))


@pytest.mark.parametrize("at", MOMENTS)
def test_its_months_are_those_of_the_page(demo_bulletin_at: Callable[[str], Bulletin], at: str) -> None:
    bulletin = demo_bulletin_at(at)
    for told, month in zip(file_of(bulletin)["months"], season_of(bulletin).months, strict=True):
        assert told["name"] == month.name
        assert [one["words"] for one in told["work"]] == [one.when for one in month.work]
        assert [one["words"] for one in told["healing"]] == [one.when for one in month.healing]
        assert [one["names"] for one in told["fixtures"]] == [list(run.names) for run in month.fixtures.runs]


def test_the_days_of_the_greens_are_those_of_the_log(job: Json) -> None:
    """1 to 6 on 23 August, 7 to 11 on the 24th, then rain; 12, left over, and 13 to 15 on the 26th, 16 to 18 on the 27th."""
    assert [(part["first"], part["last"], len(part["surfaces"])) for part in job["work"]] == [
        ("2027-08-23", "2027-08-23", 6),
        ("2027-08-24", "2027-08-24", 5),
        ("2027-08-26", "2027-08-26", 1),
        ("2027-08-26", "2027-08-26", 3),
        ("2027-08-27", "2027-08-27", 3),
    ]
    assert (job["state"], job["heals_from"]) == ("healing", "2027-08-24")
    assert job["address"] == "https://quillhaven.example/notices/greens-renovation-2027/"


def test_back_to_normal_has_the_days_of_its_words(job: Json) -> None:
    normal = job["back_to_normal"]
    assert normal["words"].replace("\u00a0", " ") == "likely by Friday 1 October; allow until Monday 11 October"
    assert (normal["likely"], normal["allow_until"]) == ("2027-10-01", "2027-10-11")
    assert (normal["is_fact"], normal["in_months"]) == (False, False)


def test_a_fixture_has_what_it_meets_with_its_chance(demo_bulletin: Bulletin) -> None:
    september = next(one for one in file_of(demo_bulletin)["months"] if one["month"] == "2027-09")
    captain = next(one for one in september["fixtures"] if one["first_days"] == ["2027-09-25"])
    greens = next(one for one in captain["meets"] if one["notice"] == "greens-renovation-2027")
    assert greens["words"].startswith("About 8 chances in 10 that some greens are still healing")


def test_a_date_that_has_passed_has_words_and_no_day(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    months = "    normal after: {from: 9 to 10 weeks, source: us}\n"
    club.job("turf", "06-01", "re-turfing", surfaces="tee 1", more=months)
    club.done("turf", "06-01")
    (job,) = file_of(compose_bulletin(club.records(), moment("08-12")))["jobs"]
    normal = job["back_to_normal"]
    assert normal["words"].replace("\u00a0", " ") == "was due by Tuesday 10 August; nobody has reported it yet"
    assert (normal["early"], normal["likely"], normal["allow_until"]) == (None, None, None)


def test_every_field_is_described(schema: Json) -> None:
    parts = dict(parts_of(schema))
    assert len(parts) > 45
    assert [path for path, part in parts.items() if len(part.get("description", "")) < 6] == []


def test_file_and_schema_have_the_same_version_and_name_each_other(schema: Json, demo_bulletin: Bulletin) -> None:
    file = file_of(demo_bulletin)
    assert schema["version"] == file["version"] == SEASON_VERSION
    assert schema["$id"] == file["$schema"] == "https://quillhaven.example/season.schema.json"
