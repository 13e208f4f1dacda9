"""How long the commands take, start included: python -m tests.benchmarks.demo_time [OTHER-TREE]

The processor's time of the whole process (user and system), beside that of a fixed piece of work in the same
minute; with the folder of another tree of the kit, such as a worktree of an earlier commit, both run in turn
and the ratio is printed. The first run of each, which compiles, is not counted; what it compiled is kept as an
installed kit keeps it, though the machine's settings may say otherwise. Then what one garment takes to be
drafted, finished and checked, on adults of `bdims` (Heinz et al. 2003) one after the other.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

from drafting.costume.garment import draft_garment
from drafting.costume.stand_in import STRETCHY
from tests.bodies import bdims

RUNS = 3
BODIES = 40
GARMENTS = ("shirt", "trousers", "tailcoat", "close-top")
HERE = Path(__file__).resolve().parent.parent.parent
BODY = "measurements/bodies/lamplighter.toml"

FIXED = "sum(i * i % 7 for i in range(6_000_000)); import numpy; a = numpy.arange(9e5).reshape(900, 1000); a @ a.T"
"""A piece of work that no change of the kit touches."""

COMMANDS: dict[str, tuple[Sequence[str], Sequence[str]]] = {
    "demo": (("demo",), ("demo",)),
    "demo on three papers": (("demo", "--papers", "a4,letter,roll"), ("demo",)),
    "body": (("body", BODY), ("body", BODY)),
}
"""What is run here and in the other tree, which before `--papers` printed on those three by itself."""


def processor(tree: Path, command: Sequence[str], folder: str) -> float:
    """Return the seconds of the processor that one run of a command takes, its children too.

    What is compiled stands in `folder`.
    """
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    around = {**kept, "PYTHONPYCACHEPREFIX": folder, "PYTHONPATH": str(tree), "PWD": str(tree)}
    before = os.times()
    subprocess.run([sys.executable, *command], check=True, cwd=tree, env=around, stdout=subprocess.DEVNULL)
    after = os.times()
    return after.children_user + after.children_system - before.children_user - before.children_system


def ran(tree: Path, words: Sequence[str], folder: str) -> float:
    """Return the seconds of one command of the kit in a tree."""
    out = [] if words[0] == "body" else ["--out", str(Path(folder) / f"out-{tree.name}")]
    return processor(tree, ["-m", "drafting", *words, *out], folder)


def compared(other: Path | None) -> None:
    """Print what each command takes, and in the other tree how many times that."""
    for name, (own, earlier) in COMMANDS.items():
        times: list[tuple[float, float, float]] = []
        with tempfile.TemporaryDirectory() as folder:
            for _ in range(RUNS + 1):
                there = ran(other, earlier, folder) if other else 0.0
                times.append((ran(HERE, own, folder), there, processor(HERE, ["-c", FIXED], folder)))
        here, there, fixed = (statistics.median(column) for column in zip(*times[1:], strict=True))
        beside = f"; other tree {there:.2f} s, {there / here:.2f} times that" if other else ""
        print(f"{name:22} {here:.2f} s of CPU, {here / fixed:.2f} of the fixed work ({fixed:.2f} s){beside}")


def garments() -> None:
    """Print the median ms that one garment takes to be drafted, finished and checked."""
    bodies = bdims(BODIES)
    for name in GARMENTS:
        fabric = STRETCHY if name == "close-top" else None
        times = []
        for body in bodies:
            start = time.process_time()
            draft_garment(body, fabric, name)
            times.append(time.process_time() - start)
        print(f"{name:22} {1000 * statistics.median(times[1:]):.1f} ms, drafted, finished and checked")


def main() -> None:
    compared(Path(sys.argv[1]).resolve() if len(sys.argv) > 1 else None)
    garments()


if __name__ == "__main__":
    main()
