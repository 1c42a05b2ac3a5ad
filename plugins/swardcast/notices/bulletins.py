"""Changes of a job that members should hear of -> feed items in words; those of the course are in `course_news`."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from swardcast.language.voice import Voice, capital, slug_of
from swardcast.notices.dates_in_words import told_before_in_words
from swardcast.notices.ends import End, end_of, published_in_words
from swardcast.notices.events import cause_in_words, entry_in_words, moved_in_words, new_day_in_words
from swardcast.notices.fixtures import fixture_in_words
from swardcast.notices.play import play_clauses
from swardcast.notices.words import few_words_for, places_in_words
from swardcast.outlook.changes import is_only_computed
from swardcast.outlook.dates import RestsOn
from swardcast.outlook.fixtures import Side, side_of
from swardcast.outlook.job_ranges import open_works
from swardcast.outlook.play import statements
from swardcast.outlook.states import Work
from swardcast.outlook.story import JobChange, JobStory
from swardcast.records.club import SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.log import WITHDRAWN, NoteToMembers, PlanChange
from swardcast.records.standing import notes_withdrawn, withdrawn_ids

__all__ = ["FeedItem", "items_of_story", "last_change", "news_that_stands"]


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedItem:
    """One thing that members should hear of.

    Args:
        id: name for life; becomes the guid.
        at: when it became known, local time.
        title: what changed, in a line.
        sentences: what changed, in full.
        notice_id: the notice it belongs to, or "" for the course status.
        category: the main kind of work, or "course status", in words.
        markdown: the manager's own words, or "".
        kinds: kinds of surface that it speaks of; none where it speaks of the whole course.
        withdrawn_at: when it was withdrawn, local time, or None.
    """

    id: str
    at: datetime
    title: str
    sentences: tuple[str, ...]
    notice_id: str
    category: str
    markdown: str = ""
    kinds: frozenset[SurfaceKind] = frozenset()
    withdrawn_at: datetime | None = None

    @property
    def has_hour(self) -> bool:
        """Whether it became known at an hour; what a day brings is known from its first moment on."""
        return (self.at.hour, self.at.minute) != (0, 0)


def items_of_story(story: JobStory, records: ClubRecords, category: str, voice: Voice) -> list[FeedItem]:
    """Make a feed item of each change of a job.

    Args:
        story: the job's changes.
        records: the club's records as known at the moment.
        category: the main kind of work, in words.
        voice: the language and the day of the reader.

    Returns:
        Items, oldest first.
    """
    return [_item(change, story, records, category, voice) for change in story.changes]


def last_change(story: JobStory, records: ClubRecords, voice: Voice) -> tuple[str, ...]:
    """Say what members heard of last, with its cause where a date moved.

    Args:
        story: the job's changes.
        records: the club's records as known at the moment.
        voice: the language and the day of the reader.

    Returns:
        Sentences, none when there was nothing but the announcement.
    """
    change = story.changes[-1]
    if change.revision == 1:
        return ()
    at = change.at.astimezone(records.club.time_zone)
    told = voice.say("news-told-at", moment=voice.moment(at))
    no_day = change.outlook.work is Work.CALLED_OFF or change.outlook.is_put_off
    if no_day and isinstance(change.entry, PlanChange):
        return (entry_in_words(change.entry, records, voice), told)  # the date did not move: there is none any more
    headline = _headline(change, records, voice)
    if _is_put_right(change):
        headline = voice.say("news-corrected", news=headline)
    said = [voice.sentence(headline)]
    if change.news.rescheduled and change.news.before is not None:
        said.append(_end(change, voice))
    return (*said, *_why_it_moved(change, records, voice, brief=change.news.is_of_surfaces_alone), told)


def _item(change: JobChange, story: JobStory, records: ClubRecords, category: str, voice: Voice) -> FeedItem:
    at = change.at.astimezone(records.club.time_zone)
    voice = voice.on(at.date())
    note = change.entry if isinstance(change.entry, NoteToMembers) else None
    withdrawn_at = notes_withdrawn(records).get(note.head.id) if note is not None else None
    return FeedItem(
        id=change.id,
        at=at,
        title=_title(change, story.job.title, records, voice),
        sentences=(
            *([voice.say("news-note-withdrawn")] if withdrawn_at else []),
            *_sentences(change, records, voice),
        ),
        notice_id=story.job.id,
        category=category,
        markdown=change.entry.head.words if change.entry is not None and not withdrawn_at else "",
        kinds=_kinds_spoken_of(change, records),
        withdrawn_at=withdrawn_at,
    )


def _title(change: JobChange, job: str, records: ClubRecords, voice: Voice) -> str:
    """What changed and where, then the job: a telephone shows the beginning of a title."""
    whole = few_words_for((work.surface for work in change.outlook.surfaces), voice)
    news, phrase = _headline(change, records, voice, whole=whole), "news-title"
    if _is_of_the_job(change):
        phrase = "news-title-whole"
    elif not change.news.became and not change.news.is_of_surfaces_alone:
        news = voice.say("news-places", places=whole, news=news)
    if _is_put_right(change):
        news = voice.say("news-corrected", news=news)
    return capital(voice.say(phrase, news=news, job=job))


def _is_of_the_job(change: JobChange) -> bool:
    """Whether the news is of the job, not of its places: it is announced, called off, has another day or a note."""
    news = change.news
    is_put_off = news.rescheduled and change.outlook.is_put_off
    of_places = news.became or news.confirmed or is_put_off or news.is_of_surfaces_alone
    of_places = of_places or (news.before is not None and not news.rescheduled)
    return change.revision == 1 or change.outlook.work is Work.CALLED_OFF or not of_places


def _kinds_spoken_of(change: JobChange, records: ClubRecords) -> frozenset[SurfaceKind]:
    """Those of the entry, and those on which the work came into another state; a date is the date of the whole job."""
    moved = (one.surfaces for one in change.news.moved)
    names = set(getattr(change.entry, "surfaces", ())).union(*change.news.became.values(), *moved)
    whole = change.revision == 1 or change.news.before is not None or change.news.rescheduled or not names
    surfaces = [work.surface for work in change.outlook.surfaces]
    return frozenset(one.kind for one in (surfaces if whole else (records.surfaces[name] for name in names)))


def news_that_stands(items: Iterable[FeedItem], records: ClubRecords, as_of: datetime) -> tuple[FeedItem, ...]:
    """Leave out what was withdrawn or corrected since: feeds keep it, but a list of news would tell it as true.

    Args:
        items: what members heard, in any order.
        records: the club's records as known at the moment, those of withdrawn jobs among them.
        as_of: the moment, aware.

    Returns:
        The others in the same order; the correction or the withdrawal of a notice stays among them.
    """
    gone = withdrawn_ids(records.entries)
    jobs = {name for name, job in records.jobs.items() if job.is_withdrawn(as_of)}
    return tuple(
        item
        for item in items
        if (record := item.id.partition("/")[2]) not in gone and (item.notice_id not in jobs or record == WITHDRAWN)
    )


def _is_put_right(change: JobChange) -> bool:
    """Whether an entry was withdrawn or replaced, and more is to be told than that."""
    news = change.news
    return bool(news.withdrawn) and bool(news.became or news.rescheduled or news.before is not None or news.confirmed)


def _headline(change: JobChange, records: ClubRecords, voice: Voice, *, whole: str = "") -> str:
    """What changed in a clause; `whole` names all surfaces of the job, or is "" where its title stands beside that."""
    if change.revision == 1:
        return voice.say("news-planned", day=voice.day(change.outlook.starts))
    if change.outlook.work is Work.CALLED_OFF:
        return voice.name("news-all", change.outlook.work)
    became = [_became(state, names, change, records, voice, whole) for state, names in _states(change)]
    if became:
        return voice.clauses(became)
    end = end_of(change.outlook).value
    if change.news.confirmed:  # the sum had said so before
        return voice.say("news-end-as-said", end=end)
    if change.news.rescheduled and change.outlook.is_put_off:
        return voice.say("when-put-off")
    if change.news.rescheduled:
        return voice.say("news-now-from", day=voice.day(change.outlook.starts))
    if change.news.is_of_surfaces_alone:
        return new_day_in_words(change.news.moved, records, voice)
    if change.news.before is None:
        return voice.say("news-correction" if change.news.withdrawn else "news-note")
    when = published_in_words(change.news.back_to_normal, change.outlook, voice)
    return voice.say("news-new-date", end=end, when=when)


def _states(change: JobChange) -> Iterable[tuple[str, Sequence[str]]]:
    """Surfaces by what became of the work there, in the catalogue's words for it; an end by the sum is no fact."""
    by_sum = _over_by_sum(change)
    is_end_of_work = end_of(change.outlook) is End.FINISHED
    for state, names in change.news.became.items():
        said = [name for name in names if name not in by_sum]
        if said:
            yield "finished" if state is Work.BACK_TO_NORMAL and is_end_of_work else slug_of(state), said
    if by_sum:
        yield "should-be-normal", by_sum


def _over_by_sum(change: JobChange) -> list[str]:
    if end_of(change.outlook) is End.FINISHED:
        return []  # an entry said that the work is done
    computed = {work.surface.id for work in change.outlook.surfaces if is_only_computed(work)}
    return [name for name in change.news.became.get(Work.BACK_TO_NORMAL, ()) if name in computed]


def _became(state: str, names: Sequence[str], change: JobChange, records: ClubRecords, voice: Voice, whole: str) -> str:
    is_all = len(names) == len(change.outlook.surfaces)
    if is_all and not whole:
        return voice.say(f"news-all-{state}")
    places = whole if is_all else places_in_words((records.surfaces[name] for name in names), voice)
    return voice.say(f"news-some-{state}", places=places, count=len(names))


def _sentences(change: JobChange, records: ClubRecords, voice: Voice) -> Iterable[str]:
    if change.revision == 1:
        yield voice.sentence(places_in_words((work.surface for work in change.outlook.surfaces), voice))
        yield voice.say("news-work-starts", day=voice.day(change.outlook.starts))
    elif change.entry is not None:
        yield entry_in_words(change.entry, records, voice)
        yield from _play_now(change, records, voice)
    if change.outlook.work is Work.CALLED_OFF:
        return
    if by_sum := _over_by_sum(change):
        places = capital(places_in_words((records.surfaces[name] for name in by_sum), voice))
        yield voice.say("news-over-by-sum", places=places, count=len(by_sum))
        return
    yield _end(change, voice)
    yield from _why_it_moved(change, records, voice)


def _end(change: JobChange, voice: Voice) -> str:
    when, works = published_in_words(change.news.back_to_normal, change.outlook, voice), change.outlook.surfaces
    left = open_works(works)
    some_are_normal = any(work.work is Work.BACK_TO_NORMAL for work in works)
    if left and some_are_normal and end_of(change.outlook) is End.NORMAL:
        return voice.say("news-end-of-the-rest", places=few_words_for((one.surface for one in left), voice), when=when)
    return voice.say("news-end", end=end_of(change.outlook).value, when=when)


def _why_it_moved(change: JobChange, records: ClubRecords, voice: Voice, *, brief: bool = False) -> Iterable[str]:
    news = change.news
    if news.before is not None:
        yield voice.say("news-told-before", before=told_before_in_words(news.before, voice, news.before_told_on))
    of_surfaces = list(moved_in_words(news.moved, records, voice)) if news.moved else []
    yield from of_surfaces[1:] if brief else of_surfaces
    if news.before is not None or news.moved:
        yield voice.say("news-why-it-moved", why=cause_in_words(change, voice))
    for side, phrase in ((Side.BEFORE_NORMAL, "news-fixtures-before"), (Side.AFTER_NORMAL, "news-fixtures-after")):
        names = [
            fixture_in_words(one, voice)
            for one in change.news.crossed
            if side_of(one, change.news.back_to_normal) is side
        ]
        if names:
            basis = "sum" if change.news.back_to_normal.rests_on is RestsOn.SUM else "other"
            yield voice.say(phrase, basis=basis, end=end_of(change.outlook).value, fixtures=voice.clauses(names))


def _play_now(change: JobChange, records: ClubRecords, voice: Voice) -> Iterable[str]:
    for statement in statements(records, [change.entry] if change.entry is not None else []):
        for clause in play_clauses(statement.play, records.surfaces, voice):
            yield voice.sentence(clause)
