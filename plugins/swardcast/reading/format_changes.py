"""The format of a club folder has a number, and each change of it a description: what to look for, and how to mend it.

`format: 2` in club.yaml says by which rules a folder was written; a folder that says nothing is of format 1.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain
from typing import Annotated, Any, Final

from pydantic import BeforeValidator

from swardcast.errors import InputNeedsAttention, Problem
from swardcast.reading.files import Files
from swardcast.reading.schema import wrong
from swardcast.reading.yaml_text import Located, Path
from swardcast.records.club import SurfaceKind
from swardcast.records.operations import Kind

__all__ = ["CHANGES", "FORMAT", "FormatChange", "FormatNumber", "Found", "explained", "find_changes", "refuse_newer"]

_FIELD: Final = "format"
_OLD_COST: Final = "cost per surface"
_OLD_DRAINAGE: Final = "drainage"


@dataclass(frozen=True, slots=True, kw_only=True)
class FormatChange:
    """One change of the format.

    Args:
        since: the first format that has it, from 2; it is looked for in folders of the formats before.
        files: the files whose fields it concerns, as patterns below the folder: YAML files, such as "plan/*.yaml", and
            Markdown files with fields at their top, such as "log/**/*.md".
        found: what an older folder has, in words.
        expected: what stands in its place now, in words.
        where: finds the old fields in the plain values of a file; gives the path of each, from the top down.
        mend: changes one of them in the tree of a file, whose mappings and lists keep remarks; it is told the path and
            the kinds of surface that the club has.
    """

    since: int
    files: tuple[str, ...]
    found: str
    expected: str
    where: Callable[[Any], Sequence[Path]]
    mend: Callable[[Any, Path, Collection[SurfaceKind]], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """A place that an older format leaves to be changed.

    Args:
        file: the file, below the folder.
        document: what stands in it.
        path: the field.
        change: what has become of it.
    """

    file: str
    document: Located
    path: Path
    change: FormatChange

    @property
    def problem(self) -> Problem:
        """The place and the change, in words."""
        return Problem(
            file=self.file,
            line=self.document.line(self.path),
            field=self.document.name(self.path),
            found=f"{self.change.found}, as before format {self.change.since}",
            expected=self.change.expected,
            hint="'swardcast check --mend' writes it so and keeps your remarks.",
        )


def _cost_per_surface(value: Any) -> list[Path]:
    """Costs that counted for every surface; where there are some by kind too, nobody knows which are meant."""
    planning = value.get("planning") if isinstance(value, dict) else None
    if not isinstance(planning, dict) or not isinstance(planning.get(_OLD_COST), dict):
        return []
    by_kind = {f"cost per {kind.value}" for kind in SurfaceKind}
    return [] if by_kind & planning.keys() else [("planning", _OLD_COST)]


def _cost_by_kind(tree: Any, path: Path, surfaces: Collection[SurfaceKind]) -> None:
    """The costs counted for every surface, so each kind that the club has gets them; the last keeps the remarks."""
    planning = tree[path[0]]
    *others, last = (f"cost per {kind.value}" for kind in SurfaceKind if kind in surfaces)
    place = _rename(planning, _OLD_COST, last)
    for name in reversed(others):
        planning.insert(place, name, _without_remarks(planning[last]))


def _rename(fields: Any, old: str, new: str) -> int:
    """Give a field another name in its place, with its remarks and quotation marks; gives the place."""
    place, typed = next((place, name) for place, name in enumerate(fields) if name == old)
    remarks = fields.ca.items.pop(old, None)
    fields.insert(place, type(typed)(new), fields.pop(old))
    if remarks is not None:
        fields.ca.items[new] = remarks
    return place


def _without_remarks(costs: Any) -> Any:
    copy = type(costs)(costs.items())
    if costs.fa.flow_style():
        copy.fa.set_flow_style()
    return copy


def _found_at(value: Any, *pattern: str | None) -> Iterator[Path]:
    """The paths in plain values that a pattern names; None stands for each thing of a list."""
    if not pattern:
        yield ()
        return
    first, *rest = pattern
    if first is None:
        steps: Iterable[tuple[str | int, Any]] = enumerate(value) if isinstance(value, list) else ()
    else:
        steps = [(first, value[first])] if isinstance(value, dict) and first in value else []
    for step, below in steps:
        yield from ((step, *path) for path in _found_at(below, *rest))


def _at(value: Any, path: Path) -> Any:
    for step in path:
        value = value[step]
    return value


def _old_drainage(value: Any) -> list[Path]:
    """Operations of that name in a plan, and in an entry that tells how the work was really done."""
    patterns = ("jobs", None, "operations", None), ("as done", None), ("instead", "as done", None)
    paths = (path for pattern in patterns for path in _found_at(value, *pattern))
    return [path for path in paths if _at(value, path) in (_OLD_DRAINAGE, {_OLD_DRAINAGE: None}, {_OLD_DRAINAGE: {}})]


def _drainage_trenching(tree: Any, path: Path, _surfaces: Collection[SurfaceKind]) -> None:
    operations, place, new = _at(tree, path[:-1]), path[-1], Kind.DRAINAGE_TRENCHING.value
    old = operations[place]
    if isinstance(old, str):
        operations[place] = type(old)(new)
    else:
        _rename(old, _OLD_DRAINAGE, new)


CHANGES: Final = (
    FormatChange(
        since=2,
        files=("club.yaml",),
        found=f"{_OLD_COST!r}",
        expected="costs by kind of surface: 'cost per green', 'cost per tee' and so on",
        where=_cost_per_surface,
        mend=_cost_by_kind,
    ),
    FormatChange(
        since=2,
        files=("plan/*.yaml", "log/**/*.md"),
        found=f"{_OLD_DRAINAGE!r}",
        expected=f"{Kind.DRAINAGE_TRENCHING.value!r}; for a bunker's drain, {Kind.BUNKER_DRAINAGE.value!r}",
        where=_old_drainage,
        mend=_drainage_trenching,
    ),
)
"""Every change of the format, the oldest first."""

FORMAT: Final = max(change.since for change in CHANGES)
"""The format that this program writes."""

_KNOWN: Final = "1 and 2" if FORMAT == 2 else f"1 to {FORMAT}"  # noqa: PLR2004 - the plural of English


def _number(value: object) -> int:
    if not _is_number(value):
        raise wrong(value, f"the number of the folder's format, {_KNOWN.replace('and', 'or')}")
    return int(str(value))


def _is_number(value: object) -> bool:
    return isinstance(value, int) and not isinstance(value, bool) and value >= 1


FormatNumber = Annotated[int, BeforeValidator(_number)]
"""The number of a format, from 1."""


def refuse_newer(document: Located | None) -> None:
    """Refuse a folder of a newer format at once: what else is said of it would mislead.

    Args:
        document: the YAML of club.yaml, or None when it cannot be read.

    Raises:
        InputNeedsAttention: when its format is newer than this program.
    """
    number = _told(document)
    if document is None or number <= FORMAT:
        return
    found = f"a folder written for a newer Swardcast (format {number}; this one knows {_KNOWN})"
    hint = "Install a newer Swardcast. Nothing else was looked at."
    line = document.line((_FIELD,))
    raise InputNeedsAttention([Problem(file="club.yaml", line=line, field=_FIELD, found=found, hint=hint)])


def _told(document: Located | None) -> int:
    """The number, where it is one; what else stands there is told with the other fields of club.yaml."""
    value = document.value.get(_FIELD, 1) if document is not None and isinstance(document.value, dict) else 1
    return value if isinstance(value, int) and _is_number(value) else 1


def find_changes(files: Files, changes: Iterable[FormatChange] = CHANGES) -> Iterator[Found]:
    """Look for what an older format leaves to be changed.

    Args:
        files: the club's files.
        changes: the changes of the format.

    Yields:
        Each place, change by change.
    """
    number = _told(files.club_file())
    for change in changes:
        if change.since <= number:
            continue
        for file, _ in chain.from_iterable(files.below("", pattern) for pattern in change.files):
            document = files.club_file() if file == "club.yaml" else files.fields(file)
            if document is not None:
                for path in change.where(document.value):
                    yield Found(file=file, document=document, path=path, change=change)


def explained(problems: Iterable[Problem], found: Iterable[Found]) -> list[Problem]:
    """Tell a change of the format in its own words, in the place of what is said of a field that is not known.

    Args:
        problems: what is wrong with the folder.
        found: what its format leaves to be changed.

    Returns:
        All problems, each once.
    """
    told = {(problem.file, problem.line, problem.field): problem for problem in (one.problem for one in found)}
    others = (problem for problem in problems if (problem.file, problem.line, problem.field) not in told)
    return [*others, *told.values()]
