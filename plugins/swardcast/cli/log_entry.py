"""One entry from its first answer to its file: ask, check with the whole folder, show what changes, write."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

from swardcast.cli.common import moment_of, text_of
from swardcast.cli.log_asking import ask, can_ask, say
from swardcast.cli.log_writing import read_first, show_and_write
from swardcast.entering.corrections import entry_meant, understand_correction
from swardcast.entering.kinds import BY_WORD, meant
from swardcast.entering.measures import changes_typed
from swardcast.entering.mornings import morning_offered
from swardcast.entering.places import PLACES
from swardcast.entering.questions import Question, kind_question, next_question
from swardcast.entering.remarks import cautions
from swardcast.entering.standing import standing_at
from swardcast.entering.suggestions import held_up_in_words, kind_offered
from swardcast.entering.understanding import Understood, understand
from swardcast.entering.wrong import AnswersNeedAttention, Wrong, WrongAnswer
from swardcast.errors import nearest
from swardcast.outlook.course import assess_course
from swardcast.outlook.weather_book import WeatherBook
from swardcast.reading.log_file import typed_fields
from swardcast.records.folder import ClubRecords

__all__ = ["enter"]

_WRONG_USAGE = 2
_NO_ANSWERS = ("word", "club", "as_of", "yes", "quiet", "json")


def enter(options: argparse.Namespace) -> int:
    """Make one entry.

    Args:
        options: the command's options.

    Returns:
        0 when it is written, 1 when not, 2 when something is missing and nobody can be asked.
    """
    records = read_first(options.club)
    desk = _Desk(options=options, records=records, now=moment_of(options, records))
    desk.answers = {
        name.replace("_", "-"): value
        for name, value in vars(options).items()
        if name not in _NO_ANSWERS and value is not None
    }
    word = meant(options.word or "")
    guided = can_ask() and not desk.answers
    if not word:
        if not can_ask():
            say(f"swardcast log: name the kind of entry, one of: {', '.join(BY_WORD)}")
            return _WRONG_USAGE
        word = desk.ask_kind()
    told = desk.complete(word, guided=guided)
    if told.draft is None:
        say(_missing_in_words(word, told))
        return _WRONG_USAGE
    return show_and_write(options, records, desk.now, {"": told.draft}, list(cautions(word, told)), desk.book)


def _missing_in_words(word: str, told: Understood) -> str:
    kind = BY_WORD[word]
    names = ", ".join(option.upper() if option == kind.subject else f"--{option}" for option in told.missing)
    lines = [f"swardcast log {word}: still needed: {names}. Nothing was written."]
    if word == "resumed" and "surfaces" in told.missing and told.job is not None:
        lines.append(f"{held_up_in_words(told.standing, told.job)}; none of them had been started.")
    return "\n".join([*lines, "Example:", f"  {kind.example}"])


def _empty(answers: Mapping[str, str]) -> list[Wrong]:
    """Options of the line that say nothing; asked for them, a manager may well say none.

    A script that fills in a name which it does not have would else enter the surfaces that come next.
    """
    expected = {
        "limits": "a limit and what holds, such as 'trolleys: none today'",
        **dict.fromkeys(
            ("surfaces", *PLACES), "surfaces, such as 1-9 or all; without the option they are those that come next"
        ),
    }
    return [
        Wrong(option=option, found="nothing", expected=words)
        for option, words in expected.items()
        if option in answers and not answers[option].strip()
    ]


@dataclass(slots=True)
class _Desk:
    """Where one entry is put together.

    Args:
        options: the command's options.
        records: the club's records.
        now: the present moment.
        answers: what was answered so far.
    """

    options: argparse.Namespace
    records: ClubRecords
    now: datetime
    answers: dict[str, str] = field(default_factory=dict)
    _book: WeatherBook | None = None
    _morning: dict[str, str] | None = None
    _typed: tuple[str, dict[str, Any]] | None = None

    @property
    def book(self) -> WeatherBook:
        """The club's weather, prepared once."""
        self._book = self._book or WeatherBook(self.records.club, self.records.weather)
        return self._book

    def ask_kind(self) -> str:
        question = kind_question(kind_offered(standing_at(self.records, self.now)))
        while (reply := meant(ask(question).lower().replace(" ", "-"))) not in BY_WORD:
            say(f"  found {reply!r}; expected one of these words, or its number. {nearest(reply, BY_WORD)}".rstrip())
        return reply

    def complete(self, word: str, *, guided: bool) -> Understood:
        """Ask until nothing is missing; raise for options that cannot be used."""
        told = self.understand(word, self.answers)
        wrongs = [*told.wrongs, *_empty(self.answers)]
        if wrongs:
            raise AnswersNeedAttention(wrongs)
        while can_ask() and (
            question := next_question(word, self.answers, told, self._offered(word, guided=guided), guided=guided)
        ):
            wrongs = self._try(word, question)
            for wrong in wrongs:
                say(f"  {wrong}")
            told = self.understand(word, self.answers)
        if told.wrongs:  # of an answer that nobody was asked for, such as the minute
            raise AnswersNeedAttention(told.wrongs)
        return told

    def _try(self, word: str, question: Question) -> list[Wrong]:
        """Ask once, and keep the answer if it can be used."""
        reply = ask(question)
        option = question.option
        if not reply and question.needed:
            return [Wrong(option=option, found="nothing", expected="an answer")]
        try:
            given = _as_answers(option, reply)
        except WrongAnswer as error:
            return [Wrong(option=option, found=error.found, expected=error.expected, hint=error.hint)]
        told = self.understand(word, {**self.answers, **given})
        wrongs = [wrong for wrong in told.wrongs if wrong.option in given]
        if not wrongs:
            self.answers.update(given)
        return wrongs

    def _no_entry(self, *, wrongs: tuple[Wrong, ...] = (), missing: tuple[str, ...] = ()) -> Understood:
        standing = standing_at(self.records, self.now.replace(second=0, microsecond=0))
        return Understood(draft=None, wrongs=wrongs, missing=missing, standing=standing, job=None, surfaces=())

    def understand(self, word: str, answers: dict[str, str]) -> Understood:
        if word != "correct":
            return understand(word, answers, self.records, self.now)
        text = answers.get("entry", "").strip()
        if not text:
            return self._no_entry(missing=("entry",))
        try:
            entry = entry_meant(text, self.records, self.now)
        except WrongAnswer as error:
            wrong = Wrong(option="entry", found=error.found, expected=error.expected, hint=error.hint)
            return self._no_entry(wrongs=(wrong,))
        if self._typed is None or self._typed[0] != entry.head.id:
            file = text_of(self.options.club / entry.head.file)
            self._typed = (entry.head.id, typed_fields(file, instead=bool(entry.head.instead_of)))
        return understand_correction(answers, entry, self._typed[1], self.records, self.now)

    def _offered(self, word: str, *, guided: bool) -> dict[str, str]:
        if self._morning is None:
            self._morning = {}
            if word == "morning" and guided:
                outlook = assess_course(self.records, self.now, self.book)
                self._morning = morning_offered(standing_at(self.records, self.now), outlook)
        return self._morning


def _as_answers(option: str, reply: str) -> dict[str, str]:
    """Turn the reply to a question into answers by option."""
    match option:
        case "changes":
            as_planned = reply.lower() in ("", "yes", "y")
            return {"changes": "", **({} if as_planned else changes_typed(reply))}
        case "counted":
            if not (plain := reply.lower()) or not ("counted".startswith(plain) or "by eye".startswith(plain)):
                raise WrongAnswer(repr(reply), "'counted' or 'by eye'", nearest(plain, ("counted", "by eye")))
            return {"counted": "yes" if "counted".startswith(plain) else ""}
        case "withdraw":
            return {"withdraw": "", "surfaces": reply} if reply else {"withdraw": "yes"}
        case _:
            return {option: reply}
