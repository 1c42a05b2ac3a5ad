"""The section of a report on hold-ups: each of them, and how often each sort of cause held work up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.pictures import Table
from swardcast.notices.words import as_clause
from swardcast.planning.report_hold_ups import HoldUp
from swardcast.planning.report_places import in_log
from swardcast.planning.report_words import Section, Telling

__all__ = ["causes_in_words", "hold_ups_section", "sort_of"]

_SORTS: Final = ("rain", "frost", "wind", "heat", "machine", "supply", "staff", "play")
_OTHER: Final = "other"


def hold_ups_section(told: Telling) -> Section:
    """Say what held work up, for how long and why.

    Args:
        told: what it is said with.

    Returns:
        The section; a sentence where nothing did.
    """
    say, found = told.say, told.report.hold_ups
    title = say("report-hold-ups-title")
    if not found:
        return Section(name="hold-ups", title=title, sentences=(say("report-no-hold-ups"),))
    one_by_one = Table(
        caption=say("report-table-hold-ups"),
        columns=(
            say("report-column-job"),
            say("report-column-where"),
            say("report-column-day"),
            say("report-column-ended"),
            say("report-column-working-days"),
            say("report-column-cause"),
            say("report-column-sort"),
            say("report-column-source"),
        ),
        rows=tuple(_hold_up_row(one, told) for one in found),
    )
    by_cause = Table(
        caption=say("report-table-causes"),
        columns=(say("report-column-sort"), say("report-column-count"), say("report-column-working-days")),
        rows=tuple(
            (
                capital(_sort_name(sort, told.voice)),
                told.number(count),
                told.number(sum(one.working_days for one in found if sort_of(one, told.voice) == sort)),
            )
            for sort, count in _by_sort(found, told.voice)
        ),
    )
    return Section(name="hold-ups", title=title, tables=(one_by_one, by_cause), notes=(say("report-note-causes"),))


def _hold_up_row(one: HoldUp, told: Telling) -> tuple[str, ...]:
    places = [in_log(entry.head) for entry in (one.entry, one.ended_by) if entry is not None]
    days = told.number(one.working_days)
    if one.ended_by is None:
        days = told.say("report-still-held-up", days=days)
    elif not one.working_days:
        days = told.say("report-part-of-a-day")
    return (
        one.job.title,
        told.where(one.entry.surfaces),
        told.short_day(one.began_on),
        told.short_day(one.ended_on) if one.ended_on is not None else told.say("report-goes-on"),
        days,
        capital(as_clause(one.entry.because)),
        _sort_name(sort_of(one, told.voice), told.voice),
        told.from_places(places),
    )


def sort_of(one: HoldUp, voice: Voice) -> str:
    """Sort the cause of a hold-up by the first word of it that the catalogue knows.

    Args:
        one: the hold-up.
        voice: the language.

    Returns:
        The sort's name in the catalogue, such as "rain"; "other" where no word is known.
    """
    typed = f" {one.entry.because.casefold()}"
    found = [
        (typed.index(f" {word}"), sort)
        for sort in _SORTS
        for word in voice.say(f"report-words-{sort}").split(", ")
        if f" {word}" in typed
    ]
    return min(found)[1] if found else _OTHER


def _by_sort(found: Iterable[HoldUp], voice: Voice) -> list[tuple[str, int]]:
    return Counter(sort_of(one, voice) for one in found).most_common()


def _sort_name(sort: str, voice: Voice) -> str:
    return voice.say(f"report-cause-{sort}")


def causes_in_words(found: Sequence[HoldUp], voice: Voice) -> str:
    """Say how often each sort of cause held work up: "rain 2, frost 1".

    Args:
        found: hold-ups.
        voice: the language.

    Returns:
        The sorts, the most frequent first.
    """
    return voice.listed(
        [
            voice.say("report-cause-count", cause=_sort_name(sort, voice), count=voice.number(count))
            for sort, count in _by_sort(found, voice)
        ]
    )
