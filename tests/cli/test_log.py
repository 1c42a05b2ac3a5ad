"""`swardcast log` in one line: what is written, what is shown, and that nothing is left when something is wrong."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date
from io import StringIO
from pathlib import Path

import pytest

from swardcast.reading.folder import read_club_folder
from swardcast.records.log import Correction, MorningStatus, Progress
from tests.cli.conftest import Done
from tests.cli.test_check import tree
from tests.reading.breaking import HISTORY

Command = Callable[..., Done]
AT = ("--as-of", "2027-08-26 15:45")


@pytest.fixture(autouse=True)
def _nobody_answers(monkeypatch: pytest.MonkeyPatch) -> None:
    """A script's standard input; who asks it fails at once and never hangs."""
    monkeypatch.setattr("sys.stdin", StringIO())


@pytest.fixture
def folder(club: Path) -> Path:
    """The demo with one past year and a log that ends before 3:45pm on 26 August."""
    header, *days = (club / HISTORY).read_text(encoding="utf-8").splitlines()
    (club / HISTORY).write_text("\n".join([header, *days[-365:]]) + "\n", encoding="utf-8")
    for entry in (club / "log").rglob("*.md"):
        if entry.name >= "2027-08-26-1545":
            entry.unlink()
    return club


@pytest.fixture
def log(swardcast: Command, folder: Path) -> Command:
    def command(*words: str) -> Done:
        return swardcast("log", *words, "--club", str(folder), *(() if "--as-of" in words else AT))

    return command


DONE = ("done", "hollow-tine", "--greens", "13-15", "--sand", "3.2 t/green")


def test_a_private_note_goes_into_the_fields_and_not_into_the_words(log: Command, folder: Path) -> None:
    log(*DONE, "--words", "Like a beach.", "--private-note", "The driver: first day alone", "--yes", "--quiet")
    head = read_club_folder(folder).entries[-1].head
    assert (head.words, head.private_note) == ("Like a beach.", "The driver: first day alone")


def test_a_correction_has_a_private_note_of_its_own_and_leaves_the_other_with_what_stands(
    log: Command, folder: Path
) -> None:
    log(*DONE, "--private-note", "Sand from the old heap.", "--yes", "--quiet")
    made = read_club_folder(folder).entries[-1].head.id
    told = (
        "--greens",
        "13-14",
        "--private-note",
        "He cannot count.",
        "--yes",
        "--quiet",
        "--as-of",
        "2027-08-26 16:00",
    )
    assert log("correct", made, *told).code == 0
    correction, instead = read_club_folder(folder).entries[-2:]
    assert isinstance(correction, Correction)
    assert (correction.head.private_note, instead.head.private_note) == ("He cannot count.", "Sand from the old heap.")


def test_one_line_writes_one_file_that_the_log_reads(log: Command, folder: Path) -> None:
    before = tree(folder)
    done = log(*DONE, "--words", "Like a beach.", "--yes", "--quiet")
    name = "log/2027/2027-08-26-1545-greens-13-to-15-done.md"
    assert (done.code, done.out) == (0, f"{name}\n")
    after = tree(folder)
    assert (set(after) - set(before), set(before) - set(after)) == ({name}, set())
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, Progress)
    assert (entry.job, entry.surfaces) == ("greens-renovation-2027", ("green-13", "green-14", "green-15"))
    assert (entry.head.by, entry.head.words) == ("the course manager", "Like a beach.")
    assert [operation.kind.value for operation in entry.as_done] == ["topdressing"]


def test_what_will_change_is_shown_and_nothing_written_without_a_yes(log: Command, folder: Path) -> None:
    before = tree(folder)
    done = log(*DONE)
    assert (done.code, done.out) == (1, "")
    assert "3 greens to healing; back to normal: " in done.err
    assert (
        "One new feed item:\n  Work done on greens 13 to 15 (Hollow tining, scarifying and sanding the greens)"
        in done.err
    )
    assert done.err.endswith("Nothing was written: say --yes to write without being asked.\n")
    assert tree(folder) == before


def test_a_machine_reads_what_was_written_and_what_changes(log: Command) -> None:
    told = json.loads(log(*DONE, "--yes", "--json").out)
    assert list(told) == ["written", "files", "changes", "new_items"]
    assert (told["written"], told["files"]) == (True, ["log/2027/2027-08-26-1545-greens-13-to-15-done.md"])
    (item,) = told["new_items"]
    assert item["id"] == "greens-renovation-2027/2027-08-26-1545-greens-13-to-15-done"


def test_surfaces_left_out_are_those_that_come_next(log: Command, folder: Path) -> None:
    """12 is done, 13 to 15 are in hand, 16 to 18 are still held up."""
    log("done", "hollow-tine", "--yes", "--quiet")
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, Progress)
    assert entry.surfaces == ("green-13", "green-14", "green-15")


@pytest.mark.parametrize(
    ("where", "count"),
    [(("--surfaces", "all"), 18), (("--greens", "all"), 18), (("--surfaces", "13, 14"), 2), (("--surfaces", "greens 13 to 15"), 3)],
)  # fmt: skip
def test_surfaces_may_be_all_or_bare_numbers_of_the_job(
    log: Command, folder: Path, where: tuple[str, str], count: int
) -> None:
    assert log("done", "hollow-tine", *where, "--yes", "--quiet").code == 0
    assert len(read_club_folder(folder).entries[-1].surfaces) == count  # type: ignore[union-attr]


def test_every_wrong_answer_is_told_at_once_by_its_option(log: Command, folder: Path) -> None:
    before = tree(folder)
    done = log("done", "hollow-tine", "--greens", "13-40", "--tine", "13", "--at", "4pm")
    assert (done.code, done.out) == (1, "")
    assert done.err.splitlines() == [
        "at: found '4pm', which is still to come; expected a moment up to now, 2027-08-26 15:45. Say what is planned in plan/.",
        "greens: found 'greens 13-40'; expected greens that stand in surfaces.yaml (holes 1 to 18); there is no green 40",
        "tine: found '13'; expected a length with its unit, such as '13 mm' or '1/2 in'. A number needs its unit: write '13 mm' if that is what you mean.",
        "3 answers need attention; nothing was written.",
    ]
    assert tree(folder) == before


def test_an_option_for_surfaces_that_names_none_is_no_leave_to_choose_them(log: Command, folder: Path) -> None:
    """As from a script that fills in a name which it does not have."""
    before = tree(folder)
    done = log("done", "hollow-tine", "--greens", " ", "--yes")
    assert (done.code, done.out) == (1, "")
    assert done.err.splitlines()[0] == (
        "greens: found nothing; expected surfaces, such as 1-9 or all; without the option they are those that come next"
    )
    assert tree(folder) == before


def test_what_only_the_whole_folder_shows_is_told_by_the_answer_too(log: Command, folder: Path) -> None:
    """A tine of 60 mm is read, but it is wider than its spacing of 50 mm."""
    before = tree(folder)
    done = log("done", "hollow-tine", "--tine", "39 mm", "--spacing", "30 x 30 mm", "--yes")
    assert (done.code, done.out) == (1, "")
    assert "found 'tines of 39 mm at 30 x 30 mm'; expected tines narrower than their spacing" in done.err
    assert ".md" not in done.err
    assert tree(folder) == before


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("done", "--greens", "1-3"), "swardcast log done: still needed: JOB. Nothing was written."),
        (("held-up", "hollow-tine"), "swardcast log held-up: still needed: --because. Nothing was written."),
        (("postponed", "bunkers"), "swardcast log postponed: still needed: --because. Nothing was written."),
        (("held-back",), "swardcast log held-back: still needed: CAUSE, --surfaces. Nothing was written."),
        (("seen", "greens-renovation-2027"), "swardcast log seen: still needed: --left. Nothing was written."),
        (("seen", "--speed", "9 ft"), "swardcast log seen: still needed: JOB. Nothing was written."),
        (("note",), "swardcast log note: still needed: --words. Nothing was written."),
        (("morning", "--yes"), "swardcast log morning: still needed: --open. Nothing was written."),
        (("correct",), "swardcast log correct: still needed: ENTRY. Nothing was written."),
        (("correct", "last"), "swardcast log correct: still needed: --withdraw. Nothing was written."),
        ((), "swardcast log: name the kind of entry, one of: morning, started, done, held-up, resumed, seen, normal"),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, tuple) else "",
)
def test_what_is_missing_is_wrong_usage_when_nobody_can_be_asked(
    log: Command, folder: Path, words: tuple[str, ...], said: str
) -> None:
    before = tree(folder)
    done = log(*words)
    assert (done.code, done.out) == (2, "")
    assert said in done.err
    assert tree(folder) == before


def test_a_kind_misspelt_is_wrong_usage_and_names_the_nearest(swardcast: Command) -> None:
    done = swardcast("log", "strated")
    assert (done.code, done.out) == (2, "")
    assert "Did you mean 'started'?" in done.err


def test_a_folder_that_needs_attention_is_mended_first(log: Command, folder: Path) -> None:
    (folder / "plan/2027-late-summer.yaml").write_text("programme: x\n", encoding="utf-8")
    done = log(*DONE, "--yes")
    assert done.code == 1
    assert done.err.endswith("This stood in the club folder before; mend it first. Nothing was written.\n")


ONE_OF_EACH = {
    "morning": ("morning", "--open", "the whole course", "--care", "1-12", "--closed", "13-15", "--trolleys", "none until 9pm"),
    "started": ("started", "bunkers", "--bunkers", "4"),
    "done": DONE,
    "held-up": ("held-up", "hollow-tine", "--because", "rain"),
    "resumed": ("resumed", "hollow-tine", "--greens", "16-18"),
    "seen": ("seen", "hollow-tine", "--greens", "1-6", "--left", "15 %", "--counted", "--speed", "8 ft"),
    "normal": ("normal", "practice-green"),
    "postponed": ("postponed", "bunkers", "--to", "7 September", "--because", "the sand comes late"),
    "forward": ("forward", "deep-tine", "--to", "4 October", "--because", "the machine is here"),
    "called-off": ("called-off", "light-sanding", "--because", "the greens need none"),
    "held-back": ("held-back", "growth regulator", "--greens", "10-18"),
    "note": ("note", "greens-renovation", "--words", "Nearly there."),
    "correct": ("correct", "2027-08-26-1020", "--withdraw", "--words", "It is not done."),
}  # fmt: skip


@pytest.mark.parametrize("word", ONE_OF_EACH)
def test_every_kind_can_be_entered_in_one_line(log: Command, folder: Path, word: str) -> None:
    count = len(read_club_folder(folder).entries)
    done = log(*ONE_OF_EACH[word], "--yes", "--quiet")
    assert done.code == 0, done.err
    assert len(read_club_folder(folder).entries) == count + 1


def test_a_day_that_is_given_up_is_entered_with_its_hold_up(log: Command, folder: Path) -> None:
    """Entered on Thursday 26 August."""
    held_up = (*ONE_OF_EACH["held-up"], "--yes", "--quiet", "--no-work-before")
    assert log(*held_up, "tomorrow").code == 0
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, Progress)
    assert entry.no_work_before == date(2027, 8, 27)
    assert "no-work-before: found 'today'; expected a day after 2027-08-26" in log(*held_up, "today").err


def test_two_entries_of_one_minute_are_two_files(log: Command, folder: Path) -> None:
    count = len(read_club_folder(folder).entries)
    log(*ONE_OF_EACH["note"], "--yes", "--quiet")
    assert log(*ONE_OF_EACH["note"], "--yes", "--quiet").code == 0
    assert len(read_club_folder(folder).entries) == count + 2


def test_the_last_of_the_plays_named_is_the_worst(log: Command, folder: Path) -> None:
    log(
        "morning",
        "--closed",
        "3",
        "--open",
        "the whole course",
        "--care",
        "1-18",
        "--temporary",
        "12",
        "--yes",
        "--quiet",
    )
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, MorningStatus)
    play = {name: state.value for name, state in entry.play}
    said = [play[name] for name in ("green-3", "green-4", "green-12", "tee-3")]
    assert said == ["closed", "open with care", "temporary green", "open"]


def test_a_correction_keeps_what_was_right(log: Command, folder: Path) -> None:
    log(*DONE, "--at", "3:40pm", "--yes", "--quiet")
    done = log("correct", "last", "--greens", "13-14", "--words", "The 15th is not done.", "--yes", "--quiet")
    assert done.code == 0, done.err
    withdrawal, instead = read_club_folder(folder).entries[-2:]
    assert isinstance(withdrawal, Correction)
    assert withdrawal.corrects == "2027-08-26-1540-greens-13-to-15-done"
    assert isinstance(instead, Progress)
    assert instead.surfaces == ("green-13", "green-14")
    assert instead.head.true_from.strftime("%H:%M") == "15:40"
    assert [operation.kind.value for operation in instead.as_done] == ["topdressing"]


def test_why_an_entry_is_corrected_reaches_members_before_the_other_words(log: Command, folder: Path) -> None:
    done = log("correct", "2027-08-26-1020", "--withdraw", "--because", "the 12th is not done", "--yes", "--quiet")
    assert done.code == 0, done.err
    assert read_club_folder(folder).entries[-1].head.words == "The 12th is not done."


def test_a_reason_for_a_correction_leaves_the_cause_of_a_hold_up_as_it_was(log: Command, folder: Path) -> None:
    why = ("--because", "the 12th was not held up.", "--words", "Sorry.")
    done = log("correct", "2027-08-25-0710", "--greens", "13-18", *why, "--yes", "--quiet")
    assert done.code == 0, done.err
    _, instead = read_club_folder(folder).entries[-2:]
    assert isinstance(instead, Progress)
    assert instead.because.startswith("heavy rain; the greens are too soft")
    assert instead.head.words == "The 12th was not held up.\n\nSorry."


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--frost-delay", "nobody out", "--trolleys", "none", "--until", "5pm"), "until: found '5pm' for 2 limits; expected it in the words of each limit that it belongs to. Such as: --frost-delay \"nobody on the course until 9:30am\" --preferred-lies \"Model Local Rule E-3 until 16 September, decided by the Committee\""),
        (("--limits", "trolleys: none; buggies: none", "--decided-by", "the Committee"), "decided-by: found 'the Committee' for 2 limits; expected it in the words of each limit"),
        (("--trolleys", "none until 2pm", "--until", "5pm"), "trolleys: found '2pm' and '5pm'; expected one of the two"),
        (("--until", "5pm"), "until: found '5pm' without a limit; expected a limit that it belongs to, such as --frost-delay"),
        (("--trolleys", ""), "trolleys: found nothing; expected what holds, such as 'none today', or 'lifted'"),
        (("--limits", " "), "limits: found nothing; expected a limit and what holds"),
        (("--preferred-lies", "all", "--decided-by", "the Committee"), "preferred-lies: found 'all'; expected what holds, such as 'Model Local Rule E-3"),
        (("--frost-delay", "until 9:30pm"), "frost-delay: found 'until 9:30pm'; expected what holds, such as 'nobody on the course until 9:30am'"),
    ],
)  # fmt: skip
def test_a_limit_says_what_holds_and_its_own_end_and_decider(
    log: Command, folder: Path, words: tuple[str, ...], said: str
) -> None:
    before = tree(folder)
    done = log("morning", "--open", "the whole course", *words, "--yes", "--quiet")
    assert (done.code, done.out) == (1, "")
    assert said in done.err
    assert tree(folder) == before


@pytest.mark.parametrize("behind", [" until 16 September, decided by the Committee", ", decided by the Committee until 16 September"])  # fmt: skip
def test_each_limit_in_its_own_option_has_its_own_end_and_decider(log: Command, folder: Path, behind: str) -> None:
    limits = ("--frost-delay", "nobody on the course until 6pm", "--preferred-lies", f"Model Local Rule E-3{behind}")
    done = log("morning", "--open", "the whole course", *limits, "--yes", "--quiet")
    assert done.code == 0, done.err
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, MorningStatus)
    told = {limit.name: (limit.what, limit.decided_by, f"{limit.until:%m-%d %H:%M}") for limit in entry.limits}
    assert told == {
        "frost delay": ("nobody on the course", "the course manager", "08-26 18:00"),
        "preferred lies": ("Model Local Rule E-3", "the Committee", "09-17 00:00"),
    }


def test_one_limit_may_have_its_end_in_an_option(log: Command, folder: Path) -> None:
    log("morning", "--open", "the whole course", "--trolleys", "none", "--until", "5pm", "--yes", "--quiet")
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, MorningStatus)
    assert [f"{limit.until:%H:%M}" for limit in entry.limits] == ["17:00"]


def test_a_finished_green_is_opened_at_midday_in_one_plain_line(log: Command, folder: Path) -> None:
    assert log("status", "--care", "12", "--yes", "--quiet").code == 0
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, MorningStatus)
    assert [(name, play.value) for name, play in entry.play] == [("green-12", "open with care")]


def test_work_that_had_been_started_nowhere_goes_on_where_it_is_said(log: Command, folder: Path) -> None:
    """Greens 16 to 18 were held up by rain before anybody touched them."""
    before = tree(folder)
    done = log("resumed", "hollow-tine", "--yes")
    assert (done.code, done.out) == (2, "")
    assert "still needed: --surfaces. Nothing was written.\nHeld up: greens 16 to 18; none of them had" in done.err
    assert tree(folder) == before


@pytest.mark.parametrize("where", [("--surfaces", "green four"), ("--greens", "Four"), ("--greens", "four to four")])
def test_numbers_may_be_words(log: Command, folder: Path, where: tuple[str, str]) -> None:
    done = log("done", "hollow-tine", *where, "--yes", "--quiet")
    assert done.code == 0, done.err
    entry = read_club_folder(folder).entries[-1]
    assert isinstance(entry, Progress)
    assert entry.surfaces == ("green-4",)


def test_the_help_says_what_holds_not_where(swardcast: Command) -> None:
    told = " ".join(swardcast("log", "morning", "--help").out.split())
    assert "--preferred-lies WHAT what holds, such as 'Model Local Rule E-3" in told
    assert "--trolleys WHAT what holds, such as 'none today'" in told
    assert "--greens WHERE such as 1-9 or all" in " ".join(swardcast("log", "done", "--help").out.split())
    assert "status" in swardcast("log", "--help").out


def test_a_correction_in_the_same_minute_is_refused_with_its_reason(log: Command, folder: Path) -> None:
    log(*DONE, "--yes", "--quiet")
    before = tree(folder)
    done = log("correct", "last", "--withdraw", "--yes")
    assert done.code == 1
    assert "expected a later minute. Wait a minute." in done.err
    assert tree(folder) == before


def test_an_entry_made_earlier_than_others_is_fine(log: Command, folder: Path) -> None:
    done = log("note", "--words", "Late.", "--at", "yesterday 9am", "--yes", "--quiet")
    assert done.out == "log/2027/2027-08-25-0900-note.md\n"


def test_a_file_left_over_by_a_killed_run_does_no_harm(log: Command, folder: Path) -> None:
    """Written beside its place and then moved: a kill leaves at most such a file."""
    (folder / "log/2027/.2027-08-26-1545-greens-13-to-15-done.md.new").write_text("---\nat: 20", encoding="utf-8")
    assert log(*DONE, "--yes", "--quiet").code == 0
    assert read_club_folder(folder).entries[-1].head.id == "2027-08-26-1545-greens-13-to-15-done"


def test_a_disk_that_cannot_be_written_leaves_nothing(
    log: Command, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}

    def full(_: Path, __: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", full)
    assert log(*DONE, "--yes", "--quiet").code == 1
    assert {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()} == before
