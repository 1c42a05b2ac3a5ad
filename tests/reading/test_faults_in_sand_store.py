"""Faults in the block "sand store" are told like all others; without the block there is no store."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from swardcast.reading.folder import read_club_folder
from swardcast.records.operations import Kind
from swardcast.records.sand_store import SandCount, SandDelivery, SandStore
from tests.reading.breaking import CLUB, assert_said, fault, replace

FAULTS = [
    fault(
        "room without a unit",
        "room: 121.35 t",
        "room: 121.35",
        "line «room:», planning.sand store.room: found '121.35'; expected a mass with its unit, …",
    ),
    fault(
        "room in tons of no country",
        "room: 121.35 t",
        "room: 121.35 tons",
        "line «room:», planning.sand store.room: found '121.35 tons'; expected a mass with its unit, such as …. A ton is two"
        " different masses: write 't' for tonnes or 'US tons'.",
    ),
    fault(
        "more kept back than fits",
        "least: 4.65 t",
        "least: 130 t",
        "line «sand store:», planning.sand store: found '130 t kept back of 121.35 t'; expected less kept back than there is"
        " room for",
    ),
    fault(
        "sand wetter than its pores hold",
        "moisture: 5.37 %",
        "moisture: 53 %",
        "line «moisture», planning.sand store.moisture: found '53 %'; expected water from 0 % to 30 % of the dry mass. Check"
        " the figure and its unit.",
    ),
    fault(
        "a day that is none",
        "{on: 2027-04-26, mass: 28.45 t}",
        "{on: 26 April, mass: 28.45 t}",
        "line «26 April», planning.sand store.delivery 1, on: found '26 April'; expected a day as year-month-day, such as"
        " '2027-08-23'",
    ),
    fault(
        "a delivery without its mass",
        "{on: 2027-04-26, mass: 28.45 t}",
        "{on: 2027-04-26}",
        "line «{on: 2027-04-26}», planning.sand store.delivery 1, mass: found nothing; expected the field 'mass'",
    ),
    fault(
        "a delivery of nothing",
        "mass: 28.45 t",
        "mass: 0 t",
        "line «mass: 0 t», planning.sand store.delivery 1, mass: found '0 t'; expected a mass from 10 kg to 5,000 t. Check the"
        " figure and its unit.",
    ),
    fault(
        "a field misspelt",
        "deliveries:",
        "delivreies:",
        "line «delivreies», planning.sand store.delivreies: found the unknown field 'delivreies'; expected one of: room,"
        " least, moisture, in store, deliveries, for. Did you mean 'deliveries'?",
    ),
    fault(
        "two counts of a day",
        "{on: 2027-07-05, mass: 14.15 t}",
        "{on: 2027-03-01, mass: 14.15 t}",
        "line «sand store:», planning.sand store: found '2027-03-01'; expected one count of the store a day",
    ),
    fault(
        "work that takes no sand",
        "    least: 4.65 t",
        "    for: topdressing and rolling\n    least: 4.65 t",
        "line «for: topdressing and», planning.sand store.for: found 'rolling'; expected kinds of work that take sand:"
        " topdressing, sand injection, bunker re-sanding",
    ),
]


@pytest.mark.parametrize(("old", "new", "says"), FAULTS)
def test_a_fault_in_the_sand_store(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / CLUB, old, new)
    assert_said(demo_club, CLUB, says)


def test_the_demos_store_reads_as_written_by_its_days(demo_club: Path) -> None:
    store = read_club_folder(demo_club).planning.sand_store
    assert (store.room_t, store.least_t) == (121.35, 4.65)
    assert store.moisture_fraction == pytest.approx(0.0537)
    assert store.counts[1] == SandCount(on=date(2027, 7, 5), mass_t=14.15)
    assert [one.on.month for one in store.deliveries] == [4, 6, 6, 8, 10]
    assert store.deliveries[3].note == "on the hard standing by the sheds"
    assert store.kinds == {Kind.TOPDRESSING, Kind.SAND_INJECTION}


def test_one_count_needs_no_list_and_days_no_order(demo_club: Path) -> None:
    text = (demo_club / CLUB).read_text(encoding="utf-8")
    block = (
        "  sand store:\n    in store: {on: 2027-03-01, mass: 20 US tons}\n    for: bunker re-sanding and topdressing\n"
        "    deliveries:\n      - {on: 2027-06-01, mass: 2 t}\n      - {on: 2027-05-01, mass: 900 kg}\n"
    )
    (demo_club / CLUB).write_text(text[: text.index("  sand store:")] + block, encoding="utf-8")
    store = read_club_folder(demo_club).planning.sand_store
    assert store.counts[0].mass_t == pytest.approx(18.14369, abs=0.00001)
    assert store.deliveries == (
        SandDelivery(on=date(2027, 5, 1), mass_t=0.9),
        SandDelivery(on=date(2027, 6, 1), mass_t=2.0),
    )
    assert store.kinds == {Kind.TOPDRESSING, Kind.BUNKER_SANDING}
    assert (store.room_t, store.least_t, store.moisture_fraction) == (None, 0.0, None)


def test_a_club_without_the_block_has_no_store(demo_club: Path) -> None:
    text = (demo_club / CLUB).read_text(encoding="utf-8")
    (demo_club / CLUB).write_text(text[: text.index("  sand store:")], encoding="utf-8")
    assert read_club_folder(demo_club).planning.sand_store == SandStore()
