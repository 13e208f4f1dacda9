"""Figures of the cutting table (tests/published.py), and its troubles, each by its row."""

from __future__ import annotations

import cmath
import math
import re
from dataclasses import replace

import pytest

from drafting.draft.roles import PieceRole
from drafting.fabric import Fabric
from drafting.layout import LayWishes, Part, bolts_sold, cloth_of, lay_out, lay_row
from drafting.layout.jobs import job_from
from drafting.layout.outlines import DRIFT, outline_of
from drafting.layout.remarks import fewest_parts
from tests.layout.figures import COAT, FRONT, SLEEVE, box, breaks, cloth, cut_piece, half, part
from tests.published import pairs, several, single, span_mm


def test_the_table_of_other_widths_names_the_bolts_of_the_trade() -> None:
    # The trade's bolts: 90; 112-115; 137-140; 150; 160; 280-300 cm.
    bolts = bolts_sold("cm")
    for low, high in pairs("bolt-widths"):
        assert any(10 * low <= bolt <= 10 * high for bolt in bolts), (low, high)
    lay = lay_out(COAT, cloth(), count=60)
    assert {o.width for o in lay.others} >= set(bolts)
    assert {o.lay for o in lay.others} == {"folded", "open"}


def test_a_wider_bolt_never_needs_more_and_pieces_that_stick_out_are_named() -> None:
    lay = lay_out((*COAT, part("tail", box(600, 900))), cloth(), count=1500)
    for way in ("folded", "open"):
        rows = sorted((o for o in lay.others if o.lay == way), key=lambda o: o.width)
        lengths = [o.length for o in rows if o.length is not None]
        assert lengths == sorted(lengths, reverse=True)
    narrow = next(o for o in lay.others if o.lay == "folded" and o.width == 900)
    assert narrow.length is None
    assert "coat.tail" in narrow.sticks_out


def test_warp_along_the_selvedge_weft_across_bias_between() -> None:
    # By definition: the warp at 0 degrees to the selvedge, the weft at 90, true bias at 45; drawn at any grain.
    for off in several("grain-angles"):
        for grain in (90.0, 0.0, 45.0, 250.0):
            outline = outline_of(part("band", box(100, 500), grain=grain), "open")
            drawn = cmath.rect(1, math.radians(grain + off))
            lies = outline.base(drawn) - outline.base(0j)
            assert math.degrees(cmath.phase(lies)) == pytest.approx(off, abs=1e-9)


def test_a_folded_bolt_gives_half_of_what_lies_between_the_selvedges() -> None:
    # 150 cm cloth, 1 cm selvedges: 74 cm a layer; 1 to 2 cm a side cannot be used (the trade).
    fabric = Fabric("Test", usable_width=1500 - 20, width=1500, selvedge=10)
    folded = cloth_of("shell", fabric).layer_width("folded")
    assert folded / 10 == pytest.approx(single("folded-layer"), abs=0.01)
    low, high = span_mm("selvedge")
    assert low <= Fabric("Nothing said").selvedge <= high
    lay = lay_out((part("back", half(735, 600), fold=4),), cloth(1480.0), count=20, table=False)
    assert lay.lay == "folded"
    (row,) = lay_row(lay)["placed"]
    assert row["y"] == 0
    assert row["on_fold"]


def test_on_one_way_cloth_all_tops_point_one_way_and_the_difference_is_shown() -> None:
    # Common practice: one-way 0 only, plain 0 and 180; here 8 pieces.
    wedge = [(0.0, 0.0), (500.0, 0.0), (480.0, 380.0), (60.0, 420.0)]
    parts = tuple(part(f"panel-{n}", wedge, number=n) for n in range(8))
    plain = lay_out(parts, cloth(1500, "open"), count=400, table=False)
    nap = lay_out(parts, cloth(1500, "open", one_way=True), count=400, table=False)
    assert {r["rotation_deg"] for r in lay_row(nap)["placed"]} == set(several("one-way-turns"))
    assert {r["rotation_deg"] for r in lay_row(plain)["placed"]} <= {0, 180}
    assert nap.length >= plain.length
    assert breaks(nap, parts) == breaks(plain, parts) == []


def test_a_fold_edge_off_the_grain_by_more_than_the_drift_is_not_laid_on_the_fold() -> None:
    # Cutting rooms, from memory: 0.3 cm over 1 m.
    assert math.tan(math.radians(DRIFT)) * 100 == pytest.approx(single("grain-drift"), abs=0.01)
    for degrees, on in ((90.1, True), (90.3, False)):
        tilted = part("back", half(200, 600), fold=4, grain=degrees)
        assert bool(job_from((outline_of(tilted, "folded"),), cloth(), "folded")[0].copies) is on


def test_one_layer_holds_one_left_and_one_mirrored_right() -> None:
    # 2 pieces, mirror of mirror is the original; an asymmetric sleeve, quantity 2.
    sleeve = cut_piece("sleeve", SLEEVE, pair=True)
    lay = lay_out((Part("coat", sleeve),), cloth(lay="open"), count=20, table=False)
    rows = lay_row(lay)["placed"]
    assert len(rows) == single("mirrored-pair")
    assert sorted((r["hand"], r["mirrored"]) for r in rows) == [("left", False), ("right", True)]
    left, right = (lay.job.posed(spot) for spot in lay.packing.spots)
    assert _area(left) == pytest.approx(-_area(right), rel=1e-9)
    assert _round(left) == pytest.approx(_round(right), rel=1e-9)
    twice = sleeve.mirrored().mirrored()
    for p, q in zip(twice.cut.flattened(1.0), sleeve.cut.flattened(1.0), strict=True):
        assert p == pytest.approx(q)


def test_two_lefts_are_found_out() -> None:
    lay = lay_out((part("sleeve", SLEEVE, pair=True),), cloth(lay="open"), count=20, table=False)
    left = lay.packing.spots[0]
    spots = (left, replace(left, copy=1, x=left.x + 900))
    from drafting.layout import broken_rules

    assert any("not allowed" in s for s in broken_rules(lay.job, replace(lay.packing, spots=spots)))


def test_no_lay_is_shorter_than_area_over_width() -> None:
    # Arithmetic: 2.96 m2 on 148 cm need at least 200 cm.
    parts = (part("panel", box(740, 1000), pair=True, copies=2),)
    lay = lay_out(parts, cloth(1480.0, gap=0.0), count=20, table=False)
    assert lay.area == pytest.approx(2.96e6)
    assert lay.lower_bound / 10 == pytest.approx(single("shortest-lay"), abs=0.01)
    assert lay.utilisation == pytest.approx(1, abs=1e-3)
    assert lay.length >= lay.lower_bound - 1e-6


def test_a_panel_of_60_by_100_on_the_bias_takes_its_diagonal_box_and_does_not_fit_a_112_bolt() -> None:
    # Plane geometry: 60 x 100 cm at 45 degrees: 113.137 cm each way; 113.1 > 112.
    panel = part("panel", box(600, 1000), grain=45.0)
    x0, y0, x1, y1 = outline_of(panel, "open").path.bounds
    wanted = single("bias-box")
    assert (x1 - x0) / 10 == pytest.approx(wanted, abs=0.01)
    assert (y1 - y0) / 10 == pytest.approx(wanted, abs=0.01)
    assert lay_out((panel,), cloth(1120.0, "open"), count=5, table=False).left_out
    assert not lay_out((panel,), cloth(1135.0, "open"), count=5, table=False).left_out


def test_la3_half_pieces_lie_on_the_fold_or_are_opened_and_never_on_the_selvedge() -> None:
    front = part("front", half(300, 600), fold=4)
    folded = lay_out((front,), cloth(lay="folded"), count=20, table=False)
    assert [(r["on_fold"], r["y"]) for r in lay_row(folded)["placed"]] == [(True, 0.0)]
    open_ = lay_out((front,), cloth(lay="open"), count=20, table=False)
    (row,) = lay_row(open_)["placed"]
    assert row["opened"]
    assert not row["on_fold"]
    assert open_.area == pytest.approx(folded.area) == pytest.approx(2 * front.cut.cut.area)


def test_la3_a_half_piece_to_the_left_of_its_fold_lies_on_the_fold_as_well() -> None:
    left = [(-x, y) for x, y in half(300, 600)][::-1]  # its fold side comes last but one
    fold = next(i for i in range(5) if left[i][0] == left[(i + 1) % 5][0] == 0)
    lay = lay_out((part("back", left, fold=fold),), cloth(lay="folded"), count=20, table=False)
    assert breaks(lay, (part("back", left, fold=fold),)) == []


def test_la6_twelve_pieces_of_three_cloths_lie_apart_one_plan_a_cloth() -> None:
    shapes = (SLEEVE, FRONT, box(300, 120), box(150, 420))
    for role in ("shell", "lining", "interfacing"):
        parts = tuple(part(f"{role}-{n}", s, pair=True) for n, s in enumerate(shapes))
        lay = lay_out(parts, replace(cloth(), role=role), count=100, table=False)
        assert lay.role == role
        assert breaks(lay, parts) == []  # areas of overlap 0, gap 5 mm, all placed


def test_fa6_the_selvedges_are_taken_off_and_what_then_sticks_out_is_named() -> None:
    # Common practice: width 150, selvedge 1.5 each side: 147.0 usable; a row of 148 does not fit.
    fabric = Fabric("Wool", usable_width=1500 - 2 * 15, width=1500, selvedge=15)
    wide = (part("row", box(1480, 300)),)
    lay = lay_out(wide, cloth_of("shell", fabric, LayWishes(lay="open")), count=5, table=False)
    (error,) = (f for f in lay.findings if f.level == "error")
    assert (error.value, error.wanted) == (1480, 1470)
    assert "148 cm" in error.said("cm")
    assert "147 cm" in error.said("cm")
    assert lay_row(lay)["left_out"] == [{"garment": "coat", "piece": "row", "count": 1}]
    assert lay_row(lay)["placed"] == []


def test_fa6_a_width_that_nothing_names_is_assumed_in_words() -> None:
    lay = lay_out(COAT, cloth_of("lining", None), count=20, table=False)
    (said,) = (f for f in lay.findings if f.check == "cloth width")
    assert said.value == 1370
    assert "assumed" in said.message
    assert "Measure the cloth" in said.message


def test_a_half_piece_too_wide_for_the_fold_says_open_the_cloth() -> None:
    wide = (part("cape", half(740 + 1, 600), fold=4), *COAT)
    folded = lay_out(wide, cloth(lay="folded"), count=20, table=False)
    (error,) = (f for f in folded.findings if f.level == "error")
    assert "open the cloth, where it fits on one layer" not in error.message  # 148.2 > 148
    fits = (part("cape", half(739, 600), fold=4),)
    narrow = cloth(1470.0, "folded")
    (error,) = (f for f in lay_out(fits, narrow, count=5, table=False).findings if f.level == "error")
    assert "split it into 2" in error.message  # 147.8 > 147
    whole = (part("panel", box(800, 600), pair=True),)
    (error,) = (
        f for f in lay_out(whole, cloth(1480, "folded"), count=5, table=False).findings if f.level == "error"
    )
    assert "open the cloth" in error.message
    auto = lay_out(whole, cloth(1480), count=5, table=False)
    assert auto.lay == "open"
    assert not auto.left_out
    assert any(f.check == "open the cloth" for f in auto.findings)


@pytest.mark.parametrize(("outer", "fits"), [(1423, True), (1543, False)])
def test_fl1_a_circle_wider_than_the_cloth_is_named_and_halves_are_offered(outer: int, fits: bool) -> None:
    # Arithmetic: 150 usable; outer diameter 142.3 fits and 154.3 does not.
    circle = [
        (outer / 2 * math.cos(math.tau * k / 90), outer / 2 * math.sin(math.tau * k / 90)) for k in range(90)
    ]
    lay = lay_out((part("skirt", circle),), cloth(1500, "open"), count=5, table=False)
    assert (not lay.left_out) is fits
    errors = [f.said("cm") for f in lay.findings if f.level == "error"]
    assert len(errors) == (0 if fits else 1)
    if errors:
        assert re.search(r"154\.\d cm.*150 cm.*split it into 2 gores.*for the new seams", errors[0])


def test_fl5_a_panel_wider_than_the_cloth_is_to_be_split_into_the_fewest_gores() -> None:
    # Common practice: hem 165 with allowances, 147 usable: 2 gores.
    flared = [(0.0, 0.0), (1650.0, 0.0), (1200.0, 700.0), (450.0, 700.0)]
    lay = lay_out((part("panel", flared),), cloth(1470, "open"), count=5, table=False)
    (error,) = (f for f in lay.findings if f.level == "error")
    assert "split it into 2 gores or panels, each on its own grainline" in error.message
    assert fewest_parts(1650, 1470, 10) == 2


def test_a_waistband_longer_than_the_cloth_is_wide_is_cut_in_lengths_not_in_gores() -> None:
    """By hand: 117.6 cm across 112, its stretch the way round: two lengths of 58.8 + 1 cm."""
    band = part("waistband", box(1176.0, 80.0))
    piece = replace(band.cut.piece, role=PieceRole.WAISTBAND)
    band = replace(band, cut=replace(band.cut, piece=piece))
    lay = lay_out((band,), cloth(1120, "open"), count=5, table=False)
    (error,) = (f for f in lay.findings if f.level == "error")
    said = error.said("cm")
    assert "cut it in 2 lengths, joined at the middle" in said
    assert "about 59.8 cm long" in said
    assert "gores" not in said


def _area(ring: tuple[complex, ...]) -> float:
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return sum((a.conjugate() * b).imag for a, b in pairs) / 2


def _round(ring: tuple[complex, ...]) -> float:
    return sum(abs(b - a) for a, b in zip(ring, (*ring[1:], ring[0]), strict=True))
