"""Cut through a dart closed to a point at both ends: each part keeps its half, with its mouth in the cut."""

from __future__ import annotations

from dataclasses import replace

from drafting.alter.style.cut import cut_apart, cut_line
from drafting.alter.style.rings import Names, free_name, named_apart, renamed_chains
from drafting.draft.draft import Draft, Seam
from drafting.draft.named import piece_named
from drafting.draft.piece import Edge, EdgeKind, InnerDart, Piece
from drafting.draft.roles import DartLeg, EdgeRole, SeamKind
from drafting.geometry import Path, line
from drafting.geometry.area import is_simple
from drafting.geometry.crossing import crossings, ends_moved, part_between
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.names import name_in_words
from drafting.reading.style import CutWish

SLANT = 0.25
"""Of a half's depth: by how much its legs may differ where the cut crosses them, until both are one (ours)."""


def cut_through(draft: Draft, wish: CutWish) -> Draft:
    """Return the draft with a piece cut in two, through the inner darts that the line crosses; raises what
    `cut_apart` does, and `DraftError` for a line that crosses a dart more than once, or too near to its point."""
    piece = piece_named(draft, wish.piece)
    crossed = crossed_inner(piece, wish)
    bare = replace(piece, darts=tuple(dart for dart in piece.darts if dart not in crossed))
    cut = cut_apart(draft.with_pieces([bare]), wish, line_through(piece, wish))
    for dart in crossed:
        for name in (wish.piece, wish.name):
            cut = _halved(cut, name, dart, wish.edge)
    return cut


def line_through(piece: Piece, wish: CutWish) -> Path:
    """Return the line along which a piece would be cut, through whatever inner darts it crosses."""
    crossed = crossed_inner(piece, wish)
    path = cut_line(replace(piece, darts=tuple(dart for dart in piece.darts if dart not in crossed)), wish)
    for dart in crossed:
        path = _evened(piece, path, dart)
    return path


def _evened(piece: Piece, path: Path, dart: InnerDart) -> Path:
    """Return a line moved where it crosses a dart, so that both legs are as long on either side of it."""
    flip = abs(dart.leg_b.start - dart.leg_a.start) > abs(dart.leg_b.end - dart.leg_a.start)
    legs = dart.leg_a, dart.leg_b.reversed() if flip else dart.leg_b
    hits = [crossings(path, leg)[0] for leg in legs]
    far = []
    for leg, hit in zip(legs, hits, strict=True):
        until = part_between(leg, 0.0, hit.on_b)
        far.append(0.0 if until is None else until.length)
    at = sum(far) / 2
    depth = min(at, min(leg.length for leg in legs) - at)
    if abs(far[0] - at) > SLANT * depth:
        raise _slanting(piece, dart)
    (first, one), (last, two) = sorted(
        ((hit.on_a, leg.at(at)) for hit, leg in zip(hits, legs, strict=True)), key=lambda place: place[0]
    )
    before, after = part_between(path, 0.0, first), part_between(path, last, len(path.segments))
    if before is None or after is None:
        raise _slanting(piece, dart)
    return Path.joined([ends_moved(before, end=one), line(one, two), ends_moved(after, start=two)])


def crossed_inner(piece: Piece, wish: CutWish) -> list[InnerDart]:
    """Return the inner darts of which a line crosses both legs; raises `DraftError` where it leaves the piece."""
    path = cut_line(replace(piece, darts=()), wish)
    found = []
    for dart in piece.darts:
        hits = [len(crossings(path, leg)) for leg in (dart.leg_a, dart.leg_b)]
        if hits == [1, 1]:
            found.append(dart)
        elif any(hits):
            raise DraftError(
                f"the cut through the {piece.name} does not run right through its {name_in_words(dart.name)}",
                turn="cross both of its legs once, or keep clear of it",
            )
    return found


def _halved(draft: Draft, name: str, dart: InnerDart, label: str) -> Draft:
    """Return the draft with one part's half of a dart opened into its edge along the cut."""
    piece = draft[name]
    for edge in piece.edges:
        if edge.name.startswith(label):
            hits = [crossings(edge.path, leg) for leg in (dart.leg_a, dart.leg_b)]
            if all(hits):
                return _opened(draft, piece, edge, dart)
    raise DraftError(
        f"the cut through the {name} ends in its {name_in_words(dart.name)}", turn="choose other ends"
    )


def _opened(draft: Draft, piece: Piece, edge: Edge, dart: InnerDart) -> Draft:
    first, into, out, last = _parts(piece, edge, dart)
    first, last = named_apart([first, last], [e.name for e in piece.edges if e is not edge])
    at = piece.index(edge.name)
    made = replace(piece, edges=(*piece.edges[:at], first, into, out, last, *piece.edges[at + 1 :]))
    if not is_simple(made.outline):
        raise _slanting(piece, dart)
    names: Names = {edge.name: ((piece.name, first.name), (piece.name, last.name))}
    found = renamed_chains(draft.with_pieces([made]), piece.name, names)
    seam = Seam(
        free_name(f"{piece.name} {dart.name}".replace("_", " ").replace("-", " "), (s.name for s in found.seams)),
        ((piece.name, into.name),),
        ((piece.name, out.name),),
        start=None,
        end=None,
        kind=SeamKind.DART,
    )
    return replace(found, seams=(*found.seams, seam))


def _parts(piece: Piece, edge: Edge, dart: InnerDart) -> tuple[Edge, Edge, Edge, Edge]:
    """Return what an edge along the cut becomes: its first part, both legs of the dart, and its last part."""
    one, two = sorted(
        ((crossings(edge.path, leg)[0], leg) for leg in (dart.leg_a, dart.leg_b)), key=lambda hit: hit[0].on_a
    )
    before = part_between(edge.path, 0.0, one[0].on_a)
    after = part_between(edge.path, two[0].on_a, len(edge.path.segments))
    halves = [_to_tip(leg, hit.on_b, one[0].point, two[0].point) for hit, leg in (one, two)]
    depth = sum(half.length for half in halves) / 2
    if before is None or after is None or min(before.length, after.length, depth) < tol.LEAST_EDGE:
        raise DraftError(
            f"the cut through the {piece.name} ends too near to its {name_in_words(dart.name)}",
            turn="choose other ends",
        )
    legs = [_long(leg, half.end, depth) for half, (_, leg) in zip(halves, (one, two), strict=True)]
    names = [free_name(f"{dart.name}_{side}", (e.name for e in piece.edges)) for side in ("in", "out")]
    into, out = (
        Edge(name, path, EdgeKind.DART, role=EdgeRole.WAIST_DART, dart=DartLeg(dart.name, name == names[0], other))
        for name, other, path in zip(names, names[::-1], (legs[0], legs[1].reversed()), strict=True)
    )
    return (
        replace(edge, path=ends_moved(before, end=into.path.start)),
        into,
        replace(out, path=ends_moved(out.path, start=into.path.end)),
        replace(edge, path=ends_moved(after, start=out.path.end)),
    )


def _slanting(piece: Piece, dart: InnerDart) -> DraftError:
    return DraftError(
        f"the cut runs along the {piece.name}'s {name_in_words(dart.name)}, not across it",
        turn="cut across the dart, or keep clear of it",
    )


def _to_tip(leg: Path, at: float, enters: complex, leaves: complex) -> Path:
    """Return a leg from where the cut crosses it to its tip within the part, which lies left of where its edge
    `enters` and `leaves` the dart: a cut that runs round may have its ends anywhere."""
    ahead = part_between(leg, at, len(leg.segments))
    behind = part_between(leg, 0.0, at)
    if ahead is None or behind is None:
        raise DraftError("the cut runs through the point of a dart", turn="choose other ends")
    middle, way = (enters + leaves) / 2, leaves - enters
    return ahead if ((ahead.end - middle) / way).imag > 0 else behind.reversed()


def _long(leg: Path, tip: complex, depth: float) -> Path:
    """Return the last `depth` mm of a leg that runs to a tip, so that both legs of a half are of one length."""
    whole = leg if abs(tip - leg.end) < abs(tip - leg.start) else leg.reversed()
    return whole.split(whole.length - depth)[1]
