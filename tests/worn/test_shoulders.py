"""Shoulder seams start over the shoulders, whatever the front's lap and the back's curve do to an even field."""

from __future__ import annotations

import numpy as np
import pytest

from drafting.body import Body
from drafting.costume.worn_sewn import COARSE
from drafting.worn.form import wearers_form
from drafting.worn.placed import placed
from drafting.worn.sewn import sewn_mesh
from tests.drawn_bodies import drawn
from tests.worn.dressed import on_form, plies_for
from tests.worn.garments import chart_body, drafted
from tests.worn.test_truth_depth import DEEPEST, deepest
from tests.worn.unusual import child, tall_and_round

DOUBLE = {"breasted": "double", "waistcoat_buttons": 4}


def test_a_wide_lap_on_a_round_back_comes_to_rest_before_the_arms() -> None:
    """Its front armholes started behind the arms and were caught there: no rest in 1,000 steps."""
    body = tall_and_round()
    form = wearers_form(body)
    rest = on_form(drafted("waistcoat", body, DOUBLE), "waistcoat", form)
    assert rest.settled
    assert deepest(body, rest) >= DEEPEST
    for hand, arm in (("left", form.arm_of("left")), ("right", form.arm_of("right"))):
        hole = rest.points[rest.mesh.edges[f"front-{hand}", "armhole"]]
        middle = hole[np.argsort(hole[:, 2])][len(hole) // 3 : -len(hole) // 3]  # neither underarm nor shoulder
        assert (middle[:, 1] < arm[0][1] + 20.0).all(), hand  # in front of the arm's axis, or beside it


@pytest.mark.parametrize("block", ["waistcoat", "shirt", "tailcoat"])
@pytest.mark.parametrize("who", range(5))
def test_shoulder_seams_start_over_the_shoulder(block: str, who: int) -> None:
    """A waistcoat's started up to 94 mm behind the line from the side of the neck to the shoulder point."""
    body: Body = (chart_body(), tall_and_round(), child(1160.0), *drawn(2))[who]
    form = wearers_form(body)
    mesh = sewn_mesh(
        drafted(block, body, DOUBLE if block == "waistcoat" else None), block, plies_for(block), COARSE
    )
    seam = placed(mesh, form)[mesh.shoulders]
    ends = [form.points[name] for name in ("side neck", "shoulder")]
    behind = seam[:, 1] - np.interp(np.abs(seam[:, 0]), [p[0] for p in ends], [p[1] for p in ends])
    assert len(seam) >= 3
    assert -15.0 < np.median(behind) < 40.0
