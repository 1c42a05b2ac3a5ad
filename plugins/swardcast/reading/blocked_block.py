"""`planning: days without work` of club.yaml: when the club does no work."""

from __future__ import annotations

from typing import Annotated, Final

from pydantic import BeforeValidator, Field, model_validator

from swardcast.errors import nearest
from swardcast.quantities import parse_length_mm, parse_minutes, parse_temperature_c
from swardcast.reading.day_spans import SomeDay, SomeDays, span_from
from swardcast.reading.near_kinds import kind_meant
from swardcast.reading.schema import Model, Text, names_in, quantity, within, wrong
from swardcast.records.blocked import USUAL_FROST_C, USUAL_RAIN_MM, BlockedDays, ContractorDays, DaysWithoutWork
from swardcast.records.day_spans import DayInYear, DaySpan
from swardcast.records.operations import Kind

__all__ = ["BlockedBlock", "days_without_work_from"]

_PLACE: Final = "the code of a country, or of a country and its part, such as 'IE', 'GB-ENG' or 'US-CA'"


def _place(value: object) -> str:
    """A code of ISO 3166-1, or of a part of a country as ISO 3166-2 has it."""
    code = str(value or "").strip().upper()
    if not code:
        return ""
    from holidays import list_supported_countries  # noqa: PLC0415 - loaded late: few clubs name their holidays

    known = list_supported_countries(include_aliases=False)
    country, _, part = code.partition("-")
    if country not in known:
        raise wrong(value, _PLACE, nearest(country, known))
    if part and part not in known[country]:
        parts = [f"{country}-{one}" for one in known[country]]
        raise wrong(
            value, f"a part of the country: {', '.join(parts)}" if parts else f"'{country}'", nearest(code, parts)
        )
    return code


def _yes(value: object) -> bool:
    word = str(value).strip().lower()
    if word not in ("yes", "no", "true", "false"):
        raise wrong(value, "'yes' or 'no'")
    return word in ("yes", "true")


def _kinds(value: object) -> frozenset[Kind]:
    known = {kind.value: kind for kind in Kind}
    words = names_in(value)
    for word in words:
        if word not in known:
            raise wrong(word, f"one of: {', '.join(known)}", kind_meant(word))
    return frozenset(known[word] for word in words)


def _hours(value: object) -> float:
    return parse_minutes(value) / 60


_Daylight = Annotated[
    float, quantity(_hours, "hours from sunrise to sunset, such as '9 hours'"), within(1, 24, "hours from 1 to 24")
]
_Rain = Annotated[
    float,
    quantity(parse_length_mm, "rain of a day, such as '5 mm'"),
    within(0.1, 100, "rain of a day from 0.1 mm to 100 mm"),
]


class _Blocked(Model):
    on: SomeDays = ()
    from_: SomeDay | None = Field(default=None, alias="from")
    to: SomeDay | None = None
    why: Text

    @model_validator(mode="after")
    def _has_days(self) -> _Blocked:
        _spans(self.on, self.from_, self.to)
        return self


class _Contractor(Model):
    on: SomeDays = ()
    from_: SomeDay | None = Field(default=None, alias="from")
    to: SomeDay | None = None
    for_: Annotated[frozenset[Kind], BeforeValidator(_kinds)] = Field(default=frozenset(), alias="for")

    @model_validator(mode="after")
    def _has_days(self) -> _Contractor:
        _spans(self.on, self.from_, self.to)
        return self


def _spans(on: tuple[DayInYear, ...], first: DayInYear | None, last: DayInYear | None) -> tuple[DaySpan, ...]:
    if (first is None) is not (last is None) or bool(on) is (first is not None):
        found = "no days" if not on and first is None and last is None else "days that are not told in one way"
        raise wrong(found, "either 'on' with one day or several, or both 'from' and 'to'")
    if first is not None and last is not None:
        return (span_from(first, last),)
    return tuple(DaySpan(first=day, last=day) for day in on)


class BlockedBlock(Model):
    """When no work is done."""

    public_holidays: Annotated[str, BeforeValidator(_place)] = ""
    blocked: list[_Blocked] = []
    contractor: list[_Contractor] = []
    work_on_fixtures: Annotated[bool, BeforeValidator(_yes)] = False
    daylight: _Daylight | None = None
    rain: _Rain = USUAL_RAIN_MM
    frost: Annotated[float, quantity(parse_temperature_c)] = USUAL_FROST_C


def days_without_work_from(told: BlockedBlock) -> DaysWithoutWork:
    """Turn the block into a record.

    Args:
        told: the block, checked.

    Returns:
        When no work is done.
    """
    return DaysWithoutWork(
        public_holidays=told.public_holidays,
        blocked=tuple(
            BlockedDays(span=span, why=one.why) for one in told.blocked for span in _spans(one.on, one.from_, one.to)
        ),
        contractor=tuple(
            ContractorDays(spans=_spans(one.on, one.from_, one.to), kinds=one.for_) for one in told.contractor
        ),
        works_on_fixtures=told.work_on_fixtures,
        least_daylight_h=told.daylight,
        rain_mm=told.rain,
        frost_c=told.frost,
    )
