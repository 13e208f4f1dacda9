"""When the small pictures of the choices are made: for those in sight, one by one, while the hand rests."""

from __future__ import annotations

from typing import Any

from drafting.notebook.bench.fields import Knobs
from drafting.notebook.bench.sample import sample
from drafting.notebook.when_resting import Later

RESTED = 0.7
"""Seconds without a move before one is made, and between two of them hardly any (ours)."""

BETWEEN = 0.03


class Sampling:
    """Makes a small picture for every choice that the page has in sight; each is made once a garment.

    `bench` is asked for the garment that stands, its controls and its unit.
    """

    def __init__(self, bench: Any, knobs: Knobs) -> None:
        self.bench, self.knobs = bench, knobs
        self.known: dict[tuple[str, str], str] = {}
        self.rest = Later(self._next, RESTED, needed=False)
        self.more = Later(self._next, BETWEEN, needed=False)
        knobs.observe(lambda _: self._wait(), names=["wanted", "moves", "groups"])

    def _wait(self) -> None:
        self.more.drop()
        self.rest.ask()

    def _next(self) -> None:
        """Make the first picture that is wanted and not known, and come back for the others."""
        garment, controls = self.bench.garment, self.bench.controls
        wanted = [name for name in self.knobs.wanted if name in controls]
        for name in wanted:
            if (garment, name) not in self.known:
                drawn = sample(self.bench.standing.made, controls[name], self.bench.unit)
                self.known[garment, name] = str(drawn or "")
                self.more.ask()
                break
        shown = {name: svg for (of, name), svg in self.known.items() if of == garment}
        if shown != self.knobs.samples:
            self.knobs.samples = shown
