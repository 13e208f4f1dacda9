"""How seams, darts and pleats are neatened, pressed and named in the plan. Common practice of the workroom."""

from __future__ import annotations

import pytest

from drafting.body import wearer
from drafting.checks.enclosed import first_row, french, narrowest
from drafting.costume.garment import draft_garment
from drafting.draft.roles import SeamKind
from drafting.making.rules import unsound
from drafting.making.words import plan_sentence as text
from tests.bodies import bdims
from tests.making.orders import WOVEN, costume_of, order_of
from tests.making.test_order_rules import SHEER, worked
from tests.worn.unusual import child


def test_a_french_seam_has_the_allowance_that_two_passes_take() -> None:
    # Common practice: 5/8 in for a French or felled seam, 3/8 to 5/8 in for a plain one.
    for fabric, least in (("sheer", 14.0), ("woven", 9.5)):
        costume, _ = worked("shirt", fabric)
        side = [c.allowances["side"] for c in costume.garments[0].pattern.pieces if c.piece.name == "back"]
        assert least <= side[0] <= 16.0
    asked = draft_garment(bdims()[3], SHEER, "shirt", {"seam_allowance": 12.0})
    assert {cut.allowances.get("side") for cut in asked.pattern.pieces} == {12.0, None}


@pytest.mark.parametrize(
    ("own", "level", "row"), [(15.0, "", "7 mm"), (10.0, "note", "5 mm"), (6.0, "warning", "3 mm")]
)
def test_an_allowance_too_narrow_for_a_french_seam_is_told_and_its_first_row_lies_within(
    own: float, level: str, row: str
) -> None:
    # Common practice: 15 mm, the first row 6 to 7 outside the line, trimmed to 3.
    asked = draft_garment(bdims()[3], SHEER, "shirt", {"seam_allowance": own})
    told = [f for f in asked.findings if f.check == "French seam"]
    assert [f.level for f in told] == ([level] if level else [])
    sewn = [text(one) for step in order_of(costume_of(asked, SHEER)) for one in step.say if one.key == "do.french"]
    assert sewn
    assert all(f"{row} outside the line" in one for one in sewn)


@pytest.mark.parametrize(("height", "bust"), [(350.0, 200.0), (560.0, 330.0)])
def test_a_dolls_french_seam_has_something_to_enclose(height: float, bust: float) -> None:
    """Its raw edges, trimmed to 3 mm, lie within the second row: the first over 4 mm outside it (arithmetic)."""
    doll = wearer({"height": height, "bust_girth": bust, "waist_girth": bust * 0.85, "hip_girth": bust})
    for block in ("skirt", "bishop-top"):
        made = draft_garment(doll, SHEER, block)
        seams = [seam for seam in made.draft.seams if french(made.draft, seam, SHEER)]
        assert seams
        assert all(first_row(narrowest(made.pattern, seam)) > 4.0 for seam in seams)
        assert not [f for f in made.findings if f.check == "French seam"]
    narrow = draft_garment(doll, SHEER, "skirt", {"seam_allowance": 6.0})
    assert [f.level for f in narrow.findings if f.check == "French seam"] == ["warning"]


def test_a_childs_sheer_dress_has_nothing_to_let_out_where_it_is_trimmed() -> None:
    """A French seam is trimmed to 3 mm: what lies beyond cannot be let out (common practice)."""
    for fabric, wide in ((SHEER, 15.0), (WOVEN, 25.0)):
        body = child(1160.0)
        shirt = draft_garment(body, fabric, "shirt")
        back = next(cut for cut in shirt.pattern.pieces if cut.piece.name == "back")
        assert back.allowances["side"] == wide


def test_every_seam_of_a_sheer_cloth_says_itself_how_its_edges_are_neatened() -> None:
    # Common practice: French, or narrow and overcast together; said at each seam, as a page tells a reason once.
    _, steps = worked("shirt", "sheer")
    joined = [step for step in steps if step.verb in ("join", "dart") and step.seams]
    assert len(joined) == 3  # bust dart, shoulder (eased), side (French)
    assert [step.key for step in joined if "neatens" not in step.does] == []


def test_an_inner_dart_is_sewn_with_a_stitch_and_a_needle_and_named_in_words() -> None:
    costume, steps = worked("shirt")
    inner = [step for step in steps if any(one.key == "do.inner_dart" for one in step.say)]
    assert inner
    assert all(step.setting and step.setting.stitch == "301" and step.length > 0 for step in inner)
    told = [text(one) for step in steps for one in step.say]
    names = {dart.name for piece in costume.garments[0].draft.pieces for dart in piece.darts}
    assert names
    assert not [one for one in told for name in names if "_" in name and name in one]


def test_several_inner_darts_are_told_as_several() -> None:
    """A wide back has two or three, sewn in one step: the sentence told of "its middle" and "it"."""
    strong = wearer({"height": 1780, "bust_girth": 1320, "waist_girth": 840, "hip_girth": 1040}, figure="mens")
    costume = costume_of(draft_garment(strong, WOVEN, "shirt"), WOVEN)
    told = [
        one for step in order_of(costume) for one in map(text, step.say) if "waist dart side of the back" in one
    ]
    assert len(told) == 1
    assert " its " not in told[0]
    assert "Press it " not in told[0]


def test_a_pleat_is_pressed_as_it_lies_and_a_yoke_seam_up_into_the_yoke() -> None:
    # Common practice.
    choices = {"back_shaping": "yoke", "back_pleat": "box"}
    costume = costume_of(draft_garment(bdims()[3], WOVEN, "shirt", choices), WOVEN)
    by_seam = {name: step.setting for step in order_of(costume) for name in step.seams}
    found = {seam.kind: by_seam[seam.name] for seam in costume.garments[0].draft.seams if seam.name in by_seam}
    pleat, yoke = found[SeamKind.LAID_PLEAT], found[SeamKind.YOKE]
    assert [text(one.onto) for one in (pleat, yoke) if one and one.onto] == [
        "as it was laid",
        "onto the back yoke",
    ]


@pytest.mark.parametrize("block", ["waistcoat", "sleeveless-top", "tailcoat", "shirt"])
def test_no_seam_of_woven_cloth_with_ease_is_sewn_to_stretch_around(block: str) -> None:
    # Common practice: lockstitch; a width cut in at an armhole without a sleeve is no pull.
    costume = costume_of(draft_garment(bdims()[3], WOVEN, block), WOVEN)
    steps = [step for step in order_of(costume) if step.setting and step.seams]
    assert steps
    assert [step.key for step in steps if step.setting and step.setting.cause in ("around", "moves")] == []
    assert "514" not in {step.setting.stitch for step in steps if step.setting}  # bias tails take a zigzag


@pytest.mark.parametrize(
    ("block", "choices", "hangs"),
    [
        ("skirt", {"skirt_cut": "full circle"}, True),
        ("skirt", {}, False),
        ("cape", {}, True),
        ("cape", {"cape_cut": "full circle"}, True),
        ("peplum-top", {}, False),
    ],
)
def test_a_circle_hangs_a_day_and_is_levelled_before_its_hem(block: str, choices: dict, hangs: bool) -> None:
    # Common practice: circle skirts and capes drop on the bias; a peplum is too short to.
    costume = costume_of(draft_garment(bdims()[3], WOVEN, block, choices), WOVEN)
    steps = order_of(costume)
    level = [i for i, step in enumerate(steps) if "levels" in step.does]
    hem = [i for i, step in enumerate(steps) if step.verb == "hem"]
    assert bool(level) is hangs
    assert not hangs or (steps[level[0]].wait >= 24 and level[0] < hem[0])
    by = {one.key for i in level for one in steps[i].say} & {"do.hang", "do.hang_neck"}
    assert by == ({"do.hang_neck" if block == "cape" else "do.hang"} if hangs else set())
    assert list(unsound(costume, steps)) == []
