"""The interfacing behind a piece that a style line cuts: cut along the same line, each part has its own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from drafting.alter.style.places import RingSpot
from drafting.alter.style.rings import free_name, holds_point, named_apart, run_between
from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.geometry import Path
from drafting.geometry.area import is_simple
from drafting.geometry.crossing import crossings, ends_moved, extended, part_between
from drafting.shaping.details.small_pieces import PAST_STITCHING

BEYOND = 40.0
"""mm by which the line is run on at both ends: an interfacing may reach past the piece's own outline (ours)."""

AROUND, MOSTLY = 48, 0.6
"""Places round an interfacing, and the share of them that lie on the one part that it lies behind: it may reach
past the outline here and there (ours)."""

WITHIN = 0.03
"""Share of the way to its middle by which these places lie inside an interfacing (ours)."""

BESIDE = 1.0
"""mm beside the line at which it is asked on which side a part lies (ours)."""


def stiffened_apart(draft: Draft, cut: Path, parts: tuple[Piece, Piece]) -> Draft:
    """Return the draft with each interfacing of a piece that was cut into two `parts` parted by the same `cut`.

    One that the line does not part stays whole, behind the part that it lies behind; one that a line over a dart
    runs through more than once stays whole behind both.
    """
    names = {part.name for part in parts}
    pieces, notions = [], list(draft.notions)
    for piece in draft.pieces:
        if piece.material != "interfacing" or set(piece.stiffens) != names:
            pieces.append(piece)
            continue
        made = list(_behind(draft, piece, cut, parts))
        pieces += made
        own = [notion for notion in draft.notions if notion.piece == piece.name]
        for more in made[1:]:
            notions += [replace(n, where=more.name, piece=more.name, count=more.count) for n in own]
        notions = [replace(n, count=made[0].count) if n in own else n for n in notions]
    return replace(draft, pieces=tuple(pieces), notions=tuple(notions))


def _behind(draft: Draft, stiff: Piece, cut: Path, parts: tuple[Piece, Piece]) -> Iterator[Piece]:
    """Yield what of an interfacing lies behind the old part, and behind the new one."""
    new, old = parts
    halves = _halves(stiff, cut)
    if halves is None:
        ring = stiff.outline.evenly(AROUND)
        places = [at + WITHIN * (sum(ring) / AROUND - at) for at in ring]  # off the outline that both share
        alone = [part for part in parts if sum(holds_point(part.outline, at) for at in places) >= MOSTLY * AROUND]
        yield replace(stiff, stiffens=(alone[0].name,)) if alone else stiff
        return
    middle = cut.at(cut.length / 2)
    step = 1j * BESIDE * cut.tangent(cut.length / 2) / abs(cut.tangent(cut.length / 2))
    left_is_new = holds_point(new.outline, middle + step)
    left, right = halves
    yield replace(right if left_is_new else left, stiffens=(old.name,))
    name = free_name(f"{new.name}-interfacing", (piece.name for piece in draft.pieces))
    title = f"{new.title or new.name} interfacing"
    yield replace(left if left_is_new else right, name=name.replace("_", "-"), title=title, stiffens=(new.name,))


def _halves(stiff: Piece, cut: Path) -> tuple[Piece, Piece] | None:
    """Return what lies to the left and to the right of a cut; None where it runs through nothing of it."""
    long = extended(cut, before=BEYOND, after=BEYOND)
    met = [(hit.on_a, at, hit.on_b) for at, edge in enumerate(stiff.edges) for hit in crossings(long, edge.path)]
    if len(met) != 2:
        return None
    (first, i, u), (last, j, v) = sorted(met)
    path = part_between(long, first, last)
    if path is None:
        return None
    start, end = (_spot(stiff, at, place) for at, place in ((i, u), (j, v)))
    sides = (run_between(stiff, end, start), path), (run_between(stiff, start, end), path.reversed())
    made = []
    for run, closing in sides:
        if not run:
            return None
        line = ends_moved(closing, start=run[-1].edge.path.end, end=run[0].edge.path.start)
        edge = Edge("style_line", line, EdgeKind.FREE, allowance=PAST_STITCHING)
        edges = named_apart([*(stretch.edge for stretch in run), edge])
        if not is_simple(Path.joined(one.path for one in edges)):
            return None
        fold = any(one.kind is EdgeKind.FOLD for one in edges)
        pair = stiff.pair or (stiff.fold_edge is not None and not fold)
        made.append(replace(stiff, edges=tuple(edges), pair=pair))
    return made[0], made[1]


def _spot(piece: Piece, at: int, place: float) -> RingSpot:
    """Return the spot at a crossing's `place` on the edge with the number `at`."""
    before = part_between(piece.edges[at].path, 0.0, place)
    return RingSpot(at, before.length if before is not None else 0.0)
