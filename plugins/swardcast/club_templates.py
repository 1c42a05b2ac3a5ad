"""Templates of the club's own, in its folder `templates/`: each takes the place of the theme's of the same name."""

from __future__ import annotations

import traceback
from pathlib import Path
from typing import Any, Final

from jinja2 import Environment, FileSystemLoader, TemplateNotFound, TemplateSyntaxError
from jinja2.filters import do_striptags
from markupsafe import Markup, escape

from swardcast.compiled_templates import COMPILED
from swardcast.compose import Bulletin
from swardcast.errors import Problem, nearest
from swardcast.language.catalogue import BUILT_IN, built_in
from swardcast.outlets.kept_together import kept_together
from swardcast.outlets.own_words import own_words_html
from swardcast.reading.files import Files
from swardcast.template_sense import Surroundings, faults_in_templates

__all__ = [
    "ATTRIBUTES_OF_ARTICLES",
    "FOLDER",
    "NAMES_OF_ALL_PAGES",
    "NAMES_OF_PAGES",
    "prepare",
    "problems_of_templates",
    "template_problem",
    "with_club_templates",
]

FOLDER: Final = "templates"
_OWN: Final = "_"
"""With it begins the name of a part that the club's own templates include."""
_OURS: Final = Path(__file__).resolve().parent / "templates"
"""Templates for themes that lack one."""
NAMES_OF_ALL_PAGES: Final = frozenset((
    "articles", "authors", "bulletin", "categories", "dates", "draft_pages", "drafts", "generated_content",
    "hidden_articles", "hidden_pages", "holes", "isolated", "localsiteurl", "output_file", "pages", "period_archives",
    "related_posts", "say", "say_joined", "static_content", "static_links", "staticfiles", "swardcast_archived",
    "swardcast_artifacts", "swardcast_badge_px", "swardcast_bodies", "swardcast_course_data", "swardcast_feeds",
    "swardcast_graph", "swardcast_left_by_kinds", "swardcast_pictures", "swardcast_policy", "swardcast_site_path",
    "tags", "voice",
))  # fmt: skip
"""What Pelican and the plugin give to every page, beside the settings; a test compares it with a build."""
_SOME_TO_A_PAGE: Final = frozenset(
    f"{listed}_{what}"
    for listed in ("articles", "dates")
    for what in ("page", "paginator", "previous_page", "next_page")
)
"""What Pelican adds to lists, which may be shared out among several pages."""
NAMES_OF_PAGES: Final = {
    "article.html": frozenset({"article", "blog", "category"}),
    "index.html": _SOME_TO_A_PAGE | {"blog", "page_name"},
    "tag.html": _SOME_TO_A_PAGE | {"all_articles", "blog", "page_name", "tag"},
    "category.html": _SOME_TO_A_PAGE | {"all_articles", "blog", "category", "page_name"},
    "status.html": frozenset({"page"}),
    "page.html": frozenset({"page"}),
    "missing.html": frozenset({"page"}),
}
"""What it gives to the pages of one template alone."""
ATTRIBUTES_OF_ARTICLES: Final = frozenset((
    "allowed_statuses", "author", "authors", "category", "content", "date", "date_format", "default_status",
    "default_template", "description", "filename", "get_content", "get_relative_source_path", "get_siteurl",
    "get_static_links", "get_summary", "get_url_setting", "in_default_lang", "is_valid", "lang", "locale_date",
    "locale_modified", "mandatory_properties", "metadata", "modified", "notice", "refresh_metadata_intersite_links",
    "relative_dir", "relative_source_path", "save_as", "settings", "slug", "source_path", "status", "summary",
    "swardcast_data", "swardcast_graph", "swardcast_place", "tags", "template", "timezone", "title", "translations",
    "url", "url_format",
))  # fmt: skip
"""What Pelican and the plugin give to an article, authors where somebody names one; a test compares it with a build."""


def with_club_templates(settings: Any) -> None:
    """Put the club's templates before the theme's.

    Args:
        settings: Pelican's settings, which are changed.
    """
    folder = Path(settings["SWARDCAST_CLUB"]) / FOLDER
    if folder.is_dir():
        settings["THEME_TEMPLATES_OVERRIDES"] = [str(folder.resolve()), *settings["THEME_TEMPLATES_OVERRIDES"]]


def prepare(environment: Any) -> None:
    """Give templates our filters, those compiled before, and a theme that lacks a template of ours the plain one.

    Args:
        environment: Jinja as Pelican has set it up, which is changed.
    """
    environment.bytecode_cache = COMPILED
    environment.filters["own_words"] = own_words_html
    environment.filters["kept_together"] = kept_together
    environment.filters["striptags"] = _words_alone
    loaders = getattr(environment.loader, "loaders", None)
    if loaders is not None:
        loaders.append(FileSystemLoader(str(_OURS)))


def _words_alone(value: Any) -> Markup:
    """Words without tags, as HTML: Jinja gives `<` and `"` back, and themes put them into titles and attributes."""
    return escape(do_striptags(value))


def problems_of_templates(club: Path, settings: Any, environment: Environment | None = None) -> list[Problem]:
    """Find all that is wrong with the club's own templates without filling one.

    Args:
        club: the club folder.
        settings: Pelican's settings, with the theme.
        environment: Jinja as the build has it; None to set it up in the same way.

    Returns:
        Problems with file and line; none where the club has no templates.
    """
    folder = club / FOLDER
    if not folder.is_dir():
        return []
    known = {path.name for place in (Path(settings["THEME"]) / "templates", _OURS) for path in place.glob("*.html")}
    problems: list[Problem] = []
    sources: dict[str, str] = {}
    files = Files(club, problems)
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder).as_posix()
        if (path.is_dir() and name not in known) or path.name.startswith("."):
            continue
        if name not in known and not path.name.startswith(_OWN):
            problems.append(_stranger(name, path.name, known))
            continue
        text = files.text(f"{FOLDER}/{name}")
        if text is not None:
            sources[name] = text
    around = Surroundings(
        environment=environment or _environment(settings),
        names=NAMES_OF_ALL_PAGES.union(name for name in settings if name.isupper()),
        names_of=NAMES_OF_PAGES,
        phrases=frozenset(built_in(BUILT_IN[0]).names()),
        attributes={"article": ATTRIBUTES_OF_ARTICLES, "bulletin": frozenset(dir(Bulletin))},
        folder=FOLDER,
    )
    return problems + faults_in_templates(sources, around)


def _stranger(name: str, last: str, known: set[str]) -> Problem:
    """A template that would never be used: misspelt, or in a folder of its own."""
    return Problem(
        file=f"{FOLDER}/{name}",
        found="a template that the theme does not have",
        expected=f"one of: {', '.join(sorted(known))}; or a name that begins with '{_OWN}', for a part of your own",
        hint=f"Put it into {FOLDER}/ itself." if last in known else nearest(last, known),
    )


def _environment(settings: Any) -> Environment:
    """Jinja as Pelican sets it up for each of its generators, which nothing but a generator can do."""
    from pelican.generators import Generator  # noqa: PLC0415 - takes a while to load, and few clubs have templates

    generator = Generator({}, settings, settings["PATH"], settings["THEME"], settings["OUTPUT_PATH"])
    prepare(generator.env)
    environment: Environment = generator.env
    return environment


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
