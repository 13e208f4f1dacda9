"""Knee band: breeches gathered onto a band below the knee, which buttons or buckles over the side's opening.

The band is as long as the leg there and its ease; its front end laps over the back one. A buckled band has no
buttonhole: the front end is drawn through a buckle that a strap holds on the back's.

       back  underlap      leg, gathered            front
         .-----.--------------------------.
     end |  o                       hole= | far
         |- - - - - - fold - - - - - - - -|
         '--------------------------------'
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.by_role import edge_as, pieces_as, the_edge
from drafting.draft.draft import Draft, EdgeRef, Notion, Seam, SeamNotch
from drafting.draft.frame import BodyFrame, Limb
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, NotchKind, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale
from drafting.ground.sources import practice
from drafting.shaping.details.band import Band, band_edges, band_grain, band_seams, fold_line
from drafting.shaping.details.buttons import Button, button_mark, button_notion, hole_mark
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion, turned_under
from drafting.shaping.flare.fullness import bulk_said, gathered
from drafting.shaping.limbs import leg_girth_at
from drafting.shaping.shared_choices import BUTTON_SHAPE, BUTTON_THICKNESS
from drafting.shaping.trouser.cut_off import cut_at_knee

BENDS = 1.1
"""A bent knee is so much more round than a straight one (from memory: 5 to 15 %)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the band below the knee, in mm."""

    knee_finish: str = choice(
        "elastic",
        "word",
        "what the leg is gathered on below the knee: elastic, a band that buttons, or one that buckles",
        words=("elastic", "band", "buckle"),
        group="fullness",
        source=practice(),
    )
    knee_band_below: float = choice(
        55.0,
        "mm",
        "middle of the kneecap to the band's seam; the leg is cut off there",
        low=20,
        high=200,
        scales=True,
        group="fullness",
        source=practice("in the hollow under the kneecap, above the calf"),
    )
    knee_band_ease: float = choice(
        16.0,
        "mm",
        "the closed band minus the leg where it lies",
        low=0,
        high=120,
        scales=True,
        group="fullness",
        source=practice("⟨10⟩ to ⟨20⟩: it holds below the knee and does not bind"),
    )
    knee_band_depth: float = choice(
        30.0,
        "mm",
        "finished depth of the band below the knee",
        low=10,
        high=100,
        scales=True,
        group="fullness",
        source=practice("⟨25⟩ to ⟨40⟩"),
    )
    knee_band_underlap: float = choice(
        25.0,
        "mm",
        "how far the ends of the band lie over each other",
        low=8,
        high=120,
        scales=True,
        group="fullness",
        source=practice("⟨20⟩ to ⟨30⟩; ⟨60⟩ to ⟨80⟩ for a buckle's tongue end"),
    )
    knee_button: float = choice(
        14.0,
        "mm",
        "diameter of the button on the band below the knee",
        low=6,
        high=40,
        scales=True,
        of_hand=True,
        group="fullness",
        source=practice("⟨12⟩ to ⟨16⟩"),
    )
    button_thickness: float = BUTTON_THICKNESS
    button_shape: str = BUTTON_SHAPE


def knee_band(draft: Draft, body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the draft with its legs gathered onto bands that open at the side.

    Raises `DraftError` where there is no leg, or its side does not open above the hem.
    """
    if choices.knee_finish == "elastic":
        return draft
    front, back = _halves(draft)
    draft = cut_at_knee(draft, (front, back), choices.knee_band_below, body)
    front, back = (draft[leg.name] for leg in (front, back))
    refs = (back.name, the_edge(back, EdgeRole.HEM).name), (front.name, the_edge(front, EdgeRole.HEM).name)
    crotch = the_edge(front, EdgeRole.INSEAM).path
    limb = leg_girth_at(body, abs(crotch.start.imag - crotch.end.imag))
    drawn, wanted = sum(draft.edge(ref).length for ref in refs), limb + choices.knee_band_ease
    sewn = min(wanted, drawn)
    thickness = fabric.thickness if fabric else None
    said = (*_said(limb, sewn, drawn, body), *bulk_said("trouser hem", drawn / sewn, thickness))
    made = _made(sewn, drawn, refs, body, fabric, choices)
    return replace(gathered(draft, *refs, sewn=sewn), findings=(*draft.findings, *said)) + made


def _halves(draft: Draft) -> tuple[Piece, Piece]:
    legs = {p.role: p for p in pieces_as(draft, PieceRole.FRONT, PieceRole.BACK) if edge_as(p, EdgeRole.CROTCH)}
    if len(legs) < 2 or not all(edge_as(leg, EdgeRole.SLIT) for leg in legs.values()):
        raise DraftError(
            "the leg does not open above its hem, so no band below the knee could be closed",
            turn="choose a leg_slit, or knee_finish = elastic",
        )
    return legs[PieceRole.FRONT], legs[PieceRole.BACK]


def _made(
    sewn: float, drawn: float, refs: tuple[EdgeRef, ...], body: Body, fabric: Fabric | None, choices: Choices
) -> Draft:
    """Return the bands, a pair, with interfacing, seams and what closes them."""
    button = Button(choices.knee_button, choices.button_thickness, choices.button_shape)
    turned = turned_under(body_scale(body))
    band = Band(sewn, choices.knee_band_underlap, choices.knee_band_depth, folded=True, turned=turned)
    buttons = choices.knee_finish == "band"
    at = band.underlap / 2
    marks = (
        button_mark("button", band.corner(band.sewn + at, 0.5), button.diameter),
        hole_mark("buttonhole", band.corner(at, 0.5), -1 + 0j, button.hole),
    )
    piece = Piece(
        "knee-band",
        band_edges(band, "leg"),
        grain=band_grain(fabric),
        pair=True,
        title="Knee band",
        placements=(*fold_line(band), *(marks if buttons else ())),
        role=PieceRole.KNEE_BAND,
        frame=BodyFrame(limb=Limb.LEG),
    )
    outside = replace(piece, edges=band_edges(replace(band, folded=False), "leg"))
    piece, outside = piece.mirrored(), outside.mirrored()  # as it goes round the left leg, the front end on top
    stiff = interfacing(outside, bare=("lower",))
    shares = {"quarter": 0.25, "half": 0.5, "three quarters": 0.75}
    notches = tuple(SeamNotch(n, s * sewn, s * drawn, kind=NotchKind.QUARTER) for n, s in shares.items())
    on_leg = Seam(
        "knee band",
        ((piece.name, "leg"),),
        tuple(reversed(refs)),
        start=None,
        end=None,
        notches=notches,
        kind=SeamKind.ATTACHED,
    )
    closes = button_notion(piece.name, 2, button) if buttons else _buckle(piece.name, choices)
    return Draft(
        (piece, stiff),
        (on_leg, *band_seams(piece, "leg")),
        facts={"knee_band": sewn},
        notions=(closes, interfacing_notion(stiff)),
    )


def _buckle(piece: str, choices: Choices) -> Notion:
    wide = told(choices.knee_band_depth, "small")
    note = f"for a strap {wide} wide: sewn to the end that lies beneath, the other end is drawn through it"
    return Notion("buckle", piece, 2, None, note, kind="knee buckle", size=choices.knee_band_depth, piece=piece)


def _said(limb: float, sewn: float, drawn: float, body: Body) -> list[Finding]:
    """Tell how the band lies on the leg, and warn where it would not let the knee bend or the calf be passed."""
    text = (
        f"The band below the knee is {told(sewn)} round on a leg of {told(limb)}; the leg is gathered "
        f"{drawn / sewn:.1f} to one. It opens at the side."
    )
    found = [Finding("knee band", "note", "knee-band", sewn, limb, text)]
    bent = BENDS * body["knee_girth"]
    if drawn < bent:
        text = (
            f"The leg is {told(drawn)} round above its band and a bent knee about {told(bent)}: "
            "ask for more knee_ease or hem_width, so that the wearer can kneel."
        )
        found.append(Finding("knee band", "warning", "front", drawn, bent, text))
    return found
