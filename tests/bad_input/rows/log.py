"""Log entries, one by one and against each other."""

from __future__ import annotations

from typing import Final

from tests.bad_input.mutations import add, broken, fine, put, swap, within, without
from tests.bad_input.rows.files import DONE, MORNING

__all__ = ["ROWS"]

_RULES: Final = "log/2027/2027-09-14-0650-morning.md"
_CORRECTION: Final = "log/2027/2027-08-24-1815-not-the-12th.md"
_POSTPONED: Final = "log/2027/2027-08-26-1630-bunkers-postponed.md"
_HELD_UP: Final = "log/2027/2027-08-25-0710-held-up-by-rain.md"
_NOTE: Final = "log/2027/2027-07-07-1130-dry-spell.md"
_SEEN: Final = "log/2027/2027-08-30-1530-greens-1-to-6-closing.md"
_NEW: Final = "log/2027/2027-09-13-0900-new.md"
_AT: Final = "at: 2027-08-23 11:40"
_JOB: Final = "job: greens-renovation-2027"


def _entry(at: str, kind: str, *fields: str) -> str:
    return "\n".join(["---", f"at: {at}", f"kind: {kind}", *fields, "---", ""])


_HELLO: Final = _entry("2027-09-13 09:00", "note to members") + "Hello.\n"

ROWS = (
    broken("a kind of entry misspelt", DONE, swap("kind: work done", "kind: work don"), "kind", "Did you mean 'work done'?"),
    broken("a kind of entry as people say it", DONE, swap("kind: work done", "kind: finished"), "kind", "Did you mean 'work done'?"),
    broken("a kind as a list", DONE, swap("kind: work done", "kind: [work done]"), "kind", "a list of 1"),
    broken("a kind and nothing else", DONE, put("---\nkind: work done\n---\n", None), "at", "nothing", more=True),
    broken("a moment without a time", DONE, swap(_AT, "at: 2027-08-23"), "at", "day and time"),
    broken("a moment in words", DONE, swap(_AT, "at: Monday noon"), "at", "Monday noon"),
    broken("a moment on a day that there is not", DONE, swap(_AT, "at: 2027-02-30 11:40"), "at", "exists in the calendar"),
    broken("a moment at 24 o'clock", DONE, swap(_AT, "at: 2027-08-23 24:00"), "at", "23:59"),
    broken("a moment that the clocks skip", DONE, swap(_AT, "at: 2027-03-28 01:30"), "at", "the clocks skip this one"),
    broken("a moment that the clocks repeat", DONE, swap(_AT, "at: 2027-10-31 01:30"), "at", "the clocks repeat this one"),
    fine("a repeated moment with its offset", _NOTE, swap("at: 2027-07-07 11:30", "at: 2027-10-31 01:30+01:00")),
    broken("an offset of four days", DONE, swap(_AT, "at: 2027-08-23 11:40+99:00"), "at", "+99:00"),
    broken("the first moment of all calendars", DONE, swap(_AT, "at: 0001-01-01 00:00"), "at", "0001-01-01"),
    broken("the last moment of all calendars", DONE, swap(_AT, "at: 9999-12-31 23:59"), "at", "9999-12-31"),
    broken("a moment as fields", DONE, swap(_AT, "at: {day: 2027-08-23}"), "at", "several fields"),
    broken("a job that is not in the plan", DONE, swap(_JOB, "job: greens-renovaton-2027"), "job", "Did you mean 'greens-renovation-2027'?"),
    broken("a job that is announced only later", DONE, within("job:", swap(_AT, "at: 2027-05-09 11:40")), "job", "announced only on 2027-05-10"),
    broken("a job as a number", DONE, swap(_JOB, "job: 12"), "job", "'12'", "not in the plan"),
    broken("greens that there are not", DONE, swap("surfaces: greens 1-3", "surfaces: greens 1-30"), "surfaces", "no green 30"),
    broken("greens of another job", DONE, swap("surfaces: greens 1-3", "surfaces: tees 1-3"), "surfaces", "not part of the job"),
    broken("greens and a stranger", DONE, swap("surfaces: greens 1-3", "surfaces: greens 1-3 and the moon"), "surfaces", "'the moon'"),
    broken("a field of an entry misspelt", DONE, swap("surfaces: greens 1-3", "surface: greens 1-3"), "surface", "Did you mean 'surfaces'?"),
    broken("a field of an entry twice", DONE, swap("by: the course manager", "by: the course manager\n¦by: his deputy"), "by", "a second time"),
    broken("by a list of people", DONE, swap("by: the course manager", "by: [a, b]"), "by", "a list of 2"),
    broken("work as done that is none", DONE, swap("by: the course manager", "by: x\nas done:\n  ¦- scarifyng: {}"), "as done 1", "Did you mean 'scarifying'?"),
    broken("tines as done without a unit", DONE, swap("by: the course manager", "by: x\nas done:\n  ¦- hollow tining: {diameter: 13, spacing: 50 x 50 mm, depth: 60 mm}"), "as done 1, hollow tining.diameter", "needs its unit"),
    broken("an empty list of work as done", DONE, swap("by: the course manager", "by: x\n¦as done: []"), "as done", "a list of 0"),
    broken("surfaces that no morning knows", MORNING, swap("  green 12: temporary green", "  ¦gren 12: temporary green"), "play.gren 12", "Did you mean"),
    broken("play that there is not", MORNING, swap("green 12: temporary green", "green 12: tempory green"), "play.green 12", "Did you mean 'temporary green'?"),
    broken("play as a list", MORNING, swap("play:\n  the whole course: open\n", "¦play: [open]\nx:\n"), "play", "a list of 1", more=True),
    broken("a limit that there is not", MORNING, swap("  trolleys: please", "  trolly: please"), "limits.trolly", "Did you mean 'trolleys'?"),
    broken("a limit as a list", MORNING, swap("  buggies: none today", "  buggies: [none]"), "limits.buggies.what", "a list of 1"),
    broken("preferred lies that nobody decided", _RULES, without("    decided by: the Committee\n", "  preferred lies:"), "limits.preferred lies", "decided by"),
    broken("preferred lies that the staff decided", _RULES, within("  preferred lies:", swap("decided by: the Committee", "decided by: the greenkeepers")), "limits.preferred lies", "Committee"),
    broken("preferred lies that ended before", _RULES, within("  preferred lies:", swap("until: 2027-09-16", "until: 2027-09-12")), "limits.preferred lies", "an end after"),
    broken("preferred lies to the end of all calendars", _RULES, swap("until: 2027-09-16", "until: 9999-12-31"), "limits.preferred lies.until", "9999-12-31"),
    broken("preferred lies until no time", _RULES, swap("until: 2027-09-16", "until: Easter"), "limits.preferred lies.until", "'Easter'"),
    broken("a correction of nothing", _CORRECTION, swap("corrects: 2027-08-24-1550-greens-10-to-12-done", "corrects: 2027-08-24-1550-greens-10-to-12-don"), "corrects", "Did you mean '2027-08-24-1550-greens-10-to-12-done'?", more=True),
    broken("a correction of itself", _CORRECTION, swap("corrects: 2027-08-24-1550-greens-10-to-12-done", "corrects: 2027-08-24-1815-not-the-12th"), "corrects", "is a correction or not earlier", more=True),
    broken("a correction of what came later", _CORRECTION, swap("corrects: 2027-08-24-1550-greens-10-to-12-done", "corrects: 2027-09-14-0650-morning"), "corrects", "not earlier", more=True),
    broken("a correction in a correction", _CORRECTION, put(_entry("2027-08-24 18:15", "correction", "corrects: 2027-08-24-1550-greens-10-to-12-done", "instead:\n  at: 2027-08-24 15:50\n  ¦kind: correction\n  corrects: 2027-08-24-1550-greens-10-to-12-done")), "instead.kind", "an entry that can stand instead"),
    broken("an entry instead of kind unknown", _CORRECTION, swap("kind: work done", "kind: work don"), "instead.kind", "Did you mean 'work done'?"),
    broken("an entry instead that comes later", _CORRECTION, swap("  at: 2027-08-24 15:50", "  at: 2027-08-25 15:50"), "instead.at", "not after that of the correction"),
    broken("an entry instead as a text", _CORRECTION, put(_entry("2027-08-24 18:15", "correction", "corrects: 2027-08-24-1550-greens-10-to-12-done", "¦instead: nothing")), "instead", "'nothing'"),
    broken("postponed to an earlier day", _POSTPONED, swap("starts: 2027-09-07", "starts: 2027-08-27"), "starts", "a day after 2027-08-30"),
    broken("postponed to no day", _POSTPONED, without("starts: 2027-09-07\n", "at:"), "starts", "the new first day"),
    broken("a change of plan misspelt", _POSTPONED, swap("change: postponed to", "change: postpond to"), "change", "Did you mean"),
    broken("called off to a day", _POSTPONED, within("starts:", swap("change: postponed to", "change: called off")), "starts", "called off"),
    broken("postponed without a cause", _POSTPONED, without("because: the new bunker sand comes a week late\n", "at:"), "because", "nothing"),
    broken("held up without a cause", _HELD_UP, without("because: heavy rain; the greens are too soft for the machines and wet sand will not go down the holes\n", "at:"), "because", "nothing"),
    broken("no work before a day that is over", _HELD_UP, swap("no work before: 2027-08-26", "no work before: 2027-08-24"), "no work before", "a day after 2027-08-25"),
    broken("seen, but nothing", _SEEN, put(_entry("2027-08-30 15:30", "observation", _JOB, "surfaces: greens 1-6"), 3), "kind", "an observation of nothing"),
    broken("more left than there was", _SEEN, put(_entry("2027-08-30 15:30", "observation", _JOB, "¦disruption left: 120 %")), "disruption left", "'120 %'"),
    broken("a share without its sign", _SEEN, put(_entry("2027-08-30 15:30", "observation", _JOB, "¦disruption left: 0.5")), "disruption left", "'0.5'"),
    broken("a reading that no meter shows", _SEEN, put(_entry("2027-08-30 15:30", "observation", "surfaces: greens 1-6", "readings:\n  ¦green speed: 999999999 mm")), "readings.green speed", "999999999 mm"),
    broken("a reading that there is not", _SEEN, put(_entry("2027-08-30 15:30", "observation", "surfaces: greens 1-6", "readings:\n  ¦green sped: 9 ft")), "readings.green sped", "Did you mean 'green speed'?"),
    broken("growth held back to the end of calendars", _NEW, put(_entry("2027-09-13 09:00", "growth held back", "cause: dull weather", "surfaces: greens 1-18", "¦until: 9999-12-31")), "until", "9999-12-31"),
    broken("growth held back by no cause of ours", _NEW, put(_entry("2027-09-13 09:00", "growth held back", "¦cause: moles", "surfaces: greens 1-18", "until: 2027-09-20")), "cause", "'moles'"),
    broken("growth held back that ends before it begins", _NEW, put(_entry("2027-09-13 09:00", "growth held back", "cause: dull weather", "surfaces: greens 1-18", "¦until: 2027-09-01")), "until", "2027-09-01"),
    broken("healed before it was done", _NEW, put(_entry("2027-08-22 09:00", "back to normal", _JOB, "¦surfaces: green 1")), "surfaces", "with no 'work done'"),
    broken("an entry of a name that feeds keep", "log/2027/announced.md", put(_HELLO, None), "", "under which the feeds have news"),
    broken("an entry of a name that corrections make", "log/2027/a-instead.md", put(_HELLO, None), "", "'a-instead'"),
    broken("an entry of a name that another year has", "log/2028/2027-07-07-1130-dry-spell.md", put(_HELLO, None), "", "has already"),
    broken("a note about a job that there is not", _NOTE, swap("by: the course manager", "¦job: x\nby: the course manager"), "job", "not in the plan"),
    fine("preferred lies to the last day of ours", _RULES, swap("until: 2027-09-16", "until: 2200-12-31")),
    fine("a moment in the first hour of ours", _NOTE, swap("at: 2027-07-07 11:30", "at: 1900-01-01 00:00")),
    fine("a moment in the last hour of ours", _NOTE, swap("at: 2027-07-07 11:30", "at: 2200-12-31 23:59")),
    fine("words of 19,000 letters", _NOTE, add("word " * 3_800)),
    broken("words of 20,000 letters and more", _NEW, put(_HELLO.replace("Hello.", "¦" + "word " * 4_000 + "end.")), "own words", "20,005 letters", "at most 20,000"),
    broken("a picture pasted among words", _NEW, put(_HELLO + "\n¦![a](data:image/png;base64," + "iVBORw0" * 2_000 + ")\n"), "own words", "a word of 14,028 letters", "put its file into the folder web"),
    broken("brackets that nobody closed", _NEW, put(_HELLO + "\nWe begin:\n¦" + "[ " * 5_000 + "\n"), "own words", "more than 20 brackets"),
    broken("links that nobody closed", _NEW, put(_HELLO + "\n¦" + "[a](b " * 3_000 + "\n"), "own words", "more than 20 brackets"),
    fine("words of marks alone", _NEW, put(_HELLO + "\n" + "*a _b `c <d & " * 1_300 + "\n", None)),
    fine("brackets that are closed", _NEW, put(_HELLO + "\n" + "([a](b) [c]) :( \\[\n\n" * 500, None)),
    fine("a table with a row of empty cells", _NEW, put(_HELLO + "\n|a|b|c|d|e|f|\n|-|-|-|-|-|-|\n|||||||\n", None)),
    fine("an entry of the night", _NEW, put(_entry("2027-09-13 00:00", "note to members") + "Hello.\n", None)),
)  # fmt: skip
