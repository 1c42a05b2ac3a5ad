"""`swardcast check --mend` in plans and log entries: the fields that must change do, and no other byte."""

from __future__ import annotations

from collections.abc import Callable, Collection
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.cli import mending
from swardcast.errors import InputNeedsAttention, Problem
from swardcast.reading.files import Files
from swardcast.reading.folder import read_club_folder
from swardcast.reading.format_changes import FormatChange, find_changes
from swardcast.reading.mending import mended_texts
from swardcast.records.club import SurfaceKind
from swardcast.records.log import Progress
from swardcast.records.operations import Kind
from tests.cli.conftest import Done
from tests.cli.test_check import tree
from tests.outlook.small_club import SmallClub

# In format 1 all drainage was 'drainage', and had no quantities.
PLAN = """# Winter work.
programme:   Winter 2027
announced: 2027-03-01

jobs:
  - id: drain
    title: "Drain by the first tee"   # drainage
    starts: 2027-06-01
    surfaces: greens 1-2
    operations:
      - topdressing: {sand: 2 mm}     # from the heap
      # along the path
      - drainage
      - "drainage":
      - rolling
    surfaces a day:  9
    while working: closed
    normal after: {from: 4 to 8 weeks,  source: 'our own experience'}
    why:
      - The drainage is old.
"""
DONE = """---
# typed on the bank
at:   2027-06-01 16:00
kind: work done
job: drain

as done:
- 'drainage'
- {drainage: {}}
by: "the drainage  team: two"
---

We found the old drainage.

---
as done:
- drainage
"""
CORRECTED = """---
at: 2027-06-02 07:00
kind: correction
corrects: 2027-06-01-done
instead:
    at: 2027-06-01 16:10
    kind: work done
    job: drain
    as done:
        - drainage
---
"""
NAMES = ("plan/winter.yaml", "log/2027/2027-06-01-done.md", "log/2027/2027-06-02-corrected.md")


@pytest.fixture
def older(tmp_path: Path) -> Path:
    folder = SmallClub(tmp_path / "club").folder
    for name, text in zip(NAMES, (PLAN, DONE, CORRECTED), strict=True):
        put(folder, name, text)
    return folder


def put(folder: Path, name: str, text: str) -> None:
    path = folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(text.encode())


def text_in(folder: Path, name: str) -> str:
    return (folder / name).read_bytes().decode()


@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_the_older_name_of_an_operation_is_mended_in_the_plan_and_in_entries_and_nothing_else_is(
    swardcast: Callable[..., Done], older: Path, mark: str, end: str
) -> None:
    before = {name: mark + text_in(older, name).replace("\n", end) for name in NAMES}
    for name, text in before.items():
        put(older, name, text)
    others = {
        name: told
        for name, told in tree(older).items()
        if (older / name).is_file() and name not in (*NAMES, "club.yaml")
    }
    done = swardcast("check", "--club", str(older), "--as-of", "2027-06-03", "--mend")
    assert done.code == 0, done.err
    new = "drainage trenching"
    after = {
        NAMES[0]: PLAN.replace("- drainage\n", f"- {new}\n").replace('- "drainage"', f'- "{new}"'),
        NAMES[1]: DONE.replace("- 'drainage'", f"- '{new}'").replace("{drainage:", f"{{{new}:"),
        NAMES[2]: CORRECTED.replace("- drainage", f"- {new}"),
    }
    assert {name: text_in(older, name) for name in NAMES} == {
        name: mark + text.replace("\n", end) for name, text in after.items()
    }
    assert {name: text_in(older, f".before-format-2/{name}") for name in NAMES} == before
    assert {name: told for name, told in tree(older).items() if name in others} == others
    assert text_in(older, "club.yaml").lstrip().startswith("format: 2\n")


def test_what_was_mended_is_read_as_it_was_meant(older: Path) -> None:
    mending.mend(older)
    records = read_club_folder(older)
    kinds = [operation.kind for operation in records.jobs["drain"].operations]
    assert kinds == [Kind.TOPDRESSING, Kind.DRAINAGE_TRENCHING, Kind.DRAINAGE_TRENCHING, Kind.ROLLING]
    done = [entry for entry in records.entries if isinstance(entry, Progress)]
    assert [[operation.kind for operation in entry.as_done] for entry in done] == [
        [Kind.DRAINAGE_TRENCHING] * 2,
        [Kind.DRAINAGE_TRENCHING],
    ]
    assert done[0].head.words == "We found the old drainage.\n\n---\nas done:\n- drainage"


def test_all_that_is_older_in_a_folder_is_mended_in_one_go(older: Path) -> None:
    club = text_in(older, "club.yaml") + "planning: {currency: GBP, cost per surface: {topdressing: 25}}\n"
    put(older, "club.yaml", club)
    mending.mend(older)
    assert read_club_folder(older).planning.work_costs.keys() == {SurfaceKind.GREEN, SurfaceKind.TEE}
    kept = older / ".before-format-2"
    assert {path.relative_to(kept).as_posix() for path in kept.rglob("*.*")} == {"club.yaml", *NAMES}
    assert text_in(older, ".before-format-2/club.yaml") == club


def test_without_mend_each_place_is_told_once_with_its_line_and_nothing_is_written(
    swardcast: Callable[..., Done], older: Path
) -> None:
    before = tree(older)
    done = swardcast("check", "--club", str(older))
    assert done.code == 1
    told = (
        "found 'drainage', as before format 2; expected 'drainage trenching'; for a bunker's drain, 'bunker drainage'."
        " 'swardcast check --mend' writes it so and keeps your remarks."
    )
    assert done.err.splitlines() == [
        NAMES[1],
        f"  line 8, as done 1: {told}",
        f"  line 9, as done 2: {told}",
        NAMES[2],
        f"  line 10, instead.as done 1: {told}",
        NAMES[0],
        f"  line 13, job 1, operation 2: {told}",
        f"  line 14, job 1, operation 3: {told}",
        "5 things need attention.",
    ]
    assert tree(older) == before


def test_in_a_folder_of_this_format_it_is_a_word_like_any_other(swardcast: Callable[..., Done], older: Path) -> None:
    put(older, "club.yaml", "format: 2\n" + text_in(older, "club.yaml").lstrip())
    before = tree(older)
    done = swardcast("check", "--club", str(older), "--mend")
    assert (done.code, done.out) == (1, "")
    assert "Nothing of an older format was found" in done.err
    assert "Did you mean 'drainage trenching'?" in done.err
    assert tree(older) == before


@pytest.mark.parametrize("broken", [NAMES[0], NAMES[1]])
def test_beside_a_file_that_cannot_be_read_nothing_is_mended_since_it_may_hold_more(older: Path, broken: str) -> None:
    put(older, broken, "---\nat: [\n---\n" if broken.endswith(".md") else "jobs: [\n")
    before = tree(older)
    with pytest.raises(InputNeedsAttention, match="never closed"):
        mending.mend(older)
    assert tree(older) == before


def test_an_entry_whose_fields_are_not_closed_is_told_and_nothing_is_mended(older: Path) -> None:
    put(older, NAMES[1], DONE.replace("---\n", "", 1).replace("---\n", ""))
    before = tree(older)
    with pytest.raises(InputNeedsAttention, match="no fields between two lines of '---'"):
        mending.mend(older)
    assert tree(older) == before


@pytest.mark.parametrize("club", ["", "- a list\n", "{}\n", "name: [\n"])
def test_a_club_file_without_fields_is_left_to_the_check(older: Path, club: str) -> None:
    put(older, "club.yaml", club)
    before = tree(older)
    mending.mend(older)
    assert tree(older) == before


def test_a_layout_that_cannot_be_kept_is_told_and_nothing_is_mended(older: Path) -> None:
    put(older, NAMES[1], DONE.replace("{drainage: {}}", "{drainage: }"))
    before = tree(older)
    with pytest.raises(InputNeedsAttention, match="a layout in which other lines would change") as told:
        mending.mend(older)
    assert f"{NAMES[1]}\n  the file: found a layout" in str(told.value)
    assert tree(older) == before


PLACES = st.sampled_from(
    ["- {}\n", "- '{}'\n", '- "{}"\n', "- {}:\n", "- {{{}: {{}}}}\n", "- {}: {{}}\n", '- "{}": {{}}\n']
)
OTHERS = st.sampled_from(
    [
        "",
        "# drainage\n",
        "\n",
        "by:   'drainage'  # drainage\n",
        "by: drainage,\n    of the course\n",
        "by: >\n  drainage\n\n  - drainage\n",
        "private note: |\n  as done:\n  - drainage\n\n",
        "others:\n       - drainage\n       - more: [drainage,\n           drainage]\n",
    ]
)
WORDS = st.text(st.sampled_from("drainage:-#' \n\té"), max_size=30) | st.sampled_from(["---\n- drainage\n---", "\n\n"])


@st.composite
def entries(draw: st.DrawFn) -> str:
    """An entry, with a pair of braces in the places of the operation's name."""
    before, after = draw(OTHERS), draw(OTHERS)
    if before.partition(":")[0] == after.partition(":")[0]:
        after = ""
    indent = " " * draw(st.integers(0, 4))
    work = [indent + draw(PLACES) for _ in range(draw(st.integers(1, 3)))]
    work.insert(draw(st.integers(0, len(work))), f"{indent}- rolling   # drainage\n")
    heading = draw(st.sampled_from(["as done:\n", "as done:   # drainage\n", "'as done':\n"]))
    above = draw(st.sampled_from(["---\n", "---  \n", "\n---\n"]))
    head = "at: 2027-06-01 16:00\nkind: work done\njob: drain\n"
    quoted = [text.replace("{", "{{").replace("}", "}}") for text in (before, after, draw(WORDS))]
    return f"{above}{quoted[0]}{head}{heading}{''.join(work)}{quoted[1]}---\n{quoted[2]}"


@given(entries(), st.sampled_from(["\n", "\r\n"]), st.sampled_from(["", "\ufeff"]))
def test_mending_changes_the_names_alone_however_an_entry_is_laid_out_and_a_second_time_nothing(
    entry: str, end: str, mark: str
) -> None:
    before, after = (mark + entry.format(*[name] * 9).replace("\n", end) for name in ("drainage", "drainage trenching"))
    with TemporaryDirectory() as place:
        folder = Path(place)
        put(folder, "club.yaml", "name: A club   # ours\n")
        put(folder, "surfaces.yaml", "greens:\n  grass: cool-season\n  holes: {1: 500 m2}\n")
        put(folder, NAMES[1], before)
        mending.mend(folder)
        assert text_in(folder, NAMES[1]) == after
        assert text_in(folder, "club.yaml") == "format: 2\nname: A club   # ours\n"
        once = tree(folder)
        mending.mend(folder)
        assert tree(folder) == once


def _made_up(files: str) -> FormatChange:
    """At the top of each such file, a field 'old' that is to be called 'new'."""

    def where(value: Any) -> list[tuple[str | int, ...]]:
        return [("old",)] if isinstance(value, dict) and "old" in value else []

    def mend(tree: Any, path: tuple[str | int, ...], surfaces: Collection[SurfaceKind]) -> None:
        tree.insert(list(tree).index("old"), "new", tree.pop("old"))

    return FormatChange(since=3, files=(files,), found="'old'", expected="'new'", where=where, mend=mend)


@pytest.mark.parametrize(
    ("files", "name"),
    [
        ("club.yaml", "club.yaml"),
        ("surfaces.yaml", "surfaces.yaml"),
        ("choices.yaml", "choices.yaml"),
        ("plan/*.yaml", "plan/2027.yaml"),
        ("weather/sources.yaml", "weather/sources.yaml"),
        ("log/**/*.md", "log/2027/06/note.md"),
    ],
)
def test_a_change_may_lie_in_any_file_with_fields(tmp_path: Path, files: str, name: str) -> None:
    fence = "---\n" if name.endswith(".md") else ""
    put(tmp_path, "club.yaml", "format: 2\n")
    put(tmp_path, name, f"{fence}# one\nformat:  2\nold:   # two\n  - a   # three\n{fence}")
    problems: list[Problem] = []
    found = list(find_changes(Files(tmp_path, problems), [_made_up(files)]))
    texts = mended_texts(found, {SurfaceKind.GREEN}, lambda one: text_in(tmp_path, one), problems=problems, to=3)
    assert problems == []
    number = "format: 3" if name == "club.yaml" else "format:  2"
    assert texts[name] == f"{fence}# one\n{number}\nnew:   # two\n  - a   # three\n{fence}"
