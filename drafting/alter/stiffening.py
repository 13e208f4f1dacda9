"""Stiffening: interfacing by region, and bones along the hem and down the seams of the tails.

Interfacing is cut from any piece, or from a region of it, to the stitching line and a margin. A bone
along the hem lies in a casing strip; where it has to bend edgewise, a flat bone is warned against.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.by_role import edge_as, edges_as, piece_as, pieces_as
from drafting.draft.draft import Draft, Notion
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.sources import BY_EYE, ours, practice
from drafting.shaping.coat.bone import FLAT, ROUND, SPIRAL
from drafting.shaping.coat.boning import Boning, tails_of, with_bones
from drafting.shaping.coat.inside import hem_bands, loose_edges, skirted, stand_band, stiff_layer
from drafting.shaping.shared_choices import BONE_HEIGHT, BONE_SHORT, BONE_WIDTH, HEM_BAND

CANVAS = "hair canvas or a medium fusible"

WEIGHTS = {
    PieceRole.UNDER_COLLAR: "collar canvas or a medium fusible",
    PieceRole.COLLAR_STAND: "two layers of collar canvas, or a firm fusible",
    PieceRole.TAIL: "a firm, heavy interfacing, or buckram where the hem is boned",
}
"""Weight of the interfacing by what it stiffens; anything else takes canvas (common practice)."""

BLOCK_FUSE = 5.0
"""mm: past this margin interfacing lies in the seams and has to be light (common practice)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the stiffening, in mm."""

    stiff_collar: bool = choice(
        True,
        "yes/no",
        "interfacing for the under collar, or the outer stand",
        group="stiffening",
        source=practice(),
    )
    stiff_front: str = choice(
        "whole front",
        "word",
        "interfacing for the front: all of it, lapel or button stand, the facing, or none",
        words=("whole front", "lapel", "button stand", "lapel and stand", "facing", "none"),
        group="stiffening",
        source=practice(),
    )
    stiff_tails: str = choice(
        "hem band",
        "word",
        "interfacing for the tails",
        words=("hem band", "whole tail", "none"),
        group="stiffening",
        source=practice(),
    )
    hem_band: float = HEM_BAND
    stand_band: float = choice(
        75.0,
        "mm",
        "width of the interfaced band along the front edge",
        low=15,
        high=120,
        step=5,
        scales=True,
        group="stiffening",
        source=practice("past the buttons"),
    )
    interfacing_margin: float = choice(
        3.0,
        "mm",
        "how far interfacing reaches past the stitching line",
        low=0,
        high=15,
        group="stiffening",
        source=practice("at most ⟨3⟩, the full allowance only if light and block-fused"),
    )
    hem_bone: str = choice(
        SPIRAL,
        "word",
        "the bone along the hem: one a tail, or flat ones, one a panel",
        words=(SPIRAL, ROUND, FLAT, "flat, one a panel", "none"),
        group="stiffening",
        source=ours("plane geometry: a flat bone does not bend edgewise"),
    )
    bone_width: float = BONE_WIDTH
    bone_height: float = BONE_HEIGHT
    bone_short: float = BONE_SHORT
    seam_bones: bool = choice(
        False, "yes/no", "bones down the tail's seams too", group="stiffening", source=BY_EYE
    )


def stiffening(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with interfacing pieces, bone lines, the casing and the bone list.

    Pieces that the draft does not have are passed over. Raises `DraftError` for a band deeper than
    the tail.
    """
    stiff = tuple(_interfacing(draft, choices))
    notes = tuple(_interfacing_notion(piece, draft) for piece in stiff)
    asked = Boning(
        hem=choices.hem_bone,
        width=choices.bone_width,
        height=choices.bone_height,
        short=choices.bone_short,
        seams=choices.seam_bones,
    )
    boned, bones = with_bones(draft, asked)
    told = tuple(_cloth_said(choices, fabric, tails=bool(tails_of(draft)))) if stiff else ()
    return boned + Draft(stiff, notions=notes, findings=told) + bones


# -------------------------------------------------------------------------------- interfacing


def _interfacing(draft: Draft, choices: Choices) -> Iterator[Piece]:
    margin = choices.interfacing_margin
    if choices.stiff_collar:
        collars = pieces_as(draft, PieceRole.UNDER_COLLAR, PieceRole.COLLAR_STAND)
        yield from (whole_interfacing(piece, margin) for piece in collars if not piece.lines)
    front, facing = piece_as(draft, PieceRole.FRONT), piece_as(draft, PieceRole.FACING)
    if choices.stiff_front == "whole front" and front:
        yield whole_interfacing(front, margin)
    if choices.stiff_front == "facing" and facing:
        yield whole_interfacing(facing, margin)
    if front and edge_as(front, EdgeRole.LAPEL):
        if choices.stiff_front in ("lapel", "lapel and stand"):
            yield lapel(front, margin)
        if choices.stiff_front in ("button stand", "lapel and stand"):
            yield button_stand(front, choices.stand_band, margin)
    tails = tails_of(draft)
    if choices.stiff_tails == "whole tail":
        yield from (whole_interfacing(piece, margin) for piece in tails)
    elif choices.stiff_tails == "hem band":
        edges = hem_bands([skirted(piece) for piece in tails], choices.hem_band, margin, "hem_band")
        for piece, own in zip(tails, edges, strict=True):
            yield stiff_layer(piece, own, "band", PieceRole.HEM_BAND)


def whole_interfacing(piece: Piece, margin: float) -> Piece:
    """Return the interfacing of a whole piece, `margin` mm past its stitching line."""
    return stiff_layer(piece, loose_edges(piece.edges, margin), "interfacing")


def lapel(front: Piece, margin: float) -> Piece:
    """Return the interfacing of the lapel: from the roll line outwards."""
    edges = edges_as(front, EdgeRole.GORGE, EdgeRole.LAPEL)
    roll = line(edges[-1].path.end, edges[0].path.start)
    ring = (*loose_edges(tuple(edges), margin), Edge("roll", roll, EdgeKind.FREE, allowance=0.0))
    return stiff_layer(front, ring, "lapel-interfacing", PieceRole.LAPEL)


def button_stand(front: Piece, width: float, margin: float) -> Piece:
    """Return the interfacing of the button stand: a band along the front edge below the break."""
    (edges,) = hem_bands([stand_band(front, width)], width, margin, "stand_band")
    return stiff_layer(front, edges, "stand-interfacing", PieceRole.BUTTON_STAND)


def _interfacing_notion(piece: Piece, draft: Draft) -> Notion:
    weight = WEIGHTS.get(draft[piece.stiffens[0]].role, CANVAS)
    note = f"{weight}; same grain as the cloth; test the iron on a scrap"
    return Notion("interfacing", piece.name, piece.count, None, note, weight, piece=piece.name)


def _cloth_said(choices: Choices, fabric: Fabric | None, *, tails: bool) -> Iterator[Finding]:
    if choices.interfacing_margin > BLOCK_FUSE:
        yield Finding(
            "interfacing",
            "note",
            "interfacing",
            choices.interfacing_margin,
            3.0,
            f"Interfacing reaches {told(choices.interfacing_margin)} past the stitching line and lies in the "
            "seams: take a light fusible, fused to the cloth before cutting.",
        )
    if tails and fabric is not None and fabric.takes_starch:
        yield Finding(
            "starch",
            "note",
            "tails",
            "starch",
            None,
            f"{fabric.title} takes starch: starch and press the tails flat before they are sewn, on the "
            "warp, so that the bias is not drawn out.",
        )
    yield Finding(
        "care at work",
        "note",
        "interfacing",
        None,
        None,
        "Test the iron on a scrap first; iron off and steam away from the hands when it is put down; air the "
        "room when fusing or using spray glue; close the cutter's blade when laying it down.",
    )
