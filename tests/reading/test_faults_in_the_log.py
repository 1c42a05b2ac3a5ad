"""Faults in log entries are told word for word: line, field, found, expected, what to do."""

from __future__ import annotations

from dataclasses import replace as replace_fields
from pathlib import Path

import pytest

from swardcast.errors import Problem
from swardcast.reading.folder import read_club_folder
from swardcast.reading.log_file import entries_from
from swardcast.reading.log_names import LogContext
from tests.conftest import DEMO
from tests.reading.breaking import (
    CORRECTION,
    COUNTED,
    DONE,
    HELD_UP,
    MORNING,
    POSTPONED,
    assert_said,
    fault,
    replace,
)

KINDS = (
    "one of: morning status, work started, work done, held up, work resumed, observation, back to normal,"
    " change of plan, growth held back, note to members, correction"
)
JOBS = (
    "one of: greens-autumn-feed-2027, greens-wetting-agent-2027, greens-leaf-disease-2027, greens-winter-height-2027,"
    " winter-ropes-2027, trees-16-2027, path-10-2027, fairway-11-drain-2027, bunkers-liners-2027, low-greens-winter-2027,"
    " pipe-14-2028, greens-solid-tining-2027, tees-solid-tining-2027, fairways-tining-2027, greens-verticutting-2027,"
    " practice-green-solid-tining-2027, practice-green-renovation-2027, greens-renovation-2027, bunkers-resanding-2027, tees-returfing-2027,"
    " greens-light-sanding-2027, fairways-deep-tining-2027"
)
CAUSES = "one of: dull weather, unfed, growth regulator, frost on the leaf"
PLAYS = "one of: open, open with care, temporary green, closed, not known"
MOMENT = "2027-08-23 11:40"

OF_WORK_DONE = [
    fault(
        "a job that is not in the plan",
        "job: greens-renovation-2027",
        "job: greens-renovaton-2027",
        f"line 4, job: found 'greens-renovaton-2027', which is not in the plan; expected {JOBS}."
        " Did you mean 'greens-renovation-2027'? If you took it out of the plan, put it back with the field 'withdrawn'.",
    ),
    fault(  # announced on 10 May
        "an entry older than its job's announcement",
        MOMENT,
        "2027-05-09 11:40",
        "line 4, job: found 'greens-renovation-2027', which is announced only on 2027-05-10;"
        " expected a job that was announced by the day of the entry. Put the day in its 'announced' earlier.",
    ),
    fault(
        "a kind of entry misspelt",
        "kind: work done",
        "kind: work don",
        f"line 3, kind: found 'work don'; expected {KINDS}. Did you mean 'work done'?",
    ),
    fault(
        "another word for a kind of entry",
        "kind: work done",
        "kind: work finished",
        f"line 3, kind: found 'work finished'; expected {KINDS}. Did you mean 'work done'?",
    ),
    fault("no kind", "kind: work done\n", "", f"line 2, kind: found nothing; expected {KINDS}"),
    fault("no moment", f"at: {MOMENT}\n", "", "line 2, at: found nothing; expected the field 'at'"),
    fault(
        "a day without a time",
        MOMENT,
        "2027-08-23",
        "line 2, at: found '2027-08-23'; expected a day and time, such as '2027-08-23 07:05'",
    ),
    fault(
        "an hour after midnight's",
        MOMENT,
        "2027-08-23 25:40",
        "line 2, at: found '2027-08-23 25:40'; expected a time from 00:00 to 23:59",
    ),
    fault(
        "a day that February does not have",
        MOMENT,
        "2027-02-30 11:40",
        "line 2, at: found '2027-02-30'; expected a day that exists in the calendar",
    ),
    fault(  # the law of summer time: 01:00 becomes 02:00 on the last Sunday of March
        "a moment that the clocks skip",
        MOMENT,
        "2027-03-28 01:30",
        "line 2, at: found '2027-03-28 01:30'; expected a time that exists; the clocks skip this one."
        " Write a time an hour earlier or later.",
    ),
    fault(  # and 02:00 becomes 01:00 on the last Sunday of October
        "a moment that the clocks repeat",
        MOMENT,
        "2027-10-31 01:30",
        "line 2, at: found '2027-10-31 01:30'; expected a time that happens once; the clocks repeat this one."
        " Add the offset, such as '+01:00'.",
    ),
    fault(
        "a green beyond the last hole",
        "surfaces: greens 1-3",
        "surfaces: greens 1-33",
        "line 5, surfaces: found 'greens 1-33'; expected greens that stand in surfaces.yaml (holes 1 to 18);"
        " there is no green 33",
    ),
    fault(
        "surfaces of another job",
        "surfaces: greens 1-3",
        "surfaces: tees 1-2",
        "line 5, surfaces: found tee 1, tee 2, not part of the job 'greens-renovation-2027';"
        " expected surfaces of that job",
    ),
    fault(
        "a list of surfaces",
        "surfaces: greens 1-3",
        "surfaces: [greens 1-3]",
        "line 5, surfaces: found a list of 1; expected some words",
    ),
    fault(
        "a field misspelt",
        "by: the",
        "becuase: rain\nby: the",
        "line 6, becuase: found the unknown field 'becuase'; expected one of: at, kind, by, private note, job, surfaces, because,"
        " as done, play. Did you mean 'because'?",
    ),
    fault(
        "an unknown word for play", "by: the", "play: shut\nby: the", f"line 6, play: found 'shut'; expected {PLAYS}"
    ),
    fault("a number for a name", "by: the course manager", "by: 7", "line 6, by: found '7'; expected some words"),
    fault(
        "no line that opens the fields",
        "---\nat",
        "at",
        "line 1: found no fields between two lines of '---'; expected '---', then fields such as 'kind: work done',"
        " then '---', then your own words",
    ),
]

OF_A_MORNING = [
    fault(
        "a state of play misspelt",
        "greens 1-11: open with care",
        "greens 1-11: opne with care",
        f"line 7, play.greens 1-11: found 'opne with care'; expected {PLAYS}. Did you mean 'open with care'?",
    ),
    fault(
        "a surface that the course does not have",
        "green 12: temporary green",
        "green 21: temporary green",
        "line 8, play.green 21: found 'green 21'; expected greens that stand in surfaces.yaml (holes 1 to 18);"
        " there is no green 21",
    ),
    fault(
        "an unknown limit",
        "  trolleys:",
        "  troleys:",
        "line 12, limits.troleys: found 'troleys'; expected one of: preferred lies, trolleys, buggies,"
        " carry only, frost delay, practice ground. Did you mean 'trolleys'?",
    ),
    fault(
        "preferred lies that nobody adopted",
        "  trolleys: please",
        "  preferred lies: please",
        "line 12, limits.preferred lies: found nothing; expected the field 'decided by', such as"
        " 'decided by: the Committee'. Only the Committee can adopt a Local Rule.",
    ),
    fault(
        "preferred lies that the course manager decided",
        "  trolleys: please",
        "  preferred lies: {what: placed within 6 inches, decided by: the course manager}\n  trolleys: please",
        "line 12, limits.preferred lies: found 'the course manager'; expected the Committee that adopted it, such as"
        " 'the Committee'. Only the Committee can adopt a Local Rule.",
    ),
    fault(
        "a Local Rule that nobody adopted",
        "  buggies: none today",
        "  buggies: {what: none today, rule: G-6}",
        "line 13, limits.buggies: found nothing; expected the field 'decided by', such as"
        " 'decided by: the Committee'. Only the Committee can adopt a Local Rule.",
    ),
    fault(
        "a Local Rule by no number",
        "  buggies: none today",
        "  buggies: {what: none today, rule: Model Local Rule G6, decided by: the Committee}",
        "line 13, limits.buggies.rule: found 'Model Local Rule G6'; expected the number of a Model Local Rule, such as"
        " 'E-4'. Did you mean 'G-6'?",
    ),
    fault(
        "a limit that ends before it begins",
        "  buggies: none today",
        "  buggies: {what: none, until: 6:30am}",
        "line 13, limits.buggies: found '2027-08-25 06:30'; expected an end after the entry of 2027-08-25 06:35",
    ),
    fault(
        "a limit until no moment",
        "  buggies: none today",
        "  buggies: {what: none, until: noonish}",
        "line 13, limits.buggies.until: found 'noonish'; expected a time of that day such as '9:30am', or a day"
        " such as '2027-09-16'",
    ),
    fault(
        "a limit without its content",
        "  buggies: none today",
        "  buggies: {until: 9:30am}",
        "line 13, limits.buggies.what: found nothing; expected the field 'what'",
    ),
    fault(
        "the same surfaces twice",
        "  the whole course: open\n",
        "  the whole course: open\n  the whole course: closed\n",
        "line 7, play.the whole course: found the same field a second time; expected it once;"
        " it stands on line 6 already",
    ),
    fault(
        "no word on play",
        "play:",
        "ply:",
        "line 2, play: found nothing; expected the field 'play'",
        "line 5, ply: found the unknown field 'ply'; expected one of: at, kind, by, private note, play, why, limits."
        " Did you mean 'play'?",
    ),
]

OF_A_CHANGE_OF_PLAN = [
    fault(
        "postponed to no day",
        "starts: 2027-09-07\n",
        "",
        "line 2, starts: found nothing; expected the new first day."
        " If no day is known yet: 'change: postponed', without 'starts'.",
    ),
    fault(
        "called off with a day",
        "change: postponed to",
        "change: called off",
        "line 6, starts: found 2027-09-07; expected nothing when the job is called off",
    ),
    fault(  # planned from 30 August
        "postponed to an earlier day",
        "starts: 2027-09-07",
        "starts: 2027-08-30",
        "line 6, starts: found 'bunkers-resanding-2027' postponed to 2027-08-30; expected a day after 2027-08-30,"
        " on which it starts so far",
    ),
    fault(
        "brought forward to a later day",
        "change: postponed to",
        "change: brought forward to",
        "line 6, starts: found 'bunkers-resanding-2027' brought forward to 2027-09-07; expected a day from 2027-08-26,"
        " the day of the entry, and before 2027-08-30, on which it starts so far",
    ),
    fault(
        "postponed while no day is known, with a day",
        "change: postponed to",
        "change: postponed",
        "line 6, starts: found 2027-09-07; expected nothing, since no new day is known."
        " With a day it is 'change: postponed to'.",
    ),
    fault(
        "an unknown change",
        "change: postponed to",
        "change: postponned to",
        "line 5, change: found 'postponned to'; expected one of: postponed to, postponed, brought forward to, called off."
        " Did you mean 'postponed to'?",
    ),
    fault(
        "no reason",
        "because: the new bunker sand comes a week late\n",
        "",
        "line 2, because: found nothing; expected the field 'because'",
    ),
]

OF_AN_OBSERVATION = [
    fault(
        "a share without its sign",
        "left: 7 %",
        "left: 7",
        "line 6, disruption left: found '7'; expected a share with its unit, such as '40 %'. A number needs its unit…",
    ),
    fault(
        "more than all",
        "left: 7 %",
        "left: 107 %",
        "line 6, disruption left: found '107 %'; expected a share from 0 % to 100 %",
    ),
    fault(
        "less than nothing",
        "left: 7 %",
        "left: -7 %",
        "line 6, disruption left: found '-7 %'; expected a share with its unit, such as '40 %'",
    ),
    fault(
        "an unknown way of looking",
        "how: counted",
        "how: guessed",
        "line 7, how: found 'guessed'; expected one of: by eye, counted",
    ),
    fault(
        "turf cover without its sign",
        "disruption left: 7 %",
        "turf cover: 93",
        "line 6, turf cover: found '93'; expected a share with its unit, such as '40 %'. A number needs its unit…",
    ),
    fault(
        "more cover than there is turf",
        "disruption left: 7 %",
        "turf cover: 193 %",
        "line 6, turf cover: found '193 %'; expected a share from 0 % to 100 %",
    ),
    fault(
        "a green speed without its unit",
        "green speed: 8 ft 2 in",
        "green speed: 8.2",
        "line «green speed:», readings.green speed: found '8.2'; expected a roll with its unit, such as '9 ft 4 in' or '2.8 m'."
        " A number needs its unit…",
    ),
    fault(
        "a green speed in a unit that is no length",
        "green speed: 8 ft 2 in",
        "green speed: 8.2 points",
        "line «green speed:», readings.green speed: found '8.2 points'; expected a roll with its unit, such as '9 ft 4 in' or '2.8 m'",
    ),
    fault(
        "a reading misspelt",
        "  green speed: 8 ft 2 in",
        "  moistur: 24 %",
        "line «moistur:», readings.moistur: found the unknown field 'moistur'; expected one of: green speed, firmness,"
        " moisture, height of cut, organic matter. Did you mean 'moisture'?",
    ),
    fault(
        "a moisture beyond the whole",
        "  green speed: 8 ft 2 in",
        "  moisture: 124 %",
        "line «moisture:», readings.moisture: found '124 %'; expected a share from 0 % to 100 %",
    ),
    fault(
        "a firmness without its unit",
        "  green speed: 8 ft 2 in",
        "  firmness: 95",
        "line «firmness:», readings.firmness: found '95'; expected a firmness: how deep the meter sinks in, such as"
        " '8 mm', or '95 gravities' of a drop hammer. A number needs its unit…",
    ),
    fault(
        "a firmness that no turf has",
        "  green speed: 8 ft 2 in",
        "  firmness: 950 gravities",
        "line «firmness:», readings.firmness: found '950 gravities'; expected 10 to 400 gravities."
        " Check the figure and its unit.",
    ),
    fault(
        "organic matter that no turf has",
        "  green speed: 8 ft 2 in",
        "  height of cut: 3.5 cm\n  organic matter: 64 %",
        "line «organic matter:», readings.organic matter: found '64 %'; expected a share of the dry weight from 0 to"
        " 60 %. Check the figure and its unit.",
    ),
    fault(
        "an observation of nothing",
        "disruption left: 7 %\nhow: counted\nreadings:\n  green speed: 8 ft 2 in\n",
        "",
        "line 3, kind: found an observation of nothing; expected something that was seen: disruption left, turf cover"
        " or readings",
    ),
    fault(
        "a share of the marks of no job",
        "job: greens-renovation-2027\n",
        "",
        "line «disruption left:», disruption left: found disruption left of no job; expected the field 'job' too",
    ),
    fault(  # a slip of the pen would look like a green far beyond its target
        "a green speed that no green has",
        "green speed: 8 ft 2 in",
        "green speed: 82 ft",
        "line «green speed:», readings.green speed: found '82 ft'; expected a roll from 1 m to 6 m (3 to 20 ft)."
        " Check the figure and its unit.",
    ),
]

SLOW = "log/2027/2027-08-29-0700-dull.md"
DULL = (
    "---\nat: 2027-08-29 07:00\nkind: growth held back\nsurfaces: greens 1-18\ncause: dull weather\n"
    "from: 2027-08-29\nuntil: 2027-09-03\nby: the course manager\n---\n"
)
OF_GROWTH_HELD_BACK = [
    fault(
        "an unknown cause",
        "cause: dull weather",
        "cause: drought",
        f"line 5, cause: found 'drought'; expected {CAUSES}",
    ),
    fault(
        "a cause misspelt",
        "cause: dull weather",
        "cause: dul weather",
        f"line 5, cause: found 'dul weather'; expected {CAUSES}. Did you mean 'dull weather'?",
    ),
    fault("no cause", "cause: dull weather\n", "", "line 2, cause: found nothing; expected the field 'cause'"),
    fault(
        "dull weather without an end",
        "until: 2027-09-03\n",
        "",
        "line 2, until: found nothing; expected the last day of dull weather, 2027-08-29 or later",
    ),
    fault(
        "an end before the beginning",
        "until: 2027-09-03",
        "until: 2027-08-28",
        "line 7, until: found 2027-08-28; expected the last day of dull weather, 2027-08-29 or later",
    ),
    fault(
        "an end before the entry, where no beginning is told",
        "from: 2027-08-29\nuntil: 2027-09-03",
        "until: 2027-08-28",
        "line 6, until: found 2027-08-28; expected the last day of dull weather, 2027-08-29 or later",
    ),
    fault(
        "a day in words",
        "until: 2027-09-03",
        "until: 3 September",
        "line 7, until: found '3 September'; expected a day as year-month-day, such as '2027-08-23'",
    ),
    fault(
        "no surfaces", "surfaces: greens 1-18\n", "", "line 2, surfaces: found nothing; expected the field 'surfaces'"
    ),
    fault(
        "a green beyond the last hole",
        "surfaces: greens 1-18",
        "surfaces: greens 1-19",
        "line 4, surfaces: found 'greens 1-19'; expected greens that stand in surfaces.yaml (holes 1 to 18);"
        " there is no green 19",
    ),
    fault(
        "a field of another kind of entry",
        "by: the",
        "job: greens-renovation-2027\nby: the",
        "line 8, job: found the unknown field 'job'; expected one of: at, kind, by, private note, cause, surfaces, from, until",
    ),
]

EARLIER = "2027-08-24-1550-greens-10-to-12-done"
OF_A_CORRECTION = [
    fault(
        "an entry that the log does not have",
        EARLIER,
        "2027-08-24-1551-greens-10-to-12-done",
        "line 5, corrects: found '2027-08-24-1551-greens-10-to-12-done', which is no entry of the log;"
        f" expected the name of an earlier entry's file. Did you mean '{EARLIER}'?",
    ),
    fault(
        "an entry that is later",
        EARLIER,
        "2027-08-26-0640-morning",
        "line 5, corrects: found '2027-08-26-0640-morning', which is a correction or not earlier;"
        " expected an earlier entry that is no correction",
    ),
    fault(
        "what stands instead lacks its job",
        "  job: greens-renovation-2027\n",
        "",
        "line 6, instead.job: found nothing; expected the field 'job'",
    ),
    fault(
        "what stands instead names an unknown green",
        "  surfaces: greens 10-11",
        "  surfaces: greens 10-31",
        "line 10, instead.surfaces: found 'greens 10-31'; expected greens that stand in surfaces.yaml (holes 1 to 18);"
        " there is no green 31",
    ),
]

CAUSE = "because: heavy rain; the greens are too soft for the machines and wet sand will not go down the holes\n"


@pytest.mark.parametrize(("old", "new", "says"), OF_WORK_DONE)
def test_a_fault_in_an_entry_of_work_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / DONE, old, new)
    assert_said(demo_club, DONE, says)


@pytest.mark.parametrize(("old", "new", "says"), OF_A_MORNING)
def test_a_fault_in_a_morning_entry_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / MORNING, old, new)
    assert_said(demo_club, MORNING, says)


@pytest.mark.parametrize(("old", "new", "says"), OF_A_CHANGE_OF_PLAN)
def test_a_fault_in_a_change_of_plan_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / POSTPONED, old, new)
    assert_said(demo_club, POSTPONED, says)


@pytest.mark.parametrize(("old", "new", "says"), OF_AN_OBSERVATION)
def test_a_fault_in_an_observation_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / COUNTED, old, new)
    assert_said(demo_club, COUNTED, says)


@pytest.mark.parametrize(("old", "new", "says"), OF_GROWTH_HELD_BACK)
def test_a_fault_in_growth_held_back_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    (demo_club / SLOW).write_text(DULL, encoding="utf-8")
    replace(demo_club / SLOW, old, new)
    assert_said(demo_club, SLOW, says)


@pytest.mark.parametrize(
    "told",
    [
        DULL,
        DULL.replace("cause: dull weather\nfrom: 2027-08-29\nuntil: 2027-09-03", "cause: growth regulator"),
        DULL.replace("cause: dull weather\nfrom: 2027-08-29\nuntil: 2027-09-03", "cause: frost on the leaf"),
        DULL.replace("from: 2027-08-29\n", ""),
        DULL.replace("from: 2027-08-29", "from: 2027-08-20"),
    ],
    ids=["from and until", "a regulator, two weeks", "a frost, its day", "from the entry on", "told afterwards"],
)
def test_growth_held_back_is_taken_as_it_is_usually_told(demo_club: Path, told: str) -> None:
    (demo_club / SLOW).write_text(told, encoding="utf-8")
    assert_said(demo_club, SLOW, ())


@pytest.mark.parametrize(("old", "new", "says"), OF_A_CORRECTION)
def test_a_fault_in_a_correction_is_told(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / CORRECTION, old, new)
    assert_said(demo_club, CORRECTION, says)


def test_fraise_mowing_as_done_above_a_hundred_per_cent_is_told(demo_club: Path) -> None:
    replace(demo_club / DONE, "by: the", "as done:\n  - fraise mowing: {depth: 15 mm, share: 120 %}\nby: the")
    said = "line 7, as done 1, fraise mowing.share: found '120 %'; expected a share from 0 % to 100 %"
    assert_said(demo_club, DONE, (said,))


def test_work_held_up_without_a_cause_is_told(demo_club: Path) -> None:
    replace(demo_club / HELD_UP, CAUSE, "")
    assert_said(demo_club, HELD_UP, ("line 2, because: found nothing; expected the field 'because'",))


def test_a_repeated_moment_is_taken_with_its_offset(demo_club: Path) -> None:
    note = "log/2027/2027-08-18-1700-week-of-the-greens.md"
    replace(demo_club / note, "2027-08-18 17:00", "2027-10-31 01:30+01:00")
    assert_said(demo_club, note, ())


def test_a_surface_cannot_be_back_to_normal_before_its_work_was_done(demo_club: Path) -> None:
    """Green 16 was done on 27 August; on the 26th nobody can call it back to normal."""
    entry = demo_club / "log/2027/2027-08-26-1800-too-early.md"
    entry.write_text(
        "---\nat: 2027-08-26 18:00\nkind: back to normal\njob: greens-renovation-2027\nsurfaces: greens 13-16\n---\n",
        encoding="utf-8",
    )
    said = (
        "line 5, surfaces: found green 16 back to normal, with no 'work done' of 'greens-renovation-2027' there before;"
        " expected an entry 'work done' first, or only the surfaces that were done"
    )
    assert_said(demo_club, "log/2027/2027-08-26-1800-too-early.md", (said,))


def test_an_entry_that_stands_instead_cannot_be_later_than_its_correction(demo_club: Path) -> None:
    replace(demo_club / CORRECTION, "  at: 2027-08-24 15:50", "  at: 2027-09-24 15:50")
    assert_said(
        demo_club,
        CORRECTION,
        (
            "line «2027-09-24», instead.at: found 2027-09-24 15:50; expected a moment not after that of the corr… 2027-08-24 18:15",
        ),
    )


def test_a_second_correction_of_the_same_entry_is_refused_and_the_way_is_told(demo_club: Path) -> None:
    second = "log/2027/2027-08-24-1900-again.md"
    (demo_club / second).write_text(
        "---\nat: 2027-08-24 19:00\nkind: correction\ncorrects: 2027-08-24-1550-greens-10-to-12-done\n---\n",
        encoding="utf-8",
    )
    name = "2027-08-24-1815-not-the-12th"
    found = f"'2027-08-24-1550-greens-10-to-12-done', which '{name}' has corrected already"
    said = f"line 4, corrects: found {found}; expected an entry that stands. Correct '{name}-instead'."
    assert_said(demo_club, second, (said,))


def test_a_file_cannot_take_the_name_of_an_entry_that_stands_instead(demo_club: Path) -> None:
    name = "log/2027/2027-08-24-1815-not-the-12th-instead.md"
    (demo_club / name).write_text("---\nat: 2027-08-24 19:00\nkind: note to members\n---\n", encoding="utf-8")
    expected = "a name that does not end in '-instead', as corrections' entries do"
    said = f"the file: found the name '2027-08-24-1815-not-the-12th-instead'; expected {expected}"
    assert_said(demo_club, name, (said,))


@pytest.mark.parametrize("name", ["announced", "weather-2027-08-24", "withdrawn"])
def test_an_entry_cannot_take_the_name_of_news_that_no_entry_makes(demo_club: Path, name: str) -> None:
    """The feed would have two items of one id, which readers take for one."""
    file = f"log/2027/{name}.md"
    job = "job: greens-renovation-2027"
    (demo_club / file).write_text(
        f"---\nat: 2027-08-24 19:00\nkind: note to members\n{job}\n---\nHello.\n", encoding="utf-8"
    )
    said = (
        f"the file: found the name '{name}', under which the feeds have news that no entry makes; expected another"
        " name. Begin it with its day, as in '2027-08-23-1540-done.md'."
    )
    assert_said(demo_club, file, (said,))


def test_control_characters_cannot_hide_in_escapes(demo_club: Path) -> None:
    replace(demo_club / HELD_UP, "because: heavy rain", 'because: "rain\\x1b[2J" #')
    assert_said(demo_club, HELD_UP, ("line 6, because: found the control character U+001B; expected plain text",))


def test_of_the_jobs_of_many_years_only_the_nearest_is_named() -> None:
    whole = read_club_folder(DEMO)
    some = next(iter(whole.jobs.values()))
    jobs = {f"greens-{year}": replace_fields(some, id=f"greens-{year}") for year in range(1960, 2028)}
    context = LogContext(zone=whole.club.time_zone, surfaces=whole.surfaces, jobs=jobs)
    problems: list[Problem] = []
    text = "---\nat: 2027-08-23 11:40\nkind: work done\njob: gerens-2027\nby: the foreman\n---\n"
    entries_from(text, name="done", file="log/done.md", context=context, problems=problems)
    (problem,) = problems
    assert problem.expected == "the id of one of the 68 jobs of the plan"
    assert problem.hint.startswith("Did you mean 'greens-2027'?")
