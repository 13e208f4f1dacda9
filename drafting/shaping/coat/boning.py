"""Bones in the tails: along the hem in a casing, and down the seams; their lines, list and remarks. mm."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.draft.by_role import edge_as, pieces_as, the_edge
from drafting.draft.draft import Draft, Notion
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.geometry import Path, line
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.coat.bone import (
    AT_HEM,
    AT_WAIST,
    BONING,
    HEM_BONE,
    SEAM_BONE,
    Channel,
    bone_length,
    casing_size,
    channel,
    flat_bone_said,
)
from drafting.shaping.coat.inside import beside_hems, skirted


@dataclass(frozen=True)
class Boning:
    """What is asked of the bones: the one along the `hem` ("none": no bone), its `width`, how far above the
    hem its middle lies (`height`), how much it is shorter than its channel at each end (`short`), and
    whether bones lie down the `seams` too. mm."""

    hem: str
    width: float
    height: float
    short: float
    seams: bool


def tails_of(draft: Draft) -> tuple[Piece, ...]:
    """Return the tail panels and godets of a draft in the order of the hem, from the back."""
    found = pieces_as(draft, PieceRole.TAIL, PieceRole.GODET)
    return tuple(sorted(found, key=lambda p: (p.place, p.role is PieceRole.GODET)))


def with_bones(draft: Draft, asked: Boning) -> tuple[Draft, Draft]:
    """Return the draft with its bone lines drawn, and what the bones add to it."""
    tails = tails_of(draft)
    if not tails or (asked.hem == "none" and not asked.seams):
        return draft, Draft()
    marked, added = list(tails), Draft()
    if asked.hem != "none":
        inner = beside_hems([skirted(piece) for piece in tails], asked.height, "bone_height")
        lines = [found.line for found in inner]
        marked = [_marked(p, HEM_BONE, path) for p, path in zip(marked, lines, strict=True)]
        channels = [channel(p.name, path) for p, path in zip(tails, lines, strict=True)]
        added = _hem_bones(channels, asked)
    if asked.seams:
        seamed = [p for p in tails if (e := edge_as(p, EdgeRole.FRONT)) and e.kind is EdgeKind.SEAM]
        names = {p.name for p in seamed}
        marked = [_marked(p, SEAM_BONE, _down(p)) if p.name in names else p for p in marked]
        added = added + _seam_bones(seamed, asked.width)
    return draft.with_pieces(marked), added


def _marked(piece: Piece, name: str, path: Path) -> Piece:
    return replace(piece, placements=(*piece.placements, Placement(name, path, "bone")))


def _down(piece: Piece) -> Path:
    """Return where the bone lies along a panel's front seam."""
    seam = the_edge(piece, EdgeRole.FRONT).path
    return seam.part(AT_WAIST, seam.length - AT_HEM)


def _hem_bones(channels: list[Channel], asked: Boning) -> Draft:
    kind, size = asked.hem, asked.width
    per_panel = kind == "flat, one a panel"
    total = sum(c.length for c in channels)
    tips = "cap or file both ends; steel is cut with eye protection"
    sort = "flat" if per_panel else kind
    note = f"{sort}, {told(size, 'small')} wide, {tips}"
    runs = [(f"{c.panel} hem", c.length, c.panel) for c in channels] if per_panel else [("tail hem", total, "")]
    notions = tuple(
        Notion(
            BONING,
            where,
            2,
            cut_length=bone_length(length, asked.short),
            note=note,
            kind=sort,
            size=size,
            piece=panel,
            mark=HEM_BONE,
        )
        for where, length, panel in runs
    )
    extra = max(c.height() for c in channels) if per_panel else 0.0
    length, width = casing_size(total, size, extra)
    count = 4 * len(channels) if per_panel else 4
    notions = (*notions, Notion("bone tip", "tail hem", count, None, "one at each end of every bone"))
    return Draft(
        (_casing(length, width),),
        findings=tuple(_bone_said(channels, asked)),
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


def _bone_said(channels: list[Channel], asked: Boning) -> Iterator[Finding]:
    instead = ", or one flat bone a panel in a channel {height} wider"
    yield from flat_bone_said(channels, asked.hem, asked.width, instead)
    yield Finding(
        "boning",
        "note",
        "tail hem",
        asked.short,
        5.0,
        f"Bones end {told(asked.short, 'small')} short of their channel at each end ({told(5.0, 'small')} at the "
        "least), capped or filed; close both ends of the channel, and let no tip point upwards.",
    )


def _seam_bones(tails: list[Piece], width: float) -> Draft:
    """Return the flat bones down the front seams of these panels, each in a casing on the seam's allowances."""
    note = (
        f"flat, {told(width, 'small')} wide, in a casing on the seam's allowances, cap or file both ends; seams "
        "are straight, so flat bones lie well"
    )
    notions = tuple(
        Notion(
            BONING,
            f"{piece.name} front seam",
            2,
            cut_length=seam.length - AT_WAIST - AT_HEM,
            note=note,
            kind="flat",
            size=width,
            piece=piece.name,
            edges=((piece.name, seam.name),),
            mark=SEAM_BONE,
        )
        for piece in tails
        for seam in [the_edge(piece, EdgeRole.FRONT)]
    )
    tips = Notion("bone tip", "tail seams", 4 * len(tails), None, "one at each end of every bone")
    return Draft(notions=(*notions, tips) if tails else ())
