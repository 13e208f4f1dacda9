"""More of what was wrong in costumes read cold: what frays, and what a yoke leaves (common practice)."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.draft.roles import EdgeRole
from drafting.ground.errors import InputError
from drafting.making.rules import unsound
from drafting.reading.style import CutWish
from drafting.reading.style_made import EdgingWish
from drafting.reading.style_places import OutlinePlace
from tests.blocks.figures import chart_woman, errors
from tests.making.orders import WOVEN, costume_of, order_of
from tests.making.test_read_cold import keys_of, made, work


@pytest.mark.parametrize("lined", ["whole", "none"])
def test_whether_a_seam_frays_is_asked_of_the_cloths_that_meet_in_it(lined: str) -> None:
    """Common practice: a satin back ravels, whatever the fronts are of. In a waistcoat of felt it was left raw,
    and told not to ravel."""
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


@pytest.mark.parametrize("block", ["trousers", "knee-breeches"])
@pytest.mark.parametrize("fall", [False, True])
def test_a_yoke_across_the_back_dart_of_trousers_is_no_error(block: str, fall: bool) -> None:
    """A yoke from the crotch to the side, over the dart: each part keeps its half of it. The part below was said
    to have lines too broken to be measured, and the run ended as a failed one."""
    side = "fall_side" if fall else "side"
    kept = 0
    for start, end in ((0.5, 0.5), (0.85, 0.5), (0.85, 0.06), (0.8, 0.1)):
        line = CutWish("back", OutlinePlace("crotch", share=start), OutlinePlace(side, share=end), "back-yoke")
        try:
            garment = made(chart_woman(), block, asked={"fall_front": fall}, style=(line,))
        except InputError:
            continue
        assert errors(garment) == []
        waists = [
            e for p in garment.draft.pieces for e in p.edges if p.name == "back" and e.role is EdgeRole.WAIST
        ]
        darts = [e for e in garment.draft["back"].edges if e.role is EdgeRole.WAIST_DART]
        kept += bool(darts and not waists)
    assert kept, "a line that runs over the dart"


@pytest.mark.parametrize(
    ("block", "asked", "piece"),
    [("coat", {"vent": "sides"}, "side-body"), ("coat", {"vent": "centre"}, "back"), ("tailcoat", {}, "tail-4")],
)
def test_a_vent_is_finished_before_a_band_closes_over_its_end(
    block: str, asked: dict[str, object], piece: str
) -> None:
    """Common practice, as of a sleeve's slit and its cuff: a band along the hem was sewn on over raw vents."""
    wish = EdgingWish("band", ((piece, "hem"),), 30.0)
    garment = made(chart_woman(), block, asked=asked, style=(wish,))
    steps = work(garment)
    vents = [i for i, step in enumerate(steps) if {"vent", "free_front"} & keys_of(step)]
    band = next(i for i, step in enumerate(steps) if any(name.endswith("hem band") for name in step.seams))
    assert min(vents) < band
    done = [ref for step in steps for ref in step.edges if garment.draft.edge(ref).role is EdgeRole.VENT]
    assert len(done) == len(set(done))
