"""Style lines: random steps over blocks and bodies keep what was sewn sewn; pleats against arithmetic; undo."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drafting.alter.style.apply import styled
from drafting.costume.choices import block_named, choose
from drafting.costume.garment import drafted, make_garment
from drafting.costume.stand_in import STRETCHY, stand_ins
from drafting.draft.by_role import dart_legs
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import SeamKind
from drafting.draft.walk import walk
from drafting.geometry import line
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError, UnknownNameError
from drafting.ground.scale import body_scale
from drafting.making.order.sewing import sewing_steps
from drafting.reading.given import Given, Origin
from drafting.reading.style import CutWish, DartWish, JoinWish, OutlinePlace, PleatWish, ShiftWish, StyleWish
from tests.drawn_bodies import drawn, far

SAME = 0.01
"""mm: two drafts whose outlines differ by no more are one."""

WIDE, HIGH = 400.0, 600.0

BLOCKS: Mapping[str, Mapping[str, str]] = {
    "bodice": {"length": "hip"},
    "fitted-top": {},
    "trouser": {},
    "close-top": {},
    "shirt": {},
}


@lru_cache(maxsize=16)
def draft_of(block: str, number: int) -> Draft:
    body = [*drawn(4), *far()[:3]][number]
    given_choices = {name: Given(value) for name, value in BLOCKS[block].items()}
    kind = block_named(block)
    return drafted(body, STRETCHY, kind, choose(kind, given_choices, body_scale(body), Origin()))


def ring(piece: Piece) -> shapely.Polygon:
    flat = piece.outline.points(0.01)
    return shapely.Polygon([(p.real, p.imag) for p in flat])


def sound(draft: Draft) -> None:
    for piece in draft.pieces:
        assert ring(piece).is_valid, piece.name
        assert piece.area > 0
        assert min(edge.length for edge in piece.edges) > 1e-6
    for seam in draft.seams:
        assert abs(walk(draft, seam).difference) < tol.SEAM_MATCH, seam.name
        for notch in seam.notches:
            long = walk(draft, seam)
            assert -1e-6 <= notch.a <= long.a_length + 1e-6
    uses = [ref for seam in draft.seams for ref in {*seam.a, *seam.b}]
    assert len(uses) == len(set(uses))


def levels(draft: Draft) -> float:
    return sum(level.length for piece in draft.pieces for level in piece.levels)


def area(draft: Draft) -> float:
    return sum(piece.area for piece in draft.pieces)


def steps(data: st.DataObject, draft: Draft) -> StyleWish | None:
    """Return one random step for a piece of the draft, or None where the piece drawn has nothing for it."""
    piece = data.draw(st.sampled_from([p for p in draft.pieces if not p.material]), label="piece")
    edges = [e.name for e in piece.edges if e.kind is not EdgeKind.DART]
    spots = st.builds(OutlinePlace, edge=st.sampled_from(edges), share=st.floats(0.0, 1.0))
    kind = data.draw(st.sampled_from(["cut", "cut", "join", "dart", "pleat", "shift"]), label="step")
    if kind == "cut":
        bow = data.draw(st.floats(-15, 15), label="bow")
        return CutWish(piece.name, data.draw(spots), data.draw(spots), f"part-{len(draft.pieces)}", bow=bow)
    if kind == "join":
        return JoinWish(piece.name, data.draw(st.sampled_from(edges)))
    if kind == "shift":
        amounts = data.draw(st.sampled_from([0.0, 30.0, -10.0])), data.draw(st.sampled_from([0.0, 40.0, -15.0]))
        return ShiftWish(piece.name, data.draw(st.sampled_from(edges)), *amounts)
    if kind == "dart":
        legs = [into.name for into, _ in dart_legs(piece)]
        return DartWish(piece.name, data.draw(st.sampled_from(legs)), data.draw(spots)) if legs else None
    folds = data.draw(st.sampled_from(["knife", "box", "inverted", "tuck"]))
    depth, number = data.draw(st.floats(5, 30)), data.draw(st.integers(1, 3))
    return PleatWish(piece.name, data.draw(spots), data.draw(spots), folds, depth, number)


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.sampled_from(sorted(BLOCKS)), st.integers(0, 6), st.data())
def test_whatever_is_done_every_seam_walks_and_all_of_the_cloth_is_there(
    block: str, number: int, data: st.DataObject
) -> None:
    draft = draft_of(block, number)
    for _ in range(4):
        wish = steps(data, draft)
        if wish is None:
            continue
        try:
            after = styled(draft, wish)
        except DraftError:
            continue
        sound(after)
        if not isinstance(wish, PleatWish | ShiftWish):
            assert area(after) == pytest.approx(area(draft), rel=1e-6)
        if isinstance(wish, CutWish | JoinWish):
            assert levels(after) == pytest.approx(levels(draft), abs=0.05)
        draft = after


@pytest.mark.parametrize("block", ["bodice", "shirt"])
def test_what_was_cut_and_joined_again_is_as_it_was(block: str) -> None:
    draft = draft_of(block, 0)
    wish = CutWish("front", OutlinePlace("armhole", share=0.5), OutlinePlace("neck", share=0.5), "panel")
    parts = styled(draft, wish)
    again = styled(parts, JoinWish("panel", "style_line"))
    assert [piece.name for piece in again.pieces] == [piece.name for piece in draft.pieces]
    one, other = ring(draft["front"]), ring(again["front"])
    assert one.symmetric_difference(other).area < SAME * one.length
    assert [e.name for e in again["front"].edges if e.name not in draft["front"]] == []
    assert {s.name: (s.a, s.b) for s in again.seams} == {s.name: (s.a, s.b) for s in draft.seams}


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


def test_a_dart_goes_anywhere_and_every_other_length_stays() -> None:
    draft = draft_of("bodice", 0)
    front = draft["front"]
    into, _ = next(iter(dart_legs(front)))
    for to in (
        OutlinePlace("shoulder", share=0.5),
        OutlinePlace("armhole", share=0.5),
        OutlinePlace("neck", share=0.5),
    ):
        moved = styled(draft, DartWish("front", into.name, to))
        sound(moved)
        for role in {edge.role for edge in front.edges}:
            legs = [
                sum(e.length for e in p.edges if e.role is role and e.kind is not EdgeKind.DART)
                for p in (front, moved["front"])
            ]
            assert legs[0] == pytest.approx(legs[1], abs=0.1)
        back = styled(moved, DartWish("front", into.name, OutlinePlace("side_lower", share=0.9)))
        sound(back)


def test_a_dart_is_cut_into_a_panel_seam() -> None:
    draft = styled(draft_of("bodice", 0), DartWish("front", "bust_dart_in", OutlinePlace("shoulder", share=0.5)))
    wish = CutWish(
        "front",
        OutlinePlace(dart="bust_dart_in"),
        OutlinePlace("hem", share=0.5),
        "side-front",
        holds="side_lower",
    )
    after = styled(draft, wish)
    sound(after)
    assert not list(dart_legs(after["front"]))
    (seam,) = (s for s in after.seams if ("side-front", "style_line") in (*s.a, *s.b))
    assert seam.kind is SeamKind.PRINCESS
    assert len(seam.a) == len(seam.b) == 2


def test_a_dart_becomes_gathers_of_what_it_took() -> None:
    draft = draft_of("bodice", 0)
    into, out = next(iter(dart_legs(draft["front"])))
    mouth = abs(into.path.start - out.path.end)
    after = styled(draft, DartWish("front", into.name, None))
    sound(after)
    (edge,) = [e for e in after["front"].edges if e.sewn is not None]
    assert edge.length - edge.sewn_length == pytest.approx(mouth, abs=0.5)


@pytest.mark.parametrize(
    ("wish", "said"),
    [
        (CutWish("frunt", OutlinePlace("side", share=0.5), OutlinePlace("neck", share=0.5), "x"), "frunt"),
        (CutWish("front", OutlinePlace("armhol", share=0.5), OutlinePlace("neck", share=0.5), "x"), "armhol"),
        (CutWish("front", OutlinePlace("neck", level="wiast"), OutlinePlace("hem", share=0.5), "x"), "wiast"),
        (DartWish("back", "bust", OutlinePlace("shoulder", share=0.5)), "bust"),
    ],
)
def test_a_name_that_is_not_there_is_answered_with_those_that_are(wish: StyleWish, said: str) -> None:
    with pytest.raises(UnknownNameError, match=said):
        styled(draft_of("bodice", 0), wish)


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
    steps = sewing_steps(made, None, {})
    (zipped,) = [step for step in steps if step.verb == "face" and ("back", "centre") in step.edges]
    assert ("back-yoke", "centre") in zipped.edges
    order = [name for step in steps for name in step.seams]
    yoke_line = next(s.name for s in made.draft.seams if ("back-yoke", "style_line") in s.a)
    (pleat,) = [s.name for s in made.draft.seams if s.kind is SeamKind.LAID_PLEAT]
    assert order.index(pleat) < order.index(yoke_line)
