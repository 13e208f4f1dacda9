"""What a cutter found on reading three plans from the first line to the last; common practice of the workroom."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.body import wearer
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.fabric import Fabric
from drafting.fabric.sorts import Sort
from drafting.fitting.measures import amount_said
from drafting.fitting.note import AmountAs, AtEdge, Note, NoteKind, NoteSide, NoteState, Verb
from drafting.ground.lengths import in_unit
from drafting.making.cautions import cautions
from drafting.making.keeping import keeping
from drafting.making.order.closings import FUSED_STRIP
from drafting.making.order.holes import holes
from drafting.making.settings import settings
from drafting.making.settings.pressing import pressed_towards
from drafting.making.settings.stitches import CAUGHT
from drafting.making.treating import treating_steps
from drafting.making.words import plan_sentence
from drafting.reading.pockets import PocketWish
from tests.alter.test_pocket import made
from tests.blocks.figures import full_bust
from tests.bodies import bdims
from tests.making.orders import WOVEN, costume_of, order_of, uneven


def garment(block: str, fabric: Fabric = WOVEN, **asked: object) -> MadeGarment:
    return draft_garment(bdims()[0], fabric, block, asked)


def told(one: MadeGarment, fabric: Fabric = WOVEN) -> list[str]:
    steps = order_of(costume_of(one, fabric))
    return [" ".join(map(plan_sentence, step.say)) for step in steps]


@pytest.mark.parametrize(
    ("care", "wanted"), [("dry clean", "steam it a second time"), ("wash at 40", "wash it twice")]
)
def test_what_is_never_washed_is_not_washed_twice_for_what_it_shrinks(care: str, wanted: str) -> None:
    """A wool that loses 4 % in the steam was told to be washed, which would felt it."""
    fabric = replace(WOVEN, fibre="wool", care=care, shrinkage_along=0.04, takes_starch=False)
    again = next(
        step
        for step in treating_steps(costume_of(garment("cape", fabric), fabric))
        if step.verb == "measure-again"
    )
    said = " ".join(map(plan_sentence, again.say))
    assert wanted in said
    assert ("wash" in said) == (care != "dry clean")


def test_basting_is_out_before_the_starch_goes_in() -> None:
    """Starched in, a thread tears the cloth as it is drawn, and its line stays ironed in."""
    said = told(garment("shirt"))
    starched = next(i for i, one in enumerate(said) if "Starch the shirt" in one)
    assert "Take out every basting thread first" in said[starched]
    assert not any("basting thread, press" in one or "Baste" in one for one in said[starched:])


def test_a_buttonhole_is_told_as_long_as_it_is_drawn() -> None:
    """12.7 mm and 2.5 mm of thickness are 15.2 mm (the button's own arithmetic), 5/8 in to the next sixteenth:
    rounded to 15 mm first they were 9/16 in, and the button did not pass."""
    one = garment("mutton-top", opening="front", fastening="buttons", button_diameter=12.7, button_thickness=2.5)
    assert [hole.length for hole in holes(one.draft)] == [pytest.approx(15.2)]


def test_a_shirts_shaped_hem_is_turned_up_by_one_depth_across_its_front() -> None:
    """The stand and the facing carry the front's own line on; at 12 and 20 mm their raw edges did not meet."""
    (front,) = [piece for piece in garment("shirt", tails="shaped").draft.pieces if piece.name == "front"]
    hems = {edge.role: edge.allowance for edge in front.edges if edge.kind is EdgeKind.HEM}
    assert set(hems) == {EdgeRole.HEM, EdgeRole.STAND_HEM, EdgeRole.FACING_HEM}
    assert len(set(hems.values())) == 1


def test_a_flat_collars_seam_is_pressed_into_it_as_its_edge_is_turned_in_over_it() -> None:
    """Pressed down onto the back, its allowances lay outside the edge that is to cover them."""
    draft = garment("shirt", collar="flat").draft
    (seam,) = [one for one in draft.seams if one.name == "collar"]
    assert draft[pressed_towards(draft, seam)].role is PieceRole.COLLAR


def test_a_clasp_is_told_by_both_of_its_halves() -> None:
    """Of uneven shoulders it was sewn to the left alone."""
    one = draft_garment(uneven(bdims()[0]), WOVEN, "cape", {"cape_neck": "hood", "cape_closes": "clasp"})
    (said,) = [said for said in told(one) if "clasp" in said]
    assert "a half on each front edge" in said
    assert "left" not in said


def test_a_coat_cut_along_the_warp_is_not_said_to_be_cut_longer_for_the_bias() -> None:
    """One-way cloth hangs by its warp: nothing is cut longer, and no step hangs it."""
    fabric = replace(WOVEN, one_way=True)
    one = garment("tailcoat", fabric)
    said = " ".join(finding.said("cm") for finding in one.findings)
    hung = [step for step in order_of(costume_of(one, fabric)) if step.verb == "hang"]
    assert ("hang at least 24 hours" in said) == bool(hung) == ("is cut" in said and "hang_length" in said)


def test_spats_are_tried_and_kept_as_what_stands_on_a_shoe() -> None:
    """One was told to lift the arms in them, and to hang them on a broad hanger."""
    costume = costume_of(one := garment("spats"), WOVEN)
    last = told(one)[-1]
    assert "climb a step" in last
    assert "lift the arms" not in last
    kept = " ".join(map(plan_sentence, keeping(costume)))
    assert "hanger" not in kept
    assert "lying flat" in kept


@pytest.mark.parametrize(("height", "prongs"), [(1280.0, False), (1760.0, True)])
def test_no_buckle_with_prongs_is_bought_for_a_child(height: float, prongs: bool) -> None:
    """The plan says that they scratch a child (common practice), and the list offered them."""
    chest, waist, hip = (640.0, 580.0, 680.0) if height < 1400 else (960.0, 820.0, 980.0)
    body = wearer({"height": height, "bust_girth": chest, "waist_girth": waist, "hip_girth": hip})
    draft = draft_garment(body, WOVEN, "waistcoat", {}).draft
    (buckle,) = [notion for notion in draft.notions if notion.what == "buckle"]
    assert buckle.kind.startswith("slide buckle")
    assert ("prongs" in buckle.kind) == prongs


def test_the_strip_behind_a_zip_is_bought_as_wide_as_it_is_told() -> None:
    """20 mm were 3/4 in in the work and 13/16 in on the list."""
    (step,) = [
        step for step in order_of(costume_of(garment("skirt"), WOVEN)) if "zip" in step.makes or step.verb == "zip"
    ]
    said = " ".join(plan_sentence(one, "in") for one in step.say)
    assert "3/4 in wide" in said
    assert in_unit(FUSED_STRIP, "in").endswith("3/4 in wide")


@pytest.mark.parametrize("dots", [1, 3])
def test_a_strip_fused_behind_a_zip_suits_the_clothes_heat_and_warns_of_fumes(dots: int) -> None:
    """Common practice: air the room when fusing; two dots, which most fusibles want, spoil a cloth of one."""
    cloth = replace(WOVEN, iron_dots=dots)
    (step,) = [
        step for step in order_of(costume_of(garment("skirt"), cloth)) if "zip" in step.makes or step.verb == "zip"
    ]
    assert any("fumes" in plan_sentence(one) for one in step.cautions)
    (strip,) = [one for one in step.takes if one.kind.startswith(FUSED_STRIP)]
    assert ("bonds at one dot" in strip.kind) == (dots == 1)


def test_before_a_glue_is_tried_its_fumes_and_its_fire_are_told() -> None:
    """Common practice : only fusing was cautioned against, and coated cloth is glued."""
    coated = replace(WOVEN, sort="coated", fibre="cotton, PVC coating")
    costume = costume_of(garment("trousers", coated), coated)
    (tried,) = [step for step in treating_steps(costume) if step.verb == "try"]
    said = " ".join(map(plan_sentence, tried.cautions))
    assert "fumes" in said
    assert "flame" in said
    told_first = " ".join(map(plan_sentence, cautions(costume)))
    assert "PVC can melt" in told_first


def test_a_pockets_bags_are_not_pressed_open() -> None:
    """They are sewn together round their outline and neatened together (common practice)."""
    wish = PocketWish("front", "side", "slant", width=45.0, height=170.0, inside=0.0)
    one = made("trousers", wish)
    (bags,) = [seam for seam in one.draft.seams if seam.kind is SeamKind.BAG]
    assert settings(costume_of(one, WOVEN))[one.name, bags.name].press == "not"


@pytest.mark.parametrize(("depth", "told_of"), [(240.0, True), (285.0, False)])
def test_a_bust_line_moved_far_says_what_to_do(depth: float, told_of: bool) -> None:
    """A dart ends 20 to 30 mm short of the bust point (common practice): 40 mm past it shapes nothing."""
    body = full_bust(1000.0, bust_point_depth=depth, front_waist_length=465.0)
    said = " ".join(f.said("cm") for f in draft_garment(body, WOVEN, "fitted-top", {}).findings)
    assert ("measure bust point depth and front waist length again, or take less armhole_drop" in said) == told_of


@pytest.mark.parametrize(
    ("block", "sort", "by_hand"),
    [("tailcoat", "plain", True), ("mutton-top", "satin", True), ("mutton-top", "plain", False)],
)
def test_a_hem_of_a_coat_or_of_satin_is_caught_by_hand(block: str, sort: Sort, by_hand: bool) -> None:
    """A machine's row along it shows, and draws a satin in (common practice)."""
    fabric = replace(WOVEN, sort=sort, takes_starch=False, one_way=True)
    costume = costume_of(garment(block, fabric), fabric)
    hems = [one for one in order_of(costume) if "do.hem" in {said.key for said in one.say}]
    assert hems
    assert {one.setting.stitch == CAUGHT for one in hems if one.setting} == {by_hand}


@pytest.mark.parametrize(
    ("side", "wanted"), [(NoteSide.LEFT, "on the left"), (NoteSide.BOTH, "shortened by 0.6 cm")]
)
def test_a_note_on_one_hand_says_which(side: NoteSide, wanted: str) -> None:
    """Where two hands differ, an edge without its hand is either (common practice)."""
    where, state = AtEdge("back", "armhole"), NoteState.SEEN
    note = Note(
        garment="waistcoat",
        side=side,
        where=where,
        verb=Verb.SHORTEN,
        amount=6.0,
        counted=AmountAs.TOTAL,
        kind=NoteKind.STYLE,
        state=state,
    )
    assert in_unit(amount_said(note), "cm").endswith(wanted)
