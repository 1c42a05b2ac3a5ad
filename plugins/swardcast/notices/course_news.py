"""Changes of play, and notes on the course as a whole -> feed items in words."""

from __future__ import annotations

from collections.abc import Iterable

from swardcast.language.voice import Voice, capital
from swardcast.notices.bulletins import FeedItem
from swardcast.notices.limits import limit_clause, limit_in_words
from swardcast.notices.play import play_clauses
from swardcast.outlook.play_story import PlayChange
from swardcast.records.folder import ClubRecords
from swardcast.records.log import FROST_DELAY, NoteToMembers
from swardcast.records.plan import COURSE_STATUS
from swardcast.records.standing import notes_withdrawn

__all__ = ["items_of_notes", "items_of_play"]


def items_of_play(changes: Iterable[PlayChange], records: ClubRecords, voice: Voice) -> list[FeedItem]:
    """Make a feed item of each change of play.

    Args:
        changes: changes of play, oldest first.
        records: the club's records.
        voice: the language and the day of the reader.

    Returns:
        Items, oldest first.
    """
    return [_item_of_play(change, records, voice) for change in changes]


def _item_of_play(change: PlayChange, records: ClubRecords, voice: Voice) -> FeedItem:
    at = change.at.astimezone(records.club.time_zone)
    said = play_clauses(change.play, records.surfaces, voice)
    voice = voice.on(at.date())
    frost = [held for held in change.limits if held.limit.name == FROST_DELAY]  # decides whether to set out at all
    others = [held for held in change.limits if held not in frost]
    first, then = ([limit_in_words(held, voice) for held in some] for some in (frost, others))
    limits = [*first, *then]
    what = [*(limit_clause(held, voice) for held in frost), *said, *(limit_clause(held, voice) for held in others)]
    nothing_more = voice.say("news-entry-put-right" if change.replaces else "news-entry-withdrawn")
    news = voice.clauses(what) or nothing_more
    return FeedItem(
        id=f"{COURSE_STATUS}/{change.id}",
        at=at,
        title=capital(voice.say("news-corrected", news=news) if change.corrects and what else news),
        sentences=(
            *(voice.say("news-limit", name=limit.name, value=limit.value) for limit in first),
            *(voice.sentence(part) for part in said),
            *(voice.say("news-limit", name=limit.name, value=limit.value) for limit in then),
            *([capital(change.why)] if change.why else []),
        ),
        notice_id="",
        category=voice.say("news-category-course"),
        markdown=change.words,
        # A limit, like an entry withdrawn without a word on a surface, concerns every player.
        kinds=frozenset() if limits else frozenset(records.surfaces[name].kind for name in change.play),
    )


def items_of_notes(records: ClubRecords, voice: Voice) -> list[FeedItem]:
    """Make a feed item of each note on the course as a whole; a note on a job is told with the job.

    Args:
        records: the club's records as known at the moment.
        voice: the language and the day of the reader.

    Returns:
        Items, oldest first; a note that was withdrawn says so, since feeds have carried it.
    """
    zone, withdrawn = records.club.time_zone, notes_withdrawn(records)
    return [
        FeedItem(
            id=f"{COURSE_STATUS}/{note.head.id}",
            at=note.head.at.astimezone(zone),
            title=capital(voice.say("news-note")),
            sentences=(voice.say("news-note-withdrawn" if note.head.id in withdrawn else "news-note-to-all"),),
            notice_id="",
            category=voice.say("news-category-course"),
            markdown="" if note.head.id in withdrawn else note.head.words,
            withdrawn_at=withdrawn.get(note.head.id),
        )
        for note in records.entries
        if isinstance(note, NoteToMembers) and not note.job
    ]
