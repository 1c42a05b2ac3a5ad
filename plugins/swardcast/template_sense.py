"""What can be said of a template of the club's own without filling it: what it names has to be there.

Text goes through Jinja's own parser, and faults come out. What Jinja itself would pass over in silence (a block that
nothing shows, a name that no page has) is a fault here, for the manager would look for it in vain.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from jinja2 import Environment, TemplateNotFound, TemplateSyntaxError, nodes
from jinja2.meta import find_undeclared_variables

from swardcast.errors import Problem, nearest
from swardcast.template_attributes import misspelt_attributes

__all__ = ["Surroundings", "faults_in_templates", "syntax_problem"]

_TAGS: Final = (
    "autoescape", "block", "call", "extends", "filter", "for", "from", "if", "import", "include", "macro", "print",
    "raw", "set", "with",
)  # fmt: skip
_UNKNOWN_TAG: Final = re.compile(r"unknown tag '(\w+)'")
_OWN_NAMES: Final = ("self", "super", "caller", "loop", "varargs", "kwargs")
"""Names that Jinja gives itself where they make sense."""
_SAYS: Final = ("say", "say_joined")
"""Functions whose first argument is the name of a phrase."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Surroundings:
    """What a template of the club's may count on.

    Args:
        environment: Jinja as the build sets it up, with its filters, tests and globals; its loader knows all templates.
        names: names that every page has.
        names_of: names that only pages of a template have, by the template; those of other templates are not known.
        phrases: names of the phrases that `say` can say.
        attributes: what things have, by the names under which pages have them, as far as it is known.
        folder: the folder of the templates as the manager knows it, such as "templates".
    """

    environment: Environment
    names: frozenset[str]
    names_of: Mapping[str, frozenset[str]]
    phrases: frozenset[str]
    attributes: Mapping[str, frozenset[str]]
    folder: str


def syntax_problem(error: TemplateSyntaxError, file: str) -> Problem:
    """Word what Jinja could not read.

    Args:
        error: what it raised.
        file: the template as the manager knows it.

    Returns:
        The problem with its line and, for a tag that does not exist, the nearest one.
    """
    said = " ".join(str(error.message or "").split())
    tag = _UNKNOWN_TAG.search(said)
    hint = nearest(tag[1], _TAGS) if tag else ""
    return Problem(file=file, line=error.lineno, found=f"a template that Jinja cannot read ({said})", hint=hint)


def faults_in_templates(sources: Mapping[str, str], around: Surroundings) -> list[Problem]:
    """Find what is wrong with templates of the club's own, all at once.

    Args:
        sources: their text, by name as templates name each other.
        around: what they may count on.

    Returns:
        Problems with file and line, in any order; one of a template that cannot be read, as Jinja stops there.
    """
    problems: list[Problem] = []
    trees: dict[str, nodes.Template] = {}
    patient = around.environment.overlay()  # of its own, since it is told of filters that do not exist
    patient.filters, patient.tests = dict(patient.filters), dict(patient.tests)
    for name, text in sources.items():
        try:
            trees[name] = patient.parse(text, name)
        except TemplateSyntaxError as error:
            problems.append(syntax_problem(error, f"{around.folder}/{name}"))
        except RecursionError:
            found, expected = "far too many nested brackets or tags", "a template that Jinja can read"
            problems.append(Problem(file=f"{around.folder}/{name}", line=1, found=found, expected=expected))
    family = _Family(around.environment, trees, unread=frozenset(sources) - frozenset(trees))
    for name in trees:
        problems += _One(name, trees, family, around).faults()
    return problems


class _Family:
    """The templates that others are built on, the club's own before the theme's."""

    def __init__(
        self, environment: Environment, own: Mapping[str, nodes.Template], unread: Collection[str] = ()
    ) -> None:
        self._environment = environment
        self._trees: dict[str, nodes.Template | None] = {**own, **dict.fromkeys(unread)}
        self._unread = unread

    def has(self, name: str) -> bool:
        """Whether there is such a template, be it one that cannot be read."""
        return name in self._unread or self.tree(name) is not None

    def tree(self, name: str) -> nodes.Template | None:
        """A template as parsed; None where it is not there or cannot be read."""
        if name not in self._trees:
            loader = self._environment.loader
            try:
                text = loader.get_source(self._environment, name)[0] if loader else ""
                self._trees[name] = self._environment.parse(text, name) if loader else None
            except (TemplateNotFound, TemplateSyntaxError):
                self._trees[name] = None
        return self._trees[name]

    def above(self, tree: nodes.Template) -> list[nodes.Template] | None:
        """What a template extends, the nearest first; None where that cannot be told before it is filled."""
        found: list[nodes.Template] = []
        while (extends := tree.find(nodes.Extends)) is not None:
            name = _constant(extends.template)
            parent = self.tree(name) if name is not None else None
            if parent is None or parent in found:
                return None
            found.append(parent)
            tree = parent
        return found

    def known(self) -> list[str]:
        """Names of all templates, for the nearest."""
        return self._environment.list_templates()


@dataclass(frozen=True)
class _One:
    """One template among the others."""

    name: str
    trees: Mapping[str, nodes.Template]
    family: _Family
    around: Surroundings

    @property
    def tree(self) -> nodes.Template:
        return self.trees[self.name]

    def faults(self) -> Iterator[Problem]:
        yield from self._templates()
        yield from self._imported()
        yield from self._blocks()
        yield from self._filters_and_tests()
        yield from self._phrases()
        yield from self._names()
        yield from self._attributes()

    def _problem(self, node: nodes.Node, found: str, expected: str, hint: str = "") -> Problem:
        file = f"{self.around.folder}/{self.name}"
        return Problem(file=file, line=node.lineno, found=found, expected=expected, hint=hint)

    def _templates(self) -> Iterator[Problem]:
        for node in self.tree.find_all((nodes.Extends, nodes.Include, nodes.Import, nodes.FromImport)):
            names = _constants(node.template)  # type: ignore[attr-defined] # each of these has one
            if isinstance(node, nodes.Extends) and self.name in names:
                found, hint = f"{self.name!r}, which extends itself", f"Did you mean '!theme/{self.name}'?"
                yield self._problem(node, found, "the theme's template, which begins with '!theme/'", hint)
            if not names or getattr(node, "ignore_missing", False) or any(self.family.has(one) for one in names):
                continue
            found = f"a template that is not there, {' or '.join(map(repr, names))}"
            expected = "one of the theme's, or a part of your own"
            yield self._problem(node, found, expected, nearest(names[0], self.family.known()))

    def _imported(self) -> Iterator[Problem]:
        for node in self.tree.find_all(nodes.FromImport):
            name = _constant(node.template)
            tree = self.family.tree(name) if name is not None else None
            if tree is None:
                continue
            there = _stored(tree)
            for one in node.names:
                asked = one if isinstance(one, str) else one[0]
                if asked not in there:
                    found, expected = f"the name {asked!r}", f"one that {name!r} has"
                    yield self._problem(node, found, expected, nearest(asked, there))

    def _blocks(self) -> Iterator[Problem]:
        above = self.family.above(self.tree)
        if not above:
            return
        known = {block.name for tree in above for block in tree.find_all(nodes.Block)}
        for block in _outermost_blocks(self.tree):
            if block.name not in known:
                found = f"the block {block.name!r}, which nothing shows"
                yield self._problem(block, found, f"one of: {', '.join(sorted(known))}", nearest(block.name, known))
        for node in self.tree.body:
            if isinstance(node, nodes.Output) and not _is_blank(node):
                yield self._problem(node, "words outside of the blocks, which nothing shows", "words inside a block")

    def _filters_and_tests(self) -> Iterator[Problem]:
        filters, tests = self.around.environment.filters, self.around.environment.tests
        for one in self.tree.find_all(nodes.Filter):
            if one.name not in filters:
                yield self._problem(one, f"the filter {one.name!r}", "one that Jinja has", nearest(one.name, filters))
        for test in self.tree.find_all(nodes.Test):
            if test.name not in tests:
                yield self._problem(test, f"the test {test.name!r}", "one that Jinja has", nearest(test.name, tests))

    def _phrases(self) -> Iterator[Problem]:
        for call in self.tree.find_all(nodes.Call):
            says = isinstance(call.node, nodes.Name) and call.node.name in _SAYS and call.args
            phrase = _constant(call.args[0]) if says else None
            if phrase is not None and phrase not in self.around.phrases:
                found, expected = f"the phrase {phrase!r}", "one of the catalogue's"
                yield self._problem(call, found, expected, nearest(phrase, self.around.phrases))

    def _names(self) -> Iterator[Problem]:
        environment = self.tree.environment or self.around.environment
        for unknown in self.tree.find_all(nodes.Filter):  # or Jinja would stop at the first one
            environment.filters.setdefault(unknown.name, _unknown)
        for test in self.tree.find_all(nodes.Test):
            environment.tests.setdefault(test.name, _unknown)
        try:
            missing = find_undeclared_variables(self.tree)
        except TemplateSyntaxError as error:  # such as a block that stands there twice
            yield syntax_problem(error, f"{self.around.folder}/{self.name}")
            return
        here = self._given()
        elsewhere = frozenset[str]().union(*self.around.names_of.values())
        asked_first, asked_about = _asked_first(self.tree)
        for name in sorted(missing - here - asked_first):
            if name in elsewhere and name in asked_about:
                continue  # "if article" is how a template that serves several sorts of pages asks
            node = next(_uses(self.tree, name), self.tree)
            if name in elsewhere:
                expected, hint = "a name that they have", f"Ask first whether it is there: {{% if {name} %}}."
                yield self._problem(node, f"the name {name!r}, which not all pages of it have", expected, hint)
            else:
                found, expected = f"the name {name!r}, which no page has", "a name that pages have"
                yield self._problem(node, found, expected, nearest(name, here))

    def _attributes(self) -> Iterator[Problem]:
        for place, name, hint in misspelt_attributes(self.tree, self.around.attributes):
            yield self._problem(place, f"'{name}.{place.attr}', which is not there", f"what {name!r} has", hint)

    def _given(self) -> frozenset[str]:
        """Names that are there when this template is filled: the page's, and those set by templates around it."""
        of_page = self.around.names_of.get(self.name)
        if of_page is None:  # a part, or a page of which nobody said what it has: whatever any page has
            of_page = frozenset[str]().union(*self.around.names_of.values())
        around = self.family.above(self.tree) or []
        # A part sees what the template that includes it has set; which one that is depends on the page.
        others = () if self.name in self.around.names_of else self.trees.values()
        set_around = (_stored(tree) for tree in (*around, *others))
        return frozenset().union(self.around.names, of_page, _OWN_NAMES, _set_for_blocks(self.tree), *set_around)


def _unknown(*_: object, **__: object) -> str:
    """Stands for a filter or a test that does not exist, which was told already."""
    return ""


def _constant(node: nodes.Expr) -> str | None:
    return node.value if isinstance(node, nodes.Const) and isinstance(node.value, str) else None


def _constants(node: nodes.Expr) -> list[str]:
    """The names in an expression of one name or several; none where one of them is known only later."""
    if isinstance(node, nodes.Const) and isinstance(node.value, (list, tuple)):
        return [str(one) for one in node.value]
    parts = node.items if isinstance(node, (nodes.List, nodes.Tuple)) else [node]
    names = [name for part in parts if (name := _constant(part)) is not None]
    return names if len(names) == len(parts) else []


def _stored(tree: nodes.Template) -> frozenset[str]:
    """Names that a template sets, imports or makes macros of."""
    found = {one.name for one in tree.find_all(nodes.Name) if one.ctx != "load"}
    found |= {one.name for one in tree.find_all(nodes.Macro)}
    found |= {one.target for one in tree.find_all(nodes.Import)}
    for node in tree.find_all(nodes.FromImport):
        found |= {one if isinstance(one, str) else one[1] for one in node.names}
    return frozenset(found)


def _uses(node: nodes.Node, name: str) -> Iterator[nodes.Node]:
    """Where a name is used that no loop, macro or "with" around it sets."""
    if isinstance(node, nodes.Name) and node.ctx == "load" and node.name == name:
        yield node
    sets = _targets(node)
    if not any(one.name == name for target in sets for one in _names_in(target)):
        for child in node.iter_child_nodes():
            yield from _uses(child, name)


def _targets(node: nodes.Node) -> list[nodes.Expr]:
    match node:
        case nodes.For():
            return [node.target] if isinstance(node.target, nodes.Expr) else []
        case nodes.With():
            return list(node.targets)
        case nodes.Macro() | nodes.CallBlock():
            return list(node.args)
        case _:
            return []


def _set_for_blocks(tree: nodes.Template) -> frozenset[str]:
    """Names that a template sets outside of its blocks, loops and macros, so that its blocks have them."""
    inner = (nodes.Block, nodes.For, nodes.Macro, nodes.CallBlock, nodes.With)
    outside = nodes.Template([one for one in tree.body if not isinstance(one, inner)], lineno=1)
    macros = (one.name for one in tree.body if isinstance(one, nodes.Macro))
    return _stored(outside) | frozenset(macros)


def _outermost_blocks(node: nodes.Node) -> Iterator[nodes.Block]:
    for child in node.iter_child_nodes():
        if isinstance(child, nodes.Block):
            yield child
        else:
            yield from _outermost_blocks(child)


def _is_blank(output: nodes.Output) -> bool:
    return all(isinstance(part, nodes.TemplateData) and not part.data.strip() for part in output.nodes)


def _asked_first(tree: nodes.Template) -> tuple[frozenset[str], frozenset[str]]:
    """Names that a template may well lack, since it says so; and those that it asks about before it uses them."""
    tests: list[nodes.Filter | nodes.Test] = [*tree.find_all(nodes.Filter), *tree.find_all(nodes.Test)]
    defaults = [one.node for one in tests if one.name in ("default", "d", "defined", "undefined")]
    questions: list[nodes.Node] = [one.test for one in tree.find_all(nodes.If)]
    questions += [one.test for one in tree.find_all(nodes.CondExpr)]
    questions += [one.left for one in (*tree.find_all(nodes.And), *tree.find_all(nodes.Or))]
    asked = {one.name for question in questions for one in _names_in(question)}
    return frozenset(one.name for one in defaults if isinstance(one, nodes.Name)), frozenset(asked)


def _names_in(node: nodes.Node) -> Iterator[nodes.Name]:
    if isinstance(node, nodes.Name):
        yield node
    yield from node.find_all(nodes.Name)
