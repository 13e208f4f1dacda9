"""The pieces of one cloth, with what every lay of them shares worked out once."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from drafting.layout.cloth import Cloth, LayName
from drafting.layout.double import best_meet
from drafting.layout.jobs import job_from
from drafting.layout.outlines import Outline, Part, outline_of
from drafting.layout.packing.clean import checked_job
from drafting.layout.packing.clip import grid_scale
from drafting.layout.packing.job import ROUGH, Kit, extent_of
from drafting.layout.packing.model import Job
from drafting.layout.packing.shapes import Shapes
from drafting.layout.stripes import on_better_stripe

WAYS: tuple[LayName, ...] = ("folded", "open")


@dataclass(frozen=True)
class Pieces:
    """The parts to be cut from one cloth; outlines and rough shapes are kept once worked out."""

    parts: tuple[Part, ...]
    cloth: Cloth

    def outlines(self, way: LayName) -> tuple[Outline, ...]:
        """Return every piece as it is laid on cloth spread in this way."""
        if way not in self._outlines:
            self._outlines[way] = tuple(outline_of(part, way) for part in self.parts)
        return self._outlines[way]

    def job(
        self, way: LayName, cloth: Cloth | None = None
    ) -> tuple[Job, tuple[Outline, ...], tuple[Outline, ...]]:
        """Return the checked job on `cloth`, this one or as it is at another width; its outlines by kind, and
        those too wide for it."""
        cloth = cloth or self.cloth
        if (way, cloth.width) not in self._jobs:
            meet = self._meet(cloth) if way == "double" else None
            job, kept, lost = job_from(self.outlines(way), cloth, way, meet)
            self._jobs[way, cloth.width] = on_better_stripe(checked_job(job)), kept, lost
        return self._jobs[way, cloth.width]

    @cached_property
    def _jobs(self) -> dict[tuple[LayName, float], tuple[Job, tuple[Outline, ...], tuple[Outline, ...]]]:
        return {}

    def _meet(self, cloth: Cloth) -> float:
        """Return where the selvedges of a cloth with two folds are best brought to meet, mm from the first."""
        if cloth.usable_width not in self._meets:
            self._meets[cloth.usable_width] = best_meet(self.outlines("double"), cloth, self.kit)
        return self._meets[cloth.usable_width]

    @cached_property
    def _meets(self) -> dict[float, float]:
        return {}

    @cached_property
    def _outlines(self) -> dict[LayName, tuple[Outline, ...]]:
        return {}

    def kit(self, job: Job) -> Kit:
        """Return a job of these pieces with rough outlines; what does not hang on the cloth's width is shared."""
        if job not in self._kits:
            alike = [kit for kit in self._kits.values() if kit.like(job)]
            self._kits[job] = alike[0].resized(job) if alike else Kit(job, ROUGH, self.rough)
        return self._kits[job]

    @cached_property
    def _kits(self) -> dict[Job, Kit]:
        return {}

    @cached_property
    def rough(self) -> Shapes:
        """Rough outlines on a grid that has room for these pieces on any bolt, spread any way."""
        widest = self.cloth.at_width(self.cloth.widths[-1])
        jobs = [self.job(way, c)[0] for way in WAYS for c in (widest, self.cloth)]
        scale = grid_scale(max(extent_of(job) for job in jobs))
        return Shapes(scale, self.cloth.wishes.gap, ROUGH)
