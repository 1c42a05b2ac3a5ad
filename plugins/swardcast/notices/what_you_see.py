"""The piece "What you will see" of a notice: what the work leaves in sight, in words of its phase alone."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from swardcast.notices.kinds import said_of_kind
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Section
from swardcast.outlook.states import Work
from swardcast.records.club import Tone

__all__ = ["what_you_see"]

_NOTICED_SHOWN: Final = 3  # brushing and rolling after the rest would only tire the reader
_AT_FIRST_DAYS: Final = 7
"""Days after the end of the work for which the words on what is seen at first are read: judgement."""


def what_you_see(matter: Matter) -> Section | None:
    """Say what there is to see of the work.

    Args:
        matter: what the notice is made of.

    Returns:
        A piece that belongs to "Day by day"; what is seen at first until a week after the work, or after the last
        report where there are no more, then what may still be seen; None once the work is over or called off, or should
        have healed.
    """
    if matter.is_over or matter.is_past_its_end:
        return None
    kinds = matter.kinds if matter.records.club.tone is Tone.FULL else matter.kinds[:1]
    heading, what = ("heading-you-will-see", "see") if _is_at_first(matter) else ("heading-you-see-now", "still")
    seen = (said_of_kind(kind, what, matter.surface, matter.voice) for kind in kinds[:_NOTICED_SHOWN])
    return Section(heading=matter.voice.say(heading), points=tuple(dict.fromkeys(seen)))


def _is_at_first(matter: Matter) -> bool:
    known = [work.done_at.date() for work in matter.outlook.surfaces if work.done_at is not None]
    silence = matter.outlook.unreported
    if silence is not None:
        known.append(silence.last_report.date())
    elif matter.outlook.work is not Work.HEALING or not known:
        return True
    return matter.voice.near <= max(known) + timedelta(days=_AT_FIRST_DAYS)
