"""The command `swardcast`: finds the command asked for and loads only that one."""

from __future__ import annotations

import gc
import io
import os
import sys
from collections.abc import Callable, Sequence
from importlib import import_module

TYPE_CHECKING = False
if TYPE_CHECKING:  # to load typing takes longer than all else that --help needs
    from typing import Any, Final, NoReturn

__all__ = ["COMMANDS", "in_words", "main", "run"]

COMMANDS: Final = {
    "start": "make a commented club folder that builds at once",
    "log": "make a log entry: by questions, or everything in one line",
    "check": "read a club folder, say everything that is wrong with it, write nothing",
    "weather": "fetch the forecast, observed days and past years from an open service",
    "build": "build the site",
    "fleet": "build the sites of many clubs at once, on this machine or on a cluster",
    "outlook": "show how every surface stands, with dates and reasons",
    "explain": "show step by step where a surface's dates come from",
    "compare": "compare ways of doing a job before it is decided: work, sand, cost, dates, fixtures; private",
    "dates": "find the best days for one job or several: disturbed play, fixtures, days without work, weather; private",
    "sand": "add up the sand of a year: tonnes, layers, cost, and how long the store lasts; private",
    "report": "write the committee's report for a period: planned, done, promised, used, read; private",
    "reckon": "do a sum: tines, grooves, sand, healing",
    "backtest": "test the dates: on a long weather record, or what the club promised (--own)",
}
FINE, NEEDS_ATTENTION, WRONG_USAGE = 0, 1, 2
_RARELY: Final = (50_000, 50, 100)
"""How often those of new objects are looked for that refer to each other and are asked for no more. Records have none,
and most of what a command makes is asked for to its end: as often as Python does, it took an eighth of reading ten
years of log and a tenth of a build; judgement."""

_LINK_TO_ITSELF: Final = "Symlink loop"
"""What pathlib says of one, and is no error of the system, up to Python 3.12."""

_EXAMPLE: Final = """\
Example:
  swardcast start my-club
  swardcast build --club my-club --output site

'swardcast COMMAND --help' tells more about a command."""


def _help() -> str:
    width = max(map(len, COMMANDS))
    lines = "\n".join(f"  {name:{width}}  {what}" for name, what in COMMANDS.items())
    return (
        "usage: swardcast COMMAND [options]\n\n"
        "Turns a golf club's plan, log and weather into notices with computed dates.\n\n"
        f"Commands:\n{lines}\n\nOptions:\n  --help     show this\n  --version  show the version\n\n{_EXAMPLE}"
    )


def run(arguments: Sequence[str]) -> int:
    """Run one command.

    Args:
        arguments: the words after the program's name.

    Returns:
        0 fine, 1 the input needs attention, 2 wrong usage.
    """
    first = arguments[0] if arguments else "--help"
    if first in ("-h", "--help", "help"):
        print(_help())
        return FINE if arguments else WRONG_USAGE
    if first in ("-V", "--version"):
        from swardcast.version import __version__

        print(f"swardcast {__version__}")
        return FINE
    if first not in COMMANDS:
        from swardcast.errors import nearest

        hint = nearest(first, COMMANDS)
        print(f"swardcast: no command {first!r}. {hint}\nCommands: {', '.join(COMMANDS)}", file=sys.stderr)
        return WRONG_USAGE
    return _run_command(first, arguments[1:])


def _run_command(name: str, arguments: Sequence[str]) -> int:
    from swardcast.machine_zone import pass_over_false_zone

    pass_over_false_zone()
    module = import_module(f"swardcast.cli.{name}")
    options = module.parser(f"swardcast {name}", COMMANDS[name]).parse_args(arguments)
    return in_words(lambda: int(module.run(options)))


def in_words(work: Callable[[], int]) -> int:
    """Do a piece of work, and say on standard error what stopped it.

    Args:
        work: gives an exit code; it may raise what a greenkeeper can put right.

    Returns:
        Its exit code, or 1 when it was stopped.
    """
    from swardcast.errors import SwardcastError

    try:
        return work()
    except SwardcastError as error:
        print(error, file=sys.stderr)
        return NEEDS_ATTENTION
    except OSError as error:
        print(f"{error.filename or 'a file, or the output'}: {error.strerror}", file=sys.stderr)
        return NEEDS_ATTENTION
    except RuntimeError as error:
        if not str(error).startswith(_LINK_TO_ITSELF):
            raise
        print(f"{error}: a link that leads to itself; name a folder", file=sys.stderr)
        return NEEDS_ATTENTION


def main() -> NoReturn:
    """Run the command line and leave with its exit code."""
    gc.set_threshold(*_RARELY)
    _make_streams_fit()
    try:
        try:
            code = run(sys.argv[1:])
        finally:
            sys.stdout.flush()  # here, where a full disk can still be met
    except OSError as error:
        print(f"what was to be printed could not be written: {error.strerror}", file=sys.stderr)
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        code = NEEDS_ATTENTION
    sys.exit(code)


class _Unread(io.FileIO):
    """A stream that lets go of what nobody reads any more: as with `swardcast build 2>&1 | head`.

    The work goes on to its end, and the exit code tells of it.
    """

    def write(self, data: Any, /) -> int:
        """Write, or pass over what a reader that has gone does not take."""
        try:
            return super().write(data)
        except BrokenPipeError:
            return len(data)


def _make_streams_fit() -> None:
    """Give streams that are closed a place to go, and let neither a letter nor a reader that has gone end a command."""
    for number, name in enumerate(("stdin", "stdout", "stderr")):
        stream = getattr(sys, name)
        if stream is None:  # before any file of ours is opened, which would get its number
            os.dup2(os.open(os.devnull, os.O_RDWR), number)
            setattr(sys, name, open(number, "r+" if number == 0 else "w", encoding="utf-8"))  # noqa: PTH123, SIM115 - a number
        elif number and isinstance(stream, io.TextIOWrapper):  # not one in memory, as a program that calls us gives
            errors = "backslashreplace"  # where it is not UTF-8; and names of files may be any bytes
            stream.reconfigure(errors=errors)
            if not stream.isatty():
                unread, at_once = _Unread(stream.fileno(), "w", closefd=False), stream.write_through  # as by python -u
                fit = io.TextIOWrapper(
                    unread if at_once else io.BufferedWriter(unread),
                    encoding=stream.encoding,
                    errors=errors,
                    line_buffering=stream.line_buffering,
                    write_through=at_once,
                )
                setattr(sys, name, fit)


if __name__ == "__main__":
    main()
