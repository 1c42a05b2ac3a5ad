"""Reasons in parts: those that many dates share, such as all that healed jobs taught, are held once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain
from typing import overload

from swardcast.outlook.states import Reason

__all__ = ["Reasons"]


@dataclass(frozen=True, slots=True, eq=False)
class Reasons(Sequence[Reason]):
    """Reasons in order.

    Args:
        parts: runs of them, one after the other.
    """

    parts: tuple[Sequence[Reason], ...]

    def __iter__(self) -> Iterator[Reason]:
        """Give one after the other."""
        return chain.from_iterable(self.parts)

    def __len__(self) -> int:
        """Count them."""
        return sum(map(len, self.parts))

    @overload
    def __getitem__(self, index: int) -> Reason: ...
    @overload
    def __getitem__(self, index: slice) -> Sequence[Reason]: ...
    def __getitem__(self, index: int | slice) -> Reason | Sequence[Reason]:
        """Give one by its place, or several."""
        return tuple(self)[index]

    def __eq__(self, other: object) -> bool:
        """Whether another has the same ones in the same order, in whatever parts."""
        return isinstance(other, Reasons) and tuple(self) == tuple(other)

    def __hash__(self) -> int:
        """What equal ones have in common."""
        return hash(tuple(self))
