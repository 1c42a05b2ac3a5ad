"""The whole site: every check, and where something is wrong, one error with all of it."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Final

from swardcast.errors import SwardcastError
from swardcast.verifying.built_site import BuiltSite, Fault
from swardcast.verifying.calendar import calendar_faults
from swardcast.verifying.feeds import feed_faults
from swardcast.verifying.links import dead_links_of_own_words, link_faults
from swardcast.verifying.notices import notice_faults
from swardcast.verifying.status import status_faults

__all__ = ["faults_of", "refuse_faults"]

_MOST_TOLD: Final = 20
"""Faults told one by one; one template can have the same on every page: judgement."""


def faults_of(site: BuiltSite) -> tuple[Fault, ...]:
    """Find everything that is wrong with a built site.

    Args:
        site: the site.

    Returns:
        The faults: of links, feeds, calendar, status file and notices.
    """
    empty = [Fault(file=name, says="is empty") for name in site.judged if not site.files[name]]
    checks = (link_faults, feed_faults, calendar_faults, status_faults, notice_faults)
    return (*empty, *(fault for check in checks for fault in check(site)))


def refuse_faults(files: Mapping[str, bytes], brought: Collection[str] = ()) -> tuple[Fault, ...]:
    """Refuse a built site that does not hold together.

    Args:
        files: the bytes of each file by its place in the site, with forward slashes.
        brought: those that the club brings as they are.

    Returns:
        What is wrong with typed words, which holds no site back: links that lead nowhere.

    Raises:
        SwardcastError: when anything else is wrong with it.
    """
    site = BuiltSite(files, brought)
    faults = faults_of(site)
    if not faults:
        return tuple(dead_links_of_own_words(site))
    lines = [f"  {fault}" for fault in faults[:_MOST_TOLD]]
    if len(faults) > _MOST_TOLD:
        lines.append(f"  and {len(faults) - _MOST_TOLD} more")
    message = "\n".join(
        ["The site was built, but does not hold together; nothing was published, the last good site stays.", *lines]
    )
    raise SwardcastError(message)
