"""How short our layouts are: python -m tests.benchmarks.strip_packing [--seconds 60] [--only swim,mao]

Prints, for seven classic garment instances, the density of our layout and of the packing library
alone in the same run, against the best published values; then the folded lay of an invented tailcoat
costume, with and without nap, best of three runs. The instances lie in `../shared`; 2 cores are used.
"""

from __future__ import annotations

import argparse
import importlib.util
import json
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType
from typing import Any

from drafting.layout import Copy, Job, Kind, Packing, Pose, Strip
from drafting.layout.packing.child_process import Child
from drafting.layout.packing.pack import pack

SHARED = Path(__file__).resolve().parents[3] / "shared"
FOLDED = SHARED / "design" / "packing" / "study" / "costume.py"
BENCH = SHARED / "data" / "bench_strip_packing.py"
FOLDED_WIDTH, CM = 75.0, 10.0
RUNS, FOLD_SECONDS = 3, 30.0


def job_of(instance: dict[str, Any]) -> Job:
    """Return a published instance as a job: no gap, no mirroring, the turns it allows."""
    kinds, copies = [], []
    for n, item in enumerate(instance["items"]):
        kinds.append(Kind(str(item["id"]), tuple(complex(x, y) for x, y in item["points"])))
        poses = tuple(Pose(round(turn)) for turn in item["orientations_deg"])
        copies += [Copy(n, poses, "single", k + 1) for k in range(item["demand"])]
    return Job(tuple(kinds), tuple(copies), Strip(float(instance["fabric_width"])))


def ours(instance: dict[str, Any], seconds: float, seed: int) -> tuple[float, list[Any]]:
    """Return the length, and each piece as (id, degrees about 0, dx, dy), as the published check wants."""
    job = job_of(instance)
    packing = pack(job, seconds=seconds, workers=2, seed=seed)
    placed = []
    for spot in packing.spots:
        item = instance["items"][job.copies[spot.copy].kind]
        ring = [spot.pose.of(complex(x, y)) for x, y in item["points"]]
        x0, y0 = min(p.real for p in ring), min(p.imag for p in ring)
        placed.append((item["id"], float(spot.pose.turn), spot.x - x0, spot.y - y0))
    return packing.length, placed


def library_alone(instance: dict[str, Any], seconds: float, seed: int) -> float:
    """Return the length that the packing library reports for the same instance and time."""
    items = [
        {"points": item["points"], "demand": item["demand"], "turns": item["orientations_deg"]}
        for item in instance["items"]
    ]
    child = Child(
        {"height": instance["fabric_width"], "items": items, "seconds": int(seconds), "workers": 2, "seed": seed}
    )
    while not child.ended:
        time.sleep(0.1)
    child.stop()
    return float(child.lines[-1]["width"])


def instances(only: str) -> Iterator[dict[str, Any]]:
    wanted = set(filter(None, only.split(",")))
    for path in sorted((SHARED / "data" / "strip-packing").glob("*.json")):
        instance = json.loads(path.read_text("utf-8"))
        if not wanted or instance["name"] in wanted:
            yield instance


def loaded(path: Path) -> ModuleType:
    spec = importlib.util.spec_from_file_location(path.stem, path)
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def strips(seconds: float, only: str, seed: int) -> None:
    """Print a row for each published instance."""
    verify = loaded(BENCH).verify
    print("| instance | best published % | ours % | library alone % | ours - library | check |")
    print("|---|---|---|---|---|---|")
    rows = []
    for instance in instances(only):

        def density(length: float, i: dict[str, Any] = instance) -> float:
            return float(100 * i["total_area"] / (length * i["fabric_width"]))

        length, placed = ours(instance, seconds, seed)
        faults = verify(instance, length, placed)[0]
        row = (
            instance["best_known"]["density_pct"],
            density(length),
            density(library_alone(instance, seconds, seed)),
        )
        rows.append(row)
        print(_row(instance["name"], row) + f" {'; '.join(faults) or 'valid'} |", flush=True)
    if rows:
        mean = tuple(sum(column) / len(rows) for column in zip(*rows, strict=True))
        print(_row("**mean**", mean) + " |")


def _row(name: str, row: tuple[float, ...]) -> str:
    best, own, library = row
    return f"| {name} | {best:.2f} | {own:.2f} | {library:.2f} | {own - library:+.2f} |"


def folded_job(nap: bool) -> Job:
    """Return an invented costume on folded cloth, 75 cm a layer, in mm."""
    kinds, copies = [], []
    turns = (0,) if nap else (0, 180)
    for n, (name, (fold, points)) in enumerate(loaded(FOLDED).P.items()):
        kinds.append(Kind(name, tuple(CM * complex(x, y) for x, y in points), fold))
        over = [Pose(t, True) for t in turns]
        free = (*(Pose(t) for t in turns), *over)
        poses = tuple(Pose(t, t == 180) for t in turns) if fold else free
        copies.append(Copy(n, poses, "single" if fold else "both"))
    return Job(tuple(kinds), tuple(copies), Strip(CM * FOLDED_WIDTH))


def folded() -> None:
    """Print the folded lay of that costume, and what the demand is."""
    print("\n| folded lay, 16 shapes | cm, three runs | best | wanted |\n|---|---|---|---|")
    for name, nap, wanted in (("no nap", False, 262), ("nap", True, 268)):
        found: list[Packing] = []
        for seed in range(RUNS):
            found.append(pack(folded_job(nap), seconds=FOLD_SECONDS, seed=seed))
        lengths = [packing.length / CM for packing in found]
        shown = ", ".join(f"{n:.1f} ({p.engine})" for n, p in zip(lengths, found, strict=True))
        print(f"| {name} | {shown} | {min(lengths):.1f} | <= {wanted} |", flush=True)


def main() -> None:
    asked = argparse.ArgumentParser()
    asked.add_argument("--seconds", type=float, default=60.0)
    asked.add_argument("--only", default="")
    asked.add_argument("--seed", type=int, default=0)
    asked.add_argument("--skip-folded", action="store_true")
    wanted = asked.parse_args()
    if not BENCH.is_file():
        sys.exit("the shared instances are not beside the repository")
    strips(wanted.seconds, wanted.only, wanted.seed)
    if not wanted.skip_folded:
        folded()


if __name__ == "__main__":
    main()
