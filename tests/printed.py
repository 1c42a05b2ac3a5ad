"""What stands on a printed sheet, whatever letters the machine has."""

from __future__ import annotations

import re
import unicodedata

import pypdf

__all__ = ["lines_of", "words_of"]

_JOINED = re.compile("[\ufb00-\ufb4f]")
"""Letters that a font joins into one sign, such as f and i: Alphabetic Presentation Forms (Unicode 16, 2024)."""


def lines_of(sheet: pypdf.PageObject) -> list[str]:
    """Its lines that are not empty, with joined letters parted."""
    said = _JOINED.sub(lambda one: unicodedata.normalize("NFKC", one[0]), sheet.extract_text())
    return [line.strip() for line in said.splitlines() if line.strip()]


def words_of(*sheets: pypdf.PageObject) -> str:
    """The words of one sheet after the other, with a single blank between them."""
    return " ".join(" ".join(line for sheet in sheets for line in lines_of(sheet)).split())
