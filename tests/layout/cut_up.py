"""Rectangles cut up into pieces: put together again, they fill the cloth, so the shortest lay is known.

All figures are invented. Cuts run straight across a part at a seeded place and slant.
"""

from __future__ import annotations

import random
from dataclasses import dataclass

from shapely import LineString, Polygon, box
from shapely.affinity import rotate, translate
from shapely.ops import split

from drafting.layout import Copy, Job, Kind, Packing, Pose, Spot, Strip

LENGTH, WIDTH = 2000.0, 1500.0


@dataclass(frozen=True)
class CutUp:
    """The pieces of a rectangle to be laid on a strip of its width, and how they lay in it."""

    job: Job
    shortest: Packing


def halved(part: Polygon, pick: random.Random, slant: float) -> list[Polygon]:
    """Return a part cut in two across its longer side, up to `slant` degrees off square."""
    x0, y0, x1, y1 = part.bounds
    share, turn = pick.uniform(0.35, 0.65), pick.uniform(-slant, slant)
    if x1 - x0 > y1 - y0:
        cut = LineString([(0, -9e3), (0, 9e3)])
        at = x0 + share * (x1 - x0), (y0 + y1) / 2
    else:
        cut = LineString([(-9e3, 0), (9e3, 0)])
        at = (x0 + x1) / 2, y0 + share * (y1 - y0)
    return list(split(part, translate(rotate(cut, turn, origin=(0, 0)), *at)).geoms)


def cut_up(pieces: int, slant: float, seed: int) -> CutUp:
    """Return the rectangle cut into so many pieces, the largest part always next."""
    pick = random.Random(seed)
    parts = [box(0, 0, LENGTH, WIDTH)]
    while len(parts) < pieces:
        parts.sort(key=lambda part: part.area)
        parts += halved(parts.pop(), pick, slant)
    kinds, spots = [], []
    for n, part in enumerate(parts):
        x0, y0, _, _ = part.bounds
        ring = list(part.exterior.coords)[:-1]
        upright = ring if part.exterior.is_ccw else ring[::-1]
        kinds.append(Kind(f"piece {n}", tuple(complex(x - x0, y - y0) for x, y in upright)))
        spots.append(Spot(n, Pose(), x0, y0))
    copies = tuple(Copy(n, (Pose(), Pose(180))) for n in range(pieces))
    job = Job(tuple(kinds), copies, Strip(WIDTH))
    return CutUp(job, job.packing(tuple(spots), "as cut"))
