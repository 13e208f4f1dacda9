"""The cut line: widths, corners, folds, tight places."""

import cmath
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.finish import FinishChoices
from drafting.finish import cut_line as cutting
from drafting.finish.cut_line import CRUMB
from drafting.geometry import Path, area, line, turn
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from tests.finish.figures import K, cut_line, of_sides, polygon, side_dart_half_front
from tests.geometry.shapes import arc, outlines

MISS = tol.OFFSET_FIT + 2 * tol.FLAT


def plain(width: float) -> FinishChoices:
    return FinishChoices(
        seam_allowance=width,
        curve_allowance=width,
        hem_allowance=width,
        opening_allowance=width,
        free_allowance=width,
    )


def holds(piece: Piece, cut: Path) -> None:
    assert area.is_simple(cut)
    assert cut.area > piece.area
    assert area.outside(piece.outline, cut) < CRUMB
    assert abs(cut.end - cut.start) < tol.CLOSED
    for a, b in zip(cut.segments, cut.segments[1:], strict=False):
        assert abs(a.end - b.start) < tol.CLOSED


def test_a_rectangle_20_by_30_with_1_5_cm_becomes_23_by_33() -> None:
    """Plane geometry: 759.0 cm2 (rounded corners would give 757.07)."""
    cut = cut_line(polygon(0j, 200 + 0j, 200 + 300j, 300j), plain(15)).path
    assert cut.area / 100 == pytest.approx(759.0, abs=0.01)
    assert len(cut.segments) <= 12


def test_a_disc_of_10_cm_with_1_cm_has_a_cut_edge_of_69_115_cm() -> None:
    """Plane geometry: 69.115; its sewing line stays 62.83."""
    halves = [arc(0j, 100, 0, 180), arc(0j, 100, 180, 360)]
    piece = of_sides(*halves)
    assert piece.outline.length / 10 == pytest.approx(62.83, abs=0.005)
    cut = cut_line(piece, plain(10)).path
    assert cut.length / 10 == pytest.approx(69.115, abs=0.005)


def test_a_half_front_of_24_on_the_fold_is_cut_25_wide_and_opens_to_50() -> None:
    """Common practice: the fold edge gets exactly nothing."""
    piece = polygon(0j, 240 + 0j, 240 + 400j, 400j, kinds={3: K.FOLD})
    line_ = cut_line(piece, plain(10))
    x0, y0, x1, y1 = line_.path.bounds
    assert x1 - x0 == pytest.approx(250.0, abs=1e-9)
    assert 2 * (x1 - x0) == pytest.approx(500.0, abs=1e-9)
    assert (x0, y0, y1) == pytest.approx((0.0, -10.0, 410.0), abs=1e-9)
    assert line_.allowances["s3"] == 0.0
    on_fold = [s for s in line_.path if abs(s.start.real) < 1e-9 and abs(s.end.real) < 1e-9]
    assert math.fsum(s.length for s in on_fold) == pytest.approx(420.0, abs=1e-6)


@pytest.mark.parametrize("lean", [-70, -40, -15, 0, 15, 40, 70])
def test_the_cut_line_ends_on_the_fold_line_run_on_whatever_the_corner(lean: float) -> None:
    """A neck edge that meets the fold at 90 + lean degrees; the tip at -70 is cut off."""
    far = 300j + 100 * turn(lean)
    piece = polygon(0j, 200 + 0j, far, 300j, kinds={3: K.FOLD})
    cut = cut_line(piece, plain(10)).path
    holds(piece, cut)
    assert cut.bounds[0] == pytest.approx(0.0, abs=1e-6)
    top = max(s.start.imag for s in cut if abs(s.start.real) < 1e-6)
    reach = 20.0 if lean == -70 else 10 / math.cos(math.radians(lean))
    assert top == pytest.approx(300 + reach, abs=1e-6)


def test_a_corner_of_20_degrees_is_cut_off_within_twice_the_allowance() -> None:
    """10 / sin 10 degrees: the full mitre would reach 57.6 mm; the width of 10 stays along both edges."""
    tip, half = 0j, 300 * cmath.exp(1j * math.radians(10))
    piece = polygon(tip, half.conjugate(), half)
    cut = cut_line(piece, plain(10)).path
    holds(piece, cut)
    assert max(abs(s.start) for s in cut if s.start.real < 0) == pytest.approx(20.0, abs=1e-6)
    assert area.distances(cut, piece.outline).min() == pytest.approx(10.0, abs=MISS)


def crescent() -> Piece:
    """Circles of 20 and 8 mm with middles 15 mm apart; they meet at 18.7 +/- 7.09j."""
    x = (15**2 + 20**2 - 8**2) / 30
    tip = complex(x, math.sqrt(20**2 - x * x))
    out = math.degrees(cmath.phase(tip))
    into = math.degrees(cmath.phase(tip - 15))
    return of_sides(arc(0j, 20, out, 360 - out), arc(15 + 0j, 8, 360 - into, into))


def test_a_crescent_tighter_than_its_allowance_gets_one_sound_ring() -> None:
    """Issues 471 and 1044 of shapely: inner radius 8, allowance 15; distance to the seam 15.0 +/- 0.1."""
    piece = crescent()
    found = cut_line(piece, plain(15))
    holds(piece, found.path)
    away = area.distances(found.path, piece.outline, every=0.5)
    assert away.min() > 14.9
    assert away.max() < 2 * 15 + 0.1
    rim = piece.edges[0].path
    back = area.distances(rim.part(5, rim.length - 5), found.path, every=0.5)
    assert back == pytest.approx([15.0] * len(back), abs=0.1)
    assert all(f.level in ("note", "warning") for f in found.findings)


@pytest.mark.parametrize("slot", [8.0, 19.9, 20.0, 20.1, 24.0])
def test_a_narrow_slot_closes_over_without_leaving_crumbs(slot: float) -> None:
    a, b = 100 - slot / 2, 100 + slot / 2
    piece = polygon(0j, 200 + 0j, 200 + 150j, b + 150j, b + 50j, a + 50j, a + 150j, 150j)
    cut = cut_line(piece, plain(10)).path
    holds(piece, cut)
    assert area.distances(cut, piece.outline).min() > 9.9


def test_each_edge_may_ask_for_a_width_of_its_own() -> None:
    piece = polygon(0j, 200 + 0j, 200 + 300j, 300j)
    piece = piece.with_edges(Edge("s1", piece["s1"].path, K.SEAM, allowance=25.0))
    found = cut_line(piece, plain(10))
    assert found.path.bounds == pytest.approx((-10, -10, 225, 310))
    assert found.allowances == {"s0": 10, "s1": 25, "s2": 10, "s3": 10}


@pytest.mark.parametrize("lean", [-25.0, -10.0, 0.0, 10.0, 25.0])
def test_a_hem_turned_up_lies_edge_on_edge_with_the_seam_allowance(lean: float) -> None:
    """Fold the flap along the hem line: its ends must be the cut line above, mirrored."""
    top = 150 + 300j + 300 * math.tan(math.radians(lean))
    piece = polygon(-150 + 0j, 150 + 0j, top, -150 + 300j, kinds={0: K.HEM})
    cut = cut_line(piece, FinishChoices(10, 10, 40)).path
    holds(piece, cut)
    corner = max((s.start for s in cut if abs(s.start.imag) < 1e-6), key=lambda p: p.real)
    assert corner == pytest.approx(150 + 10 / math.cos(math.radians(lean)), abs=1e-6)
    low = max((s.start for s in cut if abs(s.start.imag + 40) < 1e-6), key=lambda p: p.real)
    seam = (top - 150) / abs(top - 150)
    assert (low.conjugate() - corner) / abs(low.conjugate() - corner) == pytest.approx(seam)


@pytest.mark.parametrize("dip", [-6.0, -1.0, -1e-9, 0.0, 1e-9, 1.0, 6.0])
@pytest.mark.parametrize("wide", ["s0", "s1"])
def test_an_unequal_pair_at_a_nearly_flat_corner_makes_a_step_not_a_spike(dip: float, wide: str) -> None:
    piece = polygon(0j, 100 - 1j * dip, 200 + 0j, 200 + 100j, 100j)
    piece = piece.with_edges(Edge(wide, piece[wide].path, K.SEAM, allowance=30.0))
    found = cut_line(piece, plain(10))
    holds(piece, found.path)
    assert found.path.bounds[1] > -abs(dip) - 30 - 0.1
    for name in ("s0", "s1"):
        middle = piece[name].path.part(30, 70)
        away = area.distances(middle, found.path)
        assert away == pytest.approx([found.allowances[name]] * len(away), abs=MISS)
    assert not found.findings


def test_a_free_edge_is_cut_on_the_line() -> None:
    piece = polygon(0j, 200 + 0j, 200 + 100j, 100j, kinds={2: K.FREE})
    assert cut_line(piece, FinishChoices()).path.bounds == pytest.approx((-10, -10, 210, 100))


def test_every_edge_of_a_half_front_keeps_its_own_distance() -> None:
    piece = side_dart_half_front()
    found = cut_line(piece, FinishChoices(12, 8, 30))
    holds(piece, found.path)
    for edge in piece.edges:
        if edge.kind is EdgeKind.DART:
            continue
        middle = edge.path.part(0.4 * edge.length, 0.6 * edge.length)
        away = area.distances(middle, found.path)
        assert away == pytest.approx([found.allowances[edge.name]] * len(away), abs=MISS)


@settings(max_examples=120, deadline=None)
@given(outlines(), st.sampled_from([6.0, 10.0, 15.0, 30.0]))
def test_any_outline_gets_one_ring_at_its_distance(sides: tuple[Path, ...], width: float) -> None:
    piece = of_sides(*sides)
    found = cut_line(piece, plain(width))
    holds(piece, found.path)
    away = area.distances(found.path, piece.outline)
    assert away.min() > width - 0.1
    assert away.max() < 2 * width + 0.1
    assert area.distances(piece.outline, found.path).min() > width - 0.1
    assert not [f for f in found.findings if f.level == "warning"]


@settings(max_examples=120, deadline=None)
@given(outlines(), st.lists(st.sampled_from([0.0, 6.0, 10.0, 25.0]), min_size=9, max_size=9), st.integers(0, 3))
def test_any_mix_of_widths_and_a_hem_gets_one_ring(sides: tuple[Path, ...], widths: list[float], hem: int) -> None:
    piece = of_sides(*sides, kinds={hem: K.HEM})
    edges = [Edge(e.name, e.path, e.kind, allowance=w) for e, w in zip(piece.edges, widths, strict=False)]
    piece = piece.with_edges(*edges)
    found = cut_line(piece, FinishChoices())
    assert area.is_simple(found.path)
    assert area.outside(piece.outline, found.path) < CRUMB
    for edge in piece.edges:
        width = found.allowances[edge.name]
        if edge.length < 3 * max(found.allowances.values()):
            continue  # all corner
        # A hem's corner may reach as far as the middle, and the line's foot there lies a hair aside.
        middle = [edge.path.at(share * edge.length) for share in (0.45, 0.5, 0.55)]
        assert min(area.distances(line(at, at + tol.CLOSED), found.path)[0] for at in middle) <= width + MISS


def test_where_nothing_else_helps_the_allowances_are_united_in_straight_lines(monkeypatch) -> None:
    """The last way out, forced here: still one ring at its distance, and it is said."""
    monkeypatch.setattr(cutting, "_resolved", lambda piece, raw: None)
    piece = side_dart_half_front()
    found = cut_line(piece, plain(10))
    holds(piece, found.path)
    assert [f.level for f in found.findings] == ["warning"]
    side = piece["side-upper"].path
    away = area.distances(side.part(10, side.length - 10), found.path)
    assert away == pytest.approx([10.0] * len(away), abs=MISS)
    assert found.path.bounds[0] == pytest.approx(0.0, abs=0.01)


def test_an_edge_of_no_length_is_refused_by_its_name() -> None:
    """A leg that a band cuts off at the crotch ended in an IndexError."""
    a, b, c = 0j, 100 + 0j, 100 + 200j
    edges = (Edge("hem", line(a, b)), Edge("gone", line(b, b)), Edge("side", line(b, c)), Edge("back", line(c, a)))
    with pytest.raises(DraftError, match="nothing is left of the leg gone"):
        cutting.cut_lines([(Piece("leg", edges), plain(10.0))])
