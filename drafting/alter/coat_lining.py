"""Coat lining: body, sleeves and tails of the coat in lining, with an ease pleat at the centre back.

The front's lining starts where the facing ends; the tails' is shorter by a jump pleat.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as, edges_as, piece_as, pieces_as, the_edge
from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.geometry import Path, line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import allowance_scale, body_scale
from drafting.ground.sources import memory, practice
from drafting.ground.tolerances import EXACT
from drafting.shaping.coat.boning import tails_of
from drafting.shaping.coat.inside import loose_edges, second_layer, shorter_panels, with_ease_pleat

SEAM, LEAST_SEAM = 10.0, 6.0
"""mm, a child's too: allowance the lining is sewn at, and its least (common practice)."""

WIDER = 1.5
"""mm more allowance on every lining edge: 3 mm of ease a seam (from memory)."""

COPIED = (PieceRole.SIDE_BODY, PieceRole.TOP_SLEEVE, PieceRole.UNDER_SLEEVE)


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the lining, in mm."""

    lining: str = choice(
        "whole", "word", "what is lined", words=("whole", "body", "none"), group="lining", source=practice()
    )
    ease_pleat: float = choice(
        25.0,
        "mm",
        "depth of the ease pleat at the centre back, from the neck running out at the waist",
        low=0,
        high=60,
        scales=True,
        group="lining",
        source=memory(),
    )
    lining_shorter: float = choice(
        15.0,
        "mm",
        "how far the tails' lining ends above their hem",
        low=5,
        high=40,
        scales=True,
        group="lining",
        source=memory("⟨15⟩ to ⟨20⟩, with a jump pleat of ⟨10⟩ to ⟨12⟩"),
    )


def coat_lining(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its lining pieces; pieces that are not there are passed over."""
    if choices.lining == "none":
        return draft
    seam = max(LEAST_SEAM, SEAM * allowance_scale(body_scale(body)))
    pieces = (
        second_layer(piece, "lining", loose_edges(edges, seam + WIDER), "lining")
        for piece, edges in _outlines(draft, choices)
    )
    return draft + Draft(tuple(pieces), findings=(_said(choices, seam, tails=bool(tails_of(draft))),))


def _outlines(draft: Draft, choices: Choices) -> Iterator[tuple[Piece, tuple[Edge, ...]]]:
    """Yield each piece that is lined, and its lining's edges."""
    if back := piece_as(draft, PieceRole.BACK):
        yield back, _back(back, choices)
    front, facing = piece_as(draft, PieceRole.FRONT), piece_as(draft, PieceRole.FACING)
    if front and facing:
        yield front, _front(front, facing, choices.lining_shorter)
    for role in COPIED:
        if piece := piece_as(draft, role):
            long = edge_as(piece, EdgeRole.HEM) and piece.role is PieceRole.SIDE_BODY
            yield (
                piece,
                shorter_panels([piece], choices.lining_shorter, "lining_shorter")[0] if long else piece.edges,
            )
    if choices.lining == "whole":
        hung = pieces_as(draft, PieceRole.TAIL, PieceRole.GODET)
        hemmed = [piece for piece in hung if edge_as(piece, EdgeRole.HEM)]
        yield from zip(hemmed, shorter_panels(hemmed, choices.lining_shorter, "lining_shorter"), strict=True)


def _back(back: Piece, choices: Choices) -> tuple[Edge, ...]:
    """The back with its ease pleat, half of it on either side; the skirt ends higher too."""
    edges = back.edges
    if edge_as(back, EdgeRole.PLEAT) and choices.lining == "body":
        edges = _to_waist(back)
    elif edge_as(back, EdgeRole.HEM):
        (edges,) = shorter_panels([back], choices.lining_shorter, "lining_shorter")
    at = next(i for i, e in enumerate(edges) if e.role is EdgeRole.CENTRE_SEAM)
    return with_ease_pleat(edges, at, choices.ease_pleat)


def _to_waist(back: Piece) -> tuple[Edge, ...]:
    """The back's edges above the waist, closed along it."""
    kept = edges_as(back, EdgeRole.PANEL, EdgeRole.ARMHOLE, EdgeRole.SHOULDER, EdgeRole.NECK, EdgeRole.CENTRE_SEAM)
    ends = {e.role: e.path for e in kept}
    across = line(ends[EdgeRole.PANEL].end, ends[EdgeRole.CENTRE_SEAM].start)
    waist = Edge("waist", across, role=EdgeRole.WAIST)
    at = next(i for i, e in enumerate(kept) if e.role is EdgeRole.PANEL)
    return (*kept[: at + 1], waist, *kept[at + 1 :])


def _front(front: Piece, facing: Piece, shorter: float) -> tuple[Edge, ...]:
    """The front between the facing's inner edge and the panel seam; `shorter` (mm) where it ends in a hem.

    On a shoulder that an alteration has curved, front and facing agree as exactly as lengths are computed: within
    that they are made to meet. What misses by more stays open, and is found.
    """
    shoulder, inner = the_edge(front, EdgeRole.SHOULDER), the_edge(facing, EdgeRole.INNER)
    at = shoulder.length - the_edge(facing, EdgeRole.SHOULDER).length
    outer = replace(shoulder, path=shoulder.path.split(at)[0])
    first, *rest = inner.mirrored().path.reversed()
    near = abs(first.a - outer.path.end) < 2 * EXACT
    meets = Path((first._replace(a=outer.path.end) if near else first, *rest))
    closed = Edge("inner", meets, EdgeKind.FREE, role=EdgeRole.INNER)
    low = (EdgeRole.WAIST, EdgeRole.HEM, EdgeRole.PANEL, EdgeRole.ARMHOLE)
    edges = (*edges_as(front, *low), outer, closed)
    hemmed = edge_as(front, EdgeRole.HEM) is not None
    return shorter_panels([replace(front, edges=edges)], shorter, "lining_shorter")[0] if hemmed else edges


def _said(choices: Choices, seam: float, *, tails: bool) -> Finding:
    hung = " Let bias tails and their lining hang before they are joined." * tails
    return Finding(
        "lining",
        "note",
        "lining",
        choices.ease_pleat,
        None,
        f"The lining is cut with {told(seam + WIDER, 'fine')} of allowance and sewn at {told(seam)}, so that it "
        f"is {told(3.0)} wider at every seam; its centre back has a pleat of {told(choices.ease_pleat)}.{hung}",
    )
