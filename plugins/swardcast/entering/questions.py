"""The questions of a guided entry, one after the other, each with the answer that Enter gives."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from swardcast.entering.corrections import entry_shown
from swardcast.entering.job_words import candidates
from swardcast.entering.kinds import BY_WORD, KINDS, MEASURES
from swardcast.entering.measures import planned_in_words
from swardcast.entering.places import PLACES
from swardcast.entering.suggestions import held_up_in_words, job_offered, surfaces_offered
from swardcast.entering.understanding import Answers, Understood
from swardcast.language.voice import Voice
from swardcast.notices.limits import limit_clause
from swardcast.outlook.limits import limits_in_force
from swardcast.records.log import HeldBackBy
from swardcast.records.standing import as_entered

__all__ = ["Question", "kind_question", "next_question"]

_WHERE: Final = ("surfaces", *PLACES)
_OPTIONAL: Final = {
    "morning": ("closed", "temporary", "care", "open", "why", "limits", "words"),
    "started": ("surfaces", "at", "words"),
    "done": ("surfaces", "at", "changes", "words"),
    "held-up": ("surfaces", "at", "words"),
    "resumed": ("surfaces", "at", "words"),
    "seen": ("surfaces", "left", "counted", "speed", "at", "words"),
    "normal": ("surfaces", "at", "words"),
    "postponed": ("words",),
    "forward": ("words",),
    "called-off": ("words",),
    "held-back": ("until", "words"),
    "note": ("job",),
    "correct": ("words",),
}
"""What is asked besides the needed answers when a manager wants to be guided."""

_ASKS: Final = {
    "job": "Which job?",
    "surfaces": "Which surfaces?",
    "at": "When?",
    "because": "Why? Members will read it",
    "changes": "As planned ({planned})? Enter for yes, or what was otherwise",
    "left": "How much of the first marks is left?",
    "counted": "Counted, or by eye?",
    "speed": "Green speed?",
    "to": "The new first day?",
    "cause": "What holds growth back ({causes})?",
    "until": "Until which day?",
    "closed": "Closed today?",
    "temporary": "On temporary greens?",
    "care": "Open with care?",
    "open": "Open otherwise?",
    "why": "Why? Members will read it",
    "limits": "Limits (trolleys, buggies, preferred lies, carry only, frost delay)?",
    "words": "Your own words to members?",
    "entry": "Which entry was wrong?",
    "withdraw": "Which surfaces are right? None withdraws the entry",
}
_SAMPLES: Final = {
    "because": "heavy rain",
    "changes": "sand 1.4 t/green, tine 13 mm",
    "left": "15 %",
    "speed": "8 ft 10 in",
    "to": "7 September",
    "until": "24 September",
    "limits": "trolleys: none today",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question.

    Args:
        option: the option that the answer is for.
        asks: the question.
        offered: the answer that Enter gives, or "" for none.
        choices: answers by number, each with its meaning, or none.
        sample: an answer to show where nothing is offered, or "".
        needed: whether there has to be an answer.
        before: what to say before it is asked, or "".
    """

    option: str
    asks: str
    offered: str = ""
    choices: tuple[tuple[str, str], ...] = ()
    sample: str = ""
    needed: bool = False
    before: str = ""


def kind_question(standing_offer: str) -> Question:
    """Ask what kind of entry it is to be.

    Args:
        standing_offer: the kind that most likely comes next, a word of `kinds.KINDS`.

    Returns:
        The question.
    """
    choices = tuple((kind.word, kind.what) for kind in KINDS)
    return Question(option="kind", asks="What happened?", offered=standing_offer, choices=choices, needed=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Asked:
    word: str
    answers: Answers
    told: Understood
    morning: Answers

    def options(self, *, guided: bool) -> Iterator[str]:
        """Options still to be asked: what is missing, then the rest when guided."""
        needs = BY_WORD[self.word].needs
        order = [*needs, *(option for option in self.told.missing if option not in needs)]
        if self.word == "seen" and guided:
            order = ["job", *order]
        order += _OPTIONAL[self.word] if guided else ()
        if self.word == "postponed":
            order = ["job", "to", *order]
        if self.word == "morning" and guided:
            order = list(_OPTIONAL["morning"])  # what is not open comes first to mind
        for option in dict.fromkeys(order):
            answered = _WHERE if option == "surfaces" else MEASURES if option == "changes" else ()
            if option in self.answers or any(self.answers.get(one) for one in answered):
                continue
            if option == "counted" and not self.answers.get("left"):
                continue
            yield option

    def question(self, option: str) -> Question:
        asks = "The new first day, if one is known?" if (self.word, option) == ("postponed", "to") else _ASKS[option]
        if option == "changes" and self.told.job is not None:
            asks = asks.format(planned=planned_in_words(self.told.job))
        if option == "cause":
            asks = asks.format(causes=", ".join(cause.value for cause in HeldBackBy))
        needed = option in BY_WORD[self.word].needs or option in self.told.missing
        return Question(
            option=option,
            asks=asks,
            offered=self._offered(option),
            choices=self._choices(option),
            sample=_SAMPLES.get(option, ""),
            needed=needed and option != "withdraw",
            before=self._before(option),
        )

    def _before(self, option: str) -> str:
        standing, job = self.told.standing, self.told.job
        match option:
            case "limits":
                held = [
                    limit_clause(one, Voice.english(standing.at.date()))
                    for one in limits_in_force(standing.entries, standing.at)
                ]
                return f"In force: {'; '.join(held)}. Enter leaves that as it is." if held else ""
            case "withdraw" if self.told.corrects is not None:
                return entry_shown(self.told.corrects, standing)
            case "surfaces" if self.word == "resumed" and job is not None:
                return held_up_in_words(standing, job)
            case _:
                return ""

    def _offered(self, option: str) -> str:
        if self.word == "morning":
            other = option == "why" and self.answers.get("closed", "") != self.morning.get("closed", "")
            return "" if other else self.morning.get(option, "")  # a reason for what is not closed would be wrong
        standing, job = self.told.standing, self.told.job
        match option:
            case "job":
                return "" if self.word == "note" else job_offered(standing, self.word)
            case "surfaces" if job is not None:
                return surfaces_offered(standing, job, self.word)
            case "at":
                return Voice.english(standing.at.date()).time(standing.at)
            case "cause":
                return HeldBackBy.GROWTH_REGULATOR.value
            case "counted":
                return "by eye"
            case "entry":
                return as_entered(standing.entries)[-1].head.id if standing.entries else ""
            case _:
                return ""

    def _choices(self, option: str) -> tuple[tuple[str, str], ...]:
        if option != "job":
            return ()
        return tuple((job.id, job.title) for job in candidates(self.told.standing, self.word))


def next_question(word: str, answers: Answers, told: Understood, morning: Answers, *, guided: bool) -> Question | None:
    """Tell what to ask next.

    Args:
        word: the kind of entry.
        answers: what was answered so far.
        told: what came of that.
        morning: what to offer for a morning entry.
        guided: whether to ask for more than what is missing.

    Returns:
        The question, or None when all is answered.
    """
    asked = _Asked(word=word, answers=answers, told=told, morning=morning)
    option = next(asked.options(guided=guided), None)
    return asked.question(option) if option is not None else None
