"""Files of JSON for other sites and programs (RFC 8259), and the schemas that describe them."""

from __future__ import annotations

import json
from collections.abc import Mapping
from importlib.resources import files

from swardcast.artifact import Artifact

__all__ = ["json_artifact", "schema_artifact"]


def json_artifact(path: str, content: Mapping[str, object], media_type: str = "application/json") -> Artifact:
    """Write a file of JSON.

    Args:
        path: its place in the site.
        content: what it tells.
        media_type: IANA media type.

    Returns:
        The file, in UTF-8.
    """
    text = json.dumps(content, ensure_ascii=False, indent=2) + "\n"
    return Artifact(path=path, media_type=media_type, data=text.encode("utf-8"))


def schema_artifact(path: str, site: str) -> Artifact:
    """Write a schema, named by the address at which it is published.

    Args:
        path: its place in the site; ours lies under the same name in `static`.
        site: the address of the site, without a slash at its end.

    Returns:
        The file.
    """
    schema = json.loads((files("swardcast") / "outlets" / "static" / path).read_text(encoding="utf-8"))
    return json_artifact(path, {**schema, "$id": f"{site}/{path}"}, "application/schema+json")
