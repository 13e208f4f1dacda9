"""The arch of a puff against the pinned elastica by elliptic integrals and against a boundary value solver."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import cumulative_simpson, solve_bvp
from scipy.optimize import brentq
from scipy.special import ellipe, ellipk

from drafting.ground.errors import DraftError
from drafting.worn.hang import puff
from tests.pace import quickest
from tests.worn.plies import cloth


@pytest.mark.parametrize("share", [0.3, 0.5556, 0.7, 0.9, 0.97])
def test_a_stiff_puff_is_the_pinned_elastica(share: float) -> None:
    """Rise = length sqrt(m) / K(m) with 2 E(m) / K(m) - 1 = span / length (Euler's elastica)."""
    m = brentq(lambda x: 2 * ellipe(x) / ellipk(x) - 1 - share, 1e-9, 1 - 1e-9)
    rise = 180.0 * np.sqrt(m) / ellipk(m)
    stiff = puff(cloth(2000.0), 180.0, 180.0 * share)
    assert stiff.stands_off == pytest.approx(rise, rel=0.005)
    assert stiff.widest_at == pytest.approx(90.0 * share, abs=1.0)


def by_collocation(ratio: float, share: float) -> tuple[float, float]:
    """Stand-off and lowest point of a heavy pinned arch of length 1, by scipy's solver: the two
    forces at the far end are unknown too. The weight is taken on in steps."""
    s = np.linspace(0, 1, 60)
    half = brentq(lambda a: np.sin(a) / a - share, 1e-6, np.pi)
    turn = np.pi / 2 + half * (2 * s - 1)
    guess = np.vstack([turn, np.full_like(s, 2 * half)])
    guess = np.vstack([guess, *(cumulative_simpson(f(turn), x=s, initial=0) for f in (np.cos, np.sin))])
    forces = np.array([0.0, -((2 * half) ** 2)])
    for cube in [*2.0 ** np.arange(0, np.log2(ratio**3), 0.5), ratio**3]:

        def rising(s: np.ndarray, y: np.ndarray, p: np.ndarray, cube: float = cube) -> np.ndarray:
            t = y[0]
            bend = p[0] * np.sin(t) - (cube * (1 - s) + p[1]) * np.cos(t)
            return np.vstack([y[1], bend, np.cos(t), np.sin(t)])

        def ends(a: np.ndarray, b: np.ndarray, p: np.ndarray) -> np.ndarray:
            return np.array([a[1], b[1], a[2], a[3], b[2], b[3] - share])

        found = solve_bvp(rising, ends, s, guess, p=forces, tol=1e-6, max_nodes=20000)
        assert found.success
        s, guess, forces = found.x, found.y, found.p
    fine = found.sol(np.linspace(0, 1, 4001))
    return float(fine[2].max()), float(fine[3].max())


@pytest.mark.parametrize("bending_length", [12.0, 18.0, 30.0, 45.0, 80.0])
def test_a_heavy_puff_stands_as_its_equation_says(bending_length: float) -> None:
    wide, low = by_collocation(180.0 / bending_length, 100.0 / 180.0)
    found = puff(cloth(bending_length), 180.0, 100.0)
    assert found.stands_off == pytest.approx(180.0 * wide, rel=0.005)
    assert found.lowest == pytest.approx(180.0 * low, rel=0.005)


def test_limp_cloth_blouses_over_its_band_and_stiff_cloth_stands_round() -> None:
    found = [puff(cloth(c), 180.0, 100.0) for c in (12.0, 18.0, 30.0, 45.0, 80.0)]
    assert [p.stands_off for p in found] == sorted(p.stands_off for p in found)
    assert [p.lowest for p in found] == sorted((p.lowest for p in found), reverse=True)
    assert found[0].lowest > 130
    assert found[-1].lowest == pytest.approx(100.0, abs=0.5)


def test_every_puff_that_has_cloth_to_spare_is_answered() -> None:
    for share in (0.02, 0.1, 0.4, 0.8, 0.99):
        for ratio in (0.5, 3.0, 10.0, 30.0, 90.0):
            found = puff(cloth(200.0 / ratio), 200.0, 200.0 * share)
            assert 0 < found.stands_off < 100
            assert found.lowest < 100 * (1 + share) + 1


def test_weight_alone_does_not_matter_only_the_bending_length() -> None:
    light, heavy = puff(cloth(30.0, 0.8), 180.0, 100.0), puff(cloth(30.0, 4.0), 180.0, 100.0)
    assert light.stands_off == pytest.approx(heavy.stands_off, rel=1e-9)


def test_a_puff_without_cloth_to_spare_is_refused() -> None:
    with pytest.raises(DraftError, match="more cloth than the way"):
        puff(cloth(20.0), 100.0, 100.0)


def test_a_puff_is_answered_while_a_hand_moves() -> None:
    # 5 ms where the fixed work takes 10.5.
    assert quickest(lambda: puff(cloth(18.0), 180.0, 100.0), 10) < 0.48
