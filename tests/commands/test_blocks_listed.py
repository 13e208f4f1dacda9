"""`drafting blocks NAME`: which pieces there are, and which a choice gives in their place."""

from __future__ import annotations

import pytest

from drafting.commands.cli import main
from drafting.costume.garment import draft_garment
from tests.making.figures import made


def test_a_block_tells_which_pieces_a_choice_gives_in_place_of_the_usual_ones(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """A pocket of a gored skirt names a gore: every piece of every cut stands in the list, with its edges."""
    assert main(["blocks", "skirt"]) == 0
    said = " ".join(capsys.readouterr().out.split())
    for cut in ("gored", "half circle", "tiered"):
        draft = draft_garment(made("lamplighter").costume.wearer, None, "skirt", {"skirt_cut": cut}).draft
        for piece in draft.pieces:
            edges = ", ".join(edge.name for edge in piece.edges)
            if "-side-" in piece.name:  # how many strips there are is each wearer's and cloth's
                assert "tier-3-side-1 and so on, with the edges of the front" in said
                continue
            assert f"{piece.name} ({edges})" in said or f"{piece.name}: {edges}" in said, piece.name
    assert "no front, back" in said
    assert "lining = whole: front-lining (" in said
