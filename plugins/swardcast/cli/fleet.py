"""`swardcast fleet`: build the sites of all clubs below a folder, many at once, on this machine or on a cluster."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from time import monotonic
from typing import TYPE_CHECKING
from urllib.parse import quote
from zoneinfo import ZoneInfo

from swardcast.cli.build import add_site_options
from swardcast.cli.common import add_as_of_option, new_parser, print_json, wrong_usage
from swardcast.cli.fleet_clubs import ClubPlace, clubs_below
from swardcast.cli.fleet_cluster import (
    built_on,
    cluster_elsewhere,
    local_cluster,
    processors,
    refuse_missing_packages,
    refuse_unlike,
)
from swardcast.cli.fleet_task import Asked
from swardcast.cli.fleet_telling import as_json, told_as_it_goes, told_in_the_end, told_of_each
from swardcast.cli.one_build import lock_of, only_build
from swardcast.cli.private_file import refuse_place, write_private
from swardcast.errors import SwardcastError
from swardcast.language.voice import Voice
from swardcast.moments import as_of_from
from swardcast.outlets.fleet_page import BuiltClub, State, fleet_page

if TYPE_CHECKING:
    from distributed import Client

__all__ = ["parser", "run"]

_STOPPED = 130


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, "swardcast fleet clubs --output sites --page sites-today.html")
    options.add_argument("folder", metavar="FOLDER", type=Path, help="the folder with the club folders, at any depth")
    options.add_argument(
        "--output",
        metavar="DIR",
        type=Path,
        default=Path("output"),
        help="where the sites go, that of FOLDER/a/b to DIR/a/b (default: output)",
    )
    options.add_argument(
        "--workers", metavar="N", type=_workers, help="clubs built at a time (default: as many as processors)"
    )
    options.add_argument(
        "--scheduler",
        metavar="ADDRESS",
        help="build on a Dask cluster that runs elsewhere, such as tcp://10.0.0.5:8786; its workers need the same"
        " Swardcast, the same files under the same names, and one thread each",
    )
    add_as_of_option(options)
    add_site_options(options)
    options.add_argument("--page", metavar="FILE", type=Path, help="also write a private page on what became of each")
    options.add_argument("--json", action="store_true", help="print what became of each for a machine")
    return options


def _workers(text: str) -> int:
    if not text.isascii() or not text.isdigit() or int(text) < 1:
        message = f"{text!r} is no number of workers; expected 1 or more"
        raise argparse.ArgumentTypeError(message)
    return int(text)


def run(options: argparse.Namespace) -> int:
    """Build all clubs; one that fails stops no other."""
    if options.scheduler and options.workers:
        return wrong_usage("fleet", "--workers is for this machine; the cluster of --scheduler has its own")
    refuse_missing_packages()
    if options.as_of is not None:
        as_of_from(options.as_of, ZoneInfo("UTC"), now=datetime.now(UTC))  # here, and not once for each club
    output: Path = options.output.resolve()
    places = clubs_below(options.folder.resolve(), output)
    if options.page is not None:
        _refuse_page(options.page, places, output)
    begun = monotonic()
    done: dict[str, BuiltClub] = {}
    try:
        with _cluster(options, places, output) as client, told_as_it_goes(len(places)) as tell:
            for one in built_on(client, places, _asked(options)):
                done[one.club] = one
                tell(one)
    except KeyboardInterrupt:
        _put_right(place for place in places if place.club not in done)
        print(f"Stopped. {len(done)} of {len(places)} clubs were done; every live site is whole.", file=sys.stderr)
        return _STOPPED
    built = [done[place.club] for place in places]
    _tell(options, built, places, monotonic() - begun)
    return int(any(one.state is State.FAILED for one in built))


def _asked(options: argparse.Namespace) -> Asked:
    theme = options.theme
    return Asked(
        as_of=options.as_of,
        theme=theme.resolve() if theme is not None and theme.exists() else theme,
        eml=options.eml,
    )


@contextmanager
def _cluster(options: argparse.Namespace, places: Sequence[ClubPlace], output: Path) -> Iterator[Client]:
    output.mkdir(parents=True, exist_ok=True)
    if options.scheduler:
        with cluster_elsewhere(options.scheduler) as client:
            refuse_unlike(client, places[0], output)
            print(f"{len(places)} clubs, on the cluster at {options.scheduler}.", file=sys.stderr)
            yield client
    else:
        workers = min(options.workers or processors(), len(places))
        with local_cluster(workers) as client:
            print(f"{len(places)} clubs, {workers} at a time.", file=sys.stderr)
            yield client


def _put_right(places: Iterable[ClubPlace]) -> None:
    """Take away what builds left that were ended half-way, as the next one of the same site would."""
    for place in places:
        if lock_of(place.site).exists():
            with only_build(place.site):
                pass


def _refuse_page(page: Path, places: Sequence[ClubPlace], output: Path) -> None:
    if output in page.resolve().parents:
        message = f"{page} would lie among the sites in {output}; name a place outside"
        raise SwardcastError(message)
    refuse_place(page, club=_club_around(page, places))


def _club_around(page: Path, places: Sequence[ClubPlace]) -> Path:
    """The club folder in which a page would lie, or any where it lies in none."""
    above = page.resolve().parents
    return next((place.folder for place in places if place.folder.resolve() in above), places[0].folder)


def _tell(options: argparse.Namespace, built: Sequence[BuiltClub], places: Sequence[ClubPlace], seconds: float) -> None:
    if options.page is not None:
        made = datetime.now().astimezone()
        there = options.page.resolve().parent
        text = fleet_page(
            built,
            Voice.english(made.date()),
            folder=options.folder.resolve().name,
            made=made,
            seconds=seconds,
            homes={place.club: _address(place.site, there) for place in places if place.site.is_dir()},
        )
        write_private(options.page, text, club=_club_around(options.page, places))
    if options.json:
        print_json(as_json(built, places, seconds))
    else:
        print("\n".join(told_of_each(built, places)))
    print("\n".join(told_in_the_end(built, seconds)), file=sys.stderr)


def _address(site: Path, there: Path) -> str:
    """The address of a site's home page as seen from a folder."""
    return quote(Path(os.path.relpath(site / "index.html", there)).as_posix())
