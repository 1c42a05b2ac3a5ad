"""Sections of a report on what went into the work and what was measured: sand and cost, readings."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from swardcast.language.voice import Voice, capital
from swardcast.notices.kinds import kind_name
from swardcast.notices.pictures import Table
from swardcast.planning.amounts import in_all
from swardcast.planning.notes import about_price
from swardcast.planning.report_places import in_plan
from swardcast.planning.report_readings import Readings
from swardcast.planning.report_readings_picture import reading_name, readings_picture
from swardcast.planning.report_sand import Comes, SandOfJob
from swardcast.planning.report_words import Section, Telling
from swardcast.planning.sand_tables import materials_table
from swardcast.planning.words import priced_in_words
from swardcast.records.targets import Beside

__all__ = ["cost_in_all", "readings_section", "sand_in_all", "sand_section"]


def sand_section(told: Telling) -> Section:
    """Say how much sand and money was planned and used.

    Args:
        told: what it is said with.

    Returns:
        The section; a sentence where no work needs sand or costs anything.
    """
    say, jobs, has_prices = told.say, told.report.sand.jobs, bool(told.planning.currency)
    title = say("report-sand-title")
    others = tuple(_materials(told))
    if not jobs:
        return Section(name="sand", title=title, sentences=(say("report-no-sand"),), tables=others)
    columns = [say("report-column-job"), say("report-column-sand-planned"), say("report-column-sand-used")]
    if has_prices:
        columns += [say("report-column-cost-planned"), say("report-column-cost-done")]
    rows = [(*_sand_row(job, told), told.from_places(job.sources)) for job in jobs]
    sums = [say("report-in-all"), *(sand_in_all(side, told) for side in (_planned(jobs), _done(jobs)))]
    if has_prices:
        sums += [cost_in_all(side, told) for side in (_planned(jobs), _done(jobs))]
    table = Table(
        caption=say("report-table-sand"),
        columns=(*columns, say("report-column-source")),
        rows=(*rows, (*sums, say("planning-none"))),
    )
    return Section(name="sand", title=title, tables=(table, *others), notes=tuple(_about_sand(told)))


def _materials(told: Telling) -> Iterable[Table]:
    """Seed and products as `swardcast sand` lays them out, each with its line of the plan."""
    materials = told.report.sand.materials
    if materials:
        table = materials_table(materials, told.voice)
        places = (told.from_places([in_plan(one.job)]) for one in materials)
        yield replace(
            table,
            columns=(*table.columns, told.say("report-column-source")),
            rows=tuple((*row, place) for row, place in zip(table.rows, places, strict=True)),
        )


def _sand_row(job: SandOfJob, told: Telling) -> tuple[str, ...]:
    row = (job.job.title, told.tonnes(job.planned.sand_t), told.tonnes(job.done.sand_t))
    if not told.planning.currency:
        return row
    return (*row, _cost(job.planned, told), _cost(job.done, told))


def _cost(comes: Comes, told: Telling) -> str:
    """A dash where nothing was done yet."""
    if comes.cost is None:
        return told.say("planning-none")
    return priced_in_words(comes.cost, told.planning.currency, told.voice)


def _planned(jobs: Sequence[SandOfJob]) -> tuple[Comes, ...]:
    return tuple(job.planned for job in jobs)


def _done(jobs: Sequence[SandOfJob]) -> tuple[Comes, ...]:
    return tuple(job.done for job in jobs)


def sand_in_all(sides: Sequence[Comes], told: Telling) -> str:
    """Say how much sand several jobs come to.

    Args:
        sides: what each comes to.
        told: what it is said with.

    Returns:
        The mass; at least what is known, where some is not.
    """
    mass = in_all(one.sand_t for one in sides)
    if mass is not None:
        return told.tonnes(mass)
    return told.say("report-at-least", amount=told.tonnes(sum(one.sand_t or 0.0 for one in sides)))


def cost_in_all(sides: Sequence[Comes], told: Telling) -> str:
    """Say what several jobs cost.

    Args:
        sides: what each comes to.
        told: what it is said with.

    Returns:
        The amount, with a plus where it leaves something out; at least what is known, where some is not.
    """
    priced = [one.cost for one in sides if one.cost is not None]
    known = [one.in_all for one in priced if one.in_all is not None]
    money = told.voice.money(sum(known), told.planning.currency)
    if len(known) < len(priced):
        return told.say("report-at-least", amount=money)
    is_whole = all(one.leaves_nothing_out for one in priced)
    return money if is_whole else told.say("planning-incomplete", cost=money)


def _about_sand(told: Telling) -> Iterable[str]:
    planning = told.planning
    if not planning.currency:
        yield told.say("report-note-no-prices")
    else:
        yield from about_price(planning, told.voice)
    costs = [side.cost for job in told.report.sand.jobs for side in (job.planned, job.done) if side.cost is not None]
    for phrase, kinds in (
        ("planning-cost-without", dict.fromkeys(kind for cost in costs for kind in cost.without)),
        ("planning-sand-without", dict.fromkeys(kind for cost in costs for kind in cost.sand_without)),
    ):
        if kinds:
            yield told.say(phrase, kinds=told.voice.joined([kind_name(kind, told.voice) for kind in kinds]))
    yield told.say("report-note-sand-days")
    if told.report.sand.materials:
        yield told.say("sand-materials")


def readings_in_short(told: Telling) -> str:
    """Say how many readings of the period lie inside the club's targets.

    Args:
        told: what it is said with.

    Returns:
        A sentence; what has no target, or was read with another meter, is left out.
    """
    parts = []
    for one in told.report.readings:
        beside = [reading.beside for reading in one.taken if reading.beside is not None]
        if beside:
            inside = told.number(sum(found is Beside.WITHIN for found in beside))
            name = reading_name(one.name, told.voice)
            parts.append(told.say("report-inside-of", name=name, inside=inside, all=told.number(len(beside))))
    if not parts:
        return told.say("report-summary-no-readings")
    return told.say("report-summary-readings", readings=told.voice.listed(parts))


def readings_section(told: Telling) -> Section:
    """Say what was read on the course, beside the club's own targets.

    Args:
        told: what it is said with.

    Returns:
        The section; sentences where nothing was read, or the club has no targets.
    """
    say, all_readings = told.say, told.report.readings
    title = say("report-readings-title")
    taken = [one for one in all_readings if one.taken]
    sentences = [] if taken else [say("report-no-readings")]
    missing = [reading_name(one.name, told.voice) for one in all_readings if not one.taken]
    if taken and missing:
        sentences.append(say("report-not-read", names=told.voice.joined(missing)))
    if not told.planning.targets:
        sentences.append(say("report-no-targets"))
    sentences += [_before(one, told) for one in all_readings if one.before]
    pictures = (readings_picture(one, told.report.period.first, told.voice) for one in all_readings)
    return Section(
        name="readings",
        title=title,
        sentences=tuple(sentences),
        tables=tuple(_readings_table(one, told) for one in taken),
        pictures=tuple(one for one in pictures if one is not None),
        notes=(say("report-note-targets"),) if taken and told.planning.targets else (),
    )


def _before(one: Readings, told: Telling) -> str:
    last = one.before[-1]
    name = capital(reading_name(one.name, told.voice))
    return told.say("report-read-before", name=name, found=last.typed, day=told.short_day(last.on))


def _readings_table(one: Readings, told: Telling) -> Table:
    say, name = told.say, capital(reading_name(one.name, told.voice))
    columns = [say("report-column-day"), say("report-column-where"), say("report-column-reading")]
    if one.target is not None:
        columns.append(say("report-column-beside"))
    caption = (
        say("report-table-reading-target", name=name, target=one.target.typed)
        if one.target is not None
        else say("report-table-reading", name=name)
    )
    rows = [
        (
            told.short_day(taken.on),
            told.where(taken.surfaces),
            taken.typed,
            *([_beside(taken.beside, told.voice)] if one.target is not None else []),
            told.from_places([taken.place]),
        )
        for taken in one.taken
    ]
    return Table(caption=caption, columns=(*columns, say("report-column-source")), rows=tuple(rows))


def _beside(beside: Beside | None, voice: Voice) -> str:
    return voice.say("report-beside-none") if beside is None else voice.name("report-beside", beside)
