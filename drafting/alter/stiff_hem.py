"""What stiffens the hem of what hangs free, so that it stands out and keeps its line: a band, a bone, a braid.

A band of interfacing is cut by each piece to the stitching line and a margin; it is fused or sewn in before the
hem is turned up over it; where the hem drops on the bias, only once it has hung and is levelled (common practice).
A wide one is cut in parts that lie edge over edge. A bone lies in a casing inside (`coat/hem_bones`), a stiff
braid along the hem (`coat/hem_braid`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edges_as, is_shell
from drafting.draft.draft import Draft, Notion
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import SLEEVES, EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.geometry import Path
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.sources import ours, practice
from drafting.shaping.coat.bone import FLAT, ROUND, SPIRAL
from drafting.shaping.coat.hem_bones import HemBone, with_hem_bones
from drafting.shaping.coat.hem_braid import with_hem_braid
from drafting.shaping.coat.inside import hem_bands, skirted, slit_passed, stiff_layer
from drafting.shaping.details.lapped_parts import lapped_parts, wide_parts_said
from drafting.shaping.details.small_pieces import PAST_STITCHING, interfacing_notion
from drafting.shaping.shared_choices import BONE_HEIGHT, BONE_SHORT, BONE_WIDTH, HEM_BAND

PARTLY = frozenset({PieceRole.LAPEL, PieceRole.BUTTON_STAND, PieceRole.HEM_BAND})
"""Interfacings that leave a piece's hem as limp as it was."""

SKIRT_BAND = "as firm as the hem is to stand: a light fusible, hair canvas, or buckram for a stage"


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about a stiffened hem, in mm."""

    stiff_hem: str = choice(
        "none",
        "word",
        "what stiffens the hem of what hangs: a band of interfacing, a bone in a casing, a stiff braid",
        words=("none", "band", "bone", "braid"),
        group="stiffening",
        source=practice(),
    )
    hem_band: float = HEM_BAND
    hem_braid: float = choice(
        50.0,
        "mm",
        "width of the stiff braid along a hem",
        low=10,
        high=150,
        step=5,
        scales=True,
        group="stiffening",
        source=practice("sold ⟨13⟩, ⟨25⟩, ⟨50⟩, ⟨75⟩, ⟨100⟩ and ⟨150⟩ wide; wider stands out farther"),
    )
    bone_kind: str = choice(
        ROUND,
        "word",
        "the bone in a hem: round holds a wide ring, spiral a small one; flat follows hems that lie straight",
        words=(SPIRAL, ROUND, FLAT),
        group="stiffening",
        source=ours("plane geometry: a flat bone does not bend edgewise"),
    )
    bone_width: float = BONE_WIDTH
    bone_height: float = BONE_HEIGHT
    bone_short: float = BONE_SHORT


def stiff_hem(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its hems stiffened, or as it is where that is not asked for.

    Sleeves are left out, and of a band what is stiffened whole. Raises `DraftError` where a piece is lower than
    its band, or than its bone would lie.
    """
    if choices.stiff_hem == "none":
        return draft
    hemmed = [p for p in draft.pieces if is_shell(p) and p.role not in SLEEVES and edges_as(p, EdgeRole.HEM)]
    if choices.stiff_hem == "bone":
        asked = HemBone(choices.bone_kind, choices.bone_width, choices.bone_height, choices.bone_short)
        return with_hem_bones(draft, [_to_its_ends(piece) for piece in hemmed], asked)
    if choices.stiff_hem == "braid":
        return with_hem_braid(draft, [_to_its_ends(piece) for piece in hemmed], choices.hem_braid)
    return _banded(draft, hemmed, choices)


def _banded(draft: Draft, hemmed: Sequence[Piece], choices: Choices) -> Draft:
    """Return the draft with a band of interfacing for each of these pieces that is not stiffened whole."""
    firm = {name for p in draft.pieces if p.material and p.role not in PARTLY for name in p.stiffens}
    shell = [_to_its_ends(piece) for piece in hemmed if piece.name not in firm]
    passed = [slit_passed(piece, choices.hem_band, 0.0) for piece in shell]
    outlines = hem_bands([skirted(piece) for piece in passed], choices.hem_band, PAST_STITCHING, "hem_band")
    whole = [_band(piece, edges) for piece, edges in zip(passed, outlines, strict=True)]
    bands = tuple(part for band in whole for part in lapped_parts(band, "hem"))
    said = (_said(choices), *wide_parts_said(bands)) if bands else ()
    return draft + Draft(bands, notions=tuple(_notion(band) for band in bands), findings=said)


def _to_its_ends(piece: Piece) -> Piece:
    """Return the piece with its hem run on along the bottom of a front, which is faced there."""
    edges = list(piece.edges)
    at = next(i for i, edge in enumerate(edges) if edge.role is EdgeRole.HEM)
    before, hem, after = edges[at - 1], edges[at], edges[(at + 1) % len(edges)]
    run = [edge for edge in (before, hem, after) if edge is hem or edge.role is EdgeRole.BOTTOM]
    edges[at] = replace(hem, path=Path.joined([edge.path for edge in run]), notches=())
    return replace(piece, edges=tuple(edge for edge in edges if edge not in run or edge.role is EdgeRole.HEM))


def _band(piece: Piece, edges: tuple[Edge, ...]) -> Piece:
    """Return the band of a piece: on the fold where the piece is."""
    at = next(i for i, edge in enumerate(piece.edges) if edge.role is EdgeRole.HEM)
    beside = {"left": piece.edges[at - 1], "right": piece.edges[(at + 1) % len(piece.edges)]}
    folds = {name for name, edge in beside.items() if edge.kind is EdgeKind.FOLD}
    made = tuple(
        replace(edge, kind=EdgeKind.FOLD, allowance=None) if edge.name in folds else edge for edge in edges
    )
    return stiff_layer(piece, made, "band", PieceRole.HEM_BAND)


def _notion(band: Piece) -> Notion:
    return replace(interfacing_notion(band), kind=SKIRT_BAND)


def _said(choices: Choices) -> Finding:
    sentence = (
        f"A band of interfacing {told(choices.hem_band)} deep lies along the hem, so that it stands out and keeps "
        "its line. How firm it is you choose: pin a strip to the mock-up's hem and look. A stiff hem takes more "
        "room in doors and on chairs, and swings into what stands beside it: keep it from candles and lamps."
    )
    return Finding("stiff hem", "note", "hem", choices.hem_band, None, sentence)
