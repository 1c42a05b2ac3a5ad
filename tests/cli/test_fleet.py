"""A fleet of clubs: each site is, byte for byte, what `swardcast build` makes of it alone, whatever happens to others."""

from __future__ import annotations

import json
import os
import re
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.many_clubs import AS_OF, break_club, copies, unlike_clubs
from tests.cli.terminal import Terminal
from tests.conftest import ROOT, bytes_in

Swardcast = Callable[..., subprocess.CompletedProcess[str]]
PATIENCE_S = 600.0


@pytest.fixture(scope="module")
def clubs(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """Three clubs that have nothing in common but their size."""
    return unlike_clubs(tmp_path_factory.mktemp("clubs"))


@pytest.fixture(scope="module")
def alone(
    clubs: dict[str, Path], tmp_path_factory: pytest.TempPathFactory, run_swardcast: Swardcast
) -> dict[str, Path]:
    """The site of each, built by itself in a process of its own."""
    sites = {name: tmp_path_factory.mktemp("alone") / name for name in clubs}
    for name, club in clubs.items():
        done = run_swardcast("build", "--club", str(club), "--output", str(sites[name]), "--as-of", AS_OF)
        assert done.returncode == 0, done.stderr
    assert len({(site / "status.json").read_bytes() for site in sites.values()}) == len(sites)
    return sites


def started(*arguments: str, cache: Path) -> subprocess.Popen[str]:
    """Begin a fleet that is not waited for, in a group of its own, as a terminal has it."""
    return subprocess.Popen(
        [sys.executable, "-m", "swardcast.cli", "fleet", *arguments],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
        env={**os.environ, "PYTHONPATH": str(ROOT / "plugins"), "XDG_CACHE_HOME": str(cache)},
    )


def process_that_builds(output: Path, running: subprocess.Popen[str], after: int = 0) -> int:
    """The process that holds the lock of a site two folders below, once more sites than so many are there."""
    until = time.monotonic() + PATIENCE_S
    while time.monotonic() < until and running.poll() is None:
        if len([*output.glob("*/*/status.json")]) > after:
            for lock in output.glob("*/.*.lock"):
                try:
                    holder = lock.read_text(encoding="ascii")
                except FileNotFoundError:
                    continue
                if holder:
                    return int(holder)
        time.sleep(0.05)
    raise AssertionError(running.communicate())


def left_over(output: Path) -> list[str]:
    """What a build has no more need of, below the folder of sites."""
    return [path.name for path in output.rglob(".*") if re.search(r"\.(lock$|new-|next-|old$|fleet-)", path.name)]


def test_sixty_clubs_are_built_though_a_worker_is_killed_in_the_middle(
    clubs: dict[str, Path], alone: dict[str, Path], tmp_path: Path
) -> None:
    variant_of = copies(clubs, tmp_path / "clubs", 60)
    output = tmp_path / "sites"
    words = (str(tmp_path / "clubs"), "--output", str(output), "--as-of", AS_OF, "--workers", "2", "--json")
    with started(*words, cache=tmp_path / "cache") as running:
        os.kill(process_that_builds(output, running, after=10), signal.SIGKILL)
        out, err = running.communicate(timeout=PATIENCE_S)
    assert running.returncode == 0, err
    expected = {name: bytes_in(site) for name, site in alone.items()}
    assert [club for club, name in variant_of.items() if bytes_in(output / club) != expected[name]] == []
    told = json.loads(out)["clubs"]
    assert [one["club"] for one in told] == sorted(variant_of)
    # A site may have been live already when its worker was killed: then the second time it is the same again.
    assert {one["state"] for one in told} <= {"published", "unchanged"}
    assert sum(one["state"] == "unchanged" for one in told) <= 1
    assert left_over(output) == []


def test_a_club_that_fails_says_why_and_stops_no_other(
    clubs: dict[str, Path], alone: dict[str, Path], tmp_path: Path, run_swardcast: Swardcast
) -> None:
    folder, output, page = tmp_path / "clubs", tmp_path / "sites", tmp_path / "today.html"
    for name, club in clubs.items():
        shutil.copytree(club, folder / "north" / name)
    break_club(folder / "north" / "links")
    for name in ("links", "park"):
        shutil.copytree(alone[name], output / "north" / name)
    options = ("--output", str(output), "--as-of", AS_OF, "--workers", "1", "--page", str(page))
    done = run_swardcast("fleet", str(folder), *options)
    assert done.returncode == 1
    assert [line.split()[0] for line in done.stdout.splitlines()] == ["published", "failed", "unchanged"]
    assert [line.split()[-1] for line in done.stdout.splitlines()] == [
        str(output / "north" / name / "index.html") for name in ("heath", "links", "park")
    ]
    said = r"of 3: north/links failed in \d+\.\d s\n    plan/2027\.yaml\n      line 5, job 1, surfaces a day: found nothing"
    assert re.search(said, done.stderr)
    assert "3 clubs: 1 published, 1 unchanged, 1 failed; " in done.stderr
    assert {name: bytes_in(output / "north" / name) for name in alone} == {
        name: bytes_in(site) for name, site in alone.items()
    }
    text = page.read_text(encoding="utf-8")
    assert '<a href="sites/north/links/index.html">Dunes &amp; &lt;Links&gt;</a>' in text
    assert "line 9, job 1, surfaces the day: found" in text


def test_ctrl_c_ends_it_and_leaves_whole_sites_alone(clubs: dict[str, Path], tmp_path: Path) -> None:
    copies(clubs, tmp_path / "clubs", 12)
    output = tmp_path / "sites"
    words = (str(tmp_path / "clubs"), "--output", str(output), "--as-of", AS_OF, "--workers", "2")
    with started(*words, cache=tmp_path / "cache") as running:
        process_that_builds(output, running, after=1)
        os.killpg(running.pid, signal.SIGINT)
        out, err = running.communicate(timeout=PATIENCE_S)
    assert (running.returncode, out) == (130, "")
    assert re.search(r"^Stopped\. \d+ of 12 clubs were done; every live site is whole\.$", err, re.MULTILINE)
    assert "Traceback" not in err
    assert left_over(output) == []
    sites = [status.parent for status in output.glob("*/*/status.json")]
    assert 2 <= len(sites) < 12
    for site in sites:
        listed = (site / ".made-by-swardcast").read_text(encoding="utf-8").split()
        assert sorted(listed) == sorted(bytes_in(site))


def test_a_terminal_shows_a_bar_and_what_failed(clubs: dict[str, Path], tmp_path: Path) -> None:
    for name in ("heath", "links"):
        shutil.copytree(clubs[name], tmp_path / "clubs" / name)
        break_club(tmp_path / "clubs" / name)
    words = ("fleet", str(tmp_path / "clubs"), "--output", str(tmp_path / "sites"))
    with Terminal(*words) as terminal:
        code, shown = terminal.end()
    assert code == 1
    assert "Building" in shown
    assert "2/2" in shown
    assert "line 9, job 1, surfaces the day: found" in shown
    assert "1 of 2" not in shown
