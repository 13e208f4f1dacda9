"""When to start each part of the work, so that the costume is ready: counted back along the order of the plan.

steps in their order, each once its parts are there and have hung or dried -> days -> parts of the work, in time
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from drafting.making.model import Said, Stage, Step, said
from drafting.making.order.placing import steps_before

HOURS_A_DAY = 4.0
"""hours of sewing in a day beside other work (ours)."""

AWAKE = 24.0
"""hours of a day: what hangs or dries goes on overnight."""

CLOTHS: tuple[Stage, ...] = ("treat", "cut")
"""Stages of the cloths, which every garment shares."""


LINING_LAST = "cut.lining_last"
"""The sentence of a cloth that is cut only once the fittings of its garments are done."""


@dataclass(frozen=True, slots=True)
class Start:
    """When a part of the work has to begin: `days` before the costume is worn, and the day itself if known.

    `stage` is what is done, of the cloths or of one `garment`, or `last` of the cloths: what waits for a first
    fitting; `hours` the work in it.
    """

    stage: Stage
    garment: str
    hours: float
    days: int
    on: date | None = None
    last: bool = False

    @property
    def part(self) -> str:
        """The part of the work, as the plan's texts name it."""
        return f"{self.stage}_last" if self.last else self.stage

    def words(self, stage: str) -> Said:
        """Return the line of the plan; `stage` is the stage's name for a reader."""
        when = self.on.isoformat() if self.on else ""
        key = "time.start_on" if self.on else "time.start"
        what = said("time.of_garment", garment=self.garment, stage=stage) if self.garment else stage
        return said(key, stage=what, hours=self.hours, days=self.days, when=when)


def starts(
    steps: Sequence[Step], worn_on: date | None = None, hours_a_day: float = HOURS_A_DAY
) -> tuple[Start, ...]:
    """Return when each part of the work has to begin, the earliest first, counted back from the day before the
    costume is worn.

    A part is one stage of the cloths, or a garment's mock-up, first fitting, sewing or finishing. Each step
    begins when the one before it is done and its own parts have hung or dried: `hours_a_day` of work, waits in
    full days of 24 hours.
    """
    begins, done = _in_days(steps, hours_a_day)
    parts: dict[_Part, list[Step]] = {}
    for step, part in zip(steps, _parts(steps), strict=True):
        parts.setdefault(part, []).append(step)
    found = []
    for (stage, garment, last), own in parts.items():
        work = math.fsum(step.minutes for step in own) / 60
        days = 1 + math.ceil(round(done - begins[own[0].key], 6))
        on = None if worn_on is None or worn_on.toordinal() <= days else worn_on - timedelta(days=days)
        found.append(Start(stage, garment, work, days, on, last))
    return tuple(sorted(found, key=lambda one: -one.days))


def _in_days(steps: Sequence[Step], hours_a_day: float) -> tuple[dict[str, float], float]:
    """Return by its key when each step begins, and when all is done: days from the first."""
    needs, clock = steps_before(steps), 0.0
    begins: dict[str, float] = {}
    ready: dict[str, float] = {}
    for step in steps:
        clock = max([clock, *(ready[key] for key in needs[step.key])])
        begins[step.key] = clock
        clock += step.minutes / 60 / hours_a_day
        ready[step.key] = clock + step.wait / AWAKE
    return begins, max(ready.values(), default=0.0)


_Part = tuple[Stage, str, bool]
"""A part of the work: its stage, its garment, and whether it is of the cloths and waits for a first fitting."""


def _parts(steps: Sequence[Step]) -> list[_Part]:
    """Return which part of the work each step belongs to."""
    fitted: set[str] = set()
    found: list[_Part] = []
    first = {step.garment: step.key for step in reversed(steps) if step.verb == "fit"}
    for step in steps:
        if step.stage in CLOTHS:
            found.append((step.stage, "", any(one.key == LINING_LAST for one in step.say)))
        elif step.verb == "toile":
            found.append(("prepare", step.garment, False))
        elif step.garment in first and step.garment not in fitted:
            found.append(("fit", step.garment, False))
        else:
            found.append(("finish" if step.stage == "finish" else "join", step.garment, False))
        if first.get(step.garment) == step.key:
            fitted.add(step.garment)
    return found
