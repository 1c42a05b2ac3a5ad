"""Drafts -> files: checked with the whole folder, shown, and written all or none."""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from pathlib import Path
from typing import Any

from swardcast.cli.common import print_json
from swardcast.cli.log_asking import ask, can_ask, say
from swardcast.cli.together import write_together
from swardcast.compose import compose_bulletin
from swardcast.entering.drafts import Draft, draft_file, draft_text
from swardcast.entering.preview import changes_in_words, new_items
from swardcast.entering.questions import Question
from swardcast.entering.wrong import AnswersNeedAttention, Wrong
from swardcast.errors import InputNeedsAttention, Problem, SwardcastError
from swardcast.outlook.weather_book import WeatherBook
from swardcast.reading.folder import read_club_folder
from swardcast.records.folder import ClubRecords

__all__ = ["read_first", "show_and_write"]

_OPTION_OF = {
    "diameter": "tine",
    "rate": "seed",
    "disruption left": "left",
    "turf cover": "cover",
    "green speed": "speed",
    "height of cut": "cut",
    "starts": "to",
    "corrects": "entry",
    "why": "why",
}
"""Options by the field of the log that they become, where the two differ."""


def read_first(club: Path) -> ClubRecords:
    """Read the club folder as it is; what is wrong with it has to be mended before an entry can be added."""
    try:
        return read_club_folder(club)
    except InputNeedsAttention as error:
        told = str(error).rpartition("\n")[0]
        message = f"{told}\nThis stood in the club folder before; mend it first. Nothing was written."
        raise SwardcastError(message) from error


def show_and_write(
    options: argparse.Namespace,
    records: ClubRecords,
    now: datetime,
    drafts: Mapping[str, Draft],
    cautions: Sequence[str],
    book: WeatherBook,
) -> int:
    """Check drafts with the whole folder, show what they change, ask, and write them.

    Args:
        options: the command's options.
        records: the club's records without them.
        now: the present moment.
        drafts: at least one entry, by where it came from: a row of a sheet, or "".
        cautions: what is allowed but seldom meant.
        book: the club's weather.

    Returns:
        0 when they are written, else 1.
    """
    files = _named(drafts.values(), {entry.head.id for entry in records.entries})
    with_them = _checked(options.club, dict(zip(files, drafts, strict=True)), files)
    for name, text in files.items() if len(files) == 1 else ():
        say(f"{name}\n" + "".join(f"  {line}\n" for line in text.splitlines()))
    for caution in cautions:
        say(f"Please check: {caution}")
    lines: list[str] = []
    items: list[dict[str, str]] = []
    if not options.quiet:
        say("Working out what changes for members ...")
        before, after = compose_bulletin(records, now, book), compose_bulletin(with_them, now, book)
        lines = changes_in_words(before, after)
        items = [{"id": item.id, "title": item.title} for item in new_items(before, after)]
        for line in lines:
            say(line)
    written = options.yes or _agreed(len(files))
    if written:
        write_together(options.club, {name: text.encode() for name, text in files.items()})
    _report(options, files, written=written, told={"changes": lines, "new_items": items})
    return 0 if written else 1


def _named(drafts: Iterable[Draft], taken: set[str]) -> dict[str, str]:
    files: dict[str, str] = {}
    for draft in drafts:
        name = draft_file(draft, taken)
        taken.add(Path(name).stem)
        files[name] = draft_text(draft)
    return files


def _checked(club: Path, origins: Mapping[str, str], files: Mapping[str, str]) -> ClubRecords:
    try:
        return read_club_folder(club, files)
    except InputNeedsAttention as error:
        raise AnswersNeedAttention([_as_wrong(problem, origins) for problem in error.problems]) from error


def _as_wrong(problem: Problem, origins: Mapping[str, str]) -> Wrong:
    """Name the answer in place of a line of a file that does not exist."""
    if problem.file not in origins:
        option = f"{problem.file}, line {problem.line}" if problem.line else problem.file
    else:
        named = re.split(r"\.|, ", problem.field.removeprefix("instead."))
        parts = [re.sub(r" [0-9]+$", "", part) for part in named]  # "as done 1, hollow tining.diameter"
        last = parts[-1] if parts else "entry"
        option = _OPTION_OF.get(last, re.sub(r"\s+", "-", parts[1] if parts[0] == "limits" else last))
    option = ", ".join(part for part in (origins.get(problem.file, ""), option) if part)
    return Wrong(option=option, found=problem.found, expected=problem.expected, hint=problem.hint)


def _agreed(count: int) -> bool:
    if not can_ask():
        say("Nothing was written: say --yes to write without being asked.")
        return False
    what = "this entry" if count == 1 else f"these {count} entries"
    question = Question(option="yes", asks=f"Write {what}? (yes or no)", offered="yes", needed=True)
    while (reply := ask(question).lower()) not in ("yes", "y", "no", "n"):
        say(f"  found {reply!r}; expected 'yes' or 'no'")
    if reply.startswith("n"):
        say("Nothing was written.")
        return False
    return True


def _report(options: argparse.Namespace, files: Mapping[str, str], *, written: bool, told: Mapping[str, Any]) -> None:
    if options.json:
        print_json({"written": written, "files": list(files), **told})
    elif written:
        for name in files:
            print(name)
    if written:
        say(f"Written. Now: swardcast build --club {options.club} --output site")
