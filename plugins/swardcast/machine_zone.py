"""The time zone that the environment names for this machine; no date of a site hangs on it."""

from __future__ import annotations

import os
from pathlib import Path

__all__ = ["pass_over_false_zone"]


def pass_over_false_zone() -> None:
    """Take TZ out of the environment where it names a file that describes no time zone.

    A club has a zone of its own. Babel asks for the machine's when it is imported, though, and fails at such a file,
    while it passes over a name that is no zone.
    """
    named = os.environ.get("TZ", "").removeprefix(":")
    if not named:
        return
    from zoneinfo import ZoneInfo  # noqa: PLC0415 - few machines name a zone

    try:
        with Path(named).open("rb") as file:
            ZoneInfo.from_file(file)
    except FileNotFoundError:
        return  # the name of a zone, or of nothing
    except Exception:  # noqa: BLE001 - whatever Python raises at a file that is anything
        del os.environ["TZ"]
