"""A period's sand as tables of words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from swardcast.language.measures import area, layer, sand_rate, seed_mass, seed_rate
from swardcast.language.voice import Voice, capital
from swardcast.notices.kinds import kind_name
from swardcast.notices.pictures import Table
from swardcast.planning.costs import sand_cost
from swardcast.planning.materials import Material
from swardcast.planning.periods import Period, period_in_words
from swardcast.planning.published_sand import PUBLISHED, layers_mm
from swardcast.planning.sand_balance import SandBalance, StoreLine, StoreWhat, Trouble
from swardcast.planning.sand_moves import SandMove
from swardcast.planning.sand_words import difference, layers_in_words, there_in_tonnes, tonnes
from swardcast.planning.sand_year import Masses, OnKind, SandYear, masses_of
from swardcast.planning.stages import Stage
from swardcast.records.planning import Planning

__all__ = ["materials_table", "sand_tables", "sand_title"]

_TROUBLES = {
    Trouble.RUNS_OUT: "sand-would-run-out",
    Trouble.BELOW_LEAST: "sand-would-be-below",
    Trouble.DOES_NOT_FIT: "sand-would-not-fit",
}


def sand_title(year: SandYear, voice: Voice) -> str:
    """Say what the tables are about.

    Args:
        year: the sand of the period.
        voice: the language.

    Returns:
        A title.
    """
    return voice.say("sand-title", period=period_in_words(Period(first=year.first, last=year.last), voice))


def sand_tables(year: SandYear, planning: Planning, voice: Voice) -> tuple[Table, ...]:
    """Lay a period's sand out in words.

    Args:
        year: the sand.
        planning: the club's prices.
        voice: the language and the day of the reader.

    Returns:
        Months, jobs, surfaces, masses with their cost, the store, other materials, amounts in print; those that would
        be empty are left out.
    """
    found = [
        _months(year, voice),
        _jobs(year, voice),
        _kinds(year, voice),
        _costs(year, planning, voice),
        _store(year.balance, voice) if year.balance is not None else None,
        materials_table(year.materials, voice),
        _published(year, voice),
    ]
    return tuple(table for table in found if table is not None and table.rows)


def _caption(phrase: str, voice: Voice) -> str:
    return voice.say(phrase, unit=voice.say("sand-unit"))


def _stages(masses: Masses, voice: Voice, *, is_whole: bool = True) -> tuple[str, ...]:
    return tuple(tonnes(one, voice, is_whole=is_whole) for one in (masses.planned_t, masses.used_t, masses.to_come_t))


def _stage_columns(voice: Voice) -> tuple[str, ...]:
    return (voice.say("sand-column-planned"), voice.say("sand-column-used"), voice.say("sand-column-to-come"))


def _months(year: SandYear, voice: Voice) -> Table:
    kinds = [one.kind for one in year.kinds]

    def planned_on(moves: list[SandMove]) -> Iterator[str]:
        for kind in kinds:
            yield tonnes(masses_of(one for one in moves if one.surface.kind is kind).planned_t, voice)

    rows = []
    for month, masses in year.by_month().items():
        moves = [move for move in year.moves if move.day is not None and move.day.replace(day=1) == month]
        name = capital(voice.month_with_year(month))
        rows.append((name, *planned_on(moves), *_stages(masses, voice)))
    if len(rows) > 1:
        rows.append((voice.say("sand-in-all"), *planned_on(list(year.moves)), *_stages(year.in_all, voice)))
    names = [voice.name("site-surface", kind) for kind in kinds]
    columns = (voice.say("sand-column-month"), *names, *_stage_columns(voice))
    return Table(caption=_caption("sand-table-months", voice), columns=columns, rows=tuple(rows))


def _jobs(year: SandYear, voice: Voice) -> Table:
    rows = []
    for name, masses in year.by_job().items():
        moves = [move for move in year.moves if move.job.id == name]
        is_whole = all(move.dry_t is not None for move in moves)
        kinds = dict.fromkeys(move.surface.kind for move in moves)
        rows.append(
            (
                year.job(name).title,
                voice.joined([voice.name("site-surface", kind) for kind in kinds]),
                _days(moves, voice),
                *_stages(masses, voice, is_whole=is_whole),
                difference(masses.against_plan_t, voice),
            )
        )
    columns = (
        voice.say("sand-column-job"),
        voice.say("sand-column-surfaces"),
        voice.say("sand-column-days"),
        *_stage_columns(voice),
        voice.say("sand-column-against"),
    )
    return Table(caption=_caption("sand-table-jobs", voice), columns=columns, rows=tuple(rows))


def _days(moves: list[SandMove], voice: Voice) -> str:
    """The days on which it was done or is to be done; of what is called off, those of the plan."""
    really = [move.day for move in moves if move.day is not None and move.stage is not Stage.PLANNED]
    days = really or [move.day for move in moves if move.day is not None]
    first, last = voice.tick_day(min(days)), voice.tick_day(max(days))
    return first if first == last else voice.say("sand-from-day-to-day", first=first, last=last)


def _kinds(year: SandYear, voice: Voice) -> Table:
    columns = (
        voice.say("sand-column-surfaces"),
        voice.say("sand-column-area"),
        voice.say("sand-in-all"),
        voice.say("sand-column-rate"),
        voice.say("sand-column-layer"),
    )
    rows = tuple(_kind_row(one, voice) for one in year.kinds)
    return Table(caption=_caption("sand-table-kinds", voice), columns=columns, rows=rows)


def _kind_row(one: OnKind, voice: Voice) -> tuple[str, ...]:
    unknown = voice.say("planning-not-known")
    return (
        voice.name("site-surface", one.kind),
        unknown if one.area_m2 is None else area(one.area_m2, voice),
        tonnes(one.masses.in_all_t, voice),
        unknown if one.kg_per_m2 is None else sand_rate(one.kg_per_m2, voice),
        unknown if one.depth_mm is None else layer(one.depth_mm, voice),
    )


def _costs(year: SandYear, planning: Planning, voice: Voice) -> Table:
    masses, weighed_t = year.in_all, year.store.weighed_t
    delivered = [one for one in year.store.deliveries if year.first <= one.on <= year.last]
    today = year.as_of.date()
    rows: list[tuple[str, float | None, float]] = [
        (voice.say("sand-row-planned"), masses.planned_t, weighed_t(masses.planned_t)),
        (voice.say("sand-row-used"), masses.used_t, weighed_t(masses.used_t)),
        (voice.say("sand-row-to-come"), masses.to_come_t, weighed_t(masses.to_come_t)),
    ]
    if delivered:
        came = sum(one.mass_t for one in delivered if one.on <= today)
        to_come = sum(one.mass_t for one in delivered if one.on > today)
        rows.append((voice.say("sand-row-delivered"), None, came))
        rows.append((voice.say("sand-row-deliveries-to-come"), None, to_come))
    columns = [voice.say("sand-column-what"), voice.say("sand-column-dry"), voice.say("sand-column-weighed")]
    if planning.sand_price_per_t is not None:
        columns.append(voice.say("sand-column-cost"))

    def cells(what: str, dry_t: float | None, mass_t: float) -> Iterator[str]:
        yield what
        yield voice.say("planning-none") if dry_t is None else tonnes(dry_t, voice)
        yield tonnes(mass_t, voice)
        cost = sand_cost(mass_t, planning)
        if cost is not None:
            yield voice.money(cost, planning.currency) if mass_t else voice.say("planning-none")

    return Table(
        caption=_caption("sand-table-cost", voice),
        columns=tuple(columns),
        rows=tuple(tuple(cells(*row)) for row in rows),
    )


def _store(balance: SandBalance, voice: Voice) -> Table:
    columns = (
        voice.say("sand-column-day"),
        voice.say("sand-column-what"),
        voice.say("sand-column-change"),
        voice.say("sand-column-there"),
        voice.say("sand-column-remark"),
    )
    rows = [(voice.short_day(line.day), *_line(line, voice)) for line in balance.lines]
    is_opened = bool(balance.lines) and balance.lines[0].what is StoreWhat.COUNTED
    if not is_opened:
        none = voice.say("planning-none")
        rows.insert(0, (none, voice.say("sand-line-opening"), none, there_in_tonnes(balance.opening_t, voice), ""))
    return Table(caption=_caption("sand-table-store", voice), columns=columns, rows=tuple(rows))


def _line(line: StoreLine, voice: Voice) -> tuple[str, ...]:
    match line.what:
        case StoreWhat.COUNTED:
            what = voice.say("sand-line-counted")
        case StoreWhat.DELIVERED:
            what = voice.say("sand-line-delivered")
        case StoreWhat.WORK:
            what = line.job.title if line.job is not None else ""
    remarks = [line.note] if line.note else []
    if line.is_to_come:
        remarks.append(voice.say("sand-to-come"))
    if line.trouble is not None:
        remarks.append(voice.say(_TROUBLES[line.trouble]))
    if not line.is_whole:
        remarks.append(voice.say("sand-not-all-known"))
    return what, difference(line.change_t, voice), there_in_tonnes(line.after_t, voice), voice.listed(remarks)


def materials_table(materials: Sequence[Material], voice: Voice) -> Table:
    """Lay seed and products out.

    Args:
        materials: they.
        voice: the language.

    Returns:
        A table with a row for each.
    """
    columns = (
        voice.say("sand-column-material"),
        voice.say("sand-column-job"),
        voice.say("sand-column-amount"),
        voice.say("sand-column-used"),
        voice.say("sand-column-to-come"),
    )
    rows = tuple(_material(one, voice) for one in materials)
    return Table(caption=voice.say("sand-table-materials"), columns=columns, rows=rows)


def _material(one: Material, voice: Voice) -> tuple[str, ...]:
    rate = seed_rate(one.rate_g_per_m2, voice) if one.rate_g_per_m2 is not None else one.rate_words
    name = voice.say("sand-material", kind=capital(kind_name(one.kind, voice)), name=one.name)
    return (
        name,
        one.job.title,
        rate or voice.say("planning-not-known"),
        _how_much(one.done, one.used_kg, voice),
        _how_much(one.to_come, one.to_come_kg, voice),
    )


def _how_much(surfaces: int, mass_kg: float | None, voice: Voice) -> str:
    if not surfaces:
        return voice.say("planning-none")
    return voice.say("sand-on-surfaces", count=surfaces) if mass_kg is None else seed_mass(mass_kg, voice)


def _published(year: SandYear, voice: Voice) -> Table:
    greens = year.greens
    none = voice.say("planning-none")
    rows = []
    if greens.depth_mm is not None:
        rows.append((voice.say("sand-these-greens"), none, layer(greens.depth_mm, voice), none))
    for one in PUBLISHED:
        ends = layers_mm(one, density_t_per_m3=year.density_t_per_m3, greens_m2=year.course_m2)
        name = voice.say(f"published-sand-{one.name}")
        rows.append((name, one.printed, layers_in_words(ends, voice), one.source))
    columns = (
        voice.say("sand-column-what"),
        voice.say("sand-column-printed"),
        voice.say("sand-column-layer"),
        voice.say("sand-column-source"),
    )
    return Table(caption=voice.say("sand-table-published"), columns=columns, rows=tuple(rows))
