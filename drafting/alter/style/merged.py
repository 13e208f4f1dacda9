"""Two edges of a piece that run on in one: joined into one edge, wherever both are sewn alike."""

from __future__ import annotations

import cmath
import math
from dataclasses import replace

from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Edge, EdgeKind
from drafting.geometry import Path

STRAIGHT_ON = 1.0
"""Degrees by which two edges may meet at an angle and are one still (ours)."""


def merged(draft: Draft, piece: str, before: str, after: str) -> Draft:
    """Return the draft with two neighbouring edges of a piece as one, by the plainer of their names.

    Where they are not alike, meet at an angle, or are sewn to different seams, nothing changes.
    """
    one, two = draft[piece][before], draft[piece][after]
    refs = (piece, before), (piece, after)
    name = min(before, after, key=len)
    if before == after or not _alike(one, two) or not _together(draft, *refs):
        return draft
    moved = tuple(replace(n, at=n.at + one.length) for n in two.notches)
    sewn = None if one.sewn is None and two.sewn is None else one.sewn_length + two.sewn_length
    whole = replace(
        one, name=name, path=Path.joined([one.path, two.path]), notches=(*one.notches, *moved), sewn=sewn
    )
    edges = tuple(whole if e is one else e for e in draft[piece].edges if e is not two)
    found = draft.with_pieces([replace(draft[piece], edges=edges)])

    def without(chain: tuple[EdgeRef, ...]) -> tuple[EdgeRef, ...]:
        return tuple(dict.fromkeys((piece, name) if ref in refs else ref for ref in chain))

    return replace(
        found,
        seams=tuple(replace(s, a=without(s.a), b=without(s.b)) for s in found.seams),
        chains={name: without(chain) for name, chain in found.chains.items()},
        notions=tuple(replace(n, edges=without(n.edges)) for n in found.notions),
    )


def _alike(one: Edge, two: Edge) -> bool:
    turn = abs(math.degrees(cmath.phase(two.path.leave / one.path.arrive)))
    same = (one.kind, one.role, one.allowance) == (two.kind, two.role, two.allowance)
    return same and one.kind is not EdgeKind.DART and turn <= STRAIGHT_ON


def _together(draft: Draft, one: EdgeRef, two: EdgeRef) -> bool:
    """Return whether every chain that has one of the two has both, next to each other."""
    chains = [chain for seam in draft.seams for chain in (seam.a, seam.b)] + list(draft.chains.values())
    for chain in chains:
        if (one in chain) != (two in chain):
            return False
        if one in chain and abs(chain.index(one) - chain.index(two)) != 1:
            return False
    return True
