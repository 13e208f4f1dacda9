"""The floor bears what is longer than to it; trousers that nothing on the body holds up are worn on braces."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from drafting.blocks import use_blocks
from drafting.body import Body, wearer
from drafting.costume.wearing.sewn import COARSE
from drafting.worn.form import wearers_form
from drafting.worn.nouns import AtRest
from drafting.worn.placed import placed
from drafting.worn.placed.braces import held_up, slides_down
from drafting.worn.settled import Limits, at_rest
from drafting.worn.sewn import sewn_mesh
from drafting.worn.stands.hems import hem_lines, hem_worn, hems_of
from drafting.worn.stands.model import GarmentWorn
from drafting.worn.stands.told import garment_told
from drafting.worn.stands.words import worded
from tests.blocks.own import SKIRT
from tests.worn.dressed import on_form, plies_for
from tests.worn.garments import PLIES, chart_body, drafted

SUNK = 0.5
"""mm that cloth sinks into floor and form at most under its own weight."""


@pytest.fixture(scope="module")
def trailing() -> AtRest:
    """Trousers 18 cm longer than to just over the floor."""
    draft = drafted("trousers", None, {"leg_length": 180.0})
    return on_form(draft, "trousers", wearers_form(chart_body()), mesh=COARSE)


def test_trousers_longer_than_the_leg_lie_on_the_floor_and_the_foot(trailing: AtRest) -> None:
    """Without a floor their hems hung 9 cm below it.

    Held up by their band they lie 1.5 cm less on it than a sheet alone let them, which had half of the hem there:
    what is over stands in folds on the foot.
    """
    assert trailing.settled
    assert trailing.points[:, 2].min() > -SUNK
    hem = np.concatenate([trailing.points[trailing.mesh.edges[piece, "hem"]] for piece in ("front", "back")])
    assert (hem[:, 2] < 10.0).mean() > 0.25
    assert wearers_form(chart_body()).distance.distance(trailing.points).min() > -2.0


def test_that_it_trails_is_told_with_what_comes_of_it(trailing: AtRest) -> None:
    hem = hem_worn(hem_lines(trailing, hems_of(drafted("trousers"))), seat_back=0.0)
    assert hem is not None
    assert hem.trails > 200.0  # of two hems some 42 cm round each; folds hold the rest up
    told = [worded(said, "cm") for said in garment_told(GarmentWorn("trousers", True, 0.01, 1, (), hem))]
    assert [line for line in told if "lies on the floor along" in line and "treads on it" in line]
    short = replace(hem, trails=0.0, lowest=60.0)
    assert not [s for s in garment_told(GarmentWorn("t", True, 0.01, 1, (), short)) if s.key.startswith("hem.t")]


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    yield tmp_path
    use_blocks(None)


def test_a_skirt_longer_than_to_the_floor_starts_and_ends_laid_out_on_it(folder: Path) -> None:
    """By hand: of 1200 mm from a waist at 1057 mm 14 cm lie on the floor."""
    (folder / "wrap_skirt.py").write_text(SKIRT, encoding="utf-8")
    use_blocks(folder)
    form = wearers_form(chart_body())
    mesh = sewn_mesh(drafted("wrap-skirt", None, {"skirt_length": 1200.0}), "skirt", plies_for(""), COARSE)
    start = placed(mesh, form)
    hem = mesh.edges["skirt", "hem"]
    over = 1200.0 - form.levels["waist"]
    assert start[:, 2].min() == pytest.approx(5.0)
    shorter = sewn_mesh(drafted("wrap-skirt", None, {"skirt_length": 1000.0}), "skirt", plies_for(""), COARSE)
    hangs = placed(shorter, form)[shorter.edges["skirt", "hem"]]
    assert np.ptp(start[hem, 1]) > np.ptp(hangs[:, 1]) + over
    held = start[:, 2] > form.levels["waist"] - 1.0
    rest = at_rest(mesh, start, form.distance, Limits(steps=600), held=held)
    assert rest.settled
    assert rest.points[:, 2].min() > -SUNK
    assert rest.points[hem, 2].min() < 5.0
    assert rest.points[hem, 2].max() < 50.0  # some of it stands in a fold


LEGS = {
    "outside_leg_length": 1198.5,
    "inside_leg_length": 923.3,
    "total_crotch_length": 787.7,
    "back_crotch_length": 445.2,
    "waist_to_hip": 229.3,
    "thigh_girth": 707.6,
}
"""mm, invented: what says how far trousers slide before the crotch bears them."""

GIRTHS = {"height": 1900, "bust_girth": 1280, "waist_girth": 1300, "hip_girth": 1140}
BELLY = wearer({**GIRTHS, **LEGS}, title="great belly")


@pytest.mark.parametrize(
    ("body", "block", "slides"),
    [
        (BELLY, "trousers", True),
        (BELLY, "breeches", False),  # on elastic
        (BELLY, "shirt", False),
        (chart_body(), "trousers", False),
    ],
)
def test_only_trousers_that_nothing_below_holds_up_slide_down(body: Body, block: str, slides: bool) -> None:
    form = wearers_form(body)
    mesh = sewn_mesh(drafted(block, body), block, plies_for(block), COARSE)
    found = slides_down(mesh, placed(mesh, form), form)
    assert (found is not None) is slides
    if found:
        assert found.waist == pytest.approx(1300.0 + 16.0, abs=1.0)
        assert found.widest == pytest.approx(1300.0, rel=0.005)


def test_on_braces_they_come_to_rest_at_their_height() -> None:
    """Of a wearer with a waist of 131 cm on hips of 114 such trousers slid through the floor in 1000 steps."""
    form = wearers_form(BELLY)
    mesh = sewn_mesh(drafted("trousers", BELLY), "trousers", plies_for("trousers"), COARSE)
    start = placed(mesh, form)
    slides = slides_down(mesh, start, form)
    assert slides is not None
    mesh = held_up(mesh, slides)
    rest = at_rest(mesh, start, form.distance)
    assert rest.settled
    assert rest.points[mesh.hung, 2] == pytest.approx(start[mesh.hung, 2])
    assert rest.points[:, 2].min() > -SUNK
    loose = at_rest(replace(mesh, hung=mesh.hung[:0]), start, form.distance, Limits(steps=150))
    assert not loose.settled
    assert loose.points[mesh.hung, 2].mean() < start[mesh.hung, 2].mean() - 20.0


@pytest.mark.parametrize("cut", ["straight", "gored", "half circle", "tiered"])
def test_a_skirt_slides_off_a_belly_that_is_the_widest_and_stays_on_a_hip(cut: str) -> None:
    # Common practice: a waist that is larger than the hip holds no skirt up; one gathered to a band is held by it.
    girths = {"height": 1700.0, "bust_girth": 1080.0, "hip_girth": 1090.0}
    for waist in (850.0, 1160.0):
        body = wearer({**girths, "waist_girth": waist})
        form = wearers_form(body)
        mesh = sewn_mesh(drafted("skirt", body, {"skirt_cut": cut}), "skirt", PLIES, 40.0)
        slides = slides_down(mesh, placed(mesh, form), form)
        assert (slides is not None) == (waist > 1000 and cut != "tiered"), waist
