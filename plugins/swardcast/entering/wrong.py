"""Answers that cannot be understood, told by the option or question they belong to."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from pydantic_core import PydanticCustomError

from swardcast.errors import SwardcastError
from swardcast.quantities import QuantityError

__all__ = ["AnswersNeedAttention", "Wrong", "WrongAnswer", "understood"]

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Wrong:
    """One answer that cannot be used.

    Args:
        option: the option it belongs to, without its hyphens, such as "greens".
        found: what was answered.
        expected: what would have been right.
        hint: what to do, or "".
    """

    option: str
    found: str
    expected: str
    hint: str = ""

    def __str__(self) -> str:
        sentence = f"found {self.found}; expected {self.expected}"
        return f"{sentence}. {self.hint}" if self.hint else sentence


class WrongAnswer(SwardcastError):  # noqa: N818 - says what it is
    """Raised where an answer is read, before it is known to which option it belongs.

    Args:
        found: what was answered.
        expected: what would have been right.
        hint: what to do, or "".
    """

    def __init__(self, found: str, expected: str, hint: str = "") -> None:
        self.found, self.expected, self.hint = found, expected, hint
        super().__init__(found, expected, hint)


class AnswersNeedAttention(SwardcastError):  # noqa: N818 - says what the manager has to do
    """Everything that is wrong with an entry, in one go.

    Args:
        wrongs: at least one.
    """

    def __init__(self, wrongs: Sequence[Wrong]) -> None:
        self.wrongs = tuple(wrongs)
        super().__init__(len(self.wrongs))

    def __str__(self) -> str:
        lines = [f"{wrong.option}: {wrong}" for wrong in self.wrongs]
        count = len(lines)
        lines.append(f"{count} {'answer needs' if count == 1 else 'answers need'} attention; nothing was written.")
        return "\n".join(lines)


def understood(read: Callable[[], T]) -> T:
    """Read an answer, whatever the reader raises where it cannot.

    Args:
        read: the reader.

    Returns:
        What it read.

    Raises:
        WrongAnswer: when it cannot be read.
    """
    try:
        return read()
    except PydanticCustomError as error:
        told = error.context or {}
        raise WrongAnswer(told["found"], told["expected"], told["hint"]) from error
    except QuantityError as error:
        raise WrongAnswer(repr(error.found), error.expected, error.hint) from error
