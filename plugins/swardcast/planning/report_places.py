"""Places in the club's own records that stand behind what a report says."""

from __future__ import annotations

from dataclasses import dataclass

from swardcast.records.log import EntryHead
from swardcast.records.plan import Job

__all__ = ["Place", "in_log", "in_plan"]


@dataclass(frozen=True, slots=True)
class Place:
    """A file of the club folder.

    Args:
        file: its path below the folder.
        line: the line in it, or None for the whole file, as of an entry of the log.
    """

    file: str
    line: int | None = None

    def __str__(self) -> str:
        """The place as the program names it elsewhere: "plan/summer.yaml, line 4"."""
        return self.file if self.line is None else f"{self.file}, line {self.line}"


def in_plan(job: Job) -> Place:
    """Name the place at which the plan has a job.

    Args:
        job: the job.

    Returns:
        File and line.
    """
    return Place(job.file, job.line)


def in_log(head: EntryHead) -> Place:
    """Name the entry that a head belongs to.

    Args:
        head: the entry's head.

    Returns:
        Its file.
    """
    return Place(head.file)
