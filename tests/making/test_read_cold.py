"""What was wrong in plans of six costumes that a cutter read cold, each thing once.

All that is asked is common practice of the workroom.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from drafting.blocks import all_blocks
from drafting.body import Body
from drafting.costume.choices import choose
from drafting.costume.garment import MadeGarment, make_garment
from drafting.draft.bias import hung_pieces
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.ground.scale import body_scale
from drafting.making.model import Step
from drafting.making.rules import unsound
from drafting.making.settings.feet import BY_HAND
from drafting.making.tables import tables
from drafting.making.words import plan_sentence
from drafting.reading.given import Given, Origin
from drafting.reading.style import CutWish, DartWish, GodetWish
from drafting.reading.style_made import EdgingWish
from drafting.reading.style_places import OutlinePlace
from tests.blocks.figures import chart_woman, errors
from tests.making.orders import KNIT, WOVEN, costume_of, order_of, uneven

YOKE = CutWish(
    "back",
    OutlinePlace("armhole", share=0.4),
    OutlinePlace("centre_back", distance=140.0, beside="neck"),
    "back-yoke",
    holds="neck",
)


def made(
    body: Body, block: str, cloth: Fabric = WOVEN, asked: dict[str, object] | None = None, **wishes: Any
) -> MadeGarment:
    kind = all_blocks()[block]
    given = {name: Given(value) for name, value in (asked or {}).items()}
    chosen = choose(kind, given, body_scale(body), Origin())
    return make_garment(body, cloth, kind, chosen, name=block, role="shell", **wishes)


def work(garment: MadeGarment, cloth: Fabric = WOVEN) -> tuple[Step, ...]:
    costume = costume_of(garment, cloth)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    return steps


def said(steps: tuple[Step, ...], name: str) -> list[dict[str, object]]:
    return [dict(one.facts) for step in steps for one in step.say if one.key.partition(".")[2] == name]


def test_a_coats_back_that_a_line_cuts_in_two_is_lined_whole() -> None:
    """The plan of a lined coat with a yoke of style could not be written; its lining was to be joined at a yoke
    that it does not have."""
    for body in (chart_woman(), uneven(chart_woman())):
        garment = made(body, "coat", style=(YOKE,))
        assert errors(garment) == []
        steps = work(garment)
        names = [one["names"] for one in said(steps, "lining")]
        assert names
        assert not any("yoke" in str(one) for one in names)
        assert any("centre back" in str(one) for one in names)
        assert [step for step in steps if step.verb == "fell"]


def keys_of(step: Step) -> set[str]:
    return {one.key.partition(".")[2] for one in step.say}


def cm(mm: float) -> str:
    return f"{mm / 10:.1f}".removesuffix(".0") + " cm"


def gathers(garment: MadeGarment, cloth: Fabric = WOVEN) -> list[list[str]]:
    """Return the rows of the table of gathers as they are printed."""
    (found,) = [one for one in tables(costume_of(garment, cloth)) if one.key == "table.gathers"]
    return [[cell if isinstance(cell, str) else plan_sentence(cell) for cell in row] for row in found.rows]


@pytest.mark.parametrize(
    ("block", "cloth", "holds"), [("fitted-top", WOVEN, "tape"), ("close-top", KNIT, "elastic")]
)
def test_two_puffs_are_gathered_before_they_are_joined_and_held_by_what_suits_the_arm(
    block: str, cloth: Fabric, holds: str
) -> None:
    """Nothing was said of gathering, and a stay tape shorter than the arm was to be sewn into a stretch sleeve."""
    garment = made(chart_woman(), block, cloth, {"sleeve_style": "two puffs"})
    (seam,) = [s for s in garment.draft.seams if s.name == "tiers"]
    above, below = (garment.draft.edge(side[0]) for side in (seam.a, seam.b))
    (step,) = [s for s in work(garment, cloth) if "tiers" in s.seams and s.verb == "join"]
    names = [one.key.partition(".")[2] for one in step.say]
    drawn = [dict(one.facts)["drawn"] for one in step.say if one.key.endswith(".gather_piece")]
    assert drawn == pytest.approx([above.length, below.length])
    assert names.index("gather_piece") < names.index("close_sleeve")
    (taken,) = [one for one in step.takes if one.what == holds]
    assert taken.amount == pytest.approx(2 * (above.sewn_length + 20.0))
    assert not any(one.what == "tape" for one in step.takes if holds == "elastic")
    rows = [row for row in gathers(garment, cloth) if "tiers" in row[0]]
    assert [row[2] for row in rows] == 2 * [cm(above.sewn_length)]
    assert [row[1] for row in rows] == [cm(above.length), cm(below.length)]


def test_a_stretch_sleeve_in_two_tiers_has_no_slit_where_the_plain_one_has_none() -> None:
    plain, puffs, lantern = (
        made(chart_woman(), "close-top", KNIT, {"sleeve_style": style}).draft
        for style in ("plain", "two puffs", "lantern")
    )
    for draft in (plain, puffs, lantern):
        assert not [e.name for p in draft.pieces for e in p.edges if e.role is EdgeRole.SLIT]


def test_gathers_stand_in_the_table_as_the_step_says_them() -> None:
    """Tiers on the fold were told by half their length, shoulders of both hands by twice it."""
    for garment in (
        made(chart_woman(), "skirt", asked={"skirt_cut": "tiered"}),
        made(chart_woman(), "bishop-top"),
        made(chart_woman(), "shirt", asked={"hem_fullness": 1.6}),
        made(
            chart_woman(),
            "bishop-top",
            asked={"bust_dart": "shoulder"},
            style=(DartWish("front", "bust_dart", None),),
        ),
    ):
        steps = work(garment)
        told = [dict(one.facts)["drawn"] for s in steps for one in s.say if one.key.endswith(".gather")]
        rows = {row[1] for row in gathers(garment)}
        assert told
        assert set(map(cm, told)) <= rows, garment.name


def hem_depths(garment: MadeGarment) -> dict[str, float]:
    """Return the cut depth of every hem of the shell by its piece, without what is cut off again."""
    return {
        cut.piece.name: cut.allowances[edge.name] - edge.drops
        for cut in garment.pattern.pieces
        for edge in cut.piece.edges
        if edge.role is EdgeRole.HEM and not cut.piece.material
    }


LEGGINGS = {"waist_finish": "casing", "stretch_share": 0.3, "leg": "flared"}


@pytest.mark.parametrize("edge", ["side", "inseam"])
def test_a_godet_in_a_leg_is_let_in_at_its_hem_and_not_at_the_casing_of_its_waist(edge: str) -> None:
    """One in the side of stretch trousers was let into the waist, point down."""
    garment = made(chart_woman(), "trouser", KNIT, LEGGINGS, style=(GodetWish("front", edge, None, 250.0, 300.0),))
    assert errors(garment) == []
    front = garment.draft["front"]
    low, high = front.outline.bounds[1], front.outline.bounds[3]
    (let_in,) = [e for e in front.edges if e.role is EdgeRole.GODET_SIDE]
    assert (let_in.path.start.imag + let_in.path.end.imag) / 2 < low + 0.25 * (high - low)
    depths = hem_depths(garment)
    assert set(depths) == {"front", "back", "front-godet"}
    assert len(set(depths.values())) == 1, "a hem has one depth all round"


def test_a_hem_has_one_depth_over_godets_and_parts_that_a_line_cut_off() -> None:
    """Tails were turned up 45 mm, the godets between them 10; a lower front 40, the back beside it 20."""
    tails = made(chart_woman(), "tailcoat", asked={"flare_way": "godets", "panels": 3})
    hanging = {name: depth for name, depth in hem_depths(tails).items() if "sleeve" not in name}
    assert any(name.startswith("godet") for name in hanging)
    assert len(set(hanging.values())) == 1
    across = CutWish(
        "front", OutlinePlace("side_lower", share=0.6), OutlinePlace("centre", share=0.4), "front-low", holds="hem"
    )
    top = made(chart_woman(), "fitted-top", style=(across,))
    assert len({depth for name, depth in hem_depths(top).items() if name != "sleeve"}) == 1


def test_a_line_across_a_leg_does_not_hang() -> None:
    """A lower front of leggings was cut 15 mm longer than the back beside it."""
    across = CutWish(
        "front", OutlinePlace("side", share=0.25), OutlinePlace("inseam", share=0.45), "front-low", holds="hem"
    )
    garment = made(chart_woman(), "trouser", KNIT, LEGGINGS, style=(across,))
    assert hung_pieces(garment.draft) == {}
    assert len(set(hem_depths(garment).values())) == 1


def test_a_peplum_drops_alike_all_round_whoever_wears_it() -> None:
    """On uneven shoulders its front, cut whole, was 15 mm longer than its backs."""
    for body in (chart_woman(), uneven(chart_woman())):
        garment = made(body, "peplum-top", asked={"peplum_angle": 250.0, "peplum_length": 230.0})
        drops = {
            e.drops for p in garment.draft.pieces for e in p.edges if e.role is EdgeRole.HEM and not p.material
        }
        assert len(drops) == 1


def test_an_armhole_that_is_faced_is_not_turned_in_as_well() -> None:
    """A waistcoat's front armhole was faced, clipped to a hair from its line and turned in over a tape."""
    wish = EdgingWish("facing", (("front", "armhole"),), 38.0)
    body = chart_woman().changed(bust_girth=930.0, high_bust_girth=930.0)
    garment = made(body, "waistcoat", style=(wish,))
    steps = work(garment)
    turned = [step for step in steps if {"turned_lined", "turned_straight_lined"} & keys_of(step)]
    assert turned
    assert not any(("front", "armhole") in step.edges for step in turned)
    assert any(("back", "armhole") in step.edges for step in turned)


@pytest.mark.parametrize("block", ["breeches", "trouser"])
def test_a_casing_of_wool_or_pile_is_stitched_by_machine(block: str) -> None:
    """Common practice: the elastic pulls at its casing whenever it is put on. It was caught by hand, a thread at a
    time, as a tailored hem is."""
    for cloth in (replace(WOVEN, fibre="wool", sort="felted"), replace(WOVEN, fibre="cotton", sort="pile")):
        garment = made(chart_woman(), block, cloth, {"waist_finish": "casing"})
        cased = [step for step in work(garment, cloth) if "casing" in keys_of(step)]
        assert cased
        assert all(step.setting is not None and step.setting.stitch not in BY_HAND for step in cased)


def test_a_zip_that_comes_apart_above_a_peplum_waits_for_the_waist_seam() -> None:
    """Common practice: no seam runs over a zip's box and pin. The waist was sewn across them, and the zip told to
    go as far as the hem, with the peplum hanging below."""
    for body in (chart_woman(), uneven(chart_woman())):
        garment = made(body, "peplum-top", asked={"fastening": "zip"})
        steps = work(garment)
        (zipped,) = [i for i, step in enumerate(steps) if "zip_apart" in keys_of(step)]
        waists = {seam.name for seam in garment.draft.seams if seam.kind is SeamKind.WAIST}
        sewn = [i for i, step in enumerate(steps) if waists & set(step.seams) and step.verb == "join"]
        backs = {p.name for p in garment.draft.pieces if p.role is PieceRole.BACK and not p.material}
        behind = [i for i in sewn if backs & {name.partition(".")[2] for name in steps[i].pieces}]
        assert behind
        assert max(behind) < zipped
        sides = [
            i for i, step in enumerate(steps) if any("side" in name for name in step.seams) and step.verb == "join"
        ]
        assert zipped < max(sides), "while it lies flat"
        (told,) = {f.sentence for f in garment.findings if "is taken apart there" in f.sentence}
        assert "as far as the waist seam" in told


def test_what_closes_between_both_hands_is_no_hands_own() -> None:
    """The plan of uneven shoulders put the zip and its hook at the centre back left."""
    garment = made(uneven(chart_woman()), "fitted-top")
    places = {n.where for n in garment.draft.notions if n.what in ("zip", "hook and eye")}
    assert places == {"centre back"}
    work(garment)


@pytest.mark.parametrize("block", ["coat", "trousers", "fitted-top", "peplum-top", "skirt"])
def test_seams_are_basted_in_the_order_in_which_they_are_sewn(block: str) -> None:
    """A line of style, which sides and panels run across, was to be basted last."""
    lines = {
        "coat": YOKE,
        "trousers": CutWish(
            "front", OutlinePlace("side", share=0.4), OutlinePlace("inseam", share=0.4), "low", holds="hem"
        ),
    }
    garment = made(chart_woman(), block, style=(lines[block],) if block in lines else ())
    steps = work(garment)
    (basted,) = [step for step in steps if step.verb == "baste" and "baste_body" in keys_of(step)]
    (names,) = [str(dict(one.facts)["names"]).split(", ") for one in basted.say if one.key.endswith("baste_body")]
    sewn = [name for step in steps if step.verb == "join" for name in step.seams]
    order = [name for name in names if name in sewn]
    assert len(order) > 1
    crossing = [seam for seam in garment.draft.seams if len({piece for piece, _ in seam.a}) > 1]
    for seam in crossing:
        parts = {piece for piece, _ in seam.a}
        between = [s.name for s in garment.draft.seams if {s.a[0][0], s.b[0][0]} == parts and s.name in order]
        if seam.name in order:
            assert all(order.index(name) < order.index(seam.name) for name in between)
    if block in lines:
        assert any(seam.name in order for seam in crossing)


@pytest.mark.parametrize("growth", [0.0, 30.0])
def test_what_a_sheer_hem_holds_to_be_let_down_is_not_trimmed_off(growth: float) -> None:
    """A growing child's hem of gauze was turned up 38 mm and then trimmed to 3 beside its fold."""
    gauze = replace(WOVEN, title="Gauze, invented", sort="sheer", mass=50.0, takes_fusible=False)
    steps = work(made(chart_woman(), "shirt", gauze, {"hem_growth": growth}), gauze)
    (hemmed,) = [step for step in steps if step.verb == "hem" and ("back", "hem") in step.edges]
    rolled = {"hem_rolled", "hem_rolled_by_hand"} & keys_of(hemmed)
    assert bool(rolled) == (growth == 0)
    assert ("hem_turned" in keys_of(hemmed)) == (growth > 0)
