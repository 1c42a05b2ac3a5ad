"""A pseudo-terminal for a command that asks: what it shows, and keys typed into it."""

from __future__ import annotations

import os
import pty
import re
import select
import signal
import sys
from collections.abc import Mapping
from pathlib import Path

from tests.conftest import ROOT

__all__ = ["CTRL_D", "Terminal"]

CTRL_C, CTRL_D = "\x03", "\x04"
_PATIENCE_SECONDS = 60.0


class Terminal:
    """A command on a dumb terminal; ended when the test is over, whatever happened."""

    def __init__(self, *arguments: str, environment: Mapping[str, str] | None = None, cwd: Path | None = None) -> None:
        self.seen = ""
        self._pid, self._there = pty.fork()
        if self._pid == 0:
            os.chdir(cwd or ROOT)
            env = {**os.environ, "PYTHONPATH": str(ROOT / "plugins"), "TERM": "dumb", "COLUMNS": "200"}
            os.execve(  # noqa: S606 - our own command
                sys.executable, [sys.executable, "-m", "swardcast.cli", *arguments], {**env, **(environment or {})}
            )

    def __enter__(self) -> Terminal:
        return self

    def __exit__(self, *_: object) -> None:
        if self._pid:
            os.kill(self._pid, signal.SIGKILL)
            os.waitpid(self._pid, 0)
        os.close(self._there)

    def wait_for(self, text: str) -> str:
        """Read until some text has been shown, and the prompt behind it; gives all that came up to there."""
        pattern = re.compile(re.escape(text) + r".*\n> ", re.DOTALL)
        while (match := pattern.search(self.seen)) is None:
            assert self._read(), f"{text!r} was never asked; shown:\n{self.seen}"
        told, self.seen = self.seen[: match.end()], self.seen[match.end() :]
        return told

    def type(self, keys: str) -> None:
        os.write(self._there, keys.encode())

    def answer(self, question: str, reply: str = "") -> str:
        """Wait for a question and answer it; "" is Enter alone. Gives what was shown before."""
        told = self.wait_for(question)
        self.type(reply if reply == CTRL_D else f"{reply}\n")
        return told

    def end(self) -> tuple[int, str]:
        """Wait for the end; gives the exit code and what was shown last."""
        while self._read():
            pass
        _, status = os.waitpid(self._pid, 0)
        self._pid = 0
        return os.waitstatus_to_exitcode(status), self.seen

    def interrupt(self) -> tuple[int, str]:
        """Press Ctrl-C until something happens, as a person does: a key between prompt and reading can be lost."""
        for _ in range(30):
            self.type(CTRL_C)
            while select.select([self._there], [], [], 2.0)[0]:
                if not self._read():
                    return self.end()
        message = f"Ctrl-C does not end it; shown:\n{self.seen}"
        raise AssertionError(message)

    def _read(self) -> bool:
        ready, _, _ = select.select([self._there], [], [], _PATIENCE_SECONDS)
        assert ready, f"nothing came for a minute; shown:\n{self.seen}"
        try:
            data = os.read(self._there, 65536)
        except OSError:  # how Linux tells that the other end has gone
            return False
        self.seen += data.decode(errors="replace").replace("\r\n", "\n")
        return bool(data)
