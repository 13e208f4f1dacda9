"""Do curves bend as the trade bends them, and does the cap lie on its armhole?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.checks.seams import sound_seams
from drafting.checks.words import capital, edge_words, mm, ok_or_error, verdict
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.gathers import gathered_stretches
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path
from drafting.geometry.turning import inflections, turns
from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding

BENDS: dict[EdgeRole, tuple[int, int]] = {
    EdgeRole.ARMHOLE: (0, 0),
    EdgeRole.NECK: (0, 0),
    EdgeRole.CAP: (1, 1),
    EdgeRole.SIDE: (0, 1),
    EdgeRole.CROTCH: (0, 1),
}
"""Least and most inflections of an edge by what it is (ours: as the trade's shapes bend)."""

LEAST_NOTCH = 30.0
"""mm at adult scale: a first cap notch nearer the underarm than this is said."""


@dataclass(frozen=True)
class Bends:
    """A stretch of an edge, the least and most inflections it may have, and the turn (degrees) that counts."""

    piece: str
    edge: str
    path: Path
    band: tuple[int, int]
    matters: float

    @property
    def count(self) -> int:
        """How often it changes from bending one way to bending the other."""
        return inflections(self.path, self.matters)


def curves_bend_right(draft: Draft) -> Iterator[Finding]:
    """Has every armhole, neck, cap half, side seam and crotch the inflections it may have?"""
    yield from map(_bend, bends_of(draft))


def bends_of(draft: Draft) -> Iterator[Bends]:
    """Yield every stretch of an edge that has to bend in a certain way.

    What is gathered, between notches or all along, lies as what it is sewn to once it is drawn up: only a cap is
    judged there as it is drawn.
    """
    parts = _in_parts(draft)
    gathered = gathered_stretches(draft, sound_seams(draft))
    for piece in draft.pieces:
        for edge in piece.edges:
            band = BENDS.get(edge.role)
            if band is not None and (piece.name, edge.name) in parts:
                band = (0, band[1])
            if band is not None and len(edge.path.segments) > 0:
                matters = tol.TRUED_TURN if _meets_dart(draft, piece, edge) else tol.TURN_MATTERS
                pulled = None if edge.role is EdgeRole.CAP else gathered.get((piece.name, edge.name))
                for path in _beside(edge.path, pulled):
                    yield Bends(piece.name, edge.name, path, band if pulled is None else (0, band[1]), matters)


def _beside(path: Path, gathered: tuple[float, float] | None) -> list[Path]:
    """Return a path, or what lies of it on either side of the stretch, mm from its start, that is gathered."""
    if gathered is None:
        return [path]
    low, high = gathered
    ends = [path.part(0.0, low)] if low > tol.EXACT else []
    return [*ends, path.split(high)[1]] if high < path.length - tol.EXACT else ends


def _in_parts(draft: Draft) -> set[EdgeRef]:
    """Return the edges of cap halves that a style line has cut: the bend may lie in another part."""
    chains = [chain for seam in draft.seams for chain in (seam.a, seam.b)]
    caps = [[ref for ref in chain if draft.edge(ref).role is EdgeRole.CAP] for chain in chains]
    return {ref for refs in caps if len(refs) > 1 for ref in refs}


def _meets_dart(draft: Draft, piece: Piece, edge: Edge) -> bool:
    """Return whether an edge ends at the mouth of an open dart, or lies behind one of its role that does.

    Interfacing behind a dart is cut as one with the cloth, and has no dart of its own.
    """
    before = _before(draft, piece)
    return _at_mouth(piece, edge) or any(_at_mouth(p, e) for p in before for e in p.edges if e.role is edge.role)


def _before(draft: Draft, piece: Piece) -> Iterator[Piece]:
    """Yield what a second layer lies behind: before the interfacing of a facing, the facing and the cloth."""
    for name in (*piece.lines, *piece.stiffens):
        if name in draft:
            yield draft[name]
            yield from _before(draft, draft[name])


def _at_mouth(piece: Piece, edge: Edge) -> bool:
    at = piece.index(edge.name)
    beside = piece.edges[at - 1], piece.edges[(at + 1) % len(piece.edges)]
    return any(other.kind is EdgeKind.DART for other in beside)


def _bend(one: Bends) -> Finding:
    band, count = one.band, one.count
    holds = band[0] <= count <= band[1]
    wanted = str(band[0]) if band[0] == band[1] else f"at most {band[1]}"
    said = f"{capital(edge_words((one.piece, one.edge)))}: {_times(count)}"
    if not holds:
        runs = ", ".join(f"{run:+.1f}" for run in turns(one.path, one.matters))
        said += f", {wanted} wanted; its runs turn {runs} degrees"
    return Finding("inflections", ok_or_error(holds), f"{one.piece}.{one.edge}", float(count), wanted, said)


def _times(count: int) -> str:
    if count == 0:
        return "bends one way only"
    return f"changes its bend {({1: 'once', 2: 'twice'}).get(count, f'{count} times')}"


def cap_lies_on_armhole(draft: Draft, scale: float) -> Iterator[Finding]:
    """From underarm to first notch: do cap and armhole coincide, and is that far enough?"""
    for seam in sound_seams(draft):
        sides = _underarm_parts(draft, seam)
        if sides is None:
            continue
        cap, armhole = sides
        apart = _apart(cap, armhole)
        said = (
            f"{capital(edge_words(_cap_edge(draft, seam)))}: laid on the armhole from the underarm to the "
            f"notch ({mm(cap.length)}) it lies within {mm(apart)}"
        )
        holds = apart <= tol.COINCIDE
        yield verdict("cap on armhole", holds, seam.name, apart, 0.0, said)
        if cap.length < LEAST_NOTCH * scale - tol.EXACT:
            said = (
                f"{capital(edge_words(_cap_edge(draft, seam)))}: the notch stands only {mm(cap.length)} "
                f"from the underarm; {mm(LEAST_NOTCH * scale)} is the least that sets in well"
            )
            wanted = LEAST_NOTCH * scale
            yield Finding("cap notch", "warning", seam.name, cap.length, wanted, said)


def _cap_edge(draft: Draft, seam: Seam) -> EdgeRef:
    return next(r for r in (*seam.a, *seam.b) if draft.edge(r).role is EdgeRole.CAP)


def _underarm_parts(draft: Draft, seam: Seam) -> tuple[Path, Path] | None:
    """Return cap and armhole from the underarm to the first notch, or None.

    A cap turned in its armhole lies on it nowhere: part of it is sewn to the other half.
    """
    ends = [draft.edge(ref).role for ref in (*seam.a[:1], *seam.b[:1])]
    turned = any(draft.edge(ref).role is EdgeRole.CAP_PART for ref in _with_next(draft, seam))
    if set(ends) != {EdgeRole.ARMHOLE, EdgeRole.CAP} or not seam.notches or turned:
        return None
    forward = Path.joined(draft.edge(ref).path for ref in seam.a)
    facing = Path.joined(draft.edge(ref).path.reversed() for ref in seam.b)
    at_start = _underarm_at_start(draft, seam)
    if not at_start:
        forward, facing = forward.reversed(), facing.reversed()
    notch = seam.notches[0 if at_start else -1]
    reach_a = notch.a if at_start else forward.length - notch.a
    reach_b = notch.b if at_start else facing.length - notch.b
    first, second = forward.split(reach_a)[0], facing.split(reach_b)[0]
    return (first, second) if ends[0] is EdgeRole.CAP else (second, first)


def _with_next(draft: Draft, seam: Seam) -> list[EdgeRef]:
    """Return the edges of a seam, and those next to both ends of its first chain."""
    (first, start), (last, end) = seam.a[0], seam.a[-1]
    before = draft[first].edges[draft[first].index(start) - 1]
    after = draft[last].edges[(draft[last].index(end) + 1) % len(draft[last].edges)]
    return [*seam.a, *seam.b, (first, before.name), (last, after.name)]


def _underarm_at_start(draft: Draft, seam: Seam) -> bool:
    """Return whether chain a starts at the underarm: the lower end of the armhole as drawn."""
    of_a = draft.edge(seam.a[0]).role is EdgeRole.ARMHOLE
    first, last = (seam.a[0], seam.a[-1]) if of_a else (seam.b[0], seam.b[-1])
    start = draft.edge(first).path.start if of_a else draft.edge(first).path.end
    end = draft.edge(last).path.end if of_a else draft.edge(last).path.start
    return start.imag < end.imag


def _apart(cap: Path, armhole: Path) -> float:
    """Return the greatest gap, mm, with underarm ends together and one side turned over."""
    flipped = cap.mapped(lambda p: p.conjugate())
    size = armhole.end - armhole.start
    move = size / (flipped.end - flipped.start)
    move /= abs(move)
    laid = flipped.mapped(lambda p: armhole.start + (p - flipped.start) * move)
    return max(abs(p - q) for p, q in zip(laid.evenly(17), armhole.evenly(17), strict=True))
