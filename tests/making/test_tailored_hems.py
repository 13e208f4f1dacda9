"""Hems of tailored garments are caught by hand, so that no row shows; of cotton stitched (common practice)."""

from __future__ import annotations

import pytest

from drafting.costume.garment import draft_garment
from drafting.fabric import Fabric
from drafting.making.settings.stitches import CAUGHT
from tests.blocks.figures import chart_man
from tests.making.orders import costume_of, order_of

WORSTED = Fabric("Worsted, invented", sort="plain", fibre="wool", mass=270.0, care="dry clean")
DRILL = Fabric("Drill, invented", sort="plain", fibre="cotton", mass=270.0, care="wash at 60")


@pytest.mark.parametrize("block", ["trousers", "skirt", "cape"])
@pytest.mark.parametrize(("cloth", "by_hand"), [(WORSTED, True), (DRILL, False)])
def test_a_hem_of_wool_is_caught_by_hand(block: str, cloth: Fabric, by_hand: bool) -> None:
    made = draft_garment(chart_man(), cloth, block, {})
    steps = [step for step in order_of(costume_of(made, cloth)) if step.verb == "hem"]
    assert steps
    for step in steps:
        assert step.setting is not None
        assert (step.setting.stitch == CAUGHT) == by_hand
        told = {one.key for one in (*step.say, *step.setting.why)}
        assert ("set.why_unseen" in told) == by_hand
