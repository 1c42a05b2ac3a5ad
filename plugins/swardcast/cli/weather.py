"""`swardcast weather fetch`: forecast, observed days and past years from an open service, all or nothing."""

from __future__ import annotations

import argparse
import re
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from swardcast.cli.common import add_club_options, new_parser, print_json
from swardcast.errors import SwardcastError
from swardcast.records.weather_setup import SERVICES

if TYPE_CHECKING:
    import httpx

    from swardcast.fetching.errand import Fetched
    from swardcast.reading.weather_folder import WeatherFolder

__all__ = ["fetch", "parser", "run"]

_EXAMPLE = "swardcast weather fetch --club my-club --history-years 30"
_WHAT = "fetch the forecast, the days before today and past years from an open weather service"


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    options = new_parser(name, what, _EXAMPLE)
    actions = options.add_subparsers(dest="action", metavar="ACTION", required=True)
    fetching = actions.add_parser(
        "fetch",
        help=_WHAT,
        description=f"{_WHAT[:1].upper()}{_WHAT[1:]}. Nothing is changed unless all of it could be had.",
        epilog=f"Example:\n  {_EXAMPLE}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    add_club_options(fetching, as_of=False)
    fetching.add_argument("--service", choices=SERVICES, help="whom to ask (default: as in club.yaml, else institutes)")
    fetching.add_argument(
        "--observed-days", metavar="N", type=_number, help="days before today that are missing (default: 14)"
    )
    fetching.add_argument(
        "--history-years", metavar="N", type=_number, help="whole past years that are missing, such as 30 (default: 0)"
    )
    fetching.add_argument(
        "--base-url", metavar="ADDRESS", type=_address, help="a copy of the service (default: the service itself)"
    )
    fetching.add_argument("--dry-run", action="store_true", help="ask, say what would be written, and write nothing")
    fetching.add_argument("--json", action="store_true", help="print what was fetched for a machine")
    return options


def _number(text: str) -> int:
    if not re.fullmatch(r"\d{1,3}", text):
        message = f"{text!r} is no whole number from 0 to 999"
        raise argparse.ArgumentTypeError(message)
    return int(text)


def _address(text: str) -> str:
    if not re.fullmatch(r"https?://[^\s/?#]+(/[^\s?#]*)?", text):
        message = f"{text!r} is no address such as 'https://weather.example'"
        raise argparse.ArgumentTypeError(message)
    return text


def run(options: argparse.Namespace) -> int:
    """Fetch, with the clock, the network and real waiting."""
    return fetch(options, now=datetime.now(UTC))


def fetch(
    options: argparse.Namespace,
    *,
    now: datetime,
    wait: Callable[[float], None] = time.sleep,
    transport: httpx.BaseTransport | None = None,
) -> int:
    """Fetch weather into a club folder.

    Args:
        options: as `parser` reads them.
        now: the present moment, aware.
        wait: waits a number of seconds.
        transport: what carries requests; None is the network.

    Returns:
        0 when all was had, 1 when it was stopped.

    Raises:
        SwardcastError: when any of it could not be had; says what is used instead, and nothing was changed.
    """
    from swardcast.fetching.asking import Asker, client
    from swardcast.fetching.errand import Errand, run_errand
    from swardcast.fetching.service import FetchError
    from swardcast.fetching.services import BY_NAME
    from swardcast.reading.weather_folder import read_weather_folder

    there = read_weather_folder(options.club)
    setup = there.setup
    errand = Errand(
        club=there.club,
        weather=there.weather,
        service=BY_NAME[options.service or setup.service],
        observed_days=setup.observed_days if options.observed_days is None else options.observed_days,
        history_years=setup.history_years if options.history_years is None else options.history_years,
        now=now,
    )
    base = options.base_url or setup.service_address
    try:
        with client(transport) as through:
            asker = Asker(through, base=base, contact=errand.place.contact, wait=wait, now=now)
            fetched = run_errand(errand, asker.ask)
        plan = _planned(options.club, there, fetched, errand.service.record.name, now)
        if not options.dry_run:
            _write(options.club, plan)
    except FetchError as error:
        message = f"{error}. Nothing was changed. {_used_instead(there, now)}"
        raise SwardcastError(message) from error
    except KeyboardInterrupt:
        print(f"Stopped. Nothing was changed. {_used_instead(there, now)}", file=sys.stderr)
        return 1
    _report(options, plan, fetched)
    return 0


@dataclass(slots=True)
class _Plan:
    """Files by path below the club folder, and what is in them."""

    files: dict[str, bytes] = field(default_factory=dict)
    said: list[str] = field(default_factory=list)
    told: dict[str, Any] = field(default_factory=dict)


def _planned(folder: Path, there: WeatherFolder, fetched: Fetched, record: str, now: datetime) -> _Plan:
    """Prepare every file in memory; an issued forecast or a history that is there is never given other content."""
    from swardcast.fetching.merging import sources_yaml, thanked
    from swardcast.reading.files import SOURCES

    plan = _Plan(told={"forecast": None, "observed": None, "history": None})
    _plan_forecast(plan, folder, there, fetched, now)
    _plan_history(plan, folder, fetched, record)
    _plan_observed(plan, folder, there, fetched)
    sources = sources_yaml(thanked(there.weather.sources, fetched.sources)).encode()
    if sources and sources != _content(folder, SOURCES):
        plan.files[SOURCES] = sources
    return plan


def _plan_forecast(plan: _Plan, folder: Path, there: WeatherFolder, fetched: Fetched, now: datetime) -> None:
    """Name a forecast by the moment at which it came: a build of an earlier moment must not know it."""
    from swardcast.fetching.merging import forecast_csv

    if fetched.forecast is None:
        return
    data = forecast_csv(fetched.forecast).encode()
    newest = max((folder / "weather" / "forecast").glob("*.csv"), key=lambda path: path.stem, default=None)
    if newest is not None and newest.read_bytes() == data:
        plan.said.append("The forecast is the same as the newest one that is there.")
        return
    name = f"weather/forecast/{now.astimezone(there.club.time_zone):%Y-%m-%dT%H%M}.csv"
    _put_new(plan, folder, name, data)
    days = sorted(fetched.forecast)
    plan.said.append(f"{name}: a forecast of {_many(len(days))}, {days[0]} to {days[-1]}")
    plan.told["forecast"] = {"file": name, "days": len(days), "first": f"{days[0]}", "last": f"{days[-1]}"}


def _plan_history(plan: _Plan, folder: Path, fetched: Fetched, record: str) -> None:
    from swardcast.fetching.merging import days_csv, history_name

    if not fetched.history:
        return
    name = f"weather/history/{history_name(record, fetched.history)}"
    _put_new(plan, folder, name, days_csv(fetched.history).encode())
    days = sorted(fetched.history)
    plan.said.append(f"{name}: {_many(len(days))} of past years, {days[0]} to {days[-1]}")
    plan.told["history"] = {"file": name, "days": len(days), "first": f"{days[0]}", "last": f"{days[-1]}"}


def _plan_observed(plan: _Plan, folder: Path, there: WeatherFolder, fetched: Fetched) -> None:
    """Add days to observed.csv; beside it when that file is a station's own export, which we never touch."""
    from swardcast.fetching.merging import merged_observed
    from swardcast.reading.files import OBSERVED, OBSERVED_FETCHED
    from swardcast.reading.weather_files import has_own_columns

    if not fetched.observed:
        return
    text = (_content(folder, OBSERVED) or b"").decode(errors="replace")
    name = OBSERVED if there.setup.station_file is None or has_own_columns(text) else OBSERVED_FETCHED
    if name == OBSERVED_FETCHED:
        text = (_content(folder, name) or b"").decode()
    merged = merged_observed(text, fetched.observed)
    if merged.added:
        plan.files[name] = merged.text.encode()
        days = _listed(merged.added)
        plan.said.append(f"{name}: {_many(len(merged.added))} added ({days}); what the club measured is as it was")
    if merged.kept:
        plan.said.append(f"{name}: left as it was for {', '.join(map(str, merged.kept))}, half measured")
    plan.told["observed"] = {"file": name, "added": [str(day) for day in merged.added]}


def _content(folder: Path, name: str) -> bytes | None:
    path = folder / name
    return path.read_bytes() if path.is_file() else None


def _put_new(plan: _Plan, folder: Path, name: str, data: bytes) -> None:
    from swardcast.fetching.service import FetchError

    if (folder / name).exists():
        message = f"{name} is there already with other days, and is never overwritten"
        raise FetchError(message)
    plan.files[name] = data


def _write(folder: Path, plan: _Plan) -> None:
    from swardcast.cli.together import write_together
    from swardcast.fetching.service import FetchError

    try:
        write_together(folder, plan.files)
    except OSError as error:
        message = f"{error.filename or 'A file'} could not be written ({error.strerror})"
        raise FetchError(message) from error


def _used_instead(there: WeatherFolder, now: datetime) -> str:
    """Say in one sentence what dates rest on as long as nothing new has come."""
    from swardcast.language.voice import Voice

    weather, today = there.weather, now.astimezone(there.club.time_zone).date()

    def said(day: date, near: date) -> str:
        return Voice.english(near).short_day(day)

    past = "past years are used" if weather.history_c else "there are no past years either, so no dates are computed"
    issued = [forecast for forecast in weather.forecasts if forecast.issued_at <= now]
    if not issued:
        first = f"There is no forecast yet: {past}"
    else:
        newest = issued[-1]
        at = newest.issued_at.astimezone(there.club.time_zone)
        named = f"The forecast of {said(at.date(), date.min)}, {Voice.english(date.min).time(at)}"
        over = max(newest.tmean_c, default=date.min) < today
        first = f"{named} has run out: {past}" if over else f"{named} is still used"
    ends = max((day for day in weather.observed_c if day < today), default=None)
    return (
        f"{first}; {'no day has been observed yet' if ends is None else f'observed days end on {said(ends, today)}'}."
    )


def _listed(days: Sequence[date]) -> str:
    """Name each of a few days, of many the first and the last."""
    few = len(days) <= 7  # noqa: PLR2004 - a week reads in one line
    return ", ".join(map(str, days)) if few else f"between {days[0]} and {days[-1]}"


def _many(count: int) -> str:
    return "1 day" if count == 1 else f"{count} days"


def _report(options: argparse.Namespace, plan: _Plan, fetched: Fetched) -> None:
    if options.json:
        sources = [source.name for source in fetched.sources]
        print_json({"dry_run": options.dry_run, **plan.told, "files": sorted(plan.files), "sources": sources})
    else:
        for line in plan.said or ["Nothing new."]:
            print(line)
    for note in fetched.notes:
        print(note, file=sys.stderr)
    if options.dry_run:
        print("A dry run: nothing was written.", file=sys.stderr)
