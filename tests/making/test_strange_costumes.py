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
from drafting.making.stitch_rows import rows_of
from drafting.making.words import text
from drafting.reading.style_made import EdgingWish
from tests.alter.test_style_added import made as styled
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


def test_what_is_glued_down_in_leather_is_not_sewn_and_buys_no_thread() -> None:
    garment = draft_garment(bdims()[3], LEATHER, "coat", {})
    costume = costume_of(garment, LEATHER)
    (vent,) = [s for s in order_of(costume) if any("slit_vent" in one.key for one in s.say)]
    assert vent.setting is None
    assert rows_of(vent, costume.garments[0], costume.costume.workroom) == ()
    assert [one.what for one in vent.takes] == ["glue"]


@pytest.mark.parametrize(
    ("block", "asked"),
    [
        ("tailcoat", {}),
        ("skirt", {}),
        ("knee-breeches", {"fall_front": True}),
        ("sleeveless-top", {"fastening": "laced"}),
    ],
)
def test_leather_has_no_close_stitches_and_is_neither_slip_stitched_nor_felled(
    block: str, asked: dict[str, object]
) -> None:
    garment = draft_garment(bdims()[3], LEATHER, block, asked)
    costume = costume_of(garment, LEATHER)
    done = 0
    for step in order_of(costume):
        told = " ".join(text(one) for one in step.say)
        assert not [word for word in ("close zigzag", "slip-stitch", "fell them") if word in told], step.key
        rows = rows_of(step, costume.garments[0], costume.costume.workroom)
        if step.verb == "bar":  # a box of 10 by 5 mm is 30 mm round
            assert [(row.stitch, row.length) for row in rows] == [("301", 3 * step.length)]
            done += 1
        if "inside" in keys(step):
            assert not [row for row in rows if row.stitch == "200"]
            done += 1
        done += any("facing_ends" in key for key in keys(step))
    assert done


def test_a_pile_that_takes_no_steam_is_neither_pressed_nor_steamed_at_the_end() -> None:
    last = {
        care: ordered("skirt", replace(WOVEN, sort="pile", care=care))[-1]
        for care in ("do not steam", "dry clean only")
    }
    assert keys(last["do not steam"])[0] == "last_brushed"
    assert "neither pressed nor steamed" in text(last["do not steam"].say[0])
    assert last["do not steam"].heat is None
    assert keys(last["dry clean only"])[0] == "last_pile"


def test_a_facing_of_felted_cloth_has_no_neatened_edge() -> None:
    felt = replace(WOVEN, sort="felted")
    costume = costume_of(
        styled("skirt", EdgingWish("hem facing", (("front", "hem"), ("back", "hem")), 50.0)), felt
    )
    (caught,) = [one for s in order_of(costume) for one in s.say if one.key.endswith(".facing_caught")]
    assert "neatened" not in text(caught)


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
