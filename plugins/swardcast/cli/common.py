"""What several commands share: options, the clock, the club folder."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

from swardcast.errors import InputNeedsAttention, Problem
from swardcast.moments import as_of_from
from swardcast.quantities import QuantityError
from swardcast.reading.folder import read_club_folder
from swardcast.records.folder import ClubRecords

__all__ = [
    "add_as_of_option",
    "add_club_options",
    "moment_of",
    "new_parser",
    "print_json",
    "quantity",
    "records_of",
    "records_to_plan",
    "text_of",
    "wrong_usage",
]


def new_parser(name: str, what: str, example: str) -> argparse.ArgumentParser:
    """Make a command's parser, with an example in its help."""
    return argparse.ArgumentParser(
        prog=name,
        description=f"{what[:1].upper()}{what[1:]}.",
        epilog=f"Example:\n  {example}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )


def add_club_options(parser: argparse.ArgumentParser, *, as_of: bool = True) -> None:
    """Add --club and, for commands that compute, --as-of."""
    parser.add_argument(
        "--club", metavar="DIR", type=Path, default=Path(), help="the club folder (default: this folder)"
    )
    if as_of:
        add_as_of_option(parser)


def add_as_of_option(parser: argparse.ArgumentParser) -> None:
    """Add --as-of."""
    parser.add_argument(
        "--as-of", metavar="MOMENT", help="the moment, such as '2027-09-14 09:30' in the club's time (default: now)"
    )


def records_of(options: argparse.Namespace) -> ClubRecords:
    """Read the club folder that the options name."""
    return read_club_folder(options.club)


def records_to_plan(options: argparse.Namespace) -> ClubRecords:
    """Read the club folder for a command that needs the files of planning too: a fault in one of them counts."""
    records = records_of(options)
    if records.planning.faults:
        raise InputNeedsAttention(records.planning.faults)
    return records


def moment_of(options: argparse.Namespace, records: ClubRecords) -> datetime:
    """Tell the moment that the options name; without one the clock is read, here and nowhere else."""
    zone = records.club.time_zone
    return as_of_from(options.as_of, zone, now=datetime.now(zone))


def quantity(parse: Callable[[object], Any]) -> Callable[[str], Any]:
    """Make a reader of a quantity into a type of an option, which tells wrong usage by exit code 2."""

    def read(text: str) -> Any:
        try:
            return parse(text)
        except QuantityError as error:
            raise argparse.ArgumentTypeError(str(error)) from error

    return read


def text_of(path: Path) -> str:
    """Read a file that an option names, as UTF-8."""
    try:
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        found, expected = "a character that is not UTF-8", "text saved as UTF-8"
        raise InputNeedsAttention([Problem(file=str(path), found=found, expected=expected)]) from None


def wrong_usage(command: str, words: str) -> int:
    """Say what does not go together in a command's options; gives the exit code."""
    print(f"swardcast {command}: {words}", file=sys.stderr)
    return 2


def print_json(value: Any) -> None:
    """Print a result for a machine; where the output cannot hold every letter, as escapes of JSON."""
    holds_all = (sys.stdout.encoding or "utf-8").lower().replace("-", "") == "utf8"
    print(json.dumps(value, ensure_ascii=not holds_all, indent=2))
