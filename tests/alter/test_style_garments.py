"""Pleats against arithmetic, hems that are moved, and styled garments: each hand, and the order of sewing."""

from __future__ import annotations

import pytest

from drafting.alter.style.apply import styled
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import make_garment
from drafting.costume.stand_in import stand_ins
from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.draft.walk import walk
from drafting.geometry import line
from drafting.ground.errors import DraftError
from drafting.ground.scale import body_scale
from drafting.making.order.sewing import sewing_steps
from drafting.reading.given import Given, Origin
from drafting.reading.style import CutWish, PleatWish, ShiftWish
from drafting.reading.style_places import OutlinePlace
from tests.alter.styles import draft_of, sound
from tests.blocks.figures import chart_woman

WIDE, HIGH = 400.0, 600.0


def cloth() -> Draft:
    """Return a plain rectangle with its top sewn to a band: widths are plain arithmetic."""
    body = Piece(
        "body",
        (
            Edge("hem", line(0j, WIDE + 0j), EdgeKind.HEM),
            Edge("right", line(WIDE + 0j, complex(WIDE, HIGH)), EdgeKind.FREE),
            Edge("top", line(complex(WIDE, HIGH), 1j * HIGH)),
            Edge("left", line(1j * HIGH, 0j), EdgeKind.FREE),
        ),
    )
    band = Piece(
        "band",
        (
            Edge("low", line(0j, WIDE + 0j)),
            Edge("end", line(WIDE + 0j, complex(WIDE, 40)), EdgeKind.FREE),
            Edge("up", line(complex(WIDE, 40), 40j), EdgeKind.FREE),
            Edge("start", line(40j, 0j), EdgeKind.FREE),
        ),
    )
    return Draft((body, band), (Seam("waist", (("body", "top"),), (("band", "low"),), start=None, end=None),))


@pytest.mark.parametrize(
    ("kind", "number", "depth", "taken"),
    [
        ("knife", 1, 30, 60),
        ("knife", 4, 20, 160),
        ("tuck", 5, 5, 50),
        ("box", 1, 25, 100),
        ("inverted", 2, 25, 200),
    ],
)
def test_pleats_take_what_arithmetic_says(kind: str, number: int, depth: float, taken: float) -> None:
    # Common practice: a knife pleat takes twice its depth, a box or an inverted pleat four times.
    wish = PleatWish("body", OutlinePlace("top", share=0.5), OutlinePlace("hem", share=0.5), kind, depth, number)
    before = cloth()
    after = styled(before, wish)
    sound(after)
    assert after["body"].area == pytest.approx((WIDE + taken) * HIGH)
    assert after["body"]["hem"].length == pytest.approx(WIDE + taken)
    (waist, *laid) = after.seams
    assert walk(after, waist).a_sewn == pytest.approx(WIDE)
    assert sum(walk(after, seam).a_length * 2 for seam in laid) == pytest.approx(taken)
    assert {seam.kind for seam in laid} == {SeamKind.LAID_PLEAT}
    folds = [mark for mark in after["body"].placements if mark.what == "pleat fold"]
    assert all(mark.path.length == pytest.approx(HIGH) for mark in folds)
    assert len(folds) == 3 * len(laid)


def test_a_hem_dips_by_what_is_asked_and_stays_square_to_its_sides() -> None:
    after = styled(cloth(), ShiftWish("body", "hem", 0.0, 50.0))
    hem = after["body"]["hem"].path
    assert after["body"]["right"].length == pytest.approx(HIGH + 50)
    assert after["body"]["left"].length == pytest.approx(HIGH)
    # Plane geometry: the dip is half as deep half-way, so the cloth grows by half of the box below it.
    assert after["body"].area == pytest.approx(WIDE * HIGH + WIDE * 50 / 2)
    assert hem.leave.imag == pytest.approx(0.0)
    assert hem.arrive.imag == pytest.approx(0.0)
    back = styled(after, ShiftWish("body", "hem", 0.0, -50.0))
    assert back["body"].area == pytest.approx(WIDE * HIGH)


@pytest.mark.parametrize("block", ["shirt", "fitted-top"])
@pytest.mark.parametrize("amount", [25.0, -25.0])
def test_a_hem_that_dips_at_a_buttoned_front_takes_stand_and_facing_along(block: str, amount: float) -> None:
    """Common practice: stand and facing hang as low as the front. The hem's end slid along the stand's hem, and
    nothing dipped."""
    draft = buttoned(block)
    wish = ShiftWish("front", "hem", amount, 0.0)
    before, after = draft["front"], styled(draft, wish)["front"]
    for name in ("stand_hem", "facing_hem"):
        assert after[name].length == pytest.approx(before[name].length)
        assert before[name].path.start.imag - after[name].path.start.imag == pytest.approx(amount, abs=0.1)
        assert after[name].path.start.real == pytest.approx(before[name].path.start.real, abs=1.0)
    assert before["hem"].path.start - after["hem"].path.start == pytest.approx(1j * amount, abs=1.0)
    assert after["hem"].path.end == before["hem"].path.end
    sides = [[edge.length for edge in edges_as(piece, EdgeRole.SIDE)] for piece in (before, after)]
    assert sides[0] == sides[1]


def buttoned(block: str) -> Draft:
    choices = {"opening": Given("front"), "fastening": Given("buttons")} if block == "fitted-top" else {}
    chosen = choose(block_named(block), choices, 1.0, Origin())
    return make_garment(chart_woman(), None, block_named(block), chosen, name=block, role="shell").draft


def test_an_edge_that_is_sewn_or_whose_side_is_stays_where_it_is() -> None:
    for block, edge in (("bodice", "armhole"), ("fitted-top", "hem")):
        with pytest.raises(DraftError, match="sewn to another"):
            styled(draft_of(block, 0), ShiftWish("front", edge, 20.0, 20.0))


def test_a_slanting_edge_is_trued_by_the_fold() -> None:
    # What lies beneath is the mirror image of what it lies under: both halves are of one length and lean
    # to opposite sides.
    corners = 0j, WIDE + 0j, complex(WIDE, HIGH), complex(0, HIGH + 100)
    edges = [line(a, b) for a, b in zip(corners, (*corners[1:], corners[0]), strict=True)]
    names = ("hem", "right", "top", "left")
    piece = Piece("body", tuple(Edge(n, e) for n, e in zip(names, edges, strict=True)))
    band = Piece(
        "band", tuple(Edge(n, e.mirrored().reversed()) for n, e in zip(names[::-1], edges[::-1], strict=True))
    )
    seam = Seam("waist", (("body", "top"),), (("band", "top"),), start=None, end=None)
    wish = PleatWish("body", OutlinePlace("top", share=0.5), OutlinePlace("hem", share=0.5), "knife", 30.0)
    after = styled(Draft((piece, band), (seam,)), wish)
    one, two = after["body"]["pleat_1_in"].path, after["body"]["pleat_1_out"].path
    assert one.length == pytest.approx(two.length)
    assert one.leave.imag == pytest.approx(-two.leave.imag)
    assert one.leave.real == pytest.approx(two.leave.real)


def test_where_the_two_sides_differ_each_hand_is_cut_and_pleated_for_itself() -> None:
    even, uneven = stand_ins()
    kind = block_named("fitted-top")
    place = OutlinePlace("style_line", distance=40.0, beside="centre")
    foot = OutlinePlace("hem", distance=40.0, beside="centre")
    yoke = OutlinePlace("centre", distance=110.0, beside="neck")
    wishes = (
        CutWish("front", OutlinePlace("armhole", share=0.5), yoke, "front-yoke", holds="neck"),
        PleatWish("front", place, foot, "knife", 15.0),
    )
    for body in (even, uneven):
        chosen = choose(kind, {}, body_scale(body), Origin())
        made = make_garment(body, None, kind, chosen, name="top", role="shell", style=wishes)
        assert [f.message for f in made.findings if f.level == "error"] == []
        sound(made.draft)
        assert any(piece.name.startswith("front-yoke") for piece in made.draft.pieces)


def test_a_zip_runs_through_a_back_and_its_yoke_and_pleats_are_laid_before_what_they_are_sewn_into() -> None:
    body, kind = stand_ins()[0], block_named("fitted-top")
    yoke = OutlinePlace("centre", distance=130.0, beside="neck")
    foot = OutlinePlace("hem", share=0.2)
    wishes = (
        CutWish("back", OutlinePlace("armhole", share=0.5), yoke, "back-yoke", holds="neck"),
        PleatWish("back", OutlinePlace("style_line", share=0.8), foot, "knife", 12.0),
    )
    chosen = choose(kind, {}, body_scale(body), Origin())
    made = make_garment(body, None, kind, chosen, name="top", role="shell", style=wishes)
    steps = sewing_steps(made, {}, {})
    (zipped,) = [step for step in steps if step.verb == "face" and ("back", "centre") in step.edges]
    assert ("back-yoke", "centre") in zipped.edges
    order = [name for step in steps for name in step.seams]
    yoke_line = next(s.name for s in made.draft.seams if ("back-yoke", "style_line") in s.a)
    (pleat,) = [s.name for s in made.draft.seams if s.kind is SeamKind.LAID_PLEAT]
    assert order.index(pleat) < order.index(yoke_line)
