"""A piece's ring of edges parted at two places, and all that lies on it shared between the two parts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from drafting.alter.style.places import RingSpot
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import Edge, InnerDart, Level, Piece, Placement
from drafting.geometry import Path
from drafting.geometry.area import Region
from drafting.geometry.crossing import crossings, extended, part_between
from drafting.ground import tolerances as tol

BEYOND = 1.0
"""mm: a cut parts what lies on the outline too, as a level does that is the hem."""

Names = dict[str, tuple[EdgeRef, ...]]
"""What each edge of a piece has become: (piece, edge) in outline order."""


def free_name(name: str, taken: Iterable[str]) -> str:
    """Return a name that is not taken: itself, or with the first free number behind."""
    known, number = set(taken), 2
    if name not in known:
        return name
    while f"{name}_{number}" in known:
        number += 1
    return f"{name}_{number}"


def edge_part(edge: Edge, start: float, end: float) -> Edge:
    """Return the stretch of an edge between two distances (mm), its notches and gathers with it."""
    length = edge.length
    if start <= 0 and end >= length:
        return edge
    path = edge.path.part(start, end) if end < length else edge.path.split(start)[1]
    notches = tuple(replace(n, at=n.at - start) for n in edge.notches if start <= n.at <= end)
    sewn = None if edge.sewn is None else edge.sewn * (end - start) / length
    return replace(edge, path=path, notches=notches, sewn=sewn)


class RingStretch(NamedTuple):
    """An edge, or the part of one that begins `start` mm along it."""

    start: float
    edge: Edge


def run_between(piece: Piece, start: RingSpot, end: RingSpot) -> list[RingStretch]:
    """Return the edges, whole or in part, that run anticlockwise from one place to another; names may recur."""
    edges, count = piece.edges, len(piece.edges)
    if start.index == end.index and start.at < end.at:
        return [RingStretch(start.at, edge_part(edges[start.index], start.at, end.at))]
    run = []
    if start.at < edges[start.index].length:
        run.append(RingStretch(start.at, edge_part(edges[start.index], start.at, edges[start.index].length)))
    at = (start.index + 1) % count
    while at != end.index:
        run.append(RingStretch(0.0, edges[at]))
        at = (at + 1) % count
    if end.at > 0:
        run.append(RingStretch(0.0, edge_part(edges[end.index], 0.0, end.at)))
    return run


def become(runs: Iterable[tuple[str, Sequence[RingStretch], Sequence[Edge]]]) -> Names:
    """Return what each edge has become: of each piece its name, its stretches, and the same edges as named now."""
    found: dict[str, list[tuple[float, EdgeRef]]] = {}
    for piece, run, edges in runs:
        for stretch, edge in zip(run, edges, strict=False):
            found.setdefault(stretch.edge.name, []).append((stretch.start, (piece, edge.name)))
    return {name: tuple(ref for _, ref in sorted(parts)) for name, parts in found.items()}


def named_apart(edges: Sequence[Edge], more: Iterable[str] = ()) -> list[Edge]:
    """Return edges of which no two carry one name: a later one gets a number."""
    kept, named = set(more), list[Edge]()
    names = {edge.name for edge in edges} | kept
    for edge in edges:
        name = free_name(edge.name, names) if edge.name in kept else edge.name
        kept.add(name)
        names.add(name)
        named.append(replace(edge, name=name))
    return named


def renamed_chains(draft: Draft, piece: str, names: Names) -> Draft:
    """Return the draft with every chain of edges naming what the edges of `piece` have become."""

    def along(refs: tuple[EdgeRef, ...], back: bool = False) -> tuple[EdgeRef, ...]:
        found: list[EdgeRef] = []
        for ref in refs:
            parts = names.get(ref[1], (ref,)) if ref[0] == piece else (ref,)
            found += reversed(parts) if back else parts
        return tuple(dict.fromkeys(found))

    def sewn(seam: Seam) -> Seam:
        a, b = along(seam.a), along(seam.b, back=seam.a != seam.b)
        return seam if (a, b) == (seam.a, seam.b) else replace(seam, a=a, b=b)

    return replace(
        draft,
        seams=tuple(map(sewn, draft.seams)),
        chains={name: along(refs) for name, refs in draft.chains.items()},
        notions=tuple(replace(n, edges=along(n.edges)) for n in draft.notions),
    )


NEAR = (0.02, 0.02j, -0.02, -0.02j)
"""mm: steps to all sides of a point, so that one on the outline, as a level along a hem, lies within (ours)."""


@dataclass(frozen=True)
class CutSides:
    """Which side of a cut lies where: the `cut` line, and the `region` of one of the two sides."""

    cut: Path
    region: Region

    def holds(self, point: complex) -> bool:
        """Return whether a point lies on the side of the region, or on its outline."""
        return bool(self.region.holds(np.array([point + step for step in NEAR])).any())

    def pieces_of(self, path: Path) -> tuple[list[Path], list[Path]]:
        """Return the bits of an open path that lie on the side of the region, and those on the other."""
        cut = extended(self.cut, BEYOND, BEYOND)
        places = [0.0, *(c.on_a for c in crossings(path, cut)), float(len(path.segments))]
        inside: list[Path] = []
        beyond: list[Path] = []
        for low, high in pairwise(places):
            bit = part_between(path, low, high)
            if bit is not None and bit.length > tol.CLOSED:
                (inside if self.holds(bit.at(bit.length / 2)) else beyond).append(bit)
        return inside, beyond

    def levels(self, levels: Iterable[Level]) -> tuple[tuple[Level, ...], tuple[Level, ...]]:
        """Return the levels of either side; one that does not reach a side is not there."""
        sides: tuple[list[Level], list[Level]] = ([], [])
        for level in levels:
            bits = [self.pieces_of(path) for path in level.paths]
            for side, number in ((sides[0], 0), (sides[1], 1)):
                paths = tuple(path for bit in bits for path in bit[number])
                if paths:
                    side.append(replace(level, paths=paths))
        return tuple(sides[0]), tuple(sides[1])

    def marks(self, marks: Iterable[Placement]) -> tuple[tuple[Placement, ...], tuple[Placement, ...]]:
        """Return the marks of either side; one that the cut crosses is parted."""
        sides: tuple[list[Placement], list[Placement]] = ([], [])
        for mark in marks:
            for side, bits in zip(sides, self.pieces_of(mark.path), strict=True):
                side.extend(replace(mark, path=bit) for bit in bits)
        return tuple(sides[0]), tuple(sides[1])

    def darts(self, darts: Iterable[InnerDart]) -> tuple[tuple[InnerDart, ...], tuple[InnerDart, ...]]:
        """Return the inner darts of either side; the cut crosses none of them."""
        inside = tuple(dart for dart in darts if self.holds(dart.leg_a.at(dart.leg_a.length / 2)))
        return inside, tuple(dart for dart in darts if dart not in inside)


def region_within(ring: Path) -> Region:
    """Return what lies within a closed path."""
    return Region.of(ring.points(tol.FLAT)[:-1])


def holds_point(ring: Path, point: complex) -> bool:
    """Return whether a point lies within a closed path."""
    return bool(region_within(ring).holds(np.array([point]))[0])
