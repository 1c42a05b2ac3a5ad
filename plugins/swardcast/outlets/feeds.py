"""What the feeds share, whatever their format: which there are, their items, ids, titles, content and archives.

There is a feed for the whole course and one for each kind of surface that the club has. The items of a year stand in
the current document, counted back from the feed's newest one, so that a feed changes only when something is told in it;
10 at the least, 74 at the most. Older ones stand in archives of 25 that begin with the oldest item, so that an archive,
once it is there, keeps its address and its items (RFC 5005, section 4); all that changes in it is the link to the next
one. Up to 24 older items wait in the current document until they fill an archive.
Readers tell a new item from an old one by its id. Each change is therefore an item of its own, and an item is never
rewritten: it carries the notice as it stood then, and leaves it out once it is older than that year. Only a note that
was withdrawn loses its words.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cache
from typing import Final
from urllib.parse import urlsplit

from swardcast.compose import Bulletin
from swardcast.notices.bulletins import FeedItem
from swardcast.records.club import Club, SurfaceKind

__all__ = ["WHOLE_COURSE", "Feed", "FeedEntry", "FeedPage", "feed_pages", "feeds_of", "guid_of"]

WHOLE_COURSE: Final = "status"
"""Name of the feed of the whole course."""
_CURRENT: Final = timedelta(days=365)  # before the newest item; judgement: work that is done once a year is there
_LEAST_CURRENT: Final = 10  # items, where there are so many; judgement: what a reader shows of a new feed at a glance
_MOST_AT_ONCE: Final = 50  # items, and those that do not fill an archive yet; judgement: a season of most clubs
_ITEMS_IN_AN_ARCHIVE: Final = 25  # few, since so many more may stand in the current document; judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class Feed:
    """One feed, in all of its formats.

    Args:
        name: its name in addresses: "status", "greens".
        about: what it is about, in words: "The whole course", "Greens".
        title: its title in a list of feeds.
        description: what it brings, in a sentence.
        kind: the kind of surface, or None for the whole course.
    """

    name: str
    about: str
    title: str
    description: str
    kind: SurfaceKind | None

    def has(self, item: FeedItem) -> bool:
        """Whether an item belongs to it; what speaks of the whole course belongs to every feed."""
        return self.kind is None or not item.kinds or self.kind in item.kinds


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedEntry:
    """An item as every format carries it.

    Args:
        id: its name for life, a tag URI.
        title: what changed, in a line.
        link: absolute address of what it is about.
        published: when it became known, local time.
        updated: when it last changed: when it became known, or when it was withdrawn.
        category: the main kind of work, or "course status", in words.
        summary: what changed, in full, as plain text.
        html: its content.
    """

    id: str
    title: str
    link: str
    published: datetime
    updated: datetime
    category: str
    summary: str
    html: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedPage:
    """One document of a feed: the current one or an archive.

    Args:
        feed: the feed.
        site: the site's address, without a slash at its end.
        named_by: the address that names it for life, without a slash at its end.
        author: the club's name.
        language: IETF language tag.
        number: 1 for the oldest archive, 2 for the next ..., or None for the current document.
        archives: how many archives there are.
        updated: when the latest of its entries changed.
        entries: newest first.
    """

    feed: Feed
    site: str
    named_by: str
    author: str
    language: str
    number: int | None
    archives: int
    updated: datetime
    entries: tuple[FeedEntry, ...]

    def path(self, ending: str) -> str:
        """Name its file: "feeds/status.rss", "feeds/status/1.rss".

        Args:
            ending: the format's, such as "rss".

        Returns:
            The path inside the site.
        """
        return _path(self.feed, self.number, ending)

    def links(self, ending: str) -> dict[str, str]:
        """Tie the documents of a feed together.

        Args:
            ending: the format's, such as "rss".

        Returns:
            Absolute addresses by link relation: `self` (RFC 4287), `prev-archive`, `next-archive` and `current`
            (RFC 5005, section 4), those that there are.
        """
        number = self.archives + 1 if self.number is None else self.number
        others = {"prev-archive": number - 1, "next-archive": number + 1}
        links: dict[str, int | None] = {"self": self.number}
        links |= {relation: other for relation, other in others.items() if 1 <= other <= self.archives}
        if self.number is not None:
            links["current"] = None
        return {relation: f"{self.site}/{_path(self.feed, other, ending)}" for relation, other in links.items()}


def _path(feed: Feed, number: int | None, ending: str) -> str:
    return f"feeds/{feed.name}.{ending}" if number is None else f"feeds/{feed.name}/{number}.{ending}"


def guid_of(item: FeedItem, site: str) -> str:
    """Name an item for life, as a tag URI (RFC 4151) of the club's site.

    Args:
        item: the item.
        site: the address by which the club's items are named.

    Returns:
        "tag:quillhaven.example,2027-08-23:greens/2027-08-23-1540-done"; a site's folder on its host stands before the
        item's id, since another club may have the next folder.
    """
    parts = urlsplit(site)
    folder = f"{parts.path.strip('/')}/".lstrip("/")
    return f"tag:{parts.hostname},{item.at.date().isoformat()}:{folder}{item.id}"


def feeds_of(bulletin: Bulletin) -> tuple[Feed, ...]:
    """Tell which feeds there are.

    Args:
        bulletin: the bulletin.

    Returns:
        The whole course first, then each kind of surface that the club has.
    """
    voice, club = bulletin.voice, bulletin.club.name
    whole = Feed(
        name=WHOLE_COURSE,
        about=voice.say("site-feed-whole"),
        title=voice.say("site-feed", club=club),
        description=voice.say("site-feed-description", club=club),
        kind=None,
    )
    there = {surface.kind for surface in bulletin.records.surfaces.values()}
    return (whole, *(_feed_of(kind, bulletin) for kind in SurfaceKind if kind in there))


def _feed_of(kind: SurfaceKind, bulletin: Bulletin) -> Feed:
    voice, club = bulletin.voice, bulletin.club.name
    about = voice.name("site-surface", kind)
    return Feed(
        name=kind.plural.replace(" ", "-"),
        about=about,
        title=voice.say("site-feed-surfaces", club=club, surfaces=about),
        description=voice.say("site-feed-surfaces-description", club=club, surfaces=about),
        kind=kind,
    )


def feed_pages(
    bulletin: Bulletin, in_full: Callable[[FeedItem], str], in_short: Callable[[FeedItem], str]
) -> tuple[FeedPage, ...]:
    """Share the bulletin's items out among feeds and their documents.

    Args:
        bulletin: the bulletin.
        in_full: gives the HTML of an item of a feed's last year.
        in_short: gives the HTML of an older one, without the notice.

    Returns:
        All documents, each feed's current one before its archives.
    """
    club, items = bulletin.club, bulletin.items

    @cache
    def in_the_year(number: int) -> FeedEntry:
        return _entry(items[number], club, in_full)

    @cache
    def older(number: int) -> FeedEntry:
        return _entry(items[number], club, in_short)

    pages = []
    for feed in feeds_of(bulletin):
        mine = [number for number, item in enumerate(items) if feed.has(item)]
        year = _of_the_year([items[number] for number in mine])
        archives = list(_archives(mine, year))
        newest = mine[: len(mine) - _ITEMS_IN_AN_ARCHIVE * len(archives)]
        entries = [*(in_the_year(number) for number in newest[:year]), *(older(number) for number in newest[year:])]
        pages.append(_page(feed, None, len(archives), entries, bulletin))
        for number, held in enumerate(archives, start=1):
            pages.append(_page(feed, number, len(archives), [older(one) for one in held], bulletin))
    return tuple(pages)


def _of_the_year(newest_first: Sequence[FeedItem]) -> int:
    """How many of a feed's items are current by their age."""
    recent = sum(newest_first[0].at - item.at <= _CURRENT for item in newest_first)
    return min(max(recent, _LEAST_CURRENT), len(newest_first))


def _archives(newest_first: Sequence[int], year: int) -> Iterator[Sequence[int]]:
    """Full ones only, behind the year or the newest items, so that an entry dated back among those shifts none."""
    size, count = _ITEMS_IN_AN_ARCHIVE, len(newest_first)
    for end in range(size, count - min(year, _MOST_AT_ONCE) + 1, size):
        yield newest_first[count - end : count - end + size]


def _entry(item: FeedItem, club: Club, content_of: Callable[[FeedItem], str]) -> FeedEntry:
    return FeedEntry(
        id=guid_of(item, club.named_by),
        title=item.title,
        link=f"{club.site}/notices/{item.notice_id}/" if item.notice_id else f"{club.site}/",
        published=item.at,
        updated=item.withdrawn_at or item.at,
        category=item.category,
        summary=" ".join(item.sentences),
        html=content_of(item),
    )


def _begin(bulletin: Bulletin) -> datetime:
    """As long as nothing was told in it, a feed stands as it was when the records began; before those, at no moment."""
    known = [*(item.at for item in bulletin.items), *(entry.head.at for entry in bulletin.records.entries)]
    return min(known, default=datetime.fromtimestamp(0, bulletin.club.time_zone))


def _page(feed: Feed, number: int | None, archives: int, entries: Sequence[FeedEntry], bulletin: Bulletin) -> FeedPage:
    club = bulletin.club
    return FeedPage(
        feed=feed,
        site=club.site,
        named_by=club.named_by,
        author=club.name,
        language=club.language,
        number=number,
        archives=archives,
        updated=max(entry.updated for entry in entries) if entries else _begin(bulletin),
        entries=tuple(entries),
    )
