"""The worn page as a hand uses it: the shape follows, the one before stays beside it, refusals leave it alone."""

from __future__ import annotations

import threading
from dataclasses import replace
from functools import partial
from io import BytesIO
from typing import Any

import numpy as np
import pytest
from PIL import Image

from drafting.costume.file import read_costume
from drafting.notebook import WornView, costume_path
from tests.pace import paced

CHOICES = ["stretch_share", "puff_width", "bust_ease"]


@pytest.fixture(scope="module")
def view() -> WornView:
    """Return the kite's top; a test leaves behind what it asked for."""
    return WornView(read_costume(costume_path("kite")), "top", CHOICES[:2])


def seen(image: bytes) -> np.ndarray:
    with Image.open(BytesIO(image)) as picture:
        return np.asarray(picture.convert("RGB"))


def test_it_opens_with_a_shape_and_nothing_before_it(view: WornView) -> None:
    assert (seen(view.before.value) == 255).all() or view.worn.before is not None
    assert (seen(view.now.value) != 255).any()
    assert set(view.knobs.states) == set(CHOICES[:2])
    assert "A form, not a fitting" in view.words.value
    assert "shape only" in view.words.value


def test_a_slider_moves_the_shape_and_the_one_before_stands_beside_it(view: WornView) -> None:
    """In a script there is no loop to wait in, so the hand rests at once."""
    last = view.worn.now
    view.ask("stretch_share", 0.45)
    assert view.worn.before is last
    assert view.worn.now is not last
    assert view.worn.shown["top"].choices["stretch_share"][0] == 0.45
    assert (seen(view.before.value) != seen(view.now.value)).any()


def test_a_shape_comes_within_the_time_that_a_resting_hand_waits(view: WornView) -> None:
    """1.5 s where the fixed work takes 10.5 ms."""
    assert paced(*(partial(view.ask, "puff_width", width) for width in (140.0, 150.0, 140.0))) < 143.0


def test_what_cannot_be_drafted_is_said_and_the_shape_stays(view: WornView) -> None:
    now = view.worn.now
    view.ask("stretch_share", 7.0)
    assert view.worn.now is now
    assert "out of range" in view.knobs.states["stretch_share"]["refusal"]
    view.ask("stretch_share", 0.25)
    assert view.worn.now is not now
    assert not view.knobs.states["stretch_share"]["refusal"]


def test_a_typed_value_is_taken_and_a_slip_stays_in_its_field(view: WornView) -> None:
    view.take({"puff_width": {"n": 1, "stroke": 1, "text": "16 cm"}})
    assert view.worn.shown["top"].choices["puff_width"][0] == 160.0
    now = view.worn.now
    view.take({"puff_width": {"n": 2, "stroke": 2, "text": "sixteen"}})
    assert view.worn.now is now
    assert view.knobs.states["puff_width"]["refusal"]
    view.take({"puff_width": {"n": 3, "stroke": 3, "back": True}})
    of_bust = 0.1548 * view.costume.wearer["bust_girth"]  # as the kite's file has it
    assert view.worn.shown["top"].choices["puff_width"][0] == pytest.approx(of_bust, abs=1e-3)


def test_the_wearer_holds_the_arms_a_little_out_or_lets_them_hang(view: WornView) -> None:
    out, wrist = seen(view.now.value), view.form.arm[2]
    view.arms.value = "hanging"
    assert view.form.arm[2][0] < wrist[0] - 60.0
    assert view.worn.now.rest.points[:, 0].max() < 0.9 * wrist[0]
    assert (seen(view.now.value) != out).any()
    view.arms.value = "a little out"
    assert (view.form.arm[2] == wrist).all()


def test_with_the_arms_raised_it_is_shown_so_and_told_how_far_it_rises(view: WornView) -> None:
    wrist = view.form.arm[2]
    view.arms.value = "raised"
    assert abs(view.form.arm[2][2] - view.form.arm[0][2]) < 30.0
    assert view.form.arm[2][0] > wrist[0] + 60.0
    view.settle.click()
    view.errand.wait(240)
    assert "A living shoulder" in view.words.value
    view.arms.value = "a little out"
    assert (view.form.arm[2] == wrist).all()


def test_it_is_looked_at_from_every_side_and_tells_where_it_stands_off(view: WornView) -> None:
    front = seen(view.now.value)
    view.side.value = "back"
    back = seen(view.now.value)
    view.colours.value = "where it stands off"
    told = seen(view.now.value)
    view.side.value, view.colours.value = "front", "as worn"
    assert (front != back).any()
    assert (back != told).any()
    assert (seen(view.now.value) == front).all()


def test_the_button_settles_it_in_full_and_tells_it_in_words(view: WornView) -> None:
    coarse = view.worn.now.rest.mesh.count
    told: list[str] = []
    view.progress.words.observe(lambda change: told.append(change["new"]), names="value")
    view.settle.click()
    assert view.settle.description == "Stop settling"
    view.errand.wait(240)
    assert view.settle.description == "Settle it in full"
    steps = ("Making the form", "Putting it on: top", "Letting it come to rest: top", "Dressing")
    places = [next(n for n, words in enumerate(told) if step in words) for step in steps]
    assert places == sorted(places)
    assert any("left" in words for words in told)
    assert view.progress.bar.layout.visibility == "hidden"
    assert view.worn.now.rest.mesh.count > 2 * coarse
    assert "A form, not a fitting" in view.words.value
    assert "At the bust" in view.words.value or "shape only" in view.words.value


@pytest.mark.parametrize("stops", ["the button", "a slider", "another costume"])
def test_it_is_stopped_by_its_button_and_by_what_makes_it_stale(stops: str) -> None:
    view = WornView(read_costume(costume_path("kite")), "top", CHOICES[:2])
    now = view.worn.now
    under_way = threading.Event()

    def heard(change: Any) -> None:
        if "Letting it come to rest" in change["new"]:
            under_way.set()

    view.progress.words.observe(heard, names="value")
    view.settle.click()
    assert under_way.wait(120)
    if stops == "a slider":
        view.ask("stretch_share", 0.45)
        now = view.worn.now
    else:
        view.settle.click() if stops == "the button" else view.close()
    view.errand.wait(20)
    assert not view.errand.busy
    assert "Stopped" in view.progress.words.value
    assert view.worn.now is now
    assert view.settle.description == "Settle it in full"
    assert "<b>" not in view.refused.value


def test_lengths_are_in_the_unit_of_the_costumes_file() -> None:
    costume = replace(read_costume(costume_path("kite")), unit="in")
    puff = WornView(costume, "top", ["puff_width"]).knobs.states["puff_width"]["text"]
    assert puff == "5 1/8 in"  # 0.1548 of 84 cm
