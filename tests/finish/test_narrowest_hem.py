"""The narrowest hem there is, however it curves (common practice)."""

from __future__ import annotations

from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.finish import FinishChoices
from drafting.finish.hems import flat_depth, turned_up
from drafting.geometry import line
from drafting.geometry.arc import arc
from tests.published import span_mm


def test_no_hem_of_a_person_is_narrower_than_can_be_turned_however_it_curves() -> None:
    # Common practice: 10 to 15 where a hem is curved; a quarter of a ring of 200 mm would lie flat at less.
    low = span_mm("hem-curved")[0]
    outer, inner = arc(0j, -200j, 90), arc(0j, 60 + 0j, -90)
    ring = (outer, line(outer.end, inner.start), inner, line(inner.end, outer.start))
    kinds = (EdgeKind.HEM, *(EdgeKind.SEAM,) * 3)
    roles = (EdgeRole.HEM, *(EdgeRole.PLAIN,) * 3)
    sides = zip("abcd", ring, kinds, roles, strict=True)
    piece = Piece(
        "ring", tuple(Edge(n, path, kind, role=what) for n, path, kind, what in sides), role=PieceRole.TAIL
    )
    assert flat_depth(outer) < low
    (turned,) = turned_up(Draft((piece,)), None, FinishChoices(), 1.0).pieces
    assert turned["a"].allowance == low
