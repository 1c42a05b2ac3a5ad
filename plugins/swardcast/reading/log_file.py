"""log/YYYY/*.md -> entries: front matter for what a program needs, Markdown for the manager's own words."""

from __future__ import annotations

from typing import Any

from swardcast.errors import Problem
from swardcast.reading.front_matter import fields_in
from swardcast.reading.log_entry import EntryReader
from swardcast.reading.log_names import LogContext
from swardcast.reading.typed_words import faults_of_markdown
from swardcast.records.log import Entry

__all__ = ["entries_from", "typed_fields"]


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
    told = fields_in(text, file=file, problems=problems)
    if told is None:
        return []
    document, parts = told
    context.documents[file] = document
    words, above = parts.words, f"{parts.above}{parts.fields}"
    if faults := [*faults_of_markdown(words, file=file, first_line=above.count("\n") + 2)]:
        problems += faults
        words = ""
    reader = EntryReader(name=name, file=file, words=words.strip(), context=context, problems=problems)
    return reader.entries(document)


def typed_fields(text: str, *, instead: bool) -> dict[str, Any]:
    """Give the fields of an entry as they stand in its file.

    Args:
        text: a file that `entries_from` reads without problems.
        instead: whether those are meant that stand instead of a corrected entry.

    Returns:
        Fields by name; none when there are no such fields.
    """
    found = fields_in(text, file="", problems=[])
    document = found[0] if found is not None else None
    told = document.value if document is not None and isinstance(document.value, dict) else {}
    return dict(told.get("instead") or {}) if instead else told
