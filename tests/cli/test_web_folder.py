"""Files of others at the root of the site: the club brings them from its folder `web`, and no build takes any away."""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from swardcast.cli.files_of_others import LIST, bring, list_files, refuse_others
from swardcast.errors import InputNeedsAttention, SwardcastError
from swardcast.outlets.committee_page import MARK
from swardcast.outlets.policy import HEADERS_PATH
from swardcast.reading.web_folder import clashes, problems_of_web, web_files
from tests.cli.conftest import Done
from tests.conftest import bytes_in
from tests.outlook.small_club import SmallClub

Run = Callable[..., subprocess.CompletedProcess[str]]
BROUGHT = {
    "CNAME": b"notices.club.example\n",
    ".nojekyll": b"",
    ".well-known/security.txt": b"Contact: mailto:office@club.example\r\n",
    "proof0a1b.html": b'proof: <a href="nowhere.html">0a1b',
    "feeds/of-others.rss": b"no feed at all",
}
"""What a check of our own files would not let through: an empty file, a link that leads nowhere, a feed that is none."""


def _write(folder: Path, files: dict[str, bytes]) -> Path:
    for name, data in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(data)
    return folder


def _build(run: Run, club: Path, output: Path, *more: str) -> subprocess.CompletedProcess[str]:
    return run("build", "--club", str(club), "--output", str(output), "--as-of", "2027-09-14 09:30", *more)


@pytest.fixture(scope="module")
def club(tmp_path_factory: pytest.TempPathFactory) -> Path:
    club = SmallClub(tmp_path_factory.mktemp("web") / "club")
    club.job("cores", "09-20")
    return club.folder


@pytest.fixture(scope="module")
def plain(club: Path, run_swardcast: Run) -> Path:
    """The site of a club that brings nothing."""
    assert _build(run_swardcast, club, club.with_name("plain")).returncode == 0
    return club.with_name("plain")


@pytest.fixture(scope="module")
def site(club: Path, run_swardcast: Run) -> Path:
    """The site of the same club with files of its own."""
    with_web = Path(shutil.copytree(club, club.with_name("with-web")))
    _write(with_web / "web", BROUGHT)
    done = _build(run_swardcast, with_web, club.with_name("site"))
    assert done.returncode == 0, done.stderr
    return club.with_name("site")


def test_files_of_the_club_stand_at_the_root_as_they_are_and_change_nothing_else(plain: Path, site: Path) -> None:
    with_them, without = bytes_in(site), bytes_in(plain)
    with_list, without_list = with_them.pop(LIST), without.pop(LIST)
    assert with_them == {**without, **BROUGHT}
    assert with_list.decode().splitlines() == sorted([LIST, *with_them])
    assert without_list.decode().splitlines() == sorted([LIST, *without])


def test_what_the_club_brings_no_more_goes_with_the_next_build(
    club: Path, plain: Path, site: Path, run_swardcast: Run, tmp_path: Path
) -> None:
    """The site before had listed it, so nobody is asked."""
    live = Path(shutil.copytree(site, tmp_path / "site"))
    done = _build(run_swardcast, club, live)
    assert done.returncode == 0, done.stderr
    assert bytes_in(live) == bytes_in(plain)


def test_a_live_folder_with_anything_that_no_build_made_is_not_taken_away(
    club: Path, site: Path, run_swardcast: Run, tmp_path: Path
) -> None:
    live = Path(shutil.copytree(site, tmp_path / "site"))
    _write(live, {"rota.pdf": b"%PDF", ".git/HEAD": b"ref: refs/heads/main\n"})
    shutil.copytree(site, tmp_path / ".site.before")
    before = bytes_in(tmp_path)
    for more in ((), ("--back",)):
        done = _build(run_swardcast, club, live, *more)
        assert (done.returncode, done.stdout) == (1, "")
        assert done.stderr.splitlines()[-5:] == [
            f"{live} holds what no build has made: .git, rota.pdf.",
            "Another site would take its place. Nothing was changed, the live site stays.",
            "What belongs to the site goes into the folder web of the club folder, and each build brings it along.",
            "Move the rest away.",
            "A repository belongs in no site: build into a folder of its own, and copy the site over.",
        ]
        assert bytes_in(tmp_path) == before


def _others(live: Path, coming: Path) -> str:
    with pytest.raises(SwardcastError) as told:
        refuse_others(live, coming)
    return str(told.value).splitlines()[0].removeprefix(f"{live} holds what no build has made: ").rstrip(".")


@pytest.fixture
def two(tmp_path: Path) -> tuple[Path, Path]:
    """A live site with its list, and the one to come."""
    live = _write(tmp_path / "live", {"index.html": b"1", "n/old/index.html": b"1", "email.eml": b"1"})
    list_files(live)
    coming = _write(tmp_path / "coming", {"index.html": b"2", "n/new/index.html": b"2", ".well-known/a.txt": b"2"})
    list_files(coming)
    return live, coming


def test_files_of_builds_before_and_of_the_coming_one_are_no_others(two: tuple[Path, Path]) -> None:
    live, coming = two
    _write(live, {".well-known/a.txt": b"put here by hand, brought from now on", ".DS_Store": b"a desktop's"})
    (live / ".well-known/acme-challenge").mkdir()
    refuse_others(live, coming)
    refuse_others(live.with_name("none"), coming)


def test_others_are_named_at_any_depth_by_the_folder_that_is_all_theirs(two: tuple[Path, Path]) -> None:
    live, coming = two
    _write(live, {"n/old/rota.pdf": b"", "photos/2027/a.png": b"", "photos/b.png": b"", ".well-known/b.txt": b""})
    (live / "theme").symlink_to(coming)
    assert _others(live, coming) == ".well-known/b.txt, n/old/rota.pdf, photos, theme"
    _write(live, {f"{number}.txt": b"" for number in range(20, 30)})
    assert _others(live, coming).endswith(", 28.txt and 4 more")  # fourteen, of which ten


def test_a_site_without_a_list_is_judged_by_what_lies_at_its_root(two: tuple[Path, Path]) -> None:
    """One from before there were lists: there every build had the same at the root, but for e-mails as drafts."""
    live, coming = two
    (live / LIST).unlink()
    assert _others(live, coming) == "email.eml"
    (live / "email.eml").unlink()
    _write(live, {"n/older/index.html": b"1"})
    refuse_others(live, coming)


@pytest.mark.parametrize(
    ("brought", "says"),
    [
        ("index.html", "the name of index.html, which the build makes itself"),
        ("Status.JSON", "the name of status.json, which the build makes itself"),
        ("notices", "the name of the folder notices, which the build makes itself"),
        ("status.json/more.txt", "the name of status.json, which the build makes itself"),
    ],
)
def test_nothing_takes_the_place_of_what_a_build_makes(brought: str, says: str) -> None:
    made = ["index.html", "status.json", "notices/cores/index.html"]
    assert [(one.file, one.found) for one in clashes([brought, "notices/rota.pdf"], made)] == [(f"web/{brought}", says)]


def test_the_file_that_would_take_its_place_is_named_and_none_is_there(plain: Path, tmp_path: Path) -> None:
    fresh = Path(shutil.copytree(plain, tmp_path / "site"))
    with pytest.raises(InputNeedsAttention) as told:
        bring({"CNAME": b"club.example\n", "robots.txt": b"User-agent: *\n"}, fresh)
    assert str(told.value).splitlines() == [
        "web/robots.txt",
        "  the file: found the name of robots.txt, which the build makes itself; expected another name",
        "1 thing needs attention.",
    ]
    assert bytes_in(fresh) == bytes_in(plain)


def test_what_hosts_are_to_say_is_for_the_club_to_decide(plain: Path, tmp_path: Path) -> None:
    """A file `_headers` of the club's stands in the place of the one that each build makes; by that very name alone."""
    fresh = Path(shutil.copytree(plain, tmp_path / "site"))
    assert b"Content-Security-Policy" in (fresh / HEADERS_PATH).read_bytes()
    own = {HEADERS_PATH: b"/*\n  Cache-Control: max-age=60\n"}
    bring(own, fresh)
    assert bytes_in(fresh) == {**bytes_in(plain), **own}
    for other in ("_Headers", f"{HEADERS_PATH}/more.txt"):
        with pytest.raises(InputNeedsAttention):
            bring({other: b""}, fresh)


def test_everything_that_cannot_go_into_the_site_is_told_at_once(
    club: Path, swardcast: Callable[..., Done], tmp_path: Path
) -> None:
    own = Path(shutil.copytree(club, tmp_path / "club"))
    web = _write(
        own / "web", {"a.txt": b"", "A.txt": b"", "my rota.pdf": b"", "é.txt": b"", "b.": b"", ".git/HEAD": b""}
    )
    (web / "secret.txt").symlink_to("/etc/passwd")
    (web / "plans").symlink_to(own / "plan")
    with (web / "film.mp4").open("wb") as large:
        large.truncate(10_000_001)
    os.mkfifo(web / "pipe")
    done = swardcast("check", "--club", str(own))
    assert done.code == 1
    told = [line.partition(";")[0].strip() for line in done.err.splitlines() if line.startswith("  ")]
    files = [line for line in done.err.splitlines() if line.startswith("web/")]
    assert dict(zip(files, told, strict=True)) == {
        "web/.git": "the file: found a repository with its history",
        "web/a.txt": "the file: found a name that differs from web/A.txt by capitals alone",
        "web/b.": "the file: found the name 'b.'",
        "web/film.mp4": "the file: found 10 MB",
        "web/my rota.pdf": "the file: found the name 'my rota.pdf'",
        "web/pipe": "the file: found something that is neither file nor folder",
        "web/plans": "the file: found a symbolic link",
        "web/secret.txt": "the file: found a symbolic link",
        "web/é.txt": "the file: found the name 'é.txt'",
    }
    with pytest.raises(InputNeedsAttention):
        web_files(own)


def test_all_of_them_together_have_a_limit_too(tmp_path: Path) -> None:
    """Six of 9 MB are 54 MB."""
    (tmp_path / "web").mkdir()
    for number in range(6):
        with (tmp_path / f"web/{number}.bin").open("wb") as large:
            large.truncate(9_000_000)
    (problem,) = problems_of_web(tmp_path)
    assert str(problem) == "the file: found 54 MB; expected at most 50 MB in all"


def test_web_is_a_folder_of_the_clubs_own(tmp_path: Path) -> None:
    assert problems_of_web(tmp_path) == []
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "web").symlink_to("elsewhere")
    assert [one.found for one in problems_of_web(tmp_path)] == ["no folder"]


def test_a_private_page_among_them_stops_the_build_wherever_it_lies(
    club: Path, swardcast: Callable[..., Done], tmp_path: Path
) -> None:
    own = Path(shutil.copytree(club, tmp_path / "club"))
    page = f"<html><head>{MARK}</head><body>47.35 a tonne</body></html>".encode()
    _write(own / "web", {".well-known/committee.html": page})
    done = swardcast("build", "--club", str(own), "--output", str(tmp_path / "site"))
    assert done.code == 1
    assert str(own / "web/.well-known/committee.html") in done.err
    assert not (tmp_path / "site").exists()
