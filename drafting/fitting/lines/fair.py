"""What notes have bent to and fro is drawn fair again, as a cutter does who has moved points of a line.

An edge that bends more often than one of its kind may, and did not lie so before, is drawn anew round its waves:
between its ends, in their directions and as long as the notes made it, so that seams, corners and notches stay as
they are. What lies behind it and its level lines follow.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import starmap

from drafting.checks.curves import bends_of
from drafting.checks.trouser import waists_of
from drafting.checks.words import capital, edge_words, plain
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole
from drafting.fitting.lines.along import way_of
from drafting.fitting.lines.redrawn import with_followers
from drafting.fitting.lines.shift import Reshaped
from drafting.fitting.lines.waists import sides_following
from drafting.geometry.fairing import SHORTER, Fair, FairLimits, bowed, faired
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

WITHIN, SHARE = 2.0, 0.003
"""mm, or of its length: a line is drawn fair no farther from where the notes put it (ours: else it is left)."""


V_SHARE = 0.02
"""Of its length: so far a V, nearly straight, may be drawn from where the notes put it (ours: 5 mm)."""


TELLS = 0.2
"""mm: a line is told to be shorter from here on."""

SEWN_LATER = 1.0
"""mm: a neck or an armhole may become shorter by as much, as what is sewn to it is drafted after it (ours: half of
what a fitting notes at least)."""


@dataclass(frozen=True)
class DrawnFair:
    """A draft whose moved edges are fair, and what is to be said of each."""

    draft: Draft
    findings: tuple[Finding, ...] = ()


def drawn_fair(before: Draft, after: Draft) -> DrawnFair:
    """Return the draft `after` its notes with every edge fair that they moved and that bends too often."""
    sides = sides_following(before, after)
    after = sides.draft
    redrawn = dict(_redrawn(before, after))
    found = {name: _with_edges(after[name], redrawn) for name, _ in redrawn}
    said = (*starmap(_side_said, sides.risen.items()), *starmap(_said, redrawn.items()))
    return DrawnFair(with_followers(after, found) if found else after, said)


def _redrawn(before: Draft, after: Draft) -> Iterator[tuple[EdgeRef, Fair]]:
    """Yield the edges to be drawn anew; what follows another piece does not by itself."""
    for one in (*bends_of(after), *waists_of(after)):
        piece, edge = after[one.piece], after[one.piece][one.edge]
        leads = not any(name in after for name in (*piece.lines, *piece.stiffens))
        if one.count > one.band[1] and edge.path is one.path and leads and _moved(before, piece, edge):
            within = max(WITHIN, SHARE * edge.length)
            shorter = SEWN_LATER if edge.role in (EdgeRole.NECK, EdgeRole.ARMHOLE) else SHORTER
            fair = faired(one.path, one.band[1], FairLimits(within, one.matters, shorter))
            if fair is None and _is_v(piece, edge):
                fair = bowed(one.path, max(WITHIN, V_SHARE * edge.length))
            if fair is not None:
                yield (piece.name, edge.name), fair


def _is_v(piece: Piece, edge: Edge) -> bool:
    """Return whether an edge is a neck that runs down into the front edge: its corner there may turn."""
    after = piece.edges[(piece.index(edge.name) + 1) % len(piece.edges)]
    return edge.role is EdgeRole.NECK and after.role is EdgeRole.FRONT_EDGE


def _moved(before: Draft, piece: Piece, edge: Edge) -> bool:
    return piece.name not in before or edge not in before[piece.name].edges


def _with_edges(piece: Piece, redrawn: dict[EdgeRef, Fair]) -> Reshaped:
    """Return the piece with its redrawn edges; places stay as far along them, as their lengths stay."""

    def drawn(edge: Edge) -> Edge:
        fair = redrawn.get((piece.name, edge.name))
        return edge if fair is None else replace(edge, path=fair.path)

    after = replace(piece, edges=tuple(map(drawn, piece.edges)))
    return Reshaped(piece, after, {edge.name: way_of(edge.path) for edge in after.edges})


def _side_said(ref: EdgeRef, rise: float) -> Finding:
    way = "up" if rise > 0 else "down"
    said = (
        f"{capital(plain(ref[0]))} waist: it goes {way} by {told(abs(rise))} at the side seam, on both pieces, "
        "so that it runs on from the notes in one line"
    )
    return Finding("fitting", "note", ".".join(ref), rise, None, said)


def _said(ref: EdgeRef, fair: Fair) -> Finding:
    less = f"{told(fair.shorter)} shorter" if fair.shorter >= TELLS else "as long"
    said = (
        f"{capital(edge_words(ref))}: drawn fair again after the notes, up to {told(fair.off)} "
        f"from where they put it, and {less}"
    )
    return Finding("fitting", "note", ".".join(ref), fair.off, None, said)
