"""What a made garment can be let out by for another wearer: its long seams, and its hem let down. mm."""

from __future__ import annotations

from typing import Any

from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import PieceRole, SeamKind
from drafting.fitting.wide import lets_out

WORTH = 10.0
"""mm: a seam that can be let out by less is not named (ours: 4 cm round for two sides, both layers)."""

LONG_SEAMS = frozenset(
    {
        SeamKind.PLAIN,
        SeamKind.PANEL,
        SeamKind.PRINCESS,
        SeamKind.CENTRE,
        SeamKind.SIDE,
        SeamKind.SHOULDER,
        SeamKind.SLEEVE,
        SeamKind.INSEAM,
        SeamKind.CROTCH,
    }
)
"""Seams that a garment is let out at (common practice: sides, panels, centre back and seat, inside leg, sleeve,
shoulder). What closes, carries or finishes a part (fly, band, collar, pleat, facing) is cut to its partner."""


def let_out(garment: MadeGarment) -> list[list[Any]]:
    """Return how far each edge of a seam can be let out (mm) and which seams; hems last, let down."""
    draft = garment.draft
    allowances = {
        (cut.piece.name, name): mm for cut in garment.pattern.pieces for name, mm in cut.allowances.items()
    }
    found: dict[float, list[str]] = {}
    for seam in draft.seams:
        by = lets_out(min(allowances.get(ref, 0.0) for ref in (*seam.a, *seam.b)))
        if by >= WORTH and _is_let_out(draft, seam):
            found.setdefault(by, []).append(seam.name.replace("_", " "))
    hems = [
        lets_out(cut.allowances.get(edge.name, 0.0))
        for cut in garment.pattern.pieces
        if not cut.piece.material
        for edge in cut.piece.edges
        if edge.kind is EdgeKind.HEM
    ]
    rows: list[list[Any]] = [[by, "; ".join(found[by])] for by in sorted(found, reverse=True)]
    return [*rows, *([[min(hems), "hem"]] if hems and min(hems) >= WORTH else [])]


def _is_let_out(draft: Draft, seam: Seam) -> bool:
    """Say whether a tailor lets a seam out: of the crotch only the seat, as the fly opens in front."""
    behind = all(draft[name].role is PieceRole.BACK for name, _ in (*seam.a, *seam.b))
    return seam.kind in LONG_SEAMS and (behind or seam.kind is not SeamKind.CROTCH)
