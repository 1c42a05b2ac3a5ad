"""Harmless HTML -> plain text for an e-mail: words without marks, whole links, lists with dashes, tables in columns.

It reads what `own_words_html` writes, and nothing else: a tag that is not there is passed over, its text stays.
"""

from __future__ import annotations

import textwrap
from dataclasses import dataclass, field
from html.parser import HTMLParser
from typing import Final

__all__ = ["plain_lines"]

_BLOCKS: Final = {"p", "h3", "h4", "li", "pre", "blockquote", "ul", "ol", "table", "hr"}
_RULE: Final = "-" * 36
_GAP: Final = "  "


def plain_lines(html: str, width: int) -> list[str]:
    """Write HTML as plain text.

    Args:
        html: block elements as `own_words_html` makes them, with whole links.
        width: characters of a line at most; an address, a long word and a line of code are never broken.

    Returns:
        Lines, with an empty one between blocks.
    """
    writer = _Writer(width)
    writer.feed(html)
    writer.close()
    return writer.finished()


@dataclass(slots=True)
class _List:
    """A list that is open: the number of its next item, or None where it has dashes."""

    number: int | None


@dataclass(slots=True)
class _Table:
    rows: list[list[str]] = field(default_factory=list)
    has_head: bool = False


class _Writer(HTMLParser):
    def __init__(self, width: int) -> None:
        super().__init__(convert_charrefs=True)
        self._width = width
        self._lines: list[str] = []
        self._text = ""
        self._links: list[tuple[str, int]] = []
        self._lists: list[_List] = []
        self._indents: list[str] = []
        self._mark = ""  # of an item whose first line is still to come
        self._table: _Table | None = None
        self._is_code = False

    def finished(self) -> list[str]:
        self._flush()
        while self._lines and not self._lines[-1].strip():
            self._lines.pop()
        return self._lines

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in _BLOCKS:
            self._flush()
            self._begin_block(tag)
        elif tag == "a":
            self._links.append((dict(attrs).get("href") or "", len(self._text)))
        elif tag == "br":
            self._text += "\n"
        elif tag == "tr" and self._table is not None:
            self._table.rows.append([])
        elif tag == "th" and self._table is not None:
            self._table.has_head = True

    def _begin_block(self, tag: str) -> None:
        if tag == "li":
            self._begin_item(self._lists[-1] if self._lists else _List(number=None))
            return
        if tag not in ("ul", "ol") or not self._lists:
            self._part()
        match tag:
            case "ul" | "ol":
                self._lists.append(_List(number=1 if tag == "ol" else None))
            case "blockquote":
                self._indents.append("> ")
            case "pre":
                self._is_code = True
            case "hr":
                self._put(_RULE)
            case "table":
                self._table = _Table()
            case _:
                pass

    def handle_endtag(self, tag: str) -> None:
        match tag:
            case "a" if self._links:
                self._end_link(*self._links.pop())
            case "td" | "th" if self._table is not None and self._table.rows:
                self._table.rows[-1].append(" ".join(self._text.split()))
                self._text = ""
            case "table" if self._table is not None:
                table, self._table = self._table, None
                for line in _laid_out(table, self._width - sum(map(len, self._indents))):
                    self._put(line)
            case _:
                if tag in _BLOCKS:
                    self._end_block(tag)

    def handle_data(self, data: str) -> None:
        self._text += data if self._is_code else data.replace("\n", " ")

    def _begin_item(self, inside: _List) -> None:
        self._mark = "- " if inside.number is None else f"{inside.number}. "
        if inside.number is not None:
            inside.number += 1
        self._indents.append(" " * len(self._mark))

    def _end_block(self, tag: str) -> None:
        self._flush()
        match tag:
            case "li" | "blockquote" if self._indents:
                self._mark = ""
                self._indents.pop()
            case "ul" | "ol" if self._lists:
                self._lists.pop()
            case "pre":
                self._is_code = False
            case _:
                pass

    def _end_link(self, address: str, begin: int) -> None:
        """The address after the words, unless they are the address."""
        shown = address.removeprefix("mailto:").removeprefix("tel:")
        said = self._text[begin:].strip()
        if shown and said not in (shown, address):
            self._text += f" ({shown})" if said else shown

    def _part(self) -> None:
        """An empty line before a block, but never two."""
        if self._lines and self._lines[-1].strip("> "):
            self._lines.append("".join(self._indents).rstrip() if "> " in self._indents else "")

    def _flush(self) -> None:
        text, self._text = self._text, ""
        if self._is_code:
            for line in text.rstrip("\n").split("\n") if text.strip() else ():
                self._put(line)
            return
        inner = self._width - sum(map(len, self._indents))
        for part in text.split("\n"):
            for line in textwrap.wrap(part.strip(), max(inner, 20), break_long_words=False, break_on_hyphens=False):
                self._put(line)

    def _put(self, line: str) -> None:
        indents = self._indents
        if self._mark:
            indents, self._mark = [*indents[:-1], self._mark], ""
        self._lines.append(("".join(indents) + line).rstrip())


def _laid_out(table: _Table, width: int) -> list[str]:
    """In columns where they fit, else row by row, each cell under its heading's name."""
    rows = [row for row in table.rows if row]
    widths = [
        max(len(row[place]) for row in rows if place < len(row)) for place in range(max(map(len, rows), default=0))
    ]
    if sum(widths) + len(_GAP) * (len(widths) - 1) <= width:
        return [_GAP.join(cell.ljust(wide) for cell, wide in zip(row, widths, strict=False)).rstrip() for row in rows]
    head = rows.pop(0) if table.has_head else [""] * len(widths)
    lines: list[str] = []
    for row in rows:
        lines += [""] if lines else []
        for name, cell in zip(head, row, strict=False):
            said = f"{name}: {cell}" if name else cell
            lines += textwrap.wrap(said, width, subsequent_indent=_GAP, break_long_words=False, break_on_hyphens=False)
    return lines
