"""When surfaces open again that stay closed after their work, in a sentence: sooner than back to normal."""

from __future__ import annotations

from swardcast.notices.hours import reopening_in_words
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Sentence
from swardcast.outlook.job_ranges import open_works
from swardcast.outlook.play import OPEN
from swardcast.outlook.states import Milestone, SurfaceWork

__all__ = ["opening", "shut_after_the_work", "stays_shut"]


def stays_shut(matter: Matter) -> bool:
    """Tell whether surfaces stay out of play for days after their work, until an entry opens them.

    What lasts, such as a temporary green, is over once they open: there the end says it.

    Args:
        matter: what the notice is made of.

    Returns:
        Whether they do.
    """
    job = matter.job
    return job.reopens_after is not None and not job.lasts and job.while_working not in OPEN


def shut_after_the_work(matter: Matter) -> list[SurfaceWork]:
    """List the surfaces that members wait for.

    Args:
        matter: what the notice is made of.

    Returns:
        Those still to be worked on, or worked on and not opened; none where they do not stay shut.
    """
    if not stays_shut(matter):
        return []
    works = open_works(matter.outlook.surfaces)
    return [work for work in works if work.done_at is None or not work.dates[Milestone.REOPENING].is_fact]


def opening(matter: Matter, *, briefly: bool = False) -> Sentence | None:
    """Say when the last of them opens again, in the words of "Day by day".

    Args:
        matter: what the notice is made of; not called off.
        briefly: whether to leave out the weekdays.

    Returns:
        The sentence, or None where nothing stays shut or no date of the work holds.
    """
    waiting = shut_after_the_work(matter)
    if not waiting or matter.has_no_day:
        return None
    given = [work.dates[Milestone.REOPENING] for work in waiting]
    if any(one.likely is None for one in given):
        return None
    words = reopening_in_words(waiting, matter.as_of, matter.voice, is_closed=True, briefly=briefly)
    is_past = all(one.is_past(matter.voice.near) for one in given)
    times = 1 if is_past else len({(one.early, one.likely, one.allow_until) for one in given})
    source = matter.sum_of(Milestone.REOPENING)
    return matter.say("answer-opening", source=source, date=words, times=times)
