"""Splines and zeros against scipy, which works out the same by code of its own."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import cumulative_simpson
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

from drafting.geometry.brent import brent_zero
from drafting.geometry.spline import simpson_so_far, spline_through

DICE = np.random.default_rng(7)


@pytest.mark.parametrize("columns", [(), (3,)])
def test_a_spline_is_that_of_scipy_with_its_slopes_and_integral(columns: tuple[int, ...]) -> None:
    at = np.cumsum(DICE.uniform(0.2, 2.0, 23))
    values = DICE.normal(size=(23, *columns)) + 1j * DICE.normal(size=(23, *columns))
    own, other = spline_through(at, values), CubicSpline(at, values)
    x = np.linspace(at[0], at[-1], 400)
    assert np.allclose(own(x), other(x), atol=1e-11)
    assert np.allclose(own(x, 1), other(x, 1), atol=1e-10)
    assert np.allclose(own.so_far, other.antiderivative()(at), atol=1e-10)


def test_a_cubic_comes_back_exactly() -> None:
    at = np.array([0.0, 0.3, 1.1, 2.0, 2.2])
    x = np.linspace(0.0, 2.2, 50)
    assert np.allclose(spline_through(at, at**3 - at)(x), x**3 - x, atol=1e-12)


def test_simpsons_rule_so_far_is_that_of_scipy() -> None:
    values = DICE.normal(size=33)
    assert np.allclose(simpson_so_far(values, 0.25), cumulative_simpson(values, dx=0.25, initial=0.0), atol=1e-12)


numbers = st.floats(-2.0, 2.0)


@given(numbers, numbers, numbers, numbers)
def test_a_zero_is_where_scipy_finds_it(a: float, b: float, c: float, d: float) -> None:
    def wave(x: float) -> float:
        return a * x**3 + b * math.sin(2 * x) + c * math.exp(x) + d + 0.1 * x

    assume(wave(-1.5) * wave(1.5) < 0)
    own = brent_zero(wave, -1.5, 1.5, 1e-12)
    near = brentq(wave, -1.5, 1.5, xtol=1e-12)
    flat = abs(wave(own)) < 1e-11 and abs(wave(near)) < 1e-11  # one of several zeros, or a flat one
    assert own == pytest.approx(near, abs=1e-9) or flat
    assert wave(own - 1e-9) * wave(own + 1e-9) <= 0 or flat


def test_what_no_zero_is_bracketed_for_is_refused() -> None:
    with pytest.raises(ValueError, match="no zero"):
        brent_zero(lambda x: x * x + 1, -1.0, 1.0)
    with pytest.raises(ValueError, match="no zero"):
        brent_zero(lambda x: math.nan, -1.0, 1.0)
