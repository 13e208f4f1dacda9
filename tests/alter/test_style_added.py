"""Godets, corners, strips made for edges, cuts over darts, one hand alone: against plain geometry."""

from __future__ import annotations

import cmath
import math
from dataclasses import replace

import pytest
import shapely

from drafting.alter.style.apply import styled
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import MadeGarment, finished_garment, make_garment
from drafting.costume.stand_in import stand_ins
from drafting.draft.by_role import dart_legs
from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.draft.walk import walk
from drafting.fabric import Fabric
from drafting.geometry import Path
from drafting.ground.errors import DraftError, InputError
from drafting.ground.scale import body_scale
from drafting.making.order.sewing import sewing_steps
from drafting.reading.given import Origin
from drafting.reading.style import CutWish, JoinWish, StyleWish
from drafting.reading.style_made import CornerWish, EdgingWish, GodetWish
from drafting.reading.style_places import OutlinePlace
from tests.alter.styles import draft_of, ring, sound
from tests.alter.test_style_garments import HIGH, WIDE, cloth


def made(block: str, *steps: StyleWish, uneven: bool = False) -> MadeGarment:
    body, kind = stand_ins()[uneven], block_named(block)
    chosen = choose(kind, {}, body_scale(body), Origin())
    return make_garment(body, None, kind, chosen, name="one", role="shell", style=steps)


def no_errors(garment: MadeGarment) -> None:
    assert [f.message for f in garment.findings if f.level == "error"] == []
    sewn = {name for step in sewing_steps(garment, {}, {}) for name in step.seams}
    assert sewn == {seam.name for seam in garment.draft.seams}


# ------------------------------------------------------------------------------------------- godets


@pytest.mark.parametrize(("height", "width"), [(200.0, 100.0), (200.0, 300.0), (120.0, 60.0)])
def test_a_godet_in_a_slash_is_the_sector_of_its_opening(height: float, width: float) -> None:
    # Plane geometry: a sector's arc is its radius times its angle, its area half the radius times the arc.
    before = cloth()
    after = styled(before, GodetWish("body", "hem", OutlinePlace("hem", share=0.5), height, width))
    sound(after)
    godet, body = after["body-godet"], after["body"]
    mouth = 2 * 10.0  # 10 mm on either side of the slash (godet.SLASH_SEAM), sewn away at its foot
    sides = [edge for edge in godet.edges if edge.role is EdgeRole.GODET_SIDE]
    gap = [edge for edge in body.edges if edge.role is EdgeRole.GODET_SIDE]
    assert [edge.length for edge in (*sides, *gap)] == pytest.approx([height] * 4)
    assert godet["hem"].length == pytest.approx(width + mouth, rel=1e-5)
    assert godet.area == pytest.approx(height * (width + mouth) / 2, rel=1e-5)
    hems = sum(edge.length for edge in body.edges if edge.kind is EdgeKind.HEM) + godet["hem"].length
    assert hems == pytest.approx(WIDE + width, rel=1e-5)
    assert body.area == pytest.approx(WIDE * HIGH - math.sqrt(height**2 - 100) * 10)
    middle = cmath.phase(godet["hem"].path.at(godet["hem"].length / 2)) % math.pi
    assert math.degrees(middle) == pytest.approx(godet.grain)


@pytest.mark.parametrize("edge", ["side", "centre"])
def test_a_godet_in_a_seam_adds_its_width_and_both_its_sides_fit(edge: str) -> None:
    garment = made("skirt", GodetWish("front", edge, None, 200.0, 240.0))
    no_errors(garment)
    sound(garment.draft)
    godet = next(piece for piece in garment.draft.pieces if piece.role is PieceRole.GODET)
    half = godet.fold_edge is not None
    assert half == (edge == "centre")
    assert godet.count == (1 if half else 2)  # a skirt has two side seams and one centre
    assert godet["hem"].length == pytest.approx(120.0 if half else 240.0, rel=1e-5)
    for seam in garment.draft.seams:
        if any(name == godet.name for name, _ in seam.a):
            assert walk(garment.draft, seam).a_length == pytest.approx(200.0, abs=0.01)


# ------------------------------------------------------------------------------------------ corners


@pytest.mark.parametrize("radius", [5.0, 30.0, 150.0])
def test_a_square_corner_that_is_rounded_loses_what_lies_beyond_its_circle(radius: float) -> None:
    # Plane geometry: r^2 (1 - pi / 4) lies between a right angle and the circle in it.
    wish = CornerWish("body", "hem", "right", radius)
    after = styled(cloth(), wish)
    sound(after)
    assert WIDE * HIGH - after["body"].area == pytest.approx(radius**2 * (1 - math.pi / 4), rel=1e-4)
    back = styled(after, CornerWish("body", "hem", "right", None))
    assert ring(back["body"]).symmetric_difference(ring(cloth()["body"])).area < 0.01


def test_both_layers_of_a_cuff_and_its_interfacing_have_its_round_corner() -> None:
    whole = made("shirt").draft["cuff"]
    at = whole.index("end")
    wish = CornerWish("cuff", "end", whole.edges[(at + 1) % len(whole.edges)].name, 8.0)
    garment = made("shirt", wish)
    no_errors(garment)
    sound(garment.draft)
    plain = made("shirt").draft
    lost = 8.0**2 * (1 - math.pi / 4)  # plane geometry, as above; it is cut double, so both its layers lose it
    assert plain["cuff"].area - garment.draft["cuff"].area == pytest.approx(2 * lost, rel=1e-3)
    stiff = "cuff-interfacing"
    assert plain[stiff].area - garment.draft[stiff].area == pytest.approx(lost, rel=1e-3)
    waist = CornerWish("front", "side", "hem", 15.0)
    rows = CornerWish("front", "edge", "bottom", 15.0)  # a row of edges, sewn edge to edge to the facing's
    coat = made("coat", rows)
    no_errors(coat)
    sound(coat.draft)
    assert coat.draft["front"]["edge"].length == pytest.approx(coat.draft["front-facing"]["edge"].length, abs=1e-3)
    with pytest.raises(InputError, match="no such corner"):
        made("skirt", waist)


# ------------------------------------------------------------------------------------ strips and facings


def test_a_facing_has_the_line_of_its_edge_and_is_as_deep_as_asked() -> None:
    garment = made("skirt", EdgingWish("hem facing", (("front", "hem"), ("back", "hem")), 60.0))
    no_errors(garment)
    front, facing = garment.draft["front"], garment.draft["front-hem-facing"]
    edge, own = front["hem"].path, facing["hem"].path.mirrored().reversed()
    assert own.length == pytest.approx(edge.length)
    assert [own.at(k * own.length / 8) for k in range(9)] == pytest.approx(
        [edge.at(k * edge.length / 8) for k in range(9)]
    )
    line = ring_line(facing, "inner")
    far = [line.distance(point) for point in points_on(facing, "hem")]
    assert min(far[2:-2]) == pytest.approx(60.0, abs=0.05)
    assert max(far[2:-2]) == pytest.approx(60.0, abs=0.5)
    assert garment.draft["front-hem-facing-interfacing"].stiffens == ("front-hem-facing",)


@pytest.mark.parametrize(
    ("kind", "grain", "depth"), [("binding", 45.0, 12.0), ("band", 0.0, 80.0), ("cuff", 0.0, 80.0)]
)
def test_a_strip_is_a_rectangle_as_long_as_its_edge(kind: str, grain: float, depth: float) -> None:
    width = depth if kind == "binding" else depth / 2
    block, edges = ("trousers", (("front", "hem"), ("back", "hem")))
    garment = made(block, EdgingWish(kind, edges, width))
    no_errors(garment)
    plain = made(block).draft
    length = sum(plain[piece][edge].length for piece, edge in edges)
    (strip,) = (p for p in garment.draft.pieces if p.name == f"front-hem-{kind}")
    assert strip.grain == grain
    assert strip.pair
    assert strip.area == pytest.approx(length * depth)
    assert strip["edge"].length == pytest.approx(length)


def test_a_cuff_is_refused_on_what_does_not_close() -> None:
    with pytest.raises(DraftError, match="closes into a ring"):
        styled(draft_of("trouser", 0), EdgingWish("cuff", (("front", "hem"),), 40.0))
    with pytest.raises(DraftError, match="sewn to something"):
        styled(draft_of("trouser", 0), EdgingWish("facing", (("front", "side"),), 40.0))


# ------------------------------------------------------------------------------------- cuts over darts


@pytest.mark.parametrize("number", [0, 3, 4, 5])
def test_a_cut_over_an_open_dart_leaves_one_part_shut_and_the_other_with_its_rest(number: int) -> None:
    draft = draft_of("bodice", number)
    wish = CutWish(
        "front", OutlinePlace("shoulder", share=0.5), OutlinePlace("hem", share=0.6), "side-front", "armhole"
    )
    after = styled(draft, wish)
    sound(after)
    assert sum(p.area for p in after.pieces) == pytest.approx(sum(p.area for p in draft.pieces), rel=1e-6)
    (into, out), (was, _) = next(dart_legs(after["front"])), next(dart_legs(draft["front"]))
    assert not list(dart_legs(after["side-front"]))
    assert into.length == pytest.approx(out.length, abs=1e-6)
    assert into.length < was.length
    assert opening(after["front"]) == pytest.approx(opening(draft["front"]), abs=1e-6)
    assert after["front"]["neck"].path.start == pytest.approx(draft["front"]["neck"].path.start)


@pytest.mark.parametrize(("number", "count"), [(0, 2), (6, 1)])
def test_a_cut_through_inner_darts_parts_each_into_two_that_close(number: int, count: int) -> None:
    draft = draft_of("fitted-top", number)
    darts = draft["back"].darts
    assert len(darts) == count
    low = OutlinePlace("side", share=0.55), OutlinePlace("centre_seam", share=0.5)
    after = styled(draft, CutWish("back", *low, "back-low", holds="hem"))
    sound(after)
    inside = sum(abs(ring_of(dart.leg_a, dart.leg_b)) for dart in darts)
    assert sum(p.area for p in draft.pieces) - sum(p.area for p in after.pieces) == pytest.approx(inside, rel=1e-6)
    for name in ("back", "back-low"):
        found = list(dart_legs(after[name]))
        assert len(found) == count
        for legs in found:
            assert legs[0].length == pytest.approx(legs[1].length, abs=1e-6)


@pytest.mark.parametrize("uneven", [False, True])
def test_no_chain_runs_along_an_edge_that_a_join_took_away(uneven: bool) -> None:
    draft = made("shirt", JoinWish("sleeve", "hem"), uneven=uneven).draft
    assert "sleeve" not in {piece.base or piece.name for piece in draft.pieces}
    assert all(draft.edge(ref).length > 0 for refs in draft.chains.values() for ref in refs)


# ------------------------------------------------------------------------------------------ one hand


@pytest.mark.parametrize("uneven", [False, True])
def test_what_one_hand_alone_has_is_cut_singly_and_sewn(uneven: bool) -> None:
    wish = CutWish(
        "back",
        OutlinePlace("armhole", share=0.5),
        OutlinePlace("centre", distance=130.0, beside="neck"),
        "back-yoke",
        holds="neck",
        hand="left",
    )
    garment = made("fitted-top", wish, uneven=uneven)
    no_errors(garment)
    sound(garment.draft)
    names = [piece.name for piece in garment.draft.pieces]
    assert "back-yoke-left" in names
    assert "back-yoke-right" not in names
    assert not any(piece.pair for piece in garment.draft.pieces if piece.base == "back")


def test_one_hand_alone_has_no_line_that_ends_on_the_fold() -> None:
    kind, body = block_named("fitted-top"), stand_ins()[0]
    wish = CutWish(
        "front", OutlinePlace("armhole", share=0.5), OutlinePlace("centre", share=0.3), "yoke", hand="right"
    )
    chosen = choose(kind, {}, body_scale(body), Origin())
    with pytest.raises(InputError, match="one hand alone"):
        finished_garment(body, None, kind, chosen, name="one", role="shell", style=(wish,))


# ------------------------------------------------------------------------------------------- helpers


def opening(piece: Piece) -> float:
    """Return the angle of a piece's only open dart."""
    into, out = next(dart_legs(piece))
    tip = into.path.end
    return math.degrees(cmath.phase((out.path.end - tip) / (into.path.start - tip)))


def points_on(piece: Piece, name: str) -> list[shapely.Point]:
    path = piece[name].path
    return [shapely.Point(p.real, p.imag) for p in (path.at(k * path.length / 20) for k in range(21))]


def ring_line(piece: Piece, name: str) -> shapely.LineString:
    return shapely.LineString([(p.real, p.imag) for p in piece[name].path.points(0.01)])


def ring_of(one: Path, other: Path) -> float:
    return Path.joined([one, other.reversed()]).area


@pytest.mark.parametrize("kind", ["facing", "hem facing", "binding", "band"])
def test_what_finishes_an_edge_of_a_piece_on_the_fold_is_cut_for_both_hands(kind: str) -> None:
    """One facing was cut for two armholes: `sound` weighs what is cut of either side of a seam."""
    after = styled(draft_of("bodice", 3), EdgingWish(kind, (("front", "armhole"),), 30.0))
    sound(after)
    made_for = [piece for piece in after.pieces if piece.name.startswith("front-armhole")]
    assert made_for
    assert {piece.count for piece in made_for} == {2}


JERSEY = Fabric("Jersey, invented", weave="knit", stretch_along=0.2, stretch_across=0.6)
LENGTHWISE = replace(JERSEY, stretch_along=0.6, stretch_across=0.2)


@pytest.mark.parametrize("kind", ["binding", "band"])
def test_a_strip_of_style_is_cut_the_way_its_cloth_gives(kind: str) -> None:
    # Common practice: a woven binding lies on the bias, a knit's along its greatest stretch, 5 to 15 % shorter
    # than its edge; a band's warp runs along it, or across where the knit gives most across.
    wish = EdgingWish(kind, (("body", "hem"),), 20.0, interfacing=False)
    lengths, grains = [], []
    for fabric in (None, JERSEY, LENGTHWISE):
        after = styled(cloth(), wish, fabric)
        sound(after)
        strip = after[f"body-hem-{kind}"]
        lengths.append(strip["edge"].length)
        grains.append(strip.grain % 180)
    folded = kind == "band"
    assert grains == [0.0 if folded else 45.0, 90.0, 0.0]
    assert lengths[0] == pytest.approx(WIDE)
    assert all(0.85 * WIDE <= length <= (1.0 if folded else 0.95) * WIDE + 1e-6 for length in lengths[1:])
