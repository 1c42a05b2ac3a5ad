"""The fields of each kind of log entry, as a greenkeeper writes them."""

from __future__ import annotations

from typing import Annotated, Any, Final

from pydantic import AfterValidator, Field

from swardcast.quantities import QuantityError, parse_roll_mm
from swardcast.reading.operations import OperationItem
from swardcast.reading.schema import ROLL_LIMITS, Day, Fraction, Model, Text, Words, one_of, wrong
from swardcast.records.log import Change, Eye, HeldBackBy, Step
from swardcast.records.plan import Play

__all__ = [
    "KINDS",
    "SPEED",
    "BackToNormalFields",
    "CorrectionFields",
    "GrowthHeldBackFields",
    "HeadFields",
    "HeldUpFields",
    "MorningFields",
    "NoteFields",
    "ObservationFields",
    "PlanChangeFields",
    "ProgressFields",
]

SPEED: Final = "green speed"
"""The reading that is compared with the club's target."""


def _readings(values: dict[str, str]) -> dict[str, str]:
    if SPEED in values:
        try:
            roll_mm = parse_roll_mm(values[SPEED])
        except QuantityError as error:
            raise wrong(error.found, error.expected, error.hint) from error
        least_mm, most_mm, said = ROLL_LIMITS
        if not least_mm <= roll_mm <= most_mm:
            raise wrong(values[SPEED], said, "Check the figure and its unit.")
    return values


class HeadFields(Model):
    """What every entry has."""

    at: Text
    kind: Text
    by: Words = ""


class MorningFields(HeadFields):
    """A morning status."""

    play: dict[str, Annotated[Play, one_of(Play)]]
    why: Words = ""
    limits: dict[str, Text] = {}


class ProgressFields(HeadFields):
    """Work started, done or resumed."""

    job: Text
    surfaces: Text | None = None
    because: Words = ""
    as_done: Annotated[list[OperationItem], Field(min_length=1)] | None = None
    play: Annotated[Play, one_of(Play)] | None = None


class HeldUpFields(ProgressFields):
    """Work held up, which needs its cause."""

    because: Text


class ObservationFields(HeadFields):
    """Something seen on the course."""

    job: Text
    surfaces: Text | None = None
    disruption_left: Fraction | None = None
    turf_cover: Fraction | None = None
    how: Annotated[Eye, one_of(Eye)] = Eye.BY_EYE
    readings: Annotated[dict[str, Text], AfterValidator(_readings)] = {}


class BackToNormalFields(HeadFields):
    """Surfaces called back to normal."""

    job: Text
    surfaces: Text | None = None


class PlanChangeFields(HeadFields):
    """A job moved or called off."""

    job: Text
    change: Annotated[Change, one_of(Change)]
    starts: Day | None = None
    because: Text


class GrowthHeldBackFields(HeadFields):
    """Days on which growth is held back."""

    cause: Annotated[HeldBackBy, one_of(HeldBackBy)]
    surfaces: Text
    first_day: Day | None = Field(default=None, alias="from")
    until: Day | None = None


class NoteFields(HeadFields):
    """A note to members."""

    job: Words = ""


class CorrectionFields(HeadFields):
    """An entry withdrawn, with or without another in its place."""

    corrects: Text
    instead: dict[str, Any] | None = None


KINDS: Final[dict[str, type[HeadFields]]] = {
    "morning status": MorningFields,
    **{step.value: HeldUpFields if step is Step.HELD_UP else ProgressFields for step in Step},
    "observation": ObservationFields,
    "back to normal": BackToNormalFields,
    "change of plan": PlanChangeFields,
    "growth held back": GrowthHeldBackFields,
    "note to members": NoteFields,
    "correction": CorrectionFields,
}
"""Kinds of entry by the words in `kind`."""
