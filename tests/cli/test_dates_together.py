"""`swardcast dates` for several jobs: what is asked, what is refused, and how it is shown."""

from __future__ import annotations

import csv
import json
import shutil
import subprocess
import sys
from collections.abc import Callable
from io import StringIO
from pathlib import Path
from typing import Any

import pytest

from swardcast.planning.programme_columns import TOGETHER_COLUMNS
from tests.cli.conftest import Done
from tests.conftest import DEMO, ROOT

AT = ("--club", str(DEMO), "--as-of", "2027-04-20 08:00")
SOLID, BLADES, HOLLOW = "greens-solid-tining-2027", "greens-verticutting-2027", "greens-renovation-2027"
JOBS = ("--jobs", f"{SOLID},{BLADES}")
MAY = ("--from", "2027-05-10", "--to", "2027-05-28")
Command = Callable[..., Done]


def _json(swardcast: Command, *words: str) -> dict[str, Any]:
    done = swardcast("dates", *AT, *words, "--json")
    assert done.code == 0, done.err
    told: dict[str, Any] = json.loads(done.out)
    return told


def test_a_terminal_shows_the_days_their_reasons_and_what_they_rest_on(swardcast: Command) -> None:
    done = swardcast("dates", *AT, *JOBS, *MAY, "--gap", "3 days")
    assert done.code == 0
    assert done.err == ""
    lines = done.out.splitlines()
    assert lines[0] == "When to do 2 jobs together, as of 8am on Tuesday 20 April"
    assert lines[2] == "The days with the fewest weighted days in all"
    assert lines[3].split("  ")[1].strip() == "Letter"
    assert [line.split()[0] for line in lines[4:9]] == ["A", "B", "In", "A:", "B:"]
    assert "3 days or more have to pass from A to B." in done.out
    assert "That is proven, not only tried." in done.out
    assert "When all of the jobs are done they come to" in done.out


def test_json_and_csv_have_each_job_of_each_trade_off(swardcast: Command) -> None:
    told = _json(swardcast, *JOBS, *MAY, "--gap", "3 days")
    assert told["jobs"] == [SOLID, BLADES]
    assert told["gaps"] == [{"earlier": SOLID, "later": BLADES, "least_days": 3, "in_order": True}]
    assert list(told["reasons"]) == [SOLID, BLADES]
    assert len(told["trade_offs"]) == 2 * min(5, told["trade_offs_in_all"])
    rows = list(
        csv.DictReader(StringIO(swardcast("dates", *AT, *JOBS, *MAY, "--gap", "3 days", "--format", "csv").out))
    )
    assert list(rows[0]) == list(TOGETHER_COLUMNS)
    for row, one in zip(rows, told["trade_offs"], strict=True):
        assert row == {name: "" if value is None else str(value) for name, value in one.items()}


def test_a_later_gap_and_a_free_order_do_what_they_say(swardcast: Command) -> None:
    """The blades take the later days of May where they may: told to come first, they cost more than in a free order."""
    blades_first = ("--jobs", f"{BLADES},{SOLID}", *MAY)
    free, in_order, apart = (
        _json(swardcast, *words)["trade_offs"]
        for words in ((*blades_first, "--any-order"), blades_first, (*blades_first, "--gap", "1 week"))
    )
    costs = [found[0]["schedule_weighted_days"] for found in (free, in_order, apart)]
    assert costs[0] < costs[1] < costs[2]
    firsts = [{one["job"]: one["first_day"] for one in found[:2]} for found in (free, in_order, apart)]
    assert [days[BLADES] < days[SOLID] for days in firsts] == [False, True, True]


def test_jobs_that_do_not_fit_are_told_with_what_would_do(swardcast: Command) -> None:
    done = swardcast("dates", *AT, *JOBS, *MAY, "--gap", "4 weeks")
    assert done.code == 0
    assert "The jobs cannot all be done from Monday 10 May to Friday 28 May. They fit with " in done.out
    assert "  A: Solid tining and sanding the greens" in done.out
    told = _json(swardcast, *JOBS, *MAY, "--gap", "4 weeks")
    assert told["trade_offs"] == []
    assert told["weighted_days"] is None
    most = told["in_the_way"]["gaps"][0]["most_days"]
    assert _json(swardcast, *JOBS, *MAY, "--gap", f"{most} days")["in_the_way"] is None
    csv_told = swardcast("dates", *AT, *JOBS, *MAY, "--gap", "4 weeks", "--format", "csv")
    assert csv_told.out.count("\n") == 1
    assert "The jobs cannot all be done" in csv_told.err


def test_a_programme_is_its_jobs_that_lie_ahead(swardcast: Command) -> None:
    words = ("--programme", "early-summer programme 2027", "--from", "2027-06-07", "--to", "2027-06-25", "--crews", "3")
    assert _json(swardcast, *words)["jobs"] == [
        SOLID,
        "tees-solid-tining-2027",
        "fairways-tining-2027",
        BLADES,
        "practice-green-solid-tining-2027",
    ]
    done = swardcast("dates", "--club", str(DEMO), "--as-of", "2027-06-10 08:00", *words[:2], "--json")
    assert json.loads(done.out)["jobs"] == [BLADES, "practice-green-solid-tining-2027"]  # the others are begun


def test_gaps_between_kinds_of_work_come_from_the_club(swardcast: Command) -> None:
    """The demo leaves 53 days between hollow and solid tining: in the other order nothing has to pass."""
    told = _json(swardcast, "--jobs", f"{HOLLOW},{SOLID}", "--from", "2027-08-02", "--to", "2027-10-01", "--any-order")
    gaps = {(gap["earlier"], gap["later"]): gap["least_days"] for gap in told["gaps"]}
    assert gaps == {(HOLLOW, SOLID): 53, (SOLID, HOLLOW): 1}


def test_a_page_has_the_tables_and_the_picture_and_one_without_days_says_why(
    swardcast: Command, tmp_path: Path
) -> None:
    page = tmp_path / "days.html"
    done = swardcast("dates", *AT, *JOBS, *MAY, "--any-order", "--page", str(page))
    assert done.code == 0
    assert f"Wrote {page}. It is private" in done.err
    text = page.read_text(encoding="utf-8")
    assert '<meta name="swardcast" content="private page for the committee">' in text
    assert ("<svg" in text) is ("Trade-offs: more weighted days" in text)
    swardcast("dates", *AT, *JOBS, *MAY, "--gap", "4 weeks", "--page", str(page))
    assert "The jobs cannot all be done" in page.read_text(encoding="utf-8")
    club = tmp_path / "club"
    shutil.copytree(DEMO, club)
    refused = swardcast("dates", "--club", str(club), *AT[2:], *JOBS, *MAY, "--page", str(club / "days.html"))
    assert refused.code == 1
    assert not (club / "days.html").exists()


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("--jobs", SOLID), 2, "expected ids of two or more different jobs"),
        (("--jobs", f"{SOLID},{SOLID}"), 2, "expected ids of two or more different jobs"),
        (("--jobs", f"{SOLID},greens-verticuting-2027"), 1, "Did you mean 'greens-verticutting-2027'?"),
        ((*JOBS, "--surfaces", "greens 1-2"), 2, "--surfaces is for one job alone"),
        ((*JOBS, "--job", SOLID), 2, "--job is for one job alone"),
        ((*JOBS, "--programme", "Early-summer programme 2027"), 2, "not allowed with argument --jobs"),
        ((*JOBS, "--gap", "a while"), 2, "expected a time from 1 day to 366 days, such as '6 weeks'"),
        ((*JOBS, "--crews", "0"), 2, "expected a number of crews from 1 to 9"),
        (("--job", SOLID, "--gap", "4 weeks"), 2, "are for several jobs, as in --jobs ID,ID"),
        (("--programme", "Early-sumer programme 2027"), 1, "Did you mean 'Early-summer programme 2027'?"),
    ],
)
def test_what_cannot_be_asked_is_refused_with_what_can(
    swardcast: Command, words: tuple[str, ...], code: int, said: str
) -> None:
    done = swardcast("dates", *AT, *words)
    assert done.code == code
    assert said in done.err
    assert done.out == ""


def test_a_programme_with_one_job_ahead_is_refused(swardcast: Command) -> None:
    at = ("--club", str(DEMO), "--as-of", "2027-06-16 08:00")
    done = swardcast("dates", *at, "--programme", "Early-summer programme 2027")
    assert done.code == 1
    assert "has 1 job that lies ahead" in done.err


def test_the_same_question_at_the_same_moment_has_the_same_answer(swardcast: Command) -> None:
    answers = {swardcast("dates", *AT, *JOBS, *MAY, "--any-order", "--json").out for _ in range(2)}
    assert len(answers) == 1


def test_titles_that_begin_alike_are_told_apart(swardcast: Command) -> None:
    """Of both, 'Hollow tining, scarifying and sanding the' is all that a narrow column would show."""
    jobs = ("--jobs", f"practice-green-renovation-2027,{HOLLOW}")
    out = swardcast("dates", *AT, *jobs, "--from", "2027-08-02", "--to", "2027-08-27").out
    for of in ("the greens", "the practice green"):
        assert f"Hollow tining, scarifying and sanding {of}  " in out


def test_the_example_in_the_readme_is_what_it_prints(swardcast: Command) -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    begin = "\nThe days with the fewest weighted days in all"
    (shown,) = [block for block in readme.split("```") if block.startswith(begin)]
    asked = ("--jobs", f"{SOLID},{BLADES},{HOLLOW}", "--from", "2027-05-03", "--to", "2027-10-31", "--gap", "3 weeks")
    printed = swardcast("dates", *AT, *asked, "--any-order").out
    tables = shown.strip("\n").split("\n\n")
    assert len(tables) == 2
    for table in tables:
        assert table in printed


@pytest.mark.parametrize(
    ("words", "is_loaded"),
    [(("--job", SOLID, "--from", "2027-05-10", "--to", "2027-05-11"), False), ((*JOBS, *MAY), True)],
)
def test_only_several_jobs_load_the_solver(words: tuple[str, ...], is_loaded: bool) -> None:
    code = f"import sys; from swardcast.cli.main import run; run({['dates', *AT, *words]!r}); sys.exit('scipy' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=False, cwd=ROOT / "plugins")
    assert (done.returncode == 1) is is_loaded
    assert done.stderr == b""
