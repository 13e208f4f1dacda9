"""Cloth with two folds: both selvedges brought in to meet, so that two pieces lie on a fold side by side."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from drafting.layout.cloth import Cloth
from drafting.layout.jobs import job_from
from drafting.layout.outlines import Outline
from drafting.layout.packing.clean import checked_job
from drafting.layout.packing.job import Kit
from drafting.layout.packing.model import Job
from drafting.layout.packing.search import Searcher

TRIED, PLACED = 4, 60
"""Places where the selvedges may meet that are tried, and outlines placed for each (ours: a tenth of a second)."""

HAIR = 0.01
"""mm of room beyond the piece that a part is made for."""

APART = 10.0
"""mm: two such places nearer than this are one (ours)."""


def best_meet(outlines: tuple[Outline, ...], cloth: Cloth, ready: Callable[[Job], Kit]) -> float:
    """Return how far from the first fold the selvedges meet in the shortest lay found, mm.

    Either fold serves for any piece, so the first part is never the wider one. The middle where no place
    has room for every piece.
    """
    found = [
        (length, meet) for meet in _places(outlines, cloth) if (length := _length(outlines, cloth, meet, ready))
    ]
    return min(found)[1] if found else cloth.usable_width / 4


def _places(outlines: tuple[Outline, ...], cloth: Cloth) -> Iterator[float]:
    """Yield places to try: as wide as one of the pieces, or what the widest leaves; the middle first."""
    half, gap = cloth.usable_width / 2, cloth.wishes.gap
    high = [o.box[3] - o.box[1] + (0.0 if o.fold else gap / 2) for o in outlines]
    given = [half / 2, *(h + HAIR for h in high), *(half - h - HAIR for h in high)]
    tried: list[float] = []
    for meet in given:
        fits = max(high, default=0.0) <= half - meet and 0 < meet <= half / 2
        if fits and all(abs(meet - other) > APART for other in tried) and len(tried) < TRIED:
            tried.append(meet)
            yield meet


def _length(outlines: tuple[Outline, ...], cloth: Cloth, meet: float, ready: Callable[[Job], Kit]) -> float:
    """Return how long a quick lay is, mm; 0 where a piece has no room."""
    job, _, lost = job_from(outlines, cloth, "double", meet)
    if lost or not job.copies:
        return 0.0
    return Searcher(ready(checked_job(job)), PLACED).run().length
