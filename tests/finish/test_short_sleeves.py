"""The hem of a short sleeve: folded up, it ends below the armhole (common practice), by a ruler."""

from __future__ import annotations

import pytest

from drafting.body import Body
from drafting.draft.roles import EdgeRole, PieceRole
from tests.finish.test_hems import ADULT, CHILD, made


@pytest.mark.parametrize("body", [ADULT, CHILD], ids=["adult", "child"])
@pytest.mark.parametrize("share", [0.3, 0.35, 0.5])
def test_a_short_sleeves_hem_ends_below_the_armhole(body: Body, share: float) -> None:
    """By a ruler: folded up, the raw edge lies 10 mm or more below the underarm's end (common practice)."""
    short = made("mutton-top", body, sleeve_share=share, puff_reach="hem", elbow_bend=0.0)
    (sleeve,) = (cut for cut in short.pattern.pieces if cut.piece.role is PieceRole.SLEEVE)
    (hem,) = (edge for edge in sleeve.piece.edges if edge.role is EdgeRole.HEM)
    under = [edge.length for edge in sleeve.piece.edges if edge.role in (EdgeRole.UNDERARM, EdgeRole.SLIT)]
    depth = sleeve.allowances[hem.name]
    assert depth <= max(10.0, sum(under) / 2 - 10.0)
    straight = 35.0 if body is ADULT else 65.0
    assert (depth < straight - 1.0) == any(f.check == "short sleeve" for f in short.findings)
