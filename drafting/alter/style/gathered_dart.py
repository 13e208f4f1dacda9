"""A dart left open: its mouth is gathered up in the edge that it lay in, between two notches about it.

      before    w    mouth    w    after
    ---------|-----=========-----|---------     drawn: twice the mouth between the notches
             |------------------|               sewn:  as long as the partner is there

Half the mouth on either side of it is gathered along with it, two to one (common practice: gathers two to one lie
full and even); less where the edge, or a notch that has its own partner, ends sooner.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.alter.girths import fuller_girth
from drafting.alter.style.rings import renamed_chains
from drafting.draft.draft import Draft, EdgeRef, Seam, SeamNotch
from drafting.draft.piece import Edge, Level, Notch, Piece
from drafting.draft.roles import NotchKind, PieceRole
from drafting.draft.walk import marked
from drafting.geometry import Path, line
from drafting.geometry.area import is_simple
from drafting.geometry.crossing import Crossing, crossings
from drafting.geometry.curve import Cubic
from drafting.ground.errors import DraftError
from drafting.shaping.flare.fullness import quarter_marks

BESIDE = 0.5
"""Share of the mouth that is gathered with it on either side (common practice: two to one)."""

ENDS = 12.0
"""mm from a seam's end, or from a notch, nearer than which gathers run on to it (ours)."""

ROUNDED, LEAST_BEND = 6.0, 0.5
"""mm on either side of the mouth's two corners that are rounded, at most and at least (ours)."""


def dart_gathered(draft: Draft, piece: Piece, leg: int) -> Draft:
    """Return the draft with the dart of a piece, whose first leg is its edge `leg`, left open and gathered.

    Raises `DraftError` where what lies on its two sides is not sewn as one.
    """
    count = len(piece.edges)
    before, after = piece.edges[leg - 1], piece.edges[(leg + 2) % count]
    into, out = piece.edges[leg], piece.edges[(leg + 1) % count]
    seams = _seams_of_both(draft, piece, before, after)
    edge = _run_together(before, after, sewn=bool(seams))
    mouth = edge.length - before.length - after.length
    lost = {into.name, out.name, after.name}
    edges = tuple(edge if e is before else e for e in piece.edges if e.name not in lost)
    levels = tuple(_closed(level, into.path, out.path) for level in piece.levels)
    made = replace(piece, edges=edges, levels=levels)
    if not is_simple(made.outline):
        raise DraftError(f"the {piece.name} would lie over itself without its dart")
    pulled = {one.name: _pulled_up(draft, one, (piece.name, before.name), mouth) for one in seams}
    legs = {(piece.name, into.name), (piece.name, out.name)}
    kept = tuple(pulled.get(s.name, s) for s in draft.seams if not legs & {*s.a, *s.b})
    names = {before.name: ((piece.name, before.name),), after.name: ()}
    found = renamed_chains(replace(draft, seams=kept).with_pieces([made]), piece.name, names)
    girths = tuple(fuller_girth(girth, piece, made) for girth in found.girths)
    return marked(replace(found, girths=girths))


def _seams_of_both(draft: Draft, piece: Piece, before: Edge, after: Edge) -> list[Seam]:
    """Return the seams that both sides of a dart's mouth are sewn in."""
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
    return seams


def _run_together(before: Edge, after: Edge, *, sewn: bool) -> Edge:
    """Return the edge before a mouth, the mouth and the edge after it as one; quarters on one that nothing is sewn
    to yet."""
    whole = _trued(before, after)
    shift = whole.length - after.length
    notches = [*before.notches, *(replace(n, at=n.at + shift) for n in after.notches)]
    kept: list[Notch] = [n for n in notches if n.kind is not NotchKind.QUARTER]
    kept += [] if sewn else quarter_marks(whole.length)
    ordered = tuple(sorted(kept, key=lambda n: n.at))
    return replace(before, path=whole, sewn=before.sewn_length + after.sewn_length, notches=ordered)


def _trued(before: Edge, after: Edge) -> Path:
    """Return the edges and the mouth between them as one line without corners, which no cut line could follow."""
    mouth = line(before.path.end, after.path.start)
    beside = [before.length - max((n.at for n in before.notches), default=0.0)]
    beside += [min((n.at for n in after.notches), default=after.length), after.length, mouth.length / 3]
    bend = min(ROUNDED, *beside)
    if bend < LEAST_BEND:
        return Path.joined([before.path, mouth, after.path])
    kept = before.path.part(0.0, before.length - bend), after.path.split(bend)[1]
    straight = mouth.part(bend, mouth.length - bend)
    corners = [_bend(one, other) for one, other in ((kept[0], straight), (straight, kept[1]))]
    return Path.joined([kept[0], corners[0], straight, corners[1], kept[1]])


def _bend(one: Path, other: Path) -> Path:
    """Return the curve that leads from the end of one path into the start of another (a Hermite cubic)."""
    reach = abs(other.start - one.end) / 3
    out, home = one.segments[-1].tangent(1.0), other.segments[0].tangent(0.0)
    first, last = one.end + reach * out / abs(out), other.start - reach * home / abs(home)
    return Path((Cubic(one.end, first, last, other.start),))


@dataclass(frozen=True)
class _Side:
    """One chain of a seam with the mouth of a dart in it, `mouth` mm wide, `place` mm from the seam's start.

    `marks` are the places on it and on the chain it is sewn to that face one another, from end to end.
    """

    place: float
    mouth: float
    marks: tuple[tuple[float, float], ...]

    def opened(self, own: float) -> float:
        """Return where a place of the chain lies once the mouth is open in it."""
        return own if own <= self.place else own + self.mouth

    def facing(self, own: float) -> float:
        """Return the place on the other chain that faces a place of this one, before the mouth was opened."""
        for (a, b), (c, d) in itertools.pairwise(self.marks):
            if own <= c:
                return b + (d - b) * (own - a) / (c - a) if c > a else b
        return self.marks[-1][1]


def _pulled_up(draft: Draft, seam: Seam, before: EdgeRef, mouth: float) -> Seam:
    """Return a seam with the stretch marked on both chains between which the mouth is gathered."""
    on_a = before in seam.a
    own, other = (seam.a, seam.b) if on_a else (seam.b, seam.a)
    lengths = [draft.edge(ref).length for ref in own]
    # Edges of chain b run backwards, so there the edge after the mouth comes first.
    first = own.index(before) - (0 if on_a else 1)
    place = sum(lengths[: first + 1])
    placed = [(n.a, n.b) if on_a else (n.b, n.a) for n in seam.notches]
    ends = (0.0, 0.0), (sum(lengths), sum(draft.edge(ref).length for ref in other))
    side = _Side(place, mouth, (ends[0], *placed, ends[1]))
    low, high = _stretch(side, place - lengths[first], place + lengths[first + 1])
    count = 2 if draft[before[0]].role is PieceRole.BACK else 1
    old = [
        replace(n, a=side.opened(n.a)) if on_a else replace(n, b=side.opened(n.b))
        for n in seam.notches
        if n.kind is not NotchKind.QUARTER
    ]
    new = [
        SeamNotch(name, here, there, count) if on_a else SeamNotch(name, there, here, count)
        for name, here, there in _bounds(side, low, high)
    ]
    ordered = tuple(sorted([*old, *new], key=lambda n: n.a))
    return replace(seam, notches=ordered, eased=_eased(seam, side, (low, high), on_a=on_a))


def _stretch(side: _Side, least: float, most: float) -> tuple[float, float]:
    """Return from where to where a chain is gathered, its mouth still shut: no farther than the next notch."""
    stops = [own for own, _ in side.marks]
    least = max([least, *(own for own in stops if own <= side.place)])
    most = min([most, *(own for own in stops if own >= side.place)])
    low, high = side.place - BESIDE * side.mouth, side.place + BESIDE * side.mouth
    return (least if low < least + ENDS else low), (most if high > most - ENDS else high)


def _bounds(side: _Side, low: float, high: float) -> Iterator[tuple[str, float, float]]:
    """Yield the notches that bound what is gathered, where no notch and no end of the seam does."""
    known = {own for own, _ in side.marks}
    for name, own in (("gathers from", low), ("gathers to", high)):
        if own not in known:
            yield name, side.opened(own), side.facing(own)


def _eased(seam: Seam, side: _Side, run: tuple[float, float], *, on_a: bool) -> tuple[float, float] | None:
    """Return the part of chain a that holds the seam's ease, and what is gathered as well."""
    if seam.eased is None:
        return None
    low, high = run
    mine = (side.opened(low), high + side.mouth) if on_a else (side.facing(low), side.facing(high))
    held = tuple(map(side.opened, seam.eased)) if on_a else seam.eased
    return min(held[0], mine[0]), max(held[1], mine[1])


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
