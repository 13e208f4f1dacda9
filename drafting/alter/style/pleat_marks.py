"""What lies on a piece opened for a pleat: levels run on or broken, marks moved, folds and an arrow drawn."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.alter.style.join import run_on
from drafting.alter.style.rings import CutSides, RingStretch, region_within
from drafting.draft.piece import NAMED_MARK, Level, Piece, Placement
from drafting.geometry import Path, line
from drafting.ground import tolerances as tol
from drafting.reading.style import PleatWish

PLEAT_FOLD = "pleat fold"
"""A mark along which a pleat is folded."""

HAIR = 0.05
"""mm: two ends no farther apart are one."""

ARROW, BARB = 40.0, 8.0
"""mm: how far below the edge the arrow stands, and how long its barbs are."""


@dataclass(frozen=True)
class KnifeFold:
    """One knife pleat to come: mm along the first edge from its middle one, and whether it lies under what is
    before it in outline order."""

    offset: float
    under_before: bool


@dataclass(frozen=True)
class PleatWay:
    """One pleat to be opened on a piece, from its `top` to its `foot`; what runs from top to foot is moved."""

    piece: Piece
    top: complex
    foot: complex
    fold: KnifeFold
    depth: float

    @property
    def along(self) -> complex:
        """The unit direction from top to foot."""
        return (self.foot - self.top) / abs(self.foot - self.top)

    @property
    def across(self) -> complex:
        """The unit direction in which what follows the top in outline order is moved."""
        return -1j * self.along

    @property
    def by(self) -> complex:
        return 2 * self.depth * self.across


def opened_inside(piece: Piece, way: PleatWay, wish: PleatWish, moves: list[RingStretch], number: int) -> Piece:
    """Return the piece with all that lies beyond the pleat moved, levels drawn on, folds and arrow marked."""
    ring = Path.joined([*(s.edge.path for s in moves), line(way.foot, way.top)])
    nothing = abs(ring.area) < 1.0  # the fold alone lies beyond
    parts = None if nothing else CutSides(line(way.top, way.foot), region_within(ring))
    levels = tuple(_run_through(level, parts, way, wish) for level in piece.levels)
    marks, still = ((), piece.placements) if parts is None else parts.marks(piece.placements)
    darts, darts_still = ((), piece.darts) if parts is None else parts.darts(piece.darts)

    def here(point: complex) -> complex:
        return point + way.by if parts is not None and parts.holds(point) else point

    return replace(
        piece,
        levels=levels,
        placements=(*still, *(replace(m, path=m.path.moved(way.by)) for m in marks), *_marks(way, wish, number)),
        darts=(
            *darts_still,
            *(replace(d, leg_a=d.leg_a.moved(way.by), leg_b=d.leg_b.moved(way.by)) for d in darts),
        ),
        points={name: here(p) for name, p in piece.points.items()},
    )


def _run_through(level: Level, parts: CutSides | None, way: PleatWay, wish: PleatWish) -> Level:
    """Return a level run on over an open pleat, and broken where the pleat is stitched down."""
    paths: list[Path] = []
    stops = [p + way.by if parts is not None and parts.holds(p) else p for p in level.stops]
    for path in level.paths:
        beyond, stays = ([], [path]) if parts is None else parts.pieces_of(path)
        shifted = [bit.moved(way.by) for bit in beyond]
        if _stitched_at(wish, way, path):
            paths += [*stays, *shifted]
            stops += [p for one in stays for p in (one.start, one.end) if _on_line(p, way)]
            stops += [p for one in shifted for p in (one.start, one.end) if _on_line(p - way.by, way)]
            continue
        joints = [
            line(a, b)
            for one in (*stays, *shifted)
            for two in (*stays, *shifted)
            for a, b in [(one.end, two.start)]
            if (one is not two and abs((b - a) - way.by) < HAIR) or abs((b - a) + way.by) < HAIR
        ]
        if parts is None:  # the pleat lies at the fold, where the level ends
            joints = [line(p, p + way.by) for p in (path.start, path.end) if _on_line(p, way)]
            joints = [j if path.end == j.start else j.reversed() for j in joints]
        paths += run_on((*stays, *shifted, *joints))
    return replace(level, paths=tuple(paths), stops=tuple(stops))


def _on_line(point: complex, way: PleatWay) -> bool:
    return abs(((point - way.top) / way.along).imag) < HAIR


def _stitched_at(wish: PleatWish, way: PleatWay, path: Path) -> bool:
    far = ((path.at(path.length / 2) - way.top) / way.along).real
    return wish.kind == "tuck" or far < wish.stitched - HAIR


def _marks(way: PleatWay, wish: PleatWish, number: int) -> tuple[Placement, ...]:
    """Return the fold lines, the arrow that says how it is laid, and where its stitching ends."""
    lines = [
        Placement(
            f"pleat {number} {name}", line(way.top + at * way.across, way.foot + at * way.across), PLEAT_FOLD
        )
        for name, at in (("fold", 0.0), ("inner fold", way.depth), ("meets", 2 * way.depth))
    ]
    high = way.top + min(ARROW, abs(way.foot - way.top) / 4) * way.along
    begin, end = high + way.by, high
    if way.fold.under_before is False:
        begin, end = end, begin
    head = (begin - end) / abs(begin - end) * BARB
    arrow = line(begin, end, end + head * complex(0.8, 0.6), end, end + head * complex(0.8, -0.6))
    found = [*lines, Placement(f"pleat {number}", arrow, NAMED_MARK)]
    long = abs(way.foot - way.top)
    if wish.kind != "tuck" and tol.LEAST_EDGE < wish.stitched < long:
        low = way.top + wish.stitched * way.along
        found.append(Placement(f"pleat {number} stitched to here", line(low, low + way.by), NAMED_MARK))
    return tuple(found)
