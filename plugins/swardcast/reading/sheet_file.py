"""A sheet of log entries, as text or as a workbook -> rows of cells by our words for the columns.

Of a workbook only values are read, as they were last worked out; formulas and macros are never run.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from io import BytesIO, StringIO
from itertools import islice
from typing import Any, Final
from zipfile import BadZipFile, ZipFile
from zlib import error as ZlibError  # noqa: N812 - as other errors are called

from swardcast.errors import Problem, nearest
from swardcast.reading.stamps import stamp_pattern
from swardcast.records.log_sheet import LogSheet

__all__ = ["MOST_BYTES", "SheetRow", "sheet_rows_from"]

MOST_BYTES: Final = 8_000_000
"""A form's answers of many years: judgement."""
_MOST_UNPACKED: Final = 20_000_000  # what such a workbook unpacks to at most: judgement
_MOST_ROWS: Final = 5_000
_MOST_COLUMNS: Final = 200
_MOST_PREAMBLE: Final = 20  # rows above the header: judgement
# openpyxl has no error of its own for a file that is damaged; an XML error is a SyntaxError.
_OF_DAMAGE: Final = (
    ArithmeticError, AttributeError, BadZipFile, EOFError, LookupError, NotImplementedError, OSError, RecursionError,
    SyntaxError, TypeError, ValueError, ZlibError,
)  # fmt: skip
_COMMA: Final = re.compile(r"(?<=\d),(?=\d)")
_QUANTITIES: Final = ("tine", "blade", "spacing", "depth", "sand", "seed", "left", "cover", "speed", "moisture", "cut")


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRow:
    """One row that is not empty.

    Args:
        number: its number as the sheet shows it, from 1.
        stamp: its day and time, naive: the club's clock.
        cells: what it says, by our words for the columns; empty cells are left out.
    """

    number: int
    stamp: datetime
    cells: Mapping[str, str]


_Cells = Sequence[Any]


def sheet_rows_from(data: bytes, *, file: str, form: LogSheet, problems: list[Problem]) -> list[SheetRow]:
    """Read a sheet.

    Args:
        data: the file.
        file: its name, for problems; one that ends with ".xlsx" or ".xlsm" is a workbook, else it is text.
        form: how the sheet is laid out.
        problems: where problems are added, each with the sheet, row and column.

    Returns:
        The rows below the header; rows with a problem are left out.
    """
    reader = _SheetReader(file=file, form=form, problems=problems)
    if len(data) > MOST_BYTES:
        reader.say(None, "", f"more than {MOST_BYTES / 1e6:.0f} MB", "a sheet of a form's answers")
        return []
    is_workbook = file.lower().endswith((".xlsx", ".xlsm"))
    rows = reader.workbook(data) if is_workbook else reader.text(data)
    return list(reader.rows(rows)) if rows is not None else []


class _SheetReader:
    def __init__(self, *, file: str, form: LogSheet, problems: list[Problem]) -> None:
        self._file, self._form, self._problems = file, form, problems

    def say(self, row: int | None, column: str, found: str, expected: str, hint: str = "") -> None:
        field = f"column {column!r}" if column else ""
        self._problems.append(
            Problem(file=self._file, line=row, field=field, found=found, expected=expected, hint=hint)
        )

    def text(self, data: bytes) -> list[_Cells] | None:
        try:
            text = data.decode("utf-8-sig")
        except UnicodeDecodeError:
            try:
                text = data.decode(self._form.encoding)
            except UnicodeDecodeError as error:
                line = data[: error.start].count(b"\n") + 1
                hint = "Say in club.yaml how it is saved, as in 'saved as: Windows-1252'."
                self.say(line, "", "a character that is not UTF-8", "text saved as UTF-8", hint)
                return None
        rows = csv.reader(StringIO(text.replace("\0", ""), newline=""), delimiter=self._form.delimiter)
        try:
            return list(islice(rows, _MOST_ROWS + _MOST_PREAMBLE + 1))
        except csv.Error as error:
            self.say(None, "", f"text that is no CSV ({error})", "values in columns")
            return None

    def workbook(self, data: bytes) -> list[_Cells] | None:
        try:
            with ZipFile(BytesIO(data)) as packed:
                unpacked = sum(part.file_size for part in packed.infolist())
            if unpacked > _MOST_UNPACKED:
                self.say(None, "", f"a workbook that unpacks to {unpacked / 1e6:.0f} MB", "a sheet of a form's answers")
                return None
            return self._sheet(data)
        except _OF_DAMAGE:
            hint = "Open it in the program that it comes from, and save it anew."
            self.say(None, "", "a file that is no workbook, or is damaged", "a sheet saved as .xlsx or as CSV", hint)
            return None

    def _sheet(self, data: bytes) -> list[_Cells] | None:
        from openpyxl import load_workbook  # noqa: PLC0415 - only an import needs it

        book = load_workbook(BytesIO(data), read_only=True, data_only=True, keep_links=False, keep_vba=False)
        try:
            name = self._form.sheet or book.sheetnames[0]
            if name not in book.sheetnames:
                expected = f"one of: {', '.join(book.sheetnames)}"
                self.say(None, "", f"no sheet {name!r}", expected, nearest(name, book.sheetnames))
                return None
            self._file = f"{self._file}, {name}"
            rows: list[_Cells] = []
            for row in book[name].iter_rows(max_col=_MOST_COLUMNS):
                rows.append([_of_cell(cell) for cell in row])
                if len(rows) > _MOST_ROWS + _MOST_PREAMBLE:
                    break
            return rows
        finally:
            book.close()

    def rows(self, rows: Sequence[_Cells]) -> Iterator[SheetRow]:
        header = self._header(rows)
        if header is None:
            return
        first, places = header
        if len(rows) - first > _MOST_ROWS:
            self.say(None, "", f"more than {_MOST_ROWS} rows", "fewer; keep old years in a sheet of their own")
            return
        for number, row in enumerate(rows[first:], start=first + 1):
            raw = {word: row[place] for word, place in places.items() if place < len(row)}
            if not any(str(value if value is not None else "").strip() for value in raw.values()):
                continue
            stamp = self._stamp(raw, number)
            if stamp is not None:
                cells = {word: text for word in raw if word not in ("day", "time") and (text := self._text(word, raw))}
                yield SheetRow(number=number, stamp=stamp, cells=cells)

    def _header(self, rows: Sequence[_Cells]) -> tuple[int, dict[str, int]] | None:
        wanted = {word: _plain(column) for word, column in self._form.columns.items()}
        best, best_count = 0, 0
        for place, row in enumerate(rows[:_MOST_PREAMBLE]):
            there = {_plain(cell) for cell in row}
            count = sum(column in there for column in wanted.values())
            if count > best_count:
                best, best_count = place, count
        cells = [_plain(cell) for cell in rows[best]] if rows else []
        shown = [str(cell) for cell in rows[best] if str(cell or "").strip()] if rows else []
        faulty = False
        for word, column in wanted.items():
            if (times := cells.count(column)) != 1:
                name = self._form.columns[word]
                found = f"no column {name!r}" if not times else f"the column {name!r} {times} times"
                expected = f"the columns that 'log sheet' in club.yaml names; here are: {', '.join(shown) or 'none'}"
                self.say(best + 1, "", found, expected, nearest(name, shown) if not times else "")
                faulty = True
        return None if faulty else (best + 1, {word: cells.index(column) for word, column in wanted.items()})

    def _stamp(self, raw: Mapping[str, Any], number: int) -> datetime | None:
        day, clock = raw.get("day"), raw.get("time")
        column = self._form.columns["day"]
        if isinstance(day, datetime) and "time" not in self._form.columns:
            return day.replace(tzinfo=None)
        pattern = stamp_pattern(self._form.written)
        text = _as_stamp(day, clock, self._form.written)
        if isinstance(day, date) and isinstance(clock, time):
            return datetime.combine(day.date() if isinstance(day, datetime) else day, clock)
        stamp = pattern.read(text)
        if stamp is None:
            found = repr(text) if text else "nothing"
            expected = f"a day and time that exist, such as {pattern.sample!r}"
            self.say(number, column, found, expected, "See 'day is written' in club.yaml.")
            return None
        return stamp.replace(tzinfo=None)

    def _text(self, word: str, raw: Mapping[str, Any]) -> str:
        value = raw[word]
        if isinstance(value, datetime | date):
            return value.strftime("%Y-%m-%d")
        text = "" if value is None else str(value).strip()
        if word in _QUANTITIES and self._form.decimal_comma:
            text = _COMMA.sub(".", text)
        return text


def _of_cell(cell: Any) -> Any:
    """The value that a cell shows: whole numbers without a point, shares in percent."""
    value = cell.value
    if isinstance(value, timedelta):  # a time of day that a program has stored as a span
        return (datetime(2000, 1, 1) + value).time()  # noqa: DTZ001 - only the time of day is kept
    if isinstance(value, int | float) and not isinstance(value, bool):
        if "%" in (cell.number_format or ""):
            return f"{100 * value:.10g} %"
        return f"{value:.10g}"
    return value


def _as_stamp(day: Any, clock: Any, written: str) -> str:
    """Day and time as one text in the form's way, also where a cell of a workbook holds a real day or time."""
    if isinstance(day, datetime | date):
        named = {"year": f"{day:%Y}", "month": f"{day:%m}", "day": f"{day:%d}"}
        day = re.sub("year|month|day", lambda word: named[word[0]], written.partition(" ")[0])
    if isinstance(clock, time):
        clock = f"{clock:%H:%M}"
    return " ".join(str(part).strip() for part in (day, clock) if part not in (None, ""))


def _plain(cell: Any) -> str:
    return " ".join(str("" if cell is None else cell).replace("\ufeff", "").split()).lower()
