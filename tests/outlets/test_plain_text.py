"""The manager's own Markdown as plain text: what stands in the text part of an e-mail, line by line."""

from __future__ import annotations

from textwrap import dedent

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lxml import html

from swardcast.outlets.own_words import own_words_for_mail
from swardcast.outlets.plain_text import plain_lines

PAGE = "https://quillhaven.example/notices/greens/"


def _plain(markdown: str, width: int = 72) -> str:
    return "\n".join(plain_lines(own_words_for_mail(dedent(markdown), PAGE), width))


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        pytest.param("We *do* this **every** year.", "We do this every year.", id="emphasis"),
        pytest.param("One.\n\nTwo.\nStill two.", "One.\n\nTwo. Still two.", id="paragraphs"),
        pytest.param(r"5 \* 5 mm, snake_case_name", "5 * 5 mm, snake_case_name", id="stars that were meant"),
        pytest.param("Sand &amp; seed < 2 mm", "Sand & seed < 2 mm", id="entities"),
        pytest.param("See [the plan](https://a.example/).", "See the plan (https://a.example/).", id="a link"),
        pytest.param(
            "[Follow](../../pages/follow/) us",
            "Follow (https://quillhaven.example/pages/follow/) us",
            id="a link of the site",
        ),
        pytest.param("<https://a.example/x>", "https://a.example/x", id="a link that is its address"),
        pytest.param("[Ask](mailto:a@b.example)", "Ask (a@b.example)", id="an e-mail address"),
        pytest.param("[a@b.example](mailto:a@b.example)", "a@b.example", id="an e-mail address as typed"),
        pytest.param("[01234 5](tel:012345)", "01234 5 (012345)", id="a telephone"),
        pytest.param("[**Bold** link](https://a.example/)", "Bold link (https://a.example/)", id="marks in a link"),
        pytest.param("[Bad](javascript:alert(1))", "Bad", id="a link to nowhere"),
        pytest.param("Use `13 mm` tines", "Use 13 mm tines", id="code"),
        pytest.param("### Sand\n\nDry.", "Sand\n\nDry.", id="a heading"),
        pytest.param("One  \nTwo", "One\nTwo", id="a broken line"),
        pytest.param("One\n\n---\n\nTwo", f"One\n\n{'-' * 36}\n\nTwo", id="a rule"),
        pytest.param("- sand\n- seed", "- sand\n- seed", id="a list"),
        pytest.param("1. tine\n2. sand\n3. brush", "1. tine\n2. sand\n3. brush", id="a numbered list"),
        pytest.param(
            "Steps:\n\n* tine\n* sand\n\nThen rest.", "Steps:\n\n- tine\n- sand\n\nThen rest.", id="list in text"
        ),
        pytest.param(
            "- greens\n    - front nine\n    - back nine\n        1. first\n        2. then\n- tees",
            "- greens\n  - front nine\n  - back nine\n    1. first\n    2. then\n- tees",
            id="nested lists",
        ),
        pytest.param("- one\n\n    more\n\n- two", "- one\n\n  more\n\n- two", id="paragraphs of an item"),
        pytest.param("> Quiet,\n> please.\n>\n> Thanks.", "> Quiet, please.\n>\n> Thanks.", id="a quotation"),
        pytest.param("> Here:\n>\n> - a\n> - b", "> Here:\n>\n> - a\n> - b", id="a list in a quotation"),
        pytest.param("```\na   b\n  c\n```\nend", "a   b\n  c\n\nend", id="a block of code"),
        pytest.param(
            "| Green | Depth |\n|---|---|\n| 1 | 60 mm |\n| 10 | **80 mm** |",
            "Green  Depth\n1      60 mm\n10     80 mm",
            id="a table",
        ),
    ],
)
def test_what_was_typed_is_said_without_marks(typed: str, said: str) -> None:
    assert _plain(typed) == said


def test_lines_are_wrapped_within_their_item_and_addresses_stay_whole() -> None:
    typed = "- We sand the greens [as we told you here](https://quillhaven.example/a/very/long/address) in May."
    assert _plain(typed, 40) == (
        "- We sand the greens as we told you here\n  (https://quillhaven.example/a/very/long/address)\n  in May."
    )


def test_a_table_that_is_too_wide_is_told_row_by_row() -> None:
    typed = "| Green | What we do |\n|---|---|\n| 1 | tine and sand it |\n| 2 | leave it alone |"
    assert _plain(typed, 20) == ("Green: 1\nWhat we do: tine and\n  sand it\n\nGreen: 2\nWhat we do: leave it\n  alone")


@given(st.text(alphabet="ab \n*_`#>-|[]()1.\\<&", max_size=120))
def test_no_letter_of_the_html_is_lost_whatever_is_typed(typed: str) -> None:
    """Marks and blanks aside: what lxml reads of the HTML stands in the text, in its order."""
    made = own_words_for_mail(typed, PAGE)
    letters = [sign for sign in html.fromstring(f"<div>{made}</div>").text_content() if sign in "ab1"]
    said = iter("\n".join(plain_lines(made, 72)))
    assert all(letter in said for letter in letters)
