"""Turned cuffs worn: caught to the sleeve's seams as high as they are deep, they lie on the sleeve all round.

Depths and lengths are read off the drafts here; that a few stitches hold such a cuff is common practice.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from drafting.body import wearer
from drafting.worn.form import wearers_form
from drafting.worn.sewn import sewn_mesh
from tests.worn.dressed import on_form
from tests.worn.garments import PLIES, chart_body, drafted

CUFFS: dict[str, dict[str, Any]] = {
    "tailcoat": {"turned_cuff": 110.0},
    "coat": {"turned_cuff": 100.0, "cuff_vent": False},
    "fitted-top": {"turned_cuff": 80.0},
}
MESH = 20.0


@pytest.mark.parametrize("block", CUFFS)
def test_the_upper_edge_is_caught_at_each_seam_as_high_as_the_cuff_is_deep(block: str) -> None:
    mesh = sewn_mesh(drafted(block, chart_body(), CUFFS[block]), block, PLIES, MESH)
    cuff = [piece.name for piece in mesh.pieces].index("turned-cuff")
    own = np.unique(mesh.sewn[mesh.piece == cuff])
    pairs = mesh.tied[np.isin(mesh.tied[:, 0], own)]
    ends = {"tailcoat": 3, "coat": 2, "fitted-top": 1}[block]  # two seams and a vent; two seams; one seam
    assert len(pairs) == ends
    for upper, on in pairs:
        assert upper in mesh.edges["turned-cuff", "far"]
        spots = (on, *mesh.edges["turned-cuff", "sleeve"])
        flat = [mesh.flat[np.flatnonzero(mesh.merged == one)] for one in spots]
        gaps = [np.linalg.norm(flat[0][:, None] - foot[None], axis=2).min() for foot in flat[1:]]
        assert min(gaps) == pytest.approx(CUFFS[block]["turned_cuff"], abs=MESH)


def test_on_a_belly_man_no_corner_of_the_cuff_falls_off_the_sleeve() -> None:
    """It hung 41 mm lower at the vent than elsewhere: by its weight, with nothing that held it."""
    body = wearer({"height": 1760, "bust_girth": 1220, "waist_girth": 1300, "hip_girth": 1200}, figure="mens")
    rest = on_form(drafted("coat", body, {"turned_cuff": 90.0}), "coat", wearers_form(body), mesh=40.0)
    assert rest.settled
    far = rest.mesh.edges["turned-cuff", "far"]
    _, elbow, wrist = wearers_form(body).arm
    on = (wrist - elbow) / np.linalg.norm(wrist - elbow)
    up = (wrist - rest.points[far]) @ on
    assert up.min() > 60.0, "its depth, less what the sleeve's slant takes"
    assert np.ptp(up) < 35.0
