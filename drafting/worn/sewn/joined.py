"""Pieces meshed one by one and put together: what is sewn is one vertex."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components

from drafting.draft.draft import EdgeRef
from drafting.geometry.area import Region
from drafting.geometry.curve import Points
from drafting.ground.errors import DraftError
from drafting.ground.frozen import freeze
from drafting.ground.lengths import told
from drafting.worn.nouns import Reals, Whole
from drafting.worn.sewn.folds import RIM
from drafting.worn.sewn.rings import PieceRing, at, fine, run_length
from drafting.worn.sewn.sheet import CLEAR, FlatMesh, meshed
from drafting.worn.sewn.sides_along import sides_along
from drafting.worn.sewn.stations import Stations

SAME = 1e-3
"""mm: a place along an edge is found again within this."""


@dataclass(frozen=True, eq=False)
class MeshedPiece:
    """One piece in the mesh: its sheet, and the flat vertices of its sides, darts and guides (piece's own count).

    `darts` are pairs of vertices that are sewn, `inner_darts` the legs of darts inside, and `guides` the
    chains along the lines drawn inside.
    """

    ring: PieceRing
    sheet: FlatMesh
    sides: Mapping[str, Whole]
    places: Mapping[str, tuple[float, ...]]
    darts: Whole
    inner_darts: tuple[Whole, ...]
    guides: Mapping[str, Whole]

    def __post_init__(self) -> None:
        freeze(self, "sides", "places", "guides")


@dataclass(frozen=True, eq=False)
class Merged:
    """All pieces: flat points, triangles into them, the piece of each triangle, the sewn vertex of each point."""

    pieces: tuple[MeshedPiece, ...]
    starts: tuple[int, ...]
    flat: Reals
    triangles: Whole
    piece: Whole
    merged: Whole
    count: int

    def flat_along(self, ref: EdgeRef) -> Whole:
        """Return the flat vertices along what is left of an edge, in its order."""
        index = next(i for i, laid in enumerate(self.pieces) if laid.ring.piece.name == ref[0])
        return self.pieces[index].sides[ref[1]] + self.starts[index]

    def along(self, ref: EdgeRef) -> Whole:
        """Return the sewn vertices along what is left of an edge, in its order."""
        return self.merged[self.flat_along(ref)]

    def flat_inner(self, name: str, line: str) -> Whole:
        """Return the flat vertices along a line inside a piece, none where the piece does not reach it."""
        index = next(i for i, piece in enumerate(self.pieces) if piece.ring.piece.name == name)
        chain = self.pieces[index].guides.get(line)
        return chain + self.starts[index] if chain is not None else np.zeros(0, dtype=np.int64)

    def inner(self, name: str, line: str) -> Whole:
        """Return the sewn vertices along a line inside a piece, none where the piece does not reach it."""
        return self.merged[self.flat_inner(name, line)]


def meshed_piece(
    ring: PieceRing, places: Stations, guides: Mapping[str, Points], mesh: float, stops: Mapping[str, Reals]
) -> MeshedPiece:
    """Return one piece meshed between the vertices on its sides; `guides` are lines inside it by name.

    A vertex stands at each of a line's `stops`, mm along it.
    """
    name = ring.piece.name
    ways = {side.name: places.places[(name, side.name)] for side in ring.sides}
    lines = [at(side.points, np.array(ways[side.name])) for side in ring.sides]
    outline = np.concatenate([line[:-1] for line in lines])
    firsts = np.concatenate([[0], np.cumsum([len(line) - 1 for line in lines])])
    sides = {
        side.name: np.arange(first, first + len(line)) % len(outline)
        for side, line, first in zip(ring.sides, lines, firsts[:-1], strict=True)
    }
    holes, darts, legs = _darts(ring, mesh, len(outline))
    base = len(outline) + sum(map(len, holes))
    inner, chains = _guides(outline, guides, mesh, base, stops)
    sheet = sides_along(meshed(outline, holes, inner, mesh, ring.piece.grain), chains.values())
    return MeshedPiece(
        ring=ring, sheet=sheet, sides=sides, places=ways, darts=darts, inner_darts=legs, guides=chains
    )


def finer(piece: MeshedPiece) -> Iterator[tuple[EdgeRef, float]]:
    """Yield where vertices have to be added on the sides so that triangles follow them."""
    lost = {tuple(pair) for pair in piece.sheet.open.tolist()}
    for name, side in piece.sides.items():
        ways = piece.places[name]
        for index, pair in enumerate(itertools.pairwise(side.tolist())):
            if pair in lost:
                yield (piece.ring.piece.name, name), (ways[index] + ways[index + 1]) / 2


def _darts(ring: PieceRing, mesh: float, base: int) -> tuple[list[Points], Whole, tuple[Whole, ...]]:
    """Return each dart inside a piece as a closed ring, and which of its vertices are sewn to which."""
    holes, pairs, legs = [], [np.zeros((0, 2), dtype=np.int64)], []
    solid = Region.of(ring.outline)
    for dart in ring.piece.darts:
        one, two = fine(dart.leg_a), fine(dart.leg_b)
        if abs(one[0] - two[0]) > abs(one[0] - two[-1]):
            two = two[::-1]
        if not solid.holds(one).all():
            continue
        count = max(2, round(run_length(one) / mesh))
        share = np.linspace(0.0, 1.0, count + 1)
        a, b = at(one, share * run_length(one)), at(two, share * run_length(two))
        holes.append(np.concatenate([a, b[1:-1][::-1]]))
        pairs.append(np.array([(base + i, base + 2 * count - i) for i in range(1, count)]))
        legs.append(np.arange(base, base + count + 1))
        base += len(holes[-1])
    return holes, np.concatenate(pairs), tuple(legs)


def _guides(
    outline: Points, guides: Mapping[str, Points], mesh: float, base: int, stops: Mapping[str, Reals]
) -> tuple[list[Points], dict[str, Whole]]:
    """Return the vertices inside along each line, and its whole chain; ends on the outline are vertices there."""
    inner: list[Points] = []
    chains: dict[str, Whole] = {}
    region = Region.of(outline)
    for name, line in guides.items():
        points = at(line, _ways(run_length(line), stops.get(name, NOWHERE), mesh))
        ends = [int(np.abs(outline - end).argmin()) for end in (points[0], points[-1])]
        on = [abs(outline[i] - end) < ON * mesh for i, end in zip(ends, (points[0], points[-1]), strict=True)]
        own = _clear(region, points[int(on[0]) : len(points) - int(on[1])], mesh)
        own = own[[not lies_near(point, inner, CLEAR * mesh) for point in own]]
        if not len(own) and not all(on):
            continue
        if len(own):
            inner.append(own)
        chain = np.arange(base, base + len(own))
        chains[name] = np.concatenate([ends[:1] if on[0] else [], chain, ends[1:] if on[1] else []]).astype(
            np.int64
        )
        base += len(own)
    return inner, chains


def _ways(length: float, stops: Reals, mesh: float) -> Reals:
    """Return how far along a line its vertices stand, evenly from stop to stop."""
    kept = np.sort(stops[(stops > ON * mesh) & (stops < length - ON * mesh)])
    marks = np.concatenate(([0.0], kept, [length]))
    parts = [np.linspace(a, b, steps_of((b - a) / mesh), endpoint=False) for a, b in itertools.pairwise(marks)]
    return np.concatenate((*parts, [length]))


def steps_of(ratio: float) -> int:
    """Return in how many steps a stretch of so many meshes goes so that they differ least from a mesh, as a ratio.

    One of 1.45 meshes in one step leaves both triangles beside it sharp.
    """
    few = max(1, int(ratio))
    return few + int(ratio > math.sqrt(few * (few + 1)))


NOWHERE: Reals = np.zeros(0)
"""No stops."""


def lies_near(point: complex, lines: Sequence[Points], within: float) -> bool:
    """Return whether a point lies near one of those of other lines."""
    return any(np.abs(line - point).min() < within for line in lines)


def _clear(region: Region, points: Points, mesh: float) -> Points:
    """Return the points of a line without those in a sharp corner, where the line runs along the rim."""
    gaps = region.clearance(points)
    clear = gaps > CROWDED * mesh
    return points[clear] if 2 * clear.sum() > len(clear) else points[gaps > RIM]


CROWDED = 0.4
"""Of a mesh: nearer to the rim a line inside needs no vertices of its own (ours)."""

ON = 0.35
"""Of a mesh: a line that ends so near a vertex of the outline ends in it (ours)."""


def all_merged(pieces: Sequence[MeshedPiece], places: Stations) -> Merged:
    """Return the pieces as one mesh, everything that is sewn merged."""
    starts = np.concatenate([[0], np.cumsum([len(p.sheet.points) for p in pieces])]).astype(int)
    total = int(starts[-1])
    pairs = [piece.darts + start for piece, start in zip(pieces, starts[:-1], strict=True)]
    index = _index(pieces, starts)
    seams = [(_vertex(index, *one), _vertex(index, *two)) for one, two in places.sewn]
    together = np.concatenate([*pairs, np.array(seams, dtype=np.int64).reshape(-1, 2)])
    graph = coo_matrix((np.ones(len(together)), together.T), shape=(total, total))
    count, merged = connected_components(graph, directed=False)
    return Merged(
        pieces=tuple(pieces),
        starts=tuple(starts[:-1].tolist()),
        flat=np.vstack([piece.sheet.points for piece in pieces]),
        triangles=np.vstack([p.sheet.triangles + s for p, s in zip(pieces, starts[:-1], strict=True)]),
        piece=np.repeat(np.arange(len(pieces)), [len(p.sheet.triangles) for p in pieces]),
        merged=merged.astype(np.int64),
        count=int(count),
    )


def _index(pieces: Sequence[MeshedPiece], starts: NDArray[np.int_]) -> dict[EdgeRef, tuple[Reals, Whole]]:
    return {
        (piece.ring.piece.name, name): (np.array(piece.places[name]), side + start)
        for piece, start in zip(pieces, starts[:-1], strict=True)
        for name, side in piece.sides.items()
    }


def _vertex(index: Mapping[EdgeRef, tuple[Reals, Whole]], ref: EdgeRef, way: float) -> int:
    """Return the flat vertex at a place on an edge."""
    ways, vertices = index[ref]
    nearest = int(np.abs(ways - way).argmin())
    if abs(ways[nearest] - way) > SAME:
        raise DraftError(
            f"piece {ref[0]}: no vertex of the mesh stands {told(way, 'fine')} along the edge {ref[1]}"
        )
    return int(vertices[nearest])
