"""Walk one seam: lengths, ease, notch to notch, and the corner angles at both ends.

Both chains are measured in the direction of chain a. As outlines run anticlockwise, the edges of b
are walked backwards: one rule, no flags.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass, replace

from drafting.draft.balance import balanced
from drafting.draft.draft import Corner, Draft, EdgeRef, Seam
from drafting.draft.piece import Edge, Notch, Piece
from drafting.draft.roles import NotchKind
from drafting.ground import tolerances as tol


@dataclass(frozen=True, slots=True)
class Walk:
    """What walking a seam found: mm on the stitching line, degrees at its ends.

    `spans` holds, for each pair of neighbouring notches (ends included), the lengths along a and b.
    `angles` are the corner sums at start and end (None where nothing has to match).
    """

    seam: Seam
    a_length: float
    b_length: float
    a_sewn: float
    b_sewn: float
    spans: tuple[tuple[float, float], ...]
    angles: tuple[float | None, float | None]

    @property
    def difference(self) -> float:
        """Sewn a - sewn b - declared ease, mm: 0 in a sound draft."""
        return self.a_sewn - self.b_sewn - self.seam.ease

    @property
    def gather_ratio(self) -> float | None:
        """Drawn over sewn of the gathered chain; None where nothing is gathered."""
        if abs(self.a_length - self.a_sewn) > 1e-9:
            return self.a_length / self.a_sewn
        if abs(self.b_length - self.b_sewn) > 1e-9:
            return self.b_length / self.b_sewn
        return None


def walk(draft: Draft, seam: Seam) -> Walk:
    """Return what walking `seam` finds. Raises KeyError where it names an edge that is not there."""
    a, b = [draft.edge(ref) for ref in seam.a], [draft.edge(ref) for ref in seam.b]
    a_length, b_length = sum(e.length for e in a), sum(e.length for e in b)
    marks = [(0.0, 0.0), *((n.a, n.b) for n in seam.notches), (a_length, b_length)]
    spans = tuple((q[0] - p[0], q[1] - p[1]) for p, q in itertools.pairwise(marks))
    return Walk(
        seam=seam,
        a_length=a_length,
        b_length=b_length,
        a_sewn=sum(e.sewn_length for e in a),
        b_sewn=sum(e.sewn_length for e in b),
        spans=spans,
        angles=(_corner(draft, seam, seam.start, True), _corner(draft, seam, seam.end, False)),
    )


def sewn_apart(draft: Draft, seam: Seam) -> float:
    """Return `Walk.difference` alone: an alteration asks for nothing else, round after round."""
    a, b = (sum(draft.edge(ref).sewn_length for ref in side) for side in (seam.a, seam.b))
    return a - b - seam.ease


def _corner(draft: Draft, seam: Seam, wanted: Corner, at_start: bool) -> float | None:
    if wanted is None:
        return None
    end_a, end_b = (seam.a[0], seam.b[0]) if at_start else (seam.a[-1], seam.b[-1])
    mine = _angle(draft, end_a, at_start)
    return mine if wanted == "square" else mine + _angle(draft, end_b, not at_start)


def _angle(draft: Draft, ref: EdgeRef, at_start: bool) -> float:
    piece = draft[ref[0]]
    index = piece.index(ref[1])
    return piece.corner(index if at_start else (index + 1) % len(piece.edges))


def notched(draft: Draft) -> Draft:
    """Return the draft with the notches that its long seams still need, and all of them marked."""
    return marked(balanced(draft))


def marked(draft: Draft) -> Draft:
    """Return the draft with every seam's notches marked on both of its chains at once.

    Where a piece is sewn to its own twin, both places are measured from the same end.

    Notches that an edge carries already (a crown) stay; those of the same name are placed anew, and of
    several seams' notches at one place the first is drawn. Pieces on which nothing changes stay the same
    objects, so that what is remembered of them stays.
    """
    marks: dict[EdgeRef, list[_Mark]] = {}
    for seam in draft.seams:
        _mark(draft, seam.a, [(n.name, n.a, n.count, n.kind) for n in seam.notches], False, marks)
        if seam.b == seam.a:
            continue  # a piece and its twin: one mark is on both
        _mark(draft, seam.b, [(n.name, n.b, n.count, n.kind) for n in seam.notches], True, marks)

    def with_marks(piece: Piece, edge: Edge) -> Edge:
        new = marks.get((piece.name, edge.name))
        if new is None:
            return edge
        names = {name for name, *_ in new}
        kept = [n for n in edge.notches if n.name not in names]
        placed = tuple(sorted(_apart([*kept, *(Notch(*mark) for mark in new)]), key=_order))
        return edge if placed == edge.notches else replace(edge, notches=placed)

    def all_marked(piece: Piece) -> Piece:
        edges = tuple(with_marks(piece, edge) for edge in piece.edges)
        same = all(new is old for new, old in zip(edges, piece.edges, strict=True))
        return piece if same else replace(piece, edges=edges)

    return draft.with_pieces(all_marked(piece) for piece in draft.pieces)


_Mark = tuple[str, float, int, NotchKind]
"""A notch's name, its place in mm, how many strokes it has, and what it marks."""


def _apart(notches: list[Notch]) -> list[Notch]:
    """Return the notches without those that stand where an earlier one does."""
    placed: list[Notch] = []
    for notch in notches:
        if all(abs(notch.at - other.at) >= tol.ONE_NOTCH for other in placed):
            placed.append(notch)
    return placed


def _order(notch: Notch) -> tuple[float, str]:
    """Order notches along their edge."""
    return round(notch.at, 6), notch.name


def _mark(
    draft: Draft,
    chain: tuple[EdgeRef, ...],
    places: list[_Mark],
    backwards: bool,
    marks: dict[EdgeRef, list[_Mark]],
) -> None:
    """Note each place (mm from the chain's start) on the edge of the chain that holds it."""
    for name, at, count, kind in places:
        passed = 0.0
        for ref in chain:
            length = draft.edge(ref).length
            if at <= passed + length + 1e-9:
                here = at - passed
                marks.setdefault(ref, []).append((name, length - here if backwards else here, count, kind))
                break
            passed += length
