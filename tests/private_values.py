"""What a club folder holds that nobody may publish, found by the README's table and by the records, and where it leaks."""

from __future__ import annotations

import base64
import email.policy
import gzip
import html
import io
import re
import unicodedata
import zlib
from collections.abc import Iterator, Mapping, Set
from contextlib import suppress
from dataclasses import dataclass, fields, is_dataclass, replace
from email import message_from_bytes
from enum import Enum
from pathlib import Path
from urllib.parse import unquote

import pypdf
import yaml

from swardcast.reading import folder as _all_files  # noqa: F401 - defines the models of all files
from swardcast.reading.schema import Model
from swardcast.records.folder import ClubRecords
from swardcast.records.privacy import SEEN, Seen
from swardcast.records.weather import Weather

LEAST_LETTERS = 4
"""A shorter text, such as "GBP", may stand anywhere by chance."""
LEAST_DIGITS = 3
"""So may a number of fewer digits that count, or a whole one below a thousand."""
WORDS_OF_A_NOTE = 4
"""So many words of a private note in a row are a leak, not the whole of it alone."""

_NUMBER = re.compile(r"(?<![\w.,-])\d[\d,]*(?:\.\d+)?(?![\d-])")
_WRITTEN = re.compile(r"(?<![\w.])\d[\d.,\u00a0\u202f]{3,}")
"""A number of four signs or more, and what may part its thousands."""
_QUANTITY = re.compile(r"[\d.,:]+(?: x [\d.,]+)?\s*\S*")
"""A number with its unit, which is looked for as a number."""
_YEARS = range(1900, 2101)
_OTHER_UNIT = {"per tonne": 0.90718474, "mm": 1 / 25.4, " kg": 2.2046226, "ft": 304.8, "%": 0.01}
"""What a number is in the other unit: per US ton, in inches, pounds, millimetres, as a fraction."""
_DAY = re.compile(r"\d{4}-\d\d-\d\d|\d{1,2} [A-Z][a-z]+(?: \d{4})?")
"""A day by itself, which many pages name."""
_NO_WEATHER = Weather(observed_c={}, rain_mm={}, history_c={}, forecasts=())
_DRAWN = re.compile(
    r'\s(?:d|points|transform|viewBox|width|height|x|y|x1|x2|y1|y2|cx|cy|r|rx|ry|dx|dy)="[^"]*"', re.IGNORECASE
)
"""Attributes of a drawing: their numbers are places on paper."""


@dataclass(frozen=True)
class Private:
    """What may stand nowhere: words as typed, and numbers as they may be written."""

    words: frozenset[str]
    numbers: frozenset[str]

    def __len__(self) -> int:
        return len(self.words) + len(self.numbers)


def _fields_of_files() -> frozenset[str]:
    """Names of all fields of all files: those are the program's words."""
    every, new = set[type[Model]](), {Model}
    while new:
        every |= new
        new = {kind for one in new for kind in one.__subclasses__()} - every
    return frozenset(one.alias or name for model in every for name, one in model.model_fields.items())


FIELDS = _fields_of_files()


def told_in_readme() -> dict[str, list[list[str]]]:
    """Names of fields by row and column of the README's table; the last column has what no member sees."""
    readme = (Path(__file__).parents[1] / "README.md").read_text(encoding="utf-8")
    section = readme.split("## What members may see")[1].split("\n## ")[0]
    rows = [line.strip()[1:-1].split("|") for line in section.splitlines() if line.startswith("| `")]
    return {cells[0].strip().strip("`"): [re.findall(r"`([^`]+)`", cell) for cell in cells[1:]] for cells in rows}


def private_names() -> dict[str, set[str]]:
    """Names of the private fields, by the rows of that table."""
    return {row: set(cells[-1]) for row, cells in told_in_readme().items()}


# Finding them


def private_of(club: Path, records: ClubRecords) -> Private:
    """Collect them from the files by the names of private fields, and from the records by their places.

    What the club or the program says in public anyway tells nothing, and is left out; so is the name club.yaml, which
    stands in a remark of the theme.
    """
    names = private_names()
    typed = [one for path, told in _documents(club) for one in _below_names(told, names.get(_row(path, club), set()))]
    held = [*typed, *map(str, placed_leaves(records, {Seen.PRIVATE}))]
    paths = [
        path.relative_to(club).as_posix() for path in club.rglob("*") if path.is_file() and path.name != "club.yaml"
    ]
    public = said_in_public(records)
    words = {one for text in (*held, *paths, club.as_posix()) for one in _words_of(text)}
    return Private(
        words=frozenset(one for one in words if len(one) >= LEAST_LETTERS and one not in public),
        numbers=frozenset(one for text in held for one in forms_of(text)),
    )


def _documents(club: Path) -> Iterator[tuple[Path, object]]:
    for path in sorted(club.rglob("*.yaml")):
        yield path, yaml.safe_load(path.read_text(encoding="utf-8"))
    for path in sorted(club.rglob("log/**/*.md")):
        yield path, yaml.safe_load(path.read_text(encoding="utf-8").split("---\n")[1])


def _row(path: Path, club: Path) -> str:
    """The row of the README's table that speaks of a file."""
    name = path.relative_to(club).as_posix()
    return name if name.startswith("weather/") or "/" not in name else f"{name.partition('/')[0]}/"


def _below_names(told: object, names: set[str]) -> Iterator[str]:
    """Everything typed below fields of these names."""
    if isinstance(told, dict):
        for key, value in told.items():
            yield from _scalars(value) if key in names else _below_names(value, names)
    elif isinstance(told, list):
        for value in told:
            yield from _below_names(value, names)


def _scalars(told: object) -> Iterator[str]:
    if isinstance(told, dict):
        for key, value in told.items():
            yield from _scalars(value)
            if str(key) not in FIELDS:
                yield str(key)
    elif isinstance(told, list):
        for value in told:
            yield from _scalars(value)
    elif told is not None:
        yield str(told)


def placed_leaves(record: object, wanted: Set[Seen]) -> Iterator[str | int | float]:
    """Every text and number in fields of a record that have one of some places, and in records below."""
    placed = SEEN.get(type(record))
    if placed is not None:
        for name, seen in placed.items():
            value = getattr(record, name)
            yield from placed_leaves(value, wanted)
            yield from _leaves(value) if seen in wanted and not _has_places(value) else ()
    elif isinstance(record, Mapping):
        for value in record.values():
            yield from placed_leaves(value, wanted)
    elif isinstance(record, tuple | list | frozenset):
        for value in record:
            yield from placed_leaves(value, wanted)


def _has_places(value: object) -> bool:
    """Whether it is made of records that place their own fields."""
    below = (
        value.values() if isinstance(value, Mapping) else value if isinstance(value, tuple | frozenset) else (value,)
    )
    return any(type(one) in SEEN for one in below)


def _leaves(value: object) -> Iterator[str | int | float]:
    if isinstance(value, str | int | float) and not isinstance(value, bool):
        yield value
    elif isinstance(value, Enum):
        yield str(value.value)
    elif is_dataclass(value) and not isinstance(value, type):
        for one in fields(value):
            yield from _leaves(getattr(value, one.name))
    elif isinstance(value, Mapping):
        for key, inner in value.items():
            yield from (*_leaves(key), *_leaves(inner))
    elif isinstance(value, tuple | list | frozenset):
        for inner in value:
            yield from _leaves(inner)


def said_in_public(records: ClubRecords) -> str:
    """All that the program's phrases and the club's public fields say, in one text."""
    root = Path(__file__).parents[1] / "plugins" / "swardcast" / "language" / "phrases"
    phrases = [path.read_text(encoding="utf-8") for path in sorted(root.rglob("*.ftl"))]
    told = placed_leaves(replace(records, weather=_NO_WEATHER), {Seen.PUBLIC, Seen.AS_TYPED})
    return as_read("\n".join([*phrases, *map(str, told)]))


def _words_of(text: str) -> Iterator[str]:
    """A text as typed; of a sentence, also every few words in a row, and names in it."""
    if _DAY.fullmatch(text) or _QUANTITY.fullmatch(text):
        return
    yield as_read(text)
    words = text.split()
    if len(words) > 2 * WORDS_OF_A_NOTE:
        for place in range(len(words) - WORDS_OF_A_NOTE + 1):
            yield as_read(" ".join(words[place : place + WORDS_OF_A_NOTE]).strip(".,;:"))
        for name in re.findall(r"(?<=[a-z,;] )[A-Z]\w{4,}", text):
            yield as_read(name)


def forms_of(text: str) -> Iterator[str]:
    """The numbers of a text in each way in which they may be written; none that may stand anywhere by chance."""
    for found in _NUMBER.findall(text):
        if found.isdigit() and int(found) in _YEARS:
            continue
        typed = float(found.replace(",", ""))
        values = [typed, *(typed * factor for unit, factor in _OTHER_UNIT.items() if unit in text)]
        if typed < 1:  # a share
            values.append(typed * 100)
        yield from (form for value in values for form in _written(value) if _tells_itself(form))


def _written(value: float) -> Iterator[str]:
    yield f"{value:.6g}"
    yield f"{value:.2f}"
    for grouped in (f"{value:,.2f}", f"{value:,.6g}"):
        yield grouped
        yield grouped.translate({ord(","): " ", ord("."): ","})
        yield grouped.translate({ord(","): ".", ord("."): ","})


def _tells_itself(number: str) -> bool:
    digits = re.sub(r"\D", "", number).strip("0")
    whole = re.fullmatch(r"\d+", number)
    return len(digits) >= LEAST_DIGITS and not (whole and int(number) < 1000)


# Taking them out of a club folder


def without_private(club: Path) -> None:
    """Take the private fields out of the files of a copy, and files that hold nothing else."""
    of_row = private_names()
    for path, told in list(_documents(club)):
        names = of_row.get(_row(path, club), set())
        if isinstance(told, dict) and names.issuperset(told):
            path.unlink()
        else:
            text = path.read_text(encoding="utf-8")
            path.write_text(_without_fields(text, names), encoding="utf-8")


def _without_fields(text: str, names: set[str]) -> str:
    """A text of YAML without some fields and what is indented below them."""
    kept, cut_below = [], -1
    for line in text.splitlines(keepends=True):
        indent = len(line) - len(line.lstrip())
        if cut_below >= 0 and (indent > cut_below or not line.strip()):
            continue
        match = re.match(r"\s*([a-z ]+):", line)
        cut_below = indent if match is not None and match[1] in names else -1
        if cut_below < 0:
            kept.append(line)
    return "".join(kept)


# Looking for them


_ALIKE = (
    ("\u2019", "'"),
    ("\u2018", "'"),
    ("\u201c", '"'),
    ("\u201d", '"'),
    ("\u2011", "-"),
    ("\u00ad", ""),
    ("\u2060", ""),
)


def as_read(text: str) -> str:
    """A text as a reader takes it: small letters, one kind of blank, of quotation mark and of hyphen."""
    plain = unicodedata.normalize("NFKC", text)
    for sign, plain_sign in _ALIKE:
        plain = plain.replace(sign, plain_sign)
    return " ".join(plain.casefold().split())


def leaks(site: Path, private: Private) -> list[tuple[str, str]]:
    """Files of a site that hold something private, each with what it is."""
    return [
        (path.relative_to(site).as_posix(), value)
        for path in sorted(site.rglob("*"))
        if path.is_file()
        for value in found_in(path.name, path.read_bytes(), private)
    ]


def found_in(name: str, data: bytes, private: Private) -> list[str]:
    """What of it a file says, however it is written or packed."""
    texts = [
        text for part in (data, *_unpacked(name, data)) for text in readings(part.decode("utf-8", errors="replace"))
    ]
    whole = as_read("\n".join(texts))
    numbers = {one for text in texts for found in _WRITTEN.findall(_DRAWN.sub("", text)) for one in _parts_of(found)}
    return sorted([*(one for one in private.words if one in whole), *(private.numbers & numbers)])


def _parts_of(number: str) -> tuple[str, ...]:
    """A number as it stands there, and where blanks part it, also what may be numbers of their own."""
    plain = number.rstrip(".,\u00a0\u202f").translate({0xA0: " ", 0x202F: " "})
    return (plain, *plain.split(" ")) if " " in plain else (plain,)


def readings(text: str) -> Iterator[str]:
    """What a text says with each way of quoting undone; of what is no text, what it has of text."""
    if "\0" in text:
        yield text
        return
    plain = re.sub(r"\r?\n[ \t]", "", text) if text.startswith("BEGIN:VCALENDAR") else text
    if "\\" in plain:  # JSON, and commas of a calendar
        plain = re.sub(r"\\u([0-9a-fA-F]{4})", lambda one: chr(int(one[1], 16)), plain)
        plain = re.sub(r"\\([\",;])", r"\1", plain).replace("\\n", "\n")
    if "&" in plain:  # HTML, and HTML in a feed
        plain = html.unescape(html.unescape(plain))
    yield plain
    if "<" in plain:
        yield re.sub(r"<[^>]*>", "", plain)  # words that tags part
    if re.search("%[0-9A-Fa-f]{2}", plain):
        yield unquote(plain)


def _unpacked(name: str, data: bytes) -> Iterator[bytes]:
    if data.startswith(b"\x89PNG"):
        yield from _words_of_picture(data)
    if data.startswith(b"%PDF"):
        yield from _words_of_pdf(data)
    if data.startswith(b"\x1f\x8b"):
        yield gzip.decompress(data)
    if name.endswith(".eml"):
        parts = message_from_bytes(data, policy=email.policy.default)
        yield str(parts["subject"]).encode()
        for part in parts.walk():
            if not part.is_multipart():
                yield part.get_payload(decode=True)  # type: ignore[misc] # bytes of a part that is none of several
    for packed in re.findall(rb"base64,([A-Za-z0-9+/=]{16,})", data):
        with suppress(ValueError):
            inner = base64.b64decode(packed)
            yield from (inner, *_unpacked("", inner))


def _words_of_picture(data: bytes) -> Iterator[bytes]:
    place = 8
    while place + 8 <= len(data):
        size, kind = int.from_bytes(data[place : place + 4], "big"), data[place + 4 : place + 8]
        chunk = data[place + 8 : place + 8 + size]
        if kind in (b"tEXt", b"iTXt"):
            yield chunk
        if kind in (b"zTXt", b"iTXt", b"iCCP"):
            for begin in (one.start() for one in re.finditer(rb"x[\x01\x5e\x9c\xda]", chunk[:400])):
                with suppress(zlib.error):
                    yield zlib.decompressobj().decompress(chunk[begin:])
        place += 12 + size


def _words_of_pdf(data: bytes) -> Iterator[bytes]:
    reader = pypdf.PdfReader(io.BytesIO(data))
    yield "\n".join(page.extract_text() for page in reader.pages).encode()
    yield "\n".join(map(str, (reader.metadata or {}).values())).encode()
    for packed in re.findall(rb"stream\r?\n(.*?)endstream", data, re.DOTALL):
        with suppress(zlib.error):
            yield zlib.decompressobj().decompress(packed)
