"""The service worker that keeps the last course status for reading without a connection.

W3C, Service Workers. It lies in the site's root, since it may only speak for what lies below it, and names every file
relative to itself, so that a site in a folder of its host keeps to that folder.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from importlib.resources import files
from typing import Final

from swardcast.artifact import Artifact

__all__ = ["WORKER_PATH", "is_kept", "offline_artifact"]

WORKER_PATH: Final = "offline.js"
_KEPT: Final = ("index.html", "club.css", "badge.svg", "badge.png", "status.json")
_KEPT_BELOW: Final = ("css/swardcast.css", "js/page.js", "signs/mark.svg")
_VERSION_DIGITS: Final = 12


def is_kept(path: str, theme: str) -> bool:
    """Tell whether a file of the site is kept on the reader's phone.

    Args:
        path: its place inside the site, with forward slashes.
        theme: the folder of the theme's files inside the site.

    Returns:
        Whether it belongs to the first view of the course status, or is the status file.
    """
    return path in _KEPT or path in {f"{theme}/{name}" for name in _KEPT_BELOW}


def offline_artifact(kept: Mapping[str, bytes]) -> Artifact:
    """Write the worker for the files as they are; another content gives another version, which replaces the last one.

    Args:
        kept: the files by their place inside the site.

    Returns:
        The worker.
    """
    digest = hashlib.sha256()
    for path in sorted(kept):
        digest.update(f"{path} {len(kept[path])} ".encode())
        digest.update(kept[path])
    addresses = ["./" if path == "index.html" else path for path in sorted(kept)]
    version = digest.hexdigest()[:_VERSION_DIGITS]
    head = f"const VERSION = {json.dumps(version)};\nconst FILES = {json.dumps(addresses)};\n"
    script = (files("swardcast") / "outlets" / "static" / WORKER_PATH).read_text(encoding="utf-8")
    return Artifact(path=WORKER_PATH, media_type="text/javascript; charset=utf-8", data=(head + script).encode())
