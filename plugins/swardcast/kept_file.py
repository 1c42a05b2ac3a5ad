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
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, date, datetime
from functools import cache
from hashlib import sha256
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Final

from swardcast.kept_values import KeptValues
from swardcast.outlook.kept import Mark
from swardcast.outlook.memory import recall_from
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
        self._values = KeptValues(records, book)
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
            return self._values.value_of(data) if _digest(data) == place.digest else None
        except Exception:  # noqa: BLE001 - whatever is wrong with it, it is worked out anew
            return None

    def keep(self, name: str, mark: Mark, value: object) -> None:
        """Keep a value in the place of what was kept under the name."""
        if self._file is None:
            return
        with suppress(pickle.PicklingError, TypeError, AttributeError, RecursionError):  # then it is not kept
            data = self._values.bytes_of(value)
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
