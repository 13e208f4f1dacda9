"""Free edges, flares and folds, against solved equations, published limits and plain geometry."""

from __future__ import annotations

from dataclasses import replace
from math import cos, hypot, pi, radians, tau

import numpy as np
import pytest
from scipy.integrate import solve_bvp

from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.worn.cloth import Stiffened, Treatment, ply_of, stiffened
from drafting.worn.hang import EdgeStanding, bending_length_of, fold_count, free_edge, free_flare, upright_limit
from drafting.worn.nouns import Ply
from tests.worn.plies import cloth


def kept_by_collocation(ratio: float, leaves: float) -> float:
    """The share of its straight reach that a strip keeps, by scipy's boundary value solver."""
    cube, start = ratio**3, radians(leaves)

    def rising(s: np.ndarray, y: np.ndarray) -> np.ndarray:
        return np.vstack([y[1], -cube * (1 - s) * np.cos(y[0]), np.cos(y[0])])

    s = np.linspace(0, 1, 80)
    turn = np.minimum(start + cube / 6 * (1 - (1 - s) ** 3), 1.5)
    guess = np.vstack([turn, np.zeros_like(s), s])
    found = solve_bvp(
        rising, lambda a, b: np.array([a[0] - start, b[1], a[2]]), s, guess, tol=1e-8, max_nodes=50000
    )
    assert found.success
    return float(found.y[2, -1] / cos(start))


@pytest.mark.parametrize("ratio", [0.7, 1.1, 1.3, 1.6, 2.0, 2.2, 3.1, 4.4, 5.4])
@pytest.mark.parametrize("leaves", [0.0, 40.0, 65.0])
def test_an_edge_reaches_as_far_as_its_equation_says(ratio: float, leaves: float) -> None:
    edge = free_edge(cloth(20.0), 20.0 * ratio, leaves)
    assert edge.kept == pytest.approx(kept_by_collocation(ratio, leaves), abs=0.002)
    assert edge.ratio == pytest.approx(ratio)


def test_an_edge_holds_softens_or_collapses_by_its_length_in_bending_lengths() -> None:
    said = {ratio: free_edge(cloth(20.0), 20.0 * ratio).standing for ratio in (1.0, 1.39, 1.5, 3.9, 4.1)}
    assert list(said.values()) == [
        EdgeStanding.HOLDS,
        EdgeStanding.HOLDS,
        EdgeStanding.SOFTENS,
        EdgeStanding.SOFTENS,
        EdgeStanding.COLLAPSES,
    ]
    assert kept_by_collocation(1.4, 40.0) == pytest.approx(0.8, abs=0.03)  # where it holds no more
    assert kept_by_collocation(4.0, 40.0) < 0.2


def test_a_tail_is_not_held_out_by_its_stiffness_down_its_length() -> None:
    """750 mm leaving at 40 degrees: a thousand times the stiffness leaves less than a sixth of its reach."""
    limp = cloth(18.0)

    def times(factor: float) -> Ply:
        return replace(limp, bends_along=limp.bends_along * factor)

    reaches = [free_edge(one, 750.0).reach for one in (limp, times(12), times(100), times(1000))]
    assert reaches == sorted(reaches)
    straight = 750.0 * cos(radians(40.0))
    assert reaches[-1] == pytest.approx(straight * kept_by_collocation(750.0 / 180.0, 40.0), rel=0.01)
    assert reaches[-1] < straight / 6
    banded = Stiffened(whole=limp, hem=times(100), hem_depth=50.0)
    assert free_edge(banded, 750.0).reach == pytest.approx(reaches[0], abs=0.5)


def test_an_edge_with_a_stiff_hem_reaches_farther_only_where_the_whole_is_short() -> None:
    shirting = Fabric("shirting", mass=118.0, bending_length_along=23.0)
    short, banded = ply_of(shirting), stiffened(shirting, Treatment.BAND)
    assert free_edge(banded, 60.0).reach > 1.3 * free_edge(short, 60.0).reach


def test_an_upright_ruffle_stands_to_greenhills_height() -> None:
    limit = upright_limit(cloth(20.0))  # Greenhill 1881, from memory: (7.837 rigidity / weight)^(1/3)
    assert limit == pytest.approx(7.837 ** (1 / 3) * 20.0, rel=1e-3)
    assert free_edge(cloth(20.0), 0.97 * limit, leaves=-89.9).reach < 2
    assert free_edge(cloth(20.0), 1.05 * limit, leaves=-89.9).reach > 10


def test_a_guess_asks_for_a_test_strip_and_a_test_does_not() -> None:
    tried = Fabric("tried", mass=150.0, bending_length_along=22.0)
    assert "test strip" not in free_edge(ply_of(tried), 60.0).words
    assert "test strip" in free_edge(ply_of(Fabric("unknown")), 60.0).words


def test_a_cone_held_open_has_the_drawn_hem() -> None:
    """A sector of a ring bent round a circle: its hem is the circle at its foot, its side the length."""
    girth, hem, length = 700.0, 1900.0, 600.0
    flare = free_flare(cloth(25.0), girth, hem, length)
    waist, foot = girth / tau, hem / tau
    assert flare.cone == pytest.approx(foot - waist, rel=1e-9)
    assert hypot(foot - waist, (length**2 - flare.cone**2) ** 0.5) == pytest.approx(length)
    assert 0 < flare.alone.reach < flare.cone


def test_a_flare_that_cannot_be_is_refused() -> None:
    for hem in (600.0, 700.0 + 601.0 * 2 * pi):
        with pytest.raises(DraftError, match="between its waist and a flat ring"):
            free_flare(cloth(25.0), 700.0, hem, 600.0)


def test_a_cloth_of_the_drape_test_falls_into_as_many_folds_as_it_does_there() -> None:
    """Discs of 30 cm on a support of 18: 4 to 8 folds are usual (a public page on drape testing)."""
    for bending_length in (15.0, 20.0, 25.0):
        count = fold_count(cloth(bending_length), hem=300.0 * pi, length=60.0)
        assert 4 <= count.likely <= 8
        assert count.low == pytest.approx(count.likely / 2)
        assert count.high == pytest.approx(count.likely * 1.5)
        assert "give or take half" in count.words


def test_stiffer_cloth_falls_into_fewer_folds() -> None:
    counts = [fold_count(cloth(c), hem=750.0, length=750.0).likely for c in (12.0, 18.0, 37.0)]
    assert counts == sorted(counts, reverse=True)
    assert bending_length_of(cloth(18.0)) == pytest.approx(18.0)
