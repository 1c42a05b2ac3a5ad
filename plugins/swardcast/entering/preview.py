"""What members will see change: two bulletins compared, in a few plain lines."""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.compose import Bulletin
from swardcast.language.voice import Voice
from swardcast.notices.bulletins import FeedItem
from swardcast.notices.ends import end_of
from swardcast.notices.limits import limit_clause
from swardcast.notices.notice import Notice
from swardcast.notices.play import play_in_words
from swardcast.notices.words import places_in_words
from swardcast.outlook.changes import became
from swardcast.outlook.states import Work
from swardcast.records.club import Surface
from swardcast.records.plan import Play

__all__ = ["NOTHING_CHANGES", "changes_in_words", "new_items"]

NOTHING_CHANGES = "Nothing changes for members."
_MOST_REMARKS = 3
_MOST_ITEMS = 4  # what still reads at a glance: judgement


def changes_in_words(before: Bulletin, after: Bulletin) -> list[str]:
    """Say what will change for members.

    Args:
        before: what is published without the entry.
        after: what is published with it, at the same moment.

    Returns:
        Lines: work, dates, play, the status page's sentence, limits, feed items; then what the manager should look at
        again.
    """
    status = [*_jobs(before, after), *_play(before, after), *_status(before, after)]
    items = list(_items(before, after))
    lines = [*(status if status or items else [NOTHING_CHANGES]), *_limits(before, after), *items]
    remarks = [f"Worth another look: {said}" for said in after.remarks if said not in before.remarks]
    more = len(remarks) - _MOST_REMARKS
    return [*lines, *remarks[:_MOST_REMARKS], *([f"  and {more} more such remarks"] if more > 0 else [])]


def new_items(before: Bulletin, after: Bulletin) -> list[FeedItem]:
    """Tell the feed items that are not there yet, newest first."""
    known = {item.id for item in before.items}
    return [item for item in after.items if item.id not in known]


def _jobs(before: Bulletin, after: Bulletin) -> Iterator[str]:
    old = {notice.id: notice for notice in before.notices}
    for notice in after.notices:
        was = old.get(notice.id)
        if was == notice:
            continue
        end = end_of(after.outlook.jobs[notice.id]).name_in(Voice.english(after.outlook.as_of.date())).lower()
        said = "; ".join([*_became(before, after, notice.id), *_date(was, notice, end)])
        yield f"{notice.title}: {said or 'its notice tells more'}"


def _became(before: Bulletin, after: Bulletin, job: str) -> Iterator[str]:
    now = after.outlook.jobs[job]
    surfaces_of = {work.surface.id: work.surface for work in now.surfaces}
    for state, names in became(before.outlook.jobs.get(job), now).items():
        to = "" if state is Work.BACK_TO_NORMAL else "to "
        yield f"{_count([surfaces_of[name] for name in names])} {to}{state.value}"


def _count(surfaces: list[Surface]) -> str:
    kinds: dict[str, int] = {}
    plural = {}
    for surface in surfaces:
        kinds[surface.kind.value] = kinds.get(surface.kind.value, 0) + 1
        plural[surface.kind.value] = surface.kind.plural
    return " and ".join(f"{count} {kind if count == 1 else plural[kind]}" for kind, count in kinds.items())


def _date(was: Notice | None, now: Notice, end: str) -> Iterator[str]:
    """The date as the notice tells it, with the one before where it is another."""
    old, new = was.normal if was else "", now.normal
    if new and new != old:
        yield f"{end}: {new}" + (f" (so far {old})" if old else "")
    elif new:
        yield f"{end} stays {new}"


def _play(before: Bulletin, after: Bulletin) -> Iterator[str]:
    groups: dict[tuple[Play, Play], list[Surface]] = {}
    for name, surface in after.outlook.surfaces.items():
        old = before.outlook.surfaces[name].play
        if (
            old is not surface.play and old is not Play.NOT_KNOWN
        ):  # a first word of the day is told by the sentence below
            groups.setdefault((old, surface.play), []).append(surface.surface)
    for (old, now), surfaces in groups.items():
        voice = Voice.english(after.outlook.as_of.date())
        where = places_in_words(surfaces, voice)
        so_far = play_in_words(old, voice, len(surfaces))
        everywhere = "the whole course" if len(surfaces) == len(after.outlook.surfaces) else where
        yield f"Play: {everywhere} {play_in_words(now, voice, len(surfaces))} (so far {so_far})"


def _status(before: Bulletin, after: Bulletin) -> Iterator[str]:
    if before.status.sentence != after.status.sentence:
        yield f"The status page will say: {after.status.sentence}"
    elif before.status != after.status and before.outlook.surfaces.keys() == after.outlook.surfaces.keys():
        yield "The status page changes in its details."


def _limits(before: Bulletin, after: Bulletin) -> Iterator[str]:
    """What becomes of each limit, where one changes or the morning might have been expected to end it."""
    voice = Voice.english(after.outlook.as_of.date())
    old = {held.limit.name: held for held in before.outlook.limits}
    new = {held.limit.name: held for held in after.outlook.limits}
    said, changes = [], before.outlook.morning_at != after.outlook.morning_at
    for name, held in new.items():
        clause, was = limit_clause(held, voice), old.get(name)
        changes = changes or was is None or was.limit != held.limit
        if was is None:
            said.append(f"{clause} (new)")
        elif was.limit == held.limit:
            said.append(f"{clause} stays")
        else:
            before_it = limit_clause(was, voice)
            said.append(f"{clause} ({'put anew' if clause == before_it else f'so far {before_it}'})")
    lifted = [f"{name} lifted" for name in old if name not in new]
    if lifted or (said and changes):
        yield f"Limits: {'; '.join([*said, *lifted])}"


def _items(before: Bulletin, after: Bulletin) -> Iterator[str]:
    new = new_items(before, after)
    if new:
        yield f"{'One new feed item' if len(new) == 1 else f'{len(new)} new feed items'}:"
        yield from (f"  {item.title}" for item in new[:_MOST_ITEMS])
        if len(new) > _MOST_ITEMS:
            yield f"  and {len(new) - _MOST_ITEMS} more"
    kept = {item.id: item for item in after.items}
    gone = [item for item in before.items if item.id not in kept]
    changed = [item for item in before.items if item.id in kept and kept[item.id] != item]
    for items, what in ((gone, "no longer in the feed"), (changed, "put right in the feed")):
        if items:
            yield f"{'One item' if len(items) == 1 else f'{len(items)} items'} {what}: {items[0].title}"
