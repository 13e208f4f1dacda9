"""Peplum: a short skirt on a bodice's waist, a part of a circle cut to the exact length of that waist.

The front on the fold or open, as the bodice is; where the bodice opens, the peplum is left open below it.

              waist
            .------.
    centre  |       '.
    front   |    hip  '.   centre back
            '-.        /
               '------'
                 hem
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Seam
from drafting.draft.frame import BodyFrame, BodyHeight, Limb
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, Half, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.geometry.arc import arc
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.sources import practice
from drafting.shaping.skirt.circle import Sector, waist_ring

NEEDS = ("waist",)

WHOLE = 360.0
"""degrees."""

CATCHES = 20.0
"""mm: a peplum over the hip has at least so much more than the hip there (ours)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the peplum."""

    peplum_length: float = choice(
        140.0,
        "mm",
        "from the waist seam to the hem",
        low=30,
        high=400,
        step=5,
        scales=True,
        source=practice("⟨100⟩ to ⟨200⟩"),
        group="peplum",
    )
    peplum_angle: float = choice(
        180.0,
        "deg",
        "how much of a circle the peplum is: 90 hangs close, 180 falls softly, 360 is full",
        low=60,
        high=360,
        step=10,
        source=practice("a half to a full circle"),
        group="peplum",
    )


def peplum(body: Body, fabric: Fabric | None, choices: Choices, *, waist: Chain) -> Draft:
    """Return the peplum (`peplum-front`, `peplum-back`), its side seams below the bodice's.

    It is opened wider where it would catch on the hip. Raises `DraftError` on a waist that is gathered, and where
    that would take more than a circle.
    """
    if waist.sewn is not None:
        raise DraftError(
            "a peplum is sewn to a flat waist", value="this one is gathered", turn="leave out the fullness there"
        )
    angle = _angle(body, waist, choices)
    sector = waist_ring(2 * waist.sewn_length, choices.peplum_length, angle)
    front = _of(waist, PieceRole.BACK, among=False) / waist.sewn_length * sector.angle
    open_front, open_back = waist.opens
    pieces = (_panel(sector, 0.0, front, open_front), _panel(sector, front, sector.angle, open_back))
    side = Seam("peplum side", (("peplum-front", "side"),), (("peplum-back", "side"),), kind=SeamKind.SIDE)
    return Draft(
        pieces,
        (side, *_to_bodice(waist)),
        findings=_said(choices.peplum_angle, angle),
        facts={"peplum_radius": sector.inner, "peplum_hem": sector.outer * 2 * math.radians(sector.angle)},
    )


def _angle(body: Body, waist: Chain, choices: Choices) -> float:
    """Return how much of a circle it is, degrees: as asked, or as much as passes the body at its hem."""
    girth, rise = 2 * waist.sewn_length, body["waist_to_hip"]
    deep = min(choices.peplum_length, rise)
    there = body["waist_girth"] + (body["hip_girth"] - body["waist_girth"]) * deep / rise
    needed = math.degrees((there + CATCHES - girth) / deep)
    if needed > WHOLE:
        raise DraftError(
            "the peplum would take more than a circle to pass the hip",
            value=f"{needed:.0f} degrees",
            reach=f"up to {WHOLE:.0f} degrees",
            turn="give the waist more ease, or choose a shorter peplum",
        )
    return max(choices.peplum_angle, needed)


def _of(waist: Chain, role: PieceRole, *, among: bool = True) -> float:
    """Return how much of the waist lies on pieces of a role, or on all others, mm."""
    return math.fsum(n for n, of in zip(waist.lengths, waist.pieces, strict=True) if (of is role) == among)


def _panel(sector: Sector, start: float, end: float, opens: bool) -> Piece:
    """Return the front, which begins on the middle at 0 degrees, or the back; its centre stands upright."""
    first = start == 0.0
    shift = 0.0 if first else -end
    begin, finish = sector.at(start + shift), sector.at(end + shift)
    hem = arc(0j, sector.outer * begin, end - start)
    top = arc(0j, sector.inner * finish, start - end)
    middle = EdgeKind.OPENING if opens else EdgeKind.FOLD
    front = line(top.end, hem.start)
    back = line(hem.end, top.start)
    edges = (
        Edge("centre", front, middle, role=EdgeRole.CENTRE, half=Half.FRONT)
        if first
        else Edge("side", front, role=EdgeRole.SIDE),
        Edge("hem", hem, EdgeKind.HEM, role=EdgeRole.HEM),
        Edge("side", back, role=EdgeRole.SIDE)
        if first
        else Edge("centre", back, middle, role=EdgeRole.CENTRE, half=Half.BACK),
        Edge("waist", top, role=EdgeRole.WAIST),
    )
    word = "front" if first else "back"
    corner = top.end if first else top.start
    frame = BodyFrame(limb=Limb.HANGS, heights=((BodyHeight.WAIST, corner),))
    return Piece(f"peplum-{word}", edges, pair=opens, title=f"Peplum {word}", frame=frame)


def _to_bodice(waist: Chain) -> Iterator[Seam]:
    """Yield the seams of front and back to the bodice: the bodice's waist runs from front to back."""
    for word, among in (("front", False), ("back", True)):
        found = zip(waist.refs, waist.pieces, strict=True)
        refs = [ref for ref, role in found if (role is PieceRole.BACK) == among]
        yield Seam(
            f"peplum {word}",
            ((f"peplum-{word}", "waist"),),
            tuple(reversed(refs)),
            start="square" if among else None,
            end=None if among else "square",
            kind=SeamKind.WAIST,
        )


def _said(asked: float, angle: float) -> tuple[Finding, ...]:
    if angle <= asked:
        return ()
    return (
        Finding(
            "peplum",
            "note",
            "peplum-front",
            angle,
            asked,
            f"A peplum of {asked:.0f} degrees would catch on the hip: it is opened to {angle:.0f}.",
        ),
    )
