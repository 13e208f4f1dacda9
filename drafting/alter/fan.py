"""Opening one piece like a fan: what its edges, levels, darts and marks do. mm.

The lines between pivot and grown edge are bent evenly (`shaping.spread`); the sides beyond move as
wholes, so their lengths, darts and corners stay. A fold stays where it lay, or what else of the centre lies on
the warp (a front edge, a centre seam), else the middle does.
"""

from __future__ import annotations

import cmath
import itertools
import math
from collections.abc import Sequence
from dataclasses import replace

from drafting.draft.by_role import dart_legs
from drafting.draft.named import ALL_PIECES, edge_named
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path, line
from drafting.geometry.area import is_simple
from drafting.geometry.crossing import crossings, ends_moved
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.flare.spread import Fan, open_fan

NO_PIVOT = (EdgeKind.FOLD, EdgeKind.DART)


def fanned(
    piece: Piece, edge: str, pivot: Sequence[str], added: float, within: tuple[float, float] = (0.0, 1.0)
) -> tuple[Piece, float]:
    """Return the piece with `edge` grown by `added` mm, and by how many degrees it was opened.

    `pivot` names neighbouring edges that keep their lengths; cuts run only from between two shares
    of it, `within`. Raises `DraftError` for edges that
    cannot be opened so, or where the piece would lie over itself.
    """
    pivot = in_order(piece, edge, pivot)
    far = piece[edge].path.reversed()
    near = Path.joined(piece[name].path for name in pivot)
    ring = _ring(piece, pivot[0])
    split = [e.name for e in ring].index(edge)
    low, high = _clear_of_darts(piece, Fan(near, far, 0.0), ring, split, within)
    fan = open_fan(_stretch(near, low, high), _stretch(far, low, high), added)
    turning = fan.rigid(1.0)
    edges = _closed(
        [
            *_shared_out(_opened(near, fan.bent_pivot(), low, high, fan), ring[: len(pivot)]),
            *(replace(e, path=e.path.mapped(turning)) for e in ring[len(pivot) : split]),
            _grown(ring[split], _opened(far, fan.grown(), low, high, fan).reversed()),
            *ring[split + 1 :],
        ]
    )
    opened = _with_marks(piece, _as_before(piece, edges), fan)
    if not is_simple(opened.outline):
        raise DraftError(
            f"{piece.name} would lie over itself",
            value=f"{told(added)} let into its {edge}",
            turn="add less, or cut the piece in gores",
        )
    return _laid(opened, piece, fan, ring, {edge, *pivot}, split), math.degrees(abs(fan.turned))


def edge_across(piece: Piece, edge: str) -> tuple[str, ...]:
    """Return the edge that lies across from `edge`, with the halves that continue it (a cap's).

    The one met last on the way in from the middle of `edge`; a dart or a fold is passed over.
    """
    path = piece[edge].path
    at, inward = path.at(path.length / 2), 1j * path.tangent(path.length / 2)
    x0, y0, x1, y1 = piece.outline.bounds
    ray = line(at + inward, at + inward * (abs(complex(x1 - x0, y1 - y0)) + 1))
    met = [
        (abs(found.point - at), other.name)
        for other in piece.edges
        if other.name != edge and other.kind not in NO_PIVOT
        for found in crossings(ray, other.path)
    ]
    if not met:
        raise DraftError(
            f"nothing lies across from {piece.name}.{edge}", turn=f"name the pivot edge; {ALL_PIECES}"
        )
    name = max(met)[1]
    run = [e.name for e in _ring(piece, edge) if _akin(e, piece[name]) and e.kind not in NO_PIVOT]
    return tuple(run) if _neighbours(piece, run) else (name,)


GROWN_ON = (EdgeRole.FACING, EdgeRole.FACING_NECK, EdgeRole.FACING_HEM)
"""Edges of a facing that is cut on: they lie across together."""


ALONE = (EdgeRole.PLAIN, EdgeRole.COLLAR_NECK)
"""What does not go on from another edge of its role: only from its own inside or outside."""


def _akin(one: Edge, other: Edge) -> bool:
    """Return whether two edges go on from each other: of one role, inside and outside, or one facing."""
    if one.role in ALONE or other.role in ALONE:
        return one.name in (other.name, other.twin) or one.twin == other.name
    return one.role is other.role or (one.role in GROWN_ON and other.role in GROWN_ON)


def _neighbours(piece: Piece, names: Sequence[str]) -> bool:
    places = [piece.index(name) for name in names]
    return all((b - a) % len(piece.edges) == 1 for a, b in itertools.pairwise(places))


def in_order(piece: Piece, edge: str, pivot: Sequence[str]) -> tuple[str, ...]:
    """Return the pivot in the order of the ring; refuse edges that cannot be opened from each other."""
    for name in (edge, *pivot):
        edge_named(piece, name)
    if not pivot:
        raise DraftError(f"no edge of {piece.name} is named as the pivot", turn=ALL_PIECES)
    if edge in pivot or any(piece[n].kind in NO_PIVOT for n in (edge, *pivot)):
        raise DraftError(
            f"{piece.name} cannot be opened from {', '.join(pivot)} to {edge}",
            turn="take two edges across from each other, neither a fold nor a dart",
        )
    ordered = [e.name for e in _ring(piece, edge) if e.name in pivot]
    if not _neighbours(piece, ordered):
        raise DraftError(
            f"the pivot of {piece.name} is one edge, or some that lie beside each other",
            value=", ".join(pivot),
            turn=f"{ALL_PIECES} as they lie round it",
        )
    return tuple(ordered)


NEAR_TIP = 60.0
"""mm: a marked point so near a dart's tip (a bust point) stays with that dart (ours)."""

LEAST_CLEAR = 0.15
"""Share of the pivot that darts must leave for the cuts (ours)."""


def _clear_of_darts(
    piece: Piece, flat: Fan, ring: tuple[Edge, ...], split: int, within: tuple[float, float]
) -> tuple[float, float]:
    """Return between which shares of the pivot cuts may run: none goes through a dart and its aim.

    A dart that aims at a marked point (the bust's) moves with that point and with its side.
    """
    low, high = within
    inward = {into.name for into, _ in dart_legs(piece)}
    for place, edge in enumerate(ring):
        if edge.kind is not EdgeKind.DART:
            continue
        tip = edge.path.end if edge.name in inward else edge.path.start
        aims = [p for p in piece.points.values() if abs(p - tip) < NEAR_TIP]
        shares = [flat.share(p) for p in (tip, *aims)] if aims else [0.0 if place >= split else 1.0]
        if place < split:
            high = min(high, *shares)
        else:
            low = max(low, *shares)
    if high - low < LEAST_CLEAR:
        raise DraftError(
            f"the cuts in {piece.name} would run through its dart",
            turn="name another pivot edge, or turn the dart to another place first",
        )
    return low, high


def _stretch(path: Path, low: float, high: float) -> Path:
    """Return the stretch of a path between two shares of its length."""
    end = path if high >= 1 else path.split(high * path.length)[0]
    return end if low <= 0 else end.split(low * path.length)[1]


def _opened(path: Path, middle: Path, low: float, high: float, fan: Fan) -> Path:
    """Return a path with its stretch between two shares replaced, its end moved along."""
    parts = [middle]
    if low > 0:
        parts = [_stretch(path, 0.0, low), *parts]
    if high < 1:
        parts.append(_stretch(path, high, 1.0).mapped(fan.rigid(1.0)))
    return Path.joined(parts)


def _with_marks(piece: Piece, edges: tuple[Edge, ...], fan: Fan) -> Piece:
    """Return the opened piece with its levels bent and its darts, points and marks moved."""
    darts = tuple(
        replace(dart, leg_a=dart.leg_a.mapped(move), leg_b=dart.leg_b.mapped(move))
        for dart in piece.darts
        for move in [fan.rigid(fan.share(dart.leg_a.start))]
    )
    marks = tuple(
        replace(mark, path=mark.path.mapped(fan.rigid(fan.share(mark.path.start)))) for mark in piece.placements
    )
    levels = tuple(replace(level, paths=tuple(fan.bent(path) for path in level.paths)) for level in piece.levels)
    points = {name: fan.rigid(fan.share(p))(p) for name, p in piece.points.items()}
    return replace(piece, edges=edges, levels=levels, darts=darts, points=points, placements=marks)


def _ring(piece: Piece, first: str) -> tuple[Edge, ...]:
    at = piece.index(first)
    return (*piece.edges[at:], *piece.edges[:at])


def _shared_out(rest: Path, old: Sequence[Edge]) -> list[Edge]:
    """Return the pivot's edges on the bent line, each as long as it was."""
    done = []
    for edge in old[:-1]:
        first, rest = rest.split(edge.length)
        done.append(replace(edge, path=first))
    return [*done, replace(old[-1], path=rest)]


def _grown(edge: Edge, path: Path) -> Edge:
    longer = path.length / edge.length
    notches = tuple(replace(n, at=n.at * longer) for n in edge.notches)
    return replace(edge, path=path, notches=notches)


def _closed(edges: list[Edge]) -> list[Edge]:
    """Return the edges meeting exactly; what rounding left between two of them is shifted away."""
    found, at = [edges[0]], edges[0].path.end
    for edge in edges[1:]:
        path = edge.path.moved(at - edge.path.start)
        found.append(replace(edge, path=path))
        at = path.end
    last = ends_moved(found[-1].path, end=edges[0].path.start)
    return [*found[:-1], replace(found[-1], path=last)]


def _as_before(piece: Piece, edges: list[Edge]) -> tuple[Edge, ...]:
    """Return the ring in the piece's own order of edges."""
    by_name = {e.name: e for e in edges}
    return tuple(by_name[e.name] for e in piece.edges)


CENTRE = (EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.FRONT_EDGE, EdgeRole.FACING)
"""Edges that lie along the body's middle, or, cut on as a facing, beside it."""

ON_WARP = 6.0
"""Degrees off the warp within which an edge of the centre lies on it (ours: a front edge leans so much)."""


def _off_warp(piece: Piece, edge: Edge) -> float:
    """Return by how many degrees an edge, from end to end, leans off the warp."""
    turned = math.degrees(cmath.phase(edge.path.end - edge.path.start)) - piece.grain
    return abs((turned + 90.0) % 180.0 - 90.0)


def _centre(piece: Piece) -> Edge | None:
    """Return the edge that is to stay on the warp: the fold, else the longest of the centre that lies on it."""
    on = [edge for edge in piece.edges if edge.role in CENTRE and _off_warp(piece, edge) < ON_WARP]
    return piece.fold_edge or max(on, key=lambda edge: edge.length, default=None)


def _laid(opened: Piece, old: Piece, fan: Fan, ring: tuple[Edge, ...], bent: set[str], split: int) -> Piece:
    """Return the piece with its fold or its centre lying as it lay before, or its middle where that was `bent`."""
    kept = _centre(old)
    if kept is None or kept.name in bent:
        back = fan.rigid(0.5)
    elif kept.name in [edge.name for edge in ring[:split]]:
        back = fan.rigid(1.0)
    else:
        return opened
    shift = back(0j)
    factor = back(1 + 0j) - shift
    return opened.mapped(lambda p: (p - shift) / factor)
