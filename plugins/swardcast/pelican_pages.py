"""The pages that the plugin makes itself: the course status, why we do this, the archive, withdrawn notices."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from markupsafe import escape
from pelican.contents import Page
from pelican.generators import PagesGenerator

from swardcast.compose import Bulletin
from swardcast.notices.archive import compose_archive
from swardcast.outlets.html import (
    archive_html,
    archive_year_html,
    missing_html,
    record_year_html,
    status_html,
    why_html,
    why_index_html,
    withdrawn_html,
)
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.structured_data import script_text, withdrawn_data
from swardcast.pelican_files import MISSING_PAGE

__all__ = [
    "add_archive_pages",
    "add_missing_page",
    "add_status_page",
    "add_why_pages",
    "add_withdrawn_pages",
    "root_of",
]


def add_status_page(generator: PagesGenerator) -> None:
    """Put the course status first."""
    bulletin: Bulletin = generator.context["bulletin"]
    said = bulletin.status.sentence
    page = _page(generator, "", bulletin.voice.say("site-status"), said, slug="course-status", template="status")
    page._content = status_html(bulletin.status, bulletin.voice, bulletin.weather_sources)
    generator.pages.insert(0, page)


def add_why_pages(generator: PagesGenerator) -> None:
    """Add a page for each kind of work, and their list."""
    bulletin: Bulletin = generator.context["bulletin"]
    voice = bulletin.voice
    index = _page(generator, "why", voice.say("why-index-title"), voice.say("why-index-lead"))
    index._content = why_index_html(bulletin.why, voice, root_of(generator.settings, index.save_as))
    generator.pages.append(index)
    for why in bulletin.why:
        page = _page(generator, f"why/{why.slug}", why.title, why.summary)
        page._content = why_html(why, voice, root_of(generator.settings, page.save_as))
        generator.pages.append(page)


def add_archive_pages(generator: PagesGenerator) -> None:
    """Add a page for each year that has notices, their list, and what came of the dates of earlier years."""
    bulletin: Bulletin = generator.context["bulletin"]
    voice = bulletin.voice
    years = compose_archive(bulletin.notices, bulletin.outlook.jobs, voice)
    index = _page(generator, "archive", voice.say("archive-title"), voice.say("archive-summary"))
    index._content = archive_html(years, voice, root_of(generator.settings, index.save_as))
    generator.pages.append(index)
    apart = {record.year for record in bulletin.track_record.apart}
    for year in years:
        title = voice.say("archive-year-title", year=str(year.year))
        summary = voice.say("archive-year-summary", year=str(year.year), count=year.count)
        page = _page(generator, f"archive/{year.year}", title, summary)
        root, has_record = root_of(generator.settings, page.save_as), year.year in apart
        page._content = archive_year_html(year, voice, root, has_record=has_record)
        generator.pages.append(page)
    for record in bulletin.track_record.apart:
        title = voice.say("record-year-title", year=str(record.year))
        summary = voice.say("record-year-summary", year=str(record.year), count=len(record.lines))
        page = _page(generator, f"archive/{record.year}/dates", title, summary)
        page._content = record_year_html(record, voice, root_of(generator.settings, page.save_as))
        generator.pages.append(page)


def add_withdrawn_pages(generator: PagesGenerator) -> None:
    """Add what is left of withdrawn notices: each keeps its address, but stands in no list, as an article would."""
    bulletin: Bulletin = generator.context["bulletin"]
    graph: OpenGraph = generator.context["swardcast_graph"]
    for notice in bulletin.withdrawn:
        page = _page(generator, f"notices/{notice.id}", notice.headline, notice.short_answer, robots="noindex")
        page._content = withdrawn_html(notice, bulletin.voice, root_of(generator.settings, page.save_as))
        page.swardcast_graph = graph.of_notice(notice)
        page.swardcast_data = script_text(withdrawn_data(notice, bulletin))
        generator.pages.append(page)


def add_missing_page(generator: PagesGenerator) -> None:
    """Add the page that hosts show for an address that is not there, by the name that most of them look for."""
    bulletin: Bulletin = generator.context["bulletin"]
    voice, address = (
        bulletin.voice,
        {"url": MISSING_PAGE, "save_as": MISSING_PAGE, "template": "missing", "robots": "noindex"},
    )
    page = _page(generator, "missing", voice.say("missing-title"), voice.say("missing-what"), **address)
    root = f"{generator.context['swardcast_site_path']}/"
    page._content = missing_html(voice, root, has_archive=bool(bulletin.notices))
    generator.pages.append(page)


def _page(generator: PagesGenerator, folder: str, title: str, summary: str, **more: str) -> Page:
    """A page of ours at the address of a folder, without content yet; `more` is metadata of its own."""
    address = f"{folder}/index.html".lstrip("/")
    metadata = {
        "title": escape(title),
        "slug": folder.replace("/", "-"),
        "summary": escape(summary),
        "description": escape(summary),
        "date": generator.context["bulletin"].as_of,
        "status": "published",
        "url": address,
        "save_as": address,
        **more,
    }
    source = str(Path(generator.path) / f"{metadata['slug']}.page")
    return Page("", metadata=metadata, settings=generator.settings, source_path=source, context=generator.context)


def root_of(settings: Any, save_as: str) -> str:
    """Tell the way from a page to the site's first one; relative where the site's links are.

    Args:
        settings: Pelican's settings.
        save_as: where the page is written, below the output folder.

    Returns:
        An address that ends with a slash, or "" for the first page itself.
    """
    return "../" * save_as.count("/") if settings["RELATIVE_URLS"] else f"{settings['SITEURL']}/"
