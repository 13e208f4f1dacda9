"""How far a garment lies off the form for what is worn beneath it: by the cloth, not by its thickest band."""

from __future__ import annotations

import pytest

from drafting.costume.garment import draft_garment
from drafting.costume.wearing.sewn import usual_thickness
from drafting.worn.sewn import sewn_mesh
from tests.bodies import bdims
from tests.making.orders import WOVEN
from tests.worn.garments import CLOTH, PLIES


@pytest.mark.parametrize("block", ["knee-breeches", "trousers", "shirt", "waistcoat"])
def test_a_garment_is_as_thick_as_most_of_it(block: str) -> None:
    """Breeches of a felt 3 mm thick pushed a coat off by the 12 mm of their band, at bust and arm too."""
    mesh = sewn_mesh(draft_garment(bdims()[3], WOVEN, block).draft, block, PLIES, 60.0)
    layers = 2 if block == "waistcoat" else 1  # lined all through
    assert usual_thickness(mesh) == pytest.approx(layers * CLOTH.thickness, rel=0.5)
    assert max(ply.thickness for ply in mesh.plies) > usual_thickness(mesh)
