"""`swardcast build`: build the site beside the live folder, read it back, then swap."""

from __future__ import annotations

import argparse
import errno
import logging
import os
import sys
from collections.abc import Iterator, Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Final

from swardcast.cli.common import add_club_options, new_parser, print_json
from swardcast.cli.files_of_others import bring, list_files, refuse_broken, refuse_others
from swardcast.cli.live_site import of_another_club, refuse_older, status_of
from swardcast.cli.one_build import only_build
from swardcast.cli.pelican_anew import pelican_anew
from swardcast.cli.private_file import refuse_published
from swardcast.cli.swapping import go_back, site_before, swap
from swardcast.cli.theme import add_theme_option, settings_of
from swardcast.errors import InputNeedsAttention, SwardcastError
from swardcast.outlets.committee_page import MARK
from swardcast.reading.web_folder import WEB, web_files
from swardcast.verifying.verify import refuse_faults

__all__ = ["FilesOf", "add_site_options", "make_live", "parser", "run"]

_A_DISK: Final = (
    "{output} is a disk of its own, or mounted like one, and cannot change places with a new site; name a folder on it."
    " Nothing was published."
)
_OF_A_DISK: Final = {errno.EBUSY, errno.EXDEV}
"""What systems say when such a folder is to be renamed."""


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, "swardcast build --club my-club --output site")
    add_club_options(options)
    options.add_argument(
        "--output", metavar="DIR", type=Path, default=Path("output"), help="where the site goes (default: output)"
    )
    add_site_options(options)
    options.add_argument("--pdf", action="store_true", help="print each poster as a PDF with an installed browser")
    options.add_argument("--afresh", action="store_true", help="use nothing that earlier builds have kept")
    options.add_argument("--back", action="store_true", help="put the site before this one back; again returns")
    options.add_argument("--json", action="store_true", help="print where the site is for a machine")
    return options


def add_site_options(options: argparse.ArgumentParser) -> None:
    """Add --theme and --eml, which say what a site is made of."""
    add_theme_option(options)
    options.add_argument("--eml", action="store_true", help="write drafts of e-mails for a mail program (.eml)")


def run(options: argparse.Namespace) -> int:
    """Build the site, or put the one before back, and say where it is."""
    failed = make_live(options)
    _tell(options)
    return failed


def make_live(options: argparse.Namespace) -> int:
    """Build the site; when anything fails the last good site stays as it was.

    Args:
        options: those of the command.

    Returns:
        0 fine, 1 when the site is live but a poster could not be printed.

    Raises:
        SwardcastError: when nothing was published.
    """
    output = options.output.resolve()
    _refuse_dangerous(output, options.club.resolve())
    try:
        with only_build(output) as place:
            if options.back:
                return _go_back(output)
            if options.as_of is None:
                refuse_older(output, datetime.now(UTC))
            return _publish(options, place / "site", output)
    except InputNeedsAttention as error:
        message = f"{str(error).removesuffix('.')}; nothing was published."
        raise SwardcastError(message) from error
    except OSError as error:
        if error.errno in _OF_A_DISK:
            raise SwardcastError(_A_DISK.format(output=output)) from error
        message = f"{error.filename or output}: {error.strerror}; nothing was published, the last good site stays"
        raise SwardcastError(message) from error


def _publish(options: argparse.Namespace, fresh: Path, output: Path) -> int:
    """Build beside the live site, add what the club brings, read back what was built, swap."""
    with pelican_anew():
        _build(options, fresh, output)
    failed = 0
    if options.pdf:
        from swardcast.cli.build_pdf import print_posters

        failed = print_posters(fresh)
    brought = web_files(options.club)
    bring(brought, fresh)
    refuse_published([fresh], mark=MARK, hidden=True)
    list_files(fresh)
    for fault in refuse_faults(FilesOf(fresh), brought):
        print(f"Worth another look: {fault}.", file=sys.stderr)
    refuse_others(output, fresh)
    for remark in of_another_club(output, fresh):
        print(f"Worth another look: {remark}", file=sys.stderr)
    swap(fresh, output)
    return failed


def _go_back(output: Path) -> int:
    before = site_before(output)
    if before.is_dir():
        refuse_broken(before)
    refuse_others(output, before)
    go_back(output)
    as_of = status_of(output).get("as_of", "a moment that it does not tell")
    print(
        f"The site before is live again; it is of {as_of}. The same command brings the other one back.", file=sys.stderr
    )
    return 0


class FilesOf(Mapping[str, bytes]):
    """The files of a site, each read when it is asked for: all of them at once would take more than the build did."""

    def __init__(self, site: Path) -> None:
        found = sorted(path for path in site.rglob("*") if path.is_file())
        self._paths = {path.relative_to(site).as_posix(): path for path in found}

    def __getitem__(self, name: str) -> bytes:
        return self._paths[name].read_bytes()

    def __contains__(self, name: object) -> bool:
        return name in self._paths

    def __iter__(self) -> Iterator[str]:
        return iter(self._paths)

    def __len__(self) -> int:
        return len(self._paths)


def _tell(options: argparse.Namespace) -> None:
    if options.json:
        print_json({"output": str(options.output), "home": str(options.output / "index.html")})
    else:
        print(options.output / "index.html")
        print(f"The site is in {options.output}. Open {options.output / 'index.html'} in a browser.", file=sys.stderr)


def _refuse_dangerous(output: Path, club: Path) -> None:
    if output == club or club in output.parents:
        message = (
            f"the site cannot go into the club folder {club}; name a folder outside, such as {club.parent / 'site'}"
        )
        raise SwardcastError(message)
    if output in club.parents:
        message = (
            f"the site cannot go to {output}: the club folder {club} lies in it, and would be replaced; name another"
        )
        raise SwardcastError(message)
    if output.exists() and not output.is_dir():
        message = f"{output} is a file; the site needs a folder"
        raise SwardcastError(message)
    if os.path.ismount(output):
        raise SwardcastError(_A_DISK.format(output=output))
    if output.is_dir() and any(output.iterdir()) and not (output / "feeds" / "status.rss").is_file():
        message = f"{output} holds files that are no Swardcast site; name another folder or empty it yourself"
        raise SwardcastError(message)


def _build(options: argparse.Namespace, fresh: Path, output: Path) -> None:
    from pelican import Pelican, log
    from pelican.generators import PelicanTemplateNotFound

    from swardcast.club_templates import template_problem

    log.init(level=logging.WARNING, fatal="errors")
    settings = settings_of(
        options.club,
        options.theme,
        SWARDCAST_AS_OF=options.as_of,
        SWARDCAST_EML=options.eml,
        SWARDCAST_AFRESH=options.afresh,
        SWARDCAST_REPLACES=str(output),
        OUTPUT_PATH=str(fresh),
        DELETE_OUTPUT_DIRECTORY=False,
        CACHE_PATH=str(fresh.with_name("cache")),
    )
    club = options.club.resolve()
    refuse_published([Path(settings["PATH"]), Path(settings["THEME"]), club], mark=MARK)
    refuse_published([club / WEB], mark=MARK, hidden=True)
    told = _LastError()
    logging.getLogger().addHandler(told)
    try:
        _silently(Pelican(settings))
    except SwardcastError:
        raise
    except Exception as error:
        problem = template_problem(error, options.club)
        if problem is not None:
            raise InputNeedsAttention([problem]) from error
        if isinstance(error, RuntimeError | PelicanTemplateNotFound):  # the first where an error was told as fatal
            why = f" ({error.__context__})" if told.words and error.__context__ is not None else ""
            message = f"the site could not be built: {told.words or error}{why}"
            raise SwardcastError(message) from error
        raise
    finally:
        logging.getLogger().removeHandler(told)


class _LastError(logging.Handler):
    """Keeps what Pelican told last of an error: what it raises then says nothing of it."""

    words = ""

    def emit(self, record: logging.LogRecord) -> None:
        """Keep an error."""
        if record.levelno >= logging.ERROR:
            self.words = " ".join(record.getMessage().split())


def _silently(pelican: Any) -> None:
    """Pelican tells its counts on standard output, which is for results."""
    import pelican as package

    package.console.quiet = True
    pelican.run()
