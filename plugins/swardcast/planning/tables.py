"""A comparison as tables of words, and what has to be said beside them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from swardcast.language.measures import System, bulk_density, length, sand_mass, system_of
from swardcast.language.voice import Voice, capital
from swardcast.notices.fixtures import fixture_in_words
from swardcast.notices.kinds import kind_name
from swardcast.notices.pictures import Table
from swardcast.notices.words import few_words_for
from swardcast.outlook.states import Milestone
from swardcast.planning.columns import COLUMNS
from swardcast.planning.compare import Compared, Comparison
from swardcast.planning.words import (
    choice_name,
    cost_in_words,
    fits_in_words,
    layer_or_none,
    meeting_in_words,
    number_or_none,
    operations_in_words,
    price_in_words,
    range_cell,
    share_or_none,
    source_in_words,
    times_in_words,
)
from swardcast.quantities import MASS_KG
from swardcast.records.operations import Grooving, Tining
from swardcast.records.planning import Planning
from swardcast.records.translate import sand_depth_mm

__all__ = ["fixture_key", "notes_beside", "tables_of", "title_of"]

_Cell = Callable[[Compared], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """What the cells of one comparison are said with."""

    comparison: Comparison
    planning: Planning
    voice: Voice


def title_of(comparison: Comparison, voice: Voice) -> str:
    """Say what the comparison is about.

    Args:
        comparison: the comparison.
        voice: the language and the club's own names of sets.

    Returns:
        A title.
    """
    return voice.say("planning-title", places=few_words_for(comparison.surfaces, voice))


def tables_of(comparison: Comparison, planning: Planning, voice: Voice) -> tuple[Table, ...]:
    """Lay a comparison out in words: what is done, what it comes to, how it heals, which fixtures it meets.

    Args:
        comparison: the comparison, its rows in the order wanted.
        planning: the club's prices and aims.
        voice: the language and the day of the reader.

    Returns:
        Tables whose rows begin with the choice's number; that of fixtures only where there are any.
    """
    told = _Told(comparison=comparison, planning=planning, voice=voice)
    tables = [
        _table(voice.say("planning-table-choices"), dict(_done(told)), told),
        _table(voice.say("planning-table-work"), dict(_work(told)), told),
        _table(voice.say("planning-table-healing"), dict(_healing(told)), told),
    ]
    if comparison.fixtures:
        tables.append(_table(voice.say("planning-table-fixtures"), dict(_meetings(told)), told))
    return tuple(tables)


def _table(caption: str, cells: dict[str, _Cell], told: _Told) -> Table:
    voice = told.voice
    named: dict[str, _Cell] = {
        voice.say("planning-column-number"): lambda row: voice.number(row.number),
        voice.say("planning-column-choice"): lambda row: choice_name(row, voice),
        **cells,
    }
    rows = tuple(tuple(cell(row) for cell in named.values()) for row in told.comparison.rows)
    return Table(caption=caption, columns=tuple(named), rows=rows)


def _done(told: _Told) -> Iterator[tuple[str, _Cell]]:
    voice = told.voice
    yield voice.say("planning-column-operations"), lambda row: operations_in_words(row, voice)
    if len(_paces(told.comparison)) > 1:
        yield voice.say("planning-column-pace"), lambda row: voice.figure(_pace_of(row, told.comparison))
    yield voice.say("planning-column-source"), lambda row: source_in_words(row, voice)


def _work(told: _Told) -> Iterator[tuple[str, _Cell]]:
    voice, goal = told.voice, told.planning.goal.of(told.comparison.surfaces)

    def number(column: str) -> _Cell:
        def said(row: Compared) -> str:
            value = COLUMNS[column](row)
            return number_or_none(value if isinstance(value, float | int) else None, voice)

        return said

    yield voice.say("planning-column-disturbed"), lambda row: share_or_none(row.amounts.disturbed_fraction, voice)
    yield voice.say("planning-column-removed"), lambda row: share_or_none(row.amounts.removed_fraction, voice)
    yield voice.say("planning-column-holes-each"), number("holes_each")
    yield voice.say("planning-column-holes"), number("holes")
    yield voice.say("planning-column-fits"), lambda row: fits_in_words(row, voice)
    yield (
        voice.say("planning-column-surplus"),
        lambda row: layer_or_none(row.amounts.mean_mm(lambda one: one.surplus_mm), voice),
    )
    yield voice.say("planning-column-sand"), lambda row: _tonnes(row.amounts.sand_t, voice)
    if told.planning.currency:
        yield (
            voice.say("planning-column-cost"),
            lambda row: cost_in_words(row, told.planning.currency, voice),
        )
    if told.comparison.reading is not None:
        yield voice.say("planning-column-organic"), lambda row: _organic(row, voice)
    if goal.disturbed_fraction is not None:
        yield (
            voice.say("planning-column-goal-disturbed"),
            lambda row: times_in_words(row.times.disturbed, voice),
        )
    if goal.removed_fraction is not None:
        yield voice.say("planning-column-goal-removed"), lambda row: times_in_words(row.times.removed, voice)
    if goal.sand is not None:
        yield voice.say("planning-column-goal-sand"), lambda row: times_in_words(row.times.sand, voice)


def _tonnes(mass_t: float | None, voice: Voice) -> str:
    if mass_t is None:
        return voice.say("planning-not-known")
    return sand_mass(mass_t, voice) if mass_t else voice.say("planning-none")


def _organic(row: Compared, voice: Voice) -> str:
    if row.organic_after is None:
        return voice.say("planning-not-known")
    return voice.say("percent", number=voice.number(100 * row.organic_after, decimals=1))


def _healing(told: _Told) -> Iterator[tuple[str, _Cell]]:
    voice = told.voice
    yield voice.say("planning-column-settled"), lambda row: range_cell(row, Milestone.SETTLED, voice)
    yield voice.say("planning-column-closed"), lambda row: range_cell(row, Milestone.HOLES_CLOSED, voice)
    yield voice.say("planning-column-normal"), lambda row: range_cell(row, Milestone.BACK_TO_NORMAL, voice)
    yield voice.say("planning-column-days"), lambda row: _days(row, voice)
    if told.comparison.fixtures:
        yield voice.say("planning-column-touched"), lambda row: voice.number(row.fixtures_touched)


def _days(row: Compared, voice: Voice) -> str:
    given = row.range_of(Milestone.BACK_TO_NORMAL)
    likely, until = row.days_until(given.likely), row.days_until(given.allow_until)
    if likely is None or until is None:
        return voice.say("planning-not-known")
    if row.is_usual_time:
        first = row.days_until(given.early)
        return voice.say("planning-usually", first=voice.number(first or likely), last=voice.number(until))
    return voice.say("planning-likely-until", likely=voice.number(likely), until=voice.number(until))


def _meetings(told: _Told) -> Iterator[tuple[str, _Cell]]:
    def met(place: int) -> _Cell:
        return lambda row: meeting_in_words(row.meets[place], told.voice)

    for place in range(len(told.comparison.fixtures)):
        yield _letter(place), met(place)


def fixture_key(comparison: Comparison, voice: Voice) -> tuple[tuple[str, str], ...]:
    """Name the fixtures of a comparison by the letters that stand for them.

    Args:
        comparison: the comparison.
        voice: the language and the day of the reader.

    Returns:
        Letters and names.
    """
    return tuple(
        (_letter(place), fixture_in_words(fixture, voice)) for place, fixture in enumerate(comparison.fixtures)
    )


def _letter(place: int) -> str:
    """A, B, ... Z, AA, AB: so that a fixture is not taken for a choice."""
    letter = chr(ord("A") + place % 26)
    return letter if place < 26 else _letter(place // 26 - 1) + letter  # noqa: PLR2004 - the alphabet


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
    paces = _paces(comparison)
    pace = [] if len(paces) > 1 else [_pace(paces.pop(), len(when.surfaces), voice)]
    if not comparison.past_years:
        dates = [voice.say("planning-no-weather")]
    else:
        phrase = "planning-weather-forecast" if comparison.has_forecast else "planning-weather"
        dates = [voice.say("planning-dates"), voice.say(phrase, count=comparison.past_years)]
    fixtures = ("planning-fixtures", "planning-touched") if comparison.fixtures else ("planning-no-fixtures",)
    paragraphs = [
        [voice.say("planning-about", count=len(comparison.rows), day=day), *pace],
        [*_about_work(comparison, voice)],
        [*dates, *_about_unlike_dates(comparison, voice), *(voice.say(one) for one in fixtures)],
        [
            voice.say("planning-sand", density=bulk_density(comparison.density_t_per_m3, voice)),
            _organic_note(comparison, planning, voice),
        ],
        [*_about_money(comparison, planning, voice), *_about_goals(comparison, planning, voice)],
        [voice.say("planning-no-promise")],
    ]
    return tuple(voice.sentences(paragraph) for paragraph in paragraphs if paragraph)


def _about_work(comparison: Comparison, voice: Voice) -> Iterator[str]:
    """What else is planned there, and how sand and passes are counted."""
    if comparison.besides:
        titles = voice.joined([job.title for job in comparison.besides])
        yield voice.say("planning-goes-besides", count=len(comparison.besides), jobs=titles)
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


def _paces(comparison: Comparison) -> set[float]:
    return {_pace_of(row, comparison) for row in comparison.rows}


def _pace_of(row: Compared, comparison: Comparison) -> float:
    """Surfaces a day, as the choice has it; more than there are makes no difference."""
    return min(row.disturbance.outlook.job.surfaces_a_day, float(len(comparison.when.surfaces)))


def _pace(pace: float, count: int, voice: Voice) -> str:
    if pace >= count:
        return voice.say("planning-pace-one-day")
    return voice.say("planning-pace", pace=voice.figure(pace))


def _organic_note(comparison: Comparison, planning: Planning, voice: Voice) -> str:
    reading = comparison.reading
    if reading is None:
        return voice.say("planning-no-organic")
    first, last = voice.short_day(reading.first_day), voice.short_day(reading.last_day)
    return voice.say(
        "planning-organic",
        before=voice.say("percent", number=voice.number(100 * reading.fraction, decimals=1)),
        layer=length(planning.organic_layer_mm, voice),
        count=len(reading.surfaces),
        when=last if first == last else voice.say("planning-from-to", first=first, last=last),
    )


def _about_money(comparison: Comparison, planning: Planning, voice: Voice) -> Iterator[str]:
    if not planning.currency:
        return
    if planning.sand_price_per_t is None:
        yield voice.say("planning-cost-no-sand")
    else:
        yield _price_note(planning.sand_price_per_t, planning.currency, voice)
    costs = [row.cost for row in comparison.rows if row.cost is not None]
    kinds = dict.fromkeys(kind for cost in costs for kind in cost.without)
    if all(cost.work is None for cost in costs):
        yield voice.say("planning-no-work-cost")
    elif kinds:
        yield voice.say("planning-cost-without", kinds=voice.joined([kind_name(kind, voice) for kind in kinds]))
    sands = dict.fromkeys(kind for cost in costs for kind in cost.sand_without)
    if sands:
        yield voice.say("planning-sand-without", kinds=voice.joined([kind_name(kind, voice) for kind in sands]))


def _typed_share(fraction: float, voice: Voice) -> str:
    return voice.say("percent", number=voice.figure(100 * fraction))


def _price_note(per_t: float, currency: str, voice: Voice) -> str:
    if system_of(voice) is System.METRIC:
        return voice.say("planning-cost", price=price_in_words(per_t, currency, voice))
    per_ton = per_t * MASS_KG["us ton"] / MASS_KG["t"]
    return voice.say("planning-cost-by-the-ton", price=price_in_words(per_ton, currency, voice))


def _about_goals(comparison: Comparison, planning: Planning, voice: Voice) -> Iterator[str]:
    goal, said = planning.goal.of(comparison.surfaces), []
    if goal.disturbed_fraction is not None:
        said.append(voice.say("planning-goal-disturbed", share=_typed_share(goal.disturbed_fraction, voice)))
    if goal.removed_fraction is not None:
        said.append(voice.say("planning-goal-removed", share=_typed_share(goal.removed_fraction, voice)))
    if goal.sand is not None:
        depth = sand_depth_mm(goal.sand, area_m2=None, all_area_m2=None, density=comparison.density_t_per_m3)
        said.append(voice.say("planning-goal-sand", layer=length(depth or 0.0, voice)))
    if said:
        yield capital(voice.say("planning-goals", goals=voice.joined(said)))
