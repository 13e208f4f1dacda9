"""What lies on the middle of the body: one length for both hands, and half pieces opened out whole.

A block drafts one hand. What it lays on the fold, or sews to itself as a pair, is the middle: there
the two hands of an uneven body meet, so they have to be equally long.
"""

from __future__ import annotations

import cmath
from collections.abc import Iterator
from dataclasses import replace

from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.level_closings import level_closings
from drafting.draft.piece import Edge, EdgeKind, InnerDart, Level, Piece, Placement
from drafting.geometry import Cubic, Path, line
from drafting.geometry.crossing import ends_moved
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

MOST_APART = 0.15
"""Of a middle's mean length: hands further apart than this are a slip of the tape (project design)."""

SEEN = 0.2
"""mm: a middle that was moved by less needs no word."""


def joins_hands(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam sews the left of a pair to the right of it: both chains name one edge.

    What is cut twice for each hand, or lies on the fold, is sewn to its own other layer.
    """
    both = set(seam.a) & set(seam.b)
    pieces = [draft[name] for name, _ in both]
    return bool(pieces) and all(p.pair and p.copies == 1 and p.fold_edge is None for p in pieces)


def middles(draft: Draft) -> list[EdgeRef]:
    """Return every edge on which the two hands meet: folds of both hands, and pairs sewn to themselves."""
    folds = [(p.name, p.fold_edge.name) for p in draft.pieces if p.fold_edge and not p.hand]
    sewn = [ref for seam in draft.seams if joins_hands(draft, seam) for ref in seam.a]
    return list(dict.fromkeys([*folds, *sewn]))


def on_over_the_middle(draft: Draft, seam: Seam, whole: frozenset[str]) -> Seam:
    """Return the seam without a corner where both its chains end at the fold of pieces opened out: it runs on."""

    def at_fold(ref: EdgeRef, step: int) -> bool:
        piece = draft[ref[0]]
        beside = piece.edges[(piece.index(ref[1]) + step) % len(piece.edges)]
        return ref[0] in whole and beside.kind is EdgeKind.FOLD

    start = None if at_fold(seam.a[0], -1) and at_fold(seam.b[0], 1) else seam.start
    end = None if at_fold(seam.a[-1], 1) and at_fold(seam.b[-1], -1) else seam.end
    return replace(seam, start=start, end=end)


# -------------------------------------------------------------------------------- one length for both


def settled(left: Draft, right: Draft) -> tuple[Draft, Draft]:
    """Return both hands, every middle as long as the mean of the two and every button level with its hole, and
    what was moved as findings.

    Raises `DraftError` where the hands differ by more than 15 %.
    """
    said: list[Finding] = []
    for piece, edge in middles(left):
        if piece not in right or edge not in right[piece]:
            continue
        a, b = left[piece][edge].length, right[piece][edge].length
        mean = (a + b) / 2
        shared = _opens(left[piece], edge) and _opens(right[piece], edge)
        if abs(a - b) > MOST_APART * mean and not shared:
            raise DraftError(
                f"the left and the right {piece} cannot be joined along the {edge.replace('_', ' ')}",
                value=f"{told(a)} on the left, {told(b)} on the right",
                reach=f"up to {100 * MOST_APART:.0f} % apart",
                turn="measure both sides once more",
            )
        if abs(a - b) > tol.CLOSED:
            left = left.with_pieces([_moved(left[piece], edge, mean)])
            right = right.with_pieces([_moved(right[piece], edge, mean)])
        if abs(a - b) > SEEN and not (shared or left[piece].material):
            said.append(middle_said(piece, edge, a, b))
    return level_closings(replace(left, findings=(*said, *left.findings)), right)


def _moved(piece: Piece, name: str, length: float) -> Piece:
    """Return the piece with one edge made `length` mm long.

    Where the edge runs on smoothly into an opening (a fly) it takes from that or gives to it; else its
    freer end moves along its chord, and a hem there bows: it stays as square to the middle and to the side.
    """
    at = piece.index(name)
    edge, ahead, behind = piece.edges[at], piece.edges[(at + 1) % len(piece.edges)], piece.edges[at - 1]
    if _runs_on(edge, ahead):
        kept, rest = Path.joined([edge.path, ahead.path]).split(length)
        return piece.with_edges(replace(edge, path=kept), replace(ahead, path=rest))
    if _runs_on(behind, edge):
        rest, kept = Path.joined([behind.path, edge.path]).split(edge.length + behind.length - length)
        return piece.with_edges(replace(behind, path=rest), replace(edge, path=kept))
    last = (_loose(ahead), -edge.path.end.imag) > (_loose(behind), -edge.path.start.imag)
    fixed, free = (edge.path.start, edge.path.end) if last else (edge.path.end, edge.path.start)
    moved = fixed + (free - fixed) * (length / edge.length)
    beside = ahead if last else behind
    far = beside.path.end if last else beside.path.start
    return piece.with_edges(
        replace(edge, path=_drawn(edge.path, fixed, free, moved)),
        replace(beside, path=(_bowed if _loose(beside) else _drawn)(beside.path, far, free, moved)),
    )


def _opens(piece: Piece, name: str) -> bool:
    """Return whether an edge runs on smoothly into an opening beside it."""
    at = piece.index(name)
    before, edge, after = (piece.edges[(at + i) % len(piece.edges)] for i in (-1, 0, 1))
    return _runs_on(before, edge) or _runs_on(edge, after)


def _runs_on(edge: Edge, after: Edge) -> bool:
    """Return whether one of two neighbours is an opening that the other runs smoothly into."""
    smooth = abs(cmath.phase(after.path.leave / edge.path.arrive)) < SMOOTH
    return smooth and EdgeKind.OPENING in (edge.kind, after.kind)


SMOOTH = 0.05
"""radians: two edges that meet so run on into each other."""


def _loose(edge: Edge) -> int:
    """Return how free an edge is to be moved: what is sewn or folded holds, a hem does not."""
    return 0 if edge.kind in (EdgeKind.SEAM, EdgeKind.DART, EdgeKind.FOLD) else 1


def _drawn(path: Path, fixed: complex, free: complex, moved: complex) -> Path:
    """Return the path turned and scaled about `fixed` so that `free` comes to `moved`."""
    factor = (moved - fixed) / (free - fixed)
    drawn = path.mapped(lambda p: fixed + (p - fixed) * factor)
    ends = (fixed, moved) if abs(path.start - fixed) < abs(path.end - fixed) else (moved, fixed)
    return ends_moved(drawn, start=ends[0], end=ends[1])


def _bowed(path: Path, fixed: complex, free: complex, moved: complex) -> Path:
    """Return the path with `free` at `moved` and `fixed` where it is; it keeps its direction at both."""
    by, chord = moved - free, free - fixed

    def along(place: complex) -> float:
        return ((place - fixed) / chord).real

    def shift(joint: complex, handle: complex) -> complex:
        u = min(max(along(joint), 0.0), 1.0)
        return by * (u * u * (3 - 2 * u) + 6 * u * (1 - u) * (along(handle) - u))

    bent = [
        Cubic(s.a + shift(s.a, s.a), s.b + shift(s.a, s.b), s.c + shift(s.d, s.c), s.d + shift(s.d, s.d))
        for s in (segment.as_cubic() for segment in path.segments)
    ]
    return Path(tuple(bent))


def middle_said(piece: str, edge: str, a: float, b: float) -> Finding:
    """Return that a middle came out `a` mm long on the left and `b` on the right, and is drafted as their mean."""
    what = f"{piece} {edge.replace('_', ' ')}"
    longer, shorter = ("left", "right") if a >= b else ("right", "left")
    return Finding(
        "middle",
        "note",
        f"{piece}.{edge}",
        (a + b) / 2,
        None,
        f"The {what} came out {told(abs(a - b), 'fine')} longer on the {longer} than on the {shorter}; both are "
        f"drafted {told((a + b) / 2, 'fine')} long, so that they meet.",
    )


# ------------------------------------------------------------------------------------ whole pieces


def opened_out(left: Piece, right: Piece) -> Piece | None:
    """Return the whole piece of which these are the halves on the fold; None where they do not meet.

    Both are drawn as a left hand; the right is turned over. Edges, darts and points are named by
    their hand, and the middle stays as a line to lay on.
    """
    other = right.mirrored()
    fold, facing = left.fold_edge, other.fold_edge
    if fold is None or facing is None or abs(fold.length - facing.length) > tol.FLAT:
        return None
    here, there = fold.path, facing.path
    factor = (here.end - here.start) / (there.start - there.end)
    placed = other.mapped(lambda p: here.end + (p - there.start) * factor)
    first, last = (placed.edges[(placed.index(facing.name) + step) % len(placed.edges)] for step in (1, -1))
    if first is not last:
        placed = placed.with_edges(
            replace(first, path=ends_moved(first.path, start=here.start)),
            replace(last, path=ends_moved(last.path, end=here.end)),
        )
    mark = Placement("centre", line(here.start, here.end), "centre")
    return replace(
        left,
        edges=(*_half(left, "left"), *_half(placed, "right")),
        levels=tuple(_levels(left, placed)),
        darts=tuple(_darts(left, "left")) + tuple(_darts(placed, "right")),
        points=_points(left, "left") | _points(placed, "right"),
        placements=(mark, *_marks(left, "left"), *_marks(placed, "right")),
    )


def half_name(edge: Edge, side: str) -> str:
    """Return what an edge of a half piece, drawn as a left hand, is called on the whole piece."""
    return f"{(edge.mirrored() if side == 'right' else edge).name}_{side}"


def _half(piece: Piece, side: str) -> Iterator[Edge]:
    """Yield the edges after the fold, round to it, named by their hand."""
    at = next(i for i, edge in enumerate(piece.edges) if edge.kind is EdgeKind.FOLD)
    for edge in (*piece.edges[at + 1 :], *piece.edges[:at]):
        dart = edge.dart and replace(edge.dart, dart=f"{edge.dart.dart}_{side}", other=f"{edge.dart.other}_{side}")
        twin = f"{edge.twin}_{side}" if edge.twin else ""
        yield replace(edge, name=f"{edge.name}_{side}", dart=dart, twin=twin, hand=side, base=edge.name)


def _levels(left: Piece, right: Piece) -> Iterator[Level]:
    """Yield each level once, over both halves."""
    for level in left.levels:
        beside = tuple(path for v in right.levels if v.name == level.name for path in v.paths)
        yield replace(level, paths=(*level.paths, *beside))


def _darts(piece: Piece, side: str) -> Iterator[InnerDart]:
    for dart in piece.darts:
        yield replace(dart, name=f"{dart.name}_{side}")


def _points(piece: Piece, side: str) -> dict[str, complex]:
    return {f"{name}_{side}": point for name, point in piece.points.items()}


def _marks(piece: Piece, side: str) -> Iterator[Placement]:
    """Yield the marks that this half of the piece needs, each meant for one hand only once."""
    for mark in piece.placements:
        if mark.hand in ("", side):
            yield replace(mark, name=f"{mark.name}_{side}", hand="")
