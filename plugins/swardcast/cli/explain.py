"""`swardcast explain`: where a surface's dates come from, or each sentence of a notice."""

from __future__ import annotations

import argparse

from swardcast.cli.common import add_club_options, moment_of, new_parser, print_json, records_of
from swardcast.compose import compose_bulletin
from swardcast.errors import SwardcastError, nearest
from swardcast.language.voice import Voice, capital
from swardcast.notices.explain import Explanation, explain_surface
from swardcast.notices.explain_notice import explain_notice
from swardcast.outlook.course import assess_course
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords

__all__ = ["parser", "run"]


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, 'swardcast explain green-7 --club my-club --as-of "2027-09-14 09:30"')
    about = options.add_mutually_exclusive_group(required=True)
    about.add_argument(
        "surface", metavar="SURFACE", nargs="?", help="a surface's id or name, such as green-7 or 'green 7'"
    )
    about.add_argument("--notice", metavar="ID", help="a job's id: show each sentence of its notice and its source")
    add_club_options(options)
    options.add_argument("--json", action="store_true", help="print the steps for a machine")
    return options


def run(options: argparse.Namespace) -> int:
    """Show the explanation."""
    records = records_of(options)
    title, parts = _of_notice(options, records) if options.notice is not None else _of_surface(options, records)
    if options.json:
        print_json(
            [
                {"heading": part.heading, "steps": [{"says": line, "source": source} for line, source in part.lines]}
                for part in parts
            ]
        )
        return 0
    print(title)
    for part in parts:
        print(f"\n{part.heading}")
        for line, source in part.lines:
            print(f"  {line}" + (f"  [{source}]" if source not in ("", "computed") else ""))
    return 0


def _of_surface(options: argparse.Namespace, records: ClubRecords) -> tuple[str, list[Explanation]]:
    name = _surface(options.surface, records)
    outlook = assess_course(records, moment_of(options, records), WeatherBook(records.club, records.weather))
    parts = explain_surface(outlook.surfaces[name], outlook, Voice.english(outlook.as_of.date()))
    return capital(records.surfaces[name].name), parts


def _of_notice(options: argparse.Namespace, records: ClubRecords) -> tuple[str, list[Explanation]]:
    bulletin = compose_bulletin(records, moment_of(options, records))
    notices = {notice.id: notice for notice in bulletin.notices}
    for gone in bulletin.withdrawn:
        if gone.id == options.notice:
            job = records.jobs[gone.id]
            message = (
                f"the notice {gone.id!r} was withdrawn ({job.file}, line {job.line}); nothing of it is left to explain."
            )
            raise SwardcastError(message)
    if options.notice not in notices:
        known = "no notice is public yet" if not notices else f"expected one of: {', '.join(notices)}"
        message = f"no notice {options.notice!r}; {known}. {nearest(options.notice, notices)}".rstrip()
        raise SwardcastError(message)
    notice = notices[options.notice]
    return notice.title, explain_notice(notice, bulletin.voice)


def _surface(written: str, records: ClubRecords) -> str:
    wanted = written.strip().lower()
    for name, surface in records.surfaces.items():
        if wanted in (name, surface.name.lower(), surface.name.lower().removeprefix("the ")):
            return name
    known = [*records.surfaces, *(surface.name for surface in records.surfaces.values())]
    message = f"no surface {written!r}; expected an id or name of surfaces.yaml. {nearest(wanted, known)}".rstrip()
    raise SwardcastError(message)
