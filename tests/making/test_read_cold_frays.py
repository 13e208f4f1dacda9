"""Whether a raw edge frays is asked of the cloths that meet there (common practice of the workroom)."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.making.rules import unsound
from tests.blocks.figures import chart_woman
from tests.making.orders import WOVEN, costume_of, order_of
from tests.making.test_read_cold import keys_of, made, work


@pytest.mark.parametrize("lined", ["whole", "none"])
def test_whether_a_seam_frays_is_asked_of_the_cloths_that_meet_in_it(lined: str) -> None:
    """Common practice: a satin back ravels, whatever the fronts are of. In a waistcoat of felt it was left raw, and
    told not to ravel."""
    felt = replace(WOVEN, title="Felt, invented", sort="felted", takes_starch=False)
    satin = replace(WOVEN, title="Satin lining, invented", sort="plain", mass=95.0, takes_starch=False)
    body = chart_woman().changed(bust_girth=930.0, high_bust_girth=930.0)
    garment = made(body, "waistcoat", felt, {"lining": lined})
    costume = costume_of(garment, felt)
    costume = replace(costume, costume=replace(costume.costume, fabrics={"shell": felt, "lining": satin}))
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    joined = {name: step for step in steps if step.verb == "join" for name in step.seams}
    left_raw = {"neaten_none"}
    for name in ("centre back", "side", "shoulder"):
        step = joined[name]
        assert bool({"neaten_open", "neaten_side"} & keys_of(step)) == (lined == "none"), name
        why = {one.key.partition(".")[2] for one in step.setting.why} if step.setting else set()
        assert not (left_raw & why), name


def test_in_a_garment_of_felt_alone_nothing_is_neatened() -> None:
    felt = replace(WOVEN, title="Felt, invented", sort="felted", takes_starch=False)
    steps = work(made(chart_woman(), "fitted-top", felt), felt)
    assert not [step for step in steps if {"neaten_open", "neaten_side"} & keys_of(step)]
