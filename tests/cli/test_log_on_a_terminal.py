"""Guided questions on a pseudo-terminal: Enter accepts, wrong answers are asked again, Ctrl-C leaves nothing."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from swardcast.reading.folder import read_club_folder
from swardcast.records.log import Change, Correction, MorningStatus, PlanChange, Progress
from tests.cli.terminal import CTRL_D, Terminal
from tests.cli.test_check import tree
from tests.cli.test_log import folder

__all__ = ["folder"]

QUESTIONS = (
    "What happened? [done]",
    "Which job? [greens-renovation-2027]",
    "Which surfaces? [greens 13 to 15]",
    "When? [3:45pm]",
    "As planned (scarifying 2 mm, 25 mm, 3 mm; hollow tining 13 mm, 10 mm, 50 x 50 mm, 60 mm; topdressing 2.6 t each;",
    "Your own words to members? (Enter for none)",
    "Write this entry? (yes or no) [yes]",
)


def asking(club: Path, *words: str, as_of: str = "2027-08-26 15:45") -> Terminal:
    return Terminal("log", *words, "--club", str(club), "--as-of", as_of)


def test_enter_alone_makes_the_entry_that_comes_next(folder: Path) -> None:
    with asking(folder) as terminal:
        for question in QUESTIONS[:-1]:
            terminal.answer(question)
        shown = terminal.answer(QUESTIONS[-1])
        code, last = terminal.end()
    assert "3 greens to healing; back to normal stays likely by " in shown
    assert code == 0, last
    assert "log/2027/2027-08-26-1545-greens-13-to-15-done.md" in last
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, Progress)
    assert (entry.surfaces, entry.as_done) == (("green-13", "green-14", "green-15"), ())


def test_a_wrong_answer_is_told_and_asked_again(folder: Path) -> None:
    with asking(folder) as terminal:
        terminal.answer("What happened?", "doen")
        assert "Did you mean 'done'?" in terminal.answer("What happened?", "3")
        terminal.answer("Which job?", "holow")
        assert "a job or its work, one of: greens-renovation-2027" in terminal.answer("Which job?", "1")
        terminal.answer("Which surfaces?", "13-40")
        assert "there is no green 40" in terminal.answer("Which surfaces?", "13-14")
        terminal.answer("When?", "5pm")
        assert "found '5pm', which is still to come" in terminal.answer("When?", "3:40pm")
        terminal.answer("As planned", "sand 3.2")
        assert "A number needs its unit" in terminal.answer("As planned", "sand 3.2 t/green")
        terminal.answer("Your own words", "Like a beach.")
        terminal.answer("Write this entry?", "perhaps")
        assert "found 'perhaps'; expected 'yes' or 'no'" in terminal.answer("Write this entry?", "yes")
        code, last = terminal.end()
    assert code == 0, last
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, Progress)
    assert (entry.head.id, entry.head.words) == (
        "2027-08-26-1540-greens-13-to-14-done",
        "Like a beach.",
    ) or entry.head.id == "2027-08-26-1540-greens-13-and-14-done"
    assert entry.surfaces == ("green-13", "green-14")
    assert len(entry.as_done) == 1


@pytest.mark.parametrize("place", range(len(QUESTIONS)))
def test_ctrl_c_at_any_question_leaves_the_folder_as_it_was(folder: Path, place: int) -> None:
    before = tree(folder)
    with asking(folder) as terminal:
        for question in QUESTIONS[:place]:
            terminal.answer(question)
        terminal.wait_for(QUESTIONS[place])
        code, last = terminal.interrupt()
    assert (code, "Stopped. Nothing was written." in last) == (130, True)
    assert tree(folder) == before


def test_an_end_of_the_answers_leaves_the_folder_as_it_was(folder: Path) -> None:
    before = tree(folder)
    with asking(folder) as terminal:
        terminal.answer(QUESTIONS[0], CTRL_D)
        code, last = terminal.end()
    assert (code, "The answers ended early. Nothing was written." in last) == (1, True)
    assert tree(folder) == before


def test_a_no_leaves_the_folder_as_it_was(folder: Path) -> None:
    before = tree(folder)
    with asking(folder, "done", "hollow-tine") as terminal:
        terminal.answer("Write this entry?", "no")
        code, last = terminal.end()
    assert (code, "Nothing was written." in last) == (1, True)
    assert tree(folder) == before


def test_only_what_is_missing_is_asked_when_some_is_told(folder: Path) -> None:
    with asking(folder, "held-up", "hollow-tine", "--greens", "16-18", "--quiet") as terminal:
        terminal.answer("Why? Members will read it (such as heavy rain)", "wet sand")
        terminal.answer("Write this entry?")
        code, last = terminal.end()
    assert code == 0, last


def test_the_morning_is_offered_as_the_work_leaves_it(folder: Path) -> None:
    """16 to 18 come next on the 27th; 1 to 12 are done, 13 to 15 in hand since the 26th."""
    with asking(folder, as_of="2027-08-27 06:40") as terminal:
        terminal.answer("What happened? [morning]")
        terminal.answer("Closed today? [greens 13 to 15]", "16-18")
        terminal.answer("On temporary greens? (Enter for none)")
        terminal.answer("Open with care? [greens 1 to 12 and the practice green]", "greens 1-15 and the practice green")
        terminal.answer("Open otherwise? [the whole course]")
        terminal.answer("Why?", "Greens 16 to 18 are shut for the August work.")
        terminal.answer("Limits", "trolleys: none on the 6th until 2pm")
        terminal.answer("Your own words")
        shown = terminal.answer("Write this entry?")
        code, last = terminal.end()
    assert code == 0, last
    assert "greens 16 to 18 are closed" in shown
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, MorningStatus)
    (limit,) = entry.limits
    assert (limit.what, f"{limit.until:%H:%M}") == ("none on the 6th", "14:00")


def test_a_script_without_a_terminal_never_hangs(
    run_swardcast: Callable[..., subprocess.CompletedProcess[str]], folder: Path
) -> None:
    done = run_swardcast("log", "--club", str(folder), "--as-of", "2027-08-26 15:45")
    assert (done.returncode, done.stdout) == (2, "")


def test_a_reason_is_offered_only_for_what_is_closed_as_offered(folder: Path) -> None:
    with asking(folder, "morning", as_of="2027-08-27 06:40") as terminal:
        terminal.answer("Closed today? [greens 13 to 15]", "16-18")
        for question in ("On temporary greens?", "Open with care?", "Open otherwise?"):
            terminal.answer(question)
        shown = terminal.answer("Why?")
    assert "Why? Members will read it (Enter for none)" in shown


def test_a_correction_offers_the_last_entry_and_withdraws_it_on_enter(folder: Path) -> None:
    with asking(folder, "correct") as terminal:
        terminal.answer("Which entry was wrong? [2027-08-26-1020-green-12-done]")
        terminal.answer("Which surfaces are right?")
        terminal.answer("Your own words", "The 12th is not done.")
        shown = terminal.answer("Write this entry?", "yes")
        code, last = terminal.end()
    assert "1 green to under way" in shown
    assert code == 0, last
    assert read_club_folder(folder).entries[-1].head.words == "The 12th is not done."


def test_a_morning_to_be_corrected_is_told_and_can_only_be_withdrawn(folder: Path) -> None:
    with asking(folder, "correct", "2027-08-26-0640", "--quiet") as terminal:
        shown = terminal.answer("Which surfaces are right?", "3")
        assert "expected --withdraw, and then a new entry of its own" in terminal.answer("Which surfaces are right?")
        terminal.answer("Write this entry?")
        code, last = terminal.end()
    assert code == 0, last
    what = "greens 1 to 11 and the practice green open with care; greens 12 to 15 closed; open otherwise."
    assert f"At 6:40am on Thursday 26 August: Morning report: {what}" in shown


def test_a_withdrawal_by_enter_alone_tells_first_what_the_entry_is(folder: Path) -> None:
    with asking(folder, "correct") as terminal:
        terminal.answer("Which entry was wrong?")
        shown = terminal.answer("Which surfaces are right?")
        terminal.answer("Your own words to members? (Enter for none)")
        terminal.answer("Write this entry?")
        code, last = terminal.end()
    assert code == 0, last
    assert "At 10:20am on Thursday 26 August: Work done on green 12." in shown
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, Correction)
    assert (entry.corrects, entry.head.words) == ("2027-08-26-1020-green-12-done", "")


def test_a_job_is_postponed_while_no_day_is_known_by_enter_alone(folder: Path) -> None:
    with asking(folder, "postponed", "deep-tine") as terminal:
        terminal.answer("The new first day, if one is known? (such as 7 September; Enter for none)")
        terminal.answer("Why? Members will read it", "the machine is broken")
        shown = terminal.answer("Write this entry? (yes or no) [yes]")
        code, last = terminal.end()
    assert code == 0, last
    assert "postponed; no new day yet" in shown
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, PlanChange)
    assert (entry.change, entry.starts, entry.because) == (Change.PUT_OFF, None, "the machine is broken")
