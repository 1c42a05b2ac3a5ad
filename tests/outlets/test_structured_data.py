"""JSON-LD and Open Graph. Names and values are those of https://schema.org (version 29) and https://ogp.me/."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from lxml import html
from PIL import Image

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.structured_data import course_data, notice_data, script_text
from tests.outlook.small_club import SmallClub, moment

HOSTILE = "</script><script>alert(1)</script><!-- <script> & \"quoted\" 'too' \u2028 \U0001f3cc ירוק ]]>"
MOMENTS = ("2027-05-12 08:00", "2027-08-25 12:00", "2027-09-14 09:30", "2027-12-24 09:00")

DAY = r"\d{4}-\d\d-\d\d"
DAY_OR_MOMENT = {"type": "string", "pattern": rf"^{DAY}(T\d\d:\d\d:\d\d([+-]\d\d:\d\d|Z))?$"}
ADDRESS = {"type": "string", "pattern": "^https://quillhaven\\.example/"}


def _thing(kind: str, required: list[str], **properties: Any) -> dict[str, Any]:
    """The properties of a type of schema.org that we use; another name is a misspelling, or not looked up yet."""
    named: dict[str, Any] = {"@context": {"const": "https://schema.org"}, "@type": {"const": kind}, "@id": ADDRESS}
    named |= {"name": {"type": "string", "minLength": 1}, "url": ADDRESS}
    return {
        "type": "object",
        "properties": {**named, **properties},
        "required": ["@type", "name", "url", *required],
        "additionalProperties": False,
    }


# https://schema.org/GolfCourse: geo of Place; email and telephone of Organization; image of Thing.
GOLF_COURSE = _thing(
    "GolfCourse",
    ["geo"],
    geo={
        "properties": {
            "@type": {"const": "GeoCoordinates"},
            "latitude": {"type": "number", "minimum": -90, "maximum": 90},
            "longitude": {"type": "number", "minimum": -180, "maximum": 180},
            "elevation": {"type": "number"},
        },
        "required": ["@type", "latitude", "longitude"],
        "additionalProperties": False,
    },
    email={"type": "string"},
    telephone={"type": "string"},
    image=ADDRESS,
)
# https://schema.org/SpecialAnnouncement: announcementLocation and datePosted of its own; expires and text of CreativeWork.
ANNOUNCEMENT = _thing(
    "SpecialAnnouncement",
    ["text", "datePosted", "expires", "announcementLocation"],
    text={"type": "string", "minLength": 1},
    inLanguage={"type": "string"},
    datePosted=DAY_OR_MOMENT,
    expires=DAY_OR_MOMENT,
    announcementLocation={"properties": {"@id": ADDRESS}, "required": ["@id"], "additionalProperties": False},
)
# https://schema.org/Event and https://schema.org/EventStatusType.
EVENT = _thing(
    "Event",
    ["@context", "eventStatus", "startDate", "location", "organizer"],
    description={"type": "string"},
    inLanguage={"type": "string"},
    eventStatus={
        "enum": [
            f"https://schema.org/Event{status}" for status in ("Scheduled", "Rescheduled", "Postponed", "Cancelled")
        ]
    },
    startDate=DAY_OR_MOMENT,
    endDate=DAY_OR_MOMENT,
    previousStartDate={
        "anyOf": [
            {"type": "string", "pattern": f"^{DAY}$"},
            {"type": "array", "items": {"type": "string", "pattern": f"^{DAY}$"}, "minItems": 2, "uniqueItems": True},
        ]
    },
    location=GOLF_COURSE,
    organizer=_thing("Organization", []),
    image=ADDRESS,
)


def _event(bulletin: Bulletin, number: int = 0) -> dict[str, Any]:
    return notice_data(bulletin.notices[number], bulletin, OpenGraph(bulletin=bulletin, pictures={}))


def _told(event: dict[str, Any]) -> tuple[str, Any, Any, Any]:
    status = event["eventStatus"].removeprefix("https://schema.org/Event")
    return status, event["startDate"], event.get("previousStartDate"), event.get("endDate")


@pytest.mark.parametrize("at", MOMENTS)
def test_each_notice_is_an_event_of_schema_org(demo_bulletin_at: Callable[[str], Bulletin], at: str) -> None:
    bulletin = demo_bulletin_at(at)
    graph = OpenGraph(bulletin=bulletin, pictures={})
    assert bulletin.notices
    for notice in bulletin.notices:
        event = notice_data(notice, bulletin, graph)
        Draft202012Validator(EVENT).validate(event)
        assert (event["name"], event["description"]) == (notice.headline, notice.short_answer)
        first, last = str(event["startDate"]), str(event.get("endDate", event["startDate"]))
        assert date.fromisoformat(first[:10]) <= date.fromisoformat(last[:10])


def test_the_status_page_describes_the_course_and_announces_its_status(
    demo_site: Path, demo_bulletin: Bulletin
) -> None:
    """The demo's morning entry of 14 September is of 6.50, summer time; it counts to the end of the day."""
    (data,) = html.parse(demo_site / "index.html").getroot().xpath("//script[@type='application/ld+json']/text()")
    said = json.loads(data)
    assert said.keys() == {"@context", "@graph"}
    course, announced = said["@graph"]
    Draft202012Validator(ANNOUNCEMENT).validate(announced)
    assert announced["announcementLocation"]["@id"] == course["@id"]
    assert announced["text"] == demo_bulletin.status.sentence
    assert announced["datePosted"] == "2027-09-14T06:50:00+01:00"
    assert announced["expires"] == "2027-09-15T00:00:00+01:00"
    Draft202012Validator(GOLF_COURSE).validate(course)
    assert course["name"] == "Quillhaven Golf Club"
    assert course["geo"]["latitude"] == demo_bulletin.club.latitude_deg
    assert course["email"] == demo_bulletin.club.contact.email


def test_nothing_is_announced_while_nothing_is_known(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    """Nobody entered anything on 24 December."""
    bulletin = demo_bulletin_at("2027-12-24 09:00")
    data = course_data(bulletin, OpenGraph(bulletin=bulletin, pictures={}))
    assert [one["@type"] for one in data["@graph"]] == ["GolfCourse"]  # type: ignore[attr-defined]


def test_work_that_was_done_as_planned_has_its_moments_with_the_offset(demo_bulletin: Bulletin) -> None:
    """The demo's log: started at 6.55 on 23 August, the last greens done at 13.50 on the 27th, summer time."""
    number = [notice.id for notice in demo_bulletin.notices].index("greens-renovation-2027")
    told = ("Scheduled", "2027-08-23T06:55:00+01:00", None, "2027-08-27T13:50:00+01:00")
    assert _told(_event(demo_bulletin, number)) == told


@pytest.fixture
def spring(tmp_path: Path) -> SmallClub:
    club = SmallClub(tmp_path)
    club.job("spring", "05-10")
    return club


def test_planned_work_is_scheduled_for_its_days(spring: SmallClub) -> None:
    status, first, before, last = _told(_event(compose_bulletin(spring.records(), moment("05-01"))))
    assert (status, first, before) == ("Scheduled", f"{moment('05-10').date()}", None)
    assert last >= first


def test_work_that_was_moved_is_rescheduled_from_the_day_told_before(spring: SmallClub) -> None:
    spring.log("moved", "05-03", "change of plan", "job: spring", "change: postponed to",
               f"starts: {moment('05-12').date()}", "because: the club needed the day")  # fmt: skip
    status, first, before, _ = _told(_event(compose_bulletin(spring.records(), moment("05-04"))))
    told = (f"{moment('05-12').date()}", f"{moment('05-10').date()}")
    assert (status, first, before) == ("Rescheduled", *told)


def _moved(club: SmallClub, name: str, day: str, change: str, to: str) -> None:
    club.log(name, day, "change of plan", "job: spring", f"change: {change}", f"starts: 2027-{to}", "because: rain")


def test_work_that_was_moved_twice_has_every_day_that_was_told_before(spring: SmallClub) -> None:
    """previousStartDate "may be repeated" where an event was rescheduled multiple times (schema.org, from memory)."""
    _moved(spring, "first", "05-03", "postponed to", "05-12")
    _moved(spring, "second", "05-04", "postponed to", "05-17")
    status, first, before, _ = _told(_event(compose_bulletin(spring.records(), moment("05-05"))))
    assert (status, first, before) == ("Rescheduled", "2027-05-17", ["2027-05-10", "2027-05-12"])


def test_work_that_was_moved_there_and_back_has_the_day_between(spring: SmallClub) -> None:
    _moved(spring, "there", "05-03", "postponed to", "05-12")
    _moved(spring, "back", "05-04", "brought forward to", "05-10")
    status, first, before, _ = _told(_event(compose_bulletin(spring.records(), moment("05-05"))))
    assert (status, first, before) == ("Rescheduled", "2027-05-10", "2027-05-12")


def test_work_that_began_a_day_late_was_not_as_scheduled(spring: SmallClub) -> None:
    """EventScheduled is for what takes place "on the startDate as scheduled" (schema.org, from memory)."""
    spring.log("begun", "05-11", "work started", "job: spring", time="08:00")
    status, first, before, _ = _told(_event(compose_bulletin(spring.records(), moment("05-11"))))
    assert (status, first, before) == ("Rescheduled", "2027-05-11T08:00:00+01:00", "2027-05-10")


def test_work_that_is_held_up_before_it_began_is_postponed_and_once_begun_it_is_not(spring: SmallClub) -> None:
    spring.log("wet", "05-10", "held up", "job: spring", "because: rain", time="07:00")
    assert _told(_event(compose_bulletin(spring.records(), moment("05-10"))))[0] == "Postponed"
    spring.log("begun", "05-10", "work started", "job: spring", time="06:00")
    assert _told(_event(compose_bulletin(spring.records(), moment("05-10"))))[0] == "Scheduled"


def test_the_address_of_a_picture_changes_with_the_picture(demo_bulletin: Bulletin) -> None:
    """Services keep what they have fetched from an address."""
    path, keys = "preview.png", ("0123456789abcdef", "f123456789abcdef")
    first, other = (OpenGraph(bulletin=demo_bulletin, pictures={path: key}).picture_address(path) for key in keys)
    assert first == "https://quillhaven.example/preview.png?0123456789ab"
    assert other == "https://quillhaven.example/preview.png?f123456789ab"


def test_work_that_was_called_off_is_cancelled_and_keeps_its_day(spring: SmallClub) -> None:
    spring.log("off", "05-03", "change of plan", "job: spring", "change: called off", "because: no sand was to be had")
    status, first, _, _ = _told(_event(compose_bulletin(spring.records(), moment("05-04"))))
    assert (status, first) == ("Cancelled", f"{moment('05-10').date()}")


def test_work_that_nobody_began_is_postponed_to_no_day(spring: SmallClub) -> None:
    status, first, _, last = _told(_event(compose_bulletin(spring.records(), moment("05-12"))))
    assert (status, first, last) == ("Postponed", f"{moment('05-10').date()}", None)


def test_no_typed_word_can_leave_the_script(demo_bulletin: Bulletin) -> None:
    """HTML Living Standard, "Restrictions for contents of script elements": "<!--", "<script" and "</script" do harm."""
    notice = replace(demo_bulletin.notices[0], headline=HOSTILE)
    club = replace(demo_bulletin.club, name=HOSTILE)
    bulletin = replace(demo_bulletin, club=club, notices=(notice, *demo_bulletin.notices[1:]))
    graph = OpenGraph(bulletin=bulletin, pictures={})
    for data in (notice_data(notice, bulletin, graph), course_data(bulletin, graph)):
        text = script_text(data)
        assert not re.search("[<>&\u2028\u2029]", text)
        assert json.loads(text) == data
        root = html.fromstring(f'<html><head><script type="application/ld+json">{text}</script></head></html>')
        (script,) = root.xpath("//script")
        found = json.loads(script.text)
        assert found.get("@graph", [found])[0]["name"] == HOSTILE


def _graph_of(page: Path) -> dict[str, str]:
    metas = html.parse(page).getroot().xpath("//meta[@property]")
    found = {meta.get("property"): meta.get("content") for meta in metas}
    assert len(found) == len(metas), page
    return found


def test_every_page_has_the_four_properties_of_open_graph_and_its_picture(demo_site: Path) -> None:
    unlinked = ("email.html", "404.html")  # nobody pastes a link to these
    pages = [page for page in sorted(demo_site.rglob("*.html")) if page.name not in unlinked]
    for page in pages:
        graph = _graph_of(page)
        assert graph.keys() >= {"og:title", "og:type", "og:image", "og:url", "og:site_name", "og:description"}, page
        assert graph["og:locale"] == "en_GB"
        assert graph["og:url"].startswith("https://quillhaven.example/")
        (canonical,) = html.parse(page).getroot().xpath("//link[@rel='canonical']/@href")
        assert graph["og:url"] == canonical
        path = graph["og:image"].removeprefix("https://quillhaven.example/").partition("?")[0]
        with Image.open(demo_site / path) as picture:
            assert [str(size) for size in picture.size] == [graph["og:image:width"], graph["og:image:height"]]
    assert len(pages) > 40


def test_a_notice_and_its_short_address_show_the_same(demo_site: Path, demo_bulletin: Bulletin) -> None:
    long = {name: _graph_of(demo_site / "notices" / name / "index.html") for name in demo_bulletin.outlook.jobs}
    short = [_graph_of(page) for page in (demo_site / "n").rglob("*.html")]
    assert sorted(short, key=str) == sorted(long.values(), key=str)
    for notice in demo_bulletin.notices:
        graph = long[notice.id]
        assert (graph["og:type"], graph["og:title"]) == ("article", notice.headline)
        assert graph["og:description"] == notice.short_answer
        assert datetime.fromisoformat(graph["article:modified_time"]) == notice.revised_at
        assert graph["og:image"].startswith(f"https://quillhaven.example/notices/{notice.id}/preview.png?")
