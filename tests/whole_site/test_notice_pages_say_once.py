"""A notice's page says once who decides and whom to ask, as every page does."""

from __future__ import annotations

from pathlib import Path

from lxml import html

_DECIDES = "The course manager decides each morning what is open"


def test_every_page_says_once_who_decides(demo_site: Path) -> None:
    pages = [*sorted((demo_site / "notices").glob("*/index.html")), demo_site / "season" / "index.html"]
    said = {page.parent.name: html.parse(page).getroot().text_content().count(_DECIDES) for page in pages}
    assert len(said) > 10
    assert set(said.values()) == {1}, said
