"""Trousers with waistband and fly: walked on many bodies, each hand with its own pieces.

Bodies: drawn and far ones (tests/drawn_bodies.py), `bdims` (tests/bodies.py) and the worked body of
the trouser tests. Lengths and distances are measured by shapely on fine polylines, not by the kit's own rule.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
import shapely

from drafting.body import Body
from drafting.checks import check_draft
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.draft import Seam
from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.geometry import Path
from drafting.geometry.turning import inflections
from tests.blocks.small_pieces import ruled
from tests.blocks.trousers import legs
from tests.bodies import bdims
from tests.drawn_bodies import drawn, far

RIGHT = {"closing": "right over left"}
HALF_MM = 0.5


def trousers(body: Body, **choices: Any) -> MadeGarment:
    return draft_garment(body, None, "trousers", choices)


@cache
def people() -> tuple[MadeGarment, ...]:
    """60 bodies, every other one closing right over left."""
    bodies = (*drawn(26), *far()[::3], *bdims(20))
    return tuple(trousers(b, **(RIGHT if i % 2 else {})) for i, b in enumerate(bodies))


def errors(garment: MadeGarment) -> list[str]:
    return [f.message for f in garment.findings if f.level == "error"]


def uneven(body: Body, name: str, left: float, right: float) -> Body:
    """Return the body with a measure that differs between left and right."""
    two = replace(body.measures[name], left=left, right=right)
    return replace(body, measures={**body.measures, name: two})


def corners(path: Path) -> list[tuple[float, float]]:
    return [(p.real, p.imag) for p in path.flattened(1e-4)]


def mark(piece: Piece, name: str) -> Path:
    return next(m.path for m in piece.placements if m.name == name)


def test_sixty_bodies_have_trousers_without_an_error_each_with_its_cut_lines() -> None:
    for garment in people():
        assert errors(garment) == [], garment.name
        names = {cut.piece.name for cut in garment.pattern.pieces}
        assert {"front", "back", "waistband", "fly-facing", "fly-shield"} <= names


def test_facing_and_shield_are_as_long_as_the_fly_and_the_underlap_as_wide_as_the_shield() -> None:
    # Logic: what is sewn together measures the same.
    for garment in people():
        draft = garment.draft
        fly = ruled(draft["front"]["fly"].path)
        for name in ("fly-facing", "fly-shield"):
            assert ruled(draft[name]["fly"].path) == pytest.approx(fly, abs=0.01)
        underlap = ruled(draft["waistband"]["underlap"].path)
        assert ruled(draft["fly-shield"]["waist"].path) == pytest.approx(underlap, abs=0.01)


def test_the_closed_band_goes_once_round_the_waist_and_its_ease() -> None:
    # Logic: front + back waist less darts = (waist + ease) / 2; the underlap lies beyond it.
    garment = trousers(legs(), waist_ease=16)
    half = ruled(garment.draft["waistband"]["waist"].path)
    assert 2 * half == pytest.approx(850 + 16, abs=1.0)


def test_the_open_fly_passes_the_hip_is_as_long_as_the_trade_makes_it_and_ends_where_the_curve_turns() -> None:
    # Arithmetic: waist + 2 x fly >= hip. Common practice: 150 to 200 mm, into the crotch curve.
    for garment in people():
        girths = {g.level: g for g in garment.draft.girths}
        waist = girths["waist"].body + girths["waist"].settled_ease
        fly = garment.draft["front"]["fly"].path
        assert waist + 2 * ruled(fly) >= girths["hip"].body - HALF_MM
        assert 150 - HALF_MM <= ruled(fly) <= 200 + HALF_MM
        turned = abs(math.degrees(cmath.phase(fly.arrive / fly.leave)))
        assert turned <= 30.1 or ruled(fly) <= 150 + HALF_MM


@pytest.mark.parametrize("measure", ["shoulder_drop", "shoulder_length", "arm_length"])
def test_shoulders_that_differ_leave_the_fly_as_it_is(measure: str) -> None:
    # Logic: nothing in a trouser hangs on the shoulders or arms.
    body = legs()
    other = uneven(body, measure, body[measure] - 10, body[measure] + 10)
    one, two = (trousers(b).draft["front"]["fly"] for b in (body, other))
    assert ruled(one.path) == pytest.approx(ruled(two.path), abs=0.01)
    assert ruled(one.path) == pytest.approx(180, abs=0.5)


def test_a_short_fly_is_lengthened_until_the_hip_passes_and_the_rest_goes_to_the_crotch() -> None:
    long, short = trousers(legs(), fly_length=400), trousers(legs(), fly_length=90)
    length = {"long": 0.0, "short": 0.0}
    for name, garment in (("long", long), ("short", short)):
        front = garment.draft["front"]
        length[name] = ruled(front["fly"].path) + ruled(front["crotch"].path)
        assert errors(garment) == []
    assert ruled(short.draft["front"]["fly"].path) == pytest.approx(90, abs=0.01)
    assert ruled(long.draft["front"]["fly"].path) > 100
    assert length["long"] == pytest.approx(length["short"], abs=0.01)
    least = trousers(legs(), fly_length=40).draft["front"]["fly"]
    assert ruled(least.path) == pytest.approx((1000 - 850 - 16) / 2, abs=1.0)


def test_the_facing_is_a_smooth_j_of_its_width_and_the_topstitching_lies_on_it() -> None:
    # Common practice: a fly facing is 35 to 40 mm wide.
    for garment in people():
        draft = garment.draft
        facing = draft["fly-facing"]
        inner = facing["inner"].path
        assert inflections(inner, 0.1) == 0
        for before, after in zip(inner.segments, inner.segments[1:], strict=False):
            assert abs(before.tangent(1.0) - after.tangent(0.0)) < 1e-6
        assert ruled(facing["waist"].path) == pytest.approx(40, abs=0.01)
        over = facing.hand
        behind = facing.mirrored() if over == "left" else facing
        cloth = shapely.Polygon(corners(behind.outline)).buffer(0.01)
        stitched = shapely.LineString(corners(mark(draft["front"], f"fly_stitching_{over}")))
        assert cloth.covers(stitched)
        gap = shapely.LineString(corners(behind["inner"].path)).distance(
            shapely.Point(corners(mark(draft["front"], f"fly_stitching_{over}"))[-1])
        )
        assert gap == pytest.approx(6.0, abs=HALF_MM)


def test_the_shield_is_forty_wide_on_an_upright_fold_and_longer_than_the_fly() -> None:
    # Common practice: a shield of 35 to 45 mm, 10 to 20 mm longer than the fly, fold on the warp.
    shield = trousers(legs()).draft["fly-shield"]
    fold = shield["fold"]
    assert fold.kind is EdgeKind.FOLD
    assert fold.path.start.real == pytest.approx(fold.path.end.real, abs=1e-6)
    assert shield.grain == 90
    assert ruled(shield["waist"].path) == pytest.approx(40, abs=0.01)
    assert 10 <= ruled(fold.path) - ruled(shield["fly"].path) <= 20


@pytest.mark.parametrize(("choices", "over", "under"), [({}, "left", "right"), (RIGHT, "right", "left")])
def test_the_side_on_top_is_a_free_choice_and_every_lone_piece_names_its_side(
    choices: dict[str, str], over: str, under: str
) -> None:
    # Common practice: which side lies on top is a free choice, whoever wears it.
    draft = trousers(legs(), **choices).draft
    assert (draft["fly-facing"].hand, draft["fly-shield"].hand) == (over, under)
    assert not draft["fly-facing"].pair
    names = {m.name for m in (*draft["front"].placements, *draft["waistband"].placements)}
    assert {f"fly_stitching_{over}", f"buttonhole_{over}", f"button_{under}"} <= names


def test_the_facing_of_the_right_front_is_the_mirror_image_of_the_left_ones() -> None:
    left, right = (trousers(legs(), **c).draft["fly-facing"] for c in ({}, RIGHT))
    mirrored = shapely.Polygon(corners(right.mirrored().outline))
    assert shapely.Polygon(corners(left.outline)).symmetric_difference(mirrored).area < 0.1


@pytest.mark.parametrize("choices", [{}, {**RIGHT, "band_cut": "seamed"}])
def test_a_wearer_with_two_different_legs_gets_one_facing_one_shield_and_flies_of_one_length(
    choices: dict[str, str],
) -> None:
    garment = trousers(uneven(legs(), "thigh_girth", 600, 625), **choices)
    draft = garment.draft
    assert errors(garment) == []
    lone = sorted(p.name for p in draft.pieces if p.name.startswith("fly") and not p.material)
    expected = ["fly-facing-right", "fly-shield-left"] if choices else ["fly-facing-left", "fly-shield-right"]
    assert lone == expected
    left, right = (ruled(draft[f"front-{side}"]["fly"].path) for side in ("left", "right"))
    assert left == pytest.approx(right, abs=0.01)
    assert sum(n.count for n in draft.notions if n.what == "zip") == 1


def test_a_zip_ends_within_the_fly_and_a_hook_takes_the_place_of_the_button() -> None:
    garment = trousers(legs(), band_fastening="hook and bar")
    bought = {n.what: n for n in garment.draft.notions}
    assert bought["zip"].count == 1
    assert bought["zip"].cut_length is not None
    assert bought["zip"].cut_length < ruled(garment.draft["front"]["fly"].path)
    assert "hook and bar" in bought
    assert "button" not in bought
    kinds = [m.what for m in garment.draft["waistband"].placements]
    assert kinds.count("hook") == 2
    assert "button" not in kinds


def test_trousers_that_are_pulled_on_get_no_fly_and_say_so() -> None:
    garment = trousers(legs(), waist_finish="casing")
    assert "fly-facing" not in garment.draft
    assert [f for f in garment.findings if f.check == "fly" and f.level == "warning"]
    assert not [f for f in trousers(legs(), waist_finish="casing", fly=False).findings if f.check == "fly"]
    plain = trousers(legs(), fly=False)
    assert "fly-facing" not in plain.draft
    assert errors(plain) == []


@pytest.mark.parametrize("block", ["trousers", "knee-breeches"])
@pytest.mark.parametrize("braces", ["by the figure", "yes"])
def test_what_is_pulled_on_over_elastic_has_no_band_and_nothing_to_button(block: str, braces: str) -> None:
    """Common practice: a casing is the waist's own cloth turned down; nothing is buttoned over a shut front.

    A band on an underlap, fused and with a buttonhole, was sewn on over the elastic, and braces were asked for."""
    garment = draft_garment(legs(), None, block, {"waist_finish": "casing", "brace_buttons": braces})
    assert not [piece.name for piece in garment.draft.pieces if piece.role is PieceRole.WAISTBAND]
    waist = [e for p in garment.draft.pieces for e in p.edges if e.role is EdgeRole.WAIST]
    assert {edge.kind for edge in waist} == {EdgeKind.HEM}
    assert "brace button" not in {notion.what for notion in garment.draft.notions}
    assert not [f for f in garment.findings if f.check == "braces"]
    assert [f for f in garment.findings if f.check == "waistband" and "no waistband" in f.message]


def test_elastic_that_nothing_below_holds_up_is_told_so() -> None:
    """Common practice: a waist that is the widest holds no trousers up."""
    stout = legs(waist_girth=1500.0, hip_girth=1360.0)
    (said,) = [f for f in trousers(stout, waist_finish="casing").findings if f.check == "braces"]
    assert said.level == "warning"
    assert "waist_finish = waistband, and brace_buttons = yes" in said.message


def test_a_fly_sewn_twice_on_one_side_is_an_error() -> None:
    # The check itself: the front's fly may meet one piece of each side, and no more.
    garment = trousers(legs())
    draft = garment.draft
    twin = replace(draft["fly-facing"], name="second-facing")
    again = Seam("twice", (("second-facing", "fly"),), (("front", "fly"),), start=None, end=None)
    wrong = replace(draft, pieces=(*draft.pieces, twin), seams=(*draft.seams, again))
    said = [f.where for f in check_draft(wrong, legs()) if f.check == "sewn once"]
    assert "front.fly" in said
    assert not [f for f in check_draft(draft, legs()) if f.check == "sewn once"]
