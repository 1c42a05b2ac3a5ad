"""A process may build one club after the other: it keeps nothing of them, and each build begins as the first did."""

from __future__ import annotations

import gc
import locale
import logging
import os
import sys
import warnings
from pathlib import Path

import pytest
from pelican import signals
from pelican.contents import Content
from pelican.log import FatalLogger, LimitFilter

from swardcast.cli.fleet_clubs import ClubPlace
from swardcast.cli.fleet_task import Asked, build_club
from swardcast.cli.main import run
from swardcast.compose import Bulletin
from swardcast.outlets.fleet_page import BuiltClub, State
from tests.cli.many_clubs import AS_OF, break_club, unlike_clubs
from tests.conftest import ROOT

ASKED = Asked(as_of=AS_OF, theme=None, eml=False)


@pytest.fixture
def clubs(tmp_path: Path) -> dict[str, Path]:
    return unlike_clubs(tmp_path / "clubs")


def built(club: Path, site: Path) -> BuiltClub:
    return build_club(ClubPlace(club=club.name, folder=club, site=site), ASKED)


def living() -> set[int]:
    """Bulletins and contents of Pelican that something holds on to."""
    gc.collect()
    return {id(one) for one in gc.get_objects() if isinstance(one, Bulletin | Content)}


def process_wide() -> dict[str, object]:
    """What all builds of a process share, as far as Pelican or a build touches it."""
    return {
        "folder": Path.cwd(),
        "environment": dict(os.environ),
        "locale": locale.setlocale(locale.LC_ALL),
        "import path": list(sys.path),
        "warnings": list(warnings.filters),
        "handlers": list(logging.getLogger().handlers),
        "fatal": FatalLogger.fatal_lvl,
        "said": (set(LimitFilter._raised_messages), set(LimitFilter._ignore), dict(LimitFilter._group_count)),
        "receivers": {
            name: len(signal.receivers) for name, signal in vars(signals).items() if hasattr(signal, "receivers")
        },
    }


def test_a_build_leaves_nothing_of_the_club_behind(clubs: dict[str, Path], tmp_path: Path) -> None:
    """The first one may load and connect what all of them need."""
    assert built(clubs["heath"], tmp_path / "heath").state is State.PUBLISHED
    before, alive = process_wide(), living()
    assert built(clubs["links"], tmp_path / "links").state is State.PUBLISHED
    assert process_wide() == before
    assert living() <= alive


def test_nor_does_one_that_fails(clubs: dict[str, Path], tmp_path: Path) -> None:
    assert built(clubs["heath"], tmp_path / "heath").state is State.PUBLISHED
    before, alive = process_wide(), living()
    break_club(clubs["links"])
    page = clubs["park"] / "templates" / "notice.html"
    page.parent.mkdir()
    page.write_text("{% extends '!theme/notice.html' %}{% block content %}{{ 1 / 0 }}{% endblock %}", encoding="utf-8")
    assert built(clubs["links"], tmp_path / "links").state is State.FAILED
    assert built(clubs["park"], tmp_path / "park").state is State.FAILED
    assert process_wide() == before
    assert living() <= alive


def test_a_fault_is_told_as_often_as_it_is_met(
    clubs: dict[str, Path], tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    """Pelican says the same warning once in a process; here it is of another club the second time."""
    for name in ("heath", "links"):
        page = clubs[name] / "pages"
        page.mkdir()
        for own in (ROOT / "site_src" / "content" / "pages" / "en-GB").iterdir():
            (page / own.name).write_bytes(own.read_bytes())
        (page / "about.md").write_text("Title: About\n\n[ours]({filename}/nowhere.md)\n", encoding="utf-8")
        assert built(clubs[name], tmp_path / name).state is State.FAILED
    warned = [one.getMessage() for one in caplog.records if one.levelno == logging.WARNING]
    assert warned == ["Unable to find '/nowhere.md', skipping url replacement."] * 2


def test_what_is_built_depends_on_nothing_that_was_built_before(clubs: dict[str, Path], tmp_path: Path) -> None:
    sites: dict[str, set[tuple[tuple[str, bytes], ...]]] = {name: set() for name in clubs}
    for number, name in enumerate(["heath", "links", "heath", "park", "links", "park"]):
        site = tmp_path / f"{number}"
        assert run(["build", "--club", str(clubs[name]), "--output", str(site), "--as-of", AS_OF]) == 0
        sites[name].add(tuple((path.name, path.read_bytes()) for path in sorted(site.rglob("*")) if path.is_file()))
    assert {name: len(found) for name, found in sites.items()} == {"heath": 1, "links": 1, "park": 1}
