"""The long backtest: every start month, every need from 4 to 20 growth days; a minute or so. Nothing here can fail."""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence

from swardcast.turf.backtest import Question, Replay, replay
from swardcast.turf.growth import GRASSES, PUBLISHED_COOL
from swardcast.turf.series import DailySeries
from swardcast.turf.verdicts import Verdict, verdict_of, verdicts
from tests.turf.long_records import clemson, melbourne

NEEDS = tuple(float(need) for need in range(4, 21))
FEWEST_CASES, FEWEST_OF_A_SHORT_RECORD = 60, 20  # fewer are not printed: "-"
LOW, HIGH = 0.75, 0.88

Value = Callable[[Verdict], float | None]
TABLES: dict[str, Value] = {
    "share in range, % (80 is meant)": lambda one: 100 * one.coverage,
    "share reached by allow until, % (90 is meant)": lambda one: 100 * one.in_time,
    "mean error of the likely day, days": lambda one: one.mean_error_days,
    "error saved against always n days, %": lambda one: None if one.skill_always is None else 100 * one.skill_always,
    "error saved against past years, %": (
        lambda one: None if one.skill_climatology is None else 100 * one.skill_climatology
    ),
}


def print_table(name: str, judged: Sequence[Verdict], value: Value) -> None:
    """Print one quantity, start months down, needs across."""
    by_place = {(one.month, one.need): value(one) for one in judged}
    print(f"\n{name}\nmonth " + "".join(f"{need:6g}" for need in NEEDS))
    for month in range(1, 13):
        cells = (by_place.get((month, need)) for need in NEEDS)
        print(f"{month:5} " + "".join("     -" if cell is None else f"{cell:6.1f}" for cell in cells))


def print_summary(played: Replay, judged: Sequence[Verdict], known_days: int) -> None:
    """Print the least and the most over months and needs, and what is outside the target."""
    whole = verdict_of(played.cases[played.cases["known_days"] == known_days])
    coverages = [one.coverage for one in judged]
    in_time = [one.in_time for one in judged]
    always = [one.skill_always for one in judged if one.skill_always is not None]
    past = [one.skill_climatology for one in judged if one.skill_climatology is not None]
    print(
        f"\nin range {whole.coverage:.3f} ({min(coverages):.3f} to {max(coverages):.3f}), "
        f"in time {whole.in_time:.3f} ({min(in_time):.3f} to {max(in_time):.3f}), off by "
        f"{whole.mean_error_days:.2f} days, bias {whole.bias_days:+.2f}, CRPS {whole.crps_days:.2f} days; "
        f"saved against always {whole.skill_always or 0:.3f} (least {min(always):.3f}), "
        f"against past years {whole.skill_climatology or 0:.3f} (least {min(past):.3f})"
    )
    outside = [one for one in judged if not LOW <= one.coverage <= HIGH]
    words = ", ".join(f"month {one.month} need {one.need:g}: {one.coverage:.3f} of {one.cases}" for one in outside)
    print(f"in range outside {LOW} to {HIGH}: {words or 'none'}")


def print_replay(name: str, record: DailySeries, question: Question, fewest_cases: int = FEWEST_CASES) -> None:
    """Replay and print everything."""
    begin = time.perf_counter()
    played = replay(record, question)
    seconds = time.perf_counter() - begin
    print(f"\n== {name}; {len(played.cases)} predictions in {seconds:.0f} s, {played.left_out} left out")
    for known_days in question.known_days:
        judged = [one for one in verdicts(played, fewest_cases=fewest_cases) if one.known_days == known_days]
        print(f"\n-- {known_days} days of healing known")
        for title, value in TABLES.items():
            print_table(title, judged, value)
        print_summary(played, judged, known_days)


def main() -> None:
    """Print the tables."""
    curve = GRASSES["cool-season"].curve
    kept = Question(curve=curve, needs=NEEDS, first_year=1976)
    print_replay("Clemson, 1976 to 2020, 30 years before each, curve as fitted to healing", clemson(), kept)
    published = Question(curve=PUBLISHED_COOL, needs=NEEDS, first_year=1976)
    print_replay("Clemson, 1976 to 2020, 30 years before each, published growth curve", clemson(), published)
    few = Question(curve=curve, needs=NEEDS, training_years=3)
    print_replay(
        "Melbourne (maxima less 5 C), 1984 to 1990, 3 years before each", melbourne(), few, FEWEST_OF_A_SHORT_RECORD
    )


if __name__ == "__main__":
    main()
