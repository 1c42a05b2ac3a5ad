"""`swardcast check`: read everything, and write nothing unless an older folder is to be mended."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from swardcast.cli.common import add_club_options, moment_of, new_parser, print_json, records_to_plan, wrong_usage
from swardcast.cli.theme import add_theme_option, settings_of
from swardcast.errors import Problem, all_at_once
from swardcast.language.banned import banned_phrases
from swardcast.language.catalogue import BUILT_IN
from swardcast.language.voice import Voice
from swardcast.notices.oversights import oversights
from swardcast.notices.own_words import own_words_remarks
from swardcast.notices.reasons import dated_ahead, labels_read_ahead
from swardcast.reading.files import CHOICES
from swardcast.reading.web_folder import problems_of_web
from swardcast.records.folder import ClubRecords
from swardcast.records.planning import Planning
from swardcast.site_source import page_paths, problems_of_pages

__all__ = ["parser", "run"]


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, "swardcast check --club my-club")
    add_club_options(options)
    add_theme_option(options)
    options.add_argument(
        "--mend",
        action="store_true",
        help="change what is left of an older format first, and keep the files as they were",
    )
    options.add_argument("--json", action="store_true", help="print what was read for a machine")
    return options


def run(options: argparse.Namespace) -> int:
    """Read the club folder and say what is in it."""
    if options.mend:
        if options.json:
            return wrong_usage("check", "--mend shows what it changes and does not go together with --json")
        from swardcast.cli.mending import mend

        mend(options.club)
    with all_at_once() as problems:
        problems.extend(_problems_of_templates(options))
        problems.extend(problems_of_web(options.club))
        problems.extend(_problems_of_pages(options))
        records = records_to_plan(options)
    if records.club.language not in BUILT_IN:
        _look_for_pages(options, records.club.language)
    now = moment_of(options, records)
    counts = {
        "surfaces": len(records.surfaces),
        "jobs": len(records.jobs),
        "log_entries": len(records.entries),
        "days_observed": len(records.weather.observed_c),
        "days_of_history": len(records.weather.history_c),
        "forecasts": len(records.weather.forecasts),
        "days_incomplete": len(records.weather.incomplete),
        "fixtures": len(records.fixtures),
    }
    if options.json:
        print_json({"club": records.club.name, **counts})
        return 0
    english = Voice.english(now.astimezone(records.club.time_zone).date())
    remarks = [
        *(dated_ahead(records, now, english) if options.as_of is None else ()),
        *labels_read_ahead(records, now, english),
        *own_words_remarks(records, now, banned_phrases(records.club.language)),
        *oversights(records, now, english),
        *_of_choices(options.club, records),
    ]
    print(f"{records.club.name}: {_summary(len(remarks))}")
    for name, count in counts.items():
        print(f"  {name.replace('_', ' ')}: {count}")
    if kept := _kept_from_members(records):
        print(f"  kept from members: {', '.join(kept)}")
    for remark in remarks:
        print(f"Worth another look: {remark}", file=sys.stderr)
    if records.weather.incomplete:
        print(
            f"Days without readings throughout count as missing, the latest on {records.weather.incomplete[-1]}.",
            file=sys.stderr,
        )
    return 0


def _of_choices(club: Path, records: ClubRecords) -> Iterator[str]:
    if not records.planning.choices and (club / CHOICES).is_file():
        yield f"{CHOICES} holds no choice of work yet, so that 'compare' shows the usual ones of the trade."


def _problems_of_templates(options: argparse.Namespace) -> list[Problem]:
    """What is wrong with the club's own templates or theme, by the settings of a build; few clubs have any."""
    if options.theme is None and not (options.club / "templates").is_dir():
        return []
    from swardcast.club_templates import problems_of_templates, with_club_templates

    settings = settings_of(options.club, options.theme)
    with_club_templates(settings)
    return problems_of_templates(options.club, settings)


def _kept_from_members(records: ClubRecords) -> list[str]:
    """What of the folder no member ever sees."""
    notes = [*(job.private_note for job in records.jobs.values()), *(one.head.private_note for one in records.entries)]
    counted = {"choices of work": len(records.planning.choices), "private notes": sum(map(bool, notes))}
    planning = ["planning"] if replace(records.planning, choices=()) != Planning() else []
    return planning + [f"{name} ({count})" for name, count in counted.items() if count]


def _problems_of_pages(options: argparse.Namespace) -> list[Problem]:
    """Pages of the club's own that a build would miss; few clubs have any, and settings of a build load slowly."""
    if not (options.club / "pages").is_dir():
        return []
    settings = settings_of(options.club, options.theme)
    return problems_of_pages(Path(settings["PATH"]), settings["PAGE_PATHS"], options.club)


def _look_for_pages(options: argparse.Namespace, language: str) -> None:
    """Look for the site's own pages in a language as a build does, which fails without them."""
    settings = settings_of(options.club, options.theme)
    page_paths(Path(settings["PATH"]), settings["PAGE_PATHS"], language, options.club)


def _summary(remarks: int) -> str:
    if not remarks:
        return "nothing needs attention."
    return f"nothing is wrong; {remarks} {'things are' if remarks > 1 else 'thing is'} worth another look."
