"""A facing's hem is turned up with the front's that it lies behind (common practice): they are equally deep."""

from __future__ import annotations

import pytest

from drafting.costume.garment import draft_garment
from drafting.draft.piece import EdgeKind
from tests.bodies import bdims
from tests.making.orders import KNIT, WOVEN

CASES = [
    ("shirt", {"facing": "separate"}),
    ("shirt", {"facing": "separate", "tails": "shaped"}),
    ("shirt", {"facing": "separate", "length": "waist"}),
    ("shirt", {"length": "waist"}),
    ("fitted-top", {"fastening": "buttons", "length": "waist"}),
    ("sleeveless-top", {"fastening": "laced", "length": "waist"}),
    ("close-top", {"fastening": "buttons", "opening": "front", "length": "waist"}),
]


@pytest.mark.parametrize(("block", "asked"), CASES)
@pytest.mark.parametrize("n", [3, 140, 300, 505])
def test_a_facings_hem_is_as_deep_as_the_fronts(n: int, block: str, asked: dict[str, str]) -> None:
    """One cut apart had a skirt's hem, 40 beside the front's 20; one cut on was narrower than a curved waist."""
    garment = draft_garment(bdims()[n], KNIT if block == "close-top" else WOVEN, block, asked)
    shown = [cut for cut in garment.pattern.pieces if not cut.piece.material]
    opened = next(c.piece.name for c in shown if any(e.role.value == "facing hem" for e in c.piece.edges))
    half = opened.removesuffix("-facing")
    depths = {
        cut.allowances[edge.name]
        for cut in shown
        if cut.piece.name in (half, opened)
        for edge in cut.piece.edges
        if edge.kind is EdgeKind.HEM
    }
    assert len(depths) == 1
