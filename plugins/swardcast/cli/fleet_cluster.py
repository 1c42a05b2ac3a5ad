"""The cluster on which a fleet of clubs is built: one of this machine's own, or one that runs elsewhere (Dask)."""

from __future__ import annotations

import logging
import traceback
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from tempfile import NamedTemporaryFile, TemporaryDirectory
from typing import TYPE_CHECKING, Any, Final

from swardcast.cli.fleet_clubs import ClubPlace
from swardcast.cli.fleet_task import Asked, Seen, build_club, printable, seen_from_here
from swardcast.errors import SwardcastError, first_of
from swardcast.outlets.fleet_page import BuiltClub, State
from swardcast.version import __version__

if TYPE_CHECKING:
    from distributed import Client, Future

__all__ = ["built_on", "cluster_elsewhere", "local_cluster", "processors", "refuse_missing_packages", "refuse_unlike"]

_MISSING: Final = (
    "'swardcast fleet' needs packages that are not installed (found no {name!r}).\n"
    "Install them: python -m pip install 'swardcast[fleet]'"
)
_SETTINGS: Final[dict[str, Any]] = {
    # A worker that ends has one club in hand, so that no other is blamed for it.
    "distributed.scheduler.worker-saturation": 1.0,
    "distributed.scheduler.allowed-failures": 3,
    # Nothing is kept between clubs that could be put aside; one that needs too much ends its own worker alone.
    "distributed.worker.memory.target": False,
    "distributed.worker.memory.spill": False,
    "distributed.worker.memory.pause": False,
    # Pages of Dask's own, which nobody looks at.
    "distributed.scheduler.http.routes": [],
    "distributed.worker.http.routes": [],
}
_CONNECT_WITHIN: Final = "10s"
_MOST_TOLD: Final = 5
"""Workers told one by one; judgement."""


def refuse_missing_packages() -> None:
    """Say what to install where the packages of a fleet are missing.

    Raises:
        SwardcastError: when they are.
    """
    try:
        import cryptography
        import distributed
    except ImportError as error:
        raise SwardcastError(_MISSING.format(name=error.name)) from error
    del cryptography, distributed


def processors() -> int:
    """Count the processors that this process may use, as Dask does."""
    from dask.system import CPU_COUNT

    return int(CPU_COUNT)


@contextmanager
def local_cluster(workers: int) -> Iterator[Client]:
    """Start workers on this machine, each a process that builds one club at a time, and end them.

    They talk over the loopback interface, in TLS by a key that is made for this run: whoever could speak with them
    could have them do anything.

    Args:
        workers: how many, 1 or more.

    Yields:
        A client.
    """
    import dask
    from distributed import Client, LocalCluster

    with (
        dask.config.set(_SETTINGS),
        TemporaryDirectory(prefix="swardcast-fleet-") as scratch,
        LocalCluster(
            n_workers=workers,
            threads_per_worker=1,
            processes=True,
            host="127.0.0.1",
            security=True,
            scheduler_kwargs={"dashboard": False, "dashboard_address": "127.0.0.1:0"},
            local_directory=scratch,
            preload=["swardcast.cli.fleet_worker"],
            silence_logs=logging.CRITICAL,
        ) as cluster,
        Client(cluster) as client,
    ):
        yield client


@contextmanager
def cluster_elsewhere(address: str) -> Iterator[Client]:
    """Use a cluster that runs already.

    Args:
        address: of its scheduler, such as "tcp://10.0.0.5:8786".

    Yields:
        A client.

    Raises:
        SwardcastError: when nobody answers there.
    """
    from distributed import Client

    try:
        client = Client(address, timeout=_CONNECT_WITHIN, set_as_default=False)
    except (OSError, ValueError) as error:
        message = f"found no scheduler at {address} ({error}); expected an address such as tcp://10.0.0.5:8786"
        raise SwardcastError(message) from error
    with client:
        yield client


def refuse_unlike(client: Client, first: ClubPlace, output: Path) -> None:
    """Refuse workers that could not build what a build here would: another program, other files, several threads.

    Args:
        client: the cluster.
        first: one of the clubs.
        output: the folder of all sites; it is there.

    Raises:
        SwardcastError: when there are any, or none at all; all of them are told.
    """
    workers = client.scheduler_info(n_workers=-1)["workers"]
    if not workers:
        message = "the scheduler has no workers; start some: dask worker ADDRESS --nthreads 1 --nworkers 4"
        raise SwardcastError(message)
    with NamedTemporaryFile(dir=output, prefix=".fleet-") as mark:
        places = (str(first.folder), mark.name)
        answers = client.run(seen_from_here, places, on_error="return")
    troubles: dict[str, list[str]] = {}
    for worker in sorted(workers):
        for trouble in _troubles(workers[worker]["nthreads"], answers.get(worker), output):
            troubles.setdefault(trouble, []).append(worker)
    if troubles:
        lines = [f"{first_of(names, _MOST_TOLD)}: {trouble}" for trouble, names in troubles.items()]
        raise SwardcastError("\n".join([*lines, "Nothing was built."]))


def _troubles(threads: int, answer: Seen | BaseException | None, output: Path) -> Iterator[str]:
    if threads > 1:
        yield f"found a worker of {threads} threads; expected one thread each (dask worker --nthreads 1)"
    match answer:
        case Seen():
            if answer.version != __version__:
                yield f"found Swardcast {answer.version} there; expected {__version__}, as here"
            for place in answer.missing:
                # A name made up for this moment can only be missing where the folder is another one.
                told = output if place.startswith(str(output)) else place
                yield f"found no {told} there as it is here; expected the same files under the same names"
        case ModuleNotFoundError():
            yield f"found no Swardcast {__version__} there ({answer}); expected the same version as here"
        case _:
            yield f"found no answer ({answer!r}); expected one about what is installed there"


def built_on(client: Client, places: Sequence[ClubPlace], asked: Asked) -> Iterator[BuiltClub]:
    """Build clubs; one whose worker ends is built again by another.

    Args:
        client: the cluster.
        places: the clubs.
        asked: what is asked for all of them.

    Yields:
        What became of each, as they come.
    """
    from distributed import as_completed

    futures = client.map(build_club, places, asked=asked, pure=False)
    club_of = {future.key: place.club for future, place in zip(futures, places, strict=True)}
    for future in as_completed(futures, loop=client.loop):
        yield _outcome(future, club_of[future.key])
        future.release()


def _outcome(future: Future, club: str) -> BuiltClub:
    from distributed import KilledWorker

    try:
        result: BuiltClub = future.result()
    except KilledWorker:
        said = (
            "The process that built this club was ended from outside each time, perhaps for want of memory.\n"
            f"Build it alone to see more: swardcast build --club {club}"
        )
    except Exception as error:  # noqa: BLE001 - whatever it is, the other clubs go on
        said = "A fault of the program, not of these files:\n" + "".join(traceback.format_exception(error)).strip()
    else:
        return result
    return BuiltClub(club=club, name="", state=State.FAILED, seconds=0.0, said=printable(said))
