"""The club's language: one of ours, the club's own phrases in it, or a language of its own."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

import pytest

from swardcast.language.catalogue import built_in
from swardcast.reading.folder import read_club_folder
from tests.conftest import problems_of


def _with(club: Path, language: str = "en-GB", **phrases: str) -> Path:
    path = club / "club.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("en-GB", language, 1), encoding="utf-8")
    for name, text in phrases.items():
        file = club / "phrases" / f"{name}.ftl"
        file.parent.mkdir(exist_ok=True)
        file.write_text(text, encoding="utf-8")
    return club


@pytest.mark.parametrize(("written", "tag"), [("en-GB", "en-GB"), ("en-US", "en-US"), ("en-us", "en-US")])
def test_a_language_of_ours_is_that_of_the_club(demo_club: Path, written: str, tag: str) -> None:
    read = read_club_folder(_with(demo_club, written)).club
    assert read.language == read.catalogue.tag == tag


def test_phrases_of_the_club_stand_in_place_of_ours(demo_club: Path) -> None:
    catalogue = read_club_folder(_with(demo_club, own="site-over = Done with\n")).club.catalogue
    assert catalogue.say("site-over", {}) == "Done with"
    assert catalogue.say("site-other", {}) == "Other"


def test_one_attribute_of_a_phrase_can_be_the_clubs(demo_club: Path) -> None:
    catalogue = read_club_folder(_with(demo_club, own="kind-rolling =\n    .do = Putt as you like.\n")).club.catalogue
    assert catalogue.say("kind-rolling.do", {}) == "Putt as you like."
    assert catalogue.say("kind-rolling", {}) == built_in("en-GB").say("kind-rolling", {})
    assert catalogue.has("kind-rolling.why")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            "site-over = Over\n\nsite-ovr = Over\n",
            "phrases/own.ftl: line 3: found 'site-ovr'; expected the name of a phrase of ours. Did you mean 'site-over'?",
        ),
        (
            "site-other = Other\nsite-last-news = News { $dya }\n",
            "phrases/own.ftl: line 2: found the slot $dya; expected slots of 'site-last-news': $day. Did you mean 'day'?",
        ),
        (
            "-course-manger = head greenkeeper\n",
            "phrases/own.ftl: line 1: found '-course-manger'; expected a term of ours, or one that your own phrases use. Did you mean '-course-manager'?",
        ),
        (
            "site-from-the-manager = From the { -course-manger }\n",
            "phrases/own.ftl: line 1: found { -course-manger } in 'site-from-the-manager'; expected the name of a phrase or a term that there is. Did you mean '-course-manager'?",
        ),
        (
            "site-over = Over\nsite-over = Past\n",
            "phrases/own.ftl: line 2: found 'site-over' a second time, after phrases/own.ftl, line 1; expected each phrase once",
        ),
        (
            "site-over = Over\nsite-other = { $day\n",
            "phrases/own.ftl: line 2: found 'site-other = { $day'; expected a phrase in Fluent's format. Expected token: \"}\"",
        ),
        (
            "language-locale = en_ZZZ\n",
            "phrases/own.ftl: line 1: found 'en_ZZZ' as language-locale; expected a locale of the Unicode CLDR such as 'en_GB', for plural forms and the names of days and months",
        ),
        (
            "site-over = { site-other }\nsite-other = { -round }\n-round = { site-over }\nmidnight = { midday }\n",
            (
                "phrases/own.ftl: line 1: found 'site-over', which puts itself in; expected a phrase with an end\n"
                "phrases/own.ftl: line 2: found 'site-other', which puts itself in; expected a phrase with an end\n"
                "phrases/own.ftl: line 3: found '-round', which puts itself in; expected a phrase with an end"
            ),
        ),
        (
            f"site-over = {'{' * 3000}{'}' * 3000}\n",
            "phrases/own.ftl: the file: found far too many nested brackets; expected plain phrases",
        ),
    ],
    ids=[
        "a phrase",
        "a slot",
        "a term",
        "a term in a phrase",
        "a phrase twice",
        "a brace left open",
        "a locale",
        "a phrase in itself",
        "braces without end",
    ],
)
def test_a_fault_in_own_phrases_is_told(demo_club: Path, text: str, said: str) -> None:
    assert "\n".join(problems_of(_with(demo_club, own=text))) == said


def test_a_term_of_the_clubs_own_serves_its_own_phrases(demo_club: Path) -> None:
    own = "-greens-team = greens team\nsite-from-the-manager = From the { -greens-team }\n"
    catalogue = read_club_folder(_with(demo_club, own=own)).club.catalogue
    assert catalogue.say("site-from-the-manager", {}) == "From the greens team"


def test_a_file_that_is_no_catalogue_is_told(demo_club: Path) -> None:
    _with(demo_club, own="site-over = Over\n")
    (demo_club / "phrases" / "own.txt").write_text("site-other = Other\n", encoding="utf-8")
    (problem,) = problems_of(demo_club)
    assert problem.startswith("phrases/own.txt: the file: found a file that is not read")


def test_of_a_language_with_phrases_missing_the_first_twenty_are_listed(demo_club: Path) -> None:
    problems = problems_of(_with(demo_club, "sl-SI", own="language-locale = sl\nsite-over = Konec\n"))
    count = len(built_in("en-GB").names())
    assert problems[0] == (
        f"phrases: the file: found {count - 2} of {count} phrases missing; "
        "expected all phrases of the language 'sl-SI', of which the first 20 are listed"
    )
    assert len(problems) == 21
    assert all("found nothing; expected a phrase, as in ours (phrases/en" in problem for problem in problems[1:])


def test_a_whole_language_of_the_clubs_own_is_spoken(demo_club: Path) -> None:
    folder = files("swardcast") / "language" / "phrases"
    ours = {file.name: file.read_text("utf-8") for file in (folder / "en").iterdir() if file.name.endswith(".ftl")}
    for file in (folder / "en-GB").iterdir():
        ours[file.name] = f"{ours.get(file.name, '')}\n{file.read_text('utf-8')}"
    whole = {name.removesuffix(".ftl"): text.replace("locale = en_GB", "locale = sl") for name, text in ours.items()}
    read = read_club_folder(_with(demo_club, "sl-SI", **whole)).club
    assert read.language == read.catalogue.tag == "sl-SI"
    assert str(read.catalogue.locale) == "sl"
