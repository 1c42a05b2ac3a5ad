"""The files in .locked/: which versions `make site` and `make test` install, and by which hashes."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from packaging.requirements import Requirement

from tests.conftest import ROOT

__all__ = ["BUILD", "PACKAGES", "Locked", "as_constraints", "locked", "project"]

BUILD: Final = ROOT / ".locked" / "build.txt"
PACKAGES: Final = ROOT / ".locked" / "packages.txt"

_HASH: Final = re.compile(r" --hash=(\S+)")


@dataclass(frozen=True)
class Locked:
    """One package of such a file."""

    requirement: Requirement
    hashes: tuple[str, ...]

    @property
    def version(self) -> str:
        (only,) = self.requirement.specifier
        return only.version


def locked(path: Path) -> list[Locked]:
    """Read a file of versions with hashes; a line that is no package raises InvalidRequirement."""
    text = re.sub(r"^\s*#.*\n", "", path.read_text(encoding="utf-8"), flags=re.MULTILINE)
    lines = text.replace("\\\n", "").splitlines()
    return [Locked(Requirement(_HASH.sub("", line).strip()), tuple(_HASH.findall(line))) for line in lines]


def as_constraints() -> str:
    """The versions of all packages without their hashes, for an installation of which we make a part ourselves."""
    return "".join(f"{one.requirement}\n" for one in locked(PACKAGES))


def project() -> dict[str, Any]:
    """What pyproject.toml says."""
    return tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
