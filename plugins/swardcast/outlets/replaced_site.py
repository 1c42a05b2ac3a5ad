"""What the records alone cannot tell: the site that is about to be replaced had something that they know no more.

A line of the plan that was edited, a job or an entry that was deleted leaves no trace in the records, but those who
follow the site have heard of it. Nothing that is published depends on this; only the manager is told.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path
from typing import Any, Final

from icalendar import Calendar

from swardcast.compose import Bulletin
from swardcast.notices.calendar import DaySpan, Occasion, Standing
from swardcast.outlets.calendar import CALENDAR_PATH, uid_of
from swardcast.outlets.feeds import WHOLE_COURSE, guid_of
from swardcast.outlook.states import JobOutlook, Work
from swardcast.records.folder import ClubRecords

__all__ = ["ReplacedSite", "remarks_on_replaced", "replaced_site"]

_NOTICE: Final = re.compile(r"/notices/([^/]+)/$")
_NO_ENTRIES: Final = ("announced", "withdrawn")  # items that the plan brings
_ITEM: Final = re.compile(r"tag:[^:]*,\d{4}-\d\d-\d\d:(.+)")


@dataclass(frozen=True, slots=True, kw_only=True)
class ReplacedSite:
    """What a site has published.

    Args:
        uid: its calendar's.
        told_at: the last moment of which its calendar speaks, or None where it has no event.
        days: first days of the events that were still to come true, by their UIDs.
        items: ids of the newest items of its feed, each with the id of its job, or "".
        jobs: ids of the jobs of which it has events or items.
    """

    uid: str
    told_at: datetime | None
    days: Mapping[str, date]
    items: Mapping[str, str]
    jobs: frozenset[str]


def replaced_site(folder: Path) -> ReplacedSite | None:
    """Read what a site has published: its calendar, and the feed of the whole course.

    Args:
        folder: where it lies; there may be none.

    Returns:
        What stands there, or None where these are no files of ours.
    """
    try:
        read: Any = Calendar.from_ical((folder / CALENDAR_PATH).read_bytes())
        feed = (folder / f"feeds/{WHOLE_COURSE}.json").read_bytes()
        events, uid = list(read.events), str(read["UID"])
        items = {str(item["id"]): _job_of(str(item["url"])) for item in json.loads(feed)["items"]}
        days = {str(one["UID"]): one["DTSTART"].dt for one in events if str(one["STATUS"]) == "TENTATIVE"}
        told = max((one["DTSTAMP"].dt for one in events), default=None)
        jobs = {_job_of(str(one["URL"])) for one in events} | set(items.values())
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None
    return ReplacedSite(uid=uid, told_at=told, days=days, items=items, jobs=frozenset(jobs - {""}))


def _job_of(address: str) -> str:
    found = _NOTICE.search(address)
    return found[1] if found else ""


def remarks_on_replaced(site: ReplacedSite, bulletin: Bulletin, records: ClubRecords) -> tuple[str, ...]:
    """Say what was published and is gone, or changed, without a word to those who follow the site.

    Args:
        site: the site that is about to be replaced.
        bulletin: what takes its place.
        records: all of the club's records, of later moments too.

    Returns:
        At most one sentence for each job, in English; none for another club's site, or when the new one tells of an
        earlier moment than the old one did.
    """
    if site.uid != uid_of("calendar", bulletin.club.named_by):
        return ()
    if site.told_at is not None and site.told_at > bulletin.as_of:
        return ()
    said: dict[str, str] = {}
    for job, remark in (*_gone(site, bulletin, records), *_moved(site, bulletin), *_deleted(site, bulletin)):
        said.setdefault(job, remark)
    return tuple(said.values())


def _gone(site: ReplacedSite, bulletin: Bulletin, records: ClubRecords) -> Iterator[tuple[str, str]]:
    for name in sorted(site.jobs - bulletin.stories.keys()):
        job = records.jobs.get(name)
        if job is None:
            said = "is no longer in the plan: its addresses are gone, and calendars that imported it keep its days"
            yield name, f"job {name} {said}; put it back and give it `withdrawn`, or `called off` by a change of plan"
        else:
            said = f"was published, and is announced on {job.announced.isoformat()} only"
            yield name, f"{job.title} {said}: until then its addresses are gone [{job.file}, line {job.line}]"


def _moved(site: ReplacedSite, bulletin: Bulletin) -> Iterator[tuple[str, str]]:
    told = {item.notice_id for item in bulletin.items if guid_of(item, bulletin.club.named_by) not in site.items}
    for name, outlook in bulletin.outlook.jobs.items():
        if name not in told and _has_other_days(site, bulletin, outlook):
            job = outlook.job
            said = "its days were changed in the plan without a word, so nobody who follows the feeds hears of it"
            put = "put the first day back, and enter the new one as a change of plan"
            yield name, f"{job.title}: {said}; {put} [{job.file}, line {job.line}]"


def _has_other_days(site: ReplacedSite, bulletin: Bulletin, outlook: JobOutlook) -> bool:
    """Whether planned work that is still to come was published for other days."""
    if outlook.work is not Work.PLANNED or outlook.starts < bulletin.as_of.date():
        return False
    return any(
        site.days.get(uid_of(event.id, bulletin.club.named_by), event.span.first) != event.span.first
        for event in bulletin.calendar
        if event.notice_id == outlook.job.id and event.occasion is Occasion.WORK and isinstance(event.span, DaySpan)
        if event.standing is Standing.TENTATIVE
    )


def _deleted(site: ReplacedSite, bulletin: Bulletin) -> Iterator[tuple[str, str]]:
    """Items of entries that are gone; those of the weather may go when it is known better."""
    there = {guid_of(item, bulletin.club.named_by) for item in bulletin.items}
    entries = {entry.head.id for entry in bulletin.records.entries}
    titles = {name: story.job.title for name, story in bulletin.stories.items()}
    for guid, job in site.items.items():
        found = _ITEM.fullmatch(guid)
        entry = found[1].removeprefix(f"{job}/") if found else ""
        if guid in there or entry in entries or not entry or entry in _NO_ENTRIES or entry.startswith("weather-"):
            continue
        said = f"the entry {entry} was published and is gone from the log, but those who follow the feeds have it"
        yield job, f"{titles.get(job, 'the course status')}: {said}; put it back, and withdraw it by a correction"
