"""`swardcast start DIR --forge NAME`: the file by which a forge builds the club's site and publishes it."""

from __future__ import annotations

from datetime import UTC, datetime
from importlib.resources import files
from pathlib import Path
from string import Template
from typing import Final
from zoneinfo import ZoneInfo

from swardcast.errors import SwardcastError
from swardcast.version import __version__

__all__ = ["FORGES", "workflow_path", "write_workflow"]

FORGES: Final = {"github": ".github/workflows/course-notices.yml", "gitlab": ".gitlab-ci.yml"}
"""Forges whose files can be held against a published schema, and where each looks for its own."""

_HOUR, _MINUTE = 5, 17
"""Before the first players, and at an odd minute, when fewer others ask the same of the forge; judgement."""


def workflow_path(folder: Path, forge: str) -> Path:
    """Find the place of a forge's file in a club folder that is its repository.

    Args:
        folder: the club folder.
        forge: one of `FORGES`.

    Returns:
        The place.

    Raises:
        SwardcastError: when there is such a file already.
    """
    path = folder / FORGES[forge]
    if path.exists():
        message = f"{path} is there already; delete it first if it is to be made anew"
        raise SwardcastError(message)
    return path


def write_workflow(folder: Path, forge: str, zone: ZoneInfo, year: int) -> None:
    """Write a forge's file.

    Args:
        folder: the club folder.
        forge: one of `FORGES`.
        zone: the club's time zone; where the forge counts in UTC, the morning is that of January, and summer time
            moves it by an hour.
        year: whose January.
    """
    morning = datetime(year, 1, 15, _HOUR, _MINUTE, tzinfo=zone).astimezone(UTC)
    words = {"cron": f"{morning.minute} {morning.hour} * * *", "zone": zone.key, "version": __version__}
    text = (files("swardcast") / "start" / f"{forge}.yml").read_text(encoding="utf-8")
    path = workflow_path(folder, forge)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(Template(text).substitute(words), encoding="utf-8")
