"""Questions on a terminal: plain lines, so that they work on any terminal and over any connection."""

from __future__ import annotations

import sys
from contextlib import suppress

from swardcast.entering.questions import Question

__all__ = ["ask", "can_ask", "say"]

_NOTHING = ("none", "-", "no")


def can_ask() -> bool:
    """Tell whether somebody is there to answer."""
    return sys.stdin is not None and sys.stdin.isatty()


def say(line: str = "") -> None:
    """Say something to the manager; results go elsewhere."""
    print(line, file=sys.stderr, flush=True)


def ask(question: Question) -> str:
    """Ask once.

    Args:
        question: the question.

    Returns:
        The answer, the one that Enter gives, or "" for none.

    Raises:
        EOFError: when nobody answers any more.
    """
    with suppress(ImportError):
        import readline  # noqa: F401 - lets the manager edit a line where the system has it
    if question.before:
        say(question.before)
    for number, (value, meaning) in enumerate(question.choices, start=1):
        say(f"  {number:2}  {value}: {meaning}")
    say(f"{question.asks}{_offer(question)}")
    both = sys.stdout.isatty() and sys.stderr.isatty()
    if not both:
        print("> ", end="", file=sys.stderr, flush=True)
    reply = input("> " if both else "").strip()
    if not reply:
        return question.offered
    if reply.isdigit() and 1 <= int(reply) <= len(question.choices):
        return question.choices[int(reply) - 1][0]
    return "" if reply.lower() in _NOTHING and not question.needed else reply


def _offer(question: Question) -> str:
    if question.offered:
        return f" [{question.offered}]"
    if question.needed:
        return f" (such as {question.sample})" if question.sample else ""
    return f" (such as {question.sample}; Enter for none)" if question.sample else " (Enter for none)"
