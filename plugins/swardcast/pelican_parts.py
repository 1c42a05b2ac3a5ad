"""What the plugin puts into pages of the site's own.

Such a page may hold the remark `<!-- swardcast: sums -->`, `growth`, `published`, `track record`, `feeds`, `season`,
`contact` or `pro shop`; the plugin puts what it computed in its place.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import partial
from typing import Final

from markupsafe import Markup
from pelican.contents import Page
from pelican.generators import PagesGenerator

from swardcast.compose import Bulletin, Pictures, season_of
from swardcast.errors import SwardcastError, nearest
from swardcast.notices.season_picture import season_bars
from swardcast.outlets.feeds import feeds_of
from swardcast.outlets.html import (
    NO_PICTURE,
    contact_html,
    feeds_html,
    published_html,
    season_months_html,
    sums_html,
    track_record_html,
)
from swardcast.outlets.message import messages_of
from swardcast.outlets.pictures.figure import figure_html
from swardcast.outlets.pictures.growth import draw_growth
from swardcast.outlets.pictures.promises import draw_promises
from swardcast.outlets.pictures.season import draw_season
from swardcast.outlets.pro_shop import pro_shop_html
from swardcast.pelican_pages import root_of

__all__ = ["fill_pages"]

_PART: Final = re.compile(r"<!--\s*swardcast:([^>]*?)-->")


def fill_pages(generator: PagesGenerator) -> None:
    """Put what was computed in the place of the remarks.

    Raises:
        SwardcastError: for a remark that names no such part.
    """
    for page in generator.pages:
        page._content = _PART.sub(partial(_part, _parts(generator, page), page), page._content)  # there is no other way


def _part(parts: Mapping[str, Callable[[], str]], page: Page, match: re.Match[str]) -> str:
    name = match[1].strip()
    if name not in parts:
        message = f"{page.source_path}: found the remark {name!r}; expected one of: {', '.join(parts)}."
        raise SwardcastError(f"{message} {nearest(name, parts)}".rstrip())
    return parts[name]()


def _parts(generator: PagesGenerator, page: Page) -> dict[str, Callable[[], str]]:
    """What the plugin can put into a page, made only when asked for; links are relative where the site's are."""
    bulletin: Bulletin = generator.context["bulletin"]
    pictures: Pictures = generator.context["swardcast_pictures"]
    voice, up = bulletin.voice, root_of(generator.settings, page.save_as)
    drafts = generator.settings["SWARDCAST_EML"]

    def promises() -> Markup:
        picture = pictures.promises
        return figure_html(picture.told, draw_promises(picture), voice) if picture else NO_PICTURE

    def growth() -> str:
        picture = pictures.growth
        return figure_html(picture.told, draw_growth(picture), voice) if picture else ""

    def season() -> str:
        laid_out, fixtures = season_of(bulletin), bulletin.records.fixtures
        bars = season_bars(laid_out, fixtures, voice)
        picture = figure_html(bars.told, draw_season(bars), voice) if bars else NO_PICTURE
        return season_months_html(laid_out, voice, up, picture, has_archive=bool(bulletin.notices))

    return {
        "season": season,
        "sums": lambda: sums_html(bulletin.sums, voice),
        "published": lambda: published_html(bulletin.published, voice),
        "growth": growth,
        "track record": lambda: track_record_html(bulletin.track_record, up, voice, promises()),
        "feeds": lambda: feeds_html(feeds_of(bulletin), voice, up),
        "contact": lambda: contact_html(bulletin.club.contact, voice),
        "pro shop": lambda: pro_shop_html(bulletin, messages_of(bulletin), up, drafts=drafts),
    }
