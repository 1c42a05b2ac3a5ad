"""The command line: exit codes, keys for machines, a quick start, nothing written when something is wrong."""

from __future__ import annotations

import json
import math
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.printed_formula import left_after, needed
from tests.conftest import DEMO

Run = Callable[..., subprocess.CompletedProcess[str]]
AS_OF = ("--as-of", "2027-09-14 09:30")
MILESTONES = ("reopening", "settled", "holes_closed", "back_to_normal")
# Monthly means of Essex, from memory, plus or minus 0.7 C.
ESSEX = (4.6, 4.8, 6.9, 9.3, 12.4, 15.3, 17.7, 17.7, 15.2, 11.8, 7.8, 5.2)


def normals(path: Path, change_c: float = 0.0) -> Path:
    rows = [f"{month},{value + change_c}" for month, value in enumerate(ESSEX, start=1)]
    path.write_text("\n".join(["month,tmean_c", *rows]), encoding="utf-8")
    return path


def test_help_is_fine_and_loads_neither_pelican_nor_the_science(run_swardcast: Run) -> None:
    done = run_swardcast("--help", PYTHONVERBOSE="1")
    assert done.returncode == 0
    assert "swardcast COMMAND" in done.stdout
    for heavy in ("pelican", "numpy", "pydantic", "yaml", "jinja2"):
        assert f"import '{heavy}'" not in done.stderr


def test_an_unknown_command_is_wrong_usage_and_names_the_nearest(run_swardcast: Run) -> None:
    done = run_swardcast("biuld")
    assert (done.returncode, done.stdout) == (2, "")
    assert "Did you mean 'build'?" in done.stderr


def test_tines_reckon_what_the_formula_says(run_swardcast: Run) -> None:
    """400 holes/m2 at 5 x 5 cm: Woods 2009, Asian Turfgrass Center; the rest pi d^2 / 4 by hand."""
    done = run_swardcast("reckon", "tines", "--diameter", "13 mm", "--spacing", "50 x 50 mm", "--depth", "60 mm", "--area", "500 m2", "--json")  # fmt: skip
    result = json.loads(done.stdout)
    assert list(result) == [
        "holes_per_m2", "holes", "surface_disturbed_fraction", "surface_removed_fraction", "infill_mm",
        "infill_kg_per_m2", "infill_t", "density_t_per_m3",
    ]  # fmt: skip
    assert result["holes"] == pytest.approx(200_000)
    share = math.pi * 0.013**2 / 4 * 400
    assert result["surface_disturbed_fraction"] == pytest.approx(share)
    assert result["infill_t"] == pytest.approx(share * 60 * 1.56 * 500 / 1000)


def test_grooves_and_sand_have_their_fixed_keys(run_swardcast: Run) -> None:
    """0.488 kg/m2 for 100 lb/1000 ft2: NIST SP 811 factors."""
    grooves = json.loads(run_swardcast("reckon", "grooves", "--blade", "2 mm", "--spacing", "25 mm", "--depth", "3 mm", "--json").stdout)  # fmt: skip
    assert list(grooves) == [
        "surface_disturbed_fraction", "surface_removed_fraction", "infill_mm", "infill_kg_per_m2", "infill_t",
        "density_t_per_m3",
    ]  # fmt: skip
    sand = json.loads(run_swardcast("reckon", "sand", "--rate", "100 lb/1000 ft2", "--json").stdout)
    assert {"depth_mm", "kg_per_m2", "l_per_m2", "tonnes"} <= set(sand)
    assert sand["kg_per_m2"] == pytest.approx(0.45359237 * 100 / 92.90304)


def test_healing_falls_into_the_interval_that_a_course_in_england_saw(run_swardcast: Run, tmp_path: Path) -> None:
    """England, 2 September 2013: 12 mm solid tines, heavy sand, holes closed after 7 to 13 days (a course report)."""
    file = str(normals(tmp_path / "normals.csv"))
    work = ("--solid", "12 mm at 50.8 x 50.8 mm", "--sand-surplus", "2.4 mm")
    done = run_swardcast("reckon", "healing", *work, "--start", "2013-09-02", "--temperatures", file, "--json")
    result = json.loads(done.stdout)
    assert list(result) == [
        "days_to_settled",
        "days_to_holes_closed",
        "days_to_back_to_normal",
        "days_to_complete_cover",
    ]
    closed = result["days_to_holes_closed"]
    assert 7 <= closed["likely"] <= 13
    assert closed["early"] < closed["likely"] < closed["allow_until"]


def test_healing_that_the_season_does_not_bring_is_null(run_swardcast: Run, tmp_path: Path) -> None:
    file = str(normals(tmp_path / "cold.csv", change_c=-14))
    work = ("--hollow", "12.7 mm at 50.8 x 50.8 mm", "--sand-surplus", "2.4 mm")
    done = run_swardcast("reckon", "healing", *work, "--start", "2013-10-02", "--temperatures", file, "--json")
    assert json.loads(done.stdout)["days_to_holes_closed"] == {"early": None, "likely": None, "allow_until": None}


def test_a_quantity_without_unit_is_wrong_usage(run_swardcast: Run) -> None:
    done = run_swardcast("reckon", "tines", "--diameter", "13", "--spacing", "50 x 50 mm", "--depth", "60 mm")
    assert done.returncode == 2
    assert "needs its unit" in done.stderr


def test_outlook_has_its_fixed_keys_for_every_surface(run_swardcast: Run) -> None:
    surfaces = json.loads(run_swardcast("outlook", "--club", str(DEMO), *AS_OF, "--json").stdout)
    assert len(surfaces) == 65
    for surface in surfaces:
        assert {"id", "play", "work", "reasons", *MILESTONES} <= set(surface)
        for name in MILESTONES:
            assert surface[name] is None or list(surface[name]) == ["early", "likely", "allow_until"]
    green = next(surface for surface in surfaces if surface["id"] == "green-13")
    assert (green["play"], green["work"]) == ("open with care", "healing")


def test_a_moment_with_a_zone_is_the_same_moment(run_swardcast: Run) -> None:
    local = run_swardcast("outlook", "--club", str(DEMO), *AS_OF, "--json").stdout
    zoned = run_swardcast("outlook", "--club", str(DEMO), "--as-of", "2027-09-14T08:30:00+00:00", "--json").stdout
    assert local == zoned


def test_the_sum_that_explain_shows_can_be_done_by_hand(run_swardcast: Run) -> None:
    """Growth days to close are those of the printed formula, within what its three decimals leave open."""
    parts = json.loads(run_swardcast("explain", "green-13", "--club", str(DEMO), *AS_OF, "--json").stdout)
    (job,) = (part for part in parts if part["heading"].startswith("Hollow tining, scarifying and sanding the greens"))
    steps = [step["says"] for step in job["steps"]]
    (formula,) = (step for step in steps if step.startswith("Left after G growth days"))
    (line,) = (step for step in steps if step.startswith("Growth days needed until the holes count as closed"))
    assert float(line.rstrip(".").split()[-1]) == pytest.approx(needed(left_after(formula), 0.02), abs=0.1)


def test_start_makes_a_folder_that_check_and_build_accept(run_swardcast: Run, tmp_path: Path) -> None:
    folder = tmp_path / "my-club"
    assert run_swardcast("start", str(folder)).returncode == 0
    assert run_swardcast("check", "--club", str(folder)).returncode == 0
    built = run_swardcast("build", "--club", str(folder), "--output", str(tmp_path / "site"))
    assert built.returncode == 0, built.stderr
    assert run_swardcast("start", str(folder)).returncode == 1


def test_own_words_that_are_hard_to_read_are_told_by_build_which_goes_on(run_swardcast: Run, tmp_path: Path) -> None:
    folder, output = tmp_path / "my-club", tmp_path / "site"
    assert run_swardcast("start", str(folder)).returncode == 0
    (programme,) = (folder / "plan").glob("*.yaml")
    day = next(line.split()[1] for line in programme.read_text("utf-8").splitlines() if line.startswith("announced:"))
    note = f"---\nat: {day} 07:00\nkind: note to members\n---\nGreens open soon, from 12pm.\n"
    (folder / "log" / "a-note.md").write_text(note, encoding="utf-8")
    built = run_swardcast("build", "--club", str(folder), "--output", str(output), "--as-of", f"{day} 12:00")
    assert built.returncode == 0, built.stderr
    said = [line for line in built.stderr.splitlines() if "own words" in line]
    assert said == [
        (
            "Worth another look: log/a-note.md: own words: “12pm”, which is read in two ways: “Greens open soon, from 12pm”. "
            "Write “midday”."
        ),
        (
            "Worth another look: log/a-note.md: own words: “soon”: “Greens open soon, from 12pm”. "
            "Write instead: the day, or that no day is known yet."
        ),
    ]


def test_a_failed_build_leaves_the_last_good_site_and_writes_nothing(
    run_swardcast: Run, club: Path, tmp_path: Path
) -> None:
    output = tmp_path / "site"
    build = ("build", "--club", str(club), "--output", str(output), *AS_OF)
    assert run_swardcast(*build).returncode == 0
    before = {path: path.read_bytes() for path in output.rglob("*") if path.is_file()}
    (club / "club.yaml").write_text("nothing: right\n", encoding="utf-8")
    failed = run_swardcast(*build)
    assert (failed.returncode, failed.stdout) == (1, "")
    assert "nothing was published" in failed.stderr
    assert {path: path.read_bytes() for path in output.rglob("*") if path.is_file()} == before
    assert sorted(path.name for path in tmp_path.iterdir()) == ["club", "site"]


def test_a_folder_with_other_files_is_never_overwritten(run_swardcast: Run, tmp_path: Path) -> None:
    (tmp_path / "letters").mkdir()
    (tmp_path / "letters" / "dear.txt").write_text("Dear member", encoding="utf-8")
    done = run_swardcast("build", "--club", str(DEMO), "--output", str(tmp_path / "letters"), *AS_OF)
    assert done.returncode == 1
    assert (tmp_path / "letters" / "dear.txt").is_file()
