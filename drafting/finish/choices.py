"""The choices of the finish. All allowances are mm."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.draft.piece import Edge, EdgeKind
from drafting.draft.roles import EdgeRole
from drafting.ground.choices import choice, choices_of
from drafting.ground.sources import Source, cite, practice

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
        source=practice("10 to 15 plain, 25 to 50 where a costume will be let out"),
    )
    curve_allowance: float = choice(
        10.0,
        "mm",
        "allowance along necklines, armholes and sleeve caps",
        low=0,
        high=30,
        group="finish",
        source=practice("6 to 10 along a tight curve"),
    )
    hem_allowance: float = choice(
        20.0,
        "mm",
        "allowance along hems",
        low=0,
        high=80,
        group="finish",
        source=practice("10 to 15 flared, 30 to 50 straight"),
    )
    opening_allowance: float = choice(
        15.0, "mm", "allowance along openings, vents and slits", low=0, high=50, group="finish", source=practice()
    )
    free_allowance: float = choice(
        0.0,
        "mm",
        "allowance along the inner edges of facings, bands and linings",
        low=0,
        high=30,
        group="finish",
        source=practice("such edges are overlocked or pinked"),
    )
    cut_unwashed: bool = choice(
        False,
        "yes/no",
        "cut before the first wash: pieces are enlarged by what the cloth still shrinks",
        group="finish",
        source=cite(Source.ISO_5077, "shrinkage; cut = wanted / (1 - shrinkage)"),
    )

    def width(self, edge: Edge) -> float:
        """Return the allowance of an edge: 0 on a fold and along a dart's legs, else its own wish."""
        if edge.kind in (EdgeKind.FOLD, EdgeKind.DART):
            return 0.0
        if edge.allowance is not None:
            return edge.allowance
        if edge.kind in (EdgeKind.SEAM, EdgeKind.OPENING) and edge.role in TIGHT:
            return self.curve_allowance
        return {
            EdgeKind.SEAM: self.seam_allowance,
            EdgeKind.HEM: self.hem_allowance,
            EdgeKind.OPENING: self.opening_allowance,
            EdgeKind.FREE: self.free_allowance,
        }[edge.kind]


def proposed(scale: float) -> dict[str, float]:
    """Return the allowances proposed for a body at this `scale` (1: adult), by choice.

    They shrink with the body, but never below 6 mm, which is the least that can be sewn well.

    >>> proposed(0.2)["hem_allowance"], proposed(0.7)["hem_allowance"]
    (6.0, 14.0)
    """
    defaults = {choice.name: choice.default for choice in choices_of(FinishChoices)}
    return {
        name: max(LEAST, width * scale)
        for name, width in defaults.items()
        if name.endswith("_allowance") and width
    }
