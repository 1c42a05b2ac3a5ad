"""What builds have worked out before, in one file for each club below the user's cache folder.

Nothing here ever fails a build or changes what it says: the core asks for a value only where all that has a part in it
is the same (`outlook.known_digests`), and whatever cannot be read is worked out anew. A file counts only where nobody
but the user can have written it, and reading it makes nothing but our own records, states and words, days and times.
"""

from __future__ import annotations

import json
import os
import pickle
import sys
import zlib
from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass, is_dataclass
from datetime import UTC, date, datetime, time, timedelta, timezone
from enum import Enum
from functools import cache
from hashlib import sha256
from importlib import import_module
from importlib.metadata import PackageNotFoundError, version
from io import BytesIO
from pathlib import Path
from typing import Any, Final

from swardcast.outlook.kept import Mark
from swardcast.outlook.memory import recall_from
from swardcast.outlook.recovery import Samples
from swardcast.outlook.weather_book import WeatherBook
from swardcast.picture_cache import is_ours, write_whole
from swardcast.records.club import Club
from swardcast.records.folder import ClubRecords

__all__ = ["MOST_KEPT_MB", "UNASKED", "KeptFile", "file_of", "tidy_kept"]

MOST_KEPT_MB: Final = 500.0
"""All files together, the least lately used going first: about 15 kB for each notice. Judgement."""
UNASKED: Final = 20
"""Files written since anybody asked for a value after which it goes: judgement."""

_HAS_A_PART: Final = ("numpy", "babel", "fluent.runtime", "jinja2", "markdown", "nh3", "feedgen", "lxml", "tzdata")
"""Libraries that have a part in numbers and words that are kept."""

_BEGIN: Final = b"kept by swardcast 1\n"
_SIZE_BYTES: Final = 8
_DIGEST_BYTES: Final = sha256().digest_size
_OF_A_NAME: Final = 2  # what it is and its name; samples have three parts
_MADE_OF: Final = {"turf", "records", "outlook", "notices", "quantities"}
"""Parts of the program whose records, states and words are kept; they touch nothing when they are loaded."""
_PLAIN: Final = {one.__name__: one for one in (date, datetime, time, timedelta, timezone)}


def file_of(club: Club, folder: Path | None) -> Path | None:
    """Name the file of a club: another one for another version of the program, whose answers may be others.

    Args:
        club: the club.
        folder: the cache folder, or None.

    Returns:
        The file, which may not be there; None where nothing can be kept.
    """
    try:
        name = sha256(f"{_version()} {club.site}".encode()).hexdigest()
    except OSError:
        return None
    return folder / f"{name}.kept" if folder is not None else None


@cache
def _version() -> str:
    """The program's own bytes, and the versions of what it reckons and writes with."""
    place, digest = Path(__file__).parent, sha256(sys.version.encode())
    for name in _HAS_A_PART:
        with suppress(PackageNotFoundError):
            digest.update(f"{name} {version(name)}".encode())
    for file in sorted(place.rglob("*")):
        if file.is_file() and file.suffix != ".pyc":
            digest.update(file.relative_to(place).as_posix().encode())
            digest.update(sha256(file.read_bytes()).digest())
    return digest.hexdigest()


@dataclass(slots=True, kw_only=True)
class _Place:
    """Where a value lies in the file, or its bytes where they are new."""

    mark: Mark
    digest: str
    unasked: int
    begin: int = 0
    size: int = 0
    fresh: bytes = b""


class KeptFile:
    """What is kept of one club: whatever is worked out with its book of the weather is recalled from it.

    Args:
        file: the file, or None where nothing is kept.
        records: the club's records, as the values are worked out of them.
        book: the club's weather.

    Attributes:
        recall: gives what is kept.
    """

    def __init__(self, file: Path | None, records: ClubRecords, book: WeatherBook) -> None:
        self.recall = recall_from(self, records, book)
        self._file = file
        self._names = _Names(records, book)
        self._places: dict[str, _Place] = {}
        self._is_new = False
        if file is not None:
            with suppress(OSError, ValueError, KeyError, TypeError):
                self._places = _read_index(file)

    def mark(self, name: str) -> Mark | None:
        """Give the mark of what is kept under a name, or None."""
        place = self._places.get(name)
        if place is None:
            return None
        place.unasked = 0
        return place.mark

    def value(self, name: str) -> object:
        """Give what is kept under a name, or None where it cannot be read any more."""
        place = self._places[name]
        try:
            data = self._bytes_of(place)
            return self._names.value_of(data) if _digest(data) == place.digest else None
        except Exception:  # noqa: BLE001 - whatever is wrong with it, it is worked out anew
            return None

    def keep(self, name: str, mark: Mark, value: object) -> None:
        """Keep a value in the place of what was kept under the name."""
        if self._file is None:
            return
        with suppress(pickle.PicklingError, TypeError, AttributeError, RecursionError):  # then it is not kept
            data = self._names.bytes_of(value)
            self._places[name] = _Place(mark=mark, digest=_digest(data), unasked=0, size=len(data), fresh=data)
            self._is_new = True

    def write(self) -> None:
        """Write the file if anything is new; a build that is killed meanwhile leaves the file as it was."""
        if self._file is not None and self._is_new:
            with suppress(OSError):
                write_whole(self._file, self._parts())

    def _parts(self) -> Iterator[bytes]:
        kept = {name: place for name, place in self._places.items() if place.unasked < UNASKED}
        rows, begin = {}, 0
        for name, place in kept.items():
            mark = place.mark
            latest = mark.latest.isoformat() if mark.latest is not None else None
            until = mark.until.astimezone(UTC).isoformat()
            rows[name] = [until, latest, mark.digest, place.digest, place.unasked + 1, begin, place.size]
            begin += place.size
        index = json.dumps(rows).encode()
        yield _BEGIN + sha256(index).digest() + len(index).to_bytes(_SIZE_BYTES)
        yield index
        for place in kept.values():
            yield self._bytes_of(place)

    def _bytes_of(self, place: _Place) -> bytes:
        if place.fresh or self._file is None:
            return place.fresh
        with self._file.open("rb") as file:
            file.seek(place.begin)
            return file.read(place.size)


def _read_index(path: Path) -> dict[str, _Place]:
    with suppress(OSError):
        os.utime(path)  # used just now
    with path.open("rb") as file:
        told = os.fstat(file.fileno())
        if not is_ours(told):
            return {}
        head = file.read(len(_BEGIN) + _DIGEST_BYTES + _SIZE_BYTES)
        digest, size = head[len(_BEGIN) : -_SIZE_BYTES], int.from_bytes(head[-_SIZE_BYTES:])
        if not head.startswith(_BEGIN) or size > told.st_size:
            return {}
        index = file.read(size)
    if sha256(index).digest() != digest:
        return {}
    places = {}
    for name, (until, latest, marked, written, unasked, begin, length) in json.loads(index).items():
        mark = Mark(
            until=datetime.fromisoformat(until),
            latest=date.fromisoformat(latest) if latest is not None else None,
            digest=marked,
        )
        place = len(head) + size + begin
        places[name] = _Place(mark=mark, digest=written, unasked=unasked, begin=place, size=length)
    return places


def _digest(data: bytes) -> str:
    return sha256(data).hexdigest()


class _Names:
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
        pickler.names = self._names
        pickler.dump(value)
        return zlib.compress(file.getvalue(), 1)

    def value_of(self, data: bytes) -> object:
        """Read it."""
        reader = _Reader(BytesIO(zlib.decompress(data)))
        reader.values, reader.book = self._values, self._book
        return reader.load()


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
        package, _, below = module_name.partition(".")
        if package == "swardcast" and below.partition(".")[0] in _MADE_OF:
            found = getattr(import_module(module_name), global_name, None)
            if isinstance(found, type) and (is_dataclass(found) or issubclass(found, Enum)):
                return found
        message = f"{module_name}.{global_name} is nothing that is kept"
        raise pickle.UnpicklingError(message)


def tidy_kept(folder: Path | None, most_mb: float = MOST_KEPT_MB) -> None:
    """Take files out that were not used for long, so that the others have room.

    Args:
        folder: the cache folder, or None.
        most_mb: how large all of them together may be.
    """
    with suppress(OSError):
        files = [(file.stat(), file) for file in folder.glob("*.kept")] if folder is not None else []
        left_bytes = most_mb * 1e6
        for told, file in sorted(files, key=lambda one: one[0].st_mtime, reverse=True):
            left_bytes -= told.st_size
            if left_bytes < 0:
                file.unlink(missing_ok=True)
