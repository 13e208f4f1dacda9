"""The neck of a cape that is cut in one piece is lowered down its own centre (plane geometry)."""

from __future__ import annotations

import pytest

from drafting.body import wearer
from drafting.costume.garment import draft_garment
from drafting.fitting.lines.neck import neck_depth
from tests.making.orders import WOVEN

CHILD = {"height": 1230.0, "bust_girth": 660.0, "waist_girth": 720.0, "hip_girth": 710.0}
LOWER = 10.0


@pytest.mark.parametrize(("behind", "lowered", "kept"), [(False, "front", "back"), (True, "back", "front")])
def test_the_neck_moves_down_the_centre_it_is_noted_at_and_no_other(behind: bool, lowered: str, kept: str) -> None:
    """Noted in front it moved across the centre front, which is level on this piece: neck and hem had a point."""
    draft = draft_garment(wearer(CHILD), WOVEN, "cape", {"shoulder_fit": "none"}).draft
    after = neck_depth(draft, behind, LOWER).draft
    old, new = draft["cape"], after["cape"]
    assert old[f"centre_{lowered}"].length - new[f"centre_{lowered}"].length == pytest.approx(LOWER, abs=0.1)
    assert new[f"centre_{kept}"].length == pytest.approx(old[f"centre_{kept}"].length, abs=0.1)
    assert new["hem"].length == pytest.approx(old["hem"].length, abs=0.1)
