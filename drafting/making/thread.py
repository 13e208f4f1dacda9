"""Thread: how much each step of a costume takes, by its kind and the cloth that it matches.

    step -> rows of stitches (stitch, mm of seam, plies) -> mm of thread, at least what its own geometry needs

`Source.THREAD_GUIDE` gives thread per length of seam: 301 2.5, 304 5.5, 101 5, 103 4.5. Others are from memory:
401 5.5, 504 14, 514 18 (with all their threads), hand stitches 200 and 202 3 and 4, the three-step zigzag 7. A
guide knows thin cloth only: two plies of velveteen need more, which the stitch's own path tells.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.costume.workroom import THREE_STEP
from drafting.draft.by_role import edges_as
from drafting.draft.openings import hands
from drafting.draft.roles import COLLARS, FACINGS, EdgeRole
from drafting.fabric import Fabric
from drafting.making.model import Step
from drafting.making.stitch_rows import StitchRow, ThreadKind, keys_of, rows_of

RATIOS = {
    "101": 5.0,
    "103": 4.5,
    "200": 3.0,
    "202": 4.0,
    "209": 1.0,
    "301": 2.5,
    "304": 5.5,
    THREE_STEP: 7.0,
    "401": 5.5,
    "406": 18.0,
    "504": 14.0,
    "514": 18.0,
    "buttonhole stitch": 20.0,
}
"""Thread per length of seam (`Source.THREAD_GUIDE`; those not in it from memory)."""

WASTE = 0.25
"""Share added for ends, trials and unpicking (common practice: a quarter)."""

PLY = 0.5
"""mm: thickness of a ply where nobody measured it (a shirting's)."""


def thread_ratio(stitch: str, length: float = 2.5, width: float = 0.0, thickness: float = 0.0) -> float:
    """Return thread per length of seam: the handbook's, or what the stitch's path needs if that is more.

    A lockstitch of length l through T mm of cloth runs l along each face and T through it, on both threads:
    2 (l + T) / l. A zigzag runs the slant of l and its width. A running stitch is one such thread. A stitch that
    nobody lists counts as the greediest.

    >>> thread_ratio("301", 2.5, thickness=2.25)
    3.8
    """
    known = RATIOS.get(stitch, max(RATIOS.values()))
    slant = math.hypot(length, width)
    path = {
        "301": 2 * (length + thickness) / length,
        "304": 2 * (slant + thickness) / length,
        THREE_STEP: 2 * (slant + thickness) / length,
        "401": (4 * length + 2 * thickness) / length,
        "209": (length + thickness) / length,
    }
    return max(known, path.get(stitch, 0.0))


def thread_of(rows: Iterable[StitchRow], ply: float) -> float:
    """Return the mm of thread that rows through plies of this thickness take, no waste yet."""
    return math.fsum(r.length * thread_ratio(r.stitch, r.stitch_length, r.width, r.plies * ply) for r in rows)


def seam_thread(made: Made, steps: Iterable[Step]) -> dict[tuple[ThreadKind, str], float]:
    """Return mm of thread by its kind and the role of the cloth that it matches; no waste yet."""
    garments = {garment.name: garment for garment in made.garments}
    found: dict[tuple[ThreadKind, str], float] = {}
    for step in steps:
        if step.stage == "cut":
            for one in garments.values():
                for role, length in _stayed(step, one):
                    found["sewing", role] = found.get(("sewing", role), 0.0) + length
        garment = garments.get(step.garment)
        if garment is None:
            continue
        for row in rows_of(step, garment, made.costume.workroom):
            role = "lining" if row.lining else garment.fabric
            colour = role if row.kind in ("sewing", "overlock", "buttonhole") else ""
            length = thread_of([row], thread_ply(made.costume.fabrics.get(role)))
            found[row.kind, colour] = found.get((row.kind, colour), 0.0) + length
    return {key: length for key, length in found.items() if length}


STAYED = 2.2
"""mm of the stitches that hold a curved neck (common practice)."""


def _stayed(step: Step, garment: MadeGarment) -> Iterator[tuple[str, float]]:
    """Yield, by the cloth each matches, the mm of thread that holds a garment's necks as soon as they are cut."""
    if "stay_neck" not in keys_of(step.say):
        return
    cut = {f"{garment.name}.{piece.name}": piece for piece in garment.draft.pieces if not piece.material}
    own = [cut[name] for name in step.pieces if name in cut and cut[name].role not in COLLARS | FACINGS]
    for piece in own:
        necks = hands(piece) * math.fsum(edge.length for edge in edges_as(piece, EdgeRole.NECK))
        yield piece.cut_from or garment.fabric, thread_of([StitchRow("301", necks, STAYED, plies=1)], PLY)


def thread_ply(fabric: Fabric | None) -> float:
    return (fabric.thickness if fabric else None) or PLY
