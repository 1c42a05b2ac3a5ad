"""How a club's sheet of log entries is laid out, as club.yaml tells."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

__all__ = ["LogSheet"]


@dataclass(frozen=True, slots=True, kw_only=True)
class LogSheet:
    """The form of a sheet.

    Args:
        columns: the name in the sheet's header, by our word for it.
        kinds: kinds of entry in our words, by the words of the form in small letters.
        plays: states of play in our words, by the words of the form in small letters.
        written: how the day is written, and behind it the time where that has a column of its own.
        delimiter: what parts values of a text file.
        decimal_comma: whether decimals have a comma.
        encoding: how a text file that is no UTF-8 is saved.
        sheet: name of the sheet in a workbook, or "" for the first.
    """

    columns: Mapping[str, str]
    kinds: Mapping[str, str]
    plays: Mapping[str, str]
    written: str
    delimiter: str
    decimal_comma: bool
    encoding: str
    sheet: str
