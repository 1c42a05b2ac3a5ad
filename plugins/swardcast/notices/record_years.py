"""The club's own track record by years: this one and the last in full, of earlier ones a count and a page."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.track_record import Comparison, compose_track_record
from swardcast.outlook.track_record import Kept, Outcome

__all__ = ["RecordYear", "TrackRecord", "compose_record_by_years"]

_IN_FULL: Final = 1  # years before the present one whose jobs stand on the page itself; judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordYear:
    """The jobs that were done in a year, and what came of their dates.

    Args:
        year: the year.
        kept: how many kept their dates.
        missed: how many missed them.
        sooner: how many came sooner.
        lines: one for each job, latest first; also of those that cannot be judged.
        is_apart: whether they stand on a page of their own.
    """

    year: int
    kept: int
    missed: int
    sooner: int
    lines: tuple[Comparison, ...]
    is_apart: bool

    @property
    def judged(self) -> int:
        """How many jobs could be judged."""
        return self.kept + self.missed + self.sooner


@dataclass(frozen=True, slots=True, kw_only=True)
class TrackRecord:
    """What the club promised and what came, all in all and by years.

    Args:
        sentences: what all of it comes to.
        years: those in which a job was done, the latest first.
    """

    sentences: tuple[str, ...]
    years: tuple[RecordYear, ...]

    @property
    def lines(self) -> tuple[Comparison, ...]:
        """What stands on the page itself: a line for each job of the latest years, latest first."""
        return tuple(line for year in self.years if not year.is_apart for line in year.lines)

    @property
    def apart(self) -> tuple[RecordYear, ...]:
        """Years with a page of their own, the latest first."""
        return tuple(year for year in self.years if year.is_apart)


def compose_record_by_years(kept: Sequence[Kept], voice: Voice) -> TrackRecord:
    """Word the club's own track record, so that its page does not grow with the years.

    Assumes that members ask for this year and the last; where nothing was done in those, for the latest that there is.

    Args:
        kept: finished jobs, oldest first.
        voice: the language and the day of the reader.

    Returns:
        Sentences on all jobs, of which those of the years in full alone are named, and the years.
    """
    latest = kept[-1].done_on.year if kept else voice.near.year
    first_in_full = min(voice.near.year - _IN_FULL, latest)
    whole = compose_track_record(kept, voice, named_from=first_in_full)
    return TrackRecord(sentences=whole.sentences, years=tuple(_years(kept, whole.lines, first_in_full)))


def _years(kept: Sequence[Kept], lines: Sequence[Comparison], first_in_full: int) -> Iterator[RecordYear]:
    told = zip(reversed(kept), lines, strict=True)
    for year, group in groupby(told, key=lambda one: one[0].done_on.year):
        jobs = list(group)
        outcomes = Counter(one.outcome for one, _ in jobs if one.is_judged)
        yield RecordYear(
            year=year,
            kept=outcomes[Outcome.KEPT],
            missed=outcomes[Outcome.MISSED],
            sooner=outcomes[Outcome.SOONER],
            lines=tuple(line for _, line in jobs),
            is_apart=year < first_in_full,
        )
