"""The pages for search engines: sitemap.xml (sitemaps.org, protocol 0.9) and robots.txt (RFC 9309).

The plugin pelican-sitemap was weighed: it dates lists of notices by the clock and asks for absolute addresses in
Pelican's own settings, so that a build would not give the same bytes twice and would name no host. Days here come from
the records; a page that has none is given none, as the protocol allows.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from typing import Final
from xml.sax.saxutils import escape

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin

__all__ = ["NOTICES_LIST", "ROBOTS_PATH", "SITEMAP_PATH", "sitemap_artifacts"]

SITEMAP_PATH: Final = "sitemap.xml"
ROBOTS_PATH: Final = "robots.txt"
NOTICES_LIST: Final = "notices/index.html"
"""Place of the list of all notices."""
_NAMESPACE: Final = "http://www.sitemaps.org/schemas/sitemap/0.9"


def sitemap_artifacts(bulletin: Bulletin, pages: Iterable[str]) -> tuple[Artifact, Artifact]:
    """Write both files.

    Assumes at most 50,000 pages, the protocol's limit. A robots.txt counts in the root of a host alone; where the site
    lies in a folder, its line belongs into the host's own.

    Args:
        bulletin: the bulletin, which tells the day of the last news of each notice and of the course.
        pages: places of the pages inside the site, such as "notices/index.html".

    Returns:
        The sitemap and robots.txt.
    """
    site, changed = bulletin.club.site, _changed(bulletin)
    lines = ['<?xml version="1.0" encoding="UTF-8"?>', f'<urlset xmlns="{_NAMESPACE}">']
    for page in sorted(set(pages)):
        day = f"<lastmod>{changed[page].isoformat()}</lastmod>" if page in changed else ""
        address = escape(f"{site}/{page.removesuffix('index.html')}")
        lines.append(f"<url><loc>{address}</loc>{day}</url>")
    lines.append("</urlset>")
    robots = f"User-agent: *\nAllow: /\n\nSitemap: {site}/{SITEMAP_PATH}\n"
    return (
        Artifact(path=SITEMAP_PATH, media_type="application/xml", data=("\n".join(lines) + "\n").encode()),
        Artifact(path=ROBOTS_PATH, media_type="text/plain; charset=utf-8", data=robots.encode()),
    )


def _changed(bulletin: Bulletin) -> dict[str, date]:
    """The day of the last news by a page's place; of other pages no record tells it."""
    zone = bulletin.club.time_zone
    days = {f"notices/{notice.id}/index.html": notice.revised_at.astimezone(zone).date() for notice in bulletin.notices}
    entered = bulletin.status.entered_at
    news = [*days.values(), *([entered.astimezone(zone).date()] if entered is not None else [])]
    return {**days, "index.html": max(news), NOTICES_LIST: max(news)} if news else {}
