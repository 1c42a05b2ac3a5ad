"""Exit codes mean something, results and talk go separate ways, help costs nothing."""

from __future__ import annotations

import json
import os
import shlex
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from swardcast import __version__
from swardcast.cli.main import COMMANDS
from tests.cli.conftest import Done
from tests.conftest import DEMO, ROOT
from tests.outlook.small_club import SmallClub

HEAVY = (
    "pelican",
    "numpy",
    "scipy",
    "pydantic",
    "yaml",
    "jinja2",
    "markdown",
    "feedgen",
    "httpx",
    "drawsvg",
    "swardcast.reading",
    "swardcast.turf",
)
LISTED = "Commands: start, log, check, weather, build, fleet, outlook, explain, compare, dates, sand, report, reckon, backtest\n"


@pytest.mark.parametrize("words", [["--help"], ["-h"], ["help"]])
def test_help_is_a_result_and_lists_every_command(swardcast: Callable[..., Done], words: list[str]) -> None:
    done = swardcast(*words)
    assert (done.code, done.err) == (0, "")
    assert all(f"\n  {name} " in done.out for name in COMMANDS)
    assert "Example:\n  swardcast start my-club" in done.out


def test_no_command_at_all_is_wrong_usage_and_shows_the_help(swardcast: Callable[..., Done]) -> None:
    done = swardcast()
    assert done.code == 2
    assert "usage: swardcast COMMAND" in done.out + done.err


@pytest.mark.parametrize("word", ["--version", "-V"])
def test_the_version_is_told(swardcast: Callable[..., Done], word: str) -> None:
    assert swardcast(word) == Done(0, f"swardcast {__version__}\n", "")


@pytest.mark.parametrize(
    ("words", "is_published"),
    [
        ("check --club {club}", False),
        ("outlook --club {club}", False),
        ("reckon healing --temperatures {file} --start 2027-08-23 --hollow '12.7 mm at 50.8 x 50.8 mm'", False),
        ("backtest --history {file}", False),
        ("build --club {club} --output {club}/../site", True),
    ],
)
def test_only_a_command_that_publishes_says_that_nothing_was_published(
    words: str, is_published: bool, swardcast: Callable[..., Done], tmp_path: Path
) -> None:
    (tmp_path / "club").mkdir()
    file = tmp_path / "days.csv"
    file.write_text("date,tmean_c\n2027-08-23,15\n2027-08-23,25\n", encoding="utf-8")
    done = swardcast(*shlex.split(words.format(club=tmp_path / "club", file=file)))
    assert done.code == 1
    last = done.err.splitlines()[-1]
    assert "attention" in last
    assert last.endswith("; nothing was published." if is_published else "attention.")


@pytest.mark.parametrize("command", sorted(COMMANDS))
def test_the_help_of_a_command_says_what_it_does_and_gives_an_example(
    swardcast: Callable[..., Done], command: str
) -> None:
    done = swardcast(command, "--help")
    assert (done.code, done.err) == (0, "")
    assert COMMANDS[command].lower() in " ".join(done.out.lower().split())
    assert f"Example:\n  swardcast {command}" in done.out


@pytest.mark.parametrize("name", ["tines", "grooves", "sand", "healing"])
def test_the_help_of_a_sum_gives_an_example_and_its_defaults(swardcast: Callable[..., Done], name: str) -> None:
    done = swardcast("reckon", name, "--help")
    assert (done.code, done.err) == (0, "")
    assert f"Example:\n  swardcast reckon {name}" in done.out
    assert "(default: " in done.out


@pytest.mark.parametrize(
    ("typed", "nearest"),
    [("chekc", "check"), ("outlok", "outlook"), ("strat", "start"), ("recon", "reckon"), ("Explain", "explain")],
)
def test_a_command_misspelt_is_wrong_usage_and_the_nearest_is_named(
    swardcast: Callable[..., Done], typed: str, nearest: str
) -> None:
    said = f"swardcast: no command {typed!r}. Did you mean {nearest!r}?\n{LISTED}"
    assert swardcast(typed) == Done(2, "", said)


def test_a_word_near_to_no_command_brings_the_list_of_them(swardcast: Callable[..., Done]) -> None:
    done = swardcast("xyz")
    assert (done.code, done.out) == (2, "")
    assert done.err.endswith(LISTED)
    assert "Did you mean" not in done.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["check", "--bogus"], "swardcast check: error: unrecognized arguments: --bogus"),
        (["report", "--month", "9999-12"], "argument --month: found '9999-12'; expected a month such as '2027-09'"),
        (["sand", "--year", "9999"], "argument --year: found '9999'; expected a year such as '2027'"),
        (
            ["compare", "--week", "9999-W52"],
            "argument --week: found '9999-W52'; expected a week of the years 1900 to 2200",
        ),
        (["explain"], "swardcast explain: error: one of the arguments SURFACE --notice is required"),
        (["reckon"], "swardcast reckon: error: the following arguments are required: SUM"),
        (["reckon", "hole"], "swardcast reckon: error: argument SUM: invalid choice: 'hole'"),
        (["outlook", "--clu", "x"], "swardcast outlook: error: unrecognized arguments: --clu x"),
    ],
)
def test_wrong_usage_ends_with_2_and_says_what_is_wrong(
    swardcast: Callable[..., Done], words: list[str], said: str
) -> None:
    done = swardcast(*words)
    assert (done.code, done.out) == (2, "")
    assert said in done.err


@pytest.mark.parametrize("command", ["check", "outlook", "build"])
def test_a_missing_club_folder_ends_with_1_and_names_the_way_out(
    swardcast: Callable[..., Done], command: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    nowhere = tmp_path_factory.mktemp("empty") / "nowhere"
    output = ["--output", str(nowhere.with_name("site"))] if command == "build" else []
    done = swardcast(command, "--club", str(nowhere), *output)
    assert (done.code, done.out) == (1, "")
    assert "found no such folder; expected a club folder; 'swardcast start DIR' makes one" in done.err
    assert list(nowhere.parent.iterdir()) == []


@pytest.mark.parametrize("words", [["--help"], ["--version"], ["chekc"], []])
def test_help_and_refusals_load_nothing_heavy(words: list[str]) -> None:
    program = f"import sys\nfrom swardcast.cli.main import run\nrun({words!r})\nprint('LOADED', *sorted(sys.modules))\n"
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True, cwd=ROOT / "plugins"
    )
    loaded = done.stdout.rpartition("LOADED ")[2].split()
    assert "swardcast.cli.main" in loaded
    assert [name for name in HEAVY if name in loaded] == []


CHECK = ("-m", "swardcast.cli", "check", "--club", str(DEMO), "--as-of", "2027-09-14 09:30", "--json")
CONNECT = ("-c", "import swardcast; swardcast.register()")  # as Pelican does


@pytest.mark.parametrize(
    ("zone", "words"),
    [("{file}", CHECK), (":{file}", CHECK), ("{folder}", CHECK), ("Nowhere/At_All", CHECK), ("{file}", CONNECT)],
)
def test_a_time_zone_of_the_machine_that_is_none_stops_nothing(
    zone: str, words: tuple[str, ...], tmp_path: Path
) -> None:
    """A club has a zone of its own, so that nothing is said of it."""
    file = tmp_path / "hosts"
    file.write_text("127.0.0.1 localhost\n", encoding="utf-8")
    done = subprocess.run(
        [sys.executable, *words],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT / "plugins",
        env={**os.environ, "TZ": zone.format(file=file, folder=tmp_path)},
    )
    assert (done.returncode, done.stderr) == (0, "")


def test_the_module_ends_with_the_exit_code_of_its_command() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "swardcast.cli", "check", "--club", str(DEMO / "log")],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT / "plugins",
    )
    assert (done.returncode, done.stdout) == (1, "")
    assert "club.yaml\n  the file: found no such file" in done.stderr


@pytest.mark.parametrize("words", [["--help"], ["check", "--club", str(DEMO), "--as-of", "2027-09-14"]])
def test_a_reader_that_goes_away_is_no_fault(words: list[str]) -> None:
    """As with `swardcast check | true`: the results go through a buffer, as they do unless the machine forbids it."""
    buffered = {name: value for name, value in os.environ.items() if name != "PYTHONUNBUFFERED"}
    program = [sys.executable, "-m", "swardcast.cli", *words]
    with subprocess.Popen(
        program, stdout=subprocess.PIPE, stderr=subprocess.PIPE, cwd=ROOT / "plugins", env=buffered
    ) as running:
        assert running.stdout is not None
        assert running.stderr is not None
        running.stdout.close()
        said = running.stderr.read()
    assert (running.returncode, said) == (0, b"")


def test_a_build_of_whose_talk_nobody_reads_the_end_goes_on_to_its_own(tmp_path: Path) -> None:
    """As with `swardcast build 2>&1 | head -1`: the site is live when the exit code says so."""
    club = SmallClub(tmp_path / "club")
    club.job("cores", "09-20", more="    own words: It takes 2-3 days.\n")
    words = ["build", "--club", str(club.folder), "--output", str(tmp_path / "site"), "--as-of", "2027-09-14 09:30"]
    program = [sys.executable, "-m", "swardcast.cli", *words]
    with subprocess.Popen(
        program, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, cwd=ROOT / "plugins", env=os.environ
    ) as running:
        assert running.stdout is not None
        running.stdout.close()
    assert running.returncode == 0
    assert (tmp_path / "site/status.json").is_file()


def _told(words: list[str], *, streams: str = "", **more: str) -> subprocess.CompletedProcess[str]:
    """A command as a shell runs it, with what stands behind it on its line."""
    program = shlex.join([sys.executable, "-m", "swardcast.cli", *words])
    environment = {**os.environ, **more}
    return subprocess.run(
        ["sh", "-c", f"{program} {streams}"],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT / "plugins",
        env=environment,
    )


CHECKED = ["check", "--club", str(DEMO), "--as-of", "2027-09-14"]
POSIX = pytest.mark.skipif(sys.platform == "win32", reason="a shell of POSIX")


@POSIX
@pytest.mark.parametrize("closed", [">&-", "2>&-", "<&-", ">&- 2>&- <&-"])
def test_a_stream_that_is_closed_is_no_fault(closed: str) -> None:
    """As a timer may start a command: Python has no stream then, and the next file would get its number."""
    done = _told(CHECKED, streams=closed)
    assert (done.returncode, done.stderr) == (0, "")
    assert bool(done.stdout) == (not closed.startswith(">"))


@POSIX
@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="a device of Linux")  # noqa: PTH110 - no file of ours
@pytest.mark.parametrize("words", [["--help"], CHECKED])
def test_a_disk_too_full_for_the_results_is_told(words: list[str]) -> None:
    done = _told(words, streams="> /dev/full")
    assert done.returncode == 1
    assert done.stderr.splitlines() == [done.stderr.strip()]
    assert done.stderr.endswith(": No space left on device\n")


@POSIX
def test_letters_that_the_output_cannot_hold_are_escaped_and_end_nothing() -> None:
    """As on a terminal or in a pipe of another encoding than UTF-8; a minus (U+2212) must not be lost from a number."""
    words = ["sand", "--club", str(DEMO), "--as-of", "2027-09-14 09:30"]
    done = _told(words, PYTHONIOENCODING="ascii")
    assert done.returncode == 0, done.stderr
    assert "\\u22128.2" in done.stdout
    as_json = _told([*words, "--json"], PYTHONIOENCODING="ascii")
    assert json.loads(as_json.stdout) == json.loads(_told([*words, "--json"]).stdout)


@pytest.mark.parametrize("words", [["check", "--club"], ["build", "--club"], ["build", "--output"]])
def test_a_link_to_itself_is_told(swardcast: Callable[..., Done], tmp_path: Path, words: list[str]) -> None:
    link = tmp_path / "link"
    link.symlink_to("link")
    done = swardcast(*words, str(link))
    assert (done.code, done.out) == (1, "")
    assert "link" in done.err
    assert [path.name for path in tmp_path.iterdir()] == ["link"]


def test_a_notice_of_no_name_is_one_that_there_is_not(swardcast: Callable[..., Done]) -> None:
    """As from a script that fills in a name which it does not have."""
    done = swardcast("explain", "--notice", "", "--club", str(DEMO), "--as-of", "2027-05-10 12:00")
    assert (done.code, done.out) == (1, "")
    assert done.err.startswith("no notice ''; expected one of: ")


def test_a_program_that_gives_a_stream_in_memory_gets_what_the_command_says() -> None:
    called = (
        "import contextlib, io, sys\n"
        "from swardcast.cli.main import main\n"
        "said = io.StringIO()\n"
        "with contextlib.redirect_stdout(said), contextlib.suppress(SystemExit):\n"
        "    main()\n"
        "print(said.getvalue().upper())\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", called, "--help"], check=False, capture_output=True, text=True, encoding="utf-8"
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert "CHECK" in done.stdout
