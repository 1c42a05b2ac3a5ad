"""A sheet to draw on: shapes with the classes of the theme's scheme, and scales from days and amounts to places.

Each shape also has a plain look of its own in the page's text colour, so that a theme without our style sheet shows
the same picture; nothing in it is a style, which a strict Content-Security-Policy forbids.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import date
from itertools import pairwise
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from swardcast.notices.pictures import Told

__all__ = [
    "HALF_LETTER",
    "LETTERS",
    "LETTER_WIDTH",
    "LINE",
    "WIDTH",
    "Canvas",
    "Scale",
    "broken",
    "lanes",
    "shortened",
    "stepped",
]

Point = tuple[float, float]

WIDTH: Final = 360.0
"""Width of every picture in its own units; a telephone 320 px wide shows it on 284 px."""
LETTERS: Final = 16.0
"""Size of letters in those units: 12.6 px on that telephone."""
LETTER_WIDTH: Final = 9.4
"""How wide a letter is taken to be: a wide font's; most take less."""
_USUAL_LETTER_WIDTH: Final = 8.6  # words longer than that would not fit in most fonts
HALF_LETTER: Final = 5.5
"""From the middle of a line of letters down to the line they stand on."""
LINE: Final = 20.0
"""From one line of letters to the next."""

_PLAIN: Final[dict[str, dict[str, Any]]] = {
    "axis": {"fill": "none", "stroke": "currentColor", "stroke_width": 1},
    "grid": {"fill": "none", "stroke": "currentColor", "stroke_width": 1, "stroke_opacity": 0.25},
    "level": {"fill": "none", "stroke": "currentColor", "stroke_width": 1.5, "stroke_dasharray": "6 4"},
    "guide": {"fill": "none", "stroke": "currentColor", "stroke_width": 1, "stroke_dasharray": "1 4"},
    "as-of": {"fill": "none", "stroke": "currentColor", "stroke_width": 2, "stroke_dasharray": "2 3"},
    "band": {"fill": "currentColor", "fill_opacity": 0.2},
    "edge": {"fill": "none", "stroke": "currentColor", "stroke_width": 1},
    "line": {"fill": "none", "stroke": "currentColor", "stroke_width": 3, "stroke_linejoin": "round"},
    "work": {"fill": "currentColor"},
    "range": {"fill": "currentColor", "fill_opacity": 0.2, "stroke": "currentColor", "stroke_width": 1.5},
    "open": {"fill": "none", "stroke": "currentColor", "stroke_width": 1.5},
    "no-record": {"fill": "none", "stroke": "currentColor", "stroke_width": 1.5, "stroke_dasharray": "2 3"},
    "whisker": {"fill": "none", "stroke": "currentColor", "stroke_width": 1.5},
    "likely": {"fill": "none", "stroke": "currentColor", "stroke_width": 3},
    "seen": {"fill": "currentColor"},
    "seen-elsewhere": {"fill": "none", "stroke": "currentColor", "stroke_width": 2},
    "fixture": {"fill": "currentColor"},
    "inside": {"fill": "currentColor"},
    "outside": {"fill": "none", "stroke": "currentColor", "stroke_width": 3},
    "text": {"fill": "currentColor"},
}
_SOLID: Final = {"work", "seen", "fixture", "inside", "band", "text"}  # without a line of their own


@dataclass(frozen=True, slots=True)
class Scale:
    """From days or amounts to places.

    Args:
        first: the value at the start.
        last: the value at the end, another than the first.
        start: the place of the first.
        end: the place of the last.
    """

    first: float
    last: float
    start: float
    end: float

    def __call__(self, value: float | date) -> float:
        """Give the place of a value; a day is its ordinal number."""
        number = float(value.toordinal()) if isinstance(value, date) else value
        return self.start + (number - self.first) / (self.last - self.first) * (self.end - self.start)

    def within(self, value: float | date) -> float:
        """Give the place of a value, or the nearer end of the axis."""
        low, high = sorted((self.start, self.end))
        return min(max(self(value), low), high)

    @classmethod
    def of_days(cls, first: date, last: date, start: float, end: float) -> Scale:
        """A scale of days."""
        return cls(float(first.toordinal()), float(max(last.toordinal(), first.toordinal() + 1)), start, end)


def shortened(words: str, room: float) -> str:
    """Cut words at a blank so that they fit, with an ellipsis.

    Args:
        words: the words.
        room: how wide the place is, in units of the picture.

    Returns:
        The words, or their beginning.
    """
    most = int(room / _USUAL_LETTER_WIDTH)
    if len(words) <= most:
        return words
    cut = words[: max(1, most - 1)]
    return (cut.rsplit(" ", 1)[0] if " " in cut else cut).rstrip(" ,;:") + "…"


def broken(words: str, room: float, next_room: float) -> tuple[str, ...]:
    """Break words at a blank into two lines where one is too short for them.

    Args:
        words: the words.
        room: how wide the place is on the first line, in units of the picture.
        next_room: how wide it is on the second.

    Returns:
        A line or two; the last one is cut where even two are too short.
    """
    most = int(room / _USUAL_LETTER_WIDTH)
    if len(words) <= most or " " not in words[: most + 1]:
        return (shortened(words, room),)
    first = words[: most + 1].rsplit(" ", 1)[0]
    return first, shortened(words[len(first) + 1 :], next_room)


@dataclass(slots=True)
class Canvas:
    """Shapes in the order in which they lie on each other.

    Args:
        shapes: what has been drawn.
    """

    shapes: list[Any] = field(default_factory=list)

    def path(self, look: str, points: Sequence[Point], *, closed: bool = False) -> None:
        """Draw straight lines from point to point.

        Args:
            look: one of the looks.
            points: two or more.
            closed: whether it is an area.
        """
        drawing = _drawsvg()
        at = [f"{_round(x)},{_round(y)}" for x, y in points]
        moved = f"M{at[0]} {' '.join(f'L{one}' for one in at[1:])}{' Z' if closed else ''}"
        self.shapes.append(drawing.Path(d=moved, **_look(look)))

    def line(self, look: str, start: Point, end: Point) -> None:
        """Draw one line."""
        self.path(look, (start, end))

    def box(self, look: str, corner: Point, width: float, height: float) -> None:
        """Draw a box from its upper left corner."""
        x, y = corner
        box = _drawsvg().Rectangle(_round(x), _round(y), _round(max(0.0, width)), _round(height), **_look(look))
        self.shapes.append(box)

    def dot(self, look: str, middle: Point, radius: float) -> None:
        """Draw a dot."""
        x, y = middle
        self.shapes.append(_drawsvg().Circle(_round(x), _round(y), _round(radius), **_look(look)))

    def diamond(self, look: str, middle: Point, size: float) -> None:
        """Draw a square that stands on a corner."""
        x, y = middle
        self.path(look, ((x, y - size), (x + size, y), (x, y + size), (x - size, y)), closed=True)

    def triangle(self, look: str, top: Point, size: float) -> None:
        """Draw a triangle that points up."""
        x, y = top
        self.path(look, ((x, y), (x + size, y + 1.7 * size), (x - size, y + 1.7 * size)), closed=True)

    def cross(self, look: str, middle: Point, size: float) -> None:
        """Draw a diagonal cross."""
        x, y = middle
        self.line(look, (x - size, y - size), (x + size, y + size))
        self.line(look, (x - size, y + size), (x + size, y - size))

    def fixture(self, number: str, top: Point, last: float) -> None:
        """Draw a numbered triangle, with a line below it until the last day.

        Args:
            number: its number.
            top: its upper corner, on the first day.
            last: the place of the last day.
        """
        x, y = top
        self.triangle("fixture", top, 5.5)
        if last > x:
            self.box("fixture", (x, y + 7.4), last - x, 2)
        beside = x + 8 + max(0.0, last - x - 4)
        if beside + len(number) * LETTER_WIDTH <= WIDTH:
            self.words(number, (beside, y + 10))
        else:
            self.words(number, (x - 8, y + 10), anchor="end")

    def words(self, words: str, place: Point, *, anchor: str = "start") -> None:
        """Write words on a line; such as would run over an edge of the picture are moved inwards.

        Args:
            words: the words.
            place: the point at which they stand.
            anchor: which part of them stands there: "start", "middle" or "end".
        """
        x, y = place
        wide = len(words) * LETTER_WIDTH
        before = {"start": 0.0, "middle": wide / 2, "end": wide}[anchor]
        x = max(before, min(x, WIDTH - (wide - before)))
        text = _drawsvg().Text(words, LETTERS, _round(x), _round(y), text_anchor=anchor, **_look("text"))
        self.shapes.append(text)

    def svg(self, told: Told, height: float) -> str:
        """Finish the picture.

        Args:
            told: its words.
            height: its height.

        Returns:
            An `svg` element with title and description, for a page of HTML; always the same bytes.
        """
        drawing = _drawsvg()
        title, description = f"pic-{told.name}-title", f"pic-{told.name}-desc"
        sheet = drawing.Drawing(
            WIDTH, _round(height), class_="sc-pic__svg", role="img", aria_labelledby=title, aria_describedby=description
        )
        sheet.append(drawing.Title(told.title, id=title))
        sheet.append(type("Desc", (drawing.Title,), {"TAG_NAME": "desc"})(told.description, id=description))
        sheet.extend(self.shapes)
        return str(sheet.as_svg(header=""))

    def sign(self, width: float, height: float) -> str:
        """Finish a small sign that says nothing by itself, so that it is hidden from those who listen."""
        sheet = _drawsvg().Drawing(_round(width), _round(height), class_="sc-pic__sign", aria_hidden="true")
        sheet.extend(self.shapes)
        return str(sheet.as_svg(header=""))


def lanes(places: Iterable[float], apart: float) -> list[int]:
    """Share marks out among lanes, so that no two in one lane are too near to each other.

    Args:
        places: where they are, in order.
        apart: how far they must be from each other.

    Returns:
        A lane for each, from 0 on.
    """
    ends: list[float] = []
    chosen = []
    for place in places:
        lane = next((number for number, end in enumerate(ends) if place - end >= apart), len(ends))
        ends[lane:] = [place, *ends[lane + 1 :]]
        chosen.append(lane)
    return chosen


def stepped(places: Sequence[float], values: Sequence[float]) -> list[Point]:
    """Draw values that hold for a stretch each as steps.

    Args:
        places: where the stretches begin, and the end of the last one.
        values: heights, one fewer.

    Returns:
        Points.
    """
    ends = pairwise(places)
    return [
        point for (left, right), value in zip(ends, values, strict=True) for point in ((left, value), (right, value))
    ]


def _look(name: str) -> dict[str, Any]:
    look: dict[str, Any] = {"class_": f"sc-pic__{name}", **_PLAIN[name]}
    if name not in _SOLID:
        look["vector_effect"] = "non-scaling-stroke"
    return look


def _round(value: float) -> float:
    return round(value + 0.0, 1)


def _drawsvg() -> Any:
    import drawsvg  # noqa: PLC0415 - for pictures alone

    return drawsvg
