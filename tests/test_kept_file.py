"""The file of what builds have worked out: whole or not there, nobody else's, and never what a build says."""

from __future__ import annotations

import os
import pickle
import sys
import zlib
from collections.abc import Callable, Iterator
from datetime import UTC, date, datetime
from hashlib import sha256
from pathlib import Path
from shutil import copytree

import pytest

from swardcast import kept_file
from swardcast.cli.main import run
from swardcast.kept_file import KeptFile, file_of, tidy_kept
from swardcast.outlook.kept import Mark
from swardcast.outlook.memory import as_members_see
from swardcast.outlook.states import DateRange
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from tests.conftest import bytes_in
from tests.outlook.small_club import SmallClub

MARK = Mark(until=datetime(2027, 9, 1, 7, tzinfo=UTC), latest=date(2027, 10, 1), digest="d" * 64)
DAY = DateRange.known(date(2027, 9, 1))


@pytest.fixture
def opened(tmp_path: Path, demo_records: ClubRecords) -> Callable[[], KeptFile]:
    """Open the file of the demo."""
    book = WeatherBook(demo_records.club, demo_records.weather)
    return lambda: KeptFile(tmp_path / "club.kept", as_members_see(demo_records, book), book)


def written(opened: Callable[[], KeptFile], *names: str) -> Path:
    file = opened()
    for name in names or ("a", "b"):
        file.keep(name, MARK, DAY)
    file.write()
    (path,) = (place for place in _folder(file).glob("*.kept"))
    return path


def _folder(file: KeptFile) -> Path:
    assert file._file is not None
    return file._file.parent


def test_what_was_kept_is_there_in_the_next_build(opened: Callable[[], KeptFile]) -> None:
    written(opened)
    file = opened()
    assert file.mark("a") == MARK
    assert file.value("b") == DAY
    assert file.mark("c") is None


def test_what_was_kept_before_stays_beside_what_is_new(opened: Callable[[], KeptFile]) -> None:
    written(opened, "a")
    written(opened, "b")
    assert [opened().value(name) for name in "ab"] == [DAY, DAY]


def test_a_record_of_the_club_is_found_again_and_not_written(
    opened: Callable[[], KeptFile], demo_records: ClubRecords
) -> None:
    book = WeatherBook(demo_records.club, demo_records.weather)
    records = as_members_see(demo_records, book)
    path = _folder(opened()) / "club.kept"
    file = KeptFile(path, records, book)
    file.keep("jobs", MARK, (*records.jobs.values(), *records.entries))
    file.write()
    jobs = KeptFile(path, records, book).value("jobs")
    assert isinstance(jobs, tuple)
    assert all(one is other for one, other in zip(jobs, (*records.jobs.values(), *records.entries), strict=True))
    assert path.stat().st_size < 2_000


def test_a_value_that_cannot_be_written_is_not_kept(opened: Callable[[], KeptFile]) -> None:
    file = opened()
    file.keep("a", MARK, lambda: None)
    assert file.mark("a") is None


@pytest.mark.parametrize("place", range(0, 400, 37))
def test_a_damaged_file_gives_what_is_right_or_nothing(opened: Callable[[], KeptFile], place: int) -> None:
    path = written(opened)
    data = bytearray(path.read_bytes())
    data[place % len(data)] ^= 255
    path.write_bytes(data)
    file = opened()
    found = [file.value(name) for name in "ab" if file.mark(name) is not None]
    assert all(one in (DAY, None) for one in found)
    assert all(file.mark(name) in (MARK, None) for name in "ab")


@pytest.mark.parametrize("left", range(0, 400, 50))
def test_a_file_that_was_cut_off_gives_what_is_right_or_nothing(opened: Callable[[], KeptFile], left: int) -> None:
    path = written(opened)
    path.write_bytes(path.read_bytes()[:left])
    file = opened()
    assert all(file.value(name) in (DAY, None) for name in "ab" if file.mark(name) is not None)


@pytest.mark.skipif(not hasattr(os, "getuid"), reason="files have owners and modes where there are users")
@pytest.mark.parametrize("mode", [0o620, 0o602])
def test_a_file_that_others_may_write_is_not_read(opened: Callable[[], KeptFile], mode: int) -> None:
    path = written(opened)
    path.chmod(mode)
    assert opened().mark("a") is None


@pytest.mark.skipif(not hasattr(os, "getuid"), reason="files have owners and modes where there are users")
def test_a_file_of_another_user_is_not_read(opened: Callable[[], KeptFile], monkeypatch: pytest.MonkeyPatch) -> None:
    written(opened)
    uid = os.getuid()
    monkeypatch.setattr(os, "getuid", lambda: uid + 1)
    assert opened().mark("a") is None


class _Trap:
    def __reduce__(self) -> tuple[Callable[[str], int], tuple[str]]:
        return os.system, ("touch sprung",)


@pytest.mark.parametrize("trap", [_Trap(), Path("/tmp"), os.path.join, KeptFile])  # noqa: S108 - only named
def test_bytes_that_name_anything_else_make_nothing(
    opened: Callable[[], KeptFile], trap: object, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    path = written(opened, "a")
    data = zlib.compress(pickle.dumps(trap))
    file = opened()
    place = file._places["a"]
    place.fresh, place.digest = data, sha256(data).hexdigest()
    assert file.value("a") is None
    assert not (path.parent / "sprung").exists()


def test_bytes_that_name_the_command_line_do_not_start_it(opened: Callable[[], KeptFile]) -> None:
    """`swardcast.cli.__main__` runs a command when it is loaded; the name stands in a pickle as the standard has it."""
    written(opened, "a")
    file = opened()
    place = file._places["a"]
    place.fresh = zlib.compress(b"cswardcast.cli.__main__\nmain\n.")
    place.digest = sha256(place.fresh).hexdigest()
    assert file.value("a") is None
    assert "swardcast.cli.__main__" not in sys.modules


def test_a_build_that_is_killed_while_it_writes_leaves_the_file_as_it_was(
    opened: Callable[[], KeptFile], monkeypatch: pytest.MonkeyPatch
) -> None:
    path = written(opened)
    before = path.read_bytes()
    parts = KeptFile._parts

    def killed(file: KeptFile) -> Iterator[bytes]:
        yield next(parts(file))
        raise KeyboardInterrupt

    monkeypatch.setattr(KeptFile, "_parts", killed)
    with pytest.raises(KeyboardInterrupt):
        written(opened, "c")
    assert path.read_bytes() == before
    assert [one.name for one in path.parent.iterdir()] == [path.name]


def test_what_nobody_asks_for_any_more_goes(opened: Callable[[], KeptFile]) -> None:
    written(opened, "old")
    for number in range(kept_file.UNASKED + 1):
        written(opened, f"new-{number}")
    assert opened().mark("old") is None
    assert opened().mark(f"new-{kept_file.UNASKED}") is not None


def test_nothing_is_written_where_nothing_is_new(opened: Callable[[], KeptFile]) -> None:
    path = written(opened)
    before = path.stat().st_ino
    file = opened()
    file.value("a")
    file.write()
    assert path.stat().st_ino == before


def test_another_version_of_the_program_has_another_file(
    demo_records: ClubRecords, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = file_of(demo_records.club, tmp_path)
    assert file == file_of(demo_records.club, tmp_path)
    kept_file._version.cache_clear()
    monkeypatch.setattr(kept_file, "version", lambda _: "9.9")
    assert file_of(demo_records.club, tmp_path) != file
    kept_file._version.cache_clear()


def test_files_that_were_used_last_stay_as_long_as_there_is_room(tmp_path: Path) -> None:
    for number in range(5):
        file = tmp_path / f"{number}.kept"
        file.write_bytes(bytes(400))
        os.utime(file, (number, number))
    tidy_kept(tmp_path, most_mb=0.0012)
    assert sorted(one.name for one in tmp_path.iterdir()) == ["2.kept", "3.kept", "4.kept"]


@pytest.fixture(scope="module")
def builds(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., dict[str, bytes]]:
    """Build a small club with work that is done, or any other folder, by a moment; gives the site."""
    top = tmp_path_factory.mktemp("builds")
    club = SmallClub(top / "club")
    club.job("spring", "05-03")
    club.done("spring", "05-03")

    def site(day: str, cache: Path, *options: str) -> dict[str, bytes]:
        told = ("--club", str(club.folder), "--output", str(top / "site"), "--as-of", f"2027-{day} 12:00")
        with pytest.MonkeyPatch.context() as patched:
            patched.setenv("XDG_CACHE_HOME", str(cache))
            assert run(["build", *told, *options]) == 0
        return bytes_in(top / "site")

    return site


@pytest.fixture(scope="module")
def kept_before(builds: Callable[..., dict[str, bytes]], tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The cache folder after a build of an earlier day."""
    cache = tmp_path_factory.mktemp("cache")
    builds("05-10", cache)
    assert {path.suffix for path in (cache / "swardcast").iterdir()} == {".kept", ".picture"}
    return cache


@pytest.fixture(scope="module")
def afresh(builds: Callable[..., dict[str, bytes]], tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """The site with nothing kept, and nothing is kept of it."""
    cache = tmp_path_factory.mktemp("afresh")
    site = builds("05-20", cache, "--afresh")
    assert list(cache.iterdir()) == []
    return site


def _cut(path: Path) -> None:
    path.write_bytes(path.read_bytes()[:-7])


def _mixed_up(path: Path) -> None:
    path.write_bytes(path.read_bytes()[::-1])


def _of_another_form(path: Path) -> None:
    path.write_bytes(path.read_bytes().replace(b"kept by swardcast 1", b"kept by swardcast 2"))


def _a_folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


def _of_others(path: Path) -> None:
    path.chmod(0o666)


def _empty(path: Path) -> None:
    path.write_bytes(b"")


@pytest.mark.parametrize("broken", [None, _cut, _mixed_up, _of_another_form, _a_folder, _of_others, _empty])
def test_a_site_is_the_same_whatever_became_of_what_was_kept(
    builds: Callable[..., dict[str, bytes]],
    kept_before: Path,
    afresh: dict[str, bytes],
    tmp_path: Path,
    broken: Callable[[Path], None] | None,
) -> None:
    """As a forge may hand it over: whole, cut, mixed up, of another form, and so on; `_cut` leaves the head as it was."""
    cache = tmp_path / "cache"
    copytree(kept_before, cache)
    for path in (cache / "swardcast").iterdir():
        if broken is not None:
            broken(path)
    assert builds("05-20", cache) == afresh


def test_afresh_takes_neither_what_was_worked_out_nor_what_was_drawn(
    builds: Callable[..., dict[str, bytes]], kept_before: Path, afresh: dict[str, bytes], tmp_path: Path
) -> None:
    """Pictures with other bytes and their right checksums would be taken, were they asked for."""
    cache = tmp_path / "cache"
    copytree(kept_before, cache)
    assert builds("05-20", cache) == afresh
    before = {path: path.stat().st_ino for path in (cache / "swardcast").iterdir()}
    for path in before:
        if path.suffix == ".picture":
            path.write_bytes(sha256(b"no picture").digest() + b"no picture")
    assert b"no picture" in builds("05-20", cache).values()
    assert builds("05-20", cache, "--afresh") == afresh
    assert {path: path.stat().st_ino for path in (cache / "swardcast").iterdir()} == before
