"""Pieces and a cloth in, a `Lay` out. Layer 4.

One lay a cloth: the way to spread it is chosen, the pieces are packed, and what other widths would
need is worked out beside.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import replace

from drafting.findings import Finding
from drafting.layout.cloth import Cloth, LayName
from drafting.layout.kit import ROUGH, Kit
from drafting.layout.lay import LAYERS_LONG, Lay, OtherWay
from drafting.layout.model import Packing
from drafting.layout.outlines import Part, job_of
from drafting.layout.pack import COUNT, pack
from drafting.layout.said import findings_of
from drafting.layout.search import Said, Searcher
from drafting.layout.sound import checked_job
from drafting.layout.verify import wrong

BOLTS = (900.0, 1120.0, 1370.0, 1500.0, 1600.0, 2800.0)
"""mm: common bolt widths, the narrow end of each range (check value F11)."""

QUICK = 250
"""Outlines placed to learn what another width needs (ours)."""

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


def with_other_ways(parts: tuple[Part, ...], lay: Lay) -> Lay:
    """Return the lay with what common bolt widths need, folded and open.

    Where a narrower cloth happened on a shorter lay, that one is taken: it fits here as well.
    """
    ways: tuple[LayName, ...] = ("folded", "open")
    if lay.lay == "crosswise":
        ways = (*ways, "crosswise")
    others: list[OtherWay] = []
    for way in ways:
        kit: Kit | None = None
        least = math.inf
        for width in sorted({lay.cloth.width, *BOLTS}):
            if width == lay.cloth.width and way == lay.lay:
                names = tuple(o.part.name for o in lay.left_out)
                least = least if names else min(least, lay.cloth_length)
                others.append(OtherWay(width, way, None if names else lay.cloth_length, names))
                continue
            job, _, lost = job_of(parts, lay.cloth.at_width(width), way)
            if lost or not job.copies:
                others.append(OtherWay(width, way, None, tuple(o.part.name for o in lost)))
                continue
            job = checked_job(job)
            kit = kit.resized(job) if kit else Kit(job, max(BOLTS), ROUGH)
            packing = Searcher(kit, QUICK).run()
            if way == lay.lay and width < lay.cloth.width:
                lay = _shorter(lay, packing)
            least = min(least, packing.length * LAYERS_LONG[way])
            others.append(OtherWay(width, way, least))
    return replace(lay, others=tuple(others))


def _shorter(lay: Lay, packing: Packing) -> Lay:
    better = packing.length < lay.length and not lay.left_out and not wrong(lay.job, packing)
    return replace(lay, packing=packing) if better else lay
