"""Small clubs, whose sites are built in half a second, and many of them."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Final

from swardcast.cli.main import run

__all__ = ["AS_OF", "break_club", "copies", "unlike_clubs"]

AS_OF: Final = "2027-09-14 09:30"
_KEPT_DAYS: Final = 3 * 365
VARIANTS: Final[dict[str, dict[str, str]]] = {
    "heath": {},
    "links": {"diameter: 13 mm": "diameter: 8 mm", "Our Golf Club": "Dunes & <Links>"},
    "park": {"starts: 2027-09-20": "starts: 2027-10-04", "language: en-GB": "language: en-US"},
}
"""What is changed in the folder that `start` makes, so that no two have the same site."""


def make_small_club(folder: Path, changes: dict[str, str]) -> Path:
    """Make the club of `swardcast start`, with three past years only, and change some of its words."""
    assert run(["start", str(folder), "--today", "2027-09-14"]) == 0
    (history,) = folder.glob("weather/history/*.csv")
    header, *days = history.read_text(encoding="utf-8").splitlines()
    history.write_text("\n".join([header, *days[-_KEPT_DAYS:]]) + "\n", encoding="utf-8")
    for before, after in changes.items():
        files = [file for file in sorted(folder.glob("**/*.yaml")) if before in file.read_text(encoding="utf-8")]
        assert files, before
        for file in files:
            file.write_text(file.read_text(encoding="utf-8").replace(before, after), encoding="utf-8")
    return folder


def unlike_clubs(folder: Path) -> dict[str, Path]:
    """One club of each variant."""
    return {name: make_small_club(folder / name, changes) for name, changes in VARIANTS.items()}


def copies(clubs: dict[str, Path], folder: Path, count: int) -> dict[str, str]:
    """Copy clubs by turns until there are so many; gives the variant of each by its folder below."""
    names = [*clubs]
    made = {}
    for number in range(count):
        name, club = names[number % len(names)], f"part-{number % 4}/club-{number:02}"
        shutil.copytree(clubs[name], folder / club)
        made[club] = name
    return made


def break_club(folder: Path) -> None:
    """Misspell a field, so that no build can be made."""
    plan = folder / "plan" / "2027.yaml"
    plan.write_text(plan.read_text(encoding="utf-8").replace("surfaces a day:", "surfaces the day:"), encoding="utf-8")
