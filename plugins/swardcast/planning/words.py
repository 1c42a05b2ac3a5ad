"""Cells of a comparison in words."""

from __future__ import annotations

import math
from datetime import date

from swardcast.language.measures import layer, length
from swardcast.language.voice import Voice
from swardcast.notices.chances import tenths_of
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.words import percent
from swardcast.outlook.closures import Touch
from swardcast.outlook.fixtures import FixtureOutlook
from swardcast.outlook.states import Milestone
from swardcast.planning.compare import Compared
from swardcast.planning.costs import Cost

__all__ = [
    "cost_in_words",
    "days_a_year_in_words",
    "depths_or_none",
    "first_day_cell",
    "fits_in_words",
    "last_day_cell",
    "layer_or_none",
    "meeting_in_words",
    "number_or_none",
    "price_in_words",
    "priced_in_words",
    "range_cell",
    "share_or_none",
    "times_in_words",
    "touched_in_words",
]

_DAYS_OF_A_YEAR = 365


def number_or_none(value: float | None, voice: Voice) -> str:
    """Say a number that was worked out.

    Args:
        value: the number, 0 or more, or None.
        voice: the language.

    Returns:
        Three figures of it; a dash for none, words where it is not known.
    """
    if value is None:
        return voice.say("planning-not-known")
    return voice.number(float(f"{value:.3g}")) if value else voice.say("planning-none")


def share_or_none(fraction: float | None, voice: Voice) -> str:
    """Say a share of the surface.

    Args:
        fraction: 0 or more, or None.
        voice: the language.

    Returns:
        Per cent; a dash for none, words where it is not known.
    """
    if fraction is None:
        return voice.say("planning-not-known")
    return percent(fraction, voice) if fraction else voice.say("planning-none")


def depths_or_none(row: Compared, voice: Voice) -> str:
    """Say how deep turf and soil are taken out.

    Args:
        row: the choice.
        voice: the language.

    Returns:
        Each depth once, in the order of the work; a dash where nothing is taken out, words where it is not known.
    """
    depths = row.amounts.removed_depths_mm
    if depths is None:
        return voice.say("planning-not-known")
    return voice.joined([length(depth, voice) for depth in depths]) if depths else voice.say("planning-none")


def layer_or_none(layer_mm: float | None, voice: Voice) -> str:
    """Say a layer of sand.

    Args:
        layer_mm: its depth, mm, or None.
        voice: the language.

    Returns:
        The depth, or words where it is not known.
    """
    return voice.say("planning-not-known") if layer_mm is None else layer(layer_mm, voice)


def last_day_cell(day: date, voice: Voice) -> str:
    """Say the last day of a range in few letters, with its year where that is not the reader's.

    Args:
        day: the day.
        voice: the language and the day of the reader.

    Returns:
        Such as "14 Sept", or "24 Oct 2028".
    """
    return voice.tick_day(day) if day.year == voice.near.year else voice.tick_day_with_year(day)


def first_day_cell(day: date, last: date, voice: Voice) -> str:
    """Say the first day of a range in few letters, with its year where neither its end nor the reader tells it.

    Args:
        day: the day.
        last: the range's last day, as `last_day_cell` says it.
        voice: the language and the day of the reader.

    Returns:
        Such as "14 Sept", or "4 Sept 2028" of what ends in 2029 for a reader of 2027.
    """
    return voice.tick_day(day) if day.year in (last.year, voice.near.year) else voice.tick_day_with_year(day)


def range_cell(row: Compared, milestone: Milestone, voice: Voice) -> str:
    """Say a milestone's likely day, and the day to allow until, in few letters.

    Args:
        row: the choice.
        milestone: the milestone.
        voice: the language and the day of the reader.

    Returns:
        Both days, or why there are none. The ends of somebody's usual range, which has no chances; a dash where it
        knows no such milestone, or where nothing is opened that could close; months where the range is wide. A star
        marks work of which few recoveries are published.
    """
    given = row.range_of(milestone)
    if row.disturbance.outlook.job.normal_after is not None and milestone is not Milestone.BACK_TO_NORMAL:
        return voice.say("planning-none")
    if milestone is Milestone.HOLES_CLOSED and not any(work.sums.opened for work in row.disturbance.outlook.surfaces):
        return voice.say("planning-none")
    if given.likely is None or given.allow_until is None:
        return voice.name("planning-no-date", given.no_date)
    if row.is_usual_time:
        first = first_day_cell(given.early or given.likely, given.allow_until, voice)
        return voice.say("planning-usually", first=first, last=last_day_cell(given.allow_until, voice))
    likely, until = first_day_cell(given.likely, given.allow_until, voice), last_day_cell(given.allow_until, voice)
    said = voice.say("planning-likely-until", likely=likely, until=until)
    if given.is_wide:
        said = range_in_words(given, voice, briefly=True)
    return said if row.is_validated else voice.say("planning-not-validated", range=said)


def fits_in_words(row: Compared, voice: Voice) -> str:
    """Say how much sand goes into the holes and grooves, and how much they would take.

    Args:
        row: the choice.
        voice: the language.

    Returns:
        Both layers, the means over the surfaces; one alone where they are full, or where nothing is open; that they are
        not known where amounts or sizes were not typed.
    """
    fits_mm = row.amounts.mean_mm(lambda one: one.fits_mm)
    if fits_mm is None or row.amounts.room_mm is None:
        return voice.say("planning-not-known")
    fits, room = layer(fits_mm, voice), layer(row.amounts.room_mm, voice)
    return fits if fits == room or not row.amounts.room_mm else voice.say("planning-fits", fits=fits, room=room)


def cost_in_words(row: Compared, currency: str, voice: Voice) -> str:
    """Say what a choice costs; a plus marks that some of its work or sand is not in it.

    Args:
        row: the choice.
        currency: code of ISO 4217.
        voice: the language.

    Returns:
        The amount, or that it is not known; where no work of it is priced, that it is the sand alone.
    """
    return priced_in_words(row.cost, currency, voice)


def priced_in_words(cost: Cost | None, currency: str, voice: Voice) -> str:
    """Say a cost; a plus marks that some of its work or sand is not in it.

    Args:
        cost: the cost, or None.
        currency: code of ISO 4217.
        voice: the language.

    Returns:
        The amount, or that it is not known; where no work of it is priced, that it is the sand alone.
    """
    if cost is None or cost.in_all is None:
        return voice.say("planning-not-known")
    money = voice.money(cost.in_all, currency)
    if cost.work is None and cost.without:
        return voice.say("planning-sand-alone", cost=money)
    return voice.say("planning-incomplete", cost=money) if not cost.is_whole else money


def price_in_words(price: float, currency: str, voice: Voice) -> str:
    """Say a price with its pence.

    Args:
        price: 0 or more.
        currency: code of ISO 4217.
        voice: the language.

    Returns:
        The price.
    """
    return voice.money(price, currency, whole=False)


def times_in_words(times: float | None, voice: Voice) -> str:
    """Say how often a year an aim takes.

    Args:
        times: whole times, infinite for never, or None where nothing is computed.
        voice: the language.

    Returns:
        The number, "never", or a dash.
    """
    if times is None:
        return voice.say("planning-none")
    return voice.say("planning-never") if math.isinf(times) else voice.number(times)


def days_a_year_in_words(days: float | None, voice: Voice) -> str:
    """Say how many days of a year are disturbed.

    Args:
        days: their number, infinite for never, or None where nothing is computed.
        voice: the language.

    Returns:
        The number, or that a year has fewer; "never" where its aims are never reached; or a dash.
    """
    if days is not None and _DAYS_OF_A_YEAR < days < math.inf:
        return voice.say("planning-more-than-a-year")
    return times_in_words(days, voice)


def touched_in_words(count: int | None, voice: Voice) -> str:
    """Say how many fixtures the work touches.

    Args:
        count: their number, or None where it is not known.
        voice: the language.

    Returns:
        The number, or that it is not known.
    """
    return voice.say("planning-not-known") if count is None else voice.number(count)


def meeting_in_words(met: FixtureOutlook, voice: Voice) -> str:
    """Say what a fixture meets, in few letters.

    Args:
        met: what it meets.
        voice: the language.

    Returns:
        Work, perhaps work, or its chance in tenths; where only a range is known, whether it falls into it.
    """
    if met.in_work is Touch.YES:
        return voice.say("planning-in-work")
    if met.in_work is Touch.PERHAPS:
        return voice.say("planning-perhaps-in-work")
    if met.not_normal is None:
        match met.in_range:
            case None:
                return voice.say("planning-not-known")
            case Touch.NO:
                return voice.say("planning-none")
            case _:
                return voice.say("planning-perhaps")
    tenths = tenths_of(met.not_normal)
    return voice.say("planning-tenths", tenths=tenths) if tenths else voice.say("planning-hardly")
