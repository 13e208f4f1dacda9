"""On cloth with one right way up no panel of a circle hangs upside down: its warp against the way it falls.

That the panels of napped or one-way cloth all point one way is common practice; how far each place of a ring
turns from the warp is plane geometry.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import replace

import pytest

from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.draft.by_role import edges_as
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole
from tests.blocks.figures import chart_woman, errors
from tests.making.orders import WOVEN
from tests.worn.unusual import child

ONE_WAY = replace(WOVEN, one_way=True)


def farthest_turned(piece: Piece) -> float:
    """Return the most that a piece's way down, straight to its hem, turns from its warp's way down, degrees."""
    (hem,) = edges_as(piece, EdgeRole.HEM)
    top = edges_as(piece, EdgeRole.WAIST, EdgeRole.NECK)
    points = [p for edge in top for p in edge.path.evenly(60)]
    way_up, most = cmath.rect(1.0, math.radians(piece.grain)), 0.0
    for foot in hem.path.evenly(19):
        up = min(points, key=lambda p: abs(p - foot)) - foot
        most = max(most, abs(math.degrees(cmath.phase(up / way_up))))
    return most


@pytest.mark.parametrize("body", [chart_woman(), child(1160.0)])
@pytest.mark.parametrize("cut", ["half circle", "three-quarter circle", "full circle"])
@pytest.mark.parametrize(("block", "more"), [("skirt", {"circle_grain": "edge"}), ("skirt", {}), ("cape", {})])
def test_no_panel_hangs_upside_down(body: Body, cut: str, block: str, more: dict[str, object]) -> None:
    choices = {"skirt_cut": cut, **more} if block == "skirt" else {"cape_cut": cut, "cape_ends": "hip"}
    made = draft_garment(body, ONE_WAY, block, choices)
    assert errors(made) == []
    panels = [piece for piece in made.draft.pieces if not piece.material and edges_as(piece, EdgeRole.HEM)]
    assert panels
    assert max(farthest_turned(piece) for piece in panels) < 105.0
    if cut == "full circle" and block == "skirt":
        plain = draft_garment(body, replace(WOVEN, one_way=False), block, choices)
        assert len(plain.draft.pieces) <= len(made.draft.pieces)
