"""What members hear of when one bulletin takes the place of another: a table of cases, decided beforehand by reading
what members are promised: states, dates by two days, fixtures that change sides, changes of plan, corrections, notes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.outlook.changes import News, Told, changed_play, news_between
from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.moves import moves
from swardcast.outlook.states import DateRange, JobOutlook, NoDate, Work
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.fixtures import Fixture
from swardcast.records.plan import Play
from tests.outlook.small_club import SmallClub, moment

DAY = date(2027, 6, 20)
EARLIER = date(2027, 5, 1)
"""A day before all that is told here."""


def dated(early: int, likely: int, until: int) -> DateRange:
    """Days from 20 June."""
    days = [DAY + timedelta(days=number) for number in (early, likely, until)]
    return DateRange(early=days[0], likely=days[1], allow_until=days[2])


NO_DATE = DateRange(early=None, likely=None, allow_until=None)
TOO_FAR = replace(NO_DATE, no_date=NoDate.TOO_FAR)
FACT = DateRange.known(DAY)


@pytest.fixture(scope="module")
def planned(tmp_path_factory: pytest.TempPathFactory) -> JobOutlook:
    """Work planned on greens 1 and 2."""
    club = SmallClub(Path(tmp_path_factory.mktemp("club")))
    club.job("spring", "06-01")
    records = club.records()
    return assess_jobs(records, moment("05-01"), WeatherBook(records.club, records.weather))["spring"]


def stands(outlook: JobOutlook, *works: Work, whole: Work | None = None, **more: Any) -> JobOutlook:
    surfaces = tuple(replace(there, work=work) for there, work in zip(outlook.surfaces, works, strict=True))
    return replace(outlook, surfaces=surfaces, work=whole or works[0], **more)


HEALING = (Work.HEALING, Work.HEALING)
OLD = dated(-4, 0, 7)

Case = tuple[str, Callable[[JobOutlook], Told], Callable[[JobOutlook], Told], dict[str, object] | None]

CASES: list[Case] = [
    (
        "there is no date, and only the even chance comes into the season or leaves it",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=NO_DATE),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=replace(OLD, allow_until=None)),
        None,
    ),
    (
        "there is still no date, but for another reason",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=TOO_FAR),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=NO_DATE),
        {"before": TOO_FAR, "back_to_normal": NO_DATE},
    ),
    (
        "nothing is different",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD),
        None,
    ),
    (
        "the date moves by a day",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=dated(-3, 1, 8)),
        None,
    ),
    (
        "the likely date moves by two days",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=dated(-4, 2, 7)),
        {"before": OLD, "back_to_normal": dated(-4, 2, 7)},
    ),
    (
        "allow until comes two days sooner",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=dated(-4, 0, 5)),
        {"before": OLD, "back_to_normal": dated(-4, 0, 5)},
    ),
    (
        "only the early date moves, which nobody was told",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=dated(-9, 0, 7)),
        None,
    ),
    (
        "a range told in months moves by a week",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=dated(0, 40, 80)),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=dated(7, 47, 87)),
        None,
    ),
    (
        "a date takes the place of none",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=NO_DATE),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD),
        {"before": NO_DATE, "back_to_normal": OLD},
    ),
    (
        "work starts on one green and the date moves by a day, which stays as told",
        lambda job: Told(outlook=stands(job, Work.PLANNED, Work.PLANNED), back_to_normal=OLD),
        lambda job: Told(
            outlook=stands(job, Work.UNDER_WAY, Work.PLANNED, whole=Work.UNDER_WAY), back_to_normal=dated(-3, 1, 8)
        ),
        {"became": {Work.UNDER_WAY: ("green-1",)}, "back_to_normal": OLD},
    ),
    (
        "work is held up",
        lambda job: Told(outlook=stands(job, Work.UNDER_WAY, Work.UNDER_WAY), back_to_normal=OLD),
        lambda job: Told(outlook=stands(job, Work.HELD_UP, Work.HELD_UP), back_to_normal=OLD),
        {"became": {Work.HELD_UP: ("green-1", "green-2")}},
    ),
    (
        "the work is called off",
        lambda job: Told(outlook=stands(job, Work.PLANNED, Work.PLANNED), back_to_normal=OLD),
        lambda job: Told(outlook=stands(job, Work.CALLED_OFF, Work.CALLED_OFF), back_to_normal=OLD),
        {"became": {Work.CALLED_OFF: ("green-1", "green-2")}},
    ),
    (
        "the work is postponed by a day, and the new date is told though it moved by one day only",
        lambda job: Told(outlook=stands(job, Work.PLANNED, Work.PLANNED), back_to_normal=OLD),
        lambda job: Told(
            outlook=stands(job, Work.PLANNED, Work.PLANNED, starts=date(2027, 6, 2)), back_to_normal=dated(-3, 1, 8)
        ),
        {"rescheduled": True, "back_to_normal": dated(-3, 1, 8)},
    ),
    (
        "the work is postponed, and no new day is known",
        lambda job: Told(outlook=stands(job, Work.PLANNED, Work.PLANNED), back_to_normal=OLD),
        lambda job: Told(outlook=stands(job, Work.PLANNED, Work.PLANNED, is_put_off=True), back_to_normal=OLD),
        {"rescheduled": True},
    ),
    (
        "a day is known again, be it the old one",
        lambda job: Told(outlook=stands(job, Work.PLANNED, Work.PLANNED, is_put_off=True), back_to_normal=OLD),
        lambda job: Told(outlook=stands(job, Work.PLANNED, Work.PLANNED), back_to_normal=OLD),
        {"rescheduled": True},
    ),
    (
        "an entry is withdrawn, though no state changes",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD, withdrawn=frozenset({"a"})),
        {"withdrawn": ("a",)},
    ),
    (
        "the manager writes a note",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD, notes=frozenset({"a"})),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD, notes=frozenset({"a", "b"})),
        {"notes": ("b",)},
    ),
    (
        "a note that was told before is no news",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD, notes=frozenset({"a"})),
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=OLD, notes=frozenset({"a"})),
        None,
    ),
    (
        "the manager calls it back to normal, which is an end and no move of a date",
        lambda job: Told(outlook=stands(job, *HEALING), back_to_normal=dated(5, 9, 16)),
        lambda job: Told(outlook=stands(job, Work.BACK_TO_NORMAL, Work.BACK_TO_NORMAL), back_to_normal=FACT),
        {
            "became": {Work.BACK_TO_NORMAL: ("green-1", "green-2")},
            "before": None,
            "back_to_normal": FACT,
            "confirmed": True,
        },
    ),
    (
        "the manager confirms what the sum had said",
        lambda job: Told(outlook=stands(job, Work.BACK_TO_NORMAL, Work.BACK_TO_NORMAL), back_to_normal=OLD),
        lambda job: Told(outlook=stands(job, Work.BACK_TO_NORMAL, Work.BACK_TO_NORMAL), back_to_normal=FACT),
        {"confirmed": True, "back_to_normal": FACT},
    ),
]


@pytest.mark.parametrize(("before", "after", "news"), [case[1:] for case in CASES], ids=[case[0] for case in CASES])
def test_what_is_worth_telling(
    planned: JobOutlook,
    before: Callable[[JobOutlook], Told],
    after: Callable[[JobOutlook], Told],
    news: dict[str, object] | None,
) -> None:
    told = news_between(before(planned), after(planned), EARLIER)
    if news is None:
        assert told is None
    else:
        expected = {"became": {}, "back_to_normal": OLD, "before": None} | news
        assert told == News(**expected)  # type: ignore[arg-type]


def fixture(day: int) -> Fixture:
    on = DAY + timedelta(days=day)
    return Fixture(id=f"medal-{day}", series="medal", name="Medal", first_day=on, last_day=on)


@pytest.mark.parametrize(
    ("before", "after", "medal", "crosses"),
    [
        # A range of four days; the medal is on 21 June. Back to normal by its morning counts as after.
        (dated(-1, 1, 3), dated(0, 2, 4), 1, True),
        (dated(0, 2, 4), dated(-1, 1, 3), 1, False),  # likely on the medal's own day is an even chance, no more
        (dated(0, 2, 4), dated(-1, 1, 3), 2, False),
        (dated(1, 3, 5), dated(0, 2, 4), 2, False),
        (dated(0, 2, 4), dated(-1, 1, 3), 4, False),  # on the same side before and after
        (dated(-1, 1, 3), dated(0, 2, 4), -6, False),
        # A range of sixteen days: a tenth of it is more than the day by which the date lies beyond the medal.
        (dated(-4, 1, 12), dated(-4, 2, 12), 1, False),
        (dated(-4, 1, 12), dated(-4, 1, 13), 1, False),
    ],
)
def test_a_small_move_is_told_where_it_clearly_crosses_a_fixture(
    planned: JobOutlook, before: DateRange, after: DateRange, medal: int, crosses: bool
) -> None:
    assert not moves(before, after)
    outlook = stands(planned, *HEALING)
    news = news_between(
        Told(outlook=outlook, back_to_normal=before),
        Told(outlook=outlook, back_to_normal=after),
        EARLIER,
        [fixture(medal)],
    )
    if crosses:
        assert news is not None
        assert (news.before, news.back_to_normal, news.crossed) == (before, after, (fixture(medal),))
    else:
        assert news is None


def test_a_move_of_days_names_each_fixture_that_it_crosses(planned: JobOutlook) -> None:
    outlook = stands(planned, *HEALING)
    fixtures = [fixture(1), fixture(3), fixture(20)]
    before, after = dated(-4, 0, 7), dated(0, 4, 11)
    news = news_between(
        Told(outlook=outlook, back_to_normal=before), Told(outlook=outlook, back_to_normal=after), EARLIER, fixtures
    )
    assert news is not None
    assert [one.id for one in news.crossed] == ["medal-1", "medal-3"]


def test_an_announcement_is_always_told(planned: JobOutlook) -> None:
    told = Told(outlook=planned, back_to_normal=OLD)
    assert news_between(None, told, EARLIER) == News(became={}, back_to_normal=OLD)


@pytest.mark.parametrize(
    ("now", "on_day", "told"),
    [
        (dated(-4, -2, 7), 1, False),  # "due now; allow until 27 June" before and after
        (dated(-4, -2, 7), 0, True),  # on the day itself it still read "likely by 20 June"
        (dated(-4, 4, 7), 1, True),  # not passed any more
        (dated(-4, -2, 9), 1, True),
    ],
)
def test_a_likely_day_that_has_only_passed_is_no_news(
    planned: JobOutlook, now: DateRange, on_day: int, told: bool
) -> None:
    outlook = stands(planned, *HEALING)
    today = DAY + timedelta(days=on_day)
    news = news_between(Told(outlook=outlook, back_to_normal=OLD), Told(outlook=outlook, back_to_normal=now), today)
    assert (news is not None) is told


def test_an_end_by_the_sum_alone_is_told_once_all_is_over_and_moves_no_date(planned: JobOutlook) -> None:
    healing = Told(outlook=stands(planned, *HEALING), back_to_normal=OLD)
    first = Told(outlook=stands(planned, Work.BACK_TO_NORMAL, Work.HEALING, whole=Work.HEALING), back_to_normal=OLD)
    over = Told(outlook=stands(planned, *[Work.BACK_TO_NORMAL] * 2), back_to_normal=dated(-9, -5, 2))
    assert news_between(healing, first, DAY) is None
    for before in (healing, first):
        news = news_between(before, over, DAY + timedelta(days=8))
        assert news is not None
        assert news.became == {Work.BACK_TO_NORMAL: ("green-1", "green-2")}
        assert (news.before, news.confirmed, news.back_to_normal) == (None, False, over.back_to_normal)


def test_of_a_date_that_moved_members_hear_on_which_day_it_was_told_before(planned: JobOutlook) -> None:
    outlook = stands(planned, *HEALING)
    before = Told(outlook=outlook, back_to_normal=OLD, told_on=EARLIER)
    news = news_between(before, Told(outlook=outlook, back_to_normal=dated(0, 4, 11)), DAY)
    assert news is not None
    assert (news.before, news.before_told_on) == (OLD, EARLIER)


@given(*[st.integers(0, 60)] * 4)
def test_a_move_matters_in_both_directions_alike(likely: int, until: int, other: int, later: int) -> None:
    one, two = dated(0, likely, likely + until), dated(0, other, other + later)
    if max(likely + until, other + later) <= 56:  # eight weeks; a wider range is told in months
        assert moves(one, two) == moves(two, one)
        assert moves(one, two) == (abs(likely - other) >= 2 or abs(likely + until - other - later) >= 2)


@pytest.mark.parametrize(
    ("before", "after", "told"),
    [
        (Play.OPEN, Play.CLOSED, True),
        (Play.CLOSED, Play.OPEN, True),
        (Play.OPEN, Play.OPEN, False),
        (Play.CLOSED, Play.NOT_KNOWN, False),
        (Play.OPEN, Play.TEMPORARY_GREEN, True),
    ],
)
def test_play_is_told_where_it_became_another_and_is_known(before: Play, after: Play, told: bool) -> None:
    changed = changed_play({"green-1": before, "green-2": Play.OPEN}, {"green-1": after, "green-2": Play.OPEN})
    assert changed == ({"green-1": after} if told else {})
