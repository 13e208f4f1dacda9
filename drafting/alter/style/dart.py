"""Move a dart to any place of its piece's outline about its tip, or close it into gathers."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Sequence
from dataclasses import replace

from drafting.alter.girths import fuller_girth
from drafting.alter.style.join import run_on
from drafting.alter.style.merged import merged
from drafting.alter.style.places import RingSpot, leg_into, spot_on, spot_point
from drafting.alter.style.rings import (
    CutSides,
    RingStretch,
    become,
    holds_point,
    named_apart,
    region_within,
    renamed_chains,
    run_between,
)
from drafting.draft.by_role import closing_turn
from drafting.draft.draft import Draft, EdgeRef, Seam, SeamNotch
from drafting.draft.named import piece_named
from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.roles import EdgeRole, NotchKind
from drafting.geometry import Path, line
from drafting.geometry.area import is_simple
from drafting.geometry.crossing import Crossing, crossings, ends_moved
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.reading.style import DartWish
from drafting.shaping.flare.fullness import QUARTERS, quarter_marks

HOLD = frozenset({EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.FRONT_EDGE, EdgeRole.NECK})
"""Edges that stay where they lie while a dart is turned."""


WIDER = 0.05
"""mm wider inside than at its mouth: such a dart bends, and no turn about its tip closes it."""


def dart_moved(draft: Draft, wish: DartWish) -> Draft:
    """Return the draft with a dart at its new place, or gathered away; every other stitched length stays.

    Raises `DraftError` where the line from place to tip runs off the piece or over another dart, and for a dart
    that is wider inside than at its mouth, which no turn about its tip closes.
    """
    piece = piece_named(draft, wish.piece)
    leg = leg_into(piece, wish.dart)
    _refuse_wider_inside(piece, piece.edges[leg], piece.edges[(leg + 1) % len(piece.edges)])
    return _gathered(draft, piece, leg) if wish.to is None else _moved(draft, piece, leg, spot_on(piece, wish.to))


def _refuse_wider_inside(piece: Piece, into: Edge, out: Edge) -> None:
    joints = [
        way / into.length for way in itertools.accumulate(into.path.lengths[:-1])
    ]  # a cut may lie close beside one
    shares = [*(number / 50 for number in range(1, 50)), *joints]
    mouth = abs(into.path.start - out.path.end)
    inside = [abs(into.path.at(s * into.length) - out.path.at((1 - s) * out.length)) for s in shares]
    if max(inside) > mouth + WIDER:
        sizes = f"{told(max(inside), 'fine')}, and {told(mouth, 'fine')} at its mouth"
        raise DraftError(
            f"the dart {into.name} of the {piece.name} is widest inside, {sizes}",
            turn="leave it where it is, and choose a line that does not run over it",
        )


def _moved(draft: Draft, piece: Piece, leg: int, spot: RingSpot) -> Draft:
    count = len(piece.edges)
    into, out = piece.edges[leg], piece.edges[(leg + 1) % count]
    tip, place = into.path.end, spot_point(piece, spot)
    _refuse_off(piece, into, out, line(place, tip))
    begin = RingSpot((leg + 1) % count, out.length)
    end = RingSpot((leg - 1) % count, piece.edges[leg - 1].length)
    first, second = run_between(piece, begin, spot), run_between(piece, spot, end)
    if not first or not second:
        return draft  # it is there already
    turn = closing_turn(into, out)
    turns_first = not _holds(first) and (_holds(second) or _long(first) <= _long(second))
    turn = turn / abs(turn) if turns_first else abs(turn) / turn
    ring = Path.joined([line(tip, out.path.end), *(s.edge.path for s in first), line(place, tip)])
    turned = _turned_about(tip, turn)
    one = [replace(s.edge, path=s.edge.path.mapped(turned)) if turns_first else s.edge for s in first]
    two = [s.edge if turns_first else replace(s.edge, path=s.edge.path.mapped(turned)) for s in second]
    one[0] = replace(one[0], path=ends_moved(one[0].path, start=two[-1].path.end))
    legs = (replace(into, path=line(one[-1].path.end, tip)), replace(out, path=line(tip, two[0].path.start)))
    edges = named_apart([*two, *one, *legs])
    made = _with_all(piece, tuple(edges), CutSides(line(place, tip), region_within(ring)), turned, turns_first)
    if not is_simple(made.outline):
        raise DraftError(
            f"the {piece.name} would lie over itself with its dart there", turn="choose another place"
        )
    names = become([(piece.name, second, edges), (piece.name, first, edges[len(two) :])])
    found = renamed_chains(draft.with_pieces([made]), piece.name, names)
    return merged(found, piece.name, edges[len(two) - 1].name, edges[len(two)].name)


def _turned_about(tip: complex, turn: complex) -> Callable[[complex], complex]:
    return lambda p: tip + (p - tip) * turn


def _refuse_off(piece: Piece, into: Edge, out: Edge, path: Path) -> None:
    """Raise `DraftError` where the line from the new place to the tip runs off the piece or over a dart."""
    for edge in piece.edges:
        ends = (path.start, path.end)
        over = [c for c in crossings(path, edge.path) if all(abs(c.point - end) > 0.2 for end in ends)]
        if over and edge not in (into, out):
            raise DraftError(
                f"the {piece.name}'s dart would run over its {edge.name}", turn="choose a place that its tip sees"
            )
    if any(crossings(path, leg) for dart in piece.darts for leg in (dart.leg_a, dart.leg_b)):
        raise DraftError(f"the {piece.name}'s dart would run over another", turn="choose another place")
    if not holds_point(piece.outline, path.at(path.length / 2)):
        raise DraftError(f"the {piece.name}'s dart would run off the piece", turn="choose another place")


def _holds(run: Sequence[RingStretch]) -> bool:
    return any(s.edge.role in HOLD or s.edge.kind is EdgeKind.FOLD for s in run)


def _long(run: Sequence[RingStretch]) -> float:
    return sum(s.edge.length for s in run)


def _with_all(
    piece: Piece, edges: tuple[Edge, ...], parts: CutSides, turned: Callable[[complex], complex], first: bool
) -> Piece:
    """Return the piece with new edges, and all that lies on the side that was turned turned with it."""

    def here(point: complex) -> complex:
        return turned(point) if parts.holds(point) == first else point

    own, other = parts.levels(piece.levels)
    moves, stays = (own, other) if first else (other, own)
    marks, marks_beyond = parts.marks(piece.placements)
    if not first:
        marks, marks_beyond = marks_beyond, marks
    darts, darts_beyond = parts.darts(piece.darts)
    if not first:
        darts, darts_beyond = darts_beyond, darts
    return replace(
        piece,
        edges=edges,
        levels=_one_each(piece.levels, [*stays, *(level.mapped(turned) for level in moves)]),
        placements=(*marks_beyond, *(replace(m, path=m.path.mapped(turned)) for m in marks)),
        darts=(
            *darts_beyond,
            *(replace(d, leg_a=d.leg_a.mapped(turned), leg_b=d.leg_b.mapped(turned)) for d in darts),
        ),
        points={name: here(p) for name, p in piece.points.items()},
    )


def _one_each(old: Sequence[Level], bits: Sequence[Level]) -> tuple[Level, ...]:
    """Return the levels in their old order, the bits of each as one level again."""
    found = []
    for level in old:
        paths = [path for bit in bits if bit.name == level.name for path in bit.paths]
        found.append(replace(level, paths=run_on(tuple(paths))))
    return tuple(found)


def _gathered(draft: Draft, piece: Piece, leg: int) -> Draft:
    """Return the draft with a dart left open: its mouth is gathered up in the edge that it lay in."""
    count = len(piece.edges)
    before, after = piece.edges[leg - 1], piece.edges[(leg + 2) % count]
    into, out = piece.edges[leg], piece.edges[(leg + 1) % count]
    refs = (piece.name, before.name), (piece.name, after.name)
    seams = [s for s in draft.seams if refs[0] in (*s.a, *s.b)]
    if (
        before is after
        or any(refs[1] not in (*s.a, *s.b) for s in seams)
        or (not seams and before.kind != after.kind)
    ):
        raise DraftError(
            f"the {piece.name}'s dart opens between {before.name} and {after.name}, which are not sewn as one",
            turn="move it into one edge first",
        )
    mouth = line(into.path.start, out.path.end)
    sewn = before.sewn_length + after.sewn_length
    whole = Path.joined([before.path, mouth, after.path])
    kept = [n for n in before.notches if n.kind is not NotchKind.QUARTER]
    edge = replace(
        before,
        path=whole,
        sewn=sewn,
        notches=tuple(sorted((*kept, *quarter_marks(whole.length)), key=lambda n: n.at)),
    )
    lost = {into.name, out.name, after.name}
    edges = tuple(edge if e is before else e for e in piece.edges if e.name not in lost)
    levels = tuple(_closed(level, into.path, out.path) for level in piece.levels)
    made = replace(piece, edges=edges, levels=levels)
    if not is_simple(made.outline):
        raise DraftError(f"the {piece.name} would lie over itself without its dart")
    names = {before.name: (refs[0],), after.name: ()}
    found = renamed_chains(draft.with_pieces([made]), piece.name, names)
    found = replace(
        found,
        seams=tuple(
            s for s in found.seams if not {(piece.name, into.name), (piece.name, out.name)} & {*s.a, *s.b}
        ),
        girths=tuple(fuller_girth(girth, piece, made) for girth in found.girths),
    )
    return replace(found, seams=tuple(_requartered(s, refs[0], found) for s in found.seams))


def _closed(level: Level, into: Path, out: Path) -> Level:
    """Return the level drawn through where a dart lay."""
    paths = list(level.paths)
    for one, two in itertools.permutations(level.paths, 2):
        hits = any(abs(c.point - one.end) < 0.5 for leg in (into, out) for c in _near(leg, one.end))
        ends = any(abs(c.point - two.start) < 0.5 for leg in (into, out) for c in _near(leg, two.start))
        if hits and ends and one in paths and two in paths:
            paths[paths.index(one)] = Path.joined([one, line(one.end, two.start), two])
            paths.remove(two)
    return replace(level, paths=tuple(paths))


def _near(leg: Path, point: complex) -> list[Crossing]:
    across = (leg.end - leg.start) * 1j / abs(leg.end - leg.start)
    return list(crossings(leg, line(point - across, point + across)))


def _requartered(seam: Seam, ref: EdgeRef, draft: Draft) -> Seam:
    if (ref,) not in (seam.a, seam.b):
        return seam
    a, b = (sum(draft.edge(r).length for r in chain) for chain in (seam.a, seam.b))
    marks = [SeamNotch(f"quarter_{i}", q * a, q * b, kind=NotchKind.QUARTER) for i, q in enumerate(QUARTERS, 1)]
    return replace(seam, notches=tuple(marks))
