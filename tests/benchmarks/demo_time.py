"""How long `drafting demo` takes, from the command to the folder: python -m tests.benchmarks.demo_time

The first run, which may compile and build a font list, is not counted.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

RUNS = 7


def seconds(out: Path) -> float:
    """Return the seconds that one run of the command takes."""
    start = time.perf_counter()
    command = [sys.executable, "-m", "drafting", "demo", "--out", str(out)]
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - start


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        first, *times = [seconds(Path(folder) / "out") for _ in range(RUNS + 1)]
    print(f"drafting demo: median {statistics.median(times):.2f} s of {RUNS} runs")
    print(f"least {min(times):.2f} s, most {max(times):.2f} s; the first one {first:.2f} s")


if __name__ == "__main__":
    main()
