"""Fixtures shared by the tests: the invented demo club, read, copied and built."""

from __future__ import annotations

import os
import pickle
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from datetime import date, datetime, time, timedelta
from functools import cache
from pathlib import Path
from time import monotonic, sleep
from typing import TypeVar
from zoneinfo import ZoneInfo

import pytest
from hypothesis import settings

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.errors import InputNeedsAttention
from swardcast.outlook.weather_book import WeatherBook
from swardcast.reading.folder import read_club_folder
from swardcast.records.folder import ClubRecords

# How long an example takes tells how busy the machine is; older versions of hypothesis fail then even where CI is set.
settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")

Outcome = TypeVar("Outcome")
ROOT = Path(__file__).parents[1]
DEMO = ROOT / "demo_content"
PLAIN_LANGUAGE = "plain language"
"""Name under which a test tells figures that are to stand at the end of the run."""
NO_BROWSER = "no browser"
"""How the reason begins when a test is left out since there is none; the end of the run counts them."""
FIRST_DAY, LAST_DAY = date(2027, 4, 19), date(2027, 9, 30)
_MOST_SECONDS_TO_BUILD = 300
"""A build takes some five seconds, on a busy machine thirty: judgement."""
DEMO_AS_OF = datetime(2027, 9, 14, 9, 30, tzinfo=ZoneInfo("Europe/London"))


@pytest.fixture(scope="session")
def demo_records() -> ClubRecords:
    return read_club_folder(DEMO)


@pytest.fixture(scope="session")
def demo_bulletin_at(demo_records: ClubRecords) -> Callable[[str], Bulletin]:
    """The demo at a moment, such as "2027-09-14 09:30": composed once, however many tests ask for it."""
    book = WeatherBook(demo_records.club, demo_records.weather)

    @cache
    def at(moment: str) -> Bulletin:
        as_of = datetime.fromisoformat(moment).replace(tzinfo=demo_records.club.time_zone)
        return compose_bulletin(demo_records, as_of, book)

    return at


@pytest.fixture(scope="session")
def demo_bulletin(demo_bulletin_at: Callable[[str], Bulletin]) -> Bulletin:
    return demo_bulletin_at(f"{DEMO_AS_OF:%Y-%m-%d %H:%M}")


@pytest.fixture(scope="session")
def evenings(demo_records: ClubRecords) -> dict[date, Bulletin]:
    """The demo as published at 6pm of every day, from the first announcement to two weeks after the last entry."""
    zone, book = demo_records.club.time_zone, WeatherBook(demo_records.club, demo_records.weather)
    days = [FIRST_DAY + timedelta(days=number) for number in range((LAST_DAY - FIRST_DAY).days + 1)]
    return {day: compose_bulletin(demo_records, datetime.combine(day, time(18), tzinfo=zone), book) for day in days}


@pytest.fixture
def club(tmp_path: Path) -> Path:
    """A copy of the demo club that a test may break."""
    return Path(shutil.copytree(DEMO, tmp_path / "club"))


@pytest.fixture(scope="session")
def run_swardcast(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., subprocess.CompletedProcess[str]]:
    """Run the command line in a process of its own, with a cache of the tests' own."""
    cache_home = str(tmp_path_factory.mktemp("cache"))

    def run(*arguments: str, **environment: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            [sys.executable, "-m", "swardcast.cli", *arguments],
            capture_output=True,
            text=True,
            check=False,
            env={**os.environ, "PYTHONPATH": str(ROOT / "plugins"), "XDG_CACHE_HOME": cache_home, **environment},
        )

    return run


@pytest.fixture(scope="session")
def demo_site(
    tmp_path_factory: pytest.TempPathFactory, run_swardcast: Callable[..., subprocess.CompletedProcess[str]]
) -> Path:
    """The demo, built once by the first of the processes that asks; tests only read it."""

    def build(output: Path) -> str:
        done = run_swardcast("build", "--club", str(DEMO), "--output", str(output), "--as-of", "2027-09-14 09:30")
        return "" if done.returncode == 0 else done.stderr or "it said nothing"

    return built_once(tmp_path_factory, "demo-site", build)


def _shared_place(factory: pytest.TempPathFactory, name: str) -> Path:
    """A folder that all processes of a test run know."""
    here = factory.getbasetemp()
    return (here.parent if "PYTEST_XDIST_WORKER" in os.environ else here) / name


def built_once(factory: pytest.TempPathFactory, name: str, build: Callable[[Path], str]) -> Path:
    """A folder that all processes of a test run share: whoever makes its place builds it, the others wait for the end."""
    place = _shared_place(factory, name)
    outcome = place / "outcome"
    try:
        place.mkdir()
    except FileExistsError:
        until = monotonic() + _MOST_SECONDS_TO_BUILD
        while not outcome.exists() and monotonic() < until:
            sleep(0.1)
    else:
        told = build(place / "site")
        _put_whole(outcome, told.encode())
    assert outcome.exists(), f"{name} was not built within {_MOST_SECONDS_TO_BUILD} seconds"
    problem = outcome.read_text(encoding="utf-8")
    assert not problem, problem
    return place / "site"


def shared_out(
    factory: pytest.TempPathFactory, name: str, tasks: Sequence[str], do: Callable[[str], Outcome]
) -> dict[str, Outcome]:
    """What comes of tasks that the processes of a test run share: each takes what nobody has taken, and waits for the rest.

    Where one fails, its process fails with it, and the others once they have waited in vain.
    """
    place = _shared_place(factory, name)
    place.mkdir(exist_ok=True)
    for number, task in enumerate(tasks):
        try:
            (place / f"{number}.taken").mkdir()
        except FileExistsError:
            continue
        _put_whole(place / f"{number}.done", pickle.dumps(do(task)))
    until = monotonic() + _MOST_SECONDS_TO_BUILD
    found: dict[str, Outcome] = {}
    for number, task in enumerate(tasks):
        done = place / f"{number}.done"
        while not done.exists():
            assert monotonic() < until, f"{name}: nothing came of {task} within {_MOST_SECONDS_TO_BUILD} seconds"
            sleep(0.05)
        found[task] = pickle.loads(done.read_bytes())  # noqa: S301 - written above
    return found


def _put_whole(path: Path, data: bytes) -> None:
    """Write a file that nobody sees before all of it is there."""
    beside = path.with_name(f"{path.name}.new")
    beside.write_bytes(data)
    beside.rename(path)


def bytes_in(folder: Path) -> dict[str, bytes]:
    """Every file in a folder by its place, with forward slashes."""
    found = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in found}


def problems_of(folder: Path) -> list[str]:
    """Read a club folder and give its problems as text, each with its file."""
    try:
        read_club_folder(folder)
    except InputNeedsAttention as error:
        return [f"{problem.file}: {problem}" for problem in error.problems]
    return []


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> Iterator[None]:
    """Tell how plain the notices are, and at the very end what a machine without a browser did not check.

    Reports bring the figures along from whichever process ran the test.
    """
    reports = (report for kind in ("passed", "failed") for report in terminalreporter.stats.get(kind, ()))
    lines = [line for report in reports for name, line in report.user_properties if name == PLAIN_LANGUAGE]
    if lines:
        terminalreporter.section(PLAIN_LANGUAGE)
    for line in lines:
        terminalreporter.write_line(str(line))
    yield
    left_out = sum(f"Skipped: {NO_BROWSER}" in str(one.longrepr) for one in terminalreporter.stats.get("skipped", ()))
    if left_out:
        terminalreporter.section("browser")
        terminalreporter.write_line(
            f"Left out, for want of a browser: {left_out} checks. On Debian: apt-get install chromium. "
            "SWARDCAST_BROWSER=required makes them fail instead."
        )
