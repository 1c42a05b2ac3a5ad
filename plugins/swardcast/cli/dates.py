"""`swardcast dates`: what each first day of a job costs, and the best times for it. Its results are private."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from typing import Any, Final

from swardcast.cli.common import add_club_options, moment_of, new_parser, records_to_plan, wrong_usage
from swardcast.cli.dates_asked import UNTIL, asked_of, beside
from swardcast.cli.dates_together import add_together_options, run_together, wrong_together
from swardcast.cli.period_asked import add_days_options
from swardcast.cli.planning_asked import add_work_options
from swardcast.cli.private_file import write_private
from swardcast.cli.private_tables import add_output_options, aligned, as_csv, flat, plain, show
from swardcast.errors import nearest
from swardcast.language.voice import Voice
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.date_columns import DATE_COLUMNS
from swardcast.planning.date_notes import date_notes
from swardcast.planning.date_tables import date_reasons, date_tables, date_title
from swardcast.planning.date_words import blocked_in_words, touched
from swardcast.planning.dates import Dates, find_dates
from swardcast.planning.start_days import StartDay
from swardcast.planning.words import meeting_in_words
from swardcast.records.folder import ClubRecords
from swardcast.records.importance import Importance

__all__ = ["parser", "run"]

_MOST_TOLD: Final = 20  # times or trade-offs that anybody reads: judgement


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, "swardcast dates --club my-club --job greens-renovation-2027 --to 2027-11-30")
    add_club_options(options)
    options.add_argument("--job", metavar="ID", default="", help="a planned job, which counts as moved")
    options.add_argument("--choice", metavar="NAME", default="", help="a choice of work, as 'compare' has them")
    add_work_options(options, pace="pace of the work (default: the job's or the choice's)")
    first, last = "the first day asked about (default: today)", "the last one (default: 26 weeks after the first)"
    add_days_options(options, first=first, last=last)
    options.add_argument(
        "--until", choices=tuple(UNTIL), default="back-to-normal", help="what ends it (default: back-to-normal)"
    )
    options.add_argument(
        "--best", type=_best, metavar="N", default=5, help="how many best times, or trade-offs (default: 5)"
    )
    add_together_options(options)
    add_output_options(options)
    return options


def _best(text: str) -> int:
    if not text.isascii() or not text.isdigit() or not 1 <= int(text) <= _MOST_TOLD:
        message = f"found {text!r}; expected a number of times from 1 to {_MOST_TOLD}"
        raise argparse.ArgumentTypeError(message)
    return int(text)


def _missing(options: argparse.Namespace) -> str:
    """What has to be told and is not, or does not go together."""
    if (wrong := wrong_together(options)) or options.jobs or options.programme:
        return wrong
    if not options.job and not options.choice:
        return "name a planned job, as in --job ID, or a choice of work, as in --surfaces 'greens 1-18' --choice NAME"
    if not options.job and options.surfaces is None:
        return "name surfaces, as in --surfaces 'greens 1-18', or a planned job, as in --job ID"
    return ""


def run(options: argparse.Namespace) -> int:
    """Find the best days and show them."""
    if missing := _missing(options):
        return wrong_usage("dates", missing)
    if options.jobs or options.programme:
        return run_together(options)
    records = records_to_plan(options)
    as_of = moment_of(options, records)
    asked = asked_of(options, records, as_of)
    dates = find_dates(records, as_of, WeatherBook(records.club, records.weather), asked)
    for remark in _remarks(dates, records):
        print(f"Worth another look: {remark}", file=sys.stderr)
    if options.page is not None:
        from swardcast.outlets.dates_page import dates_page

        write_private(options.page, dates_page(dates, records), club=options.club)
    show(
        options,
        as_json=lambda: _as_json(dates, records),
        as_csv=lambda: _as_csv(dates, records),
        as_text=lambda: _as_text(dates, records),
    )
    return 0


def _remarks(dates: Dates, records: ClubRecords) -> Iterator[str]:
    names = {fixture.name for fixture in records.fixtures}
    for named in dates.not_found:
        hint = nearest(named.words, names)
        yield f"'importance' in club.yaml names {named.words!r}, which no fixture is called. {hint}".rstrip()
    if others := list(beside(dates.asked, records, dates.as_of)):
        them = ", ".join(map(repr, others))
        yield f"also planned on these surfaces in that time, and taken to be done as planned: {them}."


def _as_text(dates: Dates, records: ClubRecords) -> Iterator[str]:
    voice = Voice.english(dates.as_of.date())
    yield f"{date_title(dates, voice)}, as of {voice.moment(dates.as_of)}"
    reasons = date_reasons(dates, records.planning, voice)
    for place, table in enumerate(date_tables(dates, records.planning, voice)):
        yield ""
        yield from aligned(table)
        if place == 0 and reasons:
            yield from (f"  {number}: {plain(said)}" for number, said in reasons)
    yield ""
    yield from map(plain, date_notes(dates, records, voice))


def _blocked(day: StartDay, records: ClubRecords, voice: Voice) -> list[str]:
    return [plain(blocked_in_words(reason, records.planning, voice)) for reason in day.blocked]


def _as_csv(dates: Dates, records: ClubRecords) -> str:
    voice = Voice.english(dates.as_of.date())
    rows = []
    for day in dates.days:
        values = [flat(value(dates, day)) for value in DATE_COLUMNS.values()]
        met = [f"{one.fixture.first_day} {one.fixture.name}: {meeting_in_words(one, voice)}" for one in touched(day)]
        rows.append([*values, "; ".join(dict.fromkeys(_blocked(day, records, voice))), plain("; ".join(met))])
    return as_csv([*DATE_COLUMNS, "blocked", "touched"], rows)


def _as_json(dates: Dates, records: ClubRecords) -> dict[str, Any]:
    voice, asked = Voice.english(dates.as_of.date()), dates.asked
    reasons = date_reasons(dates, records.planning, voice)
    return {
        "as_of": dates.as_of.isoformat(timespec="minutes"),
        "job": asked.instead_of or None,
        "name": asked.name,
        "surfaces": list(asked.job.surfaces),
        "surfaces_a_day": asked.job.surfaces_a_day,
        "from": asked.first.isoformat(),
        "to": asked.last.isoformat(),
        "until": asked.until.value,
        "importance": _importance_json(records.planning.importance),
        "past_years": dates.past_years,
        "forecast_until": flat(dates.forecast_until),
        "best": [
            {
                "day": time.window.best.day.isoformat(),
                "first": time.window.days[0].day.isoformat(),
                "last": time.window.days[-1].day.isoformat(),
                "weighted_days": flat(time.window.best.cost.weighted_days if time.window.best.cost else None),
                "growth_fraction": flat(time.growth),
                "days_longer": flat(time.days_longer),
                "reasons": plain(said),
            }
            for time, (_, said) in zip(dates.best, reasons, strict=True)
        ],
        "days": [_day_json(day, dates, records, voice) for day in dates.days],
    }


def _day_json(day: StartDay, dates: Dates, records: ClubRecords, voice: Voice) -> dict[str, Any]:
    return {
        **{name: flat(value(dates, day)) for name, value in DATE_COLUMNS.items()},
        "blocked": [
            {"because": reason.because.value, "day": reason.day.isoformat(), "words": words}
            for reason, words in zip(day.blocked, _blocked(day, records, voice), strict=True)
        ],
        "fixtures": [
            {
                "id": met.fixture.id,
                "name": met.fixture.name,
                "first_day": met.fixture.first_day.isoformat(),
                "in_work": met.in_work.value,
                "chance_disturbed": flat(met.not_normal),
            }
            for met in day.meets
        ],
    }


def _importance_json(importance: Importance) -> dict[str, Any]:
    return {
        "weekdays": {str(number): weight for number, weight in importance.weekdays.items()},
        "fixtures": importance.fixtures,
        "visitors": importance.visitors,
        "named": {named.words: named.adds for named in importance.named},
        "periods": [{"name": period.name, "times": period.times} for period in importance.periods],
    }
