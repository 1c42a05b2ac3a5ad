"""A notice, a feed item or the course status as a piece of HTML that any theme or reader can show."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from markupsafe import Markup

from swardcast.language.voice import Voice
from swardcast.notices.archive import ArchiveYear
from swardcast.notices.bulletins import FeedItem
from swardcast.notices.notice import Notice
from swardcast.notices.record_years import RecordYear, TrackRecord
from swardcast.notices.season import Season
from swardcast.notices.status import CourseStatus
from swardcast.notices.sums import JobSums
from swardcast.notices.track_record import Comparisons
from swardcast.notices.why import WhyPage
from swardcast.notices.withdrawn import WithdrawnNotice
from swardcast.outlets.feeds import Feed
from swardcast.outlets.rendering import rendered
from swardcast.records.club import Contact
from swardcast.records.weather import WeatherSource

__all__ = [
    "NO_PICTURE",
    "archive_html",
    "archive_year_html",
    "contact_html",
    "feeds_html",
    "item_html",
    "missing_html",
    "notice_html",
    "published_html",
    "record_year_html",
    "season_months_html",
    "status_html",
    "sums_html",
    "track_record_html",
    "why_html",
    "why_index_html",
    "withdrawn_html",
]


NO_PICTURE: Final = Markup()
"""Where a page has none; those that draw give HTML that is safe, so that nothing here has to call it so."""


def notice_html(notice: Notice, voice: Voice, root: str, picture: Markup = NO_PICTURE) -> str:
    """Render a notice's body.

    Args:
        notice: the notice.
        voice: the language and the day of the reader.
        root: address of the site's first page, ending with a slash; "../../" from a notice's own page.
        picture: its picture, shown after why the work is done, or none; what a notice says elsewhere has none.

    Returns:
        HTML from the short answer on, without the headline; every text is escaped.
    """
    return rendered("notice.html", voice, notice=notice, root=root, picture=picture)


def withdrawn_html(notice: WithdrawnNotice, voice: Voice, root: str) -> str:
    """Render what stays of a notice that was withdrawn.

    Args:
        notice: the notice.
        voice: the language and the day of the reader.
        root: address of the site's first page, ending with a slash.

    Returns:
        HTML without the headline; every text is escaped.
    """
    return rendered("withdrawn.html", voice, notice=notice, root=root)


def why_html(page: WhyPage, voice: Voice, root: str) -> str:
    """Render a page "Why we do this".

    Args:
        page: the page.
        voice: the language and the day of the reader.
        root: address of the site's first page, ending with a slash.

    Returns:
        HTML without the title; every text is escaped.
    """
    return rendered("why.html", voice, page=page, root=root)


def why_index_html(pages: Sequence[WhyPage], voice: Voice, root: str) -> str:
    """Render the list of the pages "Why we do this", the club's own kinds of work first.

    Args:
        pages: the pages.
        voice: the language and the day of the reader.
        root: address of the site's first page, ending with a slash.

    Returns:
        HTML without the title; every text is escaped.
    """
    ours = [page for page in pages if page.jobs]
    others = voice.say("why-index-others" if ours else "why-index-all")
    groups = [(voice.say("why-index-ours"), ours), (others, [page for page in pages if not page.jobs])]
    return rendered("why_index.html", voice, groups=groups, root=root)


def season_months_html(
    season: Season, voice: Voice, root: str, picture: Markup = NO_PICTURE, *, has_archive: bool = False
) -> str:
    """Render what is planned when, month by month.

    Args:
        season: the season.
        voice: the language and the day of the reader.
        root: address of the site's first page, ending with a slash.
        picture: its picture, or none.
        has_archive: whether the archive has any notice to lead to.

    Returns:
        HTML without the title; every text is escaped.
    """
    return rendered("season.html", voice, season=season, root=root, picture=picture, has_archive=has_archive)


def archive_html(years: Sequence[ArchiveYear], voice: Voice, root: str) -> str:
    """Render the list of years that have notices.

    Args:
        years: the years, the latest first.
        voice: the language and the day of the reader.
        root: address of the site's first page, ending with a slash.

    Returns:
        HTML without the title; every text is escaped.
    """
    return rendered("archive.html", voice, years=years, root=root)


def archive_year_html(year: ArchiveYear, voice: Voice, root: str, *, has_record: bool = False) -> str:
    """Render the notices of a year, the latest first.

    Args:
        year: the year.
        voice: the language and the day of the reader.
        root: address of the site's first page, ending with a slash.
        has_record: whether a page tells what came of that year's dates.

    Returns:
        HTML without the title; every text is escaped.
    """
    return rendered("archive_year.html", voice, year=year, root=root, has_record=has_record)


def item_html(item: FeedItem, body: str, voice: Voice, root: str) -> str:
    """Render a feed item: what changed, a link to how it stands now, then the whole notice as it stood.

    Args:
        item: the item.
        body: the notice's HTML, or "".
        voice: the language.
        root: absolute address of the site's first page, ending with a slash: an item is read elsewhere.

    Returns:
        HTML; every text of the item is escaped.
    """
    told = Markup(body)  # noqa: S704 - made above
    return rendered("item.html", voice, item=item, body=told, root=root)


def feeds_html(feeds: Sequence[Feed], voice: Voice, root: str) -> str:
    """Render the list of feeds, each with a link for each format.

    Args:
        feeds: the feeds.
        voice: the language.
        root: address of the site's first page, ending with a slash.

    Returns:
        HTML; every text is escaped.
    """
    return rendered("feeds.html", voice, feeds=feeds, root=root)


def missing_html(voice: Voice, root: str, *, has_archive: bool) -> str:
    """Render what a reader finds at an address that is not there.

    Args:
        voice: the language.
        root: address of the site's first page from the root of its host, ending with a slash: whatever the address
            that was asked for, its depth is not known.
        has_archive: whether the archive has any notice to lead to.

    Returns:
        HTML without the title; every text is escaped.
    """
    return rendered("missing.html", voice, root=root, has_archive=has_archive)


def sums_html(sums: Sequence[JobSums], voice: Voice) -> str:
    """Render the sums of everything that is healing.

    Args:
        sums: a table for each job.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return rendered("sums.html", voice, sums=sums)


def published_html(published: Comparisons, voice: Voice) -> str:
    """Render the published recoveries beside what is computed for them.

    Args:
        published: sentences and lines.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return rendered("published.html", voice, published=published)


def track_record_html(record: TrackRecord, root: str, voice: Voice, picture: Markup = NO_PICTURE) -> str:
    """Render the club's own promises and what came of them.

    Args:
        record: sentences and years.
        root: address of the site's first page, ending with a slash.
        voice: the language and the day of the reader.
        picture: its picture, or none.

    Returns:
        HTML; every text is escaped.
    """
    return rendered("track_record.html", voice, record=record, root=root, picture=picture)


def record_year_html(year: RecordYear, voice: Voice, root: str) -> str:
    """Render what came of the dates of a year that stands on a page of its own.

    Args:
        year: the year.
        voice: the language and the day of the reader.
        root: address of the site's first page, ending with a slash.

    Returns:
        HTML without the title; every text is escaped.
    """
    return rendered("record_year.html", voice, year=year, root=root)


def contact_html(contact: Contact, voice: Voice) -> str:
    """Render whom to ask and how, for a page of the site's own.

    Args:
        contact: the club's office.
        voice: the language and the day of the reader.

    Returns:
        A sentence with an address and a number to press; every text is escaped.
    """
    return rendered("contact.html", voice, contact=contact)


def status_html(status: CourseStatus, voice: Voice, sources: Sequence[WeatherSource] = ()) -> str:
    """Render the course status, for themes that have no template of their own for it.

    Args:
        status: the course status.
        voice: the language and the day of the reader.
        sources: services of which weather is used.

    Returns:
        HTML; every text is escaped.
    """
    return rendered("status.html", voice, status=status, sources=sources)
