"""`swardcast reckon healing`: days to each milestone from the work, the day and a place's temperatures."""

from __future__ import annotations

import argparse
import csv
from datetime import date
from io import StringIO
from pathlib import Path
from typing import Any, TypeVar

from swardcast.cli.common import quantity, text_of
from swardcast.errors import InputNeedsAttention, Problem, SwardcastError
from swardcast.quantities import QuantityError, parse_count, parse_length_mm, parse_tines
from swardcast.records.club import Grass

__all__ = ["add_options", "reckon"]

KeyT = TypeVar("KeyT", int, date)


def _tines(text: object) -> tuple[float, float, float]:
    diameter_mm, across_mm, along_mm = parse_tines(text)
    if diameter_mm >= min(across_mm, along_mm):
        raise QuantityError(text, "a tine narrower than its spacing")
    return diameter_mm, across_mm, along_mm


def _grooves(text: object) -> tuple[float, float]:
    blade, at, spacing = str(text).partition(" at ")
    if not at:
        raise QuantityError(text, "a blade and its spacing, such as '3 mm at 25.4 mm'")
    blade_mm, spacing_mm = parse_length_mm(blade), parse_length_mm(spacing)
    if blade_mm >= spacing_mm:
        raise QuantityError(text, "a blade narrower than its spacing")
    return blade_mm, spacing_mm


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        message = f"found {text!r}; expected a day such as '2027-08-23'"
        raise argparse.ArgumentTypeError(message) from None


def add_options(options: argparse.ArgumentParser) -> None:
    """Describe the options of this sum."""
    tines = options.add_mutually_exclusive_group()
    tines.add_argument(
        "--hollow", type=quantity(_tines), metavar="TINES", help="hollow tines, such as '12.7 mm at 50.8 x 50.8 mm'"
    )
    tines.add_argument("--solid", type=quantity(_tines), metavar="TINES", help="solid tines, written the same way")
    options.add_argument(
        "--grooves", type=quantity(_grooves), metavar="BLADES", help="blades, such as '3 mm at 25.4 mm'"
    )
    options.add_argument(
        "--passes", type=quantity(parse_count), default=1, help="passes of tines or blades (default: 1)"
    )
    options.add_argument(
        "--sand-surplus",
        type=quantity(parse_length_mm),
        default=0.0,
        metavar="DEPTH",
        help="sand left on top, such as '2.4 mm'",
    )
    grasses = [grass.value for grass in Grass]
    options.add_argument("--grass", choices=grasses, default=grasses[0], help=f"the grass (default: {grasses[0]})")
    options.add_argument("--start", type=_day, required=True, metavar="DAY", help="day of the work")
    options.add_argument(
        "--temperatures",
        type=Path,
        required=True,
        metavar="FILE",
        help="CSV of date,tmean_c or of month,tmean_c (twelve normals)",
    )


def reckon(options: argparse.Namespace) -> dict[str, Any]:
    """Work out the days to each milestone."""
    from swardcast.records.translate import WIDEST_FITTED_MM
    from swardcast.turf.ensemble import HORIZON_DAYS
    from swardcast.turf.growth import GRASSES, growth_fraction
    from swardcast.turf.healing import layers_of, rim_growth_days
    from swardcast.turf.milestones import (
        ALLOW_UNTIL,
        EARLY,
        LIKELY,
        Disruption,
        complete_cover_days,
        days_at,
        default_log_spread,
        milestone_days,
    )
    from swardcast.turf.pace import usual_pace

    openings = _openings(options)
    if not openings and options.sand_surplus <= 0:
        raise QuantityError("no work", "--hollow, --solid, --grooves or --sand-surplus")
    grass = GRASSES[options.grass]
    widest_mm = max((tines[0] for tines in (options.hollow, options.solid) if tines is not None), default=0.0)
    spread = default_log_spread(grass, validated=bool(openings) and widest_mm <= WIDEST_FITTED_MM)
    growth = growth_fraction(_temperatures(options.temperatures, options.start, HORIZON_DAYS), grass.curve)
    disruption = Disruption(
        layers=layers_of(openings, options.sand_surplus),
        rim_growth_days=rim_growth_days(openings),
        pace=usual_pace(spread),
        lag_log_spread=spread,
        opened=bool(openings),
    )
    days = milestone_days(growth, disruption)
    return {
        f"days_to_{name}": dict(
            zip(
                ("early", "likely", "allow_until"),
                map(_rounded, days_at(samples, EARLY, LIKELY, ALLOW_UNTIL)),
                strict=True,
            )
        )
        for name, samples in (
            ("settled", days.settled),
            ("holes_closed", days.holes_closed),
            ("back_to_normal", days.back_to_normal),
            ("complete_cover", complete_cover_days(growth, disruption)),
        )
    }


def _rounded(days: float | None) -> float | None:
    return None if days is None else round(days, 1)


def _openings(options: argparse.Namespace) -> list[Any]:
    from swardcast.turf.healing import SOLID_LASTING_SHARE, groove_opening, tine_opening

    openings = []
    for tines, lasting in ((options.hollow, 1.0), (options.solid, SOLID_LASTING_SHARE)):
        if tines is not None:
            openings.append(tine_opening(*tines, lasting_share=lasting, passes=options.passes))
    if options.grooves is not None:
        openings.append(groove_opening(*options.grooves, passes=options.passes))
    return openings


def _temperatures(file: Path, start: date, days: int) -> Any:
    """Temperatures from the start on: twelve normals, days as they were, or one member for each year before."""
    import numpy as np

    from swardcast.turf.ensemble import climate_of, members_from_monthly, weather_members
    from swardcast.turf.series import DailySeries

    monthly, daily = _read(file)
    if monthly:
        return members_from_monthly(np.array([monthly[month] for month in range(1, 13)]), start, days).tmean_c
    series = DailySeries.from_days(daily)
    before = {day: value for day, value in daily.items() if day < start}
    known_days = (series.after_last - start).days if start >= series.first else 0
    if known_days > 0 and (not before or known_days >= days):
        told = series.between(start, min(days, known_days))
        if np.isnan(told).any():
            raise InputNeedsAttention(
                [Problem(file=str(file), found="days missing after the start", expected="each day once")]
            )
        return told[np.newaxis, :]
    past = climate_of(DailySeries.from_days(before or daily))
    today = series.after_last if known_days > 0 else start
    members = weather_members(past, series, None, start=start, today=today, days=days).tmean_c
    if not len(members):
        message = f"{file} has no year with at least 90 of the 100 days after {start:%d %B}; no range can be drawn"
        raise SwardcastError(message)
    return members


def _read(file: Path) -> tuple[dict[int, float], dict[date, float]]:
    problems: list[Problem] = []
    monthly: dict[int, float] = {}
    daily: dict[date, float] = {}
    with StringIO(text_of(file), newline="") as lines:
        rows = csv.DictReader(lines)
        names = [name.strip() for name in rows.fieldnames or []]
        if "tmean_c" not in names or not {"date", "month"} & set(names):
            raise InputNeedsAttention(
                [
                    Problem(
                        file=str(file),
                        line=1,
                        found=", ".join(names) or "nothing",
                        expected="columns date,tmean_c or month,tmean_c",
                    )
                ]
            )
        for row in rows:
            _read_row(row, names, monthly, daily, problems=problems, file=str(file), line=rows.line_num)
    if "month" in names and set(monthly) != set(range(1, 13)) and not problems:
        problems.append(Problem(file=str(file), found=f"{len(monthly)} months", expected="twelve, from 1 to 12"))
    if not monthly and not daily and not problems:
        problems.append(Problem(file=str(file), found="no temperature", expected="a line for each day or month"))
    if problems:
        raise InputNeedsAttention(problems)
    return monthly, daily


def _month(text: str) -> int:
    month = int(text)
    if not 1 <= month <= 12:  # noqa: PLR2004 - the calendar
        raise ValueError
    return month


def _once(values: dict[KeyT, float], key: KeyT, value: float) -> bool:
    """Keep a value; tell whether its day or month is new."""
    return values.setdefault(key, value) is value


def _read_row(
    row: dict[str, str],
    names: list[str],
    monthly: dict[int, float],
    daily: dict[date, float],
    *,
    problems: list[Problem],
    file: str,
    line: int,
) -> None:
    key = "month" if "month" in names else "date"
    try:
        value = float(row["tmean_c"])
        if not -60 <= value <= 60:  # noqa: PLR2004 - no air near a course is colder or warmer
            raise ValueError
        if key == "month":
            new = _once(monthly, _month(row["month"]), value)
        else:
            new = _once(daily, date.fromisoformat(row["date"]), value)
        if not new:
            found, expected = f"{row[key]} a second time", f"each {'day' if key == 'date' else key} once"
            problems.append(Problem(file=file, line=line, found=found, expected=expected))
    except (TypeError, ValueError):
        found = f"{row.get(key)!r} with {row.get('tmean_c')!r}"
        problems.append(
            Problem(file=file, line=line, found=found, expected=f"a {key} and a mean temperature from -60 to 60 C")
        )
