"""Ways to break one file of a club folder; each tells the line that a message has to name.

The line is counted in what was written, never taken from what the program says.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Final

__all__ = [
    "HERE", "MEGABYTE", "Break", "Row", "a_folder", "add", "as_file", "broken", "every", "fine", "gone", "insert_at", "link_to", "locked",
    "pipe", "put", "recoded", "swap", "with_byte", "within", "without",
]  # fmt: skip

Break = Callable[[Path], int | None]
"""Breaks a file, and gives the line that is at fault; None where the file as a whole is."""
HERE: Final = "¦"
"""Marks the place at fault in text that is written; it is not written itself."""
MEGABYTE: Final = 1_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One broken club folder, or one that only looks broken.

    Args:
        name: what was done, in words.
        file: the file that was changed, below the club folder.
        how: changes it.
        field: the field that the message has to name, or "".
        says: words that the message has to hold.
        at: the file that the message has to name, where it is another.
        more: whether other messages rightly come with it.
        fine: whether the folder is to be read without a word.
        command: words of the command that reads it; the club folder and the moment are added.
        block: what is added to club.yaml before, such as how a station's file is written.
        as_nobody: whether it is read without the rights of the system's administrator, whom no lock keeps out.
    """

    name: str
    file: str
    how: Break
    field: str = ""
    says: tuple[str, ...] = ()
    at: str = ""
    more: bool = False
    fine: bool = False
    command: tuple[str, ...] = ("check",)
    block: str = ""
    as_nobody: bool = False


def broken(name: str, file: str, how: Break, field: str = "", *says: str, **more: object) -> Row:
    """Make a row of a folder that needs attention."""
    return Row(name=name, file=file, how=how, field=field, says=says, **more)  # type: ignore[arg-type]


def fine(name: str, file: str, how: Break, **more: object) -> Row:
    """Make a row of a folder that is all right, though it looks odd."""
    return Row(name=name, file=file, how=how, fine=True, **more)  # type: ignore[arg-type]


def _line(text: str, place: int) -> int:
    return text.count("\n", 0, place) + 1


def _marked(text: str) -> tuple[str, int]:
    """The text without its mark, and where that stood; without one, the beginning."""
    return text.replace(HERE, "", 1), max(text.find(HERE), 0)


def swap(old: str, new: str) -> Break:
    """Replace the first occurrence, which must be there; the line is that of the new text, or of the mark in it."""
    written, mark = _marked(new)

    def change(path: Path) -> int:
        text = path.read_bytes().decode("utf-8")
        assert old in text, f"{old!r} does not stand in {path.name}"
        place = text.index(old)
        path.write_bytes((text[:place] + written + text[place + len(old) :]).encode("utf-8", "surrogateescape"))
        return _line(text[:place] + written, place + mark)

    return change


def without(old: str, around: str = "") -> Break:
    """Take the first occurrence away, which must be there; the line is the first with the words around it."""

    def change(path: Path) -> int:
        text = path.read_bytes().decode("utf-8")
        assert old in text, f"{old!r} does not stand in {path.name}"
        left = text.replace(old, "", 1)
        path.write_bytes(left.encode())
        return _line(left, left.index(around))

    return change


def within(around: str, change: Break) -> Break:
    """Change a file so that something larger is at fault: the line is the first with the words around it."""

    def apply(path: Path) -> int:
        change(path)
        text = path.read_bytes().decode("utf-8")
        return _line(text, text.index(around))

    return apply


def put(content: str | bytes | Callable[[], bytes], line: int | None = 0) -> Break:
    """Write a whole file; the line is that of the mark in it, unless it is told (0: not told).

    What is large is made only when it is written.
    """

    def change(path: Path) -> int | None:
        path.parent.mkdir(parents=True, exist_ok=True)
        if not isinstance(content, str):
            path.write_bytes(content if isinstance(content, bytes) else content())
            return line or None
        written, mark = _marked(content)
        path.write_bytes(written.encode())
        return _line(written, mark) if line == 0 else line

    return change


def add(text: str) -> Break:
    """Write at the end; the line is that of the mark, or the first new one."""

    def change(path: Path) -> int:
        before = path.read_bytes().decode("utf-8")
        written, mark = _marked(text)
        path.write_bytes((before + written).encode())
        return _line(before + written, len(before) + mark)

    return change


def insert_at(number: int, text: str) -> Break:
    """Write a line of its own, which becomes the one of this number."""

    def change(path: Path) -> int:
        lines = path.read_bytes().decode("utf-8").split("\n")
        lines.insert(number - 1, text)
        path.write_bytes("\n".join(lines).encode())
        return number

    return change


def gone(path: Path) -> None:
    """Take the file away."""
    path.unlink()


def a_folder(path: Path) -> None:
    """Put a folder in the file's place."""
    path.unlink(missing_ok=True)
    path.mkdir(parents=True)


def as_file(path: Path) -> None:
    """Put a file in a folder's place."""
    if path.is_dir():
        shutil.rmtree(path)
    path.write_bytes(b"a file\n")


def locked(path: Path) -> None:
    """Take everybody's right to read it."""
    path.chmod(0)


def link_to(target: str) -> Break:
    """Put a link in the file's place."""

    def change(path: Path) -> None:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.unlink(missing_ok=True)
        path.symlink_to(target)

    return change


def pipe(path: Path) -> None:
    """Put a pipe in the file's place, which nobody writes to."""
    path.unlink()
    os.mkfifo(path)


def recoded(encoding: str) -> Break:
    """Save it in another encoding, with a letter at its end that is not ASCII; the line is the first that is no UTF-8."""

    def change(path: Path) -> int:
        data = (path.read_bytes().decode("utf-8") + "# sablé\n").encode(encoding)
        path.write_bytes(data)
        return next(
            (number for number, line in enumerate(data.split(b"\n"), start=1) if not _is_utf_8(line)), data.count(b"\n")
        )

    return change


def _is_utf_8(line: bytes) -> bool:
    try:
        line.decode("utf-8")
    except UnicodeDecodeError:
        return False
    return True


def with_byte(byte: bytes, number: int) -> Break:
    """Put bytes at the end of a line."""

    def change(path: Path) -> int:
        lines = path.read_bytes().split(b"\n")
        lines[number - 1] += byte
        path.write_bytes(b"\n".join(lines))
        return number

    return change


def every(change: Callable[[bytes], bytes], line: int | None = None) -> Break:
    """Change all bytes at once."""

    def apply(path: Path) -> int | None:
        path.write_bytes(change(path.read_bytes()))
        return line

    return apply
