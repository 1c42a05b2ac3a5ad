"""Which folders are clubs, where their sites go, and what is refused before anything is built."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from swardcast.cli import build, fleet_cluster
from swardcast.cli.fleet_clubs import ClubPlace, clubs_below
from swardcast.cli.fleet_task import Asked, printable
from swardcast.errors import SwardcastError
from tests.cli.conftest import Done
from tests.conftest import ROOT

Command = Callable[..., Done]


def make(folder: Path, *files: str) -> Path:
    for name in files:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text("", encoding="utf-8")
    return folder


def found(folder: Path, output: Path) -> dict[str, str]:
    return {one.club: one.site.relative_to(output).as_posix() for one in clubs_below(folder, output)}


def test_clubs_are_found_at_any_depth_in_the_order_of_their_names(tmp_path: Path) -> None:
    folder = make(
        tmp_path / "clubs", "park/club.yaml", "north/east/links/club.yaml", "north/heath/club.yaml", "notes.md"
    )
    clubs = ["north/east/links", "north/heath", "park"]
    assert [*found(folder, tmp_path / "sites").items()] == [(club, club) for club in clubs]


def test_nothing_is_looked_for_in_a_club_in_hidden_folders_and_among_the_sites(tmp_path: Path) -> None:
    """A mended club folder keeps its older files in a hidden folder, and a site may bring a club.yaml to be read."""
    files = ("park/club.yaml", "park/older/club.yaml", ".git/club.yaml", "sites/heath/club.yaml")
    assert [*found(make(tmp_path, *files), tmp_path / "sites")] == ["park"]


def test_a_folder_with_surfaces_alone_is_a_club_that_lacks_a_file(tmp_path: Path) -> None:
    """So that it is told; passed over in silence nobody would miss its site until members do."""
    assert [*found(make(tmp_path, "park/surfaces.yaml"), tmp_path / "sites")] == ["park"]


def test_a_link_to_a_club_is_followed_and_a_link_that_goes_round_is_not(tmp_path: Path) -> None:
    make(tmp_path / "elsewhere", "heath/club.yaml")
    folder = make(tmp_path / "clubs", "park/club.yaml")
    (folder / "heath").symlink_to(tmp_path / "elsewhere" / "heath")
    (folder / "round").symlink_to(folder)
    assert [*found(folder, tmp_path / "sites")] == ["heath", "park"]


@pytest.mark.parametrize(
    ("folder", "output", "said"),
    [
        ("nowhere", "sites", "nowhere: found no such folder; expected a folder with club folders in it"),
        (
            "clubs/park",
            "sites",
            "is itself a club folder; name the folder above it, or build it alone: swardcast build",
        ),
        ("clubs", "clubs", "where the club folders are; name another folder"),
        ("empty", "sites", "expected folders with a club.yaml; 'swardcast start "),
    ],
)
def test_what_holds_no_clubs_is_refused_with_the_way_out(tmp_path: Path, folder: str, output: str, said: str) -> None:
    make(tmp_path, "clubs/park/club.yaml", "empty/notes.md")
    with pytest.raises(SwardcastError) as told:
        clubs_below(tmp_path / folder, tmp_path / output)
    assert said in str(told.value)


def test_other_peoples_text_steers_no_terminal() -> None:
    steering = "\x1b]0;ours\x07 13 × 50 mm\nnext \u202eline"
    assert printable(steering) == "\ufffd]0;ours\ufffd 13 × 50 mm\nnext \ufffdline"


def test_what_is_asked_for_all_clubs_is_asked_of_each_build(tmp_path: Path) -> None:
    """A moment or a folder that begins with a hyphen is no option."""
    place = ClubPlace(club="-park", folder=tmp_path / "-park", site=tmp_path / "sites" / "-park")
    asked = Asked(as_of="-1", theme=Path("-ours"), eml=True)
    options = build.parser("swardcast build", "").parse_args(asked.words(place))
    assert (options.club, options.output) == (place.folder, place.site)
    assert (options.as_of, options.theme, options.eml) == ("-1", Path("-ours"), True)
    assert (options.pdf, options.back, options.json) == (False, False, False)


@pytest.mark.parametrize("package", ["distributed", "cryptography"])
def test_without_its_packages_it_says_what_to_install(
    swardcast: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, package: str
) -> None:
    make(tmp_path, "clubs/park/club.yaml")
    monkeypatch.setitem(sys.modules, package, None)
    done = swardcast("fleet", str(tmp_path / "clubs"), "--output", str(tmp_path / "sites"))
    assert (done.code, done.out) == (1, "")
    assert done.err.endswith("Install them: python -m pip install 'swardcast[fleet]'\n")
    assert not (tmp_path / "sites").exists()


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (["--workers", "0"], 2, "argument --workers: '0' is no number of workers; expected 1 or more"),
        (["--workers", "2", "--scheduler", "tcp://127.0.0.1:1"], 2, "swardcast fleet: --workers is for this machine"),
        (["--as-of", "soon"], 1, "'soon' is no moment; expected one such as '2027-09-14 09:30'"),
        (["--page", "sites/today.html"], 1, "sites/today.html would lie among the sites in "),
        (["--page", "clubs/park/today.html"], 1, "clubs/park/today.html would lie in the club folder, of which parts"),
        (["--scheduler", "nonsense:"], 1, "found no scheduler at nonsense: ("),
    ],
)
def test_what_cannot_be_done_is_said_before_anything_is_built(
    swardcast: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: list[str], code: int, said: str
) -> None:
    make(tmp_path, "clubs/park/club.yaml")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(fleet_cluster, "_CONNECT_WITHIN", "1s")
    done = swardcast("fleet", "clubs", "--output", "sites", *words)
    assert (done.code, done.out) == (code, "")
    assert said in done.err


def test_its_help_loads_no_dask() -> None:
    program = (
        "import sys\nfrom swardcast.cli.main import run\ntry:\n    run(['fleet', '--help'])\nexcept SystemExit:\n    pass\n"
        "print('LOADED', *sorted(sys.modules))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True, cwd=ROOT / "plugins"
    )
    loaded = done.stdout.rpartition("LOADED ")[2].split()
    assert "swardcast.cli.fleet" in loaded
    assert [name for name in ("dask", "distributed", "cryptography", "tornado") if name in loaded] == []
