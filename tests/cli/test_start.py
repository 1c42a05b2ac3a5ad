"""`swardcast start` makes a folder that works, in one piece or not at all."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from swardcast.cli import start
from swardcast.errors import SwardcastError
from swardcast.reading.folder import read_club_folder
from tests.cli.conftest import Done
from tests.conftest import DEMO

SURFACES = 9 + 1 + 9 + 6  # nine greens, a practice green, nine tees, six fairways


def test_the_new_folder_is_a_result_and_the_next_step_is_talk(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    folder = tmp_path / "my-club"
    done = swardcast("start", str(folder), "--today", "2027-08-18")
    assert (done.code, done.out) == (0, f"{folder}\n")
    assert done.err == f"Made {folder}. Now: swardcast build --club {folder} --output site\n"
    assert [path.name for path in tmp_path.iterdir()] == ["my-club"]


def test_the_next_step_can_be_pasted_whatever_the_folder_is_called(
    swardcast: Callable[..., Done], tmp_path: Path
) -> None:
    folder = tmp_path / "my club"
    done = swardcast("start", str(folder), "--today", "2027-08-18")
    assert done.err == f"Made {folder}. Now: swardcast build --club '{folder}' --output site\n"


def test_the_new_folder_needs_no_attention(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    folder = tmp_path / "my-club"
    swardcast("start", str(folder))
    done = swardcast("check", "--club", str(folder))
    assert (done.code, done.err) == (0, "")
    assert "nothing needs attention" in done.out


def test_the_example_work_starts_on_the_monday_after_today(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    """18 August 2027 is a Wednesday (the demo's 20th a Friday), so Monday is the 23rd."""
    folder = tmp_path / "my-club"
    swardcast("start", str(folder), "--today", "2027-08-18")
    records = read_club_folder(folder)
    (job,) = records.jobs.values()
    assert job.starts.isoformat() == "2027-08-23"
    assert job.announced.isoformat() == "2027-08-18"
    assert len(records.surfaces) == SURFACES
    assert len(records.weather.history_c) == 10957


def test_an_empty_folder_may_be_filled_and_parents_are_made(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    assert swardcast("start", str(tmp_path / "empty")).code == 0
    assert swardcast("start", str(tmp_path / "a" / "b" / "c")).code == 0


def test_a_folder_with_anything_in_it_is_refused_and_left_as_it_was(
    swardcast: Callable[..., Done], tmp_path: Path
) -> None:
    (tmp_path / "letters").mkdir()
    (tmp_path / "letters" / "dear.txt").write_text("Dear member", encoding="utf-8")
    done = swardcast("start", str(tmp_path / "letters"))
    assert done == Done(1, "", f"{tmp_path / 'letters'} exists already and is not empty; name a new folder\n")
    assert [path.name for path in tmp_path.rglob("*")] == ["letters", "dear.txt"]


def test_a_file_in_the_place_is_refused(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    (tmp_path / "file").write_text("words", encoding="utf-8")
    assert swardcast("start", str(tmp_path / "file")).code == 1
    assert (tmp_path / "file").read_text(encoding="utf-8") == "words"


@pytest.mark.parametrize("day", ["2027-02-30", "tomorrow", "23/08/2027", "", "0001-01-01", "9999-12-31"])
def test_a_day_that_is_none_leaves_nothing(swardcast: Callable[..., Done], tmp_path: Path, day: str) -> None:
    done = swardcast("start", str(tmp_path / "my-club"), "--today", day)
    assert done == Done(1, "", f"{day!r} is no day; expected one such as '2027-08-23'\n")
    assert list(tmp_path.iterdir()) == []


def test_a_failure_half_way_leaves_nothing(
    swardcast: Callable[..., Done], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The past years are copied last; here the disk is full by then."""

    def disk_is_full(*_: object) -> None:
        raise OSError(28, "No space left on device", "1997-2026.csv")

    monkeypatch.setattr(shutil, "copytree", disk_is_full)
    done = swardcast("start", str(tmp_path / "my-club"))
    assert done == Done(1, "", "1997-2026.csv: No space left on device\n")
    assert list(tmp_path.iterdir()) == []


def test_an_installation_that_is_not_whole_is_told(
    swardcast: Callable[..., Done], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def not_whole() -> Path:
        raise SwardcastError("this installation is not whole")

    monkeypatch.setattr(start, "demo_club", not_whole)
    assert swardcast("start", str(tmp_path / "my-club")) == Done(1, "", "this installation is not whole\n")
    assert list(tmp_path.iterdir()) == []


def test_the_present_folder_may_be_filled_when_empty(
    swardcast: Callable[..., Done], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert swardcast("start", ".").code == 0
    assert (tmp_path / "club.yaml").is_file()


def test_the_remarks_about_weather_are_a_block_that_works(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    """Without their '# ' the lines say how a station writes: half of 5 plus 15 is 10."""
    folder = tmp_path / "my-club"
    swardcast("start", str(folder))
    text = (folder / "club.yaml").read_text(encoding="utf-8")
    remarks, mark, block = text.partition("# weather:\n")
    plain = "".join(line.removeprefix("# ") for line in f"{mark}{block}".splitlines(keepends=True))
    (folder / "club.yaml").write_text(remarks + plain, encoding="utf-8")
    export = "Date,Time,Temp Out,Low Temp,Hi Temp,Rain\n" + "".join(
        f"23/08/2027,{hour:02d}:00,--,{5 if hour == 4 else 9},{15 if hour == 14 else 9},0.0\n" for hour in range(24)
    )
    (folder / "weather" / "observed.csv").write_text(export, encoding="utf-8")
    assert read_club_folder(folder).weather.observed_c == {date(2027, 8, 23): 10.0}


def test_the_remarks_about_plans_are_a_block_that_works(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    folder = tmp_path / "my-club"
    swardcast("start", str(folder))
    text = (folder / "club.yaml").read_text(encoding="utf-8")
    remarks, mark, after = text.partition("# planning:\n")
    block, blank, rest = after.partition("\n\n")
    plain = "".join(line.removeprefix("# ") for line in f"{mark}{block}".splitlines(keepends=True))
    (folder / "club.yaml").write_text(f"{remarks}{plain}{blank}{rest}", encoding="utf-8")
    planning = read_club_folder(folder).planning
    assert (planning.currency, planning.sand_price_per_t, planning.organic_layer_mm) == ("GBP", 45.0, 20.0)
    assert (planning.goal.disturbed_fraction, planning.goal.removed_fraction) == (0.15, 0.1)
    assert (planning.importance.visitors, planning.importance.periods[0].times) == (2.0, 1.5)
    assert (planning.days_without_work.public_holidays, planning.days_without_work.least_daylight_h) == ("GB-ENG", 9.0)


def test_the_remarks_on_the_look_are_ready_to_be_used(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    folder = tmp_path / "my-club"
    swardcast("start", str(folder))
    told = (folder / "club.yaml").read_text(encoding="utf-8")
    for line in ("look:", "  badge: ", "  colour: ", "  second colour: ", "entry counts for: "):
        assert told.count(f"# {line}") == 1
        told = told.replace(f"# {line}", line)
    (folder / "club.yaml").write_text(told, encoding="utf-8")
    shutil.copy(DEMO / "badge.svg", folder / "badge.svg")
    club = read_club_folder(folder).club
    assert (club.look.palette.band, club.look.palette.stripe) == ("#1f4d3a", "#d9b44a")
    assert club.look.badge is not None
    assert club.entry_counts_for_minutes == 600
