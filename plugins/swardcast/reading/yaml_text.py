"""YAML with the line of every value, read safely and without surprises.

Only numbers, true, false and null become other than text, so that a time such as 07:05, a date or a plain
"no" stays what the manager typed. Anchors, aliases and tags are refused.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

import yaml

from swardcast.errors import Problem

__all__ = ["CONTROL", "Located", "read_yaml"]

Path = tuple[str | int, ...]

CONTROL: Final = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]")
"""What no sentence holds: control characters, marks that turn the direction of letters, halves of letters."""
_DEEPEST: Final = 12
_NUMBER: Final = re.compile(r"^[+-]?(?:0|[1-9]\d*)(?:\.\d+)?$")
_LOADER: Final[Any] = getattr(yaml, "CSafeLoader", yaml.SafeLoader)  # the C parser is some 8 times faster


@dataclass(frozen=True, slots=True, kw_only=True)
class Located:
    """A YAML document as plain values, and the line of each.

    Args:
        value: mappings, lists, text, numbers, true, false, None.
        lines: line of each value by its path, counted from 1.
        key_lines: line of each key by its path.
    """

    value: Any
    lines: Mapping[Path, int]
    key_lines: Mapping[Path, int]

    def line(self, path: Path) -> int | None:
        """Name the line of a path, or of the nearest thing above it."""
        for end in range(len(path), -1, -1):
            found = self.key_lines.get(path[:end]) or self.lines.get(path[:end])
            if found is not None:
                return found
        return None


def read_yaml(text: str, *, file: str, problems: list[Problem], first_line: int = 1) -> Located | None:
    """Read one YAML document.

    Args:
        text: the document.
        file: name for problems.
        problems: where problems are added.
        first_line: the line of the file on which the document starts.

    Returns:
        The document, or None when it is not YAML at all.
    """
    try:
        node = yaml.compose(text, Loader=_LOADER)
    except yaml.YAMLError as error:
        problems.append(_syntax_problem(error, text, file, first_line))
        return None
    except RecursionError:
        problems.append(
            Problem(file=file, line=first_line, found="far too many nested brackets", expected="plain lists and fields")
        )
        return None
    walker = _Walker(file=file, first_line=first_line, problems=problems)
    value = walker.value(node, ()) if node is not None else {}
    return Located(value=value, lines=walker.lines, key_lines=walker.key_lines)


def _syntax_problem(error: yaml.YAMLError, text: str, file: str, first_line: int) -> Problem:
    mark = getattr(error, "problem_mark", None)
    line = first_line + (mark.line if mark else 0)
    detail = str(getattr(error, "problem", None) or getattr(error, "reason", None) or "unreadable text")
    lines = text.splitlines()
    stands = lines[mark.line] if mark and mark.line < len(lines) else ""
    hint = "YAML is indented with spaces, never with tabs." if "\t" in stands or "\\t" in detail else ""
    if not hint and ("mapping values" in detail or "block mapping" in detail or "simple key" in detail):
        hint = "Put text that holds a colon in quotes, and line fields up under each other."
    found = f"{stands.strip()[:60]!r}, which is not YAML ({detail})" if stands else f"text that is not YAML ({detail})"
    return Problem(file=file, line=line, found=found, expected="fields such as 'name: value'", hint=hint)


class _Walker:
    def __init__(self, *, file: str, first_line: int, problems: list[Problem]) -> None:
        self._file, self._first_line, self._problems = file, first_line, problems
        self.lines: dict[Path, int] = {}
        self.key_lines: dict[Path, int] = {}
        self._seen: set[int] = set()

    def value(self, node: yaml.Node, path: Path) -> Any:
        line = self._first_line + node.start_mark.line
        self.lines[path] = line
        if len(path) > _DEEPEST or (id(node) in self._seen and not isinstance(node, yaml.ScalarNode)):
            self._problem(line, path, "an alias or very deep nesting", "plain lists and fields")
            return None
        self._seen.add(id(node))
        if isinstance(node, yaml.MappingNode):
            return self._mapping(node, path)
        if isinstance(node, yaml.SequenceNode):
            return [self.value(item, (*path, place)) for place, item in enumerate(node.value)]
        odd = CONTROL.search(str(node.value))
        if odd is not None:
            self._problem(line, path, f"the control character U+{ord(odd[0]):04X}", "plain text")
            return CONTROL.sub("", str(node.value))  # told once is enough
        return _plain(node)

    def _mapping(self, node: yaml.MappingNode, path: Path) -> dict[str, Any]:
        mapping: dict[str, Any] = {}
        for key_node, value_node in node.value:
            line = self._first_line + key_node.start_mark.line
            if not isinstance(key_node, yaml.ScalarNode):
                self._problem(line, path, "a list or fields where the name of a field should be", "a name")
                continue
            key = str(key_node.value).strip()
            if CONTROL.search(key):
                self._problem(line, path, "a control character in the name of a field", "plain text")
                continue
            if key in mapping:
                first = self.key_lines[(*path, key)]
                self._problem(
                    line, (*path, key), "the same field a second time", f"it once; it stands on line {first} already"
                )
                continue
            self.key_lines[(*path, key)] = line
            mapping[key] = self.value(value_node, (*path, key))
        return mapping

    def _problem(self, line: int, path: Path, found: str, expected: str) -> None:
        field = ".".join(map(str, path))
        self._problems.append(Problem(file=self._file, line=line, field=field, found=found, expected=expected))


def _plain(node: yaml.Node) -> Any:
    text = str(node.value)
    if getattr(node, "style", None) in ("'", '"', "|", ">"):
        return text
    if text in ("", "~", "null"):
        return None
    if text in ("true", "false"):
        return text == "true"
    if _NUMBER.fullmatch(text) and len(text) < 16:  # noqa: PLR2004 - longer runs of digits are no quantity
        return float(text) if "." in text else int(text)
    return text
