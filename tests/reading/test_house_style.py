"""The house style of club.yaml: tone, sign off, and what members call sets of surfaces."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.reading.folder import read_club_folder
from swardcast.records.club import Group, Tone
from tests.outlook.small_club import SmallClub
from tests.reading.breaking import CLUB, assert_said, fault, replace

LANGUAGE = "language: en-GB\n"
FRONT = "    the front nine: greens 1-9\n"


def _style(*groups: str) -> str:
    return LANGUAGE + "house style:\n  groups:\n" + "".join(f"    {group}\n" for group in groups)


def test_a_club_without_a_house_style_says_all_and_signs_nothing(tmp_path: Path) -> None:
    club = SmallClub(tmp_path).records().club
    assert (club.tone, club.sign_off, club.groups) == (Tone.FULL, "", ())


@pytest.fixture
def plain_club(demo_club: Path) -> Path:
    """The demo without the house style, and the look with its badge, that stand at the end of its file."""
    text = (demo_club / CLUB).read_text(encoding="utf-8")
    (demo_club / "badge.svg").unlink()
    (demo_club / CLUB).write_text(text.partition("house style:")[0], encoding="utf-8")
    return demo_club


def test_tone_sign_off_and_groups_are_read(plain_club: Path) -> None:
    style = "house style:\n  tone: short\n  sign off: Thank you for your patience.\n  groups:\n"
    sets = f"{FRONT}    the loop: greens 3, 4 and 5\n"
    replace(plain_club / CLUB, LANGUAGE, LANGUAGE + style + sets)
    club = read_club_folder(plain_club).club
    assert (club.tone, club.sign_off) == (Tone.SHORT, "Thank you for your patience.")
    assert club.groups == (
        Group(name="the front nine", surfaces=frozenset(f"green-{hole}" for hole in range(1, 10))),
        Group(name="the loop", surfaces=frozenset({"green-3", "green-4", "green-5"})),
    )


def test_the_language_brings_its_phrases(plain_club: Path) -> None:
    replace(plain_club / CLUB, "en-GB", "en-US")
    club = read_club_folder(plain_club).club
    assert (club.language, club.catalogue.tag) == ("en-US", "en-US")


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        fault(
            "an unknown tone",
            LANGUAGE,
            LANGUAGE + "house style: {tone: brief}\n",
            "line 11, house style.tone: found 'brief'; expected one of: short, full",
        ),
        fault(
            "a sign off without words",
            LANGUAGE,
            LANGUAGE + "house style: {sign off: }\n",
            "line 11, house style.sign off: found nothing; expected some words",
        ),
        fault(
            "a field misspelt",
            LANGUAGE,
            LANGUAGE + "house style: {sign-off: Thank you}\n",
            "line 11, house style.sign-off: found the unknown field 'sign-off'; expected one of: tone, sign off, groups."
            " Did you mean 'sign off'?",
        ),
        fault(
            "a set of surfaces that the course does not have",
            LANGUAGE,
            _style("the front nine: greens 1-9", "the third nine: greens 19-27"),
            "line 14, house style.groups.the third nine: found 'greens 19-27'; expected greens that stand in surfaces.yaml"
            " (holes 1 to 18); there is no green 19",
        ),
        fault(
            "a surface misspelt",
            LANGUAGE,
            _style("the putting greens: the practise green"),
            "line 13, house style.groups.the putting greens: found 'the practise green'; expected surfaces of surfaces.yaml,"
            " such as 'greens 1-9', 'all tees' or 'green-7'. Did you mean 'the practice green'?",
        ),
        fault(
            "one set by two names",
            LANGUAGE,
            _style("the front nine: greens 1-9", "the outward half: greens 9, 1-8"),
            "line 14, house style.groups.the outward half: found the same surfaces as 'the front nine';"
            " expected each set of surfaces once. Members need one name for it.",
        ),
        fault(
            "one name for two sets",
            LANGUAGE,
            _style("the front nine: greens 1-9", "Front nine: tees 1-9"),
            "line 14, house style.groups.Front nine: found the name 'Front nine' a second time;"
            " expected a name of its own for each set",
        ),
        fault(
            "a name twice, letter by letter",
            LANGUAGE,
            _style("the front nine: greens 1-9", "the front nine: tees 1-9"),
            "line 14, house style.groups.the front nine: found the same field a second time; expected it once;"
            " it stands on line 13 already",
        ),
        fault(
            "a set without a name",
            LANGUAGE,
            _style("'': greens 1-9"),
            "line 13, house style.groups.: found nothing as the name of a set; expected a name that members use,"
            " such as 'the front nine'",
        ),
        fault(
            "a name that means other surfaces already",
            LANGUAGE,
            _style("the greens: greens 1-9"),
            "line 13, house style.groups.the greens: found the name 'the greens', which already means other surfaces;"
            " expected a name that means this set only",
        ),
    ],
)
def test_a_fault_in_the_house_style_is_told(plain_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(plain_club / CLUB, old, new)
    assert_said(plain_club, CLUB, says)
