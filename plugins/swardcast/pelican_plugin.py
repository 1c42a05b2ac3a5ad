"""Shell 1: notices become Pelican articles; the status page, feeds and the bulletin go into every build.

Settings: SWARDCAST_CLUB (the club folder), SWARDCAST_AS_OF (a moment, or None for now), SWARDCAST_EML (whether to write
drafts of e-mails), SWARDCAST_REPLACES (the folder of the site that this one replaces, or None for the output folder;
only what the manager is told depends on it) and SWARDCAST_AFRESH (whether to use nothing that earlier builds have
kept; the site is the same). Another setting that begins with SWARDCAST_ is an error. Everything that can fail fails
before Pelican writes its first byte.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import Any, Final
from urllib.parse import urlsplit

from markupsafe import Markup, escape
from pelican import signals
from pelican.contents import Article
from pelican.generators import ArticlesGenerator
from pelican.urlwrappers import Category, Tag

from swardcast.artifact import Artifact
from swardcast.club_templates import prepare, problems_of_templates, with_club_templates
from swardcast.compose import Bulletin, Pictures, compose_bulletin, compose_pictures
from swardcast.errors import SwardcastError, all_at_once, nearest
from swardcast.kept_file import KeptFile, file_of, tidy_kept
from swardcast.language.banned import banned_phrases
from swardcast.language.voice import Voice, capital, slug_of
from swardcast.moments import as_of_from
from swardcast.notices.archive import in_order_of_list, left_by_kinds, left_to_archive
from swardcast.notices.as_told import NoticesAsTold
from swardcast.notices.notice import Notice
from swardcast.notices.own_words import own_words_remarks
from swardcast.notices.reasons import dated_ahead
from swardcast.outlets.atom import atom_artifacts
from swardcast.outlets.calendar import calendar_artifact
from swardcast.outlets.email import email_artifacts
from swardcast.outlets.feed_content import in_full, in_full_again, in_short
from swardcast.outlets.feed_files import written_again
from swardcast.outlets.feeds import feed_pages, feeds_of
from swardcast.outlets.html import NO_PICTURE, notice_html
from swardcast.outlets.json_feed import json_artifacts
from swardcast.outlets.look_files import badge_size_px, look_artifacts
from swardcast.outlets.message import message_artifacts
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.pictures.figure import figure_html
from swardcast.outlets.pictures.healing import draw_healing
from swardcast.outlets.policy import OF_PAGES, headers_artifact
from swardcast.outlets.poster import poster_artifacts
from swardcast.outlets.preview import cards_of
from swardcast.outlets.preview_picture import Card, draw_card, key_of
from swardcast.outlets.replaced_site import remarks_on_replaced, replaced_site
from swardcast.outlets.rss import rss_artifacts
from swardcast.outlets.saying import words_for_templates
from swardcast.outlets.season_file import season_artifacts
from swardcast.outlets.short_pages import short_page_artifacts
from swardcast.outlets.status_file import status_artifacts
from swardcast.outlets.structured_data import course_data, notice_data, script_text
from swardcast.outlook.memory import as_members_see
from swardcast.outlook.weather_book import WeatherBook
from swardcast.pelican_files import MADE, BulletinGenerator, check_output, keep_for_offline
from swardcast.pelican_pages import (
    add_archive_pages,
    add_missing_page,
    add_status_page,
    add_why_pages,
    add_withdrawn_pages,
    root_of,
)
from swardcast.pelican_parts import fill_pages
from swardcast.picture_cache import MOST_KEPT, cache_folder, cached, tidy
from swardcast.reading.folder import read_club_folder
from swardcast.reading.web_folder import problems_of_web
from swardcast.records.club import SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Kind
from swardcast.site_source import page_paths, problems_of_pages

__all__ = ["connect"]

_SETTINGS: Final = {
    "SWARDCAST_CLUB": "demo_content",
    "SWARDCAST_AS_OF": None,
    "SWARDCAST_EML": False,
    "SWARDCAST_REPLACES": None,
    "SWARDCAST_AFRESH": False,
}


def connect() -> None:
    """Connect to Pelican's signals."""
    signals.initialized.connect(_check_settings)
    signals.generator_init.connect(_append_templates)
    signals.article_generator_init.connect(_compose)
    signals.article_generator_pretaxonomy.connect(_add_articles)
    signals.page_generator_finalized.connect(fill_pages)
    signals.page_generator_finalized.connect(add_status_page)
    signals.page_generator_finalized.connect(add_why_pages)
    signals.page_generator_finalized.connect(add_archive_pages)
    signals.page_generator_finalized.connect(add_withdrawn_pages)
    signals.page_generator_finalized.connect(add_missing_page)
    signals.get_generators.connect(_generators)
    signals.finalized.connect(check_output)
    signals.finalized.connect(keep_for_offline)


def _check_settings(pelican: Any) -> None:
    for name in pelican.settings:
        if name.startswith("SWARDCAST_") and name not in _SETTINGS:
            message = f"unknown setting {name}; expected one of {', '.join(_SETTINGS)}. {nearest(name, _SETTINGS)}"
            raise SwardcastError(message)
    for name, default in _SETTINGS.items():
        pelican.settings.setdefault(name, default)
    with_club_templates(pelican.settings)


def _append_templates(generator: Any) -> None:
    """A theme's own templates come first, so a theme can override ours; all can show the manager's own words."""
    prepare(generator.env)


def _compose(generator: ArticlesGenerator) -> None:
    settings = generator.settings
    records = _records(generator)
    # Pelican reads its pages later than this, so that they can still be those of the club's language.
    folder, club, tag = Path(generator.path), Path(settings["SWARDCAST_CLUB"]), records.club.language
    generator.context["PAGE_PATHS"] = settings["PAGE_PATHS"] = page_paths(folder, settings["PAGE_PATHS"], tag, club)
    as_of = as_of_from(settings["SWARDCAST_AS_OF"], records.club.time_zone, now=datetime.now(records.club.time_zone))
    book = WeatherBook(records.club, records.weather)
    kept = _kept(records, book, settings)
    bulletin = compose_bulletin(records, as_of, book)
    pictures = compose_pictures(bulletin, records, book)
    for remark in _remarks(records, bulletin, settings):
        print(f"Worth another look: {remark}", file=sys.stderr)
    voice = bulletin.voice
    root = root_of(settings, settings["ARTICLE_SAVE_AS"])
    healing = _healing_html(pictures, voice)
    bodies = {one.id: notice_html(one, voice, root, healing.get(one.id, NO_PICTURE)) for one in bulletin.notices}
    context = generator.context
    context["bulletin"] = bulletin
    context["SITENAME"] = settings["SITENAME"] = escape(bulletin.club.name)  # HTML, as themes and feeds take names
    context["DEFAULT_LANG"] = settings["DEFAULT_LANG"] = bulletin.club.language
    context.update(words_for_templates(voice), swardcast_policy=OF_PAGES)
    context.update(swardcast_bodies=bodies, swardcast_pictures=pictures)
    listed = bulletin.notices, bulletin.outlook.jobs, bulletin.as_of.date()
    context.update(swardcast_archived=left_to_archive(*listed), swardcast_left_by_kinds=left_by_kinds(*listed))
    context["swardcast_site_path"] = urlsplit(bulletin.club.site).path.rstrip("/")
    context["swardcast_badge_px"] = badge_size_px(bulletin.club.look)
    context["swardcast_feeds"] = feeds_of(bulletin)
    cards = dict(cards_of(bulletin))
    graph = OpenGraph(bulletin=bulletin, pictures={path: key_of(card) for path, card in cards.items()})
    context.update(swardcast_graph=graph, swardcast_course_data=script_text(course_data(bulletin, graph)))
    context["swardcast_artifacts"] = (
        *_feeds(bulletin, kept),
        *_artifacts(bulletin, graph, cards, settings),
    )
    kept.write()


def _kept(records: ClubRecords, book: WeatherBook, settings: Any) -> KeptFile:
    """What builds of this club have worked out before; nothing, where all of it is to be worked out anew."""
    folder = _cache_folder(settings)
    tidy_kept(folder)
    return KeptFile(file_of(records.club, folder), as_members_see(records, book), book)


def _cache_folder(settings: Any) -> Path | None:
    return None if settings["SWARDCAST_AFRESH"] else cache_folder()


def _artifacts(bulletin: Bulletin, graph: OpenGraph, cards: Mapping[str, Card], settings: Any) -> Iterator[Artifact]:
    """All files but the feeds; what is drawn is taken from the cache, where it lies by what it shows."""
    folder = _cache_folder(settings)
    keep = partial(cached, folder=folder)
    yield calendar_artifact(bulletin)
    yield from short_page_artifacts(bulletin, graph)
    yield from message_artifacts(bulletin)
    yield from poster_artifacts(bulletin, graph, keep)
    yield from status_artifacts(bulletin)
    yield from season_artifacts(bulletin)
    yield from look_artifacts(bulletin.club.look)
    yield headers_artifact()
    yield from email_artifacts(bulletin, drafts=settings["SWARDCAST_EML"])
    for path, card in cards.items():
        yield Artifact(path=path, media_type="image/png", data=keep(key_of(card), partial(draw_card, card)))
    tidy(folder, max(MOST_KEPT, 3 * len(bulletin.notices)))  # of each notice a card and a code, and some of before


def _healing_html(pictures: Pictures, voice: Voice) -> dict[str, Markup]:
    heading = voice.say("picture-healing-heading")
    return {
        name: figure_html(picture.told, draw_healing(picture), voice, heading=heading)
        for name, picture in pictures.healing.items()
    }


def _records(generator: ArticlesGenerator) -> ClubRecords:
    club, settings = Path(generator.settings["SWARDCAST_CLUB"]), generator.settings
    with all_at_once() as problems:
        problems.extend(problems_of_templates(club, settings, generator.env))
        problems.extend(problems_of_pages(Path(generator.path), settings["PAGE_PATHS"], club))
        problems.extend(problems_of_web(club))
        return read_club_folder(club)


def _remarks(records: ClubRecords, bulletin: Bulletin, settings: Any) -> tuple[str, ...]:
    """What the manager should look at again; nothing that is published depends on it."""
    as_of = bulletin.as_of
    faults = (f"{one.file}, {one} (The site is made without this file.)" for one in records.planning.faults)
    ahead = dated_ahead(records, as_of, Voice.english(as_of.date())) if settings["SWARDCAST_AS_OF"] is None else ()
    own_words = own_words_remarks(records, as_of, banned_phrases(records.club.language))
    live = replaced_site(Path(settings["SWARDCAST_REPLACES"] or settings["OUTPUT_PATH"]))
    replaced = remarks_on_replaced(live, bulletin, records) if live is not None else ()
    return (*faults, *ahead, *bulletin.remarks, *own_words, *replaced)


def _feeds(bulletin: Bulletin, kept: KeptFile) -> tuple[Artifact, ...]:
    notices = NoticesAsTold(bulletin.records, bulletin.stories)
    whole = partial(in_full, bulletin=bulletin, notices=notices)
    whole = partial(in_full_again, bulletin=bulletin, recall=kept.recall, whole=whole)
    pages = feed_pages(bulletin, whole, partial(in_short, bulletin=bulletin))
    again = partial(written_again, recall=kept.recall)
    return (*rss_artifacts(pages, again), *atom_artifacts(pages, again), *json_artifacts(pages, again))


def _add_articles(generator: ArticlesGenerator) -> None:
    bulletin: Bulletin = generator.context["bulletin"]
    notices = [_article(generator, notice) for notice in bulletin.notices]
    order = in_order_of_list(bulletin.notices, bulletin.outlook.jobs, bulletin.voice)
    places = {name: place for place, name in enumerate(order)}
    for article in notices:
        article.swardcast_place = places[article.slug]
    generator.articles += notices
    pages = [notice.save_as for notice in notices if notice.save_as]
    made = (*pages, *(one.path for one in generator.context["swardcast_artifacts"]))
    generator.settings[MADE] = made
    generator.articles.sort(key=lambda article: (article.date, article.slug), reverse=True)


def _article(generator: ArticlesGenerator, notice: Notice) -> Article:
    bulletin: Bulletin = generator.context["bulletin"]
    metadata: dict[str, Any] = {
        "title": escape(notice.headline),  # HTML, as themes and feeds take it
        "slug": notice.id,
        "summary": escape(notice.short_answer),
        "description": escape(notice.short_answer),
        "date": notice.issued_at,
        "modified": notice.revised_at,
        "status": "published",
        "lang": generator.settings["DEFAULT_LANG"].lower(),  # as Pelican has it for pages
        "category": _category(Kind(notice.category), bulletin.voice, generator.settings),
        "tags": [_tag(kind, bulletin.voice, generator.settings) for kind in SurfaceKind if kind.plural in notice.tags],
    }
    article = Article(
        generator.context["swardcast_bodies"][notice.id],
        metadata=metadata,
        settings=generator.settings,
        source_path=str(Path(generator.path) / f"{notice.id}.notice"),
        context=generator.context,
    )
    article.notice = notice
    graph: OpenGraph = generator.context["swardcast_graph"]
    article.swardcast_graph = graph.of_notice(notice)
    article.swardcast_data = script_text(notice_data(notice, bulletin, graph))
    return article


def _category(kind: Kind, voice: Voice, settings: Any) -> Category:
    """A kind of work by its name in the club's language; its address is the same in all of them."""
    category = Category(capital(voice.name("kind", kind)), settings)
    category.slug = slug_of(kind)
    return category


def _tag(kind: SurfaceKind, voice: Voice, settings: Any) -> Tag:
    tag = Tag(voice.name("site-surface", kind), settings)
    tag.slug = kind.plural.replace(" ", "-")
    return tag


def _generators(_: Any) -> type[BulletinGenerator]:
    return BulletinGenerator
