"""The block "look" of club.yaml: the club's badge and its two colours."""

from __future__ import annotations

from pathlib import PurePath
from typing import Annotated, Final

from pydantic import BeforeValidator

from swardcast.colours import USUAL_PALETTE, ColourError, Palette, palette_from
from swardcast.errors import Problem, nearest
from swardcast.reading.badge_file import BadgeError, badge_from
from swardcast.reading.files import Files
from swardcast.reading.schema import Model, Text, wrong
from swardcast.reading.yaml_text import Located
from swardcast.records.look import Badge, Look

__all__ = ["LookBlock", "look_from"]

_BLOCK: Final = "look"


def _colour(value: object) -> str:
    if value is None:
        hint = "Put it between quotation marks: without them everything behind a # is a remark."
        raise wrong(None, 'a colour, such as "#5d2b5a"', hint)
    return str(value).strip()


_Colour = Annotated[str, BeforeValidator(_colour)]


class LookBlock(Model):
    """How the club is known by sight; "color" is read as "colour"."""

    badge: Text = ""
    colour: _Colour = ""
    color: _Colour = ""
    second_colour: _Colour = ""
    second_color: _Colour = ""


def look_from(told: LookBlock, document: Located, files: Files, problems: list[Problem]) -> Look:
    """Read the badge and work out the colours.

    Args:
        told: the block, its fields checked.
        document: the YAML of club.yaml, for lines.
        files: the club's files.
        problems: where problems are added.

    Returns:
        The look; what has a problem is as if it were not there.
    """

    def odd(field: str, found: str, expected: str, hint: str = "") -> None:
        line = document.line((_BLOCK, field))
        name = f"{_BLOCK}.{field}"
        problems.append(Problem(file="club.yaml", line=line, field=name, found=found, expected=expected, hint=hint))

    first = "color" if told.color else "colour"
    second = "second color" if told.second_color else "second colour"
    for british, american, field in (
        (told.colour, told.color, "color"),
        (told.second_colour, told.second_color, "second color"),
    ):
        if british and american:
            odd(field, "the same in both spellings", "one of them")
    palette = USUAL_PALETTE
    try:
        palette = _palette(told)
    except ColourError as error:
        odd(second if error.of_second else first, error.found, error.expected, error.hint)
    badge = None
    try:
        badge = _badge(told.badge, files) if told.badge else None
    except BadgeError as error:
        odd("badge", error.found, error.expected, error.hint)
    return Look(badge=badge, palette=palette)


def _palette(told: LookBlock) -> Palette:
    colour, second = told.colour or told.color, told.second_colour or told.second_color
    if not colour and second:
        expected = "the field 'colour' beside it"
        raise ColourError(of_second=True, found="a second colour alone", expected=expected, hint="")
    return palette_from(colour, second) if colour else USUAL_PALETTE


def _badge(name: str, files: Files) -> Badge:
    if name != PurePath(name).name:
        raise BadgeError(repr(name), "the name of a file beside club.yaml, such as 'badge.svg'")
    data = files.data(name)
    if data is None:
        hint = nearest(name, files.pictures())
        raise BadgeError(f"no file {name!r} beside club.yaml", "the badge as SVG or PNG", hint)
    return badge_from(name, data)
