"""The weekly e-mail: every current notice in short, as long as there is room for it.

A caution that several notices have stands once, at its end. Where there is not room for all, what goes on comes first,
then what is over since a week, then what is to come, the nearest before: the first of them in short, with their
cautions; the next in a line with its address, which leads to the cautions; of the rest their number. Work that was
planned for days now past, and of which no report came, stands last: in a line if it has no cautions of its own, or once
a week has gone since the last of these days. It says nothing new, and a label of a day long past warns of nothing.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from swardcast.compose import Bulletin
from swardcast.language.voice import Voice
from swardcast.notices.ends import has_no_day
from swardcast.notices.notice import Notice
from swardcast.notices.spans import last_day_of_work, told_before
from swardcast.notices.words import contact_in_words
from swardcast.outlets.email_content import (
    Email,
    EmailLink,
    EmailPart,
    current_notices,
    how_it_stood,
    no_start_reported,
    one_line,
    status_link,
)
from swardcast.outlets.short_addresses import short_address
from swardcast.outlets.still_told import IN_EMAILS
from swardcast.outlook.states import Work
from swardcast.records.club import Club
from swardcast.records.plan import Part

__all__ = ["weekly_email", "weekly_email_within"]

_FOR_THE_NEAREST: Final = 0.6
"""Least share of the room for notices in short, before others have a line: judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Week:
    """How the current notices are told.

    Args:
        groups: all of them, under their headings.
        in_short: those told in short.
        in_a_line: those told in a line.
    """

    groups: Sequence[tuple[str, list[Notice]]]
    in_short: frozenset[str]
    in_a_line: frozenset[str]

    @property
    def untold(self) -> int:
        """How many are only counted."""
        return sum(len(some) for _, some in self.groups) - len(self.in_short) - len(self.in_a_line)


def weekly_email(bulletin: Bulletin) -> Email:
    """Put all current notices into one e-mail, each in short.

    Args:
        bulletin: the bulletin.

    Returns:
        The e-mail, however long it is.
    """
    groups = current_notices(bulletin)
    everything = frozenset(notice.id for _, some in groups for notice in some)
    return _email(_Week(groups=groups, in_short=everything, in_a_line=frozenset()), bulletin)


def weekly_email_within(bulletin: Bulletin, size_of: Callable[[Email], int], room: int) -> Email:
    """Put the current notices into one e-mail that is not too large.

    Args:
        bulletin: the bulletin.
        size_of: gives the size of an e-mail.
        room: the size that it has to stay below.

    Returns:
        The e-mail.
    """
    whole = weekly_email(bulletin)
    if size_of(whole) < room:
        return whole
    groups = current_notices(bulletin)
    ranked = _nearest_first(groups, bulletin)

    def told(in_short: int, in_a_line: int) -> Email:
        first, next_ = ranked[:in_short], ranked[in_short : in_short + in_a_line]
        return _email(_Week(groups=groups, in_short=frozenset(first), in_a_line=frozenset(next_)), bulletin)

    with_all_named = _most(len(ranked), lambda count: size_of(told(count, len(ranked) - count)) < room)
    in_short = _most(len(ranked), lambda count: size_of(told(count, 0)) < room * _FOR_THE_NEAREST)
    if with_all_named > in_short:
        return told(with_all_named, len(ranked) - with_all_named)
    in_a_line = _most(len(ranked) - in_short, lambda count: size_of(told(in_short, count)) < room)
    return told(in_short, in_a_line)


def _most(count: int, fits: Callable[[int], bool]) -> int:
    """The greatest number up to a count that fits, or 0."""
    return max(0, bisect_left(range(count + 1), 1, key=lambda number: int(not fits(number))) - 1)


def _nearest_first(groups: Sequence[tuple[str, list[Notice]]], bulletin: Bulletin) -> list[str]:
    """What is to come goes behind all else; groups are in the order of their days."""
    jobs = bulletin.outlook.jobs
    names = [notice.id for _, some in groups for notice in some]
    return sorted(names, key=lambda name: jobs[name].work is Work.PLANNED)


def _email(week: _Week, bulletin: Bulletin) -> Email:
    voice = bulletin.voice
    title = voice.say("email-weekly-title", day=voice.day(bulletin.as_of.date()))
    return Email(
        folder="",
        subject=one_line(title),
        title=title,
        typed="",
        written_at=bulletin.as_of,
        lead=voice.say("email-weekly-lead") if week.groups else voice.say("email-weekly-nothing"),
        own_words="",
        parts=tuple(_parts(week, bulletin)),
        links=(status_link(bulletin),),
        foot=(_questions(bulletin.club, voice), how_it_stood(bulletin)),
    )


def _parts(week: _Week, bulletin: Bulletin) -> Iterable[EmailPart]:
    voice = bulletin.voice
    told = Counter(
        caution
        for _, some in week.groups
        for notice in some
        if notice.id in week.in_short and not _is_long_silent(notice, bulletin)
        for caution, shared in _cautions(notice).items()
        if shared
    )
    shared = tuple(caution for caution, times in told.items() if times > 1)
    for heading, some in week.groups:
        yield from _group(heading, some, week, shared, bulletin)
    if week.untold:
        address = f"{bulletin.club.site}/notices/"
        more = voice.say("email-more-notices", count=week.untold, address=address)
        yield EmailPart(heading=voice.say("site-more-notices"), links=(EmailLink(text=more, address=address),))
    if shared:
        yield EmailPart(heading=voice.name("part", Part.TAKE_CARE), points=shared)


def _group(
    heading: str, some: Sequence[Notice], week: _Week, shared: Sequence[str], bulletin: Bulletin
) -> Iterable[EmailPart]:
    voice = bulletin.voice
    in_short = [
        notice for notice in some if notice.id in week.in_short and not _needs_no_more(notice, shared, bulletin)
    ]
    told = {notice.id for notice in in_short}
    lines = tuple(
        EmailLink(text=voice.say("email-name-at", name=notice.headline, address=address), address=address)
        for notice in some
        if notice.id in week.in_short | week.in_a_line and notice.id not in told
        for address in (short_address(notice.id, bulletin.club),)
    )
    if in_short or lines:
        yield EmailPart(heading=heading, links=() if in_short else lines)
    for notice in in_short:
        address = short_address(notice.id, bulletin.club)
        yield EmailPart(
            heading=notice.headline,
            typed=notice.title,
            level=3,
            paragraphs=tuple(_in_short(notice, bulletin)),
            points=tuple(caution for caution in _cautions(notice) if caution not in shared),
            links=(EmailLink(text=voice.say("email-notice-at", address=address), address=address),),
        )
    if in_short and lines:
        yield EmailPart(heading=voice.say("email-in-a-line"), level=3, links=lines)


def _needs_no_more(notice: Notice, shared: Sequence[str], bulletin: Bulletin) -> bool:
    """Whether a line says all that there is: no start was reported, and no caution would, or need, stand beneath."""
    silent = no_start_reported(bulletin.outlook.jobs[notice.id], bulletin.voice)
    return silent and (_is_long_silent(notice, bulletin) or all(caution in shared for caution in _cautions(notice)))


def _is_long_silent(notice: Notice, bulletin: Bulletin) -> bool:
    """Whether nobody reported a start, and a week has gone since the work was to be finished.

    Until then it may only be that nobody made the entry, and a label would count.
    """
    outlook = bulletin.outlook.jobs[notice.id]
    planned = last_day_of_work(outlook)
    last = outlook.starts if planned is None else planned.allow_until or outlook.starts
    return no_start_reported(outlook, bulletin.voice) and bulletin.as_of.date() - last > IN_EMAILS


def _in_short(notice: Notice, bulletin: Bulletin) -> Iterable[str]:
    """The short answer, which leads to the label's words where they stand here; and the day that it was moved from."""
    voice, outlook = bulletin.voice, bulletin.outlook.jobs[notice.id]
    there, below = voice.say("answer-label"), voice.say("email-label-below")
    yield " ".join(below if sentence.text == there else sentence.text for sentence in notice.answer)
    before = told_before(bulletin.stories[notice.id], outlook)
    if before is not None and outlook.work is Work.PLANNED and not has_no_day(outlook, voice):
        yield voice.say("email-moved-from", day=voice.day(before))


def _cautions(notice: Notice) -> dict[str, bool]:
    """The words of its label, the cautions and whatever stands beside them; and whether others may have the same.

    What comes from the plan belongs to this job alone: a label is read where its product is used.
    """
    parts = [section for section in notice.sections if section.part is Part.TAKE_CARE]
    return {point.text: point.source != notice.planned_in for section in parts for point in section.points}


def _questions(club: Club, voice: Voice) -> str:
    ways = contact_in_words(club.contact, voice)
    if not ways:
        return voice.say("ask-office", office=club.contact.office)
    return voice.say("ask-office-at", office=club.contact.office, ways=ways)
