"""What builds have worked out, as bytes and back: only our own records, states, words and times are ever made."""

from __future__ import annotations

import pickle
import zlib
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass
from datetime import date, datetime, time, timedelta, timezone
from enum import Enum
from functools import cache
from importlib import import_module
from io import BytesIO
from typing import Any, Final

from swardcast.outlook.recovery import Samples
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords

__all__ = ["KeptValues"]

_OF_A_NAME: Final = 2  # what it is and its name; samples have three parts
_MADE_OF: Final = {"turf", "records", "outlook", "notices", "quantities"}
"""Parts of the program whose records, states and words are kept; they touch nothing when they are loaded."""
_PLAIN: Final = {one.__name__: one for one in (date, datetime, time, timedelta, timezone)}


class KeptValues:
    """Values as bytes and back: what the records have already is named, not written, and samples are asked again.

    Args:
        records: the club's records.
        book: the club's weather.
    """

    def __init__(self, records: ClubRecords, book: WeatherBook) -> None:
        entries = {entry.head.id: entry for entry in records.entries}
        groups: dict[str, Mapping[str, Any]] = {"job": records.jobs, "surface": records.surfaces, "entry": entries}
        self._values = {(what, name): value for what, group in groups.items() for name, value in group.items()}
        self._values["zone", ""] = records.club.time_zone
        self._names = {id(value): name for name, value in self._values.items()}
        self._book = book

    def bytes_of(self, value: object) -> bytes:
        """Write a value."""
        file = BytesIO()
        pickler = _Writer(file, pickle.HIGHEST_PROTOCOL)
        pickler.names, pickler.dispatch_table = self._names, _MADE_AGAIN
        pickler.dump(value)
        return zlib.compress(file.getvalue(), 1)

    def value_of(self, data: bytes) -> object:
        """Read it."""
        reader = _Reader(BytesIO(zlib.decompress(data)))
        reader.values, reader.book = self._values, self._book
        return reader.load()


class _MadeAgain(dict[type, Callable[[Any], Any]]):
    """How each of our frozen records is written: dataclasses' own way asks for the fields of every single one."""

    def __missing__(self, kind: type) -> Callable[[Any], Any]:
        if not (is_dataclass(kind) and hasattr(kind, "__slots__") and _part_of(kind.__module__) in _MADE_OF):
            raise KeyError(kind)
        names = tuple(one.name for one in fields(kind))

        def made_again(value: Any) -> tuple[Any, ...]:
            return _again, (kind, *[getattr(value, name) for name in names])

        self[kind] = made_again
        return made_again


_MADE_AGAIN: Final = _MadeAgain()


def _again(kind: type, *values: Any) -> Any:
    """Make a record as it was, without checking it a second time."""
    made: object = object.__new__(kind)
    for put, value in zip(_slots_of(kind), values, strict=True):
        put(made, value)
    return made


@cache
def _slots_of(kind: Any) -> tuple[Callable[[Any, Any], None], ...]:
    return tuple(getattr(kind, one.name).__set__ for one in fields(kind))


def _part_of(module_name: str) -> str:
    package, _, below = module_name.partition(".")
    return below.partition(".")[0] if package == "swardcast" else ""


class _Writer(pickle.Pickler):
    names: Mapping[int, tuple[str, str]]

    def persistent_id(self, obj: Any) -> object:
        if type(obj) is Samples:  # `isinstance` of a mapping is slow, and this is asked for each object
            return obj.today, obj.issued_at, obj.question
        return self.names.get(id(obj))


class _Reader(pickle.Unpickler):
    values: Mapping[tuple[str, str], Any]
    book: WeatherBook

    def persistent_load(self, pid: Any) -> Any:
        if len(pid) == _OF_A_NAME:
            return self.values[pid]
        today, issued_at, question = pid
        return Samples.from_book(today, issued_at, question, self.book)

    def find_class(self, module_name: str, global_name: str) -> Any:
        if module_name == "datetime" and global_name in _PLAIN:
            return _PLAIN[global_name]
        if (module_name, global_name) == (_again.__module__, _again.__name__):
            return _again
        if _part_of(module_name) in _MADE_OF:
            found = getattr(import_module(module_name), global_name, None)
            if isinstance(found, type) and (is_dataclass(found) or issubclass(found, Enum)):
                return found
        message = f"{module_name}.{global_name} is nothing that is kept"
        raise pickle.UnpicklingError(message)
