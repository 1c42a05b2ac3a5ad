"""The code of a job's short address: made of its id alone, so that no other job can ever change it."""

from __future__ import annotations

from hashlib import sha256
from typing import Final

__all__ = ["ALPHABET", "CODE_LENGTH", "code_of"]

ALPHABET: Final = "23456789bcdfghjkmnpqrtvwxy"
"""Without 0, 1, l, o, s and z, which look like others, and without vowels, so that no code spells a word: the second
as in RFC 8628, section 6.1 (codes that people type); the first is judgement."""

CODE_LENGTH: Final = 5
"""Characters of a code: 26 ** 5 is 12 million, so that of 1,000 jobs two meet about once in 25 clubs. Two of one plan
are an error, before the second is ever announced."""


def code_of(job: str) -> str:
    """Give the code of a job.

    Args:
        job: its id.

    Returns:
        Five characters, such as "7bkm3", that depend on nothing but the id.
    """
    number = int.from_bytes(sha256(job.encode("utf-8")).digest(), "big")
    letters = []
    for _ in range(CODE_LENGTH):
        number, place = divmod(number, len(ALPHABET))
        letters.append(ALPHABET[place])
    return "".join(letters)
