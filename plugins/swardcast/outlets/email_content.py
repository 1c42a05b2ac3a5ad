"""What an e-mail says, before it is HTML or plain text: both are written from the same parts.

A notice's e-mail leaves out why, the numbers and how the date is worked out: the address in it leads there; and the
manager's opening words once the work is done, since they are about work to come or going on. Cautions and the words of
a label are never left out. `email_week.py` has the weekly one.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from typing import Final

from swardcast.compose import Bulletin
from swardcast.language.voice import Voice
from swardcast.notices.ends import has_no_day
from swardcast.notices.notice import Fact, Notice, Section, text_of
from swardcast.outlets.short_addresses import short_address
from swardcast.outlets.still_told import IN_EMAILS, is_still_told
from swardcast.outlets.unbroken import unbroken
from swardcast.outlook.states import JobOutlook, Work
from swardcast.records.plan import Part

__all__ = [
    "Email",
    "EmailLink",
    "EmailPart",
    "current_notices",
    "email_of_notice",
    "how_it_stood",
    "no_start_reported",
    "one_line",
    "status_link",
]

_PARTS: Final = (
    Part.DAY_BY_DAY,
    None,  # competitions and visitors' days, which belong to it
    Part.WHERE,
    Part.WHAT_CHANGED,
    Part.WHAT_YOU_CAN_DO,
    Part.THE_RULES,
    Part.TAKE_CARE,
    Part.WHO_DECIDES,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class EmailLink:
    """A line that ends with, or holds, a whole address."""

    text: str
    address: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EmailPart:
    """A piece under a heading; its pieces stand in the order of the fields.

    Args:
        heading: the heading.
        typed: what was typed of it, or "".
        level: 2, or 3 for one of several notices.
        paragraphs: paragraphs.
        facts: names and values.
        points: a list of sentences.
        markdown: the manager's own Markdown, or "".
        links: lines with an address.
    """

    heading: str
    typed: str = ""
    level: int = 2
    paragraphs: tuple[str, ...] = ()
    facts: tuple[Fact, ...] = ()
    points: tuple[str, ...] = ()
    markdown: str = ""
    links: tuple[EmailLink, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Email:
    """An e-mail.

    Args:
        folder: where it lies inside the site: "notices/<id>/", or "" for the weekly one.
        subject: the subject, on one line.
        title: its headline.
        typed: what was typed of it, or "".
        written_at: the moment that it is about.
        lead: the first paragraph.
        own_words: the manager's Markdown after it, or "".
        parts: its parts.
        links: where to read more.
        foot: its last lines.
    """

    folder: str
    subject: str
    title: str
    typed: str
    written_at: datetime
    lead: str
    own_words: str
    parts: tuple[EmailPart, ...]
    links: tuple[EmailLink, ...]
    foot: tuple[str, ...]

    def without_own_words(self) -> Email:
        """The same without the manager's Markdown, for one that would grow too large."""
        ours = (part for part in self.parts if not part.markdown or part.paragraphs or part.facts or part.points)
        return replace(self, own_words="", parts=tuple(replace(part, markdown="") for part in ours))


def one_line(text: str) -> str:
    """Put a text on one line of a header: whatever breaks a line, or is no text, becomes a blank.

    Args:
        text: any text.

    Returns:
        The text with single blanks. "=?" begins an encoded word (RFC 2047, section 2): it is parted, since a program
        would decode what somebody typed.
    """
    return " ".join(unbroken(text).split()).replace("=?", "= ?")


def current_notices(bulletin: Bulletin) -> list[tuple[str, list[Notice]]]:
    """Sort out what a member should know of now: going on, to come, over since a week, and planned for days now past.

    Args:
        bulletin: the bulletin.

    Returns:
        Notices under their headings, those that begin first before; no heading without any.
    """
    now: list[Notice] = []
    coming: list[Notice] = []
    over: list[Notice] = []
    silent: list[Notice] = []
    jobs = bulletin.outlook.jobs
    for notice in sorted(bulletin.notices, key=lambda notice: (jobs[notice.id].starts, notice.id)):
        work = jobs[notice.id].work
        if no_start_reported(jobs[notice.id], bulletin.voice):
            silent.append(notice)
        elif work is Work.PLANNED:
            coming.append(notice)
        elif not work.is_over:
            now.append(notice)
        elif is_still_told(notice, work, bulletin.as_of, for_so_long=IN_EMAILS):
            over.append(notice)
    say = bulletin.voice.say
    groups = [(say("site-going-on"), now), (say("site-to-come"), coming), (say("site-over"), over)]
    groups.append((say("email-no-start-reported"), silent))
    return [(heading, some) for heading, some in groups if some]


def no_start_reported(outlook: JobOutlook, voice: Voice) -> bool:
    """Tell whether the day of planned work is over and no entry says that it began.

    Args:
        outlook: how the job stands.
        voice: the day of the reader.

    Returns:
        Whether it is so; False of work that was postponed to no day, which a report says.
    """
    return has_no_day(outlook, voice) and not outlook.is_put_off


def email_of_notice(notice: Notice, bulletin: Bulletin) -> Email:
    """Put a notice into an e-mail.

    Args:
        notice: the notice.
        bulletin: the bulletin that has it.

    Returns:
        The e-mail.
    """
    voice = bulletin.voice
    address = short_address(notice.id, bulletin.club)
    read_on = EmailLink(text=voice.say("email-read-on", address=address), address=address)
    return Email(
        folder=f"notices/{notice.id}/",
        subject=one_line(voice.say("email-subject", headline=notice.headline)),
        title=notice.headline,
        typed=notice.title,
        written_at=bulletin.as_of,
        lead=notice.short_answer,
        own_words=notice.own_words,
        parts=(*_note(notice, voice), *(_part(section) for section in notice.sections if section.part in _PARTS)),
        links=(read_on, status_link(bulletin)),
        foot=(*([notice.sign_off] if notice.sign_off else []), how_it_stood(bulletin)),
    )


def _note(notice: Notice, voice: Voice) -> tuple[EmailPart, ...]:
    """The manager's newest note, as the notice has it at its head."""
    if notice.note is None:
        return ()
    note = notice.note
    return (EmailPart(heading=voice.say("notice-note-of", when=note.when), markdown=note.markdown),)


def _part(section: Section) -> EmailPart:
    return EmailPart(
        heading=section.heading,
        paragraphs=tuple(text_of(paragraph) for paragraph in section.paragraphs),
        facts=section.facts,
        points=tuple(point.text for point in section.points),
        markdown=section.markdown,
    )


def status_link(bulletin: Bulletin) -> EmailLink:
    """Where to see what is open."""
    address = f"{bulletin.club.site}/"
    return EmailLink(text=bulletin.voice.say("email-status", address=address), address=address)


def how_it_stood(bulletin: Bulletin) -> str:
    """From whom an e-mail is, and for which moment it holds."""
    return bulletin.voice.say("email-holds", club=bulletin.club.name, moment=bulletin.voice.moment(bulletin.as_of))
