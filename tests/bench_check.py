"""Measure `swardcast check` on a club of many years: its own time, without that of starting Python with the same imports."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from statistics import median

from tests.many_years import demo_of_years

__all__ = ["own_seconds_of_check"]

_JOBS = 1000
_RUNS = 5
_CHECK = """\
import contextlib, importlib, io, sys, time
for name in sys.stdin.read().split():
    with contextlib.suppress(ImportError):
        importlib.import_module(name)
from swardcast.cli.main import main
begin = time.process_time()
with contextlib.redirect_stdout(io.StringIO()), contextlib.suppress(SystemExit):
    main()
print(time.process_time() - begin, *(name for name in sys.modules if name != "__main__"))
"""


def own_seconds_of_check(folder: Path) -> float:
    """Check a club with 1,000 jobs, some 3,600 log entries and 30 years of weather.

    Args:
        folder: where the club is written; it must not be there.

    Returns:
        Seconds of the processor from the call of the command to its end, with all that it imports imported before: the
        median of five processes.
    """
    club = str(demo_of_years(folder, notices=_JOBS))
    command = [sys.executable, "-c", _CHECK, "check", "--club", club, "--as-of", "2027-09-14 09:30"]
    loaded, taken = "", []
    for _ in range(_RUNS + 1):
        told = subprocess.run(command, input=loaded, check=True, capture_output=True, text=True).stdout
        seconds, _, loaded = told.partition(" ")
        taken.append(float(seconds))
    return median(taken[1:])  # the first found out what is imported
