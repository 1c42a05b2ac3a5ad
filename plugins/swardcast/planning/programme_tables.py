"""Days for several jobs together, as tables of words."""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.language.voice import Voice
from swardcast.notices.pictures import Table
from swardcast.planning.compare import count_touched
from swardcast.planning.date_fixtures import touched_table
from swardcast.planning.date_tables import END_COLUMNS
from swardcast.planning.date_words import end_cell, fixture_reasons, weighted_cell
from swardcast.planning.programme import Placed, Together
from swardcast.planning.start_days import StartDay
from swardcast.planning.words import touched_in_words

__all__ = ["SHOWN_STEP", "gap_in_words", "letters_of", "together_reasons", "together_tables", "together_title"]

SHOWN_STEP = 0.05
"""Differences of fewer weighted days than this are not told: the tables show tenths."""


def together_title(together: Together, voice: Voice) -> str:
    """Say what it is about.

    Args:
        together: what was found.
        voice: the language.

    Returns:
        A title.
    """
    return voice.say("together-title", count=voice.number(len(together.asked.jobs)))


def letters_of(together: Together) -> dict[str, str]:
    """Give each job a letter.

    Args:
        together: what was found.

    Returns:
        Letters by id of the job, in the order of their first days; where there are none, in that of their names.
    """
    jobs = [one.job for one in together.placed] or together.asked.jobs
    return {job.id: chr(ord("A") + place) for place, job in enumerate(jobs)}


def together_tables(together: Together, voice: Voice) -> tuple[Table, ...]:
    """Lay out the best days in words, the trade-offs, and the fixtures that the best days touch.

    Args:
        together: what was found.
        voice: the language and the day of the reader.

    Returns:
        Tables; none where the jobs cannot all be done. That of the trade-offs comes second where there are any, that of
        fixtures last where any is touched.
    """
    if not together.placed:
        return ()
    tables = [_best(together, voice)]
    if together.in_all > 1:
        tables.append(_trade_offs(together, voice))
    letters = letters_of(together)
    fixtures = touched_table({letters[one.job.id]: one.together for one in together.placed}, voice)
    return (*tables, fixtures) if fixtures is not None else tuple(tables)


def _best(together: Together, voice: Voice) -> Table:
    columns = (
        voice.say("together-column-letter"),
        voice.say("together-column-job"),
        voice.say("startdays-column-window"),
        voice.say("together-column-kept"),
        voice.say("startdays-column-weighted"),
        voice.say("startdays-column-days"),
        voice.say(END_COLUMNS[together.asked.until]),
        voice.say("planning-column-touched"),
    )
    letters = letters_of(together)
    rows = [
        (
            letters[one.job.id],
            one.job.title,
            voice.day(one.together.day),
            voice.short_day(one.kept_until),
            weighted_cell(one.together.cost, voice),
            _days(one.together, voice),
            end_cell(one.together.ends, voice),
            touched_in_words(count_touched(one.together.meets), voice),
        )
        for one in together.placed
    ]
    if not together.has_costs:
        return Table(caption=voice.say("together-table-soonest"), columns=columns, rows=tuple(rows))
    weighted, days = together.weighted_days, together.plain_days
    in_all = ("", voice.say("together-in-all"), "", "", voice.number(weighted), voice.number(days), "", "")
    return Table(caption=voice.say("together-table-best"), columns=columns, rows=(*rows, in_all))


def _days(day: StartDay, voice: Voice) -> str:
    return voice.say("planning-not-known") if day.cost is None else voice.number(day.cost.days)


def _trade_offs(together: Together, voice: Voice) -> Table:
    letters = letters_of(together)
    columns = (
        voice.say("planning-column-number"),
        *letters.values(),
        voice.say("startdays-column-weighted"),
        voice.say("startdays-column-days"),
        voice.say("together-column-with-all"),
    )
    rows = [
        (
            voice.number(number),
            *(voice.tick_day(schedule.first_days[job]) for job in letters),
            voice.number(schedule.weighted_days, decimals=1),
            voice.number(schedule.plain_days, decimals=1),
            voice.number(with_all, decimals=1),
        )
        for number, (schedule, with_all) in enumerate(zip(together.trade_offs, together.with_all, strict=True), start=1)
    ]
    return Table(caption=voice.say("together-table-trade-offs"), columns=columns, rows=tuple(rows))


def together_reasons(together: Together, voice: Voice) -> tuple[tuple[str, str], ...]:
    """Say of each job why it has its day, and what it meets.

    Args:
        together: what was found.
        voice: the language and the day of the reader.

    Returns:
        Letters as in the tables, with a paragraph each; where the jobs cannot all be done, with their titles.
    """
    letters = letters_of(together)
    if not together.placed:
        return tuple((letters[job.id], job.title) for job in together.asked.jobs)
    return tuple(
        (
            letters[one.job.id],
            voice.sentences(
                [*_why_then(one, letters, voice), *_on_healing(one, voice), *fixture_reasons(one.together, voice)]
            ),
        )
        for one in together.placed
    )


def _why_then(one: Placed, letters: dict[str, str], voice: Voice) -> Iterator[str]:
    if one.alone.cost is None or one.cheapest.cost is None:
        return
    more = one.alone.cost.weighted_days - one.cheapest.cost.weighted_days
    if more < SHOWN_STEP:
        yield voice.say("together-cheapest")
    else:
        yield voice.say("together-not-cheapest", day=voice.day(one.cheapest.day), more=voice.number(more, decimals=1))
    if one.after is None:
        if more >= SHOWN_STEP:
            yield voice.say("together-for-the-others")
        return
    other = letters[one.after.earlier]
    if one.after.least_days > 1:
        yield voice.say("together-waits-gap", gap=gap_in_words(one.after.least_days, voice), other=other)
    else:
        yield voice.say("together-waits", other=other)


def _on_healing(one: Placed, voice: Voice) -> Iterator[str]:
    if one.alone.cost is None or one.together.cost is None:
        return
    more = one.together.cost.weighted_days - one.alone.cost.weighted_days
    if more >= SHOWN_STEP:
        yield voice.say("together-on-healing", more=voice.number(more, decimals=1))


def gap_in_words(days: int, voice: Voice) -> str:
    """Say how long lies between two jobs.

    Args:
        days: whole days, 1 or more.
        voice: the language.

    Returns:
        Weeks where they are whole ones, else days.
    """
    weeks, rest = divmod(days, 7)
    return voice.say("together-days", days=days) if rest else voice.say("together-weeks", weeks=weeks)
