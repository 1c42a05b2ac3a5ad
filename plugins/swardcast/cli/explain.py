"""`swardcast explain SURFACE`: where a surface's dates come from."""

from __future__ import annotations

import argparse

from swardcast.cli.common import add_club_options, moment_of, new_parser, print_json, records_of
from swardcast.errors import SwardcastError, nearest
from swardcast.language.voice import Voice, capital
from swardcast.notices.explain import explain_surface
from swardcast.outlook.course import assess_course
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords

__all__ = ["parser", "run"]


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, 'swardcast explain green-7 --club my-club --as-of "2027-09-14 09:30"')
    options.add_argument("surface", metavar="SURFACE", help="a surface's id or name, such as green-7 or 'green 7'")
    add_club_options(options)
    options.add_argument("--json", action="store_true", help="print the steps for a machine")
    return options


def run(options: argparse.Namespace) -> int:
    """Show the explanation."""
    records = records_of(options)
    name = _surface(options.surface, records)
    outlook = assess_course(records, moment_of(options, records), WeatherBook(records.club, records.weather))
    parts = explain_surface(outlook.surfaces[name], outlook, Voice.english(outlook.as_of.date()))
    if options.json:
        print_json(
            [
                {"heading": part.heading, "steps": [{"says": line, "source": source} for line, source in part.lines]}
                for part in parts
            ]
        )
        return 0
    print(capital(records.surfaces[name].name))
    for part in parts:
        print(f"\n{part.heading}")
        for line, source in part.lines:
            print(f"  {line}" + (f"  [{source}]" if source not in ("", "computed") else ""))
    return 0


def _surface(written: str, records: ClubRecords) -> str:
    wanted = written.strip().lower()
    for name, surface in records.surfaces.items():
        if wanted in (name, surface.name.lower(), surface.name.lower().removeprefix("the ")):
            return name
    known = [*records.surfaces, *(surface.name for surface in records.surfaces.values())]
    message = f"no surface {written!r}; expected an id or name of surfaces.yaml. {nearest(wanted, known)}".rstrip()
    raise SwardcastError(message)
