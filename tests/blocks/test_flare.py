"""Flare as a bend: exact sweep, untouched waist, straight equal seams, and one warp a panel.

Figures come from the shared check values (rows E22, E25-E29: exact plane geometry) and from plane
geometry named beside each test; tails are invented, of any width, length and slant.
"""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting import tolerances as tol
from drafting.errors import DraftError
from drafting.geometry import Cubic, Path, line, turn
from drafting.geometry.area import is_simple
from drafting.shaping.coat.flare import Panel, bend, even_cuts, level_factor
from drafting.shaping.coat.grain import (
    SHARE,
    chosen_seams,
    paired,
    seam_biases,
    to_warp,
    warps,
)
from drafting.shaping.coat.plain_tail import PlainTail, plain_tail
from drafting.shaping.coat.ways import godet, shaped, uncut
from tests.shared_data import check_value, check_values

CM = 10.0


def straight(width: float, drop: float) -> PlainTail:
    """Return a plain tail whose waist and hem are level lines, its rulings upright."""
    return plain_tail(line(0j, width + 0j), line(-1j * drop, width - 1j * drop))


@st.composite
def plain_tails(draw: st.DrawFn) -> PlainTail:
    """Tails with a curved waist, a narrower hem that rises, and a spring for the seat: invented."""
    width, drop = draw(st.floats(200, 420)), draw(st.floats(350, 900))
    low = draw(st.floats(0.5, 0.9)) * width
    rise, wave, spring = (
        draw(st.floats(0, 40)), draw(st.floats(-15, 15)), draw(st.floats(0, 17)),
    )  # fmt: skip
    waist = Cubic(
        0j, complex(width / 3, wave), complex(2 * width / 3, wave), complex(width, -wave / 2)
    )
    hem = Cubic(
        -1j * drop, complex(low / 3, -drop), complex(2 * low / 3, rise * 0.6 - drop), complex(low, rise - drop)
    )  # fmt: skip
    return plain_tail(Path((waist,)), Path((hem,)), spring)


flares = st.lists(st.floats(0, 400), min_size=0, max_size=5)


def bent(tail: PlainTail, flare: list[float]) -> tuple[tuple[float, ...], tuple[Panel, ...]]:
    amounts = (0.0, *flare, 0.0)
    return amounts, bend(tail, even_cuts(tail, len(flare) + 1), amounts)


def outline(panels: tuple[Panel, ...]) -> Path:
    """Return the closed outline of all panels joined: their seams left out."""
    hem = Path.joined(p.hem for p in panels)
    waist = Path.joined(p.waist for p in panels)
    return Path.joined([panels[0].back, hem, panels[-1].front.reversed(), waist.reversed()])


def radius_of(path: Path) -> float:
    """Return the radius of the circle through the start, middle and end of a path."""
    a, b, c = path.start, path.at(path.length / 2), path.end
    area = abs(((b - a).conjugate() * (c - a)).imag) / 2
    return abs(b - a) * abs(c - b) * abs(a - c) / (4 * area)


def apart(a: Path, b: Path) -> float:
    """Return the greatest distance between points at the same share of two paths' lengths."""
    shares = [i / 60 for i in range(61)]
    return max(abs(a.at(a.length * s) - b.at(b.length * s)) for s in shares)


def corner(before: Path, after: Path) -> float:
    """Return by how many degrees one path's end and the next one's start are off a straight line."""
    factor = after.leave / before.arrive
    return abs(math.degrees(math.atan2(factor.imag, factor.real)))


# ------------------------------------------------------------------------- against exact figures


def test_an_evenly_bent_level_band_is_the_cone_of_row_e25() -> None:
    # Top 40 cm, bottom 100 cm, slant 55 cm: sector angle (C2 - C1) / L, inner radius C1 / angle.
    row = check_values("E25")
    piece = uncut(straight(400, 550), 600)
    angle = math.degrees(piece.turned[1] - piece.turned[0])
    assert angle == pytest.approx(row["angle_deg"], abs=0.01)
    assert math.radians(angle) == pytest.approx(row["angle_rad"], abs=0.0001)
    assert radius_of(piece.waist) == pytest.approx(row["radius"] * CM, abs=0.1)
    centre = complex(0, row["radius"] * CM)
    off = [abs(p - centre) - row["radius"] * CM - 550 for p in piece.hem.flattened(0.01)]
    assert max(map(abs, off)) < 0.02


def test_a_half_circle_skirt_has_the_radius_and_sweep_of_row_e22() -> None:
    row = check_values("E22")
    piece = uncut(straight(700, 600), math.pi * 600)
    assert radius_of(piece.waist) == pytest.approx(row["radius"] * CM, abs=0.1)
    assert piece.hem.length == pytest.approx(row["sweep"] * CM, abs=0.1)


def test_each_of_eight_gores_of_a_half_circle_is_that_of_row_e27() -> None:
    row = check_values("E27")
    each = math.pi * 600 / 8
    gore = uncut(straight(700 / 8, 600), each)
    assert gore.waist.length == pytest.approx(row["top"] * CM, abs=0.1)
    assert gore.hem.length == pytest.approx(row["hem"] * CM, abs=0.1)
    assert gore.angle == pytest.approx(row["angle_deg"], abs=0.01)


def test_a_godet_is_the_sector_of_row_e26_and_not_the_triangle() -> None:
    wanted = float(check_value("E26")) * CM
    found = godet(300, wanted)
    assert found.angle == pytest.approx(90, abs=0.01)
    assert found.hem.length == pytest.approx(wanted, abs=0.1)
    assert found.left.length == found.right.length == pytest.approx(300, abs=1e-6)
    assert abs(found.hem.end - found.hem.start) == pytest.approx(424.3, abs=0.1)  # the triangle's


def test_six_cuts_of_four_centimetres_add_24_cm_and_leave_the_pivot_edge() -> None:
    tail = straight(400, 600)
    piece = uncut(tail, 6 * 40)
    assert piece.grown == pytest.approx(float(check_value("E28")) * CM, abs=1)
    assert piece.waist.length == pytest.approx(400, abs=0.1)


def test_a_panel_laid_to_its_bias_warp_needs_the_box_of_row_e29() -> None:
    panel = bend(straight(600, 1000), (0, 600), (0, 0))[0]
    (warp,) = warps([panel], (0, 0), "mean")
    x0, _, x1, _ = outline((panel,)).turned(0j, turn(90 - warp)).bounds
    assert x1 - x0 == pytest.approx(float(check_value("E29")) * CM, abs=0.1)


def test_a_bend_of_a_known_turn_leans_out_as_its_cone_does() -> None:
    # Cone: sin(lean) = turn / wrap; the rulings grow by 1 / cos(lean). 30 degrees: 1.1547.
    assert level_factor(0.5 * 2.2, 2.2) == pytest.approx(2 / math.sqrt(3), abs=1e-9)


# ----------------------------------------------------------------------- for any tail and flare


@settings(max_examples=60, deadline=None)
@given(plain_tails(), flares)
def test_the_sweep_grows_by_exactly_the_sum_and_the_waist_stays(
    tail: PlainTail, flare: list[float]
) -> None:
    _, panels = bent(tail, flare)
    assert sum(p.grown for p in panels) == pytest.approx(sum(flare), abs=0.05)
    each = tail.width / len(panels)
    assert [p.waist.length for p in panels] == pytest.approx([each] * len(panels), abs=0.05)


@settings(max_examples=60, deadline=None)
@given(plain_tails(), flares)
def test_half_of_each_flare_lies_on_either_side_of_its_seam(
    tail: PlainTail, flare: list[float]
) -> None:
    amounts, panels = bent(tail, flare)
    halves = [(a + b) / 2 for a, b in itertools.pairwise(amounts)]
    assert [p.grown for p in panels] == pytest.approx(halves, abs=0.05)


@settings(max_examples=60, deadline=None)
@given(plain_tails(), flares)
def test_seams_are_straight_equal_and_as_long_as_in_the_plain_tail(
    tail: PlainTail, flare: list[float]
) -> None:
    _, panels = bent(tail, flare)
    cuts = even_cuts(tail, len(panels))
    for (one, two), cut in zip(itertools.pairwise(panels), cuts[1:], strict=False):
        assert one.front.length == pytest.approx(two.back.length, abs=0.001)
        assert one.front.length == pytest.approx(tail.length_at(cut), abs=0.01)
        assert one.hem.end == pytest.approx(two.hem.start, abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(plain_tails(), flares)
def test_with_the_seams_closed_hem_and_waist_have_no_corner(
    tail: PlainTail, flare: list[float]
) -> None:
    _, panels = bent(tail, flare)
    for one, two in itertools.pairwise(panels):
        assert corner(one.hem, two.hem) < tol.JOIN_ANGLE
        assert corner(one.waist, two.waist) < tol.JOIN_ANGLE


@settings(max_examples=40, deadline=None)
@given(plain_tails(), st.integers(1, 6))
def test_no_flare_gives_the_plain_tail_back(tail: PlainTail, count: int) -> None:
    one = bend(tail, even_cuts(tail, 1), (0, 0))
    parted = bend(tail, even_cuts(tail, count), [0.0] * (count + 1))
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
    panels = bend(tail, even_cuts(tail, len(flare) + 1), amounts, longer)
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


# ---------------------------------------------------------------------------------------- grain


@settings(max_examples=60, deadline=None)
@given(plain_tails(), flares)
def test_alternate_grain_makes_every_chosen_seam_true_on_both_panels(
    tail: PlainTail, flare: list[float]
) -> None:
    amounts, panels = bent(tail, flare)
    warp = warps(panels, amounts, "alternate")
    for seam in seam_biases(panels, warp, amounts, "alternate"):
        if seam.chosen:
            assert seam.back == pytest.approx(45, abs=1)
            assert seam.front == pytest.approx(45, abs=1)
        else:
            off = (panels[seam.number - 1].angle, panels[seam.number].angle)
            for angle, g in zip((seam.back, seam.front), off, strict=True):
                near = {0.0, abs(g), 45.0 if seam.flare <= 0 else 0.0}
                plain = abs(angle - 45) < 1e-6 or any(abs(abs(angle - 45) - n) < 1e-6 for n in near)
                assert plain or seam.flare <= 1e-6 or abs(g) > 45


@given(st.lists(st.sampled_from([0.0, 20.0, 80.0, 400.0]), min_size=0, max_size=5))
def test_as_many_seams_as_possible_are_chosen_and_then_the_fullest(flare: list[float]) -> None:
    # Every set of seams without two neighbours, tried one by one.
    amounts = [0.0, *flare, 0.0]
    seams = [i for i in range(1, len(amounts) - 1) if amounts[i] > 0]
    sets = [
        chosen
        for n in range(len(seams) + 1)
        for chosen in itertools.combinations(seams, n)
        if all(b - a > 1 for a, b in itertools.pairwise(chosen))
    ]
    best = max((len(c), sum(amounts[i] for i in c)) for c in sets)
    found = chosen_seams(amounts)
    assert (len(found), sum(amounts[i] for i in found)) == pytest.approx(best)


@settings(max_examples=40, deadline=None)
@given(plain_tails(), st.lists(st.floats(1, 400), min_size=1, max_size=5))
def test_pairs_make_every_flared_seam_true_with_two_panels_each(
    tail: PlainTail, flare: list[float]
) -> None:
    cuts, amounts = paired(even_cuts(tail, len(flare) + 1), [0.0, *flare, 0.0])
    panels = bend(tail, cuts, amounts)
    assert len(panels) == 2 * len(flare)
    warp = warps(panels, amounts, "pairs")
    for seam in seam_biases(panels, warp, amounts, "pairs"):
        assert seam.true or seam.flare == 0
    assert sum(p.grown for p in panels) == pytest.approx(sum(flare), abs=0.05)


@settings(max_examples=40, deadline=None)
@given(plain_tails(), st.lists(st.floats(0, 150), min_size=1, max_size=5))
def test_mean_grain_keeps_every_seam_within_half_the_panels_angle(
    tail: PlainTail, flare: list[float]
) -> None:
    amounts, panels = bent(tail, flare)
    warp = warps(panels, amounts, "mean")
    for seam in seam_biases(panels, warp, amounts, "mean"):
        for angle, panel in (
            (seam.back, panels[seam.number - 1]),
            (seam.front, panels[seam.number]),
        ):
            assert abs(angle - 45) <= abs(panel.angle) / 2 + 1e-6


def test_a_quarter_circle_panel_has_both_its_seams_on_the_bias() -> None:
    # g = 90: the warp down the middle stands at 45 to both seams.
    tail = straight(400, 600)
    quarter = bend(tail, (0, 400), (math.pi * 150, math.pi * 150))[0]
    assert quarter.angle == pytest.approx(90, abs=0.01)
    (warp,) = warps([quarter], (0, 0), "centre")
    sides = [
        math.degrees(math.atan2(p.leave.imag, p.leave.real)) for p in (quarter.back, quarter.front)
    ]
    assert [to_warp(side, warp) for side in sides] == pytest.approx([45, 45], abs=0.01)


def test_the_bias_on_every_seam_is_refused_with_the_ways_out() -> None:
    tail = straight(400, 600)
    amounts, panels = bent(tail, [80.0, 80.0, 80.0])
    with pytest.raises(DraftError) as refused:
        warps(panels, amounts, "everywhere")
    said = str(refused.value)
    assert "seam 2" in said
    assert f"{SHARE * 600:.0f} mm a seam" in said
    assert all(way in said for way in ("alternate", "pairs", "mean"))


def test_the_bias_on_every_seam_can_be_had_with_as_little_flare_as_the_refusal_names() -> None:
    tail = straight(400, 600)
    amounts, panels = bent(tail, [0.99 * SHARE * 600 / 2] * 3)
    warp = warps(panels, amounts, "everywhere")
    assert all(seam.true for seam in seam_biases(panels, warp, amounts, "everywhere"))


# ----------------------------------------------------------------------------------- other ways


@settings(max_examples=25, deadline=None)
@given(st.floats(250, 420), st.floats(450, 900), st.lists(st.floats(5, 70), min_size=1, max_size=5),
       st.floats(0, 0.6))  # fmt: skip
def test_shaped_seams_leave_the_waist_alone_and_give_the_same_sweep(
    width: float, drop: float, flare: list[float], start: float
) -> None:
    tail = straight(width, drop)
    cuts = even_cuts(tail, len(flare) + 1)
    panels = shaped(tail, cuts, (0.0, *flare, 0.0), start)
    assert sum(p.grown for p in panels) == pytest.approx(sum(flare), abs=0.05)
    assert all(abs(p.start.imag) + abs(p.end.imag) < 1e-6 for p in (q.waist for q in panels))
    for one, two in itertools.pairwise(panels):
        assert one.front.length == pytest.approx(two.back.length, abs=0.01)
        assert one.front.length == pytest.approx(drop, abs=0.01)
        joined = one.front.arrive / one.hem.arrive, two.hem.leave / two.back.arrive
        angles = sum(abs(math.degrees(math.atan2(f.imag, f.real))) for f in joined)
        assert angles == pytest.approx(180, abs=tol.JOIN_ANGLE)


def test_stations_that_make_no_panels_are_refused() -> None:
    tail = straight(400, 600)
    with pytest.raises(DraftError, match="split"):
        bend(tail, (0, 200, 200, 400), (0, 0, 0, 0))
    with pytest.raises(DraftError, match="cover the waist"):
        bend(tail, (0, 200, 300), (0, 0, 0))
    with pytest.raises(DraftError, match="cannot take away"):
        bend(tail, (0, 200, 400), (0, -20, 0))
    with pytest.raises(DraftError, match="one piece"):
        uncut(tail, 4000)
