"""choices.yaml -> ways of doing a job, to be compared; the usual ones of the trade are read the same way."""

from __future__ import annotations

from importlib.resources import files
from typing import Annotated, Final

from pydantic import Field, model_validator

from swardcast.errors import InputNeedsAttention, Problem
from swardcast.reading.operations import OperationItem, operation_from
from swardcast.reading.schema import Model, Number, Text, Words, validated, within, wrong
from swardcast.reading.surface_kinds import SurfaceKinds
from swardcast.reading.usual_times import UsualTime, stretch_from
from swardcast.reading.yaml_text import Located, read_yaml
from swardcast.records.operations import LASTING, NOT_COMPUTED
from swardcast.records.planning import Choice

__all__ = ["MOST_CHOICES", "choices_from", "usual_choices"]

MOST_CHOICES: Final = 200
"""More nobody compares: judgement."""

_USUAL: Final = "usual_choices.yaml"
_NONE_YET: Final[tuple[object, ...]] = ({}, {"choices": None}, {"choices": []})
"""A file in which no choice stands yet: empty, or with nothing but remarks."""


class _Choice(Model):
    name: Words = ""
    for_: SurfaceKinds = Field(default=frozenset(), alias="for")
    operations: Annotated[list[OperationItem], Field(min_length=1)]
    source: Words = ""
    surfaces_a_day: Annotated[Number, within(0.05, 60, "surfaces finished in a day, from 0.05 to 60")] | None = None
    cost_per_surface: Annotated[Number, within(0, 1e6, "an amount from 0 to 1,000,000")] | None = None
    normal_after: UsualTime | None = None

    @model_validator(mode="after")
    def _has_a_time(self) -> _Choice:
        kinds = {operation_from(item).kind for item in self.operations}
        if (unknown := kinds & NOT_COMPUTED) and self.normal_after is None:
            said = " and ".join(sorted(kind.value for kind in unknown))
            expected = "'normal after' with the usual time, such as {from: 4 to 8 weeks, source: our own experience}"
            raise wrong(f"{said}, for which no date can be computed", expected)
        if lasting := kinds & LASTING:
            said = " and ".join(sorted(kind.value for kind in lasting))
            raise wrong(said, "work that is done and heals; this one is a state that lasts until an entry ends it")
        return self


class _Choices(Model):
    choices: Annotated[list[_Choice], Field(min_length=1, max_length=MOST_CHOICES)]
    note: Text = ""


def choices_from(document: Located, *, file: str, problems: list[Problem]) -> tuple[Choice, ...]:
    """Read ways of doing a job.

    Args:
        document: the YAML of the file.
        file: its name for problems.
        problems: where problems are added.

    Returns:
        The choices, in the order of the file; nothing when something is wrong, or when none stands there yet.
    """
    if document.value in _NONE_YET:
        return ()
    told = validated(_Choices, document, file=file, problems=problems)
    if told is None:
        return ()
    choices: list[Choice] = []
    for place, one in enumerate(told.choices):
        line = document.line(("choices", place)) or 1
        choice = _choice(one, file=file, line=line)
        earlier = next((other for other in choices if _are_called_alike(other, choice)), None)
        if earlier is not None:
            expected = f"a name of its own for each; line {earlier.line} has this one"
            found = f"{choice.name!r} a second time"
            problems.append(Problem(file=file, line=line, field="name", found=found, expected=expected))
        choices.append(choice)
    return tuple(choices)


def _are_called_alike(one: Choice, other: Choice) -> bool:
    """Whether both could stand in one comparison, where nobody could tell them apart."""
    may_meet = not one.fits or not other.fits or bool(one.fits & other.fits)
    return bool(one.name) and one.name.casefold() == other.name.casefold() and may_meet


def _choice(told: _Choice, *, file: str, line: int) -> Choice:
    return Choice(
        name=" ".join(told.name.split()),
        operations=tuple(map(operation_from, told.operations)),
        source=" ".join(told.source.split()),
        fits=told.for_,
        surfaces_a_day=told.surfaces_a_day,
        cost_per_surface=told.cost_per_surface,
        normal_after=stretch_from(told.normal_after),
        file=file,
        line=line,
    )


def usual_choices() -> tuple[Choice, ...]:
    """Give the usual choices of the trade, each with its source or with the words that it has none.

    Returns:
        The choices, for greens first.

    Raises:
        InputNeedsAttention: when the file that comes with the program was damaged.
    """
    problems: list[Problem] = []
    text = files("swardcast.reading").joinpath(_USUAL).read_text(encoding="utf-8")
    document = read_yaml(text, file=_USUAL, problems=problems)
    choices = choices_from(document, file=_USUAL, problems=problems) if document is not None else ()
    if problems:
        raise InputNeedsAttention(problems)
    return choices
