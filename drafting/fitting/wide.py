"""How much is left round the pieces of a mock-up, by what an edge is: enough to let out at a fitting."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from drafting.draft.by_role import BEHIND
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import SMALL, EdgeRole
from drafting.ground.sources import Cited, ours, practice

KEPT = 6.0
"""mm of an allowance that have to stay beyond the line when a seam is let out (common practice: 1/4 in)."""


@dataclass(frozen=True, slots=True)
class WideAllowance:
    """An allowance in mm, and where the figure comes from."""

    mm: float
    source: Cited


FITTED = WideAllowance(25.0, practice("25 on a mock-up where a seam is taken in and let out"))
LENGTH = WideAllowance(40.0, practice("40 on a mock-up at hem, sleeve end and waist: lengths are set at the body"))
CLIPPED = WideAllowance(10.0, practice("10 at armhole and neck, clipped to the line"))
SHAPED = WideAllowance(10.0, ours("a lapel, a collar's edge: left raw and trimmed to the line once it is judged"))
MADE_UP = WideAllowance(10.0, ours("cuffs, collars and bands are judged by their size, not let out seam by seam"))
BEHIND_IT = WideAllowance(15.0, ours("what lies behind the shell is turned in along its free edges"))
NO_ALLOWANCE = WideAllowance(0.0, practice("a fold and the legs of a dart have none"))

WIDE: Mapping[EdgeRole, WideAllowance] = MappingProxyType(
    {
        **dict.fromkeys(
            (
                EdgeRole.SHOULDER,
                EdgeRole.SIDE,
                EdgeRole.CENTRE,
                EdgeRole.CENTRE_SEAM,
                EdgeRole.CROTCH,
                EdgeRole.INSEAM,
                EdgeRole.PANEL,
                EdgeRole.PRINCESS,
                EdgeRole.YOKE,
                EdgeRole.UNDERARM,
                EdgeRole.ARM_SEAM,
                EdgeRole.FRONT_EDGE,
                EdgeRole.FRONT,
                EdgeRole.BACK,
                EdgeRole.VENT,
                EdgeRole.FLY,
            ),
            FITTED,
        ),
        **dict.fromkeys(
            (EdgeRole.HEM, EdgeRole.WAIST, EdgeRole.BOTTOM, EdgeRole.STAND_HEM, EdgeRole.FACING_HEM), LENGTH
        ),
        **dict.fromkeys(
            (
                EdgeRole.ARMHOLE,
                EdgeRole.CAP,
                EdgeRole.CAP_PART,
                EdgeRole.NECK,
                EdgeRole.COLLAR_NECK,
                EdgeRole.STAND_NECK,
                EdgeRole.FACING_NECK,
                EdgeRole.GORGE,
            ),
            CLIPPED,
        ),
    }
)
"""By role; what is not listed is `SHAPED`."""


def wide_allowance(piece: Piece, edge: Edge) -> WideAllowance:
    """Return what a mock-up leaves beyond an edge.

    >>> from drafting.geometry import line
    >>> out = Edge("out", line(1, 1j), role=EdgeRole.SIDE)
    >>> leg = Piece("leg", (Edge("floor", line(0, 1)), out, Edge("in", line(1j, 0))))
    >>> wide_allowance(leg, out).mm
    25.0
    """
    if edge.kind in (EdgeKind.FOLD, EdgeKind.DART):
        return NO_ALLOWANCE
    if piece.role in SMALL:
        return MADE_UP
    if edge.kind is EdgeKind.HEM:
        return BEHIND_IT if piece.role in BEHIND else LENGTH
    return WIDE.get(edge.role, SHAPED)


def lets_out(allowance: float) -> float:
    """Return by how much an edge with this allowance (mm) can be let out, so that enough stays.

    >>> lets_out(10.0), lets_out(25.0), lets_out(3.0)
    (4.0, 19.0, 0.0)
    """
    return max(0.0, allowance - KEPT)
