"""The packing library in a process of its own: read a job, print layouts as lines of JSON.

Run by path, importing nothing of ours. What the library does to bad input (it ends the process) ends
this one only. In: `{"height", "items": [{"points", "demand", "turns"}], "seconds", "workers",
"seed"}`. Out, a line for each better layout: `{"width", "placed": [[item, degrees, x, y], ...],
"final": bool}`.
"""

from __future__ import annotations

import json
import sys
import threading
import time
from typing import Any

EVERY = 0.3
"""Seconds between two looks for a better layout (ours)."""


def main() -> None:
    import spyrrow

    job = json.load(sys.stdin)
    items = [
        spyrrow.Item(
            str(n),
            [tuple(point) for point in item["points"]],
            demand=item["demand"],
            allowed_orientations=[float(turn) for turn in item["turns"]],
        )
        for n, item in enumerate(job["items"])
    ]
    strip = spyrrow.StripPackingInstance("lay", strip_height=job["height"], items=items)
    config = spyrrow.StripPackingConfig(
        early_termination=False,
        total_computation_time=job["seconds"],
        num_workers=job["workers"],
        seed=job["seed"],
    )
    queue, done = spyrrow.ProgressQueue(), threading.Event()
    watcher = threading.Thread(target=_watch, args=(queue, done), daemon=True)
    watcher.start()
    found = strip.solve(config, progress=queue)
    done.set()
    watcher.join()
    _say(found, final=True)


def _watch(queue: Any, done: threading.Event) -> None:
    """Print every layout that is shorter than all before it and has no overlap left."""
    import spyrrow

    best, whole = float("inf"), (spyrrow.ReportType.ExplFeas, spyrrow.ReportType.CmprFeas)
    while not done.is_set():
        time.sleep(EVERY)
        reports = [found for kind, found in queue.drain() if kind in whole]
        for found in reports:
            if found.width < best:
                best = found.width
                _say(found, final=False)


def _say(found: Any, final: bool) -> None:
    placed = [[int(p.id), p.rotation, *p.translation] for p in found.placed_items]
    line = {"width": found.width, "placed": placed, "final": final}
    sys.stdout.write(json.dumps(line) + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
