"""The pages behind short addresses: each leads to its notice at once, and says the short answer where it cannot.

A notice that was called off, withdrawn or is over answers there like any other: the page says so and leads to it.
"""

from __future__ import annotations

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin
from swardcast.notices.notice import Notice
from swardcast.notices.withdrawn import WithdrawnNotice
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.rendering import rendered
from swardcast.outlets.short_addresses import short_codes, short_path

__all__ = ["short_page_artifacts"]


def short_page_artifacts(bulletin: Bulletin, graph: OpenGraph) -> tuple[Artifact, ...]:
    """Write a page for each short address.

    Args:
        bulletin: the bulletin.
        graph: what a service shows of a pasted link: the same as of the notice's own page.

    Returns:
        Files "n/<code>/index.html" that need no theme, no script and no file besides them.
    """
    codes = short_codes(bulletin)
    return tuple(
        Artifact(
            path=f"{short_path(codes[notice.id])}index.html",
            media_type="text/html; charset=utf-8",
            data=_render(notice, bulletin, graph).encode("utf-8"),
        )
        for notice in bulletin.addressed
    )


def _render(notice: Notice | WithdrawnNotice, bulletin: Bulletin, graph: OpenGraph) -> str:
    return rendered(
        "short_page.html",
        bulletin.voice,
        notice=notice,
        is_withdrawn=isinstance(notice, WithdrawnNotice),
        club=bulletin.club,
        sources=bulletin.weather_sources,
        properties=graph.of_notice(notice),
    )
