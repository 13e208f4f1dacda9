"""A note at a hem whose length a choice decides is answered with that choice, which draws all anew (ours)."""

from __future__ import annotations

import pytest

from drafting.blocks import all_blocks
from drafting.costume.choices import choose
from drafting.costume.garment import draft_garment, wished
from drafting.draft.by_role import edges_as
from drafting.draft.roles import EdgeRole
from drafting.fitting.applied import fitted
from drafting.ground.scale import body_scale
from drafting.reading.given import Origin
from tests.blocks.figures import chart_woman
from tests.fitting.test_followers import note
from tests.making.orders import uneven


@pytest.mark.parametrize("cut", ["straight", "gored", "half circle", "tiered"])
def test_a_skirts_hem_is_answered_with_its_length(cut: str) -> None:
    draft = draft_garment(chart_woman(), None, "skirt", {"skirt_cut": cut}).draft
    piece = next(p for p in draft.pieces if edges_as(p, EdgeRole.HEM))
    found = fitted(draft, [note(f"{piece.name}.hem", "shorten", 20.0)])
    (told,) = found.findings
    assert "skirt_length" in told.sentence
    assert found.draft is draft


def test_a_capes_hem_is_answered_with_its_length_and_not_sent_back_to_where_it_was_noted() -> None:
    draft = draft_garment(chart_woman(), None, "cape").draft
    piece = next(p for p in draft.pieces if edges_as(p, EdgeRole.HEM) and not p.material)
    found = fitted(draft, [note(f"{piece.name}.hem", "shorten", 20.0)])
    (told,) = found.findings
    assert "cape_length" in told.sentence
    assert "note it at an edge" not in told.sentence
    assert found.draft is draft


def test_a_hip_of_gores_is_sent_to_a_seam_that_the_skirt_has() -> None:
    """Common practice: a gored skirt is fitted at its panel seams, as it may have none at the side."""
    draft = draft_garment(chart_woman(), None, "skirt", {"skirt_cut": "gored", "gores": 6}).draft
    (told,) = fitted(draft, [note("hip", "let out", 10.0)]).findings
    named = told.sentence.rpartition("as at ")[2].split(".")
    assert draft[named[0]][named[1]].role is EdgeRole.PANEL


def test_what_both_hands_did_is_told_once() -> None:
    """A centre front stood in the sentence twice, by its two hands, with figures that read alike."""
    body = uneven(chart_woman())
    kind = all_blocks()["cape"]
    chosen = choose(kind, {}, body_scale(body), Origin())
    _, _, done = wished(body, None, kind, chosen, (), [note("cape-front.neck", "lower", 9.0)])
    told = done[0].said.partition(": ")[2].split(", ")
    parts = [part.partition(" \N{MATHEMATICAL LEFT ANGLE BRACKET}")[0] for part in told]
    assert len(parts) == len(set(parts)) > 1
