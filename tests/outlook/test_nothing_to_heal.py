"""Work that leaves nothing to heal, and work whose time is somebody's usual range, each to its sensible end."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

import pytest

from swardcast.compose import compose_bulletin
from swardcast.outlook.job_ranges import dated_milestones
from swardcast.outlook.states import DateRange, Milestone, ReasonKind, Work
from swardcast.records.operations import NOT_COMPUTED, Kind
from swardcast.records.plan import Play
from tests.outlook.small_club import SmallClub, moment

LABEL = "re-entry: once the leaf is dry, signs: at each green, label read by: AB, label read on: 2027-05-20"
NOTHING_HEALS = [
    "brushing in",
    "rolling",
    f"granular feed: {{product: feed for the autumn, {LABEL}}}",
    f"liquid feed: {{product: feed for the leaf, {LABEL}}}",
    f"wetting agent: {{product: a wetting agent, {LABEL}}}",
    f"plant protection: {{product: a treatment against leaf spot, {LABEL}}}",
    "change of cutting height: {from: 4 mm, to: 4.5 mm}",
    "tree work",
    "winter protection",
]
USUAL_RANGE = [
    "sand injection: {diameter: 12 mm, depth: 150 mm, sand: 0.5 t/green}",
    "re-turfing",
    "seeding bare ground: {seed: perennial rye, rate: 30 g/m2}",
    "bunker re-sanding: {sand: 100 mm}",
    "bunker liner",
    "bunker edging",
    "bunker drainage: {length: 12 m}",
    "drainage trenching: {length: 120 m, width: 15 cm, depth: 60 cm}",
    "irrigation work",
    "path work",
]
TINES = ("hollow tining", "solid tining", "needle tining", "deep tining")
JUNE = date(2027, 6, 1)  # a Tuesday


def _name(operation: str) -> str:
    return operation.partition(":")[0]


@pytest.mark.parametrize("operation", NOTHING_HEALS, ids=_name)
def test_work_that_leaves_nothing_to_heal_is_over_once_it_is_done(tmp_path: Path, operation: str) -> None:
    club = SmallClub(tmp_path)
    club.job("job", "06-01", operation, play="open with care")
    planned = club.work("job", moment("05-30"))
    assert (planned.work, planned.recovery) == (Work.PLANNED, None)
    assert planned.dates[Milestone.BACK_TO_NORMAL].likely == JUNE
    club.done("job", "06-01")
    by_label = LABEL in operation  # until the end of the day: the tests below
    for day in ("06-02", "06-05") if by_label else ("06-01", "06-05"):
        done = club.work("job", moment(day))
        assert done.work is Work.BACK_TO_NORMAL
        assert [reason.kind for reason in done.reasons] == [ReasonKind.DONE, ReasonKind.NO_HEALING]
        assert done.dates[Milestone.BACK_TO_NORMAL] == DateRange.known(JUNE + timedelta(days=1 if by_label else 0))


def _sprayed_while_open(folder: Path) -> SmallClub:
    club = SmallClub(folder)
    club.job("job", "06-01", f"plant protection: {{product: a treatment, {LABEL}}}", play="open with care")
    return club


def test_a_product_on_an_open_green_is_not_over_two_minutes_after_it_is_done(tmp_path: Path) -> None:
    """What the label says is never computed: to the end of the day nobody has said that it is over."""
    club = _sprayed_while_open(tmp_path)
    club.done("job", "06-01")  # at 10am
    just_done = club.work("job", moment("06-01", "10:02"))
    assert (just_done.work, [reason.kind for reason in just_done.reasons]) == (Work.UNDER_WAY, [ReasonKind.DONE])
    assert not just_done.dates[Milestone.BACK_TO_NORMAL].is_fact
    assert club.work("job", moment("06-01", "23:59")).work is Work.UNDER_WAY
    assert club.work("job", moment("06-02", "06:00")).work is Work.BACK_TO_NORMAL


@pytest.mark.parametrize(
    ("kind", "fields", "over"),
    [
        ("morning status", ["play: {whole course: open}"], True),
        ("morning status", ["play: {tees: open}"], False),
        ("morning status", ["play: {whole course: closed}"], False),
        ("work done", ["job: job", "play: open with care"], True),
        ("work done", ["job: job"], False),
        ("back to normal", ["job: job"], True),
    ],
)
def test_an_entry_ends_the_time_of_a_label_on_the_day(tmp_path: Path, kind: str, fields: list[str], over: bool) -> None:
    club = _sprayed_while_open(tmp_path)
    club.done("job", "06-01")
    club.log("later", "06-01", kind, *fields, time="14:00")
    then = club.work("job", moment("06-01", "14:01"))
    assert (then.work is Work.BACK_TO_NORMAL) is over
    assert (then.dates[Milestone.BACK_TO_NORMAL] == DateRange.known(JUNE)) is over


def test_what_was_open_before_the_product_was_used_says_nothing_of_its_label(tmp_path: Path) -> None:
    club = _sprayed_while_open(tmp_path)
    club.log("morning", "06-01", "morning status", "play: {whole course: open}", time="07:00")
    club.done("job", "06-01")
    assert club.work("job", moment("06-01", "10:02")).work is Work.UNDER_WAY


@pytest.mark.parametrize("operation", USUAL_RANGE, ids=_name)
def test_work_of_which_nothing_is_computed_keeps_to_the_plans_range(tmp_path: Path, operation: str) -> None:
    """Two to four weeks after 1 June: 15, 22 and 29 June."""
    club = SmallClub(tmp_path)
    club.job(
        "job",
        "06-01",
        operation,
        play="open with care",
        more="    normal after: {from: 2 to 4 weeks, source: our own}\n",
    )
    club.done("job", "06-01")
    healing = club.work("job", moment("06-02"))
    assert healing.work is Work.HEALING
    normal = healing.dates[Milestone.BACK_TO_NORMAL]
    assert (normal.early, normal.likely, normal.allow_until) == (
        date(2027, 6, 15),
        date(2027, 6, 22),
        date(2027, 6, 29),
    )
    assert [reason.kind for reason in healing.reasons] == [ReasonKind.DONE, ReasonKind.RULE_OF_THUMB]
    assert club.work("job", moment("06-30")).work is Work.BACK_TO_NORMAL


def test_every_kind_of_work_opens_turf_or_heals_in_a_usual_time_or_leaves_nothing() -> None:
    """Overseeding goes with work that opens the turf; temporary greens last as long as the plan says (below)."""
    computed = {*TINES, "scarifying", "verticutting", "fraise mowing", "topdressing", "overseeding"}
    assert computed | {"temporary greens"} | {*map(_name, NOTHING_HEALS)} | {*map(_name, USUAL_RANGE)} == {
        kind.value for kind in Kind
    }
    assert {kind.value for kind in NOT_COMPUTED} == {*map(_name, USUAL_RANGE)}


def test_a_sprayed_green_is_not_called_normal_before_players_may_be_back(tmp_path: Path) -> None:
    """Only an entry opens it, and no hour is told for it: that is what the label says."""
    club = SmallClub(tmp_path)
    spray = f"plant protection: {{product: a treatment, {LABEL}}}"
    club.job("job", "06-01", spray, more="    follow up: 4 to 6 hours\n")
    club.done("job", "06-01")
    sprayed = club.work("job", moment("06-01", "19:00"))
    assert (sprayed.work, sprayed.hours) == (Work.HEALING, None)
    assert not sprayed.dates[Milestone.REOPENING].is_fact
    club.log("morning", "06-02", "morning status", "play: {whole course: open}", time="07:00")
    assert club.work("job", moment("06-02", "06:59")).work is Work.HEALING
    opened = club.work("job", moment("06-02", "07:01"))
    assert opened.work is Work.BACK_TO_NORMAL
    assert opened.dates[Milestone.BACK_TO_NORMAL] == DateRange.known(date(2027, 6, 2))


def test_a_surface_that_stays_closed_for_days_is_over_once_an_entry_opens_it(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    closed = "    reopens after: {from: 2 to 3 days, source: the label}\n"
    club.job("job", "06-01", "winter protection", more=closed)
    club.done("job", "06-01")
    closed_still = club.work("job", moment("06-04"))
    assert closed_still.work is Work.HEALING
    assert [(reason.kind, reason.words) for reason in closed_still.reasons][1:] == [
        (ReasonKind.RULE_OF_THUMB, "the label")
    ]
    assert club.work("job", moment("06-05")).work is Work.HEALING
    club.log("morning", "06-06", "morning status", "play: {whole course: open}", time="07:00")
    assert club.work("job", moment("06-06")).work is Work.BACK_TO_NORMAL


def test_a_green_that_is_closed_for_longer_than_it_heals_is_not_called_normal_before_it_opens(tmp_path: Path) -> None:
    """Two millimetres of sand are gone in June well before six to eight weeks, 42, 49 and 56 days: 13, 20, 27 July."""
    club = SmallClub(tmp_path)
    closed = "    reopens after: {from: 6 to 8 weeks, source: our own}\n"
    club.job("job", "06-01", "topdressing: {sand: 2 mm}", more=closed)
    club.done("job", "06-01")
    healed = club.work("job", moment("06-30"))
    holes = healed.dates[Milestone.HOLES_CLOSED]
    assert holes.allow_until is not None
    assert holes.allow_until < date(2027, 7, 1)
    assert healed.work is Work.HEALING
    for dates in (healed.dates, club.course(moment("06-30")).jobs["job"].dates):
        normal = dates[Milestone.BACK_TO_NORMAL]
        assert (normal.early, normal.likely, normal.allow_until) == (
            date(2027, 7, 13),
            date(2027, 7, 20),
            date(2027, 7, 27),
        )
    assert club.work("job", moment("07-28")).work is Work.HEALING
    club.log("morning", "07-29", "morning status", "play: {whole course: open}", time="07:00")
    opened = club.work("job", moment("07-29"))
    assert opened.dates[Milestone.REOPENING] == DateRange.known(date(2027, 7, 29))
    assert opened.work is Work.HEALING  # the day of back to normal is computed, and not over yet
    assert club.work("job", moment("07-30")).work is Work.BACK_TO_NORMAL


def test_a_green_on_its_temporary_green_stays_there_until_the_plan_ends_it(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    stays = "    reopens after: {from: 8 to 10 weeks, source: our own}\n"
    club.job("job", "06-01", "temporary greens", play="temporary green", more=stays)
    club.done("job", "06-01")
    assert club.course(moment("06-01")).surfaces["green-1"].play is Play.TEMPORARY_GREEN


LASTING = [("temporary greens", "temporary green"), ("winter protection", "closed")]
EIGHT_TO_TEN_WEEKS = "    reopens after: {from: 8 to 10 weeks, source: our own}\n"


def _winter(folder: Path, operation: str, play: str) -> SmallClub:
    """Begun on Monday 29 November: nine weeks later is 31 January, ten are 7 February."""
    club = SmallClub(folder)
    club.job("job", "11-29", operation, play=play, more=EIGHT_TO_TEN_WEEKS)
    club.log("start", "11-29", "work started", "job: job")
    return club


@pytest.mark.parametrize(("operation", "play"), LASTING)
@pytest.mark.parametrize("done", [False, True], ids=["started", "started and done"])
def test_the_time_of_work_that_lasts_counts_from_its_first_entry(
    tmp_path: Path, operation: str, play: str, done: bool
) -> None:
    club = _winter(tmp_path, operation, play)
    if done:
        club.done("job", "12-06")  # the last cover is on a week later
    for days in (1, 9, 52):  # to 20 January
        work = club.work("job", moment("11-29") + timedelta(days=days))
        for milestone in (Milestone.REOPENING, Milestone.BACK_TO_NORMAL):
            given = work.dates[milestone]
            assert (given.likely, given.allow_until) == (date(2028, 1, 31), date(2028, 2, 7))


@pytest.mark.parametrize(("operation", "play"), LASTING)
@pytest.mark.parametrize(
    ("kind", "fields"),
    [
        ("morning status", ["play: {whole course: open}"]),
        ("work done", ["job: job", "play: open with care"]),
        ("back to normal", ["job: job"]),
    ],
    ids=["the morning", "work done with play", "back to normal"],
)
def test_the_entry_that_opens_a_surface_ends_work_that_lasts(
    tmp_path: Path, operation: str, play: str, kind: str, fields: list[str]
) -> None:
    club = _winter(tmp_path, operation, play)
    club.log("opens", "12-20", kind, *fields, time="07:00")
    assert club.work("job", moment("12-20", "06:59")).work is Work.UNDER_WAY
    opened = club.work("job", moment("12-20", "07:01"))
    assert opened.work is Work.BACK_TO_NORMAL
    for milestone in (Milestone.REOPENING, Milestone.BACK_TO_NORMAL):
        assert opened.dates[milestone] == DateRange.known(date(2027, 12, 20))
    assert opened.reasons[0].source == "opens"


@pytest.mark.parametrize(("operation", "play"), LASTING)
def test_done_after_it_was_opened_does_not_close_it_again(tmp_path: Path, operation: str, play: str) -> None:
    """The manager opens the greens, and tidies the log up an hour later."""
    club = _winter(tmp_path, operation, play)
    club.log("opens", "12-20", "morning status", "play: {whole course: open}", time="07:00")
    club.done("job", "12-20", "surfaces: green 1")
    course = club.course(moment("12-20"))
    assert [course.surfaces[green].play for green in ("green-1", "green-2")] == [Play.OPEN, Play.OPEN]
    assert club.work("job", moment("12-20")).work is Work.BACK_TO_NORMAL
    items = compose_bulletin(club.records(), moment("12-20")).items
    assert [item.at for item in items if item.at > moment("12-20", "07:00")] == []


def test_a_morning_that_leaves_the_hole_on_its_temporary_green_ends_nothing(tmp_path: Path) -> None:
    club = _winter(tmp_path, "temporary greens", "temporary green")
    club.log("one", "12-20", "morning status", "play: {greens: temporary green, tees: open}", time="07:00")
    assert club.work("job", moment("12-20")).work is Work.UNDER_WAY


def test_its_notice_says_on_the_day_that_it_is_over(tmp_path: Path) -> None:
    club = _winter(tmp_path, "temporary greens", "temporary green")
    club.log("opens", "12-20", "morning status", "play: {whole course: open}", time="07:00")
    bulletin = compose_bulletin(club.records(), moment("12-20", "07:05"))
    (notice,) = bulletin.notices
    assert notice.normal.replace("\u00a0", " ") == "on Monday 20 December"
    assert "temporary" not in notice.short_answer


def test_covers_on_greens_that_stay_open_are_over_with_the_plans_time_only(tmp_path: Path) -> None:
    """Every morning calls those greens open; that says nothing of the covers at night."""
    club = _winter(tmp_path, "winter protection", "open")
    club.log("morning", "12-20", "morning status", "play: {whole course: open}", time="07:00")
    assert club.work("job", moment("12-20")).work is Work.UNDER_WAY


def test_no_hole_closes_where_none_was_made(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("job", "06-01", "tree work", play="open with care")
    assert dated_milestones(club.work("job", moment("05-30"))) == (Milestone.REOPENING, Milestone.BACK_TO_NORMAL)
    assert not [line for line in club.explained("job", moment("05-30")) if "oles closed" in line]
