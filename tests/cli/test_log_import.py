"""`swardcast log import`: sheets of other programs are read, the same row twice is one entry, one bad row takes none."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime, time
from io import BytesIO, StringIO
from pathlib import Path
from typing import Any

import openpyxl
import pytest
import xlsxwriter

from swardcast.entering.kinds import BY_WORD
from swardcast.reading.folder import read_club_folder
from swardcast.reading.sheet_block import SHEET_COLUMNS, SHEET_KINDS
from swardcast.records.log import Observation, Progress
from tests.cli.conftest import Done
from tests.cli.test_check import tree
from tests.cli.test_log import folder
from tests.conftest import problems_of

__all__ = ["folder"]

Command = Callable[..., Done]
FORM = """
log sheet:
  columns: {day: Date, time: Time, kind: What happened, job: Job, surfaces: Where, sand: Sand used, left: Marks left, by: Name, words: Remarks}
  kinds: {Finished: work done, Begun: started, Looked at: observation}
  plays: {Shut: closed}
  day is written: day/month/year
  values are parted by: semicolon
  decimals: comma
  saved as: Windows-1252
"""
HEADER = ("Date", "Time", "What happened", "Job", "Where", "Sand used", "Marks left", "Name", "Remarks", "Weather")
JOB = "greens-renovation-2027"
# Thursday 26 August 2027: 13 to 15 finished in the afternoon; then a look at 1 to 6.
FIRST = ("26/08/2027", "15:40", "Finished", JOB, "greens 13-15", "3,2 t/green", "", "the foreman", "Très sablé.", "dry")
SECOND = ("26/8/27", "15:42", "looked at", JOB, "greens 1-6", "", "40 %", "the foreman", "", "dry")


@pytest.fixture(autouse=True)
def _nobody_answers(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.stdin", StringIO())


@pytest.fixture
def club_with_form(folder: Path) -> Path:
    with (folder / "club.yaml").open("a", encoding="utf-8") as file:
        file.write(FORM)
    return folder


@pytest.fixture
def take(swardcast: Command, club_with_form: Path) -> Command:
    def command(sheet: Path, *words: str) -> Done:
        at = ("--club", str(club_with_form), "--as-of", "2027-08-26 16:00")
        return swardcast("log", "import", str(sheet), *at, *(words or ("--yes", "--quiet")))

    return command


def csv_sheet(folder: Path, *rows: tuple[str, ...], encoding: str = "utf-8", name: str = "answers.csv") -> Path:
    path = folder.parent / name
    path.write_bytes("\r\n".join(";".join(row) for row in (HEADER, *rows)).encode(encoding))
    return path


def entries(folder: Path) -> list[Any]:
    return [entry for entry in read_club_folder(folder).entries if entry.head.by == "the foreman"]


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252"])
def test_a_text_file_becomes_entries_however_it_is_saved(take: Command, club_with_form: Path, encoding: str) -> None:
    done = take(csv_sheet(club_with_form, FIRST, SECOND, encoding=encoding))
    assert done.code == 0, done.err
    finished, seen = entries(club_with_form)
    assert isinstance(finished, Progress)
    assert finished.surfaces == ("green-13", "green-14", "green-15")
    (sand,) = finished.as_done
    assert getattr(sand, "sand").amount == pytest.approx(3.2)  # noqa: B009 - one of several kinds of operation
    assert (f"{finished.head.at:%Y-%m-%d %H:%M}", finished.head.words) == ("2027-08-26 15:40", "Très sablé.")
    assert isinstance(seen, Observation)
    assert seen.share_left == pytest.approx(0.4)


def by_openpyxl() -> bytes:
    """Real days and times, a row left empty, a title above the header, a formula beside."""
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    sheet["A1"] = "Answers of the form"
    sheet.merge_cells("A1:C1")
    sheet.append(list(HEADER))
    sheet.append([date(2027, 8, 26), time(15, 40), *FIRST[2:]])
    sheet.append([])
    sheet.append([datetime(2027, 8, 26), time(15, 42), *SECOND[2:6], 0.4, *SECOND[7:]])  # noqa: DTZ001 - a cell has no zone
    sheet["G5"].number_format = "0%"
    sheet["J5"] = '=HYPERLINK("https://quillhaven.example","weather")'
    buffer = BytesIO()
    book.save(buffer)
    return buffer.getvalue()


def by_xlsxwriter() -> bytes:
    buffer = BytesIO()
    book = xlsxwriter.Workbook(buffer, {"in_memory": True})
    sheet = book.add_worksheet("Form answers")
    day, clock, share = (book.add_format({"num_format": form}) for form in ("dd/mm/yyyy", "hh:mm", "0%"))
    sheet.write_row(0, 0, ["Answers of the form"])
    sheet.write_row(1, 0, HEADER)
    for place, row in ((2, FIRST), (4, SECOND)):
        sheet.write_datetime(place, 0, datetime(2027, 8, 26), day)  # noqa: DTZ001
        sheet.write_datetime(place, 1, datetime(1900, 1, 1, 15, 40 if row is FIRST else 42), clock)  # noqa: DTZ001
        sheet.write_row(place, 2, row[2:])
    sheet.write_number(4, 6, 0.4, share)
    book.close()
    return buffer.getvalue()


@pytest.mark.parametrize("written", [by_openpyxl, by_xlsxwriter], ids=["openpyxl", "XlsxWriter"])
def test_a_workbook_of_either_library_becomes_the_same_entries(
    take: Command, club_with_form: Path, written: Callable[[], bytes]
) -> None:
    path = club_with_form.parent / "answers.xlsx"
    path.write_bytes(written())
    done = take(path)
    assert done.code == 0, done.err
    finished, seen = entries(club_with_form)
    assert (f"{finished.head.at:%H:%M}", f"{seen.head.at:%H:%M}") == ("15:40", "15:42")
    assert finished.surfaces == ("green-13", "green-14", "green-15")
    assert seen.share_left == pytest.approx(0.4)


def test_the_same_row_twice_is_one_entry_however_often_it_comes(take: Command, club_with_form: Path) -> None:
    sheet = csv_sheet(club_with_form, FIRST, FIRST)
    assert take(sheet).code == 0
    before = tree(club_with_form)
    again = take(sheet)
    assert (again.code, again.out) == (0, "")
    assert again.err == "2 rows are in the log already.\nNothing new.\n"
    assert tree(club_with_form) == before
    take(csv_sheet(club_with_form, FIRST, SECOND))
    assert len(entries(club_with_form)) == 2


def test_a_row_changed_since_it_was_taken_is_told_and_not_taken_again(take: Command, club_with_form: Path) -> None:
    take(csv_sheet(club_with_form, FIRST))
    (entry,) = entries(club_with_form)
    changed = (*FIRST[:4], "greens 13-14", *FIRST[5:])
    done = take(csv_sheet(club_with_form, changed, SECOND))
    assert done.code == 0
    assert f"answers.csv, row 2: changed since it was taken as {entry.head.id}, and not taken again." in done.err
    assert f"Put the log right: swardcast log correct {entry.head.id}" in done.err
    assert [entry.surfaces[0] for entry in entries(club_with_form)] == ["green-13", "green-1"]


def test_two_rows_of_one_minute_are_two_entries(take: Command, club_with_form: Path) -> None:
    other = (FIRST[0], FIRST[1], *SECOND[2:])
    assert take(csv_sheet(club_with_form, FIRST, other)).code == 0
    assert len(entries(club_with_form)) == 2


def test_one_bad_row_takes_none_and_every_fault_is_named_by_row_and_column(take: Command, club_with_form: Path) -> None:
    before = tree(club_with_form)
    rows = (
        FIRST,
        ("31/02/2027", *FIRST[1:]),
        (*FIRST[:2], "Finised", *FIRST[3:]),
        (*FIRST[:4], "greens 13-40", "3,2", *FIRST[6:]),
        ("27/08/2027", *FIRST[1:]),
        (*FIRST[:4], "", *FIRST[5:]),
        (*SECOND[:5], "2 mm", *SECOND[6:]),
    )
    done = take(csv_sheet(club_with_form, *rows))
    assert (done.code, done.out) == (1, "")
    told = done.err.splitlines()
    for start, end in (
        ("answers.csv, row 3, column 'Date': found '31/02/2027 15:40'", "See 'day is written' in club.yaml."),
        ("answers.csv, row 4, column 'What happened': found 'Finised'", "Did you mean 'finished'?"),
        ("answers.csv, row 5, column 'Where': found 'greens 13-40'", "there is no green 40"),
        ("answers.csv, row 5, column 'Sand used': found '3.2'", "if that is what you mean."),
        ("answers.csv, row 6, column 'Date': found '2027-08-27 15:40', which is still to come", "in plan/."),
        ("answers.csv, row 7, column 'Where': found nothing", "such as 'greens 1-9' or 'all greens'"),
        ("answers.csv, row 8, column 'Sand used': found '2 mm'", "nothing there in a row of the kind 'looked at'"),
    ):
        assert any(line.startswith(start) and line.endswith(end) for line in told), (start, done.err)
    assert told[-1] == "7 answers need attention; nothing was written."
    assert len(told) == 8
    assert tree(club_with_form) == before


def test_what_only_the_whole_folder_shows_is_told_by_its_row(take: Command, club_with_form: Path) -> None:
    """17 is not done: it cannot be back to normal."""
    row = (FIRST[0], FIRST[1], "back to normal", JOB, "green 17", "", "", "the foreman", "", "")
    done = take(csv_sheet(club_with_form, row))
    assert done.code == 1
    assert done.err.startswith("answers.csv, row 2, surfaces: found green 17 back to normal, with no 'work done'")


def test_a_later_row_may_rest_on_an_earlier_one(take: Command, club_with_form: Path) -> None:
    normal = (FIRST[0], "15:50", "back to normal", JOB, "greens 13-15", "", "", "the foreman", "", "")
    done = take(csv_sheet(club_with_form, normal, FIRST))
    assert done.code == 0, done.err
    assert [entry.head.at.minute for entry in entries(club_with_form)] == [40, 50]


@pytest.mark.parametrize(
    ("name", "data", "said"),
    [
        ("a.xlsx", b"no workbook", "a.xlsx: found a file that is no workbook, or is damaged; expected a sheet saved as .xlsx or as CSV. Open it"),
        ("a.csv", b"Date;Time\r\n", "a.csv, row 1: found no column 'What happened'"),
        ("a.csv", b"", "a.csv, row 1: found no column 'Date'"),
        ("a.csv", b"x" * 8_000_001, "a.csv: found more than 8 MB; expected a sheet of a form's answers"),
    ],
    ids=["no workbook", "a column missing", "empty", "too large"],
)  # fmt: skip
def test_a_broken_sheet_is_told(take: Command, club_with_form: Path, name: str, data: bytes, said: str) -> None:
    path = club_with_form.parent / name
    path.write_bytes(data)
    done = take(path)
    assert done.code == 1
    assert said in done.err


def test_a_sheet_that_is_not_there_is_told(take: Command, club_with_form: Path) -> None:
    done = take(club_with_form.parent / "nowhere.csv")
    assert done.code == 1
    assert "nowhere.csv: No such file or directory" in done.err


def test_without_the_block_the_way_out_is_named(swardcast: Command, folder: Path) -> None:
    sheet = csv_sheet(folder, FIRST)
    done = swardcast("log", "import", str(sheet), "--club", str(folder), "--as-of", "2027-08-26 16:00")
    assert done.code == 1
    assert done.err.endswith("nothing was written.\n")
    assert "log sheet: found nothing; expected a block that says what the columns of your sheet are called" in done.err


def test_the_block_that_start_leaves_as_remarks_can_be_used(swardcast: Command, tmp_path: Path) -> None:
    swardcast("start", str(tmp_path / "club"), "--today", "2027-08-19")
    path = tmp_path / "club/club.yaml"
    above, _, below = path.read_text(encoding="utf-8").partition("# log sheet:")
    block, blank, rest = below.partition("\n\n")
    used = "\n".join(line.removeprefix("# ") for line in f"# log sheet:{block}".splitlines())
    path.write_text(above + used + blank + rest, encoding="utf-8")
    assert "\nlog sheet:\n" in path.read_text(encoding="utf-8")
    assert problems_of(tmp_path / "club") == []


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("sand: Sand used", "sant: Sand used", "Did you mean 'sand'?"),
        ("kind: What happened, ", "", "also kind among the columns"),
        ("Finished: work done", "Finished: work don", "Did you mean 'work done'?"),
        ("time: Time, ", "", "'hour' in 'day is written', or a column 'time'"),
    ],
)
def test_a_faulty_block_is_told_by_check(club_with_form: Path, old: str, new: str, said: str) -> None:
    path = club_with_form / "club.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace(old, new), encoding="utf-8")
    (problem,) = problems_of(club_with_form)
    assert problem.startswith("club.yaml: ")
    assert said in problem


def test_columns_and_kinds_of_a_sheet_are_those_of_the_command() -> None:
    options = {option for kind in BY_WORD.values() for option in (*kind.needs, *kind.may)} | {
        "by",
        "words",
        "private-note",
        "day",
        "time",
        "kind",
    }
    assert set(SHEET_COLUMNS) <= options
    assert set(SHEET_KINDS.values()) == set(BY_WORD) - {"correct"}
