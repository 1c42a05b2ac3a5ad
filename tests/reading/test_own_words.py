"""The manager's own words are parted at headings that name a part of the notice."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.errors import InputNeedsAttention, Problem
from swardcast.outlets.own_words import own_words_html
from swardcast.reading.own_words import own_words_from
from swardcast.records.plan import OwnWords, Part
from tests.outlook.small_club import SmallClub

PARTS = (
    "short answer, day by day, where, why now, in numbers, what changed, what you can do, the Rules, please take care,"
    " how the date is worked out, who decides"
)


def _read(markdown: str) -> tuple[str, tuple[OwnWords, ...], list[str]]:
    problems: list[Problem] = []
    before, parts = own_words_from(markdown, file="plan/2027.yaml", first_line=10, problems=problems)
    return before, parts, [str(problem) for problem in problems]


def test_words_without_headings_stand_at_the_head_of_the_notice() -> None:
    assert _read("We start on **Monday**.\n\nThank you.\n") == ("We start on **Monday**.\n\nThank you.", (), [])


def test_a_heading_adds_to_its_part_or_stands_instead_of_ours() -> None:
    markdown = "First.\n\n## Day by day\nMonday we tine.\n\n### A heading of our own\nTuesday.\n\n## Instead of where\nAll over.\n"
    before, parts, problems = _read(markdown)
    assert before == "First."
    assert parts == (
        OwnWords(part=Part.DAY_BY_DAY, instead=False, markdown="Monday we tine.\n\n### A heading of our own\nTuesday."),
        OwnWords(part=Part.WHERE, instead=True, markdown="All over."),
    )
    assert problems == []


@pytest.mark.parametrize("part", Part)
def test_every_part_can_be_added_to_by_its_name(part: Part) -> None:
    for heading in (f"## {part.value}", f"##{part.value.upper()}:", f"## {part.value} ##", f"{part.value}\n---"):
        assert _read(f"{heading}\nWords.\n")[1:] == (
            (OwnWords(part=part, instead=False, markdown="Words."),),
            [],
        ), heading


@pytest.mark.parametrize("part", Part)
def test_every_part_can_be_replaced_but_the_rules_and_the_cautions(part: Part) -> None:
    _, parts, problems = _read(f"## Instead of {part.value}\nWords.\n")
    if part in (Part.THE_RULES, Part.TAKE_CARE):
        (said,) = problems
        assert said.startswith(f"line 10, own words: found '## Instead of {part.value}'; expected '## ")
        assert said.endswith("a notice must not leave it out.")
    else:
        assert parts == (OwnWords(part=part, instead=True, markdown="Words."),)


def test_why_the_rules_and_the_cautions_cannot_be_replaced_is_told() -> None:
    _, _, (rules, cautions) = _read("## Instead of the Rules\nNo relief.\n\n## Instead of please take care\nNothing.\n")
    assert rules == (
        "line 10, own words: found '## Instead of the Rules'; expected '## The Rules', which adds to ours."
        " What stands there is the Committee's, and a notice must not leave it out."
    )
    assert cautions == (
        "line 13, own words: found '## Instead of please take care'; expected '## Please take care', which adds to ours."
        " What stands there keeps people safe, and a notice must not leave it out."
    )


A_PART = f"a part of the notice, one of: {PARTS}"
LEVEL_2 = (
    "found '# Day by day'; expected a heading of level 2, such as '## Day by day'."
    " Or '###' for a heading of your own, or '\\#' for the sign itself."
)


@pytest.mark.parametrize(
    ("heading", "said"),
    [
        ("## Day for day", f"found '## Day for day'; expected {A_PART}. Did you mean 'day by day'?"),
        (
            "## Instead of day to day",
            f"found '## Instead of day to day'; expected {A_PART}. Did you mean 'instead of day by day'?",
        ),
        ("## Sponsors", f"found '## Sponsors'; expected {A_PART}. For a heading of your own write '###'."),
        ("# Day by day", LEVEL_2),
        ("Day by day\n==========", LEVEL_2),
    ],
    ids=["misspelt", "misspelt instead", "unknown", "level 1", "underlined level 1"],
)
def test_another_heading_is_refused_with_its_line_and_the_nearest_name(heading: str, said: str) -> None:
    assert _read(f"First.\n\n{heading}\nWords.\n")[2] == [f"line 12, own words: {said}"]


def test_a_part_twice_is_told_with_the_line_of_the_first() -> None:
    _, _, problems = _read("## Where\nHere.\n\n## Instead of where\nThere.\n")
    (said,) = problems
    assert said == (
        "line 13, own words: found '## Instead of where' a second time; expected each part once; it stands on line 10 already."
        " Put both into one."
    )


def test_a_heading_with_nothing_below_it_is_told() -> None:
    _, _, problems = _read("## Where\n\n## Day by day\nMonday.\n")
    assert problems == ["line 10, own words: found nothing below '## Where'; expected some words, or no heading"]


@pytest.mark.parametrize("fence", ["```", "~~~", "````"])
def test_headings_in_code_are_none(fence: str) -> None:
    code = f"{fence}\n# not one\n## Where\n{fence}"
    before, parts, problems = _read(f"{code}\n\n## Day by day\nMonday.\n\n{code}\n")
    assert (before, problems) == (code, [])
    assert parts == (OwnWords(part=Part.DAY_BY_DAY, instead=False, markdown=f"Monday.\n\n{code}"),)


def test_code_that_is_never_closed_hides_no_heading() -> None:
    assert _read("```\n## Where\nHere.\n")[1] == (OwnWords(part=Part.WHERE, instead=False, markdown="Here."),)


@pytest.mark.parametrize(
    "text",
    ["a list:\n\n- # one\n- two\n", "\\# 7 is closed", "| a |\n|---|\n| b |", "words\n\n---\n\nwords", "    ## code"],
    ids=["list", "escaped", "table", "rule", "indented code"],
)
def test_what_the_sites_markdown_takes_for_no_heading_is_none(text: str) -> None:
    assert _read(text) == (text.rstrip(), (), [])


@pytest.mark.parametrize("indent", [" ", "  ", "   "])
def test_a_heading_that_is_set_in_a_little_is_one(indent: str) -> None:
    assert _read(f"First.\n\n{indent}## Where\nHere.\n") == (
        "First.",
        (OwnWords(part=Part.WHERE, instead=False, markdown="Here."),),
        [],
    )


def test_a_remark_to_oneself_is_not_parted_into_the_notice() -> None:
    remark = "<!-- to be asked:\n## Where\nthe key is under the mat\n-->"
    before, parts, problems = _read(f"First.\n\n{remark}\n\n## Day by day\nMonday.\n")
    assert (before, [own.markdown for own in parts], problems) == (f"First.\n\n{remark}", ["Monday."], [])


def test_code_stands_as_code_on_the_site() -> None:
    assert own_words_html("```\n## Where\n```") == "<pre><code>## Where\n</code></pre>"


def test_a_plans_words_are_parted_and_told_with_the_line_of_the_file(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    words = "    own words: |\n      First.\n\n      ## Day by day\n      Monday.\n\n      ## Wher\n      Here.\n"
    club.job("job", "06-01", more=words)
    plan = (tmp_path / "plan/job.yaml").read_text(encoding="utf-8")
    line = plan.splitlines().index("      ## Wher") + 1
    with pytest.raises(InputNeedsAttention) as raised:
        club.records()
    (problem,) = raised.value.problems
    assert (problem.file, problem.line, problem.hint) == ("plan/job.yaml", line, "Did you mean 'where'?")
    (tmp_path / "plan/job.yaml").write_text(plan.replace("## Wher\n", "## Where\n"), encoding="utf-8")
    job = club.records().jobs["job"]
    assert job.own_words == "First."
    assert [(own.part, own.markdown) for own in job.own_parts] == [(Part.DAY_BY_DAY, "Monday."), (Part.WHERE, "Here.")]
