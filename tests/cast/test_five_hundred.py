"""Five hundred people of the survey ANSUR II (Gordon et al. 2014) as one cast, a worker killed on the way."""

from __future__ import annotations

import csv
import json
import os
import signal
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

import pandas as pd
import pytest

from drafting.costume.cast import read_cast
from drafting.output.cast import write_cast
from drafting.output.cast.cluster import cluster_engine
from drafting.output.cast.job import Outcome, WearerJob
from tests.body.survey import COLUMNS
from tests.cast.troupe import is_whole, troupe_in
from tests.shared_data import survey

distributed = pytest.importorskip("distributed", reason="the extra [cast] is not installed")
psutil = pytest.importorskip("psutil")

PEOPLE = 500
TAKEN = ("height", "bust_girth", "waist_girth", "hip_girth", "arm_length", "wrist_girth")

SETTLED, GROWTH = 0.2, 1.25
"""Memory may not grow beyond this from the time that a fifth are made: it does not go with the people made."""


def table_of(people: Any, file: Path) -> None:
    """Write people as a table in mm."""
    with file.open("w", encoding="utf-8", newline="") as out:
        rows = csv.writer(out)
        rows.writerow(["Name", "unit", "waist level", *TAKEN])
        for number, (_, one) in enumerate(people.iterrows()):
            rows.writerow([f"P{number:03d}", "mm", "navel", *(one[COLUMNS[name]] for name in TAKEN)])


def memory(client: Any) -> int:
    """Return what this process and all workers hold, bytes."""
    workers = client.run(lambda: psutil.Process().memory_info().rss)
    return int(psutil.Process().memory_info().rss + sum(workers.values()))


@pytest.mark.population
@pytest.mark.timeout(7200)
def test_five_hundred_people_are_made_in_flat_memory_though_a_worker_is_killed(tmp_path: Path) -> None:
    every = pd.read_csv(survey())
    people = every.iloc[:: len(every) // PEOPLE][:PEOPLE]
    path = troupe_in(tmp_path, hopeless=False)
    table_of(people, tmp_path / "table.csv")
    path.write_text('title = "Five hundred"\ncostume = "top.toml"\nwearers = "table.csv"\n', "utf-8")
    cast = read_cast(path)
    assert len(cast.wearers) == PEOPLE
    held: list[int] = []
    with distributed.LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster:
        engine = cluster_engine(cluster.scheduler_address)

        def watched(jobs: Iterable[WearerJob], place: Path) -> Iterator[Outcome]:
            with distributed.Client(cluster.scheduler_address, set_as_default=False) as client:
                for n, outcome in enumerate(engine(jobs, place), 1):
                    if n == PEOPLE // 10:
                        os.kill(next(iter(client.run(os.getpid).values())), signal.SIGKILL)
                    if n % (PEOPLE // 10) == 0 and n >= SETTLED * PEOPLE:
                        held.append(memory(client))
                    yield outcome

        made = write_cast(cast, tmp_path / "out", watched)
    assert set(made.records) == {one.folder for one in cast.wearers}
    lost = {name: record["reasons"] for name, record in made.records.items() if record["status"] != "made"}
    assert not lost
    assert all(is_whole(tmp_path / "out" / name) for name in made.records)
    print("held, MB:", *(round(one / 1e6) for one in held))
    assert max(held) < GROWTH * held[0]
    whole = json.loads((tmp_path / "out" / "cast.json").read_text("utf-8"))
    assert len(whole["wearers"]) == PEOPLE
