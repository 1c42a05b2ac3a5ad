"""Short addresses of notices, `/n/<code>/`: easy to type from a poster, short enough for a message, the same for life.

A code is made of the job's id alone (`records/short_codes.py`): no title, date or other job changes it. Two jobs of a
plan with the same code are an error that `reading/short_codes.py` reports. Every outlet that names a short address asks
here.
"""

from __future__ import annotations

from urllib.parse import quote

from swardcast.compose import Bulletin
from swardcast.records.club import Club
from swardcast.records.short_codes import code_of

__all__ = ["short_addresses", "short_codes", "short_path", "site_address"]


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
    """Give the short address of each notice, withdrawn ones too.

    Args:
        bulletin: the bulletin.

    Returns:
        Whole addresses by the notice's id, in ASCII.
    """
    site = site_address(bulletin.club)
    return {name: f"{site}/{short_path(code)}" for name, code in short_codes(bulletin).items()}


def short_codes(bulletin: Bulletin) -> dict[str, str]:
    """Give the code of each notice, withdrawn ones too.

    Args:
        bulletin: the bulletin.

    Returns:
        Codes by the notice's id.
    """
    return {name: code_of(name) for name in (*bulletin.outlook.jobs, *(notice.id for notice in bulletin.withdrawn))}
