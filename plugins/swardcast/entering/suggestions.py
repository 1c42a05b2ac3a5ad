"""What to offer to a manager who only wants to press Enter: the kind of entry, the job, the surfaces."""

from __future__ import annotations

from swardcast.entering.job_words import candidates
from swardcast.entering.places import phrase_for
from swardcast.entering.standing import Standing
from swardcast.records.plan import Job
from swardcast.records.standing import morning_of

__all__ = ["held_up_in_words", "job_offered", "kind_offered", "surfaces_offered"]


def kind_offered(standing: Standing) -> str:
    """Tell the kind of entry that most likely comes next.

    Args:
        standing: how the jobs stand now.

    Returns:
        The morning entry until there is one today; then the end of work that is under way, its resumption where it is
        held up, the start of work that is due; else what can be seen of healing work; else a note.
    """
    today = standing.at.date()
    if morning_of(standing.entries, today) is None:
        return "morning"
    if any(standing.is_in_hand(job.id) for job in standing.jobs):
        return "done"
    if candidates(standing, "resumed"):
        return "resumed"
    to_start = (standing.facts[job.id] for job in candidates(standing, "started"))
    if any(facts.starts <= today and facts.put_off is None for facts in to_start):
        return "started"
    return "seen" if candidates(standing, "normal") else "note"


def job_offered(standing: Standing, word: str) -> str:
    """Tell the job that a step most likely means.

    Args:
        standing: how the jobs stand.
        word: the step.

    Returns:
        A job's id, or "" when no job can take the step.
    """
    fitting = candidates(standing, word)
    return fitting[0].id if fitting else ""


def surfaces_offered(standing: Standing, job: Job, word: str) -> str:
    """Tell the surfaces that a step of a job most likely means.

    Args:
        standing: how the jobs stand.
        job: the job.
        word: the step.

    Returns:
        A phrase such as "greens 4 to 6", or "" when no surface is likelier than the others.
    """
    usual = standing.usual(job.id, word)
    return phrase_for(usual, standing.records.surfaces) if usual else ""


def held_up_in_words(standing: Standing, job: Job) -> str:
    """Tell where a job is held up, to choose from.

    Args:
        standing: how the jobs stand.
        job: the job.

    Returns:
        Such as "Held up: greens 12 to 18", or "" when it is held up nowhere.
    """
    held = standing.able(job.id, "resumed")
    return f"Held up: {phrase_for(held, standing.records.surfaces)}" if held else ""
