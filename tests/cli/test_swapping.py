"""The live site is the old one or the new one, whole, whatever stops a build; and the one before is kept."""

from __future__ import annotations

import ctypes
import errno
import os
import signal
import stat
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

from swardcast.cli import exchange as exchange_module
from swardcast.cli import swapping
from swardcast.cli.exchange import exchange
from swardcast.cli.one_build import only_build
from swardcast.cli.swapping import go_back, swap, take_away
from swardcast.errors import SwardcastError
from tests.conftest import ROOT


def _site(folder: Path, words: str) -> Path:
    folder.mkdir(parents=True)
    (folder / "index.html").write_text(words, encoding="utf-8")
    return folder


def _live(folder: Path) -> str:
    return (folder / "index.html").read_text(encoding="utf-8")


def _cannot(one: Path, other: Path) -> bool:
    return False


@pytest.fixture(params=["in one step", "in two"])
def steps(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    """With and without a system that lets two folders change places."""
    if request.param == "in two":
        monkeypatch.setattr(swapping, "exchange", _cannot)
    return str(request.param)


def test_two_folders_change_places_in_one_step_here(tmp_path: Path) -> None:
    one, other = _site(tmp_path / "one", "1"), _site(tmp_path / "other", "2")
    assert exchange(one, other)
    assert (_live(one), _live(other)) == ("2", "1")


def test_a_system_without_such_a_step_says_so_and_does_nothing(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    one, other = _site(tmp_path / "one", "1"), _site(tmp_path / "other", "2")
    monkeypatch.setattr(exchange_module, "_function", lambda: None)
    assert not exchange(one, other)

    def refused(*given: object) -> int:
        ctypes.set_errno(errno.EINVAL)
        return -1

    monkeypatch.setattr(exchange_module, "_function", lambda: refused)
    assert not exchange(one, other)
    assert _live(one) == "1"


def test_a_step_that_the_system_refuses_is_an_error_that_names_the_folder(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError, match="other"):
        exchange(_site(tmp_path / "one", "1"), tmp_path / "other")


def test_the_site_that_was_live_is_kept_and_can_come_back_and_go_again(steps: str, tmp_path: Path) -> None:
    live = tmp_path / "site"
    for words in ("first", "second", "third"):
        swap(_site(tmp_path / "fresh", words), live)
        assert _live(live) == words
    assert sorted(path.name for path in tmp_path.iterdir()) == [".site.before", "site"]
    go_back(live)
    assert _live(live) == "second"
    go_back(live)
    assert _live(live) == "third"
    assert sorted(path.name for path in tmp_path.iterdir()) == [".site.before", "site"]


def test_without_a_site_before_there_is_nothing_to_go_back_to(tmp_path: Path) -> None:
    swap(_site(tmp_path / "fresh", "first"), tmp_path / "site")
    with pytest.raises(SwardcastError, match="there is no site before the one in"):
        go_back(tmp_path / "site")


@pytest.mark.parametrize("moved", [".site.next-", "site"])
def test_a_swap_in_two_steps_that_is_interrupted_leaves_the_last_good_site(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, moved: str
) -> None:
    live, fresh = _site(tmp_path / "site", "good"), _site(tmp_path / "fresh", "new")
    rename = Path.rename

    def interrupted(path: Path, target: Path) -> Path:
        if path.name.startswith(moved):
            raise KeyboardInterrupt
        return rename(path, target)

    monkeypatch.setattr(swapping, "exchange", _cannot)
    monkeypatch.setattr(Path, "rename", interrupted)
    with pytest.raises(KeyboardInterrupt):
        swap(fresh, live)
    monkeypatch.undo()
    assert _live(live) == "good"
    with only_build(live):
        pass
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def test_the_next_build_puts_right_what_a_killed_one_left(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _site(tmp_path / ".site.old", "good")
    _site(tmp_path / ".site.new-x1y2/site", "half")
    _site(tmp_path / ".site.new.lock", "another's")
    _site(tmp_path / ".sites.next-1", "another's")
    with only_build(tmp_path / "site") as place:
        assert _live(tmp_path / "site") == "good"
        assert list(place.iterdir()) == []
    assert sorted(path.name for path in tmp_path.iterdir()) == [".site.new.lock", ".sites.next-1", "site"]
    said = capsys.readouterr().err
    assert said == f"A build was stopped while it swapped sites; the one before is in {tmp_path / 'site'} again.\n"


@pytest.mark.parametrize("name", [".site.old", ".site.next-1"])
def test_the_site_that_was_live_when_a_build_was_killed_is_the_one_before(tmp_path: Path, name: str) -> None:
    _site(tmp_path / "site", "new")
    _site(tmp_path / name, "old")
    _site(tmp_path / ".site.before", "older")
    with only_build(tmp_path / "site"):
        pass
    assert sorted(path.name for path in tmp_path.iterdir()) == [".site.before", "site"]
    go_back(tmp_path / "site")
    assert _live(tmp_path / "site") == "old"


def test_a_new_site_that_never_went_live_is_taken_away(tmp_path: Path) -> None:
    _site(tmp_path / "site", "old")
    fresh = _site(tmp_path / "fresh", "new")
    fresh.rename(tmp_path / f".site.next-{fresh.stat().st_ino}")
    with only_build(tmp_path / "site"):
        pass
    assert [path.name for path in tmp_path.iterdir()] == ["site"]
    assert _live(tmp_path / "site") == "old"


KILLED = """
    import os, signal, sys
    from pathlib import Path
    output, last = Path(sys.argv[1]), int(sys.argv[2])
    from swardcast.cli import swapping
    from swardcast.cli.one_build import only_build
    if len(sys.argv) > 3:
        swapping.exchange = lambda one, other: False
    seen = 0
    def count(event, arguments):
        global seen
        if event.startswith(("open", "os.", "shutil.", "ctypes.")):
            seen += 1
            if seen == last:
                os.kill(os.getpid(), signal.SIGKILL)
    sys.addaudithook(count)
    with only_build(output) as place:
        fresh = place / "site"
        for number in range(6):
            (fresh / str(number)).mkdir(parents=True)
            (fresh / str(number) / "index.html").write_text("new")
        (fresh / "index.html").write_text("new")
        swapping.swap(fresh, output)
    print(seen)
"""


def _killed(output: Path, last: int, *more: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-I", "-c", f"import sys; sys.path.insert(0, {str(ROOT / 'plugins')!r})\n{textwrap.dedent(KILLED)}",
         str(output), str(last), *more],
        capture_output=True,
        text=True,
        check=False,
    )  # fmt: skip


def _whole(site: Path) -> str:
    """The words of a site, all of whose files say the same."""
    words = {path.read_text(encoding="utf-8") for path in site.rglob("*.html")}
    assert len(words) == 1
    assert len(list(site.rglob("*.html"))) == 7
    return words.pop()


def _old_site(output: Path) -> None:
    for place in ("", *map(str, range(6))):
        (output / place).mkdir(parents=True, exist_ok=True)
        (output / place / "index.html").write_text("old", encoding="utf-8")
    before = output.with_name(f".{output.name}.before")
    for number in range(8):
        _site(before / str(number), "older")


def test_killed_at_any_of_its_steps_a_build_leaves_the_old_site_or_the_new_one_whole(tmp_path: Path) -> None:
    """Every step that the system is asked for, from the lock to the last folder that is taken away; at least 50."""
    _old_site(tmp_path / "count/site")
    steps = int(_killed(tmp_path / "count/site", 0).stdout)
    assert steps >= 50
    found = []
    for last in range(1, steps + 1):
        output = tmp_path / f"{last}/site"
        _old_site(output)
        done = _killed(output, last)
        assert done.returncode == -signal.SIGKILL, done.stderr
        found.append(_whole(output))
        with only_build(output):
            pass
        left = {path.name for path in output.parent.iterdir()}
        assert left <= {"site", ".site.before"}
        assert _whole(output) == found[-1]
        if found[-1] == "new":
            go_back(output)
            assert _whole(output) == "old"
    turn = found.index("new")
    assert found == ["old"] * turn + ["new"] * (steps - turn)
    assert 0 < turn < steps


def test_without_such_a_step_of_the_system_the_next_build_brings_the_old_site_back(tmp_path: Path) -> None:
    _old_site(tmp_path / "count/site")
    steps = int(_killed(tmp_path / "count/site", 0, "in two").stdout)
    gone = 0
    for last in range(steps - 45, steps + 1):
        output = tmp_path / f"{last}/site"
        _old_site(output)
        _killed(output, last, "in two")
        gone += not output.exists()
        with only_build(output):
            pass
        assert _whole(output) in ("old", "new")
    assert 0 < gone <= 2


def test_the_new_site_has_the_mode_of_the_live_folder(tmp_path: Path) -> None:
    live = _site(tmp_path / "site", "old")
    live.chmod(0o2775)
    swap(_site(tmp_path / "fresh", "new"), live)
    assert stat.S_IMODE(live.stat().st_mode) == 0o2775


def test_whoever_may_read_the_live_folder_may_read_all_of_the_new_site(steps: str, tmp_path: Path) -> None:
    """A timer's umask of 077 would else leave the web server a site that it may not read."""
    live = _site(tmp_path / "site", "old")
    live.chmod(0o755)
    fresh = _site(tmp_path / "fresh", "new")
    _site(fresh / "notices", "notice")
    (fresh / "link").symlink_to("nowhere")
    (fresh / "tool").write_text("a tool", encoding="utf-8")
    for name, mode in (("notices", 0o700), ("notices/index.html", 0o600), ("index.html", 0o644), ("tool", 0o700)):
        (fresh / name).chmod(mode)
    swap(fresh, live)
    modes = {
        name: oct(stat.S_IMODE((live / name).stat().st_mode)) for name in ("notices", "notices/index.html", "tool")
    }
    assert modes == {"notices": "0o755", "notices/index.html": "0o644", "tool": "0o744"}


def test_a_live_folder_that_few_may_read_lets_nobody_else_in(tmp_path: Path) -> None:
    live = _site(tmp_path / "site", "old")
    live.chmod(0o700)
    fresh = _site(tmp_path / "fresh", "new")
    (fresh / "index.html").chmod(0o600)
    swap(fresh, live)
    assert stat.S_IMODE((live / "index.html").stat().st_mode) == 0o600


def test_what_is_left_of_another_site_beside_this_one_is_not_taken_away(tmp_path: Path) -> None:
    """A site called site.new-look keeps the one before it in `.site.new-look.before`."""
    _site(tmp_path / "site", "ours")
    names = [".site.new-look.before", ".site.new-look.lock", ".site.new-look.new-a1b2c3d4"]
    for name in names:
        _site(tmp_path / name, "another's")
    _site(tmp_path / ".site.new-a1b2_3d4/site", "half")
    with only_build(tmp_path / "site"):
        pass
    assert sorted(path.name for path in tmp_path.iterdir()) == [*names, "site"]


@pytest.mark.skipif(os.geteuid() == 0, reason="the administrator may write anywhere")
def test_a_folder_without_the_right_to_write_is_taken_away_all_the_same(tmp_path: Path) -> None:
    folder = _site(tmp_path / "site/deep", "old")
    folder.chmod(0o500)
    take_away(tmp_path / "site")
    assert not (tmp_path / "site").exists()
