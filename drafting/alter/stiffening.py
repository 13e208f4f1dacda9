"""Stiffening: interfacing by region, and bones along the hem and down the seams of the tails.

Interfacing is cut from any piece, or from a region of it, to the stitching line and a margin. A bone
along the hem lies in a casing strip; where it has to bend edgewise, a flat bone is warned against.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as, edges_as, piece_as, pieces_as, the_edge
from drafting.draft.draft import Draft, Notion
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.geometry import Path, line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.scale import body_scale
from drafting.ground.sources import BY_EYE, ours, practice
from drafting.shaping.coat.bone import (
    AT_HEM,
    AT_WAIST,
    FLAT,
    MOST_STRAIN,
    ROUND,
    SPIRAL,
    Channel,
    bone_length,
    casing_size,
    channel,
)
from drafting.shaping.coat.inside import beside_hems, hem_bands, loose_edges, skirted, stand_band, stiff_layer

CANVAS = "hair canvas or a medium fusible"

WEIGHTS = {
    PieceRole.UNDER_COLLAR: "collar canvas or a medium fusible",
    PieceRole.TAIL: "a firm, heavy interfacing, or buckram where the hem is boned",
}
"""Weight of the interfacing by what it stiffens; anything else takes canvas (common practice)."""

BLOCK_FUSE = 5.0
"""mm: past this margin interfacing lies in the seams and has to be light (common practice)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the stiffening, in mm."""

    stiff_collar: bool = choice(
        True, "yes/no", "interfacing for the under collar", group="stiffening", source=practice()
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
    hem_band: float = choice(
        60.0,
        "mm",
        "depth of the interfaced band along the hem",
        low=15,
        high=300,
        step=5,
        scales=True,
        group="stiffening",
        source=BY_EYE,
    )
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
        source=practice("at most 3, the full allowance only if light and block-fused"),
    )
    hem_bone: str = choice(
        SPIRAL,
        "word",
        "the bone along the hem: one a tail, or flat ones, one a panel",
        words=(SPIRAL, ROUND, FLAT, "flat, one a panel", "none"),
        group="stiffening",
        source=ours("plane geometry: a flat bone does not bend edgewise"),
    )
    bone_width: float = choice(
        6.0, "mm", "width of the bone", low=2, high=15, step=0.5, group="stiffening", source=practice()
    )
    bone_height: float = choice(
        14.0,
        "mm",
        "how far above the hem the bone's middle lies",
        low=5,
        high=60,
        group="stiffening",
        source=BY_EYE,
    )
    bone_short: float = choice(
        6.0,
        "mm",
        "how much a bone is shorter than its channel at each end",
        low=5,
        high=7.5,
        step=0.5,
        group="stiffening",
        source=practice("10 to 15 in all, at least 5 at each end"),
    )
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
    boned, bones = _boned(draft, choices, body_scale(body))
    told = tuple(_cloth_said(choices, fabric)) if stiff else ()
    return boned + Draft(stiff, notions=notes, findings=told) + bones


def tails_of(draft: Draft) -> tuple[Piece, ...]:
    """Return the tail panels and godets of a draft in the order of the hem, from the back."""
    found = pieces_as(draft, PieceRole.TAIL, PieceRole.GODET)
    return tuple(sorted(found, key=lambda p: (p.place, p.role is PieceRole.GODET)))


# -------------------------------------------------------------------------------- interfacing


def _interfacing(draft: Draft, choices: Choices) -> Iterator[Piece]:
    margin = choices.interfacing_margin
    if choices.stiff_collar and (collar := piece_as(draft, PieceRole.UNDER_COLLAR)):
        yield whole_interfacing(collar, margin)
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
        edges = hem_bands([skirted(piece) for piece in tails], choices.hem_band, margin)
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
    (edges,) = hem_bands([stand_band(front, width)], width, margin)
    return stiff_layer(front, edges, "stand_band-interfacing", PieceRole.BUTTON_STAND)


def _interfacing_notion(piece: Piece, draft: Draft) -> Notion:
    weight = WEIGHTS.get(draft[piece.stiffens[0]].role, CANVAS)
    note = f"{weight}; same grain as the cloth; test the iron on a scrap"
    return Notion("interfacing", piece.name, piece.count, None, note, weight, piece=piece.name)


def _cloth_said(choices: Choices, fabric: Fabric | None) -> Iterator[Finding]:
    if choices.interfacing_margin > BLOCK_FUSE:
        yield Finding(
            "interfacing",
            "note",
            "interfacing",
            choices.interfacing_margin,
            3.0,
            f"Interfacing reaches {choices.interfacing_margin:.0f} mm past the stitching line and lies in the "
            "seams: take a light fusible, fused to the cloth before cutting.",
        )
    if fabric is not None and not fabric.takes_fusible:
        yield Finding(
            "interfacing",
            "note",
            "interfacing",
            "sewn in",
            None,
            f"{fabric.title} takes no fusible: baste a sewn-in interfacing to the wrong side, just inside the "
            "stitching line.",
        )
    if fabric is not None and fabric.takes_starch:
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


# -------------------------------------------------------------------------------------- bones


def _boned(draft: Draft, choices: Choices, scale: float) -> tuple[Draft, Draft]:
    """Return the draft with its bone lines drawn, and what the bones add to it."""
    tails = tails_of(draft)
    if not tails or (choices.hem_bone == "none" and not choices.seam_bones):
        return draft, Draft()
    marked, added = list(tails), Draft()
    if choices.hem_bone != "none":
        inner = beside_hems([skirted(piece) for piece in tails], choices.bone_height)
        lines = [found.line for found in inner]
        marked = [_marked(p, "hem_bone", path) for p, path in zip(marked, lines, strict=True)]
        channels = [channel(p.name, path) for p, path in zip(tails, lines, strict=True)]
        added = _hem_bones(channels, choices)
    if choices.seam_bones:
        seamed = [p for p in tails if (e := edge_as(p, EdgeRole.FRONT)) and e.kind is EdgeKind.SEAM]
        names = {p.name for p in seamed}
        marked = [_marked(p, "seam_bone", _down(p)) if p.name in names else p for p in marked]
        added = added + _seam_bones(seamed)
    return draft.with_pieces(marked), added


def _marked(piece: Piece, name: str, path: Path) -> Piece:
    return replace(piece, placements=(*piece.placements, Placement(name, path, "bone")))


def _down(piece: Piece) -> Path:
    """Return where the bone lies along a panel's front seam."""
    seam = the_edge(piece, EdgeRole.FRONT).path
    return seam.part(AT_WAIST, seam.length - AT_HEM)


def _hem_bones(channels: list[Channel], choices: Choices) -> Draft:
    kind, size = choices.hem_bone, choices.bone_width
    per_panel = kind == "flat, one a panel"
    total = sum(c.length for c in channels)
    tips = "cap or file both ends; steel is cut with eye protection"
    sort = "flat" if per_panel else kind
    note = f"{sort}, {size:g} mm wide, {tips}"
    lengths = {f"{c.panel} hem": c.length for c in channels} if per_panel else {"tail hem": total}
    notions = tuple(
        Notion(
            "boning", where, 2, cut_length=bone_length(length, choices.bone_short), note=note, kind=sort, size=size
        )
        for where, length in lengths.items()
    )
    extra = max(c.height() for c in channels) if per_panel else 0.0
    length, width = casing_size(total, size, extra)
    count = 4 * len(channels) if per_panel else 4
    notions = (*notions, Notion("bone tip", "tail hem", count, None, "one at each end of every bone"))
    return Draft(
        (_casing(length, width),),
        findings=tuple(_bone_said(channels, choices)),
        facts={"bone_channel": total, "bone_casing_width": width},
        notions=notions,
    )


def _casing(length: float, width: float) -> Piece:
    """The strip the hem bone lies in, cut on the bias, so that it follows the hem's curve."""
    corners = (0j, complex(length, 0), complex(length, width), complex(0, width))
    names = ("low", "end", "top", "start")
    sides = zip(names, corners, (*corners[1:], corners[0]), strict=True)
    edges = tuple(Edge(n, line(a, b), EdgeKind.FREE, allowance=0.0) for n, a, b in sides)
    return Piece(
        "bone-casing",
        edges,
        grain=45.0,
        pair=True,
        title="Bone casing, turnings included",
        role=PieceRole.BONE_CASING,
    )


def _bone_said(channels: list[Channel], choices: Choices) -> Iterator[Finding]:
    sharpest = min(channels, key=lambda c: c.radius)
    strain = sharpest.strain(choices.bone_width)
    if choices.hem_bone == FLAT and strain > MOST_STRAIN:
        yield Finding(
            "flat bone",
            "warning",
            sharpest.panel,
            100 * strain,
            100 * MOST_STRAIN,
            f"A flat bone {choices.bone_width:g} mm wide cannot follow the hem of {sharpest.panel}: it would have "
            f"to bend edgewise on a radius of {sharpest.radius:.0f} mm, {100 * strain:.1f} % at its edge "
            f"({100 * MOST_STRAIN:.1f} % is the most). Take a spiral or a round bone, or one flat bone a "
            f"panel in a channel {sharpest.height():.1f} mm wider.",
        )
    yield Finding(
        "boning",
        "note",
        "tail hem",
        choices.bone_short,
        5.0,
        f"Bones end {choices.bone_short:g} mm short of their channel at each end (5 at the least), capped or "
        "filed; close both ends of the channel, and let no tip point upwards.",
    )


def _seam_bones(tails: list[Piece]) -> Draft:
    note = "flat, on the seam's allowances; seams are straight, so flat bones lie well"
    return Draft(
        notions=tuple(
            Notion(
                "boning",
                f"{piece.name} front seam",
                2,
                seam.length - AT_WAIST - AT_HEM,
                note,
                "flat",
                piece=piece.name,
            )
            for piece in tails
            for seam in [the_edge(piece, EdgeRole.FRONT)]
        )
    )
