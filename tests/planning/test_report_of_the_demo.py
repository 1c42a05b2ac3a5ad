"""The committee's report of the invented club, against its log by hand and against what its members were told."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date, datetime
from functools import cache

import pytest

from swardcast.compose import Bulletin
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.periods import Period
from swardcast.planning.report import Report, report_of
from swardcast.planning.report_readings_picture import ReadingsPicture, readings_picture
from swardcast.planning.report_sections import report_in_words
from swardcast.planning.sand_year import sand_year
from swardcast.records.folder import ClubRecords

GREENS, PRACTICE = "greens-renovation-2027", "practice-green-renovation-2027"
AUGUST = Period(first=date(2027, 8, 1), last=date(2027, 8, 31))
SEPTEMBER = Period(first=date(2027, 9, 1), last=date(2027, 9, 30))
OCTOBER = Period(first=date(2027, 10, 1), last=date(2027, 10, 31))
YEAR = Period(first=date(2027, 1, 1), last=date(2027, 12, 31))
Reports = Callable[[str, Period], Report]


@pytest.fixture(scope="module")
def reports(demo_records: ClubRecords) -> Reports:
    """Reports by moment and period, each made once."""
    book = WeatherBook(demo_records.club, demo_records.weather)

    @cache
    def of(moment: str, period: Period) -> Report:
        as_of = datetime.fromisoformat(moment).replace(tzinfo=demo_records.club.time_zone)
        return report_of(demo_records, as_of, book, period)

    return of


MID_SEPTEMBER, OCTOBERS_END, DECEMBER = "2027-09-14 09:30", "2027-10-31 09:00", "2027-12-01 09:00"


def test_august_used_what_the_log_has_of_it(reports: Reports) -> None:
    """18 greens at 2.6 t are 46.8 t, and the practice green's 3.2 t make 50.0. Greens 13 to 15 got 3.2 t each: 1.8 t more.
    It weighs 1.0537 times as much with its water. At 47.35 a tonne with 38.15 + 83.65 + 27.85 + 19.65 = 169.30 a green:
    52.685 x 47.35 + 19 x 169.30 = 5,711.33 planned and 1.8 x 1.0537 x 47.35 = 89.81 more in fact; overseeding and rolling have no price."""
    sand = reports(OCTOBERS_END, AUGUST).sand.jobs
    assert [one.job.id for one in sand] == [PRACTICE, GREENS]
    assert sum(one.planned.sand_t or 0 for one in sand) == pytest.approx(50.0)
    assert sum(one.done.sand_t or 0 for one in sand) == pytest.approx(51.8)
    planned, done = (
        [side.cost for side in sides if side.cost] for sides in zip(*((o.planned, o.done) for o in sand), strict=True)
    )
    assert sum(one.in_all or 0 for one in planned) == pytest.approx(5711.33, abs=0.01)
    assert sum(one.in_all or 0 for one in done) == pytest.approx(5711.33 + 89.81, abs=0.01)
    assert {kind.value for one in (*planned, *done) for kind in one.without} == {"overseeding", "rolling"}


def test_sand_of_a_period_is_that_of_the_sand_command(reports: Reports, demo_records: ClubRecords) -> None:
    """The year's sand is worked out without a report; both go by the days of the plan and of the log."""
    as_of = datetime.fromisoformat(DECEMBER).replace(tzinfo=demo_records.club.time_zone)
    year = sand_year(demo_records, as_of, YEAR.first, YEAR.last).in_all
    jobs = reports(DECEMBER, YEAR).sand.jobs
    assert sum(one.planned.sand_t or 0 for one in jobs) == pytest.approx(year.planned_t)
    assert sum(one.done.sand_t or 0 for one in jobs) == pytest.approx(year.used_t)


def test_the_rain_of_25_august_cost_one_working_day(reports: Reports) -> None:
    (held,) = reports(OCTOBERS_END, AUGUST).hold_ups
    assert (held.began_on, held.ended_on, held.working_days) == (date(2027, 8, 25), date(2027, 8, 26), 1)
    assert held.entry.head.file == "log/2027/2027-08-25-0710-held-up-by-rain.md"
    assert reports(OCTOBERS_END, SEPTEMBER).hold_ups == ()


def test_what_was_promised_is_what_members_were_told(
    reports: Reports, demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    """The bulletin's stories are composed without a report: the announcement, and the last change before the first entry."""
    stories = demo_bulletin_at(MID_SEPTEMBER).stories
    begun = {GREENS: "2027-08-23 06:55", PRACTICE: "2027-08-20 07:00"}
    found = {one.outlook.job.id: one for one in reports(OCTOBERS_END, AUGUST).disturbed}
    assert set(found) == {GREENS, PRACTICE}
    for name, one in found.items():
        changes = stories[name].changes
        before = [change for change in changes if f"{change.at:%Y-%m-%d %H:%M}" < begun[name]]
        assert one.announced is not None
        assert one.before is not None
        assert one.announced.normal == changes[0].news.back_to_normal
        assert one.before.normal == before[-1].news.back_to_normal


def test_the_practice_green_took_24_days(reports: Reports) -> None:
    """20 August to 13 September, when the log calls it back to normal: 11 + 13. Of the greens 11 are called so, on the 20th."""
    found = {one.outlook.job.id: one for one in reports(DECEMBER, SEPTEMBER).disturbed}
    assert (found[PRACTICE].normal_on, found[PRACTICE].days) == (date(2027, 9, 13), 24)
    assert found[GREENS].normal_on is None
    assert found[GREENS].ended_in_part == (date(2027, 9, 20),) * 11


def test_six_jobs_of_the_year_ended_and_five_kept_their_dates(
    reports: Reports, demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    judged = [one for one in reports(DECEMBER, YEAR).kept if one.is_judged]
    assert (len(judged), sum(one.is_inside for one in judged)) == (6, 5)
    lines = demo_bulletin_at(MID_SEPTEMBER).track_record.lines
    assert sum(line.is_inside is True for line in lines) == 5
    assert [one.job.id for one in judged if not one.is_inside] == ["practice-green-solid-tining-2027"]


def test_october_says_which_work_nobody_reported(reports: Reports, demo_records: ClubRecords) -> None:
    """The demo's log ends in September; five jobs were planned for October."""
    report = reports(OCTOBERS_END, OCTOBER)
    assert len(report.jobs) == 5
    assert not any(one.done for one in report.jobs)
    told = report_in_words(report, demo_records)
    assert told.sections[0].lines[0] == "Work: 5 jobs; 5 without a start reported."
    assert [one.outlook.job.id for one in report.ahead] == [
        "greens-winter-height-2027", "winter-ropes-2027", "trees-16-2027", "path-10-2027", "fairway-11-drain-2027",
    ]  # fmt: skip


def test_fixtures_ahead_that_meet_the_same_stand_together_with_their_days(
    reports: Reports, demo_records: ClubRecords
) -> None:
    """New turf keeps the tees closed for weeks: all of autumn falls into it. By fixtures.ics the evening of 22 September is
    played on the 23rd."""
    told = report_in_words(reports("2027-08-22 09:30", AUGUST), demo_records)
    (section,) = (one for one in told.sections if one.name == "ahead")
    (table,) = section.tables
    met = {row[0]: row[5] for row in table.rows}["New turf on the 5th and 13th tees"].replace("\u00a0", " ")
    assert met.startswith(
        "work: Twilight nine (8 September, 15 September, 23 September and 29 September), Autumn medal (18 September), "
    )
    assert met.endswith("Two Coasts visitors (13 to 14 October)")
    assert met.count("work") == 1


def test_no_sand_is_said_in_a_word(reports: Reports, demo_records: ClubRecords) -> None:
    """In October light sanding alone is planned, 0.5 kg on each of 8,755 m2, and nobody has begun it: 4.4 t."""
    lines = report_in_words(reports("2027-09-14 09:30", OCTOBER), demo_records).sections[0].lines
    assert lines[2].replace("\u00a0", " ").startswith("Sand: 4.4 tonnes planned, none used.")


def test_days_of_the_months_are_those_of_the_year(reports: Reports) -> None:
    def days(period: Period) -> dict[str, int]:
        totals = reports(OCTOBERS_END, period).totals
        return {one.name: one.work_days.number + one.healing_days.number for one in totals}

    whole = days(Period(first=AUGUST.first, last=OCTOBER.last))
    parts = [days(period) for period in (AUGUST, SEPTEMBER, OCTOBER)]
    assert {"Greens", "Tees", "Bunkers"} <= set(whole)
    assert whole == {name: sum(part.get(name, 0) for part in parts) for name in whole}


def test_readings_of_the_year_lie_beside_the_targets_as_the_log_has_them(reports: Reports) -> None:
    """Targets: green speed 9 ft 1 in to 9 ft 7 in, firmness 86.5 to 103.5 gravities, moisture 14.5 to 23.5 %, organic
    matter 3.85 to 5.15 %."""
    report = reports(DECEMBER, YEAR)
    found = {
        one.name: [(taken.typed, taken.beside and taken.beside.value) for taken in one.taken] for one in report.readings
    }
    assert found["green speed"] == [
        ("9 ft 5 in", "within"), ("9 ft 9 in", "above"), ("9 ft 6 in", "within"), ("9 ft 4 in", "within"),
        ("8 ft 2 in", "below"), ("8 ft 10 in", "below"), ("8 ft 1 in", "below"),
    ]  # fmt: skip
    assert found["firmness"] == [
        ("78 gravities", "below"), ("91 gravities", "within"), ("111 gravities", "above"), ("99 gravities", "within"),
        ("93 gravities", "within"), ("81 gravities", "below"), ("88 gravities", "within"),
    ]  # fmt: skip
    assert found["moisture"] == [
        ("31 %", "above"), ("21 %", "within"), ("13 %", "below"), ("18 %", "within"), ("20 %", "within"),
        ("25 %", "above"), ("22 %", "within"),
    ]  # fmt: skip
    assert found["organic matter"] == [("6.4 %", "above"), ("6.2 %", "above"), ("5.6 %", "above")]
    assert found["height of cut"] == [("3.5 mm", None), ("5 mm", None), ("4 mm", None), ("4.5 mm", None)]


def test_each_reading_of_the_year_has_its_picture_with_the_clubs_target(
    reports: Reports, demo_records: ClubRecords
) -> None:
    told = report_in_words(reports(DECEMBER, YEAR), demo_records)
    (section,) = (one for one in told.sections if one.name == "readings")
    drawn = {one.told.name: one for one in section.pictures if isinstance(one, ReadingsPicture)}
    assert {name: (one.least, one.most) for name, one in drawn.items()} == {
        "reading-green-speed": (pytest.approx(109 * 25.4), pytest.approx(115 * 25.4)),
        "reading-firmness": (86.5, 103.5),
        "reading-moisture": (pytest.approx(0.145), pytest.approx(0.235)),
        "reading-organic-matter": (pytest.approx(0.0385), pytest.approx(0.0515)),
        "reading-height-of-cut": (None, None),
    }


def test_a_reading_of_many_greens_weighs_more_in_a_days_mean_than_that_of_one(
    reports: Reports, demo_records: ClubRecords
) -> None:
    """13 September: 8 ft 10 in on 11 greens, 8 ft 1 in on one. (11 x 106 + 97) / 12 = 105.25 inches."""
    (speed,) = (one for one in reports(DECEMBER, YEAR).readings if one.name == "green speed")
    picture = readings_picture(speed, YEAR.first, demo_records.club.voice(date(2027, 12, 1)))
    assert picture is not None
    assert picture.means[-1].on == date(2027, 9, 13)
    assert picture.means[-1].value == pytest.approx(105.25 * 25.4)


def test_the_sources_of_a_year_are_told_in_five_lines(reports: Reports, demo_records: ClubRecords) -> None:
    """As many as the whole list has: 22 of the plan, 52 of the log."""
    short = report_in_words(reports(DECEMBER, YEAR), demo_records).sections[-1]
    whole = report_in_words(reports(DECEMBER, YEAR), demo_records, each_source=True).sections[-1]
    counts = [int(re.search(r": (\d+)", line)[1]) for line in short.lines]  # type: ignore[index] # or the test fails
    in_plan = [line for line in whole.lines if ": plan/" in line]
    assert (counts[0], len(in_plan)) == (22, 22)
    assert (sum(counts), len(whole.lines)) == (74, 74)
    assert len(short.lines) == 5
