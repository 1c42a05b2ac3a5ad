"""`swardcast backtest --own`: what the club promised on the day of each job, and what came of it."""

from __future__ import annotations

import argparse
from datetime import date
from typing import Any

from swardcast.cli.common import moment_of, print_json, records_of
from swardcast.language.voice import Voice
from swardcast.notices.track_record import compose_track_record
from swardcast.outlook.track_record import Kept, track_record
from swardcast.outlook.weather_book import WeatherBook

__all__ = ["run_own"]


def run_own(options: argparse.Namespace) -> int:
    """Show the club's own track record."""
    records = records_of(options)
    as_of = moment_of(options, records)
    kept = track_record(records, as_of, WeatherBook(records.club, records.weather))
    if options.json:
        print_json([_as_json(one) for one in kept])
        return 0
    record = compose_track_record(kept, Voice.english(as_of.date()))
    for sentence in record.sentences:
        print(sentence)
    for line in record.lines:
        print(f"\n{line.what} [{line.notice_id}]")
        print(f"  {line.work}, we said: {line.computed}")
        print(f"  back to normal: {line.came}")
        print(f"  {line.verdict}")
    return 0


def _as_json(one: Kept) -> dict[str, Any]:
    return {
        "job": one.job.id,
        "done_on": one.done_on.isoformat(),
        "early": _iso(one.promised.early),
        "likely": _iso(one.promised.likely),
        "allow_until": _iso(one.promised.allow_until),
        "back_to_normal": _iso(one.normal_on),
        "inside": one.is_inside if one.is_judged else None,
        "days_after_likely": one.late_days,
    }


def _iso(day: date | None) -> str | None:
    return day.isoformat() if day is not None else None
