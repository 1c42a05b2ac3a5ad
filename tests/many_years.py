"""The demo club as it would be after many years: its year over and over, each job done and back to normal.

For measuring: what a build takes must not grow with what is long over.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import yaml

from tests.conftest import DEMO

__all__ = ["demo_of_years"]

_YEAR = timedelta(days=364)  # whole weeks, so that work stays on working days
_YEARS = 28  # those of the demo's past weather; more copies come two weeks beside the first ones
_DAY = re.compile(r"\b((?:19|20)\d\d-\d\d-\d\d)\b")
_JOB = re.compile(r"^(\s+- id:) (\S+)$", re.MULTILINE)


def demo_of_years(folder: Path, *, notices: int) -> Path:
    """Write a club folder with the year of the demo, and as many notices of the years before as are asked for.

    Args:
        folder: where to; it must not be there.
        notices: number of notices, at least those of the demo.

    Returns:
        The folder.
    """
    shutil.copytree(DEMO, folder)
    plans = {path.name: path.read_text(encoding="utf-8") for path in sorted((DEMO / "plan").glob("*.yaml"))}
    left = notices - sum(len(_JOB.findall(text)) for text in plans.values())
    copies = 0
    while left > 0:
        copies += 1
        left -= _one_copy(folder, plans, copies, left)
    _observe(folder, copies)
    return folder


def _one_copy(folder: Path, plans: dict[str, str], copy: int, left: int) -> int:
    taken = 0
    for name, text in plans.items():
        programme = yaml.safe_load(text)
        jobs = programme["jobs"][: max(left - taken, 0)]
        taken += len(jobs)
        if not jobs:
            continue
        ids = {job["id"] for job in jobs}
        kept = _shifted(_without_other_jobs(text, ids), copy)
        (folder / "plan" / f"{copy:03}-{name}").write_text(_renamed(kept, ids, copy), encoding="utf-8")
        for job in jobs:
            _log_of(folder, job, copy)
    return taken


def _back(copy: int) -> timedelta:
    rounds, years = divmod(copy - 1, _YEARS)
    return (years + 1) * _YEAR - rounds * timedelta(days=14)


def _without_other_jobs(text: str, ids: set[str]) -> str:
    head, *jobs = re.split(r"(?m)^(?=  - id: )", text)
    return head + "".join(job for job in jobs if _JOB.findall("\n" + job)[0][1] in ids)


def _renamed(text: str, ids: set[str], copy: int) -> str:
    for name in ids:
        text = text.replace(name, f"{name}-c{copy}")
    return text


def _shifted(text: str, copy: int) -> str:
    return _DAY.sub(lambda found: (date.fromisoformat(found[1]) - _back(copy)).isoformat(), text)


def _log_of(folder: Path, job: dict[str, object], copy: int) -> None:
    """What the demo's log says of the job; and where it says nothing yet, that it was done on its day."""
    name = str(job["id"])
    entries = [path for path in sorted((DEMO / "log").rglob("*.md")) if f"job: {name}\n" in path.read_text("utf-8")]
    said = ""
    for path in entries:
        text = path.read_text(encoding="utf-8")
        said += text
        told = re.sub(r"(?m)^corrects: (\S+)$", rf"corrects: \1-c{copy}", _renamed(_shifted(text, copy), {name}, copy))
        _write(folder, copy, path.stem, told)
    for kind, day in _ends(job, said):
        at = f"at: {day - _back(copy)} 17:00\nkind: {kind}\njob: {name}-c{copy}\nby: the course manager"
        _write(folder, copy, f"{day}-{name}-{kind.replace(' ', '-')}", f"---\n{at}\n---\n")


def _ends(job: dict[str, object], said: str) -> Iterator[tuple[str, date]]:
    starts = job["starts"]
    assert isinstance(starts, date)
    days = [date.fromisoformat(day) for day in re.findall(r"(?m)^at: (\S+)", said)]
    if (
        "kind: work done" not in said or job["id"] == "bunkers-resanding-2027"
    ):  # the demo stands in the midst of that one
        yield "work done", max([starts, *days]) + timedelta(days=4)
    if "kind: back to normal" not in said:
        yield "back to normal", starts + timedelta(days=60)


def _write(folder: Path, copy: int, name: str, text: str) -> None:
    name = _shifted(name, copy)  # which begins with its day
    place = folder / "log" / name[:4]
    place.mkdir(parents=True, exist_ok=True)
    (place / f"{name}-c{copy}.md").write_text(text, encoding="utf-8")


def _observe(folder: Path, copies: int) -> None:
    """The days of the copied years as observed: the demo's past years are in its history."""
    rows = (DEMO / "weather/history/1997-2026.csv").read_text(encoding="utf-8").splitlines()[1:]
    head, *now = (DEMO / "weather/observed.csv").read_text(encoding="utf-8").splitlines()
    first = (date(2027, 1, 1) - _back(min(copies, _YEARS))).isoformat()
    past = [row for row in rows if row[:10] >= first and row[:10] < now[0][:10]]
    (folder / "weather/observed.csv").write_text("\n".join([head, *past, *now]) + "\n", encoding="utf-8")
