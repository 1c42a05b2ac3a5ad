"""`swardcast start DIR`: a commented club folder that builds at once."""

from __future__ import annotations

import argparse
import shlex
import shutil
import sys
from datetime import datetime, timedelta
from importlib.resources import files
from pathlib import Path
from string import Template
from zoneinfo import ZoneInfo

from swardcast.cli.common import new_parser, print_json
from swardcast.cli.start_forge import FORGES, workflow_path, write_workflow
from swardcast.errors import SwardcastError
from swardcast.moments import FIRST_YEAR, LAST_YEAR
from swardcast.site_source import demo_club

__all__ = ["parser", "run"]

_ZONE = ZoneInfo("Europe/London")  # the time zone in the club.yaml that it writes
_FIRST_YEAR = FIRST_YEAR + 1  # what was measured is told as of 60 days before


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, "swardcast start my-club")
    options.add_argument("folder", metavar="DIR", type=Path, help="the folder to make; it must not exist or be empty")
    options.add_argument(
        "--today", metavar="DAY", help="the day on which the example work is about to start (default: today)"
    )
    options.add_argument(
        "--forge",
        choices=FORGES,
        help="add the file by which that forge makes and publishes the site; a club folder that is there gets it alone",
    )
    options.add_argument("--json", action="store_true", help="print where the folder is for a machine")
    return options


def run(options: argparse.Namespace) -> int:
    """Write the folder: beside its place first, then moved there, so that nothing half-written is left."""
    folder: Path = options.folder.resolve()
    today = _today(options.today)
    if options.forge and (folder / "club.yaml").is_file():
        return _add_workflow(options, today.year)
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        message = f"{options.folder} exists already and is not empty; name a new folder"
        raise SwardcastError(message)
    fresh = folder.with_name(f".{folder.name}.new")
    shutil.rmtree(fresh, ignore_errors=True)
    try:
        _write(fresh, today)
        if options.forge:
            write_workflow(fresh, options.forge, _ZONE, today.year)
        folder.mkdir(parents=True, exist_ok=True)
        for child in sorted(fresh.iterdir()):
            child.rename(folder / child.name)
    finally:
        shutil.rmtree(fresh, ignore_errors=True)
    _tell(options, options.folder)
    club = shlex.quote(str(options.folder))
    print(f"Made {options.folder}. Now: swardcast build --club {club} --output site", file=sys.stderr)
    return 0


def _today(named: str | None) -> datetime:
    """The day that was named, or the present moment; raises SwardcastError."""
    if named is None:
        return datetime.now(_ZONE)
    try:
        today = datetime.fromisoformat(named)
    except ValueError:
        today = None
    if today is None or not _FIRST_YEAR <= today.year < LAST_YEAR:
        message = f"{named!r} is no day; expected one such as '2027-08-23'"
        raise SwardcastError(message)
    return today


def _add_workflow(options: argparse.Namespace, year: int) -> int:
    from swardcast.reading.folder import read_club_folder

    place = workflow_path(options.folder, options.forge)
    write_workflow(options.folder, options.forge, read_club_folder(options.folder).club.time_zone, year)
    _tell(options, place)
    print(f"Added {place}, and nothing else. Read its remarks before you push it.", file=sys.stderr)
    return 0


def _tell(options: argparse.Namespace, made: Path) -> None:
    if options.json:
        print_json({"club": str(options.folder), **({"workflow": str(made)} if made != options.folder else {})})
    else:
        print(made)


def _is_day_only(today: datetime) -> bool:
    """A day that was named has no time of its own."""
    return today.tzinfo is None


def _write(folder: Path, today: datetime) -> None:
    early = today.replace(hour=6, minute=0)
    morning = early if _is_day_only(today) else min(early, today)  # an entry must not be dated ahead
    monday = today + timedelta(days=7 - today.weekday())
    from_monday = {"wednesday": 2, "saturday": 19, "sunday": 20, "visit": 31, "visit_end": 33}
    words = {
        "today": today.date().isoformat(),
        "morning": f"{morning:%H:%M}",
        "year": str(today.year),
        "monday": monday.date().isoformat(),
        "measured": (today - timedelta(days=60)).date().isoformat(),
        "today_basic": f"{today:%Y%m%d}",
        **{name: f"{monday + timedelta(days=days):%Y%m%d}" for name, days in from_monday.items()},
    }
    source = files("swardcast") / "start"
    for name, place in (
        ("club.yaml", "club.yaml"),
        ("surfaces.yaml", "surfaces.yaml"),
        ("programme.yaml", f"plan/{today.year}.yaml"),
        ("morning.md", f"log/{today.year}/{words['today']}-{morning:%H%M}-morning.md"),
        ("observed.csv", "weather/observed.csv"),
        ("fixtures.ics", "fixtures.ics"),
    ):
        path = folder / place
        path.parent.mkdir(parents=True, exist_ok=True)
        text = Template((source / name).read_text(encoding="utf-8")).substitute(words)
        path.write_text(text, encoding="utf-8")
    history = folder / "weather" / "history"
    shutil.copytree(demo_club() / "weather" / "history", history)
