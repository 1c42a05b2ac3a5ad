"""Licences of what the program needs: `python -m tests.licences` lists them, test_supply.py judges them.

A package tells its licence as an SPDX expression (PEP 639), or by classifiers, or in a field of free words.
"""

from __future__ import annotations

import re
from importlib.metadata import Distribution, distribution
from typing import Final

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

__all__ = ["BY_NAME", "PERMISSIVE", "licences_of", "needed"]

PERMISSIVE: Final = frozenset(
    {
        "0BSD",
        "Apache-2.0",
        "BSD",  # the classifier does not tell which of them
        "BSD-2-Clause",
        "BSD-3-Clause",
        "CC0-1.0",
        "MIT",
        "MIT-CMU",
        "PSF-2.0",
        "Zlib",
    }
)
"""They ask for no more than to be named, so any program may use them."""

BY_NAME: Final = {
    "certifi": frozenset({"MPL-2.0"}),
    "docutils": frozenset({"BSD", "GPL", "public domain"}),
    "feedgen": frozenset({"BSD", "LGPL-3.0-or-later"}),
    "fontpkg-source-sans-3": frozenset({"OFL-1.1"}),
    "pelican": frozenset({"AGPL-3.0-or-later"}),
    "recurring-ical-events": frozenset({"LGPL-3.0-or-later"}),
    "unidecode": frozenset({"GPL-2.0-or-later"}),
    "x-wr-timezone": frozenset({"LGPL-3.0-or-later"}),
}
"""Packages with other licences, each one weighed: the reasons stand in DEVELOPERS.md."""

_CLASSIFIERS: Final = {
    "Apache Software License": "Apache-2.0",
    "BSD License": "BSD",
    "CMU License (MIT-CMU)": "MIT-CMU",
    "GNU Affero General Public License v3 or later (AGPLv3+)": "AGPL-3.0-or-later",
    "GNU General Public License (GPL)": "GPL",
    "GNU General Public License v2 or later (GPLv2+)": "GPL-2.0-or-later",
    "GNU Lesser General Public License v3 or later (LGPLv3+)": "LGPL-3.0-or-later",
    "MIT License": "MIT",
    "Mozilla Public License 2.0 (MPL 2.0)": "MPL-2.0",
    "Public Domain": "public domain",
}


def needed(name: str = "swardcast") -> dict[str, Distribution]:
    """Find what a package needs to run, and what that needs in turn, as it is installed here."""
    found: dict[str, Distribution] = {}
    waiting = [Requirement(name)]
    while waiting:
        wanted = waiting.pop()
        key = canonicalize_name(wanted.name)
        if key in found:
            continue
        found[key] = distribution(wanted.name)
        for line in found[key].requires or ():
            one = Requirement(line)
            if one.marker is None or any(one.marker.evaluate({"extra": extra}) for extra in ("", *wanted.extras)):
                waiting.append(one)
    del found[canonicalize_name(name)]
    return dict(sorted(found.items()))


def licences_of(package: Distribution) -> frozenset[str]:
    """Tell by which licences a package may be used; where they are told as words nobody knows, those words."""
    told = package.metadata
    if "License-Expression" in told:
        return frozenset(re.split(r" (?:AND|OR) ", re.sub(r"[()]", "", told["License-Expression"])))
    prefix = "License :: "
    classifiers = [line.rpartition(" :: ")[2] for line in told.get_all("Classifier") or () if line.startswith(prefix)]
    if classifiers:
        return frozenset(_CLASSIFIERS.get(one, one) for one in classifiers)
    return frozenset(told.get_all("License") or ("told nowhere",))


if __name__ == "__main__":
    for name, package in needed().items():
        print(f"{name:30} {package.version:18} {', '.join(sorted(licences_of(package)))}")
