"""The demo club as it would be after many years: its year over and over, each job done and back to normal.

For measuring: what a build takes must not grow with what is long over.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path

import yaml

from swardcast.moments import FIRST_YEAR, day_from
from swardcast.turf.climate import PAST_YEARS
from tests.conftest import DEMO

__all__ = ["MOST_YEARS", "demo_of_years"]

_YEAR = timedelta(days=364)  # whole weeks, so that work stays on working days
_YEARS = 28  # those of the demo's past weather; more copies come two weeks beside the first ones
MOST_YEARS = (
    126  # back to 1901: we speak of no year before 1900, and the days of 28 years before are the same ones of the week
)
_DAY = re.compile(r"\b((?:19|20)\d\d-\d\d-\d\d)\b")
_JOB = re.compile(r"^(\s+- id:) (\S+)$", re.MULTILINE)


def demo_of_years(folder: Path, *, notices: int, years: int = _YEARS) -> Path:
    """Write a club folder with the year of the demo, and as many notices of the years before as are asked for.

    Args:
        folder: where to; it must not be there.
        notices: number of notices, at least those of the demo.
        years: over how many years they are spread at most, up to `MOST_YEARS`; where that is more than the demo has past
            weather, its weather comes over and over, with some of its years before the first one.

    Returns:
        The folder.
    """
    shutil.copytree(DEMO, folder)
    plans = {path.name: path.read_text(encoding="utf-8") for path in sorted((DEMO / "plan").glob("*.yaml"))}
    left = notices - sum(len(_JOB.findall(text)) for text in plans.values())
    copies = 0
    while left > 0:
        copies += 1
        left -= _one_copy(_Copy(folder, copies, years), plans, left)
    _observe(folder, _Copy(folder, min(copies, years), years).back, is_lengthened=years > _YEARS)
    return folder


@dataclass(frozen=True, slots=True)
class _Copy:
    """One more year of notices.

    Args:
        folder: the club's.
        number: which copy it is, from 1.
        years: over how many years all of them are spread.
    """

    folder: Path
    number: int
    years: int

    @property
    def back(self) -> timedelta:
        """How long before the demo it happens."""
        rounds, years = divmod(self.number - 1, self.years)
        return (years + 1) * _YEAR - rounds * timedelta(days=14)

    def shifted(self, text: str) -> str:
        """The text with each day as long before."""
        return _DAY.sub(lambda found: (date.fromisoformat(found[1]) - self.back).isoformat(), text)

    def renamed(self, text: str, ids: set[str]) -> str:
        """The text with these jobs as those of the copy."""
        for name in ids:
            text = text.replace(name, f"{name}-c{self.number}")
        return text

    def write(self, name: str, text: str) -> None:
        """Write a file of the log, of which the name begins with its day."""
        name = self.shifted(name)
        place = self.folder / "log" / name[:4]
        place.mkdir(parents=True, exist_ok=True)
        (place / f"{name}-c{self.number}.md").write_text(text, encoding="utf-8")


def _one_copy(copy: _Copy, plans: dict[str, str], left: int) -> int:
    taken = 0
    for name, text in plans.items():
        programme = yaml.safe_load(text)
        jobs = programme["jobs"][: max(left - taken, 0)]
        taken += len(jobs)
        if not jobs:
            continue
        ids = {job["id"] for job in jobs}
        kept = copy.shifted(_without_other_jobs(text, ids))
        (copy.folder / "plan" / f"{copy.number:03}-{name}").write_text(copy.renamed(kept, ids), encoding="utf-8")
        for job in jobs:
            _log_of(copy, job)
    return taken


def _without_other_jobs(text: str, ids: set[str]) -> str:
    head, *jobs = re.split(r"(?m)^(?=  - id: )", text)
    return head + "".join(job for job in jobs if _JOB.findall("\n" + job)[0][1] in ids)


def _log_of(copy: _Copy, job: dict[str, object]) -> None:
    """What the demo's log says of the job; and where it says nothing yet, that it was done on its day."""
    name = str(job["id"])
    entries = [path for path in sorted((DEMO / "log").rglob("*.md")) if f"job: {name}\n" in path.read_text("utf-8")]
    said = ""
    for path in entries:
        text = path.read_text(encoding="utf-8")
        said += text
        told = copy.renamed(copy.shifted(text), {name})
        copy.write(path.stem, re.sub(r"(?m)^corrects: (\S+)$", rf"corrects: \1-c{copy.number}", told))
    for kind, day in _ends(job, said):
        at = f"at: {day - copy.back} 17:00\nkind: {kind}\njob: {name}-c{copy.number}\nby: the course manager"
        copy.write(f"{day}-{name}-{kind.replace(' ', '-')}", f"---\n{at}\n---\n")


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


def _observe(folder: Path, back: timedelta, *, is_lengthened: bool) -> None:
    """The days of the copied years as observed: the demo's past years are in its history."""
    history = DEMO / "weather/history/1997-2026.csv"
    title, *past = history.read_text(encoding="utf-8").splitlines()
    head, *now = (DEMO / "weather/observed.csv").read_text(encoding="utf-8").splitlines()
    if is_lengthened:
        cycle = [row for row in past if row >= f"{2027 - _YEARS}"]
        past = [f"{int(row[:4]) - rounds * _YEARS}{row[4:]}" for rounds in range(4, 0, -1) for row in cycle] + cycle
        since = max(FIRST_YEAR, 2027 - PAST_YEARS - back // _YEAR)
        kept = [row for row in past if int(row[:4]) >= since and day_from(row[:10])]
        (folder / "weather/history" / history.name).unlink()
        (folder / f"weather/history/{since}-2026.csv").write_text("\n".join([title, *kept]) + "\n", encoding="utf-8")
    first = (date(2027, 1, 1) - back).isoformat()
    observed = [row for row in past if row[:10] >= first and row[:10] < now[0][:10]]
    (folder / "weather/observed.csv").write_text("\n".join([head, *observed, *now]) + "\n", encoding="utf-8")
