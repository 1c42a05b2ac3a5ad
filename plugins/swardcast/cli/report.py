"""`swardcast report`: the committee's report for a period, as Markdown, as a page or for a machine. It is private."""

from __future__ import annotations

import argparse
from datetime import date, timedelta
from pathlib import Path

from swardcast.cli.common import add_club_options, moment_of, new_parser, print_json, records_of, wrong_usage
from swardcast.cli.period_asked import add_days_options, days_in_order, month_option, year_option
from swardcast.cli.private_file import MARKDOWN, refuse_place, write_private
from swardcast.cli.report_json import report_json
from swardcast.errors import SwardcastError
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.periods import Period, month_of
from swardcast.planning.report import report_of

__all__ = ["parser", "run"]

_DAY = timedelta(days=1)


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, "swardcast report --club my-club --month 2027-09 --page ../report.html")
    add_club_options(options)
    add_days_options(options, first="the first day of the period", last="its last day (default: today)")
    whole = options.add_mutually_exclusive_group()
    whole.add_argument("--month", type=month_option, help="a month, such as 2027-09 (default: the one before this)")
    whole.add_argument("--year", type=year_option, help="a year, such as 2027")
    options.add_argument("--output", metavar="FILE", type=Path, help="write the Markdown there, and do not print it")
    options.add_argument("--page", metavar="FILE", type=Path, help="also write a page for the committee, to be printed")
    options.add_argument("--sources", action="store_true", help="name the sources of each row, and list them all")
    options.add_argument("--json", action="store_true", help="print it for a machine")
    return options


def _period(options: argparse.Namespace, today: date) -> Period:
    whole: Period | None = options.month or options.year
    if whole is None and options.first is None:
        whole = month_of(today.replace(day=1) - _DAY)
    period = whole or days_in_order(options.first, options.last or max(today, options.first))
    if period.first > today:
        message = f"the period begins on {period.first}, and nothing of it is known on {today}; name an earlier one"
        raise SwardcastError(message)
    return period


def _wrong_use(options: argparse.Namespace) -> str:
    """What does not go together; "" where all does."""
    if (options.month or options.year) and (options.first or options.last):
        return "name a month or a year, or days by --from and --to, not both"
    if options.last is not None and options.first is None:
        return "name the first day too, as in --from 2027-09-01 --to 2027-09-30"
    return ""


def run(options: argparse.Namespace) -> int:
    """Report and show."""
    if wrong := _wrong_use(options):
        return wrong_usage("report", wrong)
    from swardcast.outlets.report_markdown import report_markdown
    from swardcast.planning.report_sections import report_in_words

    records = records_of(options)
    as_of = moment_of(options, records)
    today = as_of.astimezone(records.club.time_zone).date()
    report = report_of(records, as_of, WeatherBook(records.club, records.weather), _period(options, today))
    told = report_in_words(report, records, each_source=options.sources)
    markdown = report_markdown(told, records.club.name)
    if options.output is not None:  # so that neither is written where the other is refused
        refuse_place(options.output, club=options.club, endings=MARKDOWN)
    if options.page is not None:
        from swardcast.outlets.report_page import report_page

        page = report_page(told, records.club, records.club.voice(today))
        write_private(options.page, page, club=options.club)
    if options.output is not None:
        write_private(options.output, markdown, club=options.club, endings=MARKDOWN)
    if options.json:
        print_json(report_json(report, records))
    elif options.output is None:
        print(markdown, end="")
    return 0
