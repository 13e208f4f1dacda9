"""Slash and spread: a piece cut from one edge to another and opened, so that one edge grows fuller.

Cuts run from the edge to be opened to the pivot edge and turn open about it: the opened edge grows
by cuts x amount, the pivot edge and all others keep their length. Gathering an edge opens it the same
way and pulls it up again to what it was (`sewn`), so its partner does not change.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from drafting.draft import Draft, EdgeRef, Girth
from drafting.errors import DraftError
from drafting.fabric import Fabric
from drafting.geometry import Cubic, Line, Path, smooth
from drafting.piece import Edge, EdgeKind, Level, Piece
from drafting.shaping.fullness import bulk_said, gathered

Move = Callable[[complex], complex]
WIDEST_CUT = 60.0
"""degrees: a single cut that opens farther is refused (ours)."""


@dataclass(frozen=True)
class Wish:
    """One fullness asked of an edge, mm: `amount` let in over `cuts` cuts from the `pivot` edge.

    `amount` None and `ratio` set: as much as makes the edge `ratio` times as long. `gather` pulls the
    edge up again to what it was.
    """

    edge: EdgeRef
    pivot: str = ""
    cuts: int = 6
    amount: float | None = None
    ratio: float | None = None
    gather: bool = False


def fuller(draft: Draft, wish: Wish, fabric: Fabric | None = None) -> Draft:
    """Return the draft with the wished fullness; every seam still walks.

    Raises `DraftError` where the piece or edge is not there, or a cut would open too far.
    """
    piece_name, edge_name = wish.edge
    if piece_name not in draft or edge_name not in draft[piece_name]:
        names = [f"{p.name}.{e.name}" for p in draft.pieces for e in p.edges]
        raise DraftError(
            f"there is no edge {piece_name}.{edge_name}", turn=f"edges are {', '.join(names)}"
        )
    piece = draft[piece_name]
    edge = piece[edge_name]
    amount = wish.amount if wish.amount is not None else ((wish.ratio or 1.0) - 1) * edge.length
    if amount <= 0:
        return draft
    pivot = wish.pivot or opposite(piece, edge_name)
    if edge.kind is EdgeKind.FOLD or piece[pivot].kind is EdgeKind.DART:
        raise DraftError(
            f"{piece_name}.{edge_name} lies on the fold, or its cuts would end on a dart",
            turn="open a seam or a hem, and name a pivot edge that is neither",
        )
    opened = spread(piece, pivot, edge_name, wish.cuts, amount / wish.cuts)
    draft = replace(draft.with_pieces([opened]), girths=_girths(draft, piece, opened))
    if not wish.gather:
        return draft
    draft = gathered(draft, wish.edge, sewn=edge.sewn_length)
    ratio = opened[edge_name].length / edge.sewn_length
    said = bulk_said(f"{piece_name}.{edge_name}", ratio, fabric.thickness if fabric else None)
    return replace(draft, findings=(*draft.findings, *said))


def _girths(draft: Draft, old: Piece, new: Piece) -> tuple[Girth, ...]:
    """Return the girths with what the cuts let in at each level: it was asked for."""
    grown = {v.name: v.length - w.length for v, w in zip(new.levels, old.levels, strict=True)}
    both = 2 if old.pair or old.fold_edge else 1

    def grow(girth: Girth) -> Girth:
        more = grown.get(girth.level, 0.0) * (1 if girth.limb and old.pair else both)
        return replace(
            girth, asked_ease=girth.asked_ease + more, settled_ease=girth.settled_ease + more
        )

    return tuple(grow(girth) for girth in draft.girths)


def opposite(piece: Piece, edge: str) -> str:
    """Return the edge that lies farthest along the ring from `edge`: where cuts end by default."""
    at = piece.index(edge)
    return piece.edges[(at + len(piece.edges) // 2) % len(piece.edges)].name


def spread(piece: Piece, pivot: str, edge: str, cuts: int, each: float) -> Piece:
    """Return the piece opened by `each` mm at `edge` in every one of `cuts` cuts from `pivot`.

    Raises `DraftError` where pivot and edge are one, or a cut would open by more than 60 degrees.
    """
    if pivot == edge or cuts < 1:
        raise DraftError(
            "cuts have to run from one edge to another", turn="name another pivot edge"
        )
    whole, low = piece[pivot].path, piece[edge].path
    shares = [k / (cuts + 1) for k in range(1, cuts + 1)]
    tops = [whole.at(s * whole.length) for s in shares]
    feet = [low.at((1 - s) * low.length) for s in shares]
    moves = _moves(tops, feet, each)
    ring = [*piece.edges[piece.index(pivot) :], *piece.edges[: piece.index(pivot)]]
    at = next(i for i, e in enumerate(ring) if e.name == edge)
    if any(e.kind is EdgeKind.FOLD or e.name == "centre" for e in ring[1:at]):
        moves = _about(moves, moves[-1])  # the centre line stays where it hangs
    _clear_of_darts(ring[1:at], cuts, tops, feet)
    _clear_of_darts(ring[at + 1 :], 0, tops, feet)
    new = (
        replace(ring[0], path=_pivot(whole, shares, moves)),
        *(_moved(e, moves[-1]) for e in ring[1:at]),
        replace(ring[at], path=_opened(low, shares, moves)),
        *(_moved(e, moves[0]) for e in ring[at + 1 :]),
    )
    start = [e.name for e in new].index(piece.edges[0].name)
    levels = tuple(Level(v.name, tuple(q for p in v.paths for q in _cut_up(p, tops, feet, moves)))
                   for v in piece.levels)  # fmt: skip
    inner = tuple(
        replace(d, leg_a=d.leg_a.mapped(m), leg_b=d.leg_b.mapped(m))
        for d in piece.darts
        for m in (moves[_sector(d.leg_a.start, tops, feet)],)
    )
    marks = tuple(
        replace(p, path=p.path.mapped(moves[_sector(p.path.start, tops, feet)]))
        for p in piece.placements
    )
    points = {n: moves[_sector(p, tops, feet)](p) for n, p in piece.points.items()}
    return replace(
        piece, edges=new[start:] + new[:start], levels=levels, darts=inner, placements=marks,
        points=points,
    )  # fmt: skip


def _clear_of_darts(
    edges: list[Edge], sector: int, tops: list[complex], feet: list[complex]
) -> None:
    """Refuse cuts that would run through an open dart."""
    for edge in edges:
        if edge.kind is EdgeKind.DART and _sector(edge.path.end, tops, feet) != sector:
            raise DraftError(
                f"the cuts would run through {edge.name.rpartition('_')[0].replace('_', ' ')}",
                turn="name another pivot edge, or turn the dart to another place first",
            )


def _moves(tops: list[complex], feet: list[complex], each: float) -> list[Move]:
    """Return how each of the parts moves, the first one (at the pivot edge's start) not at all."""
    moves: list[Move] = [lambda p: p]
    for top, foot in zip(tops, feet, strict=True):
        half = each / 2 / abs(foot - top)
        if half > math.sin(math.radians(WIDEST_CUT / 2)):
            raise DraftError(
                "a cut would open too far", value=f"{each:.0f} mm over a cut of {abs(foot - top):.0f} mm",
                reach=f"up to {2 * abs(foot - top) * math.sin(math.radians(WIDEST_CUT / 2)):.0f} mm a cut",
                turn="make more cuts, or let in less",
            )  # fmt: skip
        turn = complex(math.sqrt(1 - half**2), -half) ** 2
        before = moves[-1]
        hinge = before(top)
        factor = turn * (before(top + 1) - hinge)
        moves.append(lambda p, t=top, h=hinge, f=factor: h + (p - t) * f)  # type: ignore[misc]
    return moves


def _about(moves: list[Move], home: Move) -> list[Move]:
    """Return the moves as seen from the part that moves by `home`, which then rests."""
    origin, factor = home(0j), home(1 + 0j) - home(0j)
    return [lambda p, m=move: (m(p) - origin) / factor for move in moves]  # type: ignore[misc]


def _pivot(path: Path, shares: list[float], moves: list[Move]) -> Path:
    parts = _parts(path, [s * path.length for s in shares])
    return Path.joined(part.mapped(move) for part, move in zip(parts, moves, strict=True))


def _opened(path: Path, shares: list[float], moves: list[Move]) -> Path:
    """The opened edge runs against the pivot edge: its first part moves with the last move."""
    parts = _parts(path, [(1 - s) * path.length for s in reversed(shares)])
    placed = [part.mapped(move) for part, move in zip(parts, reversed(moves), strict=True)]
    segments = list(placed[0].segments)
    for before, after in itertools.pairwise(placed):
        segments.append(smooth(before.end, after.start, before.arrive, after.leave))
        segments += after.segments
    return Path(tuple(segments))


def _parts(path: Path, places: list[float]) -> list[Path]:
    ends = [0.0, *places, path.length]
    return [path.part(a, b) for a, b in itertools.pairwise(ends)]


def _moved(edge: Edge, move: Move) -> Edge:
    return replace(edge, path=edge.path.mapped(move))


def _sector(p: complex, tops: list[complex], feet: list[complex]) -> int:
    """Return which part a point lies in: how many cuts it has on its right."""
    return sum(
        1 for t, f in zip(tops, feet, strict=True) if ((f - t).conjugate() * (p - t)).imag < 0
    )


def _cut_up(path: Path, tops: list[complex], feet: list[complex], moves: list[Move]) -> list[Path]:
    """Return a level line broken at the cuts, each part moved with its cloth, the gaps bridged."""
    found: list[Path] = []
    for segment in path.segments:
        if isinstance(segment, Cubic):
            found.append(Path((segment,)).mapped(moves[_sector(segment.point(0.5), tops, feet)]))
            continue
        places = sorted({0.0, 1.0, *_crossed(segment, tops, feet)})
        for a, b in itertools.pairwise(places):
            piece = Line(segment.point(a), segment.point(b))
            part = Path((piece,)).mapped(moves[_sector(piece.point(0.5), tops, feet)])
            if found and abs(found[-1].end - part.start) > 1e-9:
                found.append(Path((Line(found[-1].end, part.start),)))
            found.append(part)
    return [Path.joined(found)]


def _crossed(segment: Line, tops: list[complex], feet: list[complex]) -> list[float]:
    step = segment.b - segment.a
    crossed = []
    for top, foot in zip(tops, feet, strict=True):
        cross = (step.conjugate() * (foot - top)).imag
        if abs(cross) > 1e-9:
            t = ((top - segment.a).conjugate() * (foot - top)).imag / cross
            if 1e-9 < t < 1 - 1e-9:
                crossed.append(t)
    return crossed
