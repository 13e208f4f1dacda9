"""A whole circle to the floor, and what is worn over one: they come to rest, and are told of truly.

Geometry: cloth with nothing over it stays where it hangs; cloth beneath a tube lies inside that tube.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.costume.wearing.sewn import COARSE, FINE, MOST, coarse_mesh
from drafting.costume.wearing.worn import worn
from drafting.worn.nouns import AtRest, Limb
from drafting.worn.picture.drawn_in import INSIDE, TALL, drawn_in
from drafting.worn.picture.tucked import tucked
from drafting.worn.placed import placed
from drafting.worn.placed.braces import sunk
from drafting.worn.sewn import sewn_mesh
from tests.making.orders import WOVEN, costume_of
from tests.worn.dressed import plies_for, the_form, trial_wearer
from tests.worn.made_up import tube
from tests.worn.posts import post_field
from tests.worn.unusual import child

CIRCLE: dict[str, Any] = {"skirt_cut": "full circle", "skirt_ends": "floor"}
MIDDLE = np.zeros(2)


def worn_alone(choices: dict[str, Any], mesh: float, body: Body | None = None, block: str = "skirt") -> Any:
    wearer = body or trial_wearer()
    made = costume_of(draft_garment(wearer, WOVEN, block, choices), WOVEN)
    made = replace(made, costume=replace(made.costume, wearer=wearer))
    (skirt,) = worn(made, mesh=mesh, treat=False).garments
    return skirt


def test_much_cloth_is_meshed_in_wider_steps_and_little_is_not() -> None:
    form = the_form()
    for choices, wider in (({}, False), (CIRCLE, True)):
        draft = draft_garment(trial_wearer(), WOVEN, "skirt", choices).draft
        mesh, size = coarse_mesh(draft, "skirt", plies_for("skirt"), form)
        assert (size > COARSE * form.fineness) == wider
        assert mesh.count < 1.1 * MOST


def test_a_circle_skirt_to_the_floor_comes_to_rest() -> None:
    """Meshed as finely as a bodice it was shown as a shape only, after five minutes."""
    skirt = worn_alone(CIRCLE, COARSE)
    assert skirt.found.settled


@pytest.mark.population
def test_it_does_so_in_the_mesh_that_numbers_are_told_of() -> None:
    skirt = worn_alone(CIRCLE, FINE)
    assert skirt.found.settled


@pytest.mark.parametrize("mesh", [COARSE, 30.0, FINE])
def test_a_circle_is_held_by_its_waist_whatever_the_mesh(mesh: float) -> None:
    """As cut, its hip lies no lower than its waist: one was said to sink by 22 cm, its waist 221 cm round."""
    draft = draft_garment(trial_wearer(), WOVEN, "skirt", {"skirt_cut": "full circle"}).draft
    form, cloth = the_form(), sewn_mesh(draft, "skirt", plies_for("skirt"), mesh)
    start = placed(cloth, form)
    fallen = replace(still(cloth, start), points=start - (0.0, 0.0, 60.0))
    told = sunk(cloth, start, fallen, form)
    assert told is not None
    assert told.waist == pytest.approx(trial_wearer()["waist_girth"] + 16.0, abs=1.0)
    assert told.by < 90.0


def still(mesh: Any, points: Any) -> AtRest:
    none = np.zeros_like(points)
    return AtRest(mesh=mesh, points=points, slip=none, residual=0.0, settled=True, steps=0, seconds=0.0)


def test_a_wide_skirt_is_drawn_in_under_what_hangs_over_it_with_its_folds() -> None:
    """A skirt that stands out by 40 cm was drawn through the cape over it, in teeth and holes."""
    skirt, cape = tube(400.0, 0.0, 900.0, wave=60.0), tube(250.0, 300.0, 900.0)
    points = drawn_in(skirt, cape, 850.0, MIDDLE)
    radius, before = (np.hypot(*p[:, :2].T) for p in (points, skirt.points))
    height = skirt.points[:, 2]
    beneath = (height > 300.0 + TALL) & (height < 850.0)
    assert radius[beneath].max() < 250.0 - INSIDE / 2
    assert np.ptp(radius[np.isclose(height, 400.0)]) > 5.0  # its folds are there still
    assert np.allclose(points[:, 2], height)
    assert (radius <= before + 1e-9).all()


def test_below_the_hem_over_it_a_skirt_springs_out_little_by_little_and_beside_it_it_stays() -> None:
    skirt = tube(400.0, 0.0, 900.0)
    points = drawn_in(skirt, tube(250.0, 300.0, 900.0), 850.0, MIDDLE)
    by_height = {h: np.hypot(*points[np.isclose(points[:, 2], h), :2].T) for h in np.unique(points[:, 2])}
    means = [float(by_height[h].mean()) for h in sorted(by_height) if h < 300.0]
    assert means == sorted(means, reverse=True)
    assert np.abs(np.diff(means)).max() < 1.5 * 20.0
    assert means[0] > 350.0
    short = drawn_in(skirt, tube(250.0, 900.0, 1200.0), 850.0, MIDDLE)
    assert np.allclose(short, skirt.points)


def a_sleeve() -> AtRest:
    """Return the outer half of a puff of 120 mm round an arm that hangs 250 mm from the middle, on the left."""
    rest = tube(120.0, 900.0, 1300.0)
    arm = replace(rest.mesh.pieces[0], limb=Limb.ARM)
    mesh = replace(rest.mesh, pieces=(arm,), on_middle=np.zeros(rest.mesh.count, bool))
    return replace(rest, mesh=mesh, points=rest.points + np.array([250.0, 0.0, 0.0]))


@pytest.mark.parametrize(("radius", "covers"), [(360.0, True), (200.0, False)], ids=["cape", "waistcoat"])
def test_a_sleeve_is_drawn_inside_a_cape_and_outside_a_waistcoat(radius: float, covers: bool) -> None:
    """A shipped costume's sleeves were drawn through its cape, which has none and goes over both arms."""
    shown = tucked(a_sleeve(), tube(radius, 850.0, 1350.0), post_field(150.0))
    out = np.hypot(*shown.points[:, :2].T)
    assert (out.max() < radius + 1.0) == covers
    if not covers:
        assert np.allclose(shown.points, a_sleeve().points)


def test_a_fold_on_the_middle_meets_its_mirror_image_and_goes_no_farther() -> None:
    """A child's overskirt passed through the middle by 32 mm, and its inside was seen in front."""
    rest = worn_alone({}, 28.0, child(1160.0), "overskirt").rest
    assert rest.points[:, 0].min() > -4.0
    assert (
        np.ptp(rest.points[np.isclose(rest.points[:, 0], 0.0, atol=4.0), 2]) > 200.0
    )  # it reaches there, in front


def test_what_goes_round_legs_draws_in_nothing_that_hangs_round_the_body() -> None:
    """A shirt's tails under trousers were drawn to the middle, where the legs' inner walls stand."""
    skirt, leg = tube(200.0, 400.0, 900.0), tube(80.0, 0.0, 800.0)
    piece = replace(leg.mesh.pieces[0], limb=Limb.LEG)
    trousers = replace(leg, mesh=replace(leg.mesh, pieces=(piece,)))
    assert np.allclose(drawn_in(skirt, trousers, 850.0, MIDDLE), skirt.points)
