"""Is a garment that goes over another as roomy as that one? Ease beside ease, level by level."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from drafting.checks.words import capital, mm, plain
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.ground.findings import Finding

UNSEEN = 0.5
"""mm: less than a maker is shown."""


LEVELS = ("bust", "upper_arm")
"""Where one layer must take the next: a coat's waist is drawn in over a shirt's folds, legs are not covered."""


def over_one_another(garments: Mapping[str, Draft]) -> Iterator[tuple[str, Finding]]:
    """Yield a garment's name with a note for each level at which it has less ease than what is worn beneath it.

    A garment takes at least the ease of the layer under it, else that one lies in folds (common practice).
    What has tails or a lapel, or is declared to, goes over the others; of one side each the wearer's left is read.
    """
    beneath = {name: _eases(draft) for name, draft in garments.items() if not _goes_over(draft)}
    for name, draft in garments.items():
        if not _goes_over(draft):
            continue
        for level, own in _eases(draft).items():
            for under, eases in beneath.items():
                if eases.get(level, own) > own + UNSEEN:
                    yield name, _folds(name, under, level, own, eases[level])


def _goes_over(draft: Draft) -> bool:
    lapel = any(edge.role is EdgeRole.LAPEL for piece in draft.pieces for edge in piece.edges)
    outer = any(piece.frame and piece.frame.outer for piece in draft.pieces)
    return lapel or outer or any(piece.role is PieceRole.TAIL for piece in draft.pieces)


def _eases(draft: Draft) -> dict[str, float]:
    return {girth.level: girth.settled_ease for girth in reversed(draft.girths) if girth.level in LEVELS}


def _folds(name: str, under: str, level: str, own: float, beneath: float) -> Finding:
    return Finding(
        check="over one another",
        level="note",
        where=level,
        value=own,
        wanted=beneath,
        sentence=f"{capital(name)} has {mm(own)} of ease at the {plain(level)}, {under} beneath it {mm(beneath)}: "
        f"that will lie in folds there. A garment takes at least the ease of what it goes over: give {name} more, "
        f"or {under} less.",
    )
