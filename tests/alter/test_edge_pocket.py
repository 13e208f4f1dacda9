"""Slant and in-seam pockets, and any pocket on one hand alone: plain geometry, shapely, the order, refusals."""

from __future__ import annotations

from dataclasses import replace

import pytest
from shapely.geometry import LineString, Point, Polygon

from drafting.blocks import all_blocks
from drafting.costume.choices import choose
from drafting.costume.garment import draft_garment, make_garment
from drafting.draft.by_role import the_edge
from drafting.draft.roles import EdgeRole
from drafting.ground.errors import InputError
from drafting.ground.scale import body_scale
from drafting.making.rules import unsound
from drafting.making.stages.drawn import sewn_on_paper
from drafting.reading.given import Given, Origin
from drafting.reading.pockets import PocketWish
from drafting.shaping.details.edge_pockets import in_seam
from tests.alter.test_pocket import WELT, made, ring
from tests.blocks.figures import chart_woman, errors
from tests.bodies import ansur
from tests.making.orders import KNIT, WOVEN, costume_of, order_of

SLANT = PocketWish("front", "waist_side", "slant", width=45.0, height=170.0, inside=0.0)
IN_SEAM = PocketWish("front", "side", "in-seam", width=160.0, height=120.0, inside=0.0, along=0.75)


def test_a_slant_pocket_fills_the_corner_that_its_mouth_cuts_off_and_moves_nothing_else() -> None:
    """Plain geometry by shapely: back of the pocket = bag + corner; the corner is what lies beyond the mouth."""
    plain, garment = made("trousers"), made("trousers", SLANT)
    assert errors(garment) == []
    by_side = made("trousers", replace(SLANT, edge="side")).draft  # the seam named in place of the waist
    bag, back = (ring(garment.draft[f"pocket-1-{part}"]) for part in ("bag", "back"))
    assert ring(by_side["pocket-1-back"]).equals(back)
    front = garment.draft["front"]
    mouth = next(m.path for m in front.placements if m.name == "pocket-1 mouth")
    x, y = mouth.start - front["waist_side"].path.start, mouth.end - front["side"].path.end
    assert (abs(x), abs(y)) == pytest.approx((45.0, 170.0), abs=2.0)  # along a curve they are a little shorter
    corner = front["waist_side"].path.start
    triangle = abs(((mouth.start - corner).conjugate() * (mouth.end - corner)).imag) / 2
    assert back.area - bag.area == pytest.approx(triangle, rel=0.1)  # the side's curve lies off the chord
    assert [garment.draft[f"pocket-1-{part}"].count for part in ("bag", "back", "stay")] == [2, 2, 2]
    assert front.edges == plain.draft["front"].edges
    assert garment.draft.girths == plain.draft.girths
    waist = {edge.name: edge.length for edge in garment.draft["pocket-1-back"].edges}
    assert waist["waist"] == pytest.approx(45.0, abs=0.01)
    assert waist["side"] == pytest.approx(170.0, abs=0.01)


def test_a_pocket_in_a_seam_is_notched_on_both_sides_where_its_mouth_ends() -> None:
    # Common practice: both edges are notched at the ends of the mouth; the hind bag is of the garment's own cloth.
    garment = made("skirt", IN_SEAM)
    assert errors(garment) == []
    cut = {p.piece.name: p.piece for p in garment.pattern.pieces}
    for piece in ("front", "back"):
        found = sorted(n.at for n in cut[piece]["side"].notches if "mouth" in n.name)
        assert len(found) == 2
        assert found[1] - found[0] == pytest.approx(160.0, abs=0.5)
    own = [n.at for n in cut["pocket-1-bag"]["seam"].notches]
    assert own[1] - own[0] == pytest.approx(160.0, abs=0.01)
    assert (cut["pocket-1-bag"].count, cut["pocket-1-back"].count) == (2, 2)
    assert cut["pocket-1-back"].cut_from == ""


@pytest.mark.parametrize("leg", ["straight", "flared"])
@pytest.mark.parametrize("deep", [120.0, 160.0, 200.0, 260.0])
def test_a_bag_in_a_side_seam_takes_a_hand_however_deep_it_was_asked_for(leg: str, deep: float) -> None:
    """Common practice: a hand and a wrist deep, 140 to 160 wide. Where a leg slopes in, a deep bag was drawn in to
    60 mm wide and 104 deep, or refused."""
    for body in ansur(8):
        garment = draft_garment(body, None, "trousers", {"leg": leg})
        front = garment.draft["front"]
        side = the_edge(front, EdgeRole.SIDE)
        pocket = in_seam(front, side.name, side.length - 140.0, 160.0, deep)
        x0, y0, x1, _ = pocket.bag.bounds
        assert x1 - x0 >= 140.0
        assert pocket.mouth.end.imag - y0 >= min(deep, 150.0) - 0.1
        whole = Polygon([(p.real, p.imag) for p in front.outline.flattened(0.05)])
        bag = Polygon([(p.real, p.imag) for p in pocket.bag.flattened(0.05)])
        assert bag.difference(whole).area < 20.0


@pytest.mark.parametrize(("block", "wish"), [("trousers", SLANT), ("skirt", IN_SEAM)])
def test_pockets_at_an_edge_are_sewn_in_order_in_any_cloth(block: str, wish: PocketWish) -> None:
    garment = made(block, wish)
    for fabric in (WOVEN, KNIT):
        costume = costume_of(garment, fabric)
        steps = order_of(costume)
        assert unsound(costume, steps) == ()
        bag = next(i for i, step in enumerate(steps) if "pocket 1 bag" in step.seams)
        side = next(i for i, step in enumerate(steps) if "side" in step.seams)
        on = [i for i, step in enumerate(steps) if step.verb == "trim"]
        assert len(on) == 2
        # A slant bag is closed before the side is sewn over it, one in the seam together with that seam.
        assert (on[1] == bag < side) if wish.kind == "slant" else (on[1] < bag == side)
    drawings = list(sewn_on_paper(costume, steps))
    assert all(drawings[i][2] is not None for i in (*on, bag))


def test_a_pocket_s_stay_is_fused_before_a_hem_on_the_bias_hangs() -> None:
    """Only what reaches the hem waits until it is levelled; a pocket in an overskirt's tier was called unsound."""
    garment = made("overskirt", replace(IN_SEAM, kind="slant", piece="panel", edge="centre_back_seam", along=0.86))
    costume = costume_of(garment, WOVEN)
    steps = order_of(costume)
    assert any(step.verb == "hang" or "levels" in step.does for step in steps)
    assert unsound(costume, steps) == ()


@pytest.mark.parametrize("hand", ["left", "right"])
def test_one_hand_alone_may_have_a_pocket(hand: str) -> None:
    """A pair of fronts stays a pair; what one hand alone needs is cut once, and for the right turned over."""
    both, one = made("waistcoat", WELT), made("waistcoat", replace(WELT, hand=hand))
    assert one.draft["front"].pair
    parts = [f"welt-1{part}" for part in ("", "-bag", "-facing", "-stay", "-interfacing")]
    assert [one.draft[p].count for p in parts] == [both.draft[p].count // 2 for p in parts]
    assert {one.draft[p].hand for p in parts} == {hand}
    marks = [m for m in one.draft["front"].placements if m.name.startswith("welt-1")]
    assert marks
    assert {m.hand for m in marks} == {hand}
    turned_over = ring(one.draft["welt-1-stay"]).equals_exact(ring(both.draft["welt-1-stay"]), 1e-6)
    assert turned_over == (hand == "left")
    costume = costume_of(one, WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    assert any(said.key == "do.one_hand" for step in steps for said in step.say)
    assert errors(one) == []


@pytest.mark.parametrize(
    ("block", "wish", "words"),
    [
        ("trousers", replace(SLANT, height=2000.0), "too short"),
        ("trousers", replace(SLANT, edge="waist_centre"), "no seam beside it"),
        ("skirt", replace(IN_SEAM, width=900.0), "no room along"),
        ("skirt", replace(IN_SEAM, edge="hem"), "no room along"),
        ("skirt", replace(IN_SEAM, edge="centre"), "no room|no seam"),
        # The front's side is parted by the bust dart; the back's is in one. Geometry: 100 mm about 45 % meet it.
        ("bodice", replace(IN_SEAM, piece="back", width=100.0, along=0.45), "runs over an end of the front side"),
    ],
)
def test_a_pocket_at_an_edge_that_cannot_be_is_refused_in_words(block: str, wish: PocketWish, words: str) -> None:
    with pytest.raises(InputError, match=words):
        made(block, wish)


def test_a_side_that_a_fall_leaves_open_takes_no_slant_pocket() -> None:
    kind, body = all_blocks()["trousers"], chart_woman()
    chosen = choose(kind, {"fall_front": Given(True)}, body_scale(body), Origin())
    with pytest.raises(InputError, match="does not reach up to the waist"):
        make_garment(
            body, WOVEN, kind, chosen, name="trousers", role="shell", pockets=(replace(SLANT, edge="side"),)
        )


@pytest.mark.parametrize(("along", "out"), [(0.38, True), (0.75, False)])
def test_a_mouth_that_no_hand_reaches_is_warned_of(along: float, out: bool) -> None:
    """`along` counts in outline order, from the hem on a skirt's front: a mouth at the shin went unsaid. Plain
    geometry: the share left of the side's length lies above it."""
    garment = made("skirt", replace(IN_SEAM, along=along))
    far = [one for one in garment.findings if one.check == "pocket" and "no hand reaches" in one.said("cm")]
    assert bool(far) == out
    if out:
        length = garment.draft["front"]["side"].length
        assert far[0].level == "warning"
        assert far[0].value == pytest.approx((1 - along) * length, rel=0.06)
        assert f"{1 - along:.2g} is as far" in far[0].said("cm")


@pytest.mark.parametrize(
    ("block", "piece", "edge"),
    [("fitted-top", "back", "side"), ("shirt", "front", "side_lower"), ("coat", "side-body", "panel_back")],
)
def test_a_seam_that_is_hollow_takes_a_pocket_that_lies_inside_its_piece(
    block: str, piece: str, edge: str
) -> None:
    """By shapely: the seam bows inwards from its chord, the bag hangs from the seam and stays on the piece."""
    wish = PocketWish(piece, edge, "in-seam", width=100.0, height=100.0, inside=0.0, along=0.45)
    garment = made(block, wish)
    assert errors(garment) == []
    shell = ring(garment.draft[piece])
    (bag,) = (m.path for m in garment.draft[piece].placements if m.what.startswith("seam pocket"))
    hung = Polygon([(p.real, p.imag) for p in bag.points(0.05)])
    assert hung.difference(shell.buffer(0.2)).area < 1.0
    path = garment.draft[piece][edge].path
    chord = LineString([(p.real, p.imag) for p in (path.start, path.end)])
    bows = max(chord.distance(Point(p.real, p.imag)) for p in path.points(0.05))
    assert bows > 2.0


@pytest.mark.parametrize(
    ("block", "piece", "edge", "partner"),
    [
        ("coat", "side-body", "panel_back", "back"),
        ("tailcoat", "side-body", "panel_back", "back"),
        ("skirt", "front", "side", "back"),
        ("fitted-top", "front", "side_lower", "back"),
    ],
)
def test_the_mark_on_the_partner_of_a_seam_lies_on_the_partner(
    block: str, piece: str, edge: str, partner: str
) -> None:
    """By shapely: a coat's back is narrower than a bag, whose mark ran over its centre seam."""
    wish = PocketWish(piece, edge, "in-seam", width=110.0, height=100.0, inside=0.0, along=0.5)
    garment = made(block, wish)
    assert errors(garment) == []
    (mark,) = (m.path for m in garment.draft[partner].placements if m.what == "seam pocket back")
    (bag,) = (m.path for m in garment.draft[piece].placements if m.what == "seam pocket")
    laid = Polygon([(p.real, p.imag) for p in mark.points(0.05)])
    assert laid.difference(ring(garment.draft[partner]).buffer(0.2)).area < 1.0
    narrow = laid.area < 0.97 * abs(bag.area)
    assert narrow is any("press it over behind" in f.message for f in garment.findings)
    assert narrow is (partner == "back" and "coat" in block)


@pytest.mark.parametrize(
    ("block", "choices", "asked", "front", "edge"),
    [
        ("skirt", {"skirt_cut": "gored", "gores": 6}, ("gore-2", "front"), "gore-1", "back"),
        ("skirt", {"skirt_cut": "gored", "gores": 6}, ("gore-1", "back"), "gore-1", "back"),
        ("skirt", {}, ("back", "side"), "front", "side"),
        ("skirt", {}, ("front", "side"), "front", "side"),
    ],
)
def test_the_front_lip_of_a_mouth_is_stayed_and_holds_the_bag(
    block: str, choices: dict[str, object], asked: tuple[str, str], front: str, edge: str
) -> None:
    """Common practice: a hand pulls at the front lip of the mouth, so the stay lies along that, whichever of
    the two edges was named; by shapely on the piece, and told apart in the order of work."""
    wish = replace(IN_SEAM, piece=asked[0], edge=asked[1], width=110.0, height=90.0, along=0.5)
    garment = made(block, wish, **choices)
    assert errors(garment) == []
    stay = garment.draft["pocket-1-stay"]
    assert stay.stiffens == (front,)
    lip = LineString([(p.real, p.imag) for p in garment.draft[front][edge].path.points(0.05)])
    assert max(lip.distance(Point(x, y)) for x, y in ring(stay).exterior.coords) < 21.0
    assert lip.distance(ring(stay)) < 0.01
    on = {m.piece: p.name for p in garment.draft.pieces for m in p.placements if m.piece.startswith("pocket-1")}
    assert on["pocket-1-bag"] == front
    assert on["pocket-1-back"] != front
    steps = order_of(costume_of(garment, WOVEN))
    told = [one.key.partition(".")[2] for step in steps for one in step.say if "seam_ba" in one.key]
    assert sorted(told) == ["seam_back", "seam_bag"]


@pytest.mark.parametrize("belly", [1000.0, 1180.0, 1320.0])
def test_a_slant_pocket_hangs_inside_a_front_whose_side_slopes_in_under_a_belly(belly: float) -> None:
    """By shapely: the side runs in below the waist, so the mouth may lean the other way; its bag hung outside."""
    body = chart_woman().changed(waist_girth=belly, hip_girth=1120.0)
    kind = all_blocks()["trousers"]
    chosen = choose(kind, {}, body_scale(body), Origin())
    wish = replace(SLANT, edge="side")
    garment = make_garment(body, WOVEN, kind, chosen, name="trousers", role="shell", pockets=(wish,))
    front = ring(garment.draft["front"]).buffer(0.2)
    marks = [m.path for m in garment.draft["front"].placements if m.what in ("pocket mouth", "pocket back")]
    assert len(marks) == 2
    for mark in marks:
        outline = Polygon([(p.real, p.imag) for p in mark.points(0.05)])
        assert outline.is_valid
        assert outline.difference(front).area < 1.0
    bag = ring(garment.draft["pocket-1-bag"])
    assert bag.area > 150.0 * 150.0  # a hand goes in
