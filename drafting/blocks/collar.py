"""Collar: a stand, a stand with wings, a shirt collar of stand and fall, or a flat one; it walks the neckline.

Half a collar on the fold, seen from outside as the wearer's left; the neck edge is as long as the
neckline it is sewn to, the button stand with it (a flat collar ends at the centre front). Every part is
cut twice, upper and under.

                 outer                              top
          .------------------.               .----------------.
    front/                   | centre  front/                 | centre
        /________   _________|  back       (________   _______|  back
                 stand                              neck

         wing: the stand's top ends at the roll line; `wing_top` and `wing_front` meet at the tip
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import Edge, Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.fabric import Fabric
from drafting.geometry import Path
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.sources import AS_ASKED, BY_EYE, practice
from drafting.shaping.details.buttons import Button, button_notion
from drafting.shaping.details.collar_lines import (
    HalfFall,
    Stand,
    StandEdges,
    collar_said,
    deeper_said,
    fall_lines,
    stand_for,
    stand_lines,
)
from drafting.shaping.details.collar_seams import (
    collar_ring,
    neck_seam,
    stand_marks,
    to_centre,
    top_seam,
    twin_seam,
)
from drafting.shaping.details.collar_shapes import (
    SPRINGS,
    flat_lines,
    flat_said,
    low_said,
    rounded_end,
    wing_lines,
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
        "a shirt collar of stand and fall, a stand alone or with wings, or a collar that lies flat",
        words=("turn-down", "stand", "wing", "flat"),
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
        source=practice("⟨30⟩ to ⟨40⟩"),
        group="collar",
    )
    collar_ease: float = choice(
        12.0,
        "mm",
        "top of the buttoned stand minus neck girth",
        low=0,
        high=80,
        source=practice("a finger: ⟨10⟩ to ⟨15⟩"),
        group="collar",
    )
    collar_rise: float = choice(
        AS_THE_NECK,
        "mm",
        "how far the stand rises to the front, which leans it to the neck; below 0: as far as `collar_ease` asks",
        low=-10,
        high=80,
        source=(practice("⟨10⟩ to ⟨20⟩ where nobody measured the neck"), AS_ASKED),
        group="collar",
    )
    collar_fall: float = choice(
        44.0,
        "mm",
        f"depth of a fall or a flat collar at the centre back; a fall at least the stand and {told(5)}",
        low=10,
        high=200,
        scales=True,
        source=practice("⟨8⟩ to ⟨12⟩ more than the stand"),
        group="collar",
    )
    collar_point: float = choice(
        68.0,
        "mm",
        "length of the front edge, from stand or neck to point",
        low=10,
        high=250,
        scales=True,
        source=practice("⟨65⟩ to ⟨80⟩"),
        group="collar",
    )
    collar_spread: float = choice(
        22.0, "deg", "how far the points lean forward", low=-10, high=60, source=BY_EYE, group="collar"
    )
    collar_ends: str = choice(
        "pointed",
        "word",
        "how fall and flat collar end in front",
        words=("pointed", "rounded"),
        group="collar",
        source=practice(),
    )
    collar_overlap: float = choice(
        15.0,
        "mm",
        "how far the shoulder tips are lapped as a flat collar is laid out; more makes it roll higher",
        low=0,
        high=60,
        scales=True,
        source=practice("⟨10⟩ to ⟨25⟩"),
        group="collar",
    )
    wing_width: float = choice(
        45.0,
        "mm",
        "how much of a stand's top is folded over for a wing; at most half of it",
        low=10,
        high=100,
        scales=True,
        source=practice("⟨40⟩ to ⟨55⟩"),
        group="collar",
    )
    wing_length: float = choice(
        35.0,
        "mm",
        "front edge of a wing, from roll line to tip",
        low=8,
        high=90,
        scales=True,
        source=practice("⟨30⟩ to ⟨45⟩"),
        group="collar",
    )
    wing_spread: float = choice(
        35.0,
        "deg",
        "how far a folded wing points outwards from the centre front",
        low=5,
        high=70,
        source=BY_EYE,
        group="collar",
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
    if choices.collar == "flat":
        return _flat(body, choices, front_neck, back_neck, extension)
    front, back = front_neck.path.length, back_neck.path.length
    edges = StandEdges(front + back, back, extension, choices.collar_stand)
    top = (body["neck_girth"] + choices.collar_ease) / 2
    lines = stand_for(edges, top) if choices.collar_rise < 0 else stand_lines(edges, choices.collar_rise)
    stand = _stand(lines, choices, button, extension)
    drawn = Draft(
        (stand,),
        (neck_seam(stand.name, front_neck, back_neck, extension), twin_seam("stand front", stand, "front")),
        findings=(collar_said(lines, body["neck_girth"], choices.collar_ease),),
        notions=(button_notion(stand.name, 1, button),) if extension else (),
        facts={
            "collar_top": 2 * lines.top.length,
            "neckline": 2 * (front + back - extension),
            "collar_neck": 2 * lines.neck.length,
        },
    )
    if choices.collar == "turn-down":
        fall, said = _fall(lines, choices, back)
        return _stiffened(drawn + Draft((fall,), (top_seam(lines, back), *_own(fall)), findings=said))
    wings = ("wing_top", "wing_front") if choices.collar == "wing" else ()
    low = low_said(stand["wing_front"].path.end - lines.neck.at(extension), button) if wings and extension else ()
    closed = [twin_seam(f"stand {edge.replace('_', ' ')}", stand, edge) for edge in ("top", *wings)]
    return _stiffened(drawn + Draft(seams=tuple(closed), findings=low))


def _stiffened(drawn: Draft) -> Draft:
    """Return the collar with an interfacing for each of its pieces."""
    stiff = tuple(interfacing(piece) for piece in drawn.pieces)
    bought = tuple(interfacing_notion(piece) for piece in stiff)
    return replace(drawn, pieces=(*drawn.pieces, *stiff), notions=(*bought, *drawn.notions))


def _own(fall: Piece) -> tuple[Seam, Seam]:
    return twin_seam("collar edge", fall, "outer"), twin_seam("collar front", fall, "front")


def _ends(outer: Path, front: Path, choices: Choices) -> tuple[Path, Path]:
    return rounded_end(outer, front) if choices.collar_ends == "rounded" else (outer, front)


def _flat(body: Body, choices: Choices, front: Chain, back: Chain, extension: float) -> Draft:
    """Return the collar that lies flat; it ends at the centre front."""
    to_front = front.path.split(front.path.length - extension)[0] if extension else front.path
    deep, point = choices.collar_fall, choices.collar_point
    shoulder, lap = body["shoulder_length"], choices.collar_overlap
    lines = flat_lines(back.path, to_front, shoulder, lap, deep, point, choices.collar_spread)
    outer, fore = _ends(lines.outer, lines.front, choices)
    edges = collar_ring(Edge("neck", lines.neck, role=EdgeRole.NECK), Edge("outer", outer), fore)
    piece = Piece("collar", edges, copies=2, title="Flat collar", role=PieceRole.COLLAR)
    neckline = 2 * (to_front.length + back.path.length)
    return _stiffened(
        Draft(
            (piece,),
            (to_centre(piece.name, front, back, extension), *_own(piece)),
            findings=(flat_said(lines, lap, deep),),
            facts={"neckline": neckline, "collar_neck": 2 * lines.neck.length},
        )
    )


def _stand(lines: Stand, choices: Choices, button: Button, extension: float) -> Piece:
    height, marks, edges = choices.collar_stand, list[Placement](), tuple[Edge, ...]()
    if choices.collar == "wing":
        wing = wing_lines(lines, extension, choices.wing_width, choices.wing_length, choices.wing_spread)
        height *= SPRINGS
        marks.append(Placement("roll_line", wing.roll, "roll line"))
        top, front = wing.top, wing.front
        edges = (Edge("wing_top", wing.upper), Edge("wing_front", wing.fore))
    else:
        top, front = lines.top, lines.front
    if extension:
        marks += stand_marks(lines, extension, height / choices.collar_stand, button, choices.closing)
    return Piece(
        "collar-stand",
        collar_ring(Edge("neck", lines.neck, role=EdgeRole.NECK), Edge("top", top), front, *edges),
        copies=2,
        title="Collar stand",
        placements=tuple(marks),
        role=PieceRole.COLLAR_STAND,
    )


def _fall(lines: Stand, choices: Choices, back: float) -> tuple[Piece, tuple[Finding, ...]]:
    """Return the fall; it is made deep enough to hide the stand's seam."""
    least = choices.collar_stand + LEAST_COVER
    depth = max(choices.collar_fall, least)
    drop = FALL_DROPS * lines.rise
    drawn: HalfFall = fall_lines(lines.top.length, back, depth, drop, choices.collar_point, choices.collar_spread)
    outer, front = _ends(drawn.outer, drawn.front, choices)
    piece = Piece(
        "collar",
        collar_ring(Edge("stand", drawn.stand), Edge("outer", outer), front),
        copies=2,
        title="Collar fall",
        role=PieceRole.COLLAR,
    )
    if depth == choices.collar_fall:
        return piece, ()
    return piece, (deeper_said(depth, choices.collar_fall, choices.collar_stand),)
