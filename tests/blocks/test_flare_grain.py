"""One warp a panel: true bias where a rule chose it; and other ways to the same hem.

Tails are invented, of any width, length and slant; the figures are plane geometry.
"""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.shaping.flare.grain import SHARE, angle_to_warp, chosen_seams, seam_biases, warps, with_plain_seams
from drafting.shaping.flare.other_ways import shaped_panels, uncut_tail
from drafting.shaping.flare.plain_tail import PlainTail
from drafting.shaping.flare.tail_bend import bent_panels, even_cuts
from tests.blocks.flares import bent, flares, plain_tails, straight

# ---------------------------------------------------------------------------------------- grain


@settings(max_examples=60, deadline=None)
@given(plain_tails(), flares)
def test_alternate_grain_makes_every_chosen_seam_true_on_both_panels(tail: PlainTail, flare: list[float]) -> None:
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
def test_pairs_make_every_flared_seam_true_with_two_panels_each(tail: PlainTail, flare: list[float]) -> None:
    cuts, amounts = with_plain_seams(even_cuts(tail, len(flare) + 1), [0.0, *flare, 0.0])
    panels = bent_panels(tail, cuts, amounts)
    assert len(panels) == 2 * len(flare)
    warp = warps(panels, amounts, "pairs")
    for seam in seam_biases(panels, warp, amounts, "pairs"):
        assert seam.true or seam.flare == 0
    assert sum(p.grown for p in panels) == pytest.approx(sum(flare), abs=0.05)


@settings(max_examples=40, deadline=None)
@given(plain_tails(), st.lists(st.floats(0, 150), min_size=1, max_size=5))
def test_mean_grain_keeps_every_seam_within_half_the_panels_angle(tail: PlainTail, flare: list[float]) -> None:
    amounts, panels = bent(tail, flare)
    warp = warps(panels, amounts, "mean")
    for seam in seam_biases(panels, warp, amounts, "mean"):
        for angle, panel in ((seam.back, panels[seam.number - 1]), (seam.front, panels[seam.number])):
            assert abs(angle - 45) <= abs(panel.angle) / 2 + 1e-6


def test_a_quarter_circle_panel_has_both_its_seams_on_the_bias() -> None:
    # g = 90: the warp down the middle stands at 45 to both seams.
    tail = straight(400, 600)
    quarter = bent_panels(tail, (0, 400), (math.pi * 150, math.pi * 150))[0]
    assert quarter.angle == pytest.approx(90, abs=0.01)
    (warp,) = warps([quarter], (0, 0), "centre")
    sides = [math.degrees(math.atan2(p.leave.imag, p.leave.real)) for p in (quarter.back, quarter.front)]
    assert [angle_to_warp(side, warp) for side in sides] == pytest.approx([45, 45], abs=0.01)


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
@given(
    st.floats(250, 420), st.floats(450, 900), st.lists(st.floats(5, 70), min_size=1, max_size=5), st.floats(0, 0.6)
)
def test_shaped_seams_leave_the_waist_alone_and_give_the_same_sweep(
    width: float, drop: float, flare: list[float], start: float
) -> None:
    tail = straight(width, drop)
    cuts = even_cuts(tail, len(flare) + 1)
    panels = shaped_panels(tail, cuts, (0.0, *flare, 0.0), start)
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
        bent_panels(tail, (0, 200, 200, 400), (0, 0, 0, 0))
    with pytest.raises(DraftError, match="cover the waist"):
        bent_panels(tail, (0, 200, 300), (0, 0, 0))
    with pytest.raises(DraftError, match="cannot take away"):
        bent_panels(tail, (0, 200, 400), (0, -20, 0))
    with pytest.raises(DraftError, match="one piece"):
        uncut_tail(tail, 4000)
