"""A waistband's interfacing lies firm along the band in any cloth, and the widest wearer's fits on its width."""

from __future__ import annotations

import pytest

from drafting.body import wearer
from drafting.costume.garment import draft_garment
from drafting.costume.lays import laid_out
from drafting.fabric import Fabric
from tests.making.orders import costume_of

KNIT = Fabric("Jersey, invented", usable_width=1500.0, weave="knit", stretch_across=0.6, stretch_along=0.3)


@pytest.mark.parametrize("cloth", [KNIT, Fabric("Cotton, invented", usable_width=1400.0)], ids=["knit", "woven"])
@pytest.mark.parametrize("block", ["trousers", "skirt", "overskirt"])
@pytest.mark.parametrize("cut", ["folded", "seamed"])
def test_the_stiffening_of_a_waistband_is_cut_along_its_own_warp(block: str, cut: str, cloth: Fabric) -> None:
    """Common practice. In a knit it lay across its cloth, and 62 cm of it did not fit on the half of 90 cm."""
    wide = wearer({"height": 1640, "bust_girth": 1180, "waist_girth": 1120, "hip_girth": 1380})
    garment = draft_garment(wide, cloth, block, {"band_cut": cut})
    stiff, band = garment.draft["waistband-interfacing"], garment.draft["waistband"]
    a, b, c, d = stiff.outline.bounds
    assert c - a > 5 * (d - b)  # it lies along x, as the band does
    assert stiff.grain % 180.0 == pytest.approx(0.0)
    assert (band.grain % 180.0 == pytest.approx(90.0)) == (cloth is KNIT)
    made = laid_out(costume_of(garment, cloth), count=50, table=False)
    assert [f.message for f in made.findings if f.level == "error" and "interfacing" in f.message] == []
