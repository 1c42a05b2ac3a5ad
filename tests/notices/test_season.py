"""The season, month by month: its days and words are those of the notices and of the calendar, and nothing is lost."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date, datetime, timedelta
from itertools import pairwise

import pytest
from lxml import html

from swardcast.compose import Bulletin, compose_bulletin, season_of
from swardcast.notices.calendar import DaySpan, Occasion, Standing
from swardcast.notices.season import OfMonth, Season, SeasonJob
from swardcast.notices.season_fixtures import Meeting, fixtures_of_month
from swardcast.notices.season_picture import season_bars
from swardcast.outlets.html import season_months_html
from swardcast.outlook.states import Work
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Change, PlanChange
from tests.notices.calendar_events import at, entry_head, with_entries
from tests.notices.many_jobs import clubs

MOMENTS = ("2027-04-20 08:00", "2027-06-08 18:00", "2027-08-25 12:00", "2027-09-14 09:30", "2027-12-06 08:00")
SANDING = "greens-light-sanding-2027"


@pytest.fixture(scope="module")
def book(demo_records: ClubRecords) -> WeatherBook:
    return WeatherBook(demo_records.club, demo_records.weather)


@pytest.fixture(params=MOMENTS)
def bulletin(request: pytest.FixtureRequest, demo_bulletin_at: Callable[[str], Bulletin]) -> Bulletin:
    return demo_bulletin_at(request.param)


def _work(season: Season) -> Iterator[OfMonth]:
    return (one for month in season.months for one in month.work)


def _healing(season: Season) -> Iterator[OfMonth]:
    return (one for month in season.months for one in month.healing)


def _days(given: Iterator[OfMonth]) -> dict[str, tuple[date, date]]:
    """The first and the last day of each job."""
    found: dict[str, tuple[date, date]] = {}
    for one in given:
        assert one.first is not None
        assert one.last is not None
        first, last = found.get(one.notice_id, (one.first, one.last))
        found[one.notice_id] = min(first, one.first), max(last, one.last)
    return found


def _span(bulletin: Bulletin, job: str, occasion: Occasion) -> tuple[date, date] | None:
    """The same in the calendar."""
    spans = [
        event.span
        for event in bulletin.calendar
        if event.notice_id == job and event.occasion is occasion and event.standing is not Standing.CANCELLED
    ]
    days = [span for span in spans if isinstance(span, DaySpan)]
    return (min(one.first for one in days), max(one.last for one in days)) if days else None


def _first_finished(bulletin: Bulletin, job: str) -> date:
    """In the calendar, the last day of the event of work that is over first."""
    works = [one for one in bulletin.calendar if one.notice_id == job and one.occasion is Occasion.WORK]
    return min(one.span.last for one in works if isinstance(one.span, DaySpan))


def _months(season: Season) -> list[str]:
    return [month.name for month in season.months]


def test_days_of_back_to_normal_are_said_as_in_the_notice(bulletin: Bulletin) -> None:
    normal = {notice.id: notice.normal for notice in bulletin.notices}
    season = season_of(bulletin)
    told = list(_healing(season))
    assert len({one.notice_id for one in told}) > 3
    for one in (*told, *season.beyond):
        assert one.when.startswith("Back to normal: ")
        assert one.when.endswith(f": {normal[one.notice_id]}")


def test_work_of_which_nobody_reports_the_rest_is_not_called_done(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """Four of the six bunkers were finished by 15 September; of the two on the 17th nothing was entered."""
    season = season_of(demo_bulletin_at("2027-12-06 08:00"))
    said = "7 to 15 September, 4 of 6 done"
    work = [one.when.replace("\u00a0", " ") for one in _work(season) if one.notice_id == "bunkers-resanding-2027"]
    days = [job.days for job in season.jobs if job.matter.job.id == "bunkers-resanding-2027"]
    assert (work, [one.replace("\u00a0", " ") for one in days]) == ([said], [said])


def test_days_of_work_and_healing_are_those_of_the_calendar(bulletin: Bulletin) -> None:
    """In the calendar surfaces stand on the day on which they are finished; the season has the day before too on which
    they were begun. In the season a job heals from the day after its first surfaces are finished."""
    season = season_of(bulletin)
    work, healing = _days(_work(season)), _days(_healing(season))
    first, end = season.months[0].first_day, season.last_day
    met = 0
    for job in season.jobs:
        name = job.matter.job.id
        days = _span(bulletin, name, Occasion.WORK)
        assert days is not None
        if days[1] >= first:
            if job.matter.outlook.work is not Work.UNDER_WAY:  # then no last day is told
                assert work[name][1] == min(days[1], end)
            assert work[name][0] == max(min(job.first_day, days[0]), first)
            assert days[0] - work[name][0] <= timedelta(days=1) or job.matter.job.surfaces_a_day < 1
        heals = _span(bulletin, name, Occasion.HEALING)
        if heals is not None and heals[1] >= first and heals[0] <= end:
            assert healing[name][1] == min(heals[1], end), name
            if job.matter.outlook.work is not Work.BACK_TO_NORMAL:  # else the calendar has the last day alone
                assert healing[name][0] == max(_first_finished(bulletin, name) + timedelta(days=1), first), name
            met += 1
    assert met > 1


def test_days_of_work_are_said_as_in_the_headline(bulletin: Bulletin) -> None:
    """Of a job whose days lie in one month."""
    season = season_of(bulletin)
    headlines = {notice.id: notice.headline for notice in bulletin.notices}
    work = list(_work(season))
    once = [one for one in work if [other.notice_id for other in work].count(one.notice_id) == 1]
    begun_before = {job.matter.job.id for job in season.jobs if job.first_day < season.months[0].first_day}
    quiet = {name for name, job in bulletin.outlook.jobs.items() if job.unreported}  # its headline says since when
    told = [one for one in once if one.notice_id not in begun_before | quiet and not one.is_called_off]
    assert len(told) > 3
    for one in told:
        days = one.when.rsplit(", ", 1)[0]
        # Of a closure that lasts longer than the work a headline tells the beginning alone.
        assert headlines[one.notice_id].endswith((days, f"planned from {one.first:%-d %B}")), one.when


def test_each_fixture_meets_what_the_notices_say(bulletin: Bulletin) -> None:
    season = season_of(bulletin)
    met = {
        (meeting.notice_id, meeting.words)
        for month in season.months
        for fixture in month.fixtures.runs
        for meeting in fixture.meets
    }
    heading = "Competitions and visitors' days"
    for notice in bulletin.notices:
        for section in notice.sections:
            for fact in section.facts if section.heading == heading else ():
                assert (notice.id, fact.value) in met or fact.value == "Nothing is left to heal.", notice.id
    for month in season.months:
        for fixture in month.fixtures.runs:
            assert all(month.first_day <= day <= month.last_day for day in fixture.first_days)


def test_what_most_fixtures_of_a_month_meet_is_said_once_and_at_each_only_what_differs(demo_bulletin: Bulletin) -> None:
    """Tees are closed all September and October; bunkers are worked on until the 15th, perhaps on the 18th."""
    season = season_of(demo_bulletin)
    for name, leads in (
        ("September 2027", ["For all of them:", "For all of them, unless it says otherwise below:"]),
        ("October 2027", ["For all of them:"]),
    ):
        month = next(one for one in season.months if one.name == name).fixtures
        assert [group.lead for group in month.together] == leads
        together = [one for group in month.together for one in group.meets]
        assert [(one.notice_id, one.words) for one in together] == [
            ("tees-returfing-2027", "Some tees will still be closed then."),
            ("bunkers-resanding-2027", "Some bunkers are not expected to be back to normal by then."),
        ]
        for run in month.runs:
            said = {one.notice_id: one for one in (*together, *run.besides)}
            assert set(said.values()) == set(run.meets)
            assert not set(run.besides) & set(together)
    page = html.fromstring(f"<div>{season_months_html(season, demo_bulletin.voice, '../')}</div>").text_content()
    assert page.count("Some tees will still be closed then.") == 2


def test_what_begins_within_a_month_is_said_from_its_first_fixture_on(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """Seen from 25 August, tees are closed from 6 September on: the Twilight nine of the 1st does not meet that."""
    season = season_of(demo_bulletin_at("2027-08-25 12:00"))
    september = next(one for one in season.months if one.name == "September 2027").fixtures
    told = {group.lead: [one.notice_id for one in group.meets] for group in september.together}
    assert told["From Wednesday 8 September on:"] == ["tees-returfing-2027"]
    assert all(one.notice_id != "tees-returfing-2027" for run in september.runs for one in run.besides)


def test_fixtures_in_a_row_that_meet_the_same_stand_together(demo_bulletin: Bulletin) -> None:
    """Visitors and the Twilight nine play on the same day, 29 September."""
    september = next(one for one in season_of(demo_bulletin).months if one.name == "September 2027").fixtures
    assert september.count == 6
    assert [run.names for run in september.runs][-1] == (
        "Visitors' day, Wednesday 29 September", "Twilight nine, Wednesday 29 September, 5:30pm",
    )  # fmt: skip


Met = tuple[str, ...]


@pytest.mark.parametrize(("days", "met", "leads", "besides"), [
    ((2, 3, 9), (("g", "c"), ("g", "c"), ("g",)), {"For all of them:": "g", "Until Sunday 3 October:": "c"}, ("", "")),
    ((2, 3, 9), (("g",), ("g", "c"), ("g", "c")), {"For all of them:": "g", "From Sunday 3 October on:": "c"}, ("", "")),
    ((2, 3, 9), (("c",), (), ("c",)), {}, ("c", "", "c")),
    ((2, 9, 9), (("g",), ("g",), ("g", "c")), {"For all of them:": "g"}, ("", "c")),
    ((2, 9, 9, 10), (("g",), ("g",), ("g", "c"), ("g", "c")), {"For all of them:": "g"}, ("", "c")),
    ((2,), (("g",),), {}, ("g",)),
])  # fmt: skip
def test_silence_at_a_fixture_is_never_taken_for_what_only_others_meet(
    demo_records: ClubRecords, demo_bulletin: Bulletin, days: tuple[int, ...], met: tuple[Met, ...],
    leads: dict[str, str], besides: tuple[str, ...],
) -> None:  # fmt: skip
    """Greens that heal (g) and closed tees (c): those of the tees that lie before or after the others are named by a
    day, and a day that has fixtures with and without them names none."""
    base = demo_records.fixtures[0]
    cups = [
        replace(base, id=f"{n}", series=f"{n}", name="Cup", first_day=date(2027, 10, day), last_day=date(2027, 10, day))
        for n, day in enumerate(days)
    ]
    meetings = {
        f"{n}": tuple(Meeting(notice_id=job, title=job, words=job) for job in jobs)
        for n, jobs in enumerate(met)
        if jobs
    }
    told = fixtures_of_month(cups, meetings, (date(2027, 10, 1), date(2027, 10, 31)), demo_bulletin.voice)
    assert {group.lead: "".join(one.notice_id for one in group.meets) for group in told.together} == leads
    assert tuple("".join(one.notice_id for one in run.besides) for run in told.runs) == besides
    assert [one for run in told.runs for one in run.first_days] == [cup.first_day for cup in cups]


def test_it_begins_with_what_still_heals_and_ends_with_what_is_announced(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """On 14 September the greens heal that were tined from 23 August on; the last work announced is a water pipe in
    January. What heals then is told once, not again in each month up to December 2028."""
    season = season_of(demo_bulletin_at("2027-09-14 09:30"))
    assert _months(season)[:2] == ["August 2027", "September 2027"]
    assert _months(season)[-1] == "January 2028"
    assert len(season.months) == 6
    assert {one.notice_id for one in season.beyond} == {
        "tees-returfing-2027", "bunkers-resanding-2027", "fairway-11-drain-2027", "bunkers-liners-2027",
        "low-greens-winter-2027", "pipe-14-2028",
    }  # fmt: skip
    assert season.no_day == ()
    assert _months(season_of(demo_bulletin_at("2027-04-20 08:00")))[0] == "April 2027"


def test_it_looks_back_three_months_at_most(demo_records: ClubRecords, book: WeatherBook) -> None:
    """The bunkers that were begun on 7 September still heal."""
    for moment, first in (("2027-12-06 08:00", "September 2027"), ("2028-02-10 08:00", "November 2027")):
        season = season_of(compose_bulletin(demo_records, at(demo_records, moment), book))
        assert _months(season)[0] == first


def test_what_goes_on_healing_all_month_is_told_from_what_begins_or_may_end(
    demo_records: ClubRecords, book: WeatherBook
) -> None:
    """New turf on two tees: laid until September, back to normal some time from March to May 2028."""

    def told(moment: str) -> dict[str, bool]:
        season = season_of(compose_bulletin(demo_records, at(demo_records, moment), book))
        return {m.name: o.goes_on for m in season.months for o in m.healing if o.notice_id == "tees-returfing-2027"}

    autumn, spring = told("2027-09-14 09:30"), told("2028-04-01 08:00")
    assert autumn == {
        "September 2027": False, "October 2027": True, "November 2027": True, "December 2027": True,
        "January 2028": True,
    }  # fmt: skip
    assert spring == {"January 2028": True, "February 2028": True, "March 2028": False, "April 2028": False}


def test_a_fixture_that_meets_what_heals_has_its_month(demo_records: ClubRecords, book: WeatherBook) -> None:
    """After the last work of the year only healing is left, and a match falls on it."""
    jobs = {name: job for name, job in demo_records.jobs.items() if name == "greens-renovation-2027"}
    match = replace(demo_records.fixtures[-1], first_day=date(2027, 10, 2), last_day=date(2027, 10, 2), id="match")
    for fixtures, last in (((), "September 2027"), ((match,), "October 2027")):
        entries = tuple(one for one in demo_records.entries if getattr(one, "job", "") in jobs)
        records = replace(demo_records, jobs=jobs, entries=entries, fixtures=fixtures)
        assert _months(season_of(compose_bulletin(records, at(records, "2027-09-14 09:30"))))[-1] == last


def _with_called_off(records: ClubRecords) -> ClubRecords:
    head = entry_head(records, "2027-09-13 09:00", "no-sanding")
    off = PlanChange(head=head, job=SANDING, change=Change.CALLED_OFF, starts=None, because="no dry sand")
    return with_entries(records, off)


def test_called_off_work_stands_once_struck_out_in_its_month(demo_records: ClubRecords) -> None:
    records = _with_called_off(demo_records)
    bulletin = compose_bulletin(records, at(records, "2027-09-14 09:30"))
    season = season_of(bulletin)
    found = [(m.name, one) for m in season.months for one in (*m.work, *m.healing) if one.notice_id == SANDING]
    assert [(month, one.when, one.is_called_off) for month, one in found] == [("October 2027", "called off", True)]
    page = html.fromstring(season_months_html(season, bulletin.voice, "../"))
    assert [s.text_content() for s in page.xpath("//s")] == ["Light sanding of the greens"]
    bars = season_bars(season, records.fixtures, bulletin.voice)
    assert bars is not None
    assert "Light sanding of the greens" not in {row.name for row in bars.rows}


def test_work_without_a_day_stands_at_the_end_alone(demo_records: ClubRecords, book: WeatherBook) -> None:
    """Nobody has entered that the sanding of 4 October began."""
    bulletin = compose_bulletin(demo_records, at(demo_records, "2027-10-20 08:00"), book)
    season = season_of(bulletin)
    names = [one.notice_id for one in season.no_day]
    assert SANDING in names
    when = {notice.id: notice.when for notice in bulletin.notices}
    assert season.no_day[names.index(SANDING)].when == when[SANDING][:1].upper() + when[SANDING][1:]
    assert SANDING not in {one.notice_id for one in (*_work(season), *_healing(season))}


def test_work_that_is_postponed_to_no_day_stands_at_the_end_alone(demo_records: ClubRecords) -> None:
    head = entry_head(demo_records, "2027-09-13 09:00", "no-day")
    off = PlanChange(head=head, job=SANDING, change=Change.PUT_OFF, starts=None, because="no dry sand")
    records = with_entries(demo_records, off)
    bulletin = compose_bulletin(records, at(records, "2027-09-14 09:30"))
    season = season_of(bulletin)
    said = next(notice.when for notice in bulletin.notices if notice.id == SANDING)
    assert [(one.notice_id, one.when.lower()) for one in season.no_day] == [(SANDING, said.lower())]
    assert "postponed" in said
    met = {m.notice_id for month in season.months for fixture in month.fixtures.runs for m in fixture.meets}
    assert SANDING not in met | {one.notice_id for one in (*_work(season), *_healing(season))}


def test_what_is_held_up_stands_in_its_month_and_without_a_day_for_the_rest(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    season = season_of(demo_bulletin_at("2027-08-25 12:00"))
    greens = "greens-renovation-2027"
    assert [one.when for one in _work(season) if one.notice_id == greens] == ["since 23 August, held up"]
    assert [one.notice_id for one in season.no_day] == [greens]


def _is_drawn(job: SeasonJob) -> bool:
    return job.matter.outlook.work not in (Work.CALLED_OFF, Work.BACK_TO_NORMAL)


def test_no_job_of_any_kind_in_any_state_is_lost(demo_records: ClubRecords, book: WeatherBook) -> None:
    met = 0
    for records in (one for one in clubs(demo_records) if one.club.language == "en-GB"):
        bulletin = compose_bulletin(records, at(records, "2027-09-14 09:30"))
        season = season_of(bulletin)
        shown = {one.notice_id for one in (*_work(season), *_healing(season), *season.beyond, *season.no_day)}
        expected = {name for name, job in bulletin.outlook.jobs.items() if job.work is not Work.BACK_TO_NORMAL}
        met += len(expected)
        assert expected <= shown
        assert (season_bars(season, records.fixtures, bulletin.voice) is None) is (not any(map(_is_drawn, season.jobs)))
    assert met > 150


def test_a_season_without_work_says_so_and_has_its_fixtures(demo_records: ClubRecords) -> None:
    records = replace(demo_records, jobs={}, entries=())
    bulletin = compose_bulletin(records, at(records, "2027-09-14 09:30"))
    season = season_of(bulletin)
    assert _months(season) == ["September 2027"]
    assert season_bars(season, records.fixtures, bulletin.voice) is None
    page = html.fromstring(season_months_html(season, bulletin.voice, "../")).text_content()
    assert "No work on the course is announced at the moment, and nothing is healing." in page
    assert "Autumn medal, Saturday 18 September" in page
    assert page.count("Clear of all announced work, as far as we know.") == 1  # said once for all in a row
    assert season.months[0].fixtures.count == 6
    nothing = season_of(compose_bulletin(replace(records, fixtures=()), bulletin.as_of))
    without = html.fromstring(season_months_html(nothing, bulletin.voice, "../")).text_content()
    assert "Competitions" not in without


def test_sixty_jobs_all_stand_in_their_months_and_twelve_in_the_picture(demo_records: ClubRecords) -> None:
    sanding = demo_records.jobs[SANDING]
    first = date(2027, 9, 20)
    jobs = {
        f"job-{n}": replace(
            sanding, id=f"job-{n}", title=f"Job {n}", starts=first + timedelta(days=7 * (n % 30)),
            surfaces=sanding.surfaces[n % 18 : n % 18 + 1],
        )
        for n in range(60)
    }  # fmt: skip
    records = replace(demo_records, jobs=jobs, entries=())
    bulletin = compose_bulletin(records, datetime(2027, 9, 14, 9, 30, tzinfo=records.club.time_zone))
    season = season_of(bulletin)
    assert {one.notice_id for one in _work(season)} == set(jobs)
    bars = season_bars(season, records.fixtures, bulletin.voice)
    assert bars is not None
    assert len(bars.rows) == 12
    assert "These are the first 12; all the work stands below." in bars.told.caption[0]
    assert max(row.work[-1][1] for row in bars.rows) <= bars.last


def test_the_page_has_a_list_for_each_kind_in_each_month(demo_bulletin: Bulletin) -> None:
    season = season_of(demo_bulletin)
    page = html.fromstring(f"<div>{season_months_html(season, demo_bulletin.voice, '../')}</div>")
    parts = page.xpath(".//section[.//h2]")
    over = [month.name for month in season.months if month.is_over]
    assert over == ["August 2027"]
    headings = [f"{name} (over)" if name in over else name for name in _months(season)]
    assert [part.find(".//h2").text for part in parts][: len(season.months)] == headings
    for part, month in zip(parts, season.months, strict=False):
        kinds = part.xpath("./div/div | ./details/div/div")
        headings = [kind.find("h3").text for kind in kinds]
        assert headings == [
            "Work",
            "Healing or closed",
            *([] if month.is_over else ["Competitions and visitors' days"]),
        ]
        assert len(kinds[0].xpath("./ul/li")) == len(month.work)
        assert len(kinds[1].xpath("./ul/li")) == len(month.healing)
        listed = kinds[2].xpath("./ul[@class='sc-month__list']/li") if len(kinds) > 2 else ()
        assert len(listed) == len(month.fixtures.runs)
    targets = {link[1:] for link in page.xpath(".//nav//a/@href")}
    assert targets == {part.get("id") for part in parts} - {"beyond"}


def test_months_that_are_over_or_further_away_than_the_next_are_folded_with_a_line_of_what_they_hold(
    demo_bulletin: Bulletin,
) -> None:
    """On 14 September; the counts out of the demo's plan: in November winter height, ropes, trees, a path and a drain,
    while fairways, path and drain heal, new turf on tees and new sand in bunkers too."""
    season = season_of(demo_bulletin)
    page = html.fromstring(f"<div>{season_months_html(season, demo_bulletin.voice, '../')}</div>")
    folded = {
        details.find("./summary/h2").text: details.find("./summary/span").text
        for details in page.xpath(".//section/details[not(@open)]")
    }
    assert folded == {
        "August 2027 (over)": "2 jobs, 2 healing or closed",
        "November 2027": "5 jobs, 5 healing or closed",
        "December 2027": "2 jobs, 6 healing or closed",
        "January 2028": "1 job, 6 healing or closed",
        "After January 2028": "6 jobs",
    }
    assert [part.find("./h2").text for part in page.xpath(".//section[h2]")][:2] == ["September 2027", "October 2027"]
    levels = [int(one.tag[1]) for one in page.iter("h1", "h2", "h3", "h4")]
    assert levels[0] == 2
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_a_folded_month_says_its_fixtures_or_that_nothing_is_announced(demo_records: ClubRecords) -> None:
    """On 1 July, with one piece of work, in October, and one match two days before it."""
    match = replace(demo_records.fixtures[0], first_day=date(2027, 10, 2), last_day=date(2027, 10, 2), id="match")
    jobs = {SANDING: replace(demo_records.jobs[SANDING], announced=date(2027, 6, 1))}
    records = replace(demo_records, jobs=jobs, entries=(), fixtures=(match,))
    bulletin = compose_bulletin(records, at(records, "2027-07-01 08:00"))
    page = html.fromstring(f"<div>{season_months_html(season_of(bulletin), bulletin.voice, '../')}</div>")
    folded = {d.find("./summary/h2").text: d.find("./summary/span").text for d in page.xpath(".//section/details")}
    assert folded == {
        "September 2027": "nothing is announced",
        "October 2027": "1 job, 1 healing or closed, 1 fixture",
    }
