"""The wheel, installed into an empty environment outside the checkout, builds a site with its own theme."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from tests.conftest import ROOT
from tests.locked import as_constraints


def test_an_installed_wheel_works_outside_the_checkout(tmp_path: Path) -> None:
    wheels, home = tmp_path / "wheels", tmp_path / "home"
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(wheels), str(ROOT)]
    subprocess.run(build, check=True, capture_output=True)
    (wheel,) = wheels.glob("*.whl")
    subprocess.run([sys.executable, "-m", "venv", str(home)], check=True, capture_output=True)
    versions = tmp_path / "versions.txt"  # the wheel has no hash that is known before it is built
    versions.write_text(as_constraints(), encoding="utf-8")
    pip = [str(home / "bin" / "python"), "-m", "pip", "install", "--quiet", "--disable-pip-version-check"]
    subprocess.run([*pip, "--constraint", str(versions), str(wheel)], check=True, capture_output=True)
    swardcast = str(home / "bin" / "swardcast")
    work = tmp_path / "elsewhere"
    work.mkdir()
    subprocess.run([swardcast, "start", "club"], check=True, capture_output=True, cwd=work)
    subprocess.run(
        [swardcast, "build", "--club", "club", "--output", "site"], check=True, capture_output=True, cwd=work
    )
    page = (work / "site" / "index.html").read_text(encoding="utf-8")
    assert "swardcast.css" in page
    assert (work / "site" / "theme" / "css" / "swardcast.css").is_file()
