"""A worker that keeps no samples of what it did: by itself it keeps the stack of every hundredth of a second."""

from __future__ import annotations

from typing import Any

from distributed import WorkerPlugin

SAMPLING = ("profile", "profile-cycle")
"""What a worker of Dask's calls its own clocks for samples."""


class Unsampled(WorkerPlugin):  # type: ignore[misc]
    """While a cast is made, no worker samples: 500 people's samples were as large as all else together."""

    name = "drafting-unsampled"

    def setup(self, worker: Any) -> None:
        """Stop the clocks of a worker, whether it runs already or is about to."""
        self.held = {name: worker.periodic_callbacks.pop(name, None) for name in SAMPLING}
        for clock in self.held.values():
            if clock is not None:
                worker.loop.add_callback(clock.stop)

    def teardown(self, worker: Any) -> None:
        """Let them go on."""
        for name, clock in self.held.items():
            if clock is not None:
                worker.periodic_callbacks[name] = clock
                worker.loop.add_callback(clock.start)
