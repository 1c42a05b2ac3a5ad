"""A notice as plain text, from the notice itself: what golden files hold, to be read aloud."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from typing import Final

from swardcast.notices.notice import Event, Notice, Section, text_of

__all__ = ["notice_as_text"]

_WIDTH: Final = 110
_OWN: Final = "| "
"""Stands before each line of the manager's own words."""


def notice_as_text(notice: Notice) -> str:
    """Lay a notice out in the order in which members read it, wrapped, with the blanks that it has."""
    lines = [*_wrapped(notice.headline), "=" * min(_WIDTH, len(notice.headline))]
    lines += [*_wrapped(f"[{notice.work}; revision {notice.revision}]"), "", *_wrapped(notice.short_answer)]
    if notice.own_words:
        lines += ["", *_own(notice.own_words)]
    if notice.note is not None:
        lines += ["", *_event(notice.note)]
    for section in notice.sections:
        lines += _section(section)
    if notice.sign_off:
        lines += ["", *_wrapped(notice.sign_off)]
    if notice.events:
        lines += ["", "What happened", "-------------"]
        for event in notice.events:
            lines += _event(event)
    if notice.before_the_work:
        lines += ["", "[folded] Before the work", *_own(notice.before_the_work)]
    return "\n".join(lines).replace("\u00a0", " ") + "\n"


def _section(section: Section) -> Iterator[str]:
    yield from ("", section.heading, "-" * len(section.heading))
    pieces = [_wrapped(text_of(paragraph)) for paragraph in section.paragraphs]
    if section.facts:
        pieces.append([line for fact in section.facts for line in _wrapped(f"{fact.name}: {fact.value}", "  ")])
    if section.points:
        pieces.append([line for point in section.points for line in _wrapped(f"* {point.text}", "  ")])
    if section.markdown:
        pieces.append(_own(section.markdown))
    if section.link or section.kinds:
        pages = [section.link, *(name for _, name in section.kinds)]
        pieces.append(_wrapped(f"[links: {', '.join(filter(None, pages))}]"))
    for number, piece in enumerate(pieces):
        yield from ([""] if number else []) + piece


def _event(event: Event) -> Iterator[str]:
    withdrawn = "[withdrawn] " if event.withdrawn else ""
    yield from _wrapped(f"* {event.when}: {withdrawn}{event.sentence}", "  ")
    if event.markdown:
        yield from _own(event.markdown, "  ")


def _own(markdown: str, indent: str = "") -> list[str]:
    """The manager's lines as typed."""
    return [f"{indent}{_OWN}{line}".rstrip() for line in markdown.strip().splitlines()]


def _wrapped(text: str, further: str = "") -> list[str]:
    """Blanks inside a line stay as they are, so that two of them are seen."""
    return textwrap.wrap(text, _WIDTH, subsequent_indent=further, break_long_words=False, break_on_hyphens=False)
