"""Public holidays of a country or a part of it."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

__all__ = ["public_holidays"]


def public_holidays(code: str, first: date, last: date) -> Mapping[date, str]:
    """Name the public holidays of some years.

    Args:
        code: a country, or a country and its part, such as "GB-ENG"; "" for none.
        first: a day of the first year.
        last: a day of the last year.

    Returns:
        Their names by day, of whole years.

    Source: holidays, which follows each country's law.
    """
    if not code:
        return {}
    from holidays import country_holidays  # noqa: PLC0415 - loaded late: only a search for days needs it

    country, _, part = code.partition("-")
    years = range(first.year, last.year + 1)
    return dict(country_holidays(country, subdiv=part or None, years=years))
