"""Coat collar: under collar and top collar, whose neck edge walks gorge and neckline to the back; or a stand.

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
from drafting.draft.chain import chain
from drafting.draft.draft import Draft, EdgeRef, Seam, SeamNotch
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
from drafting.ground.sources import memory, practice
from drafting.shaping.coat.collar import CollarShape, NeckLines, closed_back_neck, collar_shape
from drafting.shaping.coat.stand import stand_collar

LEAST_COVER = 8.0
"""mm at adult scale: the fall must be so much deeper than the stand to cover the neck seam (common practice)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the coat collar, in mm."""

    collar_stand: float = choice(
        30.0,
        "mm",
        "height of the stand at the centre back; ⟨35⟩ to ⟨50⟩ where it stands alone",
        low=10,
        high=120,
        scales=True,
        group="collar",
        source=memory(),
    )
    collar_fall: float = choice(
        42.0,
        "mm",
        "depth of the fall at the centre back; at least ⟨8⟩ more than the stand covers the seam",
        low=15,
        high=200,
        scales=True,
        group="collar",
        source=memory(),
    )
    stand_ease: float = choice(
        36.0,
        "mm",
        "of a stand on a front that closes to the neck: its top minus the neck's girth",
        low=0,
        high=120,
        group="collar",
        source=practice("⟨30⟩ to ⟨40⟩ over cloth, a finger and more above a shirt's"),
    )


def coat_collar(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the coat with its collar: pieces `under-collar` and `top-collar`; a shawl's upper side is cut in one
    with the facing, and a front that closes to the neck gets a stand.

    Raises `DraftError` where the draft has no front that a collar is sewn to.
    """
    front, back = piece_as(draft, PieceRole.FRONT), piece_as(draft, PieceRole.BACK)
    facing = piece_as(draft, PieceRole.FACING)
    if front and back and edge_as(front, EdgeRole.STAND_NECK):
        neck = chain(draft, "front_neck"), chain(draft, "back_neck")
        ease = choices.stand_ease + body.layer("neck_base_girth")
        sewn = draft.with_pieces([_facing(facing)]) if facing else draft
        return sewn + stand_collar(neck, facing, choices.collar_stand, body["neck_girth"], ease)
    if back is None or front is None or not edge_as(front, EdgeRole.GORGE):
        raise DraftError(
            "a coat collar is sewn to a gorge, and this draft has no front with one",
            turn="take the block tailcoat, or put coat-body before the collar",
        )
    shape = collar_shape(_lines(front, back), choices.collar_stand, choices.collar_fall)
    facts = {"collar_swing": shape.swing, "collar_fall_edge": shape.fall.length}
    said, under = _said(choices, shape, body_scale(body)), _under(shape)
    seams = (_to_neck(front, back, under), _centre_back(under, SeamKind.MADE_UP))
    if shape.front is None and facing:
        grown = _grown_facing(facing, shape)
        shawl = (*seams, _centre_back(grown, SeamKind.FACING), _shawl_edge(under, grown, shape.fall.length))
        return draft.with_pieces([grown]) + Draft((under,), shawl, findings=said, facts=facts)
    top = _top(shape)
    sewn = draft.with_pieces([_facing(facing)]) if facing else draft
    whole = (*seams, _edge(under, top), *([_to_top(facing, top)] if facing else []))
    return sewn + Draft((under, top), whole, (), said, facts)


def _lines(front: Piece, back: Piece) -> NeckLines:
    """Return the neck lines, the forepart turned over so that its front is at +x."""
    nape, behind = (the_edge(back, role).path.mirrored().reversed() for role in TOP)
    neck, shoulder, gorge = (the_edge(front, role).path.mirrored() for role in (*TOP, EdgeRole.GORGE))
    roll = (-front.points[name].conjugate() for name in ("roll_top", "break"))
    back_neck = closed_back_neck(
        nape.reversed(), behind.start - behind.end, neck.start, shoulder.start - shoulder.end
    )
    tip = -front.points["collar_tip"].conjugate()
    shawl = abs(tip - gorge.end) < tol.CLOSED
    edge = the_edge(front, EdgeRole.LAPEL).path.mirrored().leave if shawl else None
    return NeckLines(neck=neck, gorge=gorge, back_neck=back_neck, roll=line(*roll), tip=tip, runs_on=edge)


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


def _grown_facing(facing: Piece, shape: CollarShape) -> Piece:
    """Return a shawl's facing: it goes on round the neck as the top collar, to a seam at the centre back."""
    gorge = the_edge(facing, EdgeRole.GORGE)
    laid = shape.laid_on(gorge.path.reversed())
    grown = (
        Edge("fall", laid["fall"]),
        Edge("centre", laid["centre"], role=EdgeRole.CENTRE),
        Edge("back_neck", laid["back_neck"], EdgeKind.FREE, allowance=10.0, role=EdgeRole.COLLAR_NECK),
    )
    at = facing.index(gorge.name)
    kept = (*facing.edges[:at], *facing.edges[at + 2 :])
    return replace(facing, edges=(*kept[:at], *grown, *kept[at:]), title="Front facing and top collar")


def _refs(piece: Piece, *names: str) -> tuple[EdgeRef, ...]:
    return tuple((piece.name, name) for name in names)


def _to_neck(front: Piece, back: Piece, under: Piece) -> Seam:
    """Return the seam of the under collar round the neck, from one gorge to the other."""
    nape = the_edge(back, EdgeRole.NECK)
    neck, gorge = (the_edge(front, role) for role in ROUND)
    start = nape.length + neck.length
    return Seam(
        "collar",
        (*_refs(back, nape.name), *_refs(front, neck.name, gorge.name)),
        _refs(under, "back_neck", "front_neck", "gorge"),
        start=None,
        end=None,
        notches=(SeamNotch("shoulder", nape.length, nape.length), SeamNotch("gorge", start, start)),
        kind=SeamKind.ATTACHED,
    )


def _centre_back(piece: Piece, kind: SeamKind) -> Seam:
    """Return the seam of a collar's left half to its right one; a facing's is named for it."""
    name = "facing centre back" if kind is SeamKind.FACING else "collar centre back"
    return Seam(name, _refs(piece, "centre"), _refs(piece, "centre"), start=None, end=None, kind=kind)


def _shawl_edge(under: Piece, facing: Piece, long: float) -> Seam:
    """Return the seam round a shawl's collar; it ends at the gorge, where the facing has no corner but a notch."""
    at = long - tol.EXACT
    return Seam(
        "collar edge",
        _refs(under, "fall"),
        _refs(facing, "fall"),
        start=None,
        end=None,
        notches=(SeamNotch("gorge", at, at),),
        kind=SeamKind.FACING,
    )


def _edge(under: Piece, top: Piece) -> Seam:
    """Return the seam round the collar's free edge."""
    names = ("fall", "front")
    return Seam(
        "collar edge", _refs(under, *names), _refs(top, *names), start=None, end=None, kind=SeamKind.MADE_UP
    )


def _to_top(facing: Piece, top: Piece) -> Seam:
    """Return the seam that runs on from the lapel: the facing to the top collar."""
    mine = tuple((facing.name, edge.name) for edge in edges_as(facing, *ROUND))
    theirs = ((top.name, "gorge"), (top.name, "front_neck"))
    return Seam("facing to top collar", mine, theirs, start=None, end=None, kind=SeamKind.MADE_UP)


def _said(choices: Choices, shape: CollarShape, scale: float) -> tuple[Finding, ...]:
    cover = choices.collar_fall - choices.collar_stand
    larger = ("facing from the break up", "lapel") if shape.front is None else ("top collar", "front")
    found = [
        Finding(
            "collar",
            "note",
            "collar",
            math.degrees(shape.swing),
            None,
            f"The collar's back part is swung by {math.degrees(shape.swing):.0f} degrees so that its fall edge, "
            f"{told(shape.fall.length)}, lies on the coat. "
            f"Cut the {larger[0]} {told(2.0, 'fine')} to {told(3.0, 'fine')} larger at fall and {larger[1]}, "
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
