"""Every kind of work has its too early and its too late: a step that stands where another does is found out.

Common practice of the workroom.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from drafting.costume.garment import draft_garment
from drafting.costume.make import Made
from drafting.fabric import Fabric
from drafting.making import planned
from drafting.making.model import Step
from drafting.making.rules import unsound
from drafting.making.rules.flat import sewn_on_flat
from drafting.making.rules.too_early import out_of_order
from tests.bodies import bdims
from tests.making.invented_costumes import invented
from tests.making.orders import KNIT, WOVEN, costume_of, order_of
from tests.making.test_order_rules import index, moved, seam, verb


def made_of(block: str, fabric: Fabric = WOVEN, **asked: object) -> tuple[Made, tuple[Step, ...]]:
    costume = costume_of(draft_garment(bdims()[3], fabric, block, asked), fabric)
    return costume, order_of(costume)


def key(word: str) -> Callable[[Step], bool]:
    return lambda step: any(one.key.partition(".")[2] == word for one in step.say)


def notion(word: str) -> Callable[[Step], bool]:
    return lambda step: any(one.startswith(word) for one in step.notions)


LINED: dict[str, object] = {"lining": "whole"}

MISPLACED: dict[str, tuple[str, dict[str, object], Callable[[Step], bool], Callable[[Step], bool], str]] = {
    "stiffened when it is joined": ("shirt", {}, verb("fuse"), verb("set in"), "stiffens"),
    "a dart after the side": ("shirt", {}, verb("dart"), verb("set in"), "shapes back after"),
    "an inner dart after the side": ("fitted-top", {}, key("inner_dart"), verb("set in"), "shapes"),
    "a facing neatened when it is on": ("sleeveless-top", {}, key("neaten"), verb("try"), "neatens"),
    "a slit's placket on a closed sleeve": (
        "shirt",
        {"sleeve_opening": "placket"},
        key("slit_placket"),
        verb("set in"),
        "lies flat no longer",
    ),
    "a cuff that is not made up": ("shirt", {}, key("cuff"), verb("try"), "joins on what is not made up"),
    "a band that is not made up": ("trousers", {}, key("band"), verb("try"), "joins on what is not made up"),
    "a sleeve nobody tried": ("shirt", {}, key("fit_sleeves"), verb("try"), "was not tried on"),
    "a sleeve closed when it is in": ("shirt", {}, key("close_sleeve"), verb("try"), "close its round"),
    "an armhole open at the side": ("shirt", {}, seam("side"), verb("try"), "close its round"),
    "a fly under a band": ("trousers", {"fly": False}, key("fly"), verb("try"), "closes over its end"),
    "a fly in a closed leg": ("trousers", {}, key("fly_facing"), verb("try"), "fronts lie flat no longer"),
    "a zip under a band": ("skirt", {}, notion("zip:"), verb("try"), "closes over its end"),
    "a cape's front under its stand": ("cape", {}, key("turned_in"), verb("try"), "closes over its end"),
    "a strap before its hem": ("spats", {}, key("strap_under"), verb("fuse"), "hem that is not turned"),
    "holes in single layers": ("shirt", {}, verb("buttonhole"), seam("collar edge"), "has joined their layers"),
    "buttons before holes": ("shirt", {}, notion("button:"), verb("buttonhole"), "comes before"),
    "never tried at the end": ("shirt", {}, verb("try"), verb("hem"), "nobody tries it"),
    "starched in the making": ("shirt", {}, verb("starch"), verb("hem"), "starches before"),
    "panels starched apart": ("tailcoat", {}, key("starch"), key("join_bias"), "starches before"),
    "lacing before its eyelets": (
        "sleeveless-top",
        {"fastening": "laced"},
        notion("cord:"),
        notion("eyelet:"),
        "comes before",
    ),
    "a bar on a raw vent": ("tailcoat", {}, verb("bar"), verb("hang"), "bars what is not finished"),
    "sleeves lined first": ("tailcoat", {}, key("line_sleeves"), key("line"), "sleeves are lined before"),
    "turned in behind a lining": ("tailcoat", {}, key("vent"), verb("try"), "after the lining"),
    "a loop behind a lining": ("overskirt", LINED, notion("hook and eye:"), verb("try"), "after the lining"),
    "a tape behind its seam": ("overskirt", {}, notion("tape:"), verb("try"), "which catches it"),
    "ends of a loose facing": ("sleeveless-top", {}, key("facing_ends"), seam("side"), "turns in the ends"),
    "a hook on an open neck": ("sleeveless-top", {}, notion("hook and eye:"), seam("side"), "has yet to finish"),
    "a hook on a stand that is not made": ("cape", {}, notion("hook and eye:"), verb("fuse"), "has yet to finish"),
    "a button on a band that is not on": ("skirt", {}, notion("button:"), verb("fuse"), "has yet to finish"),
    "a lining hung in panels": ("overskirt", LINED, key("hang_lining_whole"), verb("fuse"), "has joined it"),
    "a lining made up before the fitting": ("waistcoat", {}, key("lining"), verb("baste"), "before the first fit"),
    "a strap made up before the fitting": ("waistcoat", {}, key("band"), verb("baste"), "before the first fit"),
    "a lining levelled by no hem": ("overskirt", LINED, key("hang"), verb("try"), "levels a lining before"),
    "elastic in an open round": ("breeches", {}, verb("casing"), seam("inside leg"), "which it crosses"),
}
"""A step that stands where another does, and what is said of it (common practice of the workroom)."""


@pytest.mark.parametrize("fault", MISPLACED)
def test_a_step_in_the_wrong_place_is_found_out(fault: str) -> None:
    block, asked, which, where, words = MISPLACED[fault]
    costume, steps = made_of(block, KNIT if block == "breeches" else WOVEN, **asked)
    assert unsound(costume, steps) == ()
    wrong = unsound(costume, moved(steps, index(steps, which), index(steps, where)))
    assert any(words in one for one in wrong), wrong


def test_a_pockets_parts_have_their_order() -> None:
    """Facing and welt before the bag that lies over them; a flap after the pocket that it falls over."""
    costume = invented("ferry pilot")
    steps = tuple(step for step in planned(costume).steps if step.garment == "trousers")
    marked = [i for i, step in enumerate(steps) if key("slant_mouth")(step) or key("slant_back")(step)]
    assert len(marked) == 2
    assert not list(sewn_on_flat(costume["trousers"], None, steps))
    wrong = list(sewn_on_flat(costume["trousers"], None, moved(steps, marked[1], marked[0])))
    assert any("part of a pocket" in one for one in wrong), wrong


SPOKEN_OF = {
    *("shirt", "tailcoat", "trousers", "breeches", "skirt", "cape", "spats", "overskirt", "sleeveless-top"),
    *("waistcoat", "peplum-top"),
}


@cache
def spoken_of(block: str) -> tuple[Made, tuple[Step, ...]]:
    fabric = KNIT if block == "breeches" else WOVEN
    return made_of(block, fabric, **(LINED if block == "overskirt" else {}))


LATE, EARLY = "just before it is tried at the end", "first of all"

FREE: dict[tuple[str, str, str], str] = {
    (LATE, "casing", "breeches"): "nothing but the other casing comes after it",
    (LATE, "hem", "cape"): "nothing but its fastener comes after it, far from the hem",
}
"""The work that may be done at that end in that garment (common practice)."""


@pytest.mark.parametrize("block", sorted(SPOKEN_OF))
def test_every_kind_of_work_is_missed_at_either_end_of_the_order(block: str) -> None:
    """The last step stays the last, or every late one would be found by that alone."""
    costume, steps = spoken_of(block)
    assert list(out_of_order(costume, steps)) == []
    assert steps[-1].verb == "try"
    last, unnoticed = len(steps) - 2, set()
    for kind in {step.verb for step in steps} - {"fit", "baste", "try"}:
        own = [i for i, step in enumerate(steps) if step.verb == kind]
        for end, at, to in ((LATE, own[0], last), (EARLY, own[-1], 0)):
            if at != to and not list(out_of_order(costume, moved(steps, at, to))):
                unnoticed.add((end, kind, block))
    assert unnoticed == {one for one in FREE if one[2] == block}


def test_the_garments_spoken_of_have_nearly_every_kind_of_work() -> None:
    kinds = {step.verb for block in SPOKEN_OF for step in spoken_of(block)[1]}
    assert len(kinds - {"fit", "baste", "try"}) >= 18


def test_the_zip_of_a_fly_that_is_turned_in_is_bought() -> None:
    """The step sews one in; without a facing no part of the draft lists it."""
    costume, steps = made_of("trousers", fly=False)
    (fly,) = [step for step in steps if key("fly")(step)]
    assert [one.what for one in fly.takes] == ["zip"]
    bare = tuple(replace(step, takes=()) if step is fly else step for step in steps)
    assert any("asks for zip" in one for one in unsound(costume, bare))
