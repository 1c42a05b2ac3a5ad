"""A fault in a file that only planning needs: the site is built without it, what plans refuses, and check names it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import Done

Command = Callable[..., Done]
SAID = "line 33, choice 5, operation 1: found 'scarifyng'; expected one of: hollow tining"


@pytest.fixture
def faulty(club: Path) -> Path:
    file = club / "choices.yaml"
    text = file.read_text(encoding="utf-8")
    assert text.splitlines()[32].strip().startswith("- scarifying:")
    file.write_text(text.replace("- scarifying:", "- scarifyng:", 1), encoding="utf-8")
    return club


@pytest.mark.parametrize(
    "words", [("check",), ("compare", "--instead-of", "greens-renovation-2027", "--choices", "usual")]
)
def test_check_and_what_plans_refuse_with_file_and_line(
    swardcast: Command, faulty: Path, words: tuple[str, ...]
) -> None:
    done = swardcast(*words, "--club", str(faulty), "--as-of", "2027-08-18 09:30")
    assert (done.code, done.out) == (1, "")
    assert done.err.startswith("choices.yaml\n")
    assert SAID in done.err


def test_what_does_not_plan_goes_on(swardcast: Command, faulty: Path) -> None:
    done = swardcast("outlook", "--club", str(faulty), "--as-of", "2027-08-18 09:30")
    assert (done.code, done.err) == (0, "")


def test_the_site_is_built_and_the_fault_is_pointed_out(swardcast: Command, faulty: Path, tmp_path: Path) -> None:
    site = tmp_path / "site"
    done = swardcast("build", "--club", str(faulty), "--as-of", "2027-08-18 09:30", "--output", str(site))
    assert done.code == 0, done.err
    assert f"Worth another look: choices.yaml, {SAID}" in done.err
    assert "Did you mean 'scarifying'? (The site is made without this file.)" in done.err
    assert (site / "index.html").is_file()


def test_check_points_out_a_file_in_which_no_choice_stands_yet(swardcast: Command, club: Path) -> None:
    said = "choices.yaml holds no choice of work yet, so that 'compare' shows the usual ones of the trade."
    asked = ("--club", str(club), "--as-of", "2027-08-18 09:30")
    assert said not in swardcast("check", *asked).err
    (club / "choices.yaml").write_text("# later\n", encoding="utf-8")
    done = swardcast("check", *asked)
    assert done.code == 0
    assert said in done.err
    assert swardcast("compare", *asked, "--surfaces", "green 1", "--day", "2027-09-20").code == 0
