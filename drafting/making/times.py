"""How long each step takes, as a guess, and when to start so that the costume is ready.

Minutes are guesses of a practised hand at home (from memory); the page lets a maker put her own in.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from drafting.making.model import Said, Step, said

SETTLING = 4.0
"""minutes to pin, baste the ends and thread for one seam (a guess)."""

A_METRE = {
    "join": 9.0,
    "press": 4.0,
    "gather": 12.0,
    "set in": 30.0,
    "hem": 20.0,
    "fell": 40.0,
    "face": 14.0,
    "bind": 16.0,
    "casing": 14.0,
    "baste": 6.0,
    "topstitch": 7.0,
}
"""minutes for a metre of seam by the kind of work (guesses); others as `join`."""

A_PIECE = {"button": 12.0, "fuse": 6.0, "bone": 15.0, "dart": 8.0, "fit": 45.0, "try": 15.0}
"""minutes for each by the kind of work (guesses)."""

HOURS_A_DAY = 4.0
"""hours of sewing in a day beside other work (ours)."""

AWAKE = 24.0
"""hours of a day: what hangs or dries goes on overnight."""


def minutes(verb: str, length: float = 0.0, count: int = 0) -> float:
    """Return a guess for a step of this kind on `length` mm of seam, or on `count` things.

    >>> minutes("join", 1000), minutes("button", count=6)
    (13.0, 72.0)
    """
    if count:
        return A_PIECE.get(verb, SETTLING) * count
    return SETTLING + A_METRE.get(verb, A_METRE["join"]) * length / 1000


@dataclass(frozen=True, slots=True)
class Start:
    """When a stage has to begin: `days` before the costume is worn, and the day itself if known."""

    stage: str
    hours: float
    days: int
    on: date | None = None

    def words(self, stage: str) -> Said:
        """Return the line of the plan; `stage` is the stage's name for a reader."""
        when = self.on.isoformat() if self.on else ""
        key = "time.start_on" if self.on else "time.start"
        return said(key, stage=stage, hours=self.hours, days=self.days, when=when)


def starts(
    steps: Iterable[Step], worn_on: date | None = None, hours_a_day: float = HOURS_A_DAY
) -> tuple[Start, ...]:
    """Return when each stage has to begin, counted back from the day before the costume is worn.

    Waits run beside the work of later steps only where the order has already placed such work in
    them, so days are counted as work over `hours_a_day` plus every wait in full days: the careful
    side.
    """
    stages: dict[str, list[Step]] = {}
    for step in steps:
        stages.setdefault(step.stage, []).append(step)
    found: list[Start] = []
    days = 1
    for stage in reversed(stages):
        work = math.fsum(step.minutes for step in stages[stage]) / 60
        waits = math.fsum(step.wait for step in stages[stage])
        days += math.ceil(work / hours_a_day) + math.ceil(waits / AWAKE)
        on = None if worn_on is None or worn_on.toordinal() <= days else worn_on - timedelta(days=days)
        found.append(Start(stage, work, days, on))
    return tuple(reversed(found))
