"""The fields of each kind of log entry, as a greenkeeper writes them."""

from __future__ import annotations

from typing import Annotated, Any, Final

from pydantic import Field

from swardcast.errors import nearest
from swardcast.reading.limits import LimitItem
from swardcast.reading.operations import OperationItem
from swardcast.reading.schema import Day, Fraction, Model, Text, Words, one_of
from swardcast.reading.seen import Readings
from swardcast.records.log import Change, Eye, HeldBackBy, Step
from swardcast.records.plan import Play

__all__ = [
    "KINDS",
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
    "meant",
]


class HeadFields(Model):
    """What every entry has."""

    at: Text
    kind: Text
    by: Words = ""
    private_note: Words = ""


class MorningFields(HeadFields):
    """A morning status."""

    play: dict[str, Annotated[Play, one_of(Play)]]
    why: Words = ""
    limits: dict[str, LimitItem] = {}


class ProgressFields(HeadFields):
    """Work started, done or resumed."""

    job: Text
    surfaces: Text | None = None
    because: Words = ""
    as_done: Annotated[list[OperationItem], Field(min_length=1)] | None = None
    play: Annotated[Play, one_of(Play)] | None = None


class HeldUpFields(ProgressFields):
    """Work held up, which needs its cause, and may say until when nobody works on."""

    because: Text
    no_work_before: Day | None = None


class ObservationFields(HeadFields):
    """Something seen on the course, of a job or of none."""

    job: Words = ""
    surfaces: Text | None = None
    disruption_left: Fraction | None = None
    turf_cover: Fraction | None = None
    how: Annotated[Eye, one_of(Eye)] = Eye.BY_EYE
    readings: Readings = Readings()


class BackToNormalFields(HeadFields):
    """Surfaces called back to normal."""

    job: Text
    surfaces: Text | None = None


class PlanChangeFields(HeadFields):
    """A job moved, postponed to no day that is known yet, or called off."""

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


_ALSO_SAID: Final = {
    "work done": ("work finished", "work completed", "finished", "completed", "done"),
    "work started": ("work begun", "started", "begun"),
    "held up": ("work held up", "work stopped", "stopped", "rained off"),
    "work resumed": ("work taken up again", "work continued", "resumed", "continued"),
    "morning status": ("morning", "course status", "status"),
    "back to normal": ("normal", "healed", "recovered"),
    "change of plan": ("postponed", "called off", "brought forward", "cancelled"),
    "note to members": ("note", "message"),
    "observation": ("seen", "reading", "readings"),
}


def meant(kind: str) -> str:
    """Guess which kind of entry somebody meant who wrote another word for it.

    Args:
        kind: the word as written.

    Returns:
        A sentence that asks, or "" when nothing is near.
    """
    word = " ".join(kind.lower().split())
    for name, words in _ALSO_SAID.items():
        if word in words:
            return f"Did you mean {name!r}?"
    return nearest(kind, KINDS)
