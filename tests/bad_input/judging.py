"""What is wrong with what was said of a broken folder."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from tests.bad_input.mutations import Row

__all__ = ["faults"]


def faults(row: Row, answer: Mapping[str, Any]) -> list[str]:
    """Hold an answer against its row.

    Args:
        row: the row.
        answer: the fields of an `Answer`.

    Returns:
        What is wrong with it, in words; nothing when all is well.
    """
    return [*_of_the_run(row, answer), *(() if row.fine or answer["ended"] else _of_the_words(row, answer))]


def _of_the_run(row: Row, answer: Mapping[str, Any]) -> Iterator[str]:
    if answer["ended"]:
        yield "it did not end by itself"
    elif answer["code"] != (0 if row.fine else 1):
        yield f"exit code {answer['code']}"
    if answer["memory_mb"] > 300:
        yield f"{answer['memory_mb']} MB"
    if "Traceback" in answer["err"]:
        yield "a traceback"
    if not row.fine and answer["out"]:
        yield f"it printed {answer['out'][:60]!r}"
    written = [name for name in answer["changed"] if not (row.fine and "/log" in name)]
    if written:
        yield f"it changed {written}"
    if len(answer["err"]) > 100_000:
        yield f"it said {len(answer['err'])} letters"


def _of_the_words(row: Row, answer: Mapping[str, Any]) -> Iterator[str]:
    told = list(_told(answer["err"]))
    wanted = _wanted(row, answer["line"])
    said = (*row.says, *_of_a_sheet(row, answer["line"]))
    fitting = [line for line in told if line.startswith(wanted) and all(word in line for word in said)]
    if not fitting:
        yield f"nothing of {wanted!r} with {said}"
    if len(told) > 1 and not row.more:
        yield f"{len(told)} messages instead of one"


def _of_a_sheet(row: Row, line: int | None) -> tuple[str, ...]:
    """Row and column, behind the name of the file and of the sheet in it."""
    return (f"row {line}, " if row.field else f"row {line}", row.field) if row.command[0] == "log" and line else ()


def _wanted(row: Row, line: int | None) -> str:
    """How the message begins: file, line and field, whole names only."""
    file = row.at or row.file
    if row.command[0] == "log":
        return file
    place = f"line {line}" if line is not None else "the file"
    if line is None and row.field:
        return f"{file}: "
    return f"{file}: {place}, {row.field}: " if row.field else f"{file}: {place}"


def _told(said: str) -> Iterator[str]:
    """Each message, with its file before it."""
    file = ""
    for line in said.splitlines():
        if line.startswith("  "):
            yield f"{file}: {line.strip()}"
        elif "attention; nothing was" not in line:
            file = line
            if ": found" in line or ", row " in line:
                yield line
