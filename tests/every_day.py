"""`python -m tests.every_day`: the demo built on every day of two years, each site held against that of the day before.

The tests look at a few days (tests/whole_site/test_day_by_day.py) and at the bulletin of each evening
(tests/outlook/test_every_day_of_the_demo.py); this is the whole of it, before a release and after a change of what is told.
"""

from __future__ import annotations

import argparse
import sys
import traceback
from collections import Counter
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import redirect_stderr, redirect_stdout
from datetime import date, timedelta
from io import StringIO
from multiprocessing import get_context
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from pelican import signals

from swardcast.cli.main import run
from swardcast.compose import Bulletin
from tests.conftest import DEMO, bytes_in
from tests.whole_site.day_by_day import Built, Watch

FIRST, LAST = date(2027, 4, 18), date(2029, 4, 18)
"""From the day before the first announcement; the last day that is told of the demo lies in December 2028."""
HOURS = ("07:05", "12:00", "19:30", "23:59")
"""In turn: before most entries of a day, among them, after them, and in its last minute."""
IN_A_ROW = 20
"""Builds that a process makes one after the other, the first of which follows the last of those before; a process keeps
some 30 MB of each. Judgement."""


def moments(first: date, last: date, step: int) -> list[str]:
    """The moments of builds, such as "2027-09-14 07:05"."""
    days = (first + timedelta(days=number) for number in range(0, (last - first).days + 1, step))
    return [f"{day} {HOURS[(day - FIRST).days // step % len(HOURS)]}" for day in days]


def build(club: Path, output: Path, as_of: str) -> Built:
    """Build as the command does, in the place of the site before; it has to succeed."""
    bulletins: list[Bulletin] = []

    def keep(generator: Any) -> None:
        bulletins.append(generator.context["bulletin"])

    told = StringIO()
    signals.article_generator_finalized.connect(keep)
    try:
        with redirect_stderr(told), redirect_stdout(StringIO()):
            code = run(["build", "--club", str(club), "--output", str(output), "--as-of", as_of])
    finally:
        signals.article_generator_finalized.disconnect(keep)
    said = told.getvalue()
    assert code == 0, said
    where = f"The site is in {output}. Open {output / 'index.html'} in a browser.\n"
    return Built(told=said.removesuffix(where), files=bytes_in(output), bulletin=bulletins[-1])


def found_in(club: Path, before: str, days: Sequence[str]) -> Counter[str]:
    """Build at some moments in a row, the first of which follows one of others, or none (""); tell what is wrong as it comes."""
    watch, found = Watch(), Counter[str]()
    with TemporaryDirectory() as folder:
        for as_of in (*filter(None, [before]), *days):
            try:
                told = watch.take(build(club, Path(folder) / "site", as_of))
            except Exception:  # noqa: BLE001 - told with its traceback, and the days after it are built all the same
                told = [traceback.format_exc()]
            if as_of == before:
                continue
            new = [one for one in told if one not in found]
            found.update(told)
            print("\n".join([f"{as_of}: {len(told)} faults, {len(new)} of them new", *new]), flush=True)
    return found


def _in_rows(club: Path, days: Sequence[str], processes: int) -> Iterator[Counter[str]]:
    rows = [days[start : start + IN_A_ROW] for start in range(0, len(days), IN_A_ROW)]
    befores = ["", *(row[-1] for row in rows)]
    with ProcessPoolExecutor(processes, get_context("spawn"), max_tasks_per_child=1) as pool:
        asked = [pool.submit(found_in, club, before, row) for before, row in zip(befores, rows, strict=False)]
        yield from (one.result() for one in asked)


def _options() -> argparse.Namespace:
    options = argparse.ArgumentParser(prog="python -m tests.every_day", description=__doc__)
    options.add_argument("--first", type=date.fromisoformat, default=FIRST, help="the first day (default: %(default)s)")
    options.add_argument("--last", type=date.fromisoformat, default=LAST, help="the last day (default: %(default)s)")
    options.add_argument("--step", type=int, default=1, help="every how many days (default: %(default)s)")
    options.add_argument("--processes", type=int, default=1, help="how many at a time (default: %(default)s)")
    options.add_argument("--club", type=Path, default=DEMO, help="the club folder (default: the demo)")
    return options.parse_args()


def main() -> int:
    """Build and look.

    Returns:
        The number of an exit: 1 where anything is wrong.
    """
    options = _options()
    days = moments(options.first, options.last, options.step)
    found = sum(_in_rows(options.club, days, options.processes), Counter[str]())
    print(f"{len(days)} builds; {len(found)} different faults, {found.total()} in all.")
    return 1 if found or not days else 0


if __name__ == "__main__":
    sys.exit(main())
