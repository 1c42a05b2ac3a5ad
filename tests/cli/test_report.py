"""`swardcast report`: which period it is asked for, the forms that it has, and where they may not go."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from swardcast.outlets.committee_page import MARK
from tests.cli.conftest import Done
from tests.outlook.small_club import SmallClub

Command = Callable[..., Done]
MARK_IN_MARKDOWN = f"<!-- {MARK} -->"


@pytest.fixture
def small(tmp_path: Path) -> SmallClub:
    made = SmallClub(tmp_path / "club")
    made.job("spring", "04-01")
    made.done("spring", "04-01")
    made.normal("spring", "05-05")
    return made


@pytest.fixture
def report(swardcast: Command, small: SmallClub) -> Command:
    def run(*words: str, as_of: str = "2027-05-10 08:00") -> Done:
        return swardcast("report", "--club", str(small.folder), "--as-of", as_of, *words)

    return run


@pytest.mark.parametrize(
    ("words", "title"),
    [
        ((), "April 2027"),
        (("--month", "2027-03"), "March 2027"),
        (("--year", "2027"), "2027"),
        (("--from", "2027-04-01", "--to", "2027-05-03"), "1 April 2027 to 3 May 2027"),
        (("--from", "2027-04-05", "--to", "2027-04-11"), "5 to 11 April 2027"),
        (("--from", "2027-05-01"), "1 to 10 May 2027"),
    ],
)
def test_the_period_is_the_one_asked_for_or_the_month_before_this(
    report: Command, words: tuple[str, ...], title: str
) -> None:
    done = report(*words)
    assert (done.code, done.err) == (0, "")
    assert done.out.startswith(f"{MARK_IN_MARKDOWN}\n\n# Report to the committee: {title}\n")


def test_in_january_it_is_that_of_december(report: Command) -> None:
    assert "# Report to the committee: December 2026\n" in report(as_of="2027-01-04 08:00").out


def test_a_period_that_is_not_over_says_so(report: Command) -> None:
    said = "The period is not over: what came later than 10 May is not in it."
    assert said in report("--month", "2027-05").out
    assert said not in report("--month", "2027-04").out


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("--month", "2027-13"), 2, "expected a month such as '2027-09'"),
        (("--year", "27"), 2, "expected a year such as '2027'"),
        (("--month", "2027-04", "--year", "2027"), 2, "not allowed with"),
        (("--month", "2027-04", "--to", "2027-04-30"), 2, "not both"),
        (("--to", "2027-04-30"), 2, "name the first day too"),
        (("--from", "2027-04-30", "--to", "2027-04-01"), 1, "--from 2027-04-30 comes after --to 2027-04-01"),
        (("--month", "2027-06"), 1, "the period begins on 2027-06-01, and nothing of it is known on 2027-05-10"),
    ],
)
def test_a_period_that_cannot_be_is_refused(report: Command, words: tuple[str, ...], code: int, said: str) -> None:
    done = report(*words)
    assert (done.code, done.out) == (code, "")
    assert said in done.err


def test_the_same_records_and_moment_give_the_same_bytes(report: Command, tmp_path: Path) -> None:
    (tmp_path / "papers").mkdir()
    made = []
    for turn in ("one", "two"):
        page, text = (tmp_path / "papers" / f"{turn}.{ending}" for ending in ("html", "md"))
        done = report("--month", "2027-04", "--page", str(page), "--output", str(text))
        assert (done.code, done.out) == (0, "")
        assert done.err.count("It is private: do not put it on the site.") == 2
        made.append((page.read_bytes(), text.read_bytes()))
    assert made[0] == made[1]
    assert report("--month", "2027-04").out.encode() == made[0][1]


def test_an_entry_made_later_changes_no_report_of_an_earlier_moment(report: Command, small: SmallClub) -> None:
    before = report("--month", "2027-04", as_of="2027-05-07 08:00").out
    small.log("later", "05-09", "correction", "corrects: spring-normal")
    small.log("read", "05-09", "observation", "surfaces: green 1", "readings: {moisture: 20 %}")
    assert report("--month", "2027-04", as_of="2027-05-07 08:00").out == before
    assert report("--month", "2027-04").out != before


def test_the_source_of_each_row_is_named_when_asked_for(report: Command) -> None:
    short, whole = report("--month", "2027-04").out, report("--month", "2027-04", "--sources").out
    assert "log/2027/spring-done.md" not in short
    assert "- Log, work begun, held up or done: 1 entry, 1 April.\n" in short
    assert "- 2: log/2027/spring-done.md\n" in whole


def test_for_a_machine_it_has_the_same_facts_with_their_places(report: Command) -> None:
    told = json.loads(report("--month", "2027-04", "--json").out)
    assert (told["first_day"], told["last_day"], told["currency"]) == ("2027-04-01", "2027-04-30", None)
    (job,) = told["jobs"]
    assert (job["id"], job["first_day"], job["last_day"], job["surfaces_done"]) == (
        "spring",
        "2027-04-01",
        "2027-04-01",
        2,
    )
    assert job["sources"] == ["plan/spring.yaml, line 4", "log/2027/spring-done.md"]
    (days,) = told["disturbed"]
    assert (days["days"], days["normal_on"], days["is_over"]) == (34, "2027-05-05", True)
    assert days["before_the_work"]["normal_likely"] == "2027-04-25"
    assert days["before_the_work"]["likely_days"] == 24
    (sand,) = told["sand"]
    assert (sand["planned_t"], sand["used_t"], sand["cost_planned"]) == (7.5729, 7.5729, None)
    assert (told["hold_ups"], told["dates"], told["ahead"], told["readings"]) == ([], [], [], [])


@pytest.mark.parametrize("option", ["--page", "--output"])
def test_neither_form_goes_where_it_could_be_published(
    report: Command, small: SmallClub, tmp_path: Path, option: str
) -> None:
    ending = "html" if option == "--page" else "md"
    site = tmp_path / "public" / "feeds"
    site.mkdir(parents=True)
    (site / "status.rss").write_text("<rss/>", encoding="utf-8")
    for place in (
        small.folder / f"r.{ending}",
        small.folder / "log" / f"r.{ending}",
        tmp_path / "public" / f"r.{ending}",
    ):
        done = report(option, str(place))
        assert (done.code, done.out, place.exists()) == (1, "", False)
        assert "name a place outside" in done.err


@pytest.mark.parametrize(
    ("option", "name", "said"),
    [("--output", "r.html", "ends in .md"), ("--page", "r.md", "ends in .html"), ("--output", "r", "ends in .md")],
)
def test_each_form_has_its_ending(report: Command, tmp_path: Path, option: str, name: str, said: str) -> None:
    done = report(option, str(tmp_path / name))
    assert done.code == 1
    assert said in done.err
    assert not (tmp_path / name).exists()


def test_an_older_report_is_replaced_and_another_text_is_not(report: Command, tmp_path: Path) -> None:
    text = tmp_path / "r.md"
    assert report("--output", str(text)).code == 0
    assert report("--month", "2027-03", "--output", str(text)).code == 0
    assert "March 2027" in text.read_text(encoding="utf-8")
    text.write_text("Dear member", encoding="utf-8")
    assert report("--output", str(text)).code == 1
    assert text.read_text(encoding="utf-8") == "Dear member"
