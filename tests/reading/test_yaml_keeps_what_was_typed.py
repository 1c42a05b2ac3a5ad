"""YAML is read without surprises: text stays text, each value knows its line, tricks are refused."""

from __future__ import annotations

from typing import Any

import pytest

from swardcast.errors import Problem
from swardcast.reading.yaml_text import Located, field_of, read_yaml


def value_of(text: str) -> Any:
    problems: list[Problem] = []
    document = read_yaml(text, file="a.yaml", problems=problems)
    assert problems == []
    assert document is not None
    return document.value


def problems_of_text(text: str, first_line: int = 1) -> list[str]:
    problems: list[Problem] = []
    read_yaml(text, file="a.yaml", problems=problems, first_line=first_line)
    assert all(problem.file == "a.yaml" for problem in problems)
    return [str(problem) for problem in problems]


@pytest.mark.parametrize(
    "typed",
    ["07:05", "7:05", "2027-08-23", "2027-08-23 07:05", "no", "yes", "on", "off", "Yes", "NO", "y", "07", "1_000", "1e3",
     "0x10", ".5", "1:30:00", "1/2 in", "50 x 50 mm", "100 %", "NaN", ".inf", "True", "NULL", "2027-08"],
)  # fmt: skip
def test_what_other_readers_turn_into_something_else_stays_text(typed: str) -> None:
    assert value_of(f"at: {typed}") == {"at": typed}


@pytest.mark.parametrize(
    ("typed", "read"),
    [("2", 2), ("-1.7", -1.7), ("0", 0), ("0.3", 0.3), ("true", True), ("false", False), ("", None), ("~", None),
     ("null", None), ("'2'", "2"), ('"true"', "true"), ("''", "")],
)  # fmt: skip
def test_numbers_truth_and_nothing_are_read_unless_in_quotes(typed: str, read: object) -> None:
    value = value_of(f"field: {typed}")["field"]
    assert value == read
    assert type(value) is type(read)


def test_a_long_run_of_digits_stays_text_so_that_no_digit_is_lost() -> None:
    """A telephone number of 17 digits would lose its last ones as a decimal of double precision (15 to 17)."""
    assert value_of("telephone: 00441632960000000") == {"telephone": "00441632960000000"}
    assert value_of("telephone: 44163296000000001") == {"telephone": "44163296000000001"}


def test_the_name_of_a_field_is_always_text() -> None:
    assert value_of("1: a\nno: b\n2027-08-23: c") == {"1": "a", "no": "b", "2027-08-23": "c"}


def test_each_value_knows_its_line_and_what_is_not_there_takes_the_line_above() -> None:
    document = read_yaml("a: 1\nb:\n  - x: 1\n    y:\n      z: 2\n", file="a.yaml", problems=[], first_line=10)
    assert isinstance(document, Located)
    lines = [
        document.line(path) for path in (("a",), ("b",), ("b", 0), ("b", 0, "y", "z"), ("b", 0, "missing"), ("q",))
    ]
    assert lines == [10, 11, 12, 14, 12, 10]


def test_an_empty_document_has_no_fields_and_no_fault() -> None:
    assert value_of("# only a remark\n") == {}


def test_a_field_twice_is_told_with_both_lines() -> None:
    assert problems_of_text("place:\n  a: 1\n  b: 2\n  a: 3\n") == [
        "line 4, place.a: found the same field a second time; expected it once; it stands on line 2 already"
    ]


def test_lines_count_from_where_the_document_stands_in_its_file() -> None:
    assert problems_of_text("a: 1\na: 2\n", first_line=5) == [
        "line 6, a: found the same field a second time; expected it once; it stands on line 5 already"
    ]


def test_a_colon_without_quotes_is_told_with_the_remedy() -> None:
    (said,) = problems_of_text("name: A\ndecides: Note: the manager\n")
    assert said.startswith("line 2: found 'decides: Note: the manager', which is not YAML (")
    assert said.endswith(
        "expected fields such as 'name: value'. Put text that holds a colon in quotes, and line fields up under each other."
    )


def test_a_tab_inside_a_value_is_no_fault() -> None:
    assert value_of("name: A\tB") == {"name": "A\tB"}


def test_a_tab_that_indents_is_told_with_the_remedy() -> None:
    (said,) = problems_of_text("place:\n\tlatitude: 55.6\n")
    assert said.startswith("line 2: found 'latitude: 55.6', which is not YAML (")
    assert said.endswith("YAML is indented with spaces, never with tabs.")


@pytest.mark.parametrize(
    ("text", "line"),
    [
        pytest.param("a: &x {b: 1}\nc: *x\n", 2, id="an alias of fields"),
        pytest.param("a: &x [1, 2]\nb: 1\nc:\n  - *x\n", 4, id="an alias of a list"),
        pytest.param("a: &x\n  b: *x\n", 2, id="a thing that holds itself"),
    ],
)
def test_an_anchor_and_its_alias_are_refused(text: str, line: int) -> None:
    expected = "expected plain lists and fields. Text that begins with '&' or '*' stands in quotation marks."
    assert problems_of_text(text) == [
        f"line 1: found an anchor ('&x'); {expected}",
        f"line {line}: found an alias ('*x'); {expected}",
    ]


def test_aliases_that_would_grow_to_a_billion_are_refused_by_the_first_three() -> None:
    levels = [f"l{n}: &l{n} [*l{n - 1}, *l{n - 1}, *l{n - 1}, *l{n - 1}]" for n in range(1, 16)]
    said = problems_of_text("\n".join(["l0: &l0 [x, x]", *levels]))
    assert [one.partition(";")[0] for one in said] == [
        "line 1: found an anchor ('&l0')",
        "line 2: found an anchor ('&l1')",
        "line 2: found an alias ('*l0')",
    ]


def test_signs_of_anchors_and_aliases_in_the_middle_of_words_are_no_fault() -> None:
    assert value_of("a: salt & sand\nb: |\n  *now* and **then**\nc: '*'\n") == {
        "a": "salt & sand",
        "b": "*now* and **then**\n",
        "c": "*",
    }


def test_nesting_that_no_club_needs_is_told_once() -> None:
    said = problems_of_text("a: " + "[" * 14 + "x" + "]" * 14 + "\nb: [" + "[" * 14 + "x" + "]" * 14 + "]")
    assert said == ["line 1, a: found lists or fields nested more than 12 deep; expected plain lists and fields"]


def test_nesting_that_would_exhaust_the_stack_is_told_and_not_raised() -> None:
    (said,) = problems_of_text("[" * 5000)
    assert said.startswith("line 1: found ")


def test_a_list_for_the_name_of_a_field_is_told() -> None:
    assert problems_of_text("? [a, b]\n: 1\n") == [
        "line 1: found a list or fields where the name of a field should be; expected a name"
    ]


def test_a_tag_makes_no_object_and_is_refused() -> None:
    assert problems_of_text("a: !!python/object/apply:os.getcwd []\nb: !!int '7'") == [
        "line 1, a: found a tag ('!!python/object/apply:os.getcwd'); expected plain text, lists and fields"
    ]


def test_a_field_in_a_list_is_counted_from_one() -> None:
    assert field_of(("jobs", 0, "operations", 1, "hollow tining", "depth")) == "job 1, operation 2, hollow tining.depth"
    assert field_of(("look", "badge")) == "look.badge"
    assert field_of(("sand store", "deliveries", 2, "on")) == "sand store.delivery 3, on"
    assert field_of(("greens", "named", 0)) == "greens.named 1"
    assert field_of((2, "a", 0, 1)) == "3, a 1 2"
