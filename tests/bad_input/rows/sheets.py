"""Sheets that `swardcast log import` is given: text, and workbooks."""

from __future__ import annotations

from collections.abc import Callable
from io import BytesIO
from typing import Final
from zipfile import ZIP_DEFLATED, ZipFile

import openpyxl

from tests.bad_input.mutations import MEGABYTE, Row, broken, put
from tests.bad_input.readers import cells, packed_sheet, sheet_xml

__all__ = ["ROWS"]

_FORM: Final = (
    "log sheet:\n  columns: {day: Date, time: Time, kind: What, job: Job, surfaces: Where}\n"
    "  day is written: day/month/year\n  values are parted by: semicolon\n  saved as: Windows-1252\n"
)  # fmt: skip
_HEADER: Final = ("Date", "Time", "What", "Job", "Where")
_GOOD: Final = ("09/09/2027", "15:40", "note", "", "")
_LAUGHS: Final = (
    '<!DOCTYPE x [<!ENTITY a0 "haha">'
    + "".join(f'<!ENTITY a{n} "{f"&a{n - 1};" * 10}">' for n in range(1, 10))
    + "]>"
)  # fmt: skip


def _workbook(*rows: tuple[str, ...], title: str = "Answers") -> bytes:
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    sheet.title = title
    for row in rows:
        sheet.append(row)
    stream = BytesIO()
    book.save(stream)
    return stream.getvalue()


def _packed(rows: str, before: str = "") -> bytes:
    return packed_sheet(sheet_xml(rows, before))


def _bomb() -> bytes:
    stream = BytesIO()
    with ZipFile(stream, "w", ZIP_DEFLATED) as packed:
        packed.writestr("xl/worksheets/sheet1.xml", bytes(400 * MEGABYTE))
    return stream.getvalue()


def _lying_bomb() -> bytes:
    """A part that unpacks to 100 MB and says that it has 10 bytes."""
    body = bytes(100 * MEGABYTE)
    data = packed_sheet(body)
    return data.replace(len(body).to_bytes(4, "little"), (10).to_bytes(4, "little"))


Content = str | bytes | Callable[[], bytes]


def _sheet(
    name: str,
    content: Content,
    line: int | None,
    field: str,
    *said: str,
    file: str = "answers.xlsx",
    more: bool = False,
) -> Row:
    how = put(content.encode() if isinstance(content, str) else content, line)
    command = ("log", "import", f"../{file}", "--yes")
    return broken(name, f"../{file}", how, field, *said, at=file, command=command, block=_FORM, more=more)


def _text(name: str, content: Content, line: int | None, field: str, *said: str, more: bool = False) -> Row:
    return _sheet(name, content, line, field, *said, file="answers.csv", more=more)


_HEAD: Final = ";".join(_HEADER) + "\n"
_TOP: Final = f'<row r="1">{cells(*_HEADER)}</row>'

ROWS = (
    _text("a sheet of a day that there is not", _HEAD + "30/02/2027;15:40;note;;\n", 2, "column 'Date'", "30/02/2027"),
    _text("a sheet of no time", _HEAD + "09/09/2027;;note;;\n", 2, "column 'Date'", "09/09/2027"),
    _text("a sheet without a column", "Date;Time;What;Job\n09/09/2027;15:40;note;\n", 1, "", "no column 'Where'"),
    _text("a sheet with a column twice", "Date;" + _HEAD, 1, "", "the column 'Date' 2 times"),
    _text("an empty sheet", "", 1, "", "no column", more=True),
    _text("a sheet of an unknown kind", _HEAD + "09/09/2027;15:40;danced;;\n", 2, "column 'What'", "danced"),
    _text("a sheet of a job that there is not", _HEAD + "09/09/2027;15:40;done;drains;greens 1-3\n", 2, "column 'Job'", "drains"),
    _text("a sheet with a letter that no encoding has", (_HEAD + "09/09/2027;15:40;note;\x81;\n").encode("latin-1"), 2, "", "not UTF-8"),
    _text("a sheet with a cell of 200,000 letters", _HEAD + "1" * 200_000 + "\n", None, "", "no CSV"),
    _text("a sheet of 10 MB", lambda: b"a" * (10 * MEGABYTE), None, "", "more than 8 MB"),
    _text("a sheet of 6,000 rows", _HEAD + "09/09/2027;15:40;note;;\n" * 6000, None, "", "more than 5000 rows"),
    _text("a sheet with an open quotation mark", _HEAD + '09/09/2027;15:40;"note;;\n09/09/2027;15:40;note;;\n', 2, "column 'What'", "note"),
    _sheet("a workbook that is a text", "Date,Time\n", None, "", "no workbook"),
    _sheet("an empty workbook", b"", None, "", "no workbook"),
    _sheet("a workbook cut off", _workbook(_HEADER, _GOOD)[:-400], None, "", "no workbook"),
    _sheet("a workbook with its middle overwritten", _workbook(_HEADER, _GOOD).replace(b"xl/workbook.xml", b"xl/wurkbook.xml"), None, "", "no workbook"),
    _sheet("a workbook that unpacks to 400 MB", _bomb, None, "", "unpacks to 400 MB"),
    _sheet("a workbook that lies about its size", _lying_bomb, None, "", "no workbook"),
    _sheet("a workbook with a billion laughs", _packed(f'<row r="1">{cells("&a9;")}</row>', _LAUGHS), None, "", "no workbook"),
    _sheet("a workbook of brackets", _packed("<row>" * 50_000), None, "", "no workbook"),
    _sheet("a workbook that asks for a file", _packed(f'<row r="1">{cells("&x;")}</row>', '<!DOCTYPE x [<!ENTITY x SYSTEM "file:///etc/passwd">]>'), None, "", ""),
    _sheet("a workbook with words that it has not", _packed(f'<row r="1">{cells(*_HEADER)}<c t="s"><v>99</v></c></row>'), None, "", "no workbook"),
    _sheet("a workbook with a row before the first", _packed(f'<row r="-5">{cells(*_HEADER)}</row>'), 1, "", "no column", more=True),
    _sheet("a workbook with a number that is none", _packed(_TOP + '<row r="2"><c><v>1e999</v></c></row>'), None, "", ""),
    _sheet("a workbook of a day beyond calendars", _packed(_TOP + '<row r="2"><c t="d"><v>99999-01-01</v></c><c><v>x</v></c></row>'), None, "", ""),
    _sheet("a workbook with a formula that nobody worked out", _workbook(_HEADER, ("=1+1", "15:40", "note", "", "")), 2, "column 'Date'", "15:40"),
    _sheet("a workbook with an error in a cell", _packed(_TOP + f'<row r="2"><c t="e"><v>#REF!</v></c>{cells("15:40", "note")}</row>'), 2, "column 'Date'", "#REF!"),
    _sheet("a workbook with its last row at the end of all rows", _packed(_TOP + f'<row r="1048576">{cells(*_GOOD)}</row>'), None, "", "more than 5000 rows"),
    Row(name="a sheet that is all right", file="../answers.csv", how=put((_HEAD + "09/09/2027;15:40;done;greens-renovation-2027;greens 7\n").encode(), None), fine=True,
        command=("log", "import", "../answers.csv", "--yes", "--quiet"), block=_FORM),
)  # fmt: skip
