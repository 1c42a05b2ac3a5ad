"""The files of a club folder as text and YAML, every failure a problem."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Final

from swardcast.errors import Problem, nearest
from swardcast.reading.web_folder import WEB
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

_LARGEST_BYTES: Final = 8_000_000  # no file that a club types is larger; judgement
_LARGEST_EXPORT_BYTES: Final = 64_000_000  # some years of a station's 10-minute rows; judgement
_CONTROL: Final = re.compile(r"[\x00-\x08\x0b-\x1f]")
_READ: Final = (
    "plan/*.yaml",
    OBSERVED,
    OBSERVED_FETCHED,
    SOURCES,
    "weather/history/*.csv",
    "weather/forecast/*.csv",
    "weather/*.py",
    "phrases/*.ftl",
    "*.md",
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


class Files:
    """Reads text below the club folder and turns what fails into problems.

    Args:
        folder: the club folder.
        problems: where problems are added.
        unwritten: text of files that are to be written there, by path below the folder; read as if they stood there.
    """

    def __init__(self, folder: Path, problems: list[Problem], unwritten: Mapping[str, str] | None = None) -> None:
        self._folder, self._problems, self._unwritten = folder, problems, unwritten or {}
        self._club_file: Located | None = None

    def name(self, path: Path) -> str:
        return path.relative_to(self._folder).as_posix()

    def report_strangers(self) -> None:
        is_badge = self._is_badge()
        for path in sorted(self._folder.iterdir()):
            if path.name not in _KNOWN and not is_badge(path) and not path.name.startswith("."):
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
        """Which file is the badge, club.yaml tells; until that can be read any picture may be."""
        document = self.club_file() if (self._folder / "club.yaml").is_file() else None
        if document is None or not isinstance(document.value, dict) or not document.value:
            return lambda path: path.suffix in (".svg", ".png")
        look = document.value.get("look")
        name = look.get("badge") if isinstance(look, dict) else None
        return lambda path: path.name == name

    def data(self, relative: str) -> bytes | None:
        """Read a file that is no text; None when it is not there or cannot be read."""
        try:
            return (self._folder / relative).read_bytes()
        except OSError:
            return None

    def report_unread(self) -> None:
        """A misspelt name below one of our folders would be passed over in silence: say so instead."""
        for path in sorted(self._folder.glob("[plw]*/**/*")):
            name = self.name(path)
            if name.startswith(f"{WEB}/") or path.name.startswith(".") or not path.is_file():
                continue
            if not any(path.match(like) for like in _READ):
                self._problems.append(
                    Problem(
                        file=name, found="a file that is not read", expected=f"names such as {', '.join(_EXAMPLES)}"
                    )
                )

    def text(self, relative: str, *, form: StationFile | None = None) -> str | None:
        """Read a file: as UTF-8, or else as a station saves it; what fails becomes a problem."""
        if relative in self._unwritten:
            return self._without_controls(self._unwritten[relative], relative, CONTROL)
        most = _LARGEST_BYTES if form is None else _LARGEST_EXPORT_BYTES
        path = self._folder / relative
        if not path.is_file():
            found = "a folder" if path.is_dir() else "no such file"
            self._problems.append(Problem(file=relative, found=found, expected="this file in the club folder"))
            return None
        try:
            data = path.read_bytes()
            if len(data) > most:
                self._problems.append(
                    Problem(
                        file=relative,
                        found=f"{len(data) / 1e6:.0f} MB",
                        expected=f"at most {most / 1e6:.0f} MB",
                    )
                )
                return None
            text = _decoded(data, form).replace("\r\n", "\n")
        except UnicodeDecodeError as error:
            line = data[: error.start].count(b"\n") + 1
            hint = "Say how your station saves it, as in 'saved as: Windows-1252'." if form is not None else ""
            self._problems.append(
                Problem(
                    file=relative,
                    line=line,
                    found="a character that is not UTF-8",
                    expected="text saved as UTF-8",
                    hint=hint,
                )
            )
            return None
        except OSError as error:
            self._problems.append(
                Problem(
                    file=relative, found=f"a file that cannot be read ({error.strerror})", expected="a readable file"
                )
            )
            return None
        return self._without_controls(text, relative, CONTROL if form is None else _CONTROL)

    def _without_controls(self, text: str, relative: str, control: re.Pattern[str]) -> str | None:
        odd = control.search(text)
        if odd is not None:
            self._problems.append(
                Problem(
                    file=relative,
                    line=text.count("\n", 0, odd.start()) + 1,
                    found=f"the control character U+{ord(odd[0]):04X}",
                    expected="plain text",
                )
            )
            return None
        return text

    def below(self, relative: str, pattern: str) -> Iterator[tuple[str, Path]]:
        top = self._folder / relative
        found = set(top.glob(pattern)) if top.is_dir() else set()
        found |= {self._folder / name for name in self._unwritten if name.startswith(f"{relative}/")}
        for path in sorted(found):
            yield self.name(path), path

    def yaml(self, relative: str) -> Located | None:
        text = self.text(relative)
        return read_yaml(text, file=relative, problems=self._problems) if text is not None else None

    def club_file(self) -> Located | None:
        """Give the YAML of club.yaml, read once."""
        if self._club_file is None:
            self._club_file = self.yaml("club.yaml")
        return self._club_file


def _decoded(data: bytes, form: StationFile | None) -> str:
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        if form is None or form.encoding == "utf-8-sig":
            raise
        return data.decode(form.encoding)
