"""Every sentence of a notice can be traced to an entry, a line of a file, a sum or a phrase."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from subprocess import CompletedProcess

from lxml import html

from swardcast.compose import Bulletin
from swardcast.language.catalogue import built_in
from swardcast.notices.explain_notice import explain_notice
from swardcast.outlets.html import notice_html
from swardcast.records.folder import ClubRecords
from tests.conftest import DEMO

Run = Callable[..., CompletedProcess[str]]
AS_OF = ("--as-of", "2027-09-14 09:30")
_LINE = re.compile(
    r"^(?:computed from )?(?P<file>[a-z0-9/-]+\.[a-z]+), line (?P<line>[0-9]+)(?:, and surfaces\.yaml)?$", re.I
)
_SUM = re.compile(r"^(?:fixtures\.ics; )?sum: swardcast explain (?P<surface>\S+)$")


def _is_real(source: str, records: ClubRecords, weather: set[str]) -> bool:
    if (
        source in {entry.head.id for entry in records.entries}
        or source in weather
        or source in ("club.yaml", "fixtures.ics")
    ):
        return True
    if summed := _SUM.match(source):
        return summed["surface"] in records.surfaces
    line = _LINE.match(source.removeprefix("fixtures.ics; "))
    if line is None:
        return False
    file = DEMO / line["file"]
    phrases = {place.partition(", ")[0] for place in map(built_in("en-GB").place_of, built_in("en-GB").names())}
    return line["file"] in phrases or len(file.read_text(encoding="utf-8").splitlines()) >= int(line["line"])


def test_each_sentence_of_the_demos_notices_names_something_that_exists(
    demo_bulletin: Bulletin, demo_records: ClubRecords
) -> None:
    changes = {change for item in demo_bulletin.items for change in (item.id,)}
    for notice in demo_bulletin.notices:
        for part in explain_notice(notice, demo_bulletin.voice):
            for words, source in part.lines:
                assert _is_real(source, demo_records, changes), (notice.id, words, source)


def _blocks(page: str) -> Iterator[str]:
    for element in html.fromstring(f"<div>{page}</div>").iter("p", "dd", "li"):
        own_words = any("sc-own" in (parent.get("class") or "") for parent in element.iterancestors())
        leads_elsewhere = element.find("a") is not None
        holds_blocks = element.find("p") is not None
        if not (own_words or leads_elsewhere or holds_blocks):
            yield " ".join(element.text_content().split())


def test_nothing_on_the_page_is_missing_from_the_explanation(demo_bulletin: Bulletin) -> None:
    for notice in demo_bulletin.notices:
        lines = [words for part in explain_notice(notice, demo_bulletin.voice) for words, _ in part.lines]
        told = " ".join(" ".join(lines).split()).casefold()
        for block in _blocks(notice_html(notice, demo_bulletin.voice, "../../")):
            for sentence in re.split(r"(?<=[.!?]) (?=[A-Z“])", block.replace("Withdrawn: ", "")):
                assert sentence.casefold() in told, (notice.id, sentence)


def test_the_command_shows_each_sentence_with_its_source(run_swardcast: Run) -> None:
    """The label of a line is what the design asks: the entry or the sum that it came from."""
    done = run_swardcast("explain", "--notice", "greens-renovation-2027", "--club", str(DEMO), *AS_OF, "--json")
    assert done.returncode == 0, done.stderr
    steps = [step for part in json.loads(done.stdout) for step in part["steps"]]
    assert all(step["source"] for step in steps)
    source = next(step["source"] for step in steps if step["says"].startswith("The top of the greens holds "))
    assert source.startswith("plan/2027-late-summer.yaml, line ")


def test_a_misspelt_notice_gets_the_nearest_one(run_swardcast: Run) -> None:
    done = run_swardcast("explain", "--notice", "greens-renovation", "--club", str(DEMO), *AS_OF)
    assert done.returncode == 1
    assert "Did you mean 'greens-renovation-2027'?" in done.stderr
