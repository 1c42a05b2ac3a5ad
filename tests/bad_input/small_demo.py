"""The demo club, small enough to be read some hundred times a second: one log entry of each kind, few days of weather."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Final

from tests.conftest import DEMO

__all__ = ["KEPT_ENTRIES", "make_small_demo"]

KEPT_ENTRIES: Final = (
    "2027-05-10-0900-programme",
    "2027-07-07-1130-dry-spell",
    "2027-08-20-1340-practice-green-done",
    "2027-08-23-0655-greens-1-to-6-started",
    "2027-08-23-1140-greens-1-to-3-done",
    "2027-08-24-1550-greens-10-to-12-done",
    "2027-08-24-1815-not-the-12th",
    "2027-08-25-0635-morning",
    "2027-08-25-0710-held-up-by-rain",
    "2027-08-26-0705-resumed",
    "2027-08-26-1630-bunkers-postponed",
    "2027-08-30-1530-greens-1-to-6-closing",
    "2027-09-14-0650-morning",
)
_KEPT_DAYS: Final = 40


def make_small_demo(folder: Path) -> Path:
    """Copy the demo without most of its log and weather.

    Args:
        folder: where it goes; it must not exist.

    Returns:
        The folder, which reads whole.
    """
    shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns("*.py", "README.md"))
    for entry in (folder / "log").glob("*/*.md"):
        if entry.stem not in KEPT_ENTRIES:
            entry.unlink()
    for weather in (folder / "weather").glob("**/*.csv"):
        header, *days = weather.read_text(encoding="utf-8").splitlines()
        weather.write_text("\n".join([header, *days[-_KEPT_DAYS:]]) + "\n", encoding="utf-8")
    return folder
