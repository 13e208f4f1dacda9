"""Pieces and a cloth in, a `Lay` out. Layer 4.

One lay a cloth: the way to spread it is chosen, the pieces are packed, and what other widths would
need is worked out beside.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from drafting.findings import Finding
from drafting.layout.cloth import Cloth, LayName
from drafting.layout.kit import ROUGH, Kit
from drafting.layout.lay import Lay
from drafting.layout.outlines import Part, job_of
from drafting.layout.pack import COUNT, pack
from drafting.layout.said import findings_of
from drafting.layout.search import Said, Searcher
from drafting.layout.sound import checked_job
from drafting.layout.widths import with_other_ways

QUICK = 250
"""Outlines placed to choose between two ways to spread the cloth (ours)."""

WORTH = 0.9
"""Cloth is opened by itself only where that takes less than this share of the folded length (ours)."""


def lay_out(
    parts: tuple[Part, ...], cloth: Cloth, *, seconds: float = 0.0, count: float = COUNT,
    seed: int = 0, workers: int = 2, table: bool = True, said: Said | None = None,
    halted: Callable[[], bool] = bool,
) -> Lay:  # fmt: skip
    """Return the shortest lay found of these pieces on one cloth.

    Without `seconds` the search is limited by `count` and gives the same lay every time; with them
    both engines look that long. Pieces that are too wide are in `left_out`, with an error finding.
    Raises `DraftError` for outlines that cannot be laid at all.
    """
    way = _way(parts, cloth)
    job, outlines, left_out = job_of(parts, cloth, way)
    packing = pack(
        job, count=count, seconds=seconds, seed=seed, workers=workers, said=said, halted=halted
    )
    lay = Lay(cloth, way, checked_job(job), outlines, packing, left_out)
    lay = with_other_ways(parts, lay) if table else lay
    opened = _opened_by_itself(parts, lay)
    return replace(lay, findings=(*findings_of(lay), *opened))


def _way(parts: tuple[Part, ...], cloth: Cloth) -> LayName:
    """Return how to spread the cloth: as wished, else folded where nothing sticks out of it."""
    match cloth.wishes.lay:
        case "open" | "folded" | "crosswise" as way:
            return way
    lost = {way: len(job_of(parts, cloth, way)[2]) for way in ("folded", "open")}
    if lost["folded"] > lost["open"]:
        return "open"
    lone = any(c.hand in ("left", "right") for c in job_of(parts, cloth, "folded")[0].copies)
    if not lone:
        return "folded"
    both = {way: _quick(parts, cloth, way) for way in ("folded", "open")}
    return "open" if both["open"] < WORTH * both["folded"] else "folded"


def _quick(parts: tuple[Part, ...], cloth: Cloth, way: LayName) -> float:
    job = checked_job(job_of(parts, cloth, way)[0])
    return Searcher(Kit(job, 0.0, ROUGH), QUICK).run().length if job.copies else 0.0


def _opened_by_itself(parts: tuple[Part, ...], lay: Lay) -> Iterator[Finding]:
    if lay.cloth.wishes.lay != "auto" or lay.lay != "open":
        return
    lost = [o.part.name for o in job_of(parts, lay.cloth, "folded")[2]]
    still = {o.part.name for o in lay.left_out}
    wide = [name for name in lost if name not in still]
    why = f"{', '.join(wide)} would not fit on it folded" if wide else "that takes less cloth"
    if lost != sorted(still) or not still:
        yield Finding(
            "open the cloth", "note", lay.role, None, None,
            f"Open the cloth: {why}. Half pieces are laid whole, and a pair as a left and a right.",
        )  # fmt: skip
