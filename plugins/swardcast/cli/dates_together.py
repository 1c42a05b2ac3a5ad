"""`swardcast dates --jobs`, `--programme`: first days for several jobs together."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from datetime import datetime
from typing import Any, Final

from pydantic_core import PydanticCustomError

from swardcast.cli.common import moment_of, records_to_plan
from swardcast.cli.dates_asked import UNTIL, days_asked
from swardcast.cli.planning_asked import planned_job
from swardcast.cli.private_file import write_private
from swardcast.cli.private_tables import aligned, as_csv, flat, plain, show
from swardcast.errors import SwardcastError, nearest
from swardcast.language.voice import Voice
from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.what_if import facts_as_known
from swardcast.planning.programme import AskedTogether, Together, find_together
from swardcast.planning.programme_columns import TOGETHER_COLUMNS, jobs_in_schedules
from swardcast.planning.programme_notes import blame_in_words, together_notes
from swardcast.planning.programme_tables import letters_of, together_reasons, together_tables, together_title
from swardcast.reading.gaps_block import gap_days
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job

__all__ = ["add_together_options", "run_together", "wrong_together"]

_MOST_JOBS: Final = 12  # judgement; the search grows with each
_MOST_CREWS: Final = 9  # judgement: more than any course has
_OF_ONE_JOB: Final = {
    "job": "--job",
    "choice": "--choice",
    "surfaces": "--surfaces",
    "surfaces_a_day": "--surfaces-a-day",
    "spare_days": "--spare-days",
}


def add_together_options(options: argparse.ArgumentParser) -> None:
    """Add the options that concern several jobs."""
    several = options.add_argument_group("several jobs together")
    which = several.add_mutually_exclusive_group()
    which.add_argument(
        "--jobs", type=_ids, metavar="ID,ID", default=(), help="planned jobs, which all count as moved, in their order"
    )
    which.add_argument("--programme", metavar="NAME", default="", help="all jobs of a programme that lie ahead")
    several.add_argument(
        "--gap", type=_gap, metavar="TIME", default=0, help="least time between jobs on a common surface, as '4 weeks'"
    )
    several.add_argument("--any-order", action="store_true", help="the jobs need not keep their order")
    several.add_argument("--crews", type=_crews, metavar="N", default=1, help="jobs done on the same day (default: 1)")


def _ids(text: str) -> tuple[str, ...]:
    names = tuple(name.strip() for name in text.split(",") if name.strip())
    if len(names) < 2 or len(set(names)) < len(names):  # noqa: PLR2004 - several
        expected = "ids of two or more different jobs, with commas between them; for one job, --job ID"
        message = f"found {text!r}; expected {expected}"
        raise argparse.ArgumentTypeError(message)
    return names


def _gap(text: str) -> int:
    try:
        return gap_days(text)
    except PydanticCustomError as error:
        told = error.context or {}
        message = f"found {told['found']}; expected {told['expected']}"
        raise argparse.ArgumentTypeError(message) from None


def _crews(text: str) -> int:
    if not text.isascii() or not text.isdigit() or not 1 <= int(text) <= _MOST_CREWS:
        message = f"found {text!r}; expected a number of crews from 1 to {_MOST_CREWS}"
        raise argparse.ArgumentTypeError(message)
    return int(text)


def wrong_together(options: argparse.Namespace) -> str:
    """What does not go with several jobs, or with one; "" where all is well."""
    if options.jobs or options.programme:
        alone = [words for name, words in _OF_ONE_JOB.items() if getattr(options, name)]
        return f"{alone[0]} is for one job alone; leave it out beside --jobs and --programme" if alone else ""
    if options.gap or options.any_order or options.crews > 1:
        return "--gap, --any-order and --crews are for several jobs, as in --jobs ID,ID"
    return ""


def run_together(options: argparse.Namespace) -> int:
    """Find days for several jobs and show them."""
    records = records_to_plan(options)
    as_of = moment_of(options, records)
    asked = _asked(options, records, as_of)
    together = find_together(records, as_of, WeatherBook(records.club, records.weather), asked)
    if options.page is not None:
        from swardcast.outlets.together_page import together_page

        write_private(options.page, together_page(together, records), club=options.club)
    show(
        options,
        as_json=lambda: _as_json(together),
        as_csv=lambda: _as_csv(together),
        as_text=lambda: _as_text(together, records),
    )
    return 0


def _as_csv(together: Together) -> str:
    """The jobs of each schedule; where there is none it is told beside the file what is in the way."""
    if together.blame is not None:
        print(plain(blame_in_words(together, Voice.english(together.as_of.date()))), file=sys.stderr)
    rows = [[flat(value(one)) for value in TOGETHER_COLUMNS.values()] for one in jobs_in_schedules(together)]
    return as_csv(list(TOGETHER_COLUMNS), rows)


def _asked(options: argparse.Namespace, records: ClubRecords, as_of: datetime) -> AskedTogether:
    first, last = days_asked(options, as_of.astimezone(records.club.time_zone).date())
    if options.programme:
        jobs = _of_programme(options.programme, records, as_of)
    else:
        jobs = tuple(planned_job(name, records, as_of).job for name in options.jobs)
    if len(jobs) > _MOST_JOBS:
        message = f"found {len(jobs)} jobs; expected {_MOST_JOBS} at most. Name fewer of them by --jobs"
        raise SwardcastError(message)
    return AskedTogether(
        jobs=jobs,
        first=first,
        last=last,
        until=UNTIL[options.until],
        gap_days=options.gap,
        in_order=not options.any_order,
        crews=options.crews,
        most=options.best,
    )


def _of_programme(name: str, records: ClubRecords, as_of: datetime) -> tuple[Job, ...]:
    """Jobs that nobody has begun, and that are neither over by the plan nor called off."""
    known = facts_as_known(records, as_of)
    programmes = dict.fromkeys(facts.job.programme for facts in known.values())
    found = next((one for one in programmes if one.casefold() == " ".join(name.casefold().split())), None)
    if found is None:
        message = f"no programme {name!r} in the plan. {nearest(name, programmes)}".rstrip()
        raise SwardcastError(f"{message} Programmes: {'; '.join(programmes)}")
    today = as_of.astimezone(records.club.time_zone).date()
    facts = [one for one in known.values() if one.job.programme == found]
    ahead = [one for one in facts if not one.progress and not one.called_off and not one.is_overdue(today)]
    if len(ahead) < 2:  # noqa: PLR2004 - several
        said = "1 job that lies" if ahead else "no job that lies"
        message = f"{found!r} has {said} ahead; two or more are needed. Ask for one by --job ID"
        raise SwardcastError(message)
    return tuple(one.job for one in ahead)


def _as_text(together: Together, records: ClubRecords) -> Iterator[str]:
    voice = Voice.english(together.as_of.date())
    yield f"{together_title(together, voice)}, as of {voice.moment(together.as_of)}"
    key = [f"  {letter}: {plain(said)}" for letter, said in together_reasons(together, voice)]
    if together.blame is not None:
        yield from ("", plain(blame_in_words(together, voice)), *key)
    for place, table in enumerate(together_tables(together, voice)):
        yield ""
        yield from aligned(table)
        yield from key if place == 0 else ()
    yield ""
    yield from map(plain, together_notes(together, records, voice))


def _as_json(together: Together) -> dict[str, Any]:
    voice, asked, blame = Voice.english(together.as_of.date()), together.asked, together.blame
    reasons = [plain(said) for _, said in together_reasons(together, voice)]
    return {
        "as_of": together.as_of.isoformat(timespec="minutes"),
        "jobs": [job.id for job in asked.jobs],
        "from": asked.first.isoformat(),
        "to": asked.last.isoformat(),
        "until": asked.until.value,
        "in_order": asked.in_order,
        "crews": asked.crews,
        "gaps": [
            {"earlier": gap.earlier, "later": gap.later, "least_days": gap.least_days, "in_order": gap.in_order}
            for gap in together.gaps
        ],
        "weighted_days": flat(together.weighted_days) if together.placed and together.has_costs else None,
        "days": flat(together.plain_days) if together.placed and together.has_costs else None,
        "reasons": dict(zip(letters_of(together), reasons, strict=True)) if together.placed else {},
        "trade_offs_in_all": together.in_all,
        "trade_offs": [
            {name: flat(value(one)) for name, value in TOGETHER_COLUMNS.items()} for one in jobs_in_schedules(together)
        ],
        "beside": [job.id for job in together.beside],
        "past_years": together.past_years,
        "in_the_way": None
        if blame is None
        else {
            "words": plain(blame_in_words(together, voice)),
            "never": list(blame.never),
            "gaps": [
                {"earlier": one.gap.earlier, "later": one.gap.later, "most_days": one.most_days} for one in blame.eased
            ],
            "fits_without_gaps": blame.gaps,
            "fits_in_another_order": blame.order,
            "fits_with_one_crew_more": blame.crew,
        },
    }
