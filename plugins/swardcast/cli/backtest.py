"""`swardcast backtest`: the predictions replayed over a long record of daily temperatures."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Iterator, Sequence
from dataclasses import asdict
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from swardcast.cli.common import add_club_options, new_parser, print_json, records_of, text_of
from swardcast.errors import InputNeedsAttention, Problem, SwardcastError
from swardcast.records.club import Grass

if TYPE_CHECKING:
    from swardcast.turf.backtest import Question, Replay
    from swardcast.turf.growth import GrowthCurve
    from swardcast.turf.series import DailySeries
    from swardcast.turf.verdicts import Verdict

__all__ = ["parser", "run"]

_LEGEND: Final = """
took       half of the cases took no longer, days
in range   share within early and allow until; 80 % is meant
in time    share reached by allow until; 90 % is meant
off by     mean error of the likely day, days
bias       days that the likely day came too late (+) or too soon (-)
range      mean length from early to allow until, days
no date    share of cases in which the season was too uncertain to tell an allow until
v. always  share of the error saved against always telling one number of days for a need: the median over all start
           days, whatever the season, of the years before
v. past    share saved against telling what the past years took from the same start day, whatever the weather since
           The error is the CRPS, in days: for a single number the plain error. Below 0 is worse."""

_PUBLISHED: Final = "published cool-season"
_YEARS: Final = 30  # years of training, the length of a climate normal; `turf.climate.PAST_YEARS`
_MONTHS: Final = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, "swardcast backtest --club my-club --months 3,4,9 --needs 8,14")
    add_club_options(options, as_of=False)
    options.add_argument(
        "--history", type=Path, metavar="FILE", help="a CSV like those in weather/history, instead of the club's"
    )
    options.add_argument(
        "--needs", type=_list_of(_need), default=(4.0, 8.0, 14.0, 20.0), help="growth days (default: 4,8,14,20)"
    )
    options.add_argument(
        "--months", type=_list_of(_whole(1, 12)), default=tuple(range(1, 13)), help="start months (default: 1 to 12)"
    )
    options.add_argument(
        "--known",
        type=_list_of(_whole(0, 100)),
        default=(0, 5, 10),
        metavar="DAYS",
        help="days of healing that are over when a prediction is made (default: 0,5,10)",
    )
    options.add_argument(
        "--years",
        type=_whole(1, 100),
        help=f"years before that a prediction knows (default: {_YEARS}, or half of a record shorter than {2 * _YEARS})",
    )
    options.add_argument("--first-year", type=_whole(1, 9999), metavar="YEAR", help="first year that is predicted")
    grasses = [*(grass.value for grass in Grass), _PUBLISHED]
    options.add_argument(
        "--grass", choices=grasses, default=grasses[0], help=f"the grass, for its growth (default: {grasses[0]})"
    )
    options.add_argument(
        "--own", action="store_true", help="the club's own dates instead: what was promised, and what came of it"
    )
    options.add_argument("--as-of", metavar="MOMENT", help="with --own: the moment (default: now)")
    options.add_argument("--json", action="store_true", help="print the results for a machine")
    return options


def run(options: argparse.Namespace) -> int:
    """Replay and show."""
    if options.own:
        from swardcast.cli.backtest_own import run_own

        return run_own(options)
    from swardcast.turf.backtest import Question, replay
    from swardcast.turf.verdicts import verdicts

    record = _record(options)
    question = Question(
        curve=_curve(options.grass),
        needs=options.needs,
        months=options.months,
        known_days=options.known,
        training_years=_training_years(record, options.years),
        first_year=options.first_year,
    )
    played = replay(record, question)
    if not len(played.cases):
        raise SwardcastError(_too_short(record, question))
    judged = verdicts(played)
    if options.json:
        print_json(_as_json(record, question, played, judged, options.grass))
    else:
        for line in _lines(question, played, judged, options.grass):
            print(line)
    return 0


def _list_of(one: Callable[[str], Any]) -> Callable[[str], tuple[Any, ...]]:
    def read(text: str) -> tuple[Any, ...]:
        return tuple(sorted({one(part.strip()) for part in text.split(",")}))

    return read


def _whole(least: int, most: int) -> Callable[[str], int]:
    def read(text: str) -> int:
        if not (text.isascii() and text.isdigit() and least <= int(text) <= most):
            message = f"found {text!r}; expected a whole number from {least} to {most}"
            raise argparse.ArgumentTypeError(message)
        return int(text)

    return read


def _need(text: str) -> float:
    try:
        need = float(text)
    except ValueError:
        need = 0.0
    if not 0 < need <= 100:  # noqa: PLR2004 - no job asks for more than a season's growth
        message = f"found {text!r}; expected growth days above 0 and up to 100, such as '8'"
        raise argparse.ArgumentTypeError(message)
    return need


def _curve(grass: str) -> GrowthCurve:
    from swardcast.turf.growth import GRASSES, PUBLISHED_COOL

    return PUBLISHED_COOL if grass == _PUBLISHED else GRASSES[grass].curve


def _record(options: argparse.Namespace) -> DailySeries:
    from swardcast.turf.series import DailySeries

    days = _days_of_file(options.history) if options.history is not None else records_of(options).weather.history_c
    if not days:
        message = "weather/history has no day: put daily temperatures there, or name a file with --history"
        raise SwardcastError(message)
    return DailySeries.from_days(days)


def _days_of_file(path: Path) -> dict[date, float]:
    from swardcast.reading.weather_files import DailyWeather, daily_weather_from

    problems: list[Problem] = []
    weather = DailyWeather()
    daily_weather_from(text_of(path), file=str(path), into=weather, problems=problems)
    if not weather.tmean_c and not problems:
        problems.append(Problem(file=str(path), found="no temperature", expected="a line for each day"))
    if problems:
        raise InputNeedsAttention(problems)
    return weather.tmean_c


def _whole_years(record: DailySeries) -> int:
    first = record.first.year + (record.first > date(record.first.year, 1, 1))
    return max(0, record.after_last.year - first)


def _training_years(record: DailySeries, asked: int | None) -> int:
    return asked or max(1, min(_YEARS, _whole_years(record) // 2))


def _too_short(record: DailySeries, question: Question) -> str:
    from swardcast.turf.ensemble import HORIZON_DAYS

    first, last = record.first, record.after_last.year - (record.after_last == date(record.after_last.year, 1, 1))
    return (
        f"nothing can be predicted: the record runs from {first} into {last}, with {_whole_years(record)} whole years; "
        f"a prediction takes {question.training_years} of them and {HORIZON_DAYS} days to hold it against. "
        "Give a longer record, a smaller --years or an earlier --first-year."
    )


def _as_json(
    record: DailySeries, question: Question, played: Replay, judged: Sequence[Verdict], grass: str
) -> dict[str, Any]:
    from swardcast.turf.ensemble import HORIZON_DAYS

    years = played.cases["year"]
    return {
        "record_from": record.first.isoformat(),
        "record_to": date.fromordinal(record.after_last.toordinal() - 1).isoformat(),
        "predicted_years": [int(years.min()), int(years.max())],
        "training_years": question.training_years,
        "grass": grass,
        "horizon_days": HORIZON_DAYS,
        "left_out": played.left_out,
        "verdicts": [
            {name: round(value, 4) if isinstance(value, float) else value for name, value in asdict(verdict).items()}
            for verdict in judged
        ],
    }


def _lines(question: Question, played: Replay, judged: Sequence[Verdict], grass: str) -> Iterator[str]:
    from swardcast.turf.ensemble import HORIZON_DAYS
    from swardcast.turf.verdicts import verdict_of

    years = played.cases["year"]
    yield f"Days until a need of growth is reached, {grass} grass, as they would have been foretold from {years.min()}"
    yield f"to {years.max()}, each from the {question.training_years} years before only, and as they came."
    yield "Weather only: no forecast is used, and the healing model's own error is no part of this."
    yield f"A need not reached within {HORIZON_DAYS} days counts as {HORIZON_DAYS} days, for all competitors alike."
    if played.left_out:
        yield f"Left out, for gaps or because the record ends: {played.left_out} pairs of start day and need."
    for known_days in question.known_days:
        then = played.cases[played.cases["known_days"] == known_days]
        if not len(then):
            continue
        made = f"after {known_days} days of healing" if known_days else "on the day of the work"
        yield f"\nForetold {made}"
        yield (
            f"  {'start':<10}{'need':>5}{'cases':>7}{'took':>7}{'in range':>10}{'in time':>9}{'off by':>8}{'bias':>7}"
            f"{'range':>7}{'no date':>9}{'v. always':>11}{'v. past':>9}"
        )
        for verdict in judged:
            if verdict.known_days == known_days and verdict.month is not None and verdict.need is not None:
                yield _row(_MONTHS[verdict.month - 1], f"{verdict.need:g}", verdict)
        yield _row("all", "", verdict_of(then))
    yield _LEGEND


def _row(start: str, need: str, verdict: Verdict) -> str:
    def share(value: float | None) -> str:
        return "-" if value is None else f"{100 * value:.0f} %"

    return (
        f"  {start:<10}{need:>5}{verdict.cases:>7}{verdict.usual_days:>7.1f}"
        f"{share(verdict.coverage):>10}{share(verdict.in_time):>9}"
        f"{verdict.mean_error_days:>8.1f}{verdict.bias_days:>+7.1f}{verdict.range_days:>7.1f}"
        f"{share(verdict.no_date):>9}{share(verdict.skill_always):>11}{share(verdict.skill_climatology):>9}"
    )
