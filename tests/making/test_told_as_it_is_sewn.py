"""What the plan says of buttons, hems, bearers, linings and centre seams is so in the draft.

Counts and lengths are taken from the drawn pieces; all that is asked is common practice of the workroom.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.roles import SeamKind
from drafting.making.model import Step
from drafting.making.order.parts import edges_told
from drafting.making.rules import unsound
from drafting.making.stages.details import barred
from drafting.making.stages.picture import Face, InkLine
from drafting.making.stages.shapes import goods_of
from drafting.making.thread import rows_of
from drafting.making.words import text
from drafting.reading.pockets import PocketWish
from drafting.reading.style_made import EdgingWish
from tests.alter.test_edge_pocket import IN_SEAM, SLANT
from tests.alter.test_hung_lining import hem_line
from tests.alter.test_pocket import made
from tests.alter.test_style_added import made as styled
from tests.blocks.figures import chart_woman
from tests.bodies import bdims
from tests.making.orders import KNIT, WOVEN, costume_of, order_of, uneven
from tests.making.test_plans_read import SHEER, keys


def worked(block: str, cloth: object = WOVEN, **asked: object) -> tuple[MadeGarment, tuple[Step, ...]]:
    fabric = KNIT if cloth is KNIT else SHEER if cloth is SHEER else WOVEN
    garment = draft_garment(chart_woman(), fabric, block, asked)
    return garment, order_of(costume_of(garment, fabric))


@pytest.mark.parametrize(
    ("block", "asked", "shown"),
    [
        ("trousers", {"fall_front": True}, {}),
        ("knee-breeches", {"fall_front": True}, {}),
        ("spats", {}, {}),
        ("shirt", {}, {}),
        ("tailcoat", {}, {"front": 6 - 2, "back": 2}),  # two holes in one front
    ],
)
def test_only_a_button_that_no_hole_answers_is_for_show(
    block: str, asked: dict[str, object], shown: dict[str, int]
) -> None:
    _, steps = worked(block, **asked)
    said = [dict(one.facts) for step in steps for one in step.say if one.key == "do.buttons_shown"]
    assert {one["piece"]: one["n"] for one in said} == shown


def test_the_bearers_of_a_fall_are_hemmed_before_the_band_and_both_openings_barred() -> None:
    garment, steps = worked("trousers", fall_front=True)
    costume = costume_of(garment, WOVEN)
    hemmed = next(i for i, s in enumerate(steps) if ("bearer", "lower") in s.edges)
    band = next(i for i, s in enumerate(steps) if "waistband" in s.seams)
    assert hemmed < band
    assert ("bearer", "centre") in steps[hemmed].edges
    (bar,) = [s for s in steps if s.verb == "bar"]
    assert dict(next(one for one in bar.say if one.key == "do.bars_fall").facts)["n"] == 2
    (panel,) = barred(goods_of(garment), [("bearer", "fall_side")]).panels
    drawn = next(ink.points for ink in panel.inks if isinstance(ink, InkLine) and ink.of == "bearer.fall_side")
    heights = np.concatenate([ink.ring.imag for ink in panel.inks if isinstance(ink, Face)])
    assert drawn.imag.mean() < heights.min() + 0.3 * np.ptp(heights)  # a bar at its waist would close the fall
    late = (*steps[:hemmed], *steps[hemmed + 1 :], steps[hemmed])
    assert any("after the band" in wrong for wrong in unsound(costume, late))
    assert any("not barred" in wrong for wrong in unsound(costume, tuple(s for s in steps if s is not bar)))


@pytest.mark.parametrize(
    ("block", "asked"),
    [
        ("skirt", {"skirt_cut": "straight", "lining_shorter": 25.0}),
        ("skirt", {"skirt_cut": "straight", "lining_shorter": 35.0}),
        ("skirt", {"skirt_cut": "half circle"}),
        ("cape", {}),
        ("tailcoat", {}),
    ],
)
def test_a_hem_is_left_raw_only_where_the_lining_reaches_ten_mm_below_its_edge(
    block: str, asked: dict[str, object]
) -> None:
    garment, steps = worked(block, **{"lining": "whole", **asked})
    cut = {one.piece.name: one for one in garment.pattern.pieces}
    draft = garment.draft
    found = 0
    for step in (s for s in steps if s.verb == "hem"):
        for piece, edge in step.edges:
            (lining,) = [p for p in draft.pieces if p.material == "lining" and piece in p.lines]
            shorter = hem_line(draft[piece]).distance(hem_line(lining))
            depth = cut[piece].allowances[edge] - draft[piece][edge].drops
            hidden = depth - shorter > 10.0
            assert ("hem_caught" in keys(step)) is hidden
            assert step.setting is not None
            by_hand = hidden or block == "tailcoat"  # a coat's hem shows no row of the machine: common practice
            assert (step.setting.stitch == "200") is by_hand
            found += 1
    assert found


def test_the_words_of_a_knits_lined_hem_say_no_more_than_its_stitch_does() -> None:
    _, steps = worked("skirt", KNIT, skirt_cut="straight", lining="whole")
    (hem,) = [s for s in steps if s.verb == "hem"]
    assert "hem_caught" not in keys(hem)
    assert hem.setting is not None
    assert hem.setting.stitch != "200"


def test_a_vent_is_mitred_with_a_hem_only_where_there_is_one() -> None:
    for asked, wanted in (({}, "slit_vent"), ({"turned_cuff": 110.0}, "slit_vent_seam")):
        _, steps = worked("tailcoat", **asked)
        (vent,) = [s for s in steps if s.verb == "bind" and s.pieces[0].endswith("top-sleeve")]
        assert keys(vent) == [wanted]
        assert ("mitre" in keys(*steps)) is (wanted == "slit_vent")


@pytest.mark.parametrize(("block", "asked"), [("skirt", {"skirt_cut": "half circle"}), ("cape", {})])
def test_a_lining_on_the_bias_hangs_before_it_is_hemmed_and_is_no_bodys(
    block: str, asked: dict[str, object]
) -> None:
    garment, steps = worked(block, lining="whole", **asked)
    linings = {f"{garment.name}.{p.name}" for p in garment.draft.pieces if p.material == "lining"}
    hung = [i for i, s in enumerate(steps) if s.wait >= 24.0 and linings <= set(s.pieces)]
    (felled,) = [i for i, s in enumerate(steps) if s.verb == "fell"]
    assert len(hung) == 1
    assert hung[0] < felled
    said = [text(one) for step in steps for one in step.say]
    assert not any("body lining" in one or "tails' lining" in one for one in said)
    assert {"line_hung", "line_loose"} & set(keys(*steps)) == {"line_hung"}
    left = tuple(s for i, s in enumerate(steps) if i != hung[0])
    assert any("never hangs" in wrong for wrong in unsound(costume_of(garment, WOVEN), left))


CENTRES = [
    ("skirt", {"skirt_cut": "straight"}, {"centre back": "join_centre_between"}),  # a zip above, a slit below
    ("fitted-top", {}, {"centre back": "join_centre_below"}),
    ("tailcoat", {}, {"centre back": "join_centre"}),
    ("overskirt", {}, {"centre back panel": "join_centre_below", "centre front panel": "join_centre_whole"}),
]


@pytest.mark.parametrize(("block", "asked", "wanted"), CENTRES)
def test_a_centre_seam_is_sewn_from_where_its_opening_ends(
    block: str, asked: dict[str, object], wanted: dict[str, str]
) -> None:
    _, steps = worked(block, **asked)
    told = {s.seams[0]: key for s in steps if s.seams for key in keys(s) if key.startswith("join_centre")}
    assert told == wanted


def test_the_thread_of_a_narrow_hem_and_of_an_overcast_one_is_counted() -> None:
    garment, steps = worked("shirt", SHEER)
    room = costume_of(garment, SHEER).costume.workroom
    hem = next(s for s in steps if "hem_rolled" in keys(s))
    assert math.fsum(row.length for row in rows_of(hem, garment, room)) == pytest.approx(2 * hem.length)
    garment, steps = worked("shirt")
    hem = next(s for s in steps if "hem_overcast" in keys(s))
    assert [row.length for row in rows_of(hem, garment, room)] == pytest.approx([hem.length] * 2)


def test_a_narrow_hem_that_a_hand_catches_tells_of_no_row_of_the_machine() -> None:
    """A coat's hem is caught by hand (common practice); a shirt's is stitched."""
    for block, wanted in (("tailcoat", "hem_rolled_by_hand"), ("shirt", "hem_rolled")):
        _, steps = worked(block, SHEER)
        told = {key for s in steps if s.verb == "hem" for key in keys(s) if key.startswith("hem_rolled")}
        assert told == {wanted}


@pytest.mark.parametrize(
    ("block", "wish", "key"), [("trousers", SLANT, "slant_back"), ("skirt", IN_SEAM, "seam_pocket")]
)
def test_the_thread_round_a_pockets_bag_is_counted(block: str, wish: PocketWish, key: str) -> None:
    garment = made(block, wish)
    costume = costume_of(garment, WOVEN)
    step = next(s for s in order_of(costume) if key in keys(s))
    *_, overcast = rows_of(step, garment, costume.costume.workroom)
    bag = next(s for s in garment.draft.seams if s.name == "pocket 1 bag")
    around = 2 * sum(garment.draft.edge(ref).length for ref in bag.a)
    sides = 2 * 2 * garment.draft["front"]["side"].length if key == "seam_pocket" else 0.0  # both allowances
    assert overcast.length == pytest.approx(around + sides, rel=0.01)


@pytest.mark.parametrize(
    ("asked", "wanted"),
    [
        ({"breasted": "single", "coat_buttons": 1.0}, "for the button on the right."),
        ({"breasted": "single", "coat_buttons": 3.0}, "for the 3 buttons on the right."),
        (
            {"breasted": "double", "lapel_style": "none", "coat_buttons": 5.0},
            "for the 5 buttons on the right; those on the left are for show; fasten",
        ),
        ({"lapel_style": "none", "coat_buttons": 0.0}, "closes at its neck alone"),
        ({"coat_buttons": 0.0}, "worn open"),
    ],
)
def test_a_coat_says_how_many_buttons_close_it(asked: dict[str, object], wanted: str) -> None:
    garment, _ = worked("coat", **asked)
    (said,) = [f.message for f in garment.draft.findings if f.check == "closing" and "The coat" in f.message]
    assert wanted in said


def test_a_capes_shoulder_that_is_a_dart_has_its_stay_tape_bought() -> None:
    garment = draft_garment(bdims()[247], KNIT, "cape", {})
    costume = costume_of(garment, KNIT)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    (stayed,) = [s for s in steps if s.verb == "dart" and s.setting is not None and s.setting.stayed]
    (ref,) = next(s.a for s in garment.draft.seams if s.name in stayed.seams)
    (tape,) = [one.amount for one in stayed.takes if one.what == "tape"]
    assert tape == pytest.approx(2 * garment.draft.edge(ref).length)


def test_the_hand_is_told_where_the_work_is_one_hands_alone() -> None:
    draft = draft_garment(uneven(bdims()[3]), WOVEN, "shirt", {}).draft
    left, right = ("front-left", "hem"), ("front-right", "hem")
    assert edges_told(draft, [left, right]) == "front hem"
    assert edges_told(draft, [right]) == "front-right hem"
    assert edges_told(draft, [left, ("back", "hem_left")]) == "front-left hem, back hem_left"
    assert edges_told(draft, [left, right, ("back", "hem_left"), ("back", "hem_right")]) == "front hem, back hem"


def test_trousers_with_one_hem_faced_turn_up_the_other() -> None:
    faced = styled("trousers", EdgingWish("hem facing", (("front", "hem"), ("back", "hem")), 60.0, hand="left"))
    (hem,) = [step for step in order_of(costume_of(faced, WOVEN)) if step.verb == "hem"]
    assert {piece for piece, _ in hem.edges} == {"front-right", "back-right"}
    assert dict(hem.say[0].facts)["names"] == "front-right hem, back-right hem"


@pytest.mark.parametrize("block", ["mutton-top", "fitted-top", "coat"])
def test_darts_and_panels_are_named_before_the_shoulders_that_run_across_them(block: str) -> None:
    """Common practice: what is flat first, and no seam across one that is still open."""
    asked = {} if block == "coat" else {"bust_dart": "shoulder-princess"}
    garment, steps = worked(block, **asked)
    (basted,) = [one for step in steps for one in step.say if one.key == "do.baste_body"]
    names = str(dict(basted.facts)["names"]).split(", ")
    kinds = {seam.name: seam.kind for seam in garment.draft.seams}
    early = [
        n for n, name in enumerate(names) if kinds.get(name, SeamKind.DART) in (SeamKind.DART, SeamKind.PANEL)
    ]
    late = [n for n, name in enumerate(names) if kinds.get(name) in (SeamKind.SHOULDER, SeamKind.SIDE)]
    assert early
    assert late
    assert max(early) < min(late)


@pytest.mark.parametrize("block", ["shirt", "tailcoat"])
def test_nothing_is_carried_over_to_the_other_side_of_an_uneven_wearer(block: str) -> None:
    # A note of one side belongs to that side's own draft; what was pinned on an even wearer is carried over
    # (common practice), as both her sides are one draft.
    even, leaning = bdims()[3], uneven(bdims()[3])
    for body, wanted in ((even, "do.fit_write"), (leaning, "do.fit_write_apart")):
        garment = draft_garment(body, WOVEN, block, {})
        assert garment.draft.uneven == (wanted == "do.fit_write_apart")
        steps = order_of(costume_of(garment, WOVEN))
        assert {f"do.{key}" for key in keys(*steps) if "fit_write" in key} == {wanted}


@pytest.mark.parametrize(
    ("block", "asked", "heads"), [("mutton-top", {}, 2), ("fitted-top", {}, 0), ("shirt", {}, 0)]
)
def test_a_crown_gathered_full_is_held_up_by_net(block: str, asked: dict[str, object], heads: int) -> None:
    """Common practice: the fullness of a leg-of-mutton falls in without a head of net or wadding in its crown."""
    garment, steps = worked(block, **asked)
    held = [step for step in steps if "do.full_crowns" in [one.key for one in step.say]]
    assert sum(step.count for step in held) == heads
    bought = [one for step in held for one in step.takes if one.what == "sleeve head"]
    assert sum(one.amount for one in bought) == pytest.approx(300.0 * heads)
    for step in held:
        set_in = {seam.name for seam in garment.draft.seams if seam.kind is SeamKind.SET_IN}
        assert set(step.pieces) <= {f"{garment.name}.{piece.name}" for piece in garment.draft.pieces}
        assert max(one.n for one in steps if set_in & set(one.seams)) < step.n
