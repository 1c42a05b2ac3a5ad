"""Templates of the club's own, in its folder `templates/`: each takes the place of the theme's of the same name."""

from __future__ import annotations

import traceback
from pathlib import Path
from typing import Any, Final

from jinja2 import TemplateNotFound, TemplateSyntaxError

from swardcast.errors import InputNeedsAttention, Problem, nearest

__all__ = ["FOLDER", "template_problem", "with_club_templates"]

FOLDER: Final = "templates"
_OWN: Final = "_"
"""With it begins the name of a part that the club's own templates include."""


def with_club_templates(settings: Any, ours: Path) -> None:
    """Put the club's templates before the theme's.

    Args:
        settings: Pelican's settings, which are changed.
        ours: the plugin's folder of templates for themes that lack one.

    Raises:
        InputNeedsAttention: when a template has no name of the theme's, so that it would never be used.
    """
    folder = Path(settings["SWARDCAST_CLUB"]) / FOLDER
    if not folder.is_dir():
        return
    places = (Path(settings["THEME"]) / "templates", ours)
    known = {path.name for place in places for path in place.glob("*.html")}
    problems = [
        Problem(
            file=f"{FOLDER}/{path.relative_to(folder).as_posix()}",
            found="a template that the theme does not have",
            expected=f"one of: {', '.join(sorted(known))}; or a name that begins with '{_OWN}', for a part of your own",
            hint=nearest(path.name, known),
        )
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.name not in known and not path.name.startswith((_OWN, "."))
    ]
    if problems:
        raise InputNeedsAttention(problems)
    settings["THEME_TEMPLATES_OVERRIDES"] = [str(folder.resolve()), *settings["THEME_TEMPLATES_OVERRIDES"]]


def template_problem(error: Exception, club: Path) -> Problem | None:
    """Find the template in which a build failed.

    Args:
        error: what was raised.
        club: the club folder.

    Returns:
        The template, its line and what went wrong; None when it was no template.
    """
    if isinstance(error, TemplateSyntaxError):
        file, line = error.filename or error.name or "", error.lineno
    else:
        # Jinja gives each frame of a template its file and its line.
        frames = [frame for frame in traceback.extract_tb(error.__traceback__) if frame.filename.endswith(".html")]
        if not frames:
            return None
        file, line = frames[-1].filename, frames[-1].lineno or 0
    path, folder = Path(file), club.resolve()
    shown = path.relative_to(folder).as_posix() if path.is_relative_to(folder) else file
    said = f"no template {error.name!r}" if isinstance(error, TemplateNotFound) else " ".join(str(error).split())
    return Problem(file=shown, line=line, found=f"a template that fails ({said})", expected="one that Jinja can fill")
