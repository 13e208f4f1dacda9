"""Facings that are sewn on in one round: all that hangs together along one edge is joined before it is turned."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.draft.draft import Draft, Seam
from drafting.making.order.parts import pieces_of
from drafting.making.order.seam_kinds import is_facing


def on_garment(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam joins a facing to the garment; those between facings come first."""
    return not all(is_facing(draft[piece]) for piece in pieces_of(seam))


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
