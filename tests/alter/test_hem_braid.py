"""A stiff woven braid along the hem of what hangs: how much is bought, how far it is drawn up, when it goes on.

Lengths are measured by shapely, rings of a circle by their formula. That one edge lies on the hem line, that the
thread along the other is drawn up, and that cut ends are lapped or turned in and bound, is common practice.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from shapely.geometry import LineString

from drafting.body import Body
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.stand_in import stand_ins
from drafting.draft.by_role import edges_as, is_shell
from drafting.draft.draft import Notion
from drafting.draft.roles import SLEEVES, EdgeRole
from drafting.geometry import Path
from drafting.ground.errors import DraftError
from drafting.making import planned
from drafting.making.rules import unsound
from drafting.worn.cloth.rods import BRAID, OPEN
from drafting.worn.sewn import sewn_mesh
from tests.alter.test_hem_bone import RUNS
from tests.alter.test_stiff_hem import GARMENTS
from tests.blocks.figures import chart_woman, errors
from tests.drawn_bodies import drawn, far
from tests.making.orders import WOVEN, costume_of, order_of
from tests.worn.garments import PLIES
from tests.worn.unusual import child

WIDE = 50.0


def braided(body: Body, garment: str, **more: object) -> MadeGarment:
    block, own = GARMENTS[garment]
    slit = {"walking_slit": "yes"} if garment == "straight" else {}
    return draft_garment(body, WOVEN, block, {"stiff_hem": "braid", "hem_braid": WIDE, **slit, **own, **more})


def braids(made: MadeGarment) -> list[Notion]:
    return [notion for notion in made.draft.notions if notion.what == "hem braid"]


def measured(path: Path) -> float:
    return float(LineString([(z.real, z.imag) for z in path.points(0.01)]).length)


def hem(made: MadeGarment) -> float:
    """Return the length of the hem on both hands, with what it runs on along the bottom of a front."""
    return sum(
        measured(edge.path) * (2 if piece.both_hands else 1)
        for piece in made.draft.pieces
        if is_shell(piece) and piece.role not in SLEEVES and edges_as(piece, EdgeRole.HEM)
        for edge in edges_as(piece, EdgeRole.HEM, EdgeRole.BOTTOM)
    )


@pytest.mark.parametrize("garment", RUNS)
def test_it_is_as_long_as_the_hem_and_what_its_ends_take(garment: str) -> None:
    for body in (chart_woman(), *drawn(2), *far()[::24]):
        made = braided(body, garment)
        assert errors(made) == [], body.title
        cut = braids(made)
        assert [(n.count, n.loop is not None) for n in cut] == RUNS[garment][0], body.title
        pieces = sum(n.count for n in cut)
        bought = sum(n.count * (n.cut_length or 0.0) for n in cut)
        assert hem(made) + 25.0 * pieces <= bought <= hem(made) + 40.0 * pieces, body.title


def test_of_a_half_circle_its_thread_draws_up_a_half_circle_of_its_width() -> None:
    """By the formula: half a circle whose radius is less by the braid's width is shorter by pi times that."""
    (said,) = (f for f in braided(chart_woman(), "half circle").findings if f.check == "stiff hem")
    assert said.value is not None
    assert said.wanted is not None
    assert float(said.value) - float(said.wanted) == pytest.approx(math.pi * WIDE, abs=1.0)
    assert f"drawn up by {math.pi * WIDE / 10:.1f} cm" in said.said("cm")
    (straight,) = (f for f in braided(chart_woman(), "tiers").findings if f.check == "stiff hem")
    assert "drawn up" not in straight.said("cm")


@pytest.mark.parametrize("garment", RUNS)
def test_it_is_stitched_on_once_the_hem_is_level_and_before_it_is_turned_up(garment: str) -> None:
    costume = costume_of(braided(chart_woman(), garment), WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    (step,) = (one for one in steps if "do.hem_braid" in {said.key for said in one.say})
    marked = {p.name for p in costume.garments[0].draft.pieces if any(m.what == "hem braid" for m in p.placements)}
    hems = [one for one in steps if one.verb == "hem" and marked & {piece for piece, _ in one.edges}]
    assert hems
    assert step.n < min(one.n for one in hems)
    late = [replace(one, n=n) for n, one in enumerate([*(s for s in steps if s is not step), step], 1)]
    assert [said for said in unsound(costume, late) if "turned up over it" in said]
    assert all(one.n < step.n for one in steps if one.verb == "hang" and one.garment == step.garment)
    closed = any(ring for _, ring in RUNS[garment][0])
    assert ("do.hem_braid_ring" in {said.key for said in step.say}) == closed
    assert len(step.notions) == len(braids(costume.garments[0]))


def test_the_plan_buys_it_by_its_width_and_lists_it_to_cut() -> None:
    made = costume_of(braided(chart_woman(), "gored"), WOVEN)
    plan = planned(made)
    (cut,) = (n.cut_length for n in braids(made.garments[0]))
    assert cut is not None
    (row,) = (one for one in plan.shopping if one.what == "hem braid")
    assert cut <= row.amount <= cut + 100.0
    assert dict(row.detail.facts)["size"] == WIDE
    (table,) = (one for one in plan.tables if one.key == "table.trims")
    assert len(table.rows) == 1


def test_where_the_hands_differ_it_is_one_ring_and_the_order_sound() -> None:
    made = braided(stand_ins()[1], "gored")
    assert errors(made) == []
    assert [n.count for n in braids(made)] == [1]
    costume = costume_of(made, WOVEN)
    assert unsound(costume, order_of(costume)) == ()


def test_worn_a_rod_of_the_braids_own_stiffness_runs_all_along_its_upper_edge() -> None:
    made = braided(chart_woman(), "half circle")
    (rod,) = sewn_mesh(made.draft, "skirt", PLIES, 40.0).rods
    assert rod.stiffness == pytest.approx(WIDE * BRAID)
    assert BRAID * 150.0 < OPEN  # the widest that is sold is less stiff than a bone (common practice)
    assert len(rod.vertices) >= hem(made) / 2 / 60.0
    assert sewn_mesh(draft_garment(chart_woman(), WOVEN, "skirt", {}).draft, "skirt", PLIES, 40.0).rods == ()


def test_a_braid_wider_than_its_piece_is_high_is_refused_in_words() -> None:
    with pytest.raises(DraftError, match="hem_braid"):
        braided(child(1040.0), "peplum", hem_braid=290.0)
