"""plan/*.yaml -> jobs."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Annotated, Any, TypeVar
from zoneinfo import ZoneInfo

from pydantic import BeforeValidator, Field
from pydantic_core import PydanticCustomError

from swardcast.errors import Problem
from swardcast.reading.local_rules import LocalRuleItem, local_rules_from
from swardcast.reading.operations import OperationItem, operation_from
from swardcast.reading.own_words import own_words_from
from swardcast.reading.plan_sense import oddities_of
from swardcast.reading.schema import (
    Day,
    Lines,
    Model,
    Number,
    Text,
    Words,
    local_moment,
    one_of,
    validated,
    what_is_wrong,
    within,
    wrong,
)
from swardcast.reading.selection import select_surfaces
from swardcast.reading.surfaces_file import identifier
from swardcast.reading.time_spans import MinutesFromTo
from swardcast.reading.typed_words import LONGEST_WORDS
from swardcast.reading.usual_times import UsualTime, stretch_from
from swardcast.reading.yaml_text import Located, Path, field_of
from swardcast.records.club import Surface
from swardcast.records.plan import COURSE_STATUS, FollowUp, Job, OwnWords, Play, Reading, Withdrawal

__all__ = ["jobs_from"]

T = TypeVar("T")


class _Reading(Model):
    what: Text
    found: Text
    target: Words = ""
    on: Day | None = None


class _Withdrawn(Model):
    at: Text
    because: Text
    instead: Words = ""


def _job_id(value: object) -> str:
    if value == COURSE_STATUS:
        raise wrong(value, "another name: the feeds have the course's own news under this one")
    return identifier(value)


class _Job(Model):
    id: Annotated[str, BeforeValidator(_job_id)]
    title: Text
    announced: Day | None = None
    starts: Day
    surfaces: Text
    operations: Annotated[list[OperationItem], Field(min_length=1)]
    surfaces_a_day: Annotated[Number, within(0.05, 60, "surfaces finished in a day, from 0.05 to 60")]
    spare_days: Annotated[int, within(0, 30, "spare days from 0 to 30")] = 0
    while_working: Annotated[Play, one_of(Play)] = Play.CLOSED
    reopens_after: UsualTime | None = None
    follow_up: MinutesFromTo | None = None
    normal_after: UsualTime | None = None
    why: Lines = []
    measured: list[_Reading] = []
    local_rules: list[LocalRuleItem] = []
    scores: Words = ""
    meanwhile: Words = ""
    own_words: Words = ""
    withdrawn: _Withdrawn | None = None
    private_note: Words = ""


class _Programme(Model):
    programme: Text
    announced: Day
    jobs: Annotated[list[Any], Field(min_length=1)]


def jobs_from(
    document: Located, *, file: str, surfaces: Mapping[str, Surface] | None, zone: ZoneInfo, problems: list[Problem]
) -> list[Job]:
    """Read one programme.

    Args:
        document: the YAML of the plan file.
        file: its name for problems.
        surfaces: all surfaces by id; None where they could not be read, so that nothing is said of those of a job.
        zone: the club's time zone.
        problems: where problems are added.

    Returns:
        Its jobs, in order; those with a problem are left out.
    """
    programme = validated(_Programme, document, file=file, problems=problems)
    listed = document.value.get("jobs") if isinstance(document.value, dict) else None
    reader = _JobReader(document, file=file, zone=zone, problems=problems)
    places = range(len(listed)) if isinstance(listed, list) else ()
    jobs = (reader.job(place, programme, surfaces) for place in places)
    return [job for job in jobs if job is not None]


class _JobReader:
    """Reads each job by itself, so that the faults of one hide none of another."""

    def __init__(self, document: Located, *, file: str, zone: ZoneInfo, problems: list[Problem]) -> None:
        self._document, self._file, self._zone, self._problems = document, file, zone, problems

    def job(self, place: int, programme: _Programme | None, surfaces: Mapping[str, Surface] | None) -> Job | None:
        job = validated(_Job, self._document, file=self._file, problems=self._problems, at=("jobs", place))
        words = _own_words(self._document, place, self._file, self._problems)
        if job is None:
            return None
        chosen = self._attempt(lambda: select_surfaces(job.surfaces, surfaces) if surfaces else None, place, "surfaces")
        line = self._document.line(("jobs", place, "withdrawn"))
        withdrawn = self._attempt(lambda: _withdrawal(job.withdrawn, self._zone, line), place, "withdrawn", "at")
        if programme is None or chosen is None or surfaces is None or (job.withdrawn and withdrawn is None):
            return None
        line = self._document.line(("jobs", place)) or 1
        made = replace(_job(programme, job, chosen, words, file=self._file, line=line), withdrawn=withdrawn)
        self._problems += (self._placed(one, place) for one in oddities_of(made, surfaces))
        return made

    def _attempt(self, read: Callable[[], T], place: int, *field: str) -> T | None:
        try:
            return read()
        except PydanticCustomError as error:
            found, expected, hint = what_is_wrong(error)
            problem = Problem(file=self._file, field=".".join(field), found=found, expected=expected, hint=hint)
            self._problems.append(self._placed(problem, place))
            return None

    def _placed(self, problem: Problem, place: int) -> Problem:
        """Name the job, and the line of the field, or of the job where that is not there."""
        path: Path = ("jobs", place, *problem.field.split("."))
        return replace(problem, line=self._document.line(path), field=field_of(path))


def _withdrawal(told: _Withdrawn | None, zone: ZoneInfo, line: int | None) -> Withdrawal | None:
    if told is None:
        return None
    at = local_moment(told.at, zone)
    return Withdrawal(at=at, because=told.because, instead=told.instead, line=line or 1)


def _own_words(document: Located, place: int, file: str, problems: list[Problem]) -> tuple[str, tuple[OwnWords, ...]]:
    """Read as they stand in the file, so that each heading is told with its line."""
    job = document.value["jobs"][place]
    words = (job.get("own words") if isinstance(job, dict) else None) or ""
    if not isinstance(words, str) or len(words) > LONGEST_WORDS:
        return "", ()  # which was told
    line = document.line(("jobs", place, "own words")) or 1
    below = line + 1 if "\n" in words else line  # a block of text begins on the line after its field
    return own_words_from(words, file=file, first_line=below, problems=problems)


def _job(
    told: _Programme,
    job: _Job,
    chosen: tuple[str, ...],
    words: tuple[str, tuple[OwnWords, ...]],
    *,
    file: str,
    line: int,
) -> Job:
    return Job(
        id=job.id,
        title=job.title,
        programme=told.programme,
        announced=job.announced or told.announced,
        starts=job.starts,
        surfaces=chosen,
        operations=tuple(map(operation_from, job.operations)),
        surfaces_a_day=job.surfaces_a_day,
        spare_days=job.spare_days,
        while_working=job.while_working,
        reopens_after=stretch_from(job.reopens_after),
        follow_up=FollowUp(from_minutes=job.follow_up[0], to_minutes=job.follow_up[1]) if job.follow_up else None,
        normal_after=stretch_from(job.normal_after),
        why=tuple(job.why),
        readings=tuple(Reading(what=r.what, found=r.found, target=r.target, on=r.on) for r in job.measured),
        own_words=words[0],
        own_parts=words[1],
        file=file,
        line=line,
        local_rules=local_rules_from(job.local_rules),
        scores=job.scores,
        meanwhile=job.meanwhile,
        private_note=job.private_note,
    )
