"""What several commands that plan are asked of time: a year, a month, days from one to another."""

from __future__ import annotations

import argparse
import re
from datetime import date
from typing import Final

from swardcast.cli.planning_asked import day_option
from swardcast.errors import SwardcastError
from swardcast.moments import FIRST_YEAR, LAST_YEAR
from swardcast.planning.periods import Period, month_of, year_of

__all__ = ["add_days_options", "days_in_order", "month_option", "year_option"]

_MONTH: Final = re.compile(r"^([1-9]\d{3})-(\d{1,2})$", re.ASCII)
_YEAR: Final = re.compile(r"^[1-9]\d{3}$", re.ASCII)


def add_days_options(options: argparse.ArgumentParser, *, first: str, last: str) -> None:
    """Add --from and --to, with what their help says."""
    options.add_argument("--from", dest="first", type=day_option, metavar="DAY", help=first)
    options.add_argument("--to", dest="last", type=day_option, metavar="DAY", help=last)


def year_option(text: str) -> Period:
    """Read a year."""
    if _YEAR.fullmatch(text.strip()) is None or not _is_ours(int(text)):
        message = f"found {text!r}; expected a year such as '2027'"
        raise argparse.ArgumentTypeError(message)
    return year_of(int(text))


def month_option(text: str) -> Period:
    """Read a month."""
    match = _MONTH.fullmatch(text.strip())
    if match is None or not 1 <= int(match[2]) <= 12 or not _is_ours(int(match[1])):  # noqa: PLR2004 - months
        message = f"found {text!r}; expected a month such as '2027-09'"
        raise argparse.ArgumentTypeError(message)
    return month_of(date(int(match[1]), int(match[2]), 1))


def _is_ours(year: int) -> bool:
    return FIRST_YEAR <= year <= LAST_YEAR


def days_in_order(first: date, last: date) -> Period:
    """Make a period of the days that --from and --to name.

    Args:
        first: the first day.
        last: the last day.

    Returns:
        The period.

    Raises:
        SwardcastError: when the last day comes before the first.
    """
    if last < first:
        message = f"--from {first} comes after --to {last}"
        raise SwardcastError(message)
    return Period(first=first, last=last)
