"""What members will see change: two bulletins compared, in a few plain lines."""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.compose import Bulletin
from swardcast.notices.bulletins import FeedItem
from swardcast.notices.notice import Notice
from swardcast.notices.status import play_in_words
from swardcast.notices.words import places_in_words
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
        Lines: work, dates, play, the status page's sentence, feed items; then what the manager should look at again.
    """
    lines = [*_jobs(before, after), *_play(before, after), *_status(before, after), *_items(before, after)]
    lines = lines or [NOTHING_CHANGES]
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
        said = "; ".join([*_became(before, after, notice.id), *_date(was, notice)])
        yield f"{notice.headline}: {said or 'its notice tells more'}"


def _became(before: Bulletin, after: Bulletin, job: str) -> Iterator[str]:
    old = (
        {work.surface.id: work.work for work in before.outlook.jobs[job].surfaces} if job in before.outlook.jobs else {}
    )
    groups: dict[Work, list[Surface]] = {}
    for work in after.outlook.jobs[job].surfaces:
        if old.get(work.surface.id) is not work.work:
            groups.setdefault(work.work, []).append(work.surface)
    for state, surfaces in groups.items():
        yield (
            f"{_count(surfaces)} to {state.value}"
            if state is not Work.BACK_TO_NORMAL
            else f"{_count(surfaces)} back to normal"
        )


def _count(surfaces: list[Surface]) -> str:
    kinds: dict[str, int] = {}
    plural = {}
    for surface in surfaces:
        kinds[surface.kind.value] = kinds.get(surface.kind.value, 0) + 1
        plural[surface.kind.value] = surface.kind.plural
    return " and ".join(f"{count} {kind if count == 1 else plural[kind]}" for kind, count in kinds.items())


def _date(was: Notice | None, now: Notice) -> Iterator[str]:
    """The date as the notice tells it, with the one before where it is another."""
    old, new = _normal_of(was) if was else "", _normal_of(now)
    if new and new != old:
        yield f"back to normal {new}" + (f" (so far {old})" if old else "")
    elif new:
        yield f"back to normal stays {new}"


def _normal_of(notice: Notice) -> str:
    for section in notice.sections:
        for fact in section.facts:
            if fact.name == "Back to normal":
                return fact.value[:1].lower() + fact.value[1:]
    return ""


def _play(before: Bulletin, after: Bulletin) -> Iterator[str]:
    groups: dict[tuple[Play, Play], list[Surface]] = {}
    for name, surface in after.outlook.surfaces.items():
        old = before.outlook.surfaces[name].play
        if (
            old is not surface.play and old is not Play.NOT_KNOWN
        ):  # a first word of the day is told by the sentence below
            groups.setdefault((old, surface.play), []).append(surface.surface)
    for (old, now), surfaces in groups.items():
        where = places_in_words(surfaces)
        everywhere = "the whole course" if len(surfaces) == len(after.outlook.surfaces) else where
        yield f"Play: {everywhere} {play_in_words(now, len(surfaces))} (so far {play_in_words(old, len(surfaces))})"


def _status(before: Bulletin, after: Bulletin) -> Iterator[str]:
    if before.status.sentence != after.status.sentence:
        yield f"The status page will say: {after.status.sentence}"
    elif before.status != after.status and before.outlook.surfaces.keys() == after.outlook.surfaces.keys():
        yield "The status page changes in its details."


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
