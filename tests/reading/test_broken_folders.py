"""Broken inputs: each is found with file, line and field, and everything is told in one go."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.conftest import problems_of

PLAN = "plan/2027-late-summer.yaml"
DONE = "log/2027/2027-08-23-1140-greens-1-to-3-done.md"
HELD = "log/2027/2027-08-25-0710-held-up-by-rain.md"

# file, text to replace, replacement, words that the one message must hold
CASES: dict[str, tuple[str, str, str, tuple[str, ...]]] = {
    "an unknown field": ("club.yaml", "time zone:", "time zne:", ("line 9", "'time zne'", "Did you mean 'time zone'?")),
    "an unknown zone": ("club.yaml", "Europe/London", "Europe/Londn", ("Europe/Londn", "Did you mean 'Europe/London'?")),
    "a latitude off the earth": ("club.yaml", "latitude: 55.6", "latitude: 155.6", ("latitude", "-90 to 90")),
    "an elevation without unit": ("club.yaml", "elevation: 18 m", "elevation: 18", ("elevation", "needs its unit")),
    "a field twice": ("club.yaml", "name: Quill", "name: A\nname: Quill", ("name", "second time", "line 2")),
    "a tab": ("club.yaml", "  latitude", "\tlatitude", ("line 6", "tabs")),
    "an unknown grass": ("surfaces.yaml", "cool-season", "cool-seson", ("grass", "Did you mean 'cool-season'?")),
    "a surface that does not exist": (PLAN, "surfaces: greens 1-18", "surfaces: greens 1-19", ("surfaces", "no green 19")),
    "an unknown kind of work": (PLAN, "- scarifying:", "- scarifyng:", ("scarifyng", "Did you mean 'scarifying'?")),
    "a tine wider than its spacing": (PLAN, "spacing: 50 x 50 mm", "spacing: 12 x 50 mm", ("tines of 13 mm at 12 x 50 mm", "narrower than their spacing")),
    "tines of 400 mm depth": (PLAN, "depth: 220 mm", "depth: 400 mm", ("400 mm", "1 mm to 350 mm for deep tining")),
    "a length without unit": (PLAN, "diameter: 16 mm", "diameter: 16", ("deep tining.diameter", "needs its unit")),
    "a decimal comma": (PLAN, "sand: 0.5 kg/m2", "sand: '0,5 kg/m2'", ("0,5 kg/m2", "amount of sand")),
    "a day that does not exist": (PLAN, "starts: 2027-10-11", "starts: 2027-02-30", ("starts", "exists in the calendar")),
    "an id twice": (PLAN, "id: greens-light-sanding-2027", "id: greens-renovation-2027", ("second time", PLAN)),
    "work announced after it starts": (PLAN, "starts: 2027-10-11", "starts: 2027-01-11", ("announced", "after the work")),
    "a job not in the plan": (DONE, "job: greens-renovation-2027", "job: greens-renovaton-2027", ("job", "not in the plan", "Did you mean 'greens-renovation-2027'?")),
    "a surface of another job": (DONE, "surfaces: greens 1-3", "surfaces: tees 1-3", ("tee 1", "not part of the job")),
    "an unknown kind of entry": (DONE, "kind: work done", "kind: work don", ("kind", "Did you mean 'work done'?")),
    "a moment without a time": (DONE, "at: 2027-08-23 11:40", "at: 2027-08-23", ("at", "day and time")),
    "a time that the clocks skip": (DONE, "at: 2027-08-23 11:40", "at: 2027-03-28 01:30", ("at", "clocks skip")),
    "a time that the clocks repeat": (DONE, "at: 2027-08-23 11:40", "at: 2027-10-31 01:30", ("at", "clocks repeat")),
    "no fields at all": (DONE, "---", "===", ("line 1", "no fields between")),
    "a temperature of 90 C": ("weather/observed.csv", "2027-05-01,", "2027-05-01,90.0,91.0,0\n2027-05-01,", ("line 2", "'90.0'", "-60 to 60 C")),
    "a day of weather twice": ("weather/observed.csv", "2027-05-01,", "2027-05-01,5.0,11.0,0\n2027-05-01,", ("line 3", "second time")),
    "an unknown column": ("weather/observed.csv", "tmin_c", "tmin", ("line 1", "Did you mean 'tmin_")),
}  # fmt: skip


@pytest.mark.parametrize("case", CASES)
def test_a_broken_file_is_told_with_its_place_and_a_remedy(case: str, club: Path) -> None:
    name, old, new, words = CASES[case]
    path = club / name
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1 if old != "---" else -1), encoding="utf-8")
    problems = problems_of(club)
    assert problems, "nothing was found"
    assert problems[0].startswith(f"{name}: ")
    for word in words:
        assert any(word in problem for problem in problems), (word, problems)


def test_the_demo_needs_no_attention(club: Path) -> None:
    assert problems_of(club) == []


def test_problems_of_several_files_come_in_one_go_and_in_order(club: Path) -> None:
    for name in ("club.yaml", "surfaces.yaml", "weather/observed.csv"):
        path = club / name
        path.write_text(path.read_text(encoding="utf-8") + "\nnonsense: 1\n", encoding="utf-8")
    files = [problem.split(":")[0] for problem in problems_of(club)]
    assert {"club.yaml", "surfaces.yaml", "weather/observed.csv"} <= set(files)
    assert files == sorted(files)


def test_marks_at_the_beginning_and_foreign_line_ends_are_no_problem(club: Path) -> None:
    path = club / "club.yaml"
    path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes().replace(b"\n", b"\r\n"))
    assert problems_of(club) == []


@pytest.mark.parametrize(
    ("data", "word"),
    [(b"name: \xff\xfe", "not UTF-8"), (b"name: a\x00b", "U+0000"), (b"", "'name'"), (b"- a\n- b\n", "a list of 2")],
)
def test_a_file_that_is_no_text_is_told(data: bytes, word: str, club: Path) -> None:
    (club / "club.yaml").write_bytes(data)
    assert any(word in problem for problem in problems_of(club)), problems_of(club)


def test_aliases_and_bombs_are_refused(club: Path) -> None:
    bomb = "a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n"
    (club / "club.yaml").write_text(bomb, encoding="utf-8")
    assert any("alias" in problem for problem in problems_of(club))
