"""Coat collar: under collar and top collar, whose neck edge walks gorge and neckline to the back.

Half a collar, its centre back upright; the under collar is cut on the bias as a pair with a centre
seam, the top collar on the fold. The roll line is drawn.

               fall
      .--------------------.
  front\\                   | centre
        \\  - - roll - -    |
    gorge`-.___            |
          front_neck`------'
                    back_neck
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as, edges_as, piece_as, the_edge
from drafting.draft.draft import Draft, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground import tolerances as tol
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale
from drafting.ground.sources import memory
from drafting.shaping.coat.collar import CollarShape, NeckLines, closed_back_neck, collar_shape

LEAST_COVER = 8.0
"""mm at adult scale: the fall must be so much deeper than the stand to cover the neck seam (common practice)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the coat collar, in mm."""

    collar_stand: float = choice(
        30.0,
        "mm",
        "height of the stand at the centre back",
        low=10,
        high=120,
        scales=True,
        group="collar",
        source=memory(),
    )
    collar_fall: float = choice(
        42.0,
        "mm",
        "depth of the fall at the centre back; at least 8 more than the stand covers the seam",
        low=15,
        high=200,
        scales=True,
        group="collar",
        source=memory(),
    )


def coat_collar(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the coat with its collar: pieces `under-collar` and `top-collar`.

    Raises `DraftError` where the draft has no front with a gorge.
    """
    front, back = piece_as(draft, PieceRole.FRONT), piece_as(draft, PieceRole.BACK)
    if back is None or front is None or not edge_as(front, EdgeRole.GORGE):
        raise DraftError(
            "a coat collar is sewn to a gorge, and this draft has no front with one",
            turn="take the block tailcoat, or put coat-body before the collar",
        )
    shape = collar_shape(_lines(front, back), choices.collar_stand, choices.collar_fall)
    under, top = _under(shape), _top(shape)
    facing = piece_as(draft, PieceRole.FACING)
    sewn = draft.with_pieces([_facing(facing)]) if facing else draft
    seams = (*_seams(front, back, under, top), *([_to_top(facing, top)] if facing else []))
    return sewn + Draft(
        (under, top),
        seams,
        (),
        _said(choices, shape, body_scale(body)),
        {"collar_swing": shape.swing, "collar_fall_edge": shape.fall.length},
    )


def _lines(front: Piece, back: Piece) -> NeckLines:
    """Return the neck lines, the forepart turned over so that its front is at +x."""
    nape, behind = (the_edge(back, role).path.mirrored().reversed() for role in TOP)
    neck, shoulder, gorge = (the_edge(front, role).path.mirrored() for role in (*TOP, EdgeRole.GORGE))
    roll = (-front.points[name].conjugate() for name in ("roll_top", "break"))
    back_neck = closed_back_neck(
        nape.reversed(), behind.start - behind.end, neck.start, shoulder.start - shoulder.end
    )
    return NeckLines(neck, gorge, back_neck, line(*roll), -front.points["collar_tip"].conjugate())


TOP = (EdgeRole.NECK, EdgeRole.SHOULDER)
"""What front and back have alike beside the neck."""

RING = {
    "gorge": EdgeRole.GORGE,
    "front": EdgeRole.FRONT,
    "centre": EdgeRole.CENTRE,
    "back_neck": EdgeRole.COLLAR_NECK,
    "front_neck": EdgeRole.COLLAR_NECK,
}
"""What the edges of the collar's shape are; its fall is a plain edge."""


def _edges(shape: CollarShape) -> tuple[Edge, ...]:
    return tuple(Edge(n, path, role=RING.get(n, EdgeRole.PLAIN)) for n, path in shape.ring)


def _under(shape: CollarShape) -> Piece:
    marks = (Placement("roll_line", shape.roll, "roll line"),)
    return Piece(
        "under-collar",
        _edges(shape),
        grain=45.0,
        pair=True,
        placements=marks,
        title="Under collar",
        role=PieceRole.UNDER_COLLAR,
    ).mirrored()


def _top(shape: CollarShape) -> Piece:
    """The top collar on the fold; its back neck is sewn to the lining."""
    marks = (Placement("roll_line", shape.roll, "roll line"),)
    whole = Piece("top-collar", _edges(shape), placements=marks, title="Top collar", role=PieceRole.TOP_COLLAR)
    return whole.with_edges(
        replace(whole["centre"], kind=EdgeKind.FOLD),
        replace(whole["back_neck"], kind=EdgeKind.FREE, allowance=10.0),
    )


def _facing(facing: Piece) -> Piece:
    """The facing's neck and gorge are sewn to the top collar."""
    sewn = (replace(e, kind=EdgeKind.SEAM, allowance=None) for e in edges_as(facing, *ROUND))
    return facing.with_edges(*sewn)


ROUND = (EdgeRole.NECK, EdgeRole.GORGE)
"""What a coat collar is sewn to on a front or its facing."""


def _seams(front: Piece, back: Piece, under: Piece, top: Piece) -> tuple[Seam, ...]:
    name, nape = under.name, the_edge(back, EdgeRole.NECK)
    neck, gorge = (the_edge(front, role) for role in ROUND)
    start = nape.length + neck.length
    return (
        Seam(
            "collar",
            ((back.name, nape.name), (front.name, neck.name), (front.name, gorge.name)),
            tuple((name, n) for n in ("back_neck", "front_neck", "gorge")),
            start=None,
            end=None,
            notches=(SeamNotch("shoulder", nape.length, nape.length), SeamNotch("gorge", start, start)),
            kind=SeamKind.ATTACHED,
        ),
        Seam(
            "collar centre back",
            ((name, "centre"),),
            ((name, "centre"),),
            start=None,
            end=None,
            kind=SeamKind.MADE_UP,
        ),
        Seam(
            "collar edge",
            ((name, "fall"), (name, "front")),
            ((top.name, "fall"), (top.name, "front")),
            start=None,
            end=None,
            kind=SeamKind.MADE_UP,
        ),
    )


def _to_top(facing: Piece, top: Piece) -> Seam:
    """Return the seam that runs on from the lapel: the facing to the top collar."""
    mine = tuple((facing.name, edge.name) for edge in edges_as(facing, *ROUND))
    theirs = ((top.name, "gorge"), (top.name, "front_neck"))
    return Seam("facing to top collar", mine, theirs, start=None, end=None, kind=SeamKind.MADE_UP)


def _said(choices: Choices, shape: CollarShape, scale: float) -> tuple[Finding, ...]:
    cover = choices.collar_fall - choices.collar_stand
    found = [
        Finding(
            "collar",
            "note",
            "collar",
            math.degrees(shape.swing),
            None,
            f"The collar's back part is swung by {math.degrees(shape.swing):.0f} degrees so that its fall edge, "
            f"{told(shape.fall.length)}, lies on the coat. "
            f"Cut the top collar {told(2.0, 'fine')} to {told(3.0, 'fine')} larger at fall and front, "
            "for the turn of the cloth, and stretch the under collar's fall edge with the iron.",
        )
    ]
    if cover < LEAST_COVER * scale:
        found.append(
            Finding(
                "collar fall",
                "warning",
                "collar",
                cover,
                LEAST_COVER * scale,
                f"The fall is only {told(cover)} deeper than the stand: the neck seam will show. Make it at "
                f"least {told(LEAST_COVER * scale)} deeper.",
            )
        )
    if abs(shape.off) > tol.SEAM_MATCH:
        found.append(
            Finding(
                "collar",
                "warning",
                "collar",
                shape.off,
                0.0,
                f"No swing makes the fall edge lie on the coat: it is {told(abs(shape.off))} "
                f"too {'long' if shape.off > 0 else 'short'}. Choose another stand or fall, or fit the collar "
                "by hand.",
            )
        )
    return tuple(found)
