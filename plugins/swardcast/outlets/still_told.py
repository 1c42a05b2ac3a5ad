"""How long the outlets tell of work that is over."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Final

from swardcast.notices.notice import Notice
from swardcast.outlook.states import Work

__all__ = ["IN_EMAILS", "IN_THE_FILE", "is_still_told"]

IN_EMAILS: Final = timedelta(days=7)
"""Whoever reads one e-mail a week hears the end, and hears it once. Judgement."""
IN_THE_FILE: Final = timedelta(days=14)
"""Programs ask for the status file when they like, some seldom: the same for which a note is fresh. Judgement."""


def is_still_told(notice: Notice, work: Work, as_of: datetime, *, for_so_long: timedelta) -> bool:
    """Whether a notice is to be told of, since its work is not over, or members heard the end not long ago.

    Args:
        notice: the notice.
        work: how its work stands.
        as_of: the moment, aware.
        for_so_long: how long the end is told.

    Returns:
        False once the time is over.
    """
    return not work.is_over or as_of - notice.revised_at <= for_so_long
