"""Limits on play in a morning entry: what was decided, by whom, until when. Nothing of it is ever inferred."""

from __future__ import annotations

from datetime import date, datetime, time, timedelta
from typing import Annotated, Any, Final

from pydantic import BeforeValidator
from pydantic_core import PydanticCustomError

from swardcast.errors import nearest
from swardcast.reading.clock_times import clock_time
from swardcast.reading.local_rules import ONLY_THE_COMMITTEE, check_is_the_committee, rule_number
from swardcast.reading.schema import Model, Text, Words, one_day, wrong
from swardcast.records.log import FROST_DELAY, EntryHead, Limit

__all__ = ["LIMITS", "LimitItem", "limit_from"]

LIMITS: Final = ("preferred lies", "trolleys", "buggies", "carry only", FROST_DELAY, "practice ground")
_LOCAL_RULE: Final = "preferred lies"
_LIFTED: Final = "lifted"


def _until(value: object) -> date | time:
    for read in (one_day, clock_time):
        try:
            return read(value)
        except PydanticCustomError:
            continue
    raise wrong(value, "a time of that day such as '9:30am', or a day such as '2027-09-16'")


class _Fields(Model):
    what: Text
    decided_by: Words = ""
    until: Annotated[date | time, BeforeValidator(_until)] | None = None
    rule: Annotated[str, BeforeValidator(rule_number)] = ""


def _item(value: object) -> Any:
    return value if isinstance(value, dict) else {"what": value}


LimitItem = Annotated[_Fields, BeforeValidator(_item)]
"""A text that says what was decided, or the fields what, decided by, until and rule."""


def limit_from(name: str, told: _Fields, head: EntryHead) -> Limit:
    """Make a limit of what an entry says.

    Args:
        name: what it is about, one of `LIMITS`.
        told: its fields.
        head: the entry's head, whose moment is in the club's time.

    Returns:
        The limit.

    Raises:
        PydanticCustomError: when the name is unknown, nobody or one of the staff is said to have adopted a Local Rule,
            or it ends before it begins.
    """
    if name not in LIMITS:
        raise wrong(name, f"one of: {', '.join(LIMITS)}", nearest(name, LIMITS))
    lifted = told.what.lower() == _LIFTED
    if (name == _LOCAL_RULE or told.rule) and not lifted:
        if not told.decided_by:
            raise wrong(None, "the field 'decided by', such as 'decided by: the Committee'", ONLY_THE_COMMITTEE)
        check_is_the_committee(told.decided_by)
    said = head.true_from
    end_of_day = _end_of(said.date(), said)
    until = end_of_day
    if isinstance(told.until, time):
        until = datetime.combine(said.date(), told.until, tzinfo=said.tzinfo)
    elif told.until is not None:
        until = _end_of(told.until, said)
    if until <= said:
        raise wrong(f"{until:%Y-%m-%d %H:%M}", f"an end after the entry of {said:%Y-%m-%d %H:%M}")
    return Limit(
        name=name,
        what="" if lifted else told.what,
        decided_by=told.decided_by or head.by,
        until=until,
        outlasts=until > end_of_day,
        rule=told.rule,
    )


def _end_of(day: date, said: datetime) -> datetime:
    return datetime.combine(day + timedelta(days=1), time(0), tzinfo=said.tzinfo)
