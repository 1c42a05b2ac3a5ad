"""Measure whole sites beside plain Pelican: full builds, builds after one new entry, memory, growth, and where time goes.

`python -m tests.bench_site 100 1000 3000` measures other numbers of notices. Nothing here can fail a build.
"""

from __future__ import annotations

import importlib
import os
import random
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import wraps
from itertools import pairwise
from math import log
from pathlib import Path
from statistics import median
from typing import Any

import numpy as np

from swardcast.compose import compose_bulletin
from swardcast.outlets.html import notice_html
from swardcast.reading.folder import read_club_folder
from tests.conftest import DEMO, DEMO_AS_OF
from tests.many_years import MOST_YEARS, demo_of_years

RUNS = 5
LONG_S = 10.0
"""A run of more processor time than this is measured once."""
SIZES = (22, 100, 1000)

PARTS = (
    ("swardcast.cli.build", "_build", "everything up to the files"),
    ("swardcast.pelican_plugin", "_records", "reading and checking the club's folder"),
    ("swardcast.compose", "assess_course", "how each job stands now"),
    ("swardcast.compose", "tell_story", "stories: each job replayed, or taken up again"),
    ("swardcast.compose", "compose_notice", "notices in words"),
    ("swardcast.compose", "calendar_of", "calendar"),
    ("swardcast.compose", "track_record", "promises"),
    ("swardcast.pelican_plugin", "compose_pictures", "facts of pictures"),
    ("swardcast.pelican_plugin", "_feeds", "feeds"),
    ("swardcast.pelican_plugin", "poster_artifacts", "posters"),
    ("swardcast.cli.build", "refuse_faults", "reading the built site back"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Used:
    """What a process used.

    Args:
        seconds: processor time.
        megabytes: the most memory that it held at a time.
    """

    seconds: float
    megabytes: float


_WATCH = """
import os, sys
place = os.open(os.devnull, os.O_WRONLY)
quiet = [(os.POSIX_SPAWN_DUP2, place, 1), (os.POSIX_SPAWN_DUP2, place, 2)]
_, status, used = os.wait4(os.posix_spawn(sys.argv[1], sys.argv[1:], os.environ, file_actions=quiet), 0)
print(status, used.ru_utime + used.ru_stime, used.ru_maxrss)
"""
"""A small process that starts another one: the memory of whoever starts a process counts as that of the other."""


def used_by(*arguments: str, **environment: str) -> Used:
    """Run a Python process to its end, with all that it starts and waits for."""
    command = [sys.executable, *arguments]
    watch = [sys.executable, "-S", "-c", _WATCH, *command]
    done = subprocess.run(watch, env={**os.environ, **environment}, check=True, capture_output=True, text=True)
    status, seconds, most = done.stdout.split()
    if int(status):
        raise subprocess.CalledProcessError(int(status), command)
    scale = 1024 if sys.platform != "darwin" else 1024 * 1024
    return Used(seconds=float(seconds), megabytes=int(most) / scale)


def usual(run: Callable[[int], Used]) -> Used:
    """Run something five times, told how often it ran before, and give the medians; a long one only once."""
    runs = [run(0)]
    while len(runs) < RUNS and runs[0].seconds < LONG_S:
        runs.append(run(len(runs)))
    return Used(seconds=median(one.seconds for one in runs), megabytes=median(one.megabytes for one in runs))


def plain_site(folder: Path, notices: int) -> Callable[[int], Used]:
    """Make plain Pelican build as many Markdown articles, as long as the demo's notices, with its own plain theme."""
    content = folder / "plain"
    content.mkdir(parents=True)
    bulletin = compose_bulletin(read_club_folder(DEMO), DEMO_AS_OF)
    lengths = [len(notice_html(notice, bulletin.voice, "../../")) for notice in bulletin.notices]
    dice = random.Random(1)  # noqa: S311 - no secret
    for number in range(notices):
        text = f"Title: Notice {number}\nDate: {2000 + number % 28}-09-14\nCategory: work\n\n"
        text += article(dice, lengths[number % len(lengths)])
        (content / f"{number}.md").write_text(text, encoding="utf-8")
    output = str(folder / "plain-site")
    command = ("-m", "pelican", str(content), "-o", output, "-t", "simple", "--quiet", "--ignore-cache")
    return lambda _: used_by(*command)


def article(dice: random.Random, letters: int) -> str:
    """Write Markdown with headings, paragraphs, lists and links."""
    words = (
        "turf",
        "green",
        "sand",
        "rolled",
        "holes",
        "the",
        "of",
        "and",
        "is",
        "likely",
        "September",
        "work",
        "back",
    )

    def some(count: int) -> str:
        return " ".join(dice.choices(words, k=count)).capitalize() + "."

    parts: list[str] = []
    while sum(map(len, parts)) < letters:
        parts.append(f"## {some(4)}\n\n{some(30)} See [{some(2)}](../{dice.randrange(99)}.html), and **{some(3)}**\n\n")
        parts.append("".join(f"- {some(12)}\n" for _ in range(4)) + f"\n{some(25)}\n\n")
    return "".join(parts)


class Site:
    """A club of many years, with what its builds keep.

    Args:
        folder: where everything goes.
        notices: how many notices it has.
    """

    def __init__(self, folder: Path, notices: int) -> None:
        self._folder = folder
        self._club = demo_of_years(folder / "club", notices=notices, years=MOST_YEARS)

    def command(self) -> tuple[str, ...]:
        """The build at the demo's moment."""
        at = DEMO_AS_OF.strftime("%Y-%m-%d %H:%M")
        return ("build", "--club", str(self._club), "--output", str(self._folder / "site"), "--as-of", at)

    def full(self, _: int) -> Used:
        """Build with nothing kept from before."""
        return used_by("-m", "swardcast.cli", *self.command(), "--afresh")

    def first(self) -> Used:
        """Build with nothing kept from before, and keep it."""
        return used_by("-m", "swardcast.cli", *self.command(), XDG_CACHE_HOME=str(self._folder / "cache"))

    def after_an_entry(self, number: int) -> Used:
        """Build after one more entry, on the largest job that heals."""
        text = (
            f"---\nat: 2027-09-14 09:{number:02}\nkind: observation\njob: greens-renovation-2027\nsurfaces: green 3\n"
            f"disruption left: {20 + number} %\nhow: by eye\nby: the course manager\n---\n"
        )
        (self._club / "log" / "2027" / f"2027-09-14-new-{number}.md").write_text(text, encoding="utf-8")
        return self.first()

    def parts(self) -> str:
        """Tell where the time goes when nothing is kept, and when everything is."""
        told = []
        for what, more in (("nothing kept", ["--afresh"]), ("all kept", [])):
            done = subprocess.run(
                [sys.executable, "-m", "tests.bench_site", "parts", *self.command(), *more],
                env={**os.environ, "XDG_CACHE_HOME": str(self._folder / "cache")},
                check=True,
                capture_output=True,
                text=True,
            )
            told.append(f"  {what}:\n" + "".join(f"  {line}\n" for line in done.stdout.splitlines() if "s of" in line))
        return "".join(told)


def tell_parts(arguments: list[str]) -> None:
    """Build in this process and print the processor time of each part."""
    from swardcast.cli.main import run

    taken: dict[str, float] = {}
    for module, name, what in PARTS:
        _time(importlib.import_module(module), name, what, taken)
    run(arguments)
    for what, seconds in taken.items():
        print(f"{seconds:8.2f} s of {what}")


def _time(module: Any, name: str, what: str, taken: dict[str, float]) -> None:
    work = getattr(module, name)

    @wraps(work)
    def timed(*arguments: Any, **named: Any) -> Any:
        begin = time.process_time()
        try:
            return work(*arguments, **named)
        finally:
            taken[what] = taken.get(what, 0.0) + time.process_time() - begin

    setattr(module, name, timed)


def tell_size(folder: Path, notices: int) -> Iterator[float]:
    """Print the ratios at one number of notices; yield the processor time of a full build."""
    plain = usual(plain_site(folder, notices))
    site = Site(folder, notices)
    full = usual(site.full)
    yield full.seconds
    site.first()
    entry = usual(site.after_an_entry)
    print(f"{notices} notices (plain Pelican with as many articles: {plain.seconds:.1f} s, {plain.megabytes:.0f} MB):")
    print(f"  full build, nothing kept / plain Pelican: {full.seconds / plain.seconds:.2f} ({full.seconds:.1f} s)")
    print(f"  build after one new entry / full build: {entry.seconds / full.seconds:.3f} ({entry.seconds:.1f} s)")
    print(f"  build after one new entry / plain Pelican: {entry.seconds / plain.seconds:.2f}")
    print(f"  memory of a full build / plain Pelican: {full.megabytes / plain.megabytes:.2f} ({full.megabytes:.0f} MB)")
    print(f"  memory after one new entry / plain Pelican: {entry.megabytes / plain.megabytes:.2f}")
    print(site.parts(), end="")


def main(sizes: tuple[int, ...] = SIZES) -> None:
    """Print the ratios at each number of notices, and how a full build grows with it."""
    print(f"Medians of {RUNS}; runs of more than {LONG_S:.0f} s once.")
    full: dict[int, float] = {}
    for notices in sizes:
        with tempfile.TemporaryDirectory() as name:
            for seconds in tell_size(Path(name), notices):
                full[notices] = seconds
    for few, many in pairwise(sizes):
        power = log(full[many] / full[few]) / log(many / few)
        print(f"a full build grows from {few} to {many} notices as their number to the power {power:.2f}")
    if len(sizes) > 1:
        power = float(np.polyfit(np.log(list(full)), np.log(list(full.values())), 1)[0])
        print(f"fitted to all: the power {power:.2f}")


if __name__ == "__main__":
    if sys.argv[1:2] == ["parts"]:
        tell_parts(sys.argv[2:])
    else:
        main(tuple(int(one) for one in sys.argv[1:]) or SIZES)
