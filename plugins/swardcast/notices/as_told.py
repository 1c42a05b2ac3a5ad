"""A notice as it stood when members heard of an item: feeds carry it, and a later bulletin words it the same."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from swardcast.notices.bulletins import FeedItem
from swardcast.notices.compose_notice import compose_notice
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Notice
from swardcast.notices.play import holes_out_of_play
from swardcast.outlook.job_ranges import without_called_off
from swardcast.outlook.past_play import PastPlay
from swardcast.outlook.story import JobStory
from swardcast.records.folder import ClubRecords
from swardcast.records.log_by_job import LogByJob
from swardcast.records.standing import notes_withdrawn, without_words_of

__all__ = ["NoticesAsTold"]


class NoticesAsTold:
    """Words notices as they stood at any earlier moment.

    Args:
        records: the club's records, from which those of every earlier moment can be made.
        stories: what members heard of each job, by its id.
    """

    def __init__(self, records: ClubRecords, stories: Mapping[str, JobStory]) -> None:
        self._records = records
        self._stories = stories
        self._play = PastPlay(records)
        self._log = LogByJob(without_words_of(notes_withdrawn(records), records).entries)

    def of(self, item: FeedItem) -> Notice | None:
        """Word a notice as it stood when members heard of an item.

        Only a note that has been withdrawn since has lost its words there, as in its own item.

        Args:
            item: the item.

        Returns:
            The notice, or None for an item on the course status, or that a notice was withdrawn.
        """
        story = self._stories.get(item.notice_id)
        told = [change.revision for change in story.changes if change.id == item.id] if story is not None else []
        if story is None or not told:
            return None
        changes = story.changes[: told[0]]
        known = self._records.known_at(item.at)
        plays = self._play.plays_at(known, item.at)
        log = self._log.of(story.job.id)
        matter = Matter(
            outlook=without_called_off(changes[-1].outlook),
            story=replace(story, changes=changes),
            records=known,
            limits=self._play.limits_at(item.at),
            holes_out_of_play=holes_out_of_play((known.surfaces[name], play) for name, play in plays.items()),
            as_of=item.at,
            voice=known.club.voice(item.at.date()),
            plays=plays,
            log=tuple(entry for entry in log if entry.head.at_s <= item.at.timestamp()),
        )
        return compose_notice(matter)
