"""Answers as typed -> a draft, or everything that is wrong with them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from functools import partial
from typing import TypeAlias, TypeVar

from pydantic import ValidationError

from swardcast.entering.drafts import Draft, Value
from swardcast.entering.job_words import job_meant, kinds_named
from swardcast.entering.kinds import BY_WORD, MEASURES, PLAYS, READINGS, EntryKind
from swardcast.entering.limits_said import limits_of
from swardcast.entering.measures import as_done, check_measure
from swardcast.entering.places import PLACES, chosen_surfaces, phrase_for, phrase_typed
from swardcast.entering.said import day_said, moment_said
from swardcast.entering.standing import Standing, standing_at
from swardcast.entering.wrong import Wrong, WrongAnswer, understood
from swardcast.errors import nearest
from swardcast.quantities import parse_fraction
from swardcast.reading.seen import Readings
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Change, Entry, HeldBackBy
from swardcast.records.plan import Job, Play

__all__ = ["Answers", "Understood", "understand"]

T = TypeVar("T")

Answers: TypeAlias = Mapping[str, str]
"""Answers as typed, by option without its hyphens; "" is an answer too: nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Understood:
    """What came of some answers.

    Args:
        draft: the entry, or None while something is wrong or missing.
        wrongs: answers that cannot be used.
        missing: answers that are still needed, by option.
        standing: how the jobs stood at the moment of the entry.
        job: the job that is meant, or None.
        surfaces: ids of the surfaces that are meant.
        corrects: the entry that is to be corrected, or None.
    """

    draft: Draft | None
    wrongs: tuple[Wrong, ...]
    missing: tuple[str, ...]
    standing: Standing
    job: Job | None
    surfaces: tuple[str, ...]
    corrects: Entry | None = None


def understand(word: str, answers: Answers, records: ClubRecords, now: datetime) -> Understood:
    """Make a draft of answers.

    Args:
        word: the kind of entry, a word of `kinds.KINDS` other than "correct".
        answers: what was answered so far.
        records: the club's records.
        now: the present moment, aware.

    Returns:
        The draft, or what is wrong and what is missing.
    """
    return _Reader(BY_WORD[word], answers, records, now).read()


@dataclass(slots=True)
class _Reader:
    kind: EntryKind
    answers: Answers
    records: ClubRecords
    now: datetime
    wrongs: list[Wrong] = field(default_factory=list)

    @property
    def local(self) -> datetime:
        """The present moment in the club's time, to the minute."""
        return self.now.astimezone(self.records.club.time_zone).replace(second=0, microsecond=0)

    def read(self) -> Understood:
        zone = self.records.club.time_zone
        at = self._attempt("at", lambda text: moment_said(text, zone, self.now)) or self.local
        standing = standing_at(self.records, at)
        phrase, named = self._places(standing, None)
        said = self._has("surfaces")
        job = self._attempt("job", lambda text: job_meant(text, standing, self.kind.word, named, where_is_said=said))
        if job is not None:
            phrase, named = self._places(standing, job)
        missing = tuple(option for option in self.kind.needs if not self._has(option))
        if self.kind.word == "seen":
            missing += self._not_seen(named)
        if self.kind.word == "resumed" and job is not None and not said and not named:
            missing += ("surfaces",)
        if self.kind.word == "morning" and not any(self._has(option) for option in PLAYS):
            missing = ("open",)
        fields, about = self._fields(job, phrase, named)
        draft = None
        if not self.wrongs and not missing:
            by, words = self.answers.get("by"), self.answers.get("words", "")
            by = _last_by(self.records, at) if by is None else by
            draft = Draft(
                kind=self.kind.kind,
                at=at,
                fields=fields,
                by=_line(by),
                words=words.strip(),
                private_note=self.answers.get("private-note", "").strip(),
                about=about,
            )
        return Understood(
            draft=draft, wrongs=tuple(self.wrongs), missing=missing, standing=standing, job=job, surfaces=named
        )

    def _not_seen(self, named: tuple[str, ...]) -> tuple[str, ...]:
        """What an observation lacks: where, and what."""
        of_a_job = any(self._has(option) for option in ("left", "cover"))
        lacks_job = not self._has("job") and (of_a_job or not named)
        sees = of_a_job or any(self._has(option) for option in READINGS)
        return (*(("job",) if lacks_job else ()), *(() if sees else ("left",)))

    def _has(self, option: str) -> bool:
        options = (option, *PLACES) if option == "surfaces" else (option,)
        return any(self.answers.get(one, "").strip() for one in options)

    def _attempt(self, option: str, read: Callable[[str], T]) -> T | None:
        text = self.answers.get(option, "").strip()
        if not text:
            return None
        try:
            return read(text)
        except WrongAnswer as error:
            self._wrong(option, error)
            return None

    def _wrong(self, option: str, error: WrongAnswer) -> None:
        wrong = Wrong(option=option, found=error.found, expected=error.expected, hint=error.hint)
        if wrong not in self.wrongs:
            self.wrongs.append(wrong)

    def _places(self, standing: Standing, job: Job | None) -> tuple[str, tuple[str, ...]]:
        """The surfaces that are named, or those that the job's step most likely means."""
        phrases: list[str] = []
        chosen: dict[str, None] = {}
        surfaces = self.records.surfaces
        for option in ("surfaces", *PLACES):
            kind = PLACES.get(option) or (surfaces[job.surfaces[0]].kind if job is not None else None)
            text = self.answers.get(option, "").strip()
            of_job = [n for n in job.surfaces if surfaces[n].kind is kind or option == "surfaces"] if job else []
            if not text:
                continue
            phrase = (
                phrase_for(of_job, surfaces) if text.lower() == "all" and of_job else phrase_typed(text, kind, surfaces)
            )
            if kind is None and (phrase[:1].isdigit() or phrase.lower() == "all"):
                continue  # they mean surfaces of the job, which is not known yet
            ids = self._attempt(option, partial(self._of_job, phrase, job))
            phrases.append(phrase)
            chosen.update(dict.fromkeys(ids or ()))
        if not phrases and job is not None:
            usual = standing.usual(job.id, self.kind.word)
            return phrase_for(usual, surfaces) if usual else "", usual
        return ", ".join(phrases), tuple(chosen)

    def _of_job(self, phrase: str, job: Job | None, _typed: str) -> tuple[str, ...]:
        """The surfaces of a phrase; those of a job alone, where one is meant."""
        chosen = chosen_surfaces(phrase, self.records.surfaces)
        strangers = [name for name in chosen if job is not None and name not in job.surfaces]
        if job is not None and strangers:
            of_job = phrase_for(job.surfaces, self.records.surfaces)
            found = f"{phrase_for(strangers, self.records.surfaces)}, not part of {job.id!r}"
            raise WrongAnswer(found, f"surfaces of that job: {of_job}")
        return chosen

    def _fields(self, job: Job | None, phrase: str, named: tuple[str, ...]) -> tuple[dict[str, Value], str]:
        places = phrase_for(named, self.records.surfaces) if named else ""
        about = f"{places} {self.kind.word}".strip()
        match self.kind.word:
            case "morning":
                return self._morning(), "morning"
            case "postponed" | "forward" | "called-off":
                return self._change(job), f"{job.id if job else ''} {self.kind.word}"
            case "held-back":
                return self._held_back(phrase), f"{places} growth held back"
            case "note":
                return ({"job": job.id} if job else {}), f"note {job.id if job else ''}".strip()
            case _:
                on: dict[str, Value] = {"job": job.id} if job else {}
                on["surfaces"] = phrase
                return {**on, **self._step(job)}, about

    def _step(self, job: Job | None) -> dict[str, Value]:
        fields: dict[str, Value] = {}
        if because := _line(self.answers.get("because", "")):
            fields["because"] = because
        if day := self._attempt("no-work-before", lambda text: _day_after(text, self.local.date())):
            fields["no work before"] = day.isoformat()
        fields |= self._seen()
        for option in MEASURES:
            self._attempt(option, partial(check_measure, option))
        if job is not None and not self.wrongs:
            named = kinds_named(self.answers.get("job", ""))
            told = {option: self.answers.get(option, "").strip() for option in MEASURES}
            try:
                if done := as_done(told, job, named):
                    fields["as done"] = done
            except WrongAnswer as error:
                option = next(option for option in MEASURES if told[option] and repr(told[option]) in error.found)
                self._wrong(option, error)
        if play := self._attempt("play", lambda text: _word_of(text, [play.value for play in Play])):
            fields["play"] = play
        return fields

    def _seen(self) -> dict[str, Value]:
        fields: dict[str, Value] = {}
        for option, name in (("left", "disruption left"), ("cover", "turf cover")):
            if self._attempt(option, lambda text: understood(lambda: (parse_fraction(text), text)[1])):
                fields[name] = self.answers[option].strip()
        if self.answers.get("counted", "").strip():
            fields["how"] = "counted"
        readings = {
            name: reading
            for option, name in READINGS.items()
            if (reading := self._attempt(option, partial(_reading, name)))
        }
        return {**fields, "readings": readings} if readings else fields

    def _morning(self) -> dict[str, Value]:
        play: dict[str, Value] = {}
        for option, state in PLAYS.items():
            for phrase in filter(None, (part.strip() for part in self.answers.get(option, "").split(";"))):
                kind, surfaces = PLACES["greens"] if option != "open" else None, self.records.surfaces
                typed = phrase_typed(phrase, kind, surfaces)
                if self._attempt(option, partial(self._of_job, typed, None)):
                    play.pop(typed, None)
                    play[typed] = state
        fields: dict[str, Value] = {"play": play}
        if why := _line(self.answers.get("why", "")):
            fields["why"] = why
        limits, wrongs = limits_of(self.answers, self.local)
        self.wrongs += wrongs
        if limits:
            fields["limits"] = limits
        return fields

    def _change(self, job: Job | None) -> dict[str, Value]:
        change = self.kind.change
        day = self._attempt("to", lambda text: day_said(text, self.local.date()))
        if day is not None and job is not None:
            self._attempt("to", lambda text: _fits_change(text, day, job, change, self.records, self.now))
        if day is None and change is Change.POSTPONED:
            change = Change.PUT_OFF
        fields: dict[str, Value] = {"job": job.id if job else "", "change": change.value if change else ""}
        if day is not None:
            fields["starts"] = day.isoformat()
        return {**fields, "because": _line(self.answers.get("because", ""))}

    def _held_back(self, phrase: str) -> dict[str, Value]:
        near = self.local.date()
        causes = [cause.value for cause in HeldBackBy]
        cause = self._attempt("cause", lambda text: _word_of(text, causes))
        fields: dict[str, Value] = {"cause": cause or "", "surfaces": phrase}
        for option in ("from", "until"):
            if day := self._attempt(option, lambda text: day_said(text, near)):
                fields[option] = day.isoformat()
        return fields


def _line(text: str) -> str:
    return " ".join(text.split())


def _last_by(records: ClubRecords, at: datetime) -> str:
    known = [entry.head.by for entry in records.entries if entry.head.by and entry.head.at <= at]
    return known[-1] if known else ""


def _word_of(text: str, words: list[str]) -> str:
    plain = _line(text).lower().replace("-", " ")
    if plain not in words:
        raise WrongAnswer(repr(text), f"one of: {', '.join(words)}", nearest(plain, words))
    return plain


def _day_after(text: str, today: date) -> date:
    day = day_said(text, today)
    if day <= today:
        raise WrongAnswer(repr(text), f"a day after {today.isoformat()}")
    return day


def _reading(name: str, text: str) -> str:
    try:
        Readings.model_validate({name: text})
    except ValidationError as error:
        told = error.errors()[0].get("ctx", {})
        raise WrongAnswer(told["found"], told["expected"], told["hint"]) from error
    return _line(text)


def _fits_change(text: str, day: date, job: Job, change: Change | None, records: ClubRecords, now: datetime) -> None:
    facts = standing_at(records, now).facts[job.id]
    starts, later = facts.starts, change is Change.POSTPONED
    if later and facts.put_off is not None:
        return
    if day == starts or (day > starts) is not later:
        expected = f"a day {'after' if later else 'before'} {starts.isoformat()}, on which it starts so far"
        word = "forward" if later else "postponed"
        hint = f"The other way round it is 'swardcast log {word}'." if day != starts else ""
        raise WrongAnswer(repr(text), expected, hint)
