"""Flare as a bend: exact sweep, untouched waist, straight and equal seams.

Figures come from published values (tests/published.py: exact plane geometry) and from plane geometry
named beside each test; tails are invented, of any width, length and slant.
"""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.geometry import Path, turn
from drafting.geometry.area import is_simple
from drafting.ground import tolerances as tol
from drafting.shaping.flare.grain import warps
from drafting.shaping.flare.other_ways import godet, uncut_tail
from drafting.shaping.flare.plain_tail import PlainTail
from drafting.shaping.flare.tail_bend import bent_panels, even_cuts, level_factor
from tests.blocks.flares import apart, bent, corner, flares, outline, plain_tails, radius_of, straight
from tests.published import named, single

CM = 10.0


# ------------------------------------------------------------------------- against exact figures


def test_an_evenly_bent_level_band_is_a_cone() -> None:
    # Top 40 cm, bottom 100 cm, slant 55 cm: sector angle (C2 - C1) / L, inner radius C1 / angle.
    row = named("cone")
    piece = uncut_tail(straight(400, 550), 600)
    angle = math.degrees(piece.turned[1] - piece.turned[0])
    assert angle == pytest.approx(row["angle_deg"], abs=0.01)
    assert math.radians(angle) == pytest.approx(row["angle_rad"], abs=0.0001)
    assert radius_of(piece.waist) == pytest.approx(row["radius"] * CM, abs=0.1)
    centre = complex(0, row["radius"] * CM)
    off = [abs(p - centre) - row["radius"] * CM - 550 for p in piece.hem.flattened(0.01)]
    assert max(map(abs, off)) < 0.02


def test_a_half_circle_skirt_has_its_radius_and_sweep() -> None:
    row = named("half-circle")
    piece = uncut_tail(straight(700, 600), math.pi * 600)
    assert radius_of(piece.waist) == pytest.approx(row["radius"] * CM, abs=0.1)
    assert piece.hem.length == pytest.approx(row["sweep"] * CM, abs=0.1)


def test_each_of_eight_gores_of_a_half_circle_has_its_top_hem_and_angle() -> None:
    row = named("eight-gores")
    each = math.pi * 600 / 8
    gore = uncut_tail(straight(700 / 8, 600), each)
    assert gore.waist.length == pytest.approx(row["top"] * CM, abs=0.1)
    assert gore.hem.length == pytest.approx(row["hem"] * CM, abs=0.1)
    assert gore.angle == pytest.approx(row["angle_deg"], abs=0.01)


def test_a_godet_is_the_sector_and_not_the_triangle() -> None:
    wanted = single("godet-hem") * CM
    found = godet(300, wanted)
    assert found.angle == pytest.approx(90, abs=0.01)
    assert found.hem.length == pytest.approx(wanted, abs=0.1)
    assert found.left.length == found.right.length == pytest.approx(300, abs=1e-6)
    assert abs(found.hem.end - found.hem.start) == pytest.approx(424.3, abs=0.1)  # the triangle's


def test_six_cuts_of_four_centimetres_add_24_cm_and_leave_the_pivot_edge() -> None:
    tail = straight(400, 600)
    piece = uncut_tail(tail, 6 * 40)
    assert piece.grown == pytest.approx(single("six-cuts") * CM, abs=1)
    assert piece.waist.length == pytest.approx(400, abs=0.1)


def test_a_panel_laid_to_its_bias_warp_needs_its_diagonal_box() -> None:
    panel = bent_panels(straight(600, 1000), (0, 600), (0, 0))[0]
    (warp,) = warps([panel], (0, 0), "mean")
    x0, _, x1, _ = outline((panel,)).turned(0j, turn(90 - warp)).bounds
    assert x1 - x0 == pytest.approx(single("bias-box") * CM, abs=0.1)


def test_a_bend_of_a_known_turn_leans_out_as_its_cone_does() -> None:
    # Cone: sin(lean) = turn / wrap; the rulings grow by 1 / cos(lean). 30 degrees: 1.1547.
    assert level_factor(0.5 * 2.2, 2.2) == pytest.approx(2 / math.sqrt(3), abs=1e-9)


# ----------------------------------------------------------------------- for any tail and flare


@settings(max_examples=60, deadline=None)
@given(plain_tails(), flares)
def test_the_sweep_grows_by_exactly_the_sum_and_the_waist_stays(tail: PlainTail, flare: list[float]) -> None:
    _, panels = bent(tail, flare)
    assert sum(p.grown for p in panels) == pytest.approx(sum(flare), abs=0.05)
    each = tail.width / len(panels)
    assert [p.waist.length for p in panels] == pytest.approx([each] * len(panels), abs=0.05)


@settings(max_examples=60, deadline=None)
@given(plain_tails(), flares)
def test_half_of_each_flare_lies_on_either_side_of_its_seam(tail: PlainTail, flare: list[float]) -> None:
    amounts, panels = bent(tail, flare)
    halves = [(a + b) / 2 for a, b in itertools.pairwise(amounts)]
    assert [p.grown for p in panels] == pytest.approx(halves, abs=0.05)


@settings(max_examples=60, deadline=None)
@given(plain_tails(), flares)
def test_seams_are_straight_equal_and_as_long_as_in_the_plain_tail(tail: PlainTail, flare: list[float]) -> None:
    _, panels = bent(tail, flare)
    cuts = even_cuts(tail, len(panels))
    for (one, two), cut in zip(itertools.pairwise(panels), cuts[1:], strict=False):
        assert one.front.length == pytest.approx(two.back.length, abs=0.001)
        assert one.front.length == pytest.approx(tail.length_at(cut), abs=0.01)
        assert one.hem.end == pytest.approx(two.hem.start, abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(plain_tails(), flares)
def test_with_the_seams_closed_hem_and_waist_have_no_corner(tail: PlainTail, flare: list[float]) -> None:
    _, panels = bent(tail, flare)
    for one, two in itertools.pairwise(panels):
        assert corner(one.hem, two.hem) < tol.JOIN_ANGLE
        assert corner(one.waist, two.waist) < tol.JOIN_ANGLE


@settings(max_examples=40, deadline=None)
@given(plain_tails(), st.integers(1, 6))
def test_no_flare_gives_the_plain_tail_back(tail: PlainTail, count: int) -> None:
    one = bent_panels(tail, even_cuts(tail, 1), (0, 0))
    parted = bent_panels(tail, even_cuts(tail, count), [0.0] * (count + 1))
    assert apart(one[0].waist, Path.joined(p.waist for p in parted)) < 0.01
    assert apart(one[0].hem, Path.joined(p.hem for p in parted)) < 0.01
    ends = tail.start, tail.start + tail.length_at(0) * turn(math.degrees(tail.ruling(0)))
    assert parted[0].back.start == pytest.approx(ends[0], abs=0.01)
    assert parted[0].back.end == pytest.approx(ends[1], abs=0.01)


@settings(max_examples=60, deadline=None)
@given(plain_tails(), st.lists(st.floats(0, 400), min_size=1, max_size=5))
def test_every_panel_is_one_simple_ring(tail: PlainTail, flare: list[float]) -> None:
    for panel in bent(tail, flare)[1]:
        assert is_simple(outline((panel,)))
        assert outline((panel,)).area > 0


@settings(max_examples=25, deadline=None)
@given(plain_tails(), st.lists(st.floats(1, 60), min_size=1, max_size=5), st.floats(1.01, 1.3))
def test_a_longer_tail_for_a_level_hem_keeps_sweep_and_waist(
    tail: PlainTail, flare: list[float], longer: float
) -> None:
    amounts = (0.0, *flare, 0.0)
    panels = bent_panels(tail, even_cuts(tail, len(flare) + 1), amounts, longer)
    assert sum(p.grown for p in panels) == pytest.approx(sum(flare), abs=0.05)
    assert sum(p.waist.length for p in panels) == pytest.approx(tail.width, abs=0.05)
    assert panels[0].back.length == pytest.approx(longer * tail.length_at(0), abs=0.01)


def test_one_millimetre_more_flare_moves_no_edge_by_more_than_a_millimetre() -> None:
    tail = straight(350, 600)
    for flare in (0.0, 79.0, 250.0):
        less, more = bent(tail, [flare] * 3)[1], bent(tail, [flare + 1] * 3)[1]
        for a, b in zip(less, more, strict=True):
            assert abs(a.hem.length - b.hem.length) < 1.01
            assert abs(a.waist.length - b.waist.length) < 0.01
