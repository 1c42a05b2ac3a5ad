"""Pelican as a new process has it, for each build that a process does."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

__all__ = ["pelican_anew"]


@contextmanager
def pelican_anew() -> Iterator[None]:
    """Leave nothing of a build behind in the process: neither what Pelican rendered, nor what it has said.

    Pelican keeps every page that it has rendered, and with it the whole club, for as long as the process lives; it says
    the same warning only once; and it goes on to take an error that anybody logs for the end of its own run.

    Yields:
        Nothing; the build goes on inside.
    """
    from pelican.contents import Content
    from pelican.log import FatalLogger, LimitFilter

    fatal = FatalLogger.fatal_lvl
    try:
        yield
    finally:
        for remembered in (Content.get_content, Content.get_summary):
            remembered.cache.clear()
        for said in (LimitFilter._ignore, LimitFilter._raised_messages, LimitFilter._group_count):
            said.clear()
        FatalLogger.fatal_lvl = fatal
