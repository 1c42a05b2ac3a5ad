"""One build at a time, and whatever stops it, a site that stands there."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import textwrap
from pathlib import Path
from types import SimpleNamespace

import pytest

from swardcast.cli import one_build
from swardcast.cli.one_build import only_build, swap
from swardcast.errors import SwardcastError
from swardcast.pelican_files import check_output
from tests.conftest import ROOT


def _site(folder: Path, words: str) -> Path:
    folder.mkdir(parents=True)
    (folder / "index.html").write_text(words, encoding="utf-8")
    return folder


@pytest.mark.parametrize("moved", ["site", "fresh"])
def test_a_swap_that_is_interrupted_leaves_the_last_good_site(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, moved: str
) -> None:
    live, fresh = _site(tmp_path / "site", "good"), _site(tmp_path / "fresh", "new")
    rename = Path.rename

    def interrupted(path: Path, target: Path) -> Path:
        if path.name == moved:
            raise KeyboardInterrupt
        return rename(path, target)

    monkeypatch.setattr(Path, "rename", interrupted)
    with pytest.raises(KeyboardInterrupt):
        swap(fresh, live)
    assert (live / "index.html").read_text(encoding="utf-8") == "good"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["fresh", "site"]


def test_a_swap_puts_the_new_site_there_and_leaves_nothing_else(tmp_path: Path) -> None:
    swap(_site(tmp_path / "fresh", "new"), _site(tmp_path / "site", "good"))
    assert (tmp_path / "site/index.html").read_text(encoding="utf-8") == "new"
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def test_the_next_build_puts_right_what_a_killed_one_left(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _site(tmp_path / ".site.old", "good")
    _site(tmp_path / ".site.new", "half")  # a name of its own is no rule: whatever begins like that is ours
    _site(tmp_path / ".site.newx1y2/site", "half")
    _site(tmp_path / ".sites.new", "another's")
    with only_build(tmp_path / "site") as place:
        assert (tmp_path / "site/index.html").read_text(encoding="utf-8") == "good"
        held = {path.name for path in tmp_path.iterdir()}
        assert held == {"site", ".site.lock", ".sites.new", place.name}
        assert list(place.iterdir()) == []
    assert sorted(path.name for path in tmp_path.iterdir()) == [".sites.new", "site"]
    said = capsys.readouterr().err
    assert said == f"A build was stopped while it swapped sites; the one before is in {tmp_path / 'site'} again.\n"


def test_an_old_site_beside_a_live_one_is_taken_away(tmp_path: Path) -> None:
    _site(tmp_path / ".site.old", "old")
    _site(tmp_path / "site", "good")
    with only_build(tmp_path / "site"):
        pass
    assert (tmp_path / "site/index.html").read_text(encoding="utf-8") == "good"
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


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
