"""Buttons on worn garments: one ring for each that is seen, where the draft has it; counted off the drafts."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from drafting.body import wearer
from drafting.costume.garment import draft_garment
from drafting.costume.wearing.seen import seen_buttons
from drafting.costume.wearing.worn import worn
from drafting.worn.picture.buttons import ButtonRing, button_rings
from drafting.worn.picture.dressed import Look, dressed_scene
from drafting.worn.picture.lapels import laid_on
from tests.making.orders import WOVEN, costume_of
from tests.worn.dressed import on_form, the_form, trial_wearer
from tests.worn.garments import drafted


def rings_of(choices: dict[str, Any], *, hidden: bool = False) -> tuple[tuple[ButtonRing, ...], list[float]]:
    """Return the rings of a waistcoat at rest, and how high over the waist its buttons are drafted, mm."""
    draft = drafted("waistcoat", trial_wearer(), choices)
    rest = on_form(draft, "waistcoat", the_form(), mesh=40.0)
    shown = laid_on(rest, np.zeros(len(rest.mesh.sewn), bool), the_form().distance)
    under = np.full(rest.mesh.count, hidden)
    buttons = [m.path for m in draft["front"].placements if m.what == "button"]
    heights = [path.at(path.length / 2).imag for path in buttons]
    return button_rings(shown, tuple(seen_buttons(draft, rest.mesh)), under), heights


@pytest.mark.parametrize("choices", [{}, {"breasted": "double"}], ids=["single", "double"])
def test_each_button_is_one_ring_as_far_apart_as_drafted(choices: dict[str, Any]) -> None:
    """Single-breasted one row on the middle, double two rows, the holes of one over its buttons."""
    rings, drafted_at = rings_of(choices)
    rows = 2 if choices else 1
    assert len(rings) == rows * len(drafted_at)
    across = np.array([ring.middle[0] for ring in rings])
    if choices:
        assert (np.sign(across) > 0).sum() == (np.sign(across) < 0).sum() == len(drafted_at)
        assert np.abs(across).min() > 20.0
    else:
        assert np.abs(across).max() < 8.0
    heights = np.sort([ring.middle[2] for ring in rings])[::rows]
    # Over the bust cloth leans: a row measures a little less in height than along itself.
    assert np.diff(heights) == pytest.approx(np.diff(np.sort(drafted_at)), rel=0.1)
    assert any(ring.through for ring in rings)


def test_a_button_beside_the_middle_of_a_belly_is_one_ring() -> None:
    """Its ring lay whole a few mm beside the middle, and was drawn a second time as the other hand's."""
    tape = {"height": 1232.0, "bust_girth": 660.0, "waist_girth": 724.0, "hip_girth": 711.0}
    body = wearer({**tape, "back_waist_length": 276.0, "front_waist_length": 298.0})
    asked = {"lapel_style": "none", "coat_buttons": 6, "breasted": "single", "lining": "none"}
    made = costume_of(draft_garment(body, WOVEN, "coat", asked), WOVEN)
    (coat,) = worn(replace(made, costume=replace(made.costume, wearer=body)), mesh=30.0, treat=False).garments
    seen = button_rings(coat.rest, coat.buttons, np.zeros(coat.rest.mesh.count, bool))
    assert 4 <= len(seen) <= asked["coat_buttons"]
    heights = np.sort([ring.middle[2] for ring in seen])
    assert np.diff(heights).min() > 20.0


def test_a_button_under_other_cloth_is_not_drawn() -> None:
    assert rings_of({}, hidden=True)[0] == ()


def test_rings_are_drawn_with_the_garment() -> None:
    draft = drafted("waistcoat", trial_wearer(), {})
    rest = on_form(draft, "waistcoat", the_form(), mesh=40.0)
    none = np.full(rest.mesh.count, np.nan)
    buttons = tuple(seen_buttons(draft, rest.mesh))
    look = Look(name="w", rest=rest, faces={"": "#705070", "lining": "#aaaaaa"}, pull=none, off=none, lines=())
    bare = dressed_scene(the_form().surface, (look,))
    with_them = Look(name="w", rest=rest, faces=look.faces, pull=none, off=none, lines=(), buttons=buttons)
    assert len(dressed_scene(the_form().surface, (with_them,)).traces) > len(bare.traces)
