"""What pydantic finds wrong with fields -> problems in plain words, each with its line."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, Final

from pydantic import BaseModel, ValidationError

from swardcast.errors import Problem, nearest
from swardcast.reading.yaml_text import Located, Path

__all__ = ["SOME_FIELDS", "problems_of", "shown"]

_DECIMAL_COMMA: Final = "Write a decimal with a point: in brackets a comma parts two fields."
SOME_FIELDS: Final = "fields such as 'name: value'"


def shown(found: object) -> str:
    """Quote what was found, cut to a line of a terminal."""
    if found is None:
        return "nothing"
    if isinstance(found, dict):
        return "several fields"
    if isinstance(found, list):
        return f"a list of {len(found)}"
    text = str(found)
    return repr(text if len(text) <= 60 else text[:57] + "...")  # noqa: PLR2004 - a line of a terminal


def problems_of(
    error: ValidationError, model: type[BaseModel], document: Located, file: str, at: Path
) -> Iterable[Problem]:
    """Put what is wrong with a document into plain words.

    Args:
        error: what pydantic found.
        model: the schema.
        document: the document.
        file: name for problems.
        at: where the part that was checked stands in the document.

    Yields:
        Problems.
    """
    for detail in error.errors(include_url=False):
        path = (*at, *detail["loc"])
        path += tuple(detail.get("ctx", {}).get("below", ()))
        found, expected, hint = _in_plain_words(detail, model)
        typed = document.typed.get(path)
        if typed is not None and found == shown(detail["input"]):
            found = shown(typed)
        line = document.line(path[:-1] if detail["type"] == "missing" else path)
        yield Problem(file=file, line=line, field=document.name(path), found=found, expected=expected, hint=hint)


def _in_plain_words(detail: Any, model: type[BaseModel]) -> tuple[str, str, str]:
    match detail["type"]:
        case "swardcast":
            context = detail["ctx"]
            return context["found"] or shown(detail["input"]), context["expected"], context["hint"]
        case "missing":
            return "nothing", f"the field '{detail['loc'][-1]}'", ""
        case "extra_forbidden":
            known = _known_fields(model, detail["loc"])
            word = str(detail["loc"][-1])
            expected = f"one of: {', '.join(known)}" if known else "no fields below it"
            is_half = word[:1].isdigit() and detail["input"] is None  # the other half stands in the field before
            hint = _DECIMAL_COMMA if is_half else nearest(word, known)
            return f"the unknown field {word!r}", expected, hint
        case "too_short":
            return shown(detail["input"]), "at least one line starting with '- '", ""
        case "too_long":
            return shown(detail["input"]), f"at most {detail['ctx']['max_length']}", ""
        case "int_type" | "int_parsing" | "int_from_float":
            return shown(detail["input"]), "a whole number", ""
        case "float_type" | "float_parsing":
            return shown(detail["input"]), "a number", ""
        case "model_type" | "dict_type" | "model_attributes_type":
            return shown(detail["input"]), SOME_FIELDS, ""
        case "list_type":
            return shown(detail["input"]), "a list, each line starting with '- '", ""
        case _:
            return (
                shown(detail["input"]),
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
