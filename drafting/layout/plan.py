"""Pieces and a cloth in, a `Lay` out.

One lay a cloth: the way to spread it is chosen, the pieces are packed, and what other widths would
need is worked out beside.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.names import name_in_words
from drafting.layout.cloth import Cloth, LayName
from drafting.layout.lay import Lay
from drafting.layout.outlines import Part
from drafting.layout.packing.pack import COUNT, pack
from drafting.layout.packing.search import OnBetterLay, Searcher
from drafting.layout.pieces import WAYS, Pieces
from drafting.layout.remarks import lay_findings
from drafting.layout.widths import with_other_ways

QUICK = 250
"""Outlines placed to choose between two ways to spread the cloth (ours)."""

WORTH = 0.9
"""Cloth is opened by itself only where that takes less than this share of the folded length (ours)."""


TWICE, FEW = 0.9, 8
"""Cloth is folded twice by itself only for so much less length, and for so few pieces (ours)."""


def lay_out(
    parts: tuple[Part, ...],
    cloth: Cloth,
    *,
    seconds: float = 0.0,
    count: float = COUNT,
    seed: int = 0,
    workers: int = 2,
    table: bool = True,
    said: OnBetterLay | None = None,
    halted: Callable[[], bool] = bool,
) -> Lay:
    """Return the shortest lay found of these pieces on one cloth.

    Without `seconds` the search is limited by `count` and gives the same lay every time; with them
    both engines look that long. Pieces that are too wide are in `left_out`, with an error finding.
    Raises `DraftError` for outlines that cannot be laid at all, and for one-way cloth folded across.
    """
    refuse_nap_both_ways(cloth)
    pieces = Pieces(parts, cloth)
    way = _way(pieces)
    job, outlines, left_out = pieces.job(way)
    packing = pack(
        job,
        count=count,
        seconds=seconds,
        seed=seed,
        workers=workers,
        said=said,
        halted=halted,
        rough=pieces.kit(job),
    )
    lay = Lay(cloth, way, job, outlines, packing, left_out)
    lay = with_other_ways(pieces, lay) if table else lay
    opened = _opened_by_itself(pieces, lay)
    return replace(lay, findings=(*lay_findings(lay), *opened))


def refuse_nap_both_ways(cloth: Cloth) -> None:
    """Raise `DraftError` where one-way cloth is to be folded across."""
    if cloth.one_way and cloth.wishes.lay == "crosswise":
        raise DraftError(
            f"{cloth.title} is one-way and cannot be folded across: on the layer folded over, nap or "
            "print would run the other way",
            turn="cut it across into two lengths and turn the upper one round, right sides together "
            "and the nap of both one way; or lay it folded (lengthwise) or open",
        )


def _way(pieces: Pieces) -> LayName:
    """Return how to spread the cloth: as wished, else folded where nothing sticks out of it."""
    match pieces.cloth.wishes.lay:
        case "open" | "folded" | "crosswise" | "double" as way:
            return way
    if pieces.cloth.layers == "single":
        return "open"
    lost = {way: len(pieces.job(way)[2]) for way in WAYS}
    if lost["folded"] > lost["open"]:
        return "open"
    lone = any(c.hand in ("left", "right") for c in pieces.job("folded")[0].copies)
    if lone:
        both = {way: _quick(pieces, way) for way in WAYS}
        if both["open"] < WORTH * both["folded"]:
            return "open"
    return "double" if _double_pays(pieces) else "folded"


def _double_pays(pieces: Pieces) -> bool:
    """Say whether two folds take so much less cloth than one that they are worth the folding.

    Asked of few pieces without repeats and faults, two of them or more on the fold.
    """
    cloth, job = pieces.cloth, pieces.job("folded")[0]
    folds = sum(job.kinds[copy.kind].fold for copy in job.copies)
    if cloth.faults or cloth.repeat_along or cloth.repeat_across or folds < 2 or len(job.copies) > FEW:
        return False
    once = _quick(pieces, "folded")
    longest = max(box[2] - box[0] for box in (kind.box for kind in job.kinds))
    if TWICE * once <= max(longest, job.area / job.strip.width) or pieces.job("double")[2]:
        return False
    return _quick(pieces, "double") < TWICE * once


def _quick(pieces: Pieces, way: LayName) -> float:
    job = pieces.job(way)[0]
    return Searcher(pieces.kit(job), QUICK).run().length if job.copies else 0.0


def _opened_by_itself(pieces: Pieces, lay: Lay) -> Iterator[Finding]:
    if lay.cloth.wishes.lay != "auto" or lay.lay != "open":
        return
    lost = [o.part.name for o in pieces.job("folded")[2]]
    still = {o.part.name for o in lay.left_out}
    wide = [name for name in lost if name not in still]
    why = f"{', '.join(map(name_in_words, wide))} would not fit on it folded" if wide else "that takes less cloth"
    if lay.cloth.layers == "single":
        why = f"{lay.cloth.title} is cut in one layer, as two would slip or lock"
    if lost != sorted(still) or not still:
        yield Finding(
            "open the cloth",
            "note",
            lay.role,
            None,
            None,
            f"Open the cloth: {why}. Half pieces are laid whole, and a pair as a left and a right.",
        )
