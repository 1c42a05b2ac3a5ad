"""The job that a word means: an operation's short name, a job's id, or a piece of its title."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from swardcast.entering.standing import Standing
from swardcast.entering.wrong import WrongAnswer
from swardcast.errors import nearest
from swardcast.records.club import SurfaceKind
from swardcast.records.operations import Kind
from swardcast.records.plan import Job

__all__ = ["candidates", "job_meant", "kinds_named"]

_ALSO: Final = {
    "core": (Kind.HOLLOW_TINING,),
    "spike": (Kind.SOLID_TINING,),
    "sand": (Kind.TOPDRESSING,),
    "seed": (Kind.OVERSEEDING, Kind.SEEDING_BARE_GROUND),
    "turf": (Kind.RETURFING,),
    "drain": (Kind.DRAINAGE_TRENCHING, Kind.BUNKER_DRAINAGE),
    "spray": (Kind.PLANT_PROTECTION,),
    "cut": (Kind.CUTTING_HEIGHT,),
}  # what a greenkeeper says for them; common practice, no published source
_CANNOT: Final = {
    "started": "has been started on every surface, or is called off",
    "done": "is done on every surface, or is called off",
    "held-up": "is held up or done on every surface, or is called off",
    "resumed": "is held up on no surface",
    "normal": "has no surface that was done and is not back to normal yet",
    "seen": "has no surface that was done and is not back to normal yet",
    "postponed": "has begun already",
    "forward": "has begun already",
    "called-off": "is done on every surface, or is called off",
    "note": "is over",
}
_BEGUN: Final = (
    "For work that waits enter 'held-up', and 'resumed' when it goes on. 'called-off' calls off the surfaces that are"
    " not done; to do them another time, put them into a job of their own in the plan."
)
_CALLED_OFF: Final = "If a job that was called off is to be done after all, 'correct' the entry that called it off."
_AFTER_WORK: Final = ("seen", "normal")
_BY_SHORT_NAME_ONLY: Final = 3
"""Fewer letters than these say nothing: judgement."""


def _stem(words: str) -> str:
    """What "hollow tining", "hollow-tine" and "hollow tined" have in common."""
    parts = re.findall(r"[a-z0-9]+", words.lower())
    stems = [
        re.sub(r"(?<=\w{3})(?:ing|ed|es|e|s)$", "", part) if len(part) > _BY_SHORT_NAME_ONLY else part for part in parts
    ]
    return "".join(re.sub(r"([bdgmnprst])\1$", r"\1", stem) for stem in stems)


_SURFACES: Final = {_stem(kind.value) for kind in SurfaceKind}


def kinds_named(text: str) -> set[Kind]:
    """Find the kinds of operation that a word names.

    Args:
        text: such as "hollow-tine", "scarify" or "topdressing".

    Returns:
        Kinds; none when it names no operation.
    """
    wanted = _stem(text)
    named = {kind for kind in Kind if _stem(kind.value) == wanted}
    named |= {kind for word, kinds in _ALSO.items() if _stem(word) == wanted for kind in kinds}
    if not named and len(wanted) >= _BY_SHORT_NAME_ONLY:
        named = {kind for kind in Kind if _stem(kind.value).startswith(wanted)}
        if wanted not in _SURFACES:  # "greens" are not temporary ones
            named |= {kind for kind in Kind if _stem(kind.value).endswith(wanted)}
    return named


def candidates(standing: Standing, word: str) -> list[Job]:
    """List the jobs that can take a step, the likeliest first.

    Args:
        standing: how the jobs stand.
        word: the step.

    Returns:
        Jobs; those under way or held up first. Then, for a step of the work or a change of plan, those due nearest to
        this day; for what comes after the work the latest.
    """
    today = standing.at.date()
    able = [job for job in standing.jobs if standing.able(job.id, word)]

    def likeliest(job: Job) -> tuple[bool, int]:
        starts = standing.facts[job.id].starts
        return not standing.is_begun(job.id), -starts.toordinal() if word in _AFTER_WORK else abs((starts - today).days)

    return sorted(able, key=likeliest)


def job_meant(
    text: str, standing: Standing, word: str, surfaces: Sequence[str] = (), *, where_is_said: bool = False
) -> Job:
    """Find the one job that a word means among those announced and not over.

    Args:
        text: a job's id, an operation's short name, or a piece of the job's id or title.
        standing: how the jobs stand.
        word: the step it is to take.
        surfaces: ids of the surfaces named besides; a job that has none of them is not meant.
        where_is_said: whether surfaces were named at all; then a job named by its id is taken as it is.

    Returns:
        The job.

    Raises:
        WrongAnswer: when it means none, none that can take the step, or several.
    """
    exact = standing.facts.get(text.strip().lower())
    if exact is not None and (surfaces or where_is_said):
        return exact.job
    fits = [exact.job] if exact is not None else _fitting(text, standing.jobs)
    if not fits:
        known = candidates(standing, word) or list(standing.jobs)
        names = [job.id for job in known]
        operations = [operation.kind.value for job in known for operation in job.operations]
        hint = nearest(text, [*names, *dict.fromkeys(operations)])
        raise WrongAnswer(repr(text), f"a job or its work, one of: {', '.join(names) or 'none'}", hint)
    able = [job for job in fits if standing.able(job.id, word)] or ([] if word != "seen" else fits)
    if not able:
        found = f"{text!r}; {_named(fits)} {_CANNOT[word]}"
        raise WrongAnswer(found, "a job that can take this step", _way_out(fits, standing, word))
    there = [job for job in able if set(surfaces) & set(job.surfaces)] or able
    going_on = [job for job in there if standing.is_under_way(job.id)] if word in ("done", "held-up") else []
    left = going_on or there
    if len(left) > 1:
        raise WrongAnswer(f"{text!r}, which fits {len(left)} jobs", f"one of: {_named(left)}", "Name one by its id.")
    return left[0]


def _way_out(jobs: Sequence[Job], standing: Standing, word: str) -> str:
    if any(standing.facts[job.id].called_off for job in jobs):
        return _CALLED_OFF
    return _BEGUN if word in ("postponed", "forward") else ""


def _named(jobs: Sequence[Job]) -> str:
    return "; ".join(f"{job.id} ({job.title})" for job in jobs)


def _fitting(text: str, jobs: Sequence[Job]) -> list[Job]:
    """By the work first, then by id, then by title."""
    kinds, wanted = kinds_named(text), _stem(text)
    by_work = [job for job in jobs if kinds & {operation.kind for operation in job.operations}]
    if by_work or len(wanted) < _BY_SHORT_NAME_ONLY:
        return by_work
    beginning = [job for job in jobs if _stem(job.id).startswith(wanted)]
    return (
        beginning
        or [job for job in jobs if wanted in _stem(job.id)]
        or [job for job in jobs if wanted in _stem(job.title)]
    )
