"""Troubles of real makers (hollow edges, stretch, shrinkage, bust darts, uneven shoulders), each on two
dozen people.

Sixteen are drawn from the spread of ANSUR II (Gordon et al. 2014) and eight lie at its ends
(tests/drawn_bodies.py); cut lines, areas and distances are measured by shapely on points of the
curves, not by the kit. Single worked figures of the same troubles stand in the tests of each block
and of the finish.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import replace
from functools import cache

import pytest
from shapely import Point, Polygon

from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.fabric import Fabric, must_reach, needed_stretch
from drafting.finish.unwashed import enlarged
from drafting.geometry import Path
from drafting.ground.errors import DraftError
from tests.blocks.figures import bust_dart, dart_mouth, errors, girth, level, made, pair, walked
from tests.drawn_bodies import drawn, far

COUNT = 24
WHO = range(COUNT)
SINGLE = pytest.mark.parametrize("which", WHO)


def person(which: int) -> Body:
    return (*drawn(COUNT - 8), *far()[::5])[which]


def ring(path: Path) -> Polygon:
    return Polygon([(p.real, p.imag) for p in path.flattened(0.01)])


# ----------------------------------------------------------------- allowances on hollow edges


@SINGLE
def test_al3_every_cut_line_is_one_ring_at_its_distance(which: int) -> None:
    # One valid polygon, no crumbs, 15.0 +/- 0.1 from the seam wherever possible; armholes and
    # necklines are the hollow edges here.
    widths = {"seam_allowance": 15.0, "curve_allowance": 15.0, "hem_allowance": 15.0}
    for cut in made(person(which), **widths).pattern.pieces:
        outer, inner = ring(cut.cut), ring(cut.piece.outline)
        assert outer.is_valid, cut.piece.name
        assert outer.geom_type == "Polygon"
        assert not outer.interiors
        assert inner.difference(outer).area < 1.0, cut.piece.name
        for edge in cut.piece.edges:
            if cut.allowances.get(edge.name) == 15.0 and edge.length > 60 and not cut.caps:
                middle = edge.path.part(25.0, edge.length - 25.0)
                boundary = outer.exterior
                away = [boundary.distance(Point(p.real, p.imag)) for p in middle.flattened(1.0)]
                assert min(away) > 14.9, (cut.piece.name, edge.name)
                assert max(away) < 15.1, (cut.piece.name, edge.name)


# --------------------------------------------------- stretch, its way, shrinkage

STIFF = Fabric(title="cloth without stretch, invented")
ACROSS = Fabric(title="knit, invented", weave="knit", stretch_across=0.60, stretch_along=0.15, recovery=0.95)
"""60 % crosswise, 15 % lengthwise."""


@SINGLE
def test_fa1_ten_percent_less_than_the_hip_is_refused_on_cloth_that_gives_nothing(which: int) -> None:
    # Arithmetic, ease -10 %: what is left must stretch 11.1 % (1 / 0.9 - 1), whatever the hip.
    hip = person(which)["hip_girth"]
    assert needed_stretch(hip, 0.9 * hip) == pytest.approx(0.111, abs=0.001)
    with pytest.raises(DraftError, match=r"11\.1 %.*the cloth gives 0 %") as refused:
        must_reach("hip", hip, 0.9 * hip, 0.0)
    assert "woven" in str(refused.value)
    must_reach("hip", hip, 0.9 * hip, 0.12)


@SINGLE
@pytest.mark.parametrize("cloth", [None, STIFF], ids=["no cloth", "stiff"])
def test_fa1_a_close_top_is_refused_without_stretch(which: int, cloth: Fabric | None) -> None:
    with pytest.raises(DraftError, match="stretches 0 %") as refused:
        draft_garment(person(which), cloth, "close-top")
    assert "woven" in str(refused.value)
    assert "cloth that stretches" in str(refused.value)


@SINGLE
def test_fa3_the_greatest_stretch_lies_around_every_piece(which: int) -> None:
    body = person(which)
    swapped = replace(ACROSS, stretch_across=0.15, stretch_along=0.60)
    straight = draft_garment(body, ACROSS, "close-top")
    turned = draft_garment(body, swapped, "close-top")
    for garment, warp in ((straight, 90.0), (turned, 0.0)):
        for cut in garment.pattern.pieces:
            assert cut.piece.grain % 180 == warp, cut.piece.name
            assert cut.piece.stretch % 180 == 0.0, cut.piece.name
            assert cut.stretch_arrow is not None, cut.piece.name
            along = cut.stretch_arrow.end - cut.stretch_arrow.start
            assert abs(along.imag) < 0.01 * abs(along.real), cut.piece.name
        assert errors(garment) == []
    said = [f for f in turned.findings if f.check == "stretch direction"]
    assert said
    assert "pieces are turned" in said[0].message
    assert not [f for f in straight.findings if f.check == "stretch direction"]
    # The pieces themselves are the same, as the same stretch goes round.
    for one, other in zip(straight.draft.pieces, turned.draft.pieces, strict=True):
        assert one.outline.length == pytest.approx(other.outline.length, abs=0.01)


COTTON = Fabric(title="cotton, invented", shrinkage_along=0.05, shrinkage_across=0.03)
"""5 % lengthwise, 3 % crosswise."""


@SINGLE
@pytest.mark.parametrize("grain", [90.0, 0.0], ids=["upright", "crosswise"])
def test_fa5_pieces_cut_unwashed_come_out_of_the_wash_as_drawn(which: int, grain: float) -> None:
    # ISO 5077: divide by 0.95 and 0.97 along the grain and across it, also on pieces laid crosswise:
    # 62.0 x 50.0 cm is cut 65.26 x 51.55.
    pattern = made(person(which)).pattern
    pieces = tuple(replace(cut, piece=replace(cut.piece, grain=grain)) for cut in pattern.pieces)
    larger = enlarged(replace(pattern, pieces=pieces), COTTON)
    long, wide = 1 / 0.95, 1 / 0.97
    up, over = (long, wide) if grain == 90.0 else (wide, long)
    assert (620 * long, 500 * wide) == (pytest.approx(652.6, abs=0.1), pytest.approx(515.5, abs=0.1))
    for cut, grown in zip(pattern.pieces, larger.pieces, strict=True):
        small, large = ring(cut.cut), ring(grown.cut)
        x0, y0, x1, y1 = small.bounds
        a0, b0, a1, b1 = large.bounds
        assert a1 - a0 == pytest.approx(over * (x1 - x0), abs=0.1), cut.piece.name
        assert b1 - b0 == pytest.approx(up * (y1 - y0), abs=0.1), cut.piece.name
        assert large.area == pytest.approx(small.area * long * wide, rel=1e-4)
    assert any("Washing before cutting" in f.message for f in larger.findings)


@pytest.mark.parametrize("which", WHO[::4])
def test_fa5_washed_cloth_is_cut_as_drawn_and_girths_stay_finished_ones(which: int) -> None:
    body, choice = person(which), {"cut_unwashed": True}
    washed = draft_garment(body, replace(COTTON, pretreated=True), "bodice", choice)
    unwashed = draft_garment(body, COTTON, "bodice", choice)
    plain = draft_garment(body, COTTON, "bodice")
    for a, b in zip(washed.pattern.pieces, plain.pattern.pieces, strict=True):
        assert a.cut.area == pytest.approx(b.cut.area, rel=1e-9)
    assert unwashed.draft.girths == plain.draft.girths
    assert girth(unwashed.draft, "bust") == pytest.approx(girth(plain.draft, "bust"), abs=1e-6)


# ------------------------------------------------------------------- the bust dart


@cache
def full_busted() -> tuple[Body, ...]:
    """Return two dozen drawn people whose bust is at least 25 mm over their estimated high bust."""
    found = [b for b in drawn(600) if b["bust_girth"] - b["high_bust_girth"] >= 25]
    return tuple(found[:: len(found) // COUNT][:COUNT])


def with_fullness(which: int, fullness: float) -> Body:
    """Return one of them, fully measured, with a bust so much (mm) over the high bust, and without a belly,
    which would take of the bust dart."""
    body = full_busted()[which]
    fixed = (
        "across_front_width",
        "axilla_depth",
        "bust_point_width",
        "upper_arm_length",
        "across_back_low_width",
        "high_bust_girth",
    )
    taken = {name: body[name] for name in fixed}
    taken["waist_girth"] = min(body["waist_girth"], 0.9 * body["high_bust_girth"])
    return body.changed(**taken, bust_girth=body["high_bust_girth"] + fullness)


@pytest.mark.parametrize("which", WHO)
def test_dr1_a_fuller_bust_grows_the_dart_and_the_front_and_nothing_else(which: int) -> None:
    # Common practice: 5 and 14 cm of fullness. Back width, shoulder and neck within 0.1 mm, front
    # armhole within 5 mm, finished bust = body + ease in both; dart and front length grow. Where a
    # finding says that widths across or shoulder were settled for each other, these may differ; and
    # the armhole may once a finding says that a part of the dart stays in it as ease, past 25
    # degrees: so it is compared at the most of 9.5, 8 and 6.5 cm
    # that leaves nothing of the dart in it, too. Where shoulder, widths across or underarm were
    # settled for the arm, the armhole goes with them: 6 mm there (one of the two dozen: 5.7).
    bodies = [with_fullness(which, fullness) for fullness in (50.0, 140.0)]
    less, more = (pair(body) for body in bodies)
    settled = {f.check for draft in (less, more) for f in draft.findings}
    room = 6 if settled & {"across", "shoulder", "armhole"} else 5
    if "across" not in settled:
        assert level(more, "back", "across_back") == pytest.approx(level(less, "back", "across_back"), abs=0.1)
    for piece in ("back", "front"):
        assert more[piece]["neck"].length == pytest.approx(less[piece]["neck"].length, abs=0.1)
        if "shoulder" not in settled:
            shoulders = [draft[piece]["shoulder"].length for draft in (less, more)]
            assert shoulders[1] == pytest.approx(shoulders[0], abs=0.1)
    tried = (pair(with_fullness(which, fullness)) for fullness in (95.0, 80.0, 65.0))
    between = next(draft for draft in tried if all(f.check != "bust dart" for f in draft.findings))
    armholes = [draft["front"]["armhole"].length for draft in (less, between, more)]
    assert armholes[1] == pytest.approx(armholes[0], abs=room)
    if "bust dart" not in settled:
        assert armholes[2] == pytest.approx(armholes[0], abs=room)
    assert dart_mouth(more, "front", "bust_dart") > dart_mouth(less, "front", "bust_dart") + 10
    assert more.facts["front_waist_length"] > less.facts["front_waist_length"] + 10
    for draft, body in zip((less, more), bodies, strict=True):
        assert girth(draft, "bust") == pytest.approx(body["bust_girth"] + 80, abs=1)


@SINGLE
@pytest.mark.parametrize("where", ["side", "shoulder", "armhole", "neck"])
def test_dr2_the_dart_stops_short_of_the_bust_point_and_aims_at_it(which: int, where: str) -> None:
    # Common practice: the tip lies 20 to 35 mm short, aims within 1 degree, stops farther off a fuller bust.
    shorts = []
    for fullness in (30.0, 60.0, 90.0):
        front = pair(with_fullness(which, fullness), bust_dart=where)["front"]
        short, off = bust_dart(front)
        assert abs(off) <= 1
        shorts.append(short)
    assert all(20 - 1e-6 <= short <= 35 + 1e-6 for short in shorts)
    assert shorts == sorted(shorts)
    assert shorts[0] < shorts[-1]


@SINGLE
@pytest.mark.parametrize("where", ["side", "shoulder", "armhole", "neck"])
def test_dr3_legs_are_equal_and_the_folded_seam_runs_smoothly_over_the_dart(which: int, where: str) -> None:
    # Common practice: legs within 0.5 mm (ours 0.2); the seam line across the folded dart straight or smooth:
    # 180 within 2 degrees; a cap is drawn on the cut line.
    garment = made(with_fullness(which, 60.0), bust_dart=where)
    front = garment.draft["front"]
    into, out = front["bust_dart_in"].path, front["bust_dart_out"].path
    assert into.length == pytest.approx(out.length, abs=0.2)
    names = [edge.name for edge in front.edges]
    before = front.edges[names.index("bust_dart_in") - 1].path
    after = front.edges[(names.index("bust_dart_out") + 1) % len(names)].path
    fold = (into.end - into.start) / (out.start - out.end)
    bend = math.degrees(cmath.phase(after.leave * fold / before.arrive))
    assert abs(bend) <= 2
    caps = {cap.edges for cap in garment.pattern["front"].caps}
    assert ("bust_dart_in", "bust_dart_out") in caps


# ------------------------------------------------------------------------ two shoulders


def uneven(body: Body) -> Body:
    """Return the body with its right shoulder 10 mm shorter and 20 mm lower than its left.

    The row: lengths 12.5 and 11.5, drops 4.0 and 6.0; about each person's own here.
    """
    length, drop = body["shoulder_length"], max(body["shoulder_drop"], 30.0)
    return body.changed(shoulder_length=(length + 5, length - 5), shoulder_drop=(drop - 10, drop + 10))


@SINGLE
def test_me6_two_shoulders_give_two_sides_of_a_front_and_a_back_that_still_meet(which: int) -> None:
    body = uneven(person(which))
    garment = made(body)
    draft = garment.draft
    assert {"front", "back", "sleeve-left", "sleeve-right"} <= {piece.name for piece in draft.pieces}
    for piece in draft.pieces:
        assert piece.fold_edge is None
        assert piece.hand in piece.name
        assert not piece.pair
    if not any(f.check == "shoulder" for f in draft.findings):
        for side in ("left", "right"):
            length = draft["front"][f"shoulder_{side}"].length
            assert length == pytest.approx(body.hand("shoulder_length", side), abs=0.1)
    necks = [
        draft["front"][f"neck_{side}"].length + draft["back"][f"neck_{side}"].length for side in ("left", "right")
    ]
    assert necks[0] == pytest.approx(necks[1], abs=0.1)
    for side in ("left", "right"):
        for half in ("front", "back"):
            seam = walked(draft, f"{half} armhole {side}")
            assert seam.a_sewn - seam.b_sewn == pytest.approx(seam.seam.ease, abs=0.5)
            assert {piece for piece, _ in (*seam.seam.a, *seam.seam.b)} == {f"sleeve-{side}", half}
    assert errors(garment) == []


def test_the_people_are_two_dozen_and_unlike() -> None:
    busts = [person(which)["bust_girth"] for which in WHO]
    assert len(busts) == len(full_busted()) == COUNT
    assert max(busts) - min(busts) > 250
