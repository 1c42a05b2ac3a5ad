"""`python -m tests.pictures SITE FOLDER`: each kind of page as it looks on three screens, in both themes and on paper."""

from __future__ import annotations

import os
import re
import shutil
import sys
from pathlib import Path
from typing import Final

from playwright.sync_api import Browser, Page, sync_playwright

from swardcast.cli.build_pdf import BROWSERS
from tests.browser.hosting import Host, hosted
from tests.browser.survey import one_of_each_kind, stay

WIDTHS_PX: Final = (360, 768, 1280)
PAPER_PX: Final = 688
"""A4 without its margins of 14 mm, at 96 px to the inch."""


def _photograph(page: Page, host: Host, look: str, folder: Path) -> int:
    stay(page, host)
    names = one_of_each_kind(host.site).values()
    for name in names:
        page.goto(host.page(name))
        of = re.sub(r"[^a-z0-9]+", "-", name.removesuffix(".html").lower())
        page.screenshot(path=folder / f"{of}-{look}.png", full_page=True)
    return len(names)


def _looks(browser: Browser, host: Host, folder: Path) -> int:
    number = 0
    for theme in ("light", "dark"):
        for width in WIDTHS_PX:
            size = {"width": width, "height": 900}
            page = browser.new_page(viewport=size, color_scheme=theme, service_workers="block")  # type: ignore[arg-type]
            number += _photograph(page, host, f"{width}-{theme}", folder)
            page.close()
    page = browser.new_page(viewport={"width": PAPER_PX, "height": 1000}, service_workers="block")
    page.emulate_media(media="print")
    number += _photograph(page, host, "print", folder)
    page.close()
    return number


def main(site: Path, folder: Path) -> int:
    """Write the pictures.

    Args:
        site: a folder with a built site.
        folder: where they go; made when it is not there.

    Returns:
        The number of an exit: 1 where there is no browser.
    """
    path = next(filter(None, map(shutil.which, BROWSERS)), None)
    if path is None:
        print(f"no browser was found on the PATH (looked for {', '.join(BROWSERS)})", file=sys.stderr)
        return 1
    folder.mkdir(parents=True, exist_ok=True)
    root = hasattr(os, "geteuid") and os.geteuid() == 0
    with sync_playwright() as playwright, hosted(site) as host:
        browser = playwright.chromium.launch(executable_path=path, args=["--no-sandbox"] if root else [])
        number = _looks(browser, host, folder)
        browser.close()
    print(f"{number} pictures are in {folder}.")
    return 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), Path(sys.argv[2])))
