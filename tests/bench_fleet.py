"""Measure what one more club costs a fleet, beside building it alone: processor time, and clubs a minute by the clock."""

from __future__ import annotations

import tempfile
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from io import StringIO
from pathlib import Path
from time import monotonic

from tests.bench_site import used_by
from tests.cli.many_clubs import AS_OF, copies, unlike_clubs
from tests.conftest import DEMO

FEW, MORE = 2, {"small": 26, "demo": 8}
WORKERS = (1, 2)


@dataclass(frozen=True)
class _Taken:
    processor_s: float
    clock_s: float


def _run(*arguments: str) -> _Taken:
    began = monotonic()
    used = used_by("-m", "swardcast.cli", *arguments)
    return _Taken(used.seconds, monotonic() - began)


def _one_kind(kind: str, clubs: dict[str, Path], folder: Path) -> None:
    """Print what one more club costs: the difference between many and few, so that the start does not count."""
    counts = (FEW, MORE[kind])
    for count in counts:
        copies(clubs, folder / f"{count}", count)
    site = ("--output", str(folder / "site"), "--as-of", AS_OF)
    alone = _run("build", "--club", str(next(iter(clubs.values()))), *site)
    print(f"a {kind} club built alone: {alone.processor_s:.2f} s of the processor")
    for workers in WORKERS:
        few, many = (
            _run(
                *("fleet", str(folder / f"{count}"), "--output", str(folder / f"sites-{workers}-{count}")),
                *("--as-of", AS_OF, "--workers", str(workers)),
            )
            for count in counts
        )
        more = counts[1] - counts[0]
        each = (many.processor_s - few.processor_s) / more
        print(
            f"one more {kind} club in a fleet of {workers} at a time / one built alone: {each / alone.processor_s:.2f}"
            f" ({each:.2f} s of the processor, {workers * 60 / each:.0f} clubs a minute of {workers}"
            f" processors; {more / (many.clock_s - few.clock_s) * 60:.0f} a minute by the clock;"
            f" to start and end: {few.processor_s - FEW * each:.1f} s)"
        )


def main() -> None:
    """Print the ratios."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        with redirect_stdout(StringIO()), redirect_stderr(StringIO()):
            small = unlike_clubs(folder / "unlike")
        _one_kind("small", small, folder / "small")
        _one_kind("demo", {"demo": DEMO}, folder / "demo")
