"""Work that nobody reports on any more: its dates stand still, nothing is made up, and the next report wakes it.

The days are counted by hand: 1 June 2027 is a Tuesday, all working days are from Monday to Friday, both greens of the
small club are done in a day, and two working days are kept for weather. So green 2 is to be finished by Thursday 3 June.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.language.voice import Voice
from swardcast.notices.notice import Notice, text_of
from swardcast.notices.oversights import oversights
from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.states import JobOutlook, Milestone, Work
from swardcast.outlook.story import tell_story
from swardcast.outlook.track_record import track_record
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.plan import Part
from tests.outlook.small_club import SmallClub, moment

SPARE = "    spare days: 2\n"


def _begun(folder: Path, *operations: str) -> SmallClub:
    club = SmallClub(folder)
    club.job("spring", "06-01", *operations, more=SPARE)
    club.log("begun", "06-01", "work started", "job: spring", "surfaces: green 1", time="07:00")
    return club


def _job(club: SmallClub, day: str) -> JobOutlook:
    records = club.records()
    return assess_jobs(records, moment(day), WeatherBook(records.club, records.weather))["spring"]


def _bulletin(club: SmallClub, day: str) -> Bulletin:
    return compose_bulletin(club.records(), moment(day))


def _plain(text: str) -> str:
    return " ".join(text.replace("\u00a0", " ").split())


def _how(notice: Notice) -> str:
    (how,) = (section for section in notice.sections if section.part is Part.HOW_THE_DATE)
    return _plain(" ".join(map(text_of, how.paragraphs)))


def _days(job: JobOutlook) -> list[object]:
    return [(work.finish, dict(work.dates), work.hours) for work in job.surfaces]


def test_it_counts_as_not_reported_on_from_the_day_after_the_one_to_allow_for(tmp_path: Path) -> None:
    club = _begun(tmp_path)
    assert [_job(club, day).unreported for day in ("06-01", "06-02", "06-03")] == [None, None, None]
    silence = _job(club, "06-04").unreported
    assert silence is not None
    assert (silence.due_by, silence.last_report) == (date(2027, 6, 3), moment("06-01", "07:00"))


def test_days_without_a_report_use_up_the_days_kept_for_weather_and_do_not_keep_new_ones(tmp_path: Path) -> None:
    """On Wednesday morning green 2 is likely finished on Wednesday; the day to allow for stays Thursday 3 June."""
    records = _begun(tmp_path).records()
    job = assess_jobs(records, moment("06-02", "08:00"), WeatherBook(records.club, records.weather))["spring"]
    finish = job.surfaces[1].finish
    assert (finish.likely, finish.allow_until) == (date(2027, 6, 2), date(2027, 6, 3))


def test_from_then_on_no_date_moves_with_the_days(tmp_path: Path) -> None:
    club = _begun(tmp_path)
    told = [_days(_job(club, day)) for day in ("06-04", "06-20", "09-01", "12-06")]
    assert told[1:] == told[:-1]
    assert _job(club, "12-06").surfaces[1].finish.likely == date(2027, 6, 1)  # as the last report gave it
    story = tell_story(club.records(), club.records().jobs["spring"], moment("12-06"), _book(club))
    assert max(change.at for change in story.changes) < moment("06-04", "00:00")


def _book(club: SmallClub) -> WeatherBook:
    records = club.records()
    return WeatherBook(records.club, records.weather)


def test_no_healing_is_counted_from_work_that_nobody_reported_as_done(tmp_path: Path) -> None:
    club = _begun(tmp_path)
    job = _job(club, "06-20")
    assert [work.recovery for work in job.surfaces] == [None, None]
    assert not job.dates[Milestone.HOLES_CLOSED].is_given


def test_what_is_done_heals_all_the_same(tmp_path: Path) -> None:
    club = _begun(tmp_path)
    club.done("spring", "06-01", "surfaces: green 1")
    first, second = _job(club, "06-20").surfaces
    assert first.unreported is None
    assert first.recovery is not None
    assert second.unreported is not None


@pytest.mark.parametrize(
    ("kind", "fields"),
    [
        ("work started", ("surfaces: green 2",)),
        ("observation", ("surfaces: green 1", "disruption left: 90 %")),
        ("note to members", ()),
        ("change of plan", ("change: postponed to", "starts: 2027-06-21", "because: rain")),
    ],
)
def test_a_new_report_wakes_it_and_is_told_at_most_once(tmp_path: Path, kind: str, fields: tuple[str, ...]) -> None:
    club = _begun(tmp_path)
    before = tell_story(club.records(), club.records().jobs["spring"], moment("06-20"), _book(club)).changes
    club.log("late", "06-21", kind, "job: spring", *fields, time="08:00")
    job = _job(club, "06-21")
    assert job.unreported is None
    last = job.surfaces[1].finish.allow_until
    assert last is not None
    assert last >= date(2027, 6, 21)
    after = tell_story(club.records(), club.records().jobs["spring"], moment("06-21"), _book(club)).changes
    assert [one.id for one in after[: len(before)]] == [one.id for one in before]
    assert [one.at for one in after[len(before) :]] in ([moment("06-21", "08:00")], [])


def test_a_plan_moved_ahead_wakes_it(tmp_path: Path) -> None:
    club = _begun(tmp_path)
    club.job("spring", "06-28", more=SPARE)
    assert _job(club, "06-20").unreported is None


def test_members_read_what_was_due_and_that_nobody_has_reported_it(tmp_path: Path) -> None:
    club = _begun(tmp_path)
    (notice,) = _bulletin(club, "06-20").notices
    assert _plain(notice.headline) == "Spring work, greens 1 and 2: from 1 June; no report since 1 June"
    assert _plain(notice.short_answer).startswith(
        "Greens 1 and 2 were due to be finished by Thursday 3 June; nobody has reported them as finished yet."
    )
    assert notice.work.replace("\u00a0", " ") == "no report since 1 June"
    rows = {_plain(fact.name): _plain(fact.value) for section in notice.sections for fact in section.facts}
    assert "going on" not in " ".join([notice.short_answer, *rows, *rows.values()]).lower()
    assert _how(notice).startswith(
        "Nobody has reported on the work since Tuesday 1 June, so no new date is worked out."
    )
    assert rows["Work finished: green 2"] == "Was due by Thursday 3 June; nobody has reported it as done yet"


def test_work_held_up_without_a_report_since_says_so(tmp_path: Path) -> None:
    """Held up on 1 June, to go on from the 2nd at the earliest: two working days later is Friday 4 June."""
    club = _begun(tmp_path)
    club.log("held", "06-01", "held up", "job: spring", "because: the machine broke", time="09:00")
    assert [_job(club, day).unreported is None for day in ("06-04", "06-05")] == [True, False]
    (notice,) = _bulletin(club, "06-20").notices
    assert "Nobody has reported on it since Tuesday 1 June." in _plain(notice.short_answer)
    rows = [_plain(fact.value) for section in notice.sections for fact in section.facts]
    assert not [row for row in rows if "not before" in row or "as things stand now" in row]


def test_the_manager_is_asked_what_happened(tmp_path: Path) -> None:
    club = _begun(tmp_path)
    as_of = moment("06-04")
    (said,) = oversights(club.records(), as_of, Voice.english(as_of.date()))
    assert _plain(said) == (
        "Spring work: greens 1 and 2 were due to be finished by Thursday 3 June, and members read that nobody has"
        " reported it; enter what happened, or move or call it off [begun]"
    )


def test_planned_work_that_nobody_began_stands_still_too(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", more=SPARE)
    told = [_days(_job(club, day)) for day in ("06-02", "06-20", "12-06")]
    assert told[1:] == told[:-1]
    assert _job(club, "12-06").work is Work.PLANNED
    (notice,) = _bulletin(club, "12-06").notices
    assert _plain(notice.short_answer).startswith(
        "This work was planned from Tuesday 1 June; nobody has reported that it began."
    )
    assert _how(notice) == "There is no date now: nobody has reported that the work began."


@pytest.mark.parametrize(("day", "is_silent"), [("07-12", False), ("07-14", True)])
def test_temporary_greens_are_awaited_as_long_as_the_plan_plays_them(tmp_path: Path, day: str, is_silent: bool) -> None:
    """Played for 4 to 6 weeks from 1 June: 42 days later is 13 July."""
    club = SmallClub(tmp_path)
    lasts = "    reopens after: {from: 4 to 6 weeks, source: our own experience}\n"
    club.job("spring", "06-01", "temporary greens", play="temporary green", more=lasts)
    club.log("begun", "06-01", "work started", "job: spring", time="07:00")
    assert (_job(club, day).unreported is not None) is is_silent


def test_work_that_is_done_or_called_off_is_never_missed(tmp_path: Path) -> None:
    done, off = _begun(tmp_path / "done"), _begun(tmp_path / "off")
    done.done("spring", "06-02")
    off.log("off", "06-02", "change of plan", "job: spring", "change: called off", "because: rain")
    assert [_job(club, "12-06").unreported for club in (done, off)] == [None, None]


def test_it_is_no_promise_kept_or_missed(tmp_path: Path) -> None:
    """Only work entered as done and called back to normal is judged."""
    club = _begun(tmp_path)
    club.done("spring", "06-01", "surfaces: green 1")
    club.normal("spring", "07-01", "surfaces: green 1")
    records, book = club.records(), _book(club)
    assert track_record(records, moment("12-06"), book) == ()
    club.done("spring", "07-02", "surfaces: green 2", name="late")
    assert [one.is_judged for one in track_record(records=club.records(), as_of=moment("12-06"), book=book)] == [False]


def test_a_day_in_december_says_the_same_as_a_week_before(tmp_path: Path) -> None:
    club = _begun(tmp_path, "rolling")
    told = [_said(_bulletin(club, day).notices[0]) for day in ("11-29", "12-06")]
    assert told[0] == told[1]


def _said(notice: Notice) -> str:
    return str((notice.headline, notice.short_answer, notice.sections))


def test_a_moment_before_the_report_knows_nothing_of_it(tmp_path: Path) -> None:
    """Any past day can be built again: a report of 21 June does not change the 20th."""
    club = _begun(tmp_path)
    before = _days(_job(club, "06-20"))
    club.log("late", "06-21", "work resumed", "job: spring", "surfaces: green 1")
    assert _days(_job(club, "06-20")) == before
