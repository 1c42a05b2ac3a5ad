"""Fixtures beside a job: which are named, and with what chance, on the small club whose dates can be done by hand.

Holes and sand are closed after 10.36 growth days, here days, and back to normal 13 days later: 23.36 days after the work
in the middle (`test_lessons.py`). The model's error stretches all of it by a log-normal factor of spread 0.24, carried as 15
equally likely values, so that a chance by the normal distribution holds within a fifteenth.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from datetime import date, timedelta
from functools import cache
from itertools import product
from pathlib import Path
from statistics import NormalDist

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.language.voice import Voice
from swardcast.notices.fixtures import fixtures_section
from swardcast.outlook.closures import Touch
from swardcast.outlook.fixtures import Basis, FixtureOutlook, Side, fixtures_ahead, side_of, worth_telling
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, NoDate, Work
from swardcast.records.fixtures import Fixture
from tests.outlook.small_club import HOLES, HOLES_AND_SAND, SmallClub, moment

DONE = date(2027, 4, 1)  # a Thursday
TO_NORMAL_DAYS, SPREAD = 23.36, 0.24


def medal(day: date, last: date | None = None, name: str = "Medal", series: str = "") -> Fixture:
    identity = f"{series or name}/{day}"
    return Fixture(id=identity, series=series or identity, name=name, first_day=day, last_day=last or day)


def day(text: str) -> date:
    return date.fromisoformat(f"2027-{text}")


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    """Greens 1 and 2 tined on Thursday 1 April."""
    small = SmallClub(tmp_path)
    small.job("spring", "04-01")
    return small


@pytest.fixture
def healing(club: SmallClub) -> JobOutlook:
    club.done("spring", "04-01")
    return club.course(moment("04-05", "12:00")).jobs["spring"]


def one(outlook: JobOutlook, fixture: Fixture, today: date = DONE) -> FixtureOutlook:
    return fixtures_ahead(outlook, [fixture], today)[0]


@pytest.mark.parametrize("after", [10, 17, 20, 23, 24, 28])
def test_the_chance_is_that_of_a_log_normal_error(healing: JobOutlook, after: int) -> None:
    met = one(healing, medal(DONE + timedelta(days=after)))
    exact = 1 - NormalDist().cdf(math.log(after / TO_NORMAL_DAYS) / SPREAD)
    assert met.basis is Basis.COMPUTED
    assert met.not_normal == pytest.approx(exact, abs=1 / 15)


def test_on_the_dates_themselves_the_chance_is_the_one_that_they_promise(healing: JobOutlook) -> None:
    """Likely by: an even chance that it is so. Allow until: 9 chances in 10. A day earlier it is not."""
    dates = healing.dates[Milestone.BACK_TO_NORMAL]
    assert dates.likely is not None
    assert dates.allow_until is not None
    for promised, share in ((dates.likely, 0.5), (dates.allow_until, 0.1)):
        on, before = (one(healing, medal(promised - timedelta(days=back))).not_normal for back in (0, 1))
        assert on is not None
        assert before is not None
        assert on <= share + 1e-9 < before + 1e-9


def test_the_chance_is_that_of_the_last_surface_by_a_plain_loop(tmp_path: Path) -> None:
    """Green 1 done on 1 April, green 2 on the 6th; each draw of weather and error is the same for both."""
    small = SmallClub(tmp_path)
    small.job("spring", "04-01", HOLES)
    small.done("spring", "04-01", "surfaces: green 1", name="one")
    small.done("spring", "04-06", "surfaces: green 2", name="two")
    outlook = small.course(moment("04-07")).jobs["spring"]
    played = day("04-27")
    recoveries = [work.recovery for work in outlook.surfaces if work.recovery is not None]
    assert [recovery.start for recovery in recoveries] == [day("04-01"), day("04-06")]
    for milestone, told in ((Milestone.BACK_TO_NORMAL, "not_normal"), (Milestone.SETTLED, "unsettled")):
        samples = [recovery.samples[milestone] for recovery in recoveries]
        late = 0
        for member, error in product(range(samples[0].shape[0]), range(samples[0].shape[1])):
            starts = [
                recovery.start + timedelta(days=math.ceil(float(s[member, error]) - 1e-9))
                for recovery, s in zip(recoveries, samples, strict=True)
            ]
            late += max(starts) > played
        assert getattr(one(outlook, medal(played), day("04-07")), told) == pytest.approx(late / samples[0].size)
    assert one(outlook, medal(played), day("04-07")).not_normal > one(outlook, medal(played + timedelta(days=5)), day("04-07")).not_normal  # type: ignore[operator]  # fmt: skip


@cache
def _healing(folder: Path) -> JobOutlook:
    small = SmallClub(folder)
    small.job("spring", "04-01")
    small.done("spring", "04-01")
    return small.course(moment("04-05")).jobs["spring"]


@given(first=st.integers(0, 45), later=st.integers(0, 45))
def test_a_later_fixture_never_has_a_greater_chance(
    tmp_path_factory: pytest.TempPathFactory, first: int, later: int
) -> None:
    outlook = _healing(tmp_path_factory.getbasetemp() / "law")
    chances = []
    for after in (first, first + later):
        met = fixtures_ahead(outlook, [medal(DONE + timedelta(days=after))], DONE)
        assert met[0].not_normal is not None
        assert met[0].unsettled is not None
        assert met[0].unsettled <= met[0].not_normal  # settled comes first
        chances.append((met[0].not_normal, met[0].unsettled))
    assert chances[1][0] <= chances[0][0]
    assert chances[1][1] <= chances[0][1]


@pytest.mark.parametrize("earlier", ["04-01", "04-08", "04-15"])
def test_earlier_work_never_raises_the_chance(tmp_path: Path, earlier: str) -> None:
    small = SmallClub(tmp_path)
    small.job("early", earlier, HOLES, surfaces="green 1")
    small.job("late", "04-20", HOLES, surfaces="green 2")
    jobs = small.course(moment("03-20")).jobs
    early, late = (one(jobs[name], medal(day("05-08")), day("03-20")).not_normal for name in ("early", "late"))
    assert early is not None
    assert late is not None
    assert early <= late


def listed(outlook: JobOutlook, days: list[date], today: date) -> list[date]:
    return [met.fixture.first_day for met in fixtures_ahead(outlook, [medal(each) for each in days], today)]


def test_named_are_those_from_the_work_to_allow_until_and_one_that_reassures(club: SmallClub) -> None:
    outlook = club.course(moment("03-20", "12:00")).jobs["spring"]
    until = outlook.dates[Milestone.BACK_TO_NORMAL].allow_until
    assert until is not None
    offered = [
        day("03-25"),
        day("04-01"),
        day("04-10"),
        until - timedelta(days=1),
        until + timedelta(days=3),
        day("06-01"),
    ]
    assert listed(outlook, offered, day("03-20")) == offered[1:5]
    assert listed(outlook, [until, until + timedelta(days=1)], day("03-20")) == [until]


def test_a_fixture_is_coming_until_its_last_day_is_over(healing: JobOutlook) -> None:
    festival = medal(day("04-09"), day("04-11"))
    assert fixtures_ahead(healing, [festival], day("04-12")) == ()
    (met,) = fixtures_ahead(healing, [festival], day("04-11"))
    assert met.not_normal == one(healing, medal(day("04-11")), day("04-11")).not_normal  # judged on today's morning


def test_the_days_of_the_work_are_certain_and_the_spare_days_perhaps(tmp_path: Path) -> None:
    """Nine greens a day on Thursday 1 April; two working days are kept free: Friday and, after the weekend, Monday."""
    small = SmallClub(tmp_path)
    small.job("spring", "04-01", HOLES, more="    spare days: 2\n")
    outlook = small.course(moment("03-20")).jobs["spring"]
    expected = {"04-01": Touch.YES, "04-02": Touch.PERHAPS, "04-05": Touch.PERHAPS, "04-06": Touch.NO}
    for text, touch in expected.items():
        assert one(outlook, medal(day(text)), day("03-20")).in_work is touch, text
    assert one(outlook, medal(day("03-30"), day("04-01")), day("03-20")).in_work is Touch.YES  # its last day meets it


def test_work_that_is_done_is_no_longer_going_on(healing: JobOutlook) -> None:
    assert one(healing, medal(DONE), DONE).in_work is Touch.NO


def test_nothing_is_named_when_work_is_called_off_or_over(club: SmallClub) -> None:
    club.log("off", "03-25", "change of plan", "job: spring", "change: called off", "because: frost")
    off = club.course(moment("03-26")).jobs["spring"]
    assert (off.work, fixtures_ahead(off, [medal(day("04-01"))], day("03-26"))) == (Work.CALLED_OFF, ())


def test_nothing_is_named_when_the_manager_calls_it_normal(club: SmallClub) -> None:
    club.done("spring", "04-01")
    club.normal("spring", "04-20")
    over = club.course(moment("04-21")).jobs["spring"]
    assert (over.work, fixtures_ahead(over, [medal(day("04-22"))], day("04-21"))) == (Work.BACK_TO_NORMAL, ())
    assert fixtures_section(over, [medal(day("04-22"))], Voice.english(day("04-21"))) is None


def test_a_surface_called_normal_no_longer_counts(club: SmallClub) -> None:
    """Green 1 is normal; the chance is that of green 2 alone, and the words name it."""
    club.done("spring", "04-01")
    club.normal("spring", "04-15", "surfaces: green 1")
    outlook = club.course(moment("04-16")).jobs["spring"]
    section = fixtures_section(outlook, [medal(day("04-20"))], Voice.english(day("04-16")))
    assert section is not None
    assert "that green 2 is still healing from this work" in section.facts[0].value


def test_a_usual_range_has_no_chances(tmp_path: Path) -> None:
    """One to three weeks after Thursday 1 April: before the 8th, within until the 22nd, after it from then on."""
    small = SmallClub(tmp_path)
    small.job(
        "spring",
        "04-01",
        HOLES,
        surfaces="tee 1",
        more="    normal after: {from: 1 to 3 weeks, source: our own experience}\n",
    )
    small.done("spring", "04-01")
    outlook = small.course(moment("04-02")).jobs["spring"]
    for text, touch in (("04-07", Touch.YES), ("04-08", Touch.PERHAPS), ("04-21", Touch.PERHAPS), ("04-22", Touch.NO)):
        met = one(outlook, medal(day(text)), day("04-02"))
        assert (met.basis, met.not_normal, met.unsettled, met.in_range) == (Basis.USUAL_RANGE, None, None, touch), text


def test_without_past_weather_only_the_days_of_the_work_are_told(club: SmallClub) -> None:
    for path in (club.folder / "weather" / "history").iterdir():
        path.unlink()
    outlook = club.course(moment("03-20")).jobs["spring"]
    met = fixtures_ahead(outlook, [medal(day("04-01")), medal(day("04-10"))], day("03-20"))
    assert [(m.fixture.first_day, m.basis, m.in_work) for m in met] == [(day("04-01"), Basis.NOT_KNOWN, Touch.YES)]


def test_where_no_date_is_given_the_next_eight_weeks_are_named(tmp_path: Path) -> None:
    """At 2 C nothing grows: no date, so a fixture 55 days ahead is named with certainty and one 56 days ahead is not."""
    small = SmallClub(tmp_path, tmean_c=lambda _: 2.0)
    small.job("spring", "04-01", *HOLES_AND_SAND)
    small.done("spring", "04-01")
    outlook = small.course(moment("04-01", "18:00")).jobs["spring"]
    assert outlook.dates[Milestone.BACK_TO_NORMAL].no_date is NoDate.NOT_THIS_SEASON
    met = fixtures_ahead(outlook, [medal(DONE + timedelta(days=55)), medal(DONE + timedelta(days=56))], DONE)
    assert [m.not_normal for m in met] == [1.0]


def test_of_what_comes_back_the_next_and_the_first_better_than_even_are_told(healing: JobOutlook) -> None:
    """Thursdays from 8 April: 15 and 22 April would say little; the 29th is day 28, better than even (day 24)."""
    weekly = [medal(DONE + timedelta(weeks=week), series="weekly") for week in range(1, 8)]
    met = fixtures_ahead(healing, weekly, day("04-05"))
    told = [m.fixture.first_day for m in worth_telling(met)]
    assert told == [day("04-08"), day("04-29"), met[-1].fixture.first_day]


def test_what_the_notice_names_as_crossed_is_always_told(healing: JobOutlook) -> None:
    """Of the Thursdays from 8 April the 22nd would be left out, and of many fixtures each after the seventh."""
    weekly = [medal(DONE + timedelta(weeks=week), series="weekly") for week in range(1, 8)]
    met = fixtures_ahead(healing, weekly, day("04-05"))
    told = [m.fixture.first_day for m in worth_telling(met, {weekly[2].id})]
    assert told == [day("04-08"), day("04-22"), day("04-29"), met[-1].fixture.first_day]
    daily = fixtures_ahead(healing, [medal(DONE + timedelta(days=n)) for n in range(5, 60)], day("04-05"))
    told = [m.fixture.first_day for m in worth_telling(daily, {daily[9].fixture.id})]
    assert told == [*(DONE + timedelta(days=n) for n in (*range(5, 12), 14)), daily[-1].fixture.first_day]


def test_a_reader_is_told_seven_and_the_one_that_reassures(healing: JobOutlook) -> None:
    met = fixtures_ahead(healing, [medal(DONE + timedelta(days=after)) for after in range(5, 60)], day("04-05"))
    told = worth_telling(met)
    assert [m.fixture.first_day for m in told] == [*(DONE + timedelta(days=after) for after in range(5, 12)), met[-1].fixture.first_day]  # fmt: skip
    section = fixtures_section(healing, [m.fixture for m in met], Voice.english(day("04-05")))
    assert section is not None
    assert section.paragraphs[0][-1].text == "Other fixtures in between are left out."


LIKELY = DateRange(early=day("04-20"), likely=day("04-25"), allow_until=day("05-03"))


@pytest.mark.parametrize(
    ("first", "published", "side"),
    [
        ("04-24", LIKELY, Side.BEFORE_NORMAL),
        ("04-25", LIKELY, Side.AFTER_NORMAL),
        ("05-01", DateRange.known(day("04-30")), Side.AFTER_NORMAL),
        ("05-01", DateRange(early=None, likely=None, allow_until=None), Side.NOT_KNOWN),
        ("05-01", DateRange(early=day("04-01"), likely=day("04-20"), allow_until=None), Side.NOT_KNOWN),
    ],
    ids=["a day before", "on the day", "after a fact", "no date", "no end"],
)
def test_a_fixture_lies_on_one_side_of_the_likely_date(first: str, published: DateRange, side: Side) -> None:
    assert side_of(medal(day(first)), published) is side


@given(st.integers(0, 100), st.integers(0, 30))
def test_an_earlier_date_never_puts_a_fixture_before_it(first: int, sooner: int) -> None:
    def published(by: int) -> DateRange:
        return DateRange(early=None, likely=DONE + timedelta(days=50 - by), allow_until=DONE + timedelta(days=60))

    fixture = medal(DONE + timedelta(days=first))
    if side_of(fixture, published(0)) is Side.AFTER_NORMAL:
        assert side_of(fixture, published(sooner)) is Side.AFTER_NORMAL


def test_a_fixture_that_ends_before_it_begins_is_refused() -> None:
    with pytest.raises(ValueError, match="ends on 2027-04-01, before it begins on 2027-04-02"):
        medal(day("04-02"), day("04-01"))


def _said(outlook: JobOutlook, fixtures: list[Fixture], today: date) -> dict[str, str]:
    section = fixtures_section(outlook, fixtures, Voice.english(today))
    return {fact.name: fact.value for fact in section.facts} if section is not None else {}


def test_the_words_for_greens_as_the_work_goes_on(club: SmallClub) -> None:
    """On the first morning after the work nothing has healed; day 28 has a chance of 0.22 by the normal distribution."""
    fixtures = [
        medal(DONE),
        medal(day("04-02")),
        medal(day("04-29"), name="Cup"),
        medal(day("06-01"), name="Foursomes"),
    ]
    planned = club.course(moment("03-20", "12:00")).jobs["spring"]
    assert _said(planned, fixtures, day("03-20"))["Medal, Thursday 1 April"] == "In the days of the work as planned."
    club.log("begun", "04-01", "work started", "job: spring", time="07:00")
    going_on = club.course(moment("04-01", "08:00")).jobs["spring"]
    assert _said(going_on, fixtures, DONE)["Medal, Thursday 1 April"] == "In the days of the work as it stands now."
    club.done("spring", "04-01")
    said = _said(club.course(moment("04-01", "18:00")).jobs["spring"], fixtures[1:], DONE)
    assert said == {
        "Medal, Friday 2 April": "Almost certain (more than 19 chances in 20) that some greens are still healing from this work, and that putts still turn.",
        "Cup, Thursday 29 April": "About 2 chances in 10 that some greens are still healing from this work, but most putts should roll true.",
        "Foursomes, Tuesday 1 June": "Hardly any chance (less than 1 in 20) that some greens are still healing from this work.",
    }


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ("    reopens after: {from: 2 to 4 weeks, source: our own experience}\n", "Tee 1 will still be closed then."),
        ("    normal after: {from: 2 to 4 weeks, source: our own experience}\n", "Tee 1 is not expected to be back to normal by then."),
        ("", "Almost certain (more than 19 chances in 20) that tee 1 is still healing from this work."),
    ],
    ids=["closed for weeks", "a usual range", "computed"],
)  # fmt: skip
def test_the_words_for_a_tee(tmp_path: Path, more: str, words: str) -> None:
    small = SmallClub(tmp_path)
    small.job("spring", "04-01", HOLES, surfaces="tee 1", more=more)
    small.done("spring", "04-01")
    outlook = small.course(moment("04-02")).jobs["spring"]
    assert _said(outlook, [medal(day("04-08"))], day("04-02")) == {"Medal, Thursday 8 April": words}


@pytest.mark.parametrize(
    ("begun", "words"),
    [
        (False, "As planned, green 1 will be on a temporary green then."),
        (True, "Green 1 will still be on a temporary green then."),
    ],
)
def test_a_hole_on_its_temporary_green_is_not_said_to_be_closed(tmp_path: Path, begun: bool, words: str) -> None:
    """The hole is played, and it was not so yet where nobody has reported that it began."""
    small = SmallClub(tmp_path)
    weeks = "    reopens after: {from: 2 to 4 weeks, source: our own experience}\n"
    small.job("low", "04-01", "temporary greens", surfaces="green 1", play="temporary green", more=weeks)
    if begun:
        small.log("start", "04-01", "work started", "job: low")
    today = "04-02" if begun else "03-31"
    outlook = small.course(moment(today)).jobs["low"]
    assert _said(outlook, [medal(day("04-08"))], day(today)) == {"Medal, Thursday 8 April": words}


def test_fixtures_that_meet_the_same_share_a_line(tmp_path: Path) -> None:
    small = SmallClub(tmp_path)
    small.job(
        "spring", "04-01", surfaces="tee 1", more="    normal after: {from: 10 to 20 weeks, source: our experience}\n"
    )
    small.done("spring", "04-01")
    outlook = small.course(moment("04-02")).jobs["spring"]
    fixtures = [medal(day(f"04-{number:02d}"), name=f"Round {number}") for number in (10, 17, 24)]
    assert _said(outlook, fixtures, day("04-02")) == {
        "Round 10, Saturday 10 April, and 2 more up to Round 24, Saturday 24 April": "Tee 1 is not expected to be back to normal by then."
    }
    assert list(_said(outlook, fixtures[:2], day("04-02"))) == [
        "Round 10, Saturday 10 April and Round 17, Saturday 17 April"
    ]


def test_every_sentence_is_short(healing: JobOutlook) -> None:
    """25 words at most: GOV.UK style."""
    make: Callable[[int], Fixture] = lambda after: medal(DONE + timedelta(days=after))  # noqa: E731
    for after in range(4, 45):
        for value in _said(healing, [make(after)], day("04-05")).values():
            assert all(len(sentence.split()) <= 25 for sentence in value.split(". ")), value
