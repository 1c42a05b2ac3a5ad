"""What work that is held up may shut on the day on which it may go on."""

from __future__ import annotations

from datetime import timedelta

from swardcast.language.voice import Voice, slug_of
from swardcast.notices.words import places_in_words
from swardcast.outlook.play import OPEN
from swardcast.outlook.reopening import HeldUp
from swardcast.outlook.states import JobOutlook, Work

__all__ = ["hope_to_go_on"]


def hope_to_go_on(outlook: JobOutlook, voice: Voice) -> str:
    """Say what may be shut on the day before which nobody works: the rest of what is begun, and what the plan has then.

    Args:
        outlook: how the job stands.
        voice: the language and the day of the reader.

    Returns:
        A sentence; "" where no entry gives such a day, where the surfaces stay in play, or once nobody reports.
    """
    held = [work for work in outlook.surfaces if work.work is Work.HELD_UP and work.done_at is None]
    days = [work.hours.no_work_before for work in held if isinstance(work.hours, HeldUp)]
    given = [day for day in days if day is not None and day > voice.near]
    if not given or outlook.unreported is not None or outlook.job.while_working in OPEN:
        return ""
    day = max(given)
    due = [work for work in held if work.hours is not None or work.finish.likely == day]
    tomorrow = day == voice.near + timedelta(days=1)
    return voice.say(
        "hours-hope-to-go-on",
        day=voice.say("hours-tomorrow", day=voice.day(day)) if tomorrow else voice.say("on-day", day=voice.day(day)),
        places=places_in_words((work.surface for work in due), voice),
        play=slug_of(outlook.job.while_working),
        count=len(due),
    )
