"""How long a piece of work takes, told beside a fixed piece of work: a busy or slow machine slows both alike."""

from __future__ import annotations

import json
import math
import statistics
import time
from collections.abc import Callable, Sequence


def bookkeeping() -> float:
    """Return the seconds that a fixed piece of work takes here and now: some 10.5 ms on two quiet cores.

    It makes and reads many small things, as drafting does.
    """
    start = time.process_time()
    rows = [{"n": n, "at": complex(n, -n), "far": math.sqrt(n)} for n in range(6000)]
    rows.sort(key=lambda row: -row["far"])
    json.loads(json.dumps([[row["n"], row["far"]] for row in rows]))
    return time.process_time() - start


def quickest(work: Callable[[], object], times: int) -> float:
    """Return the least time that a work takes of several, as a multiple of the fixed work's least."""
    took, fixed = _timed([work] * times)
    return min(took) / min(fixed)


def paced(*works: Callable[[], object]) -> float:
    """Return the median time of some works, as a multiple of the fixed work's; both are timed in turn."""
    took, fixed = _timed(works)
    return statistics.median(took) / statistics.median(fixed)


def _timed(works: Sequence[Callable[[], object]]) -> tuple[list[float], list[float]]:
    """Return the seconds of each work, and of the fixed work before it."""
    took, fixed = [], []
    for work in works:
        fixed.append(bookkeeping())
        start = time.process_time()
        work()
        took.append(time.process_time() - start)
    return took, fixed
