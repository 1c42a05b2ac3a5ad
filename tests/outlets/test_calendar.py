"""The calendar as a file: what RFC 5545 and RFC 7986 ask, read by three parsers and a library of recurring events.

Sections of the RFCs are named from memory of their text.
"""

from __future__ import annotations

import io
import re
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import ics
import pytest
import recurring_ical_events
import vobject
from dateutil import tz
from icalendar import Calendar

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.notices.calendar import DaySpan
from swardcast.notices.calendar_story import calendar_of
from swardcast.outlets.calendar import calendar_artifact, uid_of
from swardcast.outlets.time_zone import time_zone_component
from swardcast.outlook.memory import as_members_see
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from tests.outlook.small_club import SmallClub, moment

AWKWARD = [
    pytest.param("Sand & <b>seed</b>; \"new\", 'old'", id="marks"),
    pytest.param(r"C:\New\notes \n \N \, \;", id="backslashes"),
    pytest.param("Løv på greenene 🍂🏌️‍♀️ ⛳", id="emoji"),
    pytest.param("ريّ الخضراء 9 و10", id="right to left"),
    pytest.param("草" * 60, id="long without a blank"),
]


@pytest.fixture(scope="module")
def bulletin(demo_bulletin_at: Callable[[str], Bulletin]) -> Bulletin:
    return demo_bulletin_at("2027-08-24 18:00")


@pytest.fixture(scope="module")
def data(bulletin: Bulletin) -> bytes:
    return calendar_artifact(bulletin).data


@pytest.fixture(scope="module")
def lines(data: bytes) -> list[str]:
    """Content lines, unfolded as RFC 5545 section 3.1 says."""
    return re.sub(r"\r\n[ \t]", "", data.decode()).removesuffix("\r\n").split("\r\n")


def _read(data: bytes) -> Any:
    """By icalendar; without its types, which say little of what a property holds."""
    return Calendar.from_ical(data)


def _with_summary(bulletin: Bulletin, summary: str) -> bytes:
    first, *rest = bulletin.calendar
    told = replace(first, summary=summary, sentences=(summary,), categories=(summary,))
    return calendar_artifact(replace(bulletin, calendar=(told, *rest))).data


def test_lines_end_and_fold_as_they_must(data: bytes) -> None:
    """RFC 5545 section 3.1: CRLF, 75 octets without it; and no character is cut, which old readers need."""
    assert data.endswith(b"\r\n")
    physical = data.removesuffix(b"\r\n").split(b"\r\n")
    assert not any(b"\n" in line or b"\r" in line for line in physical)
    assert max(map(len, physical)) <= 75
    for line in physical:
        line.decode()
        assert line
    assert any(line.startswith(b" ") for line in physical)


def test_the_calendar_names_itself(lines: list[str]) -> None:
    """RFC 5545 section 3.6 (PRODID, VERSION), RFC 7986 section 5; the X- names are common usage."""
    head = lines[: next(n for n, line in enumerate(lines) if line in ("BEGIN:VTIMEZONE", "BEGIN:VEVENT"))]
    assert head[0] == "BEGIN:VCALENDAR"
    about = "Days of work on the course at Quillhaven Golf Club\\, when what was closed should open again\\, and until when it may still be healing."
    for expected in (
        "VERSION:2.0",
        "PRODID:-//Swardcast//Swardcast//EN",
        "CALSCALE:GREGORIAN",
        "METHOD:PUBLISH",
        "UID:calendar@quillhaven.example",
        "NAME:Quillhaven Golf Club: work on the course",
        "X-WR-CALNAME:Quillhaven Golf Club: work on the course",
        f"DESCRIPTION:{about}",
        f"X-WR-CALDESC:{about}",
        "X-WR-TIMEZONE:Europe/London",
        "URL:https://quillhaven.example/",
        "SOURCE;VALUE=URI:https://quillhaven.example/calendar.ics",
        "REFRESH-INTERVAL;VALUE=DURATION:PT1H",
        "X-PUBLISHED-TTL:PT1H",
        "COLOR:forestgreen",
        "LAST-MODIFIED:20270824T170000Z",  # the last full hour, an hour east of UTC
    ):
        assert head.count(expected) == 1, expected


def test_each_event_has_what_a_published_one_must_have(data: bytes) -> None:
    """RFC 5545 section 3.6.1 and RFC 5546 section 3.2.1; each at most once."""
    events = _read(data).events
    assert len(events) > 25
    needed = {
        "UID", "DTSTAMP", "DTSTART", "SUMMARY", "DESCRIPTION", "ORGANIZER", "SEQUENCE", "STATUS", "TRANSP", "URL",
        "CREATED", "LAST-MODIFIED", "CATEGORIES", "COLOR",
    }  # fmt: skip
    for event in events:
        assert event.keys() - {"DTEND"} == needed
        assert not any(isinstance(value, list) for value in event.values())
        assert event["STATUS"] in ("TENTATIVE", "CONFIRMED", "CANCELLED")
        assert event["TRANSP"] == "TRANSPARENT"
        assert event["ORGANIZER"] == "mailto:links@quillhaven.example"
        assert event["ORGANIZER"].params["CN"] == "Quillhaven Golf Club"
        assert event["DTSTAMP"].dt == event["LAST-MODIFIED"].dt >= event["CREATED"].dt
        assert event["URL"] == f"https://quillhaven.example/notices/{str(event['UID']).split('.')[0]}/"
        assert str(event["DESCRIPTION"]).splitlines()[-1] == event["URL"]
    assert len({event["UID"] for event in events}) == len(events)


def test_a_day_of_work_ends_with_the_day_before_its_end(lines: list[str]) -> None:
    """Greens 1 to 6 on Monday 23 August; the end of a day is exclusive, RFC 5545 section 3.6.1."""
    at = lines.index("UID:greens-renovation-2027.work-1@quillhaven.example")
    event = lines[at - 6 : at + 14]
    assert "DTSTART;VALUE=DATE:20270823" in event
    assert "DTEND;VALUE=DATE:20270824" in event
    assert "SUMMARY:Greens 1 to 6: Hollow tining\\, scarifying and sanding the greens (done)" in event
    assert "STATUS:CONFIRMED" in event
    # 106 days and 18 hours since the announcement, and 28 entries since then, the first on 10 May at 9am.
    assert f"SEQUENCE:{106 * 24 + 18 + 28}" in event
    assert "DTSTAMP:20270824T170000Z" in event
    assert "CREATED:20270509T230000Z" in event  # announced on 10 May, midnight in summer time


@pytest.mark.parametrize(
    ("site", "uid"),
    [
        ("https://quillhaven.example", "spring.work-1@quillhaven.example"),
        ("https://clubs.example/a", "spring.work-1.a@clubs.example"),
        ("https://clubs.example/b", "spring.work-1.b@clubs.example"),
        ("https://clubs.example/golf/b", "spring.work-1.golf.b@clubs.example"),
    ],
)
def test_clubs_on_one_host_have_uids_of_their_own(site: str, uid: str) -> None:
    assert uid_of("spring/work-1", site) == uid


def test_two_more_parsers_read_the_same_days(data: bytes, bulletin: Bulletin) -> None:
    told = {event.id.replace("/", ".") + "@quillhaven.example": event for event in bulletin.calendar}
    by_vobject = {event.uid.value: event for event in vobject.readOne(data.decode()).vevent_list}
    by_ics = {event.uid: event for event in ics.Calendar(data.decode()).events}
    assert told.keys() == by_vobject.keys() == by_ics.keys()
    for uid, event in told.items():
        theirs, others = by_vobject[uid], by_ics[uid]
        assert theirs.summary.value == others.name == event.summary
        assert theirs.description.value.splitlines() == others.description.splitlines()
        assert theirs.status.value == others.status == event.standing.value.upper()
        if isinstance(event.span, DaySpan):
            assert (theirs.dtstart.value, theirs.dtend.value) == (event.span.first, event.span.last + timedelta(days=1))
            assert others.all_day
            assert others.begin.date() == event.span.first
        else:
            assert theirs.dtstart.value == event.span.starts
            assert others.begin.datetime == event.span.starts


def test_a_day_shows_what_it_has(data: bytes) -> None:
    """Tuesday 24 August at 6pm, in the order in which a program would list it."""
    found = [one for one in recurring_ical_events.of(_read(data)).at(date(2027, 8, 24)) if one["STATUS"] != "CANCELLED"]
    title = "Hollow tining, scarifying and sanding the greens"
    assert sorted(str(event["SUMMARY"]) for event in found) == [
        "Greens 1 to 6 open again",
        f"Greens 7 to 12: {title} (done)",
        "The practice green not yet back to normal: likely by Friday 17 September; allow until Sunday 26 September",
    ]


def test_a_time_zone_is_there_where_a_moment_names_it_and_only_there(
    lines: list[str], demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    assert any(line.startswith("DTSTART;TZID=Europe/London:") for line in lines)
    assert lines.count("BEGIN:VTIMEZONE") == lines.count("TZID:Europe/London") == 1
    plans = [event for event in demo_bulletin_at("2027-08-24 18:00").calendar if isinstance(event.span, DaySpan)]
    only_days = calendar_artifact(replace(demo_bulletin_at("2027-08-24 18:00"), calendar=tuple(plans))).data
    assert b"TZID" not in only_days
    assert b"VTIMEZONE" not in only_days


@pytest.mark.parametrize(
    "name",
    ["Europe/London", "Europe/Dublin", "America/New_York", "Australia/Lord_Howe", "Asia/Kolkata", "Pacific/Auckland"],
)
def test_the_time_zone_component_has_the_offsets_of_the_zone(name: str) -> None:
    """Read by dateutil, and compared with the tz database on every third hour, but for the hours near a change."""
    zone = ZoneInfo(name)
    component = time_zone_component(zone, 2027, 2028).to_ical().decode()
    theirs = tz.tzical(io.StringIO(component)).get(name)
    moment, compared = datetime(2027, 1, 1, tzinfo=zone).astimezone(UTC), 0  # where it is January first
    while moment.astimezone(zone).year < 2029:
        local = moment.astimezone(zone)
        near = {(moment + timedelta(hours=by)).astimezone(zone).utcoffset() for by in (-1, 1)}
        if len(near) == 1:
            assert local.replace(tzinfo=theirs).utcoffset() == local.utcoffset(), local
            compared += 1
        moment += timedelta(hours=3)
    assert compared > 5800


def test_the_clocks_of_2027_change_when_britains_do() -> None:
    """The Summer Time Order 2002: last Sundays of March and October, at 1am Greenwich time; told in the time before."""
    text = time_zone_component(ZoneInfo("Europe/London"), 2027, 2027).to_ical().decode()
    assert "BEGIN:DAYLIGHT\r\nDTSTART:20270328T010000\r\nTZNAME:BST\r\nTZOFFSETFROM:+0000\r\nTZOFFSETTO:+0100" in text
    assert "BEGIN:STANDARD\r\nDTSTART:20271031T020000\r\nTZNAME:GMT\r\nTZOFFSETFROM:+0100\r\nTZOFFSETTO:+0000" in text


@pytest.mark.parametrize("title", AWKWARD)
def test_awkward_titles_come_through_three_parsers(bulletin: Bulletin, title: str) -> None:
    data = _with_summary(bulletin, title)
    assert max(map(len, data.split(b"\r\n"))) <= 75
    uid = "greens-solid-tining-2027.reopening-1@quillhaven.example"
    ours = next(event for event in _read(data).events if event["UID"] == uid)
    theirs = next(event for event in vobject.readOne(data.decode()).vevent_list if event.uid.value == uid)
    assert theirs.summary.value == title
    assert theirs.description.value.splitlines()[0] == title
    if "\\" not in title:  # icalendar 7.3 itself takes a typed "\N" for a new line when it reads
        assert str(ours["SUMMARY"]) == title
        assert [str(name) for name in ours["CATEGORIES"].cats] == [title]
        other = next(event for event in ics.Calendar(data.decode()).events if event.uid == uid)
        assert other.name == title


@pytest.mark.parametrize("end", ["\r\n", "\n", "\r", "\x0b", "\x85", "\u2028"], ids=ascii)
def test_a_title_cannot_bring_lines_of_its_own(bulletin: Bulletin, end: str) -> None:
    data = _with_summary(bulletin, f"Sand{end}END:VEVENT{end}BEGIN:VEVENT{end}UID:x{end}X-MINE:1")
    before = _read(calendar_artifact(bulletin).data)
    after = _read(data)
    assert len(after.events) == len(before.events)
    summaries = [str(event["SUMMARY"]) for event in after.events]
    assert "Sand END:VEVENT BEGIN:VEVENT UID:x X-MINE:1" in summaries
    assert not any("X-MINE" in event for event in after.events)
    assert len(vobject.readOne(data.decode()).vevent_list) == len(before.events)


def test_a_clubs_name_with_quotes_stands_in_a_parameter(bulletin: Bulletin) -> None:
    """RFC 6868: a caret, a quote and a new line in a parameter are written with a caret."""
    club = replace(bulletin.club, name='The "Old" Links; Hill, Dale: ^')
    data = calendar_artifact(replace(bulletin, club=club)).data
    unfolded = data.replace(b"\r\n ", b"").decode()
    assert "ORGANIZER;CN=\"The ^'Old^' Links; Hill, Dale: ^^\":mailto:links@quillhaven.example" in unfolded
    assert 'NAME:The "Old" Links\\; Hill\\, Dale: ^: work on the course' in unfolded
    calendar = _read(data)
    assert calendar.events[0]["ORGANIZER"].params["CN"] == club.name


def test_a_club_without_an_address_publishes_without_an_organizer(bulletin: Bulletin) -> None:
    """RFC 5546 section 3.2.1 asks for one where METHOD is PUBLISH, so neither is there."""
    club = replace(bulletin.club, contact=replace(bulletin.club.contact, email=""))
    data = calendar_artifact(replace(bulletin, club=club)).data
    assert b"METHOD" not in data
    assert b"ORGANIZER" not in data
    assert len(_read(data).events) == len(bulletin.calendar)


def test_what_was_over_more_than_400_days_ago_stands_in_it_no_more(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    bulletin = demo_bulletin_at("2028-10-20 09:00")  # 400 days before is 16 September 2027
    there = {uid_of(one.id, bulletin.club.named_by): one.span.last_day for one in bulletin.calendar}
    uids = {str(event["UID"]) for event in _read(calendar_artifact(bulletin).data).events}
    assert uids == {uid for uid, day in there.items() if day >= date(2027, 9, 16)}
    assert 0 < len(uids) < len(there)


def test_of_jobs_long_over_no_event_is_made_and_the_file_is_the_same(
    demo_bulletin_at: Callable[[str], Bulletin], demo_records: ClubRecords
) -> None:
    """Told again in whole: what was called back to normal in 2027 is over for good in the middle of 2030."""
    bulletin = demo_bulletin_at("2030-06-30 09:00")
    book = WeatherBook(demo_records.club, demo_records.weather)
    records = as_members_see(demo_records, book)
    every = [
        event for story in bulletin.stories.values() for event in calendar_of(story, records, bulletin.as_of, book)
    ]
    made = {event.notice_id for event in bulletin.calendar}
    left = [event for event in every if event.notice_id not in made]
    assert len({event.notice_id for event in left}) > 5
    assert calendar_artifact(replace(bulletin, calendar=tuple(every))).data == calendar_artifact(bulletin).data


def test_a_club_with_nothing_announced_has_a_calendar_all_the_same(bulletin: Bulletin) -> None:
    """A program that follows it must not meet an error."""
    data = calendar_artifact(replace(bulletin, calendar=())).data
    assert _read(data).events == []
    assert b"LAST-MODIFIED" not in data


def test_the_built_site_has_the_calendar_and_names_it_on_every_page(demo_site: Path, demo_bulletin: Bulletin) -> None:
    assert (demo_site / "calendar.ics").read_bytes() == calendar_artifact(demo_bulletin).data
    link = '<link rel="alternate" type="text/calendar" title="Quillhaven Golf Club: work on the course" href='
    assert link in (demo_site / "index.html").read_text(encoding="utf-8")
    follow = (demo_site / "pages" / "follow" / "index.html").read_text(encoding="utf-8")
    assert 'href="../../calendar.ics"' in follow


@pytest.mark.parametrize(("days", "stands", "is_made"), [(390, True, True), (410, False, True), (830, False, False)])
def test_of_work_long_over_no_event_is_made_and_the_file_is_the_same(
    days: int, stands: bool, is_made: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Done on 1 June, told for 3 July at the latest, and called normal on 20 June: 830 days later is 27 September 2029."""
    club = SmallClub(tmp_path)
    club.job("spring", "06-01")
    club.done("spring", "06-01")
    club.normal("spring", "06-20")
    as_of = moment("06-20") + timedelta(days=days)
    bulletin = compose_bulletin(club.records(), as_of)
    assert bool(bulletin.calendar) is is_made
    file = calendar_artifact(bulletin).data
    assert (b"BEGIN:VEVENT" in file) is stands
    monkeypatch.setattr("swardcast.compose.may_still_be_there", lambda *_: True)
    every = compose_bulletin(club.records(), as_of)
    assert every.calendar
    assert calendar_artifact(every).data == file
