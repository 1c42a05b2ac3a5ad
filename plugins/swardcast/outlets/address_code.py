"""A short address as a code to be photographed."""

from __future__ import annotations

from collections.abc import Callable
from hashlib import sha256
from typing import Final

from markupsafe import Markup

__all__ = ["Keep", "address_code"]

Keep = Callable[[str, Callable[[], bytes]], bytes]
"""Gives what was drawn before under a name of 64 hexadecimal digits, or draws it."""

_DRAWING: Final = "1"
"""Changes with whatever is drawn otherwise than before, so that no old code is taken for one of today."""


def address_code(address: str, keep: Keep) -> Markup:
    """Draw an address as a code; level M is still read with 15 % of it spoilt (ISO/IEC 18004).

    Args:
        address: the address, in ASCII.
        keep: gives what was drawn before; an address is for life, and so is its code.

    Returns:
        SVG to stand in a page.
    """
    import segno  # noqa: PLC0415 - for posters alone

    def draw() -> bytes:
        drawn = segno.make(address, error="m", micro=False, boost_error=False)
        return str(drawn.svg_inline(border=4, omitsize=True, dark="#000", light="#fff")).encode("ascii")

    name = sha256("\n".join(("code", _DRAWING, segno.__version__, address)).encode("ascii")).hexdigest()
    return Markup(keep(name, draw).decode("ascii"))  # noqa: S704 - shapes alone
