"""A log entry that is not written yet: its fields as typed, the name of its file and the file's text."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final, TypeAlias

__all__ = ["Draft", "Value", "draft_file", "draft_text", "moment_text"]

Value: TypeAlias = "str | Mapping[str, Value] | Sequence[Value]"
"""A field as typed: some words, fields below it, or a list."""

_LONGEST_SLUG: Final = 60  # a name that still reads in one line: judgement
_PLAIN: Final = re.compile(r"^[A-Za-z0-9](?:[A-Za-z0-9 .;()%'/+_=-]|:(?=[A-Za-z0-9]))*$")
_NOT_TEXT: Final = re.compile(r"^[+-]?[0-9][0-9._]*$|^(?:true|false|null)$")
_LETTERS: Final = "bcdefghijklmnopqrstuvwxyz"


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """An entry to be written.

    Args:
        kind: a kind of the log, such as "work done".
        at: when it was so, aware, in the club's time, to the minute.
        fields: its other fields by name, in the order in which they are written.
        by: who says so, or "".
        words: the manager's own Markdown, or "".
        private_note: what the club notes for itself, or "".
        about: what the file's name tells, such as "greens 1 to 9 done".
        mark: letters that know the entry again, such as those of a sheet's row, or "".
    """

    kind: str
    at: datetime
    fields: Mapping[str, Value]
    by: str = ""
    words: str = ""
    private_note: str = ""
    about: str
    mark: str = ""


def draft_file(draft: Draft, taken: Collection[str]) -> str:
    """Name the file of a draft.

    The minute of a second entry gets a letter behind it: that sorts after the first, and the log reads entries of
    one minute by their names.

    Args:
        draft: the draft.
        taken: names, without ending, that the log has already.

    Returns:
        A path below the club folder, such as "log/2027/2027-08-23-1540-greens-1-to-9-done.md".
    """
    minute = f"{draft.at:%Y-%m-%d-%H%M}"
    slug = re.sub(r"[^a-z0-9]+", "-", draft.about.lower()).strip("-")[:_LONGEST_SLUG].strip("-")
    tail = "-".join(part for part in (slug, draft.mark) if part)
    used = {name[: len(minute)] + name[len(minute) :].partition("-")[0] for name in taken if name.startswith(minute)}
    letters = next(letters for letters in _letters() if not any(other >= minute + letters for other in used))
    return f"log/{draft.at:%Y}/{minute}{letters}-{tail}.md"


def _letters() -> Iterator[str]:
    """Give "", "b", "c" to "z", "zb" and so on: each sorts after the one before."""
    last = ""
    yield last
    while True:
        for letter in _LETTERS:
            yield last + letter
        last += "z"


def draft_text(draft: Draft) -> str:
    """Write the file of a draft.

    Args:
        draft: the draft.

    Returns:
        Fields between two lines of hyphens, then the manager's words.
    """
    fields: dict[str, Value] = {"at": moment_text(draft.at), "kind": draft.kind, **draft.fields}
    if draft.by:
        fields["by"] = draft.by
    if draft.private_note:
        fields["private note"] = draft.private_note
    lines = ["---", *_block(fields, ""), "---"]
    if draft.words.strip():
        lines += ["", draft.words.strip()]
    return "\n".join(lines) + "\n"


def moment_text(at: datetime) -> str:
    """Write a moment as the log reads it; an hour that the clocks repeat gets its offset."""
    text = f"{at:%Y-%m-%d %H:%M}"
    offset = f"{at:%z}"
    repeated = at.utcoffset() != at.replace(fold=1 - at.fold).utcoffset()
    return f"{text}{offset[:3]}:{offset[3:5]}" if repeated else text


def _block(fields: Mapping[str, Value], indent: str) -> Iterator[str]:
    for name, value in fields.items():
        if isinstance(value, str):
            yield f"{indent}{_scalar(name)}: {_scalar(value)}"
        elif isinstance(value, Mapping):
            yield f"{indent}{_scalar(name)}:" if value else f"{indent}{_scalar(name)}: {{}}"
            yield from _block(value, f"{indent}  ")
        else:
            yield f"{indent}{_scalar(name)}:"
            yield from (f"{indent}  - {_item(item)}" for item in value)


def _item(value: Value) -> str:
    """One line of a list, as the plan writes operations: "hollow tining: {diameter: 13 mm}"."""
    if isinstance(value, Mapping) and len(value) == 1:
        ((name, inner),) = value.items()
        return f"{_scalar(name)}: {_flow(inner)}"
    return _flow(value)


def _flow(value: Value) -> str:
    if isinstance(value, str):
        return _scalar(value)
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{_scalar(name)}: {_flow(inner)}" for name, inner in value.items()) + "}"
    return "[" + ", ".join(map(_flow, value)) + "]"


def _scalar(text: str) -> str:
    """Write text so that it is read as the same text: plain where nothing can be mistaken, else in quotes."""
    if _PLAIN.fullmatch(text) and not _NOT_TEXT.fullmatch(text) and text == " ".join(text.split()):
        return text
    return '"' + "".join(map(_in_quotes, text)) + '"'


def _in_quotes(sign: str) -> str:
    if sign in '"\\':
        return f"\\{sign}"
    return sign if sign.isprintable() else f"\\U{ord(sign):08x}"
