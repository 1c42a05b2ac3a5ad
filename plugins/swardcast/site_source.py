"""Where the site's sources and the demo club are: beside the package in a wheel, above it in a checkout."""

from __future__ import annotations

from pathlib import Path

from swardcast.errors import SwardcastError

__all__ = ["demo_club", "site_source"]


def _beside_or_above(inside: str, above: str) -> Path:
    package = Path(__file__).resolve().parent
    for candidate in (package / inside, package.parents[1] / above):
        if candidate.is_dir():
            return candidate
    message = f"this installation of Swardcast has no folder {inside!r}; install it again"
    raise SwardcastError(message)


def site_source() -> Path:
    """Find the folder with Pelican's settings, the content and the theme.

    Returns:
        The folder.

    Raises:
        SwardcastError: when the installation is not whole.
    """
    return _beside_or_above("_site", "site_src")


def demo_club() -> Path:
    """Find the invented club folder.

    Returns:
        The folder.

    Raises:
        SwardcastError: when the installation is not whole.
    """
    return _beside_or_above("_demo", "demo_content")
