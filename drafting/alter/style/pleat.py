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

from dataclasses import dataclass, replace

from drafting.alter.girths import fuller_girth
from drafting.alter.style.join import run_on
from drafting.alter.style.places import SNAP, Spot, nearest_places, spot_on
from drafting.alter.style.rings import (
    Parts,
    Stretch,
    become,
    free_name,
    named_apart,
    region_within,
    renamed_chains,
    run_between,
)
from drafting.draft.draft import Draft, Seam
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import NAMED_MARK, Edge, EdgeKind, Level, Notch, Piece, Placement
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

PLEAT_FOLD = "pleat fold"
"""A mark along which a pleat is folded."""

HAIR = 0.05
"""mm: two ends no farther apart are one."""

ARROW, BARB = 40.0, 8.0
"""mm: how far below the edge the arrow stands, and how long its barbs are."""

DEEPEST = 150.0
"""mm: the deepest pleat that is laid (ours)."""


@dataclass(frozen=True)
class Fold:
    """One knife pleat to come: mm along the first edge from its middle one, and whether it lies under what is
    before it in outline order."""

    offset: float
    under_before: bool


def folds_of(wish: PleatWish) -> tuple[Fold, ...]:
    """Return the knife pleats that a wish is made of, in the order of the first edge."""
    towards_start = wish.towards == "start"
    pitch = wish.apart if wish.apart is not None else 2 * wish.depth
    found = []
    for k in range(wish.number):
        at = (k - (wish.number - 1) / 2) * pitch
        if wish.kind == "box":
            found += [Fold(at - wish.depth, False), Fold(at + wish.depth, True)]
        elif wish.kind == "inverted":
            found += [Fold(at, True), Fold(at, False)]
        else:
            found.append(Fold(at, towards_start))
    return tuple(found)


def pleated(draft: Draft, wish: PleatWish) -> Draft:
    """Return the draft with the pleats opened and laid; every seam walks as before.

    Raises `DraftError` where they do not find room on the edges, or run off the piece.
    """
    piece = piece_named(draft, wish.piece)
    if not tol.LEAST_EDGE <= wish.depth <= DEEPEST:
        raise DraftError(
            "a pleat cannot be so deep", value=told(wish.depth), reach=f"{told(tol.LEAST_EDGE)} to {told(DEEPEST)}"
        )
    folds = folds_of(wish)
    lines = [_line(piece, wish, fold) for fold in folds]
    for number, (fold, (top, foot)) in reversed(list(enumerate(zip(folds, lines, strict=True), 1))):
        draft = _opened(draft, wish, _Way(draft[wish.piece], top, foot, fold, wish.depth), number)
    return draft


def pleat_lines(piece: Piece, wish: PleatWish) -> tuple[Path, ...]:
    """Return the lines along which a piece would be opened; raises `DraftError` where they run off it."""
    return tuple(line(*_line(piece, wish, fold)) for fold in folds_of(wish))


def _line(piece: Piece, wish: PleatWish, fold: Fold) -> tuple[complex, complex]:
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
                reach=f"0 to {told(edge.length)}",
                turn="fewer pleats, less depth, or closer together",
            )
        ends.append(edge.path.at(min(max(at, 0.0), edge.length)))
    path = line(*ends)
    if abs(ends[1] - ends[0]) < wish.depth or any(_crosses(path, e.path) for e in piece.edges):
        raise DraftError(f"the pleats run off the {piece.name}, or over a dart", turn="choose other ends")
    return ends[0], ends[1]


def _crosses(path: Path, edge: Path) -> bool:
    ends = (path.start, path.end)
    return any(all(abs(one.point - end) > AT_ENDS for end in ends) for one in crossings(path, edge))


@dataclass(frozen=True)
class _Way:
    """One pleat to be opened on a piece, from its `top` to its `foot`; what runs from top to foot is moved."""

    piece: Piece
    top: complex
    foot: complex
    fold: Fold
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


def _opened(draft: Draft, wish: PleatWish, way: _Way, number: int) -> Draft:
    piece = way.piece
    top, foot = (_spot_at(piece, place.edge, at) for place, at in ((wish.start, way.top), (wish.end, way.foot)))
    moves, stays = run_between(piece, top, foot), run_between(piece, foot, top)
    named = named_apart([*(s.edge for s in stays), *(s.edge for s in moves)])
    still, moved = named[: len(stays)], [_moved(edge, way.by) for edge in named[len(stays) :]]
    names = become([(piece.name, stays, still), (piece.name, moves, named[len(stays) :])])
    strips = [
        _strip(draft, piece, wish.start.edge, way, way.top, number),
        _strip(draft, piece, wish.end.edge, way, way.foot, number),
    ]
    edges = [*strips[0], *moved, *strips[1], *still]
    made = _with_all(piece, way, wish, moves, number)
    fused, lost = _fused(
        edges, {name for name in (wish.start.edge, wish.end.edge) if not _is_sewn(draft, piece, name)}, piece
    )
    made = replace(made, edges=tuple(fused))
    if not is_simple(made.outline):
        raise DraftError(f"the {piece.name} would lie over itself with its pleats", turn="less depth")
    kept = {name: tuple(ref for ref in refs if ref[1] not in lost) for name, refs in names.items()}
    found = renamed_chains(draft.with_pieces([made]), piece.name, kept)
    seams = [_laid(made, strip) for strip in strips if len(strip) == 2]
    return replace(
        found,
        seams=(*found.seams, *seams),
        girths=tuple(fuller_girth(girth, piece, made) for girth in found.girths),
    )


def _spot_at(piece: Piece, name: str, point: complex) -> Spot:
    """Return where a point of an edge lies on its piece; a corner is the end of the edge before."""
    index = piece.index(name)
    path = piece.edges[index].path
    if abs(point - path.start) < SNAP:
        return Spot((index - 1) % len(piece.edges), piece.edges[index - 1].length)
    if abs(point - path.end) < SNAP:
        return Spot(index, path.length)
    passed = 0.0
    best = (float("inf"), 0.0)
    for segment, length in zip(path.segments, path.lengths, strict=True):
        for t in nearest_places(segment, point):
            at = passed + segment.split(t)[0].length if 0 < t < 1 else passed + t * length
            best = min(best, (abs(segment.point(t) - point), at))
        passed += length
    return Spot(index, best[1])


def _moved(edge: Edge, by: complex) -> Edge:
    return replace(edge, path=edge.path.moved(by))


def _is_sewn(draft: Draft, piece: Piece, name: str) -> bool:
    return any((piece.name, name) in (*seam.a, *seam.b) for seam in draft.seams)


def _strip(draft: Draft, piece: Piece, name: str, way: _Way, at: complex, number: int) -> list[Edge]:
    """Return the edges of what is let in at one end, in outline order: two that are laid on each other where the
    edge is sewn to something, else one."""
    edge = piece[name]
    top = at == way.top
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
        return [replace(like, name=f"{name}_let_in", path=line(*ends))]
    labels = [free_name(f"pleat_{number}_{side}", (e.name for e in piece.edges)) for side in ("in", "out")]
    labels = labels if top else [f"{label}_foot" for label in labels]
    paths = line(ends[0], ends[1]), line(ends[1], ends[2])
    return [
        replace(like, name=label, path=path, role=EdgeRole.EASE_PLEAT, kind=EdgeKind.SEAM)
        for label, path in zip(labels, paths, strict=True)
    ]


def _laid(piece: Piece, strip: list[Edge]) -> Seam:
    one, two = strip
    name = f"{piece.name} {one.name}".replace("_in", "").replace("_", " ").replace("-", " ")
    return Seam(
        name, ((piece.name, one.name),), ((piece.name, two.name),), start=None, end=None, kind=SeamKind.LAID_PLEAT
    )


def _fused(edges: list[Edge], unsewn: set[str], piece: Piece) -> tuple[list[Edge], set[str]]:
    """Return the ring with what was let into an edge that nothing is sewn to as a part of it, and names lost."""
    lost: set[str] = set()
    for name in unsewn:
        at = next(i for i, edge in enumerate(edges) if edge.name == f"{name}_let_in")
        edges = [*edges[at:], *edges[:at]]  # the strip first
        run = [edges[0]]
        old = piece[name]
        while _same(edges[-1], old) and len(edges) > 3 and edges[-1].name != f"{name}_let_in":
            run.insert(0, edges.pop())
            break
        taken = 1
        if _same(edges[1], old):
            run.append(edges[1])
            taken = 2
        whole = replace(old, path=Path.joined([e.path for e in run]), notches=_notches(run))
        lost |= {e.name for e in run} - {name}
        edges = [whole, *edges[taken:]]
    return edges, lost


def _same(edge: Edge, old: Edge) -> bool:
    """Return whether an edge is a part of the old one: called like it, or like it with a number."""
    return edge.name == old.name or edge.name.rsplit("_", 1)[0] == old.name


def _notches(run: list[Edge]) -> tuple[Notch, ...]:
    passed, found = 0.0, []
    for edge in run:
        found += [replace(notch, at=notch.at + passed) for notch in edge.notches]
        passed += edge.length
    return tuple(found)


def _with_all(piece: Piece, way: _Way, wish: PleatWish, moves: list[Stretch], number: int) -> Piece:
    """Return the piece with all that lies beyond the pleat moved, levels drawn on, folds and arrow marked."""
    ring = Path.joined([*(s.edge.path for s in moves), line(way.foot, way.top)])
    nothing = abs(ring.area) < 1.0  # the fold alone lies beyond
    parts = None if nothing else Parts(line(way.top, way.foot), region_within(ring))
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


def _run_through(level: Level, parts: Parts | None, way: _Way, wish: PleatWish) -> Level:
    """Return a level run on over an open pleat, and broken where the pleat is stitched down."""
    paths: list[Path] = []
    for path in level.paths:
        beyond, stays = ([], [path]) if parts is None else parts.pieces_of(path)
        shifted = [bit.moved(way.by) for bit in beyond]
        if _stitched_at(wish, way, path):
            paths += [*stays, *shifted]
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
    return replace(level, paths=tuple(paths))


def _on_line(point: complex, way: _Way) -> bool:
    return abs(((point - way.top) / way.along).imag) < HAIR


def _stitched_at(wish: PleatWish, way: _Way, path: Path) -> bool:
    far = ((path.at(path.length / 2) - way.top) / way.along).real
    return wish.kind == "tuck" or far < wish.stitched


def _marks(way: _Way, wish: PleatWish, number: int) -> tuple[Placement, ...]:
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
