"""Ways to break a club folder and to compare what is said about it."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from swardcast.errors import InputNeedsAttention, Problem
from swardcast.reading.folder import read_club_folder

CLUB, SURFACES, PLAN = "club.yaml", "surfaces.yaml", "plan/2027-late-summer.yaml"
OBSERVED, HISTORY = "weather/observed.csv", "weather/history/1997-2026.csv"
FORECAST = "weather/forecast/2027-09-14T0600.csv"
DONE = "log/2027/2027-08-23-1140-greens-1-to-3-done.md"
HELD_UP = "log/2027/2027-08-25-0710-held-up-by-rain.md"
MORNING = "log/2027/2027-08-25-0635-morning.md"
CORRECTION = "log/2027/2027-08-24-1815-not-the-12th.md"
POSTPONED = "log/2027/2027-08-26-1630-bunkers-postponed.md"
COUNTED = "log/2027/2027-09-03-1120-green-9-counted.md"

Break = Callable[[Path], object]


def problems_in(club: Path) -> list[Problem]:
    """All that is said about a club folder; nothing when it reads whole. Faults in files of planning are in the records."""
    try:
        return list(read_club_folder(club).planning.faults)
    except InputNeedsAttention as error:
        return list(error.problems)


def replace(path: Path, old: str, new: str) -> None:
    """Replace the first occurrence, which must be there."""
    text = path.read_text(encoding="utf-8")
    assert old in text, f"{old!r} does not stand in {path.name}"
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def fault(name: str, old: str, new: str, *says: str) -> Any:
    """A case: its readable id, text to replace, replacement, and every problem that follows, word for word.

    In a problem's text "…" stands for any words, and "line «text»" for the number of the first line of the broken
    file that holds that text, so that the demo's words may change.
    """
    return pytest.param(old, new, says, id=name)


def assert_said(club: Path, file: str, says: tuple[str, ...]) -> None:
    """The folder has exactly these problems, all in this file, in this order."""
    problems = problems_in(club)
    told = "\n".join(f"{problem.file}: {problem}" for problem in problems)
    lines = (club / file).read_text(encoding="utf-8").splitlines() if "«" in "".join(says) else []
    assert [problem.file for problem in problems] == [file] * len(says), told
    for problem, said in zip(problems, says, strict=True):
        numbered = re.sub("«(.+?)»", lambda mark: str(_first_line(lines, mark[1])), said)
        assert re.fullmatch(re.escape(numbered).replace("…", ".+"), str(problem)), told


def _first_line(lines: list[str], text: str) -> int:
    return next(number for number, line in enumerate(lines, start=1) if text in line)
