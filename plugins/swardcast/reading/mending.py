"""What an older format leaves to be changed -> the text of each file with the change, and not another byte changed.

The tree of ruamel.yaml keeps remarks, order and quotation marks, but lays out anew what it writes: blanks before a
value, lines that go on below. So the file is written from its tree twice, before and after the change. Only where the
two differ are lines of the file replaced, and the outcome is read back.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Collection, Iterable, Mapping
from difflib import SequenceMatcher
from io import StringIO
from typing import Any, Final

from swardcast.errors import Problem
from swardcast.reading.format_changes import FORMAT, Found
from swardcast.reading.front_matter import Parts, parts_of
from swardcast.reading.yaml_text import read_yaml
from swardcast.records.club import SurfaceKind

__all__ = ["mended_texts"]

_NO_WIDTH: Final = 1_000_000
"""Letters of a line before it is broken: none is."""
_SET_IN: Final = 2
"""Blanks before what stands below a field, where the file shows none: those of our own files."""
_MARK: Final = "\ufeff"


def mended_texts(
    found: Iterable[Found],
    surfaces: Collection[SurfaceKind],
    text_of: Callable[[str], str],
    *,
    problems: list[Problem],
    to: int = FORMAT,
) -> dict[str, str]:
    """Mend what an older format leaves to be changed, and write down the format.

    Args:
        found: the places; none means that nothing is to be done.
        surfaces: the kinds of surface that the club has, at least one.
        text_of: gives the text of a file as it is, with its mark of byte order and its ends of lines.
        problems: where it is added what has to be changed by hand.
        to: the format that the folder has then.

    Returns:
        The new text of each file that changes; nothing when one of them has to be changed by hand.
    """
    by_file: dict[str, list[Found]] = defaultdict(list)
    for one in found:
        by_file[one.file].append(one)
    if not by_file:
        return {}
    by_hand: list[Problem] = []
    texts: dict[str, str] = {}
    for file in sorted({"club.yaml", *by_file}):

        def edit(tree: Any, file: str = file) -> None:
            for one in reversed(by_file[file]):
                one.change.mend(tree, one.path, surfaces)
            if file == "club.yaml":
                _number(tree, to)

        text = _edited(text_of(file), edit, has_words=file.endswith(".md"))
        if text is not None:
            texts[file] = text
            continue
        found_here = "a layout in which other lines would change with those that must"
        expected, hint = "the change made by hand", "Nothing was mended; 'swardcast check' says what to change."
        by_hand.append(Problem(file=file, found=found_here, expected=expected, hint=hint))
    problems += by_hand
    return {} if by_hand else texts


def _number(tree: Any, to: int) -> None:
    if "format" in tree:
        tree["format"] = to
    else:
        tree.insert(0, "format", to)


def _edited(text: str, edit: Callable[[Any], None], *, has_words: bool) -> str | None:
    """Change the fields of a file; None where that cannot be done without changing other lines."""
    from ruamel.yaml.error import YAMLError  # noqa: PLC0415 - loaded by mending alone

    bare = text.removeprefix(_MARK)
    end = "\r\n" if "\r\n" in bare else "\n"
    plain = bare.replace("\r\n", "\n")
    parts = parts_of(plain) if has_words else Parts(above="", fields=plain, below="")
    if parts is None:
        return None
    try:
        before, after = _written_twice(parts.fields, edit)
    except YAMLError:
        return None
    lines = bare.split("\n")
    first = parts.above.count("\n")
    last = first + parts.fields.count("\n")  # that of the second '---', or the file's last
    of_fields = [*lines[first:last], "" if has_words else lines[last]]
    merged = _merged(parts.fields, of_fields, before.split("\n"), after.split("\n"), end)
    if merged is None:
        return None
    outcome = "\n".join(merged)
    if _value(before) != _value(parts.fields) or _value(outcome.replace("\r\n", "\n")) != _value(after):
        return None
    if has_words:
        outcome = "\n".join([*lines[:first], ""]) + outcome + "\n".join(lines[last:])
    return text[: len(text) - len(bare)] + outcome


def _written_twice(text: str, edit: Callable[[Any], None]) -> tuple[str, str]:
    from ruamel.yaml import YAML  # noqa: PLC0415 - loaded by mending alone

    yaml = YAML()
    yaml.width, yaml.preserve_quotes = _NO_WIDTH, True
    tree = yaml.load(text)
    fields, things = _columns(tree)
    yaml.indent(mapping=fields, sequence=things + 2, offset=things)

    def written() -> str:
        out = StringIO()
        yaml.dump(tree, out)
        return out.getvalue()

    before = written()
    edit(tree)
    return before, written()


def _columns(tree: Any) -> tuple[int, int]:
    """How far the first fields below a field of the file are set in, and the hyphens of the first list."""
    blocks = [child for child in tree.values() if hasattr(child, "fa") and not child.fa.flow_style()]
    fields = (block.lc.col for block in blocks if hasattr(block, "keys"))
    things = (block.lc.col for block in blocks if not hasattr(block, "keys"))
    return next(fields, _SET_IN), next(things, _SET_IN)


def _merged(text: str, lines: list[str], before: list[str], after: list[str], end: str) -> list[str] | None:
    """Put the lines that differ between two ways of writing a tree into the lines of the file."""
    places = _places(before, text.split("\n"))
    merged = list(lines)
    hunks = SequenceMatcher(None, before, after, autojunk=False).get_opcodes()
    for kind, first, beyond, new_first, new_beyond in reversed(hunks):
        if kind == "equal":
            continue
        start = places.get(first)
        if start is None or [places.get(line) for line in range(first, beyond)] != [
            start + line for line in range(beyond - first)
        ]:
            return None
        moved = _blanks(lines[start]) - _blanks(before[first]) if first < beyond else 0
        merged[start : start + beyond - first] = [
            _moved(line, moved) + end[:-1] for line in after[new_first:new_beyond]
        ]
    return merged


def _blanks(line: str) -> int:
    """How far a line is set in."""
    return len(line) - len(line.lstrip(" "))


def _moved(line: str, blanks: int) -> str:
    """A line set in as far as the one in whose place it stands: no two lists of a file need be laid out alike."""
    return " " * blanks + line if blanks > 0 else line[min(-blanks, _blanks(line)) :]


def _places(before: list[str], lines: list[str]) -> Mapping[int, int]:
    """The line of the file for each line that is written from its tree, where the two differ in blanks at most."""
    written, typed = (["".join(line.split()) for line in one] for one in (before, lines))
    blocks = SequenceMatcher(None, written, typed, autojunk=False).get_matching_blocks()
    return {block.a + place: block.b + place for block in blocks for place in range(block.size)}


def _value(text: str) -> Any:
    told = read_yaml(text, file="", problems=[])
    return told.value if told is not None else None
