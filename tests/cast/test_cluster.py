"""`drafting cast --scheduler`: two workers of Dask's own scheduler, one killed in the middle, nobody lost."""

from __future__ import annotations

import os
import signal
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from drafting.commands.cli import main
from drafting.costume.cast import costume_for, read_cast
from drafting.ground.errors import InputError
from drafting.output.cast.cluster import cluster_engine
from drafting.output.cast.job import WearerJob, done, unpacked
from drafting.output.cast.key import key_of
from drafting.output.cast.place import cast_folder
from tests.cast.troupe import contents, is_whole, troupe_in

distributed = pytest.importorskip("distributed", reason="the extra [cast] is not installed")
pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def cluster() -> Iterator[Any]:
    with distributed.LocalCluster(
        n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None, host="127.0.0.1"
    ) as cluster:
        yield cluster


def samples(dask_worker: Any) -> bool:
    """Return whether a worker keeps samples of what it does: 500 people's took as much as all else together."""
    clocks = dask_worker.periodic_callbacks
    return any(name.startswith("profile") and clock.is_running() for name, clock in clocks.items())


def test_a_worker_that_is_killed_in_the_middle_loses_nobody_and_no_byte(cluster: Any, tmp_path: Path) -> None:
    cast = read_cast(troupe_in(tmp_path, hopeless=False))
    place = cast_folder(tmp_path / "out", cast)
    jobs = [WearerJob(one.folder, costume_for(cast, one), key_of(costume_for(cast, one))) for one in cast.wearers]
    outcomes = cluster_engine(cluster.scheduler_address)(iter(jobs), place)
    first = next(outcomes)
    with distributed.Client(cluster.scheduler_address, set_as_default=False) as client:
        assert not any(client.run(samples).values())
        os.kill(next(iter(client.run(os.getpid).values())), signal.SIGKILL)
        came = [first, *outcomes]
        assert all(client.run(samples).values())  # as they did before the cast
    assert sorted(one.folder for one in came) == ["ada", "bo", "ida"]
    for one in came:
        unpacked(one, place)
        assert is_whole(place / one.folder)
    here = done(jobs[0], tmp_path)
    assert contents(tmp_path / "ada") == contents(place / "ada")
    (ada,) = [one for one in came if one.folder == "ada"]
    assert ada.record == here.record


def test_who_has_another_kit_is_refused(cluster: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    real = distributed.Client.run

    def run(client: Any, asked: Any) -> Any:
        return dict.fromkeys(real(client, asked), "another")

    monkeypatch.setattr(distributed.Client, "run", run)
    with pytest.raises(InputError, match="another version of this kit"):
        cluster_engine(cluster.scheduler_address)


def test_no_scheduler_is_told_with_what_would_start_one(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("drafting.output.cast.cluster.ANSWERS", 0.5)
    cast = troupe_in(tmp_path)
    asked = ["cast", str(cast), "--out", str(tmp_path / "out"), "--scheduler", "tcp://127.0.0.1:9"]
    assert main(asked) == 2
    assert "dask scheduler" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()
