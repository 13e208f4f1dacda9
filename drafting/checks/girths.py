"""Does the garment come out at the girths asked for? Read off the outlines at the level lines."""

from __future__ import annotations

import math
from collections.abc import Iterator

from drafting.checks.levels import ALONG, lies_along, width
from drafting.checks.words import capital, mm, plain, verdict
from drafting.draft.draft import Draft, Girth
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import line
from drafting.geometry.area import distances
from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding

UNSEEN = 0.05
"""mm: half of the last figure a maker is shown; ease that moved by less needs no word."""


def girths_finished(draft: Draft) -> Iterator[Finding]:
    """Is the finished girth at every level the body's plus the settled ease?"""
    for girth in draft.girths:
        where, name = _where(girth), _name(girth)
        wanted = girth.body + girth.settled_ease
        found = finished_girth(draft, girth.level, girth.side)
        if found is None:
            said = f"{name}: no piece draws this level, so its girth cannot be read off the pieces"
            yield Finding("finished girth", "error", where, None, wanted, said)
            continue
        holds = abs(found - wanted) <= tol.GIRTH_MATCH
        parts = f"body {mm(girth.body)}, ease {mm(girth.settled_ease)}"
        across = "wide" if girth.width else "round"
        said = f"{name}: {mm(found)} {across} as drawn ({parts})"
        if not holds:
            size = "large" if found > wanted else "small"
            said += f", {mm(abs(found - wanted))} too {size}; {mm(wanted)} is wanted"
        yield verdict("finished girth", holds, where, found, wanted, said)


def eases_settled(draft: Draft) -> Iterator[Finding]:
    """Where the settled ease is not the asked one, does a finding say why?"""
    for girth in draft.girths:
        moved = girth.settled_ease - girth.asked_ease
        if abs(moved) <= UNSEEN or any(_speaks_of(f, girth) for f in draft.findings):
            continue
        said = (
            f"{_name(girth)}: {mm(girth.asked_ease)} of ease was asked for, "
            f"{mm(girth.settled_ease)} was drafted, and no rule says why"
        )
        yield Finding("settled ease", "error", _where(girth), girth.settled_ease, girth.asked_ease, said)


def finished_girth(draft: Draft, level: str, side: str = "") -> float | None:
    """Return the girth of the cloth at `level`, mm, off the outlines; None where no piece has it.

    A half piece is doubled and a pair counted twice; round a limb, or on one `side`, it is the half
    of that: a pair of pieces goes round both arms or legs.
    """
    limb = any(girth.limb for girth in draft.girths if girth.level == level)
    drawn = [
        width(piece, found) * _times(piece, limb, side)
        for piece in draft.pieces
        for found in piece.levels
        if found.name == level and piece.hand in ("", side or piece.hand)
    ]
    return math.fsum(drawn) if drawn else None


def bare_girth(draft: Draft, level: str) -> float:
    """Return how much of a girth round the body armholes take that reach below its level, mm; 0 where none does.

    It is measured from where the level ends on the armhole out to where the armhole meets the side.
    """
    found = 0.0
    for piece in draft.pieces:
        ends = [p for lv in piece.levels if lv.name == level for path in lv.paths for p in (path.start, path.end)]
        for edge in piece.edges:
            if edge.role is EdgeRole.ARMHOLE and ends:
                base = min((edge.path.start, edge.path.end), key=lambda p: p.imag)
                on = [p for p in ends if p.imag > base.imag and _lies_on(p, edge)]
                found += sum(abs((base - p).real) for p in on) * _times(piece, False, "")
    return found


def _lies_on(place: complex, edge: Edge) -> bool:
    return float(distances(line(place, place + tol.CLOSED), edge.path)[0]) <= ALONG


def covered_girth(draft: Draft, level: str, side: str = "") -> float | None:
    """Return the girth of the cloth at a level with what an armhole leaves bare there on purpose, mm, or None."""
    drawn = finished_girth(draft, level, side)
    bare = next((g.inside for g in draft.girths if g.level == level and not g.width), 0.0)
    return None if drawn is None else drawn + bare


def sewn_girth(draft: Draft, level: str, side: str = "") -> float | None:
    """Return the girth at `level` once gathers and elastic there are pulled up, mm; None where no piece has it."""
    drawn = finished_girth(draft, level, side)
    if drawn is None:
        return None
    limb = any(girth.limb for girth in draft.girths if girth.level == level)
    along = [
        (piece, edge)
        for piece in draft.pieces
        if piece.hand in ("", side or piece.hand)
        for edge in piece.edges
        if edge.hand in ("", side or edge.hand) and _lies_at(piece, edge, level)
    ]
    refs = {(piece.name, edge.name) for piece, edge in along}
    loops = [notion.loop for notion in draft.notions if notion.loop and refs.intersection(notion.edges)]
    if loops:
        return min(drawn, *loops)
    return drawn - math.fsum((e.length - e.sewn_length) * _times(p, limb, side) for p, e in along)


def _lies_at(piece: Piece, edge: Edge, level: str) -> bool:
    """Return whether a piece's edge lies along one of its levels."""
    return any(
        lies_along(edge.path, path) for found in piece.levels if found.name == level for path in found.paths
    )


def _times(piece: Piece, limb: bool, side: str) -> float:
    both = 2.0 if piece.pair or piece.fold_edge is not None else 1.0
    if side:
        return 1.0 if piece.hand or piece.pair else both
    return both / 2 if limb and piece.pair else both


def _speaks_of(finding: Finding, girth: Girth) -> bool:
    text = plain(f"{finding.check} {finding.where} {finding.message}").lower()
    return finding.level != "ok" and plain(girth.level) in text


def _where(girth: Girth) -> str:
    return f"{girth.level}.{girth.side}" if girth.side else girth.level


def _name(girth: Girth) -> str:
    return capital(f"{girth.side} {plain(girth.level)}".strip())
