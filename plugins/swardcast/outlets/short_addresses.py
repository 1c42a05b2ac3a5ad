"""Short addresses of notices, `/n/<code>/`: easy to type from a poster, short enough for a message, the same for life.

A code is made of the job's id alone (`records/short_codes.py`): no title, date or other job changes it. Two jobs of a
plan with the same code are an error that `reading/short_codes.py` reports. Every outlet that names a short address asks
here.
"""

from __future__ import annotations

from swardcast.compose import Bulletin
from swardcast.records.club import Club
from swardcast.records.short_codes import code_of

__all__ = ["short_address", "short_addresses", "short_codes", "short_path"]


def short_path(code: str) -> str:
    """Tell where a short address lies inside the site.

    Args:
        code: the code.

    Returns:
        A path such as "n/7bkm3/".
    """
    return f"n/{code}/"


def short_address(notice_id: str, club: Club) -> str:
    """Give the short address of one notice.

    Args:
        notice_id: its id.
        club: the club.

    Returns:
        The whole address, in ASCII.
    """
    return f"{club.site}/{short_path(code_of(notice_id))}"


def short_addresses(bulletin: Bulletin) -> dict[str, str]:
    """Give the short address of each notice, withdrawn ones too.

    Args:
        bulletin: the bulletin.

    Returns:
        Whole addresses by the notice's id, in ASCII.
    """
    return {name: short_address(name, bulletin.club) for name in _ids(bulletin)}


def short_codes(bulletin: Bulletin) -> dict[str, str]:
    """Give the code of each notice, withdrawn ones too.

    Args:
        bulletin: the bulletin.

    Returns:
        Codes by the notice's id.
    """
    return {name: code_of(name) for name in _ids(bulletin)}


def _ids(bulletin: Bulletin) -> tuple[str, ...]:
    return (*bulletin.outlook.jobs, *(notice.id for notice in bulletin.withdrawn))
