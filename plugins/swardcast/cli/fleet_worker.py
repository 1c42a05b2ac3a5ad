"""What a worker on this machine does before its first club; Dask calls it by its name."""

from __future__ import annotations

import signal

__all__ = ["dask_setup"]


def dask_setup(_: object) -> None:
    """Leave Ctrl-C to the command, which ends its workers: a terminal sends it to all of its processes."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
