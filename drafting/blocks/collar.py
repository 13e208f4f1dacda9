"""Collar: a stand, or a shirt collar of stand and fall, whose neck edge walks the whole neckline.

Half a collar on the fold, seen from outside as the wearer's left; the neck edge is as long as the
neckline it is sewn to, the button stand with it. Every part is cut twice, upper and under.

                 outer                              top
          .------------------.               .----------------.
    front/                   | centre  front/                 | centre
        /________   _________|  back       (________   _______|  back
                 stand                              neck
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Seam, SeamNotch
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import Path, line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.sources import AS_ASKED, BY_EYE, practice
from drafting.shaping.details.buttons import Button, button_mark, button_notion, hole_mark
from drafting.shaping.details.collar_lines import (
    HalfFall,
    Stand,
    StandEdges,
    collar_said,
    fall_lines,
    stand_for,
    stand_lines,
)
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion
from drafting.shaping.shared_choices import BUTTON_DIAMETER, BUTTON_SHAPE, BUTTON_STAND, BUTTON_THICKNESS, CLOSING

NEEDS = ("front_neck", "back_neck")

AS_THE_NECK = -1.0
"""A rise that was not typed: the neck's girth decides."""

LEAST_COVER = 5.0
"""mm: a fall this much deeper than its stand hides the seam behind (common practice: 5 to 15)."""

FALL_DROPS = 1.2
"""Drop of the fall's lower edge over the rise of the stand (ours, by eye)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the collar, in mm and degrees."""

    collar: str = choice(
        "turn-down",
        "word",
        "a stand alone, or a shirt collar of stand and fall",
        words=("turn-down", "stand"),
        group="collar",
        source=practice(),
    )
    collar_stand: float = choice(
        32.0,
        "mm",
        "height of the stand at the centre back",
        low=8,
        high=120,
        scales=True,
        source=practice("30 to 40"),
        group="collar",
    )
    collar_ease: float = choice(
        12.0,
        "mm",
        "top of the buttoned stand minus neck girth",
        low=0,
        high=80,
        source=practice("a finger: 10 to 15"),
        group="collar",
    )
    collar_rise: float = choice(
        AS_THE_NECK,
        "mm",
        "how far the stand rises to the front, which leans it to the neck; -1: as far as `collar_ease` asks",
        low=-1,
        high=80,
        source=(practice("10 to 20 where nobody measured the neck"), AS_ASKED),
        group="collar",
    )
    collar_fall: float = choice(
        44.0,
        "mm",
        f"depth of the fall at the centre back; at least the stand and {told(5)}",
        low=10,
        high=200,
        scales=True,
        source=practice("8 to 12 mm more than the stand"),
        group="collar",
    )
    collar_point: float = choice(
        68.0,
        "mm",
        "length of the front edge, from stand to point",
        low=10,
        high=250,
        scales=True,
        source=practice("65 to 80"),
        group="collar",
    )
    collar_spread: float = choice(
        22.0, "deg", "how far the points lean forward", low=-10, high=60, source=BY_EYE, group="collar"
    )
    closing: str = CLOSING
    button_diameter: float = BUTTON_DIAMETER
    button_thickness: float = BUTTON_THICKNESS
    button_shape: str = BUTTON_SHAPE
    button_stand: float = BUTTON_STAND


def collar(body: Body, fabric: Fabric | None, choices: Choices, *, front_neck: Chain, back_neck: Chain) -> Draft:
    """Return the collar (pieces `collar-stand`, `collar`, and their interfacings).

    Raises `DraftError` where the neckline is too short for the rise asked for.
    """
    button = Button(choices.button_diameter, choices.button_thickness, choices.button_shape)
    stands = EdgeRole.STAND_NECK in front_neck.edges  # the neckline runs on over a button stand
    extension = (choices.button_stand or button.stand) if stands else 0.0
    front, back = front_neck.path.length, back_neck.path.length
    edges = StandEdges(front + back, back, extension, choices.collar_stand)
    top = (body["neck_girth"] + choices.collar_ease) / 2
    lines = stand_for(edges, top) if choices.collar_rise < 0 else stand_lines(edges, choices.collar_rise)
    stand = _stand(lines, choices, button, extension)
    pieces, seams = ([stand], [_neck_seam(front_neck, back_neck, extension), _twin("stand front", stand, "front")])
    if choices.collar == "turn-down":
        fall, said = _fall(lines, choices, back)
        pieces.append(fall)
        seams += [
            _top_seam(lines, back),
            _twin("collar edge", fall, "outer"),
            _twin("collar front", fall, "front"),
        ]
    else:
        said = ()
        seams.append(_twin("stand top", stand, "top"))
    stiff = [interfacing(piece) for piece in pieces]
    notions = [interfacing_notion(piece) for piece in stiff]
    if extension:
        notions.append(button_notion(stand.name, 1, button))
    return Draft(
        (*pieces, *stiff),
        tuple(seams),
        findings=(collar_said(lines, body["neck_girth"], choices.collar_ease), *said),
        notions=tuple(notions),
        facts={
            "collar_top": 2 * lines.top.length,
            "neckline": 2 * (front + back - extension),
            "collar_neck": 2 * lines.neck.length,
        },
    )


def _stand(lines: Stand, choices: Choices, button: Button, extension: float) -> Piece:
    marks: tuple[Placement, ...] = ()
    if extension:
        centre = lines.neck.at(extension)
        across = lines.neck.tangent(extension)
        at = centre + 1j * across * 0.45 * choices.collar_stand
        over, under = choices.closing.split()[0], choices.closing.split()[-1]
        marks = (
            Placement("centre_front", line(centre, lines.top.end), "centre"),
            button_mark(f"button_{under}", at, button.diameter, under),
            hole_mark(f"buttonhole_{over}", at, -across, button.hole, over),
        )
    return Piece(
        "collar-stand",
        _ring(Edge("neck", lines.neck, role=EdgeRole.NECK), Edge("top", lines.top), lines.front),
        copies=2,
        title="Collar stand",
        placements=marks,
        role=PieceRole.COLLAR_STAND,
    )


def _ring(low: Edge, high: Edge, front: Path) -> tuple[Edge, ...]:
    behind = line(low.path.end, high.path.start)
    return (
        low,
        Edge("centre", behind, EdgeKind.FOLD, role=EdgeRole.CENTRE),
        high,
        Edge("front", front, role=EdgeRole.FRONT),
    )


def _fall(lines: Stand, choices: Choices, back: float) -> tuple[Piece, tuple[Finding, ...]]:
    """Return the fall; it is made deep enough to hide the stand's seam."""
    least = choices.collar_stand + LEAST_COVER
    depth = max(choices.collar_fall, least)
    drop = FALL_DROPS * lines.rise
    drawn: HalfFall = fall_lines(lines.top.length, back, depth, drop, choices.collar_point, choices.collar_spread)
    piece = Piece(
        "collar",
        _ring(Edge("stand", drawn.stand), Edge("outer", drawn.outer), drawn.front),
        copies=2,
        title="Collar fall",
        role=PieceRole.COLLAR,
    )
    if depth == choices.collar_fall:
        return piece, ()
    said = Finding(
        "collar fall",
        "note",
        "collar",
        depth,
        choices.collar_fall,
        f"The fall is drafted {told(depth)} deep at the centre back instead of "
        f"{told(choices.collar_fall)}, so that it covers the seam of the {told(choices.collar_stand)} stand.",
    )
    return piece, (said,)


# ------------------------------------------------------------------------------------------- seams


def _neck_seam(front: Chain, back: Chain, extension: float) -> Seam:
    """The neck edge, front to centre back, against the neckline; notched at centre and shoulder."""
    marks = [("shoulder", front.path.length)]
    if extension:
        marks.insert(0, ("centre front", extension))
    return Seam(
        "collar",
        (("collar-stand", "neck"),),
        (*reversed(front.refs), *reversed(back.refs)),
        start=None,
        end=None,
        notches=tuple(SeamNotch(name, at, at) for name, at in marks),
        kind=SeamKind.ATTACHED,
    )


def _top_seam(lines: Stand, back: float) -> Seam:
    """The fall's lower edge on the stand's top, up to the centre front; notched near the shoulder."""
    at = lines.top.length - back
    return Seam(
        "collar fall",
        (("collar", "stand"),),
        (("collar-stand", "top"),),
        start=None,
        end=None,
        notches=(SeamNotch("shoulder", at, at),),
        kind=SeamKind.MADE_UP,
    )


def _twin(name: str, piece: Piece, edge: str) -> Seam:
    """An edge sewn to the same edge of the piece's twin."""
    ref = (piece.name, edge)
    return Seam(name, (ref,), (ref,), start=None, end=None, kind=SeamKind.MADE_UP)
