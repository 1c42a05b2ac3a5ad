"""The file of what builds have worked out: whole or not there, nobody else's, and never what a build says."""

from __future__ import annotations

import os
import pickle
import zlib
from collections.abc import Callable, Iterator
from datetime import UTC, date, datetime
from hashlib import sha256
from pathlib import Path
from subprocess import CompletedProcess

import pytest

from swardcast import kept_file
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


def test_builds_say_the_same_whatever_is_kept(
    run_swardcast: Callable[..., CompletedProcess[str]], tmp_path: Path
) -> None:
    club = SmallClub(tmp_path / "club")
    club.job("spring", "05-03")
    cache = {"XDG_CACHE_HOME": str(tmp_path / "cache")}

    def site(name: str, day: str, *options: str) -> dict[str, bytes]:
        told = ("--club", str(club.folder), "--output", str(tmp_path / name), "--as-of", f"2027-{day} 12:00")
        done = run_swardcast("build", *told, *options, **cache)
        assert done.returncode == 0, done.stderr
        return bytes_in(tmp_path / name)

    site("before", "05-02")
    (kept,) = (tmp_path / "cache" / "swardcast").glob("*.kept")
    club.done("spring", "05-03")
    again = site("again", "05-20")
    assert kept.stat().st_size > 1_000
    before = kept.read_bytes()
    assert again == site("afresh", "05-20", "--afresh")
    assert kept.read_bytes() == before
