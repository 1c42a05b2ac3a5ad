"""Fixtures in `outlook`, `check` and `start`, and what reading them costs where there are none."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable
from datetime import date
from pathlib import Path

from swardcast.compose import Bulletin
from swardcast.outlets.html import notice_html
from swardcast.reading.folder import read_club_folder
from tests.cli.conftest import Done
from tests.conftest import DEMO, ROOT

AS_OF = ("--club", str(DEMO), "--as-of", "2027-09-14 09:30")


def test_fixtures_alone_have_fixed_keys_and_chances_from_0_to_1(swardcast: Callable[..., Done]) -> None:
    done = swardcast("outlook", *AS_OF, "--fixtures", "--json")
    fixtures = json.loads(done.out)
    assert (done.code, done.err) == (0, "")
    for fixture in fixtures:
        assert list(fixture) == ["id", "name", "first_day", "last_day", "starts_at", "ends_at", "where", "jobs"]
        for job in fixture["jobs"]:
            assert list(job) == [
                "job", "in_work", "basis", "chance_not_normal", "chance_unsettled", "before_end_of_range",
            ]  # fmt: skip
            for chance in (job["chance_not_normal"], job["chance_unsettled"]):
                assert (chance is None) is (job["basis"] != "computed")
                assert chance is None or 0 <= chance <= 1
    assert [fixture["name"] for fixture in fixtures][:3] == ["Twilight nine", "Autumn medal", "Twilight nine"]


def test_the_surfaces_for_a_machine_are_a_list_as_before(swardcast: Callable[..., Done]) -> None:
    surfaces = json.loads(swardcast("outlook", *AS_OF, "--json").out)
    assert len(surfaces) == 65
    assert all("play" in surface for surface in surfaces)


def test_for_people_fixtures_come_below_the_surfaces_or_alone(swardcast: Callable[..., Done]) -> None:
    heading = "\nCompetitions and visitors' days\n"
    both, alone = (swardcast("outlook", *AS_OF, *more).out for more in ((), ("--fixtures",)))
    assert both.index("[green-1]") < both.index(heading)
    assert "[green-1]" not in alone
    assert both.partition(heading)[2] == alone.partition(heading)[2]
    assert "Autumn medal, Saturday 18 September [autumn-medal-2027@quillhaven.example]\n" in alone


def test_what_is_called_off_is_nowhere(swardcast: Callable[..., Done]) -> None:
    assert "Sea wall stableford" in (DEMO / "fixtures.ics").read_text(encoding="utf-8")
    assert "Sea wall" not in swardcast("outlook", "--club", str(DEMO), "--as-of", "2027-10-01 09:00").out


def test_check_counts_fixtures_over_the_plans_days(swardcast: Callable[..., Done]) -> None:
    """Five single ones and 21 Wednesdays, worked out in test_fixtures_file.py."""
    assert json.loads(swardcast("check", "--club", str(DEMO), "--json").out)["fixtures"] == 5 + 21


def test_start_gives_fixtures_dated_from_the_day(swardcast: Callable[..., Done], tmp_path: Path) -> None:
    """The work starts on Monday 23 August 2027; the medal is on the Saturday of the third week, 11 September."""
    folder = tmp_path / "my-club"
    swardcast("start", str(folder), "--today", "2027-08-18")
    fixtures = read_club_folder(folder).fixtures
    days = {fixture.name: (fixture.first_day, fixture.last_day) for fixture in reversed(fixtures)}
    assert days == {
        "Evening nine": (date(2027, 9, 1), date(2027, 9, 1)),  # not on Wednesday 25 August
        "Monthly medal": (date(2027, 9, 11), date(2027, 9, 11)),
        "Visitors' days": (date(2027, 9, 23), date(2027, 9, 24)),
    }
    lines = (folder / "fixtures.ics").read_bytes().splitlines()
    assert [line for line in lines if len(line) > 75] == []  # RFC 5545, section 3.1


def test_markup_in_a_name_is_shown_and_not_obeyed(swardcast: Callable[..., Done], club: Path) -> None:
    path = club / "fixtures.ics"
    text = path.read_text(encoding="utf-8").replace("SUMMARY:Autumn medal", "SUMMARY:<script>medal</script>")
    path.write_text(text, encoding="utf-8")
    done = swardcast("build", "--club", str(club), "--output", str(club.parent / "site"), "--as-of", "2027-09-14 09:30")
    assert done.code == 0, done.err
    page = (club.parent / "site" / "notices" / "greens-renovation-2027" / "index.html").read_text(encoding="utf-8")
    assert "&lt;script&gt;medal&lt;/script&gt;" in page
    assert "<script>medal" not in page


def test_a_notice_names_its_fixtures(demo_bulletin: Bulletin) -> None:
    (notice,) = (notice for notice in demo_bulletin.notices if notice.id == "greens-renovation-2027")
    headings = [section.heading for section in notice.sections]
    assert headings[:3] == ["Day by day", "What you see now", "Competitions and visitors' days"]
    assert "Captain&#39;s day, Saturday 25 September" in notice_html(notice, demo_bulletin.voice, "../../")


def test_calendars_are_loaded_only_where_there_is_one(club: Path) -> None:
    program = (
        "import sys; from pathlib import Path; from swardcast.reading.folder import read_club_folder;"
        "read_club_folder(Path(sys.argv[1])); print('icalendar' in sys.modules)"
    )

    def loaded() -> str:
        command = [sys.executable, "-c", program, str(club)]
        return subprocess.run(
            command, capture_output=True, text=True, check=True, env={"PYTHONPATH": str(ROOT / "plugins")}
        ).stdout

    assert loaded() == "True\n"
    (club / "fixtures.ics").unlink()
    assert loaded() == "False\n"
