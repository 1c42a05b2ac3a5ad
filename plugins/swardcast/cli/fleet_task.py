"""What a worker of a fleet does: the very build of `swardcast build`, its talk caught and its time taken.

It may be done twice, even at once: a build waits for another one of the same site, and swaps in one step.
"""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import redirect_stderr, redirect_stdout, suppress
from dataclasses import dataclass
from io import StringIO
from pathlib import Path
from threading import Lock
from time import monotonic
from typing import Final

from swardcast.cli import build
from swardcast.cli.fleet_clubs import ClubPlace
from swardcast.cli.live_site import status_of
from swardcast.cli.main import in_words
from swardcast.cli.swapping import site_before
from swardcast.outlets.fleet_page import BuiltClub, State
from swardcast.version import __version__

__all__ = ["Asked", "Seen", "build_club", "printable", "seen_from_here"]

_ONE_AT_A_TIME: Final = Lock()
"""Standard output and Pelican are one for all threads of a process."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is asked for all clubs alike.

    Args:
        as_of: the moment as typed, or None for now.
        theme: a theme's folder, absolute, or None for ours.
        eml: whether drafts of e-mails are wanted.
    """

    as_of: str | None
    theme: Path | None
    eml: bool

    def words(self, place: ClubPlace) -> list[str]:
        """Words for `swardcast build`."""
        said = [f"--club={place.folder}", f"--output={place.site}"]
        if self.as_of is not None:
            said.append(f"--as-of={self.as_of}")
        if self.theme is not None:
            said.append(f"--theme={self.theme}")
        return [*said, "--eml"] if self.eml else said


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What a worker sees from where it runs.

    Args:
        version: of its Swardcast.
        missing: which of the places that it was asked for are not there.
    """

    version: str
    missing: tuple[str, ...]


def seen_from_here(places: tuple[str, ...]) -> Seen:
    """Tell whether this process could build: it needs the same program and the same files.

    Args:
        places: absolute paths of files and folders.

    Returns:
        What is seen.
    """
    return Seen(version=__version__, missing=tuple(place for place in places if not Path(place).exists()))


def build_club(place: ClubPlace, asked: Asked) -> BuiltClub:
    """Build one club's site; whatever is wrong with its files is told, never raised.

    Args:
        place: the club.
        asked: what is asked for all clubs.

    Returns:
        What became of it.
    """
    said = StringIO()
    with _ONE_AT_A_TIME, redirect_stdout(said), redirect_stderr(said):
        begun = monotonic()
        was_live = place.site.is_dir()
        options = build.parser("swardcast build", "").parse_args(asked.words(place))
        failed = in_words(lambda: build.make_live(options))
        seconds = monotonic() - begun
    if failed:
        state = State.FAILED
    elif was_live and _same(build.FilesOf(place.site), build.FilesOf(site_before(place.site))):
        state = State.UNCHANGED
    else:
        state = State.PUBLISHED
    return BuiltClub(
        club=place.club,
        name=printable(_name_in(place.site)),
        state=state,
        seconds=seconds,
        said=printable(said.getvalue().strip()),
    )


def _same(site: Mapping[str, bytes], before: Mapping[str, bytes]) -> bool:
    """Whether two sites are the same, file by file: both at once would take more memory than the build did."""
    return site.keys() == before.keys() and all(before[name] == data for name, data in site.items())


def _name_in(site: Path) -> str:
    """The club's name as its live site has it."""
    with suppress(KeyError, TypeError):
        return str(status_of(site)["club"]["name"])
    return ""


def printable(text: str) -> str:
    """Text of other people's without signs that steer a terminal."""
    return "".join(sign if sign.isprintable() or sign == "\n" else "\N{REPLACEMENT CHARACTER}" for sign in text)
