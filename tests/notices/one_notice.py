"""The notice of a club with a single job, and a part of it."""

from __future__ import annotations

from swardcast.compose import compose_bulletin
from swardcast.notices.notice import Notice, Section
from swardcast.records.plan import Part
from tests.outlook.small_club import SmallClub, moment


def notice_of(club: SmallClub, day: str, time: str = "18:00") -> Notice:
    """The club's one notice at a moment of 2027: "06-01" is the first of June."""
    (notice,) = compose_bulletin(club.records(), moment(day, time)).notices
    return notice


def part_of(notice: Notice, part: Part) -> Section:
    """The one section of that part."""
    (found,) = (section for section in notice.sections if section.part is part)
    return found
