"""What a notice is made of: one job, its story, the records and the reader's voice, handed from part to part."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from itertools import pairwise

from swardcast.language.voice import Voice
from swardcast.notices.ends import has_no_day, is_over_with_the_work, leaves_turf_whole, stands_still
from swardcast.notices.kinds import most_noticed_first, surface_of
from swardcast.notices.notice import Sentence
from swardcast.outlook.job_ranges import open_works
from swardcast.outlook.limits import LimitInForce
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, Work
from swardcast.outlook.story import JobStory
from swardcast.records.club import Surface
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry
from swardcast.records.operations import Kind
from swardcast.records.plan import Job, Play

__all__ = ["Matter", "sum_on"]


def sum_on(surface: Surface) -> str:
    """Name the sum of a surface as a source: the command that lays it out."""
    return f"sum: swardcast explain {surface.id}"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Matter:
    """The matter of one notice.

    Args:
        outlook: how the job stands, without the surfaces on which alone it was called off.
        story: its changes; the last one carries the published date.
        records: the club's records as known at the moment.
        limits: what holds on the course about preferred lies, trolleys and so on.
        holes_out_of_play: holes that nobody may play, by the last word on their greens and fairways.
        as_of: the moment of the reader, local.
        voice: the language and the day of the reader.
        plays: how its surfaces play at that moment, by id; empty where it is told of an earlier one.
        log: what the log tells of the job by then, oldest first; empty where its entries are not told.
    """

    outlook: JobOutlook
    story: JobStory
    records: ClubRecords
    limits: tuple[LimitInForce, ...]
    holes_out_of_play: frozenset[int]
    as_of: datetime
    voice: Voice
    plays: Mapping[str, Play] = field(default_factory=dict)
    log: tuple[Entry, ...] = ()

    @property
    def on_temporary_greens(self) -> list[Surface]:
        """The surfaces of the work, not yet done, whose holes play to a temporary green now."""
        left = [work.surface for work in self.outlook.surfaces if work.started_at is not None and work.done_at is None]
        return [surface for surface in left if self.plays.get(surface.id) is Play.TEMPORARY_GREEN]

    @property
    def job(self) -> Job:
        """The job as planned."""
        return self.outlook.job

    @property
    def published(self) -> DateRange:
        """The date for back to normal that stands on the site."""
        return self.story.published

    @property
    def kinds(self) -> list[Kind]:
        """Kinds of work, what players notice most first."""
        return most_noticed_first(operation.kind for operation in self.job.operations)

    @property
    def surface(self) -> str:
        """The kind of surface, for a phrase's slot."""
        return surface_of(work.surface for work in self.outlook.surfaces)

    @property
    def in_plan(self) -> str:
        """Where the plan has the job."""
        return f"{self.job.file}, line {self.job.line}"

    @property
    def is_over(self) -> bool:
        """Whether the work is back to normal or called off, so that nobody waits for anything of it."""
        return self.outlook.work.is_over

    @property
    def has_no_day(self) -> bool:
        """Whether planned work is postponed to no known day, or its day is over: no date of it holds any more."""
        return has_no_day(self.outlook, self.voice)

    @property
    def stands_still(self) -> bool:
        """Whether no date of it can be counted on: it has no day, or nobody reports on it any more."""
        return stands_still(self.outlook, self.voice)

    @property
    def is_past_its_end(self) -> bool:
        """Whether it should have healed long ago, and nobody has reported it: so nobody knows what is seen now."""
        return self.outlook.work is Work.HEALING and self.published.passed_untold(self.voice.near)

    @property
    def is_computed(self) -> bool:
        """Whether its dates are computed, and not somebody's usual range or the days of the plan."""
        return self.job.normal_after is None and any(work.recovery is not None for work in self.outlook.surfaces)

    @property
    def leaves_turf_whole(self) -> bool:
        """Whether nothing of the work has to heal, and nobody gave a time for it to come back."""
        return leaves_turf_whole(self.outlook)

    @property
    def is_over_with_the_work(self) -> bool:
        """Whether all is over once the work is finished: "back to normal" would promise that the ropes are gone."""
        return is_over_with_the_work(self.outlook)

    @property
    def is_of_one_day(self) -> bool:
        """Whether planned work begins and ends on the same day and leaves nothing to heal."""
        is_to_come = self.outlook.work is Work.PLANNED and not self.has_no_day
        return is_to_come and self.is_over_with_the_work and self.published.likely == self.outlook.starts

    @property
    def fixtures_crossed(self) -> tuple[str, ...]:
        """Ids of the fixtures that the last change tells as crossed by the date."""
        return tuple(one.id for one in self.story.changes[-1].news.crossed)

    def sum_of(self, milestone: Milestone) -> str:
        """Name the sum that a milestone's date rests on: that of the surface which reaches it last.

        Args:
            milestone: the milestone.

        Returns:
            The command that lays the sum out, or the line of the plan where nothing is computed.
        """
        works = open_works(self.outlook.surfaces) or self.outlook.surfaces
        ends = [(work.dates[milestone].allow_until, work) for work in works if work.recovery]
        dated = [(day, work) for day, work in ends if day is not None]
        if self.job.normal_after is not None or not ends:
            return self.in_plan
        last = max(dated, key=lambda one: one[0])[1] if dated else ends[-1][1]
        return sum_on(last.surface)

    @property
    def published_by(self) -> str:
        """What brought the date that stands on the site: an entry, or the sum at that moment."""
        entry = self.story.changes[0].entry
        for before, change in pairwise(self.story.changes):
            if change.news.back_to_normal != before.news.back_to_normal:
                entry = change.entry
        return entry.head.id if entry is not None else self.sum_of(Milestone.BACK_TO_NORMAL)

    def say(self, phrase: str, /, *, source: str = "", **values: str | float) -> Sentence:
        """Say a phrase as a sentence with its source.

        Args:
            phrase: its name.
            source: what it rests on, or "" for the phrase's own place.
            **values: what stands in its slots.

        Returns:
            The sentence.
        """
        return Sentence(text=self.voice.say(phrase, **values), source=source or self.voice.catalogue.place_of(phrase))
