"""Fly: a zip in the front of a trouser, with a facing on the side on top and a shield behind it.

The facing is cut once, for the side that lies on top, and meets that front's fly edge; the shield is
cut once on the fold for the other side, and its waist is sewn to the waistband's underlap.
        shield     front (under)          front (on top)    facing
       .------.   .---------              ---------.   .------.
       |      |   |                                |   |      |
       | fold |fly|fly                          fly|   |fly   | inner
       |      |   |                      ..stitch..|   |     /
       |      |   |                                |   '---'
       '------'   |  crotch                crotch  |
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as, edges_as, piece_as, the_edge
from drafting.draft.draft import Draft, Notion, Seam
from drafting.draft.one_value import the_larger_within
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import allowance_scale, body_scale
from drafting.ground.sources import practice
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion, turned_under
from drafting.shaping.shared_choices import CLOSING, FALL_FRONT
from drafting.shaping.trouser.fly import (
    LEAST_FLY,
    FlyLines,
    centre_front,
    fly_facing_edges,
    fly_room,
    inner_line,
    opened_front,
    shield_edges,
)
from drafting.shaping.trouser.notches import crotch_seam

STITCHED_IN = 6.0
"""mm at adult scale: topstitching lies so far inside the facing's edge (common practice: 5 to 7)."""

SHIELD_WIDTH = 40.0
"""mm at adult scale: finished width of the shield where no waistband gives it (common practice)."""

SHIELD_LONGER = 15.0
"""mm at adult scale: the shield reaches so far below the fly (common practice: 10 to 20)."""

ZIP_STOP = 10.0
"""mm at adult scale: the zip's lower stop stands so far above the end of the fly (common practice)."""

SHARED = {"fly_length": the_larger_within("fly", "fly_room")}
"""The one zip closes both fronts: both take the longer fly, which a hip needs, as far as either curve has room."""

HOOK = 12.0
"""mm on whoever is no doll: width of a trouser hook, drawn as a short stroke (common practice: 10 to 15)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the fly, in mm."""

    fly: bool = choice(
        True,
        "yes/no",
        "a zip fly with facing and shield; no leaves the opening to be finished otherwise",
        group="fly",
        source=practice(),
    )
    closing: str = CLOSING
    fall_front: bool = FALL_FRONT
    fly_length: float = choice(
        180.0,
        "mm",
        "from the waist seam to the end of the fly; no shorter than the hip needs to pass, and it ends "
        "at the latest where the crotch curve turns",
        low=40,
        high=400,
        step=5,
        scales=True,
        source=practice("⟨150⟩ to ⟨200⟩"),
        group="fly",
    )
    fly_facing: float = choice(
        40.0,
        "mm",
        "width of the fly facing",
        low=20,
        high=80,
        scales=True,
        source=practice("⟨35⟩ to ⟨40⟩"),
        group="fly",
    )
    fly_allowance: float = choice(
        19.0,
        "mm",
        "allowance along the fly of front, facing and shield, so that the zip's tape lies on it",
        low=6,
        high=40,
        of_hand=True,
        source=practice("⟨19⟩"),
        group="fly",
    )
    band_fastening: str = choice(
        "button",
        "word",
        "what closes the waistband over the fly",
        words=("button", "hook and bar"),
        group="fly",
        source=practice(),
    )

    @property
    def over(self) -> str:
        return self.closing.split()[0]

    @property
    def under(self) -> str:
        return self.closing.split()[-1]


def fly(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with fly facing, shield, zip and topstitching on its piece `front`.

    A front without an edge `fly` (a casing that is pulled on) is left as it is, with a finding.
    """
    if not choices.fly or choices.fall_front:
        return draft
    front = piece_as(draft, PieceRole.FRONT)
    if front is None or not edge_as(front, EdgeRole.FLY):
        return replace(draft, findings=(*draft.findings, _closed()))
    scale = body_scale(body)
    length, room = _length_and_room(draft, front, choices, scale)
    front = opened_front(front, length, choices.fly_allowance)
    lines = _lines(front)
    stitched = inner_line(lines, choices.fly_facing - STITCHED_IN * scale)
    mark = Placement(f"fly_stitching_{choices.over}", stitched, "stitching", choices.over)
    front = replace(front, placements=(*front.placements, mark))
    draft = _fastened(_underlapped(_with_front(draft, front), scale), choices, scale)
    pieces = _facing(front, lines, choices, scale), _shield(draft, lines, choices, scale)
    facing, shield = (p.with_edges(replace(p["fly"], allowance=choices.fly_allowance)) for p in pieces)
    stiff = interfacing(facing, bare=("inner",))
    zip_length = lines.fly.length - ZIP_STOP * scale
    return draft + Draft(
        (facing, stiff, shield),
        tuple(_seams(draft, front, facing, shield)),
        findings=(_said(choices, lines, zip_length),),
        facts={"fly": lines.fly.length, "fly_room": room, "fly_facing": choices.fly_facing, "zip": zip_length},
        notions=(_zip(front.name, zip_length), interfacing_notion(stiff)),
    )


def _length_and_room(draft: Draft, front: Piece, choices: Choices, scale: float) -> tuple[float, float]:
    """Return how long the fly gets, as asked, within what the hip needs and the curve allows; and the latter."""
    waist, hip = (next(one for one in draft.girths if one.level == level) for level in ("waist", "hip"))
    needed = (hip.body - waist.body - waist.settled_ease) / 2
    room = fly_room(centre_front(front), LEAST_FLY * scale, needed)
    return min(max(choices.fly_length, needed), room), room


def _with_front(draft: Draft, front: Piece) -> Draft:
    """Return the draft with this front, its crotch seam notched anew."""
    crotch = ((front.name, the_edge(front, EdgeRole.CROTCH).name),)
    seams = tuple(crotch_seam(front) if seam.a == crotch else seam for seam in draft.seams)
    return replace(draft.with_pieces([front]), seams=seams)


def _lines(front: Piece) -> FlyLines:
    at = front.index(the_edge(front, EdgeRole.FLY).name)
    return FlyLines(front.edges[at].path, front.edges[at - 1].path)


def _facing(front: Piece, lines: FlyLines, choices: Choices, scale: float) -> Piece:
    """Return the facing for the side on top, right side up: turned over from behind the left front."""
    edges = fly_facing_edges(lines, choices.fly_facing, turned_under(scale))
    behind = Piece(
        "fly-facing",
        edges,
        grain=front.grain,
        stretch=front.stretch,
        hand=choices.over,
        title="Fly facing",
        role=PieceRole.FLY_FACING,
        lines=(front.name,),
    )
    return behind.mirrored() if choices.over == "left" else behind


def _shield(draft: Draft, lines: FlyLines, choices: Choices, scale: float) -> Piece:
    """Return the shield: half of it on the fold, the same on either hand once it is cut.

    It is turned until its fold stands upright, as cloth is folded along the warp.
    """
    band = piece_as(draft, PieceRole.WAISTBAND)
    width = _underlap(band).length if band else SHIELD_WIDTH * scale
    edges = shield_edges(lines, width, SHIELD_LONGER * scale, band is not None, turned_under(scale))
    drawn = Piece("fly-shield", edges, hand=choices.under, title="Fly shield", role=PieceRole.FLY_SHIELD)
    upright = -1j / drawn["fold"].path.leave
    return drawn.mapped(lambda p: p * upright)


def _underlap(band: Piece) -> Edge:
    """Return the edge of a band's underlap that lies beside its sewn edge."""
    return next(e for e in edges_as(band, EdgeRole.UNDERLAP) if not e.twin)


def _underlapped(draft: Draft, scale: float) -> Draft:
    """Return the draft with the band's underlap free for the shield, its inside turned under."""
    band = piece_as(draft, PieceRole.WAISTBAND)
    if band is None:
        return draft
    lap = (band.name, _underlap(band).name)
    inside = (e for e in edges_as(band, EdgeRole.UNDERLAP) if e.twin)
    band = band.with_edges(*(replace(e, kind=EdgeKind.FREE, allowance=turned_under(scale)) for e in inside))
    seams = tuple(s for s in draft.seams if lap not in (*s.a, *s.b))
    return replace(draft.with_pieces([band]), seams=seams)


def _fastened(draft: Draft, choices: Choices, scale: float) -> Draft:
    """Return the draft with hook and bar in the place of the band's button, where they are chosen."""
    band = piece_as(draft, PieceRole.WAISTBAND)
    if choices.band_fastening == "button" or band is None:
        return draft
    names = {"button": "bar", "buttonhole": "hook"}

    def swapped(mark: Placement) -> Placement:
        if mark.what not in names:
            return mark
        x0, y0, x1, y1 = mark.path.bounds
        middle, half = complex(x0 + x1, y0 + y1) / 2, HOOK * allowance_scale(scale) / 2
        stroke = line(middle - 1j * half, middle + 1j * half)
        return Placement(f"{names[mark.what]}_{mark.hand}", stroke, "hook", mark.hand)

    band = replace(band, placements=tuple(swapped(mark) for mark in band.placements))
    notions = tuple(n for n in draft.notions if (n.what, n.piece) != ("button", band.name))
    note = f"hook on the {choices.over} end, bar on the {choices.under}, through the inner layer alone"
    bought = Notion(
        "hook and bar",
        band.name,
        1,
        cut_length=None,
        note=note,
        kind="trouser hook",
        size=HOOK * allowance_scale(scale),
        piece=band.name,
    )
    return replace(draft.with_pieces([band]), notions=(*notions, bought))


def _seams(draft: Draft, front: Piece, facing: Piece, shield: Piece) -> Iterator[Seam]:
    """Yield the seams of the fly. Facing and shield meet the one fly edge, each on its own hand."""
    opening = ((front.name, the_edge(front, EdgeRole.FLY).name),)
    for name, piece in (("fly facing", facing), ("fly shield", shield)):
        mine = ((piece.name, "fly"),)
        yield Seam(name, mine, opening, start=None, end=None, kind=SeamKind.FLY)
    bottom = ((shield.name, "bottom"),)
    yield Seam("fly shield bottom", bottom, bottom, start=None, end=None, kind=SeamKind.FLY)
    if band := piece_as(draft, PieceRole.WAISTBAND):
        waist, underlap = ((shield.name, "waist"),), ((band.name, _underlap(band).name),)
        yield Seam("fly shield waistband", underlap, waist, start=None, end=None, kind=SeamKind.ATTACHED)


# -------------------------------------------------------------------------------------- what is said


def _zip(front: str, length: float) -> Notion:
    note = "closed at the end; a longer one is cut off at the waist, inside the band's seam"
    return Notion("zip", front, 1, length, note, "trouser zip", piece=front)


def _said(choices: Choices, lines: FlyLines, zip_length: float) -> Finding:
    return Finding(
        "fly",
        "note",
        "front",
        lines.fly.length,
        choices.fly_length,
        f"The fly closes {choices.closing} and is {told(lines.fly.length)} long, with a zip of "
        f"{told(zip_length)}: the facing goes on the wearer's {choices.over} front, the shield on the "
        f"{choices.under}. The facing's waist is caught in the waistband's seam; the band's end is cut off "
        f"at the centre on the {choices.over}.",
    )


def _closed() -> Finding:
    return Finding(
        "fly",
        "warning",
        "front",
        None,
        None,
        "The front is not open at the waist, so it gets no fly: choose waist_finish = waistband, or fly = no "
        "where elastic is to hold it.",
    )
