"""`swardcast check` reads everything, says what is wrong and writes nothing."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import Done
from tests.conftest import DEMO, ROOT
from tests.outlook.small_club import SmallClub


def tree(folder: Path) -> dict[str, tuple[int, bytes]]:
    """Every file with its time and its bytes."""
    return {
        path.relative_to(folder).as_posix(): (path.stat().st_mtime_ns, path.read_bytes() if path.is_file() else b"")
        for path in [folder, *folder.rglob("*")]
    }


def test_a_folder_in_order_is_fine_and_its_contents_are_counted(swardcast: Callable[..., Done]) -> None:
    done = swardcast("check", "--club", str(DEMO), "--as-of", "2027-09-14")
    assert (done.code, done.err) == (0, "")
    first, *counts = done.out.splitlines()
    assert first == "Quillhaven Golf Club: nothing needs attention."
    assert counts[:2] == ["  surfaces: 65", "  jobs: 22"]
    assert counts[-1] == "  kept from members: planning, choices of work (6), private notes (2)"


def test_a_club_that_keeps_nothing_to_itself_hears_nothing_of_it(
    swardcast: Callable[..., Done], tmp_path: Path
) -> None:
    done = swardcast("check", "--club", str(SmallClub(tmp_path).folder), "--as-of", "2027-06-01")
    assert "kept from members" not in done.out


def test_an_entry_dated_ahead_is_pointed_out_since_it_says_nothing_yet(
    swardcast: Callable[..., Done], club: Path
) -> None:
    for entry in (club / "log").rglob("*.md"):
        entry.unlink()
    slip = "---\nat: 2127-09-14 07:00\nkind: note to members\n---\nA slip of the pen.\n"
    (club / "log/2027/slip.md").write_text(slip, encoding="utf-8")
    done = swardcast("check", "--club", str(club))
    said = "An entry is dated ahead and says nothing yet: it counts from 7am on Sunday 14 September 2127 [slip]."
    assert (done.code, done.err) == (0, f"Worth another look: {said}\n")


@pytest.mark.parametrize(("day", "ahead"), [("2027-05-19", True), ("2027-05-20", False), ("2027-02-28", False)])
def test_a_label_to_be_read_on_a_day_to_come_is_pointed_out_once_its_job_is_announced(
    swardcast: Callable[..., Done], tmp_path: Path, day: str, ahead: bool
) -> None:
    club = SmallClub(tmp_path)
    label = "re-entry: once it is dry, signs: on the tee, label read by: AB, label read on: 2027-05-20"
    club.job("feed", "06-01", f"liquid feed: {{product: feed, {label}}}", more="    follow up: 1 to 2 hours\n")
    done = swardcast("check", "--club", str(club.folder), "--as-of", day)
    said = (
        "plan/feed.yaml, line 4: the label of the liquid feed is to be read on Thursday 20 May, and the notice tells it"
    )
    assert (done.code, done.err) == (0, f"Worth another look: {said} as read already.\n" if ahead else "")


def test_own_words_that_are_hard_to_read_are_worth_another_look_and_no_error(
    swardcast: Callable[..., Done], club: Path
) -> None:
    plan = club / "plan/2027-late-summer.yaml"
    text = plan.read_text(encoding="utf-8")
    plan.write_text(
        text.replace(
            "I know nobody looks forward to this week.",
            "I know that nobody looks forward to this week, since greens that have just been good are full of holes and "
            "sand again, but weather permitting it is over in ten days.",
        ),
        encoding="utf-8",
    )
    line = text[: text.index("- id: greens-renovation-2027")].count("\n") + 1
    done = swardcast("check", "--club", str(club), "--as-of", "2027-09-14")
    assert done.code == 0
    where = f"Worth another look: plan/2027-late-summer.yaml, line {line}: own words"
    assert done.err.splitlines() == [
        f"{where}: sentence of 32 words: “I know that nobody looks forward to this week, since greens that have …”. Split it.",
        (
            f"{where}: “weather permitting”: “I know that nobody looks forward to this week, since greens that have …”. "
            "Write instead: what happens to the date if it rains."
        ),
    ]


def test_the_counts_for_a_machine_have_fixed_keys(swardcast: Callable[..., Done]) -> None:
    """Thirty years with seven leap days: 30 x 365 + 7."""
    result = json.loads(swardcast("check", "--club", str(DEMO), "--json").out)
    assert list(result) == [
        "club",
        "surfaces",
        "jobs",
        "log_entries",
        "days_observed",
        "days_of_history",
        "forecasts",
        "days_incomplete",
        "fixtures",
    ]
    assert (result["club"], result["days_of_history"]) == ("Quillhaven Golf Club", 10957)


def test_the_folder_is_the_present_one_unless_named(
    swardcast: Callable[..., Done], club: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(club)
    assert swardcast("check").code == 0


def test_nothing_is_written_whether_the_folder_is_in_order_or_not(swardcast: Callable[..., Done], club: Path) -> None:
    before = tree(club)
    assert swardcast("check", "--club", str(club)).code == 0
    assert tree(club) == before
    (club / "club.yaml").write_text("name: A\n", encoding="utf-8")
    before = tree(club)
    assert swardcast("check", "--club", str(club)).code == 1
    assert tree(club) == before


def test_problems_are_talk_grouped_by_file_and_counted(swardcast: Callable[..., Done], club: Path) -> None:
    for file, old, new in (
        ("club.yaml", "latitude: 55.6", "latitude: 155.6"),
        ("weather/observed.csv", "2027-05-01,4.5", "2027-05-01,450"),
    ):
        path = club / file
        path.write_text(path.read_text(encoding="utf-8").replace(old, new, 1), encoding="utf-8")
    done = swardcast("check", "--club", str(club))
    assert (done.code, done.out) == (1, "")
    assert done.err.splitlines() == [
        "club.yaml",
        "  line 6, place.latitude: found '155.6'; expected degrees north from -90 to 90. Check the figure and its unit.",
        "weather/observed.csv",
        "  line 2, tmin_c: found '450'; expected -60 to 60 C",
        "2 things need attention.",
    ]


def test_work_that_nobody_entered_is_worth_another_look(swardcast: Callable[..., Done]) -> None:
    """The demo's log ends in September; the light sanding was planned from Monday 4 October."""
    done = swardcast("check", "--club", str(DEMO), "--as-of", "2027-10-12")
    assert done.code == 0
    assert done.out.splitlines()[0] == "Quillhaven Golf Club: nothing is wrong; 2 things are worth another look."
    said = "Light sanding of the greens was planned from Monday 4 October; enter what happened, or move or call it off"
    assert done.err.replace("\u00a0", " ").startswith(f"Worth another look: {said} [plan/2027-late-summer.yaml, line ")


def test_a_language_of_the_clubs_own_without_pages_is_told_as_a_build_tells_it(
    swardcast: Callable[..., Done], club: Path
) -> None:
    """Its phrases are ours, under another name."""
    told = (club / "club.yaml").read_text(encoding="utf-8").replace("language: en-GB", "language: sl-SI")
    (club / "club.yaml").write_text(told, encoding="utf-8")
    ours = ROOT / "plugins/swardcast/language/phrases"
    (club / "phrases").mkdir()
    for part in ("en", "en-GB"):
        for file in (ours / part).glob("*.ftl"):
            shutil.copy(file, club / "phrases" / f"{part}-{file.name}")
    done = swardcast("check", "--club", str(club), "--as-of", "2027-09-14")
    assert done.code == 1
    assert "the site has no pages in the language 'sl-SI'" in done.err
    shutil.copytree(ROOT / "site_src/content/pages/en-GB", club / "pages")
    assert swardcast("check", "--club", str(club), "--as-of", "2027-09-14").code == 0
    (club / "pages" / "season.md").unlink()
    done = swardcast("check", "--club", str(club), "--as-of", "2027-09-14")
    assert (done.code, done.out) == (1, "")
    assert done.err.startswith("pages/season.md\n  the file: found no such file; expected a page of this name, since")
