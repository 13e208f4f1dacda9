"""How far a hem or an opening must open to be pulled on: over hand, heel, hips, bust or head.

Share = what the opening passes / its ring - 1.
"""

from __future__ import annotations

from drafting.body import Body
from drafting.body.body import SIDES
from drafting.draft.draft import Draft, Seam
from drafting.draft.openings import bare_neck, bare_necks, is_leg, is_sleeve, opens, ring_of
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fabric import Fabric
from drafting.making.settings.lengthening import CLOSE, Gives, around

OPENS = 0.10
"""Greatest stretch from which a cloth is pulled on over something; a firmer one opens by a closing
(ours)."""


def passes(draft: Draft, piece: Piece, edge: Edge, body: Body, fabric: Fabric | None) -> Gives:
    """Return how far a turned edge must open for its wearer to get into the garment."""
    over = [name for name in passed(draft, piece, edge) if name in body]
    stretch = fabric.greatest_stretch if fabric is not None else 0.0
    ring = ring_of(draft, piece, edge)
    if not over or stretch < OPENS or opens(draft) or ring <= 0:
        return Gives()
    widest = max(body.hand(name, side) for name in over for side in SIDES)
    share = min(stretch, widest / ring - 1)
    return Gives(share, "passes") if share > CLOSE else Gives()


def neck_passes(draft: Draft, seam: Seam, body: Body, fabric: Fabric | None) -> Gives:
    """Return how far the seam of a facing along a closed neck must open for the head."""
    stretch = fabric.greatest_stretch if fabric is not None else 0.0
    necks = {(piece.name, edge.name) for piece, edge in bare_necks(draft)}
    if not necks & {*seam.a, *seam.b} or stretch < OPENS or opens(draft) or "head_girth" not in body:
        return Gives()
    share = min(stretch, body["head_girth"] / bare_neck(draft) - 1)
    return Gives(share, "passes") if share > CLOSE else Gives()


def unmeasured(draft: Draft, piece: Piece, edge: Edge, body: Body, fabric: Fabric | None) -> tuple[str, ...]:
    """Return the measures that nobody took and that a stretchy opening would have to pass over."""
    stretch = fabric.greatest_stretch if fabric is not None else 0.0
    if stretch < OPENS or opens(draft):
        return ()
    return tuple(name for name in passed(draft, piece, edge) if name not in body)


def passed(draft: Draft, piece: Piece, edge: Edge) -> tuple[str, ...]:
    """Return the measures that must go through the ring that an edge is part of (none: no ring)."""
    if edge.kind is EdgeKind.OPENING:
        return ("head_girth",) if edge.role is EdgeRole.NECK else ()
    if edge.role is EdgeRole.WAIST:
        return ("hip_girth",)
    if is_sleeve(piece):
        return ("hand_girth", "upper_arm_girth") if short_sleeve(draft, piece) else ("hand_girth",)
    if is_leg(piece):
        return ("heel_girth",)
    close = around(draft) > CLOSE
    return ("bust_girth", "hip_girth") if close else ()


def short_sleeve(draft: Draft, piece: Piece) -> bool:
    """Return whether a sleeve ends on the upper arm: it is wider than it is long below its cap."""
    level = next((level for level in piece.levels if level.kind is LevelKind.UPPER_ARM), None)
    if level is None:
        return False
    low = min(point.imag for edge in piece.edges for point in (edge.path.start, edge.path.end))
    return level.paths[0].start.imag - low < level.length / 2
