"""Of many things the first are named, and how many more there are is told."""

from __future__ import annotations

import pytest

from swardcast.errors import first_of


@pytest.mark.parametrize(
    ("most", "told"),
    [(1, "a and 3 more"), (3, "a, b, c and 1 more"), (4, "a, b, c, d"), (9, "a, b, c, d")],
)
def test_the_first_are_named_and_the_rest_is_counted(most: int, told: str) -> None:
    assert first_of(["a", "b", "c", "d"], most) == told
