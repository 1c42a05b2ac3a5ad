"""Work that goes on, or is held up, ends a day later with each day: its dates move together, and for that reason."""

from __future__ import annotations

import math
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from swardcast.outlook.causes import Cause
from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.states import DateRange, Milestone
from swardcast.outlook.story import JobStory, tell_story
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from tests.outlook.small_club import SmallClub, moment

NO_RECORDS = "date,tmin_c,tmax_c\n"


def _story(club: SmallClub, as_of: str | datetime, job: str = "spring") -> JobStory:
    records = club.records()
    at = moment(as_of) if isinstance(as_of, str) else as_of
    return tell_story(records, records.jobs[job], at, WeatherBook(records.club, records.weather))


def _reasons(story: JobStory) -> list[tuple[Cause, str]]:
    """Of each move from the second day on; the entries of the first two speak for themselves."""
    return [(move.cause, move.because) for move in story.changes if move.news.before and move.entry is None]


def _started(folder: Path, day: str, *, spare_days: int = 0, **weather: object) -> SmallClub:
    club = SmallClub(folder, **weather)  # type: ignore[arg-type]
    club.job("spring", day, more=f"    spare days: {spare_days}\n")
    surfaces = (
        ("surfaces: green 1",) if spare_days else ()
    )  # then green 2 is awaited as long as the plan has spare days
    club.log("start", day, "work started", "job: spring", *surfaces, time="07:00")
    return club


def _seasons(day: date) -> float:
    """From 2 C in the middle of January to 18 C in July: no grass grows in winter."""
    return 10 - 8 * math.cos((day.timetuple().tm_yday - 15) / 365 * 2 * math.pi)


def test_work_held_up_in_steady_weather_does_not_blame_the_weather(tmp_path: Path) -> None:
    club = _started(tmp_path, "08-09", spare_days=9)
    club.log("held", "08-10", "held up", "job: spring", "because: the machine broke")
    reasons = _reasons(_story(club, "08-20"))
    assert len(reasons) >= 3  # ten days lost, and two days are worth telling
    assert set(reasons) == {(Cause.STILL_HELD_UP, "the machine broke")}


def test_work_that_simply_goes_on_does_not_blame_the_weather(tmp_path: Path) -> None:
    reasons = _reasons(_story(_started(tmp_path, "08-09", spare_days=9), "08-20"))
    assert len(reasons) >= 3
    assert set(reasons) == {(Cause.WORK_TAKES_LONGER, "")}


def test_a_cold_forecast_is_still_named_while_work_goes_on(tmp_path: Path) -> None:
    """One day later is no news by itself; ten days at 6 C instead of 14 C are."""
    club = _started(tmp_path, "04-01", spare_days=9, tmean_c=lambda _: 14.0)
    rows = [f"2027-04-{day:02d},2,10" for day in range(2, 17)]
    path = club.folder / "weather/forecast/2027-04-02T0600.csv"
    path.parent.mkdir(parents=True)
    path.write_text("\n".join(["date,tmin_c,tmax_c", *rows]) + "\n", encoding="utf-8")
    assert _reasons(_story(club, "04-02")) == [(Cause.COLDER_FORECAST, "")]


def test_work_begun_late_is_told_with_the_entry_and_not_before(tmp_path: Path) -> None:
    """While nobody begins, the page gives no date, so that none moves; begun a week late, the work went otherwise."""
    club = SmallClub(tmp_path)
    club.job("spring", "08-09")
    club.log(
        "moved", "08-02", "change of plan", "job: spring", "change: postponed to", "starts: 2027-08-10", "because: rain"
    )
    club.log("start", "08-17", "work started", "job: spring", time="07:00")
    moves = [(change.at.date(), change.cause) for change in _story(club, "08-17").changes if change.news.before]
    assert moves[-1] == (date(2027, 8, 17), Cause.WORK)
    assert [day for day, _ in moves if date(2027, 8, 10) < day < date(2027, 8, 17)] == []


def _trails(records: ClubRecords, book: WeatherBook, at: datetime) -> bool:
    """Whether back to normal comes before the holes have closed, as both are said: in days, or in months."""
    closed = assess_jobs(records, at, book)["spring"].dates[Milestone.HOLES_CLOSED]
    normal = tell_story(records, records.jobs["spring"], at, book).published
    if normal.is_wide:
        return any(said < beside for said, beside in zip(normal.months, closed.months, strict=True))
    assert normal.likely is not None
    assert normal.allow_until is not None
    assert closed.likely is not None
    assert closed.allow_until is not None
    return normal.likely <= closed.likely or normal.allow_until <= closed.allow_until


@pytest.mark.parametrize("records", [False, True], ids=["no weather records", "weather records"])
@pytest.mark.parametrize("starts", ["08-09", "10-05"])
def test_dates_of_unfinished_work_agree_on_every_morning(tmp_path: Path, starts: str, records: bool) -> None:
    club = _started(tmp_path, starts, spare_days=30, tmean_c=_seasons)  # to be awaited for six weeks
    if not records:
        (club.folder / "weather/observed.csv").write_text(NO_RECORDS, encoding="utf-8")
    read, first = club.records(), moment(starts, "08:00")
    book = WeatherBook(read.club, read.weather)
    mornings = [first + timedelta(days=number) for number in range(1, 41)]
    assert [at.date() for at in mornings if _trails(read, book, at)] == []


def _live(club: SmallClub, at: datetime) -> DateRange:
    records = club.records()
    jobs = assess_jobs(records, at, WeatherBook(records.club, records.weather))
    return jobs["spring"].dates[Milestone.BACK_TO_NORMAL]


def test_healing_is_followed_through_the_winter(tmp_path: Path) -> None:
    """Done on 1 November: nothing grows until spring, more than 120 days later."""
    club = SmallClub(tmp_path, tmean_c=_seasons)
    (club.folder / "weather/observed.csv").write_text(NO_RECORDS, encoding="utf-8")
    club.job("spring", "11-01")
    club.done("spring", "11-01")
    at = moment("12-31") + timedelta(days=90)  # 31 March 2028
    published, now = _story(club, at).published, _live(club, at)
    assert published.likely is not None
    assert now.likely is not None
    assert published.allow_until is not None
    assert now.allow_until is not None
    assert abs((published.likely - now.likely).days) < 2
    assert abs((published.allow_until - now.allow_until).days) < 2


def test_a_later_entry_adds_nothing_to_the_days_before_it(tmp_path: Path) -> None:
    """What was told stays told: an entry after a long silence does not fill the silence."""
    club = _started(tmp_path, "03-01")
    before = [change.id for change in _story(club, "09-01").changes]
    club.log("resumed", "09-02", "work resumed", "job: spring")
    assert [change.id for change in _story(club, "09-02").changes][: len(before) + 1] == [*before, "spring/resumed"]
