"""The events of a job in the members' calendar: their days by hand from the plan and the log, and their words."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest

from swardcast.notices.calendar import Occasion, Standing
from swardcast.notices.calendar_story import calendar_of
from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.states import Work
from swardcast.outlook.story import tell_story
from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.work_days import work_parts
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Change, MorningStatus, PlanChange, Progress, Step
from swardcast.records.plan import Play
from tests.conftest import DEMO_AS_OF
from tests.notices.calendar_events import as_told, at, days, entry_head, events, in_american, with_entries
from tests.notices.many_jobs import clubs

GREENS = "greens-renovation-2027"


@pytest.fixture(scope="module")
def book(demo_records: ClubRecords) -> WeatherBook:
    return WeatherBook(demo_records.club, demo_records.weather)


def test_each_day_of_work_names_its_surfaces(demo_records: ClubRecords, book: WeatherBook) -> None:
    """Six greens a day from Monday 23 August 2027."""
    found = events(demo_records, GREENS, "2027-08-20 12:00", book)
    work = {name: (days(event), event.summary) for name, event in found.items() if name.startswith("work")}
    title = "Hollow tining, scarifying and sanding the greens"
    assert work == {
        "work-1": ("2027-08-23", f"Greens 1 to 6: {title} (planned)"),
        "work-2": ("2027-08-24", f"Greens 7 to 12: {title} (planned)"),
        "work-3": ("2027-08-25", f"Greens 13 to 18: {title} (planned)"),
    }
    assert {event.standing for event in found.values()} == {Standing.TENTATIVE}


def test_healing_lasts_from_the_day_after_the_work_to_the_day_to_allow_until(
    demo_records: ClubRecords, book: WeatherBook
) -> None:
    """The date that stood on the site from 16 July: demo_story.txt."""
    healing = events(demo_records, GREENS, "2027-08-20 12:00", book)["healing"]
    assert days(healing) == "2027-08-26 to 2027-10-06"
    when = "likely by Saturday 25 September; allow until Wednesday 6 October"
    assert healing.summary == f"Greens 1 to 18 not yet back to normal: {when}"
    assert healing.sentences[0] == "Hollow tining, scarifying and sanding the greens."
    assert healing.sentences[-1] == "Told at 5pm on Wednesday 18 August."


def test_slow_work_takes_the_days_up_to_the_one_on_which_it_is_finished(
    demo_records: ClubRecords, book: WeatherBook
) -> None:
    """A quarter of a surface a day from Monday 8 November: Monday to Thursday. A bunker in four working days from
    Monday 6 December: to Thursday; the next from Friday over the weekend to Wednesday."""
    assert days(events(demo_records, "trees-16-2027", "2027-10-01 12:00", book)["work-1"]) == "2027-11-08 to 2027-11-11"
    bunkers = events(demo_records, "bunkers-liners-2027", "2027-10-01 12:00", book)
    assert days(bunkers["work-1"]) == "2027-12-06 to 2027-12-09"
    assert days(bunkers["work-2"]) == "2027-12-10 to 2027-12-15"


def test_no_day_is_told_where_the_site_tells_months(demo_records: ClubRecords, book: WeatherBook) -> None:
    """New sand takes 26 to 52 weeks: the site says "some time from ... to ..."."""
    bunkers = events(demo_records, "bunkers-liners-2027", "2027-10-01 12:00", book)
    assert "healing" not in bunkers
    assert "some time from" in " ".join(bunkers["work-1"].sentences)


LEFT, RIGHT = "The left greenside bunker on the 4th", "the right greenside bunker on the 4th"
FRONT = "the front greenside bunker on the 7th"


@pytest.mark.parametrize(
    ("a_day", "places"), [(2, f"{LEFT} and {RIGHT}"), (3, f"{LEFT}, {RIGHT} and {FRONT}"), (4, "4 bunkers")]
)
def test_up_to_three_surfaces_are_named_in_a_title(demo_records: ClubRecords, a_day: int, places: str) -> None:
    """Nobody knows which bunkers "2 bunkers" are."""
    job = replace(demo_records.jobs["bunkers-resanding-2027"], surfaces_a_day=float(a_day))
    records = replace(demo_records, jobs={**demo_records.jobs, job.id: job})
    book = WeatherBook(records.club, records.weather)  # of its own: a book remembers how jobs stood
    first = events(records, job.id, "2027-08-01 12:00", book)["work-1"]
    assert first.summary == f"{places}: New sand in six bunkers (planned)"


def test_a_long_closure_has_its_reopening(demo_records: ClubRecords, book: WeatherBook) -> None:
    """Tee 5 was done on 9 September; 6 to 10 weeks on: the middle, 8 weeks, is 4 November, the end 18 November."""
    found = events(demo_records, "tees-returfing-2027", "2027-09-09 18:00", book)["reopening-1"]
    assert days(found) == "2027-11-18"  # one day, and no banner over two weeks
    assert found.standing is Standing.TENTATIVE
    when = "usually between Thursday 21 October and Thursday 18 November"
    assert found.summary == f"Tee 5 should open again: {when}"


def test_what_the_log_opens_before_is_a_fact(demo_records: ClubRecords, book: WeatherBook) -> None:
    """No notice is revised when a morning entry opens the tee; the calendar still hears of it."""
    head = entry_head(demo_records, "2027-09-27 06:45", "tee-5-open")
    morning = MorningStatus(head=head, play=(("tee-5", Play.OPEN_WITH_CARE),), why="", limits=())
    records = with_entries(demo_records, morning)
    before = events(records, "tees-returfing-2027", "2027-09-26 18:00", book)
    after = events(records, "tees-returfing-2027", "2027-09-27 18:00", book)
    assert (days(after["reopening-1"]), after["reopening-1"].standing) == ("2027-09-27 06:45", Standing.CONFIRMED)
    assert after["reopening-1"].summary == "Tee 5 open again"
    assert after["reopening-1"].sequence == before["reopening-1"].sequence + 24 + 1  # a day of hours, and the entry
    assert as_told(after["work-1"]) == as_told(before["work-1"])
    assert after["reopening-2"].standing is Standing.TENTATIVE


def test_greens_under_work_should_open_again_at_the_hour_that_the_notice_tells(
    demo_records: ClubRecords, book: WeatherBook
) -> None:
    """Started at 6:55am, six greens a day: "Tomorrow, likely from 7am, by 11:45am at the latest", says the notice."""
    found = events(demo_records, GREENS, "2027-08-23 07:30", book)
    assert days(found["reopening-1"]) == "2027-08-24 07:00 to 11:45"
    assert found["reopening-1"].summary == "Greens 1 to 6 should open again"
    assert "(under way)" in found["work-1"].summary
    assert found["work-1"].standing is Standing.TENTATIVE


def test_done_work_is_confirmed_and_so_is_the_reopening_that_the_log_states(
    demo_records: ClubRecords, book: WeatherBook
) -> None:
    found = events(demo_records, GREENS, "2027-08-24 18:30", book)
    assert found["work-1"].standing is Standing.CONFIRMED
    assert found["work-1"].summary.endswith("(done)")
    assert (days(found["reopening-1"]), found["reopening-1"].standing) == ("2027-08-24 06:40", Standing.CONFIRMED)


def test_work_held_up_has_no_day_to_come_before_it_goes_on(demo_records: ClubRecords, book: WeatherBook) -> None:
    """Eleven greens done by the 24th, rain on the 25th; taken up again with greens 12 to 15 on Thursday, the rest on Friday."""
    held = events(demo_records, GREENS, "2027-08-25 18:00", book)
    assert {name: (days(event), event.standing) for name, event in held.items() if name.startswith("work")} == {
        "work-1": ("2027-08-23", Standing.CONFIRMED),
        "work-2": ("2027-08-24", Standing.CONFIRMED),
        "work-3": ("2027-08-25", Standing.TENTATIVE),
        "work-9": ("2027-08-24", Standing.CANCELLED),  # 3 days of the plan, and the place of the 6th green in it
        "work-15": ("2027-08-25", Standing.TENTATIVE),
        "work-21": ("2027-08-26", Standing.CANCELLED),
    }
    title = "Hollow tining, scarifying and sanding the greens"
    assert held["work-2"].summary == f"Greens 7 to 11: {title} (done)"
    assert held["work-15"].summary == f"Green 12: {title} (held up)"
    assert held["work-3"].summary == f"Greens 13 to 18: {title} (held up)"
    assert held["work-21"].summary == f"Moved: Green 18: {title}"
    resumed = events(demo_records, GREENS, "2027-08-26 18:00", book)
    told = {name: (days(resumed[name])[-2:], resumed[name].summary) for name in ("work-3", "work-15", "work-19")}
    assert told == {
        "work-3": ("26", f"Greens 13 to 15: {title} (done)"),
        "work-15": ("26", f"Green 12: {title} (done)"),
        "work-19": ("25", f"Greens 16 to 18: {title} (held up)"),
    }
    over = events(demo_records, GREENS, "2027-08-27 18:00", book)
    assert [days(over[f"work-{number}"])[-2:] for number in (1, 2, 3, 15, 19)] == ["23", "24", "26", "26", "27"]
    assert over["work-19"].summary == f"Greens 16 to 18: {title} (done)"


def test_a_day_never_says_that_work_holds_and_that_it_does_not(demo_records: ClubRecords, book: WeatherBook) -> None:
    """What is parted and put together again has moved: no event of its surfaces says that it holds no more."""
    for day in ("23 12:00", "23 18:00", "24 13:00", "24 18:30", "25 18:00", "26 12:00", "26 18:00", "27 18:00"):
        found = events(demo_records, GREENS, f"2027-08-{day}", book).values()
        cancelled = [event.summary for event in found if event.standing is Standing.CANCELLED]
        work = [summary for summary in cancelled if not summary.endswith("open again")]
        assert all(summary.startswith("Moved: Green") for summary in work), (day, work)


def test_work_whose_day_went_by_goes_on_today(demo_records: ClubRecords, book: WeatherBook) -> None:
    """Once the working hours are over. Greens 1 to 6 were started on Monday 23 August at 6:55am; of a log that ends there no green is ever done.

    Its own notice says each day that the work goes on, six greens a day, so that the rest follow on the next days.
    """
    end = at(demo_records, "2027-08-23 07:30")
    records = replace(demo_records, entries=tuple(entry for entry in demo_records.entries if entry.head.at <= end))
    before = events(records, GREENS, "2027-08-23 12:00", book)
    assert days(before["work-1"]) == "2027-08-23"
    assert days(events(records, GREENS, "2027-08-23 18:00", book)["work-1"]) == "2027-08-24"  # the day's hours are over
    sequences = [before["work-1"].sequence]
    for day in ("24", "25", "26", "27"):
        found = events(records, GREENS, f"2027-08-{day} 00:00", book)
        assert (days(found["work-1"]), found["work-1"].standing) == (f"2027-08-{day}", Standing.TENTATIVE), day
        assert "(under way)" in found["work-1"].summary
        assert "Work is going on" in found["work-1"].sentences[-2]
        assert days(events(records, GREENS, f"2027-08-{day} 14:00", book)["work-1"]) == f"2027-08-{day}"
        sequences.append(found["work-1"].sequence)
    assert sequences == sorted(set(sequences))
    # Three days and two to spare: due by Friday 27 August. After that it stands where the last report had it.
    weekend = events(records, GREENS, "2027-08-29 12:00", book)
    assert days(weekend["work-1"]) == "2027-08-23"
    assert weekend["work-1"].summary.endswith("(no report yet)")


def test_the_days_of_work_that_goes_on_are_those_of_its_notice(demo_records: ClubRecords, book: WeatherBook) -> None:
    end = at(demo_records, "2027-08-23 07:30")
    records = replace(demo_records, entries=tuple(entry for entry in demo_records.entries if entry.head.at <= end))
    for day in ("23", "24", "25", "28", "31"):
        moment = at(demo_records, f"2027-08-{day} 08:00")
        outlook = assess_jobs(records, moment, book, only=GREENS)[GREENS]
        told = {part.last_day.isoformat() for part in work_parts(outlook, records.club.working_days)}
        found = events(records, GREENS, f"2027-08-{day} 08:00", book)
        live = {
            days(event)
            for name, event in found.items()
            if name.startswith("work") and event.standing is not Standing.CANCELLED
        }
        assert live == told, day


def test_a_reopening_of_work_that_is_held_up_is_taken_back(demo_records: ClubRecords, book: WeatherBook) -> None:
    head = entry_head(demo_records, "2027-08-23 09:00", "rain")
    greens = tuple(f"green-{hole}" for hole in range(1, 7))
    held = Progress(head=head, step=Step.HELD_UP, job=GREENS, surfaces=greens, because="rain", as_done=(), play=None)
    records = with_entries(demo_records, held)
    found = events(records, GREENS, "2027-08-23 10:00", book)
    assert found["reopening-1"].standing is Standing.CANCELLED
    assert found["reopening-1"].summary == "This no longer holds: Greens 1 to 6 open again"


def test_back_to_normal_ends_the_healing(demo_records: ClubRecords, book: WeatherBook) -> None:
    healing = events(demo_records, "practice-green-renovation-2027", "2027-09-14 09:30", book)["healing"]
    assert days(healing) == "2027-09-13"  # where it stood from 21 August, that would be read as if it went on
    assert healing.summary == "The practice green back to normal on Monday 13 September"
    assert healing.standing is Standing.CONFIRMED


@pytest.mark.parametrize("american", [False, True], ids=["en-GB", "en-US"])
def test_work_called_off_stays_and_says_so(demo_records: ClubRecords, book: WeatherBook, american: bool) -> None:
    head = entry_head(demo_records, "2027-09-12 09:00", "too-wet")
    off = PlanChange(
        head=head, job="greens-light-sanding-2027", change=Change.CALLED_OFF, starts=None, because="The sand is late."
    )
    records = with_entries(demo_records, off)
    records = in_american(records) if american else records
    found = events(records, "greens-light-sanding-2027", "2027-09-14 09:30", book)
    # Nine greens a day from Monday 4 October.
    assert {name: (days(event), event.standing) for name, event in found.items()} == {
        "work-1": ("2027-10-04", Standing.CANCELLED),
        "work-2": ("2027-10-05", Standing.CANCELLED),
        "healing": ("2027-10-06", Standing.CANCELLED),  # the first of its days alone
    }
    assert found["work-2"].summary == "Called off: Greens 10 to 18: Light sanding of the greens"
    assert found["healing"].summary == "Called off: Greens 1 to 18: Light sanding of the greens"
    assert found["work-1"].sentences[0] == "This work is called off: The sand is late. Nothing changes for play."


def test_postponed_work_moves_its_events(demo_records: ClubRecords, book: WeatherBook) -> None:
    """A bunker a working day: from Monday 30 August; after 4:30pm on 26 August from Tuesday 7 September."""
    before = events(demo_records, "bunkers-resanding-2027", "2027-08-26 16:00", book)
    after = events(demo_records, "bunkers-resanding-2027", "2027-08-26 18:00", book)
    planned = ["08-30", "08-31", "09-01", "09-02", "09-03", "09-06"]
    moved = ["09-07", "09-08", "09-09", "09-10", "09-13", "09-14"]
    assert [days(event) for event in before.values()] == [f"2027-{day}" for day in planned]
    assert [days(event) for event in after.values()] == [f"2027-{day}" for day in moved]
    assert before.keys() == after.keys()
    assert [event.sequence - was.sequence for event, was in zip(after.values(), before.values(), strict=True)] == [
        2 + 1  # hours, and the entry
    ] * 6


def test_work_that_was_not_begun_has_no_date_of_healing_any_more(demo_records: ClubRecords, book: WeatherBook) -> None:
    """The path was planned from Monday 15 November, and promised by 15 December; nothing was entered by the 16th."""
    found = events(demo_records, "path-10-2027", "2027-11-16 08:00", book)
    assert found["work-1"].summary == "Tee 10: A firm path to the 10th tee (planned, no start reported)"
    assert found["healing"].standing is Standing.CANCELLED
    assert found["healing"].summary == "This no longer holds: Tee 10 back to normal by Wednesday 15 December"
    assert "no date until the work is done" in " ".join(found["work-1"].sentences)
    assert found["work-1"].sentences[-1] == "Told on Tuesday 16 November."


def test_of_work_that_did_not_begin_only_its_first_day_is_left(demo_records: ClubRecords, book: WeatherBook) -> None:
    """Four fairways from Monday 11 October, one a day; tree work from Monday 8 November for four days. Nothing was
    entered of either, and their notices say that there is no date until the work is done."""
    before = events(demo_records, "fairways-deep-tining-2027", "2027-10-11 12:00", book)
    after = events(demo_records, "fairways-deep-tining-2027", "2027-10-12 12:00", book)
    planned = [f"work-{number}" for number in (1, 2, 3, 4)]
    assert [days(before[name]) for name in planned] == [f"2027-10-{day}" for day in (11, 12, 13, 14)]
    assert after["work-1"].summary.endswith("(planned, no start reported)")
    assert days(after["work-1"]) == "2027-10-11"
    assert {after[name].standing for name in planned[1:]} == {Standing.CANCELLED}
    assert all(after[name].summary.endswith("(planned, no start reported)") for name in planned[1:])
    assert not any("no longer holds" in after[name].summary for name in planned)  # nobody took the work back
    trees = events(demo_records, "trees-16-2027", "2027-11-10 12:00", book)["work-1"]
    assert days(trees) == "2027-11-08"


def test_an_event_that_is_over_keeps_its_words(demo_records: ClubRecords, book: WeatherBook) -> None:
    """The greens' date moved on 6 and 13 September; what was done in August is not told anew."""
    then = events(demo_records, GREENS, "2027-08-28 18:00", book)
    now = events(demo_records, GREENS, "2027-09-14 09:30", book)
    for name in ("work-1", "work-2", "work-3"):
        assert as_told(now[name]) == as_told(then[name])
        assert now[name].sentences[0] == "The work there is done."  # and no date that is old by now
    assert as_told(now["healing"]) != as_told(then["healing"])


def test_when_the_sum_has_ended_the_calendar_says_so_as_the_notice_does(
    demo_records: ClubRecords, book: WeatherBook
) -> None:
    """The greens were to be back to normal by 11 October at the latest; nobody entered it."""
    going = events(demo_records, GREENS, "2027-10-09 12:00", book)["healing"]
    assert days(going) == "2027-08-28 to 2027-10-11"
    assert going.summary.startswith("Greens 13 and 16 not yet back to normal: ")
    for moment in ("2027-10-12 12:00", "2027-12-06 08:00"):
        over = events(demo_records, GREENS, moment, book)["healing"]
        assert (days(over), over.standing) == ("2027-10-11", Standing.TENTATIVE)
        assert over.summary == "Greens 1 to 18 should be back to normal"
        assert "The work is over." in " ".join(over.sentences)
        said = "Greens 12 to 18 were due back by Monday 11 October; nobody has reported them back to normal."
        assert said in " ".join(over.sentences)


def test_work_that_nobody_reports_on_any_more_stays_on_its_days(demo_records: ClubRecords, book: WeatherBook) -> None:
    """Two bunkers of six were never entered: after the last report, on 15 September, they were due on the 16th and 17th."""
    for moment in ("2027-09-27 12:00", "2027-12-06 08:00"):
        found = events(demo_records, "bunkers-resanding-2027", moment, book)
        assert [days(found[name]) for name in ("work-5", "work-6")] == ["2027-09-16", "2027-09-17"]
        assert found["work-6"].summary.endswith("(no report yet)")


def test_americans_read_their_own_words_and_dates(demo_records: ClubRecords, book: WeatherBook) -> None:
    found = events(in_american(demo_records), GREENS, "2027-08-20 12:00", book)
    when = "likely by Saturday, September 25; allow until Wednesday, October 6"
    assert found["healing"].summary == f"Greens 1 to 18 not yet back to normal: {when}"
    assert found["work-1"].categories == ("Core aeration", "Greens")


def test_every_kind_of_work_in_every_state_has_whole_events(demo_records: ClubRecords) -> None:
    """Each surface stands in one live event of work, unless its work is called off, or has no day: while all is held up,
    or postponed to none.

    Of work that did not begin on its day only that day is left.
    """
    kinds: Counter[tuple[Occasion, Standing]] = Counter()
    for records in clubs(demo_records):
        book = WeatherBook(records.club, records.weather)
        for job in records.jobs.values():
            story = tell_story(records, job, DEMO_AS_OF, book)
            found = calendar_of(story, records, DEMO_AS_OF, book)
            kinds.update((event.occasion, event.standing) for event in found)
            texts = [text for event in found for text in (event.summary, *event.sentences)]
            assert not [text for text in texts if "None" in text or "  " in text or ".." in text or not text]
            outlook = assess_jobs(records, DEMO_AS_OF, book, only=job.id)[job.id]
            parts = work_parts(outlook, records.club.working_days)
            live = [e for e in found if e.occasion is Occasion.WORK and e.standing is not Standing.CANCELLED]
            if outlook.work is Work.PLANNED and outlook.starts < DEMO_AS_OF.date() and not outlook.is_put_off:
                assert {days(event) for event in live} == {outlook.starts.isoformat()}
                continue
            assert len(live) == len(parts)
            shown = [work.surface.id for part in parts for work in part.works]
            left_out = {
                Work.CALLED_OFF,
                *([Work.PLANNED] if outlook.work is Work.HELD_UP or outlook.is_put_off else []),
            }
            assert sorted(shown) == sorted(w.surface.id for w in outlook.surfaces if w.work not in left_out)
    assert len(kinds) == len(Occasion) * len(Standing)


def test_an_open_surface_still_has_its_label(demo_records: ClubRecords) -> None:
    """A treatment under a label, done in the morning; the log opens the greens in the afternoon."""
    job, greens = "greens-leaf-disease-2027", ("green-4", "green-11", "green-16")
    done = Progress(
        head=entry_head(demo_records, "2027-10-25 09:00", "sprayed"), step=Step.DONE, job=job, surfaces=greens,
        because="", as_done=(), play=None,
    )  # fmt: skip
    opened = MorningStatus(
        head=entry_head(demo_records, "2027-10-25 15:00", "dry"), play=tuple((name, Play.OPEN) for name in greens),
        why="", limits=(),
    )  # fmt: skip
    records = with_entries(demo_records, done, opened)
    found = events(records, job, "2027-10-25 18:00", WeatherBook(records.club, records.weather))["reopening-1"]
    assert (days(found), found.standing) == ("2027-10-25 15:00", Standing.CONFIRMED)
    assert "The product label counts first: see “Please take care”." in found.sentences
