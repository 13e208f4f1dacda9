"""A facing along a hem is the hem: on once the hem is level, caught down, its interfacing no wider than is sold.

All is common practice of the workroom.
"""

from __future__ import annotations

import itertools
import math
from functools import cache

import pytest

from drafting.costume.make import Made
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import SeamKind
from drafting.geometry import line
from drafting.making.model import Step
from drafting.making.rules import unsound
from drafting.making.words import text
from drafting.reading.style_made import EdgingWish
from drafting.shaping.details.lapped_parts import lapped_parts, wide_parts_said
from tests.alter.test_style_added import made as styled
from tests.making.orders import WOVEN, costume_of, order_of
from tests.making.test_order_rules import index, moved, seam, verb
from tests.making.test_plans_read import keys

FUSIBLE = 900.0
"""mm: the narrow width in which fusibles are sold; folded, half of it lies on either side (common practice)."""

FACED = {
    "cape": ("cape", (("cape-front", "hem"), ("cape-back", "hem"))),
    "skirt": ("skirt", (("front", "hem"), ("back", "hem"))),
}


@cache
def faced(name: str) -> tuple[Made, tuple[Step, ...]]:
    block, edges = FACED[name]
    costume = costume_of(styled(block, EdgingWish("hem facing", edges, 50.0)), WOVEN)
    return costume, order_of(costume)


@pytest.mark.parametrize("name", FACED)
def test_a_hem_is_faced_when_all_that_ends_in_it_is_sewn_and_what_hangs_is_level(name: str) -> None:
    costume, steps = faced(name)
    assert unsound(costume, steps) == ()
    on = index(steps, lambda step: "facing_caught" in keys(step))
    assert not [step for step in steps[on + 1 :] if step.seams]
    early = unsound(costume, moved(steps, on, index(steps, verb("join"))))
    assert any("faces a hem before" in one for one in early)


def test_a_faced_hem_that_hangs_on_the_bias_is_cut_longer_and_levelled_first() -> None:
    costume, steps = faced("cape")
    on, level = (index(steps, lambda step, key=key: key in keys(step)) for key in ("facing_caught", "level"))
    assert level < on
    wrong = unsound(costume, moved(steps, level, on))
    assert any("faces a hem before it is levelled" in one for one in wrong)
    cut = {one.piece.name: one for one in costume.garments[0].pattern.pieces}
    assert cut["cape-front"].allowances["hem"] == 10.0 + 15.0  # a seam, and what is cut away when it is levelled


def test_facing_ends_are_felled_to_a_zip_only_where_there_is_one() -> None:
    _, cape = faced("cape")
    (ends,) = [step for step in cape if any("facing_ends" in key for key in keys(step))]
    assert "zip" not in text(ends.say[0])
    top = costume_of(styled("sleeveless-top"), WOVEN)
    (ends,) = [step for step in order_of(top) if any("facing_ends" in key for key in keys(step))]
    assert "zip" in text(ends.say[0])


def test_a_stand_alone_is_made_up_as_a_stand() -> None:
    _, steps = faced("cape")
    (stand,) = [step for step in steps if "stand_made" in keys(step)]
    assert "fall" not in text(stand.say[0])


def cloth(piece: Piece) -> float:
    """Return the mm2 that are cut of a piece, both halves and hands."""
    return piece.area * piece.count * (2 if piece.fold_edge else 1)


def test_interfacing_too_wide_for_a_folded_fusible_is_cut_in_lapped_parts() -> None:
    costume, steps = faced("cape")
    draft = costume.garments[0].draft
    for name in ("cape-front-hem-facing", "cape-back-hem-facing"):
        assert name in draft
        parts = [piece for piece in draft.pieces if name in piece.stiffens]
        assert math.fsum(map(cloth, parts)) == pytest.approx(cloth(draft[name]), rel=1e-6)
        for part in parts:
            assert part.grain == 90.0
            low, _, high, _ = part.outline.bounds
            assert high - low <= FUSIBLE / 2 - 2 * 10.0  # its lap or its 3 mm on either side, and the selvedge
    fused = [step for step in steps if step.verb == "fuse" and "hem facing" in text(step.say[0])]
    assert fused
    assert all(("lapped" in keys(step)) is (len(step.pieces) > 2) for step in fused)
    assert any("lapped" in keys(step) for step in fused)


def test_the_lapped_parts_of_uneven_halves_are_told_by_their_hand() -> None:
    block, edges = FACED["cape"]
    costume = costume_of(styled(block, EdgingWish("hem facing", edges, 50.0), uneven=True), WOVEN)
    fused = [s for s in order_of(costume) if s.verb == "fuse" and "lapped" in keys(s)]
    assert fused
    for step in fused:
        assert ("each_hand" in keys(step)) is any(piece.endswith("-left") for piece in step.pieces)
    assert any("each_hand" in keys(step) for step in fused)


def test_the_ring_of_a_sleeve_is_closed_before_its_hem_is_faced() -> None:
    costume = costume_of(styled("fitted-top", EdgingWish("hem facing", (("sleeve", "hem"),), 40.0)), WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    on = index(steps, lambda step: "facing_caught" in keys(step))
    closing = [one.name for one in costume.garments[0].draft.seams if one.kind is SeamKind.SLEEVE]
    assert all(index(steps, seam(name)) < on for name in closing)
    assert closing


def test_a_ring_has_as_many_parts_as_are_said_and_what_is_wider_still_is_told() -> None:
    """24 times 400 mm are 9.6 m (arithmetic)."""
    for length, said in ((9590.0, 0), (9700.0, 24)):
        corners = [(0.0, 50.0), (0.0, 0.0), (length, 0.0), (length, 50.0)]
        points = [complex(*corner) for corner in corners]
        sides = [line(a, b) for a, b in itertools.pairwise((*points, points[0]))]
        names = ("end", "along", "other", "inner")
        ring = Piece("ring", tuple(Edge(n, p) for n, p in zip(names, sides, strict=True)))
        parts = lapped_parts(ring, "along")
        assert len(parts) == 24
        assert len([f for f in wide_parts_said(parts) if f.level == "note"]) == said
