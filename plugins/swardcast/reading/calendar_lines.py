"""A calendar file as unfolded lines and components, each with its place: icalendar itself tells no lines."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final

from swardcast.errors import Problem
from swardcast.reading.plain_words import shown

__all__ = ["ContentLine", "Part", "parts_of"]

_PROPERTY: Final = re.compile(r"^(?P<name>[A-Za-z0-9-]+)(?:;(?:[^\":]|\"[^\"]*\")*)?:(?P<value>.*)$")
_READ: Final = ("VCALENDAR", "VEVENT", "VTIMEZONE", "STANDARD", "DAYLIGHT")


@dataclass(frozen=True, slots=True, kw_only=True)
class ContentLine:
    """One unfolded line.

    Args:
        number: the line of the file on which it begins, counted from 1.
        text: the whole line.
        name: the property's name in capitals, or "" where the line is no property.
        value: what stands behind the colon.
    """

    number: int
    text: str
    name: str
    value: str


@dataclass(slots=True, kw_only=True)
class Part:
    """A component of the file, such as an event.

    Args:
        name: its kind in capitals.
        line: the line of its BEGIN.
        within: the part around it, or None for a calendar.
        lines: its own properties, in order, without those of the parts in it.
        parts: the parts directly in it.
    """

    name: str
    line: int
    within: Part | None = None
    lines: list[ContentLine] = field(default_factory=list)
    parts: list[Part] = field(default_factory=list)

    def text(self, *names: str) -> str:
        """Write the part anew, its properties of these names only, or all of them where none is named."""
        own = (line.text for line in self.lines if not names or line.name in names)
        inner = (part.text(*names) for part in self.parts if part.name in _READ)
        return "\r\n".join([f"BEGIN:{self.name}", *own, *inner, f"END:{self.name}"])

    def all_of(self, name: str) -> list[ContentLine]:
        """List its properties of a name."""
        return [line for line in self.lines if line.name == name]

    def value(self, name: str) -> str:
        """Give the value of its first property of a name as written, or ""."""
        return next((line.value for line in self.all_of(name)), "")

    def line_of(self, name: str) -> int:
        """Name the line of its first property of a name, or else that of its BEGIN."""
        return next((line.number for line in self.all_of(name)), self.line)


def parts_of(text: str, *, file: str, problems: list[Problem]) -> list[Part]:
    """Take a calendar file apart.

    Assumes that lines end with a line feed alone, as `Files.text` gives them.

    Args:
        text: the file.
        file: its name for problems.
        problems: where problems are added.

    Returns:
        The calendars, in order; none when their BEGIN and END do not match.

    Source: Desruisseaux 2009, RFC 5545, sections 3.1 (content lines and folding), 3.4 (several calendars in one
        stream) and 3.6 (components).
    """
    found: list[Part] = []
    around: Part | None = None
    for line in _unfolded(text):
        if line.name == "BEGIN":
            inner = Part(name=line.value.strip().upper(), line=line.number, within=around)
            (found if around is None else around.parts).append(inner)
            around = inner
        elif line.name == "END" and around is not None and line.value.strip().upper() == around.name:
            around = around.within
        elif line.name == "END" or around is None:
            problems.append(_out_of_place(line, around, file))
            return []
        else:
            _add(line, around, file, problems)
        if around is not None and around.within is None and around.name != "VCALENDAR":
            problems.append(_no_calendar(line, file))
            return []
    if around is not None:
        begin = f"'BEGIN:{around.name}' without its end"
        problems.append(Problem(file=file, line=around.line, found=begin, expected=f"a line 'END:{around.name}'"))
        return []
    if not found:
        problems.append(Problem(file=file, found="no calendar", expected="lines from 'BEGIN:VCALENDAR' on"))
    return found


def _unfolded(text: str) -> Iterator[ContentLine]:
    parts: list[str] = []
    first = 0
    for number, line in enumerate(text.split("\n"), start=1):
        if line[:1] in (" ", "\t") and parts:
            parts.append(line[1:])
            continue
        yield from _whole(parts, first)
        parts, first = ([line], number) if line.strip() else ([], 0)
    yield from _whole(parts, first)


def _whole(parts: list[str], number: int) -> Iterator[ContentLine]:
    if parts:
        text = "".join(parts)
        match = _PROPERTY.match(text)
        name, value = (match["name"].upper(), match["value"]) if match else ("", "")
        yield ContentLine(number=number, text=text, name=name, value=value)


def _add(line: ContentLine, around: Part, file: str, problems: list[Problem]) -> None:
    if line.name:
        around.lines.append(line)
    elif around.name in _READ:
        problems.append(
            Problem(
                file=file,
                line=line.number,
                found=shown(line.text),
                expected="a property such as 'SUMMARY:Autumn medal'",
                hint="A line that goes on with the one above begins with a blank.",
            )
        )


def _no_calendar(line: ContentLine, file: str) -> Problem:
    found = shown(line.text)
    return Problem(file=file, line=line.number, found=found, expected="a calendar, which begins with 'BEGIN:VCALENDAR'")


def _out_of_place(line: ContentLine, around: Part | None, file: str) -> Problem:
    if around is None:
        return _no_calendar(line, file)
    expected = f"'END:{around.name}', since line {around.line} begins one"
    return Problem(file=file, line=line.number, found=shown(line.text), expected=expected)
