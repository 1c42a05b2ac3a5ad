"""`swardcast sand`: a year's sand in tonnes, layers and money, and how long the store lasts. It is all private."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from dataclasses import asdict
from datetime import date
from typing import Any, Final

from swardcast.cli.common import add_club_options, moment_of, new_parser, records_of, wrong_usage
from swardcast.cli.period_asked import add_days_options, days_in_order, year_option
from swardcast.cli.private_file import write_private
from swardcast.cli.private_tables import add_output_options, aligned, as_csv, flat, plain, show
from swardcast.errors import SwardcastError
from swardcast.language.voice import Voice
from swardcast.planning.costs import sand_cost
from swardcast.planning.materials import Material
from swardcast.planning.periods import Period, year_of
from swardcast.planning.published_sand import PUBLISHED, layers_mm
from swardcast.planning.sand_balance import StoreLine, StoreWhat
from swardcast.planning.sand_moves import SandMove
from swardcast.planning.sand_notes import sand_notes
from swardcast.planning.sand_tables import sand_tables, sand_title
from swardcast.planning.sand_year import Masses, SandYear, sand_year
from swardcast.records.folder import ClubRecords
from swardcast.records.planning import Planning
from swardcast.records.sand_store import SandStore

__all__ = ["parser", "run"]

_LONGEST_DAYS: Final = 1100  # three years: judgement, what a committee plans for
_COLUMNS: Final = (
    "day",
    "what",
    "job",
    "surface",
    "surface_kind",
    "work",
    "dry_t",
    "weighed_t",
    "depth_mm",
    "told_by",
    "in_store_t",
    "trouble",
)


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, "swardcast sand --club my-club --year 2027")
    add_club_options(options)
    options.add_argument(
        "--year", type=year_option, metavar="YEAR", help="a calendar year (default: that of the moment)"
    )
    add_days_options(options, first="the first day, with --to", last="the last day, with --from")
    add_output_options(options)
    return options


def _wrong_use(options: argparse.Namespace) -> str:
    if options.year is not None and (options.first is not None or options.last is not None):
        return "name a year, or the first and the last day, not both"
    if (options.first is None) != (options.last is None):
        return "name both days, as in --from 2027-04-01 --to 2028-03-31"
    return ""


def _period(options: argparse.Namespace, today: date) -> Period:
    if options.first is None:
        return options.year or year_of(today.year)
    period = days_in_order(options.first, options.last)
    if (period.last - period.first).days >= _LONGEST_DAYS:
        message = f"{period.first} to {period.last} are more than {_LONGEST_DAYS} days; name a shorter time"
        raise SwardcastError(message)
    return period


def run(options: argparse.Namespace) -> int:
    """Work the sand out and show it."""
    if wrong := _wrong_use(options):
        return wrong_usage("sand", wrong)
    records = records_of(options)
    as_of = moment_of(options, records)
    period = _period(options, as_of.astimezone(records.club.time_zone).date())
    year = sand_year(records, as_of, period.first, period.last)
    if options.page is not None:
        from swardcast.outlets.sand_page import sand_page

        write_private(options.page, sand_page(year, records.planning, records.club), club=options.club)
    show(
        options,
        as_json=lambda: _as_json(year, records),
        as_csv=lambda: as_csv(_COLUMNS, _rows(year)),
        as_text=lambda: _as_text(year, records.planning),
    )
    return 0


def _as_text(year: SandYear, planning: Planning) -> Iterator[str]:
    voice = Voice.english(year.as_of.date())
    notes = sand_notes(year, planning, voice)
    yield f"{sand_title(year, voice)}, as of {voice.moment(year.as_of)}"
    yield plain(notes[0])
    for table in sand_tables(year, planning, voice):
        yield ""
        yield from aligned(table)
    yield ""
    yield from map(plain, notes[1:])


def _rows(year: SandYear) -> Iterator[tuple[object, ...]]:
    """Every piece of work at every stage, then every change of the store."""
    for move in year.by_day:
        told = _move(move, year.store)
        yield tuple(told.get(name) for name in _COLUMNS)
    for line in year.balance.lines if year.balance is not None else ():
        told = {**_line(line), "what": f"store: {line.what.value}"}
        yield tuple(told.get(name) for name in _COLUMNS)


def _move(move: SandMove, store: SandStore) -> dict[str, Any]:
    return {
        "day": flat(move.day),
        "what": move.stage.value,
        "job": move.job.id,
        "surface": move.surface.id,
        "surface_kind": move.surface.kind.value,
        "work": move.kind.value,
        "dry_t": flat(move.dry_t),
        "weighed_t": None if move.dry_t is None else flat(store.weighed_t(move.dry_t)),
        "depth_mm": flat(move.depth_mm),
        "told_by": move.told_by or None,
    }


def _line(line: StoreLine) -> dict[str, Any]:
    return {
        "day": flat(line.day),
        "what": line.what.value,
        "job": line.job.id if line.job is not None else None,
        "weighed_t": flat(line.after_t if line.what is StoreWhat.COUNTED else line.change_t),
        "in_store_t": flat(line.after_t),
        "to_come": line.is_to_come,
        "trouble": line.trouble.value if line.trouble is not None else None,
    }


def _as_json(year: SandYear, records: ClubRecords) -> dict[str, Any]:
    return {
        "as_of": year.as_of.isoformat(timespec="minutes"),
        "from": year.first.isoformat(),
        "to": year.last.isoformat(),
        "density_t_per_m3": year.density_t_per_m3,
        "moisture_fraction": flat(year.store.moisture_fraction),
        "currency": records.planning.currency or None,
        "in_all": _costed(year.in_all, records.planning),
        "months": {f"{month:%Y-%m}": _masses(masses) for month, masses in year.by_month().items()},
        "jobs": {name: _masses(masses) for name, masses in year.by_job().items()},
        "surfaces": {
            one.kind.value: {
                **_masses(one.masses),
                "area_m2": one.area_m2,
                "kg_per_m2": flat(one.kg_per_m2),
                "depth_mm": flat(one.depth_mm),
            }
            for one in year.kinds
        },
        "work": [_move(move, year.store) for move in year.by_day],
        "without_day": [_move(move, year.store) for move in year.without_day],
        "store": _store(year),
        "materials": [_material(one) for one in year.materials],
        "published_on_greens": [_published(year, place) for place in range(len(PUBLISHED))],
    }


def _masses(masses: Masses) -> dict[str, Any]:
    return {f"{name.removesuffix('_t')}_dry_t": flat(mass) for name, mass in asdict(masses).items()}


def _costed(masses: Masses, planning: Planning) -> dict[str, Any]:
    told = _masses(masses)
    for name, dry_t in asdict(masses).items():
        weighed_t = planning.sand_store.weighed_t(dry_t)
        told[f"{name.removesuffix('_t')}_weighed_t"] = flat(weighed_t)
        told[f"{name.removesuffix('_t')}_cost"] = flat(sand_cost(weighed_t, planning))
    return told


def _store(year: SandYear) -> dict[str, Any] | None:
    balance = year.balance
    if balance is None:
        return None
    trouble, needed = balance.first_trouble, balance.needed_by
    return {
        "counted_since": balance.since.isoformat(),
        "opening_t": flat(balance.opening_t),
        "closing_t": flat(balance.closing_t),
        "room_t": balance.room_t,
        "least_t": balance.least_t,
        "first_trouble": _line(trouble) if trouble is not None else None,
        "delivery_needed_by": flat(needed.day) if needed is not None else None,
        "room_then_t": flat(balance.room_before(needed)) if needed is not None else None,
        "missing_t": flat(balance.missing_t),
        "lines": [_line(line) for line in balance.lines],
    }


def _material(one: Material) -> dict[str, Any]:
    return {
        "job": one.job.id,
        "work": one.kind.value,
        "name": one.name,
        "rate_g_per_m2": one.rate_g_per_m2,
        "rate": one.rate_words or None,
        "surfaces_done": one.done,
        "surfaces_to_come": one.to_come,
        "used_kg": flat(one.used_kg),
        "to_come_kg": flat(one.to_come_kg),
    }


def _published(year: SandYear, place: int) -> dict[str, Any]:
    one = PUBLISHED[place]
    ends = layers_mm(one, density_t_per_m3=year.density_t_per_m3, greens_m2=year.course_m2)
    return {
        "name": one.name,
        "printed": one.printed,
        "low_mm": flat(ends[0]) if ends is not None else None,
        "high_mm": flat(ends[1]) if ends is not None else None,
        "source": one.source,
    }
