"""Waistcoat inside: interfacing and lining of fronts and back, and the strap that draws the back in.

The lining runs from the facing's inner edge round to the centre back, where it has a pleat for ease; it is felled
in at armholes, neck and hem. Two straps are sewn onto the back at the waist, over its darts, and meet in a buckle.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.body.children import must_let_go
from drafting.draft.by_role import edge_as, piece_as, the_edge
from drafting.draft.draft import Draft, Notion, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import Path, line
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import allowance_scale, body_scale
from drafting.ground.sources import BY_EYE, practice
from drafting.shaping.coat.inside import loose_edges, second_layer
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion
from drafting.shaping.waistcoat.backs import strap_start
from drafting.shaping.waistcoat.inside import back_lining, front_lining

SEAM, LEAST_SEAM, WIDER = 10.0, 6.0, 1.5
"""mm, a child's too: allowance the lining is sewn at, its least, and what it is cut wider (common practice)."""

BOX = 28.0
"""mm at adult scale: so much of a strap's end is stitched down in a box (ours, by eye)."""

TURNED = 10.0
"""mm: what is turned in at the end of a strap (common practice)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the waistcoat's inside, in mm."""

    stiff_front: str = choice(
        "whole front",
        "word",
        "interfacing for the front: all of it, its facing alone, or none",
        words=("whole front", "facing", "none"),
        group="stiffening",
        source=practice(),
    )
    lining: str = choice(
        "whole", "word", "what is lined", words=("whole", "none"), group="lining", source=practice()
    )
    ease_pleat: float = choice(
        20.0,
        "mm",
        "depth of the ease pleat at the centre back, from the neck running out at the waist",
        low=0,
        high=60,
        scales=True,
        group="lining",
        source=practice("⟨15⟩ to ⟨25⟩"),
    )
    back_strap: bool = choice(
        True,
        "yes/no",
        "a strap with a buckle that draws the back in at the waist",
        group="style",
        source=practice(),
    )
    strap_width: float = choice(
        25.0,
        "mm",
        "width of the strap, and of its buckle",
        low=12,
        high=60,
        group="style",
        of_hand=True,
        source=practice("⟨20⟩ to ⟨30⟩"),
    )
    strap_spare: float = choice(
        70.0,
        "mm",
        "how far each strap reaches past the centre back",
        low=20,
        high=150,
        scales=True,
        group="style",
        source=BY_EYE,
    )


def waistcoat_inside(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the waistcoat with interfacing, lining and straps.

    Raises `DraftError` where the draft is no waistcoat.
    """
    front, back = piece_as(draft, PieceRole.FRONT), piece_as(draft, PieceRole.BACK)
    facing = piece_as(draft, PieceRole.FACING)
    if front is None or back is None or facing is None or edge_as(front, EdgeRole.FRONT_EDGE) is None:
        raise DraftError(
            "a waistcoat's lining and strap belong to a waistcoat, and this draft has no faced front with a point",
            turn="take the block waistcoat, or put waistcoat-body before it",
        )
    scale = body_scale(body)
    stiff = tuple(_stiffened(front, facing, choices))
    linings = tuple(_linings(front, back, facing, choices, scale))
    found = draft + Draft(
        (*stiff, *linings),
        findings=tuple(_said(choices, scale)),
        notions=tuple(interfacing_notion(piece) for piece in stiff),
    )
    return _strapped(found, back, choices, body) if choices.back_strap else found


def _stiffened(front: Piece, facing: Piece, choices: Choices) -> Iterator[Piece]:
    if choices.stiff_front == "whole front":
        legs = tuple(edge.name for edge in front.edges if edge.kind is EdgeKind.DART)
        yield interfacing(front, bare=legs)
    elif choices.stiff_front == "facing":
        yield interfacing(facing, bare=("inner",))


def _seam(scale: float) -> float:
    return max(LEAST_SEAM, SEAM * allowance_scale(scale))


def _wider(scale: float) -> float:
    """Return how much more each seam of a lining is cut with, so that it is wider: on a doll as much less."""
    return WIDER * min(1.0, scale)


def _linings(front: Piece, back: Piece, facing: Piece, choices: Choices, scale: float) -> Iterator[Piece]:
    """Yield the linings, darts as in the shell; the hem has no allowance, so that turned in it ends above."""
    if choices.lining == "none":
        return
    for piece, outline in ((back, back_lining(back, choices.ease_pleat)), (front, front_lining(front, facing))):
        loose = loose_edges(outline, _seam(scale) + _wider(scale))
        edges = tuple(
            replace(free, allowance=0.0) if own.kind is EdgeKind.HEM else free
            for own, free in zip(outline, loose, strict=True)
        )
        yield replace(second_layer(piece, "lining", edges, "lining"), darts=piece.darts, cloth="", frame=None)


def _said(choices: Choices, scale: float) -> Iterator[Finding]:
    if choices.lining == "none":
        return
    wider = _wider(scale)
    cut, sewn = told(_seam(scale) + wider, "fine"), told(_seam(scale))
    sentence = (
        f"The lining is cut with {cut} of allowance and sewn at {sewn}, so that it is {told(2 * wider)} wider at "
        "every seam; its hem has none and, turned in, ends above the waistcoat's own."
    )
    yield Finding("lining", "note", "lining", choices.ease_pleat, None, sentence)


# ------------------------------------------------------------------------------------------------ straps


def _strapped(draft: Draft, back: Piece, choices: Choices, body: Body) -> Draft:
    """Return the draft with a strap for each hand, its end marked on the back."""
    start = strap_start(back)
    middle = the_edge(back, EdgeRole.CENTRE_SEAM).path
    reach = abs(middle.at(middle.length / 2).real - start.real)
    strap = _strap(reach + choices.strap_spare, choices.strap_width, back.cloth)
    box = _box(start, min(BOX * body_scale(body), reach / 2), choices.strap_width)
    marked = replace(back, placements=(*back.placements, Placement(strap.name, box, "strap", piece=strap.name)))
    prongs = "" if must_let_go(body) else " or one with prongs"  # which scratch a child
    kind = f"slide buckle{prongs}, for a back strap"
    note = f"on one strap; the other, {told(choices.strap_spare)} past the centre, runs through it"
    buckle = Notion(
        what="buckle", where=strap.name, count=1, note=note, kind=kind, size=choices.strap_width, piece=strap.name
    )
    return draft.with_pieces([marked]) + Draft((strap,), tuple(_strap_seams(strap)), notions=(buckle,))


def _strap(length: float, width: float, cloth: str) -> Piece:
    a, b, c, d = 0j, complex(length, 0), complex(length, width), complex(0, width)
    edges = (
        Edge("lower", line(a, b)),
        Edge("tip", line(b, c)),
        Edge("upper", line(c, d)),
        Edge("end", line(d, a), EdgeKind.FREE, allowance=TURNED),
    )
    return Piece(
        "strap",
        edges,
        grain=0.0,
        stretch=90.0,
        pair=True,
        copies=2,
        title="Back strap",
        role=PieceRole.STRAP,
        cloth=cloth,
    )


def _strap_seams(strap: Piece) -> Iterator[Seam]:
    """Yield the seams of a strap's two layers round its free edges."""
    for name in ("lower", "tip", "upper"):
        ref = ((strap.name, name),)
        yield Seam(f"strap {name}", ref, ref, start=None, end=None, kind=SeamKind.MADE_UP)


def _box(start: complex, long: float, width: float) -> Path:
    """Return the outline of the end of a strap that is stitched down on the back, level, its middle at `start`."""
    a = start - complex(long / 2, width / 2)
    corners = (a, a + long, a + complex(long, width), a + 1j * width)
    return line(*corners, a)
