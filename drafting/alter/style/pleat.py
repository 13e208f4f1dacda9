"""Open a piece for pleats along lines from one edge through to another, and lay them.

A knife pleat takes twice its depth of cloth: at the place P the cloth is folded under by the depth and
back again. Its top and foot are trued by the fold: the part that lies beneath is the mirror image of
what lies above it, so that what is sewn at the edge catches every layer. A box pleat is two knife
pleats that meet underneath, an inverted one two that meet on the face, a tuck a knife pleat stitched
down all its length. What is laid keeps its length at the edge and its seam.

        fold  fold
      E1 | in | out | E2        P = E1's end = E2's start once laid
    -----.----.-----.-----
"""

from __future__ import annotations

from dataclasses import replace

from drafting.alter.girths import fuller_girth
from drafting.alter.style.places import SNAP, RingSpot, nearest_places, spot_on
from drafting.alter.style.pleat_marks import KnifeFold, PleatWay, opened_inside
from drafting.alter.style.rings import RingStretch, become, free_name, named_apart, renamed_chains, run_between
from drafting.draft.draft import Draft, Seam
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import Edge, EdgeKind, Notch, Piece
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.geometry import Path, line
from drafting.geometry.area import is_simple
from drafting.geometry.crossing import crossings
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.reading.style import PleatWish

AT_ENDS = 0.2
"""mm: a crossing nearer to an end of the line is that end."""

LEAST_SQUARE = 0.5
"""Sine of the least angle at which a pleat may meet its edge (ours: 30 degrees)."""

DEEPEST = 150.0
"""mm: the deepest pleat that is laid (ours)."""


def folds_of(wish: PleatWish) -> tuple[KnifeFold, ...]:
    """Return the knife pleats that a wish is made of, in the order of the first edge."""
    towards_start = wish.towards == "start"
    pitch = wish.apart if wish.apart is not None else 2 * wish.depth
    found = []
    for k in range(wish.number):
        at = (k - (wish.number - 1) / 2) * pitch
        if wish.kind == "box":
            found += [KnifeFold(at - wish.depth, False), KnifeFold(at + wish.depth, True)]
        elif wish.kind == "inverted":
            found += [KnifeFold(at, True), KnifeFold(at, False)]
        else:
            found.append(KnifeFold(at, towards_start))
    return tuple(found)


def pleated(draft: Draft, wish: PleatWish) -> Draft:
    """Return the draft with the pleats opened and laid; every seam walks as before.

    Raises `DraftError` where they do not find room on the edges, or run off the piece.
    """
    piece = piece_named(draft, wish.piece)
    if not tol.LEAST_EDGE <= wish.depth <= DEEPEST:
        raise DraftError(
            "a pleat cannot be so deep",
            value=told(wish.depth),
            reach=f"{told(tol.LEAST_EDGE, 'least')} to {told(DEEPEST, 'most')}",
        )
    folds = folds_of(wish)
    lines = [_line(piece, wish, fold) for fold in folds]
    for number, (fold, (top, foot)) in reversed(list(enumerate(zip(folds, lines, strict=True), 1))):
        draft = _opened(draft, wish, PleatWay(draft[wish.piece], top, foot, fold, wish.depth), number)
    return draft


def pleat_lines(piece: Piece, wish: PleatWish) -> tuple[Path, ...]:
    """Return the lines along which a piece would be opened; raises `DraftError` where they run off it."""
    return tuple(line(*_line(piece, wish, fold)) for fold in folds_of(wish))


def _line(piece: Piece, wish: PleatWish, fold: KnifeFold) -> tuple[complex, complex]:
    """Return both ends of one pleat's line: those of the middle one, moved along their edges."""
    ends = []
    for place, offset in ((wish.start, fold.offset), (wish.end, -fold.offset)):
        spot = spot_on(piece, place)
        edge = edge_named(piece, place.edge)
        at = (spot.at if piece.edges[spot.index] is edge else 0.0) + offset
        if not -SNAP <= at <= edge.length + SNAP:
            raise DraftError(
                f"the pleats do not find room on the {piece.name}'s {edge.name}",
                value=told(at),
                reach=f"0 to {told(edge.length, 'most')}",
                turn="fewer pleats, less depth, or closer together",
            )
        ends.append(edge.path.at(min(max(at, 0.0), edge.length)))
    path = line(*ends)
    legs = [leg for dart in piece.darts for leg in (dart.leg_a, dart.leg_b)]
    crossed = [*(e.path for e in piece.edges), *legs]
    if abs(ends[1] - ends[0]) < wish.depth or any(_crosses(path, one) for one in crossed):
        raise DraftError(f"the pleats run off the {piece.name}, or over a dart", turn="choose other ends")
    return ends[0], ends[1]


def _crosses(path: Path, edge: Path) -> bool:
    ends = (path.start, path.end)
    return any(all(abs(one.point - end) > AT_ENDS for end in ends) for one in crossings(path, edge))


def _opened(draft: Draft, wish: PleatWish, way: PleatWay, number: int) -> Draft:
    piece, ends = way.piece, (wish.start.edge, wish.end.edge)
    top, foot = (_spot_at(piece, name, at) for name, at in zip(ends, (way.top, way.foot), strict=True))
    moves, stays = run_between(piece, top, foot), run_between(piece, foot, top)
    named = named_apart([*(s.edge for s in stays), *(s.edge for s in moves)])
    still, moved = named[: len(stays)], named[len(stays) :]
    names = become([(piece.name, stays, still), (piece.name, moves, moved)])
    moved = [replace(edge, path=edge.path.moved(way.by)) for edge in moved]
    strips = [_strip(draft, way, name, at, number) for name, at in zip(ends, (way.top, way.foot), strict=True)]
    before = _beside(stays, still, -1, ends[0]), _beside(moves, moved, -1, ends[1])
    after = _beside(moves, moved, 0, ends[0]), _beside(stays, still, 0, ends[1])
    edges, lost = [*strips[0], *moved, *strips[1], *still], set[str]()
    for k in (0, 1):
        if len(strips[k]) == 1:
            run = [*before[k], *strips[k], *after[k]]
            edges = [_fused(piece, ends[k], run) if e is strips[k][0] else e for e in edges]
            edges = [e for e in edges if all(e is not one for one in (*before[k], *after[k]))]
            lost |= {e.name for e in run} - {ends[k]}
    made = replace(opened_inside(piece, way, wish, moves, number), edges=tuple(edges))
    if not is_simple(made.outline):
        raise DraftError(f"the {piece.name} would lie over itself with its pleats", turn="less depth")
    kept = {name: tuple(ref for ref in refs if ref[1] not in lost) for name, refs in names.items()}
    found = renamed_chains(draft.with_pieces([made]), piece.name, kept)
    seams = [_laid(made, strip) for strip in strips if len(strip) == 2]
    girths = tuple(fuller_girth(girth, piece, made) for girth in found.girths)
    return replace(found, seams=(*found.seams, *seams), girths=girths)


def _beside(run: list[RingStretch], edges: list[Edge], end: int, name: str) -> list[Edge]:
    """Return the part of edge `name` that a run ends (-1) or begins (0) with, if it does."""
    return [edges[end]] if run and run[end].edge.name == name else []


def _spot_at(piece: Piece, name: str, point: complex) -> RingSpot:
    """Return where a point of an edge lies on its piece; a corner is the end of the edge before."""
    index = piece.index(name)
    path = piece.edges[index].path
    if abs(point - path.start) < SNAP:
        return RingSpot((index - 1) % len(piece.edges), piece.edges[index - 1].length)
    if abs(point - path.end) < SNAP:
        return RingSpot(index, path.length)
    passed = 0.0
    best = (float("inf"), 0.0)
    for segment, length in zip(path.segments, path.lengths, strict=True):
        for t in nearest_places(segment, point):
            at = passed + segment.split(t)[0].length if 0 < t < 1 else passed + t * length
            best = min(best, (abs(segment.point(t) - point), at))
        passed += length
    return RingSpot(index, best[1])


def _is_sewn(draft: Draft, piece: Piece, name: str) -> bool:
    return any((piece.name, name) in (*seam.a, *seam.b) for seam in draft.seams)


def _strip(draft: Draft, way: PleatWay, name: str, at: complex, number: int) -> list[Edge]:
    """Return the edges of what is let in at one end, in outline order: two that are laid on each other where the
    edge is sewn to something, else one."""
    piece, top = way.piece, at == way.top
    edge = piece[name]
    tangent = edge.path.arrive if abs(at - edge.path.end) < abs(at - edge.path.start) else edge.path.leave
    spot = _spot_at(piece, name, at)
    if piece.edges[spot.index] is edge and spot.at < edge.length:
        tangent = edge.path.tangent(spot.at)
    step = (tangent / way.across).real
    if abs(step) < LEAST_SQUARE:
        raise DraftError(
            f"the pleat runs along the {piece.name}'s {name}, not across it", turn="choose other ends"
        )
    slope = (tangent / way.across).imag / step  # along -along for each mm across
    lean = -slope if way.fold.under_before else slope
    middle = at + way.depth * way.across * complex(1.0, lean)
    far = at + way.by
    ends = (at, middle, far) if top else (far, middle, at)
    like = replace(edge, notches=(), sewn=None, dart=None)
    if not _is_sewn(draft, piece, name):
        return [replace(like, path=line(*ends))]
    labels = [free_name(f"pleat_{number}_{side}", (e.name for e in piece.edges)) for side in ("in", "out")]
    labels = labels if top else [f"{label}_foot" for label in labels]
    paths = line(ends[0], ends[1]), line(ends[1], ends[2])
    return [
        replace(like, name=label, path=path, role=EdgeRole.EASE_PLEAT, kind=EdgeKind.SEAM)
        for label, path in zip(labels, paths, strict=True)
    ]


def _laid(piece: Piece, strip: list[Edge]) -> Seam:
    one, two = strip
    return Seam(
        f"{piece.name} {two.name.replace('_out', '')}".replace("_", " ").replace("-", " "),
        ((piece.name, one.name),),
        ((piece.name, two.name),),
        start=None,
        end=None,
        kind=SeamKind.LAID_PLEAT,
    )


def _fused(piece: Piece, name: str, parts: list[Edge]) -> Edge:
    """Return what was let into an edge that nothing is sewn to as one edge with what lies beside it."""
    return replace(piece[name], path=Path.joined([e.path for e in parts]), notches=_notches(parts))


def _notches(run: list[Edge]) -> tuple[Notch, ...]:
    passed, found = 0.0, []
    for edge in run:
        found += [replace(notch, at=notch.at + passed) for notch in edge.notches]
        passed += edge.length
    return tuple(found)
