"""A season laid out as a picture: a row for each job that is not over, with its days of work and of healing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.fixtures import fixture_in_words
from swardcast.notices.pictures import LETTERS_ON_AXIS, KeyRow, Sign, Table, Tick, Told, as_of_mark, numbered
from swardcast.notices.season import MonthOfSeason, Season, SeasonJob, months_in_words
from swardcast.notices.season_bars import SeasonBars, SeasonRow
from swardcast.records.fixtures import Fixture

__all__ = ["season_bars"]

_MOST_ROWS: Final = 12
"""Rows that fit on a screen or two of a telephone: judgement."""
_MOST_FIXTURES: Final = 9
_MONTH_STEPS: Final = (1, 2, 3, 4, 6)
_WEEK: Final = timedelta(days=7)


def season_bars(season: Season, fixtures: Sequence[Fixture], voice: Voice) -> SeasonBars | None:
    """Lay out the picture of a season.

    Args:
        season: the season.
        fixtures: the club's fixtures, the first first.
        voice: the language and the day of the reader.

    Returns:
        Its facts and words, or None where no job goes on, heals or is to come.
    """
    jobs = [job for job in season.jobs if not job.matter.is_over]
    if not jobs:
        return None
    drawn = jobs[:_MOST_ROWS]
    rows = tuple(_row(job, season) for job in drawn)
    months = _months(season.months, rows)
    first, last = months[0].first_day, months[-1].last_day
    marks = _first_of_each_series(fixtures, max(first, voice.near), last)
    return SeasonBars(
        told=_told(drawn, len(jobs), months, marks, voice),
        first=first,
        last=last,
        ticks=tuple(_ticks(months, voice)),
        rows=rows,
        fixtures=numbered(marks),
        as_of=as_of_mark(first, last, voice),
    )


def _row(job: SeasonJob, season: Season) -> SeasonRow:
    """The healing of what is told in months alone gets a bar of its own, since the others show days."""
    normal, voice = job.matter.published, job.matter.voice
    in_months = job.heals_until is not None and normal.is_wide
    begin, end = season.months[0].first_day, season.last_day
    ends = job.last_day_of_healing
    work = ((part.first_day, part.last_day) for part in job.parts)
    return SeasonRow(
        name=job.matter.job.title,
        work=tuple(_cut(work, begin, end)),
        waits=tuple(_cut(job.waits, begin, end)),
        heals_from=job.heals_from,
        likely=None if in_months or ends is None else normal.likely,
        allow_until=None if in_months else ends,
        words=_beside(job, voice),
        in_months_until=job.heals_until if in_months else None,
    )


def _cut(runs: Iterable[tuple[date, date]], begin: date, end: date) -> Iterator[tuple[date, date]]:
    """What of runs of days lies on the axis."""
    for first, last in runs:
        if first <= end and last >= begin:
            yield max(first, begin), min(last, end)


def _beside(job: SeasonJob, voice: Voice) -> str:
    """What stands beside its name where its bar cannot say it."""
    if job.heals_until is not None:
        month = voice.tick_month_with_year(job.heals_until)
        return voice.say("season-bar-until", month=month) if job.matter.published.is_wide else ""
    return voice.say("season-bar-no-date") if job.heals_from is not None else ""


def _months(months: Sequence[MonthOfSeason], rows: Sequence[SeasonRow]) -> list[MonthOfSeason]:
    """Those from the first to the last bar, or to the reader's month; of what heals for months, those with work."""
    axis = months[0].first_day, months[-1].last_day
    days = [run for row in rows for run in row.days_within(*axis)]
    worked = [run for row in rows for run in row.work or tuple(row.days_within(*axis))]
    shown_until = max([last for _, last in worked] + [row.allow_until for row in rows if row.allow_until is not None])
    first = min(first for first, _ in days)
    return [one for one in months if one.last_day >= first and (one.first_day <= shown_until or one.is_over)]


def _ticks(months: Sequence[MonthOfSeason], voice: Voice) -> Iterator[Tick]:
    names = [Tick(day=one.first_day, words=voice.tick_month(one.first_day)) for one in months]
    widest = max(len(name.words) for name in names) + 1
    step = next((step for step in _MONTH_STEPS if widest * len(names) <= LETTERS_ON_AXIS * step), _MONTH_STEPS[-1])
    yield from names[::step]


def _first_of_each_series(fixtures: Sequence[Fixture], first: date, last: date) -> list[Fixture]:
    series: dict[str, Fixture] = {}
    for one in fixtures:
        if one.last_day >= first and one.first_day <= last:
            series.setdefault(one.series, one)
    return list(series.values())[:_MOST_FIXTURES]


def _told(
    drawn: Sequence[SeasonJob], count: int, months: Sequence[MonthOfSeason], marks: Sequence[Fixture], voice: Voice
) -> Told:
    span = months_in_words(months[0].first_day, months[-1].first_day, voice)
    caption = [voice.say("season-picture-bars")]
    if any(job.matter.published.is_wide for job in drawn):
        caption.append(voice.say("season-picture-months"))
    if any(job.last_day > months[-1].last_day for job in drawn):
        caption.append(voice.say("season-picture-arrow"))
    if count > len(drawn):
        caption.append(voice.say("season-picture-first", count=len(drawn)))
    return Told(
        name="season",
        title=voice.say("season-picture-title", months=span),
        description=voice.say("season-picture-summary", count=len(drawn), months=span),
        caption=(voice.sentences(caption),),
        key=(
            KeyRow(sign=Sign.WORK, words=voice.say("picture-key-work")),
            *_key_of_waits(drawn, voice),
            KeyRow(sign=Sign.HEALING, words=voice.say("season-key-likely")),
            KeyRow(sign=Sign.ALLOWANCE, words=voice.say("season-key-allow-until")),
            *(
                KeyRow(sign=Sign.FIXTURE, number=str(number), words=fixture_in_words(one, voice))
                for number, one in enumerate(marks, start=1)
            ),
        ),
        tables=tuple(_tables(drawn, marks, voice)),
    )


def _key_of_waits(drawn: Iterable[SeasonJob], voice: Voice) -> Iterator[KeyRow]:
    if any(last - first > _WEEK for job in drawn for first, last in job.waits):  # shorter ones are hardly seen
        yield KeyRow(sign=Sign.WAITING, words=voice.say("season-key-waits"))


def _tables(drawn: Sequence[SeasonJob], marks: Sequence[Fixture], voice: Voice) -> Iterator[Table]:
    work, days = voice.say("picture-column-job"), voice.say("picture-key-work")
    yield Table(
        caption=voice.say("season-table-work"),
        columns=(work, days, voice.say("row-back-to-normal")),
        rows=tuple((job.matter.job.title, job.days, _normal(job, voice)) for job in drawn),
    )
    if marks:
        yield Table(
            caption=voice.say("fixtures-heading"),
            columns=(voice.say("picture-column-what"), voice.say("picture-column-when")),
            rows=tuple(
                (voice.say("picture-fixture", number=str(number)), fixture_in_words(one, voice))
                for number, one in enumerate(marks, start=1)
            ),
        )


def _normal(job: SeasonJob, voice: Voice) -> str:
    return job.normal if job.heals_from is not None else voice.say("season-nothing-heals")
