"""`swardcast log`: one entry by guided questions or in one line, shown to the manager before it is written."""

from __future__ import annotations

import argparse
import re
import sys
from pathlib import Path
from typing import NoReturn

from swardcast.cli.common import new_parser
from swardcast.cli.log_entry import enter
from swardcast.cli.log_import import add_options, take_in
from swardcast.entering.kinds import ALSO, BY_WORD, KINDS, EntryKind
from swardcast.entering.limits_said import SAMPLES
from swardcast.entering.places import PLACES
from swardcast.errors import nearest

__all__ = ["parser", "run"]

_EXAMPLE = "swardcast log\n  swardcast log done hollow-tine --greens 1-9"
_HELP = {
    "surfaces": ("WHERE", "surfaces, such as 'greens 1-9 and the practice green' (default: those that come next)"),
    "play": ("PLAY", "play there from now on, such as 'open with care' (default: as planned)"),
    "tine": ("LENGTH", "tine diameter, such as '13 mm' (default: as planned, like all of these)"),
    "blade": ("LENGTH", "width of the blade, such as '2 mm'"),
    "spacing": ("SPACING", "spacing, such as '50 x 50 mm'"),
    "depth": ("LENGTH", "depth, such as '60 mm'"),
    "passes": ("N", "how many times the machine went over"),
    "sand": ("AMOUNT", "sand, such as '1.4 t/green' or '2 mm'"),
    "seed": ("SEED", "seed rate such as '6 g/m2', or the kind of grass"),
    "because": ("WHY", "the cause, for members"),
    "to": ("DAY", "the new first day, such as '7 September'"),
    "no-work-before": ("DAY", "the first day on which work may go on, such as tomorrow (default: at any hour)"),
    "left": ("SHARE", "how much of the first marks is left, such as '15 %%'"),
    "counted": ("", "the share was counted, not seen by eye"),
    "cover": ("SHARE", "turf cover from a photo count, such as '92 %%'"),
    "speed": ("ROLL", "green speed, such as '8 ft 10 in'"),
    "firmness": ("READING", "firmness, such as '8 mm' or '95 gravities'"),
    "moisture": ("SHARE", "moisture, such as '22 %%'"),
    "cut": ("LENGTH", "height of cut, such as '4 mm'"),
    "organic-matter": ("SHARE", "organic matter, such as '5.8 %%'"),
    "from": ("DAY", "its first day (default: the day of the entry)"),
    "until": ("DAY", "its last day"),
    "open": ("WHERE", "surfaces that are open, such as 'the whole course'"),
    "care": ("WHERE", "surfaces that are open with care; a bare number is a green"),
    "temporary": ("WHERE", "greens that are out of play for temporary ones"),
    "closed": ("WHERE", "surfaces that are closed"),
    "why": ("WHY", "why something is not open, for members"),
    "limits": ("LIMITS", "limits in one, such as 'trolleys: none today; buggies: none today'"),
    "decided-by": ("WHO", "who decided the one limit, such as 'the Committee'"),
    "withdraw": ("", "withdraw the entry, with nothing in its place"),
    "was-at": ("WHEN", "when it really was"),
    "job": ("JOB", "the job that the note is about"),
}
_HELP |= dict.fromkeys(PLACES, ("WHERE", "such as 1-9 or all"))
_HELP |= {
    name.replace(" ", "-"): ("WHAT", f"what holds, such as {sample!r}, or lifted") for name, sample in SAMPLES.items()
}
_HELP_OF = {
    ("correct", "because"): ("WHY", "why it is corrected, for members"),
    ("correct", "surfaces"): ("WHERE", "the surfaces that are right (default: as they were)"),
    ("morning", "until"): ("WHEN", "the end of the one limit: a day, or a time such as 9:30am"),
}
_SUBJECTS = {
    "job": ("JOB", "the job: its work such as hollow-tine, its id, or a piece of its title"),
    "cause": ("CAUSE", "growth regulator, dull weather, unfed or frost on the leaf"),
    "entry": ("ENTRY", "the entry that was wrong: its name or a piece of it, or last"),
}
_SWITCHES = ("counted", "withdraw")


class _Parser(argparse.ArgumentParser):
    """Names the nearest kind of entry when one is misspelt."""

    def error(self, message: str) -> NoReturn:
        typed = re.search(r"invalid choice: '([^']*)' \(choose from", message)
        hint = nearest(typed[1], [*BY_WORD, *ALSO, "import"]) if typed else ""
        super().error(f"{message}. {hint}" if hint else message)


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    base = new_parser(name, what, _EXAMPLE)
    options = _Parser(
        prog=name,
        description=base.description,
        epilog=base.epilog,
        formatter_class=base.formatter_class,
        allow_abbrev=False,
    )
    _add_common(options, alone=True)
    words = options.add_subparsers(dest="word", metavar="KIND", title="kinds of entry; without one you are asked")
    for kind in KINDS:
        below = words.add_parser(
            kind.word,
            aliases=[other for other, word in ALSO.items() if word == kind.word],
            help=kind.what,
            description=f"{kind.what[:1].upper()}{kind.what[1:]}.",
            epilog=f"Example:\n  {kind.example}",
            formatter_class=argparse.RawDescriptionHelpFormatter,
            allow_abbrev=False,
        )
        _add_kind(below, kind)
    what = "entries from a sheet or a form, as 'log sheet' in club.yaml tells its columns"
    below = words.add_parser(
        "import",
        help=what,
        description=f"{what[:1].upper()}{what[1:]}. All rows that are new are taken, or none.",
        epilog="Example:\n  swardcast log import answers.xlsx",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    add_options(below)
    _add_common(below, alone=False)
    return options


def _add_kind(options: argparse.ArgumentParser, kind: EntryKind) -> None:
    if kind.subject:
        metavar, what = _SUBJECTS[kind.subject]
        options.add_argument(kind.subject, metavar=metavar, nargs="?", help=what)
    for option in (*kind.needs, *kind.may):
        if option in (kind.subject, "words"):
            continue
        metavar, what = _HELP_OF.get((kind.word, option)) or _HELP[option]
        if option in _SWITCHES:
            options.add_argument(f"--{option}", action="store_const", const="yes", help=what)
        else:
            options.add_argument(f"--{option}", metavar=metavar, help=what)
    options.add_argument(
        "--at", metavar="WHEN", help="when it was so, such as 7:05am or 'yesterday 4pm' (default: now)"
    )
    options.add_argument("--by", metavar="WHO", help="who says so (default: as in the last entry)")
    options.add_argument("--words", metavar="TEXT", help="your own words to members")
    options.add_argument("--private-note", metavar="TEXT", help="a note for the club's file, which no member ever sees")
    _add_common(options, alone=False)


def _add_common(options: argparse.ArgumentParser, *, alone: bool) -> None:
    """Options of every kind; below a kind they say nothing unless they are given, so that both places count."""

    def default(value: object) -> object:
        return value if alone else argparse.SUPPRESS

    club = "the club folder (default: this folder)"
    options.add_argument("--club", metavar="DIR", type=Path, default=default(Path()), help=club)
    moment = "the moment that counts as now (default: now)"
    options.add_argument("--as-of", metavar="MOMENT", default=default(None), help=moment)
    yes = "write without asking"
    options.add_argument("--yes", action="store_true", default=default(value=False), help=yes)
    quiet = "do not work out what changes for members; with --yes it answers sooner"
    options.add_argument("--quiet", action="store_true", default=default(value=False), help=quiet)
    told = "print what was written for a machine"
    options.add_argument("--json", action="store_true", default=default(value=False), help=told)


def run(options: argparse.Namespace) -> int:
    """Make one entry; a manager who stops it leaves nothing behind."""
    try:
        return take_in(options) if options.word == "import" else enter(options)
    except KeyboardInterrupt:
        print("\nStopped. Nothing was written.", file=sys.stderr)
        return 130
    except EOFError:
        print("\nThe answers ended early. Nothing was written.", file=sys.stderr)
        return 1
