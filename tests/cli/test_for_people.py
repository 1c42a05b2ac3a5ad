"""What a person reads in the terminal."""

from __future__ import annotations

import math
from datetime import date, timedelta
from pathlib import Path

import pytest

from swardcast.cli.main import run
from tests.conftest import DEMO

AS_OF = ("--as-of", "2027-09-14 09:30")


def test_outlook_names_state_dates_reasons_and_their_source(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["outlook", "--club", str(DEMO), *AS_OF]) == 0
    said = capsys.readouterr().out
    assert said.startswith("Quillhaven Golf Club as of 9:30am on Tuesday 14 September 2027")
    assert "Green 13 [green-13]: open with care; Hollow tining, scarifying and sanding the greens: healing" in said
    assert "- Work done at 3:45pm on Thursday 26 August. [2027-08-26-1545-greens-13-to-15-done]" in said


def test_explain_shows_every_step_with_its_source(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["explain", "green 13", "--club", str(DEMO), *AS_OF]) == 0
    said = capsys.readouterr().out
    assert (
        "Scarifying: 2 / 25 = 8.0\u00a0% of the surface, of which 30\u00a0% counts (a shallow cut)." in said
    )  # 2 mm of every 25 mm
    assert "[plan/2027-late-summer.yaml, line 22]" in said


def test_explain_names_the_nearest_surface(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["explain", "grene-13", "--club", str(DEMO), *AS_OF]) == 1
    assert "Did you mean 'green-13'?" in capsys.readouterr().err


def test_a_moment_that_is_none_needs_attention(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["outlook", "--club", str(DEMO), "--as-of", "tomorrow"]) == 1
    assert "'tomorrow' is no moment" in capsys.readouterr().err


def test_a_missing_folder_needs_attention(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert run(["check", "--club", str(tmp_path / "nowhere")]) == 1
    assert "no such folder" in capsys.readouterr().err


def test_sums_are_shown_a_line_each(capsys: pytest.CaptureFixture[str]) -> None:
    """1.4 t on 500 m2 is 2.8 kg/m2, and at 1.56 t/m3 1.795 mm: by hand."""
    assert run(["reckon", "sand", "--rate", "1.4 t", "--area", "500 m2"]) == 0
    assert capsys.readouterr().out.splitlines()[:2] == ["depth_mm: 1.795", "kg_per_m2: 2.8"]


def test_sand_in_tonnes_without_an_area_is_wrong_usage(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["reckon", "sand", "--rate", "1.4 t"]) == 2
    assert "--area" in capsys.readouterr().err


def days_file(path: Path, first: date, count: int, tmean_c: float) -> str:
    rows = [f"{first + timedelta(days=n)},{tmean_c}" for n in range(count)]
    path.write_text("\n".join(["date,tmean_c", *rows]), encoding="utf-8")
    return str(path)


@pytest.mark.parametrize(("first", "count"), [(date(2027, 4, 1), 300), (date(2017, 1, 1), 3652)])
def test_healing_at_a_steady_20_c_is_the_closed_form(
    first: date, count: int, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """At 20 C a day is a growth day; holes close from 10 % to 2 % at 2.70 / 12.7 a day, by hand."""
    import json

    file = days_file(tmp_path / "days.csv", first, count, 20.0)
    work = ["--hollow", "12.7 mm at 50.8 x 50.8 mm", "--passes", "4", "--start", "2027-05-01", "--temperatures", file]
    assert run(["reckon", "healing", *work, "--json"]) == 0
    closed = json.loads(capsys.readouterr().out)["days_to_holes_closed"]
    assert closed["likely"] == pytest.approx(12.7 / 2.70 * math.log(5), abs=0.06)  # 7.57; the rim needs 7.06


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("day,temp\n1,2\n", "columns date,tmean_c or month,tmean_c"),
        ("month,tmean_c\n1,4\n", "twelve, from 1 to 12"),
        ("date,tmean_c\n2027-05-01,90\n", "from -60 to 60 C"),
        ("date,tmean_c\n", "a line for each day or month"),
    ],
)
def test_temperatures_that_cannot_be_read_are_told(
    text: str, word: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "t.csv").write_text(text, encoding="utf-8")
    work = ["--hollow", "12.7 mm at 50.8 x 50.8 mm", "--start", "2027-05-01", "--temperatures", str(tmp_path / "t.csv")]
    assert run(["reckon", "healing", *work]) == 1
    assert word in capsys.readouterr().err


@pytest.mark.parametrize(
    "wrong",
    [
        ["--hollow", "12.7 mm"],
        ["--grooves", "30 mm at 25 mm"],
        ["--start", "soon"],
        ["--sand-surplus", "2"],
        ["--passes", "0"],
    ],
)
def test_healing_from_a_wrong_option_is_wrong_usage(wrong: list[str]) -> None:
    with pytest.raises(SystemExit) as left:
        run(["reckon", "healing", "--start", "2027-05-01", "--temperatures", "none.csv", *wrong])
    assert left.value.code == 2
