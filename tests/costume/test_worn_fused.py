"""What a plan has fused is worn fused: stiffer than two cloths that slide, as the laminate formula says.

`Source.KIM_LAMINATE`: the rigidity of bonded layers lies between the sum of both and the classical laminate's.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.costume.garment import draft_garment
from drafting.costume.wearing.sewn import coarse_mesh, fused_plies, plies_of
from drafting.fabric import Fabric
from drafting.worn.form import wearers_form
from tests.drawn_bodies import drawn

CLOTH = Fabric("Cloth, invented", mass=180.0, thickness=0.5, fibre="cotton")
FUSIBLE = Fabric("Fusible, invented", mass=60.0, thickness=0.2, fibre="cotton")


def test_a_fused_pair_lies_between_sliding_layers_and_a_laminate() -> None:
    (fused,) = fused_plies({"": CLOTH, "interfacing": FUSIBLE}).values()
    one, two = plies_of({"": CLOTH, "interfacing": FUSIBLE}).values()
    loose = one.bends_along + two.bends_along
    apart = (one.thickness + two.thickness) / 2000.0
    laminate = loose + one.along * two.along / (one.along + two.along) * apart**2
    assert 2.0 * loose < fused.bends_along < laminate
    assert fused.weight == pytest.approx(one.weight + two.weight)


def test_what_takes_no_fusible_is_worn_with_its_interfacing_loose() -> None:
    assert not fused_plies({"": replace(CLOTH, sort="sheer"), "interfacing": FUSIBLE})
    assert not fused_plies({"": CLOTH})


def test_a_skirt_with_a_band_is_stiffer_along_its_hem_and_nowhere_else() -> None:
    body = drawn(7)[3]
    draft = draft_garment(body, CLOTH, "skirt", {"skirt_cut": "half circle", "stiff_hem": "band"}).draft
    cloths = {"": CLOTH, "interfacing": FUSIBLE}
    mesh, _ = coarse_mesh(draft, "skirt", plies_of(cloths), wearers_form(body), fused_plies(cloths))
    (stiff,) = fused_plies(cloths).values()
    plain = plies_of(cloths)[""]
    panel = mesh.piece == [piece.name for piece in mesh.pieces].index("panel")
    found = sorted(mesh.plies[n].bends_along for n in set(mesh.ply[panel].tolist()))
    assert found == pytest.approx([plain.bends_along, stiff.bends_along])
