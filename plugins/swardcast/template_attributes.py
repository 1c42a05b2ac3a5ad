"""What a template asks of a thing that pages have, and that it does not have: Jinja prints nothing for it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from jinja2 import nodes

from swardcast.errors import nearest

__all__ = ["misspelt_attributes"]


def misspelt_attributes(
    tree: nodes.Template, attributes: Mapping[str, frozenset[str]]
) -> Iterator[tuple[nodes.Getattr, str, str]]:
    """Find attributes that a thing lacks and that are spelt nearly like one that it has.

    Others are let pass, since plugins of a club's may add some, and so are those that the template asks about by
    `is defined` or `default`. A name is taken for the thing that pages have by that name, also in a loop.

    Args:
        tree: the template as parsed.
        attributes: what things have, by the names under which pages have them.

    Yields:
        The place, the name of the thing, and a hint at the nearest attribute.
    """
    tests: list[nodes.Filter | nodes.Test] = [*tree.find_all(nodes.Filter), *tree.find_all(nodes.Test)]
    asked = [one.node for one in tests if one.name in ("default", "d", "defined", "undefined")]
    for place in tree.find_all(nodes.Getattr):
        name = place.node.name if isinstance(place.node, nodes.Name) else ""
        known = attributes.get(name, frozenset())
        if not known or place.attr in known or place.attr.startswith("_") or place in asked:
            continue
        hint = nearest(place.attr, known)
        if hint:
            yield place, name, hint
