"""The live site as it tells of itself, held against the one that is to take its place."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from contextlib import suppress
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, Final
from zoneinfo import ZoneInfo

from swardcast.errors import SwardcastError

__all__ = ["of_another_club", "refuse_older", "status_of"]

_CLOCKS_DIFFER: Final = timedelta(days=1)
"""By how much clocks may differ that are set by hand, or for another time zone; judgement."""


def status_of(site: Path) -> Mapping[str, Any]:
    """Read what a site tells of itself to programs.

    Args:
        site: the folder of a site; there may be none.

    Returns:
        The fields of its status file; none where there is none that can be read.
    """
    with suppress(OSError, ValueError):
        told = json.loads((site / "status.json").read_text(encoding="utf-8"))
        if isinstance(told, dict):
            return told
    return {}


def refuse_older(output: Path, now: datetime) -> None:
    """Refuse to build by a clock that stands before the live site: nothing would be known of all news since.

    A small machine without a battery begins at a day long ago when it starts without a network.

    Args:
        output: where the live site is; there may be none.
        now: the present moment by this machine's clock, aware.

    Raises:
        SwardcastError: when the live site is of a later moment by more than a day.
    """
    told = status_of(output)
    try:
        live = datetime.fromisoformat(str(told.get("as_of", "")))
    except ValueError:
        return
    if live.tzinfo is not None and live - now > _CLOCKS_DIFFER:
        zone = _zone(told) or live.tzinfo
        here, there = now.astimezone(zone), live.astimezone(zone)
        whose = f", of {name}," if (name := _name(told)) else ""
        message = (
            f"the clock of this machine says {here:%Y-%m-%d %H:%M}, and the live site in {output}"
            f"{whose} is of {there:%Y-%m-%d %H:%M}. Nothing was published, the live site stays.\n"
            f"Set the clock right. Or, if the live site was built to look ahead, name the moment: --as-of"
            f" '{here:%Y-%m-%d %H:%M}'; if it is another club's, name another --output."
        )
        raise SwardcastError(message)


def of_another_club(output: Path, fresh: Path) -> Iterator[str]:
    """Point out that a new site takes the place of another club's: a wrong --output, perhaps.

    Args:
        output: where the live site is; there may be none.
        fresh: the new site.

    Yields:
        A remark where both the name of the club and the address of the site have changed.
    """
    live, new = status_of(output), status_of(fresh)
    were, are = ((_name(told), told.get("site")) for told in (live, new))
    if live and all(was != now for was, now in zip(were, are, strict=True)):
        yield (
            f"{output} was the site of {were[0]} ({were[1]}) and is that of {are[0]} ({are[1]}) now. If that is a"
            " mistake, the same command with --back brings it back."
        )


def _name(told: Mapping[str, Any]) -> object:
    club = told.get("club")
    return club.get("name") if isinstance(club, dict) else None


def _zone(told: Mapping[str, Any]) -> ZoneInfo | None:
    """That of the club: the offset of a moment in summer would tell an hour too much of one in winter."""
    with suppress(OSError, ValueError, KeyError, TypeError):  # there is none, or the name is that of no zone
        return ZoneInfo(told["club"]["time_zone"])
    return None
