"""What is laced is worn shut: its edges meet on the middle of the body (common practice), by the mesh's points."""

from __future__ import annotations

import pytest

from drafting.body import wearer
from drafting.costume.wearing.sewn import COARSE
from drafting.worn.sewn import sewn_mesh
from tests.worn.dressed import TAKEN, plies_for
from tests.worn.garments import drafted

UNEVEN = {"shoulder_drop": (50.0, 62.0)}


@pytest.mark.parametrize("opening", ["back", "front"])
@pytest.mark.parametrize("fastening", ["laced", "hooks", "buttons"])
@pytest.mark.parametrize("uneven", [False, True])
def test_a_closed_edge_lies_on_the_middle(opening: str, fastening: str, uneven: bool) -> None:
    body = wearer(TAKEN | UNEVEN) if uneven else wearer(TAKEN)
    draft = drafted("fitted-top", body, {"opening": opening, "fastening": fastening})
    mesh = sewn_mesh(draft, "top", plies_for("fitted-top"), COARSE)
    assert len(mesh.front) >= 5
    assert len(mesh.back) >= 5
    shut = mesh.back if opening == "back" else mesh.front
    if mesh.halved:
        assert mesh.on_middle[shut].sum() >= 5
    else:
        assert sum(a in shut and b in shut for a, b in mesh.tied) >= 5
