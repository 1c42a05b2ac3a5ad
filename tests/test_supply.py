"""What is installed: locked with hashes, complete, and under licences that were weighed."""

from __future__ import annotations

import re
import subprocess
from importlib.metadata import PackageNotFoundError, distribution
from itertools import product
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from tests.conftest import ROOT
from tests.licences import BY_NAME, PERMISSIVE, licences_of, needed
from tests.locked import BUILD, PACKAGES, Locked, locked, project

MACHINES = [
    {"python_version": python, "python_full_version": f"{python}.0", "extra": "", **system}
    for python, system in product(
        ("3.11", "3.12", "3.13", "3.14"),
        (
            {"sys_platform": "linux", "platform_system": "Linux", "os_name": "posix"},
            {"sys_platform": "darwin", "platform_system": "Darwin", "os_name": "posix"},
            {"sys_platform": "win32", "platform_system": "Windows", "os_name": "nt"},
        ),
    )
]
"""Names of an environment as packages ask for them (PyPA, Dependency specifiers, "Environment Markers")."""


def _satisfies(wanted: Requirement, lines: list[Locked], machine: dict[str, str] | None = None) -> bool:
    """Whether one line, and no other, is for this machine, and has a version that is allowed."""
    name = canonicalize_name(wanted.name)
    here = [
        one
        for one in lines
        if canonicalize_name(one.requirement.name) == name
        and (one.requirement.marker is None or one.requirement.marker.evaluate(machine))
    ]
    return len(here) == 1 and wanted.specifier.contains(here[0].version)


@pytest.mark.parametrize("path", [BUILD, PACKAGES], ids=lambda path: path.name)
def test_every_line_is_a_package_in_one_version_with_hashes(path: Path) -> None:
    lines = locked(path)
    assert len(lines) > 5
    for one in lines:
        assert one.requirement.url is None
        assert re.fullmatch(rf"=={re.escape(one.version)}", str(one.requirement.specifier))
        assert one.hashes, one.requirement.name
        assert all(re.fullmatch(r"sha256:[0-9a-f]{64}", one) for one in one.hashes)


@pytest.mark.parametrize("path", [BUILD, PACKAGES], ids=lambda path: path.name)
def test_no_line_says_where_packages_come_from(path: Path) -> None:
    text = path.read_text(encoding="utf-8").replace("-c .locked/build.txt", "")  # a remark of ours
    assert "/" not in text  # neither an address nor a path


def test_all_that_the_project_asks_for_is_locked_in_a_version_that_it_allows() -> None:
    told = project()["project"]
    extras = told["optional-dependencies"]
    asked = {*told["dependencies"], *extras["fleet"], *extras["test"]} - {"swardcast[fleet]"}
    for line in sorted(asked):
        for machine in MACHINES:
            assert _satisfies(Requirement(line), locked(PACKAGES), machine), f"{line} on {machine}: make lock"


def test_what_builds_it_is_locked_in_a_version_that_it_allows() -> None:
    for line in (*project()["build-system"]["requires"], *project()["dependency-groups"]["build"]):
        assert all(_satisfies(Requirement(line), locked(BUILD), machine) for machine in MACHINES), line


def test_a_locked_package_needs_nothing_that_is_not_locked() -> None:
    lines = locked(PACKAGES)
    looked_at = 0
    for one in lines:
        try:
            installed = distribution(one.requirement.name)
        except PackageNotFoundError:  # for another system
            continue
        if installed.version != one.version:  # an environment of other versions, as `make versions` makes them
            continue
        looked_at += 1
        for line in installed.requires or ():
            wanted = Requirement(line)
            if wanted.marker is None or wanted.marker.evaluate({"extra": ""}):
                assert _satisfies(wanted, lines), f"{one.requirement.name} needs {line}"
    assert looked_at


def test_both_files_have_the_same_versions() -> None:
    packages = {(one.requirement.name, str(one.requirement.marker)): one for one in locked(PACKAGES)}
    for one in locked(BUILD):
        assert packages.get((one.requirement.name, str(one.requirement.marker)), one) == one


def test_nothing_is_installed_but_by_its_hash_and_the_checkout() -> None:
    make = ["make", "--dry-run", "--always-make", ".venv/.ready"]
    told = subprocess.run(make, cwd=ROOT, capture_output=True, text=True, check=True).stdout
    installs = [line.partition(" install ")[2] for line in told.splitlines() if " install " in line]
    assert installs == [
        "--no-deps --require-hashes --requirement .locked/build.txt",
        "--no-deps --require-hashes --no-build-isolation --requirement .locked/packages.txt",
        "--no-deps --no-build-isolation --editable .",
    ]


def test_every_licence_was_weighed() -> None:
    for name, package in needed().items():
        found = licences_of(package)
        assert found <= PERMISSIVE or found == BY_NAME.get(name), f"{name}: {', '.join(sorted(found))}"


def test_the_developers_read_of_every_licence_that_asks_for_more() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    _, _, after = text.partition("| package | licence | why it may be used |")
    table, _, _ = after.partition("\n\n")
    rows = dict(re.findall(r"^\| ([a-z0-9-]+) \| ([^|]+) \|", table, re.MULTILINE))
    assert {name: frozenset(re.split(r" (?:and|or) ", told)) for name, told in rows.items()} == BY_NAME
