"""log/YYYY/*.md -> entries: front matter for what a program needs, Markdown for the manager's own words."""

from __future__ import annotations

import re
from typing import Any, Final

from swardcast.errors import Problem
from swardcast.reading.log_entry import EntryReader
from swardcast.reading.log_names import LogContext
from swardcast.reading.yaml_text import read_yaml
from swardcast.records.log import Entry

__all__ = ["entries_from", "typed_fields"]

_FENCE: Final = re.compile(r"^---[ \t]*$", re.MULTILINE)


def entries_from(text: str, *, name: str, file: str, context: LogContext, problems: list[Problem]) -> list[Entry]:
    """Read one log file: an entry, or a correction with the entry that stands instead.

    Args:
        text: the file.
        name: its name without the ending, which becomes the entry's id.
        file: its path for problems.
        context: club, surfaces and jobs.
        problems: where problems are added.

    Returns:
        No, one or two entries.
    """
    fences = list(_FENCE.finditer(text))
    if len(fences) < 2 or text[: fences[0].start()].strip():  # noqa: PLR2004 - one above and one below the fields
        problems.append(
            Problem(
                file=file,
                line=1,
                found="no fields between two lines of '---'",
                expected="'---', then fields such as 'kind: work done', then '---', then your own words",
            )
        )
        return []
    front = text[fences[0].end() + 1 : fences[1].start()]
    document = read_yaml(front, file=file, problems=problems, first_line=text[: fences[0].end() + 1].count("\n") + 1)
    if document is None:
        return []
    context.documents[file] = document
    reader = EntryReader(
        name=name, file=file, words=text[fences[1].end() :].strip(), context=context, problems=problems
    )
    return reader.entries(document)


def typed_fields(text: str, *, instead: bool) -> dict[str, Any]:
    """Give the fields of an entry as they stand in its file.

    Args:
        text: a file that `entries_from` reads without problems.
        instead: whether those are meant that stand instead of a corrected entry.

    Returns:
        Fields by name; none when there are no such fields.
    """
    fences = list(_FENCE.finditer(text))
    front = text[fences[0].end() + 1 : fences[1].start()] if len(fences) > 1 else ""
    document = read_yaml(front, file="", problems=[])
    told = document.value if document is not None and isinstance(document.value, dict) else {}
    return dict(told.get("instead") or {}) if instead else told
