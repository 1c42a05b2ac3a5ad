"""One build at a time, and whatever stops it, a site that stands there."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
import textwrap
from pathlib import Path
from types import SimpleNamespace

import pytest

from swardcast.cli import one_build
from swardcast.cli.one_build import only_build
from swardcast.errors import SwardcastError
from swardcast.pelican_files import check_output
from tests.conftest import ROOT

HOLDS = """
    import sys, time
    from pathlib import Path
    from swardcast.cli.one_build import only_build
    with only_build(Path(sys.argv[1])) as place:
        (place / "half").write_text("half")
        print("held", flush=True)
        sys.stdin.readline()
        assert (place / "half").is_file()
"""


def _holder(output: Path) -> subprocess.Popen[str]:
    process = subprocess.Popen(
        [sys.executable, "-c", textwrap.dedent(HOLDS), str(output)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": str(ROOT / "plugins")},
    )
    assert process.stdout is not None
    assert process.stdout.readline() == "held\n"
    return process


def test_a_second_build_waits_and_says_for_whom_and_harms_nothing(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    first = _holder(tmp_path / "site")
    monkeypatch.setattr(one_build, "LONGEST_WAIT_S", 0.3)
    refused = pytest.raises(SwardcastError, match=f"another build \\(process {first.pid}\\) has been writing")
    with refused, only_build(tmp_path / "site"):
        pass
    assert capsys.readouterr().err == (
        f"Another build (process {first.pid}) is writing {tmp_path / 'site'}; waiting for it.\n"
    )
    first.communicate("go\n", timeout=60)
    assert first.returncode == 0  # its folder was still there
    with only_build(tmp_path / "site"):
        assert capsys.readouterr().err == ""
    assert list(tmp_path.iterdir()) == []


def test_a_build_that_was_killed_holds_nobody_up(tmp_path: Path) -> None:
    killed = _holder(tmp_path / "site")
    killed.send_signal(signal.SIGKILL)
    killed.communicate(timeout=60)
    assert {path.name[:9] for path in tmp_path.iterdir()} == {".site.loc", ".site.new"}
    with only_build(tmp_path / "site"):
        pass
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_a_link_in_the_place_of_the_lock_is_not_followed(tmp_path: Path) -> None:
    """Where others may write beside the site, one of them could have any file of ours emptied."""
    precious = tmp_path / "precious"
    precious.write_text("kept", encoding="utf-8")
    (tmp_path / ".site.lock").symlink_to(precious)
    with pytest.raises(SwardcastError) as told, only_build(tmp_path / "site"):
        pass
    assert precious.read_text(encoding="utf-8") == "kept"
    first, then = str(told.value).splitlines()
    assert first.startswith(f"{tmp_path / '.site.lock'} is a symbolic link, and a build follows none: ")
    assert first.endswith("Nothing was published, the last good site stays.")
    assert then.endswith("Find out who put the other there, and take it away.")


def test_a_folder_in_the_place_of_the_lock_is_said_to_be_one(tmp_path: Path) -> None:
    (tmp_path / ".site.lock").mkdir()
    refused = pytest.raises(SwardcastError, match=r"\.site\.lock is a folder\. Nothing was published")
    with refused, only_build(tmp_path / "site"):
        pass
    assert [path.name for path in tmp_path.iterdir()] == [".site.lock"]


@pytest.mark.parametrize("code", [errno.EACCES, errno.EROFS, errno.ENOSPC])
def test_a_folder_in_which_nothing_can_be_made_is_named_with_what_a_build_needs(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, code: int
) -> None:
    """No hidden file of ours, of which nobody has heard."""

    def refused(*given: object) -> int:
        raise OSError(code, os.strerror(code), str(tmp_path / ".site.lock"))

    monkeypatch.setattr(os, "open", refused)
    with pytest.raises(SwardcastError) as told, only_build(tmp_path / "site"):
        pass
    first, then = str(told.value).splitlines()
    assert first == f"{tmp_path}: {os.strerror(code)}; nothing was published, the last good site stays."
    assert then.startswith(
        "A build makes the new site in this folder, beside the live one, so whoever runs it has to be"
    )


def test_a_disk_that_knows_no_locks_is_not_taken_for_another_build(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    def no_locks(descriptor: int) -> None:
        raise OSError(errno.ENOLCK, os.strerror(errno.ENOLCK))

    monkeypatch.setattr(one_build, "_lock_descriptor", no_locks)
    with pytest.raises(SwardcastError, match=os.strerror(errno.ENOLCK)), only_build(tmp_path / "site"):
        pass


def test_a_build_that_left_a_file_out_fails_before_the_swap(tmp_path: Path) -> None:
    made = ("notices/greens/index.html", "calendar.ics", "status.json")
    for name in ("index.html", "notices/index.html", "notices/greens/index.html"):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text("x", encoding="utf-8")
    pelican = SimpleNamespace(output_path=str(tmp_path), settings={"made_by_swardcast": made})
    with pytest.raises(SwardcastError, match=r"^the build left no calendar\.ics and 1 more, of 5 files$"):
        check_output(pelican)
    for name in made[1:]:
        (tmp_path / name).write_text("x", encoding="utf-8")
    check_output(pelican)
