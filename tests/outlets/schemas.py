"""JSON Schemas of ours, field by field."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from typing import Any

Json = dict[str, Any]


def parts_of(schema: Any, path: str = "#") -> Iterator[tuple[str, Json]]:
    """Each field of the schema, each kind of item and each definition, with its path."""
    if isinstance(schema, dict):
        for name, part in schema.get("properties", {}).items():
            yield f"{path}/{name}", part
        for name, part in schema.get("$defs", {}).items():
            yield f"{path}/$defs/{name}", part
        for key, part in schema.items():
            yield from parts_of(part, f"{path}/{key}")
    elif isinstance(schema, list):
        for part in schema:
            yield from parts_of(part, path)


def closed(schema: Json) -> Json:
    """The schema where nothing may stand that it does not describe."""
    strict = copy.deepcopy(schema)
    for _, part in [("#", strict), *parts_of(strict)]:
        for one in (part, *part.get("anyOf", [])):
            if "properties" in one:
                one["additionalProperties"] = False
    return strict
