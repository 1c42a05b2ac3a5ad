"""A page as a screen reader goes through it: roles and names in the order in which they are read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from playwright.sync_api import Page

_TRANSPARENT = {"none", "generic", "InlineTextBox", "LineBreak", "ListMarker", "LayoutTable", "Iframe"}


@dataclass
class Heard:
    """A piece of a page: a heading, a list, a link, words."""

    role: str
    name: str
    level: int = 0
    parts: list[Heard] = field(default_factory=list)

    def words(self) -> str:
        """All that is read out of it."""
        if self.role == "StaticText":
            return self.name
        return " ".join("".join(part.words() for part in self.parts).split()) if self.parts else self.name

    def all(self) -> Iterator[Heard]:
        """It and all that is in it, in the order of reading."""
        yield self
        for part in self.parts:
            yield from part.all()


def heard(page: Page) -> Heard:
    """The accessibility tree as the browser gives it to a screen reader, without what is never spoken."""
    session = page.context.new_cdp_session(page)
    session.send("Accessibility.enable")
    nodes = session.send("Accessibility.getFullAXTree")["nodes"]
    session.detach()
    by_id = {node["nodeId"]: node for node in nodes}
    (whole,) = _spoken(nodes[0], by_id)
    return whole


def _spoken(node: dict[str, Any], by_id: dict[str, dict[str, Any]]) -> list[Heard]:
    parts = [part for child in node.get("childIds", ()) if child in by_id for part in _spoken(by_id[child], by_id)]
    role = node.get("role", {}).get("value", "none")
    if node.get("ignored") or role in _TRANSPARENT:
        return parts
    level = next((one["value"]["value"] for one in node.get("properties", ()) if one["name"] == "level"), 0)
    return [Heard(role, node.get("name", {}).get("value", ""), int(level), parts)]


def after_heading(whole: Heard, heading: str, role: str) -> Heard:
    """What a listener gets to who jumps to a heading and on to the next piece of a role."""
    pieces = whole.all()
    for piece in pieces:
        if piece.role == "heading" and piece.name == heading:
            return next(later for later in pieces if later.role == role)
    message = f"no heading {heading!r}"
    raise AssertionError(message)
