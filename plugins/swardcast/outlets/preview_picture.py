"""A card -> the preview picture that shows when somebody pastes a link: 1200 x 630 pixels, PNG.

The size is that which services show uncut, at 1.91 to 1 (common practice, no published source). The same card gives the
same bytes with the same version of Pillow, and nothing in them but the picture.
"""

from __future__ import annotations

from dataclasses import astuple, dataclass
from hashlib import sha256
from io import BytesIO
from typing import TYPE_CHECKING, Final

from swardcast.colours import USUAL_PALETTE
from swardcast.outlets.preview_sign import SIGN_COLOURS, sign_mask
from swardcast.outlets.preview_text import BOLD, REGULAR, Fitted, fit, font_at
from swardcast.records.plan import Play

if TYPE_CHECKING:
    from PIL.Image import Image
    from PIL.ImageDraw import ImageDraw

__all__ = ["HEIGHT_PX", "WIDTH_PX", "Card", "draw_card", "key_of"]

WIDTH_PX: Final = 1200
HEIGHT_PX: Final = 630

PAPER, INK, FAINT, RULE = "#fbf7ec", "#1f1b16", "#5b5347", "#cfc3a9"
"""The colours of the theme by day (tested)."""

_DRAWING: Final = "1"
"""Changes with whatever is drawn otherwise than before, so that no old picture is taken out of a cache."""

_COLOURS: Final = 128  # a third of the bytes; nobody sees the difference

_LEFT: Final = 64
_WIDE: Final = WIDTH_PX - 2 * _LEFT
_BAND: Final = 104
_SIGN: Final = 76


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """The words of a preview picture.

    Args:
        club: the club.
        headline: what, where and when.
        play: how its surfaces play, for the sign; None where that says nothing of this notice.
        state: how the work stands.
        where: its surfaces in a few words.
        label: what the next words are, such as "Back to normal", or "".
        normal: when that is, or "".
        told: when it was told last.
        band: the club's colour, behind its name.
        band_ink: the colour of its name.
    """

    club: str
    headline: str
    play: Play | None
    state: str
    where: str
    label: str
    normal: str
    told: str
    band: str = USUAL_PALETTE.band
    band_ink: str = USUAL_PALETTE.band_ink


def key_of(card: Card) -> str:
    """Name a picture by all that it is drawn from.

    Args:
        card: the card.

    Returns:
        64 hexadecimal digits, other ones for another card, drawing or version of Pillow.
    """
    from PIL import __version__  # noqa: PLC0415 - loaded late

    parts = [_DRAWING, __version__, *(repr(part) for part in astuple(card))]
    return sha256("\n".join(parts).encode("utf-8")).hexdigest()


def draw_card(card: Card) -> bytes:
    """Draw the picture.

    Args:
        card: the card, its words as `preview_text.writable` gives them.

    Returns:
        A PNG of `WIDTH_PX` x `HEIGHT_PX`, without a chunk of text or time.
    """
    from PIL import Image, ImageDraw  # noqa: PLC0415 - loaded late: only a build needs it

    picture = Image.new("RGB", (WIDTH_PX, HEIGHT_PX), PAPER)
    draw = ImageDraw.Draw(picture)
    _draw_club(picture, draw, card)
    _write(draw, _fit(card.headline, 226, (76, 68, 60, 54, 48, 42, 36), BOLD), _LEFT, 126, INK)
    _draw_state(picture, draw, card)
    _draw_normal(draw, card)
    data = BytesIO()
    few = picture.quantize(_COLOURS, method=Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE)
    few.save(data, "PNG", compress_level=6)
    return data.getvalue()


def _fit(text: str, height_px: int, sizes_px: tuple[int, ...], weight: int, width_px: int = _WIDE) -> Fitted:
    return fit(text, width_px=width_px, height_px=height_px, sizes_px=sizes_px, weight=weight)


def _write(draw: ImageDraw, text: Fitted, left: int, top: int, colour: str) -> None:
    font = font_at(text.size_px, text.weight)
    for number, line in enumerate(text.lines):
        middle = top + number * text.line_px + text.line_px // 2
        draw.text((left, middle), line, font=font, fill=colour, anchor="lm")


def _draw_club(picture: Image, draw: ImageDraw, card: Card) -> None:
    """The club's name on its colour, behind the site's mark."""
    draw.rectangle((0, 0, WIDTH_PX, _BAND - 1), fill=card.band)
    picture.paste(card.band_ink, (_LEFT, (_BAND - 60) // 2), sign_mask(Play.OPEN, 60))
    name = _fit(card.club, 60, (44, 38, 32), BOLD, _WIDE - 84)
    _write(draw, name, _LEFT + 84, (_BAND - name.height_px) // 2, card.band_ink)


def _draw_state(picture: Image, draw: ImageDraw, card: Card) -> None:
    left, top, colour = _LEFT, 358, INK
    if card.play is not None:
        colour = SIGN_COLOURS[card.play]
        picture.paste(colour, (left, top), sign_mask(card.play, _SIGN))
        left += _SIGN + 24
    width = WIDTH_PX - _LEFT - left
    _write(draw, _fit(card.state, 42, (36, 32), BOLD, width), left, top - 2, colour)
    _write(draw, _fit(card.where, 42, (34, 30, 26), REGULAR, width), left, top + 40, INK)


def _draw_normal(draw: ImageDraw, card: Card) -> None:
    if card.normal:
        draw.rectangle((_LEFT, 456, WIDTH_PX - _LEFT - 1, 458), fill=RULE)
        _write(draw, _fit(card.label, 34, (28,), REGULAR), _LEFT, 472, FAINT)
        _write(draw, _fit(card.normal, 62, (44, 40, 36, 32, 28, 25), BOLD), _LEFT, 506, INK)
    _write(draw, _fit(card.told, 34, (26, 22), REGULAR), _LEFT, 574, FAINT)
