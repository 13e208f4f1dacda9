"""Where the vertices on the edges lie: both sides of a seam cut_in_two alike, by the longer of the two.

A seam's two chains meet at its notches; between them each share of one chain meets the same share of the
other, whatever their lengths: so a dart, a gathered edge and an eased cap are one case.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.ground.frozen import freeze
from drafting.worn.sewn.rings import PieceRing, RingSide

EdgePlace = tuple[EdgeRef, float]
"""An edge, and how far along what is left of it, mm."""

NEAR = 0.34
"""Of a mesh: marks nearer to each other than this are one (ours; least angles stay above 20 degrees)."""

STEP = 1e-4
"""mm: places along an edge are told apart by this."""


@dataclass(frozen=True)
class Stations:
    """The places on each edge where a vertex stands, in order, and which are sewn to which."""

    places: Mapping[EdgeRef, tuple[float, ...]]
    sewn: tuple[tuple[EdgePlace, EdgePlace], ...]

    def __post_init__(self) -> None:
        freeze(self, "places")


@dataclass(frozen=True)
class SeamSide:
    """One side of a seam: its edges' sides in order, where each starts along the chain, and its length.

    `back` says that the chain runs against its edges.
    """

    refs: tuple[EdgeRef, ...]
    sides: tuple[RingSide | None, ...]
    starts: tuple[float, ...]
    lengths: tuple[float, ...]
    back: bool

    @property
    def length(self) -> float:
        return self.starts[-1] + self.lengths[-1]

    def joints(self) -> list[float]:
        """Where what is left of each edge begins and ends along the chain."""
        found = []
        for side, start, whole in zip(self.sides, self.starts, self.lengths, strict=True):
            if side is not None:
                first, last = side.start, side.start + side.length
                found += (
                    [start + whole - last, start + whole - first] if self.back else [start + first, start + last]
                )
        return found

    def places(self, way: float) -> list[EdgePlace]:
        """Return the places on edges at `way` mm along the chain: two at a joint, none where cut off."""
        found = []
        for ref, side, start, whole in zip(self.refs, self.sides, self.starts, self.lengths, strict=True):
            if side is not None:
                on = (start + whole - way if self.back else way - start) - side.start
                if -SLACK <= on <= side.length + SLACK:
                    found.append((ref, _rounded(min(max(on, 0.0), side.length))))
        return found


SLACK = 1e-3
"""mm: what rounding may put a place off its edge."""


def stations(
    draft: Draft,
    rings: Mapping[str, PieceRing],
    seams: Iterable[Seam],
    mesh: float,
    marks: Mapping[EdgeRef, Sequence[float]],
) -> Stations:
    """Return where vertices stand on every side, and what is sewn; `marks` are places that must be among them."""
    found: dict[EdgeRef, set[float]] = {}
    sewn: list[tuple[EdgePlace, EdgePlace]] = []
    for seam in seams:
        a, b = chain_of(draft, rings, seam.a, back=False), chain_of(draft, rings, seam.b, back=True)
        for one, other in _met(a, b, seam, mesh, marks):
            met = [*a.places(one), *b.places(other)]
            if a.places(one) and b.places(other):
                sewn += [(met[0], more) for more in met[1:]]
            for ref, way in met:
                found.setdefault(ref, set()).add(way)
    places = {}
    for name, ring in rings.items():
        for side in ring.sides:
            ref = (name, side.name)
            places[ref] = _filled(side, found.get(ref, set()), mesh, marks.get(ref, ()))
    return Stations(places, tuple(sewn))


def chain_of(draft: Draft, rings: Mapping[str, PieceRing], refs: Sequence[EdgeRef], back: bool) -> SeamSide:
    """Return a chain of edges as they are left."""
    sides = [rings[piece].get(edge) for piece, edge in refs]
    lengths = [_drafted(draft, ref, side) for ref, side in zip(refs, sides, strict=True)]
    starts = np.concatenate([[0.0], np.cumsum(lengths)[:-1]])
    return SeamSide(tuple(refs), tuple(sides), tuple(starts.tolist()), tuple(lengths), back)


def _drafted(draft: Draft, ref: EdgeRef, side: RingSide | None) -> float:
    """Return the length of an edge before anything was cut off; of a cut's own side as it is."""
    if side is not None and ref[1] not in draft[ref[0]]:
        return side.length
    whole = draft.edge(ref).length
    return side.length if side and side.start == 0.0 and abs(side.length - whole) < WHOLE else whole


WHOLE = 0.1
"""mm: a polyline may be so much shorter than its curve."""


class Meeting(NamedTuple):
    """A place where both chains meet; `a_stands` and `b_stands` say that it may not move along that chain."""

    a: float
    b: float
    a_stands: bool = False
    b_stands: bool = False


def _met(
    a: SeamSide, b: SeamSide, seam: Seam, mesh: float, marks: Mapping[EdgeRef, Sequence[float]]
) -> list[tuple[float, float]]:
    """Return where along both chains vertices are sewn, notch to notch."""
    ends = [Meeting(0.0, 0.0, True, True), Meeting(a.length, b.length, True, True)]
    notches = [
        Meeting(n.a, n.b) for n in seam.notches if 1.0 < n.a < a.length - 1.0 and 1.0 < n.b < b.length - 1.0
    ]
    knots = sorted([*ends, *notches])
    along, beside = (np.array([knot[i] for knot in knots]) for i in (0, 1))
    hard = [
        Meeting(x, float(np.interp(x, along, beside)), a_stands=True) for x in [*a.joints(), *_marked(a, marks)]
    ]
    hard += [
        Meeting(float(np.interp(y, beside, along)), y, b_stands=True) for y in [*b.joints(), *_marked(b, marks)]
    ]
    marked = sorted(_thinned([], [*ends, *hard, *notches], NEAR * mesh))
    met: list[tuple[float, float]] = []
    for one, two in itertools.pairwise(marked):
        count = max(1, round(max(two.a - one.a, two.b - one.b) / mesh))
        met += [(one.a + (two.a - one.a) * i / count, one.b + (two.b - one.b) * i / count) for i in range(count)]
    return [*met, marked[-1][:2]]


SAME_CORNER = 0.3
"""mm: what lies no farther apart along one edge is one place."""


def _thinned(kept: list[Meeting], more: Iterable[Meeting], gap: float) -> list[Meeting]:
    """Return the meetings with those more of them that are no nearer than `gap`; near ones become one."""
    found = list(kept)
    for new in more:
        near = next((i for i, old in enumerate(found) if _one_place(old, new, gap)), None)
        if near is None:
            found.append(new)
            continue
        old = found[near]
        x = new.a if new.a_stands and not old.a_stands else old.a
        y = new.b if new.b_stands and not old.b_stands else old.b
        found[near] = Meeting(x, y, old.a_stands or new.a_stands, old.b_stands or new.b_stands)
    return found


def _one_place(old: Meeting, new: Meeting, gap: float) -> bool:
    """Return whether two meetings become one: near each other, and no two corners of one chain."""
    apart = abs(new.a - old.a), abs(new.b - old.b)
    if not (new.a_stands or new.b_stands):
        return min(apart) < gap
    both = old.a_stands and new.a_stands, old.b_stands and new.b_stands
    two_corners = any(stand and way > SAME_CORNER for stand, way in zip(both, apart, strict=True))
    return max(apart) < gap and not two_corners


def _marked(chain: SeamSide, marks: Mapping[EdgeRef, Sequence[float]]) -> list[float]:
    """Return where along a chain the marks on its edges lie."""
    found = []
    for ref, side, start, whole in zip(chain.refs, chain.sides, chain.starts, chain.lengths, strict=True):
        if side is not None:
            for way in marks.get(ref, ()):
                on = side.start + way
                found.append(start + whole - on if chain.back else start + on)
    return found


def _filled(side: RingSide, sewn: set[float], mesh: float, marks: Sequence[float]) -> tuple[float, ...]:
    """Return the places on a side: the ends, what is sewn, and even steps over what is not."""
    ends = {0.0, _rounded(side.length)}
    ways = sorted(sewn | ends | {_rounded(way) for way in marks})
    kept = [ways[0]]
    for way in ways[1:]:
        if way - kept[-1] > 10 * STEP:
            kept.append(way)
    kept[-1] = _rounded(side.length)
    filled: list[float] = []
    for way, after in itertools.pairwise(kept):
        count = max(1, round((after - way) / mesh)) if after - way > 1.5 * mesh or not sewn else 1
        filled += [_rounded(way + (after - way) * i / count) for i in range(count)]
    return (*filled, kept[-1])


def _rounded(way: float) -> float:
    return round(way, 4)
