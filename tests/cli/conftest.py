"""The command line, run within the tests' own process."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import pytest

from swardcast.cli.main import run


@dataclass(frozen=True)
class Done:
    """How a command ended: its exit code, its results and its talk."""

    code: int
    out: str
    err: str


@pytest.fixture
def swardcast(capsys: pytest.CaptureFixture[str]) -> Callable[..., Done]:
    """Run one command; wrong usage that argparse finds is an exit code too."""

    def command(*arguments: str) -> Done:
        try:
            code = run(arguments)
        except SystemExit as leaving:
            code = int(leaving.code or 0)
        told = capsys.readouterr()
        return Done(code, told.out, told.err)

    return command
