"""What a notice is made of: one job, its story, the records and the reader's voice, handed from part to part."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from swardcast.language.voice import Voice
from swardcast.notices.kinds import most_noticed_first, surface_of
from swardcast.notices.notice import Sentence
from swardcast.outlook.limits import LimitInForce
from swardcast.outlook.states import DateRange, JobOutlook
from swardcast.outlook.story import JobStory
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Kind
from swardcast.records.plan import Job

__all__ = ["Matter"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Matter:
    """The matter of one notice.

    Args:
        outlook: how the job stands.
        story: its changes; the last one carries the published date.
        records: the club's records as known at the moment.
        limits: what holds on the course about preferred lies, trolleys and so on.
        as_of: the moment of the reader, local.
        voice: the language and the day of the reader.
    """

    outlook: JobOutlook
    story: JobStory
    records: ClubRecords
    limits: tuple[LimitInForce, ...]
    as_of: datetime
    voice: Voice

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
