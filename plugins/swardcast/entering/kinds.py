"""The kinds of entry by the words that a greenkeeper types, with the answers that each needs and may have."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from swardcast.entering.places import PLACES
from swardcast.reading.limits import LIMITS
from swardcast.records.log import Change, Step

__all__ = ["ALSO", "BY_WORD", "KINDS", "MEASURES", "PLAYS", "READINGS", "STEPS", "EntryKind", "meant"]

_ON: Final = ("surfaces", *PLACES)
MEASURES: Final = ("tine", "blade", "spacing", "depth", "passes", "sand", "seed")
"""Options that say how work was done, where that differs from the plan."""
PLAYS: Final = {"open": "open", "care": "open with care", "temporary": "temporary green", "closed": "closed"}
"""Options of a morning entry that name surfaces, the worst last, since a later line of the entry counts."""
READINGS: Final = {
    "speed": "green speed",
    "firmness": "firmness",
    "moisture": "moisture",
    "cut": "height of cut",
    "organic-matter": "organic matter",
}
"""Options that are readings of a meter."""
STEPS: Final = {"started": Step.STARTED, "done": Step.DONE, "held-up": Step.HELD_UP, "resumed": Step.RESUMED}


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryKind:
    """One kind of entry.

    Args:
        word: what is typed.
        kind: the kind in the log.
        what: what it says, for help.
        example: a whole line, for help.
        needs: answers that cannot be left out.
        may: answers that can; every kind has "at", "by", "words" and "private-note" besides.
        subject: the answer that may stand without its option, or "".
        change: the change of plan, for the three words that make one.
    """

    word: str
    kind: str
    what: str
    example: str
    needs: tuple[str, ...] = ()
    may: tuple[str, ...] = ()
    subject: str = "job"
    change: Change | None = None


KINDS: Final = (
    EntryKind(
        word="morning",
        kind="morning status",
        what="how the course stands this morning, or later in the day, such as 'status --care 12'",
        example='swardcast log morning --open "the whole course" --closed "greens 7-12"',
        may=(*PLAYS, "why", "limits", *(name.replace(" ", "-") for name in LIMITS), "decided-by", "until"),
        subject="",
    ),
    EntryKind(
        word="started",
        kind="work started",
        what="work has started",
        example="swardcast log started hollow-tine --greens 1-6",
        needs=("job",),
        may=(*_ON, "play"),
    ),
    EntryKind(
        word="done",
        kind="work done",
        what="work is done",
        example='swardcast log done hollow-tine --greens 1-9 --tine "13 mm" --sand "1.4 t/green"',
        needs=("job",),
        may=(*_ON, "play", *MEASURES),
    ),
    EntryKind(
        word="held-up",
        kind="held up",
        what="work is held up, with its cause",
        example='swardcast log held-up hollow-tine --because "heavy rain"',
        needs=("job", "because"),
        may=(*_ON, "play", "no-work-before"),
    ),
    EntryKind(
        word="resumed",
        kind="work resumed",
        what="work that was held up goes on",
        example="swardcast log resumed hollow-tine --greens 12-15",
        needs=("job",),
        may=(*_ON, "play"),
    ),
    EntryKind(
        word="seen",
        kind="observation",
        what="what you see or measure on the course",
        example='swardcast log seen hollow-tine --greens 1-6 --left "15 %"',
        may=("job", *_ON, "left", "counted", "cover", *READINGS),
    ),
    EntryKind(
        word="normal",
        kind="back to normal",
        what="surfaces roll as before the work",
        example="swardcast log normal hollow-tine --greens 1-11",
        needs=("job",),
        may=_ON,
    ),
    EntryKind(
        word="postponed",
        kind="change of plan",
        what="a job starts later than planned; without a new day where none is known yet",
        example='swardcast log postponed bunkers --to "7 September" --because "the sand comes late"',
        needs=("job", "because"),
        may=("to",),
        change=Change.POSTPONED,
    ),
    EntryKind(
        word="forward",
        kind="change of plan",
        what="a job starts earlier than planned",
        example='swardcast log forward deep-tine --to "4 October" --because "the machine is here early"',
        needs=("job", "to", "because"),
        change=Change.BROUGHT_FORWARD,
    ),
    EntryKind(
        word="called-off",
        kind="change of plan",
        what="a job is called off",
        example='swardcast log called-off light-sanding --because "the greens need none"',
        needs=("job", "because"),
        change=Change.CALLED_OFF,
    ),
    EntryKind(
        word="held-back",
        kind="growth held back",
        what="growth is held back: by a regulator, dull weather, want of feed or frost",
        example='swardcast log held-back "growth regulator" --greens 10-18',
        needs=("cause", "surfaces"),
        may=(*PLACES, "from", "until"),
        subject="cause",
    ),
    EntryKind(
        word="note",
        kind="note to members",
        what="a note to members in your own words",
        example='swardcast log note hollow-tine --words "We start on Monday at seven."',
        needs=("words",),
        may=("job",),
    ),
    EntryKind(
        word="correct",
        kind="correction",
        what="an earlier entry was wrong: say what stands instead, or withdraw it",
        example='swardcast log correct 2027-08-24-1550 --greens 10-11 --because "the 12th is not done"',
        needs=("entry",),
        may=(*_ON, "withdraw", "was-at", "because", "play", *MEASURES, "left", "counted", "cover", *READINGS),
        subject="entry",
    ),
)
BY_WORD: Final = {kind.word: kind for kind in KINDS}
ALSO: Final = {"status": "morning"}
"""Other words for a kind: a morning status is entered at any time of the day."""


def meant(word: str) -> str:
    """Give the word of the kind that is meant by another word for it."""
    return ALSO.get(word, word)
