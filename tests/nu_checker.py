"""`python -m tests.nu_checker SITE`: the Nu HTML checker (W3C, vnu-jar) over every page of a built site.

It needs npm and java. Where one is missing it says what it left out, and is no failure.
"""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any, Final
from urllib.parse import urlsplit

from tests.browser.hosting import hosted
from tests.conftest import ROOT

VERSION: Final = "26.9.27"
PLACE: Final = ROOT / "build/nu-checker"
JAR: Final = PLACE / "node_modules/vnu-jar/build/dist/vnu.jar"
PRESENTATIONAL: Final = re.compile(
    "The “(width|border|cellpadding|cellspacing|bgcolor|align)” attribute on the .* is obsolete"
)
"""Mail programs want these, so pages of e-mails may have them."""
INLINE_SCRIPT: Final = "Inline script violates Content Security Policy"


def is_meant(message: dict[str, Any], site: Path) -> bool:
    """Whether a page of an e-mail says it the way in which mail programs want it, or a data block counts as a script.

    A script element with data is never run, and no policy is asked for it (HTML Standard, "prepare the script element").
    """
    page = urlsplit(str(message.get("url", ""))).path
    if page.endswith("/email.html"):
        return bool(PRESENTATIONAL.match(message["message"]))
    if not message["message"].startswith(INLINE_SCRIPT):
        return False
    lines = (site / page.lstrip("/")).read_text(encoding="utf-8").splitlines()
    return '<script type="application/ld+json">' in lines[message["lastLine"] - 1]


def main(site: Path) -> int:
    """Check a site.

    Args:
        site: its folder.

    Returns:
        The number of an exit: 1 where a page has a fault.
    """
    missing = [name for name in ("npm", "java") if shutil.which(name) is None]
    if missing:
        print(f"Left out, for want of {' and '.join(missing)}: the Nu checker over the HTML of every page.")
        return 0
    if not JAR.is_file():
        PLACE.mkdir(parents=True, exist_ok=True)
        # Its own script after the installation would fetch a Java from elsewhere.
        options = ("--ignore-scripts", "--no-audit", "--no-fund", "--silent", "--prefix", str(PLACE))
        installed = subprocess.run(["npm", "install", *options, f"vnu-jar@{VERSION}"], check=False)
        if installed.returncode or not JAR.is_file():
            print(f"Left out, since npm did not bring vnu-jar {VERSION}: the Nu checker over the HTML of every page.")
            return 0
    pages = sorted(page.relative_to(site).as_posix() for page in site.rglob("*.html"))
    with hosted(site) as host:  # read from a disk, its own style sheets would count as those of another place
        addresses = [host.page(page) for page in pages]
        java = ["java", "-Xss4m", "-Dnu.validator.servlet.allow-forbidden-hosts=true", "-jar", str(JAR)]
        asked = [*java, "--format", "json", "--stdout", "--exit-zero-always", *addresses]
        done = subprocess.run(asked, check=True, capture_output=True, text=True)
    messages = json.loads(done.stdout)["messages"]
    faults = [message for message in messages if not is_meant(message, site)]
    for fault in faults:
        print(f"{fault.get('url', '')}, line {fault.get('lastLine', '?')}: {fault['message']}")
    print(f"The Nu checker read {len(pages)} pages and found {len(faults)} faults.")
    return 1 if faults or not pages else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
