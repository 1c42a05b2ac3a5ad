"""`swardcast build` publishes a site whole or not at all."""

from __future__ import annotations

import json
import os
import shutil
import signal
import stat
import subprocess
import sys
import time
from collections.abc import Callable
from contextlib import nullcontext
from dataclasses import dataclass
from datetime import UTC, datetime, tzinfo
from pathlib import Path

import pytest

from swardcast.cli import build
from swardcast.cli.live_site import of_another_club, refuse_older
from swardcast.errors import SwardcastError
from tests.cli.conftest import Done
from tests.conftest import ROOT, bytes_in
from tests.outlook.small_club import SmallClub

Run = Callable[..., subprocess.CompletedProcess[str]]


@dataclass(frozen=True, kw_only=True)
class Made:
    """A club, its site of the 14th and of the 15th of September, and how long the last build took."""

    club: Path
    old: Path
    new: Path
    seconds: float


@pytest.fixture(scope="module")
def made(run_swardcast: Run, tmp_path_factory: pytest.TempPathFactory) -> Made:
    folder = tmp_path_factory.mktemp("made")
    club = SmallClub(folder / "club")
    club.job("cores", "09-20")
    for day in ("14", "15"):
        begun = time.monotonic()
        done = _build(run_swardcast, club.folder, folder / day, day)
        assert done.returncode == 0, done.stderr
    return Made(club=club.folder, old=folder / "14", new=folder / "15", seconds=time.monotonic() - begun)


@pytest.fixture
def live(made: Made, tmp_path: Path) -> Path:
    """The site of the 14th, live."""
    return Path(shutil.copytree(made.old, tmp_path / "site"))


def _build(run: Run, club: Path, output: Path, day: str = "14", *more: str) -> subprocess.CompletedProcess[str]:
    given = ("--club", str(club), "--output", str(output), "--as-of", f"2027-09-{day} 09:30")
    return run("build", *given, *more)


def test_a_site_that_does_not_hold_together_is_not_published(
    made: Made, live: Path, run_swardcast: Run, tmp_path: Path
) -> None:
    """A template of the club's own that leaves every notice empty, and has a link that leads nowhere."""
    club = Path(shutil.copytree(made.club, tmp_path / "club"))
    (club / "templates").mkdir()
    (club / "templates/article.html").write_text(
        '{% extends "!theme/article.html" %}{% block content %}<a href="../map.html">A map</a>{% endblock %}', "utf-8"
    )
    done = _build(run_swardcast, club, live, "15")
    assert done.returncode == 1
    assert done.stdout == ""
    assert done.stderr.splitlines()[-3:] == [
        "The site was built, but does not hold together; nothing was published, the last good site stays.",
        "  notices/cores/index.html: links to '../map.html', where nothing is",
        "  notices/cores/index.html: is a notice without words",
    ]
    assert bytes_in(live) == bytes_in(made.old)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["club", "site"]


def test_the_site_before_comes_back_and_goes_again(made: Made, live: Path, run_swardcast: Run) -> None:
    done = _build(run_swardcast, made.club, live, "14", "--back")
    assert done.returncode == 1
    assert done.stderr == f"there is no site before the one in {live}; each build keeps the one that it replaces\n"
    assert _build(run_swardcast, made.club, live, "15").returncode == 0
    assert bytes_in(live) == bytes_in(made.new)
    done = _build(run_swardcast, made.club, live, "15", "--back")
    assert done.returncode == 0
    assert done.stderr.startswith("The site before is live again; it is of 2027-09-14T09:30:00+01:00.")
    assert bytes_in(live) == bytes_in(made.old)
    assert _build(run_swardcast, made.club, live, "15", "--back").returncode == 0
    assert bytes_in(live) == bytes_in(made.new)


@pytest.mark.parametrize(
    ("page", "said"),
    [
        ("Words.\n", "extra.md: could not find information about 'title'"),
        ("Title: A\nDate: never\n\nWords.\n", "extra.md ('never' is not a valid date)"),
        ("Title: A\nSave_as: ../../x.html\n\nWords.\n", "extra.md: file '../../x.html' would be written outside output path"),
        ("Title: A\nTemplate: ../../x\n\nWords.\n", "unable to load ../../x[.html]"),
    ],
)  # fmt: skip
def test_what_pelican_cannot_make_of_a_page_is_told_with_its_reason(
    made: Made, live: Path, swardcast: Callable[..., Done], tmp_path: Path, page: str, said: str
) -> None:
    club = Path(shutil.copytree(made.club, tmp_path / "club"))
    shutil.copytree(ROOT / "site_src/content/pages/en-GB", club / "pages")
    (club / "pages/extra.md").write_text(page, encoding="utf-8")
    asked = ("--club", str(club), "--output", str(live), "--as-of", "2027-09-15 09:30")
    done = swardcast("build", *asked)
    assert (done.code, done.out) == (1, "")
    (told,) = [line for line in done.err.splitlines() if line.startswith("the site could not be built: ")]
    assert said in told
    assert bytes_in(live) == bytes_in(made.old)


@pytest.mark.parametrize("lost", ["notices/index.html", "status.json", ".made-by-swardcast status.json"])
def test_a_site_before_of_which_something_was_lost_does_not_come_back(
    made: Made, live: Path, swardcast: Callable[..., Done], lost: str
) -> None:
    before = Path(shutil.copytree(made.new, live.with_name(".site.before")))
    for name in lost.split():
        (before / name).unlink()
    done = swardcast("build", "--club", str(made.club), "--output", str(live), "--back")
    assert done.code == 1
    last = lost.rsplit(maxsplit=1)[-1]
    assert done.err == (
        f"{before} is not whole any more: {last} missing. Nothing was changed, the live site stays."
        " Build anew instead.\n"
    )
    assert bytes_in(live) == bytes_in(made.old)


def test_a_clock_that_stands_before_the_live_site_builds_nothing(
    made: Made, live: Path, swardcast: Callable[..., Done], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A small machine without a battery begins in 1970. The live site is of 9:30am on the 14th."""
    monkeypatch.setattr(build, "datetime", _Clock)
    asked = ("build", "--club", str(made.club), "--output", str(live))
    _Clock.says = datetime(1970, 1, 1, 0, 1, tzinfo=UTC)
    done = swardcast(*asked)
    assert (done.code, done.out) == (1, "")
    assert done.err == (
        f"the clock of this machine says 1970-01-01 01:01, and the live site in {live}, of Saltmarsh Ladder Golf Club, is of"
        " 2027-09-14 09:30. Nothing was published, the live site stays.\nSet the clock right. Or, if the live site was"
        " built to look ahead, name the moment: --as-of '1970-01-01 01:01'; if it is another club's, name another"
        " --output.\n"
    )
    assert bytes_in(live) == bytes_in(made.old)


class _Clock(datetime):
    """A clock that says what it is told to."""

    says: datetime

    @classmethod
    def now(cls, tz: tzinfo | None = None) -> datetime:  # type: ignore[override]
        return cls.says.astimezone(tz)


@pytest.mark.parametrize(("now", "refused"), [("2027-09-13T09:29+01:00", True), ("2027-09-13T09:30+01:00", False)])
def test_clocks_may_differ_by_a_day(live: Path, now: str, *, refused: bool) -> None:
    with pytest.raises(SwardcastError) if refused else nullcontext():
        refuse_older(live, datetime.fromisoformat(now))


def test_a_clock_in_winter_is_told_by_the_time_of_winter(live: Path) -> None:
    """The live site is of a day in September, an hour before the time by which London goes in November."""
    with pytest.raises(SwardcastError, match=r"(?s)says 2026-11-27 01:34, .*--as-of '2026-11-27 01:34';") as told:
        refuse_older(live, datetime(2026, 11, 27, 1, 34, tzinfo=UTC))
    assert "is of 2027-09-14 09:30" in str(told.value)


@pytest.mark.parametrize("zone", [None, 7, "", "Europe", "Europe/Londn", "../x"])
def test_a_live_site_of_no_known_zone_is_told_by_its_own_moment(tmp_path: Path, zone: object) -> None:
    told = {"as_of": "2027-09-14T09:30:00+01:00", "club": {"time_zone": zone}}
    (tmp_path / "status.json").write_text(json.dumps(told), encoding="utf-8")
    with pytest.raises(SwardcastError, match="says 2026-11-27 02:34, and"):
        refuse_older(tmp_path, datetime(2026, 11, 27, 1, 34, tzinfo=UTC))


@pytest.mark.parametrize("told", ["", "{", "[]", '{"as_of": 7}', '{"as_of": "2099-01-01T00:00:00"}'])
def test_a_live_site_that_tells_no_moment_holds_nothing_up(tmp_path: Path, told: str) -> None:
    (tmp_path / "status.json").write_text(told, encoding="utf-8")
    refuse_older(tmp_path, datetime(2027, 9, 14, tzinfo=UTC))


def test_a_site_in_the_place_of_another_clubs_is_pointed_out(live: Path, made: Made, tmp_path: Path) -> None:
    """One that only has another name, or another address, is the same club's."""
    assert list(of_another_club(live, made.new)) == []
    assert list(of_another_club(tmp_path / "none", made.new)) == []
    told = json.loads((made.new / "status.json").read_bytes())
    were, at = told["club"]["name"], told["site"]
    other = tmp_path / "other"
    other.mkdir()
    for name, site, pointed_out in (("Other", at, False), (were, "https://other.example/", False), ("Other", "https://other.example/", True)):  # fmt: skip
        changed = {**told, "club": {**told["club"], "name": name}, "site": site}
        (other / "status.json").write_text(json.dumps(changed), encoding="utf-8")
        remark = (
            f"{live} was the site of {were} ({at}) and is that of Other (https://other.example/) now. If that is a"
            " mistake, the same command with --back brings it back."
        )
        assert list(of_another_club(live, other)) == [remark] * pointed_out


def test_a_build_through_a_symbolic_link_fills_the_folder_that_it_leads_to(
    made: Made, run_swardcast: Run, tmp_path: Path
) -> None:
    (tmp_path / "served").mkdir()
    link = tmp_path / "site"
    link.symlink_to("served")
    assert _build(run_swardcast, made.club, link).returncode == 0
    assert link.is_symlink()
    assert bytes_in(tmp_path / "served") == bytes_in(made.old)


def test_whoever_may_read_what_the_manager_writes_may_read_the_site(made: Made) -> None:
    mask = os.umask(0o022)
    os.umask(mask)
    for path in (made.old, *made.old.rglob("*")):
        wanted = (0o777 if path.is_dir() else 0o666) & ~mask
        assert stat.S_IMODE(path.stat().st_mode) & 0o444 == wanted & 0o444, path


DISK = (
    "{top}/disk is a disk of its own, or mounted like one, and cannot change places with a new site; name a folder on it."
    " Nothing was published.\n"
)


@pytest.mark.parametrize(
    ("output", "says"),
    [
        (
            "club/site",
            "the site cannot go into the club folder {top}/club; name a folder outside, such as {top}/site\n",
        ),
        ("club", "the site cannot go into the club folder {top}/club; name a folder outside, such as {top}/site\n"),
        (
            ".",
            "the site cannot go to {top}: the club folder {top}/club lies in it, and would be replaced; name another\n",
        ),
        ("club.zip", "{top}/club.zip is a file; the site needs a folder\n"),
        ("photos", "{top}/photos holds files that are no Swardcast site; name another folder or empty it yourself\n"),
        ("disk", DISK),
    ],
)
def test_a_place_where_a_site_would_do_harm_is_refused_before_anything_is_done(
    swardcast: Callable[..., Done], monkeypatch: pytest.MonkeyPatch, tmp_path: Path, output: str, says: str
) -> None:
    for folder in ("club", "photos", "disk"):
        (tmp_path / folder).mkdir()
    for file in ("club.zip", "photos/a.jpg"):
        (tmp_path / file).write_bytes(b"ours")
    monkeypatch.setattr(os.path, "ismount", lambda path: Path(path).name == "disk")
    before = sorted(tmp_path.rglob("*"))
    done = swardcast("build", "--club", str(tmp_path / "club"), "--output", str(tmp_path / output))
    assert done == Done(1, "", says.format(top=tmp_path))
    assert sorted(tmp_path.rglob("*")) == before


KILLS = int(os.environ.get("SWARDCAST_KILLS", "4"))
"""Builds of a whole site that are killed; each of the steps of a swap is in test_swapping.py."""


def test_a_build_that_is_killed_leaves_the_old_site_or_the_new_one(made: Made, live: Path, tmp_path: Path) -> None:
    sites = [bytes_in(made.old), bytes_in(made.new)]
    command = [sys.executable, "-m", "swardcast.cli", "build", "--club", str(made.club), "--output", str(live)]
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "plugins"), "XDG_CACHE_HOME": str(tmp_path / "cache")}
    for number in range(KILLS):
        process = subprocess.Popen(
            [*command, "--as-of", "2027-09-15 09:30"],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            env=environment,
        )
        time.sleep(made.seconds * (number + 0.5) / KILLS)
        process.send_signal(signal.SIGKILL)
        process.wait()
        assert bytes_in(live) in sites
    subprocess.run([*command, "--as-of", "2027-09-15 09:30"], check=True, capture_output=True, env=environment)
    assert bytes_in(live) == sites[1]
    assert {path.name for path in tmp_path.iterdir()} == {"site", "cache", ".site.before"}


MOUNTED_ITSELF = """
set -e
mkdir "$1/disk"
mount --bind "$1/old" "$1/disk"
shift
"$@" || echo "exit $?"
"""


def test_a_live_folder_that_is_mounted_itself_is_told_and_nothing_is_left(made: Made, tmp_path: Path) -> None:
    """As a container has it, with a folder of the same disk: only the swap itself can tell."""
    unshare = _unshare()
    shutil.copytree(made.old, tmp_path / "old")
    command = [sys.executable, "-m", "swardcast.cli", "build", "--club", str(made.club), "--output", f"{tmp_path}/disk"]
    done = subprocess.run(
        [unshare, "-rm", "sh", "-c", MOUNTED_ITSELF, "sh", str(tmp_path), *command, "--as-of", "2027-09-15 09:30"],
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(ROOT / "plugins"), "XDG_CACHE_HOME": str(made.club.parent / "cache")},
    )
    assert done.stdout == "exit 1\n"
    assert done.stderr.endswith(DISK.format(top=tmp_path))
    assert bytes_in(tmp_path / "old") == bytes_in(made.old)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["disk", "old"]


def _unshare() -> str:
    """The command by which a process has file systems of its own, where the machine lets us mount one."""
    unshare = shutil.which("unshare")
    if unshare is None or subprocess.run([unshare, "-rm", "true"], capture_output=True, check=False).returncode:
        pytest.skip("this machine lets nobody mount a file system of his own")
    return unshare


MOUNTED = """
set -e
mkdir "$1/disk"
mount -t tmpfs -o size="$2" none "$1/disk"
cp -r "$1/old" "$1/disk/site"
if [ "$3" = read-only ]; then mount -o remount,ro "$1/disk"; fi
shift 3
"$@" || echo "exit $?"
diff -r "$OLD" "$DISK/site" && echo "the old site is whole"
ls -A "$DISK"
"""


@pytest.mark.parametrize(("size", "mode", "says"), [("700k", "full", "No space left on device"),
                                                    ("90m", "read-only", "Read-only file system")])  # fmt: skip
def test_a_full_disk_or_one_that_cannot_be_written_leaves_the_old_site(
    made: Made, tmp_path: Path, size: str, mode: str, says: str
) -> None:
    """On a file system of its own."""
    unshare = _unshare()
    old, disk = tmp_path / "old", tmp_path / "disk"
    for kept in ("feeds", "notices"):  # enough of a site to know one by, so that the new one does not fit beside it
        shutil.copytree(made.old / kept, old / kept)
    command = [sys.executable, "-m", "swardcast.cli", "build", "--club", str(made.club), "--output", f"{disk}/site"]
    done = subprocess.run(
        [unshare, "-rm", "sh", "-c", MOUNTED, "sh", str(tmp_path), size, mode, *command, "--as-of", "2027-09-15 09:30"],
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(ROOT / "plugins"), "OLD": str(old), "DISK": str(disk),
             "XDG_CACHE_HOME": str(tmp_path / "cache")},
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert done.stdout == "exit 1\nthe old site is whole\nsite\n"
    assert f"{says}; nothing was published, the last good site stays" in done.stderr
    assert "Traceback" not in done.stderr
