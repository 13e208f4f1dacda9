"""A note at a hem whose length a choice decides is answered with that choice, which draws all anew (ours)."""

from __future__ import annotations

import pytest

from drafting.costume.garment import draft_garment
from drafting.draft.by_role import edges_as
from drafting.draft.roles import EdgeRole
from drafting.fitting.applied import fitted
from tests.blocks.figures import chart_woman
from tests.fitting.test_followers import note


@pytest.mark.parametrize("cut", ["straight", "gored", "half circle", "tiered"])
def test_a_skirts_hem_is_answered_with_its_length(cut: str) -> None:
    draft = draft_garment(chart_woman(), None, "skirt", {"skirt_cut": cut}).draft
    piece = next(p for p in draft.pieces if edges_as(p, EdgeRole.HEM))
    found = fitted(draft, [note(f"{piece.name}.hem", "shorten", 20.0)])
    (told,) = found.findings
    assert "skirt_length" in told.sentence
    assert found.draft is draft
