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

from tests.conftest import ROOT

VERSION: Final = "26.9.27"
PLACE: Final = ROOT / "build/nu-checker"
JAR: Final = PLACE / "node_modules/vnu-jar/build/dist/vnu.jar"
PRESENTATIONAL: Final = re.compile(
    "The “(width|border|cellpadding|cellspacing|bgcolor|align)” attribute on the .* is obsolete"
)
"""Mail programs want these, so pages of e-mails may have them."""


def is_meant(message: dict[str, Any]) -> bool:
    """Whether a page of an e-mail says it the way in which mail programs want it."""
    return str(message.get("url", "")).endswith("/email.html") and bool(PRESENTATIONAL.match(message["message"]))


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
    pages = sorted(site.rglob("*.html"))
    asked = ["java", "-Xss4m", "-jar", str(JAR), "--format", "json", "--stdout", "--exit-zero-always", *map(str, pages)]
    done = subprocess.run(asked, check=True, capture_output=True, text=True)
    messages = json.loads(done.stdout)["messages"]
    faults = [message for message in messages if not is_meant(message)]
    for fault in faults:
        print(f"{fault.get('url', '')}, line {fault.get('lastLine', '?')}: {fault['message']}")
    print(f"The Nu checker read {len(pages)} pages and found {len(faults)} faults.")
    return 1 if faults or not pages else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
