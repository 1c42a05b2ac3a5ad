"""The block `log sheet` of club.yaml -> how the club's sheet of log entries is laid out."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Final

from pydantic import ValidationError, model_validator

from swardcast.errors import InputNeedsAttention, Problem, nearest
from swardcast.reading.files import Files
from swardcast.reading.schema import Model, Text, one_of, wrong, wrong_name
from swardcast.reading.stamps import stamp_pattern
from swardcast.reading.weather_block import DELIMITERS, ENCODINGS, Decimals, Parted, Saved
from swardcast.records.log_sheet import LogSheet
from swardcast.records.plan import Play

__all__ = ["SHEET_COLUMNS", "SHEET_KINDS", "LogSheetBlock", "read_log_sheet"]

SHEET_COLUMNS: Final = (
    "day", "time", "kind", "job", "surfaces", "greens", "tees", "approaches", "fairways", "bunkers", "because", "play",
    "tine", "blade", "spacing", "depth", "passes", "sand", "seed", "left", "counted", "cover", "speed", "firmness",
    "moisture", "cut", "organic-matter", "to", "cause", "from", "until", "open", "care", "temporary", "closed", "why",
    "limits", "by", "words", "private-note",
)  # fmt: skip
"""What a column may hold, in the words of `swardcast log`."""

SHEET_KINDS: Final = {
    "morning status": "morning", "work started": "started", "work done": "done", "work resumed": "resumed",
    "observation": "seen", "back to normal": "normal", "growth held back": "held-back", "note to members": "note",
    **{word: word for word in (
        "morning", "started", "done", "held-up", "resumed", "seen", "normal", "postponed", "forward", "called-off",
        "held-back", "note",
    )},
    "held up": "held-up",
}  # fmt: skip
"""Words of `swardcast log` by the words that club.yaml may use for them."""


class LogSheetBlock(Model):
    """The fields of the block `log sheet`."""

    columns: dict[str, Text]
    kinds: dict[str, Text] = {}
    plays: dict[str, Annotated[Play, one_of(Play)]] = {}
    day_is_written: Text = "year-month-day"
    time_is_written: Text = "hour:minute"
    values_are_parted_by: Annotated[Parted, one_of(Parted)] = Parted.COMMA
    decimals: Annotated[Decimals, one_of(Decimals)] = Decimals.POINT
    saved_as: Annotated[Saved, one_of(Saved)] = Saved.UTF_8
    sheet: Text | None = None

    @model_validator(mode="after")
    def _is_whole(self) -> LogSheetBlock:
        for name in self.columns:
            if name not in SHEET_COLUMNS:
                raise wrong_name(("columns", name), f"one of: {', '.join(SHEET_COLUMNS)}", nearest(name, SHEET_COLUMNS))
        lacking = [name for name in ("day", "kind") if name not in self.columns]
        if lacking:
            raise wrong(", ".join(self.columns), f"also {' and '.join(lacking)} among the columns")
        for word in self.kinds.values():
            if word.lower() not in SHEET_KINDS:
                raise wrong(word, f"one of: {', '.join(SHEET_KINDS)}", nearest(word, SHEET_KINDS))
        if not stamp_pattern(self.written).has_time:
            raise wrong("a day without a time", "'hour' in 'day is written', or a column 'time'")
        return self

    @property
    def written(self) -> str:
        """Day and time as one text, as the reader joins them."""
        return self.day_is_written + (f" {self.time_is_written}" if "time" in self.columns else "")

    def record(self) -> LogSheet:
        """Make the record."""
        own = {word.lower(): SHEET_KINDS[kind.lower()] for word, kind in self.kinds.items()}
        return LogSheet(
            columns=dict(self.columns),
            kinds={**SHEET_KINDS, **own},
            plays={word.lower(): play.value for word, play in self.plays.items()},
            written=self.written,
            delimiter=DELIMITERS[self.values_are_parted_by],
            decimal_comma=self.decimals is Decimals.COMMA,
            encoding=ENCODINGS[self.saved_as],
            sheet=self.sheet or "",
        )


def read_log_sheet(folder: Path) -> LogSheet:
    """Read how the sheet is laid out.

    Assumes that the folder reads without problems.

    Args:
        folder: the club folder.

    Returns:
        The form of the sheet.

    Raises:
        InputNeedsAttention: when club.yaml has no such block.
    """
    document = Files(folder, []).club_file()
    told = document.value.get("log sheet") if document is not None else None
    try:
        return LogSheetBlock.model_validate(told or {}).record()
    except ValidationError as error:
        expected = (
            "a block that says what the columns of your sheet are called; 'swardcast start' leaves one as remarks"
        )
        problem = Problem(file="club.yaml", field="log sheet", found="nothing", expected=expected)
        raise InputNeedsAttention([problem]) from error
