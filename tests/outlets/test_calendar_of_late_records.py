"""Records that come late: whatever a calendar program imported before, it ends with what the records say now.

A program passes over an event whose SEQUENCE, and at the same SEQUENCE whose DTSTAMP, is no higher than that of the one
that it has (RFC 5546, section 2.1.5; `calendar_client`).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from swardcast.compose import compose_bulletin
from swardcast.outlets.calendar import calendar_artifact
from swardcast.records.folder import ClubRecords
from tests.outlets.calendar_client import Client, Kept, kept_in
from tests.outlook.small_club import SmallClub, moment


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    """Work planned for Monday 10 May."""
    club = SmallClub(tmp_path)
    club.job("spring", "05-10")
    return club


def _file(records: ClubRecords, as_of: datetime) -> dict[str, Kept]:
    return {event.uid: event for event in kept_in(calendar_artifact(compose_bulletin(records, as_of)).data)}


def _done_the_next_morning(club: SmallClub) -> None:
    club.log("spring-done", "05-10", "work done", "job: spring", time="15:40")


def _done_days_later(club: SmallClub) -> None:
    club.log("spring-done", "05-07", "work done", "job: spring", time="15:40")


def _started_typed_late(club: SmallClub) -> None:
    club.log("spring-started", "05-10", "work started", "job: spring", time="07:00")


def _opened_before_it_was_known(club: SmallClub) -> None:
    _done_the_next_morning(club)
    club.log("morning", "05-11", "morning status", "play: {the whole course: open}", time="06:40")


def _postponed_in_the_past(club: SmallClub) -> None:
    club.log(
        "later", "05-09", "change of plan", "job: spring", "change: postponed to", "starts: 2027-05-20", "because: rain"
    )


def _called_off_in_the_past(club: SmallClub) -> None:
    club.log("off", "05-09", "change of plan", "job: spring", "change: called off", "because: rain")


def _withdrawn_in_the_past(club: SmallClub) -> None:
    club.job("spring", "05-10", more="    withdrawn: {at: 2027-05-09 09:00, because: entered twice}\n")


LATE: list[Callable[[SmallClub], None]] = [
    _done_the_next_morning,
    _done_days_later,
    _started_typed_late,
    _opened_before_it_was_known,
    _postponed_in_the_past,
    _called_off_in_the_past,
    _withdrawn_in_the_past,
]


@pytest.mark.parametrize("typed", LATE, ids=lambda typed: typed.__name__.strip("_"))
def test_an_entry_that_is_typed_late_reaches_every_program_at_once(
    club: SmallClub, typed: Callable[[SmallClub], None]
) -> None:
    """The site was built at 8am on Tuesday 11 May, the entry was typed after that, and the site built in the same hour."""
    client, before = Client(), _file(club.records(), moment("05-11", "08:00"))
    client.take(before.values())
    typed(club)
    after = _file(club.records(), moment("05-11", "08:10"))
    client.take(after.values())
    assert before.keys() <= after.keys()
    assert client.events == after
    assert any(after[uid].summary != event.summary for uid, event in before.items())


def test_from_then_on_it_never_falls_behind_again(club: SmallClub) -> None:
    """Before, a program kept "planned, no start reported" for as long as it took until more was told than before."""
    client = Client()
    client.take(_file(club.records(), moment("05-11", "08:00")).values())
    _done_the_next_morning(club)
    for day in range(12, 20):
        now = _file(club.records(), moment(f"05-{day}"))
        client.take(now.values())
        assert client.events == now, day


def _title_edited(club: SmallClub) -> None:
    plan = club.folder / "plan/spring.yaml"
    plan.write_text(plan.read_text(encoding="utf-8").replace("Spring work", "Spring renovation"), encoding="utf-8")


def _first_day_edited(club: SmallClub) -> None:
    club.job("spring", "05-12")


def _entry_deleted(club: SmallClub) -> None:
    (club.folder / "log/2027/spring-done.md").unlink()


@pytest.mark.parametrize("edited", [_title_edited, _first_day_edited, _entry_deleted], ids=lambda one: one.__name__)
def test_what_was_edited_without_an_entry_reaches_them_within_hours(
    club: SmallClub, edited: Callable[[SmallClub], None]
) -> None:
    if edited is _entry_deleted:
        _done_the_next_morning(club)
    client, as_of = Client(), moment("05-10", "18:00")
    client.take(_file(club.records(), as_of).values())
    edited(club)
    after = _file(club.records(), as_of + timedelta(hours=2))
    client.take(after.values())
    gone = client.events.keys() - after.keys()
    assert {uid: event for uid, event in client.events.items() if uid not in gone} == after
    # That the surfaces were entered as open is told by nothing that is left: the build says so, test_replaced_site.
    assert gone == ({"spring.reopening-1@saltmarsh-ladder.example"} if edited is _entry_deleted else set())


def test_weather_that_comes_a_week_late_moves_what_programs_have(demo_records: ClubRecords) -> None:
    as_of = datetime(2027, 9, 10, 18, tzinfo=demo_records.club.time_zone)
    weather = demo_records.weather
    known = {day: warmth for day, warmth in weather.observed_c.items() if day < date(2027, 9, 3)}
    client = Client()
    client.take(_file(replace(demo_records, weather=replace(weather, observed_c=known)), as_of).values())
    after = _file(demo_records, as_of + timedelta(hours=1))
    client.take(after.values())
    assert client.events == after


def test_no_age_falls_when_the_records_grow(club: SmallClub) -> None:
    """Entries of other work count too: they may say how this work's surfaces play."""
    ages = []
    for number, typed in enumerate((None, *LATE[:4])):
        if typed is not None:
            typed(club)
        found = _file(club.records(), moment("05-11", f"08:{10 + number}"))
        ages.append(found["spring.work-1@saltmarsh-ladder.example"].sequence)
    # 71 days from 1 March, and 8 hours, one of which the change of the clocks took; then an entry each, but the second
    # is typed over the first.
    hours = 71 * 24 + 8 - 1
    assert ages == [hours, hours + 1, hours + 1, hours + 2, hours + 3]


def test_a_job_of_which_nothing_is_entered_any_more_comes_to_rest(club: SmallClub) -> None:
    _done_the_next_morning(club)
    last = date(2027, 5, 10) + timedelta(days=300)
    found = [_file(club.records(), moment("05-10").replace(year=2028, month=month)) for month in (4, 6)]
    assert found[0] == found[1]
    assert {event.stamp.date() for event in found[0].values()} == {last}
