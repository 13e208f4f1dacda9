"""Whether the panels of a garment in pile, nap or satin would shade differently from each other."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.draft import Draft
from drafting.draft.frame import Limb
from drafting.draft.piece import Piece
from drafting.draft.roles import PieceRole
from drafting.fabric import Fabric
from drafting.ground.findings import Finding
from drafting.ground.lengths import angle_said

PANELS = frozenset(
    {
        PieceRole.PLAIN,
        PieceRole.FRONT,
        PieceRole.BACK,
        PieceRole.SIDE_FRONT,
        PieceRole.SIDE_BODY,
        PieceRole.SLEEVE,
        PieceRole.TOP_SLEEVE,
        PieceRole.UNDER_SLEEVE,
        PieceRole.TAIL,
        PieceRole.GODET,
    }
)
"""Pieces that are seen side by side; collars, cuffs and bands may lie crosswise (common practice)."""

ALIKE = 15.0
"""degrees: panels whose warps lie so near to each other shade alike (ours)."""


def panels_shade(draft: Draft, fabric: Fabric | None) -> Iterator[Finding]:
    """Yield a warning where panels of a cloth that shades have their warps in unlike directions."""
    if fabric is None or not fabric.shades:
        return
    panels = [p for p in draft.pieces if not p.material and p.role in PANELS]
    apart, one, other = _farthest(panels)
    if apart <= ALIKE:
        return
    sort = fabric.sort if fabric.sort and fabric.sort != "plain" else "one-way cloth"
    yield Finding(
        "shading",
        "warning",
        f"{one} and {other}",
        apart,
        ALIKE,
        f"{fabric.title} is {sort}: its pieces look lighter or darker as their warp is turned. The warps of "
        f"{one} and {other} lie {angle_said(apart)} apart, so that each panel will shade differently: "
        f"{_way_out(draft, one, other)}, or do it on purpose.",
    )


def _way_out(draft: Draft, one: str, other: str) -> str:
    """Return what brings the warps of two panels nearer: a grain where a choice turns it, else another cut."""
    frames = [draft[name].frame for name in (one, other) if draft[name].role is not PieceRole.TAIL]
    if any(frame is not None and frame.limb is Limb.HANGS for frame in frames):
        return "less of a circle (gores, or a straight cut) leaves the warps nearer to each other"
    return "choose a grain that leaves all warps within 15 degrees (plumb, on flared tails)"


def _farthest(panels: list[Piece]) -> tuple[float, str, str]:
    """Return how far apart (degrees, 0..90) the two most unlike warps lie, and the pieces' names."""
    found = (0.0, "", "")
    for i, one in enumerate(panels):
        for other in panels[i + 1 :]:
            off = abs((one.grain - other.grain + 90) % 180 - 90)
            found = max(found, (off, one.name, other.name), key=lambda pair: pair[0])
    return found
