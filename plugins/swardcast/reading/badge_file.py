"""The club's badge: an SVG or PNG that is a picture and nothing else.

An SVG is a document that can run scripts and ask other hosts (W3C, SVG 2, chapters 2 and 15). So it may hold only what
draws, and may refer only to its own parts; everything else is refused by name.
"""

from __future__ import annotations

import re
import struct
from collections.abc import Mapping
from typing import Final
from xml.etree import ElementTree as ET

from swardcast.reading.picture_notes import NotesCannotGoError, svg_without_notes, without_notes
from swardcast.records.look import Badge

__all__ = ["BadgeError", "badge_from"]

_LARGEST_BYTES: Final = 50_000
"""It stands on every page; a drawn badge has 2 to 20 KB. Judgement."""
_LONGEST_RATIO: Final = 3.0
"""Width to height or the other way, so that it fits beside the name. Judgement."""
_LEAST_PNG_PX: Final = 88
"""Height that stays sharp where two pixels of a screen stand for one of a page. Judgement."""

_MOST_DRAWN: Final = 10_000
"""Shapes: more than 50 KB hold one by one. Judgement."""

_SVG: Final = "http://www.w3.org/2000/svg"
_DRAWS: Final = frozenset(
    {
        "svg",
        "g",
        "defs",
        "title",
        "desc",
        "metadata",
        "path",
        "rect",
        "circle",
        "ellipse",
        "line",
        "polyline",
        "polygon",
    }
    | {"use", "symbol", "clipPath", "mask", "pattern", "linearGradient", "radialGradient", "stop", "text", "tspan"}
)
_REFERS: Final = re.compile(r"url\(\s*['\"]?(?!#)|//|\\|@import|image-set|javascript:", re.IGNORECASE)
_PNG: Final = b"\x89PNG\r\n\x1a\n"
_AS_PLAIN_SVG: Final = "Save it from the drawing program as 'plain SVG', texts turned into paths."


class BadgeError(ValueError):
    """A badge that cannot be used: what was found, what was expected, what to do."""

    def __init__(self, found: str, expected: str, hint: str = "") -> None:
        self.found, self.expected, self.hint = found, expected, hint
        super().__init__(f"found {found}; expected {expected}. {hint}")


def badge_from(name: str, data: bytes) -> Badge:
    """Check a badge; what it is, its bytes say and not its name.

    Args:
        name: its file name, for errors.
        data: the file.

    Returns:
        The badge, without what was noted in it.

    Raises:
        BadgeError: when it is too large, too long, no SVG or PNG, or an SVG that does more than draw.
    """
    if len(data) > _LARGEST_BYTES:
        raise BadgeError(f"{name!r} with {len(data) / 1000:.0f} KB", f"at most {_LARGEST_BYTES // 1000} KB")
    if data.startswith(_PNG):
        found, media_type, ratio, drawn = "badge.png", "image/png", *_png(name, data)
    else:
        found, media_type, ratio, drawn = "badge.svg", "image/svg+xml", *_svg(name, data)
    if not 1 / _LONGEST_RATIO <= ratio <= _LONGEST_RATIO:
        raise BadgeError(
            f"{name!r}, {ratio:.2g} times as wide as high", "a badge at most 3 times as wide as high or as high as wide"
        )
    return Badge(name=found, media_type=media_type, data=drawn, ratio=ratio)


def _png(name: str, data: bytes) -> tuple[float, bytes]:
    """The ratio of its sides, and the picture without what was noted in it."""
    try:
        drawn = without_notes(data)
    except NotesCannotGoError:
        drawn = b""
    if drawn[12:16] != b"IHDR":
        raise BadgeError(f"{name!r}, a PNG that is cut off", "a whole picture")
    width_px, height_px = struct.unpack(">II", drawn[16:24])
    if min(width_px, height_px) < _LEAST_PNG_PX:
        raise BadgeError(f"{name!r} with {width_px} x {height_px} pixels", f"at least {_LEAST_PNG_PX} each way")
    return float(width_px / height_px), drawn


def _svg(name: str, data: bytes) -> tuple[float, bytes]:
    """The ratio of its sides, and the drawing without what was noted in it."""
    neither = BadgeError(f"{name!r}, which is neither SVG nor PNG", "the badge as SVG or PNG")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise neither from None
    if "<svg" not in text:
        raise neither
    if "<!ENTITY" in text or "<!DOCTYPE" in text:
        raise BadgeError(f"{name!r} with <!DOCTYPE> or <!ENTITY>", "an SVG without them", _AS_PLAIN_SVG)
    if "<?xml-stylesheet" in text:
        raise BadgeError(f"{name!r} with a style sheet", "an SVG without one", _AS_PLAIN_SVG)
    try:
        root = ET.fromstring(text)  # noqa: S314 - at most 50 KB, and without entities
        drawn = svg_without_notes(data)
    except SyntaxError as error:  # which both parsers raise; the second also where elements lie too deep in each other
        message = f"{name!r}, which is no well-formed SVG ({error})"
        raise BadgeError(message, "an SVG that a browser shows", _AS_PLAIN_SVG) from None
    if root.tag != f"{{{_SVG}}}svg":
        raise neither
    for element in root.iter():
        _only_draws(name, element)
    try:
        count = _drawn(root, {one.get("id", ""): one for one in root.iter()}, {})
    except RecursionError:
        found = f"{name!r}, whose parts lie far too deep in each other"
        raise BadgeError(found, "parts beside each other", _AS_PLAIN_SVG) from None
    if count > _MOST_DRAWN:
        found = f"{name!r}, whose parts are drawn again and again"
        raise BadgeError(found, f"at most {_MOST_DRAWN:,} shapes in all", _AS_PLAIN_SVG)
    return _size_of(name, root), drawn


def _drawn(element: ET.Element, by_id: Mapping[str, ET.Element], known: dict[ET.Element, int]) -> int:
    """How many shapes a browser draws for an element: of a `use`, those of what it names, which may hold others.

    One that is drawn within itself counts once, since browsers draw no circle.
    """
    if element not in known:
        known[element] = 1
        used = [value.strip()[1:] for key, value in element.attrib.items() if key.rpartition("}")[2] == "href"]
        parts = [*element, *(by_id[one] for one in used if one in by_id and element.tag == f"{{{_SVG}}}use")]
        known[element] += sum(_drawn(part, by_id, known) for part in parts)
    return known[element]


def _only_draws(name: str, element: ET.Element) -> None:
    tag = str(element.tag)
    kind = tag.removeprefix(f"{{{_SVG}}}")
    if kind not in _DRAWS:
        shown = kind.rpartition("}")[2]
        raise BadgeError(
            f"{name!r} with <{shown}>", "only what draws, such as paths, circles and gradients", _AS_PLAIN_SVG
        )
    for key, value in element.attrib.items():
        bare = key.rpartition("}")[2].lower()
        if bare.startswith("on"):
            raise BadgeError(f"{name!r} with the event handler {bare!r}", "an SVG that does nothing", _AS_PLAIN_SVG)
        if (bare in ("href", "src") and not value.strip().startswith("#")) or _REFERS.search(value):
            raise BadgeError(
                f"{name!r} with the address {value[:40]!r}", "an SVG that refers to its own parts alone", _AS_PLAIN_SVG
            )


def _size_of(name: str, root: ET.Element) -> float:
    box = re.split(r"[\s,]+", root.get("viewBox", "").strip())
    sides = box[2:] if len(box) == 4 else [root.get(side, "").removesuffix("px") for side in ("width", "height")]  # noqa: PLR2004 - x, y, width, height
    try:
        width, height = map(float, sides)
    except ValueError:
        width = height = 0.0
    if not (0 < width < float("inf") and 0 < height < float("inf")):
        raise BadgeError(f"{name!r} without a size", "'viewBox', or 'width' and 'height' in pixels", _AS_PLAIN_SVG)
    return width / height
