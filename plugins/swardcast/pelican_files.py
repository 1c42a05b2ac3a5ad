"""The files that the plugin writes itself: artifacts of our outlets, the map of the pages, what a phone keeps."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Any, Final

from pelican.generators import Generator

from swardcast.artifact import Artifact
from swardcast.errors import SwardcastError, first_of
from swardcast.outlets.offline import is_kept, offline_artifact
from swardcast.outlets.sitemap import NOTICES_LIST, sitemap_artifacts

__all__ = ["MADE", "MISSING_PAGE", "BulletinGenerator", "check_output", "keep_for_offline"]

MADE: Final = "made_by_swardcast"
"""Where Pelican's settings hold the paths of our files from the making to the end: nothing else is handed on."""

MISSING_PAGE: Final = "404.html"
"""The page that hosts show for an address that is not there, by the name that most of them look for."""


class BulletinGenerator(Generator):  # type: ignore[misc] # Pelican has no types
    """Writes the artifacts of our outlets."""

    def generate_output(self, writer: Any) -> None:
        """Write every artifact below the output folder; Pelican's own writer is for templates."""
        del writer
        for artifact in (*self.context["swardcast_artifacts"], *_sitemap(self.context)):
            _write(Path(self.output_path), artifact)


def _sitemap(context: Any) -> Iterable[Artifact]:
    lists = [one for one, _ in (*context["categories"], *context["tags"])]
    found = (*context["articles"], *context["pages"], *lists)
    pages = {one.save_as for one in found if one.save_as and getattr(one, "robots", "") != "noindex"}
    return sitemap_artifacts(context["bulletin"], {*pages, NOTICES_LIST})


def _write(output: Path, artifact: Artifact) -> None:
    path = output / artifact.path
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(artifact.data)


def check_output(pelican: Any) -> None:
    """Refuse a site that lacks anything that was made: whoever swaps sites relies on it."""
    output = Path(pelican.output_path)
    wanted = ("index.html", "notices/index.html", *pelican.settings[MADE])
    missing = [name for name in wanted if not (output / name).is_file()]
    if missing:
        message = f"the build left no {first_of(missing, 1)}, of {len(wanted)} files"
        raise SwardcastError(message)


def keep_for_offline(pelican: Any) -> None:
    """Write the service worker last of all: its version is made of the files that it keeps, the theme's among them."""
    output, theme = Path(pelican.output_path), str(pelican.settings["THEME_STATIC_DIR"])
    found = {path.relative_to(output).as_posix(): path for path in sorted(output.rglob("*")) if path.is_file()}
    _write(output, offline_artifact({name: path.read_bytes() for name, path in found.items() if is_kept(name, theme)}))
