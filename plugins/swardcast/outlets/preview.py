"""What a preview picture says: the words of a notice, or of the club for every other page."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import fields, replace
from typing import Any, Final

from swardcast.compose import Bulletin
from swardcast.language.voice import Voice, capital
from swardcast.notices.ends import End, end_of, is_long_due_to_open, surface_work_in_words
from swardcast.notices.notice import Fact, Notice
from swardcast.notices.play import play_in_words
from swardcast.notices.words import few_words_for
from swardcast.outlets.preview_picture import Card
from swardcast.outlets.preview_text import writable
from swardcast.outlook.states import JobOutlook, SurfaceWork, Work
from swardcast.records.plan import Play

__all__ = ["HOME_PICTURE", "cards_of", "home_card", "notice_card", "picture_path"]

HOME_PICTURE: Final = "preview.png"
"""The picture of every page that is no notice."""

_DOT: Final = " \u00b7 "  # as on the status page
_SHOWS_PLAY: Final = (Work.UNDER_WAY, Work.HELD_UP, Work.HEALING)


def picture_path(notice_id: str) -> str:
    """Tell where a notice's picture lies inside the site.

    Args:
        notice_id: the notice's id.

    Returns:
        A path such as "notices/greens-renovation-2027/preview.png".
    """
    return f"notices/{notice_id}/preview.png"


def cards_of(bulletin: Bulletin) -> Iterator[tuple[str, Card]]:
    """Give the words of each picture.

    Args:
        bulletin: the bulletin.

    Yields:
        The picture's path and its words; no picture for words in letters that the font lacks.
    """
    paths = [HOME_PICTURE, *(picture_path(notice.id) for notice in bulletin.notices)]
    cards = [home_card(bulletin), *(notice_card(notice, bulletin) for notice in bulletin.notices)]
    for path, card in zip(paths, map(_written, cards), strict=True):
        if card is not None:
            yield path, card


def home_card(bulletin: Bulletin) -> Card:
    """Word the picture of the club; it stays in messages for long, so it says nothing that may be untrue tomorrow.

    Args:
        bulletin: the bulletin.

    Returns:
        Its words, before the font is asked.
    """
    club, what = bulletin.club, bulletin.voice.say("site-description", club=bulletin.club.name).rstrip(".")
    return Card(
        club=club.name,
        headline=what,
        play=None,
        state="",
        where="",
        label="",
        normal="",
        told=club.site,
        band=club.look.palette.band,
        band_ink=club.look.palette.band_ink,
    )


def notice_card(notice: Notice, bulletin: Bulletin) -> Card:
    """Word the picture of a notice.

    Args:
        notice: the notice.
        bulletin: the bulletin that has it.

    Returns:
        Its words, before the font is asked.
    """
    voice, job = bulletin.voice, bulletin.outlook.jobs[notice.id]
    row, works = _row(notice, job, voice), _in_that_state(job)
    plays = _plays(works, bulletin) if job.work in _SHOWS_PLAY else set()
    said = [play_in_words(play, voice, len(works)) for play in plays] if len(plays) == 1 else []
    shows_work = job.work in _SHOWS_PLAY and job.unreported is None and not is_long_due_to_open(works, voice)
    places = [work.surface for work in works]
    work = surface_work_in_words(job.work, places, None, voice) if shows_work else notice.work
    return Card(
        club=bulletin.club.name,
        headline=notice.headline,
        play=_sign(plays),
        state=capital(_DOT.join([*said, work])),
        where=capital(few_words_for(places, voice)),
        label=row.name if row is not None else "",
        normal=row.value if row is not None else "",
        told=voice.say("site-last-news", day=voice.day(notice.revised_at.astimezone(bulletin.club.time_zone).date())),
        band=bulletin.club.look.palette.band,
        band_ink=bulletin.club.look.palette.band_ink,
    )


def _row(notice: Notice, job: JobOutlook, voice: Voice) -> Fact | None:
    """The end of the job, or that of the work."""
    facts = {fact.name: fact for section in notice.sections for fact in section.facts}
    names = [end.name_in(voice) for end in (end_of(job), End.FINISHED)]
    return next((facts[name] for name in names if name in facts), None)


def _in_that_state(job: JobOutlook) -> Sequence[SurfaceWork]:
    """The surfaces on which the work stands as it does as a whole; all of them on a day between two of the work."""
    return [work for work in job.surfaces if work.work is job.work] or job.surfaces


def _plays(works: Iterable[SurfaceWork], bulletin: Bulletin) -> set[Play]:
    """How the surfaces play on which this job is what matters."""
    here = ((bulletin.outlook.surfaces[work.surface.id], work.job.id) for work in works)
    return {one.play for one, job in here if one.current is not None and one.current.job.id == job}


def _sign(plays: set[Play]) -> Play | None:
    """Where surfaces do not play alike the course asks for care, as the sign of the status page says."""
    return Play.OPEN_WITH_CARE if len(plays) > 1 else next(iter(plays), None)


def _written(card: Card) -> Card | None:
    words = {field.name: getattr(card, field.name) for field in fields(card) if field.name != "play"}
    written = {name: writable(text) for name, text in words.items()}
    whole: dict[str, Any] = {name: text for name, text in written.items() if text is not None}
    return replace(card, **whole) if len(whole) == len(words) and whole["headline"] else None
