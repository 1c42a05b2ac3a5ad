"""What is kept between builds changes nothing: whatever was edited since, the bulletin is the one composed without it."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from datetime import date, datetime, time, timedelta
from enum import Enum
from functools import partial
from hashlib import sha256
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from swardcast.compose import compose_bulletin
from swardcast.kept_file import KeptFile
from swardcast.language.catalogue import built_in
from swardcast.notices.as_told import NoticesAsTold
from swardcast.outlets.feed_content import in_full, in_full_again
from swardcast.outlook.memory import as_members_see
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.log import (
    BackToNormal,
    Correction,
    Entry,
    EntryHead,
    GrowthHeldBack,
    HeldBackBy,
    MorningStatus,
    NoteToMembers,
    PlanChange,
)
from swardcast.records.log import Change as PlanChanged
from swardcast.records.plan import Play, Withdrawal
from swardcast.records.standing import as_entered
from tests.conftest import DEMO_AS_OF

JOBS = (
    "path-10-2027",
    "bunkers-liners-2027",
    "fairways-tining-2027",
    "practice-green-solid-tining-2027",
    "practice-green-renovation-2027",
    "tees-returfing-2027",
    "fairways-deep-tining-2027",
)
"""A part of the demo: planned, going on, healing and over, some on the same surfaces."""

ITEMS = 12
"""News of which the whole HTML is compared, the newest ones."""

Edit = Callable[["_Club", random.Random], None]


class _Club:
    """Records that are edited, and a moment."""

    def __init__(self, records: ClubRecords) -> None:
        jobs = {name: records.jobs[name] for name in JOBS}
        entries = tuple(one for one in records.entries if getattr(one, "job", JOBS[0]) in jobs)
        known = {entry.head.id for entry in entries}
        entries = tuple(one for one in entries if getattr(one, "corrects", None) in (None, *known))
        self.records = replace(records, jobs=jobs, entries=entries)
        self.as_of = DEMO_AS_OF
        self.count = 0

    def enter(self, make: Callable[[EntryHead], Entry], at: datetime) -> None:
        self.count += 1
        name = f"{at.date()}-edit-{self.count}"
        head = EntryHead(id=name, at=at, true_from=at, by="", words="", file=f"log/2027/{name}.md", line=1)
        self.put(entries=as_entered((*self.records.entries, make(head))))

    def put(self, **changed: Any) -> None:
        self.records = replace(self.records, **changed)

    def put_job(self, name: str, **changed: Any) -> None:
        self.put(jobs={**self.records.jobs, name: replace(self.records.jobs[name], **changed)})

    def put_entry(self, entry: Entry, instead: Entry | None) -> None:
        others = (instead if one is entry else one for one in self.records.entries)
        self.put(entries=as_entered(one for one in others if one is not None))

    def day(self, dice: random.Random) -> datetime:
        """A moment of the year so far, at noon."""
        day = date(2027, 4, 20) + timedelta(days=dice.randrange((self.as_of.date() - date(2027, 4, 20)).days))
        return datetime.combine(day, time(12), tzinfo=self.as_of.tzinfo)

    def day_of(self, job: str, dice: random.Random) -> datetime:
        """Such a moment, not before a job is announced."""
        announced = datetime.combine(self.records.jobs[job].announced, time(13), tzinfo=self.as_of.tzinfo)
        return max(self.day(dice), announced)

    def job(self, dice: random.Random) -> str:
        return dice.choice(list(self.records.jobs))


def _new_words_today(club: _Club, dice: random.Random) -> None:
    play = tuple((name, Play.CLOSED) for name in list(club.records.surfaces)[: dice.randrange(3)])
    at = club.as_of - timedelta(minutes=30)
    club.enter(lambda head: MorningStatus(head=head, play=play, limits=(), why="Frost."), at)


def _note(club: _Club, dice: random.Random) -> None:
    club.enter(lambda head: NoteToMembers(head=replace(head, words="Thank you."), job=club.job(dice)), club.as_of)


def _held_back(club: _Club, dice: random.Random) -> None:
    at = club.day(dice)
    surfaces = club.records.jobs[club.job(dice)].surfaces
    first, last = at.date(), at.date() + timedelta(days=9)
    club.enter(
        lambda head: GrowthHeldBack(head=head, by=HeldBackBy.UNFED, surfaces=surfaces, first_day=first, last_day=last),
        at,
    )


def _called_normal(club: _Club, dice: random.Random) -> None:
    name = club.job(dice)
    surfaces = club.records.jobs[name].surfaces
    club.enter(lambda head: BackToNormal(head=head, job=name, surfaces=surfaces), club.day_of(name, dice))


def _moved(club: _Club, dice: random.Random) -> None:
    name = club.job(dice)
    at = club.day_of(name, dice)
    starts = club.records.jobs[name].starts + timedelta(days=dice.randrange(1, 20))
    change = PlanChanged.POSTPONED
    club.enter(lambda head: PlanChange(head=head, job=name, change=change, starts=starts, because="Rain."), at)


def _corrected(club: _Club, dice: random.Random) -> None:
    gone = {getattr(one, "corrects", "") for one in club.records.entries}
    left = [one for one in club.records.entries if one.head.id not in gone and not isinstance(one, Correction)]
    wrong = dice.choice(left).head
    at = max(wrong.at + timedelta(hours=1), club.day(dice))
    club.enter(lambda head: Correction(head=head, corrects=wrong.id), at)


def _entry_reworded(club: _Club, dice: random.Random) -> None:
    entry = dice.choice(club.records.entries)
    club.put_entry(entry, replace(entry, head=replace(entry.head, words="In other words.")))


def _entry_dated_otherwise(club: _Club, dice: random.Random) -> None:
    entry = dice.choice(club.records.entries)
    at = entry.head.at + timedelta(days=dice.choice((-1, 1)))
    club.put_entry(entry, replace(entry, head=replace(entry.head, at=at, true_from=at)))


def _entry_deleted(club: _Club, dice: random.Random) -> None:
    corrected = {getattr(one, "corrects", "") for one in club.records.entries}
    club.put_entry(dice.choice([one for one in club.records.entries if one.head.id not in corrected]), None)


def _job_moved(club: _Club, dice: random.Random) -> None:
    name = club.job(dice)
    club.put_job(name, starts=club.records.jobs[name].starts + timedelta(days=dice.randrange(-3, 4)))


def _job_on_another_line(club: _Club, dice: random.Random) -> None:
    name = club.job(dice)
    club.put_job(name, line=club.records.jobs[name].line + 1)


def _job_withdrawn(club: _Club, dice: random.Random) -> None:
    club.put_job(
        club.job(dice), withdrawn=Withdrawal(at=club.day(dice), because="It was a mistake", instead="", line=9)
    )


def _new_job(club: _Club, dice: random.Random) -> None:
    club.count += 1
    like = club.records.jobs[club.job(dice)]
    starts = like.starts + timedelta(days=dice.randrange(-30, 30))
    job = replace(like, id=f"new-{club.count}", title=f"New work {club.count}", starts=starts, line=like.line + 50)
    jobs = list(club.records.jobs.items())
    jobs.insert(dice.randrange(len(jobs)), (job.id, job))
    club.put(jobs=dict(jobs))


def _plan_in_another_order(club: _Club, dice: random.Random) -> None:
    jobs = list(club.records.jobs.items())
    dice.shuffle(jobs)
    club.put(jobs=dict(jobs))


def _weather_of_a_past_day(club: _Club, dice: random.Random) -> None:
    weather = club.records.weather
    day = dice.choice(list(weather.observed_c)[-200:])
    club.put(weather=replace(weather, observed_c={**weather.observed_c, day: weather.observed_c[day] + 9.0}))


def _weather_of_a_past_day_missing(club: _Club, dice: random.Random) -> None:
    weather = club.records.weather
    day = dice.choice(list(weather.observed_c)[-200:])
    club.put(weather=replace(weather, observed_c={one: c for one, c in weather.observed_c.items() if one != day}))


def _history(club: _Club, dice: random.Random) -> None:
    weather = club.records.weather
    day = dice.choice(list(weather.history_c))
    club.put(weather=replace(weather, history_c={**weather.history_c, day: weather.history_c[day] + 20.0}))


def _forecast(club: _Club, dice: random.Random) -> None:
    weather = club.records.weather
    told, at = weather.forecasts[-1], club.day(dice)
    days = {at.date() + timedelta(days=n): c + dice.uniform(-6, 6) for n, c in enumerate(told.tmean_c.values())}
    forecasts = sorted((*weather.forecasts, replace(told, issued_at=at, tmean_c=days)), key=lambda one: one.issued_at)
    club.put(weather=replace(weather, forecasts=tuple(forecasts)))


def _fixture(club: _Club, dice: random.Random) -> None:
    club.count += 1
    day = (club.day(dice) + timedelta(days=30)).date()
    fixture = Fixture(id=f"f{club.count}", series=f"f{club.count}", name="The Cup", first_day=day, last_day=day)
    club.put(fixtures=tuple(sorted((*club.records.fixtures, fixture), key=lambda one: (one.first_day, one.id))))


def _fixture_moved(club: _Club, dice: random.Random) -> None:
    one = dice.choice(club.records.fixtures)
    later = replace(one, first_day=one.first_day + timedelta(days=9), last_day=one.last_day + timedelta(days=9))
    others = (later if other is one else other for other in club.records.fixtures)
    club.put(fixtures=tuple(sorted(others, key=lambda one: (one.first_day, one.id))))


def _sand(club: _Club, dice: random.Random) -> None:
    club.put(club=replace(club.records.club, sand_density_t_per_m3=dice.uniform(1.3, 1.7)))


def _working_days(club: _Club, dice: random.Random) -> None:
    club.put(club=replace(club.records.club, working_days=tuple(range(dice.randrange(4, 8)))))


def _other_language(club: _Club, dice: random.Random) -> None:
    tag = dice.choice(("en-GB", "en-US"))
    club.put(club=replace(club.records.club, language=tag, catalogue=built_in(tag)))


def _area(club: _Club, dice: random.Random) -> None:
    name = dice.choice(club.records.jobs[club.job(dice)].surfaces)
    surface = replace(club.records.surfaces[name], area_m2=dice.uniform(200.0, 900.0))
    club.put(surfaces={**club.records.surfaces, name: surface})


def _later(club: _Club, dice: random.Random) -> None:
    club.as_of += timedelta(days=dice.choice((1, 5, 40)))


def _sooner(club: _Club, dice: random.Random) -> None:
    club.as_of -= timedelta(days=dice.choice((1, 5, 40)))


EDITS: tuple[Edit, ...] = (
    _new_words_today, _note, _held_back, _called_normal, _moved, _corrected, _entry_reworded, _entry_dated_otherwise,
    _entry_deleted, _job_moved, _job_on_another_line, _job_withdrawn, _new_job, _plan_in_another_order,
    _weather_of_a_past_day, _weather_of_a_past_day_missing, _history, _forecast, _fixture, _fixture_moved, _sand,
    _working_days, _other_language, _area, _later, _sooner,
)  # fmt: skip


class _Counting(KeptFile):
    """Counts what it was given for."""

    found = 0

    def value(self, name: str) -> object:
        self.found += 1
        return super().value(name)


def _said(value: Any) -> Iterator[str]:
    """All that a value holds, piece by piece, the same for equal values whatever made them."""
    if is_dataclass(value) and not isinstance(value, type):
        yield type(value).__name__
        for field in fields(value):
            yield field.name
            yield from _said(getattr(value, field.name))
    elif isinstance(value, Mapping):
        for key, one in value.items():
            yield from _said(key)
            yield from _said(one)
    elif isinstance(value, set | frozenset):
        yield from sorted("".join(_said(one)) for one in value)
    elif isinstance(value, tuple | list):
        yield str(len(value))
        for one in value:
            yield from _said(one)
    elif isinstance(value, np.ndarray):
        yield sha256(value.tobytes()).hexdigest()
    elif isinstance(value, str | int | float | Enum | bytes | date | time | None):
        yield repr(value)


def told(club: _Club, kept: Callable[[ClubRecords, WeatherBook], KeptFile] | None) -> tuple[str, KeptFile | None]:
    """Compose, and give all of it but the records that it was composed from."""
    records = club.records
    book = WeatherBook(records.club, records.weather)
    file = kept(as_members_see(records, book), book) if kept is not None else None
    bulletin = compose_bulletin(records, club.as_of, book)
    parts = [getattr(bulletin, one.name) for one in fields(bulletin) if one.name not in ("club", "records")]
    whole = partial(in_full, bulletin=bulletin, notices=NoticesAsTold(bulletin.records, bulletin.stories))
    for item in bulletin.items[:ITEMS]:
        again = in_full_again(item, bulletin, file.recall, whole) if file is not None else str(whole(item))
        parts.append(again)
    return "\n".join(piece for part in parts for piece in _said(part)), file


def _differs_first(one: str, other: str) -> str:
    for a, b in zip(one.splitlines(), other.splitlines(), strict=False):
        if a != b:
            return f"{a[:300]}\n{b[:300]}"
    return "" if one == other else "one is longer"


def a_month_of_edits(seed: int) -> list[Edit]:
    """Thirty edits in any order, each kind among them."""
    dice = random.Random(seed)  # noqa: S311 - no secret
    edits = [*EDITS, *dice.choices(EDITS, k=30 - len(EDITS))]
    dice.shuffle(edits)
    return edits


@pytest.mark.parametrize("half", range(2))
def test_thirty_edits_give_what_a_build_that_knows_nothing_gives(
    half: int, demo_records: ClubRecords, tmp_path: Path
) -> None:
    used = differences(demo_records, a_month_of_edits(1)[half * 15 : half * 15 + 15], tmp_path / "club.kept", seed=half)
    assert used > 15  # else nothing was tested


def differences(records: ClubRecords, edits: list[Edit], kept: Path, seed: int) -> int:
    """Build after each edit from what is kept, and without; count what was used of it."""
    dice, club, used = random.Random(seed), _Club(records), 0  # noqa: S311 - no secret
    for edit in edits:
        edit(club, dice)
        anew, _ = told(club, None)
        again, file = told(club, lambda records, book: _Counting(kept, records, book))
        assert _differs_first(anew, again) == "", edit.__name__
        assert isinstance(file, _Counting)
        file.write()
        used += file.found
    return used
