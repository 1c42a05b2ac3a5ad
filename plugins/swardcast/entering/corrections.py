"""A correction of an earlier entry: its fields as they were typed, with those put right that are told anew."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import datetime
from typing import Any, Final

from swardcast.entering.drafts import Draft, Value, moment_text
from swardcast.entering.kinds import BY_WORD, STEPS
from swardcast.entering.places import PLACES, phrase_for
from swardcast.entering.standing import Standing, standing_at
from swardcast.entering.understanding import Answers, Understood, understand
from swardcast.entering.wrong import Wrong, WrongAnswer
from swardcast.errors import nearest
from swardcast.language.voice import Voice, capital
from swardcast.notices.events import entry_in_words
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Correction, Entry, MorningStatus
from swardcast.records.plan import Play

__all__ = ["entry_meant", "entry_shown", "understand_correction"]

_WORD_OF: Final = {BY_WORD[word].kind: word for word in (*STEPS, "seen", "normal")}
_KEPT: Final = ("by", "words", "private-note", "because", "at", "entry", "withdraw", "was-at")
"""Answers that speak of the correction itself."""


def entry_meant(text: str, records: ClubRecords, now: datetime) -> Entry:
    """Find the one entry that is to be corrected.

    Args:
        text: its name or a piece of it; "last" is the latest.
        records: the club's records.
        now: the present moment, aware.

    Returns:
        An entry that stands and is no correction itself.

    Raises:
        WrongAnswer: when it means none or several.
    """
    standing = [entry for entry in standing_at(records, now).entries if not isinstance(entry, Correction)]
    wanted = text.strip().lower().removesuffix(".md")
    if wanted == "last" and standing:
        return max(standing, key=lambda entry: (entry.head.at, entry.head.id))
    exact = [entry for entry in standing if entry.head.id.lower() == wanted]
    fits = exact or [entry for entry in standing if wanted and wanted in entry.head.id.lower()]
    if len(fits) == 1:
        return fits[0]
    names = [entry.head.id for entry in fits or standing[-5:]]
    if fits:
        found, hint = f"{text!r}, which fits {len(fits)} entries", "Type more of its name."
    else:
        found, hint = repr(text), nearest(wanted, [entry.head.id for entry in standing])
    raise WrongAnswer(found, f"one entry that stands, such as: {', '.join(names[-5:]) or 'none'}", hint)


def entry_shown(entry: Entry, standing: Standing) -> str:
    """Tell what an entry is before it is corrected.

    Args:
        entry: the entry.
        standing: how the jobs stand, for the day of the reader.

    Returns:
        Its moment and what it says, such as "At 10:20am on Thursday 26 August: Work done on green 12."
    """
    voice, records = Voice.english(standing.at.date()), standing.records
    when = voice.moment(entry.head.true_from.astimezone(standing.at.tzinfo))
    said = entry_in_words(entry, records, voice)
    if isinstance(entry, MorningStatus):
        said = f"{said.rstrip('.')}: {'; '.join(_parts_of(entry, records))}."
    return f"At {when}: {said}"


def _parts_of(entry: MorningStatus, records: ClubRecords) -> Iterator[str]:
    """What a morning entry says; where it speaks of the whole course, the open surfaces are not counted up."""
    whole = len(entry.play) == len(records.surfaces)
    plays = {play: [name for name, one in entry.play if one is play] for _, play in entry.play}
    opened = plays.pop(Play.OPEN, []) if whole and len(plays) > 1 else []
    yield from (f"{phrase_for(names, records.surfaces)} {play.value}" for play, names in plays.items())
    if opened:
        yield "open otherwise"
    yield from (limit.name for limit in entry.limits)


def understand_correction(
    answers: Answers, entry: Entry, typed: Mapping[str, Any], records: ClubRecords, now: datetime
) -> Understood:
    """Make a correction of answers.

    Args:
        answers: what was answered: what stands instead, or "withdraw".
        entry: the entry that was wrong.
        typed: that entry's fields as they stand in its file.
        records: the club's records.
        now: the present moment, aware.

    Returns:
        The draft, or what is wrong with the answers.
    """
    told = {option: text for option, text in answers.items() if option not in _KEPT and text.strip()}
    outer = {option: answers[option] for option in ("at", "by", "private-note") if option in answers}
    frame = replace(understand("note", {"words": "-", **outer}, records, now), corrects=entry)
    wrongs = list(frame.wrongs)
    fields: dict[str, Value] = {"corrects": entry.head.id}
    withdraw = bool(answers.get("withdraw", "").strip())
    was_at = answers.get("was-at", "").strip()
    word = _WORD_OF.get(str(typed.get("kind", "")).strip().lower())
    missing: tuple[str, ...] = ()
    if (told or was_at) and withdraw:
        wrongs.append(
            Wrong(option="withdraw", found="it with something that stands instead", expected="one of the two")
        )
    elif (told or was_at) and word is None:
        expected = "--withdraw, and then a new entry of its own"
        found = f"something to stand instead of an entry of kind {typed.get('kind')!r}"
        wrongs.append(Wrong(option="withdraw", found=found, expected=expected))
    elif (told or was_at) and word is not None:
        inner = _instead(word, told, was_at, entry, typed, records, now)
        wrongs += inner.wrongs
        if inner.draft is not None:
            fields["instead"] = _put_right(inner.draft, _as_text(typed))
    elif not withdraw:
        missing = ("withdraw",)
    draft = frame.draft
    if draft is not None and draft.at <= entry.head.at:
        found = f"a correction of {moment_text(draft.at)} of an entry made at that minute or later"
        wrongs.append(Wrong(option="at", found=found, expected="a later minute", hint="Wait a minute."))
    if draft is None or wrongs or missing:
        return replace(frame, draft=None, wrongs=tuple(dict.fromkeys(wrongs)), missing=missing)
    about = f"correction of {entry.head.id.removeprefix(f'{entry.head.at:%Y-%m-%d}-')}"
    words = _own_words(answers)
    return replace(frame, draft=replace(draft, kind="correction", fields=fields, words=words, about=about))


def _own_words(answers: Answers) -> str:
    """What members read: why it is corrected, then the manager's other words."""
    because = " ".join(answers.get("because", "").split())
    why = capital(because) if because.endswith((".", "!", "?")) or not because else f"{capital(because)}."
    return "\n\n".join(part for part in (why, answers.get("words", "").strip()) if part)


def _instead(
    word: str,
    told: Answers,
    was_at: str,
    entry: Entry,
    typed: Mapping[str, Any],
    records: ClubRecords,
    now: datetime,
) -> Understood:
    """What stands instead, read as if it were entered anew."""
    places = any(option in told for option in ("surfaces", *PLACES))
    kept = {
        "job": str(typed.get("job") or ""),
        "because": str(typed.get("because") or ""),
        "surfaces": "" if places else str(typed.get("surfaces") or "all"),
    }
    answers = {option: text for option, text in kept.items() if text}
    at = was_at or moment_text(entry.head.true_from)
    understood = understand(word, {**answers, **told, "at": at}, records, now)
    renamed = [replace(wrong, option="was-at") if wrong.option == "at" else wrong for wrong in understood.wrongs]
    return replace(understood, wrongs=tuple(renamed))


def _put_right(draft: Draft, typed: Mapping[str, Value]) -> dict[str, Value]:
    """The fields as they were typed, with those in their place that are told anew."""
    fields = {**typed, **draft.fields}
    for name in ("at", "kind", "by"):
        fields.pop(name, None)
    if "surfaces" not in typed and draft.fields.get("surfaces") == "all":
        fields.pop("surfaces")
    return {"at": moment_text(draft.at), "kind": draft.kind, **fields}


def _as_text(value: Mapping[str, Any]) -> dict[str, Value]:
    return {name: _one_as_text(inner) for name, inner in value.items() if inner is not None}


def _one_as_text(value: Any) -> Value:
    if isinstance(value, Mapping):
        return _as_text(value)
    if isinstance(value, list):
        return [_one_as_text(item) for item in value]
    return str(value)
