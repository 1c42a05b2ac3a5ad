"""`swardcast compare`: what is asked, how it is shown, and where its private page may not go."""

from __future__ import annotations

import csv
import json
import shutil
from collections.abc import Callable
from datetime import date
from io import StringIO
from pathlib import Path
from typing import Any

import pytest

from swardcast.compose import Bulletin
from swardcast.outlook.states import Milestone
from swardcast.planning.columns import COLUMNS
from swardcast.reading.choices_file import usual_choices
from swardcast.records.club import SurfaceKind
from tests.cli.conftest import Done
from tests.conftest import DEMO, ROOT

AT = ("--club", str(DEMO), "--as-of", "2027-08-18 09:30")
INSTEAD = (*AT, "--instead-of", "greens-renovation-2027")
ALL_GREENS = ("--surfaces", "greens 1-18", "--surfaces-a-day", "18")
TEE = ("--surfaces", "tee 1", "--day", "2027-09-20")
Command = Callable[..., Done]


def _json(swardcast: Command, *words: str) -> dict[str, Any]:
    done = swardcast("compare", *words, "--json")
    assert done.code == 0, done.err
    told: dict[str, Any] = json.loads(done.out)
    return told


def _csv(swardcast: Command, *words: str) -> list[dict[str, str]]:
    done = swardcast("compare", *words, "--format", "csv")
    assert done.code == 0, done.err
    return list(csv.DictReader(StringIO(done.out)))


def test_a_planned_job_has_the_dates_that_its_notice_tells(
    swardcast: Command, demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    """Likely days and those to allow until, of the job as a whole: the notice's are composed without a comparison."""
    told = _json(swardcast, *INSTEAD)
    job = demo_bulletin_at("2027-08-18 09:30").outlook.jobs["greens-renovation-2027"]
    planned = told["choices"][0]
    assert planned["as_planned"]
    names = {
        "settled": Milestone.SETTLED,
        "closed": Milestone.HOLES_CLOSED,
        "normal": Milestone.BACK_TO_NORMAL,
    }
    for name, milestone in names.items():
        given = job.dates[milestone]
        assert planned[f"{name}_likely"] == str(given.likely), name
        assert planned[f"{name}_allow_until"] == str(given.allow_until), name
    assert planned["choice"] == "As planned now"
    assert [row["as_planned"] for row in told["choices"]].count(True) == 1


def test_the_chances_are_those_of_the_notices_fixtures(swardcast: Command) -> None:
    told = _json(swardcast, *INSTEAD)["choices"][0]["fixtures"]
    fixtures = json.loads(swardcast("outlook", *AT, "--fixtures", "--json").out)
    by_id = {
        one["id"]: job["chance_not_normal"]
        for one in fixtures
        for job in one["jobs"]
        if job["job"] == "greens-renovation-2027"
    }
    common = [one for one in told if one["id"] in by_id]
    assert len(common) > 5
    assert {one["id"]: one["chance_not_normal"] for one in common} == {one["id"]: by_id[one["id"]] for one in common}


def test_the_csv_has_a_column_for_every_name_that_sorts(swardcast: Command) -> None:
    rows = _csv(swardcast, *INSTEAD)
    assert list(rows[0])[: len(COLUMNS)] == list(COLUMNS)
    assert rows[0]["normal_likely"] == "2027-09-25"
    assert rows[0]["choice"] == "As planned now"
    assert len({len(row) for row in rows}) == 1


def test_the_csv_has_pace_source_and_what_each_fixture_meets(swardcast: Command) -> None:
    """The pace of the plan is 6 a day, that of the second choice 4; both have to tell whose they are."""
    rows, told = _csv(swardcast, *INSTEAD), _json(swardcast, *INSTEAD)["choices"]
    assert [float(row["surfaces_a_day"]) for row in rows[:2]] == [6.0, 4.0]
    assert [row["source"] for row in rows[:2]] == ["the plan", "your own"]
    for row, one in zip(rows, told, strict=True):
        for met in one["fixtures"]:
            where = f"{met['first_day']}_{met['id']}"
            assert row[f"in_work_{where}"] == met["in_work"]
            assert row[f"chance_{where}"] == ("" if met["chance_not_normal"] is None else str(met["chance_not_normal"]))


def test_choices_are_sorted_by_the_names_that_are_shown(swardcast: Command) -> None:
    """The plan's has no name of its own, and is shown as "As planned now"."""
    names = [row["choice"] for row in _csv(swardcast, *INSTEAD, "--sort", "choice")]
    assert names == sorted(names, key=str.casefold)
    assert names[0] == "As planned now"


def test_csv_and_json_say_the_same(swardcast: Command) -> None:
    rows, told = _csv(swardcast, *INSTEAD), _json(swardcast, *INSTEAD)["choices"]
    for row, one in zip(rows, told, strict=True):
        for name in COLUMNS:
            assert row[name] == ("" if one[name] is None else str(one[name])), name


@pytest.mark.parametrize("column", ["cost", "normal_likely", "organic_after_fraction", "choice"])
def test_rows_are_sorted_by_the_column_asked_for_and_keep_their_numbers(swardcast: Command, column: str) -> None:
    usual = {row["number"]: row for row in _csv(swardcast, *INSTEAD)}
    ordered = _csv(swardcast, *INSTEAD, "--sort", column)
    assert {row["number"]: row for row in ordered} == usual
    down = _csv(swardcast, *INSTEAD, "--sort", column, "--descending")
    whole = [[row[column] for row in rows if row[column] and not row["cost_without"]] for rows in (ordered, down)]
    assert len(whole[0]) > 2
    assert whole[0] == whole[1][::-1]
    if column == "cost":
        assert [row["choice"] for row in (ordered[-1], down[-1])] == ["As planned now"] * 2


def test_the_table_says_everything_in_words(swardcast: Command) -> None:
    done = swardcast("compare", *INSTEAD)
    assert done.code == 0
    lines = done.out.splitlines()
    assert lines[0] == "Ways of doing the work on greens 1 to 18, as of 9:30am on Wednesday 18 August"
    for caption in (
        "What is done",
        "The work",
        "Towards the aim",
        "Healing: the likely day",
        "Competitions and visitors",
    ):
        assert any(line.startswith(caption) for line in lines)
    assert any("25 Sept (6 Oct)" in line and "As planned now" in line for line in lines)
    assert "  D: Autumn medal, Saturday 18 September" in lines
    names = [line for line in lines if "Spikes in August" in line]
    assert "Spikes in August, hollow tines left for spring" in names[0]
    assert all("Spikes in August, hollow tines…" in line for line in names[1:])
    assert any("Organic matter is 6.2 % now (top 20 mm, the latest readings of 18 surfaces" in line for line in lines)
    assert any("Sand is dry and weighs 1.56 t/m3." in line for line in lines)
    assert "\u00a0" not in done.out


def test_the_example_in_the_readme_is_what_it_prints(swardcast: Command) -> None:
    """The tables there; of the first its beginning, since the last columns are left out."""
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    (shown,) = [block for block in readme.split("```") if block.startswith("\nThe work\n")]
    printed = swardcast("compare", *INSTEAD, "--sort", "days_likely").out.splitlines()
    lines = [line for line in shown.splitlines() if line]
    assert len(lines) == 18
    place = 0
    for line in lines:
        place = next(at for at in range(place, len(printed)) if printed[at].startswith(line)) + 1


def test_spare_days_put_the_day_to_allow_until_of_the_work_off(swardcast: Command) -> None:
    """Work on one day, Wednesday 22 September; with two spare days it may be as late as Friday the 24th, so that the
    fixture of Thursday the 23rd perhaps falls into it, and that of Saturday the 25th does not."""
    asked = (*AT, *ALL_GREENS, "--day", "2027-09-22", "--choices", "usual")
    none, two = (
        {
            one["name"]: one["in_work"]
            for one in _json(swardcast, *asked, "--spare-days", days)["choices"][0]["fixtures"]
        }
        for days in ("0", "2")
    )
    assert none["Twilight nine"] == "no"
    assert none["Captain's day"] == two["Captain's day"] == "no"
    first = _json(swardcast, *asked, "--spare-days", "2")["choices"][0]["fixtures"][0]
    assert (first["first_day"], first["in_work"]) == ("2027-09-23", "perhaps")


def test_the_same_words_and_moment_give_the_same_bytes(swardcast: Command, tmp_path: Path) -> None:
    first, second = tmp_path / "a.html", tmp_path / "b.html"
    outputs = {swardcast("compare", *INSTEAD, "--page", str(page)).out for page in (first, second)}
    assert len(outputs) == 1
    assert first.read_bytes() == second.read_bytes()


def test_a_week_begins_on_its_first_working_day(swardcast: Command) -> None:
    """Week 34 of 2027 is that of Monday 23 August; the demo works from Monday to Friday."""
    for week in ("2027-W34", "2027w34", "2027-08-25", "2027-08-29"):
        told = _json(swardcast, *AT, *ALL_GREENS, "--week", week)
        assert told["starts"] == "2027-08-23"


def test_the_present_week_begins_today(swardcast: Command) -> None:
    """18 August is its Wednesday."""
    assert _json(swardcast, *AT, "--surfaces", "tee 1", "--week", "2027-08-18")["starts"] == "2027-08-18"


def test_surfaces_and_a_day_get_the_usual_choices_where_the_club_has_none(swardcast: Command) -> None:
    told = _json(swardcast, *AT, "--surfaces", "tees 1-18", "--surfaces-a-day", "9", "--day", "2027-09-20")
    names = [one.name for one in usual_choices() if SurfaceKind.TEE in one.fits]
    assert [row["choice"] for row in told["choices"]] == names
    assert "common practice, no published source" in {row["source"] for row in told["choices"]}
    assert told["surfaces"][0] == "tee-1"
    assert not any(row["as_planned"] for row in told["choices"])


def test_own_usual_or_all_choices_can_be_asked_for(swardcast: Command) -> None:
    counts = {
        which: len(_json(swardcast, *INSTEAD, "--choices", which)["choices"]) for which in ("own", "usual", "all")
    }
    assert counts["own"] == 1 + 6
    assert counts["all"] == counts["own"] + counts["usual"] - 1


def test_choices_of_the_clubs_own_that_are_for_other_surfaces_are_counted(swardcast: Command, club: Path) -> None:
    said = "of your own choices"
    assert f"6 {said} are for other surfaces, and not shown." in swardcast("compare", *AT, *TEE).out
    assert said not in swardcast("compare", *AT, *TEE, "--choices", "usual").out
    assert said not in swardcast("compare", *INSTEAD, "--choices", "all").out
    file = club / "choices.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("for: greens", "for: tees", 1), encoding="utf-8")
    done = swardcast("compare", "--club", str(club), *INSTEAD[2:])
    assert f"1 {said} is for other surfaces, and not shown." in done.out


def test_one_surface_or_a_pace_with_each_choice_needs_no_pace_besides(swardcast: Command, club: Path) -> None:
    """The third of the demo's choices for greens has none of its own; the contractor works 3 a day."""
    assert _json(swardcast, *AT, *TEE)["surfaces_a_day"] is None
    file = club / "choices.yaml"
    text = file.read_text(encoding="utf-8")
    wide = text.index("- name: Fat hollow tines")
    file.write_text(text[:wide] + text[wide:].replace("for: greens", "for: tees", 1), encoding="utf-8")
    asked = ("--club", str(club), *AT[2:], "--surfaces", "greens 1-18", "--day", "2027-09-20")
    assert [row["surfaces_a_day"] for row in _json(swardcast, *asked)["choices"]] == [4, 3, 9, 9, 3]


def test_what_the_year_has_brought_is_told_to_machines_too(swardcast: Command) -> None:
    """By hand, of the demo's log: 8 mm spikes at 50 x 50 mm with 2 mm of sand and blades of 1 mm at 12 mm with 0.8 mm."""
    told = _json(swardcast, *INSTEAD)
    done = told["done_this_year"]
    assert done["jobs"] == ["greens-solid-tining-2027", "greens-verticutting-2027"]
    assert done["disturbed_fraction"] == pytest.approx(3.14159 * 64 / 4 / 2500 + 1 / 12, abs=0.0001)
    assert (done["removed_fraction"], done["sand_mm"]) == (pytest.approx(1 / 12, abs=0.0001), 2.8)
    assert [told["choices"][0][f"times_left_{name}"] for name in ("disturbed", "removed", "sand")] == [1, None, 2]


def test_a_forecast_is_used_when_it_reaches_the_work(swardcast: Command) -> None:
    """The demo's forecast of 23 August, 6am, begins that day."""
    at = ("--club", str(DEMO), "--as-of", "2027-08-23 06:30", "--surfaces", "practice green", "--day", "2027-08-23")
    near = swardcast("compare", *at)
    assert "They rest on the forecast and on 30 past years of the club's weather." in near.out
    far = swardcast("compare", *AT, "--surfaces", "practice green", "--day", "2027-10-23")
    assert "They rest on 30 past years of the club's weather." in far.out


def test_work_planned_there_about_that_day_is_pointed_out(swardcast: Command) -> None:
    done = swardcast("compare", *AT, *ALL_GREENS, "--week", "2027-W34", "--format", "csv")
    assert done.code == 0
    assert done.err == (
        "Worth another look: 'greens-renovation-2027' is planned there from 2027-08-23 and counts besides the choices;"
        " --instead-of greens-renovation-2027 puts them in its place.\n"
    )
    assert swardcast("compare", *INSTEAD, "--format", "csv").err == ""
    beside = "Another job is planned there about that day, and counts besides the choices: "
    assert beside in swardcast("compare", *AT, *ALL_GREENS, "--week", "2027-W34").out
    assert beside not in swardcast("compare", *INSTEAD).out


WRONG = [
    (["--surfaces", "greens 1-18"], 2, "name the first day of the work, as in --day 2027-08-23"),
    (["--day", "2027-09-20"], 2, "name surfaces, as in --surfaces 'greens 1-18', or a planned job"),
    (["--surfaces", "all tees", "--day", "20 September"], 2, "expected a day as year-month-day, such as '2027-08-23'"),
    (["--surfaces", "all tees", "--week", "2027-W54"], 2, "found '2027-W54'; expected a week that the year has"),
    (
        ["--surfaces", "all tees", "--week", "soon"],
        2,
        "found 'soon'; expected a week such as '2027-W34', or a day in it",
    ),
    (
        ["--surfaces", "all tees", "--day", "2027-09-20", "--sort", "cots"],
        2,
        "found 'cots'; expected one of: number, choice, …. Did you mean 'cost'?",
    ),
    (
        ["--surfaces", "all tees", "--day", "2027-09-20", "--surfaces-a-day", "0"],
        2,
        "found '0'; expected surfaces finished in a day, from 0.05 to 60",
    ),
    (
        ["--surfaces", "all tees", "--day", "2027-09-20", "--spare-days", "two"],
        2,
        "found 'two'; expected spare days from 0 to 30",
    ),
    (
        ["--surfaces", "tees 1-3", "--day", "2027-09-20"],
        2,
        "say how many of the 3 surfaces are finished in a day, as in --surfaces-a-day 6, or with each … 'surfaces a day: 6'\n",
    ),
    (
        ["--surfaces", "greens 1-18", "--day", "2027-09-20"],
        2,
        "in choices.yaml, as in 'surfaces a day: 6' (without a pace: 1 of 6 choices)\n…",
    ),
    (
        ["--surfaces", "gerens 1-18", "--day", "2027-09-20"],
        1,
        "--surfaces: found 'gerens 1-18'; expected surfaces of surfaces.yaml, such as …. Did you mean 'greens 1-18'?",
    ),
    (
        ["--instead-of", "greens-renovation-2028"],
        1,
        "no job 'greens-renovation-2028' in the plan. Did you mean 'greens-renovation-2027'?",
    ),
    (
        ["--instead-of", "greens-solid-tining-2027"],
        1,
        "'greens-solid-tining-2027' has begun (entry 2027-05-04-1610-greens-1-to-9-spiked); there is nothing left to choose",
    ),
    (
        ["--surfaces", "all tees", "--day", "2027-08-17"],
        1,
        "2027-08-17 is over on 2027-08-18; name a day to come by --day, or an earlier moment by --as-of",
    ),
    (
        ["--surfaces", "all tees", "--week", "2027-W30"],
        1,
        "the week of 2027-07-26 is over on 2027-08-18; name one to come, or an earlier moment by --as-of",
    ),
    (
        ["--surfaces", "tee 1, bunker-4-left", "--day", "2027-09-20"],
        1,
        "there is no choice of work for tees, bunkers; write some into choices.yaml of the club folder, as README tells",
    ),
]


@pytest.mark.parametrize(("words", "code", "said"), WRONG)
def test_what_cannot_be_asked_is_told_with_a_way_out(
    swardcast: Command, words: list[str], code: int, said: str
) -> None:
    done = swardcast("compare", *AT, *words)
    assert (done.code, done.out) == (code, "")
    begin, _, end = said.partition("…")
    assert begin in done.err
    assert end in done.err


def test_work_that_opens_turf_is_not_offered_for_bunkers(swardcast: Command, club: Path) -> None:
    """A choice that does not say what it is for is for any surface that it can be done on."""
    file = club / "choices.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("    for: greens\n", ""), encoding="utf-8")
    asked = ("--club", str(club), *AT[2:], "--day", "2027-09-20", "--surfaces-a-day", "9", "--surfaces")
    assert len(_json(swardcast, *asked, "all tees")["choices"]) == 6
    names = {row["choice"] for row in _json(swardcast, *asked, "all bunkers")["choices"]}
    assert names == {one.name for one in usual_choices() if SurfaceKind.BUNKER in one.fits}


def test_bunkers_have_no_columns_for_holes_and_shares_which_they_cannot_have(swardcast: Command) -> None:
    done = swardcast("compare", *AT, "--surfaces", "bunker-4-left", "--day", "2027-09-20")
    assert done.code == 0
    work = done.out[done.out.index("The work\n") :].splitlines()[1]
    assert " ".join(work.split()) == "No. Choice Left on top Sand in all Cost"
    assert "Shares of the surface" not in done.out


# Where the page may go.


@pytest.fixture
def page_to(swardcast: Command, club: Path) -> Callable[[Path], Done]:
    def write(page: Path) -> Done:
        at = ("--club", str(club), "--as-of", "2027-08-18 09:30", "--surfaces", "tee 1", "--day", "2027-09-20")
        return swardcast("compare", *at, "--format", "csv", "--page", str(page))

    return write


def test_the_page_is_written_where_it_is_wanted_and_called_private(
    page_to: Callable[[Path], Done], tmp_path: Path
) -> None:
    done = page_to(tmp_path / "committee.html")
    assert done.code == 0
    assert done.err.endswith(f"Wrote {tmp_path / 'committee.html'}. It is private: do not put it on the site.\n")
    assert page_to(tmp_path / "committee.html").code == 0, "its own page may be written again"


@pytest.mark.parametrize("below", [".", "notices", "notices/deeper", "files/of/the/club"])
def test_no_page_goes_into_a_site(page_to: Callable[[Path], Done], tmp_path: Path, below: str) -> None:
    site = tmp_path / "public"
    (site / "feeds").mkdir(parents=True)
    (site / "feeds" / "status.rss").write_text("<rss/>", encoding="utf-8")
    (site / below).mkdir(parents=True, exist_ok=True)
    page = site / below / "committee.html"
    done = page_to(page)
    assert done.code == 1
    assert f"would lie in the site {site}, where anybody can read it; name a place outside" in done.err
    assert not page.exists()


def test_nor_through_a_link_that_leads_there(page_to: Callable[[Path], Done], tmp_path: Path) -> None:
    site = tmp_path / "public"
    site.mkdir()
    (site / "status.json").write_text("{}", encoding="utf-8")
    (tmp_path / "papers").symlink_to(site, target_is_directory=True)
    assert page_to(tmp_path / "papers" / "committee.html").code == 1
    (tmp_path / "link.html").symlink_to(site / "committee.html")
    assert page_to(tmp_path / "link.html").code == 1
    assert sorted(path.name for path in site.iterdir()) == ["status.json"]


@pytest.mark.parametrize("below", [".", "pages", "templates", "phrases", "plan", "log/2027"])
def test_nor_into_the_club_folder(page_to: Callable[[Path], Done], club: Path, below: str) -> None:
    (club / below).mkdir(parents=True, exist_ok=True)
    before = sorted(club.rglob("*"))
    done = page_to(club / below / "committee.html")
    assert done.code == 1
    assert "would lie in the club folder, of which parts are published; name a place outside" in done.err
    assert sorted(club.rglob("*")) == before


def test_nor_over_a_file_of_somebody_elses(page_to: Callable[[Path], Done], tmp_path: Path) -> None:
    letter = tmp_path / "letter.html"
    letter.write_text("Dear member", encoding="utf-8")
    done = page_to(letter)
    assert (done.code, letter.read_text(encoding="utf-8")) == (1, "Dear member")
    assert "is there already and is no such page; name another file" in done.err


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("committee.txt", "expected a file that ends in .html"),
        ("nowhere/committee.html", "there is no folder"),
        ("folder.html", "is a folder; name a file in it"),
    ],
)
def test_a_place_that_is_no_place_is_told(
    page_to: Callable[[Path], Done], tmp_path: Path, name: str, said: str
) -> None:
    (tmp_path / "folder.html").mkdir()
    done = page_to(tmp_path / name)
    assert done.code == 1
    assert said in done.err


def test_a_club_without_weather_history_gets_sums_without_dates(swardcast: Command, club: Path, tmp_path: Path) -> None:
    shutil.rmtree(club / "weather" / "history")
    at = ("--club", str(club), "--as-of", "2027-08-18 09:30", "--instead-of", "greens-renovation-2027")
    done = swardcast("compare", *at, "--page", str(tmp_path / "page.html"))
    assert done.code == 0
    assert "Without past years of weather there are no dates." in done.out
    assert "not known" in done.out
    (first, *_) = _json(swardcast, *at)["choices"]
    assert (first["normal_likely"], first["expected_days"]) == (None, None)
    assert first["sand_t"] == 46.8
    assert "<svg" not in (tmp_path / "page.html").read_text(encoding="utf-8").replace('<svg width="24', "")


def test_days_are_those_of_the_calendar(swardcast: Command) -> None:
    for row in _csv(swardcast, *INSTEAD, "--choices", "all"):
        for name in ("settled", "closed", "normal"):
            if row[f"{name}_likely"]:
                likely, until = (date.fromisoformat(row[f"{name}_{end}"]) for end in ("likely", "allow_until"))
                assert date(2027, 8, 23) <= likely <= until
