"""Laws of the readers: whatever stands in a file gives records, or problems that name file and place; nothing else.

Few examples, the same each time: `make fuzz` looks further, guided by what its bytes reach.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any, Final

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from swardcast.errors import Problem
from tests.bad_input.readers import Readers, problems_told
from tests.bad_input.small_demo import make_small_demo

FEW: Final = settings(max_examples=60, derandomize=True, suppress_health_check=[HealthCheck.function_scoped_fixture])
YAML: Final = ("club", "surfaces", "plan", "log", "choices", "sources")
_ODD: Final = (
    "", "0", "-0", "1e308", "nan", ".inf", "999999999 mm", "9" * 400, "9" * 5000, f"{'9' * 400}/7 mm", "1/0 mm", "²", "٣",
    "true", "null", "[]", "{}", "*a", "&a b", "!!set {}", "'", '"', "|", "9999-12-31", "0001-01-01 00:00", "2027-02-30",
    "2027-03-28 01:30", "2027-10-31 01:30", "greens 18-1", "greens 1-" + "9" * 400, "0 x 0 mm", "all tees", "\t", "\x07",
)  # fmt: skip


@pytest.fixture(scope="module")
def readers(tmp_path_factory: pytest.TempPathFactory) -> Readers:
    return Readers(make_small_demo(tmp_path_factory.mktemp("whole") / "club"))


def assert_told(problems: list[Problem]) -> None:
    """Each problem names its file, what was found and what was expected, on a line of a terminal or a few."""
    for problem in problems:
        assert problem.file
        assert problem.found
        assert problem.line is None or problem.line >= 1
        assert len(problem.found) < 500, problem.found
        assert problem.field.isprintable(), problem.field


@pytest.mark.parametrize("name", ["days", "station", "logger", "fixtures", "phrases", "badge", "sheet", "plan", "log"])
@given(data=st.binary(max_size=400))
@FEW
def test_any_bytes_give_records_or_problems(name: str, data: bytes, readers: Readers) -> None:
    assert_told(problems_told(readers.by_name[name], data))


_SCALARS: Final = st.one_of(
    st.none(), st.booleans(), st.integers(), st.floats(), st.sampled_from(_ODD), st.text(max_size=12)
)


def _shaped(value: Any) -> st.SearchStrategy[Any]:
    """A tree of the shape of a good one, in which anything may be another thing, be left out or stand there twice."""
    if isinstance(value, Mapping):
        fields = st.fixed_dictionaries({}, optional={key: _shaped(part) for key, part in value.items()})
        return st.one_of(fields, fields, fields, _SCALARS)
    if isinstance(value, list) and value:
        items = st.lists(st.sampled_from(value[:3]).flatmap(_shaped), max_size=3)
        return st.one_of(items, items, _SCALARS)
    return st.one_of(st.just(value), st.just(value), st.just(value), _SCALARS)


@pytest.mark.parametrize("name", YAML)
@given(draw=st.data())
@FEW
def test_any_tree_of_the_shape_of_a_file_gives_records_or_problems(
    name: str, draw: st.DataObject, readers: Readers
) -> None:
    good = draw.draw(st.sampled_from(readers.seeds()[name]), label="good file")
    text = good.split(b"---\n")[1] if name == "log" else good
    tree = draw.draw(_shaped(yaml.safe_load(text)), label="tree")
    written = json.dumps(tree, default=str, allow_nan=True).encode()
    data = b"---\n" + written + b"\n---\n" if name == "log" else written
    assert_told(problems_told(readers.by_name[name], data))


@pytest.mark.parametrize(
    "name", [*YAML, "fixtures", "days", "station", "logger", "phrases", "badge", "sheet", "workbook"]
)
@given(draw=st.data())
@FEW
def test_a_good_file_with_lines_spliced_left_out_and_doubled_gives_records_or_problems(
    name: str, draw: st.DataObject, readers: Readers
) -> None:
    seeds = readers.seeds()[name]
    lines = draw.draw(st.sampled_from(seeds)).split(b"\n")
    others = [line for seed in seeds for line in seed.split(b"\n")]
    for _ in range(draw.draw(st.integers(1, 4))):
        at = draw.draw(st.integers(0, len(lines)))
        match draw.draw(st.integers(0, 4)):
            case 0:
                del lines[at : at + draw.draw(st.integers(1, 3))]
            case 1:
                lines.insert(at, draw.draw(st.sampled_from(others)))
            case 2:
                lines[at:at] = lines[at : at + 2]
            case 3:
                odd = draw.draw(st.sampled_from(_ODD)).encode("utf-8", "surrogateescape")
                place = min(at, len(lines) - 1) if lines else None
                if place is not None:
                    begins, sign, _ = lines[place].partition(draw.draw(st.sampled_from([b":", b",", b";", b"="])))
                    lines[place] = begins + sign + odd
            case _:
                joined = b"\n".join(lines)
                cut = draw.draw(st.integers(0, len(joined)))
                lines = (joined[:cut] + joined[cut + draw.draw(st.integers(0, 40)) :]).split(b"\n")
    assert_told(problems_told(readers.by_name[name], b"\n".join(lines)))


_CELLS: Final = st.one_of(st.sampled_from(_ODD), st.floats().map(str), st.dates().map(str), st.text(max_size=6))


@pytest.mark.parametrize(
    ("name", "header", "sign"), [("days", "date,tmin_c,tmax_c", ","), ("station", "Day;Low;High;Rain", ";")]
)
@given(rows=st.lists(st.lists(_CELLS, max_size=5), max_size=6))
@FEW
def test_any_rows_give_days_or_problems(
    name: str, header: str, sign: str, rows: list[list[str]], readers: Readers
) -> None:
    text = "\n".join([header, *(sign.join(row) for row in rows)])
    assert_told(problems_told(readers.by_name[name], text.encode("utf-8", "surrogatepass")))


_RULE_PARTS: Final = st.dictionaries(
    st.sampled_from(["FREQ", "INTERVAL", "COUNT", "UNTIL", "BYDAY", "BYMONTH", "BYMONTHDAY", "BYSETPOS", "BYYEARDAY", "BYWEEKNO", "WKST"]),
    st.sampled_from(["DAILY", "WEEKLY", "YEARLY", "1", "-1", "2", "53", "366", "0", "MO", "5MO", "-1SU", "20270918", "", "9" * 5000, "²"]),
    max_size=5,
)  # fmt: skip
_PROPERTIES: Final = st.sampled_from([
    "DTSTART:20270918T080000", "DTSTART;VALUE=DATE:20270918", "DTEND;VALUE=DATE:20270917", "DURATION:P400D", "UID:a",
    "EXDATE:20270918", "RDATE;VALUE=PERIOD:20270918T080000/PT1H", "RECURRENCE-ID:20270918T080000Z", "STATUS:CANCELLED",
    "DTSTART;TZID=Nowhere:20270918T080000", "SUMMARY:", "BEGIN:VALARM", "END:VALARM", " folded", "BEGIN:VEVENT",
    "END:VEVENT", "CLASS:PRIVATE", "SEQUENCE:x", "X;Y=\"a:Z", "TRANSP", "DTSTART:00010101T000000Z",
])  # fmt: skip


@given(properties=st.lists(_PROPERTIES, max_size=6), rule=_RULE_PARTS)
@settings(FEW, max_examples=150)
def test_any_event_gives_fixtures_or_problems(properties: list[str], rule: dict[str, str], readers: Readers) -> None:
    told = ";".join(f"{key}={value}" for key, value in rule.items())
    lines = ["BEGIN:VEVENT", "UID:one", "SUMMARY:Medal", "DTSTART;VALUE=DATE:20270918", *properties, f"RRULE:{told}"]
    text = "\n".join(["BEGIN:VCALENDAR", *lines, "END:VEVENT", "END:VCALENDAR", ""])
    assert_told(problems_told(readers.by_name["fixtures"], text.encode()))
