"""The demo club as a folder that a test may break."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.conftest import DEMO
from tests.reading.breaking import HISTORY


@pytest.fixture
def demo_club(tmp_path: Path) -> Path:
    """A copy with a single past year, since reading thirty of them takes longest."""
    club = Path(shutil.copytree(DEMO, tmp_path / "club"))
    header, *days = (club / HISTORY).read_text(encoding="utf-8").splitlines()
    (club / HISTORY).write_text("\n".join([header, *days[-365:]]) + "\n", encoding="utf-8")
    return club
