"""A page for whoever runs the sites of many clubs: one file with everything in it. It is never published."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import Enum
from typing import Final

from swardcast.language.voice import Voice
from swardcast.outlets.committee_page import one_file, style_of

__all__ = ["BuiltClub", "State", "fleet_page"]

_SHEETS: Final = ("committee.css", "fleet.css")
_A_MINUTE_S: Final = 60


class State(Enum):
    """What became of a club's site."""

    PUBLISHED = "published"
    UNCHANGED = "unchanged"
    FAILED = "failed"


@dataclass(frozen=True, slots=True, kw_only=True)
class BuiltClub:
    """What became of one club's site.

    Args:
        club: the club folder below the folder of all, such as "north/quillhaven".
        name: the club's name as its site has it, or "" where there is no site.
        state: unchanged means the same site again, byte for byte; failed, that the one before stays.
        seconds: how long it took by the clock.
        said: what the build told: what stopped it, or what is worth another look; "" where there is nothing.
    """

    club: str
    name: str
    state: State
    seconds: float
    said: str


def fleet_page(
    built: Sequence[BuiltClub], voice: Voice, *, folder: str, made: datetime, seconds: float, homes: Mapping[str, str]
) -> str:
    """Write what became of the sites as a page.

    Args:
        built: all clubs, in the order wanted.
        voice: the language and the day of the reader.
        folder: name of the folder that holds the club folders.
        made: the moment at which the last site was built, local.
        seconds: how long all of them took together by the clock.
        homes: addresses of the sites as seen from the page, by club; none for those that are not there.

    Returns:
        A whole document with its styles; every text is escaped.
    """
    private = [
        voice.say("fleet-private"),
        voice.say("fleet-made", moment=voice.moment(made)),
        _took_in_words(seconds, voice),
    ]
    return one_file(
        "fleet.html",
        voice,
        folder,
        style_of(*_SHEETS),
        title=voice.say("fleet-title", count=len(built)),
        private=voice.sentences(private),
        counts=voice.sentence(voice.joined(_counts(built, voice))),
        built=built,
        failed=[one for one in built if one.state is State.FAILED],
        told=[one for one in built if one.state is not State.FAILED and one.said],
        homes=homes,
        states={state: voice.name("fleet-state", state) for state in State},
    )


def _counts(built: Sequence[BuiltClub], voice: Voice) -> list[str]:
    counts = {state: sum(one.state is state for one in built) for state in State}
    said = [
        voice.say("fleet-count-published", count=counts[State.PUBLISHED]),
        voice.say("fleet-count-unchanged", count=counts[State.UNCHANGED]),
        voice.say("fleet-count-failed", count=counts[State.FAILED]),
    ]
    return [words for words, count in zip(said, counts.values(), strict=True) if count]


def _took_in_words(seconds: float, voice: Voice) -> str:
    minutes, left = divmod(max(1, round(seconds)), _A_MINUTE_S)
    if not minutes:
        return voice.say("fleet-took-seconds", seconds=left)
    return voice.say("fleet-took-minutes", minutes=minutes, seconds=left)
