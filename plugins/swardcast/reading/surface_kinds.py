"""Kinds of surface as a manager names them: "greens", "tees and approaches"."""

from __future__ import annotations

from typing import Annotated, Final

from pydantic import BeforeValidator

from swardcast.errors import nearest
from swardcast.reading.schema import names_in, wrong
from swardcast.records.club import SurfaceKind

__all__ = ["SurfaceKinds"]

_KINDS: Final = {word: kind for kind in SurfaceKind for word in (kind.value, kind.plural)}


def _fits(value: object) -> frozenset[SurfaceKind]:
    words = names_in(value)
    for word in words:
        if word not in _KINDS:
            raise wrong(value, f"kinds of surface: {', '.join(kind.plural for kind in SurfaceKind)}", _near(word))
    return frozenset(_KINDS[word] for word in words)


def _near(word: str) -> str:
    return nearest(word, [kind.plural for kind in SurfaceKind])


SurfaceKinds = Annotated[frozenset[SurfaceKind], BeforeValidator(_fits)]
"""Kinds of surface, each once."""
