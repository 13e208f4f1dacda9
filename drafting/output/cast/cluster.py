"""The work on machines that a scheduler knows: the one door to Dask's distributed scheduler."""

from __future__ import annotations

import threading
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from typing import Any

from drafting.ground.errors import Fault, InputError
from drafting.ground.names import clean_text
from drafting.ground.units import SHOWN
from drafting.output.cast.engines import Engine
from drafting.output.cast.job import Outcome, WearerJob, done_elsewhere, refused_outcome
from drafting.output.cast.key import kit_key

ANSWERS = 20.0
"""Seconds that a scheduler has to answer, and a first worker to be there (ours)."""

AHEAD = 2
"""Jobs that lie ready for each worker: one in work, one next (ours)."""

ONE_AT_A_TIME = threading.Lock()
"""Drawing is not safe in two threads of one process, and a worker may have several."""


def cluster_engine(address: str) -> Engine:
    """Return the engine of all workers of the scheduler at an address; raises `InputError` where none answers.

    Every worker must have this very kit, so that each wearer's bytes are those of this machine.
    """
    with _client(address) as client:
        _same_kit(address, client)
    return partial(_on_workers, address=address)


@contextmanager
def _client(address: str) -> Iterator[Any]:
    try:
        from distributed import Client
    except ImportError:
        what = "what speaks to a scheduler is not installed"
        raise InputError([Fault(what, 'pip install "drafting-kit[cast]"', "--scheduler")]) from None
    try:
        client = Client(address, timeout=ANSWERS, set_as_default=False)
        client.wait_for_workers(1, timeout=ANSWERS)
    except (OSError, TimeoutError, ValueError) as trouble:
        what = f"no scheduler with a worker answers at {clean_text(address, SHOWN)} ({type(trouble).__name__})"
        right = "start one with `dask scheduler`, and `dask worker ADDRESS` on each machine"
        raise InputError([Fault(what, right, "--scheduler")]) from None
    with client:
        yield client


@contextmanager
def _unsampled(client: Any) -> Iterator[None]:
    """Keep workers from sampling what they do: the samples of a long cast would fill their memory."""
    from drafting.output.cast.unsampled import Unsampled

    client.register_plugin(Unsampled())
    try:
        yield
    finally:
        client.unregister_worker_plugin(Unsampled.name)


def _same_kit(address: str, client: Any) -> None:
    ours = kit_key()
    try:
        other = sorted(name for name, theirs in client.run(kit_key).items() if theirs != ours)
    except ImportError:
        other = ["one at least"]
    if other:
        what = f"workers that have another version of this kit, or of a library, or none: {', '.join(other[:4])}"
        right = "install the same on every machine, from the same lock"
        raise InputError([Fault(what, right, f"--scheduler {clean_text(address, SHOWN)}")])


def _on_workers(jobs: Iterable[WearerJob], place: Path, address: str) -> Iterator[Outcome]:
    """Yield outcomes as they come from the workers; a job whose worker is lost is begun again on another."""
    from distributed import as_completed

    waiting = iter(jobs)
    held: dict[str, WearerJob] = {}
    with _client(address) as client, _unsampled(client):
        room = AHEAD * len(client.scheduler_info(n_workers=-1)["workers"])
        finished = as_completed([_sent(client, job, held) for job in _first(waiting, room)], loop=client.loop)
        for future in finished:
            job = held.pop(future.key)
            for following in _first(waiting, 1):
                finished.add(_sent(client, following, held))
            yield _outcome(job, future)
            future.release()


def _first(jobs: Iterator[WearerJob], count: int) -> Iterator[WearerJob]:
    for _ in range(count):
        job = next(jobs, None)
        if job is None:
            return
        yield job


def _sent(client: Any, job: WearerJob, held: dict[str, WearerJob]) -> Any:
    future = client.submit(one_at_a_time, job, key=f"{job.folder}-{job.key}", pure=False)
    held[future.key] = job
    return future


def one_at_a_time(job: WearerJob) -> Outcome:
    """Make a wearer on a worker, whatever the number of its threads."""
    with ONE_AT_A_TIME:
        return done_elsewhere(job)


def _outcome(job: WearerJob, future: Any) -> Outcome:
    """Return what came of a job; one at which workers ended over and over is told."""
    error = future.exception()
    if error is None:
        outcome = future.result()
        assert isinstance(outcome, Outcome)
        return outcome
    what = f"could not be made by any worker ({type(error).__name__}: {error})"
    return refused_outcome(job.folder, (Fault(what, "see the workers' own words"),))
