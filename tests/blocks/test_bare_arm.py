"""An armhole without a sleeve: as high as it is asked for, on whatever arm, and no sleeve is spoken of.

How high it lies is common practice: 10 to 25 mm below the armpit, where a sleeve's lies lower.
"""

from __future__ import annotations

import pytest

from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.draft.roles import EdgeRole
from tests.blocks.figures import chart_woman
from tests.drawn_bodies import far
from tests.making.orders import WOVEN

PEOPLE = [chart_woman(), chart_woman(upper_arm_girth=400.0), *far()[:8]]


@pytest.mark.parametrize("body", PEOPLE)
def test_a_bare_armhole_lies_as_high_as_it_is_asked_for(body: Body) -> None:
    for drop in (15.0, 20.0, 35.0):
        top = draft_garment(body, WOVEN, "sleeveless-top", {"armhole_drop": drop})
        assert top.draft.facts["armhole_drop"] == pytest.approx(drop)
        assert [f.sentence for f in top.findings if f.level == "error"] == []
        assert not [
            f.sentence for f in top.findings if "for a sleeve" in f.sentence or "a sleeve for" in f.sentence
        ]


def test_a_great_arm_deepens_a_sleeves_armhole_and_no_bare_one() -> None:
    """A top without sleeves lay 50 mm below the armpit, so that a sleeve that it has not would fit."""
    body = chart_woman(upper_arm_girth=400.0)
    bare, sleeved = (
        draft_garment(body, WOVEN, "sleeveless-top", asked) for asked in ({}, {"armhole_for": "a sleeve"})
    )
    assert bare.draft.facts["armhole_drop"] == 20.0
    assert sleeved.draft.facts["armhole_drop"] > 30.0
    lengths = [
        sum(e.length for p in top.draft.pieces if not p.lines for e in p.edges if e.role is EdgeRole.ARMHOLE)
        for top in (bare, sleeved)
    ]
    assert lengths[0] < lengths[1]
