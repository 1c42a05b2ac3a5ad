"""Shared parts of the file schemas: strict models, field types in the trade's words, problems in plain words."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date, datetime
from enum import Enum
from typing import Annotated, Any, Final, TypeVar
from zoneinfo import ZoneInfo

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, ValidationError
from pydantic_core import PydanticCustomError

from swardcast import quantities
from swardcast.errors import Problem, nearest
from swardcast.moments import FIRST_YEAR, LAST_YEAR, day_from, is_skipped
from swardcast.quantities import QuantityError, Sand
from swardcast.reading.plain_words import SOME_FIELDS, problems_of, shown
from swardcast.reading.typed_words import LONGEST_TEXT, LONGEST_WORDS, is_seen
from swardcast.reading.yaml_text import Located, Path

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
    "block_of",
    "local_moment",
    "names_in",
    "one_day",
    "one_of",
    "out_of_range",
    "quantity",
    "validated",
    "what_is_wrong",
    "within",
    "wrong",
    "wrong_name",
]

_AS_TYPED: Final = object()
"""In the place of what was found: the value as the file has it."""
_OUR_YEARS: Final = f"a day from the year {FIRST_YEAR} to {LAST_YEAR}"

ModelT = TypeVar("ModelT", bound=BaseModel)
EnumT = TypeVar("EnumT", bound=Enum)

_DAY = re.compile(r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$")
_MOMENT = re.compile(r"^([0-9]{4}-[0-9]{2}-[0-9]{2})[T ]+([0-9]{1,2}):([0-9]{2})(Z|[+-][0-9]{2}:[0-9]{2})?$")


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
    said = None if found is _AS_TYPED else shown(found)
    return PydanticCustomError("swardcast", "{expected}", {"found": said, "expected": expected, "hint": hint})


def what_is_wrong(error: PydanticCustomError) -> tuple[str, str, str]:
    """Give what was found, what was expected and a hint, as `wrong` put them into an error."""
    told = error.context or {}
    return told["found"], told["expected"], told["hint"]


def wrong_name(path: Path, expected: str, hint: str = "") -> PydanticCustomError:
    """Make the error of a name that is not known, so that it is told with the line on which the name stands.

    Args:
        path: the name, and the fields below the one that is checked in which it stands.
        expected: the names that would be right.
        hint: what to do.
    """
    context = {"found": shown(path[-1]), "expected": expected, "hint": hint, "below": path}
    return PydanticCustomError("swardcast", "{expected}", context)


def out_of_range(expected: str) -> PydanticCustomError:
    """Make the error of a value that is beyond all sense, which is told as it was typed."""
    return wrong(_AS_TYPED, expected, "Check the figure and its unit.")


def quantity(parse: Callable[[object], Any], expected: str = "") -> BeforeValidator:
    """Make a reader of a number with its unit.

    Args:
        parse: reads it; it raises QuantityError.
        expected: what should stand there, where that is more than any such quantity, or "".
    """

    def read(value: object) -> Any:
        try:
            return parse(value)
        except QuantityError as error:
            raise wrong(error.found, expected or error.expected, error.hint) from error

    return BeforeValidator(read)


def _text(value: object) -> str:
    if isinstance(value, str) and is_seen(value):
        _check_length(value, LONGEST_TEXT)
        return " ".join(value.split())
    if isinstance(value, int | float) and not isinstance(value, bool):
        return str(value)
    raise wrong(value, "some words")


def _words(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, str):
        _check_length(value, LONGEST_WORDS)
        return value.strip()
    raise wrong(value, "some words")


def _check_length(text: str, most: int) -> None:
    if len(text) > most:
        raise wrong(text, f"at most {most:,} letters; these are {len(text):,}")


def _lines(value: object) -> list[str]:
    if value is None:
        return []
    return [_text(item) for item in value] if isinstance(value, list) else [_text(value)]


def one_day(value: object) -> date:
    """Read a day such as "2027-08-23"; raises PydanticCustomError when it is none."""
    text = str(value).strip()
    if _DAY.fullmatch(text) is None:
        raise wrong(value, "a day as year-month-day, such as '2027-08-23'")
    day = day_from(text)
    if day is None:
        within_years = FIRST_YEAR <= int(text[:4]) <= LAST_YEAR
        raise wrong(value, "a day that exists in the calendar" if within_years else _OUR_YEARS)
    return day


def _number(value: object) -> float:
    if isinstance(value, int | float) and not isinstance(value, bool):
        return float(value)
    comma = isinstance(value, str) and re.fullmatch(r"[+-]?[0-9]+,[0-9]+", value.strip())
    raise wrong(value, "a number", "Write a decimal with a point: '0.5', not '0,5'." if comma else "")


Number = Annotated[float, BeforeValidator(_number)]
Text = Annotated[str, BeforeValidator(_text)]
Words = Annotated[str, BeforeValidator(_words)]
Lines = Annotated[list[str], BeforeValidator(_lines)]
Day = Annotated[date, BeforeValidator(one_day)]
Length = Annotated[float, quantity(quantities.parse_length_mm)]
Roll = Annotated[float, quantity(quantities.parse_roll_mm)]
ROLL_LIMITS: Final = (1000.0, 6000.0, "a roll from 1 m to 6 m (3 to 20 ft)")
Area = Annotated[float, quantity(quantities.parse_area_m2)]
Spacing = Annotated[tuple[float, float], quantity(quantities.parse_spacing_mm)]
Density = Annotated[float, quantity(quantities.parse_density_t_per_m3)]
SandAmount = Annotated[Sand, quantity(quantities.parse_sand)]
SeedRate = Annotated[float, quantity(quantities.parse_seed_g_per_m2)]
Fraction = Annotated[float, quantity(quantities.parse_fraction)]
Count = Annotated[int, quantity(quantities.parse_count)]
Days = Annotated[float, quantity(quantities.parse_days)]


def within(low: float, high: float, said: str) -> AfterValidator:
    """Make a check of a physical range.

    Args:
        low: least value, in the field's unit.
        high: greatest value.
        said: the range in words, for the message.
    """

    def check(value: float) -> float:
        if not low <= value <= high:
            raise out_of_range(said)
        return value

    return AfterValidator(check)


def names_in(value: object) -> list[str]:
    """Take several names apart, typed as a list or as one text such as "tees and approaches", in small letters."""
    names = value if isinstance(value, list) else str(value).replace(" and ", ",").split(",")
    return [" ".join(str(name).lower().split()) for name in names]


def one_of(choices: type[EnumT], meant: Callable[[str], str] | None = None) -> BeforeValidator:
    """Make a reader of one of the trade's words.

    Args:
        choices: the words.
        meant: gives a hint for a word that is none of them; without it, the nearest one is named.
    """
    words = {str(choice.value): choice for choice in choices}

    def read(value: object) -> EnumT:
        if isinstance(value, choices):
            return value
        word = " ".join(str(value).lower().split())
        chosen = words.get(word)
        if chosen is None:
            hint = nearest(str(value), words) if meant is None else meant(word)
            raise wrong(value, f"one of: {', '.join(words)}", hint)
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
    if local.utcoffset() == local.replace(fold=1).utcoffset():  # else it is skipped or repeated (PEP 495)
        return local
    if is_skipped(local):
        raise wrong(value, "a time that exists; the clocks skip this one", "Write a time an hour earlier or later.")
    raise wrong(value, "a time that happens once; the clocks repeat this one", "Add the offset, such as '+01:00'.")


def validated(
    model: type[ModelT], document: Located, *, file: str, problems: list[Problem], at: Path = ()
) -> ModelT | None:
    """Check a document, or a part of it, against a schema, and put what is wrong into plain words with its line.

    Args:
        model: the schema.
        document: the document.
        file: name for problems.
        problems: where problems are added.
        at: where the part stands in the document.

    Returns:
        The fields, or None when something is wrong.
    """
    value = document.value
    for part in at:
        value = value[part]
    if not isinstance(value, dict):
        line, found = document.line(at), shown(document.typed.get(at, value))
        problems.append(Problem(file=file, line=line, field=document.name(at), found=found, expected=SOME_FIELDS))
        return None
    try:
        return model.model_validate(value)
    except ValidationError as error:
        problems.extend(problems_of(error, model, document, file, at))
        return None


def block_of(model: type[ModelT], document: Located, field: str) -> ModelT | None:
    """Read one block of a document alone, to find what else is wrong with it where another block is at fault.

    Args:
        model: the schema of the block.
        document: the document.
        field: the name of the block.

    Returns:
        The block; None where it is not there, or at fault itself, which `validated` tells.
    """
    told = document.value.get(field) if isinstance(document.value, dict) else None
    try:
        return model.model_validate(told) if told is not None else None
    except ValidationError:
        return None
