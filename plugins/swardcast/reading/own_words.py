"""The manager's own Markdown for a notice, parted at level-2 headings that name a part of the notice."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from swardcast.errors import Problem, nearest
from swardcast.reading.typed_words import faults_of_markdown
from swardcast.records.plan import OwnWords, Part

__all__ = ["own_words_from"]

_FIELD: Final = "own words"
_INSTEAD: Final = "instead of "
_ONLY_ADDED_TO: Final = {
    Part.THE_RULES: "What stands there is the Committee's, and a notice must not leave it out.",
    Part.TAKE_CARE: "What stands there keeps people safe, and a notice must not leave it out.",
}
# As the site's Markdown reads them: at the very beginning of a line, with or without a blank behind the signs. One that
# somebody set in by up to three blanks is meant as a heading too, and the site's Markdown would print its signs. Code
# stands between two equal lines of signs; without the second one they begin none. Remarks are for nobody to read.
_HEADING: Final = re.compile(r"^(?: {1,3}(?=#{1,2} ))?(?P<signs>#{1,6})(?P<name>.*?)#*\s*$")
_UNDERLINE: Final = re.compile(r"^(?P<sign>=+|-+)\s*$")
_FENCE: Final = re.compile(r"^(?P<marks>`{3,}|~{3,})")
_REMARK: Final = ("<!--", "-->")
_PART_LEVEL: Final = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class _Heading:
    """A heading of level 1 or 2.

    Args:
        level: 1 or 2.
        name: its words.
        at: place of its first line, from 0.
        ends: place of the line after it.
    """

    level: int
    name: str
    at: int
    ends: int


def own_words_from(
    markdown: str, *, file: str, first_line: int, problems: list[Problem]
) -> tuple[str, tuple[OwnWords, ...]]:
    """Part the manager's own words.

    Args:
        markdown: the words, as they stand in the file.
        file: its name for problems.
        first_line: the line of the file on which they begin.
        problems: where problems are added.

    Returns:
        The words before the first heading, and those of each part that a heading names.
    """
    if faults := [*faults_of_markdown(markdown, file=file, first_line=first_line)]:
        problems += faults
        return "", ()
    lines = markdown.splitlines()
    headings = list(_headings(lines))
    starts = [heading.at for heading in headings] + [len(lines)]
    before = _whole_lines(lines[: starts[0]])
    parts: dict[Part, OwnWords] = {}
    first_at: dict[Part, int] = {}
    for heading, end in zip(headings, starts[1:], strict=True):
        line = first_line + heading.at
        told = _part_of(heading, _whole_lines(lines[heading.ends : end]))
        if isinstance(told, OwnWords) and told.part in parts:
            earlier = f"each part once; it stands on line {first_at[told.part]} already"
            told = f"{_shown(heading)} a second time", earlier, "Put both into one."
        if isinstance(told, OwnWords):
            parts[told.part], first_at[told.part] = told, line
        else:
            found, expected, hint = told
            problems.append(Problem(file=file, line=line, field=_FIELD, found=found, expected=expected, hint=hint))
    return before, tuple(parts.values())


def _whole_lines(lines: list[str]) -> str:
    """The lines without empty ones around them; a first line that is set in, such as one of code, stays so."""
    full = [at for at, line in enumerate(lines) if line.strip()]
    return "\n".join(lines[full[0] : full[-1] + 1]).rstrip() if full else ""


def _headings(lines: list[str]) -> Iterator[_Heading]:
    """Headings of level 1 and 2 outside of code and remarks; deeper ones belong to the words."""
    begins, ends = _REMARK
    passed_over = -1
    for at, line in enumerate(lines):
        if at <= passed_over:
            continue
        if (mark := _FENCE.match(line)) is not None:
            closing = (end for end in range(at + 1, len(lines)) if lines[end].rstrip() == mark["marks"])
            passed_over = next(closing, at)
        elif line.startswith(begins):
            passed_over = next((end for end in range(at, len(lines)) if ends in lines[end]), at)
        elif (found := _HEADING.match(line)) is not None:
            if len(found["signs"]) <= _PART_LEVEL:
                yield _Heading(level=len(found["signs"]), name=found["name"].strip(), at=at, ends=at + 1)
        elif at + 1 < len(lines) and (under := _UNDERLINE.match(lines[at + 1])) and _begins(lines, at):
            yield _Heading(level=1 if under["sign"][0] == "=" else 2, name=line.strip(), at=at, ends=at + 2)


def _begins(lines: list[str], at: int) -> bool:
    """Whether a line begins a paragraph, so that one of signs below it makes it a heading."""
    line = lines[at]
    return bool(line.strip()) and not line.startswith("    ") and (at == 0 or not lines[at - 1].strip())


def _shown(heading: _Heading) -> str:
    return repr(f"{'#' * heading.level} {heading.name}".strip())


def _part_of(heading: _Heading, words: str) -> OwnWords | tuple[str, str, str]:
    """The part that a heading names, or what was found, what was expected and a hint."""
    if heading.level < _PART_LEVEL:
        hint = "Or '###' for a heading of your own, or '\\#' for the sign itself."
        return _shown(heading), "a heading of level 2, such as '## Day by day'", hint
    name = " ".join(heading.name.rstrip(":").lower().split())
    instead = name.startswith(_INSTEAD)
    wanted = _bare(name.removeprefix(_INSTEAD))
    part = next((part for part in Part if _bare(part.value.lower()) == wanted), None)
    if part is None:
        known = {f"{_INSTEAD if instead else ''}{_bare(part.value)}": part for part in Part}
        hint = nearest(f"{_INSTEAD if instead else ''}{wanted}", known)
        expected = f"a part of the notice, one of: {', '.join(part.value for part in Part)}"
        return _shown(heading), expected, hint or "For a heading of your own write '###'."
    if instead and part in _ONLY_ADDED_TO:
        return (
            _shown(heading),
            f"'## {part.value[:1].upper()}{part.value[1:]}', which adds to ours",
            _ONLY_ADDED_TO[part],
        )
    if not words:
        return f"nothing below {_shown(heading)}", "some words, or no heading", ""
    return OwnWords(part=part, instead=instead, markdown=words)


def _bare(name: str) -> str:
    return name.removeprefix("the ")
