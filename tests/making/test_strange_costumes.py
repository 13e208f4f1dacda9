"""Plans of strange costumes, read as a head of workshop: what would spoil the cloth, or cannot be sewn so.

All is common practice of the workroom. Invented cloths.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from drafting.costume.garment import draft_garment
from drafting.fabric import Fabric
from drafting.making.model import Step
from drafting.making.rules import unsound
from drafting.making.stages.drawn import sewn_on_paper
from drafting.making.stages.picture import InkLine
from drafting.making.words import text
from tests.bodies import bdims
from tests.making.orders import WOVEN, costume_of, order_of, uneven
from tests.making.test_order_rules import SHEER
from tests.making.test_plans_read import keys

LEATHER = replace(
    WOVEN,
    title="Leather, invented",
    fibre="leather",
    sort="coated",
    thickness=1.2,
    mass=700.0,
    takes_fusible=False,
    takes_starch=False,
    care="wipe clean, do not iron",
)


def ordered(block: str, fabric: Fabric, lopsided: bool = False, **asked: object) -> tuple[Step, ...]:
    body = uneven(bdims()[3]) if lopsided else bdims()[3]
    costume = costume_of(draft_garment(body, fabric, block, asked), fabric)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    return steps


def test_no_close_stitches_perforate_a_leather_buttonhole() -> None:
    (holes,) = [step for step in ordered("coat", LEATHER) if step.verb == "buttonhole"]
    assert holes.setting is not None
    assert holes.setting.stitch_length >= 2.5
    assert "perforate" in text(holes.say[0])
    (plain,) = [step for step in ordered("coat", WOVEN) if step.verb == "buttonhole"]
    assert plain.setting is not None
    assert plain.setting.stitch_length <= 1.0


def test_a_leather_vent_is_not_caught_down_by_hand() -> None:
    vents = [one for step in ordered("tailcoat", LEATHER) for one in step.say if "slit_vent" in one.key]
    assert vents
    assert not [one for one in vents if "by hand" in text(one)]


@pytest.mark.parametrize("fabric", [WOVEN, LEATHER])
def test_a_laced_tops_facing_is_folded_over_the_neck_that_is_faced(fabric: Fabric) -> None:
    """Where the armholes get strips, its neck edge was turned in by itself, and a raw corner stood at the neck."""
    steps = ordered("sleeveless-top", fabric, fastening="laced", facings="neck")
    assert any("strip_ring" in keys(step) for step in steps)
    assert [step.key for step in steps if "fold_across" in keys(step)]


def test_a_bias_seam_of_sheer_cloth_is_neatened_and_not_pressed_open() -> None:
    bias = [step for step in ordered("cape", SHEER) if "join_bias" in keys(step)]
    assert bias
    for step in bias:
        assert "neatens" in step.does
        assert "press_bias" not in keys(step)
        assert step.setting is not None
        assert step.setting.press == "to one side"


@pytest.mark.parametrize("fabric", [SHEER, replace(WOVEN, takes_fusible=False)])
def test_a_wing_collar_is_not_pad_stitched(fabric: Fabric) -> None:
    assert not [step.key for step in ordered("shirt", fabric, collar="wing") if "pad_stitch" in keys(step)]


def test_a_slit_and_its_placket_are_seen_on_the_sleeve() -> None:
    """The drawing showed a whole sleeve and nothing on it."""
    costume = costume_of(draft_garment(bdims()[3], SHEER, "shirt", {"sleeve_opening": "placket"}), SHEER)
    steps = order_of(costume)
    drawn = {step.key: (step, shown) for step, _, shown in sewn_on_paper(costume, steps)}
    slits = [shown for step, shown in drawn.values() if {"slit_under", "slit_placket"} & {*keys(step)}]
    assert len(slits) == 2
    (mark,) = [m for p in costume.garments[0].draft.pieces for m in p.placements if m.what == "slit"]
    for shown in slits:
        assert shown is not None
        rows = [ink for panel in shown.panels for ink in panel.inks if isinstance(ink, InkLine)]
        sewn = [float(np.abs(np.diff(row.points)).sum()) for row in rows if row.stroke == "sewing"]
        assert max(sewn) == pytest.approx(mark.path.length)


def test_each_hand_of_a_strap_is_told_once_where_the_two_sides_differ() -> None:
    straps = [
        one for step in ordered("waistcoat", WOVEN, lopsided=True) for one in step.say if "strap_on" in one.key
    ]
    assert len(straps) == 2
    assert not [one for one in straps if "the other hand's alike" in text(one)]
