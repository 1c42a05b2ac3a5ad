"""YAML with the line of every value, read safely and without surprises.

Only numbers, true, false and null become other than text, so that a time such as 07:05, a date or a plain
"no" stays what the manager typed. Anchors, aliases and tags are refused: one line with them can stand for a million.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import islice
from typing import Any, Final, TypeVar

import yaml

from swardcast.errors import Problem

__all__ = ["CONTROL", "Located", "Path", "field_of", "read_yaml"]

T = TypeVar("T")

Path = tuple[str | int, ...]
"""Names of fields, and places in lists from 0."""

CONTROL: Final = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]")
"""What no sentence holds: control characters, marks that turn the direction of letters, halves of letters."""
_DEEPEST: Final = 12
_MOST_ANCHORS: Final = 3  # told one by one: who has typed more knows by then
_NEVER_CLOSED: Final = {
    "parsing a flow": "a bracket that is never closed, or a comma that is missing",
    "scanning a quoted": "a quotation mark that is never closed",
}
_MAY_REFER: Final = re.compile(r"(?:^|[\s\[{,:?-])[&*]\S", re.MULTILINE)
_OF_PLAIN_YAML: Final = frozenset(
    f"tag:yaml.org,2002:{kind}"
    for kind in ("bool", "float", "int", "map", "merge", "null", "seq", "str", "timestamp", "value")
)
_QUOTED: Final = ("'", '"', "|", ">")
_BEGINS_A_NUMBER: Final = "+-0123456789"
_NUMBER: Final = re.compile(r"^[+-]?(?:0|[1-9]\d*)(?:\.\d+)?$")
_ANY_TAG: Final = "tag:yaml.org,2002:str"


def _resolve_nothing(_loader: object, _kind: type[yaml.Node], _value: str, _implicit: object) -> str:
    return _ANY_TAG  # `_plain` tells numbers from text, and cheaper than by the library's many patterns


_PARSER: Final[Any] = getattr(yaml, "CSafeLoader", yaml.SafeLoader)  # the C parser is some 8 times faster
_LOADER: Final[Any] = type("_Loader", (_PARSER,), {"resolve": _resolve_nothing})


@dataclass(frozen=True, slots=True, kw_only=True)
class Located:
    """A YAML document as plain values, and the line of each.

    Args:
        value: mappings, lists, text, numbers, true, false, None.
        lines: line of each value by its path, counted from 1.
        key_lines: line of each key by its path.
        typed: what was typed, by the path of each value that has become other than text.
        within: where it stands in a larger document, for the names of its fields.
    """

    value: Any
    lines: Mapping[Path, int]
    key_lines: Mapping[Path, int]
    typed: Mapping[Path, str]
    within: Path = ()

    def line(self, path: Path) -> int | None:
        """Name the line of a path, or of the nearest thing above it."""
        for end in range(len(path), -1, -1):
            found = self.key_lines.get(path[:end]) or self.lines.get(path[:end])
            if found is not None:
                return found
        return None

    def below(self, field: str) -> Located:
        """Give what stands below a field of the document as a document of its own."""

        def cut(known: Mapping[Path, T]) -> dict[Path, T]:
            return {path[1:]: one for path, one in known.items() if path[:1] == (field,)}

        lines, key_lines, typed = cut(self.lines), cut(self.key_lines), cut(self.typed)
        within = (*self.within, field)
        return Located(value=self.value[field], lines=lines, key_lines=key_lines, typed=typed, within=within)

    def name(self, path: Path) -> str:
        """Name a field as people count, from the top of its file."""
        return field_of((*self.within, *path))


def field_of(path: Path) -> str:
    """Name a field as people count: ("jobs", 0, "starts") is "job 1.starts".

    Args:
        path: where it stands.

    Returns:
        Its name; things of a list are counted from 1, and a comma stands between one and what is counted within it.
    """
    said = ""
    for part in path:
        if isinstance(part, int):
            several = said.removesuffix(", ")
            one = re.sub("ies$", "y", several).removesuffix("s")
            said = f"{one} {part + 1}, ".removeprefix(" ")
        else:
            said = said if said.endswith(", ") or not said else f"{said}."
            said += part
    return said.removesuffix(", ")


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
        problems += _references(text, file, first_line)
        node = yaml.compose(text, Loader=_LOADER)
    except yaml.YAMLError as error:
        problems.append(_syntax_problem(error, text, file, first_line))
        return None
    except RecursionError:
        problems.append(
            Problem(file=file, line=first_line, found="far too many nested brackets", expected="plain lists and fields")
        )
        return None
    may_be_odd = "\\" in text or CONTROL.search(text) is not None  # an escape may stand for a control character
    walker = _Walker(file=file, first_line=first_line, may_be_odd=may_be_odd, problems=problems)
    value = walker.value(node, ()) if node is not None else {}
    return Located(value=value, lines=walker.lines, key_lines=walker.key_lines, typed=walker.typed)


def _references(text: str, file: str, first_line: int) -> Iterator[Problem]:
    """Find the first anchors, which give a name to a part of the file, and aliases, which repeat it."""
    if ("&" not in text and "*" not in text) or _MAY_REFER.search(text) is None:  # most have neither
        return
    expected, hint = "plain lists and fields", "Text that begins with '&' or '*' stands in quotation marks."
    parsed: Iterable[Any] = yaml.parse(text, Loader=_LOADER)
    events = (one for one in parsed if getattr(one, "anchor", None) is not None)
    for event in islice(events, _MOST_ANCHORS):
        line = first_line + event.start_mark.line
        is_alias = isinstance(event, yaml.AliasEvent)
        found = f"an alias ('*{event.anchor}')" if is_alias else f"an anchor ('&{event.anchor}')"
        yield Problem(file=file, line=line, found=found, expected=expected, hint=hint)


def _syntax_problem(error: yaml.YAMLError, text: str, file: str, first_line: int) -> Problem:
    mark = getattr(error, "problem_mark", None)
    detail = str(getattr(error, "problem", None) or getattr(error, "reason", None) or "unreadable text")
    context = str(getattr(error, "context", None) or "")
    for begun, said in _NEVER_CLOSED.items():
        if begun in context:
            mark, detail = getattr(error, "context_mark", None), said
    line = first_line + (mark.line if mark else 0)
    lines = text.splitlines()
    stands = lines[mark.line] if mark and mark.line < len(lines) else ""
    hint = "YAML is indented with spaces, never with tabs." if "\t" in stands or "\\t" in detail else ""
    if not hint and ("mapping values" in detail or "block mapping" in detail or "simple key" in detail):
        hint = "Put text that holds a colon in quotes, and line fields up under each other."
    found = f"{stands.strip()[:60]!r}, which is not YAML ({detail})" if stands else f"text that is not YAML ({detail})"
    return Problem(file=file, line=line, found=found, expected="fields such as 'name: value'", hint=hint)


class _Walker:
    def __init__(self, *, file: str, first_line: int, may_be_odd: bool, problems: list[Problem]) -> None:
        self._file, self._first_line, self._may_be_odd, self._problems = file, first_line, may_be_odd, problems
        self.lines: dict[Path, int] = {}
        self.key_lines: dict[Path, int] = {}
        self.typed: dict[Path, str] = {}
        self._seen: set[int] = set()
        self._is_too_deep = False

    def value(self, node: yaml.Node, path: Path) -> Any:
        line = self._first_line + node.start_mark.line
        self.lines[path] = line
        if node.tag not in _OF_PLAIN_YAML:
            tag = node.tag.replace("tag:yaml.org,2002:", "!!")[:40]
            self._problem(line, path, f"a tag ({tag!r})", "plain text, lists and fields")
            return None
        if isinstance(node, yaml.ScalarNode):
            return self._scalar(node, path, line)
        if id(node) in self._seen:
            return None  # an alias, which was told
        self._seen.add(id(node))
        if len(path) > _DEEPEST:
            if not self._is_too_deep:
                self._problem(
                    line, path[:1], f"lists or fields nested more than {_DEEPEST} deep", "plain lists and fields"
                )
            self._is_too_deep = True
            return None
        if isinstance(node, yaml.MappingNode):
            return self._mapping(node, path)
        return [self.value(item, (*path, place)) for place, item in enumerate(node.value)]

    def _scalar(self, node: yaml.ScalarNode, path: Path, line: int) -> Any:
        text = str(node.value)
        odd = CONTROL.search(text) if self._may_be_odd else None
        if odd is not None:
            self._problem(line, path, f"the control character U+{ord(odd[0]):04X}", "plain text")
            return CONTROL.sub("", text)  # told once is enough
        if node.style in _QUOTED:
            return text
        value = _plain(text)
        if value is not text and value is not None:
            self.typed[path] = text
        return value

    def _mapping(self, node: yaml.MappingNode, path: Path) -> dict[str, Any]:
        mapping: dict[str, Any] = {}
        for key_node, value_node in node.value:
            line = self._first_line + key_node.start_mark.line
            if not isinstance(key_node, yaml.ScalarNode):
                self._problem(line, path, "a list or fields where the name of a field should be", "a name")
                continue
            key = str(key_node.value).strip()
            if self._may_be_odd and CONTROL.search(key):
                self._problem(line, path, "a control character in the name of a field", "plain text")
                continue
            below = (*path, key)
            if key in mapping:
                first = self.key_lines[below]
                self._problem(
                    line, below, "the same field a second time", f"it once; it stands on line {first} already"
                )
                continue
            self.key_lines[below] = line
            mapping[key] = self.value(value_node, below)
        return mapping

    def _problem(self, line: int, path: Path, found: str, expected: str) -> None:
        self._problems.append(Problem(file=self._file, line=line, field=field_of(path), found=found, expected=expected))


def _plain(text: str) -> Any:
    if text in ("", "~", "null"):
        return None
    if text in ("true", "false"):
        return text == "true"
    if text[0] in _BEGINS_A_NUMBER and _NUMBER.fullmatch(text) and len(text) < 16:  # noqa: PLR2004 - longer runs of digits are no quantity
        return float(text) if "." in text else int(text)
    return text
