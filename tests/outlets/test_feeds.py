"""Which feeds there are, which items they carry, and how archives keep the rest (RFC 5005, Feed Paging and Archiving)."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.kept_file import KeptFile
from swardcast.notices.as_told import NoticesAsTold
from swardcast.notices.bulletins import FeedItem
from swardcast.outlets.calendar import calendar_artifact
from swardcast.outlets.feed_content import in_full, in_short
from swardcast.outlets.feed_files import written_again
from swardcast.outlets.feeds import FeedPage, feed_pages, feeds_of, guid_of
from swardcast.outlook.weather_book import WeatherBook
from swardcast.reading.folder import read_club_folder
from swardcast.records.club import SurfaceKind
from swardcast.records.folder import ClubRecords
from tests.outlets.feeds_made import files_of, pages_of, with_items
from tests.outlook.small_club import SmallClub, moment

At = Callable[[str], Bulletin]
LONDON = ZoneInfo("Europe/London")
ENDINGS = ("rss", "atom", "json")


def _told(bulletin: Bulletin) -> NoticesAsTold:
    return NoticesAsTold(bulletin.records, bulletin.stories)


def _item(bulletin: Bulletin, end: str) -> FeedItem:
    (item,) = (item for item in bulletin.items if item.id.endswith(end))
    return item


def _feeds_with(bulletin: Bulletin, end: str) -> list[str]:
    return [feed.name for feed in feeds_of(bulletin) if feed.has(_item(bulletin, end))]


def test_there_is_a_feed_for_the_course_and_one_for_each_kind_of_surface_that_the_club_has(
    demo_bulletin: Bulletin,
) -> None:
    """The demo's surfaces.yaml has neither approaches, roughs nor practice grounds."""
    names = ["status", "greens", "tees", "fairways", "bunkers"]
    assert [feed.name for feed in feeds_of(demo_bulletin)] == names
    assert {f"feeds/{name}.{ending}" for name in names for ending in ENDINGS} <= files_of(
        pages_of(demo_bulletin)
    ).keys()


@pytest.mark.parametrize(
    ("end", "names"),
    [
        pytest.param("2027-09-13-0830-bunker-11-started", ["status", "bunkers"], id="work on a bunker"),
        pytest.param("2027-09-10-0640-morning", ["status", "tees"], id="a tee closed this morning"),
        pytest.param("2027-09-09-0640-morning", ["status", "bunkers"], id="bunkers opened this morning"),
        pytest.param("2027-09-13-1610-practice-green-normal", ["status", "greens"], id="the practice green"),
        pytest.param(
            "2027-09-13-0640-morning",
            ["status", "greens", "tees", "fairways", "bunkers"],
            id="preferred lies, which concern everybody",
        ),
        pytest.param(
            "2027-05-10-0900-programme",
            ["status", "greens", "tees", "fairways", "bunkers"],
            id="a note to all members",
        ),
    ],
)
def test_an_item_belongs_to_the_kinds_of_surface_that_it_speaks_of(
    demo_bulletin: Bulletin, end: str, names: list[str]
) -> None:
    assert _feeds_with(demo_bulletin, end) == names


def test_of_a_job_on_two_kinds_each_hears_of_its_own_work_and_both_of_the_plan(club: Path) -> None:
    plan = club / "plan" / "2027-early-summer.yaml"
    text = plan.read_text(encoding="utf-8")
    plan.write_text(text.replace("surfaces: tees 1-18", "surfaces: tees 1-18 and fairway 3"), encoding="utf-8")
    (club / "log" / "2027" / "2027-06-09-0900-tees-normal.md").unlink()  # of the fairway nobody says that it is done
    bulletin = compose_bulletin(read_club_folder(club), datetime(2027, 5, 12, 9, tzinfo=LONDON))
    assert _feeds_with(bulletin, "tees-solid-tining-2027/announced") == ["status", "tees", "fairways"]
    assert _feeds_with(bulletin, "2027-05-11-1500-tees-spiked") == ["status", "tees"]


def test_an_item_has_the_guid_that_feeds_have_carried_since_the_first(demo_bulletin: Bulletin) -> None:
    """A tag URI (RFC 4151): "tag:" authority "," date ":" specific."""
    item = _item(demo_bulletin, "2027-09-13-0830-bunker-11-started")
    guid = "tag:quillhaven.example,2027-09-13:bunkers-resanding-2027/2027-09-13-0830-bunker-11-started"
    assert guid_of(item, "https://quillhaven.example") == guid
    for ending in ENDINGS:
        assert guid in files_of(pages_of(demo_bulletin))[f"feeds/status.{ending}"].data.decode()


def test_clubs_in_folders_of_one_host_have_names_of_their_own(demo_bulletin: Bulletin) -> None:
    item = _item(demo_bulletin, "bunker-11-started")
    one, other = (guid_of(item, f"https://clubs.example/{folder}") for folder in ("a", "b"))
    assert one == "tag:clubs.example,2027-09-13:a/bunkers-resanding-2027/2027-09-13-0830-bunker-11-started"
    assert other == one.replace(":a/", ":b/")


def test_an_item_carries_the_notice_as_it_stood_when_it_was_told(demo_bulletin_at: At, demo_bulletin: Bulletin) -> None:
    for end in ("2027-08-23-1140-greens-1-to-3-done", "2027-08-25-0710-held-up-by-rain", "-2027/announced"):
        item = next(item for item in demo_bulletin.items if item.id.endswith(end))
        then = demo_bulletin_at(f"{item.at:%Y-%m-%d %H:%M}")
        assert [_told(demo_bulletin).of(item)] == [one for one in then.notices if one.id == item.notice_id]


def test_a_change_too_small_to_tell_alters_no_item(demo_bulletin_at: At, demo_bulletin: Bulletin) -> None:
    earlier = demo_bulletin_at("2027-09-01 08:00")
    told_then, told_now = _told(earlier), _told(demo_bulletin)
    assert len(earlier.items) > 50
    for item in earlier.items:
        assert in_full(item, earlier, told_then) == in_full(item, demo_bulletin, told_now)
        assert in_short(item, earlier) == in_short(item, demo_bulletin)


def test_an_item_links_to_how_it_stands_now_and_its_addresses_are_absolute(demo_bulletin: Bulletin) -> None:
    for item in demo_bulletin.items[:30]:
        links = re.findall(r'(?:href|src)="([^"]*)"', in_full(item, demo_bulletin, _told(demo_bulletin)))
        page = (
            f"https://quillhaven.example/notices/{item.notice_id}/" if item.notice_id else "https://quillhaven.example/"
        )
        assert links[0] == page
        assert [link for link in links if not re.match(r"https://|mailto:|tel:", link)] == []


def test_a_note_that_was_withdrawn_is_updated_and_loses_its_words(club: Path) -> None:
    (club / "log" / "2027" / "2027-05-12-0800-not-so.md").write_text(
        "---\nat: 2027-05-12 08:00\nkind: correction\ncorrects: 2027-05-10-0900-programme\n---\n", encoding="utf-8"
    )
    bulletin = compose_bulletin(read_club_folder(club), datetime(2027, 5, 12, 9, tzinfo=LONDON))
    (entry,) = (one for one in pages_of(bulletin)[0].entries if one.id.endswith("2027-05-10-0900-programme"))
    assert entry.published == datetime(2027, 5, 10, 9, tzinfo=LONDON)
    assert entry.updated == datetime(2027, 5, 12, 8, tzinfo=LONDON)
    assert "late summer" not in in_full(_item(bulletin, "2027-05-10-0900-programme"), bulletin, _told(bulletin))


def test_a_note_on_a_job_that_was_withdrawn_loses_its_words_wherever_the_feed_has_them(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "05-10")
    club.log("note", "05-02", "note to members", "job: spring")
    note = tmp_path / "log/2027/note.md"
    note.write_text(note.read_text(encoding="utf-8") + "The SECRET words.\n", encoding="utf-8")
    club.log("moved", "05-02", "change of plan", "job: spring", "change: postponed to", "starts: 2027-05-17",
             "because: rain", time="12:00")  # fmt: skip
    told = compose_bulletin(club.records(), moment("05-02"))
    assert ["SECRET" in in_full(item, told, _told(told)) for item in told.items] == [True, True, False]
    club.log("not-so", "05-03", "correction", "corrects: note")
    withdrawn = compose_bulletin(club.records(), moment("05-03"))
    assert [item.id for item in withdrawn.items] == ["spring/not-so", "spring/moved", "spring/note", "spring/announced"]
    assert not any("SECRET" in in_full(item, withdrawn, _told(withdrawn)) for item in withdrawn.items)
    entries = {entry.id.split("/")[-1]: entry for entry in pages_of(withdrawn)[0].entries}
    assert (entries["note"].published, entries["note"].updated) == (moment("05-02", "10:00"), moment("05-03", "10:00"))
    assert entries["note"].summary.startswith("This note was withdrawn.")
    assert in_full(_item(withdrawn, "/announced"), withdrawn, _told(withdrawn)) == in_full(
        _item(told, "/announced"), told, _told(told)
    )
    (event,) = (one for one in withdrawn.notices[0].events if one.source == "note")
    assert (event.withdrawn, event.markdown) == (True, "The SECRET words.")  # the page crosses it out


def test_a_site_that_has_moved_keeps_the_ids_of_its_news_and_events(tmp_path: Path) -> None:
    """Readers and calendar programs would otherwise have everything twice."""
    club = SmallClub(tmp_path)
    club.job("spring", "05-10")
    before = compose_bulletin(club.records(), moment("05-01"))
    file = tmp_path / "club.yaml"
    text = file.read_text(encoding="utf-8")
    moved = "site: https://moved.example/golf\nfirst address: https://saltmarsh-ladder.example"
    file.write_text(text.replace("site: https://saltmarsh-ladder.example", moved), encoding="utf-8")
    after = compose_bulletin(club.records(), moment("05-01"))
    old, new = pages_of(before)[0], pages_of(after)[0]
    assert [entry.id for entry in new.entries] == [entry.id for entry in old.entries]
    assert [entry.link for entry in new.entries] == ["https://moved.example/golf/notices/spring/"]
    calendars = [calendar_artifact(one).data.decode() for one in (before, after)]
    events = [re.findall(r"^UID:(.*)\r$", one, re.MULTILINE) for one in calendars]
    assert events[0] == events[1] != []
    documents = [files_of([page])["feeds/status.atom"].data.decode() for page in (old, new)]
    ids = [re.findall(r"<id>(.*?)</id>", one) for one in documents]
    assert ids[0] == ids[1] != []
    assert 'href="https://moved.example/golf/feeds/status.atom" rel="self"' in documents[1]


@pytest.mark.parametrize("count", [0, 1, 50, 51, 74, 75, 99, 100, 149, 150, 240])
def test_the_newest_50_stand_in_the_current_document_and_archives_hold_all_the_rest(
    demo_bulletin: Bulletin, count: int
) -> None:
    current, *archives = _pages(with_items(demo_bulletin, count), "status")
    for number, page in enumerate(archives):
        assert (page.number, _numbers(page)) == (number + 1, list(reversed(range(25 * number, 25 * number + 25))))
    told = [number for page in (*archives, current) for number in reversed(_numbers(page))]
    assert told == list(range(count))  # each once
    assert min(count, 50) <= len(current.entries) < 75


@pytest.mark.parametrize(
    ("days", "in_full", "current", "archives"),
    [
        # 100 items; those not older than 365 days, and 10 at the least, leave whole archives of 25 to the rest.
        pytest.param(30, 13, 25, 3, id="one a month: 12 months of 30 days are 360 days"),
        pytest.param(365, 10, 25, 3, id="one a year: 10 at the least"),
        pytest.param(6, 61, 50, 2, id="one in 6 days: 60 times 6 days are 360 days, of which 50 are enough"),
        pytest.param(10, 37, 50, 2, id="one in 10 days: 36 times 10 days are 360 days, and 63 hold two archives"),
    ],
)
def test_a_feed_holds_its_last_year_and_leaves_older_items_to_archives(
    demo_bulletin: Bulletin, days: int, in_full: int, current: int, archives: int
) -> None:
    bulletin = with_items(demo_bulletin, 100, apart=timedelta(days=days))
    page, *others = (one for one in feed_pages(bulletin, lambda _: "whole", lambda _: "short") if one.feed.kind is None)
    assert (len(page.entries), len(others)) == (current, archives)
    assert [entry.html for entry in page.entries] == ["whole" if n < in_full else "short" for n in range(current)]
    assert {entry.html for one in others for entry in one.entries} == {"short"}


def test_a_feed_forgets_nothing_when_nothing_is_told_in_it(demo_bulletin: Bulletin) -> None:
    """Its year ends with its newest item, so that years of silence change no byte."""
    bulletin = with_items(demo_bulletin, 100, apart=timedelta(days=30))
    later = replace(bulletin, as_of=bulletin.as_of.replace(year=2040))
    assert files_of(pages_of(bulletin)) == files_of(pages_of(later))


@pytest.mark.parametrize("behind", [1, 2, 25, 49])
def test_an_entry_dated_back_among_the_newest_50_changes_no_archive(demo_bulletin: Bulletin, behind: int) -> None:
    for count in (75, 76, 99):
        before = with_items(demo_bulletin, count)
        newest, older = before.items[:behind], before.items[behind:]
        late = replace(older[0], id="late", at=older[0].at + timedelta(minutes=30))
        after = replace(before, items=(*newest, late, *older))
        (_, *archives), (_, *later) = _pages(before, "status"), _pages(after, "status")
        assert [page.entries for page in archives] == [page.entries for page in later][: len(archives)] != []


@pytest.mark.parametrize("ending", ENDINGS)
def test_documents_are_tied_together_in_both_directions(demo_bulletin: Bulletin, ending: str) -> None:
    """Section 4: prev-archive in the current document and archives, next-archive and current in archives."""
    current, first, second = _pages(with_items(demo_bulletin, 100), "status")
    at = "https://quillhaven.example/feeds/status"
    assert current.links(ending) == {"self": f"{at}.{ending}", "prev-archive": f"{at}/2.{ending}"}
    assert second.links(ending) == {
        "self": f"{at}/2.{ending}",
        "prev-archive": f"{at}/1.{ending}",
        "current": f"{at}.{ending}",
    }
    assert first.links(ending) == {
        "self": f"{at}/1.{ending}",
        "next-archive": f"{at}/2.{ending}",
        "current": f"{at}.{ending}",
    }


def test_an_archive_changes_by_nothing_but_the_link_to_the_next(demo_bulletin: Bulletin) -> None:
    """Section 4: its address and the set of its entries should not change."""
    young, old = (files_of(_pages(with_items(demo_bulletin, count), "status")) for count in (75, 240))
    for ending in ENDINGS:
        before, after = (files[f"feeds/status/1.{ending}"].data.decode().splitlines() for files in (young, old))
        assert [line for line in after if "next-archive" not in line] == before
        assert len(after) == len(before) + (ending != "json")


def test_an_archive_is_written_again_where_anything_in_it_is_another(
    demo_bulletin: Bulletin, demo_records: ClubRecords, tmp_path: Path
) -> None:
    """And by the same mark it is the one that was kept."""
    _, archive, *_ = _pages(with_items(demo_bulletin, 100), "status")
    book = WeatherBook(demo_records.club, demo_records.weather)
    written = []

    def write(page: FeedPage) -> bytes:
        written.append(page)
        return repr(page).encode()

    def build(page: FeedPage) -> bytes:
        kept = KeptFile(tmp_path / "club.kept", demo_records, book)
        found = written_again(page, "rss", write, kept.recall)
        kept.write()
        return found

    assert [build(archive), build(archive)] == [repr(archive).encode()] * 2
    assert len(written) == 1
    entry = archive.entries[3]
    edits: dict[str, Any] = dict.fromkeys(("id", "title", "link", "category", "summary", "html"), "another")
    edits |= dict.fromkeys(("published", "updated"), entry.updated + timedelta(hours=1))
    others = [replace(entry, **{name: value}) for name, value in edits.items()]
    pages = [replace(archive, entries=(*archive.entries[:3], one, *archive.entries[4:])) for one in others]
    pages += [replace(archive, archives=archive.archives + 1), replace(archive, language="nb")]
    assert [build(page) for page in pages] == [repr(page).encode() for page in pages]


def test_a_feed_has_no_byte_of_the_builds_moment(demo_bulletin: Bulletin) -> None:
    later = replace(demo_bulletin, as_of=demo_bulletin.as_of.replace(hour=23, minute=59))
    assert files_of(pages_of(demo_bulletin)) == files_of(pages_of(later))


def test_a_feed_without_an_item_is_a_feed_all_the_same(demo_bulletin: Bulletin) -> None:
    bulletin = replace(
        demo_bulletin, items=tuple(one for one in demo_bulletin.items if one.kinds == {SurfaceKind.GREEN})
    )
    (page,) = _pages(bulletin, "tees")
    begin = demo_bulletin.items[-1].at  # when the plan was announced: a moment of the records, not of the build
    assert (page.entries, page.updated) == ((), min(begin, bulletin.items[-1].at, bulletin.records.entries[0].head.at))
    assert len(files_of([page])) == 3


def test_a_feed_without_an_item_has_no_byte_of_the_builds_moment(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    first, later = (compose_bulletin(club.records(), moment("05-01", time)) for time in ("08:00", "09:00"))
    assert first.items == later.items == ()
    assert files_of(pages_of(first)) == files_of(pages_of(later))


def _pages(bulletin: Bulletin, name: str) -> list[FeedPage]:
    return [page for page in pages_of(bulletin) if page.feed.name == name]


def _numbers(page: FeedPage) -> list[int]:
    return [int(entry.id.split(":")[-1]) for entry in page.entries]
