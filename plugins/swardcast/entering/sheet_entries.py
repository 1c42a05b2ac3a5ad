"""Rows of a sheet -> drafts: the same row twice is one entry, and a row that cannot be read takes none with it."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from hashlib import sha256
from typing import Final

from swardcast.entering.drafts import Draft, draft_text
from swardcast.entering.kinds import BY_WORD, STEPS
from swardcast.entering.places import PLACES
from swardcast.entering.understanding import understand
from swardcast.entering.wrong import Wrong
from swardcast.errors import Problem, nearest
from swardcast.reading.log_file import entries_from
from swardcast.reading.log_names import LogContext
from swardcast.reading.sheet_file import SheetRow
from swardcast.records.folder import ClubRecords
from swardcast.records.log_sheet import LogSheet
from swardcast.records.standing import as_entered

__all__ = ["Taken", "take_rows"]

_MARK: Final = re.compile(r"-([0-9a-f]{6})-([0-9a-f]{6})(?:-instead)?$")
_WHERE: Final = ("surfaces", *PLACES)
_CONCERNS_SURFACES: Final = (*STEPS, "seen", "normal", "held-back")
_NO: Final = ("no", "n", "false", "0")


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What came of a sheet.

    Args:
        drafts: new entries, by the row that they came from, such as "row 7".
        known: how many rows are in the log already.
        changed: rows that say something else than when they were taken, with the entry that they became.
        wrongs: everything that cannot be read.
    """

    drafts: Mapping[str, Draft]
    known: int
    changed: tuple[tuple[str, str], ...]
    wrongs: tuple[Wrong, ...]


def take_rows(rows: Sequence[SheetRow], form: LogSheet, records: ClubRecords, now: datetime) -> Taken:
    """Make drafts of the rows that the log does not have yet.

    Assumes that a row is known again by its moment and who made it, and that it is the same when all else is, too.

    Args:
        rows: the sheet's rows.
        form: how the sheet is laid out.
        records: the club's records.
        now: the present moment, aware.

    Returns:
        New entries, oldest first, and what is said of the others.
    """
    marks = {(match[1], match[2]): entry.head.id for entry in records.entries if (match := _MARK.search(entry.head.id))}
    in_sheet = {_mark(row) for row in rows}
    gone = {key: name for (key, content), name in marks.items() if (key, content) not in in_sheet}
    drafts: dict[str, Draft] = {}
    known, changed, wrongs, taken = 0, [], [], set()
    for row in sorted(rows, key=lambda row: (row.stamp, row.number)):
        mark = _mark(row)
        origin = f"row {row.number}"
        if mark in marks or mark in taken:
            known += 1
            continue
        if mark[0] in gone:
            changed.append((origin, gone[mark[0]].removesuffix("-instead")))
            continue
        draft, odd = _draft(row, form, records, now)
        wrongs += [replace(one, option=f"{origin}, {_column(one.option, form)}") for one in odd]
        if draft is not None:
            taken.add(mark)
            drafts[origin] = replace(draft, mark="-".join(mark))
            records = _with(records, drafts[origin])
    return Taken(drafts=drafts, known=known, changed=tuple(changed), wrongs=tuple(wrongs))


def _mark(row: SheetRow) -> tuple[str, str]:
    said = "\n".join(f"{word}: {' '.join(text.split())}" for word, text in sorted(row.cells.items()))
    key = f"{row.stamp.isoformat()}\n{row.cells.get('by', '')}"
    return _short(key), _short(f"{key}\n{said}")


def _short(text: str) -> str:
    return sha256(text.encode()).hexdigest()[:6]


def _draft(row: SheetRow, form: LogSheet, records: ClubRecords, now: datetime) -> tuple[Draft | None, list[Wrong]]:
    told = dict(row.cells)
    said = told.pop("kind", "")
    word = form.kinds.get(" ".join(said.lower().split()), "")
    if not word:
        expected = f"one of: {', '.join(form.kinds)}"
        found = repr(said) if said else "nothing"
        return None, [Wrong(option="kind", found=found, expected=expected, hint=nearest(said, form.kinds))]
    kind = BY_WORD[word]
    allowed = (*kind.needs, *kind.may, "by", "words", "private-note")
    if "play" in told:
        told["play"] = form.plays.get(told["play"].lower(), told["play"])
    if told.get("counted", "").lower() in _NO:
        told.pop("counted")
    answers = {option: text for option, text in told.items() if option in allowed}
    odd = [
        Wrong(option=option, found=repr(text), expected=f"nothing there in a row of the kind {said!r}")
        for option, text in told.items()
        if option not in allowed
    ]
    if word in _CONCERNS_SURFACES and not any(answers.get(option) for option in _WHERE):
        odd.append(
            Wrong(option="surfaces", found="nothing", expected="the surfaces, such as 'greens 1-9' or 'all greens'")
        )
    understood = understand(word, {**answers, "at": f"{row.stamp:%Y-%m-%d %H:%M}"}, records, now)
    odd += understood.wrongs
    reported = {wrong.option for wrong in odd}
    odd += [
        Wrong(option=option, found="nothing", expected="something there")
        for option in understood.missing
        if option not in reported
    ]
    return (None if odd else understood.draft), odd


def _column(option: str, form: LogSheet) -> str:
    if option == "at":
        option = "day"
    if option == "surfaces" and "surfaces" not in form.columns:
        option = next((place for place in PLACES if place in form.columns), option)
    name = form.columns.get(option)
    return f"column {name!r}" if name else f"{option} (no column of the sheet is for it)"


def _with(records: ClubRecords, draft: Draft) -> ClubRecords:
    """The records as if the entry stood there, so that a later row of the sheet can rest on it."""
    context = LogContext(zone=records.club.time_zone, surfaces=records.surfaces, jobs=records.jobs)
    problems: list[Problem] = []
    entries = entries_from(draft_text(draft), name=draft.mark, file="", context=context, problems=problems)
    return replace(records, entries=as_entered((*records.entries, *entries)))
