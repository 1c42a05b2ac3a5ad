"""The corpus: broken club folders by name, each with the place and the words that have to be told."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from tests.bad_input.mutations import Row
from tests.bad_input.rows import calendars, club, course, files, log, sheets, weather

__all__ = ["BY_NAME", "ROWS"]

_CHECKED: Final[tuple[Row, ...]] = (
    *files.ROWS, *club.ROWS, *course.ROWS, *log.ROWS, *weather.ROWS, *calendars.ROWS, *sheets.ROWS,
)  # fmt: skip
_ALSO_BUILT: Final = (
    "club.yaml in UTF-16", "plan/2027-late-summer.yaml with a billion laughs", "an id twice",
    "a day that does not exist", "a moment that the clocks skip", "100,000 lines that are none",
    "a rule on the 366th day in January", "a badge that runs a script", "an empty folder of pages",
    "a template with an open tag",
)  # fmt: skip
"""A build stops at the same place with the same words; some of each sort show it, as a build takes longer to load."""
ROWS: Final[tuple[Row, ...]] = (
    *_CHECKED,
    *(replace(row, name=f"built: {row.name}", command=("build",)) for row in _CHECKED if row.name in _ALSO_BUILT),
)
BY_NAME: Final = {row.name: row for row in ROWS}
