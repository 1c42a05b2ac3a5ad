"""`swardcast sand`: what is asked, how it is shown, and that all its forms say the same."""

from __future__ import annotations

import csv
import json
from collections import defaultdict
from collections.abc import Callable
from io import StringIO
from pathlib import Path
from typing import Any

import pytest

from tests.cli.conftest import Done
from tests.conftest import DEMO, ROOT
from tests.reading.breaking import replace

AT = ("--club", str(DEMO), "--as-of", "2027-09-14 09:30")
Command = Callable[..., Done]


def _json(swardcast: Command, *words: str) -> dict[str, Any]:
    done = swardcast("sand", *words, "--json")
    assert done.code == 0, done.err
    told: dict[str, Any] = json.loads(done.out)
    return told


def _csv(swardcast: Command, *words: str) -> list[dict[str, str]]:
    done = swardcast("sand", *words, "--format", "csv")
    assert done.code == 0, done.err
    return list(csv.DictReader(StringIO(done.out)))


def test_the_demos_year_by_hand(swardcast: Command) -> None:
    """Greens renovated in August: 18 x 2.6 t planned; greens 13 to 15 had 3.2 t each, so that 46.8 + 1.8 = 48.6 were used.
    Verticutting: 0.8 mm x 1.56 t/m3 x 8,755 m2 = 10.926 t. Bunkers: 100 mm x 1.56 x 284 m2 = 44.304 t."""
    jobs = _json(swardcast, *AT)["jobs"]
    assert jobs["greens-renovation-2027"] == {"planned_dry_t": 46.8, "used_dry_t": 48.6, "to_come_dry_t": 0.0}
    assert jobs["greens-verticutting-2027"]["used_dry_t"] == pytest.approx(10.9262, abs=0.0001)
    assert jobs["bunkers-resanding-2027"]["planned_dry_t"] == pytest.approx(44.304)


def test_work_and_store_are_told_in_the_order_of_their_days(swardcast: Command) -> None:
    rows = _csv(swardcast, *AT)
    work = [row["day"] for row in rows if not row["what"].startswith("store: ")]
    store = [row["day"] for row in rows if row["what"].startswith("store: ")]
    assert len(work) > 100
    assert work == sorted(work)
    assert store == sorted(store)
    assert [one["day"] for one in _json(swardcast, *AT)["work"]] == work


def test_a_correction_of_the_demo_neither_adds_nor_loses_sand(swardcast: Command) -> None:
    """The 12th was entered as done on 24 August, then not, then done on the 26th: 2.6 t, once."""
    rows = [
        row for row in _csv(swardcast, *AT) if row["surface"] == "green-12" and row["job"] == "greens-renovation-2027"
    ]
    assert [(row["what"], row["day"], row["dry_t"]) for row in rows] == [
        ("planned", "2027-08-24", "2.6"),
        ("done", "2027-08-26", "2.6"),
    ]
    before = _csv(swardcast, "--club", str(DEMO), "--as-of", "2027-08-24 18:00")
    (done,) = (
        row
        for row in before
        if row["surface"] == "green-12" and row["what"] == "done" and row["job"] == "greens-renovation-2027"
    )
    assert done["day"] == "2027-08-24"


def test_an_amount_of_the_log_names_its_entry(swardcast: Command) -> None:
    told = {row["surface"]: (row["dry_t"], row["told_by"]) for row in _csv(swardcast, *AT) if row["told_by"]}
    entry = "2027-08-26-1545-greens-13-to-15-done"
    assert told == {f"green-{hole}": ("3.2", entry) for hole in (13, 14, 15)}


def test_csv_and_json_say_the_same_and_months_add_up(swardcast: Command) -> None:
    told, rows = _json(swardcast, *AT), _csv(swardcast, *AT)
    months: dict[str, dict[str, float]] = defaultdict(lambda: defaultdict(float))
    for row in rows:
        if not row["what"].startswith("store: "):
            months[row["day"][:7]][row["what"]] += float(row["dry_t"])
    names = {"planned": "planned_dry_t", "done": "used_dry_t", "to come": "to_come_dry_t"}
    for month, masses in told["months"].items():
        for what, name in names.items():
            assert masses[name] == pytest.approx(months[month][what], abs=0.01), (month, what)
    assert sum(masses["planned_dry_t"] for masses in told["months"].values()) == pytest.approx(
        told["in_all"]["planned_dry_t"], abs=0.01
    )
    lines = [row for row in rows if row["what"].startswith("store: ")]
    assert [float(row["in_store_t"]) for row in lines] == [line["in_store_t"] for line in told["store"]["lines"]]


def test_what_is_paid_is_the_price_of_what_is_weighed(swardcast: Command) -> None:
    """48.6 t dry and the rest of it: weighed is dry x 1.0537, the cost weighed x 47.35, by hand."""
    told = _json(swardcast, *AT)["in_all"]
    assert told["used_weighed_t"] == pytest.approx(told["used_dry_t"] * 1.0537, abs=0.001)
    assert told["used_cost"] == pytest.approx(told["used_weighed_t"] * 47.35, abs=0.05)


def test_without_a_price_nothing_costs(swardcast: Command, club: Path) -> None:
    replace(club / "club.yaml", "  sand price: 47.35 per tonne\n", "")
    asked = ("--club", str(club), "--as-of", "2027-09-14 09:30")
    assert _json(swardcast, *asked)["in_all"]["used_cost"] is None
    shown = swardcast("sand", *asked).out
    assert "Nobody typed a price of sand." in shown
    assert "£" not in shown


def test_without_a_store_there_is_no_balance_of_it(swardcast: Command, club: Path) -> None:
    text = (club / "club.yaml").read_text(encoding="utf-8")
    (club / "club.yaml").write_text(text[: text.index("  sand store:")], encoding="utf-8")
    asked = ("--club", str(club), "--as-of", "2027-09-14 09:30")
    assert _json(swardcast, *asked)["store"] is None
    shown = swardcast("sand", *asked).out
    assert "The store was not counted, so there is no balance of it." in shown
    assert "Nobody told the moisture of the sand, so it counts as dry." in shown


def test_the_first_trouble_is_told_in_words_and_in_figures(swardcast: Command) -> None:
    told = _json(swardcast, *AT)["store"]
    assert (told["first_trouble"]["day"], told["first_trouble"]["trouble"]) == ("2027-10-04", "below the least")
    assert told["delivery_needed_by"] == "2027-10-04"
    assert told["missing_t"] == pytest.approx(4.65 + 0.2942, abs=0.0001)


def test_the_example_in_the_readme_is_what_it_prints(swardcast: Command) -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8").split("## Sand and materials")[1]
    (shown,) = [block for block in readme.split("```") if block.startswith("\nSand and materials, 2027")]
    printed = swardcast("sand", *AT).out
    first, rows = shown.strip().split("\n\n")
    head, *words = first.split("\n")
    lines = printed.splitlines()
    assert lines[0] == head
    assert lines[1] == " ".join(words)
    assert rows in printed


def test_it_says_on_what_each_figure_rests_and_judges_nothing(swardcast: Command) -> None:
    shown = swardcast("sand", *AT).out
    for words in (
        "dry sand that weighs 1.56 t/m3 as spread",
        "5.37 % of the dry mass, so that dry sand weighs 1.054 times as much in the yard",
        "They are information and no aim.",
        "For 3 of them an entry tells how much.",
    ):
        assert words in shown, words
    assert "\u00a0" not in shown
    assert not any(word in shown.lower() for word in ("too little sand", "too much sand", "recommend", "should"))


@pytest.mark.parametrize(
    ("asked", "code", "says"),
    [
        (("--year", "2027", "--from", "2027-01-01", "--to", "2027-02-01"), 2, "not both"),
        (("--from", "2027-01-01"), 2, "name both days"),
        (("--year", "soon"), 2, "expected a year such as '2027'"),
        (("--from", "2027-02-01", "--to", "2027-01-01"), 1, "--from 2027-02-01 comes after --to 2027-01-01"),
        (("--from", "2020-01-01", "--to", "2027-01-01"), 1, "name a shorter time"),
    ],
)
def test_a_period_that_cannot_be_is_told(swardcast: Command, asked: tuple[str, ...], code: int, says: str) -> None:
    done = swardcast("sand", *AT, *asked)
    assert (done.code, done.out) == (code, "")
    assert says in done.err


def test_another_period_says_that_it_is_no_year(swardcast: Command) -> None:
    done = swardcast("sand", *AT, "--from", "2027-08-01", "--to", "2027-08-31")
    assert done.out.startswith("Sand and materials, August 2027, as of")
    assert "The period has 31 days, and what is in print is for a year." in done.out


def test_days_without_sand_say_so(swardcast: Command) -> None:
    assert "No sand is planned or used in these days." in swardcast("sand", *AT, "--year", "2026").out


def test_the_private_page_is_refused_inside_the_club_folder(swardcast: Command, club: Path, tmp_path: Path) -> None:
    asked = ("sand", "--club", str(club), "--as-of", "2027-09-14 09:30", "--page")
    assert swardcast(*asked, str(club / "sand.html")).code == 1
    assert swardcast(*asked, str(tmp_path / "sand.html")).code == 0
    assert "Private, for the committee." in (tmp_path / "sand.html").read_text(encoding="utf-8")
