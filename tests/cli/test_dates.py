"""`swardcast dates`: what is asked, what is refused, and how it is shown."""

from __future__ import annotations

import csv
import json
import shutil
from collections.abc import Callable
from datetime import date, timedelta
from io import StringIO
from pathlib import Path
from typing import Any

import pytest

from swardcast.compose import Bulletin
from swardcast.outlook.states import Milestone
from swardcast.planning.date_columns import DATE_COLUMNS
from tests.cli.conftest import Done
from tests.conftest import DEMO

AT = ("--club", str(DEMO), "--as-of", "2027-08-18 09:30")
JOB = ("--job", "greens-renovation-2027")
TWO_WEEKS = ("--from", "2027-08-23", "--to", "2027-09-05")
Command = Callable[..., Done]


def _json(swardcast: Command, *words: str) -> dict[str, Any]:
    done = swardcast("dates", *words, "--json")
    assert done.code == 0, done.err
    told: dict[str, Any] = json.loads(done.out)
    return told


def test_the_planned_day_has_the_dates_that_its_notice_tells(
    swardcast: Command, demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    """The day of the plan is one of those asked about; the notice's dates are composed without a search."""
    told = _json(swardcast, *AT, *JOB, *TWO_WEEKS)
    given = demo_bulletin_at("2027-08-18 09:30").outlook.jobs["greens-renovation-2027"].dates[Milestone.BACK_TO_NORMAL]
    (planned,) = (day for day in told["days"] if day["day"] == "2027-08-23")
    assert (planned["likely"], planned["allow_until"]) == (str(given.likely), str(given.allow_until))
    assert planned["possible"]
    assert planned["last_work_day"] == "2027-08-25"


def test_each_day_asked_about_is_told_once_and_is_possible_or_has_its_reasons(swardcast: Command) -> None:
    told = _json(swardcast, *AT, *JOB, *TWO_WEEKS)
    days = [date.fromisoformat(day["day"]) for day in told["days"]]
    assert days == [date(2027, 8, 23) + timedelta(days=place) for place in range(14)]
    for day in told["days"]:
        assert day["possible"] is not bool(day["blocked"])
        assert (day["weighted_days"] is not None) is day["possible"]
    because = {day["day"]: [one["words"] for one in day["blocked"]] for day in told["days"] if day["blocked"]}
    assert because["2027-08-30"] == ["Public holiday: Late Summer Bank Holiday"]
    assert because["2027-08-27"] == ["Public holiday: Late Summer Bank Holiday"]  # three days of work run into it
    assert because["2027-08-28"] == ["Not a working day"]
    assert "2027-08-25" not in because


def test_the_best_time_holds_the_least_cost(swardcast: Command) -> None:
    told = _json(swardcast, *AT, *JOB, *TWO_WEEKS)
    costs = {day["day"]: day["weighted_days"] for day in told["days"] if day["possible"]}
    best = told["best"][0]
    assert best["weighted_days"] == min(costs.values()) == costs[best["day"]]
    assert best["first"] <= best["day"] <= best["last"]


def test_a_csv_names_the_fixtures_that_a_first_day_touches(swardcast: Command) -> None:
    done = swardcast("dates", *AT, *JOB, *TWO_WEEKS, "--format", "csv")
    told = {day["day"]: day for day in _json(swardcast, *AT, *JOB, *TWO_WEEKS)["days"]}
    for row in csv.DictReader(StringIO(done.out)):
        named = [one for one in row["touched"].split("; ") if one]
        assert len(named) == int(row["fixtures_touched"] or 0)
        met = {f"{one['first_day']} {one['name']}" for one in told[row["day"]]["fixtures"]}
        assert {one.rpartition(": ")[0] for one in named} <= met
    first = next(csv.DictReader(StringIO(done.out)))
    # By fixtures.ics there is no evening on 25 August, so that of 1 September is the first.
    assert first["touched"].startswith("2027-09-01 Twilight nine: ")


def test_a_csv_has_every_day_with_the_values_of_the_json(swardcast: Command) -> None:
    done = swardcast("dates", *AT, *JOB, *TWO_WEEKS, "--format", "csv")
    rows = list(csv.DictReader(StringIO(done.out)))
    told = _json(swardcast, *AT, *JOB, *TWO_WEEKS)["days"]
    assert list(rows[0]) == [*DATE_COLUMNS, "blocked", "touched"]
    assert len(rows) == len(told)
    for row, day in zip(rows, told, strict=True):
        assert {name: row[name] for name in DATE_COLUMNS} == {
            name: "" if day[name] is None else str(day[name]) for name in DATE_COLUMNS
        }


def test_a_terminal_shows_times_weeks_and_days_out_and_what_they_rest_on(swardcast: Command) -> None:
    done = swardcast("dates", *AT, *JOB, *TWO_WEEKS)
    assert done.code == 0
    lines = done.out.splitlines()
    assert lines[0].startswith("When to do: Hollow tining, scarifying and sanding the greens, as of")
    assert [line for line in lines if line and line[0] != " "][1:5] == [
        "The best times to begin",
        "Fixtures that these days touch: the chance that some surfaces are still disturbed",
        "Every week: its best first day",
        "Days on which the work cannot begin",
    ]
    assert any(line.startswith("  1: The grass then grows at ") for line in lines)
    assert "Public holiday: Late Summer Bank Holiday  30 August " in done.out
    assert "Saturday counts 2.37 and Sunday counts 2.19." in done.out
    assert "Each competition adds 3.43 to its day, each visitors' day 1.87." in done.out
    assert "The job counts as moved from Monday 23 August." in done.out
    assert done.err == ""  # nothing else is planned there in those weeks
    assert all("  " not in line for line in lines if line and line[0] != " ")


def test_what_ends_the_disturbance_can_be_told(swardcast: Command) -> None:
    days = [
        _json(swardcast, *AT, *JOB, "--from", "2027-08-23", "--to", "2027-08-23", "--until", until)["days"][0]
        for until in ("settled", "holes-closed", "back-to-normal")
    ]
    assert [day["weighted_days"] for day in days] == sorted(day["weighted_days"] for day in days)
    assert [day["likely"] for day in days] == sorted({day["likely"] for day in days})


def test_a_choice_takes_the_place_of_a_planned_job_or_stands_on_surfaces_of_its_own(swardcast: Command) -> None:
    choice = ("--choice", "fine hollow tines at close spacing")  # large and small letters are the same
    on_monday = ("--from", "2027-08-23", "--to", "2027-08-23")
    instead = _json(swardcast, *AT, *JOB, *choice, *on_monday)
    assert (instead["job"], len(instead["surfaces"])) == ("greens-renovation-2027", 18)
    compared = swardcast("compare", *AT, "--instead-of", "greens-renovation-2027", "--day", "2027-08-23", "--json")
    (row,) = (one for one in json.loads(compared.out)["choices"] if one["choice"].startswith("Fine hollow tines at"))
    assert instead["days"][0]["likely"] == row["normal_likely"]
    alone = _json(swardcast, *AT, "--surfaces", "greens 1-2", *choice, *on_monday)
    assert (alone["job"], alone["surfaces"]) == (None, ["green-1", "green-2"])


def test_a_usual_time_has_days_and_no_chances(swardcast: Command) -> None:
    words = ("--surfaces", "greens 1-3", "--choice", "Contractor with drill and fill")
    told = swardcast("dates", *AT, *words, "--from", "2027-09-06", "--to", "2027-09-06")
    assert told.code == 0
    assert "usually 4 Oct to 18 Oct" in told.out  # 4 and 6 weeks after Monday 6 September
    assert "was not computed but typed (the club's own experience), so no chance of it is known." in told.out
    assert "best pace" not in told.out
    beside = swardcast("dates", *AT, *words, "--from", "2027-08-20", "--to", "2027-09-06").err
    assert (
        "also planned on these surfaces in that time, and taken to be done as planned: 'greens-renovation-2027'."
        in beside
    )
    before = _json(swardcast, *AT, *words, "--from", "2027-09-02", "--to", "2027-09-06")
    assert [day["possible"] for day in before["days"]] == [False, False, False, False, True]
    assert before["days"][0]["blocked"][0]["words"] == "Not a day of the contractor for sand injection"


def test_a_name_that_no_fixture_has_is_worth_another_look(swardcast: Command, tmp_path: Path) -> None:
    club = tmp_path / "club"
    shutil.copytree(DEMO, club)
    file = club / "club.yaml"
    file.write_text(
        file.read_text(encoding="utf-8").replace("Captain's day: 9.61", "Autum medal: 9.61"), encoding="utf-8"
    )
    done = swardcast("dates", "--club", str(club), *AT[2:], *JOB, "--from", "2027-08-23", "--to", "2027-08-23")
    assert done.code == 0
    assert "names 'Autum medal', which no fixture is called. Did you mean 'Autumn medal'?" in done.err
    assert "No fixture is called Autum medal." in done.out


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        ((), 2, "name a planned job, as in --job ID, or a choice of work"),
        (("--choice", "Fine hollow tines"), 2, "name surfaces, as in --surfaces 'greens 1-18'"),
        (("--job", "greens-renovaton-2027"), 1, "Did you mean 'greens-renovation-2027'?"),
        ((*JOB, "--from", "2027-08-01"), 1, "--from: 2027-08-01 is over on 2027-08-18"),
        ((*JOB, "--from", "2027-09-01", "--to", "2027-08-30"), 1, "--to: 2027-08-30 is before 2027-09-01"),
        ((*JOB, "--from", "2029-01-01"), 1, "--from: 2029-01-01 is more than a year ahead"),
        ((*JOB, "--to", "2029-01-01"), 1, "more than a year ahead; name a day up to 2028-08-18"),
        (
            (*JOB, "--choice", "Fine hollow tines at close spaceing"),
            1,
            "Did you mean 'Fine hollow tines at close spacing'?",
        ),
        (("--surfaces", "greens 1-2", "--choice", "Hollow 9 mm inside, close"), 1, "as in --surfaces-a-day 6"),
        ((*JOB, "--best", "0"), 2, "expected a number of times from 1 to 20"),
        ((*JOB, "--until", "healed"), 2, "invalid choice: 'healed'"),
        (("--job", "greens-renovation-2027", "--surfaces", "grens 1"), 1, "--surfaces: found"),
    ],
)
def test_what_cannot_be_asked_is_refused_with_what_can(
    swardcast: Command, words: tuple[str, ...], code: int, said: str
) -> None:
    done = swardcast("dates", *AT, *words)
    assert done.code == code
    assert said in done.err
    assert done.out == ""


def test_a_state_that_lasts_has_the_days_of_its_typed_time(swardcast: Command) -> None:
    """Temporary greens of 8 to 11 weeks, from Monday 25 October: 20 December to 10 January."""
    words = ("--job", "low-greens-winter-2027", "--from", "2027-10-25", "--to", "2027-10-25")
    assert "usually 20 Dec to 10 Jan" in swardcast("dates", *AT, *words).out


def test_the_same_question_at_the_same_moment_has_the_same_answer(swardcast: Command) -> None:
    answers = {swardcast("dates", *AT, *JOB, *TWO_WEEKS, "--json").out for _ in range(2)}
    assert len(answers) == 1


def test_a_club_without_past_years_has_days_and_no_costs(swardcast: Command, tmp_path: Path) -> None:
    club = tmp_path / "club"
    shutil.copytree(DEMO, club)
    shutil.rmtree(club / "weather" / "history")
    done = swardcast("dates", "--club", str(club), *AT[2:], *JOB, *TWO_WEEKS)
    assert done.code == 0
    assert "Without past years of weather no end is computed, so no day is better than another." in done.out
    assert "The past years tell neither rain nor frost, so no spare days are counted." in done.out
    assert "The best times" not in done.out


def test_a_page_is_written_where_it_cannot_be_published_and_nowhere_else(swardcast: Command, tmp_path: Path) -> None:
    one_week = (*JOB, "--from", "2027-08-23", "--to", "2027-08-27")
    page = tmp_path / "days.html"
    done = swardcast("dates", *AT, *one_week, "--page", str(page))
    assert done.code == 0
    assert f"Wrote {page}. It is private" in done.err
    assert "What each first day costs" in page.read_text(encoding="utf-8")
    club = tmp_path / "club"
    shutil.copytree(DEMO, club)
    refused = swardcast("dates", "--club", str(club), *AT[2:], *one_week, "--page", str(club / "days.html"))
    assert refused.code == 1
    assert "in the club folder, of which parts are published" in refused.err
    assert not (club / "days.html").exists()


def test_weeks_on_end_in_which_no_work_can_begin_are_one_row(swardcast: Command) -> None:
    """At 55.6 degrees north 10 February is the last day with less than 9.3 hours of light; its week began on the 7th."""
    done = swardcast("dates", *AT, *JOB)
    assert "\n  1 November to 6 February 2028  none\n" in done.out
    assert done.out.count("  none\n") == 1
