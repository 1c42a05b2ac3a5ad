"""What the code and the templates say: names of phrases and the slots that they fill, read from their syntax."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from jinja2 import Environment, nodes

from tests.conftest import ROOT

PACKAGE = ROOT / "plugins" / "swardcast"
TEMPLATES = (PACKAGE / "templates", PACKAGE / "outlets" / "templates", ROOT / "site_src" / "theme" / "templates")
NOTHING_FOR_MEMBERS = ("reading", "cli", "fetching")  # they speak to the manager, in English
BEGINNING = re.compile(r"(?:[a-z]+-)+")
SAY = ("say", "say_html", "say_joined")


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A phrase that is said by its name, or one of several.

    Args:
        phrases: its name, or names to choose from.
        slots: the slots that are filled, or None where they cannot be seen.
        place: file and line.
    """

    phrases: tuple[str, ...]
    slots: frozenset[str] | None
    place: str


def _literals(node: ast.expr) -> list[str]:
    match node:
        case ast.Constant(value=str(text)):
            return [text]
        case ast.IfExp(body=body, orelse=orelse):
            return [*_literals(body), *_literals(orelse)]
        case _:
            return []


def said_in_code() -> Iterator[Said]:
    """Each call of `say` with a literal name below plugins/."""
    for path, tree in _trees():
        for node in ast.walk(tree):
            match node:
                case ast.Call(func=ast.Attribute(attr="say") | ast.Name(id="say_html"), args=[*_, name]):
                    names = {keyword.arg for keyword in node.keywords}
                    if not isinstance(node.func, ast.Attribute) or not _is_voice(node.func.value):
                        names -= {"source"}  # of a sentence, not of its words
                    slots = None if None in names else frozenset(one for one in names if one is not None)
                    if phrases := tuple(_literals(name)):
                        yield Said(phrases=phrases, slots=slots, place=f"{path.relative_to(ROOT)}, line {node.lineno}")
                case _:
                    pass


def _is_voice(node: ast.expr) -> bool:
    return isinstance(node, ast.Name) and node.id in ("voice", "self")


def said_in_templates() -> Iterator[Said]:
    """Each call of `say` and `say_joined` in a template."""
    for folder in TEMPLATES:
        for path in sorted(folder.glob("*.html")):
            tree = Environment(autoescape=True).parse(path.read_text(encoding="utf-8"))
            for call in tree.find_all(nodes.Call):
                if (
                    isinstance(call.node, nodes.Name)
                    and call.node.name in SAY
                    and isinstance(call.args[0], nodes.Const)
                ):
                    joined = call.node.name == "say_joined"
                    slots = {"first", "next"} if joined else {keyword.key for keyword in call.kwargs}
                    place = f"{path.relative_to(ROOT)}, line {call.lineno}"
                    yield Said(phrases=(call.args[0].value,), slots=frozenset(slots), place=place)


def families() -> set[str]:
    """Beginnings of names that are put together: by `voice.name("family", choice)` or in an f-string."""
    found = set()
    for _, tree in _trees():
        for node in ast.walk(tree):
            match node:
                case ast.Call(func=ast.Attribute(attr="name"), args=[ast.Constant(value=str(family)), _]):
                    found.add(f"{family}-")
                case ast.JoinedStr(values=[ast.Constant(value=str(start)), *_]) if BEGINNING.fullmatch(start):
                    found.add(start)
                case _:
                    pass
    return found


def texts_in_code() -> set[str]:
    """All texts that stand in the code as a whole: names of phrases in small tables are among them."""
    return {
        node.value
        for _, tree in _trees()
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }


def _trees() -> Iterator[tuple[Path, ast.Module]]:
    for path in sorted(PACKAGE.rglob("*.py")):
        if path.parent.name not in NOTHING_FOR_MEMBERS:
            yield path, ast.parse(path.read_text(encoding="utf-8"))
