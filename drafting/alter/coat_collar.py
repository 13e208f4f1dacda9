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
from drafting.draft.draft import Draft, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground import tolerances as tol
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
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
    if "front" not in draft or "gorge" not in draft["front"]:
        raise DraftError(
            "a coat collar is sewn to a gorge, and this draft has no front with one",
            turn="take the block tailcoat, or put coat-body before the collar",
        )
    shape = collar_shape(_lines(draft), choices.collar_stand, choices.collar_fall)
    under, top = _under(shape), _top(shape)
    faced = "front-facing" in draft
    sewn = draft.with_pieces([_facing(draft["front-facing"])]) if faced else draft
    return sewn + Draft(
        (under, top),
        _seams(draft, under, faced),
        (),
        _said(choices, shape, body_scale(body)),
        {"collar_swing": shape.swing, "collar_fall_edge": shape.fall.length},
    )


def _lines(draft: Draft) -> NeckLines:
    """Return the neck lines, the forepart turned over so that its front is at +x."""
    front = draft["front"]
    back = {name: draft["back"][name].path.mirrored().reversed() for name in ("neck", "shoulder")}
    neck, gorge = (front[name].path.mirrored() for name in ("neck", "gorge"))
    shoulder, behind = front["shoulder"].path.mirrored(), back["shoulder"]
    roll = (-front.points[name].conjugate() for name in ("roll_top", "break"))
    back_neck = closed_back_neck(
        back["neck"].reversed(), behind.start - behind.end, neck.start, shoulder.start - shoulder.end
    )
    return NeckLines(neck, gorge, back_neck, line(*roll), -front.points["collar_tip"].conjugate())


def _under(shape: CollarShape) -> Piece:
    edges = tuple(Edge(name, path) for name, path in shape.ring)
    marks = (Placement("roll_line", shape.roll, "roll line"),)
    return Piece("under-collar", edges, grain=45.0, pair=True, placements=marks, title="Under collar").mirrored()


def _top(shape: CollarShape) -> Piece:
    """The top collar on the fold; its back neck is sewn to the lining."""
    edges = tuple(
        Edge(name, path, EdgeKind.FOLD if name == "centre" else EdgeKind.SEAM)
        if name != "back_neck"
        else Edge(name, path, EdgeKind.FREE, allowance=10.0)
        for name, path in shape.ring
    )
    marks = (Placement("roll_line", shape.roll, "roll line"),)
    return Piece("top-collar", edges, placements=marks, title="Top collar")


def _facing(facing: Piece) -> Piece:
    """The facing's neck and gorge are sewn to the top collar."""
    sewn = (replace(facing[n], kind=EdgeKind.SEAM, allowance=None) for n in ("neck", "gorge"))
    return facing.with_edges(*sewn)


def _seams(draft: Draft, under: Piece, faced: bool) -> tuple[Seam, ...]:
    name, neck = under.name, draft["back"]["neck"].length
    start = neck + draft["front"]["neck"].length
    found = [
        Seam(
            "collar",
            (("back", "neck"), ("front", "neck"), ("front", "gorge")),
            tuple((name, n) for n in ("back_neck", "front_neck", "gorge")),
            start=None,
            end=None,
            notches=(SeamNotch("shoulder", neck, neck), SeamNotch("gorge", start, start)),
        ),
        Seam("collar centre back", ((name, "centre"),), ((name, "centre"),), start=None, end=None),
        Seam(
            "collar edge",
            ((name, "fall"), (name, "front")),
            (("top-collar", "fall"), ("top-collar", "front")),
            start=None,
            end=None,
        ),
    ]
    if faced:
        found.append(
            Seam(
                "facing to top collar",
                (("front-facing", "gorge"), ("front-facing", "neck")),
                (("top-collar", "gorge"), ("top-collar", "front_neck")),
                start=None,
                end=None,
            )
        )
    return tuple(found)


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
            f"{shape.fall.length:.0f} mm, lies on the coat. "
            "Cut the top collar 2 to 3 mm larger at fall and front, for the turn of the cloth, and stretch "
            "the under collar's fall edge with the iron.",
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
                f"The fall is only {cover:.0f} mm deeper than the stand: the neck seam will show. Make it at "
                f"least {LEAST_COVER * scale:.0f} mm deeper.",
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
                f"No swing makes the fall edge lie on the coat: it is {abs(shape.off):.0f} mm too "
                f"{'long' if shape.off > 0 else 'short'}. Choose another stand or fall, or fit the collar by hand.",
            )
        )
    return tuple(found)
