"""What was wrong in plans of six more invented costumes, read with scissors in hand.

All that is asked is common practice of the workroom.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.costume.choices import block_named, choose
from drafting.costume.garment import draft_garment, make_garment
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.fabric import Fabric
from drafting.fabric.sorts import Sort
from drafting.ground.scale import body_scale
from drafting.making.model import Step
from drafting.making.rules import unsound
from drafting.making.settings import settings
from drafting.making.settings.inner_darts import inner_dart_key
from drafting.making.settings.stitches import OVEREDGE
from drafting.making.words import plan_sentence
from drafting.reading.given import Origin
from drafting.reading.style_made import EdgingWish
from tests.bodies import bdims
from tests.making.orders import KNIT, WOVEN, costume_of, order_of
from tests.making.test_plans_read import keys, worked
from tests.making.test_workshop_reads import FELT


@pytest.mark.parametrize("collar", ["turn-down", "stand", "wing", "flat"])
def test_a_facing_of_its_own_is_sewn_on_before_the_collar_that_closes_its_neck(collar: str) -> None:
    """The collar's seam catches the facing's neck edge; it was sewn on after the collar, and then told to be
    folded back, as one that is cut on."""
    garment, steps = worked("shirt", collar=collar, facing="separate")
    found = keys(*steps)
    assert not {"fold_back", "fold_back_stand", "fold_across"} & set(found)
    assert found.count("facing_across") == (collar == "flat")
    faced = next(i for i, step in enumerate(steps) if "front edge" in step.seams)
    closed = next(i for i, step in enumerate(steps) if "collar" in step.seams)
    assert faced < closed
    assert ("front-facing", "facing_neck") in steps[faced].edges
    assert "facing_to_neck" in keys(steps[faced])
    assert unsound(costume_of(garment, WOVEN), steps) == ()


def saying(steps: tuple[Step, ...], name: str) -> list[str]:
    return [plan_sentence(one) for step in steps for one in step.say if one.key.partition(".")[2] == name]


@pytest.mark.parametrize("fastening", ["buttons", "hooks", "laced"])
@pytest.mark.parametrize("opening", ["front", "back"])
def test_a_facing_whose_neck_a_strip_closes_is_folded_before_the_strip(opening: str, fastening: str) -> None:
    """The stand's neck was turned in and stitched, the strip sewn on, and the facing then folded over it and sewn
    across the neck that was finished already."""
    garment, steps = worked("close-top", KNIT, opening=opening, fastening=fastening)
    found = keys(*steps)
    folded = "fold_back" if fastening == "laced" else "fold_back_stand"
    assert found.count(folded) == 1
    assert "fold_across" not in found
    assert found.index(folded) < found.index("strip_ends")
    (said,) = saying(steps, folded)
    assert "the strip's seam will catch both" in said
    assert unsound(costume_of(garment, KNIT), steps) == ()


def test_a_collars_facing_is_caught_by_the_collar() -> None:
    _, steps = worked("shirt")
    (said,) = saying(steps, "fold_back")
    assert "the collar's seam will catch both" in said


def test_only_a_strip_that_reaches_a_shoulder_has_its_notch_there() -> None:
    """A binding round a sleeve's hem was to be laid with its notch at the shoulder seam."""
    body, kind = bdims()[3], block_named("close-top")
    chosen = choose(kind, {}, body_scale(body), Origin())
    wish = EdgingWish("binding", (("sleeve", "hem"),), 12.0)
    garment = make_garment(body, KNIT, kind, chosen, name="top", role="shell", style=(wish,))
    steps = order_of(costume_of(garment, KNIT))
    neck, hem = saying(steps, "strip_short")
    assert "neck strip" in neck
    assert "at the shoulder seam" in neck
    assert "sleeve hem binding" in hem
    assert "shoulder" not in hem
    assert "its own seam on a seam of the garment" in hem


def test_a_neck_that_a_dart_parts_is_finished_in_one_way() -> None:
    """Its part beside the centre was turned in, the rest bound with tape: the unlined waistcoat of a bent back."""
    garment, steps = worked("waistcoat", lining="none", back_shaping="neck dart", back_cloth="own")
    necks = {e.name for e in garment.draft["back"].edges if e.role is EdgeRole.NECK}
    assert len(necks) == 2
    finished = [step for step in steps for one in step.say if one.key.endswith((".turned_in", ".taped"))]
    ways = {
        one.key
        for step in finished
        for one in step.say
        if any(name.replace("_", " ") in plan_sentence(one) for name in necks)
    }
    assert ways == {"do.taped"}


@pytest.mark.parametrize("cloth", [FELT, KNIT])
@pytest.mark.parametrize("block", ["cape", "shirt"])
def test_no_raw_edge_is_folded_under_in_a_cloth_that_does_not_fray(block: str, cloth: Fabric) -> None:
    """A thick felt's front edges and slits were turned in twice: three layers of it, and a ridge."""
    _, steps = worked(block, cloth)
    said = [text for name in ("turned_in", "slit") for text in saying(steps, name)]
    assert said
    assert not [text for text in said if "folded under, and" in text or "twice" in text]
    _, woven = worked(block)
    assert [
        text
        for name in ("turned_in", "slit")
        for text in saying(woven, name)
        if "under" in text or "twice" in text
    ]


@pytest.mark.parametrize(
    ("block", "asked", "vented"),
    [
        ("coat", {"vent": "centre"}, True),
        ("coat", {"vent": "sides"}, True),
        ("tailcoat", {}, True),
        ("coat", {"vent": "none"}, False),
        ("coat", {"vent": "sides", "lining": "none"}, False),
        ("spencer", {}, False),
    ],
)
def test_a_lining_is_left_open_at_a_vent_and_felled_round_it(
    block: str, asked: dict[str, str], vented: bool
) -> None:
    """Its seams were told to be sewn as the shell's, and its edges along the vent in no step."""
    garment, steps = worked(block, **asked)
    found = keys(*steps)
    assert found.count("lining_vent") == found.count("line_vent") == vented
    if vented:
        assert found.index("vent") < found.index("line_vent")
    assert unsound(costume_of(garment, WOVEN), steps) == ()


@pytest.mark.parametrize("block", ["waistcoat", "fitted-top", "shirt"])
def test_no_dart_and_no_pleat_is_sewn_with_a_stitch_that_cuts_its_fold_off(block: str) -> None:
    """The waist darts inside the back of a vinyl waistcoat were to be sewn with an overedge."""
    asked = {"back_cloth": "own"} if block == "waistcoat" else {}
    asked |= {"back_shaping": "yoke", "back_pleat": "box"} if block == "shirt" else {}
    garment = draft_garment(bdims()[3], KNIT, block, asked)
    costume = costume_of(garment, KNIT)
    room = replace(costume.costume.workroom, stitches=("301", "304", "514"))
    found = settings(costume, room)
    seams = (s for s in garment.draft.seams if s.kind in (SeamKind.DART, SeamKind.LAID_PLEAT))
    folded = [found[garment.name, seam.name] for seam in seams]
    folded += [found[garment.name, inner_dart_key(p.name)] for p in garment.draft.pieces if p.darts]
    assert folded
    assert not [one.stitch for one in folded if one.stitch in OVEREDGE]
    assert "514" in {one.stitch for one in found.values()}


@pytest.mark.parametrize("sort", ["sheer", "lace"])
def test_the_back_of_an_unlined_sheer_waistcoat_is_neatened_though_it_is_of_another_cloth(sort: Sort) -> None:
    """Its centre back, in the lining's cloth and pressed open, was left raw."""
    cloth = replace(WOVEN, sort=sort, care="dry clean", takes_starch=False)
    garment, steps = worked("waistcoat", cloth, lining="none")
    assert unsound(costume_of(garment, cloth), steps) == ()
    (back,) = [step for step in steps if "centre back" in step.seams]
    assert "neaten_open" in keys(back)
