"""What was wrong in plans of six more invented costumes, read with scissors in hand.

All that is asked is common practice of the workroom.
"""

from __future__ import annotations

import pytest

from drafting.making.rules import unsound
from tests.making.orders import WOVEN, costume_of
from tests.making.test_plans_read import keys, worked


@pytest.mark.parametrize("collar", ["turn-down", "stand", "wing", "flat"])
def test_a_facing_of_its_own_is_sewn_on_before_the_collar_that_closes_its_neck(collar: str) -> None:
    """The collar's seam catches the facing's neck edge; it was sewn on after the collar, and then told to be
    folded back, as one that is cut on."""
    garment, steps = worked("shirt", collar=collar, facing="separate")
    found = keys(*steps)
    assert not {"fold_back", "fold_back_stand", "fold_across"} & set(found)
    assert found.count("facing_across") == (collar == "flat")
    faced = next(i for i, step in enumerate(steps) if "front edge" in step.seams)
    closed = next(i for i, step in enumerate(steps) if "collar" in step.seams)
    assert faced < closed
    assert ("front-facing", "facing_neck") in steps[faced].edges
    assert "facing_to_neck" in keys(steps[faced])
    assert unsound(costume_of(garment, WOVEN), steps) == ()
