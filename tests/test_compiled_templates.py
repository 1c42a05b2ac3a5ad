"""Templates are compiled once in a process, and what they show depends on nothing else than their text."""

from __future__ import annotations

from typing import Any

from jinja2 import DictLoader, Environment

from swardcast.compiled_templates import Compiled


class _Counting(Environment):
    """One that tells which templates it had to compile."""

    def __init__(self, texts: dict[str, str], kept: Compiled) -> None:
        super().__init__(loader=DictLoader(texts), bytecode_cache=kept)
        self.compiled: list[Any] = []

    def compile(self, source: Any, name: Any = None, *rest: Any, **named: Any) -> Any:
        self.compiled.append(name)
        return super().compile(source, name, *rest, **named)


def test_what_was_compiled_for_one_club_serves_the_next() -> None:
    kept, texts = Compiled(), {"page": "{% include 'part' %}, {{ club }}", "part": "Course"}
    first, second = _Counting(texts, kept), _Counting(texts, kept)
    assert first.get_template("page").render(club="Heath") == "Course, Heath"
    assert second.get_template("page").render(club="Park") == "Course, Park"
    assert (first.compiled, second.compiled) == (["page", "part"], [])


def test_a_template_that_was_changed_is_compiled_anew() -> None:
    kept = Compiled()
    assert _Counting({"page": "before"}, kept).get_template("page").render() == "before"
    assert _Counting({"page": "after"}, kept).get_template("page").render() == "after"


def test_templates_of_ever_more_clubs_do_not_pile_up() -> None:
    """With three kept, the fourth lets go of the first three, so that the second is compiled again."""
    kept = Compiled(most=3)
    texts = {name: name for name in "abcd"}
    for name in "abcd":
        _Counting(texts, kept).get_template(name)
    later = _Counting(texts, kept)
    for name in "db":
        assert later.get_template(name).render() == name
    assert later.compiled == ["b"]
