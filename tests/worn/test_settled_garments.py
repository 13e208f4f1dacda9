"""Whole garments on a wearer's own form: at rest or not, the same from two starts, never inside the body."""

from __future__ import annotations

import itertools
import time
from dataclasses import dataclass

import numpy as np
import pytest

from drafting.worn.form import Form, wearers_form
from drafting.worn.nouns import AtRest, Reals, SewnMesh
from drafting.worn.placed import placed
from drafting.worn.settled import Limits, at_rest, from_coarse
from drafting.worn.sewn import sewn_mesh
from tests.worn.garments import PLIES, chart_body, drafted

LIMITS = Limits(steps=1500)


@dataclass(frozen=True, eq=False)
class Worn:
    """One garment: its two meshes, where the coarse one starts, the form, and what came to rest."""

    form: Form
    coarse: SewnMesh
    fine: SewnMesh
    start: Reals
    rest: AtRest


@pytest.fixture(scope="module", params=["bodice", "close-top"])
def worn(request: pytest.FixtureRequest) -> Worn:
    form = wearers_form(chart_body())
    draft = drafted(request.param)
    coarse, fine = (sewn_mesh(draft, request.param, PLIES, mesh=mesh) for mesh in (40.0, 20.0))
    start = placed(coarse, form)
    rest = from_coarse(coarse, fine, start, form.distance, LIMITS)
    return Worn(form, coarse, fine, start, rest)


def girths(rest: AtRest) -> dict[str, float]:
    """mm along the cloth at each level, round the whole garment."""
    mesh, found = rest.mesh, {}
    lying = rest.points[mesh.merged]
    for level in mesh.levels:
        points = np.einsum("sc,scx->sx", level.weights, lying[mesh.triangles[level.triangles]])
        long = np.linalg.norm(np.diff(points, axis=0), axis=1).sum()
        found[level.name] = float(long * (2.0 if mesh.halved else 1.0))
    return found


def test_it_comes_to_rest(worn: Worn) -> None:
    assert worn.rest.settled
    assert worn.rest.residual <= 0.05


def test_no_vertex_lies_deeper_than_2_mm_in_the_body(worn: Worn) -> None:
    assert worn.form.distance.distance(worn.rest.points).min() > -2.0


def test_from_another_start_it_comes_to_the_same_girths(worn: Worn) -> None:
    chance = np.random.default_rng(4)
    other = worn.start + chance.normal(size=worn.start.shape) * 3.0
    other[worn.coarse.on_middle, 0] = 0.0
    again = from_coarse(worn.coarse, worn.fine, other, worn.form.distance, LIMITS)
    assert again.settled
    first, second = girths(worn.rest), girths(again)
    assert max(abs(first[level] - second[level]) for level in first) <= 4.0


def test_from_its_own_answer_it_stays_where_it_is(worn: Worn) -> None:
    again = at_rest(worn.fine, worn.rest, worn.form.distance, LIMITS)
    assert again.settled
    assert again.steps <= worn.rest.steps / 5
    assert np.abs(again.points - worn.rest.points).max() < 2.0


def test_it_comes_to_the_same_rest_however_slow_the_machine_is(
    worn: Worn, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A clock on which every look takes a quarter of an hour."""
    few, clock = Limits(steps=25), itertools.count(step=900.0)
    once = at_rest(worn.coarse, worn.start, worn.form.distance, few)
    monkeypatch.setattr(time, "process_time", lambda: next(clock))
    again = at_rest(worn.coarse, worn.start, worn.form.distance, few)
    assert again.steps == once.steps == 25
    assert (again.points == once.points).all()


def test_a_search_that_was_cut_short_says_so(worn: Worn) -> None:
    cut = at_rest(worn.coarse, worn.start, worn.form.distance, Limits(steps=3))
    assert cut.steps == 3
    assert not cut.settled
    assert cut.residual > 0.05
