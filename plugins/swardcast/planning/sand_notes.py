"""What has to be said beside the tables of a period's sand; the first paragraph is its answer."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from swardcast.language.measures import area, bulk_density, sand_mass
from swardcast.language.voice import Voice
from swardcast.notices.kinds import kind_name
from swardcast.planning.sand_balance import SandBalance, StoreLine, Trouble
from swardcast.planning.sand_moves import SandMove
from swardcast.planning.sand_words import price_by_weight, water_in_words
from swardcast.planning.sand_year import SandYear
from swardcast.planning.stages import Stage
from swardcast.records.operations import Kind
from swardcast.records.planning import Planning

__all__ = ["sand_notes"]


def sand_notes(year: SandYear, planning: Planning, voice: Voice) -> tuple[str, ...]:
    """Say what came out, and what the tables rest on.

    Args:
        year: the sand of a period.
        planning: the club's prices.
        voice: the language and the day of the reader.

    Returns:
        Paragraphs.
    """
    paragraphs = [
        [*_summary(year, voice), *_store_in_words(year, voice)],
        [*_basis(year, voice)],
        [voice.say("sand-days"), *_as_logged(year, voice), *_exceptions(year, voice)],
        [*_about_store(year, voice), *_about_price(planning, voice)],
        [*_about_print(year, voice)],
        [*([voice.say("sand-materials")] if year.materials else []), voice.say("planning-no-promise")],
    ]
    return tuple(voice.sentences(paragraph) for paragraph in paragraphs if paragraph)


def _summary(year: SandYear, voice: Voice) -> Iterator[str]:
    if not year.moves:
        yield voice.say("sand-no-sand")
        return
    masses = year.in_all
    yield voice.say(
        "sand-summary",
        planned=sand_mass(masses.planned_t, voice),
        used=sand_mass(masses.used_t, voice),
        coming=sand_mass(masses.to_come_t, voice),
    )


def _store_in_words(year: SandYear, voice: Voice) -> Iterator[str]:
    """Say how long the store lasts: the first trouble to come, and when a further delivery is needed.

    Args:
        year: the sand of a period.
        voice: the language and the day of the reader.

    Yields:
        Sentences; nothing where the period is over.
    """
    balance = year.balance
    if balance is None:
        yield voice.say("sand-no-count")
        return
    trouble, needed = balance.first_trouble, balance.needed_by
    if trouble is not None:
        yield _trouble_in_words(trouble, balance, voice)
    runs_out = next((line for line in balance.to_come if line.trouble is Trouble.RUNS_OUT), None)
    if runs_out is not None and runs_out is not trouble:
        yield _trouble_in_words(runs_out, balance, voice)
    if needed is None:
        if trouble is None and balance.today <= year.last:
            left = sand_mass(max(0.0, balance.closing_t), voice)
            yield voice.say("sand-lasts", day=voice.short_day(year.last), mass=left)
        return
    yield voice.say(
        "sand-needed-by",
        day=voice.day(needed.day),
        missing=sand_mass(balance.missing_t, voice),
    )
    room = balance.room_before(needed)
    if room is not None:
        yield voice.say("sand-room-then", room=sand_mass(room, voice))


def _trouble_in_words(line: StoreLine, balance: SandBalance, voice: Voice) -> str:
    day, job = voice.day(line.day), line.job.title if line.job is not None else ""
    match line.trouble:
        case Trouble.RUNS_OUT:
            return voice.say("sand-runs-out", day=day, job=job, mass=sand_mass(-line.after_t, voice))
        case Trouble.BELOW_LEAST:
            return voice.say("sand-below-least", day=day, job=job, mass=sand_mass(max(0.0, line.after_t), voice))
        case _:
            too_much = line.after_t - (balance.room_t or 0.0)
            return voice.say("sand-does-not-fit", day=day, mass=sand_mass(too_much, voice))


def _basis(year: SandYear, voice: Voice) -> Iterator[str]:
    yield voice.say("sand-dry", density=bulk_density(year.density_t_per_m3, voice))
    yield voice.say("sand-weighed")
    yield water_in_words(year.store, voice)


def _as_logged(year: SandYear, voice: Voice) -> Iterator[str]:
    done = [move for move in year.moves if move.stage is Stage.DONE]
    if done:
        told = sum(move.told_by != "" for move in done)
        yield voice.say("sand-as-logged", count=len(done), told=told)


def _exceptions(year: SandYear, voice: Voice) -> Iterator[str]:
    unknown = [move for move in year.moves if move.dry_t is None]
    if unknown:
        yield voice.say("sand-not-known", jobs=_titles(unknown, voice))
    if year.without_day:
        mass = sum(move.dry_t or 0.0 for move in year.without_day)
        jobs = _titles(year.without_day, voice)
        yield voice.say("sand-without-day", mass=sand_mass(mass, voice), jobs=jobs)
    late = [move for move in year.moves if move.is_overdue]
    if late:
        yield voice.say("sand-overdue", jobs=_titles(late, voice))
    if year.called_off:
        yield voice.say("sand-called-off", jobs=_titles(year.called_off, voice))


def _titles(moves: Iterable[SandMove], voice: Voice) -> str:
    return voice.joined(list(dict.fromkeys(move.job.title for move in moves)))


def _about_store(year: SandYear, voice: Voice) -> Iterator[str]:
    balance = year.balance
    if balance is None:
        return
    kinds = voice.joined([kind_name(kind, voice) for kind in Kind if kind in year.store.kinds])
    yield voice.say("sand-store-rules", kinds=kinds, since=voice.short_day(balance.since))
    worst = min(balance.disagrees, key=lambda line: line.after_t, default=None)
    if worst is not None:
        yield voice.say("sand-disagrees", day=voice.short_day(worst.day), mass=sand_mass(-worst.after_t, voice))


def _about_price(planning: Planning, voice: Voice) -> Iterator[str]:
    per_t = planning.sand_price_per_t
    if per_t is None:
        yield voice.say("sand-no-price")
    else:
        yield voice.say("sand-price", price=price_by_weight(per_t, planning.currency, voice))


def _about_print(year: SandYear, voice: Voice) -> Iterator[str]:
    density, greens_m2 = bulk_density(year.density_t_per_m3, voice), year.course_m2
    if greens_m2:
        yield voice.say("sand-published", density=density, area=area(greens_m2, voice))
    else:
        yield voice.say("sand-published-no-area", density=density)
    if not year.is_a_year:
        yield voice.say("sand-not-a-year", days=voice.number((year.last - year.first).days + 1))
