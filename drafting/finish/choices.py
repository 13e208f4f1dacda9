"""The choices of the finish. All allowances are mm."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.ground.choices import choice, choices_of
from drafting.ground.lengths import told
from drafting.ground.scale import allowance_scale
from drafting.ground.sources import Source, cite, ours, practice

LEAST = 6.0
"""mm: no allowance is proposed narrower, however small the body (common practice: 1/4 in)."""


TIGHT = frozenset(
    {
        EdgeRole.NECK,
        EdgeRole.COLLAR_NECK,
        EdgeRole.STAND_NECK,
        EdgeRole.FACING_NECK,
        EdgeRole.ARMHOLE,
        EdgeRole.CAP,
        EdgeRole.CAP_PART,
    }
)
"""Necklines, armholes and sleeve caps: edges along a tight curve."""


LET_OUT = frozenset({EdgeRole.SIDE, EdgeRole.PANEL, EdgeRole.CENTRE_SEAM})
"""Seams that a garment is let out at: side, panel and shaped centre."""

NOT_LET_OUT = frozenset({PieceRole.SLEEVE, PieceRole.TOP_SLEEVE, PieceRole.UNDER_SLEEVE, PieceRole.HOOD})
"""Pieces whose seams across or over the crown hold nothing more (common practice: what is gathered lies bulky
there, and a curve sews true with a narrow allowance); a body is let out at its sides, panels and centre."""

PLAIN_HEM = 20.0
"""mm: a hem that no part of a garment is known for, such as a waist that waits for its band (ours)."""

CHILD_GROWTH = {"hem_growth": 30.0, "let_out": 15.0}
"""mm that a growing wearer's hems and seams have more (ours: with a seam of 10 the least of the trade's
25 to 50 lies in a seam to be let out; half a year's growth in a hem)."""


@dataclass(frozen=True)
class FinishChoices:
    """How wide the allowances are, by kind of edge, and which marks are drawn."""

    seam_allowance: float = choice(
        10.0,
        "mm",
        "allowance along seams",
        low=0,
        high=50,
        group="finish",
        of_hand=True,
        source=practice("⟨10⟩ to ⟨15⟩ plain, ⟨15⟩ for French seams, ⟨25⟩ to ⟨50⟩ where a costume will be let out"),
    )
    curve_allowance: float = choice(
        10.0,
        "mm",
        "allowance along necklines, armholes and sleeve caps",
        low=0,
        high=30,
        group="finish",
        of_hand=True,
        source=practice("⟨6⟩ to ⟨10⟩ along a tight curve"),
    )
    hem_allowance: float = choice(
        0.0,
        "mm",
        f"allowance along every hem; 0 lets part, cut and cloth decide: sleeves {told(35)}, legs {told(40)}, "
        f"coats {told(45)}, shirts {told(20)}, {told(10)} to {told(15)} where a hem curves, {told(25)} in a knit, "
        f"{told(10)} in sheer cloth",
        low=0,
        high=100,
        group="finish",
        of_hand=True,
        source=practice("⟨10⟩ to ⟨15⟩ flared, trousers ⟨30⟩ to ⟨50⟩, sleeves ⟨30⟩ to ⟨40⟩, coats ⟨40⟩ to ⟨50⟩"),
    )
    hem_growth: float = choice(
        0.0,
        "mm",
        "so much deeper are hems, to be let down as the wearer grows; a child's are from the start",
        low=0,
        high=100,
        group="finish",
        of_hand=True,
        source=ours("a child of ⟨1160⟩ grows some ⟨60⟩ a year (from memory), of which a leg has half"),
    )
    hang_length: float = choice(
        15.0,
        "mm",
        "so much longer are panels cut that hang on the bias: it drops, and is cut away when the hem is levelled",
        low=0,
        high=100,
        group="finish",
        of_hand=True,
        source=practice("⟨10⟩ to ⟨20⟩"),
    )
    let_out: float = choice(
        0.0,
        "mm",
        "so much more than the seam allowance have side, panel and centre back seams, to be let out; a child's "
        "have it from the start",
        low=0,
        high=50,
        group="finish",
        of_hand=True,
        source=practice("⟨25⟩ to ⟨50⟩ in all at side and centre back"),
    )
    opening_allowance: float = choice(
        15.0,
        "mm",
        "allowance along openings, vents and slits",
        low=0,
        high=50,
        group="finish",
        of_hand=True,
        source=practice(),
    )
    free_allowance: float = choice(
        0.0,
        "mm",
        "allowance along the inner edges of facings, bands and linings",
        low=0,
        high=30,
        group="finish",
        of_hand=True,
        source=practice("such edges are overlocked or pinked"),
    )
    cut_unwashed: bool = choice(
        False,
        "yes/no",
        "cut before the first wash: pieces are enlarged by what the cloth still shrinks",
        group="finish",
        source=cite(Source.ISO_5077, "shrinkage; cut = wanted / (1 - shrinkage)"),
    )

    def width(self, edge: Edge, piece: Piece) -> float:
        """Return the allowance of a piece's edge: 0 on a fold and along a dart's legs, else its own wish."""
        if edge.kind in (EdgeKind.FOLD, EdgeKind.DART):
            return 0.0
        if edge.allowance is not None:
            return edge.allowance + edge.drops
        if edge.kind in (EdgeKind.SEAM, EdgeKind.OPENING) and edge.role in TIGHT:
            return self.curve_allowance
        if is_let_out(edge, piece):
            return self.seam_allowance + self.let_out
        if edge.kind is EdgeKind.SEAM:
            return self.seam_allowance + edge.drops
        return {
            EdgeKind.HEM: (self.hem_allowance or PLAIN_HEM) + edge.drops,
            EdgeKind.OPENING: self.opening_allowance,
            EdgeKind.FREE: self.free_allowance,
        }[edge.kind]


def is_let_out(edge: Edge, piece: Piece) -> bool:
    """Return whether a piece is let out at an edge: a side, a panel or a shaped centre of a body or a leg."""
    return edge.kind is EdgeKind.SEAM and edge.role in LET_OUT and piece.role not in NOT_LET_OUT


ENCLOSED_SEAM = 15.0
"""mm: a French seam is sewn twice, its raw edges between (common practice: 5/8 in, as for a felled one)."""

LEAST_ENCLOSED = 10.0
"""mm: a doll's French seam, its first row 5 mm outside the line and trimmed to 3 (ours: with less, the raw edges
come out at the stitches)."""


@dataclass(frozen=True)
class AllowedFor:
    """What allowances depend on beside the size: whether who wears it `grows` into them, and whether seams are
    `enclosed`, as French ones are."""

    grows: bool = False
    enclosed: bool = False


ONCE = AllowedFor()
"""An adult's seams, sewn once and pressed open or to a side."""


def proposed(scale: float, sewn: AllowedFor = ONCE) -> dict[str, float]:
    """Return what is proposed for a body at this `scale` (1: adult), sewn so, by choice; mm.

    A child's allowances are those of an adult, as hands and needles are, and one that grows has more to
    let out and to let down. Only a doll's are smaller, but never below 6 mm, which is the least that can
    be sewn well, or 10 mm where they are enclosed.

    >>> proposed(0.2)["seam_allowance"], proposed(0.7)["seam_allowance"]
    (6.0, 10.0)
    >>> proposed(0.2, AllowedFor(enclosed=True))["seam_allowance"]
    10.0
    >>> proposed(0.7, AllowedFor(grows=True))["let_out"]
    15.0
    >>> "let_out" in proposed(0.7, AllowedFor(grows=True, enclosed=True))
    False
    """
    defaults = {choice.name: choice.default for choice in choices_of(FinishChoices)}
    if sewn.enclosed:
        defaults["seam_allowance"] = ENCLOSED_SEAM
    found = {
        name: max(LEAST, width * allowance_scale(scale))
        for name, width in defaults.items()
        if name.endswith("_allowance") and width
    }
    if sewn.enclosed:
        found["seam_allowance"] = max(LEAST_ENCLOSED, found["seam_allowance"])
    grows = sewn.grows and allowance_scale(scale) == 1.0
    growth = {n: mm for n, mm in CHILD_GROWTH.items() if n != "let_out" or not sewn.enclosed}  # it is trimmed
    return found | growth if grows else found
