"""Panels parted by the cloth's width lie on what the wash leaves of it (ISO 5077): none is left out of the lay."""

from __future__ import annotations

import pytest

from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.fabric import Fabric
from drafting.layout import Part, cloth_of, lay_out
from tests.blocks.figures import chart_woman, errors
from tests.worn.unusual import child

SHRINKS = Fabric(
    "Lawn", usable_width=1360.0, care="wash at 60", shrinkage_along=0.04, shrinkage_across=0.06, sort="plain"
)
CUTS = [
    ("skirt", {"skirt_cut": "tiered", "tiers": tiers, "tier_fullness": full})
    for tiers in (3.0, 6.0)
    for full in (1.4, 1.5, 1.6, 1.7)
] + [
    *(
        ("skirt", {"skirt_cut": cut, "skirt_ends": end})
        for cut in ("half circle", "full circle")
        for end in ("knee", "ankle")
    ),
    *(("cape", {"cape_cut": cut, "cape_ends": "knee"}) for cut in ("half circle", "full circle")),
]


@pytest.mark.parametrize(("block", "choices"), CUTS)
@pytest.mark.parametrize("unwashed", [False, True])
@pytest.mark.parametrize("body", [chart_woman(), child(1160.0), child(1280.0)], ids=["chart", "small", "child"])
def test_every_panel_finds_room(block: str, choices: dict[str, object], unwashed: bool, body: Body) -> None:
    made = draft_garment(body, SHRINKS, block, {**choices, "cut_unwashed": unwashed})
    assert errors(made) == []
    parts = tuple(Part(block, cut) for cut in made.pattern.pieces if not cut.piece.material)
    lay = lay_out(parts, cloth_of("shell", SHRINKS, unwashed=unwashed), count=3, table=False)
    assert [outline.part.name for outline in lay.left_out] == []
