"""Bars that run on: what is laid on one place of a repeat meets at the seams, by a ruler on the lay.

That bars of a plaid meet at the side seam, and that a cloth is matched as it lies once it is washed, is common
practice; what the wash takes is ISO 5077.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from drafting.body import Body
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.lays import laid_out
from drafting.draft.by_role import the_edge
from drafting.draft.roles import EdgeRole, Half, PieceRole
from drafting.fabric import Fabric
from drafting.geometry import line
from drafting.ground.lengths import in_unit
from drafting.layout import Lay, Part, cloth_of, lay_out
from drafting.making import planned
from drafting.making.words import plan_sentence
from tests.blocks.figures import chart_man, chart_woman
from tests.making.orders import costume_of

PLAID = Fabric("Plaid", usable_width=1500, sort="plain", fibre="wool", repeat_along=180.0, repeat_across=150.0)
CHOSEN = {"trousers": {}, "skirt": {"skirt_cut": "straight"}}


def lay_of(made: MadeGarment, fabric: Fabric) -> Lay:
    parts = tuple(Part(made.name, cut) for cut in made.pattern.pieces if not cut.piece.material)
    return lay_out(parts, cloth_of("shell", fabric), count=10, table=False)


def low_ends(lay: Lay) -> Iterator[float]:
    """Yield where the lower end of each side seam lies along the cloth, mm."""
    for spot in lay.packing.spots:
        outline = lay.outline(spot)
        if outline.part.cut.piece.role in (PieceRole.FRONT, PieceRole.BACK):
            side = the_edge(outline.part.cut.piece, EdgeRole.SIDE).path
            laid = outline.placed(spot, side.mapped(outline.base))
            yield (laid.start if side.start.imag < side.end.imag else laid.end).real


@pytest.mark.parametrize("body", [chart_man(), chart_woman(waist_girth=900.0, hip_girth=920.0)])
@pytest.mark.parametrize("block", CHOSEN)
def test_bars_meet_at_the_side_seam(body: Body, block: str) -> None:
    lay = lay_of(draft_garment(body, PLAID, block, CHOSEN[block]), PLAID)
    first, *others = low_ends(lay)
    assert len(others) >= 2
    for place in others:
        assert (place - first + 90.0) % 180.0 - 90.0 == pytest.approx(0.0, abs=1.0), block


def test_pieces_that_shall_match_lie_the_same_way() -> None:
    """Two that lie end for end match along one line alone (plane geometry)."""
    for block in ("shirt", "trousers", "coat"):
        lay = lay_of(draft_garment(chart_woman(), PLAID, block, {}), PLAID)
        assert {spot.pose.turn for spot in lay.packing.spots} == {0}


@pytest.mark.parametrize("block", ["shirt", "fitted-top", "mutton-top"])
def test_a_sleeve_meets_the_front_at_its_front_notch(block: str) -> None:
    """By a ruler on the lay; where a sleeve is matched is common practice."""
    lay = lay_of(draft_garment(chart_woman(), PLAID, block, {}), PLAID)
    places = {PieceRole.FRONT: [], PieceRole.SLEEVE: []}
    for spot in lay.packing.spots:
        outline = lay.outline(spot)
        piece = outline.part.cut.piece
        for edge in piece.edges if piece.role in places else ():
            cap = edge.role is EdgeRole.CAP and edge.half is Half.FRONT
            if cap or edge.role is EdgeRole.ARMHOLE:
                low = min((edge.path.at(n.at) for n in edge.notches), key=lambda p: p.imag)
                marked = outline.placed(spot, line(low, low + 1).mapped(outline.base))
                places[piece.role].append(marked.start.real)
    fronts, sleeves = places.values()
    assert fronts
    assert sleeves
    for place in (*fronts, *sleeves):
        assert (place - fronts[0] + 90.0) % 180.0 - 90.0 == pytest.approx(0.0, abs=1.0)


def test_a_repeat_is_as_long_as_the_wash_leaves_it() -> None:
    washed = Fabric(
        "Gingham",
        care="wash at 60",
        shrinkage_along=0.05,
        shrinkage_across=0.02,
        repeat_along=100.0,
        repeat_across=50.0,
    )
    cloth = cloth_of("shell", washed)
    assert (cloth.repeat_along, cloth.repeat_across) == pytest.approx((95.0, 49.0))
    whole = cloth_of("shell", washed, unwashed=True)
    assert (whole.repeat_along, whole.repeat_across) == (100.0, 50.0)
    lay = lay_of(draft_garment(chart_man(), washed, "trousers", {}), washed)
    told = [in_unit(f.sentence, "cm") for f in lay.findings if f.check == "repeat"]
    assert any("9.5 cm" in one and "10 cm before the wash" in one for one in told)


def test_the_plan_says_how_a_plaid_is_laid_and_sewn() -> None:
    made = laid_out(costume_of(draft_garment(chart_man(), PLAID, "trousers", {}), PLAID))
    steps = planned(made).steps
    cut = [plan_sentence(one) for step in steps if step.verb == "cut" for one in step.say]
    assert any("every 18 cm along" in one and "hip line" in one for one in cut)
    assert any("every 15 cm across" in one for one in cut)
    barred = [s for s in steps if s.setting for one in s.setting.why if one.key == "set.repeat"]
    assert barred
    assert all("dart" not in name for step in barred for name in step.seams)
