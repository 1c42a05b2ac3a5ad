"""Operations as really done take the place of those planned, and none is lost."""

from __future__ import annotations

from swardcast.outlook.ledger import as_really_done
from swardcast.records.operations import Kind, OtherWork, Tining

ROLLING = OtherWork(kind=Kind.ROLLING)


def _tines(diameter_mm: float, kind: Kind = Kind.HOLLOW_TINING) -> Tining:
    return Tining(
        kind=kind, diameter_mm=diameter_mm, inside_diameter_mm=None, across_mm=50.0, along_mm=50.0, depth_mm=60.0, passes=1
    )  # fmt: skip


def test_what_was_done_stands_in_the_place_of_what_was_planned() -> None:
    assert as_really_done((_tines(13), ROLLING), (_tines(10),)) == (_tines(10), ROLLING)


def test_other_work_comes_after_it() -> None:
    solid = _tines(8, Kind.SOLID_TINING)
    assert as_really_done((_tines(13), ROLLING), (solid,)) == (_tines(13), ROLLING, solid)


def test_of_two_of_a_kind_each_stands_for_its_own() -> None:
    assert as_really_done((_tines(13), _tines(8)), (_tines(12), _tines(7))) == (_tines(12), _tines(7))
    assert as_really_done((_tines(13), _tines(8)), (_tines(12),)) == (_tines(12), _tines(8))


def test_a_second_one_of_a_kind_is_added() -> None:
    assert as_really_done((_tines(13), ROLLING), (_tines(12), _tines(7))) == (_tines(12), ROLLING, _tines(7))
