"""What `make days` looks for on every day is not there in the demo, and is found where it is."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest

from swardcast.compose import Bulletin
from tests.conftest import DEMO, bytes_in
from tests.every_day import build, moments
from tests.outlook.days_told import Followed
from tests.whole_site.day_by_day import Built, alone, between

NOTICE = "notices/greens-renovation-2027/index.html"
MAIL = "notices/greens-renovation-2027/email.txt"


@pytest.fixture(scope="module")
def september(demo_site: Path, demo_bulletin: Bulletin) -> Built:
    return Built(told="", files=bytes_in(demo_site), bulletin=demo_bulletin)


def _said(built: Built, name: str, old: str, new: str) -> Built:
    """The same site with other words in a file."""
    text = built.files[name].decode()
    assert old in text
    return replace(built, files={**built.files, name: text.replace(old, new).encode()})


def test_nothing_is_wrong_with_the_demo_while_it_rains_nor_three_weeks_later(september: Built, tmp_path: Path) -> None:
    rain = build(DEMO, tmp_path / "site", "2027-08-25 12:00")
    assert list(alone(rain)) == []
    assert list(alone(september)) == []
    assert list(between(rain, september)) == []


@pytest.fixture(scope="module")
def faults(september: Built) -> list[str]:
    """What is found in a site that is wrong in many places."""
    status, season = (json.loads(september.files[name]) for name in ("status.json", "season.json"))
    status["lines"][0]["play"]["state"] = "closed"
    status["lines"][0]["work"]["state"] = "under way"
    status["fresh"] = False
    data = {"status.json": status, "season.json": season | {"mood": "good"}}
    broken = replace(
        september,
        told="Worth another look: job trees-16-2027 is no longer in the plan.\n",
        files={**september.files, **{name: json.dumps(one).encode() for name, one in data.items()}},
    )
    for name, old, new in (
        ("index.html", "The course is open", "The course will soon be open"),
        ("index.html", "Back to normal", "Today, Monday 13 September"),
        (NOTICE, "Friday 27 August", "Monday 27 August"),
        (NOTICE, "Likely by", "Likely by Monday 6 September, then likely by"),
        (MAIL, "sanding the greens: 23 to 27 August", "sanding the greens"),
    ):
        broken = _said(broken, name, old, new)
    return list(alone(broken))


@pytest.mark.parametrize(
    "found",
    [
        "index.html: “soon”",
        "index.html: Today, Monday 13 September",
        f"{NOTICE}: no Monday 27 August",
        f"{NOTICE}: Likely by Monday 6 September",
        f"{MAIL}: lacks 'Hollow tining, scarifying and sanding the greens: 23 to 27 August'",
        "the build said: Worth another look: job trees-16-2027 is no longer in the plan.",
        "season.json: $: ",
    ],
)
def test_what_is_wrong_on_that_day_is_found(faults: list[str], found: str) -> None:
    assert any(one.startswith(found) for one in faults), faults


def test_a_state_that_the_log_does_not_tell_is_found(faults: list[str]) -> None:
    """The morning entry has them open with care; greens 1 to 18 were all entered as done."""
    assert [one for one in faults if "green-18 " in one or "fresh" in one] == [
        "status.json: fresh is False, by the log True",
        "status.json: play on green-18 is closed, by the log ['open with care']",
        "status.json: work on green-18 is under way, by the log ['back to normal', 'called off', 'healing', 'planned']",
    ]


@pytest.mark.parametrize(
    ("name", "old", "new", "found"),
    [
        ("feeds/greens.rss", "<guid isPermaLink", "<title>One more</title><guid isPermaLink", "says something else"),
        (
            "feeds/status.json",
            '"id": "tag:quillhaven.example,2027-09-14',
            '"id": "tag:quillhaven.example,2028-09-14',
            "gone",
        ),
        ("calendar.ics", "SEQUENCE:", "SEQUENCE:-", "grew older"),
        ("calendar.ics", "SUMMARY:", "SUMMARY:No ", "changed without becoming newer"),
        ("calendar.ics", "UID:", "UID:another-", "is gone"),
    ],
)
def test_a_feed_that_shrank_and_a_calendar_that_cannot_follow_are_found(
    september: Built, name: str, old: str, new: str, found: str
) -> None:
    faults = list(between(september, _said(september, name, old, new)))
    assert any(found in one for one in faults), faults


def test_a_short_address_that_leads_elsewhere_is_found(september: Built) -> None:
    short = next(name for name in sorted(september.files) if name.startswith("n/"))
    other = "notices/greens-renovation-2028/"
    changed = replace(
        september, files={**september.files, short: re.sub(rb"notices/[\w-]+/", other.encode(), september.files[short])}
    )
    (found,) = between(september, changed)
    assert found.startswith(f"the short address {short} led to ")


def test_items_that_changed_places_and_an_address_that_is_gone_are_found(september: Built) -> None:
    feed = json.loads(september.files["feeds/tees.json"])
    feed["items"].reverse()
    files = {**september.files, "feeds/tees.json": json.dumps(feed).encode()}
    del files[NOTICE]
    found = list(between(september, replace(september, files=files)))
    assert found == [f"the address {NOTICE} is gone", "tees.json: items changed places"]


def test_a_date_that_moved_and_was_never_told_is_found(demo_bulletin: Bulletin) -> None:
    def later(hours: int, likely: str) -> Bulletin:
        notices = (
            replace(one, normal=one.normal.replace("Friday 1 October", likely)) if one.id in NOTICE else one
            for one in demo_bulletin.notices
        )
        return replace(demo_bulletin, as_of=demo_bulletin.as_of + timedelta(hours=hours), notices=tuple(notices))

    (silent,) = Followed().take_all([demo_bulletin, later(24, "Thursday 30 September"), later(48, "Friday 1 October")])
    assert silent[1] == ("greens-renovation-2027", "back to normal")
    assert [day.isoformat() for days in silent[2:] for day in days] == [
        "2027-10-01", "2027-10-11", "2027-09-30", "2027-10-11",
    ]  # fmt: skip


def test_a_day_has_one_hour_wherever_the_days_begin() -> None:
    assert moments(date(2028, 2, 28), date(2028, 3, 1), 1) == [
        "2028-02-28 07:05",
        "2028-02-29 12:00",
        "2028-03-01 19:30",
    ]
