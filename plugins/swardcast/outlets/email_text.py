"""An e-mail as plain text: everything that its HTML says, in lines of at most 72 characters."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.outlets.email_content import Email, EmailPart
from swardcast.outlets.own_words import own_words_for_mail
from swardcast.outlets.plain_text import plain_lines
from swardcast.records.club import Club
from swardcast.records.weather import WeatherSource

__all__ = ["email_text"]

_WIDTH: Final = 72
"""RFC 3676, section 4.2, keeps lines of plain text below 78 so that quoted ones fit; 72 is common practice."""


def email_text(email: Email, club: Club, voice: Voice, sources: Sequence[WeatherSource]) -> str:
    """Write an e-mail as plain text.

    Args:
        email: the e-mail.
        club: the club.
        voice: the language and the day of the reader.
        sources: services whose licences ask to be named.

    Returns:
        Lines, the last with its end; an address is never broken.
    """
    lines = [*_wrapped(email.title), "=" * min(len(email.title), _WIDTH), *_paragraphs([email.lead])]
    page = f"{club.site}/{email.folder}"
    lines += _own(email.own_words, page)
    for part in email.parts:
        lines += _part(part, page, voice)
    lines += ["", "-" * _WIDTH]
    lines += _paragraphs([*(link.text for link in email.links), *email.foot, *(_source(one, voice) for one in sources)])
    return "\n".join(lines) + "\n"


def _part(part: EmailPart, page: str, voice: Voice) -> Iterator[str]:
    rule = "=" if part.level == 2 and not _has_content(part) else "-"  # noqa: PLR2004 - a heading over notices
    yield from ("", "", *_wrapped(part.heading), rule * min(len(part.heading), _WIDTH))
    yield from _paragraphs(part.paragraphs)
    for fact in part.facts:
        yield ""
        yield from _wrapped(voice.say("site-fact", name=fact.name, value=capital(fact.value)), "  ")
    if part.points:
        yield ""
    for point in part.points:
        yield from _wrapped(f"* {point}", "  ")
    yield from _own(part.markdown, page)
    yield from _paragraphs(link.text for link in part.links)


def _has_content(part: EmailPart) -> bool:
    return bool(part.paragraphs or part.facts or part.points or part.markdown or part.links)


def _source(source: WeatherSource, voice: Voice) -> str:
    name = voice.say("email-name-at", name=source.name, address=source.address)
    licence = voice.say("email-name-at", name=source.licence, address=source.licence_address)
    return voice.say("site-weather-source", use=source.used_for, name=name, credit=source.credit, licence=licence)


def _paragraphs(texts: Iterable[str]) -> Iterator[str]:
    for text in texts:
        yield ""
        yield from _wrapped(text)


def _own(markdown: str, page: str) -> list[str]:
    """The manager's words without the marks of Markdown."""
    return ["", *plain_lines(own_words_for_mail(markdown, page), _WIDTH)] if markdown else []


def _wrapped(text: str, further: str = "") -> list[str]:
    return textwrap.wrap(text, _WIDTH, subsequent_indent=further, break_long_words=False, break_on_hyphens=False)
