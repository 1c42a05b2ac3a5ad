"""The fields of one log entry -> an entry, held against the plan and the surfaces."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta

from swardcast.errors import Problem
from swardcast.quantities import parse_roll_mm
from swardcast.reading import log_fields as fields
from swardcast.reading.as_done import oddities_as_done
from swardcast.reading.limits import LimitItem, limit_from
from swardcast.reading.log_names import LogContext, NamesOfEntry
from swardcast.reading.operations import operation_from
from swardcast.reading.plain_words import shown
from swardcast.reading.schema import local_moment, validated
from swardcast.reading.yaml_text import Located
from swardcast.records import log
from swardcast.records.log import Change, Entry, EntryHead, Step
from swardcast.records.translate import USUAL_DAYS

__all__ = ["EntryReader"]


class EntryReader:
    """Reads the fields of one file.

    Args:
        name: the file's name without its ending, which becomes the entry's id.
        file: its path for problems.
        words: the manager's own words below the fields.
        context: what the entry may refer to.
        problems: where problems are added.
    """

    def __init__(self, *, name: str, file: str, words: str, context: LogContext, problems: list[Problem]) -> None:
        self._name, self._file, self._words, self._context, self._problems = name, file, words, context, problems
        self._names = NamesOfEntry(file, context, problems)

    def entries(self, document: Located) -> list[Entry]:
        """Give no, one or two entries: a correction may bring one that stands instead."""
        told, at = self._told(document), self._moment(document)
        if told is None or at is None:
            self._name_strangers(document)
            return []
        head = EntryHead(
            id=self._name,
            at=at,
            true_from=at,
            by=told.by,
            words=self._words,
            file=self._file,
            line=document.line(()) or 1,
            private_note=told.private_note,
        )
        if isinstance(told, fields.CorrectionFields):
            return self._correction(told, head, document)
        entry = self._entry(told, head, document)
        return [entry] if entry is not None else []

    def _told(self, document: Located) -> fields.HeadFields | None:
        kind = document.value.get("kind") if isinstance(document.value, dict) else None
        model = fields.KINDS.get(str(kind).strip().lower())
        if model is None:
            expected = f"one of: {', '.join(fields.KINDS)}"
            self._names.say(document, "kind", shown(kind), expected, fields.meant(str(kind)))
            return None
        return validated(model, document, file=self._file, problems=self._problems)

    def _moment(self, document: Located) -> datetime | None:
        """Read when it was; nothing is said where there is none, since the fields are told one by one."""
        at = document.value.get("at") if isinstance(document.value, dict) else None
        if not isinstance(at, str | int | float):
            return None
        return self._names.attempt(lambda: local_moment(at, self._context.zone), document, "at")

    def _name_strangers(self, document: Located) -> None:
        """Tell what an entry names that is not there, though something else is wrong with it."""
        told = document.value if isinstance(document.value, dict) else {}
        job, surfaces, play = told.get("job"), told.get("surfaces"), told.get("play")
        if isinstance(job, str) and job:
            self._names.job(job, None, document)
        if isinstance(surfaces, str) and surfaces:
            self._names.select(surfaces, document, "surfaces")
        for phrase in play if isinstance(play, dict) else ():
            self._names.select(phrase, document, f"play.{phrase}")

    def _correction(self, told: fields.CorrectionFields, head: EntryHead, document: Located) -> list[Entry]:
        withdrawal: Entry = log.Correction(head=head, corrects=told.corrects)
        if told.instead is None:
            return [withdrawal]
        inner = document.below("instead")
        told_instead, moment = self._told(inner), self._moment(inner)
        if told_instead is None or moment is None:
            self._name_strangers(inner)
            return []
        if moment > head.at:
            expected = f"a moment not after that of the correction, {head.at:%Y-%m-%d %H:%M}"
            self._names.say(inner, "at", f"{moment:%Y-%m-%d %H:%M}", expected, "")
            return []
        inner_head = replace(
            head,
            id=f"{head.id}-instead",
            true_from=moment,
            instead_of=told.corrects,
            line=inner.line(()) or head.line,
            private_note=told_instead.private_note,
        )
        entry = self._entry(told_instead, inner_head, inner)
        return [withdrawal, entry] if entry is not None else []

    def _entry(self, told: fields.HeadFields, head: EntryHead, document: Located) -> Entry | None:
        match told:
            case fields.MorningFields():
                return self._morning(told, head, document)
            case fields.NoteFields():
                return (
                    log.NoteToMembers(head=head, job=told.job)
                    if not told.job or self._names.job(told.job, head, document)
                    else None
                )
            case fields.PlanChangeFields():
                return self._plan_change(told, head, document)
            case fields.GrowthHeldBackFields():
                return self._growth_held_back(told, head, document)
            case fields.ObservationFields():
                return self._observation(told, head, document)
            case fields.ProgressFields() | fields.BackToNormalFields():
                return self._on_surfaces(told, head, document)
            case _:
                self._names.say(document, "kind", repr(told.kind), "an entry that can stand instead", "")
                return None

    def _morning(self, told: fields.MorningFields, head: EntryHead, document: Located) -> Entry | None:
        named = self._names
        chosen = [(named.select(phrase, document, f"play.{phrase}"), state) for phrase, state in told.play.items()]
        limits = [self._limit(name, item, head, document) for name, item in told.limits.items()]
        play = {name: state for names, state in chosen for name in names or ()}
        if any(names is None for names, _ in chosen):
            return None
        return log.MorningStatus(
            head=head, play=tuple(play.items()), why=told.why, limits=tuple(limit for limit in limits if limit)
        )

    def _limit(self, name: str, item: LimitItem, head: EntryHead, document: Located) -> log.Limit | None:
        return self._names.attempt(lambda: limit_from(name, item, head), document, f"limits.{name}")

    def _plan_change(self, told: fields.PlanChangeFields, head: EntryHead, document: Located) -> Entry | None:
        job = self._names.job(told.job, head, document)
        if (told.starts is None) is not (told.change in (Change.CALLED_OFF, Change.PUT_OFF)):
            self._names.say(document, "starts", *_day_amiss(told.change, told.starts))
            return None
        if job is None:
            return None
        return log.PlanChange(head=head, job=told.job, change=told.change, starts=told.starts, because=told.because)

    def _growth_held_back(self, told: fields.GrowthHeldBackFields, head: EntryHead, document: Located) -> Entry | None:
        surfaces = self._names.select(told.surfaces, document, "surfaces")
        first = told.first_day or head.true_from.date()
        usual = USUAL_DAYS.get(told.cause)
        last = told.until or (first + timedelta(days=usual - 1) if usual else None)
        if last is None or last < first:
            found = "nothing" if last is None else last.isoformat()
            self._names.say(document, "until", found, f"the last day of {told.cause.value}, {first} or later", "")
            return None
        if surfaces is None:
            return None
        return log.GrowthHeldBack(head=head, by=told.cause, surfaces=surfaces, first_day=first, last_day=last)

    def _on_surfaces(
        self, told: fields.ProgressFields | fields.BackToNormalFields, head: EntryHead, document: Located
    ) -> Entry | None:
        job = self._names.job(told.job, head, document)
        surfaces = self._names.surfaces(told.surfaces, job, document)
        if isinstance(told, fields.BackToNormalFields):
            return log.BackToNormal(head=head, job=job.id, surfaces=surfaces) if job and surfaces is not None else None
        as_done = tuple(map(operation_from, told.as_done or ()))
        odd = tuple(oddities_as_done(job, as_done)) if job is not None else ()
        for found, expected, hint in odd:
            self._names.say(document, "as done", found, expected, hint)
        day = told.no_work_before if isinstance(told, fields.HeldUpFields) else None
        today = head.true_from.date()
        if day is not None and day <= today:
            self._names.say(document, "no work before", day.isoformat(), f"a day after {today}, that of the entry", "")
            return None
        if odd or job is None or surfaces is None:
            return None
        return log.Progress(
            head=head,
            step=Step(told.kind.strip().lower()),
            job=job.id,
            surfaces=surfaces,
            because=told.because,
            as_done=as_done,
            play=told.play,
            no_work_before=day,
        )

    def _observation(self, told: fields.ObservationFields, head: EntryHead, document: Located) -> Entry | None:
        job = self._names.job(told.job, head, document) if told.job else None
        of_a_job = {"disruption left": told.disruption_left, "turf cover": told.turf_cover}
        if not told.readings.taken and not any(share is not None for share in of_a_job.values()):
            expected = f"something that was seen: {', '.join(of_a_job)} or readings"
            self._names.say(document, "kind", "an observation of nothing", expected, "")
            return None
        for name, share in of_a_job.items():
            if share is not None and not told.job:
                self._names.say(document, name, f"{name} of no job", "the field 'job' too", "")
                return None
        if told.surfaces is None and not told.job:
            self._names.say(document, "surfaces", "nothing", "the field 'surfaces', or 'job'", "")
            return None
        surfaces = self._names.surfaces(told.surfaces, job, document)
        if surfaces is None or (told.job and job is None):
            return None
        return log.Observation(
            head=head,
            job=told.job,
            surfaces=surfaces,
            share_left=told.disruption_left,
            turf_cover=told.turf_cover,
            green_speed_mm=parse_roll_mm(speed) if (speed := told.readings.green_speed) else None,
            how=told.how,
            readings=tuple(told.readings.taken.items()),
        )


def _day_amiss(change: Change, starts: date | None) -> tuple[str, str, str]:
    """What was found and expected where a change of plan lacks its day or has one too many, and the way out."""
    if starts is None:
        unknown = f"If no day is known yet: 'change: {Change.PUT_OFF.value}', without 'starts'."
        return "nothing", "the new first day", unknown if change is Change.POSTPONED else ""
    if change is Change.PUT_OFF:
        return (
            str(starts),
            "nothing, since no new day is known",
            f"With a day it is 'change: {Change.POSTPONED.value}'.",
        )
    return str(starts), "nothing when the job is called off", ""
