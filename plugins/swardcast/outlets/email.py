"""E-mails for the pro shop to send: one for each notice and a weekly one, as HTML, as text and as a draft.

A draft has both as alternatives, nobody that it goes to and nobody that it comes from. RFC 5322, section 3.6, asks for
From: the mail program that opens the draft puts it in, and only then it is a whole message. It has no byte that depends
on the clock: its date is the moment that it is about (section 3.6.1: when the message was complete), which sorts it to
the top of a mail program; its boundary is made of what it parts.
"""

from __future__ import annotations

from email.header import Header
from email.message import EmailMessage
from email.policy import SMTP
from email.utils import format_datetime
from hashlib import sha256
from typing import Final

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin
from swardcast.outlets.email_content import Email, email_of_notice
from swardcast.outlets.email_html import email_html
from swardcast.outlets.email_text import email_text
from swardcast.outlets.email_week import weekly_email_within

__all__ = ["LARGEST_BYTES", "email_artifacts", "weekly_artifacts"]

_SUBJECT_ON_A_LINE: Final = 78 - len("Subject: ")  # characters: RFC 5322, section 2.1.1

LARGEST_BYTES: Final = 100_000
"""Some mail programs cut what is longer than about this: common practice, no published source."""


def email_artifacts(bulletin: Bulletin, *, drafts: bool = False) -> tuple[Artifact, ...]:
    """Write the e-mails.

    Args:
        bulletin: the bulletin.
        drafts: whether to write drafts for mail programs beside them.

    Returns:
        Files "notices/<id>/email.html" and "email.txt" of each notice, "email.html" and "email.txt" of all current
        ones, and "email.eml" beside each where drafts are wanted.
    """
    emails = (email_of_notice(notice, bulletin) for notice in bulletin.notices)
    single = (artifact for email in emails for artifact in _artifacts(email, bulletin, drafts=drafts))
    return (*weekly_artifacts(bulletin, drafts=drafts), *single)


def weekly_artifacts(bulletin: Bulletin, *, drafts: bool = False) -> tuple[Artifact, ...]:
    """Write the e-mail of all current notices.

    Args:
        bulletin: the bulletin.
        drafts: whether to write a draft for mail programs beside it.

    Returns:
        Files "email.html" and "email.txt", and "email.eml" where a draft is wanted.
    """
    email = weekly_email_within(bulletin, lambda email: _size(_html(email, bulletin)), LARGEST_BYTES)
    return tuple(_artifacts(email, bulletin, drafts=drafts))


def _artifacts(email: Email, bulletin: Bulletin, *, drafts: bool) -> list[Artifact]:
    html = _html(email, bulletin)
    if _size(html) >= LARGEST_BYTES:
        email = email.without_own_words()  # the whole notice, to which it leads, has them
        html = _html(email, bulletin)
    text = email_text(email, bulletin.club, bulletin.voice, bulletin.weather_sources)
    files = [
        ("email.html", "text/html; charset=utf-8", html.encode("utf-8")),
        ("email.txt", "text/plain; charset=utf-8", text.encode("utf-8")),
    ]
    if drafts:
        files.append(("email.eml", "message/rfc822", _draft(email, html, text)))
    return [Artifact(path=f"{email.folder}{name}", media_type=kind, data=data) for name, kind, data in files]


def _size(html: str) -> int:
    return len(html.encode("utf-8"))


def _html(email: Email, bulletin: Bulletin) -> str:
    return email_html(email, bulletin.club, bulletin.voice, bulletin.weather_sources)


def _draft(email: Email, html: str, text: str) -> bytes:
    message = EmailMessage(policy=SMTP)
    message["Date"] = format_datetime(email.written_at)
    message["X-Unsent"] = "1"  # programs that know it open the message for writing: common practice, no standard
    message.set_content(text, cte="quoted-printable")
    message.add_alternative(html, subtype="html", cte="quoted-printable")  # the last is the richest: RFC 2046, 5.1.4
    message.set_boundary(f"swardcast-{sha256(f'{text}{html}'.encode()).hexdigest()[:32]}")
    return b"Subject: " + _subject(email.subject) + b"\r\n" + bytes(message)


def _subject(line: str) -> bytes:
    """A subject as it stands in a header, folded where it is long or has letters beyond ASCII (RFC 2047).

    The policies of `email` fold such lines too, but lose blanks between words (Python 3.11); `Header` keeps them.
    """
    if line.isascii() and len(line) <= _SUBJECT_ON_A_LINE:
        return line.encode("ascii")
    return Header(line, "utf-8", header_name="Subject", maxlinelen=76).encode(linesep="\r\n").encode("ascii")
