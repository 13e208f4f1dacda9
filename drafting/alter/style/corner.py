"""Round a corner by a radius, or square one that is round; whatever has the same corner follows.

A corner of an edge that is sewn to something is rounded only where that has the very same corner, as a collar's
two layers have: both are rounded then. An interfacing has its piece's corners.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator
from dataclasses import replace

from drafting.alter.style.rings import CutSides, region_within
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.geometry import Path, line
from drafting.geometry.arc import arc
from drafting.geometry.area import is_simple
from drafting.geometry.construct import Directed, meet
from drafting.geometry.crossing import ends_moved
from drafting.geometry.curve import Segment
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError, UnknownNameError
from drafting.ground.lengths import told
from drafting.reading.style_made import CornerWish

TRIES, CENTRED = 30, 1e-9
"""Steps in which the arc of a corner is found, and mm within which its centre then lies (ours)."""

LARGEST, ARC = 500.0, 2e-4
"""mm: the largest radius of a corner that was rounded; by what share of it an arc may leave its circle (ours)."""

BLUNTEST = 175.0
"""Degrees: a corner that is as good as none (ours)."""


def corner_changed(draft: Draft, wish: CornerWish) -> Draft:
    """Return the draft with a corner rounded or squared; raises `DraftError` where it cannot be."""
    piece = piece_named(draft, wish.piece)
    refs = _corner(piece, edge_named(piece, wish.edge).name, edge_named(piece, wish.beside).name)
    for name in refs:
        if piece[name].kind in (EdgeKind.DART, EdgeKind.FOLD):
            raise DraftError(
                f"the {piece.name}'s {name} is a {piece[name].kind}, whose corner stays",
                turn="choose the corner of two edges that are cut",
            )
    for name, one, two in _alike(draft, piece, refs):
        draft = draft.with_pieces([_changed(draft[name], one, two, wish.radius)])
    return draft


def _corner(piece: Piece, one: str, other: str) -> tuple[str, str]:
    """Return two edges in outline order, the first ending where the second starts."""
    for a, b in ((one, other), (other, one)):
        if piece.edges[(piece.index(a) + 1) % len(piece.edges)].name == b:
            return a, b
    around = piece.edges[piece.index(one) - 1].name, piece.edges[(piece.index(one) + 1) % len(piece.edges)].name
    raise UnknownNameError(
        f"the {piece.name}'s {one} does not meet its {other}", turn=f"it meets {around[0]} and {around[1]}"
    )


def _alike(draft: Draft, piece: Piece, refs: tuple[str, str]) -> Iterator[tuple[str, str, str]]:
    """Yield every corner that changes: this one, what is sewn to it edge to edge, and the interfacings of both."""
    own = [(piece.name, *refs)]
    partners = [_partners(draft, (piece.name, name)) for name in refs]
    if any(partners):
        found = {two[0] for two in partners[0]} & {two[0] for two in partners[1]} - {""}
        if not found or any(len(some) != 1 for some in partners):
            lone = refs[0] if partners[0] else refs[1]
            raise DraftError(
                f"the {piece.name}'s {lone} is sewn to an edge that has no such corner, and would not fit it",
                turn="choose a corner of two edges that are sewn to nothing, or to one and the same piece",
            )
        (_, one), (name, two) = partners[0][0], partners[1][0]
        own.append((name, *_corner(draft[name], one, two)))
    yield from own
    for one_piece in draft.pieces:
        for name, first, second in own:
            stiff = name in one_piece.stiffens and bool(one_piece.material)
            if stiff and {first, second} <= {edge.name for edge in one_piece.edges}:
                yield (one_piece.name, *_corner(one_piece, first, second))


def _partners(draft: Draft, ref: EdgeRef) -> list[EdgeRef]:
    """Return what an edge is sewn to, edge to edge; its own mirror image is none, and ("", "") several edges."""
    found = []
    for seam in draft.seams:
        if seam.a != seam.b and ref in (*seam.a, *seam.b):
            own, other = (seam.a, seam.b) if ref in seam.a else (seam.b, seam.a)
            found += [other[own.index(ref)]] if _edge_to_edge(draft, seam) else [("", "")]
    return found


def _edge_to_edge(draft: Draft, seam: Seam) -> bool:
    """Return whether each edge of a seam is sewn to just one, as those round a front are to its facing's."""
    if len(seam.a) != len(seam.b) or (len(seam.a) > 1 and seam.notches):
        return False
    pairs = zip(seam.a, seam.b, strict=True)
    return len(seam.a) == 1 or all(abs(draft.edge(a).length - draft.edge(b).length) < tol.CLOSED for a, b in pairs)


def _changed(piece: Piece, one: str, two: str, radius: float | None) -> Piece:
    first, second = piece[one], piece[two]
    paths = _squared(piece, first, second) if radius is None else _rounded(piece, first, second, radius)
    made = piece.with_edges(
        _with_path(first, paths[0], 0.0), _with_path(second, paths[1], _gone(second, paths[1]))
    )
    if not is_simple(made.outline):
        raise DraftError(f"the {piece.name} would lie over itself with this corner", turn="take a smaller radius")
    return replace(made, levels=tuple(_on_cloth(made, level) for level in made.levels))


def _gone(edge: Edge, path: Path) -> float:
    return edge.length - path.length


def _with_path(edge: Edge, path: Path, gone: float) -> Edge:
    marks = tuple(replace(n, at=n.at - gone) for n in edge.notches if 0 <= n.at - gone <= path.length)
    return replace(edge, path=path, notches=marks)


def _rounded(piece: Piece, first: Edge, second: Edge, radius: float) -> tuple[Path, Path]:
    """Return both edges up to the arc, each with its half of it; between straight edges it begins
    r / tan(half the corner) from the corner."""
    inside = cmath.phase(-first.path.arrive / second.path.leave) % (2 * math.pi)
    if not 5 < math.degrees(inside) < BLUNTEST:
        raise DraftError(
            f"the {piece.name}'s {first.name} and {second.name} make no corner that points out",
            value=f"{math.degrees(inside):.0f} degrees",
            reach=f"5 to {BLUNTEST:.0f} degrees",
        )
    back = radius / math.tan(inside / 2)
    for edge in (first, second):
        if edge.length - back < tol.LEAST_EDGE:
            room = (edge.length - tol.LEAST_EDGE) * math.tan(inside / 2)
            raise DraftError(
                f"the {piece.name}'s {edge.name} is too short for this radius",
                value=told(radius),
                reach=f"up to {told(max(room, 0.0), 'most')}",
            )
    ends = _touched(first.path, second.path, radius, back)
    if ends is None:
        raise DraftError(
            f"the {piece.name}'s {first.name} or {second.name} bends too much for this radius",
            value=told(radius),
            turn="take a smaller one",
        )
    kept, left = first.path.split(ends[0])[0], second.path.split(ends[1])[1]
    turn = math.degrees(cmath.phase(left.leave / kept.arrive))
    centre = kept.end + 1j * kept.arrive * radius
    half = arc(centre, kept.end, turn / 2)
    rest = arc(centre, half.end, turn / 2)
    return Path.joined([kept, half]), Path.joined([ends_moved(rest, end=left.start), left])


def _touched(first: Path, second: Path, radius: float, back: float) -> tuple[float, float] | None:
    """Return how far along each path a circle of this radius inside their corner touches it, or None where it does
    not: Newton's method on the two curves of its possible centres, from the corner of their tangents."""
    s, u = first.length - back, back
    for _ in range(TRIES):
        t, v = first.tangent(s), second.tangent(u)
        miss = second.at(u) - first.at(s) + 1j * radius * (v - t)
        if abs(miss) < CENTRED:
            return s, u
        a, b = t * (1 - radius * first.curvature(s)), v * (radius * second.curvature(u) - 1)
        across = (a.conjugate() * b).imag
        if abs(across) < CENTRED:
            return None
        s, u = s - (b.conjugate() * miss).imag / across, u + (a.conjugate() * miss).imag / across
        if not (tol.LEAST_EDGE <= s <= first.length and 0.0 <= u <= second.length - tol.LEAST_EDGE):
            return None
    return None


def _squared(piece: Piece, first: Edge, second: Edge) -> tuple[Path, Path]:
    """Return both edges without their round ends, run straight on to where they meet."""
    kept, left = _unbent(first.path), _unbent(second.path.reversed())
    if kept is None or left is None:
        raise DraftError(
            f"the {piece.name}'s {first.name} and {second.name} have no straight to run on from",
            turn="square a corner that was rounded",
        )
    left = left.reversed()
    turn = abs((kept.arrive.conjugate() * left.leave).imag)
    if turn < math.sin(math.radians(180 - BLUNTEST)):
        raise DraftError(f"the {piece.name}'s {first.name} and {second.name} run on in one, without a corner")
    corner = meet(Directed(kept.end, kept.arrive), Directed(left.start, left.leave))
    if min(((corner - kept.end) / kept.arrive).real, ((left.start - corner) / left.leave).real) < -tol.CLOSED:
        raise DraftError(f"the {piece.name}'s {first.name} and {second.name} are square already")
    ahead = [line(kept.end, corner)] if abs(corner - kept.end) > tol.CLOSED else []
    behind = [line(corner, left.start)] if abs(corner - left.start) > tol.CLOSED else []
    one, two = Path.joined([kept, *ahead]), Path.joined([*behind, left])
    return ends_moved(one, end=corner), ends_moved(two, start=corner)


def _unbent(path: Path) -> Path | None:
    """Return a path without the arc at its end; None where nothing else is left."""
    segments = list(path.segments)
    centre = _centre(segments[-1])
    while segments and centre is not None and _about(segments[-1], centre):
        segments.pop()
    return Path(tuple(segments)) if segments else None


def _centre(segment: Segment) -> complex | None:
    """Return the centre of a segment that is an arc of a circle, or None."""
    bend = segment.curvature(0.5)
    if abs(bend) < 1 / LARGEST:
        return None
    centre = segment.point(0.5) + 1j * segment.tangent(0.5) / bend
    return centre if _about(segment, centre) else None


def _about(segment: Segment, centre: complex) -> bool:
    radii = [abs(segment.point(t) - centre) for t in (0.0, 0.3, 0.5, 0.7, 1.0)]
    return max(radii) - min(radii) < ARC * max(radii)


def _on_cloth(piece: Piece, level: Level) -> Level:
    """Return a level cut off where the cloth is gone; it ends inside there."""
    ring = region_within(piece.outline)
    sides = CutSides(piece.outline, ring)
    paths, stops = [], list(level.stops)
    for path in level.paths:
        bits = sides.pieces_of(path)[0] or [path]
        paths += bits
        stops += [p for bit in bits for p in (bit.start, bit.end) if p not in (path.start, path.end)]
    return level if len(stops) == len(level.stops) else replace(level, paths=tuple(paths), stops=tuple(stops))
