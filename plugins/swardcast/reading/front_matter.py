"""The fields at the top of a Markdown file, between two lines of '---', and where they stand in it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from swardcast.errors import Problem
from swardcast.reading.yaml_text import Located, read_yaml

__all__ = ["Parts", "fields_in", "parts_of"]

_FENCE: Final = re.compile(r"^---[ \t]*$", re.MULTILINE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Parts:
    """A text, taken apart; put together again its parts are the text.

    Args:
        above: what stands above the fields, with the first line of '---'.
        fields: the fields, as YAML.
        below: the second line of '---', and what stands below it.
    """

    above: str
    fields: str
    below: str

    @property
    def words(self) -> str:
        """What stands below the second line of '---'."""
        return self.below.partition("\n")[2]


def parts_of(text: str) -> Parts | None:
    """Take a text apart.

    Args:
        text: the text, its lines ending with a line feed.

    Returns:
        Its parts; None where it does not begin with fields between two lines of '---'.
    """
    fences = list(_FENCE.finditer(text))
    if len(fences) < 2 or text[: fences[0].start()].strip():  # noqa: PLR2004 - one above and one below the fields
        return None
    first, last = fences[0].end() + 1, fences[1].start()
    return Parts(above=text[:first], fields=text[first:last], below=text[last:])


def fields_in(text: str, *, file: str, problems: list[Problem]) -> tuple[Located, Parts] | None:
    """Read the fields of a text.

    Args:
        text: the text, its lines ending with a line feed.
        file: name for problems.
        problems: where problems are added.

    Returns:
        The fields, with their lines in the text, and its parts; None where there are none, or they are not YAML at all.
    """
    parts = parts_of(text)
    if parts is None:
        expected = "'---', then fields such as 'kind: work done', then '---', then your own words"
        problems.append(Problem(file=file, line=1, found="no fields between two lines of '---'", expected=expected))
        return None
    document = read_yaml(parts.fields, file=file, problems=problems, first_line=parts.above.count("\n") + 1)
    return None if document is None else (document, parts)
