"""A picture with all that belongs to it: the drawing, its caption, the key of its signs, the same in figures."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from markupsafe import Markup

from swardcast.language.voice import Voice
from swardcast.notices.growth_picture import GrowthPicture
from swardcast.notices.healing_picture import HealingPicture
from swardcast.notices.pictures import Sign, Told
from swardcast.notices.promises_picture import PromisesPicture
from swardcast.notices.season_bars import SeasonBars
from swardcast.outlets.pictures.canvas import Canvas
from swardcast.outlets.pictures.days_trade_offs import draw_days_trade_offs
from swardcast.outlets.pictures.first_days import draw_first_days
from swardcast.outlets.pictures.growth import draw_growth
from swardcast.outlets.pictures.healing import draw_healing
from swardcast.outlets.pictures.promises import draw_promises
from swardcast.outlets.pictures.readings import draw_readings
from swardcast.outlets.pictures.sand import draw_sand_in_print, draw_sand_store
from swardcast.outlets.pictures.season import draw_season
from swardcast.outlets.pictures.trade_off import draw_trade_off
from swardcast.outlets.rendering import rendered
from swardcast.planning.date_picture import FirstDays
from swardcast.planning.report_readings_picture import ReadingsPicture
from swardcast.planning.sand_pictures import PrintPicture, StorePicture
from swardcast.planning.together_picture import DaysTradeOffs
from swardcast.planning.trade_off import TradeOff

__all__ = [
    "days_trade_offs_html",
    "first_days_html",
    "growth_html",
    "healing_html",
    "promises_html",
    "readings_html",
    "sand_in_print_html",
    "sand_store_html",
    "season_html",
    "trade_off_html",
]

_WIDE: Final = 24.0
_HIGH: Final = 16.0


def healing_html(picture: HealingPicture, voice: Voice) -> Markup:
    """Render the curve of healing as a part of a notice's page, with a heading.

    Args:
        picture: its facts and words.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return _figure(picture.told, draw_healing(picture), voice, heading=voice.say("picture-healing-heading"))


def growth_html(picture: GrowthPicture, voice: Voice) -> Markup:
    """Render the week's growth, without a heading.

    Args:
        picture: its facts and words.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return _figure(picture.told, draw_growth(picture), voice)


def promises_html(picture: PromisesPicture, voice: Voice) -> Markup:
    """Render the track record, without a heading.

    Args:
        picture: its facts and words.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return _figure(picture.told, draw_promises(picture), voice)


def season_html(bars: SeasonBars, voice: Voice) -> Markup:
    """Render a season, without a heading.

    Args:
        bars: its facts and words.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return _figure(bars.told, draw_season(bars), voice)


def trade_off_html(picture: TradeOff, voice: Voice) -> Markup:
    """Render choices of work as points, without a heading.

    Args:
        picture: its facts and words.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return _figure(picture.told, draw_trade_off(picture), voice)


def sand_store_html(picture: StorePicture, voice: Voice) -> Markup:
    """Render what lies in the sand store, without a heading.

    Args:
        picture: its facts and words.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return _figure(picture.told, draw_sand_store(picture), voice)


def sand_in_print_html(picture: PrintPicture, voice: Voice) -> Markup:
    """Render a year's sand beside amounts in print, without a heading.

    Args:
        picture: its facts and words.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return _figure(picture.told, draw_sand_in_print(picture), voice)


def first_days_html(picture: FirstDays, voice: Voice) -> Markup:
    """Render what each first day of a job costs, without a heading.

    Args:
        picture: its facts and words.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return _figure(picture.told, draw_first_days(picture), voice)


def days_trade_offs_html(picture: DaysTradeOffs, voice: Voice) -> Markup:
    """Render trade-offs between first days for several jobs, without a heading.

    Args:
        picture: its facts and words.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return _figure(picture.told, draw_days_trade_offs(picture), voice)


def readings_html(picture: ReadingsPicture, voice: Voice) -> Markup:
    """Render readings of the course over time, without a heading.

    Args:
        picture: its facts and words.
        voice: the language and the day of the reader.

    Returns:
        HTML; every text is escaped.
    """
    return _figure(picture.told, draw_readings(picture), voice)


def _figure(told: Told, drawing: str, voice: Voice, heading: str = "") -> Markup:
    signs = {row.sign: Markup(_sign(row.sign)) for row in told.key}  # noqa: S704 - shapes without words
    html = rendered(
        "figure.html",
        voice,
        told=told,
        drawing=Markup(drawing),  # noqa: S704 - the library has escaped its words
        signs=signs,
        heading=heading,
    )
    return Markup(html)  # noqa: S704 - escaped above


def _sign(sign: Sign) -> str:
    canvas = Canvas()
    _SIGNS[sign](canvas)
    return canvas.sign(_WIDE, _HIGH)


def _usual(canvas: Canvas) -> None:
    canvas.box("band", (1, 2), 22, 12)
    canvas.line("edge", (1, 2), (23, 2))
    canvas.line("edge", (1, 14), (23, 14))
    canvas.line("line", (1, 8), (23, 8))


def _range(canvas: Canvas) -> None:
    canvas.box("range", (1, 3), 22, 10)


def _promised(canvas: Canvas) -> None:
    _range(canvas)
    canvas.line("likely", (12, 3), (12, 13))


def _normal(canvas: Canvas) -> None:
    _range(canvas)
    canvas.diamond("inside", (12, 8), 8)


def _expected(canvas: Canvas) -> None:
    canvas.box("open", (6, 4), 12, 11)
    canvas.line("whisker", (12, 1), (12, 11))


_SIGNS: Final[dict[Sign, Callable[[Canvas], None]]] = {
    Sign.SEEN: lambda canvas: canvas.dot("seen", (12, 8), 5),
    Sign.SEEN_ELSEWHERE: lambda canvas: canvas.dot("seen-elsewhere", (12, 8), 4.5),
    Sign.CAME: lambda canvas: canvas.diamond("inside", (12, 8), 8),
    Sign.WORK: lambda canvas: canvas.box("work", (1, 4), 22, 8),
    Sign.WAITING: lambda canvas: canvas.line("whisker", (1, 8), (23, 8)),
    Sign.NORMAL: _normal,
    Sign.PROMISED: _promised,
    Sign.FIXTURE: lambda canvas: canvas.triangle("fixture", (12, 3), 5.5),
    Sign.GREW: lambda canvas: canvas.box("work", (6, 1), 12, 14),
    Sign.NOT_RECORDED: lambda canvas: canvas.box("no-record", (6, 1), 12, 14),
    Sign.EXPECTED: _expected,
    Sign.USUAL: _usual,
    Sign.INSIDE: lambda canvas: canvas.diamond("inside", (12, 8), 8),
    Sign.OUTSIDE: lambda canvas: canvas.cross("outside", (12, 8), 6),
    Sign.HEALING: _range,
    Sign.ALLOWANCE: lambda canvas: canvas.box("open", (1, 3), 22, 10),
    Sign.CHOICE: lambda canvas: canvas.dot("seen", (12, 8), 4.5),
    Sign.AS_PLANNED: lambda canvas: canvas.diamond("inside", (12, 8), 7),
    Sign.AIM: lambda canvas: canvas.box("band", (1, 3), 22, 10),
    Sign.BEST_DAY: lambda canvas: canvas.diamond("inside", (12, 8), 6),
    Sign.NO_WORK: lambda canvas: canvas.box("range", (1, 5), 22, 6),
}
