"""What may wait until the hand rests: it runs once, a moment after the last time it was asked for."""

from __future__ import annotations

import asyncio
from collections.abc import Callable

REST = 0.08
"""Seconds without a new value after which a hand rests: a key held down repeats every 30 to 50 ms
(common practice of desktops)."""


class Later:
    """Runs `do` after `seconds` in which it was not asked for again.

    In a notebook the kernel's loop runs on; in a plain script there is none to come back to, and `do`
    runs at once, or never where it is not `needed`.
    """

    def __init__(self, do: Callable[[], None], seconds: float = REST, needed: bool = True) -> None:
        self._do, self._seconds, self._needed = do, seconds, needed
        self._waiting: asyncio.TimerHandle | None = None

    def ask(self) -> None:
        """Ask for it: what was asked for before and has not run yet is let go."""
        self.drop()
        try:
            self._waiting = asyncio.get_running_loop().call_later(self._seconds, self._run)
        except RuntimeError:
            if self._needed:
                self._run()

    def drop(self) -> None:
        """Let go what was asked for and has not run yet."""
        if self._waiting:
            self._waiting.cancel()
        self._waiting = None

    def _run(self) -> None:
        self._waiting = None
        self._do()
