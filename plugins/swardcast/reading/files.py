"""The files of a club folder as text and YAML, every failure a problem."""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterator, Mapping
from functools import cached_property
from pathlib import Path
from typing import Final

from swardcast.errors import Problem, nearest
from swardcast.reading.front_matter import fields_in
from swardcast.reading.web_folder import LEFT_BY_SYSTEMS, WEB
from swardcast.reading.yaml_text import CONTROL, Located, read_yaml
from swardcast.records.weather_setup import StationFile

__all__ = ["CHOICES", "FIXTURES", "OBSERVED", "OBSERVED_FETCHED", "SOURCES", "Files"]

FIXTURES: Final = "fixtures.ics"
"""Competitions and visitors' days."""
CHOICES: Final = "choices.yaml"
"""The club's own choices of work, to be compared; private."""
OBSERVED: Final = "weather/observed.csv"
"""Days observed on the course."""
OBSERVED_FETCHED: Final = "weather/observed-fetched.csv"
"""Days fetched beside a station's own export; a day that the station measured comes before one of these."""
SOURCES: Final = "weather/sources.yaml"
"""What was fetched from whom."""

_LARGEST_BYTES: Final = {
    ".csv": 4_000_000,  # days of a hundred years, twice
    ".ics": 4_000_000,  # `fixtures_file` counts letters, of which each may take four bytes
    ".ftl": 1_000_000,  # all phrases of a language, a few times over
}
"""By the ending of the file's name; judgement."""
_LARGEST_TYPED_BYTES: Final = 250_000  # some hundred jobs, or a novel of own words; judgement
_LARGEST_EXPORT_BYTES: Final = 16_000_000  # some four years of a station's 10-minute rows; judgement
_LARGEST_DATA_BYTES: Final = 1_000_000  # a badge may have far less; judgement
_NOT_UTF_8: Final = "a character that is not UTF-8"
_CONTROL: Final = re.compile(r"[\x00-\x08\x0b-\x1f]")
_NOT_PUT_TOGETHER: Final = re.compile(r"^(?:<{7}|>{7})(?: .*)?$", re.MULTILINE)
"""What a version control system leaves in a file of which two people changed the same lines (Git; from memory)."""
_UNFIT_FOR_A_NAME: Final = re.compile(rf"[\t\n]|{CONTROL.pattern}")
"""An entry's name becomes its id, which feeds and calendars hold; bytes that are no UTF-8 are halves of letters."""
_READ: Final = re.compile(
    r"(?:.*/)?(?:plan/[^/]*\.yaml|weather/(?:observed(?:-fetched)?\.csv|sources\.yaml|[^/]*\.py)"
    r"|weather/(?:history|forecast)/[^/]*\.csv|phrases/[^/]*\.ftl|[^/]*\.md)",
    re.DOTALL,
)
_EXAMPLES: Final = (
    "plan/2027.yaml",
    "log/2027/2027-08-23-0640-morning.md",
    "weather/observed.csv",
    "weather/history/1997-2026.csv",
    "phrases/own.ftl",
    "pages/about.md",
)
_KNOWN: Final = {
    "club.yaml",
    "surfaces.yaml",
    "plan",
    "log",
    "weather",
    "phrases",
    "pages",
    "templates",
    WEB,
    CHOICES,
    FIXTURES,
    "README.md",
}
_PICTURES: Final = (".svg", ".png")
_OURS: Final = re.compile(r"(?:plan|log|weather|phrases|pages)/")
_FOLDERS: Final = ("plan", "log", "weather", "weather/history", "weather/forecast", "phrases", "pages", "templates")


class Files:
    """Reads text below the club folder and turns what fails into problems.

    Args:
        folder: the club folder.
        problems: where problems are added.
        unwritten: text of files that are to be written there, by path below the folder; read as if they stood there.
    """

    def __init__(self, folder: Path, problems: list[Problem], unwritten: Mapping[str, str] | None = None) -> None:
        self._folder, self._problems, self._unwritten = folder, problems, unwritten or {}

    def report_strangers(self) -> None:
        is_badge = self._is_badge()
        for name in _FOLDERS:
            path = self._folder / name
            if path.exists() and not _is_readable_folder(path):
                found = "a folder that cannot be read" if path.is_dir() else "a file"
                self._problems.append(Problem(file=name, found=found, expected="a folder that can be read"))
        for path in sorted(self._folder.iterdir()):
            if path.name not in _KNOWN | LEFT_BY_SYSTEMS and not is_badge(path) and not path.name.startswith("."):
                expected = f"only: {', '.join(sorted(_KNOWN))}"
                self._problems.append(
                    Problem(
                        file=path.name,
                        found="a file or folder that is not part of a club folder",
                        expected=expected,
                        hint=nearest(path.name, _KNOWN),
                    )
                )

    def _is_badge(self) -> Callable[[Path], bool]:
        """Which file is the badge, club.yaml tells; until that can be read, or where it errs, any picture may be."""
        document = self.club_file() if (self._folder / "club.yaml").is_file() else None
        look = document.value.get("look") if document is not None and isinstance(document.value, dict) else None
        name = look.get("badge") if isinstance(look, dict) else None
        is_read = document is not None and isinstance(document.value, dict) and bool(document.value)
        if is_read and (name is None or (isinstance(name, str) and os.path.lexists(self._folder / name))):
            return lambda path: path.name == name
        return lambda path: path.suffix in _PICTURES

    def pictures(self) -> list[str]:
        """Name the files beside club.yaml that may be meant as its badge."""
        return sorted(path.name for path in self._folder.iterdir() if path.suffix in _PICTURES)

    def data(self, relative: str) -> bytes | None:
        """Read a file that is no text, at most one byte more than any may have; None when it cannot be read."""
        path = self._folder / relative
        try:
            if not path.is_file():
                return None
            with path.open("rb") as file:
                return file.read(_LARGEST_DATA_BYTES + 1)
        except OSError:
            return None

    def report_unread(self) -> None:
        """Say what would be passed over: a misspelt name below one of our folders, a link that leads nowhere."""
        tops = [entry for entry in _entries_of(self._folder) if entry.name != WEB]  # `web_folder` looks through that
        below = (one for top in _FOLDERS if "/" not in top for one in _entries_below(self._folder / top, top))
        found = [*((entry.name, entry) for entry in tops), *below]
        for name, entry in sorted(found, key=lambda one: one[0].split("/")):
            if entry.name.startswith(".") or entry.name in LEFT_BY_SYSTEMS:
                continue
            if (odd := _UNFIT_FOR_A_NAME.search(entry.name)) is not None:
                self._problems.append(
                    Problem(
                        file=name.encode("unicode_escape").decode("ascii"),
                        found=f"the character U+{ord(odd[0]):04X} in its name",
                        expected="a name of letters, figures and signs that are seen, in UTF-8",
                    )
                )
            elif entry.is_symlink() and not Path(entry).exists():
                self._problems.append(_not_there(name, Path(entry)))
            elif _OURS.match(name) and name not in _FOLDERS and not _is_read(name, entry):
                self._problems.append(
                    Problem(
                        file=name, found="a file that is not read", expected=f"names such as {', '.join(_EXAMPLES)}"
                    )
                )

    def text(self, relative: str, *, form: StationFile | None = None) -> str | None:
        """Read a file: as UTF-8, or else as a station saves it; what fails becomes a problem."""
        if relative in self._unwritten:
            return self._fit_to_read(self._unwritten[relative], relative, CONTROL)
        path = self._folder / relative
        if not path.is_file():
            self._problems.append(_not_there(relative, path))
            return None
        try:
            data = self._bytes(relative, path, form)
            text = None if data is None else _decoded(data, form).replace("\r\n", "\n")
        except UnicodeDecodeError as error:
            line = error.object.count(b"\n", 0, error.start) + 1
            hint = "Say how your station saves it, as in 'saved as: Windows-1252'." if form is not None else ""
            expected = "text saved as UTF-8"
            self._problems.append(Problem(file=relative, line=line, found=_NOT_UTF_8, expected=expected, hint=hint))
            return None
        except OSError as error:
            found = f"a file that cannot be read ({error.strerror})"
            self._problems.append(Problem(file=relative, found=found, expected="a readable file"))
            return None
        return None if text is None else self._fit_to_read(text, relative, CONTROL if form is None else _CONTROL)

    def _bytes(self, relative: str, path: Path, form: StationFile | None) -> bytes | None:
        """Read a file unless it is larger than any that a club has; its size is asked before."""
        most = _LARGEST_BYTES.get(path.suffix, _LARGEST_TYPED_BYTES) if form is None else _LARGEST_EXPORT_BYTES
        with path.open("rb", buffering=0) as file:  # as a whole: no buffer is needed
            size = os.fstat(file.fileno()).st_size
            if size > most:
                self._problems.append(Problem(file=relative, found=_size(size), expected=f"at most {_size(most)}"))
                return None
            return file.readall()

    def _fit_to_read(self, text: str, relative: str, control: re.Pattern[str]) -> str | None:
        if (odd := control.search(text)) is not None:
            found, expected, hint = f"the control character U+{ord(odd[0]):04X}", "plain text", ""
        elif (odd := _NOT_PUT_TOGETHER.search(text)) is not None:
            found, expected = f"{odd[0][:60]!r}, the mark of two versions of these lines", "one of them"
            hint = "Keep what is right of both, and take out the lines of '<<<<<<<', '=======' and '>>>>>>>'."
        else:
            return text
        line = text.count("\n", 0, odd.start()) + 1
        self._problems.append(Problem(file=relative, line=line, found=found, expected=expected, hint=hint))
        return None

    def below(self, relative: str, pattern: str) -> Iterator[tuple[str, Path]]:
        """List files; hidden ones are an editor's or a system's, as those are that lock or shadow an open entry."""
        top = self._folder / relative
        found = set(top.glob(pattern)) if top.is_dir() else set()
        found = {path for path in found if not _is_hidden(path.relative_to(top))}
        found |= {self._folder / name for name in self._unwritten if name.startswith(f"{relative}/")}
        above = len(self._folder.parts)
        for path in sorted(found, key=lambda path: path.parts):
            yield "/".join(path.parts[above:]), path

    def yaml(self, relative: str) -> Located | None:
        text = self.text(relative)
        return read_yaml(text, file=relative, problems=self._problems) if text is not None else None

    def fields(self, relative: str) -> Located | None:
        """Read the fields of a file: all that a YAML file holds, or what stands at the top of a Markdown file."""
        if not relative.endswith(".md"):
            return self.yaml(relative)
        text = self.text(relative)
        told = fields_in(text, file=relative, problems=self._problems) if text is not None else None
        return told[0] if told is not None else None

    def club_file(self) -> Located | None:
        """Give the YAML of club.yaml, read once, even where it is none."""
        return self._club_file

    @cached_property
    def _club_file(self) -> Located | None:
        return self.yaml("club.yaml")


def _entries_of(folder: Path | os.DirEntry[str]) -> list[os.DirEntry[str]]:
    try:
        with os.scandir(folder) as found:
            return list(found)
    except OSError:
        return []  # `report_strangers` tells of a folder that cannot be read


def _entries_below(folder: Path | os.DirEntry[str], name: str) -> Iterator[tuple[str, os.DirEntry[str]]]:
    """List what is in a folder and in those within it, by path below the club folder; never what lies behind a link."""
    for entry in _entries_of(folder):
        here = f"{name}/{entry.name}"
        yield here, entry
        if entry.is_dir(follow_symlinks=False):
            yield from _entries_below(entry, here)


def _is_hidden(below: Path) -> bool:
    return any(part.startswith(".") for part in below.parts)


def _is_read(name: str, entry: os.DirEntry[str]) -> bool:
    if entry.is_dir():
        return not entry.is_symlink()  # what lies behind a link of a folder is never looked for
    return _READ.fullmatch(name) is not None


def _decoded(data: bytes, form: StationFile | None) -> str:
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        if form is None or form.encoding == "utf-8-sig":
            raise
        return data.decode(form.encoding)


def _is_readable_folder(path: Path) -> bool:
    try:
        next(path.iterdir(), None)
    except OSError:
        return False
    return True


def _not_there(name: str, path: Path) -> Problem:
    if path.is_dir():
        found = "a folder"
    elif path.is_symlink() and not path.exists():
        found = "a link that leads nowhere"
    else:
        found = "no file that can be read" if path.exists() else "no such file"
    return Problem(file=name, found=found, expected="this file in the club folder")


def _size(size: int) -> str:
    return f"{size / 1e6:.0f} MB" if size >= 1e6 else f"{size / 1e3:.0f} KB"  # noqa: PLR2004 - a megabyte
