"""`python -m tests.axe_everywhere SITE`: axe-core over every page of a built site, in both themes, narrow and wide.

The tests look with all four at the largest page of each kind; this is the whole of it, for CI and before a release. Without
a browser it says what it left out, and is no failure unless SWARDCAST_BROWSER is "required".
"""

from __future__ import annotations

import json
import os
import shutil
import sys
from concurrent.futures import ProcessPoolExecutor
from datetime import datetime
from pathlib import Path
from time import monotonic

from playwright.sync_api import sync_playwright

from swardcast.cli.build_pdf import BROWSERS
from tests.browser.hosting import hosted
from tests.browser.survey import EYES, Seen, pages_of, surveyor

Told = dict[str, Seen]


def seen_of(site: Path, names: list[str], browser_path: str) -> Told:
    """Look at some pages, in a browser of their own."""
    at = datetime.fromisoformat(json.loads((site / "status.json").read_text(encoding="utf-8"))["as_of"])
    root = hasattr(os, "geteuid") and os.geteuid() == 0
    with sync_playwright() as playwright, hosted(site) as host:
        browser = playwright.chromium.launch(executable_path=browser_path, args=["--no-sandbox"] if root else [])
        look = surveyor(browser.new_page(service_workers="block"), host, at)
        seen = {name: look(name, EYES) for name in names}
        browser.close()
    return seen


def main(site: Path) -> int:
    """Look at a site.

    Args:
        site: its folder.

    Returns:
        The number of an exit: 1 where a page has a violation.
    """
    path = next(filter(None, map(shutil.which, BROWSERS)), None)
    if path is None:
        print("Left out, for want of a browser: axe over every page.")
        return int(os.environ.get("SWARDCAST_BROWSER") == "required")
    began, names, workers = monotonic(), pages_of(site), os.cpu_count() or 1
    with ProcessPoolExecutor(workers) as pool:
        parts = [pool.submit(seen_of, site, names[start::workers], path) for start in range(workers)]
        seen = {name: one for part in parts for name, one in part.result().items()}
    faults = [
        f"{name}, {eyes.width_px} px, {'dark' if eyes.dark else 'light'}: {fault}"
        for name in names
        for eyes, found in seen[name].violations.items()
        for fault in found
    ]
    print(
        "\n".join([*faults, f"axe read {len(names)} pages in {monotonic() - began:.0f} s: {len(faults)} violations."])
    )
    return 1 if faults or not names else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
