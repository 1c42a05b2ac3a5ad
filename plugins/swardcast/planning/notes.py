"""What has to be said beside the tables of a comparison, and above those of any private page."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from swardcast.language.measures import bulk_density, length
from swardcast.language.voice import Voice
from swardcast.notices.kinds import kind_name
from swardcast.planning.compare import Compared, Comparison
from swardcast.planning.goal_notes import about_goals
from swardcast.planning.sand_words import price_by_weight, water_in_words
from swardcast.records.operations import Grooving, Tining
from swardcast.records.planning import Planning

__all__ = ["about_price", "made_in_words", "notes_beside", "pace_of", "paces_of"]


def notes_beside(comparison: Comparison, planning: Planning, voice: Voice) -> tuple[str, ...]:
    """Say what the tables rest on.

    Args:
        comparison: the comparison.
        planning: the club's prices and aims.
        voice: the language and the day of the reader.

    Returns:
        Paragraphs.
    """
    when = comparison.when
    day = voice.day(when.starts)
    paces = paces_of(comparison)
    pace = [] if len(paces) > 1 else [_pace(paces.pop(), len(when.surfaces), voice)]
    if not comparison.past_years:
        dates = [voice.say("planning-no-weather")]
    else:
        phrase = "planning-weather-forecast" if comparison.has_forecast else "planning-weather"
        dates = [voice.say("planning-dates"), voice.say(phrase, count=comparison.past_years)]
    fixtures = (
        ("planning-fixtures", "planning-fixture-words", "planning-touched")
        if comparison.fixtures
        else ("planning-no-fixtures",)
    )
    paragraphs = [
        [voice.say("planning-about", count=len(comparison.rows), day=day), *pace],
        [*_about_work(comparison, voice)],
        [*dates, *_about_unlike_dates(comparison, voice), *(voice.say(one) for one in fixtures)],
        [
            voice.say("planning-sand", density=bulk_density(comparison.density_t_per_m3, voice)),
            *_about_organic(comparison, planning, voice),
        ],
        [*_about_money(comparison, planning, voice)],
        [*about_goals(comparison, planning, voice)],
        [voice.say("planning-no-promise")],
    ]
    return tuple(voice.sentences(paragraph) for paragraph in paragraphs if paragraph)


def made_in_words(made: datetime, voice: Voice) -> str:
    """Say that a page is private, and as of when it is.

    Args:
        made: that moment, local.
        voice: the language and the day of the reader.

    Returns:
        Sentences.
    """
    return voice.sentences([voice.say("planning-private"), voice.say("planning-made", moment=voice.moment(made))])


def _about_work(comparison: Comparison, voice: Voice) -> Iterator[str]:
    """What is left out, what else is planned there, and how sand and passes are counted."""
    if comparison.left_out:
        yield voice.say("planning-left-out", count=comparison.left_out)
    if comparison.besides:
        titles = voice.joined([job.title for job in comparison.besides])
        yield voice.say("planning-goes-besides", count=len(comparison.besides), jobs=titles)
    amounts = [row.amounts for row in comparison.rows]
    if any(one.disturbed_fraction for one in amounts):
        yield voice.say("planning-area-not-depth")
    if any(one.room_mm for one in amounts):
        yield voice.say("planning-fits-at-most")
    operations = [one for row in comparison.rows for one in row.choice.operations]
    if any(isinstance(one, Tining | Grooving) and one.passes > 1 for one in operations):
        yield voice.say("planning-passes")


def _about_unlike_dates(comparison: Comparison, voice: Voice) -> Iterator[str]:
    """Those that are known less surely, and usual times by whose they are."""
    computed = [row for row in comparison.rows if not row.is_usual_time]
    if not all(row.is_as_published for row in computed):
        yield voice.say("reason-not-validated")
        if not all(row.is_validated for row in computed):
            yield voice.say("planning-star")
    for row in comparison.rows:
        usual = row.disturbance.outlook.job.normal_after
        if usual is not None:
            number = voice.number(row.number)
            yield voice.say("planning-usual-time", number=number, source=usual.source)


def paces_of(comparison: Comparison) -> set[float]:
    """Collect the paces of the choices.

    Args:
        comparison: the comparison.

    Returns:
        Surfaces a day, each once.
    """
    return {pace_of(row, comparison) for row in comparison.rows}


def pace_of(row: Compared, comparison: Comparison) -> float:
    """Tell a choice's pace.

    Args:
        row: the choice.
        comparison: the comparison.

    Returns:
        Surfaces a day; more than there are makes no difference.
    """
    return min(row.disturbance.outlook.job.surfaces_a_day, float(len(comparison.when.surfaces)))


def _pace(pace: float, count: int, voice: Voice) -> str:
    if pace >= count:
        return voice.say("planning-pace-one-day")
    return voice.say("planning-pace", pace=voice.figure(pace))


def _about_organic(comparison: Comparison, planning: Planning, voice: Voice) -> Iterator[str]:
    reading = comparison.reading
    if reading is None:
        yield voice.say("planning-no-organic")
        return
    first, last = voice.short_day(reading.first_day), voice.short_day(reading.last_day)
    yield voice.say(
        "planning-organic",
        before=voice.say("percent", number=voice.number(100 * reading.fraction, decimals=1)),
        layer=length(planning.organic_layer_mm, voice),
        count=len(reading.surfaces),
        when=last if first == last else voice.say("planning-from-to", first=first, last=last),
    )
    if not planning.is_layer_told:
        yield voice.say("planning-layer-assumed", layer=length(planning.organic_layer_mm, voice))


def _about_money(comparison: Comparison, planning: Planning, voice: Voice) -> Iterator[str]:
    if not planning.currency:
        return
    yield from about_price(planning, voice)
    costs = [row.cost for row in comparison.rows if row.cost is not None]
    kinds = dict.fromkeys(kind for cost in costs for kind in cost.without)
    if all(cost.work is None for cost in costs):
        yield voice.say("planning-no-work-cost")
    elif kinds:
        yield voice.say("planning-cost-without", kinds=voice.joined([kind_name(kind, voice) for kind in kinds]))
    sands = dict.fromkeys(kind for cost in costs for kind in cost.sand_without)
    if sands:
        yield voice.say("planning-sand-without", kinds=voice.joined([kind_name(kind, voice) for kind in sands]))


def about_price(planning: Planning, voice: Voice) -> Iterator[str]:
    """Say what costs of sand rest on.

    Args:
        planning: the club's prices, in a currency.
        voice: the language.

    Yields:
        Sentences: the price, and how dry sand is turned into sand as weighed.
    """
    if planning.sand_price_per_t is None:
        yield voice.say("planning-cost-no-sand")
        return
    yield voice.say("planning-cost", price=price_by_weight(planning.sand_price_per_t, planning.currency, voice))
    yield water_in_words(planning.sand_store, voice)
