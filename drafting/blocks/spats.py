r"""Spats: over shoe and ankle, buttoned down the outer side, held by a strap under the foot.

Each has an inner side in one, and an outer side parted by the buttons into front and back. Half of what goes round
leg and shoe at each height is drawn across, as a shoe's upper is; the front runs out over the laces as a tongue.
The left one, its outer side seen from outside:

           top      top
        .-------. .-----.
        |       : :     |        : lap  (the front lies over the back)
   front|       : :     |back
        |       : :     |
       /        : :      \
     .'  front  : :  back |
    '-----------' '-------'
        hem          hem
Source: ours; ankle, calf and heel girths are the body's, how a spat is cut and closed is common practice.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.draft import Draft, Girth, Notion, Seam
from drafting.draft.frame import BodyFrame, BodyHeight, Limb
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.choices import choice
from drafting.ground.findings import Finding
from drafting.ground.lengths import counted, told
from drafting.ground.scale import body_scale
from drafting.ground.sources import practice
from drafting.shaping.details.buttons import Button, button_mark, button_notion, hole_mark
from drafting.shaping.details.small_pieces import interfacing, interfacing_notion
from drafting.shaping.details.spat_lines import (
    TURNED,
    SpatEases,
    SpatProfile,
    spat_buttons,
    spat_closing,
    spat_parts,
    spat_profile,
)
from drafting.shaping.limbs import leg_girth_at
from drafting.shaping.shared_choices import BUTTON_SHAPE, BUTTON_THICKNESS

SOLE, STRAP_ENDS = 0.18, 90.0
"""Of the heel's girth: what of it lies under the sole (from memory: 67 of 340 mm across a heel); mm at adult scale
that a strap has beyond it, to be sewn on and drawn through its buckle (common practice)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about spats, in mm."""

    spat_height: float = choice(
        190.0,
        "mm",
        "from the floor up to the top",
        low=60,
        high=450,
        step=5,
        scales=True,
        group="length",
        source=practice("⟨170⟩ to ⟨220⟩ over the ankle, ⟨300⟩ to ⟨380⟩ to the calf"),
    )
    spat_ease: float = choice(
        26.0,
        "mm",
        "garment minus leg, over stocking or trouser hem",
        low=0,
        high=120,
        scales=True,
        group="fit",
        source=practice("⟨20⟩ to ⟨40⟩ over a stocking, ⟨60⟩ to ⟨100⟩ over a narrow trouser"),
    )
    shoe_ease: float = choice(
        36.0,
        "mm",
        "garment minus foot over heel and instep: what the shoe adds",
        low=0,
        high=140,
        scales=True,
        group="fit",
        source=practice("⟨30⟩ to ⟨50⟩ for a light shoe; try them on over the shoe that is worn"),
    )
    spat_lap: float = choice(
        22.0,
        "mm",
        "how far the front lies over the back",
        low=12,
        high=60,
        scales=True,
        group="closing",
        source=practice("⟨20⟩ to ⟨25⟩"),
    )
    spat_spacing: float = choice(
        30.0,
        "mm",
        "from button to button, or a little less",
        low=15,
        high=80,
        scales=True,
        of_hand=True,
        group="closing",
        source=practice("⟨25⟩ to ⟨35⟩"),
    )
    spat_button: float = choice(
        11.0,
        "mm",
        "diameter of the buttons",
        low=6,
        high=30,
        scales=True,
        of_hand=True,
        group="closing",
        source=practice("⟨10⟩ to ⟨12⟩"),
    )
    button_thickness: float = BUTTON_THICKNESS
    button_shape: str = BUTTON_SHAPE
    strap_width: float = choice(
        20.0,
        "mm",
        "width of the strap under the foot",
        low=10,
        high=50,
        scales=True,
        group="style",
        source=practice("⟨15⟩ to ⟨25⟩"),
    )


def spats(body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return a pair of spats; raises `DraftError` where they end below the ankle, or the foot is no foot."""
    scale = body_scale(body)
    eases = SpatEases(
        height=choices.spat_height,
        leg=choices.spat_ease,
        shoe=choices.shoe_ease,
        lap=choices.spat_lap,
        scale=scale,
    )
    profile = spat_profile(body, eases)
    button = Button(choices.spat_button, choices.button_thickness, choices.button_shape)
    inner, front, back = (replace(piece, frame=_on_leg(body)) for piece in spat_parts(profile, choices.spat_lap))
    inner = inner.mirrored()
    spots = spat_buttons(profile, choices.spat_spacing)
    closing = Placement("closing", line(*spat_closing(profile)), "closing line")
    front = replace(front, placements=(*_holes(spots, button), closing))
    back = replace(back, placements=(*_buttons(spots, button), closing))
    inner = replace(inner, placements=(_strap_mark(inner, choices),))
    strap, own = _strap(body, choices, scale)
    stiff = [interfacing(piece) for piece in (inner, front, back)]
    return Draft(
        (inner, front, back, strap, *stiff),
        (*_seams(), own),
        girths=tuple(_girths(body, profile)),
        findings=(_said(len(spots), strap),),
        facts={"spat_buttons": len(spots), "strap": strap["lower"].length},
        notions=(
            button_notion(back.name, 2 * len(spots), button),
            Notion(
                "buckle",
                strap.name,
                2,
                note="flat, sewn to the outer hem over the strap",
                kind="slide buckle",
                size=choices.strap_width,
                piece=strap.name,
            ),
            *(interfacing_notion(one) for one in stiff),
        ),
    )


def _on_leg(body: Body) -> BodyFrame:
    """Return how parts lie that are drawn from the side, the toes to -x, with y = 0 on the floor."""
    knee = complex(0, body["knee_height"])
    return BodyFrame(limb=Limb.LEG, heights=((BodyHeight.KNEE, knee),), ahead=-1 + 0j)


def _holes(spots: list[complex], button: Button) -> Iterator[Placement]:
    for i, at in enumerate(spots, 1):
        yield hole_mark(f"buttonhole_{i}", at, 1 + 0j, button.hole)


def _buttons(spots: list[complex], button: Button) -> Iterator[Placement]:
    for i, at in enumerate(spots, 1):
        yield button_mark(f"button_{i}", at, button.diameter)


def _strap_mark(inner: Piece, choices: Choices) -> Placement:
    """Return where the strap is sewn to the hem of the inner side: under the arch, inside."""
    hem = inner["hem"].path
    at = hem.at((0.58 if hem.start.real < hem.end.real else 0.42) * hem.length)
    half, deep = choices.strap_width / 2, choices.strap_width
    ring = (at - half, at + half, at + half + 1j * deep, at - half + 1j * deep, at - half)
    return Placement("spat-strap", line(*ring), "underfoot strap", piece="spat-strap")


def _strap(body: Body, choices: Choices, scale: float) -> tuple[Piece, Seam]:
    """Return the strap under the foot, folded along its middle, and the seam that closes it."""
    long = SOLE * body["heel_girth"] + choices.shoe_ease + STRAP_ENDS * scale
    w = choices.strap_width
    a, b, c, d = 0j, complex(long, 0), complex(long, 2 * w), complex(0, 2 * w)
    edges = (
        Edge("lower", line(a, b)),
        Edge("tip", line(b, c), EdgeKind.FREE, allowance=TURNED),
        Edge("upper", line(c, d)),
        Edge("end", line(d, a), EdgeKind.FREE, allowance=TURNED),
    )
    fold = Placement("fold", line(1j * w, complex(long, w)), "fold")
    piece = Piece(
        "spat-strap",
        edges,
        grain=0.0,
        pair=True,
        title="Strap under the foot",
        placements=(fold,),
        stretch=90.0,  # drawn close, it is not to give
        role=PieceRole.STRAP,
    )
    refs = ((piece.name, "lower"),), ((piece.name, "upper"),)
    return piece, Seam("spat strap", *refs, start=None, end=None, kind=SeamKind.MADE_UP)


def _seams() -> Iterator[Seam]:
    """Yield the seams over the instep and up the heel."""
    for name, outer in (("instep", "front"), ("heel", "back")):
        refs = (("spat-inner", outer),), ((f"spat-{outer}", outer),)
        yield Seam(f"spat {name}", *refs, start="smooth", end="smooth")


def _girths(body: Body, p: SpatProfile) -> Iterator[Girth]:
    top = leg_girth_at(body, body["inside_leg_length"] - p.counted)
    for level, y, leg in (("ankle", p.ankle, body["ankle_girth"]), ("spat_top", p.counted, top)):
        drawn = 2 * p.half(y)
        yield Girth(level, leg, drawn - leg, drawn - leg, limb=True)


def _said(count: int, strap: Piece) -> Finding:
    return Finding(
        "spats",
        "note",
        strap.name,
        strap["lower"].length,
        None,
        f"Each spat closes with {counted(count, 'button', 'buttons')} down its outer side, the front over the "
        f"back, and is held by a strap of {told(strap['lower'].length)} under the arch of the shoe, before the "
        "heel. A strap that hangs loose, or a hem below the sole, trips: draw it close, turn its end in, and walk "
        "stairs in it first.",
    )
