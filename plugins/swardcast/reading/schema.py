"""Shared parts of the file schemas: strict models, field types in the trade's words, problems in plain words."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from datetime import date, datetime
from enum import Enum
from typing import Annotated, Any, Final, TypeVar
from zoneinfo import ZoneInfo

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, ValidationError
from pydantic_core import PydanticCustomError

from swardcast import quantities
from swardcast.errors import Problem, nearest
from swardcast.moments import is_skipped
from swardcast.quantities import QuantityError, Sand
from swardcast.reading.yaml_text import Located

__all__ = [
    "ROLL_LIMITS",
    "Area",
    "Count",
    "Day",
    "Days",
    "Density",
    "Fraction",
    "Length",
    "Lines",
    "Model",
    "Number",
    "Roll",
    "SandAmount",
    "SeedRate",
    "Spacing",
    "Text",
    "Words",
    "local_moment",
    "one_day",
    "one_of",
    "validated",
    "within",
    "wrong",
]

ModelT = TypeVar("ModelT", bound=BaseModel)
EnumT = TypeVar("EnumT", bound=Enum)

_DAY = re.compile(r"^(\d{4})-(\d{2})-(\d{2})$")
_MOMENT = re.compile(r"^(\d{4}-\d{2}-\d{2})[T ]+(\d{1,2}):(\d{2})(Z|[+-]\d{2}:\d{2})?$")


class Model(BaseModel):
    """A strict set of fields, whose names are written with spaces as in a sentence."""

    model_config = ConfigDict(
        extra="forbid",
        frozen=True,
        strict=True,
        arbitrary_types_allowed=True,
        alias_generator=lambda name: name.replace("_", " "),
    )


def wrong(found: object, expected: str, hint: str = "") -> PydanticCustomError:
    """Make an error that carries what was found, what was expected and a hint."""
    return PydanticCustomError("swardcast", "{expected}", {"found": _shown(found), "expected": expected, "hint": hint})


def _shown(found: object) -> str:
    if found is None:
        return "nothing"
    if isinstance(found, dict):
        return "several fields"
    if isinstance(found, list):
        return f"a list of {len(found)}"
    text = str(found)
    return repr(text if len(text) <= 60 else text[:57] + "...")  # noqa: PLR2004 - a line of a terminal


def _quantity(parse: Callable[[object], Any]) -> BeforeValidator:
    def read(value: object) -> Any:
        try:
            return parse(value)
        except QuantityError as error:
            raise wrong(error.found, error.expected, error.hint) from error

    return BeforeValidator(read)


def _text(value: object) -> str:
    if isinstance(value, str) and value.strip():
        return " ".join(value.split())
    if isinstance(value, int | float) and not isinstance(value, bool):
        return str(value)
    raise wrong(value, "some words")


def _words(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, str):
        return value.strip()
    raise wrong(value, "some words")


def _lines(value: object) -> list[str]:
    if value is None:
        return []
    return [_text(item) for item in value] if isinstance(value, list) else [_text(value)]


def one_day(value: object) -> date:
    """Read a day such as "2027-08-23"; raises PydanticCustomError when it is none."""
    match = _DAY.fullmatch(str(value).strip())
    if match is None:
        raise wrong(value, "a day as year-month-day, such as '2027-08-23'")
    try:
        return date(*map(int, match.groups()))
    except ValueError:
        raise wrong(value, "a day that exists in the calendar") from None


def _number(value: object) -> float:
    if isinstance(value, int | float) and not isinstance(value, bool):
        return float(value)
    raise wrong(value, "a number")


Number = Annotated[float, BeforeValidator(_number)]
Text = Annotated[str, BeforeValidator(_text)]
Words = Annotated[str, BeforeValidator(_words)]
Lines = Annotated[list[str], BeforeValidator(_lines)]
Day = Annotated[date, BeforeValidator(one_day)]
Length = Annotated[float, _quantity(quantities.parse_length_mm)]
Roll = Annotated[float, _quantity(quantities.parse_roll_mm)]
ROLL_LIMITS: Final = (1000.0, 6000.0, "a roll from 1 m to 6 m (3 to 20 ft)")
Area = Annotated[float, _quantity(quantities.parse_area_m2)]
Spacing = Annotated[tuple[float, float], _quantity(quantities.parse_spacing_mm)]
Density = Annotated[float, _quantity(quantities.parse_density_t_per_m3)]
SandAmount = Annotated[Sand, _quantity(quantities.parse_sand)]
SeedRate = Annotated[float, _quantity(quantities.parse_seed_g_per_m2)]
Fraction = Annotated[float, _quantity(quantities.parse_fraction)]
Count = Annotated[int, _quantity(quantities.parse_count)]
Days = Annotated[float, _quantity(quantities.parse_days)]


def within(low: float, high: float, said: str) -> AfterValidator:
    """Make a check of a physical range.

    Args:
        low: least value, in the field's unit.
        high: greatest value.
        said: the range in words, for the message.
    """

    def check(value: float) -> float:
        if not low <= value <= high:
            raise wrong(f"{value:g}", said, "Check the figure and its unit.")
        return value

    return AfterValidator(check)


def one_of(choices: type[EnumT]) -> BeforeValidator:
    """Make a reader of one of the trade's words."""
    words = {str(choice.value): choice for choice in choices}

    def read(value: object) -> EnumT:
        if isinstance(value, choices):
            return value
        chosen = words.get(" ".join(str(value).strip().lower().split()))
        if chosen is None:
            raise wrong(value, f"one of: {', '.join(words)}", nearest(str(value), words))
        return chosen

    return BeforeValidator(read)


def local_moment(value: object, zone: ZoneInfo) -> datetime:
    """Read a moment such as "2027-08-23 07:05"; without an offset it is the club's local time.

    Args:
        value: the moment as written.
        zone: the club's time zone.

    Returns:
        An aware moment.

    Raises:
        PydanticCustomError: when it is no moment, does not exist, or happens twice as the clocks change.
    """
    match = _MOMENT.fullmatch(str(value).strip())
    if match is None:
        raise wrong(value, "a day and time, such as '2027-08-23 07:05'")
    day, hour, minute = one_day(match[1]), int(match[2]), int(match[3])
    try:
        if match[4]:
            offset = match[4].replace("Z", "+00:00")
            return datetime.fromisoformat(f"{day.isoformat()}T{hour:02d}:{minute:02d}{offset}").astimezone(zone)
        naive = datetime(day.year, day.month, day.day, hour, minute)  # noqa: DTZ001 - the zone follows
    except ValueError:
        raise wrong(value, "a time from 00:00 to 23:59") from None
    local = naive.replace(tzinfo=zone)
    if is_skipped(local):
        raise wrong(value, "a time that exists; the clocks skip this one", "Write a time an hour earlier or later.")
    if local.utcoffset() != local.replace(fold=1).utcoffset():
        raise wrong(value, "a time that happens once; the clocks repeat this one", "Add the offset, such as '+01:00'.")
    return local


def validated(model: type[ModelT], document: Located, *, file: str, problems: list[Problem]) -> ModelT | None:
    """Check a document against a schema, and put what is wrong into plain words with its line.

    Args:
        model: the schema.
        document: the document.
        file: name for problems.
        problems: where problems are added.

    Returns:
        The fields, or None when something is wrong.
    """
    value = document.value
    if not isinstance(value, dict):
        problems.append(
            Problem(file=file, line=document.line(()), found=_shown(value), expected="fields such as 'name: value'")
        )
        return None
    try:
        return model.model_validate(value)
    except ValidationError as error:
        problems.extend(_problems_of(error, model, document, file))
        return None


def _problems_of(error: ValidationError, model: type[BaseModel], document: Located, file: str) -> Iterable[Problem]:
    for detail in error.errors(include_url=False):
        path = tuple(detail["loc"])
        field = ".".join(str(part) for part in path)
        found, expected, hint = _in_plain_words(detail, model)
        line = document.line(path[:-1] if detail["type"] == "missing" else path)
        yield Problem(file=file, line=line, field=field, found=found, expected=expected, hint=hint)


def _in_plain_words(detail: Any, model: type[BaseModel]) -> tuple[str, str, str]:
    match detail["type"]:
        case "swardcast":
            context = detail["ctx"]
            return context["found"], context["expected"], context["hint"]
        case "missing":
            return "nothing", f"the field '{detail['loc'][-1]}'", ""
        case "extra_forbidden":
            known = _known_fields(model, detail["loc"])
            word = str(detail["loc"][-1])
            expected = f"one of: {', '.join(known)}" if known else "no fields below it"
            return f"the unknown field {word!r}", expected, nearest(word, known)
        case "too_short":
            return _shown(detail["input"]), "at least one line starting with '- '", ""
        case "int_type" | "int_parsing" | "int_from_float":
            return _shown(detail["input"]), "a whole number", ""
        case "float_type" | "float_parsing":
            return _shown(detail["input"]), "a number", ""
        case "model_type" | "dict_type" | "model_attributes_type":
            return _shown(detail["input"]), "fields such as 'name: value'", ""
        case "list_type":
            return _shown(detail["input"]), "a list, each line starting with '- '", ""
        case _:
            return (
                _shown(detail["input"]),
                str(detail["msg"]).removeprefix("Input should be ").removeprefix("Value error, "),
                "",
            )


def _known_fields(model: type[BaseModel], path: tuple[str | int, ...]) -> list[str]:
    """Find the fields that a nested model knows, by walking the schema along the path."""
    current: Any = model
    for part in path[:-1]:
        current = _step_into(current, part)
        if current is None:
            return []
    if not (isinstance(current, type) and issubclass(current, BaseModel)):
        return []
    return [field.alias or name for name, field in current.model_fields.items()]


def _step_into(model: Any, part: str | int) -> Any:
    """Go one step down; a place in a list or a key of a table stays in the model of its items."""
    for name, field in model.model_fields.items() if hasattr(model, "model_fields") else ():
        if part in (field.alias, name):
            return _model_within(field.annotation)
    return model


def _model_within(annotation: Any) -> Any:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for argument in getattr(annotation, "__args__", ()):
        found = _model_within(argument)
        if found is not None:
            return found
    return None
