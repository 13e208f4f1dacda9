"""Cuff: a straight band on the sleeve's hem, buttoned over an underlap.

The cuff hangs below the sleeve as the left one seen from outside, its front to the left; the sewn
edge is as long as the hem once that is gathered up.

      front        sleeve          underlap  back
        .--------------------------.-----.
    far | =hole                       o  | end
        |- - - - - - fold - - - - - - - -|
        '--------------------------------'
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft, Seam, SeamNotch
from drafting.draft.piece import Piece, Placement
from drafting.draft.roles import NotchKind, PieceRole, SeamKind
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
from drafting.shaping.shared_choices import BUTTON_DIAMETER, BUTTON_SHAPE, BUTTON_THICKNESS, cuff_depth

NEEDS = ("sleeve_hem",)


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the cuff, in mm."""

    cuff_depth: float = cuff_depth(60.0, 10.0)
    cuff_underlap: float = choice(
        22.0,
        "mm",
        "how far the cuff's ends lie over each other",
        low=8,
        high=80,
        scales=True,
        source=practice("twice the button"),
        group="cuff",
    )
    cuff_cut: str = choice(
        "folded",
        "word",
        "cut double and folded, or outside and inside cut apart",
        words=("folded", "seamed"),
        group="cuff",
        source=practice(),
    )
    cuff_buttons: float = choice(
        1.0, "count", "buttons on each cuff, one above the other", low=1, high=6, source=practice(), group="cuff"
    )
    button_diameter: float = BUTTON_DIAMETER
    button_thickness: float = BUTTON_THICKNESS
    button_shape: str = BUTTON_SHAPE


def cuff(body: Body, fabric: Fabric | None, choices: Choices, *, sleeve_hem: Chain) -> Draft:
    """Return the cuff (a pair) and its interfacing, sewn to the sleeve's hem.

    Raises `DraftError` for a cuff without depth (the sleeve's own default).
    """
    if choices.cuff_depth <= 0:
        raise DraftError(
            "a cuff needs a depth",
            value=told(choices.cuff_depth),
            reach=f"{told(10.0, 'least')} to {told(250.0, 'most')}",
            turn="choose cuff_depth; the sleeve ends that much higher",
        )
    button = Button(choices.button_diameter, choices.button_thickness, choices.button_shape)
    band = Band(
        sleeve_hem.sewn_length,
        choices.cuff_underlap,
        choices.cuff_depth,
        choices.cuff_cut == "folded",
        turned=turned_under(body_scale(body)),
    )
    count = round(choices.cuff_buttons)
    piece = Piece(
        "cuff",
        band_edges(band, "sleeve"),
        grain=band_grain(fabric),
        pair=True,
        title="Cuff",
        placements=(*fold_line(band), *_marks(band, button, count)),
        copies=1 if band.folded else 2,
        role=PieceRole.CUFF,
    )
    outside = replace(piece, edges=band_edges(replace(band, folded=False), "sleeve"))
    if not any(sleeve_hem.opens):  # it opens in a slit behind, whose front edge lies on top
        piece, outside = piece.mirrored(), outside.mirrored()
    stiff = interfacing(outside, bare=("lower",) if band.folded else ())
    buttons = button_notion("cuff", 2 * count, button)
    return Draft(
        (piece, stiff),
        (_hem_seam(band, sleeve_hem), *band_seams(piece, "sleeve")),
        findings=(_said(band),),
        facts={"cuff_length": band.length},
        notions=(buttons, interfacing_notion(stiff)),
    )


def _hem_seam(band: Band, hem: Chain) -> Seam:
    """The cuff on the hem, gathered or not; quarters are marked on both."""
    shares = {"quarter": 0.25, "half": 0.5, "three quarters": 0.75}
    notches = tuple(
        SeamNotch(name, share * band.sewn, share * hem.path.length, kind=NotchKind.QUARTER)
        for name, share in shares.items()
    )
    return Seam(
        "cuff",
        (("cuff", "sleeve"),),
        tuple(reversed(hem.refs)),
        start=None,
        end=None,
        notches=notches,
        kind=SeamKind.ATTACHED,
    )


def _marks(band: Band, button: Button, count: int) -> Iterator[Placement]:
    """Yield buttons on the underlap and holes at the other end, one above the other."""
    for i in range(count):
        down = (i + 1) / (count + 1)
        name = f"_{i + 1}" if count > 1 else ""
        middle = band.underlap / 2
        yield button_mark(f"button{name}", band.corner(band.sewn + middle, down), button.diameter)
        yield hole_mark(f"buttonhole{name}", band.corner(middle, down), -1 + 0j, button.hole)


def _said(band: Band) -> Finding:
    return Finding(
        "cuff",
        "note",
        "cuff",
        band.length,
        None,
        f"The cuff is {told(band.length)} long: {told(band.sewn)} round the wrist and "
        f"{told(band.underlap)} of underlap. It opens over the slit of the sleeve.",
    )
