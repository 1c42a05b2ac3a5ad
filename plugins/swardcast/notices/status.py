"""The course status in words: one sentence, what is not simply open, what comes next."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from swardcast.language.voice import Voice, capital, slug_of
from swardcast.notices.coming import ComingWork, coming_work
from swardcast.notices.hole_marks import WORST_FIRST, HoleMark, HolesAlike, hole_marks, holes_alike, shapes_of
from swardcast.notices.limits import limit_clause, limit_in_words
from swardcast.notices.next_fixture import NextFixture, next_fixtures
from swardcast.notices.notice import Fact
from swardcast.notices.play import from_other_markers, play_clause, tees_played_elsewhere
from swardcast.notices.status_lines import StatusLine, first_end, status_lines
from swardcast.outlook.states import CourseOutlook
from swardcast.outlook.story import JobStory
from swardcast.records.club import Club, Surface, SurfaceKind
from swardcast.records.fixtures import Fixture
from swardcast.records.log import FROST_DELAY
from swardcast.records.plan import Play
from swardcast.records.standing import counts_until

__all__ = [
    "CourseStatus",
    "NoteInWords",
    "compose_status",
]


_SHOWN_AT_FIRST: Final = 3
"""Work to come that stands on the status page: judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteInWords:
    """A note to members: when, who says so as typed, and the manager's own Markdown."""

    when: str
    by: str
    markdown: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseStatus:
    """The course status page in words.

    Args:
        sign_key: the sign of the whole course, as a name for styles.
        sentence: the whole course in one sentence, a frost delay before it.
        opening: the first part of the same words; it is set larger.
        rest: what follows it, or "".
        holds_for: the moment for which that was said, in words.
        entered_at: the moment of the latest morning entry, or None.
        fresh: whether that still counts.
        counts_until: the moment from which it no longer does, or None where it is so already.
        once_over: what is said of the course from then on.
        holes_count_until: the same moment for the plan of the holes, whose words may be older.
        why: the morning entry's own remark, or "".
        words: the morning entry's own Markdown, or "".
        notes: notes on the course as a whole, newest first.
        limits: trolleys, preferred lies and so on, as decided.
        lines: what is not simply open, most important first.
        holes: every hole of the course.
        coming: what comes next.
        fixtures: the next competition or visitors' day, where it meets something.
    """

    sign_key: str
    sentence: str
    opening: str
    rest: str
    holds_for: str
    entered_at: datetime | None
    fresh: bool
    counts_until: datetime | None
    once_over: str
    holes_count_until: datetime | None
    why: str
    words: str
    notes: tuple[NoteInWords, ...]
    limits: tuple[Fact, ...]
    lines: tuple[StatusLine, ...]
    holes: tuple[HoleMark, ...]
    coming: tuple[ComingWork, ...]
    fixtures: tuple[NextFixture, ...]

    @property
    def holes_alike(self) -> tuple[HolesAlike, ...]:
        """The holes, those together of which the same is said."""
        return holes_alike(self.holes)

    @property
    def hole_shapes(self) -> tuple[str, ...]:
        """The signs that the plan of the holes needs."""
        return shapes_of(self.holes)

    @property
    def next_work(self) -> tuple[ComingWork, ...]:
        """What comes next, as much as is shown at first; where nothing comes, what nobody has reported as begun."""
        dated = tuple(work for work in self.coming if not work.is_silent)
        return (dated or self.coming)[:_SHOWN_AT_FIRST]

    @property
    def has_more_work(self) -> bool:
        """Whether more comes than that."""
        return len(self.coming) > len(self.next_work)

    @property
    def silent_work(self) -> int:
        """How much of all that comes was to begin before today, without a report that it did."""
        return sum(work.is_silent for work in self.coming)


def compose_status(
    outlook: CourseOutlook, stories: Mapping[str, JobStory], club: Club, voice: Voice, fixtures: Sequence[Fixture] = ()
) -> CourseStatus:
    """Put the course into words.

    Args:
        outlook: how the course stands.
        stories: published dates by job.
        club: the club.
        voice: the language and the day of the reader.
        fixtures: the club's fixtures, the first first.

    Returns:
        The status page.
    """
    at = outlook.morning_at
    opening, rest = _opening_and_rest(outlook, club, voice)
    return CourseStatus(
        sign_key=slug_of(_sign(outlook)),
        sentence=voice.sentences([opening, *([rest] if rest else [])]),
        opening=opening,
        rest=rest,
        holds_for=voice.moment(at) if at else "",
        entered_at=at,
        fresh=outlook.morning_is_fresh,
        counts_until=counts_until(at, club) if at and outlook.morning_is_fresh else None,
        once_over=_not_known(club, voice, today=club.entry_counts_for_minutes is None),
        holes_count_until=first_end(outlook.surfaces.values(), club),
        why=outlook.why,
        words=outlook.words,
        notes=tuple(
            NoteInWords(when=voice.moment(note.head.true_from), by=note.head.by, markdown=note.head.words)
            for note in outlook.notes
        ),
        limits=tuple(limit_in_words(held, voice) for held in outlook.limits),
        lines=tuple(status_lines(outlook, stories, club, voice)),
        holes=tuple(hole_marks(outlook.surfaces.values(), voice)),
        coming=tuple(coming_work(outlook, stories, voice)),
        fixtures=tuple(next_fixtures(outlook, fixtures, club.working_days, voice)),
    )


def _sign(outlook: CourseOutlook) -> Play:
    """The play on all surfaces; where it differs, that some care is needed."""
    plays = {surface.play for surface in outlook.surfaces.values()}
    if not outlook.morning_is_fresh:
        return Play.NOT_KNOWN
    return plays.pop() if len(plays) == 1 else Play.OPEN_WITH_CARE


def _opening_and_rest(outlook: CourseOutlook, club: Club, voice: Voice) -> tuple[str, str]:
    """A frost delay stands first, since it decides whether to set out; it closes nothing by itself."""
    frost = [voice.sentence(limit_clause(held, voice)) for held in outlook.limits if held.limit.name == FROST_DELAY]
    opening, rest = _sentence(outlook, club, voice)
    if frost and not rest:
        return voice.sentences(frost), opening
    return voice.sentences([*frost, opening]), rest


def _not_known(club: Club, voice: Voice, *, today: bool) -> str:
    """Of a day without an entry, or of a day on which the entry has become too old."""
    if today:
        return voice.say("status-not-entered-today", course=club.course)
    return voice.say("status-entry-too-old", course=club.course)


def _sentence(outlook: CourseOutlook, club: Club, voice: Voice) -> tuple[str, str]:
    """How the course is, in two parts that follow each other; the second may be empty."""
    if not outlook.morning_is_fresh:
        if outlook.morning_at is None:
            return voice.say("status-never-entered", course=club.course), ""
        last = voice.say("status-last-entered", moment=voice.moment(outlook.morning_at))
        earlier = outlook.morning_at.astimezone(club.time_zone).date() < outlook.as_of.date()
        return _not_known(club, voice, today=earlier), last
    by_play: dict[Play, list[Surface]] = {}
    for surface in outlook.surfaces.values():
        by_play.setdefault(surface.play, []).append(surface.surface)
    groups = [(play, by_play[play]) for play in WORST_FIRST if play is not Play.OPEN and play in by_play]
    if not groups:
        return capital(voice.say("status-open-as-usual", course=club.course)), ""
    if set(by_play) == {Play.CLOSED}:
        return capital(voice.say("status-all-closed", course=club.course)), ""
    elsewhere = tees_played_elsewhere(outlook.surfaces.values())
    clauses = voice.clauses([clause for group in groups for clause in _clauses(*group, elsewhere, voice)])
    if by_play.keys() & {Play.OPEN, Play.OPEN_WITH_CARE, Play.TEMPORARY_GREEN}:
        return capital(voice.say("status-open-but", course=club.course)), voice.say("status-but", clauses=clauses)
    return voice.sentence(clauses), ""


def _clauses(play: Play, places: Sequence[Surface], elsewhere: Collection[str], voice: Voice) -> Iterator[str]:
    """Of tees that are closed it says how their holes are played, which is what players need to know."""
    tees = [place for place in places if place.id in elsewhere]
    rest = [place for place in places if place.id not in elsewhere]
    said = [play_clause(play, rest, voice, briefly=True)] if rest else []
    from_where = [from_other_markers(tees, voice)] if tees else []
    decides = any(place.kind is SurfaceKind.GREEN for place in rest)
    yield from (*said, *from_where) if decides else (*from_where, *said)
