"""Reads broken club folders one after another, each in a process of its own that may neither run away nor grow.

One process loads the program; for each folder it makes a copy of itself (fork), limits its time on the processor and
its memory, and runs the command in there. It takes rows by name on standard input and answers with a line of JSON.
"""

from __future__ import annotations

import contextlib
import gc
import io
import json
import os
import resource
import shutil
import sys
import traceback
from dataclasses import asdict, dataclass
from pathlib import Path
from tempfile import mkdtemp

__all__ = ["MOST_MEMORY_MB", "MOST_SECONDS", "Answer"]

MOST_SECONDS = 2
"""Of the processor's time, hard: the system ends what takes longer."""
MOST_MEMORY_MB = 300
"""At most at any moment, of which the program itself has about 90."""
_NOBODY = 65534
_AS_OF = ("--as-of", "2027-09-14 09:30")


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What a command did.

    Args:
        code: its exit code; None where it was ended from outside, or raised.
        ended: how it was ended, or the traceback of what it raised, or "".
        out: what it printed.
        err: what it said.
        line: the line that is at fault, as the mutation counted it.
        changed: files that it made, changed or took away.
        memory_mb: the most memory that it had.
    """

    code: int | None
    ended: str
    out: str
    err: str
    line: int | None
    changed: list[str]
    memory_mb: int


def _tree(folder: Path) -> dict[str, tuple[int, int]]:
    found = {}
    for place, folders, files in os.walk(folder):
        for name in (*folders, *files):
            about = os.lstat(os.path.join(place, name))  # noqa: PTH118 - names may be anything
            found[f"{place}/{name}"] = about.st_mtime_ns, about.st_size
    return found


def _limited() -> None:
    resource.setrlimit(resource.RLIMIT_CPU, (MOST_SECONDS, MOST_SECONDS))
    pages = int(Path("/proc/self/statm").read_bytes().split()[0])
    most = pages * resource.getpagesize() + MOST_MEMORY_MB * 1_000_000
    resource.setrlimit(resource.RLIMIT_AS, (most, most))


def _run(arguments: list[str], pipe: int) -> None:
    """In the copy: run, tell, and end without a trace."""
    from swardcast.cli.main import run

    out, err = io.StringIO(), io.StringIO()
    code, ended = None, ""
    _limited()
    try:
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            code = run(arguments)
    except SystemExit as error:
        code = int(error.code or 0)
    except BaseException as error:  # noqa: BLE001 - whatever it is, the test has to see it
        ended = "".join(traceback.format_exception(error)[-6:])
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1000
    told = json.dumps({"code": code, "ended": ended, "out": out.getvalue(), "err": err.getvalue(), "memory_mb": memory})
    with os.fdopen(pipe, "w") as writer:
        writer.write(told)
    os._exit(0)


def _answer(arguments: list[str], folder: Path, line: int | None, *, as_nobody: bool) -> Answer:
    before = _tree(folder.parent)
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reading)
        os.chdir(folder)
        if as_nobody and os.geteuid() == 0:
            os.seteuid(_NOBODY)
        _run(arguments, writing)
    os.close(writing)
    with os.fdopen(reading) as pipe:
        told = pipe.read()
    status = os.waitpid(child, 0)[1]
    after = _tree(folder.parent)
    changed = sorted(name for name in before.keys() | after.keys() if before.get(name) != after.get(name))
    said = json.loads(told) if told else {
        "code": None, "ended": f"ended by signal {os.WTERMSIG(status)}", "out": "", "err": "", "memory_mb": 0,
    }  # fmt: skip
    return Answer(**said, line=line, changed=changed)


def main() -> None:
    """Answer until nobody asks any more."""
    from swardcast.cli.main import run
    from tests.bad_input.broken_folders import BY_NAME
    from tests.bad_input.small_demo import make_small_demo

    home = Path(mkdtemp(prefix="bad-input-"))
    home.chmod(0o755)
    try:
        whole = make_small_demo(home / "whole")
        with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
            for club in (whole, home / "nowhere"):  # so that every copy has all that it needs
                run(["check", "--club", str(club), *_AS_OF])
        gc.freeze()  # so that a copy shares what was loaded, and need not look through it
        for asked in sys.stdin:
            row = BY_NAME[json.loads(asked)]
            place = home / "case"
            club = Path(shutil.copytree(whole, place / "club"))
            if row.block:
                with (club / "club.yaml").open("a", encoding="utf-8") as file:
                    file.write(row.block)
            line = row.how(club / row.file)
            output = ("--output", "../site") if row.command[0] == "build" else ()
            answer = _answer([*row.command, "--club", ".", *_AS_OF, *output], club, line, as_nobody=row.as_nobody)
            if row.as_nobody:
                (club / row.file).chmod(0o700)
            shutil.rmtree(place)
            print(json.dumps(asdict(answer)), flush=True)
    finally:
        shutil.rmtree(home, ignore_errors=True)


if __name__ == "__main__":
    main()
