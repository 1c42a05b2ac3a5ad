"""Every field has its place in `records/privacy.py` and in the README, and nothing private is left for members."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass, replace
from pathlib import Path
from typing import Any, get_args, get_type_hints

import pytest
from pydantic import BaseModel

from swardcast import reading, records
from swardcast.compose import Bulletin
from swardcast.reading import choices_file, club_file, log_fields, plan_file, sources_file, surfaces_file
from swardcast.reading.folder import read_club_folder
from swardcast.reading.schema import Model
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job
from swardcast.records.privacy import SEEN, Seen, for_members
from tests.private_values import told_in_readme, without_private

RECKONED = {"translate"}
"""Modules of `records` whose dataclasses no file fills."""


def types_in(hint: Any) -> Iterator[type]:
    """The dataclasses that a type hint names, at any depth of its brackets."""
    if isinstance(hint, type) and is_dataclass(hint):
        yield hint
    for inner in get_args(hint):
        yield from types_in(inner)


def below(start: set[type]) -> set[type]:
    """Dataclasses that values of these types can hold, at any depth."""
    found: set[type] = set()
    while start:
        found |= start
        start = {one for kind in start for hint in get_type_hints(kind).values() for one in types_in(hint)} - found
    return found


def records_read() -> set[type]:
    names = {one.name for one in pkgutil.iter_modules(records.__path__)} - RECKONED
    modules = [importlib.import_module(f"swardcast.records.{name}") for name in names]
    held = [thing for module in modules for thing in vars(module).values() if isinstance(thing, type)]
    return {kind for kind in held if is_dataclass(kind) and kind.__module__.startswith("swardcast.records.")}


def private_fields() -> Iterator[tuple[type, str]]:
    return ((kind, name) for kind, placed in SEEN.items() for name, seen in placed.items() if seen is Seen.PRIVATE)


def without_place(kinds: set[type], placed: Mapping[type, Mapping[str, Seen]] = SEEN) -> set[str]:
    """Records that are not placed and below no private field, and fields that are not placed or not there."""
    private = below({one for kind, name in private_fields() for one in types_in(get_type_hints(kind)[name])})
    odd = {
        f"{kind.__name__}.{name}"
        for kind in kinds & set(placed)
        for name in {one.name for one in fields(kind)} ^ set(placed[kind])
    }
    return odd | {kind.__name__ for kind in kinds - set(placed) - private}


def test_every_field_of_every_record_has_its_place() -> None:
    assert without_place(records_read()) == set()
    assert set(SEEN) <= records_read()


@dataclass(frozen=True)
class Newcomer:
    supplier: str


def test_a_new_record_or_field_without_a_place_would_be_found() -> None:
    assert without_place({Job, Newcomer}) == {"Newcomer"}
    assert without_place({Newcomer}, {Newcomer: {}}) == {"Newcomer.supplier"}
    assert without_place({Newcomer}, {Newcomer: {"supplier": Seen.PUBLIC, "gone": Seen.PUBLIC}}) == {"Newcomer.gone"}


def instances(value: object, seen: set[int]) -> Iterator[object]:
    """Every record below a value, each once."""
    if id(value) in seen or isinstance(value, str | bytes | int | float):
        return
    seen.add(id(value))
    if is_dataclass(value) and not isinstance(value, type):
        yield value
        for one in fields(value):
            yield from instances(getattr(value, one.name), seen)
    elif isinstance(value, Mapping):
        for inner in value.values():
            yield from instances(inner, seen)
    elif isinstance(value, tuple | list | frozenset | set):
        for inner in value:
            yield from instances(inner, seen)


def kept_back(value: object) -> set[tuple[type, str]]:
    """Private fields below a value that hold something."""
    return {
        (kind, one.name)
        for record in instances(value, set())
        for kind in [type(record)]
        for one in fields(record)  # type: ignore[arg-type] # only dataclasses come
        if SEEN.get(kind, {}).get(one.name) is Seen.PRIVATE
        and getattr(record, one.name) not in ("", _empty(kind, one.name))
    }


def _empty(kind: type, name: str) -> object:
    one = next(one for one in fields(kind) if one.name == name)
    return one.default_factory() if callable(one.default_factory) else one.default


def test_the_demo_keeps_something_in_every_private_field(demo_records: ClubRecords) -> None:
    assert kept_back(demo_records) == set(private_fields())


def test_nothing_private_is_left_for_members(demo_records: ClubRecords) -> None:
    assert kept_back(for_members(demo_records)) == set()


def test_nothing_else_is_taken_from_them(demo_records: ClubRecords) -> None:
    job = next(iter(demo_records.jobs.values()))
    assert for_members(demo_records).jobs[job.id] == replace(job, private_note="")
    assert len(for_members(demo_records).entries) == len(demo_records.entries)


def test_a_bulletin_holds_nothing_private(demo_bulletin: Bulletin) -> None:
    assert kept_back(demo_bulletin) == set()


# The table of the README

MODELS: dict[str, tuple[type[BaseModel], ...]] = {
    "club.yaml": (club_file._Club,),
    "surfaces.yaml": (surfaces_file._Surfaces, surfaces_file._Group, surfaces_file._Named, surfaces_file._Hole),
    "plan/": (plan_file._Programme, plan_file._Job),
    "log/": tuple(log_fields.KINDS.values()),
    "choices.yaml": (choices_file._Choices,),
    "weather/sources.yaml": (sources_file._Sources,),
}
"""The models by the rows of the table; a model below a field goes with that field."""


def names_of(*models: type[BaseModel]) -> set[str]:
    return {one.alias or name for model in models for name, one in model.model_fields.items()}


def models_below(start: set[type[BaseModel]]) -> set[type[BaseModel]]:
    found: set[type[BaseModel]] = set()
    while start:
        found |= start
        hints = [hint for kind in start for hint in get_type_hints(kind, include_extras=True).values()]
        start = {one for hint in hints for one in _models_in(hint)} - found
    return found


def _models_in(hint: Any) -> Iterator[type[BaseModel]]:
    if isinstance(hint, type) and issubclass(hint, BaseModel):
        yield hint
    for inner in get_args(hint):
        yield from _models_in(inner)


@pytest.mark.parametrize("row", MODELS)
def test_the_readme_places_every_field_of_a_file_once(row: str) -> None:
    told = [name for cell in told_in_readme()[row] for name in cell]
    assert sorted(told) == sorted(names_of(*MODELS[row]))


def test_every_model_of_a_file_goes_with_a_field_of_the_table() -> None:
    for one in pkgutil.iter_modules(reading.__path__):
        importlib.import_module(f"swardcast.reading.{one.name}")
    every, new = set[type[BaseModel]](), {Model}
    while new:
        new = {kind for one in new for kind in one.__subclasses__() if kind.__module__.startswith("swardcast.")} - every
        every |= new
    bases = {log_fields.HeadFields}  # of all kinds of entry
    reached = models_below({kind for row in MODELS.values() for kind in row})
    assert {kind.__qualname__ for kind in every - reached - bases} == set()
    assert set(told_in_readme()) == set(MODELS)


def test_what_the_readme_calls_private_is_what_is_taken_out(club: Path, demo_records: ClubRecords) -> None:
    without_private(club)
    assert told_alone(read_club_folder(club)) == told_alone(for_members(demo_records))


def told_alone(told: ClubRecords) -> ClubRecords:
    """Records without the places at which they stand in their files, which move where a line is gone."""
    return replace(
        told,
        jobs={name: replace(job, file="", line=0) for name, job in told.jobs.items()},
        entries=tuple(replace(one, head=replace(one.head, file="", line=0)) for one in told.entries),
    )
