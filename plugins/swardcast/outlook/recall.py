"""Gives what was worked out before, where all that has a part in it is the same, and keeps what was not."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from typing import TypeVar

from swardcast.outlook.kept import Kept, Mark
from swardcast.outlook.known_digests import KnownDigests

__all__ = ["Recall"]

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Recall:
    """What was worked out before of one set of records with one book of the weather.

    Args:
        kept: what is kept.
        digests: digests of what was known when.
    """

    kept: Kept
    digests: KnownDigests

    def again(self, name: str, mark: Mark, kind: type[T], work_out: Callable[[], T]) -> T:
        """Give what is kept under a name, or work it out and keep it.

        Args:
            name: the name.
            mark: the mark of all that has a part in it.
            kind: what it is.
            work_out: works it out.

        Returns:
            The value.
        """
        found = self.kept.value(name) if self.kept.mark(name) == mark else None
        if isinstance(found, kind):
            return found
        value = work_out()
        self.kept.keep(name, mark, value)
        return value

    def latest(self, name: str, job: str, until: datetime, kind: type[T], work_out: Callable[[], T]) -> T:
        """Give what rests on what was known of a job at a moment; of several moments the latest is kept.

        Args:
            name: the name.
            job: id of the job.
            until: the moment, aware.
            kind: what it is.
            work_out: works it out.

        Returns:
            The value.
        """
        kept = self.kept.mark(name)
        if kept is not None and kept.until > until and self._holds(kept, job):
            return work_out()
        return self.again(name, self.digests.mark_of(job, until, None), kind, work_out)

    def up_to(self, name: str, job: str, until: datetime, kind: type[T]) -> T | None:
        """Give what is kept of a job up to some moment, if all that has a part in it is the same.

        Args:
            name: the name.
            job: id of the job.
            until: the latest moment up to which it may be, aware.
            kind: what it is.

        Returns:
            The value, or None.
        """
        kept = self.kept.mark(name)
        if kept is None or kept.until > until or not self._holds(kept, job):
            return None
        found = self.kept.value(name)
        return found if isinstance(found, kind) else None

    def _holds(self, mark: Mark, job: str) -> bool:
        return mark == self.digests.mark_of(job, mark.until, mark.latest)
