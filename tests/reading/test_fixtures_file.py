"""fixtures.ics against the standard's own examples, other libraries' reading, and files that other libraries wrote."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import icalendar
import ics
import pytest
import vobject
from dateutil.rrule import WE, WEEKLY, rrule
from dateutil.tz import gettz
from hypothesis import given
from hypothesis import strategies as st

from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from tests.conftest import DEMO
from tests.reading.calendars import LONDON, MEDAL, calendar, read

NEW_YORK = ZoneInfo("America/New_York")


def days(fixtures: tuple[Fixture, ...]) -> list[date]:
    return [fixture.first_day for fixture in fixtures]


RFC_EXAMPLES = {
    "weekly for 10 occurrences": (
        ("DTSTART;TZID=America/New_York:19970902T090000", "RRULE:FREQ=WEEKLY;COUNT=10"),
        "1997-09-02 1997-09-09 1997-09-16 1997-09-23 1997-09-30 1997-10-07 1997-10-14 1997-10-21 1997-10-28 1997-11-04",
    ),
    "every other week": (
        ("DTSTART;TZID=America/New_York:19970902T090000", "RRULE:FREQ=WEEKLY;INTERVAL=2;WKST=SU"),
        "1997-09-02 1997-09-16 1997-09-30 1997-10-14 1997-10-28 1997-11-11 1997-11-25 1997-12-09 1997-12-23",
    ),
    "monthly on the first Friday": (
        ("DTSTART;TZID=America/New_York:19970905T090000", "RRULE:FREQ=MONTHLY;COUNT=10;BYDAY=1FR"),
        "1997-09-05 1997-10-03 1997-11-07 1997-12-05 1998-01-02 1998-02-06 1998-03-06 1998-04-03 1998-05-01 1998-06-05",
    ),
    "every Friday the 13th, with the start left out": (
        (
            "DTSTART;TZID=America/New_York:19970902T090000",
            "EXDATE;TZID=America/New_York:19970902T090000",
            "RRULE:FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13",
        ),
        "1998-02-13 1998-03-13 1998-11-13 1999-08-13 2000-10-13",
    ),
    "an invalid day is passed over": (
        ("DTSTART;TZID=America/New_York:20070115T090000", "RRULE:FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5"),
        "2007-01-15 2007-01-30 2007-02-15 2007-03-15 2007-03-30",
    ),
}


@pytest.mark.parametrize(("event", "expected"), RFC_EXAMPLES.values(), ids=RFC_EXAMPLES)
def test_the_standards_examples_of_what_comes_back(event: tuple[str, ...], expected: str) -> None:
    """Desruisseaux 2009, RFC 5545, section 3.8.5.3, examples with their results as printed there."""
    wanted = [date.fromisoformat(day) for day in expected.split()]
    found = read(calendar((*MEDAL, *event)), first=wanted[0], last=wanted[-1], zone=NEW_YORK)
    assert days(found) == wanted
    assert {fixture.starts_at.hour for fixture in found if fixture.starts_at} == {9}  # by the wall clock, summer or not


def test_the_end_of_an_all_day_event_does_not_count() -> None:
    """RFC 5545, section 3.6.1: 28 June to 9 July exclusive is a festival from 28 June through 8 July inclusive."""
    text = calendar((*MEDAL, "DTSTART;VALUE=DATE:20070628", "DTEND;VALUE=DATE:20070709"))
    (festival,) = read(text, first=date(2007, 1, 1), last=date(2007, 12, 31))
    assert (festival.first_day, festival.last_day) == (date(2007, 6, 28), date(2007, 7, 8))


@pytest.mark.parametrize(
    ("event", "first", "last", "ends"),
    [
        pytest.param(("DTSTART;VALUE=DATE:20270918",), 18, 18, None, id="a day without an end"),
        pytest.param(("DTSTART:20270918",), 18, 18, None, id="a day that is not called one"),
        pytest.param(("DTSTART;VALUE=DATE:20270918", "DTEND;VALUE=DATE:20270918"), 18, 18, None, id="an end on the day"),
        pytest.param(("DTSTART;VALUE=DATE:20270918", "DURATION:P2D"), 18, 19, None, id="two days by their length"),
        pytest.param(("DTSTART:20270918T080000",), 18, 18, None, id="a time without an end"),
        pytest.param(("DTSTART:20270918T080000", "DTEND:20270919T000000"), 18, 18, "2027-09-19T00:00:00+01:00", id="until midnight"),
        pytest.param(("DTSTART:20270918T080000", "DURATION:PT30H"), 18, 19, "2027-09-19T14:00:00+01:00", id="thirty hours"),
        pytest.param(("DTSTART:20270917T233000Z", "DTEND:20270918T003000Z"), 18, 18, "2027-09-18T01:30:00+01:00", id="UTC is a day earlier"),
    ],
)  # fmt: skip
def test_an_event_takes_the_clubs_days(event: tuple[str, ...], first: int, last: int, ends: str | None) -> None:
    (found,) = read(calendar((*MEDAL, *event)))
    assert (found.first_day, found.last_day) == (date(2027, 9, first), date(2027, 9, last))
    assert (found.ends_at.isoformat() if found.ends_at else None) == ends


@pytest.mark.parametrize(
    ("start", "utc_hour"),
    [
        pytest.param("DTSTART:20270918T090000", 8, id="no zone is the club's"),
        pytest.param("DTSTART:20270918T090000Z", 9, id="UTC"),
        pytest.param("DTSTART;TZID=Europe/Paris:20270918T090000", 7, id="a zone's name alone"),
        pytest.param("DTSTART;TZID=W. Europe Standard Time:20270918T090000", 7, id="the name that a desktop program uses"),
        pytest.param('DTSTART;TZID="GMT Standard Time":20270918T090000', 8, id="the same in quotes"),
        pytest.param("DTSTART;TZID=/maker.example/Europe/Paris:20270918T090000", 7, id="behind a maker's prefix"),
    ],
)  # fmt: skip
def test_a_time_is_the_same_moment_in_the_clubs_zone(start: str, utc_hour: int) -> None:
    """In September London is one hour ahead of UTC and Paris two (CLDR windowsZones: W. Europe is Berlin, GMT London)."""
    (found,) = read(calendar((*MEDAL, start)))
    assert found.starts_at == datetime(2027, 9, 18, utc_hour, tzinfo=UTC)
    assert found.starts_at is not None
    assert found.starts_at.tzinfo is LONDON


def test_a_zone_that_the_file_describes_counts_there_and_in_no_other_file() -> None:
    """Plus 5 hours in one file, plus 3 in the next, under the same name."""

    def zone(offset: str) -> str:
        return (
            "BEGIN:VTIMEZONE\nTZID:Links time\nBEGIN:STANDARD\nDTSTART:19700101T000000\n"
            f"TZOFFSETFROM:{offset}\nTZOFFSETTO:{offset}\nEND:STANDARD\nEND:VTIMEZONE\n"
        )

    event = (*MEDAL, "DTSTART;TZID=Links time:20270918T120000")
    moments = [read(calendar(event, head=zone(offset)))[0].starts_at for offset in ("+0500", "+0300")]
    assert moments == [datetime(2027, 9, 18, hour, tzinfo=UTC) for hour in (7, 9)]


def test_what_is_moved_keeps_its_name_and_what_is_cancelled_or_left_out_is_gone() -> None:
    """Wednesdays 6, 13, 20, 27 October and 3 November: the second moved to Thursday, the third cancelled, the fourth out."""
    series = (
        *MEDAL, "DTSTART;TZID=Europe/London:20271006T173000", "RRULE:FREQ=WEEKLY;COUNT=5",
        "EXDATE;TZID=Europe/London:20271027T173000", "RDATE;TZID=Europe/London:20271030T100000",
    )  # fmt: skip
    moved = (
        "UID:medal", "SUMMARY:Medal, put off", "RECURRENCE-ID;TZID=Europe/London:20271013T173000",
        "DTSTART;TZID=Europe/London:20271014T163000",
    )  # fmt: skip
    cancelled = ("UID:medal", "STATUS:CANCELLED", "RECURRENCE-ID:20271020T163000Z", "DTSTART:20271020T163000Z")
    found = read(calendar(series, moved, cancelled))
    assert [(fixture.id, fixture.first_day.isoformat(), fixture.name) for fixture in found] == [
        ("medal/2027-10-06T17:30", "2027-10-06", "Medal"),
        ("medal/2027-10-13T17:30", "2027-10-14", "Medal, put off"),
        ("medal/2027-10-30T10:00", "2027-10-30", "Medal"),
        ("medal/2027-11-03T17:30", "2027-11-03", "Medal"),
    ]
    assert {fixture.series for fixture in found} == {"medal"}


def test_a_change_from_one_day_on_changes_all_that_follow() -> None:
    """RFC 5545, section 3.2.13: RANGE=THISANDFUTURE. An hour earlier from the second of three on."""
    series = (*MEDAL, "DTSTART:20270906T180000", "RRULE:FREQ=WEEKLY;COUNT=3")
    earlier = (*MEDAL, "RECURRENCE-ID;RANGE=THISANDFUTURE:20270913T180000", "DTSTART:20270913T170000")
    found = read(calendar(series, earlier))
    assert [fixture.starts_at.hour for fixture in found if fixture.starts_at] == [18, 17, 17]
    assert len({fixture.id for fixture in found}) == 3


def test_only_what_may_be_told_and_takes_place_is_read() -> None:
    head = (
        "BEGIN:VTODO\nUID:t\nDTSTART:rubbish\nEND:VTODO\nBEGIN:VFREEBUSY\nFREEBUSY:x\nEND:VFREEBUSY\n"
        "BEGIN:VJOURNAL\nDTSTART:20270918\nEND:VJOURNAL\n"
    )
    events = [
        (f"UID:{name}", f"SUMMARY:{name}", "DTSTART;VALUE=DATE:20270918", more)
        for name, more in (
            ("open", "CATEGORIES:COMPETITION,CLUB"), ("off", "STATUS:CANCELLED"), ("mine", "CLASS:PRIVATE"),
            ("secret", "CLASS:CONFIDENTIAL"), ("perhaps", "STATUS:TENTATIVE"), ("all", "CLASS:PUBLIC"),
        )
    ]  # fmt: skip
    assert [fixture.id for fixture in read(calendar(*events, head=head))] == ["all", "open", "perhaps"]


def test_an_alarm_in_an_event_is_no_part_of_it() -> None:
    alarm = ("BEGIN:VALARM", "TRIGGER:-PT30M", "DURATION:PT5M", "SUMMARY:Get up", "END:VALARM")
    (found,) = read(calendar((*MEDAL, *alarm, "DTSTART;VALUE=DATE:20270918")))
    assert (found.name, found.last_day) == ("Medal", date(2027, 9, 18))


def test_words_are_unescaped_unfolded_and_on_one_line() -> None:
    """RFC 5545, sections 3.1 and 3.3.11: a fold is a line end and one blank; comma, semicolon, line end are escaped."""
    text = calendar(
        (
            "UID:medal",
            "SUMMARY:Med",
            " al\\, and \\;prize\\ngiv",
            "\ting \u202eat \x85 9",
            "DTSTART;VALUE=DATE:20270918",
        )
    )
    assert read(text)[0].name == "Medal, and ;prize giving at 9"


@pytest.mark.parametrize("ending", [b"\n", b"\r\n"], ids=["LF", "CRLF"])
@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"], ids=["without BOM", "with BOM"])
def test_line_ends_and_a_byte_order_mark_change_nothing(demo_club: Path, ending: bytes, mark: bytes) -> None:
    from swardcast.reading.folder import read_club_folder

    path = demo_club / "fixtures.ics"
    plain = path.read_bytes()
    path.write_bytes(mark + plain.replace(b"\n", ending))
    changed = read_club_folder(demo_club).fixtures
    path.write_bytes(plain)
    assert changed == read_club_folder(demo_club).fixtures
    assert len(changed) > 20


def test_several_calendars_may_stand_in_one_file() -> None:
    """RFC 5545, section 3.4."""
    one, two = (calendar((f"UID:{name}", f"SUMMARY:{name}", "DTSTART:20270918")) for name in "ab")
    assert [fixture.id for fixture in read(one + "\n" + two)] == ["a", "b"]


@given(st.integers(1, 4), st.integers(1, 12), st.integers(0, 300))
def test_weekly_fixtures_fall_on_the_days_that_a_plain_loop_finds(every: int, count: int, offset: int) -> None:
    start = date(2027, 1, 4) + timedelta(days=offset)
    text = calendar((*MEDAL, f"DTSTART;VALUE=DATE:{start:%Y%m%d}", f"RRULE:FREQ=WEEKLY;INTERVAL={every};COUNT={count}"))
    assert days(read(text)) == [start + timedelta(weeks=every * number) for number in range(count)]


def test_without_an_end_a_fixture_is_laid_out_over_the_days_asked_for_alone() -> None:
    """Each Wednesday for ever: 52 in 2027, from the 6th of January to the 29th of December."""
    text = calendar((*MEDAL, "DTSTART;TZID=Europe/London:19900103T173000", "RRULE:FREQ=WEEKLY"))
    found = days(read(text, first=date(2027, 1, 1), last=date(2027, 12, 31)))
    span = rrule(
        WEEKLY, dtstart=datetime(2027, 1, 1, tzinfo=UTC), until=datetime(2027, 12, 31, tzinfo=UTC), byweekday=WE
    )
    assert found == [moment.date() for moment in span]
    assert (len(found), found[0], found[-1]) == (52, date(2027, 1, 6), date(2027, 12, 29))


def test_the_demos_single_fixtures_are_what_another_reader_finds(demo_records: ClubRecords) -> None:
    """The library ics (its reading of DTEND gives the last day as the day before)."""
    theirs = {}
    for event in ics.Calendar((DEMO / "fixtures.ics").read_text("utf-8")).events:
        if event.status != "CANCELLED" and not event.uid.startswith("twilight"):
            last = event.end - timedelta(microseconds=1) if event.all_day else event.end
            theirs[event.uid] = (event.name, event.begin.date(), last.date(), event.all_day)
    ours = {
        fixture.id: (fixture.name, fixture.first_day, fixture.last_day, fixture.starts_at is None)
        for fixture in demo_records.fixtures
        if fixture.series == fixture.id
    }
    assert ours == theirs
    assert len(ours) == 5


def test_the_demos_weekly_fixture_is_what_another_reader_finds_and_what_the_file_says(
    demo_records: ClubRecords,
) -> None:
    """vobject lays out the rule with its exception; the moved one is from the file: 23 instead of 22 September."""
    (series,) = (
        event
        for event in vobject.readOne((DEMO / "fixtures.ics").read_text("utf-8")).vevent_list
        if event.uid.value.startswith("twilight") and hasattr(event, "rrule")
    )
    theirs = [moment.date() for moment in series.getrruleset(addRDate=True)]
    theirs[theirs.index(date(2027, 9, 22))] = date(2027, 9, 23)
    ours = [fixture.first_day for fixture in demo_records.fixtures if fixture.series.startswith("twilight")]
    assert ours == theirs
    assert date(2027, 8, 25) not in ours
    assert len(ours) == 21  # 22 Wednesdays from 5 May to 29 September, one left out


def test_a_file_written_with_its_zones_described() -> None:
    """Dialect 1, by the library icalendar: TZID with VTIMEZONE, CRLF, folded lines."""
    written = icalendar.Calendar()
    written.add("prodid", "-//Dialect one//EN")
    written.add("version", "2.0")
    event = icalendar.Event()
    event.add("uid", "shield")
    event.add("summary", "Shield, first round; " + "long words " * 8)
    event.add("dtstart", datetime(2027, 10, 27, 9, tzinfo=ZoneInfo("America/New_York")))
    event.add("dtend", datetime(2027, 10, 27, 21, tzinfo=ZoneInfo("America/New_York")))
    event.add("rrule", {"freq": "weekly", "count": 2})
    written.add_component(event)
    written.add_missing_timezones()
    text = written.to_ical().decode()
    assert "BEGIN:VTIMEZONE" in text
    assert "\r\n " in text
    first, second = read(text.replace("\r\n", "\n"))
    # 9am in New York is 2pm in London; on 3 November 1pm, as London is on winter time since 31 October, New York not.
    assert [fixture.starts_at.hour for fixture in (first, second) if fixture.starts_at] == [14, 13]
    assert (first.first_day, first.last_day) == (date(2027, 10, 27), date(2027, 10, 28))
    assert first.name.startswith("Shield, first round; long words")


def test_a_file_written_in_utc() -> None:
    """Dialect 2, by the library ics: everything in UTC, an all-day event by dates."""
    written = ics.Calendar()
    timed = ics.Event(name="Foursomes, drawn", begin="2027-10-02 08:00:00", duration={"hours": 5}, uid="four")
    whole = ics.Event(name="Open day", begin="2027-10-05", uid="open")
    whole.make_all_day()
    written.events.update({timed, whole})
    four, day = read(written.serialize().replace("\r\n", "\n"))
    assert (four.id, four.name) == ("four", "Foursomes, drawn")
    assert four.starts_at == datetime(2027, 10, 2, 9, tzinfo=LONDON)
    assert (day.first_day, day.last_day, day.starts_at) == (date(2027, 10, 5), date(2027, 10, 5), None)


def test_a_file_written_with_zones_of_its_own_making() -> None:
    """Dialect 3, by the library vobject: a VTIMEZONE that it works out itself."""
    written = vobject.iCalendar()
    event = written.add("vevent")
    event.add("uid").value = "pairs"
    event.add("summary").value = "Pairs"
    event.add("dtstart").value = datetime(2027, 9, 18, 9, tzinfo=gettz("Europe/Paris"))
    event.add("rrule").value = "FREQ=WEEKLY;COUNT=2"
    found = read(written.serialize().replace("\r\n", "\n"))
    assert [fixture.starts_at for fixture in found] == [datetime(2027, 9, day, 7, tzinfo=UTC) for day in (18, 25)]


def test_a_file_as_a_desktop_program_exports_it() -> None:
    """Dialect 4, by hand from RFC 5545, section 3.6.5: a zone with a name of that program, and what else it adds."""
    zone = """METHOD:PUBLISH
BEGIN:VTIMEZONE
TZID:W. Europe Standard Time
BEGIN:STANDARD
DTSTART:16011028T030000
RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=10
TZOFFSETFROM:+0200
TZOFFSETTO:+0100
END:STANDARD
BEGIN:DAYLIGHT
DTSTART:16010325T020000
RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=3
TZOFFSETFROM:+0100
TZOFFSETTO:+0200
END:DAYLIGHT
END:VTIMEZONE
"""
    event = (
        "CLASS:PUBLIC", "CREATED:20270801T070000Z", "UID:040000008200E00074C5B7101A82E008", "PRIORITY:5",
        'DTSTART;TZID="W. Europe Standard Time":20271020T100000', 'DTEND;TZID="W. Europe Standard Time":20271020T140000',
        "RRULE:FREQ=WEEKLY;COUNT=3;BYDAY=WE", "SUMMARY;LANGUAGE=en-gb:Interclub", "TRANSP:OPAQUE",
        'X-ALT-DESC;FMTTYPE=text/html:<html><body>a "quoted: word"</body></html>', "X-BUSYSTATUS:BUSY",
    )  # fmt: skip
    found = read(calendar(event, head=zone))
    assert [fixture.first_day.day for fixture in found] == [20, 27, 3]
    assert {(f.starts_at.hour, f.ends_at.hour) for f in found if f.starts_at and f.ends_at} == {(9, 13)}
