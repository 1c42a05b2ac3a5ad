"""The block "sand store" of the club's private planning: room, what is kept back, counts, deliveries, moisture."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Final

from pydantic import BeforeValidator, Field, model_validator

from swardcast.errors import nearest
from swardcast.quantities import parse_mass_t
from swardcast.reading.schema import Day, Fraction, Model, Text, names_in, quantity, within, wrong
from swardcast.records.operations import Kind
from swardcast.records.sand_store import SandCount, SandDelivery, SandStore

__all__ = ["SandStoreBlock", "sand_store_from"]

_MOST_T: Final = 5000.0  # as much as one job may take in all: judgement
_SANDED: Final = {kind.value: kind for kind in (Kind.TOPDRESSING, Kind.SAND_INJECTION, Kind.BUNKER_SANDING)}
_WETTEST: Final = 0.3
# Pores of sand of 1.56 t/m3 with grains of 2.65 t/m3 hold 1/1.56 - 1/2.65 = 0.26 of its dry mass: arithmetic.


def _one_or_more(value: object) -> object:
    return [value] if isinstance(value, dict) else value


def _kinds(value: object) -> object:
    words = names_in(value)
    for word in words:
        if word not in _SANDED:
            raise wrong(word, f"kinds of work that take sand: {', '.join(_SANDED)}", nearest(word, _SANDED))
    return frozenset(_SANDED[word] for word in words)


_Mass = Annotated[float, quantity(parse_mass_t), within(0, _MOST_T, "a mass from none to 5,000 t")]
_Load = Annotated[float, quantity(parse_mass_t), within(0.01, _MOST_T, "a mass from 10 kg to 5,000 t")]


class _Count(Model):
    on: Day
    mass: _Mass


class _Delivery(Model):
    on: Day
    mass: _Load
    note: Text = ""


class SandStoreBlock(Model):
    """What the club tells of its store of sand."""

    room: _Load | None = None
    least: _Mass = 0.0
    moisture: Annotated[Fraction, within(0, _WETTEST, "water from 0 % to 30 % of the dry mass")] | None = None
    in_store: Annotated[list[_Count], BeforeValidator(_one_or_more)] = []
    deliveries: Annotated[list[_Delivery], BeforeValidator(_one_or_more)] = []
    for_: Annotated[frozenset[Kind], BeforeValidator(_kinds)] = Field(default=SandStore().kinds, alias="for")

    @model_validator(mode="after")
    def _makes_sense(self) -> SandStoreBlock:
        if self.room is not None and self.least >= self.room:
            raise wrong(f"{self.least:g} t kept back of {self.room:g} t", "less kept back than there is room for")
        counted = [count.on for count in self.in_store]
        twice = next((day for day in counted if counted.count(day) > 1), None)
        if twice is not None:
            raise wrong(twice.isoformat(), "one count of the store a day")
        return self


def sand_store_from(told: SandStoreBlock) -> SandStore:
    """Make a record of what was told.

    Args:
        told: the block.

    Returns:
        The store, counts and deliveries by their days.
    """
    return SandStore(
        room_t=told.room,
        least_t=told.least,
        moisture_fraction=told.moisture,
        counts=tuple(sorted((SandCount(on=one.on, mass_t=one.mass) for one in told.in_store), key=_day)),
        deliveries=tuple(
            sorted((SandDelivery(on=one.on, mass_t=one.mass, note=one.note) for one in told.deliveries), key=_day)
        ),
        kinds=told.for_,
    )


def _day(one: SandCount | SandDelivery) -> date:
    return one.on
