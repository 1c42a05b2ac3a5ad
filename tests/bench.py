"""Measure, as ratios of processor time in one run, medians of five; then fleets and the long backtest. Nothing here can fail a build."""

from __future__ import annotations

import resource
import subprocess
import sys
import tempfile
from collections.abc import Callable
from datetime import date, timedelta
from itertools import pairwise
from pathlib import Path
from statistics import median

import numpy as np

from swardcast.compose import compose_bulletin
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.compare import When, compare
from swardcast.planning.dates import Asked, find_dates
from swardcast.planning.schedule import Gap, StartDays, Wish, schedules
from swardcast.quantities import Sand, SandBasis
from swardcast.reading.folder import read_club_folder
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Dressing, Kind, Tining
from swardcast.records.planning import Choice
from swardcast.records.translate import surface_sums
from swardcast.turf.ensemble import HORIZON_DAYS
from swardcast.turf.growth import GRASSES, growth_fraction
from swardcast.turf.healing import Opening, layers_of
from swardcast.turf.milestones import Disruption, milestone_days
from tests import bench_backtest, bench_fleet, bench_site
from tests.bench_check import own_seconds_of_check
from tests.conftest import DEMO, DEMO_AS_OF

RUNS = 5
NOTICES = 22  # those of the demo
HALF_A_YEAR = timedelta(weeks=26)


def seconds(work: Callable[[], object]) -> float:
    """Processor time of a piece of work, its processes included, so that a busy machine matters less: the median of five."""
    taken = []
    for _ in range(RUNS):
        begin = _processor_s()
        work()
        taken.append(_processor_s() - begin)
    return median(taken)


def _processor_s() -> float:
    used = (resource.getrusage(whose) for whose in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
    return sum(one.ru_utime + one.ru_stime for one in used)


def process(*arguments: str) -> Callable[[], object]:
    """Make a piece of work of a Python process."""
    return lambda: subprocess.run([sys.executable, *arguments], check=True, capture_output=True)


def forty_choices(records: ClubRecords) -> None:
    """Compare 40 choices on 18 greens, each green with a layer of sand of its own, with nothing known from before."""
    surface_sums.cache_clear()
    job = records.jobs["greens-renovation-2027"]
    when = When(surfaces=job.surfaces, starts=job.starts, surfaces_a_day=6, spare_days=2, instead_of=job)
    choices = [
        Choice(
            name="",
            operations=(
                Tining(
                    kind=Kind.HOLLOW_TINING,
                    diameter_mm=6.0 + 0.25 * number,
                    inside_diameter_mm=None,
                    across_mm=50.0,
                    along_mm=50.0,
                    depth_mm=60.0,
                    passes=1,
                ),
                Dressing(kind=Kind.TOPDRESSING, sand=Sand(1.0 + 0.05 * number, SandBasis.TONNES_EACH)),
            ),
        )
        for number in range(40)
    ]
    as_of = DEMO_AS_OF.replace(month=8, day=18)
    compare(records, as_of, WeatherBook(records.club, records.weather), when, choices)


def days_of_half_a_year(records: ClubRecords) -> None:
    """Work out each first day of 26 weeks for the work on 18 greens, with nothing known from before."""
    surface_sums.cache_clear()
    job = records.jobs["greens-renovation-2027"]
    as_of = DEMO_AS_OF.replace(month=3, day=1)
    first = as_of.date()
    asked = Asked(job=job, name=job.title, first=first, last=first + HALF_A_YEAR, instead_of=job.id)
    find_dates(records, as_of, WeatherBook(records.club, records.weather), asked)


def five_jobs() -> Wish:
    """Five jobs of up to two weeks one after the other, four weeks apart, each on any day of 26 weeks."""
    dice, first = np.random.default_rng(1), date(2027, 3, 1)
    days = tuple(first + timedelta(days=number) for number in range(HALF_A_YEAR.days))
    jobs = []
    for name in "ABCDE":
        weighted = dice.uniform(20, 60, len(days))
        lasts = timedelta(days=int(dice.integers(0, 14)))
        jobs.append(
            StartDays(
                job=name,
                first_days=days,
                last_days=tuple(day + lasts for day in days),
                weighted_days=tuple(weighted.tolist()),
                plain_days=tuple((weighted * dice.uniform(0.5, 1.0, len(days))).tolist()),
            )
        )
    gaps = tuple(Gap(earlier=one, later=other, least_days=28, in_order=True) for one, other in pairwise("ABCDE"))
    return Wish(jobs=tuple(jobs), gaps=gaps)


def tell_days(records: ClubRecords, asked: float) -> None:
    """Print how long first days take, beside comparing 40 choices."""
    dated = seconds(lambda: days_of_half_a_year(records))
    wish = five_jobs()
    placed = seconds(lambda: schedules(wish, most=5))
    print(f"each first day of 26 weeks for the same 18 greens / comparing 40 choices on them: {dated / asked:.2f}")
    print(f"5 jobs placed in 26 weeks, with all trade-offs / comparing 40 choices: {placed / asked:.2f}")


def main() -> None:
    """Print the ratios."""
    with tempfile.TemporaryDirectory() as name:
        plain = bench_site.usual(bench_site.plain_site(Path(name), NOTICES)).seconds
    nothing = seconds(process("-c", "pass"))
    shown = seconds(process("-m", "swardcast.cli", "--help"))
    records = read_club_folder(DEMO)
    composed = seconds(lambda: compose_bulletin(records, DEMO_AS_OF))
    weather = np.random.default_rng(1).normal(12, 4, (90, HORIZON_DAYS))
    grass = GRASSES["cool-season"]
    hole = Opening(area_fraction=0.05, lasting_share=1.0, half_width_mm=6.5, heals_as_mm=13.0, room_mm=0.0)
    disruption = Disruption(layers=layers_of([hole], 2.4), rim_growth_days=7.0)
    one = seconds(lambda: milestone_days(growth_fraction(weather, grass.curve), disruption))
    asked = seconds(lambda: forty_choices(records))
    print(f"Measured {date.today().isoformat()}, medians of {RUNS}.")  # noqa: DTZ011 - a remark for the reader
    print(f"swardcast --help / python -c pass: {shown / nothing:.2f}")
    print(
        f"composing the demo's bulletin (all jobs replayed) / plain Pelican, as many articles: {composed / plain:.2f}"
    )
    print(f"ensemble of one surface (90 members x 15 errors) / python -c pass: {one / nothing:.4f}")
    print(
        f"comparing 40 choices on 18 greens, weather read anew / 720 such ensembles one by one: {asked / (720 * one):.2f}"
        f" ({asked:.2f} s of computing; under 1 s is meant)"
    )
    tell_days(records, asked)
    with tempfile.TemporaryDirectory() as name:
        checked = own_seconds_of_check(Path(name) / "long")
    print(
        f"swardcast check of 1,000 jobs, 3,600 entries and 30 years of weather, imports apart / python -c pass:"
        f" {checked / nothing:.0f} ({checked:.2f} s; under 1 s is meant)"
    )
    bench_fleet.main()
    bench_site.main()
    bench_backtest.main()


if __name__ == "__main__":
    main()
