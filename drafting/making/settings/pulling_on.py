"""How far a hem or an opening must open to be pulled on: over hand, heel, hips, bust or head.

Ring of the opening = its edges as drawn (elastic lets them out again), both hands where it goes
round the body; share = what it passes / ring - 1.
"""

from __future__ import annotations

import math

from drafting.body import Body
from drafting.body.body import SIDES
from drafting.draft.by_role import edge_as, edges_as
from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import SLEEVES, EdgeRole, LevelKind
from drafting.fabric import Fabric
from drafting.making.seam_lengths import hands
from drafting.making.settings.lengthening import CLOSE, Gives, around

OPENS = 0.10
"""Greatest stretch from which a cloth is pulled on over something; a firmer one opens by a closing
(ours)."""

CLOSINGS = ("button", "zip", "hook", "hook and eye", "eyelet")


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


def ring_of(draft: Draft, piece: Piece, edge: Edge) -> float:
    """Return the length (mm) of the whole opening that an edge is part of."""
    limb = (is_sleeve(piece) or is_leg(piece)) and edge.role is not EdgeRole.WAIST
    alike = [
        (other, part)
        for other in draft.pieces
        for part in edges_as(other, edge.role)
        if not other.material
        and is_sleeve(other) == is_sleeve(piece)
        and part.kind is edge.kind
        and (not limb or other.hand == piece.hand)
    ]
    return math.fsum(part.length * (1 if limb else hands(other)) for other, part in alike)


def is_sleeve(piece: Piece) -> bool:
    return piece.role in SLEEVES


def is_leg(piece: Piece) -> bool:
    return edge_as(piece, EdgeRole.INSEAM) is not None


def short_sleeve(draft: Draft, piece: Piece) -> bool:
    """Return whether a sleeve ends on the upper arm: it is wider than it is long below its cap."""
    level = next((level for level in piece.levels if level.kind is LevelKind.UPPER_ARM), None)
    if level is None:
        return False
    low = min(point.imag for edge in piece.edges for point in (edge.path.start, edge.path.end))
    return level.paths[0].start.imag - low < level.length / 2


def opens(draft: Draft) -> bool:
    """Return whether the garment has a closing, so that nothing has to be stretched to get in."""
    fastened = any(notion.what in CLOSINGS for notion in draft.notions)
    return fastened or any(edge_as(piece, EdgeRole.FLY) for piece in draft.pieces)
