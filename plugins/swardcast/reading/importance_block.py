"""`planning: importance` of club.yaml: how much undisturbed play matters on which days."""

from __future__ import annotations

from typing import Annotated, Final

from pydantic import BeforeValidator, Field, model_validator

from swardcast.errors import nearest
from swardcast.moments import WEEKDAYS
from swardcast.reading.day_spans import SomeDay, span_from
from swardcast.reading.schema import Model, Number, Text, Words, within, wrong
from swardcast.records.importance import USUAL_OF_A_FIXTURE, Importance, NamedFixtures, Period

__all__ = ["ImportanceBlock", "importance_from"]

_MOST: Final = 1000.0  # ordinary days that one day may count as: judgement
_Weight = Annotated[Number, within(0, _MOST, "a weight from 0 to 1000, where an ordinary day is 1")]


def _weekdays(value: object) -> object:
    if not isinstance(value, dict):
        raise wrong(value, "weekdays with their weight, such as 'Saturday: 2'")
    for name in value:
        if _weekday(name) not in WEEKDAYS:
            hint = nearest(_weekday(name), WEEKDAYS)
            raise wrong(name, "weekdays with their weight, such as 'Saturday: 2'", hint)
    return value


def _weekday(typed: str) -> str:
    return typed.strip().capitalize()


def _named(value: object) -> object:
    if not isinstance(value, dict):
        raise wrong(value, "names of fixtures, or parts of them, with their weight, such as 'Autumn medal: 10'")
    return value


class _Period(Model):
    name: Words = ""
    from_: SomeDay = Field(alias="from")
    to: SomeDay
    times: _Weight

    @model_validator(mode="after")
    def _is_a_span(self) -> _Period:
        span_from(self.from_, self.to)
        return self


class ImportanceBlock(Model):
    """How much undisturbed play matters; an ordinary day is 1."""

    weekdays: Annotated[dict[str, _Weight], BeforeValidator(_weekdays)] = {}
    fixtures: _Weight | None = None
    visitors: _Weight | None = None
    named: Annotated[dict[Text, _Weight], BeforeValidator(_named)] = {}
    periods: list[_Period] = []


def importance_from(told: ImportanceBlock) -> Importance:
    """Turn the block into a record.

    Args:
        told: the block, checked.

    Returns:
        The weights.
    """
    return Importance(
        weekdays={WEEKDAYS.index(_weekday(name)): weight for name, weight in told.weekdays.items()},
        fixtures=USUAL_OF_A_FIXTURE if told.fixtures is None else told.fixtures,
        visitors=told.visitors,
        named=tuple(NamedFixtures(words=words, adds=adds) for words, adds in told.named.items()),
        periods=tuple(
            Period(name=one.name, span=span_from(one.from_, one.to), times=one.times) for one in told.periods
        ),
        is_typed=told != ImportanceBlock(),
    )
