"""What a log entry names: jobs of the plan, surfaces; and what is said where they are not there."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Final, TypeVar
from zoneinfo import ZoneInfo

from pydantic_core import PydanticCustomError

from swardcast.errors import Problem, nearest
from swardcast.reading.plain_words import shown
from swardcast.reading.schema import what_is_wrong
from swardcast.reading.selection import select_surfaces
from swardcast.reading.yaml_text import Located
from swardcast.records.club import Surface
from swardcast.records.log import EntryHead
from swardcast.records.plan import Job

__all__ = ["LogContext", "NamesOfEntry"]

T = TypeVar("T")

_MOST_NAMED: Final = 60
"""Jobs that are named one by one where another one was meant; the plan of a year, and judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LogContext:
    """What an entry may refer to.

    Args:
        zone: the club's time zone.
        surfaces: all surfaces by id; None where they could not be read, so that nothing is said of those of an entry.
        jobs: all jobs by id, as far as they could be read.
        all_jobs: whether these are all; else nothing is said of a job that is not among them.
        documents: the fields of each entry by its file, as they are read, for the lines of what is found later.
    """

    zone: ZoneInfo
    surfaces: Mapping[str, Surface] | None
    jobs: Mapping[str, Job]
    all_jobs: bool = True
    documents: dict[str, Located] = field(default_factory=dict, compare=False)


class NamesOfEntry:
    """Finds what the fields of one file name, and tells what is wrong with them.

    Args:
        file: its path for problems.
        context: what the entry may refer to.
        problems: where problems are added.
    """

    def __init__(self, file: str, context: LogContext, problems: list[Problem]) -> None:
        self._file, self._context, self._problems = file, context, problems

    def job(self, name: str, head: EntryHead | None, document: Located) -> Job | None:
        """Find a job, and tell where there is none of that name, or it was not announced by the day of the entry."""
        job = self._context.jobs.get(name)
        if job is None and self._context.all_jobs:
            known = f"one of: {', '.join(self._context.jobs) or 'none'}"
            if len(self._context.jobs) > _MOST_NAMED:
                known = f"the id of one of the {len(self._context.jobs)} jobs of the plan"
            deleted = "If you took it out of the plan, put it back with the field 'withdrawn'."
            hint = f"{nearest(name, self._context.jobs)} {deleted}".strip()
            self.say(document, "job", f"{shown(name)}, which is not in the plan", known, hint)
        elif job and head and head.at.astimezone(self._context.zone).date() < job.announced:
            found = f"{name!r}, which is announced only on {job.announced}"
            hint = "Put the day in its 'announced' earlier."
            self.say(document, "job", found, "a job that was announced by the day of the entry", hint)
            return None
        return job

    def surfaces(self, phrase: str | None, job: Job | None, document: Located) -> tuple[str, ...] | None:
        """Find surfaces of a job, all of them where the entry names none; None where that cannot be told."""
        if phrase is None:
            return job.surfaces if job is not None else None
        chosen = self.select(phrase, document, "surfaces")
        known = self._context.surfaces or {}
        strangers = [name for name in chosen or () if job is not None and name not in job.surfaces]
        if strangers and job is not None:
            names = ", ".join(known[name].name for name in strangers)
            self.say(document, "surfaces", f"{names}, not part of the job {job.id!r}", "surfaces of that job", "")
            return None
        return chosen

    def select(self, phrase: str, document: Located, name: str) -> tuple[str, ...] | None:
        """Find the surfaces that a phrase names; None where it names what is not there."""
        known = self._context.surfaces
        return self.attempt(lambda: select_surfaces(phrase, known), document, name) if known is not None else None

    def attempt(self, read: Callable[[], T], document: Located, name: str) -> T | None:
        """Read a field; what is wrong with it is told, and gives None."""
        try:
            return read()
        except PydanticCustomError as error:
            self.say(document, name, *what_is_wrong(error))
            return None

    def say(self, document: Located, name: str, found: str, expected: str, hint: str) -> None:
        """Tell what is wrong with a field, which "play.greens 1-9" names, on its line."""
        path = tuple(name.split(".", 1))
        line, field = document.line(path), document.name(path)
        self._problems.append(
            Problem(file=self._file, line=line, field=field, found=found, expected=expected, hint=hint)
        )
