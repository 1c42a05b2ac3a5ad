"""`swardcast check --mend` brings an older folder to the format of this program, and changes nothing else."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable, Collection
from pathlib import Path
from typing import Any

import pytest

from swardcast.cli import mending
from swardcast.errors import InputNeedsAttention, Problem
from swardcast.reading.files import Files
from swardcast.reading.folder import read_club_folder
from swardcast.reading.format_changes import FORMAT, FormatChange, find_changes
from swardcast.reading.mending import mended_texts
from swardcast.records.club import SurfaceKind
from swardcast.records.operations import Kind
from tests.cli.conftest import Done
from tests.cli.test_check import tree
from tests.conftest import DEMO
from tests.outlook.small_club import SmallClub

# Uneven blanks, remarks in odd places, both kinds of quotation marks, a line of 240 letters, one that goes on below, and
# text that YAML would take for a truth value. The small club has greens and tees.
BEFORE = f"""# Ours.  Two blanks above, and none behind.

name:    "Saltmarsh Ladder Golf Club"   # the old name
course: 'the course'
site: https://saltmarsh-ladder.example
place: {{latitude: 52.0,  longitude: 0.0, elevation: 10 m}}
time zone: Europe/London
contact: {{ office: the office }}
decides: The course manager decides,
    each morning.
scores: "{"Scores count. " * 16}"
# before planning
planning:
  currency:   GBP
  # what the contractor asks
  cost per surface:      # each time
    hollow tining: 80.50   # with clearing up
    # the rest we do ourselves
    topdressing:   25

  # what we aim at
  yearly goal: {{sand: 8 mm}}
standards:
  working days:  Monday to Friday
cautions:
    - "No: stay away."
    - 'no'
# The end.
"""
AFTER = BEFORE.replace("\nname:", "\nformat: 2\nname:").replace(
    "  cost per surface:      # each time\n",
    "  cost per green:\n    hollow tining: 80.50\n    topdressing: 25\n  cost per tee:          # each time\n",
)


@pytest.fixture
def older(tmp_path: Path) -> Path:
    folder = SmallClub(tmp_path / "club").folder
    (folder / "club.yaml").write_bytes(BEFORE.encode())
    return folder


@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("end", ["\n", "\r\n"])
@pytest.mark.parametrize("last", ["\n", ""])
def test_only_the_lines_that_must_change_do(
    swardcast: Callable[..., Done], older: Path, mark: str, end: str, last: str
) -> None:
    before, after = (
        mark + text.removesuffix("\n").replace("\n", end) + last.replace("\n", end) for text in (BEFORE, AFTER)
    )
    (older / "club.yaml").write_bytes(before.encode())
    done = swardcast("check", "--club", str(older), "--as-of", "2027-06-01", "--mend")
    assert done.code == 0, done.err
    assert (older / "club.yaml").read_bytes().decode() == after
    assert (older / ".before-format-2" / "club.yaml").read_bytes().decode() == before


def test_what_changes_is_shown_and_where_the_old_file_is_kept_is_said(
    swardcast: Callable[..., Done], older: Path
) -> None:
    done = swardcast("check", "--club", str(older), "--as-of", "2027-06-01", "--mend")
    lines = done.out.splitlines()
    assert lines[:2] == ["--- club.yaml (before)", "+++ club.yaml"]
    assert [line for line in lines[2:] if line.startswith(("+", "-"))] == [
        "+format: 2",
        "-  cost per surface:      # each time",
        "+  cost per green:",
        "+    hollow tining: 80.50",
        "+    topdressing: 25",
        "+  cost per tee:          # each time",
    ]
    kept = older / ".before-format-2"
    assert done.err == f"Mended club.yaml; the folder is of format 2 now. As it was before: {kept}.\n"
    assert "Saltmarsh Ladder Golf Club: nothing needs attention." in lines


def test_costs_for_every_surface_become_the_same_costs_of_each_kind_that_the_club_has(older: Path) -> None:
    mending.mend(older)
    costs = {Kind.HOLLOW_TINING: 80.5, Kind.TOPDRESSING: 25.0}
    assert read_club_folder(older).planning.work_costs == {SurfaceKind.GREEN: costs, SurfaceKind.TEE: costs}


def test_without_mend_the_change_is_told_with_its_line_once_and_nothing_is_written(
    swardcast: Callable[..., Done], older: Path
) -> None:
    before = tree(older)
    done = swardcast("check", "--club", str(older))
    assert done.code == 1
    line = BEFORE.splitlines().index("  cost per surface:      # each time") + 1
    assert done.err.splitlines() == [
        "club.yaml",
        (
            f"  line {line}, planning.cost per surface: found 'cost per surface', as before format 2; expected costs by kind of"
            " surface: 'cost per green', 'cost per tee' and so on. 'swardcast check --mend' writes it so and keeps your remarks."
        ),
        "1 thing needs attention.",
    ]
    assert tree(older) == before


def test_a_folder_of_this_format_is_left_alone(swardcast: Callable[..., Done], older: Path) -> None:
    (older / "club.yaml").write_text(AFTER, encoding="utf-8")
    before = tree(older)
    done = swardcast("check", "--club", str(older), "--as-of", "2027-06-01", "--mend")
    assert (done.code, done.err) == (0, "Nothing of an older format was found; nothing was changed.\n")
    assert tree(older) == before


def test_an_older_number_becomes_this_one_and_keeps_its_remark(older: Path) -> None:
    (older / "club.yaml").write_text("format: 1   # the first\n" + BEFORE, encoding="utf-8")
    mending.mend(older)
    assert (older / "club.yaml").read_text(encoding="utf-8").startswith("format: 2   # the first\n# Ours.")


def test_a_second_copy_never_takes_the_place_of_the_first(older: Path) -> None:
    mending.mend(older)
    (older / "club.yaml").write_text(BEFORE + "# Again.\n", encoding="utf-8")
    mending.mend(older)
    assert (older / ".before-format-2/club.yaml").read_text(encoding="utf-8") == BEFORE
    assert (older / ".before-format-2-2/club.yaml").read_text(encoding="utf-8") == BEFORE + "# Again.\n"


@pytest.mark.skipif(sys.platform == "win32", reason="Windows keeps rights otherwise")
def test_what_others_must_not_read_they_cannot_read_afterwards(older: Path) -> None:
    (older / "club.yaml").chmod(0o600)
    mending.mend(older)
    for name in ("club.yaml", ".before-format-2/club.yaml"):
        assert (older / name).stat().st_mode & 0o777 == 0o600


ONE_LINE = "planning: {currency: GBP, cost per surface: {topdressing: 25}}   # brief\n"
IN_BRACKETS = "planning: {currency: GBP,\n  cost per surface: {topdressing: 25}}\n"


def with_planning(folder: Path, planning: str) -> str:
    head, rest = BEFORE.split("planning:\n")
    text = head + planning + rest[rest.index("standards:") :]
    (folder / "club.yaml").write_text(text, encoding="utf-8")
    return text


def test_fields_in_brackets_on_a_line_are_mended_in_brackets(older: Path) -> None:
    before = with_planning(older, ONE_LINE)
    mending.mend(older)
    told = "{currency: GBP, cost per green: {topdressing: 25}, cost per tee: {topdressing: 25}}"
    after = before.replace("{currency: GBP, cost per surface: {topdressing: 25}}", told).replace(
        "\nname:", "\nformat: 2\nname:"
    )
    # The remark stands as far right as before, or one blank behind what is longer now.
    assert (older / "club.yaml").read_text(encoding="utf-8") == after.replace("}}   # brief", "}} # brief")


def test_where_other_lines_would_change_nothing_is_written_and_what_to_do_is_said(
    swardcast: Callable[..., Done], older: Path
) -> None:
    with_planning(older, IN_BRACKETS)
    before = tree(older)
    done = swardcast("check", "--club", str(older), "--mend")
    assert (done.code, done.out) == (1, "")
    assert "the file: found a layout in which other lines would change with those that must" in done.err
    assert "planning.cost per surface: found 'cost per surface'" in done.err
    assert tree(older) == before


@pytest.mark.parametrize("by_kind", ["cost per green", "cost per practice ground"])
def test_costs_by_kind_beside_the_older_ones_are_for_the_club_to_sort_out(older: Path, by_kind: str) -> None:
    with_planning(
        older,
        f"planning:\n  currency: GBP\n  cost per surface: {{topdressing: 25}}\n  {by_kind}: {{topdressing: 20}}\n",
    )
    before = tree(older)
    mending.mend(older)
    assert tree(older) == before
    with pytest.raises(InputNeedsAttention, match="the unknown field 'cost per surface'"):
        read_club_folder(older)


def test_what_is_no_yaml_of_ours_is_put_right_first(older: Path) -> None:
    (older / "club.yaml").write_text(BEFORE + "site: https://other.example\n", encoding="utf-8")
    before = tree(older)
    with pytest.raises(InputNeedsAttention, match="site: found the same field a second time"):
        mending.mend(older)
    assert tree(older) == before


def test_without_surfaces_that_can_be_read_nobody_knows_whose_costs_they_are(older: Path) -> None:
    (older / "surfaces.yaml").write_text("greens: many\n", encoding="utf-8")
    before = tree(older)
    with pytest.raises(InputNeedsAttention, match=r"surfaces\.yaml"):
        mending.mend(older)
    assert tree(older) == before


@pytest.mark.parametrize("mend", [[], ["--mend"]])
def test_a_newer_format_is_told_alone_and_never_mended(
    swardcast: Callable[..., Done], older: Path, mend: list[str]
) -> None:
    text = BEFORE.replace("name:", "format: 3\nname:").replace("course:", "courses:")
    (older / "club.yaml").write_text(text, encoding="utf-8")
    before = tree(older)
    done = swardcast("check", "--club", str(older), *mend)
    assert (done.code, done.out) == (1, "")
    assert done.err.splitlines() == [
        "club.yaml",
        (
            "  line 3, format: found a folder written for a newer Swardcast (format 3; this one knows 1 and 2)."
            " Install a newer Swardcast. Nothing else was looked at."
        ),
        "1 thing needs attention.",
    ]
    assert tree(older) == before


def test_mend_does_not_go_together_with_json(swardcast: Callable[..., Done], older: Path) -> None:
    before = tree(older)
    assert swardcast("check", "--club", str(older), "--mend", "--json").code == 2
    assert tree(older) == before


def test_a_folder_without_a_club_file_is_told_as_ever(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    done = swardcast("check", "--club", str(tmp_path), "--mend")
    assert done.code == 1
    assert "club.yaml" in done.err


def _title(value: Any) -> list[tuple[str | int, ...]]:
    jobs = value["jobs"]
    return [("jobs", place, "title") for place, job in enumerate(jobs) if "title" in job]


def _heading(tree: Any, path: tuple[str | int, ...], surfaces: Collection[SurfaceKind]) -> None:
    job = tree["jobs"][path[1]]
    place = list(job).index("title")
    remark = job.ca.items.pop("title", None)
    job.insert(place, "heading", job.pop("title"))
    if remark is not None:
        job.ca.items["heading"] = remark


MADE_UP = FormatChange(
    since=3, files=("plan/*.yaml",), found="'title'", expected="'heading'", where=_title, mend=_heading
)


def test_a_made_up_change_is_found_in_each_file_of_the_plan_and_mended_there(club: Path) -> None:
    """The demo's own plan, of which each line "title: ..." of a job is to become "heading: ..."."""
    problems: list[Problem] = []
    files = Files(club, problems)
    found = list(find_changes(files, [MADE_UP]))
    texts = mended_texts(
        found, {SurfaceKind.GREEN}, lambda name: (club / name).read_bytes().decode(), problems=problems, to=3
    )
    assert problems == []
    expected = {
        f"plan/{path.name}": path.read_text(encoding="utf-8").replace("    title:", "    heading:")
        for path in sorted((DEMO / "plan").iterdir())
    }
    assert len(found) == sum(text.count("    heading:") for text in expected.values()) == 22
    assert found[0].problem.line == next(
        number
        for number, line in enumerate((club / found[0].file).read_text(encoding="utf-8").splitlines(), 1)
        if line.startswith("    title:")
    )
    told = (DEMO / "club.yaml").read_text(encoding="utf-8").replace("format: 2", "format: 3", 1)
    assert texts == {"club.yaml": told, **expected}


def test_a_change_is_not_looked_for_in_a_folder_of_its_own_format(club: Path) -> None:
    text = (club / "club.yaml").read_text(encoding="utf-8")
    (club / "club.yaml").write_text(text.replace("format: 2", "format: 3", 1), encoding="utf-8")
    assert list(find_changes(Files(club, []), [MADE_UP])) == []


def test_a_new_folder_and_the_demo_are_of_this_format(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    swardcast("start", str(tmp_path / "new"), "--today", "2027-08-18")
    for folder in (tmp_path / "new", DEMO):
        assert f"\nformat: {FORMAT} " in "\n" + (folder / "club.yaml").read_text(encoding="utf-8")


def test_reading_a_folder_loads_nothing_that_mends(older: Path) -> None:
    code = "import sys; from swardcast.cli.main import run; run(['check', '--club', sys.argv[1]]); print('ruamel.yaml' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code, str(older)], capture_output=True, text=True, check=True)
    assert done.stdout == "False\n"
