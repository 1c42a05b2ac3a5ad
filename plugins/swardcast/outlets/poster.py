"""A poster for each notice: one page of A4 or US Letter, the headline and the short answer readable at two metres.

The essentials always stand there as a whole: headline, short answer, a row on today or on where, the product label's
words with their caution, the first of the other cautions, the short address with its code, whom to ask, the moment it
holds for, the club. The rest stands there while there is room and falls away as a whole, never in part: first the
manager's own words, the last paragraph first; then the rows, down to three; the further cautions, the last first, down
to two; then the rows down to one and the cautions to the first; then the last row, if it is neither on today nor on
where. If the essentials are still too much, or a word is longer than a line, the type gets a step smaller, and what
falls away begins anew.

Rows are those of "Day by day", and where the work is. First stands how things are today: what is done, what goes on,
when what is closed reopens; then where; then the rest. Of the rest the longest falls first; then where; then of today's
the first, so that the reopening stands longest. What the headline or the short answer has said is no row. The manager's
opening words are about work to come or going on: once it is done the notice has them no more at its head.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from importlib.resources import files
from typing import Final

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin
from swardcast.language.measures import System, system_of
from swardcast.language.sentences import paragraphs_of
from swardcast.language.voice import capital
from swardcast.notices.notice import Notice
from swardcast.outlets.address_code import Keep, address_code
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.poster_fit import FULL_SCALE, SCALES, Block, Style, fits, headline_size
from swardcast.outlets.rendering import rendered
from swardcast.outlets.short_addresses import short_address
from swardcast.records.club import Contact
from swardcast.records.plan import Part

__all__ = ["STYLE_PATH", "Poster", "poster_artifacts", "poster_of"]

STYLE_PATH: Final = "poster.css"

Rows = tuple[tuple[str, str], ...]

# At 2 m a letter of 24 points, whose capitals are 6 mm high, is seen under 10 minutes of arc: eyes that see half as
# sharply as the usual ones (6/12) read it, since the smallest letter that those read is 5 minutes high (H. Snellen,
# Optotypi ad visum determinandum, 1862). That a poster is read from 2 m, and closer for the rest, is judgement.
_CLUB: Final = Style(size_pt=16, line=1.2, after_pt=12, bold=True)
_ANSWER: Final = Style(size_pt=25, line=1.2, after_pt=11)
_ROW: Final = Style(size_pt=24, line=1.15, after_pt=4)
_HEADING: Final = Style(size_pt=16, line=1.2, after_pt=3, bold=True)
_CARE: Final = Style(size_pt=16, line=1.2, after_pt=3)
_CARE_LABEL: Final = Style(size_pt=16, line=1.2, after_pt=3, bold=True)
_OWN: Final = Style(size_pt=18, line=1.2, after_pt=5)
_FOOT: Final = Style(size_pt=14, line=1.2, after_pt=3, width=0.68)
_ADDRESS: Final = Style(size_pt=21, line=1.15, after_pt=5, bold=True, width=0.68)
_SOURCE: Final = Style(size_pt=8, line=1.2)
_MOST_WORDS_OF_WHERE: Final = 60  # some ten lines; a longer list is left to the notice: judgement
_GAPS_PT: Final = 46  # lines and spaces between the parts
_CODE_PT: Final = 44 * 72 / 25.4  # the code is 44 mm high and does not shrink


@dataclass(frozen=True, slots=True, kw_only=True)
class Poster:
    """What stands on a poster.

    Args:
        own_words: paragraphs of the manager's.
        today: rows on how things are today, as (name, value).
        where: the row on where the work is, or none.
        days: the other rows of "Day by day"; a paragraph of the manager's has no name.
        label: what the manager typed from product labels, and the usual caution that goes with it.
        cautions: cautions.
        care_heading: the heading of label and cautions, or "".
        headline_pt: size of the headline at full scale.
        scale: per cent of the full size of the type.
    """

    own_words: tuple[str, ...]
    today: Rows
    where: Rows
    days: Rows
    label: tuple[str, ...]
    cautions: tuple[str, ...]
    care_heading: str
    headline_pt: int
    scale: int = FULL_SCALE

    @property
    def rows(self) -> Rows:
        """All rows in their order."""
        return (*self.today, *self.where, *self.days)


def poster_of(notice: Notice, bulletin: Bulletin) -> Poster:
    """Choose what stands on a poster, and how large.

    Args:
        notice: the notice.
        bulletin: its bulletin.

    Returns:
        The fullest choice that fits one page in type that is read at two metres; else in type as large as may be.
    """
    choices = list(_ever_shorter(_fullest(notice, bulletin)))
    foot = _foot(notice, bulletin)
    for scale in SCALES:
        for choice in choices:
            sized = replace(choice, scale=scale)
            if _fits(sized, notice, bulletin, foot):
                return sized
    return replace(choices[-1], scale=SCALES[-1])


def _fullest(notice: Notice, bulletin: Bulletin) -> Poster:
    voice = bulletin.voice
    sections = {section.part: section for section in notice.sections}
    days, care = sections.get(Part.DAY_BY_DAY), sections.get(Part.TAKE_CARE)
    points = care.points if care is not None else ()
    of_all_labels = voice.say("caution-label")
    of_label = [point for point in points if point.source == notice.planned_in or point.text == of_all_labels]
    added = _paragraphs(care.markdown) if care is not None else ()
    said = f"{notice.headline} {notice.short_answer}"
    facts = [fact for fact in days.facts if not _is_said(fact.value, said)] if days is not None else []
    where = voice.joined(notice.places)
    return Poster(
        own_words=_paragraphs(notice.own_words),
        today=tuple((fact.name, fact.value) for fact in facts if fact.is_of_today),
        where=((voice.name("part", Part.WHERE), capital(where)),) if _is_told(where, said) else (),
        days=(
            *((fact.name, fact.value) for fact in facts if not fact.is_of_today),
            *(("", told) for told in (_paragraphs(days.markdown) if days is not None else ())),
        ),
        label=tuple(point.text for point in of_label),
        cautions=(*(point.text for point in points if point not in of_label), *added),
        care_heading=care.heading if care is not None else "",
        headline_pt=headline_size(notice.headline),
    )


def _is_told(where: str, said: str) -> bool:
    return len(where.split()) <= _MOST_WORDS_OF_WHERE and not _is_said(where, said)


def _is_said(words: str, said: str) -> bool:
    """Whether words stand in a text as a whole: "green 1" does not stand in "green 12"."""
    return re.search(rf"(?<!\w){re.escape(words.casefold())}(?!\w)", said.casefold()) is not None


def _paragraphs(markdown: str) -> tuple[str, ...]:
    return tuple(" ".join(one.sentences) for one in paragraphs_of(markdown, markdown=True))


def _ever_shorter(poster: Poster) -> Iterator[Poster]:
    """The fullest choice first; the rule stands at the head of this module."""
    yield poster
    while poster.own_words:
        poster = replace(poster, own_words=poster.own_words[:-1])
        yield poster
    for rows, cautions in ((3, 2), (1, 1), (0, 1)):
        while len(poster.rows) > max(rows, 1 if poster.today or poster.where else 0):
            poster = _without_a_row(poster)
            yield poster
        while len(poster.cautions) > cautions:
            poster = replace(poster, cautions=poster.cautions[:-1])
            yield poster


def _without_a_row(poster: Poster) -> Poster:
    if poster.days:
        return replace(poster, days=_without_longest(poster.days))
    return replace(poster, where=()) if poster.today and poster.where else replace(poster, today=poster.today[1:])


def _without_longest(rows: Rows) -> Rows:
    lengths = [len(name) + len(value) for name, value in rows]
    longest = lengths.index(max(lengths))
    return (*rows[:longest], *rows[longest + 1 :])


def _fits(poster: Poster, notice: Notice, bulletin: Bulletin, foot: Sequence[Block]) -> bool:
    beside_the_code = [block for block in foot if block.style is not _SOURCE]
    tall = fits([*_blocks(poster, notice, bulletin), *foot], poster.scale, _GAPS_PT)
    below = [block for block in foot if block not in beside_the_code]
    return tall and fits([*_blocks(poster, notice, bulletin), *below], poster.scale, _GAPS_PT + _CODE_PT)


def _blocks(poster: Poster, notice: Notice, bulletin: Bulletin) -> list[Block]:
    headline = Style(size_pt=poster.headline_pt, line=1.1, after_pt=10, bold=True)
    told = [
        (bulletin.club.name, _CLUB),
        (notice.headline, headline),
        (notice.short_answer, _ANSWER),
        *((paragraph, _OWN) for paragraph in poster.own_words),
        *((f"{name} {value}", _ROW) for name, value in poster.rows),
        *((point, _CARE_LABEL) for point in poster.label),
        *((point, _CARE) for point in poster.cautions),
    ]
    if poster.label or poster.cautions:
        told.append((poster.care_heading, _HEADING))
    return [Block(text=text, style=style) for text, style in told]


def _foot(notice: Notice, bulletin: Bulletin) -> list[Block]:
    voice, asked = bulletin.voice, _asked(bulletin.club.contact)
    told = [
        (voice.say("poster-whole-notice"), _FOOT),
        (_shown(short_address(notice.id, bulletin.club)), _ADDRESS),
        *([(voice.say(asked[0], office=bulletin.club.contact.office, way=asked[1]), _FOOT)] if asked else []),
        (voice.say("poster-as-it-stood", moment=_moment(bulletin)), _FOOT),
    ]
    for source in bulletin.weather_sources:
        values = {"name": source.name, "credit": source.credit, "licence": source.licence}
        told.append((voice.say("site-weather-source", use=source.used_for, **values), _SOURCE))
    return [Block(text=text, style=style) for text, style in told]


def _asked(contact: Contact) -> tuple[str, str, str] | None:
    """How to ask, as (phrase, what is read, link): by telephone if there is one, for paper has no links."""
    if contact.telephone:
        return "poster-ask.by-telephone", contact.telephone_on_one_line, contact.telephone_link
    return ("poster-ask", contact.email, f"mailto:{contact.email}") if contact.email else None


def _moment(bulletin: Bulletin) -> str:
    """The moment with its year: a poster may hang for long."""
    return bulletin.voice.on(date(bulletin.as_of.year + 1, 1, 1)).moment(bulletin.as_of)


def _shown(address: str) -> str:
    """An address as people type it."""
    return address.removeprefix("https://")


def poster_artifacts(bulletin: Bulletin, graph: OpenGraph, keep: Keep = lambda _, draw: draw()) -> tuple[Artifact, ...]:
    """Write the poster of each notice.

    Args:
        bulletin: the bulletin.
        graph: what a service shows of a pasted link: the same as of the notice's own page.
        keep: gives codes that were drawn before, or draws them.

    Returns:
        Files "notices/<id>/poster.html" that need no script, and the style sheet that they share.
    """
    style = (files("swardcast") / "outlets" / "static" / STYLE_PATH).read_bytes()
    posters = (
        Artifact(
            path=f"notices/{notice.id}/poster.html",
            media_type="text/html; charset=utf-8",
            data=_render(notice, bulletin, graph, keep).encode("utf-8"),
        )
        for notice in bulletin.notices
    )
    return (Artifact(path=STYLE_PATH, media_type="text/css; charset=utf-8", data=style), *posters)


def _render(notice: Notice, bulletin: Bulletin, graph: OpenGraph, keep: Keep) -> str:
    voice, address = bulletin.voice, short_address(notice.id, bulletin.club)
    return rendered(
        "poster.html",
        voice,
        notice=notice,
        poster=poster_of(notice, bulletin),
        club=bulletin.club,
        sources=bulletin.weather_sources,
        properties=graph.of_notice(notice),
        style=f"../../{STYLE_PATH}",
        code=address_code(address, keep),
        address=address,
        shown=_shown(address),
        asked=_asked(bulletin.club.contact),
        moment=_moment(bulletin),
        paper="letter" if system_of(voice) is System.CUSTOMARY else "A4",
    )
