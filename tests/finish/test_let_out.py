"""What a costume is let out at, and what holds no more than its seam allowance (common practice)."""

from __future__ import annotations

from typing import Any

import pytest

from drafting.body.wearer import wearer
from drafting.costume.garment import draft_garment
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole
from drafting.fabric import Fabric

CHILD = wearer({"height": 1040, "bust_girth": 560, "waist_girth": 540, "hip_girth": 590})
CLOTH = Fabric(title="plain cotton, invented", mass=140.0, thickness=0.3)


@pytest.mark.parametrize(
    ("garment", "piece", "edge", "choices"),
    [
        ("fitted-top", "sleeve", "tier", {"sleeve_style": "two puffs"}),
        ("shirt", "sleeve-lower", "top", {"sleeve_style": "lantern"}),
        ("cape", "hood", "middle", {"cape_neck": "hood"}),
    ],
)
def test_what_is_gathered_or_curves_over_the_head_holds_no_more(
    garment: str, piece: str, edge: str, choices: dict[str, Any]
) -> None:
    """A puff's gathers lie bulky between wide allowances, and the curve of a hood does not lie flat with them."""
    done = draft_garment(CHILD, CLOTH, garment, choices)
    assert float(done.choices["let_out"][0]) > 0
    assert done.pattern[piece].allowances[edge] == float(done.choices["seam_allowance"][0])


@pytest.mark.parametrize(
    ("garment", "role"), [("fitted-top", EdgeRole.SIDE), ("spencer", EdgeRole.PANEL), ("skirt", EdgeRole.SIDE)]
)
def test_a_body_is_let_out_at_its_sides_and_panels(garment: str, role: EdgeRole) -> None:
    done = draft_garment(CHILD, CLOTH, garment)
    wide = float(done.choices["seam_allowance"][0]) + float(done.choices["let_out"][0])
    held = [
        cut.allowances[edge.name]
        for cut in done.pattern.pieces
        for edge in cut.piece.edges
        if edge.role is role and edge.kind is EdgeKind.SEAM and not cut.piece.material
    ]
    assert held
    assert set(held) == {wide}
