"""`swardcast build --pdf`: the posters of a built site as PDFs, printed by a browser that is there."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterable
from pathlib import Path
from typing import Final

__all__ = ["BROWSERS", "print_posters"]

BROWSERS: Final = ("chromium", "chromium-browser", "google-chrome")
"""Names by which browsers that print without a window are started, in the order in which they are looked for."""

_SECONDS: Final = 60
"""For one poster; one takes about a second, the first on a busy machine ten: judgement."""

_WHEN: Final = re.compile(rb"/(?:CreationDate|ModDate) \(D:[^()]{1,30}\)")
"""What a PDF says of its making (ISO 32000-1, table 317): by the clock of the machine, so never twice the same."""

_PAPER: Final = re.compile(r'<html [^>]*data-paper="(A4|letter)"')


def print_posters(site: Path) -> int:
    """Print each poster of a site beside it as poster.pdf, on the paper of the club's language.

    Says on standard error what came of it. The site is whole with or without them.

    Args:
        site: folder of the built site.

    Returns:
        0 when all are printed, or no browser is there; 1 when a browser failed.
    """
    posters = sorted(site.glob("notices/*/poster.html"))
    browser = next(filter(None, map(shutil.which, BROWSERS)), None)
    if browser is None:
        wanted = ", ".join(BROWSERS)
        print(
            f"No poster was made into a PDF: no browser was found on the PATH (looked for {wanted}). The site is whole;"
            " every poster.html prints from any browser.",
            file=sys.stderr,
        )
        return 0
    failures = [f"{name}: {failure}" for name, failure in _print_all(browser, posters, site)]
    for failure in failures:
        print(failure, file=sys.stderr)
    print(f"Posters made into PDFs: {len(posters) - len(failures)} of {len(posters)}.", file=sys.stderr)
    return 1 if failures else 0


def _print_all(browser: str, posters: Iterable[Path], site: Path) -> Iterable[tuple[str, str]]:
    """Print one after the other; which failed, and why."""
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        for poster in posters:
            target = poster.with_name("poster.pdf")
            try:
                done = subprocess.run(  # noqa: S603 - a browser by a name of ours, a file of ours
                    _command(browser, poster, target, profile),
                    capture_output=True,
                    text=True,
                    errors="replace",
                    check=False,
                    timeout=_SECONDS,
                )
            except subprocess.TimeoutExpired:
                target.unlink(missing_ok=True)
                yield (
                    poster.relative_to(site).as_posix(),
                    f"{Path(browser).name} did not print it within {_SECONDS} seconds",
                )
                continue
            if done.returncode or not target.is_file():
                target.unlink(missing_ok=True)
                last = (done.stderr.strip().splitlines() or ["it said nothing"])[-1]
                yield poster.relative_to(site).as_posix(), f"{Path(browser).name} could not print it: {last}"
                continue
            # As many blanks, since a PDF tells by number of bytes where its parts stand.
            target.write_bytes(_WHEN.sub(lambda found: b" " * len(found[0]), target.read_bytes()))


def _command(browser: str, poster: Path, target: Path, profile: str) -> list[str]:
    found = _PAPER.search(poster.read_text(encoding="utf-8"))
    paper = found[1] if found else "A4"
    # Browsers refuse to run as the administrator in their sandbox; the page is our own and has no script.
    as_administrator = ["--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else []
    return [
        browser,
        "--headless",
        "--disable-gpu",
        "--no-first-run",
        "--disable-extensions",
        "--disable-background-networking",
        "--user-agent=Swardcast",  # the PDF would name the system of this machine
        *as_administrator,
        f"--user-data-dir={profile}",
        "--no-pdf-header-footer",
        f"--print-to-pdf={target.resolve()}",
        f"{poster.resolve().as_uri()}#{paper}",
    ]
