"""What pictures say: the same days as the notices, in plain words, and every fact as a table."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date, timedelta

import pytest

from swardcast.compose import Bulletin, Pictures, compose_bulletin, compose_pictures
from swardcast.language.banned import banned_phrases
from swardcast.language.catalogue import BUILT_IN
from swardcast.language.plain import faults
from swardcast.language.voice import Voice
from swardcast.notices.healing_picture import HealingPicture
from swardcast.notices.notice import Notice, Section
from swardcast.notices.pictures import LETTERS_ON_AXIS, Sign, Told, as_of_mark, day_ticks
from swardcast.notices.promises_picture import promises_picture
from swardcast.outlets.pictures.growth import draw_growth
from swardcast.outlook.track_record import Kept, track_record
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Part
from tests.conftest import DEMO_AS_OF
from tests.notices.many_jobs import STATES, clubs
from tests.notices.notice_text import wrong_weekdays

NOW = "2027-09-14 09:30"
CHOSEN = {
    "planned", "overdue", "put-off", "called-off", "far-ahead", "under-way", "held-up", "healing", "seen", "due-back",
    "back-to-normal",
}  # fmt: skip


@pytest.fixture(scope="module")
def pictures_at(
    demo_bulletin_at: Callable[[str], Bulletin], demo_records: ClubRecords
) -> Callable[[str], tuple[Bulletin, Pictures]]:
    book = WeatherBook(demo_records.club, demo_records.weather)

    def at(said: str) -> tuple[Bulletin, Pictures]:
        bulletin = demo_bulletin_at(said)
        return bulletin, compose_pictures(bulletin, demo_records, book)

    return at


@pytest.fixture(scope="module")
def of_all_kinds(demo_records: ClubRecords) -> list[tuple[Bulletin, Pictures]]:
    """Every kind of work in each of eleven states, in British and American English by turns."""
    found = []
    in_states = zip((state for state in STATES for _ in BUILT_IN), clubs(demo_records), strict=True)
    for records in [club for state, club in in_states if state in CHOSEN]:
        book = WeatherBook(records.club, records.weather)
        bulletin = compose_bulletin(records, DEMO_AS_OF, book)
        found.append((bulletin, compose_pictures(bulletin, records, book)))
    return found


def _section(notice: Notice, part: Part) -> Section | None:
    return next((section for section in notice.sections if section.part is part), None)


def _days(told: Told) -> dict[str, str]:
    table = next(table for table in told.tables if table.columns == ("What", "When"))
    return {row[0]: row[1] for row in table.rows}


def test_the_table_has_the_days_of_the_notice_in_its_words(of_all_kinds: list[tuple[Bulletin, Pictures]]) -> None:
    compared = 0
    for bulletin, pictures in of_all_kinds:
        notices = {notice.id: notice for notice in bulletin.notices}
        for name, picture in pictures.healing.items():
            section = _section(notices[name], Part.DAY_BY_DAY)
            assert section is not None
            said = {fact.name: fact.value for fact in section.facts}
            days = _days(picture.told)
            for milestone in ("Most putts roll true", "Holes closed", "Sand worked in", "Back to normal"):
                if milestone in said and milestone in days:
                    assert days[milestone] == said[milestone], name
                    compared += 1
            assert days["Back to normal"] == said["Back to normal"], name
    assert compared > 80


def test_work_without_a_computed_healing_has_no_picture(of_all_kinds: list[tuple[Bulletin, Pictures]]) -> None:
    with_one = {name for _, pictures in of_all_kinds for name in pictures.healing}
    for kind in ("bunker-", "re-turfing", "sand-injection", "seeding-bare-ground", "drainage-trenching"):
        assert not [name for name in with_one if name.startswith(kind)]
    for state in ("called-off", "overdue", "put-off", "far-ahead"):
        assert not [name for name in with_one if f"-{state}-" in name]
    for state in ("planned", "under-way", "held-up", "healing", "seen", "due-back", "back-to-normal"):
        assert [name for name in with_one if f"-{state}-" in name], state


def test_its_fixtures_are_those_that_the_notice_names(
    pictures_at: Callable[[str], tuple[Bulletin, Pictures]],
) -> None:
    bulletin, pictures = pictures_at(NOW)
    picture = pictures.healing["greens-renovation-2027"]
    (notice,) = (notice for notice in bulletin.notices if notice.id == "greens-renovation-2027")
    heading = bulletin.voice.say("fixtures-heading")
    (section,) = (section for section in notice.sections if section.heading == heading)
    named = " ".join(fact.name for fact in section.facts)
    keyed = [row for row in picture.told.key if row.number]
    assert [row.number for row in keyed] == [mark.number for mark in picture.fixtures] == list("1234567")
    assert all(row.words in named for row in keyed)


def test_it_shows_what_was_seen_and_the_day_of_the_reader(
    pictures_at: Callable[[str], tuple[Bulletin, Pictures]],
) -> None:
    """The greens were looked at on 30 August (15 % left on greens 1 to 6) and on five days after that."""
    _, pictures = pictures_at(NOW)
    picture = pictures.healing["greens-renovation-2027"]
    assert picture.as_of is not None
    assert (picture.as_of.day, picture.as_of.words) == (date(2027, 9, 14), "as of 14 Sept")
    assert len(picture.seen) == 6
    assert (picture.first, picture.work_until) == (date(2027, 8, 23), date(2027, 8, 27))
    assert picture.curve[-1].day == picture.last
    assert picture.normal.allow_until is not None
    assert picture.normal.allow_until < picture.last


def test_work_that_is_over_shows_the_day_on_which_it_was(
    pictures_at: Callable[[str], tuple[Bulletin, Pictures]],
) -> None:
    _, pictures = pictures_at(NOW)
    picture = pictures.healing["greens-solid-tining-2027"]
    assert picture.as_of is None
    assert picture.normal.is_fact
    assert _days(picture.told)["Back to normal"] == "On Monday 31 May"
    assert _days(picture.told)["Most putts roll true"] == "Was likely by Tuesday 11 May"


def _told(pictures: Pictures) -> Iterator[Told]:
    yield from (picture.told for picture in pictures.healing.values())
    yield from (one.told for one in (pictures.growth, pictures.promises) if one is not None)


def _words(told: Told) -> Iterator[str]:
    yield from (told.title, told.description, *told.caption, *(row.words for row in told.key))
    for table in told.tables:
        yield from (table.caption, *table.columns, *(cell for row in table.rows for cell in row))


def test_all_words_are_plain(of_all_kinds: list[tuple[Bulletin, Pictures]]) -> None:
    """The description is heard as one piece, of as many sentences as there are facts: its sentences count alone."""
    wrong = []
    for bulletin, pictures in of_all_kinds:
        banned = banned_phrases(bulletin.club.language)
        for told in _told(pictures):
            for words in _words(told):
                said = [str(fault) for fault in faults(words.replace("\u00a0", " "), banned)]
                wrong += [one for one in said if words != told.description or "paragraph" not in one]
                wrong += wrong_weekdays(words, {2026, 2027, 2028})
    assert wrong == []


def test_names_are_unique_so_that_ids_are(of_all_kinds: list[tuple[Bulletin, Pictures]]) -> None:
    for _, pictures in of_all_kinds:
        names = [told.name for told in _told(pictures)]
        assert len(names) == len(set(names))


def test_every_row_of_a_table_has_a_cell_for_each_heading(of_all_kinds: list[tuple[Bulletin, Pictures]]) -> None:
    tables = [table for _, pictures in of_all_kinds for told in _told(pictures) for table in told.tables]
    assert len(tables) > 100
    assert all(len(row) == len(table.columns) for table in tables for row in table.rows)
    assert all(cell for table in tables for row in table.rows for cell in row)


@pytest.mark.parametrize("tag", BUILT_IN)
@pytest.mark.parametrize("days", [1, 2, 5, 9, 23, 51, 120, 400])
def test_days_named_on_an_axis_stand_clear_of_each_other(demo_records: ClubRecords, tag: str, days: int) -> None:
    from swardcast.language.catalogue import built_in

    voice = Voice(catalogue=built_in(tag), near=date(2027, 9, 14))
    first = date(2027, 8, 23)
    ticks = day_ticks(first, first + timedelta(days=days), voice)
    assert ticks[0].day == first
    step = (ticks[1].day - first).days if len(ticks) > 1 else days
    assert max(len(tick.words) for tick in ticks) < LETTERS_ON_AXIS * step / days
    assert as_of_mark(first, first + timedelta(days=days), voice) is None or days >= 22


def test_americans_read_the_month_first(demo_records: ClubRecords) -> None:
    from swardcast.language.catalogue import built_in

    voice = Voice(catalogue=built_in("en-US"), near=date(2027, 9, 14))
    assert [tick.words for tick in day_ticks(date(2027, 8, 23), date(2027, 10, 8), voice)][:2] == ["Aug 23", "Sep 6"]


def test_the_weeks_growth_adds_up_to_its_days(pictures_at: Callable[[str], tuple[Bulletin, Pictures]]) -> None:
    _, pictures = pictures_at(NOW)
    assert pictures.growth is not None
    (table,) = pictures.growth.told.tables
    over = [float(growth) for _, growth, _, _ in table.rows[:7]]
    usual = [float(value) for _, _, value, _ in table.rows[:7]]
    said = pictures.growth.told.description
    assert f"{sum(one.growth for one in pictures.growth.days[:7]):.1f} growth days" in said
    assert abs(sum(over) - float(said.split(" brought ")[1].split()[0])) < 0.1
    assert abs(sum(usual) - float(said.split(" bring ")[1].rstrip("."))) < 0.1


def test_no_growth_is_claimed_for_days_without_a_record(
    pictures_at: Callable[[str], tuple[Bulletin, Pictures]],
) -> None:
    """The last day in the demo's observed.csv is 20 September: of the week before the 24th four days have a record."""
    _, partly = pictures_at("2027-09-24 08:00")
    _, not_at_all = pictures_at("2027-12-06 08:00")
    assert partly.growth is not None
    assert not_at_all.growth is not None
    recorded = [one.growth for one in partly.growth.days[:7] if one.is_observed]
    said = partly.growth.told.caption[0]
    assert said.startswith(
        f"No weather was recorded on 3 of the last 7 days. The other 4 brought {sum(recorded):.1f} growth days"
    )
    said = not_at_all.growth.told.caption[0]
    assert said.startswith("No weather was recorded on the last 7 days, so we cannot say what they brought.")
    assert "days brought" not in said
    signs = [[row.sign for row in one.told.key if row.sign in (Sign.GREW, Sign.NOT_RECORDED)]
             for one in (partly.growth, not_at_all.growth)]  # fmt: skip
    assert signs == [[Sign.GREW, Sign.NOT_RECORDED], [Sign.NOT_RECORDED]]
    drawn = draw_growth(not_at_all.growth)
    assert drawn.count("sc-pic__no-record") == 7
    assert "sc-pic__work" not in drawn


def _kept(demo_records: ClubRecords) -> tuple[Kept, ...]:
    book = WeatherBook(demo_records.club, demo_records.weather)
    return track_record(demo_records, DEMO_AS_OF, book)


def test_promises_count_their_days_from_the_likely_one(demo_records: ClubRecords, demo_bulletin: Bulletin) -> None:
    """Read beside the list of the page, which says the days themselves."""
    kept = _kept(demo_records)
    picture = promises_picture(kept, demo_bulletin.voice)
    assert picture is not None
    judged = [one for one in reversed(kept) if one.is_judged]
    assert [bar.title for bar in picture.bars] == [one.job.title for one in judged]
    for bar, one in zip(picture.bars, judged, strict=True):
        assert one.promised.likely is not None
        assert one.promised.likely + timedelta(days=bar.came_days) == one.normal_on
        assert one.promised.likely + timedelta(days=bar.early_days) == one.promised.early
        assert one.promised.likely + timedelta(days=bar.allow_until_days) == one.promised.allow_until
        assert bar.verdict == ("kept" if bar.early_days <= bar.came_days <= bar.allow_until_days else "missed")
        assert picture.first_days <= min(bar.early_days, bar.came_days)
        assert max(bar.allow_until_days, bar.came_days) <= picture.last_days
    inside = sum(bar.verdict == "kept" for bar in picture.bars)
    assert picture.told.description == f"6 jobs are over, and {inside} of them kept their range."


def test_a_long_track_record_shows_its_latest_jobs_and_says_so(
    demo_records: ClubRecords, demo_bulletin: Bulletin
) -> None:
    picture = promises_picture(_kept(demo_records) * 3, demo_bulletin.voice)
    assert picture is not None
    assert len(picture.bars) == 12
    assert "These are the latest 12." in " ".join(picture.told.caption)


def test_before_a_job_can_be_judged_there_is_no_picture(demo_bulletin: Bulletin) -> None:
    assert promises_picture((), demo_bulletin.voice) is None


def test_a_picture_of_work_to_come_says_that_it_rests_on_past_years(
    pictures_at: Callable[[str], tuple[Bulletin, Pictures]],
) -> None:
    _, pictures = pictures_at(NOW)
    coming: HealingPicture = pictures.healing["greens-light-sanding-2027"]
    assert "past years" in " ".join(coming.told.caption)
    assert "past years" not in " ".join(pictures.healing["greens-renovation-2027"].told.caption)
    assert [level.words for level in coming.levels] == ["Most putts roll true", "Sand worked in"]
