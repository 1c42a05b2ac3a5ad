"""Swardcast turns a golf club's operations plan, live log and weather into a site members can trust.

Importing this package, or any formula in it, never loads Pelican; `register` does.
"""

from __future__ import annotations

from swardcast.version import __version__

__all__ = ["__version__", "register"]


def register() -> None:
    """Connect Swardcast to Pelican; Pelican calls this when `swardcast` is in PLUGINS.

    Raises:
        ImportError: when Pelican is not installed.
    """
    from swardcast.machine_zone import pass_over_false_zone  # noqa: PLC0415 - only Pelican needs it here

    pass_over_false_zone()
    from swardcast import pelican_plugin  # noqa: PLC0415 - importing the science must not load Pelican

    pelican_plugin.connect()
