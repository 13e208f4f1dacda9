"""Write the whole costume while the page stays alive: progress in words, and a way to stop it."""

from __future__ import annotations

import threading
from collections.abc import Callable, Mapping
from pathlib import Path

from drafting.costume.file import CostumeFile
from drafting.costume.lays import laid_out, materials
from drafting.costume.make import Made, make
from drafting.costume.telling import Tell, tell_nobody
from drafting.layout import Lay, Packing
from drafting.output.folder import check_out

LAY, WRITE = 0.05, 0.4
"""Share of the whole at which the lays begin, and the writing (measured on the lamplighter)."""


class Stopped(Exception):  # noqa: N818 - nothing went wrong
    """The maker stopped it; what lay in the folder lies there still."""


def write_costume(
    costume: CostumeFile,
    out: Path,
    tell: Tell = tell_nobody,
    halted: Callable[[], bool] = bool,
    standing: Callable[[Made], Mapping[str, Lay]] | None = None,
) -> Path:
    """Draft, lay out and write a costume as `drafting make` does; return the folder.

    `standing` gives the lays that stand already, a hand's above all. `tell` hears each step
    in words and the share that is done, 0 to 1. Raises `Stopped` soon after
    `halted` says so, with `out` as it was, `InputError` where `out` may not be written or the
    costume cannot be drafted.
    """

    def on() -> bool:
        if halted():
            raise Stopped
        return False

    def step(words: str, share: float) -> None:
        on()
        tell(words, share)

    from drafting.output.write import write_output  # what only writing needs would slow every page's opening

    check_out(out, inputs=(Path(costume.path),))
    step("Drafting the pieces", 0.0)
    made = make(costume)
    roles = [cloth.role for cloth, _ in materials(made)]

    def found(role: str, _: Packing) -> None:
        share = roles.index(role) / len(roles)
        tell(f"Laying the pieces on the cloth: {role}", LAY + (WRITE - LAY) * share)

    step("Laying the pieces on the cloth", LAY)
    made = laid_out(made, said=found, halted=on, standing=standing(made) if standing else {})
    step("Setting the sheets", WRITE)
    write_output(made, out, lambda words, share: step(words, WRITE + (1 - WRITE) * share))
    return out


class Errand:
    """One piece of work on a thread of its own, that may be asked to stop."""

    def __init__(self) -> None:
        self._stop = threading.Event()
        self._thread: threading.Thread | None = None

    def start(self, do: Callable[[], None]) -> None:
        """Begin, unless it is still under way."""
        if self.busy:
            return
        self._stop.clear()
        self._thread = threading.Thread(target=do, daemon=True)
        self._thread.start()

    @property
    def busy(self) -> bool:
        return self._thread is not None and self._thread.is_alive()

    def stop(self) -> None:
        """Ask it to stop; it does so at its next step."""
        self._stop.set()

    def halted(self) -> bool:
        return self._stop.is_set()

    def wait(self, seconds: float | None = None) -> None:
        """Wait until it has ended, at most so many seconds."""
        if self._thread is not None:
            self._thread.join(seconds)
