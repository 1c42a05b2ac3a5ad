"""What a fleet tells while it goes on, in lines or with a bar on a terminal, and at its end in the order of folders."""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from itertools import count
from typing import Any, Final

from swardcast.cli.fleet_clubs import ClubPlace
from swardcast.outlets.fleet_page import BuiltClub, State

__all__ = ["as_json", "told_as_it_goes", "told_in_the_end", "told_of_each"]

_A_MINUTE_S: Final = 60.0


@contextmanager
def told_as_it_goes(clubs: int) -> Iterator[Callable[[BuiltClub], None]]:
    """Tell on standard error what becomes of clubs as they come: a bar on a terminal, else a line for each.

    Args:
        clubs: how many there are.

    Yields:
        What tells of one more that is done.
    """
    if not sys.stderr.isatty():
        done = count(1)

        def line(one: BuiltClub) -> None:
            print(f"{next(done)} of {clubs}: {_in_one_line(one)}", file=sys.stderr, flush=True)

        yield line
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn

    columns = (TextColumn("Building"), BarColumn(), MofNCompleteColumn(), TextColumn("left"), TimeRemainingColumn())
    with Progress(*columns, console=Console(stderr=True, highlight=False)) as progress:
        task = progress.add_task("", total=clubs)

        def bar(one: BuiltClub) -> None:
            if one.state is State.FAILED:
                progress.console.print(_in_one_line(one), markup=False)
            progress.advance(task)

        yield bar


def _in_one_line(one: BuiltClub) -> str:
    """With what stopped it below, set in."""
    line = f"{one.club} {one.state.value} in {one.seconds:.1f} s"
    if one.state is not State.FAILED:
        return line
    return "\n".join([line, *(f"    {said}" for said in one.said.splitlines())])


def told_of_each(built: Sequence[BuiltClub], places: Sequence[ClubPlace]) -> Iterator[str]:
    """Say what became of each club, one a line.

    Args:
        built: the clubs.
        places: the same ones.

    Yields:
        Lines: state, seconds, the club folder, and the home page of its site where there is one.
    """
    width = max(len(one.club) for one in built)
    for one, place in zip(built, places, strict=True):
        home = place.site / "index.html"
        told = str(home) if home.is_file() else "no site"
        yield f"{one.state.value:9}  {one.seconds:6.1f} s  {one.club:{width}}  {told}"


def told_in_the_end(built: Sequence[BuiltClub], seconds: float) -> Iterator[str]:
    """Sum a fleet up.

    Args:
        built: the clubs.
        seconds: how long all of them took together by the clock.

    Yields:
        Sentences.
    """
    counts = Counter(one.state for one in built)
    told = ", ".join(f"{counts[state]} {state.value}" for state in State if counts[state])
    pace = len(built) / seconds * _A_MINUTE_S
    yield f"{len(built)} {'club' if len(built) == 1 else 'clubs'}: {told}; {seconds:.0f} s, {pace:.0f} a minute."
    if counts[State.FAILED]:
        yield "Where a club failed nothing was published: a site that was live stays as it was."


def as_json(built: Iterable[BuiltClub], places: Iterable[ClubPlace], seconds: float) -> dict[str, Any]:
    """Give what became of all clubs for a machine.

    Args:
        built: the clubs.
        places: the same ones.
        seconds: how long all of them took together by the clock.

    Returns:
        Plain values.
    """
    return {
        "seconds": round(seconds, 3),
        "clubs": [
            {
                "club": one.club,
                "name": one.name,
                "state": one.state.value,
                "seconds": round(one.seconds, 3),
                "folder": str(place.folder),
                "site": str(place.site),
                "said": one.said.splitlines(),
            }
            for one, place in zip(built, places, strict=True)
        ],
    }
