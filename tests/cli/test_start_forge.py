"""The files by which forges make the site: as their published schemas say, and each step tried in its order."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import tarfile
from collections.abc import Callable, Iterable
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest
import yaml

from swardcast import kept_file
from swardcast.cli.start_forge import FORGES
from swardcast.version import __version__
from tests.cli.conftest import Done
from tests.conftest import ROOT
from tests.outlook.small_club import SmallClub

Command = Callable[..., Done]
SCHEMAS = {"github": ("vendor.github-workflows",), "gitlab": ("vendor.gitlab-ci", "--data-transform", "gitlab-ci")}
INSTALL = f"-m pip install swardcast=={__version__}"
COMMANDS = f"""#!/bin/sh
if [ "$1" = weather ]; then
  mkdir -p club/weather/forecast
  exec cp "$FORECAST" club/weather/forecast/2026-11-26-0517.csv
fi
exec {sys.executable} -m swardcast.cli "$@"
"""
"""In the place of an installed command; without internet, the weather comes from a file."""


@pytest.fixture
def club(tmp_path: Path) -> Path:
    club = SmallClub(tmp_path / "club")
    club.job("cores", "09-20")
    return club.folder


def _workflow(swardcast: Command, club: Path, forge: str) -> Any:
    assert swardcast("start", str(club), "--forge", forge).code == 0
    return yaml.safe_load((club / FORGES[forge]).read_text(encoding="utf-8"))


def _by_the_schema(file: Path, forge: str) -> bool:
    schema, *more = SCHEMAS[forge]
    command = [sys.executable, "-m", "check_jsonschema", "--builtin-schema", schema, *more, str(file)]
    return subprocess.run(command, capture_output=True, check=False).returncode == 0


@pytest.mark.parametrize(
    ("forge", "right", "wrong"), [("github", "runs-on:", "run-on:"), ("gitlab", "script:", "scripts:")]
)
def test_each_file_is_what_its_forge_takes(
    swardcast: Command, tmp_path: Path, forge: str, right: str, wrong: str
) -> None:
    folder = tmp_path / "my-club"
    done = swardcast("start", str(folder), "--forge", forge)
    assert (done.code, done.out) == (0, f"{folder}\n")
    file = folder / FORGES[forge]
    assert _by_the_schema(file, forge)
    file.write_text(file.read_text(encoding="utf-8").replace(right, wrong), encoding="utf-8")
    assert not _by_the_schema(file, forge)


def test_a_club_that_is_there_gets_the_file_alone_and_once(swardcast: Command, club: Path) -> None:
    before = {path: path.read_bytes() for path in club.rglob("*") if path.is_file()}
    done = swardcast("start", str(club), "--forge", "github", "--json")
    place = club / ".github/workflows/course-notices.yml"
    assert json.loads(done.out) == {"club": str(club), "workflow": str(place)}
    assert done.err == f"Added {place}, and nothing else. Read its remarks before you push it.\n"
    assert {path for path in club.rglob("*") if path.is_file()} == {*before, place}
    done = swardcast("start", str(club), "--forge", "github")
    assert done == Done(1, "", f"{place} is there already; delete it first if it is to be made anew\n")
    assert all(path.read_bytes() == data for path, data in before.items())
    assert swardcast("check", "--club", str(club)).code == 0


@pytest.mark.parametrize(
    ("zone", "cron"),
    [("Europe/London", "17 5 * * *"), ("America/New_York", "17 10 * * *"), ("Asia/Kolkata", "47 23 * * *")],
)  # in January UTC, UTC-5 and UTC+5:30
def test_the_morning_is_that_of_the_club(swardcast: Command, club: Path, zone: str, cron: str) -> None:
    file = club / "club.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("Europe/London", zone), encoding="utf-8")
    workflow = _workflow(swardcast, club, "github")
    assert workflow[True]["schedule"] == [{"cron": cron}]  # `on` is a truth value of YAML 1.1
    assert "push" in workflow[True]
    _workflow(swardcast, club, "gitlab")
    assert f"# 17 5 * * *, in the time zone {zone}." in (club / ".gitlab-ci.yml").read_text(encoding="utf-8")


def test_no_job_may_do_more_than_it_needs_and_no_two_runs_overlap(swardcast: Command, club: Path) -> None:
    workflow = _workflow(swardcast, club, "github")
    assert workflow["permissions"] == {}
    assert {name: job["permissions"] for name, job in workflow["jobs"].items()} == {
        "weather": {"contents": "write"},
        "build": {"contents": "read"},
        "publish": {"pages": "write", "id-token": "write"},
    }
    (checkout,) = (step for step in workflow["jobs"]["build"]["steps"] if "checkout" in step.get("uses", ""))
    assert checkout["with"]["persist-credentials"] is False
    assert workflow["concurrency"] == {"group": "course-notices", "cancel-in-progress": False}
    assert "${{" not in "".join(step.get("run", "") for job in workflow["jobs"].values() for step in job["steps"])
    assert _workflow(swardcast, club, "gitlab")["pages"]["resource_group"] == "course-notices"


def _run(script: Iterable[str], folder: Path, variables: dict[str, str], **more: str) -> list[str]:
    """Run lines as a forge does, far from the club's time zone; gives what pip was asked for."""
    commands = folder.parent / "commands"
    commands.mkdir(exist_ok=True)
    asked = commands / "asked"
    asked.touch()
    (commands / "swardcast").write_text(COMMANDS, encoding="utf-8")
    (commands / "python").write_text(f'#!/bin/sh\necho "$@" >>{asked}\n', encoding="utf-8")
    for name in ("swardcast", "python"):
        (commands / name).chmod(0o755)
    done = subprocess.run(
        ["bash", "-e"],
        input="\n".join(script),
        cwd=folder,
        env={**os.environ, "PATH": f"{commands}:{os.environ['PATH']}", "PYTHONPATH": str(ROOT / "plugins"),
             "TZ": "Pacific/Auckland", "XDG_CACHE_HOME": str(folder.parent / "cache"), **variables, **more},
        capture_output=True,
        text=True,
        check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return asked.read_text(encoding="utf-8").splitlines()


def _is_of_now_in_the_clubs_zone(status: Path) -> bool:
    told = datetime.fromisoformat(json.loads(status.read_text(encoding="utf-8"))["as_of"])
    here = datetime.now(ZoneInfo("Europe/London"))
    return told.utcoffset() == told.astimezone(here.tzinfo).utcoffset() and told.date() in {here.date(), told.date()}


def _run_on_github(workflow: Any, club: Path, work: Path, only: str = "") -> list[str]:
    """Run the steps of the build that are commands, each with its own variables; gives what pip was asked for."""
    shutil.copytree(club, work / "club")
    for step in (step for step in workflow["jobs"]["build"]["steps"] if "run" in step and only in step["name"]):
        told = {
            name: value.replace("${{ github.workspace }}", str(work)) for name, value in step.get("env", {}).items()
        }
        asked = _run([step["run"]], work, workflow["env"] | told)
    return asked


def test_the_steps_of_github_make_the_site_and_pack_it(swardcast: Command, club: Path, tmp_path: Path) -> None:
    workflow = _workflow(swardcast, club, "github")
    work = tmp_path / "work"
    assert _run_on_github(workflow, club, work) == [INSTALL]
    with tarfile.open(work / "artifact.tar") as packed:
        names = {name.removeprefix("./") for name in packed.getnames()}
    assert {"index.html", "404.html", ".made-by-swardcast", "notices/index.html"} <= names
    assert _is_of_now_in_the_clubs_zone(work / "site/status.json")


def test_the_steps_of_gitlab_make_the_site_where_it_is_fetched(swardcast: Command, club: Path) -> None:
    workflow = _workflow(swardcast, club, "gitlab")
    assert _run(workflow["pages"]["script"], club, workflow["variables"]) == [INSTALL]
    (public,) = workflow["pages"]["artifacts"]["paths"]
    assert (club / public / "notices/index.html").is_file()
    assert _is_of_now_in_the_clubs_zone(club / public / "status.json")


@pytest.fixture
def with_work(club: Path) -> Path:
    """The club, with work that began ten days ago by the clock that its forge goes by: a build keeps what it knows of that."""
    now = datetime.now(ZoneInfo("Europe/London")).date()
    plan = club / "plan/cores.yaml"
    text = plan.read_text(encoding="utf-8")
    for typed, days in (("2027-09-20", 10), ("2027-03-01", 40)):
        text = text.replace(typed, (now - timedelta(days)).isoformat())
    plan.write_text(text, encoding="utf-8")
    return club


def test_github_takes_along_what_a_build_keeps_and_the_next_one_reads_it(
    swardcast: Command, with_work: Path, tmp_path: Path
) -> None:
    workflow = _workflow(swardcast, with_work, "github")
    steps = workflow["jobs"]["build"]["steps"]
    (cache,) = (place for place, step in enumerate(steps) if "actions/cache" in step.get("uses", ""))
    (build,) = (place for place, step in enumerate(steps) if step.get("name") == "Build")
    told = steps[cache]["with"]
    assert cache < build
    assert told["key"] == f"{told['restore-keys']}${{{{ github.run_id }}}}"
    first, second = tmp_path / "first", tmp_path / "second"
    assert [step["name"] for step in steps if "XDG_CACHE_HOME" in step.get("env", {})] == ["Build"]  # nothing of pip
    _run_on_github(workflow, with_work, first, only="Build")
    shutil.copytree(first / told["path"], second / told["path"])  # with the rights of each file, as forges pack them
    (file,) = second.rglob("*.kept")
    assert kept_file._read_index(file)
    os.utime(file, (0, 0))
    _run_on_github(workflow, with_work, second, only="Build")
    assert [path.name for path in second.rglob("*.kept")] == [file.name]
    assert file.stat().st_mtime > 0  # asked by the build


def test_gitlab_takes_along_what_a_build_keeps_and_no_rights_of_others(swardcast: Command, with_work: Path) -> None:
    workflow = _workflow(swardcast, with_work, "gitlab")
    (path,) = workflow["pages"]["cache"]["paths"]
    script = workflow["pages"]["script"]
    _run(script, with_work, workflow["variables"])
    (kept,) = (with_work / path).rglob("*.kept")
    assert kept_file._read_index(kept)
    for made in (with_work / path).rglob("*"):
        made.chmod(0o777)  # as a machine may that unpacks for everybody
    assert not kept_file._read_index(kept)
    shutil.rmtree(with_work / "public")
    build = next(place for place, line in enumerate(script) if "swardcast build" in line)
    _run(script[:build], with_work, workflow["variables"])
    assert kept_file._read_index(kept)


@pytest.mark.skipif(shutil.which("git") is None, reason="this machine has no git")
def test_the_weather_that_github_fetches_is_kept_in_the_repository(
    swardcast: Command, club: Path, tmp_path: Path
) -> None:
    workflow = _workflow(swardcast, club, "github")
    weather = workflow["jobs"]["weather"]
    assert weather["if"] == "vars.SWARDCAST_WEATHER == 'fetch'"
    origin, work, forecast = tmp_path / "origin", tmp_path / "work", tmp_path / "forecast.csv"
    forecast.write_text("date,tmin_c,tmax_c\n2026-11-27,4,9\n", encoding="utf-8")
    work.mkdir()
    git = ["git", "-c", "init.defaultBranch=main", "-c", "user.name=x", "-c", "user.email=x@localhost"]
    for command in (["init", "--quiet"], ["add", "."], ["commit", "--quiet", "--message", "The club"]):
        subprocess.run([*git, *command], cwd=club, check=True)
    subprocess.run([*git, "clone", "--quiet", "--bare", str(club), str(origin)], check=True)
    subprocess.run([*git, "clone", "--quiet", str(origin), str(work / "club")], check=True)
    steps = [step["run"] for step in weather["steps"] if "run" in step]
    for _ in range(2):  # the second time nothing is new
        for step in steps:
            _run([step], work, workflow["env"], FORECAST=str(forecast))
    told = subprocess.run(
        [*git, "log", "--format=%s", "--name-only"], cwd=origin, check=True, capture_output=True, text=True
    ).stdout.split("\n\n")
    assert told[0] == "Weather as fetched"
    assert told[1].splitlines()[0] == "weather/forecast/2026-11-26-0517.csv"
    assert told[1].splitlines()[1] == "The club"
