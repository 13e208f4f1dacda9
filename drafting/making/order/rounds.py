"""Facings that are sewn on in one round: all that hangs together along one edge is joined before it is turned.

A facing along a hem is the hem: it waits until the garment stands, and until what hangs on the bias is levelled.
"""

from __future__ import annotations

from collections.abc import Sequence

from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.roles import EdgeRole
from drafting.making.order.parts import pieces_of
from drafting.making.order.seam_kinds import is_facing


def on_garment(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam joins a facing to the garment; those between facings come first."""
    return not all(is_facing(draft[piece]) for piece in pieces_of(seam))


def of_hems(draft: Draft, seams: Sequence[Seam]) -> list[Seam]:
    """Return the seams of facings that are sewn to nothing but hems, those between them too."""
    elsewhere = {
        piece
        for seam in seams
        if on_garment(draft, seam)
        and not {draft.edge(ref).role for ref in edges_faced(draft, seam)} <= {EdgeRole.HEM}
        for piece in pieces_of(seam)
    }
    behind = _joined_to(elsewhere, [seam for seam in seams if not on_garment(draft, seam)])
    return [s for s in seams if not {name for name in pieces_of(s) if is_facing(draft[name])} & behind]


def edges_faced(draft: Draft, seam: Seam) -> list[EdgeRef]:
    """Return the edges of the garment that a facing is sewn to."""
    return [ref for ref in (*seam.a, *seam.b) if not is_facing(draft[ref[0]])]


def in_rounds(draft: Draft, seams: Sequence[Seam]) -> list[list[Seam]]:
    """Return facing seams as they are sewn: each between facings alone, then each round as one row.

    A round is every seam to the garment of facings that other seams have joined (common practice).
    """
    between = [seam for seam in seams if not on_garment(draft, seam)]
    rounds: list[tuple[set[str], list[Seam]]] = []
    for seam in seams:
        if seam in between:
            continue
        facings = _joined_to({name for name in pieces_of(seam) if is_facing(draft[name])}, between)
        for known, found in rounds:
            if known & facings:
                found.append(seam)
                break
        else:
            rounds.append((facings, [seam]))
    return [*([seam] for seam in between), *(found for _, found in rounds)]


def _joined_to(facings: set[str], between: Sequence[Seam]) -> set[str]:
    """Return these facings and all that hang on them."""
    while more := {name for s in between if facings & {*pieces_of(s)} for name in pieces_of(s)} - facings:
        facings = facings | more
    return facings
