"""The record of the dates as a member reads it in both Englishes."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest

from swardcast.language.catalogue import BUILT_IN, built_in
from swardcast.language.voice import Voice
from swardcast.notices.promises_picture import promises_picture
from swardcast.notices.record_years import compose_record_by_years
from swardcast.notices.track_record import compose_published, compose_track_record
from swardcast.outlets.html import record_year_html, track_record_html
from swardcast.outlook.states import DateRange
from swardcast.outlook.track_record import Kept
from swardcast.turf.recovery_table import recovery_table
from tests.outlook.small_club import SmallClub

BRITISH, AMERICAN = (Voice(catalogue=built_in(tag), near=date(2027, 9, 14)) for tag in BUILT_IN)


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Kept:
    """Promised 19, 25 or 3 days later; normal on the likely day, Sunday 25 April 2027 by any calendar."""
    club = SmallClub(Path(tmp_path_factory.mktemp("club")))
    club.job("spring", "04-01")
    promised = DateRange(early=date(2027, 4, 19), likely=date(2027, 4, 25), allow_until=date(2027, 5, 3))
    job = club.records().jobs["spring"]
    return Kept(job=job, done_on=date(2027, 4, 1), promised=promised, normal_on=date(2027, 4, 25))


def late(kept: Kept, days: int) -> Kept:
    return replace(kept, normal_on=date(2027, 4, 25) + timedelta(days=days))


@pytest.mark.parametrize(
    ("count", "begins"),
    [
        (0, "No job with a computed date has come to an end so far. That is too early"),
        (1, "1 job with a computed date has come to an end so far. That is too early"),
        (4, "4 jobs with a computed date have come to an end so far. That is too early"),
    ],
)
def test_a_few_jobs_are_too_few_to_judge(kept: Kept, count: int, begins: str) -> None:
    for voice in (BRITISH, AMERICAN):
        (sentence,) = compose_track_record([kept] * count, voice).sentences
        assert sentence.startswith(begins)
        assert sentence.endswith(": 5 are needed at the least.")


@pytest.mark.parametrize(
    ("days", "missed"),
    [
        # Misses of 0, 0, 3, 5 and 9 days: 17 / 5 = 3.4; 3 May, eight days late, is the last day inside.
        ((0, 0, 3, 5, 9), "3.4 days away from the likely day; on the whole we were 3.4 days too hopeful."),
        ((-3, -2, 0, 0, 0), "1.0 days away from the likely day; on the whole we were 1.0 days too careful."),
        (
            (-1, 1, -1, 1, 1),
            "1.0 days away from the likely day; on the whole we were neither too hopeful nor too careful.",
        ),
    ],
)
def test_five_jobs_are_judged(kept: Kept, days: tuple[int, ...], missed: str) -> None:
    first, expected, *named, last = compose_track_record([late(kept, day) for day in days], BRITISH).sentences
    inside, past = (4, "1") if max(days) > 8 else (5, "none")
    assert first == f"Of 5 jobs, {inside} kept the dates that we gave, {past} missed them, and none came sooner."
    assert expected == "Of 10 jobs we expect 8 to keep them, 1 to miss them and 1 to come sooner."
    assert named == (["Missed: Spring work, by 1 day."] if past == "1" else [])
    assert last == f"On average the end came {missed}"


def in_year(kept: Kept, year: int, days: int) -> Kept:
    """The same in another year, all of it on the same days of the month."""
    early, likely, last = (date(year, *day) for day in ((4, 19), (4, 25), (5, 3)))
    promised = DateRange(early=early, likely=likely, allow_until=last)
    return replace(kept, done_on=date(year, 4, 1), promised=promised, normal_on=likely + timedelta(days=days))


def test_this_year_and_the_last_are_told_in_full_and_earlier_ones_are_counted(kept: Kept) -> None:
    """The reader's day is in 2027. Nine days late is a miss by one day, seven days early sooner than we said."""
    told = [(2024, 0), (2025, 9), (2025, 0), (2025, -7), (2026, 9), (2027, 0), (2027, 1)]
    jobs = [in_year(kept, year, days) for year, days in told]
    record = compose_record_by_years(jobs, BRITISH)
    assert [(one.year, one.judged, one.kept, one.missed, one.sooner, one.is_apart) for one in record.years] == [
        (2027, 2, 2, 0, 0, False), (2026, 1, 0, 1, 0, False), (2025, 3, 1, 1, 1, True), (2024, 1, 1, 0, 0, True),
    ]  # fmt: skip
    assert [line.work for line in record.lines] == [
        "Done on Thursday 1 April 2027", "Done on Thursday 1 April 2027", "Done on Wednesday 1 April 2026",
    ]  # fmt: skip
    everything = compose_track_record(jobs, BRITISH)
    assert tuple(line for year in record.years for line in year.lines) == everything.lines
    first, _, *named, _ = record.sentences
    assert first == "Of 7 jobs, 4 kept the dates that we gave, 2 missed them, and 1 came sooner."
    assert named == ["Missed: Spring work, by 1 day."]  # that of 2026; the other is on the page of 2025


def test_the_page_of_the_record_does_not_grow_with_the_years(kept: Kept) -> None:
    """But for a row of its table, with a link to the year's own page."""
    ten, fifty = (
        track_record_html(
            compose_record_by_years([in_year(kept, year, 9) for year in range(2028 - years, 2028)], BRITISH),
            "../../",
            BRITISH,
        )
        for years in (10, 50)
    )
    rows = [page.count("<tr>") for page in (ten, fifty)]
    assert rows == [11, 51]
    assert 'href="../../archive/2018/dates/index.html"' in ten
    assert 'href="../../archive/2026/dates/index.html"' not in fifty
    assert len(fifty) - len(ten) < 40 * 200


def test_years_without_work_leave_the_latest_year_in_full(kept: Kept) -> None:
    jobs = [in_year(kept, year, 0) for year in (2011, 2012, 2012)]
    record = compose_record_by_years(jobs, BRITISH)
    assert [(one.year, one.is_apart) for one in record.years] == [(2012, False), (2011, True)]
    assert compose_record_by_years([], BRITISH).years == ()


def test_a_year_on_a_page_of_its_own_has_every_job_and_leads_back(kept: Kept) -> None:
    jobs = [in_year(kept, 2011, days) for days in (0, 9)] + [kept]
    (year,) = compose_record_by_years(jobs, BRITISH).apart
    page = record_year_html(year, BRITISH, "../../../")
    assert page.count("Done on Friday 1 April 2011") == 2
    assert "Missed by 1 day: 9 days after the likely day" in page
    assert 'href="../../../pages/how-good-our-dates-have-been/index.html"' in page


def test_a_job_that_ended_before_its_range_is_no_miss_and_not_kept_either(kept: Kept) -> None:
    """The early day is 19 April, six days before the likely day; 18 April is outside."""
    record = compose_track_record([late(kept, day) for day in (-7, -6, 0, 8, 9)], BRITISH)
    assert record.sentences[0] == "Of 5 jobs, 3 kept the dates that we gave, 1 missed them, and 1 came sooner."
    verdicts = [line.verdict.split(":")[0] for line in record.lines]
    assert verdicts == ["Missed by 1 day", "Kept", "Kept", "Kept", "Sooner than we said"]


def test_the_picture_counts_as_the_sentences_do(kept: Kept) -> None:
    picture = promises_picture([late(kept, day) for day in (-7, -6, 0, 8, 9)], BRITISH)
    assert picture is not None
    assert sorted(bar.verdict for bar in picture.bars) == ["kept", "kept", "kept", "missed", "sooner"]
    assert [bar.verdict == "kept" for bar in picture.bars] == [bar.is_inside for bar in picture.bars]
    assert picture.told.description == "5 jobs are over, and 3 of them kept their range."


@pytest.mark.parametrize(
    ("days", "verdict"),
    [
        (0, "Kept: on the likely day"),
        (1, "Kept: 1 day after the likely day"),
        (-2, "Kept: 2 days before the likely day"),
        (-7, "Sooner than we said: 7 days before the likely day"),
        (9, "Missed by 1 day: 9 days after the likely day"),
    ],
)
def test_each_job_is_compared(kept: Kept, days: int, verdict: str) -> None:
    (line,) = compose_track_record([late(kept, days)], BRITISH).lines
    assert line.verdict == verdict


def test_a_line_in_american_puts_the_month_first(kept: Kept) -> None:
    (line,) = compose_track_record([kept], AMERICAN).lines
    assert line.work == "Done on Thursday, April 1, 2027"
    expected = "Likely by Sunday, April 25; allow until Monday, May 3 (early day: Monday, April 19)"
    assert (line.computed, line.came) == (expected, "Sunday, April 25, 2027")


def test_a_job_that_is_not_over_waits(kept: Kept) -> None:
    (line,) = compose_track_record([replace(kept, normal_on=None)], replace(BRITISH, near=date(2027, 4, 20))).lines
    assert (line.came, line.verdict) == ("Not called back to normal yet", "Not over yet, so not counted")


def test_a_job_that_is_past_its_day_without_a_report_is_told_as_that_and_counted_neither_way(kept: Kept) -> None:
    """The day to allow for is Monday 3 May."""
    silent = replace(kept, normal_on=None)
    on_the_day, after = (replace(BRITISH, near=date(2027, 5, day)) for day in (3, 4))
    (line,) = compose_track_record([silent], on_the_day).lines
    assert line.verdict == "Not over yet, so not counted"
    told = compose_track_record([silent], after)
    assert told.lines[0].verdict == "Due by Monday 3 May; not reported. Counted neither as kept nor as missed"
    assert told.lines[0].is_inside is None
    five = compose_track_record([*[kept] * 5, silent], after).sentences
    assert five[0].startswith("Of 5 jobs, 5 kept the dates")
    assert five[-1] == (
        "1 more is past its day, and nobody has reported it back to normal. It is counted neither as kept nor as missed."
    )
    assert not [one for one in compose_track_record([kept] * 5, after).sentences if "nobody" in one]


def test_published_recoveries_have_their_words_and_plurals_in_both_englishes() -> None:
    rows = recovery_table()
    for voice in (BRITISH, AMERICAN):
        lines = compose_published(voice).lines
        assert len(lines) == len(rows)
        for line, row in zip(lines, rows, strict=True):
            assert (line.verdict == "Fits") is row.is_inside
            assert line.source.startswith(f"Source: {row.recovery.source}.")
            for words in (line.computed, line.came, line.verdict):
                assert not words.endswith(" 1 days"), words
                assert "inf" not in words


@pytest.mark.parametrize(
    ("computed", "verdict"), [(18.4, "1 day too late"), (20, "3 days too late"), (14, "1 day too early")]
)
def test_a_miss_is_counted_from_the_nearer_end(computed: float, verdict: str) -> None:
    """Seen from day 15 to day 17."""
    row = next(row for row in recovery_table() if (row.recovery.from_day, row.recovery.to_day) == (15, 17))
    (line,) = compose_published(BRITISH, [replace(row, computed_days=computed)]).lines
    assert (line.came, line.verdict) == ("15 to 17 days", verdict)


def test_a_notice_says_how_far_out_the_sum_was_where_it_is_published() -> None:
    """The mean of all recoveries that are dated to within a month, in whole days."""
    missed = [abs(row.miss_days) for row in recovery_table() if row.miss_days is not None]
    days = round(sum(missed) / len(missed))
    assert f"such sums were {days} days out on average." in BRITISH.say("sure-how-near")
