"""How work was really done: quantities as typed, put into the planned operations where they differ from them."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from typing import Final

from pydantic import ValidationError

from swardcast.entering.drafts import Value
from swardcast.entering.kinds import MEASURES
from swardcast.entering.written import operation_in_fields
from swardcast.entering.wrong import WrongAnswer, understood
from swardcast.errors import nearest
from swardcast.quantities import (
    parse_count,
    parse_length_mm,
    parse_sand,
    parse_seed_g_per_m2,
    parse_spacing_mm,
)
from swardcast.reading.operations import OperationItem, operation_from
from swardcast.records.operations import (
    Dressing,
    Grooving,
    HeightOfCut,
    Kind,
    Operation,
    ProductUse,
    SandInjection,
    Seeding,
    Stripping,
    Tining,
)
from swardcast.records.plan import Job

__all__ = ["as_done", "changes_typed", "check_measure", "planned_in_words"]

_FIELD: Final = {"tine": "diameter", "blade": "blade", "sand": "sand", "depth": "depth", "passes": "passes"}
_TAKEN_BY: Final[Mapping[str, tuple[type, ...]]] = {
    "tine": (Tining,),
    "blade": (Grooving,),
    "spacing": (Tining, Grooving),
    "depth": (Tining, Grooving, Stripping),
    "passes": (Tining, Grooving),
    "sand": (Dressing, SandInjection),
    "seed": (Seeding,),
}


def check_measure(option: str, text: str) -> None:
    """Check one quantity by itself.

    Args:
        option: one of `kinds.MEASURES`.
        text: the quantity as typed, with its unit.

    Raises:
        WrongAnswer: when it cannot be read.
    """
    match option:
        case "tine" | "blade" | "depth":
            understood(lambda: parse_length_mm(text))
        case "spacing":
            understood(lambda: parse_spacing_mm(text) if _is_pattern(text) else parse_length_mm(text))
        case "passes":
            understood(lambda: parse_count(text))
        case "sand":
            understood(lambda: parse_sand(text))
        case _:
            understood(lambda: parse_seed_g_per_m2(text) if _is_rate(text) else None)


def changes_typed(text: str) -> dict[str, str]:
    """Read what was done otherwise than planned.

    Args:
        text: such as "sand 1.4 t/green, tine 13 mm".

    Returns:
        Quantities as typed, by options of `kinds.MEASURES`.

    Raises:
        WrongAnswer: when a part does not begin with what it is, or cannot be read.
    """
    changes = {}
    for part in (part.strip() for part in re.split(r"[,;]\s+", text) if part.strip()):
        word, _, value = part.partition(" ")
        option = word.lower().rstrip(":").removesuffix("s")
        option = {"passe": "passes", "pas": "passes"}.get(option, option)
        if option not in MEASURES or not value.strip():
            expected = f"what it is and how much, such as 'sand 1.4 t/green'; it may be: {', '.join(MEASURES)}"
            raise WrongAnswer(repr(part), expected, nearest(option, MEASURES))
        check_measure(option, value.strip())
        changes[option] = value.strip()
    return changes


def as_done(told: Mapping[str, str], job: Job, named: Collection[Kind]) -> list[Value]:
    """Put what was told into the planned operations.

    Args:
        told: quantities as typed, by options of `kinds.MEASURES`; each can be read.
        job: the job.
        named: kinds of operation that were named besides, to tell two of one sort apart.

    Returns:
        Lines for the field "as done": planned operations that were done otherwise, their other fields as planned.

    Raises:
        WrongAnswer: when no planned operation takes a quantity, or several do.
    """
    changed: dict[Kind, dict[str, str]] = {}
    planned: dict[Kind, Operation] = {operation.kind: operation for operation in job.operations}
    for option in (option for option in MEASURES if told.get(option)):
        text = told[option]
        kind = _meant(option, told, job, named)
        fields = changed.setdefault(kind, operation_in_fields(planned[kind]) if kind in planned else {})
        if option == "tine" and parse_length_mm(text) != parse_length_mm(fields["diameter"]):
            fields.pop("inside diameter", None)  # it is that of the planned tine
        fields[_field(option, text)] = text
    return [{kind.value: fields} for kind, fields in changed.items() if _read(kind, fields) != planned.get(kind)]


def _field(option: str, text: str) -> str:
    if option == "seed":
        return "rate" if _is_rate(text) else "seed"
    return _FIELD.get(option, option)


def _is_rate(text: str) -> bool:
    return text.strip()[:1].isdigit()


def _is_pattern(text: str) -> bool:
    return any(sign in text.lower() for sign in ("x", "×", " by "))


def _read(kind: Kind, fields: Mapping[str, str]) -> Operation | None:
    try:
        return operation_from(OperationItem.model_validate({kind.value: dict(fields)}))
    except ValidationError:  # told with the whole entry, in the words of its reader
        return None


def _meant(option: str, told: Mapping[str, str], job: Job, named: Collection[Kind]) -> Kind:
    takers = [operation for operation in job.operations if isinstance(operation, _TAKEN_BY[option])]
    if option == "spacing":
        takers = [one for one in takers if isinstance(one, Tining) is _is_pattern(told[option])]
    if option in ("spacing", "depth", "passes"):
        takers = [one for one in takers if _told_with(one, told)] or takers
    takers = [one for one in takers if one.kind in named] or takers
    if not takers and option == "sand":
        return Kind.TOPDRESSING
    if not takers:
        kinds = ", ".join(operation.kind.value for operation in job.operations)
        raise WrongAnswer(repr(told[option]), f"what belongs to the work of {job.id!r} ({kinds})")
    if len(takers) > 1:
        kinds = " or ".join(one.kind.value for one in takers)
        raise WrongAnswer(f"{told[option]!r} for {kinds}", "one of them", "Name the work in place of the job's id.")
    return takers[0].kind


def _told_with(operation: Operation, told: Mapping[str, str]) -> bool:
    return bool(told.get("tine") if isinstance(operation, Tining) else told.get("blade"))


def planned_in_words(job: Job) -> str:
    """Say what the plan says of the work, for the question whether it was done so.

    Args:
        job: the job.

    Returns:
        Such as "hollow tining 13 mm, 50 x 50 mm, 60 mm; topdressing 2.6 t each".
    """
    said = []
    for operation in job.operations:
        quantities = _quantities(operation)
        if quantities:
            said.append(f"{operation.kind.value} {quantities}")
    return "; ".join(said)


def _quantities(operation: Operation) -> str:
    match operation:
        case ProductUse():  # what the label says is not for this question
            return ", ".join(filter(None, (operation.product, operation.rate)))
        case HeightOfCut():
            return " ".join(f"{field} {value}" for field, value in operation_in_fields(operation).items())
        case _:
            return ", ".join(operation_in_fields(operation).values())
