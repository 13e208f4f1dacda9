"""A trim is told once, and cut as a maker cuts it: each hand's own length where they differ, one over the middle.

Lengths are sums of the drawn edges; 40 mm for the two ends of each length is common practice.
"""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import pytest

from drafting.blocks import all_blocks
from drafting.costume.choices import choose
from drafting.costume.garment import MadeGarment, draft_garment, make_garment
from drafting.costume.lays import laid_out
from drafting.costume.make import Made
from drafting.draft.piece import EdgeKind
from drafting.fabric import Fabric
from drafting.ground.lengths import in_unit, told
from drafting.ground.scale import body_scale
from drafting.making import planned
from drafting.making.model import Plan, Said
from drafting.making.rules import unsound
from drafting.making.stages.drawn import sewn_on_paper
from drafting.making.trim_lengths import laid_trims
from drafting.making.words import plan_sentence
from drafting.reading.given import Given, Origin
from drafting.reading.trimming import TrimWish
from tests.bodies import bdims
from tests.making.orders import WOVEN, costume_of, order_of, uneven

ENDS = 40.0

SHIRT = (
    ("back-yoke", "yoke", "lace"),
    ("front", "shoulder", "lace"),
    ("front", "armhole", "piping"),
    ("collar", "outer", "braid"),
    ("cuff", "end", "ribbon"),
    ("back", "hem", "fringe"),
)
ASKED: dict[str, tuple[str, object]] = {"shirt": ("back_shaping", "yoke"), "tailcoat": ("turned_cuff", 80.0)}
COAT = (("front", "lapel", "braid"), ("turned-cuff", "far", "braid"), ("tail-1", "hem", "ribbon"))


@cache
def trimmed(block: str, crooked: bool) -> Made:
    """Return a costume of one garment with trims on several edges, of a wearer even or not."""
    body = uneven(bdims()[3], 12.0) if crooked else bdims()[3]
    kind, (name, asked) = all_blocks()[block], ASKED[block]
    chosen = choose(kind, {name: Given(asked)}, body_scale(body), Origin())
    wishes = tuple(TrimWish(*one, 12.0, one[2] == "piping") for one in (SHIRT if block == "shirt" else COAT))
    return costume_of(make_garment(body, WOVEN, kind, chosen, name=block, role="shell", trims=wishes), WOVEN)


def lengths(garment: MadeGarment, piece: str, edge: str) -> list[float]:
    """Return the drawn lengths of an edge, by hand where it has them."""
    pieces = [p for p in garment.draft.pieces if piece in (p.name, p.base)]
    return [e.sewn_length for p in pieces for e in p.edges if edge in (e.name, e.base)]


@pytest.mark.parametrize("crooked", [False, True])
@pytest.mark.parametrize("block", ["shirt", "tailcoat"])
def test_every_trim_is_one_row_one_step_and_one_part_of_what_is_bought(block: str, crooked: bool) -> None:
    made = trimmed(block, crooked)
    plan: Plan = planned(laid_out(made, count=20, table=False))
    asked = SHIRT if block == "shirt" else COAT
    (table,) = [t for t in plan.tables if t.key == "table.trims"]
    steps = [s for s in plan.steps if s.verb == "trim" and s.along]
    assert len(table.rows) == len(steps) == len(asked)
    assert unsound(made, order_of(made)) == ()
    total = math.fsum(laid.total for laid in laid_trims(made.garments[0]) if not laid.trim.bias)
    sold = {k for _, _, k in asked if k != "piping"}
    rows = [row for row in plan.shopping if row.what in sold]
    assert math.fsum(amount for row in rows for _, amount in row.parts) == pytest.approx(total)
    for step in steps:
        words = " ".join(map(plan_sentence, step.say))
        assert " of the " in words
        assert not any(f" {hand} of the" in words or f" {hand} while" in words for hand in ("left", "right"))


def test_each_hand_has_its_own_length_and_an_edge_over_the_middle_has_one() -> None:
    shirt = trimmed("shirt", True).garments[0]
    found = {laid.place: laid for laid in laid_trims(shirt)}
    yoke = found["back-yoke", "yoke"]
    assert yoke.count == 1
    assert yoke.total == pytest.approx(sum(lengths(shirt, "back-yoke", "yoke")) + ENDS)
    assert yoke.by_hand == {}
    armhole = found["front", "armhole"]
    assert armhole.by_hand == {
        p.hand: pytest.approx(p["armhole"].sewn_length + ENDS) for p in shirt.draft.pieces if p.base == "front"
    }
    assert len(set(armhole.by_hand.values())) == 2
    collar = found["collar", "outer"]  # two layers, one of them seen
    assert collar.count == 1
    assert collar.total == pytest.approx(sum(lengths(shirt, "collar", "outer")) + ENDS)


@pytest.mark.parametrize("by", [2.0, 3.0, 4.0, 6.0, 12.0])
def test_two_lengths_that_are_told_are_told_apart(by: float) -> None:
    """Along every edge of the wearer's two hands, in cm and in inches; where they are one, the longer is cut."""
    body = uneven(bdims()[3], by)
    shirt = draft_garment(body, WOVEN, "shirt", {})
    pieces = [piece for piece in shirt.draft.pieces if not piece.material and piece.hand]
    edges = [(p.name, e.name) for p in pieces for e in p.edges if e.kind is not EdgeKind.FOLD]
    whole = replace(shirt, trims=tuple(TrimWish(*ref, "braid", 10.0) for ref in edges))
    found = [laid for laid in laid_trims(whole) if len(laid.refs) == 2]
    assert len(found) > 10
    for laid in found:
        drawn = [shirt.draft.edge(ref).sewn_length + ENDS for ref in laid.refs]
        assert max(cut.each for cut in laid.cuts) == pytest.approx(max(drawn))
        for unit in ("cm", "in"):
            shown = [in_unit(told(each), unit) for each in laid.by_hand.values()]
            assert len(set(shown)) == len(shown), (laid.place, shown)


def test_both_lengths_are_read_in_the_table_and_in_the_step() -> None:
    made = trimmed("shirt", True)
    plan = planned(laid_out(made, count=20, table=False))
    (laid,) = [one for one in laid_trims(made.garments[0]) if one.place == ("front", "armhole")]
    shown = {hand: f"{each / 10:.1f} cm" for hand, each in laid.by_hand.items()}
    (table,) = [t for t in plan.tables if t.key == "table.trims"]
    (row,) = [r for r in table.rows if isinstance(r[0], Said) and plan_sentence(r[0]) == "shirt: front armhole"]
    cut = row[3]
    assert isinstance(cut, Said)
    assert plan_sentence(cut) == f"left {shown['left']}, right {shown['right']}"
    (step,) = [s for s in plan.steps if s.along and s.along[0][1] == "armhole"]
    words = " ".join(map(plan_sentence, step.say))
    assert f"{shown['left']} for the left" in words
    assert f"{shown['right']} for the right" in words


def test_of_a_cuff_of_two_layers_the_one_that_is_seen_is_trimmed() -> None:
    coat = trimmed("tailcoat", False).garments[0]
    (laid,) = [one for one in laid_trims(coat) if one.place == ("turned-cuff", "far")]
    assert coat.draft["turned-cuff"].count == 4
    assert laid.count == 2
    assert laid.total == pytest.approx(2 * (coat.draft["turned-cuff"]["far"].length + ENDS))


def test_an_edge_of_a_half_away_from_its_fold_has_two_lengths_with_their_own_ends() -> None:
    shirt = replace(trimmed("shirt", False).garments[0], trims=(TrimWish("back", "armhole", "braid", 8.0),))
    (laid,) = laid_trims(shirt)
    each = shirt.draft["back"]["armhole"].length + ENDS
    assert laid.count == 2
    assert laid.total == pytest.approx(2 * each)


def test_a_second_row_along_the_same_edge_is_a_trim_of_its_own() -> None:
    shirt = trimmed("shirt", True).garments[0]
    hands = [TrimWish(f"front-{hand}", "shoulder", "braid", 8.0) for hand in ("left", "right")]
    found = laid_trims(replace(shirt, trims=(*hands, *hands)))
    assert [laid.refs for laid in found] == [tuple((t.piece, t.edge) for t in hands)] * 2


@pytest.mark.parametrize("crooked", [False, True])
def test_a_step_draws_its_own_trim_where_it_is_seen(crooked: bool) -> None:
    """A braid on a lapel lies on the facing, and was not drawn there."""
    made = trimmed("tailcoat", crooked)
    drawn = {s.along: d for s, _, d in sewn_on_paper(made, order_of(made)) if s.verb == "trim" and s.along}
    assert len(drawn) == len(COAT)
    assert all(drawn.values())


def test_both_hands_of_a_pleat_are_barred_at_its_top() -> None:
    """The right hand's ring runs the other way round, and its bar was told at the pleat's long edge."""
    (bars,) = [s for s in order_of(trimmed("tailcoat", True)) if s.verb == "bar"]
    assert {edge for piece, edge in bars.along if piece.startswith("back-")} == {"vent_top", "pleat_top"}
    assert plan_sentence(bars.say[0]).count("back pleat top") == 1


def piped(width: float, *, bias: bool = True, block: str = "shirt", cloth: Fabric = WOVEN) -> Made:
    wish = TrimWish("back", "hem", "piping", width, bias)
    kind = all_blocks()[block]
    chosen = choose(kind, {}, body_scale(bdims()[3]), Origin())
    made = make_garment(bdims()[3], cloth, kind, chosen, name=block, role="shell", trims=(wish,))
    return costume_of(made, cloth)


def test_piping_lies_on_before_the_edge_is_turned_along_it() -> None:
    """It was basted into a seam that was never sewn, onto a hem that had been turned up and caught by hand."""
    made = piped(30.0)
    steps = order_of(made)
    (on,) = [i for i, step in enumerate(steps) if step.verb == "trim" and step.along]
    (hem,) = [i for i, step in enumerate(steps) if ("back", "hem") in step.edges]
    assert on < hem
    assert unsound(made, steps) == ()
    late = (*steps[:on], *steps[on + 1 : hem + 1], steps[on], *steps[hem + 1 :])
    assert any("turned already" in fault for fault in unsound(made, late))


def test_piping_in_cloth_that_keeps_its_holes_is_not_basted() -> None:
    vinyl = replace(WOVEN, sort="coated", takes_fusible=False, iron_dots=0)
    (on,) = [step for step in order_of(piped(30.0, cloth=vinyl)) if step.verb == "trim" and step.along]
    words = " ".join(map(plan_sentence, on.say))
    assert "no basting" in words
    assert "Baste" not in words
    assert (
        "turned in along this row" in words
    )  # once, before the hem is turned: not a second time on the turned hem


def test_the_cord_of_piping_that_is_cut_is_bought_and_what_is_bought_has_its_own() -> None:
    for bias, what in ((True, "cord"), (False, "piping")):
        made = laid_out(piped(30.0, bias=bias), count=20, table=False)
        rows = [row for row in planned(made).shopping if row.what in ("cord", "piping")]
        assert [row.what for row in rows] == [what]
        assert rows[0].amount >= laid_trims(made.garments[0])[0].total


@pytest.mark.parametrize(("width", "narrow"), [(3.0, True), (20.0, True), (24.0, False), (30.0, False)])
def test_a_strip_has_room_for_a_cord_and_both_its_allowances(width: float, narrow: bool) -> None:
    # Plane geometry: twice 10 mm of allowance, and once round a cord of 1 mm.
    (garment,) = piped(width).garments
    assert any(f.check == "piping" for f in garment.findings) is narrow
    (bought,) = piped(width, bias=False).garments
    assert not any(f.check == "piping" for f in bought.findings)
