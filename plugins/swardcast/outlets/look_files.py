"""The club's colours as a style sheet, and its badge: files that pages refer to.

A style sheet of its own, since a page that forbids styles in its elements (Content Security Policy Level 3, W3C) can
still have it.
"""

from __future__ import annotations

from typing import Final

from swardcast.artifact import Artifact
from swardcast.records.look import Look

__all__ = ["BADGE_HEIGHT_PX", "STYLE_PATH", "badge_size_px", "look_artifacts"]

STYLE_PATH: Final = "club.css"
BADGE_HEIGHT_PX: Final = 44
"""Height of the badge beside the club's name."""

# On paper the theme prints in black; so the colours are for screens alone.
_STYLE: Final = """/* The colours of this club, made from club.yaml. */
@media screen {{
  :root {{ --club: {band}; --club-ink: {ink}; --stripe: {stripe}; --link: {link}; }}
}}
@media screen and (prefers-color-scheme: dark) {{
  :root {{ --link: {link_by_night}; }}
}}
"""


def look_artifacts(look: Look) -> tuple[Artifact, ...]:
    """Write the style sheet, and the badge where there is one.

    Args:
        look: the club's badge and colours.

    Returns:
        One file or two.
    """
    colours = look.palette
    style = _STYLE.format(
        band=colours.band,
        ink=colours.band_ink,
        stripe=colours.stripe or colours.band,
        link=colours.band,
        link_by_night=colours.link_by_night,
    )
    sheet = Artifact(path=STYLE_PATH, media_type="text/css; charset=utf-8", data=style.encode())
    badge = look.badge
    if badge is None:
        return (sheet,)
    return sheet, Artifact(path=badge.name, media_type=badge.media_type, data=badge.data)


def badge_size_px(look: Look) -> tuple[int, int]:
    """Tell how large the badge stands on a page, so that nothing moves once it has come.

    Args:
        look: the club's badge and colours.

    Returns:
        Width and height, px; 0 and 0 without a badge.
    """
    if look.badge is None:
        return 0, 0
    return round(BADGE_HEIGHT_PX * look.badge.ratio), BADGE_HEIGHT_PX
