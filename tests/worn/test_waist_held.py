"""What hangs from the waist sinks to where the body fills it, and that is no pull; what is too narrow pulls.

Geometry: on a body that widens below, a tube slides down no farther than to where the body is as wide as it.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from shapely import LinearRing

from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.costume.wearing.signs import hem_tilt, signs_worn
from drafting.costume.wearing.worn import WornGarment, worn
from drafting.worn.form import wearers_form
from drafting.worn.nouns import AtRest
from drafting.worn.placed import placed
from drafting.worn.sewn import sewn_mesh
from drafting.worn.stands.held import drawn_by_the_cut
from drafting.worn.stands.hems import hem_lines, hems_of
from drafting.worn.stands.model import Strain
from drafting.worn.stands.told import garment_told
from drafting.worn.stands.words import worded
from tests.bodies import ansur
from tests.drawn_bodies import drawn
from tests.making.orders import WOVEN, costume_of
from tests.worn.garments import PLIES
from tests.worn.test_floor import BELLY

MESH = 40.0


def shown(body: Body, block: str, drafted_for: Body) -> tuple[Any, WornGarment]:
    """Return the form of a body, and a garment on it that was drafted for another."""
    made = costume_of(draft_garment(drafted_for, WOVEN, block), WOVEN)
    found = worn(replace(made, costume=replace(made.costume, wearer=body)), mesh=MESH, treat=False)
    return found.form, found.garments[0]


def said(garment: WornGarment) -> dict[str, dict[str, Any]]:
    return {one.key: dict(one.facts) for one in garment.words}


def test_trousers_sink_to_where_the_body_fills_their_waist_and_do_not_pull() -> None:
    body = drawn(7)[3]
    form, trousers = shown(body, "trousers", body)
    assert trousers.found.settled
    words = said(trousers)
    assert words["held.sinks_floor"]["waist"] == pytest.approx(
        body["waist_girth"] + 16.0, abs=1.0
    )  # the band's ease
    # One cause, one sentence: where it lies, how it is drawn, its hem on the floor come of its sinking.
    assert not [key for key in words if key.startswith(("pull.", "off.", "girth.", "hem.t"))]
    waist = form.levels["waist"]
    heights = np.arange(waist - 60.0, waist)
    girths = [LinearRing(form.contour(height)).length for height in heights]
    filled = waist - heights[np.array(girths) > words["held.sinks_floor"]["waist"]].max()
    assert filled < words["held.sinks_floor"]["by"] < filled + 25.0


def test_trousers_on_braces_are_not_told_to_pull_by_their_own_weight() -> None:
    """They are 131.6 cm round the waist of a body of 130 there, and were told to pull at it."""
    _, trousers = shown(BELLY, "trousers", BELLY)
    assert trousers.found.slid
    assert {one.key.partition(".")[0] for one in trousers.words} == {"held", "hem"}
    assert not list(signs_worn(trousers, draft_garment(BELLY, WOVEN, "trousers").draft))
    # Where they are cut narrower than the body, that is another cause, and is still told.
    (hip,) = (one for one in trousers.found.levels if one.name == "hip")
    narrow = replace(hip, drafted=BELLY["hip_girth"] - 30.0, strain=Strain(0.03, 0.05, 0.01, trusted=True))
    (kept,) = drawn_by_the_cut((narrow,), {"hip": BELLY["hip_girth"]})
    assert [one.key for one in garment_told(replace(trousers.found, levels=(kept,), hem=None))] == ["pull.over"]


def test_trousers_given_braces_hang_from_them_where_the_body_would_let_them_sink() -> None:
    """They were shown sunk to the floor, and told to wear braces (common practice: braces hold the waist)."""
    body = drawn(7)[3]
    made = costume_of(draft_garment(body, WOVEN, "trousers", {"brace_buttons": "yes"}), WOVEN)
    made = replace(made, costume=replace(made.costume, wearer=body))
    trousers = worn(made, mesh=MESH, treat=False).garments[0]
    words = said(trousers)
    assert [key for key in words if key.startswith("held.")] == ["held.braced"]
    assert "hem.trails" not in words
    assert trousers.found.hem is not None
    assert trousers.found.hem.trails == 0.0


def test_a_skirt_that_sinks_is_told_of_its_band_and_not_of_braces() -> None:
    """It has no legs for braces to pull on: its band is taken in, or it is hooked up (common practice)."""
    body = drawn(7)[3]
    _, skirt = shown(body, "skirt", body.changed(waist_girth=body["waist_girth"] + 50.0))
    (told,) = (one for one in skirt.words if one.key.startswith("held."))
    assert told.key == "held.sinks_round"
    assert "braces" not in worded(told, "cm")
    assert "hook it" in worded(told, "cm")


def test_a_waist_that_is_too_narrow_pulls_and_does_not_sink() -> None:
    body = drawn(7)[3]
    narrow = body.changed(waist_girth=body["waist_girth"] - 40.0)
    _, trousers = shown(body, "trousers", narrow)
    words = said(trousers)
    assert words["pull.over"]["level"] == "waist"
    assert not [key for key in words if key.startswith("held.")]


def test_sleeves_are_no_hem_of_a_top_that_ends_at_its_waist() -> None:
    """It was told that its hem, from one wrist to the other, does not go through a doorway."""
    body = drawn(7)[3]
    _, top = shown(body, "mutton-top", body)
    assert top.found.hem is None
    assert not any(key.startswith("hem.") for key in said(top))


def test_tails_that_are_longer_behind_by_design_show_no_tilted_hem() -> None:
    """Every shirt with tails and every waistcoat was said to have a hem that rises on one face."""
    body = drawn(7)[3]
    made = costume_of(draft_garment(body, WOVEN, "shirt", {"tails": "shaped", "tail_longer": 50.0}), WOVEN)
    made = replace(made, costume=replace(made.costume, wearer=body))
    (shirt,) = worn(made, mesh=MESH, treat=False).garments
    draft = made.garments[0].draft
    heights = np.concatenate(hem_lines(shirt.rest, hems_of(draft)))
    behind = heights[heights[:, 1] > np.median(heights[:, 1]), 2]
    assert heights[:, 2].max() - behind.min() > 40.0
    assert hem_tilt(shirt.rest, draft) == pytest.approx(0.0, abs=7.5)
    assert not any(one.sign.name.startswith("hem up") for one in signs_worn(shirt, draft))


@pytest.mark.parametrize("number", [5, 61, 75])
def test_a_shirt_drafted_for_its_wearer_shows_no_hem_that_rises(number: int) -> None:
    """11 of 14 measured people were told that the hem rises in front: at rest every front hitches up a little."""
    body = ansur(200)[number]
    made = costume_of(draft_garment(body, WOVEN, "shirt", {}), WOVEN)
    (shirt,) = worn(replace(made, costume=replace(made.costume, wearer=body)), mesh=MESH, treat=False).garments
    assert not any(one.sign.name.startswith("hem up") for one in signs_worn(shirt, made.garments[0].draft))


CUTS = ("straight", "gored", "quarter circle", "full circle")


@pytest.mark.parametrize(
    ("block", "choices"), [("overskirt", {}), *(("skirt", {"skirt_cut": cut}) for cut in CUTS)]
)
def test_a_level_hem_is_level_however_a_skirt_is_cut(block: str, choices: dict[str, str]) -> None:
    """A circle's panel lies on its side: its hem was said to rise in front by up to 131 cm."""
    body = drawn(7)[3]
    draft = draft_garment(body, WOVEN, block, choices).draft
    mesh = sewn_mesh(draft, block, PLIES, MESH)
    points = placed(mesh, wearers_form(body))
    for ref in hems_of(draft):
        if ref in mesh.edges:
            points[mesh.edges[ref], 2] = 400.0
    tilt = hem_tilt(
        AtRest(mesh=mesh, points=points, slip=points * 0.0, residual=0.0, settled=True, steps=0, seconds=0.0),
        draft,
    )
    assert tilt is None or abs(tilt) < 15.0
