"""The rule of a fall front: bearers finished before the band, openings barred (common practice)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.costume.garment import MadeGarment
from drafting.draft.by_role import pieces_as
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.making.model import Step


def bearers_first(garment: MadeGarment, fabric: Fabric | None, steps: Sequence[Step]) -> Iterator[str]:
    """The free edges of a fall's bearers are hemmed before a band is sewn across their ends; its openings are
    barred."""
    found = {piece.name: piece for piece in pieces_as(garment.draft, PieceRole.BEARER)}
    if not found:
        return
    bands = {
        seam.name
        for seam in garment.draft.seams
        if seam.kind is SeamKind.ATTACHED and any(piece in found for piece, _ in (*seam.a, *seam.b))
    }
    first = next((i for i, step in enumerate(steps) if bands & set(step.seams)), len(steps))
    turned = {ref for step in steps[:first] for ref in step.edges}
    for name, piece in found.items():
        late = [e.name for e in piece.edges if e.kind is EdgeKind.HEM and (name, e.name) not in turned]
        if late:
            yield f"{name}: {', '.join(late)} is hemmed after the band is on"
        if not any(step.verb == "bar" and any(own == name for own, _ in step.along) for step in steps):
            yield f"{name}: the foot of its opening is not barred"
