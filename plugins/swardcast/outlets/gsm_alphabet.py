"""The alphabet of short messages, how much room a text takes in it, and how other text is written with it.

Source: 3GPP TS 23.038, "Alphabets and language-specific information": section 6.2.1 (default alphabet) and 6.2.1.1
(its extension table, each character of which takes two septets).

Rules for what is not in it, in this order:

1. Blanks of every kind become one blank; what only steers the text (controls, direction marks, joiners) falls away.
2. Typographic signs become the plain ones: quotation marks, dashes, dots, "×" x, "≤" <=, fractions "2 1/2".
3. A letter with a mark that the alphabet lacks loses the mark (NFKD of Unicode Standard Annex 15); a few letters
   without such a form become their usual stand-ins (ł l, œ oe, þ th); Greek is written in capitals.
4. Pictures and other signs are left out.
5. A word with a letter, digit, currency or sign of arithmetic that is still not in the alphabet is left out as a whole:
   half a word would say something else.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from typing import Final

__all__ = ["BASIC", "EXTENSION", "MOST_SEPTETS", "GsmText", "gsm_text", "septets"]

MOST_SEPTETS: Final = 160
"""Septets of one short message: 140 octets of user data (3GPP TS 23.040, section 9.2.3.16)."""

BASIC: Final = frozenset(
    "@£$¥èéùìòÇØøÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?"
    "¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà"
)
"""The default alphabet without line feed, carriage return and escape, which no message of ours has."""

EXTENSION: Final = frozenset("^{}\\[~]|€")
"""The extension table without form feed."""

_SIGNS: Final = str.maketrans(
    {
        **dict.fromkeys("“”„‟«»″", '"'),
        **dict.fromkeys("‘’‚‛‹›′`´", "'"),
        **dict.fromkeys("‐‑‒–—―−⁃", "-"),
        **dict.fromkeys("•·", "-"),
        "…": "...",
        "×": "x",
        "÷": "/",
        "⁄": "/",
        "±": "+/-",
        "≤": "<=",
        "≥": ">=",
        "≈": "~",
    }
)
_STAND_INS: Final = (
    "ł l, Ł L, đ d, Đ D, ð d, Ð D, ħ h, Ħ H, ı i, ŧ t, Ŧ T, ŋ ng, Ŋ NG, œ oe, Œ OE, þ th, Þ Th, ẞ SS, ĸ k, "
    "Α A, Β B, Ε E, Ζ Z, Η H, Ι I, Κ K, Μ M, Ν N, Ο O, Ρ P, Τ T, Υ Y, Χ X"  # the last fourteen are Greek
)
_LETTERS: Final = str.maketrans(dict(pair.split() for pair in _STAND_INS.split(", ")))
_FRACTION_AFTER_A_DIGIT: Final = re.compile(r"(?<=\d)(?=[¼½¾⅐-⅞])")
_STEERING: Final = {"Cc", "Cf", "Co", "Cs", "Cn"}
_NEVER_LEFT_OUT: Final = {"‰", "‱"}
_LEFT_OUT: Final = {"Mn", "Mc", "Me", "So", "Sk", "Pc", "Pd", "Ps", "Pe", "Pi", "Pf", "Po"}


@dataclass(frozen=True, slots=True, kw_only=True)
class GsmText:
    """A text in the alphabet of short messages.

    Args:
        text: the text, of characters of `BASIC` and `EXTENSION` only.
        is_whole: whether no word of it was left out; pictures may have been.
    """

    text: str
    is_whole: bool


def septets(text: str) -> int:
    """Count the room that a text takes.

    Args:
        text: characters of `BASIC` and `EXTENSION` only.

    Returns:
        Septets.
    """
    return len(text) + sum(character in EXTENSION for character in text)


def gsm_text(text: str) -> GsmText:
    """Write a text with the alphabet of short messages, by the rules of this module.

    Args:
        text: any text.

    Returns:
        What can be written, with single blanks between words.
    """
    parted = _FRACTION_AFTER_A_DIGIT.sub(" ", unicodedata.normalize("NFC", text))
    words = [_word(word) for word in parted.split()]
    return GsmText(text=" ".join(word for word in words if word), is_whole=None not in words)


def _word(word: str) -> str | None:
    """A word in the alphabet, "" where it was all pictures, None where it cannot be written."""
    written = [_character(character) for character in word]
    return None if None in written else "".join(one for one in written if one is not None)


def _character(character: str) -> str | None:
    """A character in the alphabet, "" where it is left out, None where its word cannot be written without it."""
    if _is_written(character):
        return character
    # A mark that stands alone is a blank with the mark on it, in Unicode's decomposition.
    plain = "".join(_plain(part) for part in unicodedata.normalize("NFKD", character.translate(_SIGNS))).replace(
        " ", ""
    )
    if all(_is_written(part) or _may_go(part) for part in plain):
        return "".join(part for part in plain if _is_written(part))
    return None


def _may_go(character: str) -> bool:
    return unicodedata.category(character) in _STEERING | _LEFT_OUT and character not in _NEVER_LEFT_OUT


def _plain(character: str) -> str:
    if unicodedata.name(character, "").startswith("GREEK"):
        character = character.upper()
    return character.translate(_SIGNS).translate(_LETTERS)


def _is_written(character: str) -> bool:
    return character in BASIC or character in EXTENSION
