"""What is said for and against a first day."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime

import pytest

from swardcast.language.catalogue import built_in
from swardcast.language.voice import Voice
from swardcast.outlook.closures import Touch
from swardcast.outlook.dates import DateRange, NoDate, RestsOn
from swardcast.outlook.fixtures import Basis, FixtureOutlook
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.blocked_days import Because, Blocked
from swardcast.planning.date_fixtures import touched_table
from swardcast.planning.date_notes import date_notes
from swardcast.planning.date_tables import date_tables
from swardcast.planning.date_words import blocked_in_words, end_cell, reasons_in_words, weighted_cell
from swardcast.planning.dates import Asked, BestTime, Dates, find_dates
from swardcast.planning.start_days import Cost, StartDay
from swardcast.planning.weather_chances import WeatherChances
from swardcast.planning.windows import Window
from swardcast.records.blocked import DaysWithoutWork
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Kind
from swardcast.records.plan import Job
from swardcast.records.planning import Planning
from tests.planning.asked import fixture

MONDAY = date(2027, 8, 2)
VOICE = Voice.english(date(2027, 5, 20))
COST = Cost(weighted_days=54.6, low=40.0, high=75.5, days=31.2, never=0.0)
ENDS = DateRange(early=date(2027, 8, 25), likely=date(2027, 8, 31), allow_until=date(2027, 9, 10))


@pytest.fixture(scope="module")
def dates(demo_records: ClubRecords) -> Dates:
    job = demo_records.jobs["greens-renovation-2027"]
    asked = Asked(job=job, name=job.title, first=MONDAY, last=date(2027, 8, 6), instead_of=job.id)
    as_of = datetime(2027, 5, 20, 8, tzinfo=demo_records.club.time_zone)
    return find_dates(demo_records, as_of, WeatherBook(demo_records.club, demo_records.weather), asked)


def _plain(words: str) -> str:
    return words.replace("\u00a0", " ")


def _said(
    dates: Dates,
    *,
    day: StartDay | None = None,
    growth: float | None = None,
    days_longer: float = 0.0,
    after: tuple[Blocked, ...] = (),
    same_days: tuple[Job, ...] = (),
) -> str:
    best = day or StartDay(day=MONDAY, blocked=(), work_days=(MONDAY,), cost=COST, ends=ENDS)
    window = Window(best=best, days=(best,), before=(), after=after)
    time = BestTime(window=window, growth=growth, days_longer=days_longer, same_days=same_days)
    return _plain(reasons_in_words(time, dates, Planning(), VOICE))


def test_growth_and_days_more_than_at_the_quickest_time_are_said(dates: Dates) -> None:
    quick = replace(dates, chances={})
    assert _said(quick, growth=0.757) == (
        "The grass then grows at 76 % of its best pace. Play is disturbed about as shortly as it can be. It touches no fixture."
    )
    assert _said(quick, days_longer=0.8) == (
        "Play is disturbed a day longer than at the quickest time. It touches no fixture."
    )
    assert "16 days longer than at the quickest time" in _said(quick, days_longer=15.6)


def test_years_in_which_spare_days_were_enough_are_said(dates: Dates) -> None:
    """By hand: of ten years seven needed none, two needed one, one needed three; one was enough in nine."""
    chances = WeatherChances(dry=8, frost=1, years=10, spare_days=(0,) * 7 + (1, 1, 3))
    said = _said(replace(dates, chances={MONDAY: chances}))
    assert "With 1 spare day the work would have been finished in time in 9 of 10 past years." in said
    never_lost = replace(chances, spare_days=(0,) * 10)
    said = _said(replace(dates, chances={MONDAY: never_lost}))
    assert "Without a spare day the work would have been finished in time in 10 of 10 past years." in said


def test_a_cold_spell_and_a_winter_that_does_not_end_it_are_said(dates: Dates) -> None:
    """Likely after 29 days: 10 days more are no news, 15 are more than half of it."""
    assert "cold spell" not in _said(dates)
    long = StartDay(
        day=MONDAY,
        blocked=(),
        work_days=(MONDAY,),
        cost=replace(COST, never=0.3),
        ends=replace(ENDS, allow_until=date(2027, 9, 15)),
    )
    said = _said(dates, day=long)
    assert "A cold spell may hold it up: in 1 case out of 10 it takes 15 days longer than likely, or more." in said
    assert "About 3 chances in 10 that it is not over within 200 days, perhaps not before spring." in said


def test_other_work_of_the_plan_in_those_days_is_named_for_the_crews_sake(
    dates: Dates, demo_records: ClubRecords
) -> None:
    """The wetting agent is planned for the greens on 20 October, 9 a day and a spare day; the sanding takes two days."""
    job = demo_records.jobs["greens-light-sanding-2027"]
    asked = Asked(job=job, name=job.title, first=date(2027, 10, 18), last=date(2027, 10, 20), instead_of=job.id, most=9)
    as_of = datetime(2027, 9, 14, 9, 30, tzinfo=demo_records.club.time_zone)
    book = WeatherBook(demo_records.club, demo_records.weather)
    beside = {}
    for day in (asked.first, asked.last):
        (time,) = find_dates(demo_records, as_of, book, replace(asked, first=day, last=day)).best
        beside[day] = [one.id for one in time.same_days]
        said = _said(dates, same_days=time.same_days)
        assert ("The plan has other work in these days: Wetting agent on the greens." in said) is bool(beside[day])
    assert beside == {date(2027, 10, 18): [], date(2027, 10, 20): ["greens-wetting-agent-2027"]}


def test_every_fixture_that_the_best_times_touch_has_a_row_with_what_it_meets() -> None:
    """Touched is what falls into the work or has more than 1 chance in 10: the fixture of 9 August is not."""
    met = {
        name: replace(
            StartDay(day=MONDAY, blocked=(), work_days=(MONDAY,), cost=COST, ends=ENDS),
            meets=tuple(
                FixtureOutlook(
                    fixture=fixture(day, name=day.isoformat()),
                    in_work=in_work,
                    basis=Basis.COMPUTED,
                    not_normal=chance,
                    unsettled=None,
                    in_range=Touch.YES,
                )
                for day, in_work, chance in found
            ),
        )
        for name, found in {
            "1": [(date(2027, 8, 5), Touch.NO, 0.83), (date(2027, 8, 9), Touch.NO, 0.02)],
            "2": [(date(2027, 8, 4), Touch.YES, 1.0), (date(2027, 8, 5), Touch.NO, 0.08)],
        }.items()
    }
    table = touched_table(met, VOICE)
    assert table is not None
    assert table.columns == ("Fixture", "1", "2")
    assert [(row[0].split(",")[0], *row[1:]) for row in table.rows] == [
        ("2027-08-04", "–", "work"),
        ("2027-08-05", "8 in 10", "1 in 10"),
    ]
    assert touched_table({"1": replace(met["1"], meets=met["1"].meets[1:])}, VOICE) is None


def test_frost_has_a_column_where_a_past_year_had_any(dates: Dates, demo_records: ClubRecords) -> None:
    head = "Frost that morning"
    assert head not in date_tables(dates, demo_records.planning, VOICE)[0].columns
    cold = {day: replace(chances, frost=7, years=30) for day, chances in dates.chances.items()}
    frosty = replace(dates, chances=cold)
    (best, *_) = date_tables(frosty, demo_records.planning, VOICE)
    assert {row[best.columns.index(head)] for row in best.rows} == {"7 of 30"}
    told = " ".join(date_notes(frosty, demo_records, VOICE))
    assert "Frost is told in the same way, of its morning." in told
    assert "Frost is told" not in " ".join(date_notes(dates, demo_records, VOICE))


def test_what_stops_a_time_is_said_in_the_words_of_the_table(dates: Dates) -> None:
    holiday = Blocked(because=Because.HOLIDAY, day=date(2027, 8, 30), words="Late Summer Bank Holiday")
    assert "The days after are out (Public holiday: Late Summer Bank Holiday)." in _said(dates, after=(holiday,))


@pytest.mark.parametrize(
    ("reason", "said"),
    [
        (Blocked(because=Because.WEEKDAY, day=MONDAY), "Not a working day"),
        (Blocked(because=Because.CLUB, day=MONDAY, words="half the crew is away"), "half the crew is away"),
        (Blocked(because=Because.FIXTURE, day=MONDAY, words="Autumn medal"), "Fixture: Autumn medal"),
        (Blocked(because=Because.DAYLIGHT, day=MONDAY), "Less than 9.5 hours from sunrise to sunset"),
        (
            Blocked(because=Because.CONTRACTOR, day=MONDAY, kind=Kind.HOLLOW_TINING),
            "Not a day of the contractor for hollow tining",
        ),
    ],
)
def test_each_reason_has_its_words(reason: Blocked, said: str) -> None:
    planning = Planning(days_without_work=DaysWithoutWork(least_daylight_h=9.5))
    assert blocked_in_words(reason, planning, VOICE) == said


def test_cells_are_short() -> None:
    assert weighted_cell(COST, VOICE) == "55 (40 to 76)"
    assert weighted_cell(None, VOICE) == "not known"
    assert _plain(end_cell(ENDS, VOICE)) == "31 Aug (10 Sept)"
    usual = replace(ENDS, rests_on=RestsOn.USUAL_TIME)
    assert _plain(end_cell(usual, VOICE)) == "usually 25 Aug to 10 Sept"
    never = replace(ENDS, likely=None, allow_until=None, no_date=NoDate.NOT_THIS_SEASON)
    assert end_cell(never, VOICE) == "not this season"


def test_the_last_day_of_a_range_has_its_year_where_that_is_another() -> None:
    winter = DateRange(early=date(2028, 4, 21), likely=date(2028, 7, 22), allow_until=date(2028, 10, 24))
    assert _plain(end_cell(replace(winter, rests_on=RestsOn.USUAL_TIME), VOICE)) == "usually 21 Apr to 24 Oct 2028"
    over_two = replace(winter, allow_until=date(2029, 3, 8), rests_on=RestsOn.USUAL_TIME)
    assert _plain(end_cell(over_two, VOICE)) == "usually 21 Apr 2028 to 8 Mar 2029"
    from_this = DateRange(early=None, likely=date(2027, 12, 20), allow_until=date(2028, 1, 9))
    assert _plain(end_cell(from_this, VOICE)) == "20 Dec (9 Jan 2028)"


def test_days_after_the_last_fixture_of_the_calendar_are_said_to_have_none(
    dates: Dates, demo_records: ClubRecords
) -> None:
    """Work that begins on 2 August is to be allowed for until September: a calendar up to 31 August ends before that."""
    said = "No fixture after 31 August is known, so that later days count as if there were none."
    assert said not in " ".join(map(_plain, date_notes(dates, demo_records, VOICE)))
    early = tuple(one for one in demo_records.fixtures if one.last_day < date(2027, 8, 31))
    until_august = replace(demo_records, fixtures=(*early, fixture(date(2027, 8, 31))))
    assert said in " ".join(map(_plain, date_notes(dates, until_august, VOICE)))


def test_every_sentence_of_the_notes_and_reasons_is_short(dates: Dates, demo_records: ClubRecords) -> None:
    """At most 25 words, as for members; a list of weights is no sentence to be read at one go."""
    said = [*date_notes(dates, demo_records, VOICE), _said(dates, growth=0.5, days_longer=3.0)]
    sentences = [one for paragraph in said for one in _plain(paragraph).split(". ")]
    assert max(len(one.split()) for one in sentences) <= 25
    assert len(sentences) > 15


def test_american_tables_have_american_days(dates: Dates, demo_records: ClubRecords) -> None:
    voice = Voice(catalogue=built_in("en-US"), near=date(2027, 5, 20))
    (best, *_) = date_tables(dates, demo_records.planning, voice)
    assert "Monday, August 2" in best.rows[0]
    notes = " ".join(map(_plain, date_notes(dates, demo_records, voice)))
    assert "with 0.21 in of rain" in notes  # 5.3 / 25.4 = 0.2087
    assert "32 °F" in notes
