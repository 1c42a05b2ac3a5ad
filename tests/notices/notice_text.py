"""A notice's HTML as text, block by block, and what a reader would call wrong in it."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from lxml import html

from swardcast.language.banned import Banned
from swardcast.language.plain import Fault, FaultKind, Plainness, faults, measure
from swardcast.language.sentences import sentences_of
from swardcast.moments import MONTHS, WEEKDAYS

__all__ = ["Block", "blocks_of", "faults_of", "measured", "ordinary_sentences", "wrong_plurals", "wrong_weekdays"]

_LABELS = {"dt", "th", "h1", "h2", "h3", "h4", "h5", "h6", "summary", "caption", "figcaption"}
_BLOCKS = _LABELS | {
    "p", "li", "dd", "td", "div", "section", "article", "ul", "ol", "dl", "table", "tr", "blockquote", "details",
    "br", "hr", "pre",
}  # fmt: skip
_OWN = {"sc-own"}
"""Classes of what the manager wrote, which is held against the measure elsewhere, and never as an error."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A paragraph, an item, a fact or a label, without what the manager wrote.

    Args:
        text: its words; two blanks stay two.
        is_label: whether it is a heading or the name of a fact.
        year: the year of the event that it tells, or None.
    """

    text: str
    is_label: bool
    year: int | None = None

    @property
    def is_running_text(self) -> bool:
        """Whether it is made of whole sentences; "Greens 1 to 18" is none, and would flatter the mean."""
        return not self.is_label and self.text.endswith((".", "!", "?"))


def blocks_of(body: str) -> list[Block]:
    """Split HTML into blocks, whatever its elements are."""
    found: list[Block] = []
    told: list[str] = []

    def flush(*, is_label: bool, year: int | None) -> None:
        text = re.sub(r"\s*\n\s*", " ", "".join(told)).replace("\u00a0", " ").strip().removeprefix(": ")
        told.clear()
        if text:
            found.append(Block(text=text, is_label=is_label, year=year))

    def walk(element: Any, *, is_label: bool, year: int | None) -> None:
        if not isinstance(element.tag, str):
            return  # a remark
        here = year_of(element) or year
        labels = is_label or element.tag in _LABELS
        opens_a_line = element.tag == "time" and not "".join(told).strip()
        if element.tag in _BLOCKS:
            flush(is_label=is_label, year=year)
        told.append(element.text or "")
        for child in element:
            if _OWN & set((child.get("class") or "").split()):
                flush(is_label=labels, year=here)
            else:
                walk(child, is_label=labels, year=here)
            told.append(child.tail or "")
        if (
            element.tag in _BLOCKS or opens_a_line
        ):  # "8:20am on Friday 16 July: " stands before a sentence, like a label
            flush(is_label=labels or opens_a_line, year=here)

    def year_of(element: Any) -> int | None:
        times = element.xpath(".//time/@datetime") if element.tag in ("li", "p", "dd") else []
        return datetime.fromisoformat(times[0]).year if times else None

    walk(html.fragment_fromstring(body, create_parent="div"), is_label=False, year=None)
    return found


def ordinary_sentences(blocks: Collection[Block]) -> list[str]:
    """All whole sentences."""
    return [sentence for block in blocks if block.is_running_text for sentence in sentences_of(block.text)]


def measured(blocks: Collection[Block]) -> Plainness:
    """How plain the whole sentences are."""
    return measure("\n\n".join(block.text for block in blocks if block.is_running_text))


def faults_of(block: Block, banned: Sequence[Banned]) -> list[Fault]:
    """What is wrong in a block; a fact without a full stop is a list, which is read item by item."""
    found = faults(block.text, banned)
    if block.is_running_text:
        return found
    length = {FaultKind.LONG_SENTENCE, FaultKind.LONG_PARAGRAPH}
    items = faults("\n\n".join(re.split(r"[,;] ", block.text)), ())
    return [fault for fault in found if fault.kind not in length] + [fault for fault in items if fault.kind in length]


_DAY = re.compile(rf"\b({'|'.join(WEEKDAYS)})\.?,? (\d{{1,2}}) ({'|'.join(MONTHS)})(?:,? (\d{{4}}))?")
_US_DAY = re.compile(rf"\b({'|'.join(WEEKDAYS)})\.?,? ({'|'.join(MONTHS)}) (\d{{1,2}})(?:,? (\d{{4}}))?")


def wrong_weekdays(text: str, years: Collection[int]) -> list[str]:
    """Days whose weekday is of another day, in each of the years that can be meant."""
    return [
        said for said, weekday, day, month, year in _days_in(text) if not _is_right(weekday, day, month, year or years)
    ]


def _days_in(text: str) -> Iterator[tuple[str, str, int, str, list[int]]]:
    for match in _DAY.finditer(text):
        yield match[0], match[1], int(match[2]), match[3], [int(match[4])] if match[4] else []
    for match in _US_DAY.finditer(text):
        yield match[0], match[1], int(match[3]), match[2], [int(match[4])] if match[4] else []


def _is_right(weekday: str, day: int, month: str, years: Collection[int]) -> bool:
    for year in years:
        try:
            if WEEKDAYS[date(year, MONTHS.index(month) + 1, day).weekday()] == weekday:
                return True
        except ValueError:
            continue  # the 29th of February, or no day at all
    return False


_ONE = (
    "day|week|month|year|hour|minute|hole|green|tee|fairway|approach|bunker|tonne|ton|chance|place|job|time|entry|pass|"
    "surface|plug|groove|yard|bag|tree|path|case|pound|inch|foot"
)
_SEVERAL = (
    "days|weeks|months|years|hours|minutes|holes|greens|tees|fairways|approaches|bunkers|tonnes|tons|chances|places|jobs|"
    "times|entries|passes|surfaces|plugs|grooves|yards|bags|trees|paths|cases|pounds|inches|feet"
)
_ONE_OF_SEVERAL = re.compile(rf"(?<![\d.,:/-])\b1 (?:{_SEVERAL})\b(?! \d)", re.IGNORECASE)
_SEVERAL_OF_ONE = re.compile(
    rf"(?<![\d.,:/-])(?<!Rule )\b(?:0|[2-9]|[1-9][\d,]*\d|\d+\.\d+) (?:{_ONE})\b(?![ -]\d|-)", re.IGNORECASE
)


def wrong_plurals(text: str) -> list[str]:
    """A number with the wrong form of the word after it: "1 days", "2 hole", "2.6 tonne"."""
    return [match[0] for pattern in (_ONE_OF_SEVERAL, _SEVERAL_OF_ONE) for match in pattern.finditer(text)]
