"""Short addresses of notices, `/n/<code>/`: easy to type from a poster, short enough for a message, the same for life.

A code is made of the job's id alone, so a new title or a moved date leaves it as it is. Of two jobs whose codes would
be the same, the one announced first keeps the short code and the other's is longer, so that a new job never takes an
address over. Every outlet that names a short address asks here.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from hashlib import sha256
from typing import Final
from urllib.parse import quote

from swardcast.compose import Bulletin
from swardcast.records.club import Club

__all__ = ["ALPHABET", "CODE_LENGTH", "codes_of", "short_addresses", "short_codes", "short_path", "site_address"]

ALPHABET: Final = "23456789bcdfghjkmnpqrtvwxy"
"""Without 0, 1, l, o, s and z, which look like others, and without vowels, so that no code spells a word: the second
as in RFC 8628, section 6.1 (codes that people type); the first is judgement."""

CODE_LENGTH: Final = 5
"""Characters of a code: 26 ** 5 is 12 million, so that of 1,000 jobs two meet about once in 25 clubs."""


def codes_of(announced: Mapping[str, date]) -> dict[str, str]:
    """Give each job its code.

    Args:
        announced: the day on which each job was announced, by its id.

    Returns:
        Codes by id, all different; a job announced later changes no code of the earlier ones.
    """
    codes: dict[str, str] = {}
    taken: set[str] = set()
    for name in sorted(announced, key=lambda name: (announced[name], name)):
        letters = _letters(name)
        length = CODE_LENGTH
        while letters[:length] in taken:
            length += 1
        codes[name] = letters[:length]
        taken.add(codes[name])
    return codes


def _letters(name: str) -> str:
    """A long row of letters that depends on nothing but the name; SHA-256 gives enough for 54 of them."""
    number = int.from_bytes(sha256(name.encode("utf-8")).digest(), "big")
    letters = []
    while number:
        number, place = divmod(number, len(ALPHABET))
        letters.append(ALPHABET[place])
    return "".join(letters)


def short_path(code: str) -> str:
    """Tell where a short address lies inside the site.

    Args:
        code: the code.

    Returns:
        A path such as "n/7bkm3/".
    """
    return f"n/{code}/"


def site_address(club: Club) -> str:
    """Give the address of the site as it is sent: what is not ASCII in its path is percent-encoded (RFC 3986).

    Args:
        club: the club.

    Returns:
        The address, ending without a slash.
    """
    return quote(club.site, safe=":/%")


def short_addresses(bulletin: Bulletin) -> dict[str, str]:
    """Give the short address of each notice.

    Args:
        bulletin: the bulletin.

    Returns:
        Whole addresses by the notice's id, in ASCII.
    """
    site = site_address(bulletin.club)
    return {name: f"{site}/{short_path(code)}" for name, code in short_codes(bulletin).items()}


def short_codes(bulletin: Bulletin) -> dict[str, str]:
    """Give the code of each notice.

    Args:
        bulletin: the bulletin.

    Returns:
        Codes by the notice's id.
    """
    return codes_of({name: job.job.announced for name, job in bulletin.outlook.jobs.items()})
