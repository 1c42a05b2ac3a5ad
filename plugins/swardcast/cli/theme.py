"""The theme that a build or a check takes, and Pelican's settings with it."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Any

from swardcast.errors import SwardcastError
from swardcast.site_source import site_source

__all__ = ["add_theme_option", "settings_of"]


def add_theme_option(options: argparse.ArgumentParser) -> None:
    """Add --theme, for commands that look at templates."""
    options.add_argument("--theme", metavar="DIR", type=Path, help="a theme of your own (default: ours)")


def settings_of(club: Path, theme: Path | None, **more: Any) -> Any:
    """Read Pelican's settings as a build has them.

    Args:
        club: the club folder.
        theme: a theme of the club's own, or None for ours.
        **more: further settings, by name.

    Returns:
        The settings.

    Raises:
        SwardcastError: when there is no such theme.
    """
    from pelican.settings import read_settings

    override: dict[str, Any] = {"SWARDCAST_CLUB": str(club.resolve()), **more}
    if theme is not None:
        override["THEME"] = str(theme.resolve()) if theme.exists() else str(theme)
    try:
        return read_settings(str(site_source() / "pelicanconf.py"), override=override)
    except ValueError as error:  # of what is set here only the theme can be wrong
        message = f"found no theme at {theme}; expected a folder with templates and static files"
        raise SwardcastError(message) from error
