"""Every broken club folder of the corpus is told with file, line and field; nothing is written, and nothing runs away."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from tests.bad_input.broken_folders import BY_NAME, ROWS
from tests.bad_input.judging import faults
from tests.conftest import ROOT

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="time and memory are limited by the system's own means")

Ask = Callable[[str], dict[str, Any]]


@pytest.fixture(scope="session")
def ask() -> Iterator[Ask]:
    """A process that reads broken folders, as long as it is asked."""
    paths = os.pathsep.join([str(ROOT / "plugins"), str(ROOT)])
    with subprocess.Popen(
        [sys.executable, "-m", "tests.bad_input.worker"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": paths},
    ) as worker:
        assert worker.stdin is not None
        assert worker.stdout is not None
        asking, answers = worker.stdin, worker.stdout

        def one(name: str) -> dict[str, Any]:
            asking.write(f"{json.dumps(name)}\n")
            asking.flush()
            return dict(json.loads(answers.readline()))

        yield one
        asking.close()


@pytest.mark.parametrize("name", BY_NAME)
def test_a_broken_folder_is_told_with_its_place_and_nothing_is_written(name: str, ask: Ask) -> None:
    answer = ask(name)
    assert faults(BY_NAME[name], answer) == [], answer["ended"] or answer["err"]


def test_the_corpus_breaks_every_sort_of_file_in_more_than_two_hundred_ways() -> None:
    assert len(BY_NAME) == len(ROWS)
    assert sum(not row.fine for row in ROWS) > 200
    sorts = ("club", "surfaces", "plan/", "log/", "weather/observed", "weather/history", "weather/forecast")
    others = ("weather/sources", "fixtures", "choices", "phrases/", "templates/", "pages", "badge", "../answers")
    for sort in (*sorts, *others):
        assert sum(row.file.startswith(sort) and not row.fine for row in ROWS) >= 3, sort


def test_an_answer_of_another_line_field_or_file_would_be_seen(ask: Ask) -> None:
    row = BY_NAME["a day that does not exist"]
    answer = ask(row.name)
    assert faults(row, answer) == []
    for other in (
        {**answer, "line": answer["line"] + 1},
        {**answer, "err": answer["err"].replace("starts: found", "start: found")},
        {**answer, "err": answer["err"].replace(row.file, "plan/other.yaml")},
        {**answer, "err": f"{answer['err']}Traceback (most recent call last):"},
        {**answer, "code": 0},
        {**answer, "changed": ["site/index.html"]},
        {**answer, "memory_mb": 301},
    ):
        assert faults(row, other) != []
