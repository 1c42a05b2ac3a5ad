"""Times, days, jobs and quantities as a greenkeeper types them; what cannot be understood is told word for word."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from swardcast.entering.job_words import job_meant, kinds_named
from swardcast.entering.kinds import KINDS
from swardcast.entering.limits_said import limit_typed
from swardcast.entering.measures import as_done, changes_typed
from swardcast.entering.said import day_said, moment_said
from swardcast.entering.standing import standing_at
from swardcast.entering.suggestions import kind_offered, surfaces_offered
from swardcast.entering.written import operation_in_fields
from swardcast.entering.wrong import WrongAnswer
from swardcast.reading.operations import OperationItem, operation_from
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Kind
from tests.outlook.small_club import SmallClub, moment

LONDON = ZoneInfo("Europe/London")
NOW = datetime(2027, 8, 26, 15, 45, 30, tzinfo=LONDON)  # a Thursday


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("now", "2027-08-26 15:45"),
        ("7:05am", "2027-08-26 07:05"),
        ("3pm", "2027-08-26 15:00"),
        ("12am", "2027-08-26 00:00"),
        ("midday", "2027-08-26 12:00"),
        ("14.30", "2027-08-26 14:30"),
        ("yesterday 4pm", "2027-08-25 16:00"),
        ("Monday at 7am", "2027-08-23 07:00"),
        ("2027-08-23 15:40", "2027-08-23 15:40"),
        ("20 August 1:40pm", "2027-08-20 13:40"),
    ],
)
def test_a_moment_is_read_as_it_is_said(typed: str, meant: str) -> None:
    assert f"{moment_said(typed, LONDON, NOW):%Y-%m-%d %H:%M}" == meant


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("4pm", "'4pm', which is still to come"),
        ("25:00", "'25:00'"),
        ("13pm", "'13pm'"),
        ("half past nine", "'half past nine'"),
        ("7", "'7'"),
        ("2027-03-28 01:30", "'2027-03-28 01:30'"),  # the clocks skip this one: last Sunday of March
    ],
)
def test_a_moment_that_is_none_or_to_come_is_refused(typed: str, says: str) -> None:
    with pytest.raises(WrongAnswer) as raised:
        moment_said(typed, LONDON, NOW)
    assert raised.value.found == says


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("7 September", date(2027, 9, 7)),
        ("Tuesday 7 September", date(2027, 9, 7)),
        ("7 sep 2028", date(2028, 9, 7)),
        ("2 January", date(2028, 1, 2)),
        ("2027-09-07", date(2027, 9, 7)),
        ("tomorrow", date(2027, 8, 27)),
    ],
)
def test_a_day_is_read_as_it_is_said(typed: str, meant: date) -> None:
    assert day_said(typed, NOW.date()) == meant


def test_a_weekday_that_does_not_fit_is_told() -> None:
    with pytest.raises(WrongAnswer) as raised:
        day_said("Monday 7 September", NOW.date())
    assert raised.value.found == "'Monday 7 September', but 2027-09-07 is a Tuesday"


@pytest.mark.parametrize("typed", ["31 September", "2027-02-30", "29 February 2027"])
def test_a_day_that_no_calendar_has_is_refused(typed: str) -> None:
    with pytest.raises(WrongAnswer) as raised:
        day_said(typed, NOW.date())
    assert raised.value.expected == "a day that exists in the calendar"


@pytest.mark.parametrize(
    ("typed", "kind"),
    [
        ("hollow-tine", Kind.HOLLOW_TINING),
        ("hollow tined", Kind.HOLLOW_TINING),
        ("Hollow", Kind.HOLLOW_TINING),
        ("scarify", Kind.SCARIFYING),
        ("scarified", None),
        ("topdress", Kind.TOPDRESSING),
        ("verticut", Kind.VERTICUTTING),
        ("re-turf", Kind.RETURFING),
        ("overseed", Kind.OVERSEEDING),
        ("brush", Kind.BRUSHING_IN),
        ("re-sanding", Kind.BUNKER_SANDING),
        ("core", Kind.HOLLOW_TINING),
        ("spraying", Kind.PLANT_PROTECTION),
        ("trees", Kind.TREE_WORK),
        ("temporary", Kind.TEMPORARY_GREENS),
        ("greens", None),
    ],
)
def test_an_operation_is_known_by_its_short_name(typed: str, kind: Kind | None) -> None:
    assert kinds_named(typed) == ({kind} if kind else set())


def test_a_word_that_several_operations_share_names_them_all() -> None:
    bunkers = {Kind.BUNKER_SANDING, Kind.BUNKER_LINER, Kind.BUNKER_EDGING, Kind.BUNKER_DRAINAGE}
    assert kinds_named("bunkers") == bunkers
    assert kinds_named("feed") == {Kind.GRANULAR_FEED, Kind.LIQUID_FEED}
    assert kinds_named("seeding") == {Kind.OVERSEEDING, Kind.SEEDING_BARE_GROUND}
    assert kinds_named("drains") == {Kind.DRAINAGE_TRENCHING, Kind.BUNKER_DRAINAGE}


@pytest.mark.parametrize("kind", list(Kind))
def test_every_operation_is_known_by_its_own_name(kind: Kind) -> None:
    assert kinds_named(kind.value) == {kind}
    assert kinds_named(kind.value.replace(" ", "-")) == {kind}


@pytest.mark.parametrize(
    ("typed", "word", "job"),
    [
        ("hollow-tine", "done", "greens-renovation-2027"),
        ("bunkers", "started", "bunkers-resanding-2027"),
        ("light-sanding", "postponed", "greens-light-sanding-2027"),
        ("tees", "started", "tees-returfing-2027"),
        ("tee", "started", "tees-returfing-2027"),
        ("new turf", "started", "tees-returfing-2027"),
        ("deep-tine", "called-off", "fairways-deep-tining-2027"),
        ("practice", "normal", "practice-green-renovation-2027"),
    ],
)
def test_a_word_finds_the_one_job_that_can_take_the_step(
    demo_records: ClubRecords, typed: str, word: str, job: str
) -> None:
    assert job_meant(typed, standing_at(demo_records, NOW), word).id == job


def test_a_word_that_fits_several_jobs_lists_them(demo_records: ClubRecords) -> None:
    with pytest.raises(WrongAnswer) as raised:
        job_meant("hollow-tine", standing_at(demo_records, NOW), "normal")
    assert raised.value.found == "'hollow-tine', which fits 2 jobs"
    assert (
        "practice-green-renovation-2027 (Hollow tining, scarifying and sanding the practice green)"
        in raised.value.expected
    )


def test_surfaces_tell_two_jobs_apart(demo_records: ClubRecords) -> None:
    standing = standing_at(demo_records, NOW)
    assert job_meant("hollow-tine", standing, "normal", ["green-4"]).id == "greens-renovation-2027"


@pytest.mark.parametrize(
    ("typed", "word", "said"),
    [
        ("verticut", "done", "is done on every surface, or is called off"),
        ("bunkers", "normal", "has no surface that was done and is not back to normal yet"),
        ("bunkers", "resumed", "is held up on no surface"),
        ("hollow-tine", "postponed", "has begun already"),
    ],
)
def test_a_job_that_cannot_take_the_step_says_why(demo_records: ClubRecords, typed: str, word: str, said: str) -> None:
    with pytest.raises(WrongAnswer) as raised:
        job_meant(typed, standing_at(demo_records, NOW), word)
    assert raised.value.found.endswith(said)


def test_a_job_that_has_begun_says_what_to_enter_instead_of_a_later_day(demo_records: ClubRecords) -> None:
    with pytest.raises(WrongAnswer) as raised:
        job_meant("hollow-tine", standing_at(demo_records, NOW), "postponed")
    assert raised.value.hint == (
        "For work that waits enter 'held-up', and 'resumed' when it goes on. 'called-off' calls off the surfaces that "
        "are not done; to do them another time, put them into a job of their own in the plan."
    )


def test_the_rest_of_a_job_that_has_begun_can_be_called_off(demo_records: ClubRecords) -> None:
    """On 26 August at 3:45pm greens 13 to 15 are done, and 16 to 18 still held up."""
    standing = standing_at(demo_records, NOW)
    assert job_meant("greens-renovation-2027", standing, "called-off").id == "greens-renovation-2027"
    assert standing.able("greens-renovation-2027", "called-off") == ("green-16", "green-17", "green-18")


def test_a_job_called_off_that_comes_back_is_corrected(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    club.log("off", "03-30", "change of plan", "job: spring", "change: called off", "because: rain")
    with pytest.raises(WrongAnswer) as raised:
        job_meant("spring", standing_at(club.records(), moment("04-01")), "started")
    assert raised.value.hint == (
        "If a job that was called off is to be done after all, 'correct' the entry that called it off."
    )


def test_a_word_that_is_no_job_names_the_nearest(demo_records: ClubRecords) -> None:
    with pytest.raises(WrongAnswer) as raised:
        job_meant("holow tinning", standing_at(demo_records, NOW), "done")
    assert raised.value.hint == "Did you mean 'hollow tining'?"


@pytest.mark.parametrize(
    ("as_of", "kind", "where"),
    [
        ("2027-08-26 06:00", "morning", ""),
        ("2027-08-26 07:00", "resumed", "green 12"),  # held up from 12 on, of which the 12th alone had been started
        ("2027-08-26 15:30", "done", "greens 13 to 15"),  # 12 is done, 16 to 18 still held up
        ("2027-08-23 06:50", "started", "greens 1 to 6"),
    ],
)
def test_what_comes_next_is_offered(demo_records: ClubRecords, as_of: str, kind: str, where: str) -> None:
    standing = standing_at(demo_records, datetime.fromisoformat(as_of).replace(tzinfo=LONDON))
    assert kind_offered(standing) == kind
    if where:
        job = demo_records.jobs["greens-renovation-2027"]
        assert surfaces_offered(standing, job, kind) == where


def test_what_was_done_otherwise_keeps_the_other_fields_of_the_plan(demo_records: ClubRecords) -> None:
    job = demo_records.jobs["greens-renovation-2027"]
    told = {"tine": "16 mm", "sand": "3.2 t/green"}
    assert as_done(told, job, set()) == [
        {
            "hollow tining": {"diameter": "16 mm", "spacing": "50 x 50 mm", "depth": "60 mm"}
        },  # the inside one was that of 13 mm
        {"topdressing": {"sand": "3.2 t/green"}},
    ]


def test_what_was_done_as_planned_is_not_told_again(demo_records: ClubRecords) -> None:
    """13 mm is the planned tine; 2600 kg are 2.6 t."""
    job = demo_records.jobs["greens-renovation-2027"]
    assert as_done({"tine": "1.3 cm", "sand": "2600 kg/green", "seed": "6 g/m2"}, job, set()) == []


def test_depth_belongs_to_the_work_that_is_named(demo_records: ClubRecords) -> None:
    job = demo_records.jobs["greens-renovation-2027"]
    (line,) = as_done({"depth": "4 mm"}, job, {Kind.SCARIFYING})
    assert line == {"scarifying": {"blade": "2 mm", "spacing": "25 mm", "depth": "4 mm"}}
    with pytest.raises(WrongAnswer) as raised:
        as_done({"depth": "4 mm"}, job, set())
    assert raised.value.found == "'4 mm' for scarifying or hollow tining"


def test_every_planned_operation_is_written_as_it_is_read(demo_records: ClubRecords) -> None:
    for job in demo_records.jobs.values():
        for operation in job.operations:
            fields = operation_in_fields(operation)
            assert operation_from(OperationItem.model_validate({operation.kind.value: fields})) == operation


@pytest.mark.parametrize(
    ("kind", "fields"),
    [
        ("sand injection", {"diameter": "12 mm", "spacing": "75 x 80 mm", "depth": "180 mm", "sand": "0.5 t each"}),
        ("sand injection", {}),
        ("change of cutting height", {"from": "3.5 mm", "to": "4 mm"}),
        ("change of cutting height", {"to": "4 mm"}),
        ("seeding bare ground", {"seed": "perennial rye", "rate": "30 g/m2"}),
        ("drainage trenching", {"length": "120 m", "width": "150 mm", "depth": "600 mm"}),
        ("irrigation work", {}),
        (
            "wetting agent",
            {
                "product": "a wetting agent", "re-entry": "once it is watered in", "signs": "on each tee",
                "label read by": "AB", "label read on": "2027-08-02", "rate": "as the label says", "water in": "at once",
            },
        ),
    ],
)  # fmt: skip
def test_an_operation_is_written_back_as_it_was_typed(kind: str, fields: dict[str, str]) -> None:
    assert operation_in_fields(operation_from(OperationItem.model_validate({kind: fields}))) == fields


def test_changes_are_read_as_they_are_said() -> None:
    assert changes_typed("sand 1.4 t/green, tines 13 mm; 2 passes".replace("2 passes", "passes 2")) == {
        "sand": "1.4 t/green",
        "tine": "13 mm",
        "passes": "2",
    }
    with pytest.raises(WrongAnswer) as raised:
        changes_typed("snd 2 mm")
    assert raised.value.hint == "Did you mean 'sand'?"


def test_a_limit_may_say_who_decided_and_until_when() -> None:
    said = "placed within 6 inches, decided by the Committee, until Thursday 16 September"
    now = datetime(2027, 9, 13, 6, 40, tzinfo=LONDON)
    assert limit_typed("preferred lies", said, decided_by="", until="", now=now) == {
        "what": "placed within 6 inches",
        "decided by": "the Committee",
        "until": "2027-09-16",
    }
    assert limit_typed("trolleys", "none until 2pm", decided_by="", until="", now=now) == {
        "what": "none",
        "until": "14:00",
    }
    assert limit_typed("trolleys", "none until it dries", decided_by="", until="", now=now) == "none until it dries"


def test_nobody_can_adopt_a_local_rule_but_the_committee() -> None:
    with pytest.raises(WrongAnswer) as raised:
        limit_typed("preferred lies", "placed within 6 inches", decided_by="", until="", now=NOW)
    assert raised.value.hint == "Only the Committee can adopt a Local Rule."


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.word)
def test_an_example_in_the_help_needs_at_most_twelve_words(kind: object) -> None:
    """Parted at blanks, as the one in the brief is counted; own words of a note are the manager's."""
    example = str(getattr(kind, "example", ""))
    assert len(example.partition("--because")[0].partition("--words")[0].split()) <= 12
