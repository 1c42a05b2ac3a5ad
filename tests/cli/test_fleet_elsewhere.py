"""A cluster that runs elsewhere: it builds the same, or it is refused in words before anything is built."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from distributed import Client, KilledWorker, LocalCluster

from swardcast.cli import fleet_cluster
from swardcast.cli.fleet_clubs import ClubPlace
from swardcast.cli.fleet_cluster import built_on, refuse_unlike
from swardcast.cli.fleet_task import Asked, Seen, seen_from_here
from swardcast.errors import SwardcastError
from swardcast.outlets.fleet_page import BuiltClub, State
from swardcast.version import __version__
from tests.cli.conftest import Done
from tests.cli.many_clubs import AS_OF, unlike_clubs
from tests.conftest import bytes_in

Command = Callable[..., Done]


@contextmanager
def cluster(scratch: Path, workers: int, threads: int = 1) -> Iterator[Any]:
    """A scheduler with workers in this process, which others can only reach by its address."""
    with LocalCluster(
        n_workers=workers,
        threads_per_worker=threads,
        processes=False,
        protocol="tcp",
        host="127.0.0.1",
        scheduler_kwargs={"dashboard": False, "dashboard_address": "127.0.0.1:0"},
        local_directory=scratch,
    ) as running:
        yield running


def test_a_cluster_elsewhere_builds_what_a_build_here_does(swardcast: Command, tmp_path: Path) -> None:
    clubs = unlike_clubs(tmp_path / "clubs")
    shutil.rmtree(clubs["park"])
    for name in ("heath", "links"):
        place = (str(tmp_path / "clubs" / name), "--output", str(tmp_path / "alone" / name))
        assert swardcast("build", "--club", *place, "--as-of", AS_OF).code == 0
    with cluster(tmp_path, workers=1) as running:
        words = ("--output", str(tmp_path / "sites"), "--as-of", AS_OF, "--scheduler", running.scheduler_address)
        done = swardcast("fleet", str(tmp_path / "clubs"), *words, "--json")
    assert done.code == 0, done.err
    told = json.loads(done.out)["clubs"]
    assert [(one["club"], one["name"], one["state"]) for one in told] == [
        ("heath", "Our Golf Club", "published"),
        ("links", "Dunes & <Links>", "published"),
    ]
    for name in ("heath", "links"):
        assert bytes_in(tmp_path / "sites" / name) == bytes_in(tmp_path / "alone" / name)
    assert sorted(path.name for path in (tmp_path / "sites").iterdir()) == ["heath", "links"]


@pytest.mark.parametrize(
    ("workers", "threads", "answer", "said"),
    [
        (0, 1, None, r"^the scheduler has no workers; start some: dask worker ADDRESS --nthreads 1 --nworkers 4$"),
        (1, 3, None, r"^\S+: found a worker of 3 threads; expected one thread each \(dask worker --nthreads 1\)\n"),
        (
            1,
            1,
            "other version",
            rf"^\S+: found Swardcast 9\.9 there; expected {__version__}, as here\nNothing was built\.$",
        ),
        (1, 1, "other files", r"^\S+: found no \S+/clubs/park there as it is here; expected the same files under"),
        (1, 1, "other sites", r"^\S+: found no \S+/sites there as it is here; expected the same files under the same"),
        (2, 1, "other version", r"^\S+, \S+: found Swardcast 9\.9 there"),
        (
            1,
            1,
            "no program",
            rf"^\S+: found no Swardcast {__version__} there \(No module named 'swardcast'\); expected",
        ),
        (1, 1, "fault", r"^\S+: found no answer \(RuntimeError\('lost'\)\); expected one"),
    ],
)
def test_workers_that_are_unlike_are_refused_in_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, workers: int, threads: int, answer: str | None, said: str
) -> None:
    (tmp_path / "sites").mkdir()
    (tmp_path / "clubs" / "park").mkdir(parents=True)
    first = ClubPlace(club="park", folder=tmp_path / "clubs" / "park", site=tmp_path / "sites" / "park")

    def elsewhere(places: tuple[str, ...]) -> Seen:
        match answer:
            case "other version":
                return Seen(version="9.9", missing=())
            case "other files":
                return Seen(version=__version__, missing=places[:1])
            case "other sites":
                return Seen(version=__version__, missing=places[1:])
            case "no program":
                raise ModuleNotFoundError("No module named 'swardcast'")
            case "fault":
                raise RuntimeError("lost")
            case _:
                return seen_from_here(places)

    monkeypatch.setattr(fleet_cluster, "seen_from_here", elsewhere)
    with (
        cluster(tmp_path, workers, threads) as running,
        Client(running) as client,
        pytest.raises(SwardcastError, match=said),
    ):
        refuse_unlike(client, first, tmp_path / "sites")
    assert list((tmp_path / "sites").iterdir()) == []


def test_a_place_that_is_not_there_is_missed(tmp_path: Path) -> None:
    places = (str(tmp_path), str(tmp_path / "nowhere"))
    assert seen_from_here(places) == Seen(version=__version__, missing=places[1:])


class _Lost:
    """What Dask has in hand of a club that no worker could build."""

    key = "key"

    def __init__(self, error: Exception) -> None:
        self._error = error

    def result(self) -> BuiltClub:
        raise self._error

    def release(self) -> None:
        pass


class _Cluster:
    """Of one club, which is lost."""

    loop = None

    def __init__(self, error: Exception) -> None:
        self._lost = _Lost(error)

    def map(self, *_: object, **__: object) -> list[_Lost]:
        return [self._lost]


def _as_they_are(futures: list[_Lost], **_: object) -> Iterator[_Lost]:
    return iter(futures)


@pytest.mark.parametrize(
    ("error", "said"),
    [
        (
            KilledWorker("key", None, 3),
            "The process that built this club was ended from outside each time, perhaps for",
        ),
        (ZeroDivisionError("of ours"), "A fault of the program, not of these files:\nTraceback"),
    ],
)
def test_a_club_that_no_worker_could_build_is_one_that_failed(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, error: Exception, said: str
) -> None:
    monkeypatch.setattr("distributed.as_completed", _as_they_are)
    place = ClubPlace(club="park", folder=tmp_path, site=tmp_path)
    (one,) = built_on(_Cluster(error), [place], Asked(as_of=None, theme=None, eml=False))
    assert (one.club, one.state) == ("park", State.FAILED)
    assert one.said.startswith(said)
