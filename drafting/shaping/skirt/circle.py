"""A skirt that is a part of a circle: the waist an arc of exactly its length, the hem its parallel. mm.

The radius of the waist is its girth over the angle of the whole skirt (radians), exact plane geometry. The
ring is parted into equal panels that the cloth can take; they are drawn from the centre front round to the
centre back, each standing as it hangs.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass, replace

from drafting.draft.draft import Seam
from drafting.draft.frame import BodyFrame, BodyHeight, Limb
from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.roles import EdgeRole, Half, LevelKind, PieceRole, SeamKind
from drafting.geometry import line, turn
from drafting.geometry.arc import arc
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told

ROOM = 70.0
"""mm: what a panel needs of the cloth's width for its allowances (ours: two of 35, let out too)."""

MEETS = 20.0
"""mm: what a centre seam needs for its allowances where a panel on the fold comes round to it (ours)."""

MOST_PANELS = 6
"""More panels than this in half a skirt are refused (ours)."""


UPRIGHT = 90.0
"""degrees: a wider panel of a ring, its warp along one edge, hangs upside down at the other (plane geometry)."""


@dataclass(frozen=True)
class Sector:
    """Half a ring: the `inner` and `outer` radius, and the `angle` of the half in degrees."""

    inner: float
    outer: float
    angle: float

    def at(self, degrees: float) -> complex:
        """Return the direction from the middle of the ring, straight down at 0, towards the back."""
        return -1j * turn(degrees)


@dataclass(frozen=True)
class Parting:
    """How half a ring is cut: in so many panels, its front on the fold or not, the warp along an edge or not."""

    panels: int
    fold: bool
    edge: bool


def waist_ring(waist: float, length: float, angle: float) -> Sector:
    """Return half the ring whose whole waist is `waist` mm and whose whole angle is `angle` degrees.

    >>> ring = waist_ring(700.0, 600.0, 360.0)
    >>> round(ring.inner, 3), round(ring.outer, 3), ring.angle
    (111.408, 711.408, 180.0)
    """
    inner = waist / math.radians(angle)
    return Sector(inner, inner + length, angle / 2)


def panels_for(
    ring: Sector, width: float, *, edge: bool, fold: bool = True, most_angle: float = math.inf
) -> Parting:
    """Return the fewest panels, their front on the `fold` if it may be, that cloth of this usable width takes.

    `edge` lays the warp along the centre front and back, else along the middle of each panel. No panel has more
    than `most_angle` degrees (`UPRIGHT` on cloth with one right way up). Raises `DraftError` where no parting is
    narrow enough.
    """
    room = width - ROOM
    for count in range(1, MOST_PANELS + 1):
        each = ring.angle / count
        if each > most_angle + 1e-6:
            continue
        plain = _across(ring, each, edge and count < 3)
        opens = count > 1 or _parts_behind(ring)
        if fold and opens and plain <= room and 2 * _across(ring, each, True) <= room:
            return Parting(count, fold=True, edge=edge and count < 3)
        if plain <= room:
            return Parting(count, fold=False, edge=edge and count < 3)
    raise DraftError(
        "the skirt is too long for this cloth, whatever its panels",
        value=told(width),
        reach=f"{told(_across(ring, ring.angle / MOST_PANELS, False) + ROOM, 'least')} of usable width",
        turn="choose wider cloth, a shorter skirt, or gores",
    )


def _parts_behind(ring: Sector) -> bool:
    """Return whether half a ring on the fold leaves room for the allowances of the centre that is sewn.

    A whole circle does not: its centre back meets itself, and no cloth is left to seam it with.
    """
    return ring.angle <= 90.0 or ring.inner * math.sin(math.radians(ring.angle)) >= MEETS


def _across(ring: Sector, each: float, edge: bool) -> float:
    """Return how wide a panel lies across the cloth, its warp along one edge, or along its middle."""
    if edge:
        return ring.outer * math.sin(math.radians(min(each, 90.0)))
    return 2 * ring.outer * math.sin(math.radians(min(each, 180.0)) / 2)


def ring_panels(
    ring: Sector, parting: Parting, hip: float, name: str
) -> tuple[tuple[Piece, ...], tuple[Seam, ...]]:
    """Return the panels from front to back, centre edges called `centre`, and the seams between them.

    The hip level is drawn `hip` mm below the waist, where the skirt reaches so far.
    """
    each = ring.angle / parting.panels
    panels = tuple(_panel(ring, parting, k, each, hip, name) for k in range(parting.panels))
    marks = [
        Seam(
            f"{name} {k + 1}",
            ((one.name, "back"),),
            ((other.name, "front"),),
            kind=SeamKind.SIDE if 2 * (k + 1) == parting.panels else SeamKind.PANEL,
        )
        for k, (one, other) in enumerate(itertools.pairwise(panels))
    ]
    return panels, tuple(marks)


def _panel(ring: Sector, parting: Parting, k: int, each: float, hip: float, name: str) -> Piece:
    """Return a panel, drawn with the edge on the middle upright, or its own middle."""
    first, last, only = k == 0, k == parting.panels - 1, parting.panels == 1
    start = 0.0 if first else -each if last else -each / 2
    begin, end = ring.at(start), ring.at(start + each)
    hem = arc(0j, ring.outer * begin, each)
    top = arc(0j, ring.inner * end, -each)
    front = Edge(
        "centre_front" if only else "centre" if first else "front",
        line(ring.inner * begin, hem.start),
        role=_role(first, k, parting),
    )
    back_name = "back" if not last else "centre_back" if only else "centre"
    back = Edge(back_name, line(hem.end, ring.inner * end), role=_role(last, k + 1, parting))
    if first:
        front = replace(front, half=Half.FRONT, kind=EdgeKind.FOLD if parting.fold else EdgeKind.SEAM)
    if last:
        back = replace(back, half=Half.BACK)
    middle = ring.inner * begin if first else ring.inner * end
    deep = arc(0j, (ring.inner + hip) * begin, each)
    upright = parting.edge and (first or last)
    turned = 0.0 if upright else start + each / 2
    return Piece(
        f"{name}-{k + 1}" if parting.panels > 1 else name,
        (
            front,
            Edge("hem", hem, EdgeKind.HEM, role=EdgeRole.HEM),
            back,
            Edge("waist", top, EdgeKind.OPENING, role=EdgeRole.WAIST),
        ),
        grain=90.0 + turned,
        stretch=turned % 180,
        levels=(
            Level("waist", (top.reversed(),), LevelKind.WAIST),
            *((Level("hip", (deep,), LevelKind.HIP),) if hip < ring.outer - ring.inner else ()),
        ),
        pair=not (first and parting.fold),
        title=f"{name.capitalize()} {k + 1}" if parting.panels > 1 else name.capitalize(),
        role=PieceRole.FRONT if 2 * k < parting.panels - 1 or (first and not only) else PieceRole.BACK,
        place=k + 1,
        frame=BodyFrame(limb=Limb.HANGS, heights=((BodyHeight.WAIST, middle),)),
    )


def _role(middle: bool, place: int, parting: Parting) -> EdgeRole:
    """Return what the straight edge is that lies so many panels from the front."""
    if middle:
        return EdgeRole.CENTRE
    return EdgeRole.SIDE if 2 * place == parting.panels else EdgeRole.PANEL
