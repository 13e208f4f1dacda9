r"""Pelerine: half a ring of cloth over shoulders and arms, gathered at the neck into a stand.

The left half, seen from outside, the back to the left. The ring is drafted for what is wanted at the
bust level: the neck edge, let out by its gathers, grows over that depth to the girth asked for, and
the sweep of the ring follows from it.

             neck                              top
    centre .-----.  front                 .-----------.
           |      \                centre |           | front
           | bust  \                      '-----------'
           |        \                         neck
           '---------'
              hem
Source: ours; a sector of a ring is plane geometry, the allowances for arms are from memory.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting import (
    Body,
    BodyFrame,
    BodyHeight,
    Draft,
    DraftError,
    Edge,
    EdgeKind,
    Fabric,
    Girth,
    Level,
    Limb,
    Notion,
    Piece,
    Seam,
    arc,
    choice,
    line,
    turn,
)


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the pelerine; a slider and a line of `drafting blocks` for each."""

    cape_length: float = choice(
        480.0,
        "mm",
        "from the neck edge to the hem, down the back",
        low=300,
        high=1600,
        step=10,
        scales=True,
        source="common practice: to the elbow",
        group="pelerine",
    )
    cape_ease: float = choice(
        700.0,
        "mm",
        "pelerine minus body at the bust, all round; both arms are inside",
        low=400,
        high=2500,
        step=10,
        scales=True,
        source="from memory: two upper arms and room",
        group="pelerine",
    )
    neck_fullness: float = choice(
        1.4,
        "ratio",
        "cloth gathered into the neck, times its finished length",
        low=1.0,
        high=2.5,
        step=0.1,
        source="common practice",
        group="pelerine",
    )
    stand_height: float = choice(
        40.0,
        "mm",
        "height of the stand at the neck",
        low=15,
        high=90,
        scales=True,
        source="common practice",
        group="pelerine",
    )


def pelerine(body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the pelerine on the fold and its stand, cut twice. mm.

    Raises `DraftError` where pelerine and neck cannot be one ring, or the pelerine ends above the bust.
    """
    neck, depth = body["neck_base_girth"] / 2, body["scye_depth"]
    gathered = neck * choices.neck_fullness
    around = (body["bust_girth"] + choices.cape_ease) / 2
    sweep = (around - gathered) / depth  # radians: what the half grows by, over the depth
    if not 0.2 <= sweep <= 3.1:
        raise DraftError(
            "the pelerine is no ring",
            value=f"{math.degrees(2 * sweep):.0f} degrees all round",
            reach="23 to 355 degrees",
            turn="change cape_ease, or neck_fullness the same way",
        )
    if choices.cape_length <= depth:
        raise DraftError(
            "the pelerine ends above the bust level",
            value=f"{choices.cape_length:.0f} mm",
            reach=f"more than {depth:.0f} mm",
            turn="choose a longer cape_length",
        )
    ring = _ring(gathered / sweep, math.degrees(sweep), choices.cape_length, depth, neck)
    return Draft(
        pieces=(ring, _stand(neck, choices.stand_height)),
        seams=(Seam("neck", (("pelerine", "neck"),), (("pelerine-stand", "neck"),), start=None, end="square"),),
        girths=(Girth("bust", body["bust_girth"], choices.cape_ease, choices.cape_ease),),
        facts={"cape_sweep": 2 * math.degrees(sweep)},
        notions=(Notion("hook and eye", "pelerine-stand.front", 1, note="at the top, edge to edge"),),
    )


def _ring(inner: float, degrees: float, length: float, depth: float, neck: float) -> Piece:
    """Return half the pelerine: the centre back straight down on the fold, then round to the front."""
    down, ahead = -1j, -1j * turn(degrees)
    hem = arc(0j, (inner + length) * down, degrees)
    top = arc(0j, inner * ahead, -degrees)
    return Piece(
        "pelerine",
        edges=(
            Edge("centre", line(inner * down, hem.start), EdgeKind.FOLD),
            Edge("hem", hem, EdgeKind.HEM),
            Edge("front", line(hem.end, top.start), EdgeKind.OPENING),
            Edge("neck", top, EdgeKind.SEAM, sewn=neck),  # pulled up to the neck
        ),
        levels=(Level("bust", (arc(0j, (inner + depth) * down, degrees),)),),
        title="Pelerine",
        frame=BodyFrame(  # so that the pelerine finds its place where it is shown worn
            limb=Limb.HANGS,
            heights=((BodyHeight.NAPE, inner * down),),
            front=(hem.end, top.start),
            back=(inner * down, hem.start),
        ),
    )


def _stand(neck: float, height: float) -> Piece:
    """Return half the stand on the fold, lying flat beside the pelerine's neck."""
    corners = (0j, neck + 0j, neck + height * 1j, height * 1j, 0j)
    names = ("neck", "front", "top", "centre")
    kinds = (EdgeKind.SEAM, EdgeKind.OPENING, EdgeKind.OPENING, EdgeKind.FOLD)
    sides = zip(names, corners[:-1], corners[1:], kinds, strict=True)
    edges = tuple(Edge(name, line(a, b), kind) for name, a, b, kind in sides)
    return Piece("pelerine-stand", edges, grain=0.0, title="Stand", copies=2)
