"""The committee's report of a small club whose days are all at 20 C, so that its days, sand and cost can be done by hand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.periods import Period
from swardcast.planning.report import Report, report_of
from swardcast.planning.report_sections import ReportInWords, report_in_words
from swardcast.planning.report_words import Section
from swardcast.records.blocked import BlockedDays, DaysWithoutWork
from swardcast.records.club import SurfaceKind
from swardcast.records.day_spans import DayInYear, DaySpan
from swardcast.records.operations import Kind
from swardcast.records.planning import Planning
from tests.outlook.small_club import HOLES, HOLES_AND_SAND, SmallClub, moment

PRICES = Planning(
    currency="GBP",
    sand_price_per_t=50.0,
    work_costs={SurfaceKind.GREEN: {Kind.HOLLOW_TINING: 40.0, Kind.TOPDRESSING: 15.0}},
)
APRIL, MAY, JUNE = (
    Period(first=date(2027, month, 1), last=date(2027, month, last)) for month, last in ((4, 30), (5, 31), (6, 30))
)
TARGETS = "planning:\n  targets: {organic matter: 3 to 5 %, green speed: 9 ft or more}\n"


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    """Done on 1 April; by hand in tests/outlook/test_lessons.py 10.36 growth days and 13 days, so the 25th; 34 days in fact."""
    small = SmallClub(tmp_path)
    small.job("spring", "04-01")
    small.done("spring", "04-01")
    small.normal("spring", "05-05")
    return small


def _of(club: SmallClub, period: Period, as_of: str, planning: Planning | None = None) -> Report:
    records = club.records()
    records = replace(records, planning=planning) if planning is not None else records
    return report_of(records, moment(as_of), WeatherBook(records.club, records.weather), period)


def _told(
    club: SmallClub, period: Period, as_of: str, planning: Planning | None = None, *, each_source: bool = False
) -> ReportInWords:
    records = club.records()
    records = replace(records, planning=planning) if planning is not None else records
    report = report_of(records, moment(as_of), WeatherBook(records.club, records.weather), period)
    return report_in_words(report, records, each_source=each_source)


def _words(told: ReportInWords, name: str) -> str:
    """All words of one section, with plain blanks."""
    (section,) = (one for one in told.sections if one.name == name)
    cells = [cell for table in section.tables for row in (table.columns, *table.rows) for cell in row]
    captions = [table.caption for table in section.tables]
    return " ".join((*section.lines, *section.sentences, *captions, *cells, *section.notes)).replace("\u00a0", " ")


def test_a_job_takes_the_days_from_its_first_one_to_back_to_normal_beside_those_promised(club: SmallClub) -> None:
    """1 April to 5 May are 30 + 4 = 34 days. Promised were 25 April, 24 days on, and by hand 23.36 x exp(1.2816 x 0.24) =
    31.8 days at the latest, so 32."""
    (one,) = _of(club, APRIL, "05-10").disturbed
    assert (one.first, one.normal_on, one.days) == (date(2027, 4, 1), date(2027, 5, 5), 34)
    assert one.announced is not None
    assert one.announced.normal.likely == date(2027, 4, 25)
    assert (one.likely_days, one.allowed_days) == (24, 32)


def test_days_of_a_period_are_those_of_work_and_of_healing_in_it(club: SmallClub) -> None:
    """In April the 1st was worked on, and the 29 others healed; in May 4 days, since the 5th is back to normal."""
    (april,), (may,) = (_of(club, period, "06-01").totals for period in (APRIL, MAY))
    assert (april.work_days.number, april.healing_days.number) == (1, 29)
    assert (may.work_days.number, may.healing_days.number) == (0, 4)


def test_a_promise_that_moved_before_the_work_is_told_beside_the_first_one(tmp_path: Path) -> None:
    """Put off by a week, so is the date. The days promised count from the day on which it was to begin."""
    club = SmallClub(tmp_path)
    club.job("summer", "06-07")
    club.log(
        "later", "06-01", "change of plan", "job: summer", "change: postponed to", "starts: 2027-06-14", "because: rain"
    )
    club.done("summer", "06-14")
    report = _of(club, JUNE, "06-20")
    (one,) = report.disturbed
    assert one.announced is not None
    assert one.before is not None
    assert (one.announced.starts, one.before.starts) == (date(2027, 6, 7), date(2027, 6, 14))
    assert one.before.normal.likely is not None
    assert one.announced.normal.likely is not None
    assert (one.before.normal.likely - one.announced.normal.likely).days == 7
    assert (one.normal_on, one.days, one.is_compared) == (None, 6, False)
    words = _words(_told(club, JUNE, "06-20"), "done")
    assert "7 June, moved to 14 June" in words
    assert "Postponed to Monday 14 June: rain." in words


def test_sand_and_cost_are_those_of_the_plan_and_those_of_what_was_done(tmp_path: Path) -> None:
    """4.8544 mm on two greens of 500 m2 at 1.56 t/m3 are 7.573 t. Green 2 got 2 mm in fact: 3.786 + 1.560 = 5.346 t. At 50 a
    tonne, with 40 + 15 on each green: 378.64 + 110 = 488.64 planned, 267.32 + 110 = 377.32 as done."""
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    club.done("spring", "04-01", "surfaces: green 1", name="first")
    club.done("spring", "04-01", "surfaces: green 2", "as done:", "  - topdressing: {sand: 2 mm}", name="second")
    (one,) = _of(club, APRIL, "04-10", PRICES).sand.jobs
    assert one.planned.sand_t == pytest.approx(7.5729, abs=0.0001)
    assert one.done.sand_t == pytest.approx(5.3464, abs=0.0001)
    assert one.planned.cost is not None
    assert one.done.cost is not None
    assert one.planned.cost.in_all == pytest.approx(488.643, abs=0.001)
    assert one.done.cost.in_all == pytest.approx(377.322, abs=0.001)
    told = _told(club, APRIL, "04-10", PRICES)
    assert "Sand: 7.6 tonnes planned, 5.3 tonnes used. Cost: £489 planned, £377 as done." in _words(told, "in-short")
    assert "Green 2: topdressing 2.0 mm" in _words(told, "done")


def test_half_of_a_job_has_used_half_of_its_sand(tmp_path: Path) -> None:
    """20 t in all on two greens alike; one is finished."""
    club = SmallClub(tmp_path)
    club.job("spring", "04-01", HOLES, "topdressing: {sand: 20 t}")
    club.done("spring", "04-01", "surfaces: green 1")
    (one,) = _of(club, APRIL, "04-10").sand.jobs
    assert one.planned.sand_t == pytest.approx(20.0)
    assert one.done.sand_t == pytest.approx(10.0)
    assert (one.planned.cost, one.done.cost) == (None, None)


def test_a_corrected_entry_counts_once_as_it_was_corrected(tmp_path: Path) -> None:
    """3 mm in the place of the plan's 4.8544 mm: 1,000 m2 x 3 mm x 1.56 = 4.68 t."""
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    wrong = club.done("spring", "04-01", "as done:", "  - topdressing: {sand: 30 mm}")
    club.log(
        "right", "04-02", "correction", f"corrects: {wrong}", "instead:", "  at: 2027-04-01 10:00", "  kind: work done",
        "  job: spring", "  as done:", "    - topdressing: {sand: 3 mm}",
    )  # fmt: skip
    (one,) = _of(club, APRIL, "04-10").sand.jobs
    assert one.done.sand_t == pytest.approx(4.68)


def test_a_hold_up_lasts_the_working_days_until_work_goes_on(club: SmallClub) -> None:
    """Held up on Monday 14 June and taken up on Wednesday the 16th: 2 working days. Again on Friday the 18th, and taken up on
    Monday: 1, since nobody works on the weekend. A second word on the same hold-up is none of its own."""
    club.job("summer", "06-14")
    held = ("job: summer", "because: frost; the ground is white")
    club.log("one", "06-14", "held up", *held)
    club.log("still", "06-15", "held up", *held)
    club.log("on", "06-16", "work resumed", "job: summer")
    club.log("two", "06-18", "held up", "job: summer", "because: The machine lost its belt in the rain")
    club.log("on-again", "06-21", "work resumed", "job: summer")
    found = _of(club, JUNE, "06-30").hold_ups
    assert [(one.began_on.day, one.ended_on and one.ended_on.day, one.working_days) for one in found] == [
        (14, 16, 2),
        (18, 21, 1),
    ]
    told = _told(club, JUNE, "06-30")
    assert "Hold-ups: 2, with 3 working days lost (frost 1, machine 1)." in _words(told, "in-short")


def test_days_on_which_the_club_does_no_work_are_not_lost_by_a_hold_up(club: SmallClub) -> None:
    """Held up on Friday 28 May and taken up on Wednesday 2 June: Monday to Wednesday would be 3 working days. Monday 31 May is
    the last Monday of May, a bank holiday in England (Banking and Financial Dealings Act 1971, schedule 1, from memory), and the club
    blocked the Tuesday: 1."""
    club.job("summer", "05-28")
    club.log("one", "05-28", "held up", "job: summer", "because: rain")
    club.log("on", "06-02", "work resumed", "job: summer")
    first = DayInYear(month=6, day=1, year=2027)
    without = DaysWithoutWork(
        public_holidays="GB-ENG", blocked=(BlockedDays(span=DaySpan(first=first, last=first), why="staff outing"),)
    )
    for planning, days in ((Planning(), 3), (Planning(days_without_work=without), 1)):
        (held,) = _of(club, MAY, "06-30", planning).hold_ups
        assert held.working_days == days


def test_two_crews_held_up_apart_are_two_hold_ups(club: SmallClub) -> None:
    club.job("summer", "06-14")
    club.log("one", "06-14", "held up", "job: summer", "surfaces: green 1", "because: rain")
    club.log("two", "06-14", "held up", "job: summer", "surfaces: green 2", "because: ice", time="11:00")
    club.log("on", "06-15", "work resumed", "job: summer", "surfaces: green 1")
    found = _of(club, JUNE, "06-17").hold_ups
    assert [(one.ended_on, one.working_days) for one in found] == [(date(2027, 6, 15), 1), (None, 3)]


def test_a_hold_up_of_a_job_that_was_called_off_is_told_all_the_same(club: SmallClub) -> None:
    club.job("summer", "06-14")
    club.log("held", "06-14", "held up", "job: summer", "because: rain")
    club.log("off", "06-16", "change of plan", "job: summer", "change: called off", "because: it is too wet")
    told = _told(club, JUNE, "06-30")
    assert "Work: 1 job; 1 called off." in _words(told, "in-short")
    assert "Hold-ups: 1, with 2 working days lost (rain 1)." in _words(told, "in-short")
    assert "Called off: it is too wet." in _words(told, "done")
    assert "No work of this period disturbed play." in _words(told, "days")


@pytest.mark.parametrize(
    ("typed", "sort"),
    [
        ("heavy rain; the greens are too soft for the machines", "rain"),
        ("Frozen ground", "frost"),
        ("a belt broke on the machine", "machine"),
        ("the lorry with the sand is late", "supply"),
        ("two of the crew are ill", "staff"),
        ("a society was let out late", "play"),
        ("the price of fish", "other"),  # "ice" stands in it, and is no word of it
    ],
)
def test_a_cause_is_sorted_by_the_first_word_that_is_known(club: SmallClub, typed: str, sort: str) -> None:
    club.job("summer", "06-14")
    club.log("held", "06-14", "held up", "job: summer", f"because: {typed}")
    told = _told(club, JUNE, "06-15")
    assert f"working day lost ({sort} 1)" in _words(told, "in-short")


def test_readings_are_told_beside_the_clubs_own_targets_and_drawn(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    path = club.folder / "club.yaml"
    path.write_text(path.read_text(encoding="utf-8") + TARGETS, encoding="utf-8")
    for day, found in (("03-10", "6 %"), ("04-10", "5.1 %"), ("04-20", "5 %"), ("04-29", "2.9 %")):
        club.log(f"read-{day}", day, "observation", "surfaces: greens 1-2", f"readings: {{organic matter: {found}}}")
    club.log("roll", "04-29", "observation", "surfaces: green 1", "readings: {green speed: 8 ft 11 in}", time="11:00")
    by_name = {one.name: one for one in _of(club, APRIL, "05-01").readings}
    organic, speed = by_name["organic matter"], by_name["green speed"]
    assert [one.beside.value for one in organic.taken if one.beside] == ["above", "within", "below"]
    assert [one.beside.value for one in speed.taken if one.beside] == ["below"]
    assert [one.on.month for one in organic.drawn] == [3, 4, 4, 4]
    told = _told(club, APRIL, "05-01")
    words = _words(told, "readings")
    assert "Organic matter (the club's target: 3 to 5 %)" in words
    assert "Organic matter before that: 6 % on 10 March." in words
    short = "Readings inside the club's targets: green speed 0 of 1, organic matter 1 of 3."
    assert short in _words(told, "in-short")
    (section,) = (one for one in told.sections if one.name == "readings")
    (picture,) = section.pictures
    assert "5.1 %" in str(picture.told.tables)
    assert "lowest 2.9 %, the highest 6 %" in picture.told.description


def test_a_target_read_with_another_meter_says_nothing_of_a_reading(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    path = club.folder / "club.yaml"
    path.write_text(
        path.read_text(encoding="utf-8") + "planning:\n  targets: {firmness: 80 to 100 gravities}\n", encoding="utf-8"
    )
    club.log("sinks", "04-10", "observation", "surfaces: green 1", "readings: {firmness: 8 mm}")
    club.log("hammer", "04-11", "observation", "surfaces: green 1", "readings: {firmness: 95 gravities}")
    (firmness,) = _of(club, APRIL, "05-01").readings
    assert [one.beside.value if one.beside else None for one in firmness.taken] == [None, "within"]
    assert [one.typed for one in firmness.drawn] == ["95 gravities"]


def test_dates_are_judged_in_the_period_in_which_the_end_came(club: SmallClub) -> None:
    """10 days after the 25th, beyond 3 May; few, since five are needed."""
    assert _of(club, APRIL, "06-01").kept == ()
    (one,) = _of(club, MAY, "06-01").kept
    assert (one.late_days, one.is_inside) == (10, False)
    told = _told(club, MAY, "06-01")
    assert "1 job with a computed date ended in the period, outside the days that we gave." in _words(told, "in-short")
    words = _words(told, "dates")
    assert "None of them lay inside the days that we gave on the day of the work" in words
    assert "10.0 days away" in words
    assert "So few jobs say little: 5 are needed at the least." in words


def test_what_lies_ahead_is_the_period_that_follows(club: SmallClub) -> None:
    club.job("summer", "06-14", announced="06-13")
    told = _told(club, MAY, "06-01")
    assert "Summer work" in _words(told, "ahead")
    assert "14 June" in _words(told, "ahead")
    assert [one.outlook.job.id for one in _of(club, MAY, "06-01").ahead] == ["summer"]
    assert _of(club, APRIL, "06-01").ahead == ()


def test_work_that_members_had_not_heard_of_was_promised_to_nobody(club: SmallClub) -> None:
    club.job("summer", "06-14", announced="06-14")
    (job,) = _of(club, JUNE, "06-01").jobs
    assert job.job.id == "summer"
    assert _of(club, JUNE, "06-01").disturbed == ()
    assert "1 not begun" in _words(_told(club, JUNE, "06-01"), "in-short")


def test_a_job_that_was_taken_out_of_the_plan_is_told_with_its_reason(club: SmallClub) -> None:
    more = "    withdrawn: {at: 2027-06-02 09:00, because: it was a mistake}\n"
    club.job("summer", "06-14", more=more)
    told = _told(club, JUNE, "06-30")
    assert "Work: 1 job; 1 taken out of the plan." in _words(told, "in-short")
    assert "It was a mistake." in _words(told, "done")


def test_private_notes_stand_in_it_as_typed_and_those_of_a_corrected_entry_do_not(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "04-01", more="    private note: The quotation is Fergus Dunmore's.\n")
    wrong = club.done("spring", "04-01", "private note: Two men were ill.")
    club.log(
        "right", "04-02", "correction", f"corrects: {wrong}", "private note: One was.", "instead:",
        "  at: 2027-04-01 10:00", "  kind: work done", "  job: spring",
    )  # fmt: skip
    club.log("later", "05-03", "note to members", "private note: Not of April.")
    found = _of(club, APRIL, "05-10").notes
    assert [(one.on, one.words, one.job and one.job.id) for one in found] == [
        (None, "The quotation is Fergus Dunmore's.", "spring"),
        (date(2027, 4, 2), "One was.", "spring"),
    ]
    words = _words(_told(club, APRIL, "05-10"), "done")
    assert "Spring work – The quotation is Fergus Dunmore's. Spring work 2 April One was." in words
    assert "Private notes" not in _words(_told(club, JUNE, "06-10"), "done")


def test_a_period_without_anything_says_so_in_each_section(club: SmallClub) -> None:
    told = _told(club, Period(first=date(2027, 3, 1), last=date(2027, 3, 31)), "03-31")
    by_name = {one.name: one for one in told.sections}
    assert set(by_name) == {"in-short", "done", "days", "sand", "readings", "hold-ups", "dates", "ahead", "sources"}
    assert len(by_name["in-short"].lines) == 6
    for name, said in {
        "done": "No job was planned for this period",
        "days": "No work of this period disturbed play.",
        "sand": "No work of this period needs sand or has a price.",
        "readings": "No readings were entered.",
        "hold-ups": "No hold-up was entered.",
        "dates": "No job with a computed date ended in this period.",
    }.items():
        assert said in _words(told, name), name
        assert by_name[name].tables == ()
    assert "The club has typed no targets." in _words(told, "readings")


def test_a_club_without_prices_gets_no_cost_and_is_told_why(club: SmallClub) -> None:
    told = _told(club, APRIL, "05-10")
    assert "Cost" not in _words(told, "sand").replace("Sand and cost", "").replace("there is no cost", "")
    assert "Nobody typed prices, so that there is no cost." in _words(told, "sand")
    assert "Sand: 7.6 tonnes planned, 7.6 tonnes used." in _words(told, "in-short")
    assert "£" not in _words(told, "in-short")


def test_every_row_of_work_can_name_places_in_the_clubs_own_records(club: SmallClub) -> None:
    told = _told(club, APRIL, "05-10", each_source=True)
    (sources,) = (one for one in told.sections if one.name == "all-sources")
    places = dict(line.split(": ", 1) for line in sources.lines)
    assert set(places.values()) == {
        "plan/spring.yaml, line 4",
        "log/2027/spring-done.md",
        "log/2027/spring-normal.md",
    }
    for name in ("done", "days", "sand"):
        (section,) = (one for one in told.sections if one.name == name)
        table = section.tables[0]
        assert table.columns[-1] == "Source"
        assert table.rows[0][-1][0] in places


def test_unasked_a_report_tells_its_sources_in_a_line_for_each_kind_with_their_days(club: SmallClub) -> None:
    """The job was planned for 1 April, done on that day, and called back to normal on 5 May."""
    told, numbered = _told(club, APRIL, "05-10"), _told(club, APRIL, "05-10", each_source=True)
    sources = told.sections[-1]
    assert sources.lines == (
        "Jobs in the plan: 1, planned for 1 April.",
        "Log, work begun, held up or done: 1 entry, 1 April.",
        "Log, back to normal: 1 entry, 5 May.",
    )
    assert sources.notes == ('The same report, made with "--sources", names the source of each row.',)
    assert not any("Source" in table.columns for section in told.sections for table in section.tables)
    assert "Source" not in " ".join(told.lead)
    for short, whole in zip(told.sections[:-1], numbered.sections[:-1], strict=True):
        rows = [row for table in whole.tables for row in table.rows]
        assert [row for table in short.tables for row in table.rows] == [
            row[: len(columns)] for columns, row in zip(_columns(short), rows, strict=True)
        ]


def _columns(section: Section) -> list[tuple[str, ...]]:
    """The headings above each row."""
    return [table.columns for table in section.tables for _ in table.rows]


@pytest.mark.parametrize(
    ("first", "last", "then"),
    [
        ((2027, 9, 1), (2027, 9, 30), ((2027, 10, 1), (2027, 10, 31))),
        ((2027, 12, 1), (2027, 12, 31), ((2028, 1, 1), (2028, 1, 31))),
        ((2027, 1, 1), (2027, 12, 31), ((2028, 1, 1), (2028, 12, 31))),
        ((2027, 11, 1), (2028, 1, 31), ((2028, 2, 1), (2028, 4, 30))),
        ((2028, 1, 1), (2028, 1, 31), ((2028, 2, 1), (2028, 2, 29))),
        ((2027, 8, 23), (2027, 8, 29), ((2027, 8, 30), (2027, 9, 5))),
    ],
)
def test_the_period_that_follows_is_as_long_in_months_or_days(
    first: tuple[int, int, int], last: tuple[int, int, int], then: tuple[tuple[int, int, int], tuple[int, int, int]]
) -> None:
    following = Period(first=date(*first), last=date(*last)).next
    assert (following.first, following.last) == (date(*then[0]), date(*then[1]))


def test_sand_of_all_months_is_that_of_the_year(club: SmallClub) -> None:
    club.job("summer", "06-14", *HOLES_AND_SAND)
    club.done("summer", "06-14")
    tonnes: Callable[[Period], float] = lambda period: sum(  # noqa: E731 - said twice
        one.done.sand_t or 0.0 for one in _of(club, period, "07-01").sand.jobs
    )
    year = Period(first=date(2027, 1, 1), last=date(2027, 12, 31))
    assert tonnes(year) == pytest.approx(tonnes(APRIL) + tonnes(MAY) + tonnes(JUNE))
    assert tonnes(year) == pytest.approx(2 * 7.5729, abs=0.001)
