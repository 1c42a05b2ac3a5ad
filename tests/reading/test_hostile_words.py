"""What could only be meant to do harm is refused where it is read, with its file; nothing is published then."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.conftest import DEMO, problems_of

REFUSED = {
    "letters turned round": ("plan/2027-late-summer.yaml", "title: Hollow", 'title: "\u202eHollow', "U+202E"),
    "a name that leaves its folder": ("plan/2027-late-summer.yaml", "id: greens-r", "id: ../greens-r", "'../greens-r"),
    "a second line in an address": ("club.yaml", "links@quillhaven.example", '"a\\r\\nBcc: x@evil.example"', "U+000D"),
    "a parameter in an address": ("club.yaml", "email: links@", "email: links?bcc=x@", "an address on one line"),
    "a coded line in an address": ("club.yaml", "email: links@", "email: links%0d%0abcc@", "an address on one line"),
    "a number that is a script": ("club.yaml", "telephone: 0", "telephone: javascript:0", "expected digits"),
    "a site that is a script": ("club.yaml", "site: https:", "site: javascript:", "the address of the site"),
    "a badge with a script": ("badge.svg", "</svg>", "<script>alert(1)</script></svg>", "with <script>"),
    "a badge with an event": ("badge.svg", "<svg ", '<svg onload="alert(1)" ', "the event handler 'onload'"),
    "a badge that asks a host": ("badge.svg", "</svg>", '<use href="//evil.example/a"/></svg>', "with the address"),
}


@pytest.mark.parametrize(("file", "told", "hostile", "says"), REFUSED.values(), ids=REFUSED)
def test_it_is_refused(tmp_path: Path, file: str, told: str, hostile: str, says: str) -> None:
    club = Path(shutil.copytree(DEMO, tmp_path / "club", ignore=shutil.ignore_patterns("history")))
    words = (club / file).read_text(encoding="utf-8")
    assert told in words
    (club / file).write_text(words.replace(told, hostile, 1), encoding="utf-8")
    assert any(says in problem for problem in problems_of(club)), problems_of(club)
