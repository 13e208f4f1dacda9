"""What a head of workshop found on reading plans: told once, sewn where it shows, in before it is covered.

All that is asked is common practice of the workroom.
"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from drafting.alter.shirt_yoke import takes_two
from drafting.costume.garment import draft_garment
from drafting.draft.openings import hands
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.fabric import Fabric
from drafting.fabric.sorts import Sort
from drafting.making import planned
from drafting.making.rules import unsound
from drafting.making.seam_lengths import seam_lengths
from drafting.making.settings import settings
from drafting.making.stitch_rows import rows_of
from drafting.making.trim_lengths import laid_trims
from drafting.making.words import plan_sentence
from drafting.reading.trimming import TrimWish
from tests.bodies import bdims
from tests.making.figures import laid
from tests.making.invented_costumes import invented
from tests.making.orders import KNIT, WOVEN, costume_of, order_of, uneven

OILSKIN = replace(
    WOVEN, title="Oilskin, invented", sort="coated", fibre="cotton, coated", care="wipe clean, do not iron"
)
FELT = replace(WOVEN, title="Felt, invented", sort="felted", fibre="wool", takes_starch=False)


@pytest.mark.parametrize("block", ["shirt", "coat", "waistcoat"])
def test_what_is_done_alike_on_both_hands_is_told_once(block: str) -> None:
    """Fusing, neatening, taping and the collar of a wearer whose shoulders differ: no two steps say the same."""
    costume = costume_of(draft_garment(uneven(bdims()[0]), WOVEN, block, {}), WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    quiet = [s for s in steps if s.verb in ("fuse", "stay") or s.say[0].key in ONCE]
    bare = [re.sub(r"\b(left|right)\b", "", plan_sentence(step.say[0])) for step in quiet]
    assert len(bare) > 1
    assert len(set(bare)) == len(bare)
    fused = [s for s in steps if s.verb == "fuse" and len(s.pieces) == 4]
    assert fused
    assert all("Each hand has its own" in " ".join(map(plan_sentence, s.say)) for s in fused)


ONCE = ("do.neaten", "do.fold_back", "do.attach_stand", "do.under_to_neck", "do.top_to_facing", "do.stand_to_neck")


@pytest.mark.parametrize(
    ("asked", "wanted"),
    [
        ({"breasted": "double", "coat_buttons": 3.0}, "2 buttonholes on the wearer's left, for the 2 lowest"),
        ({"breasted": "single", "coat_buttons": 1.0}, "one buttonhole on the wearer's left, for the button"),
    ],
)
def test_who_buys_a_coats_buttons_reads_which_of_them_have_holes(asked: dict[str, object], wanted: str) -> None:
    garment = draft_garment(bdims()[0], WOVEN, "coat", asked)
    (note,) = [n.note for n in garment.draft.notions if n.what == "button" and n.piece == "front"]
    assert wanted in note


@pytest.mark.parametrize("fabric", [OILSKIN, FELT])
@pytest.mark.parametrize("block", ["coat", "shirt", "trousers"])
def test_no_thread_is_counted_for_neatening_that_the_words_do_not_ask(block: str, fabric: Fabric) -> None:
    """Coated and felted cloth does not ravel: nothing is overcast, so no thread is bought for it."""
    garment = draft_garment(bdims()[0], fabric, block, {})
    costume = costume_of(garment, fabric)
    room = costume.costume.workroom
    for step in order_of(costume):
        words = " ".join(map(plan_sentence, step.say))
        asked = "vercast" in words or "Neaten the" in words
        cast = [row for row in rows_of(step, garment, room) if row.stitch == "504" or row.width == 3.0]
        assert bool(cast) <= asked, words


def test_a_trim_on_a_lapel_lies_on_the_facing_that_is_seen() -> None:
    """Rolled over, a lapel shows its facing; what lies on the front there is hidden. Below the break it shows."""
    made = invented("impresario")
    (step,) = [s for s in planned(made).steps if s.verb == "trim" and s.garment == "coat"]
    (piece, edge) = step.along[0]
    assert made["coat"].draft[piece].role.value == "facing"
    assert made["coat"].draft[piece][edge].role is EdgeRole.LAPEL
    assert "would lie hidden" in " ".join(map(plan_sentence, step.say))
    coat = made["coat"]
    below = replace(coat, trims=(TrimWish("front", "edge", "braid", 10.0),))
    costume = costume_of(below, WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    assert [s.along for s in steps if s.verb == "trim"] == [(("front", "edge"),)]


def test_a_woven_shirts_yoke_is_cut_twice_and_encloses_its_seams() -> None:
    """Common practice of the shirtmaker: two layers in woven cloth; a knit's has one."""
    asked: dict[str, object] = {"back_shaping": "yoke"}
    body = bdims()[3]
    woven, knit = (draft_garment(body, cloth, "shirt", asked) for cloth in (WOVEN, KNIT))
    single = draft_garment(body, WOVEN, "shirt", {**asked, "yoke_layers": "single"})
    assert [g.draft["back-yoke"].count for g in (woven, knit, single)] == [2, 1, 1]
    costume = costume_of(woven, WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    told = {one.key: step for step in steps for one in step.say if "yoke" in one.key}
    assert set(told) == {"do.join_yoke", "do.turn_yoke", "do.join_yoke_front", "do.turn_yoke_front"}
    rows = [row for step in told.values() for row in rows_of(step, woven, costume.costume.workroom)]
    assert {row.stitch for row in rows} == {"301"}  # raw edges lie between: nothing is overcast
    assert unsound(costume_of(single, WOVEN), order_of(costume_of(single, WOVEN))) == ()


@pytest.mark.parametrize("sort", ["sequinned", "pile", "sheer", "coated", "lace", "napped", "satin", "felted"])
def test_a_yoke_of_cloth_with_a_surface_is_single_unless_asked(sort: Sort) -> None:
    """Common practice: only plain woven cloth that is not thick is laid double on the shoulders by itself."""
    cloth = replace(WOVEN, sort=sort)
    for layers, wanted in (({}, 1), ({"yoke_layers": "double"}, 2)):
        garment = draft_garment(bdims()[3], cloth, "shirt", {"back_shaping": "yoke", **layers})
        assert garment.draft["back-yoke"].count == wanted


@pytest.mark.parametrize(
    ("thickness", "mass", "double"),
    [(0.6, 400.0, True), (0.61, 150.0, False), (None, 120.0, True), (None, 400.0, False), (None, None, True)],
)
def test_a_yoke_of_thick_cloth_is_single(thickness: float | None, mass: float | None, double: bool) -> None:
    """Common practice: two layers of a coating and their seams are too bulky; 400 g/m2 is no shirting."""
    assert takes_two(replace(WOVEN, thickness=thickness, mass=mass)) is double


def test_an_uneven_wearers_double_yoke_is_sewn_in_one_row_and_told_once() -> None:
    """Back and yoke are undivided over the middle, so nobody can sew one half of the row between them alone."""
    garment = draft_garment(uneven(bdims()[3]), WOVEN, "shirt", {"back_shaping": "yoke"})
    costume = costume_of(garment, WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    (row,) = [s for s in steps if any(one.key == "do.join_yoke" for one in s.say)]
    assert row.seams == ("back yoke left", "back yoke right")
    edges = [garment.draft["back"][f"yoke_{hand}"].length for hand in ("left", "right")]
    assert row.length == pytest.approx(sum(edges))
    assert "in one row: the back yoke seam" in plan_sentence(row.say[0])
    (said,) = [f for f in garment.findings if "yoke is double" in f.sentence]
    assert (said.where, said.hand) == ("back-yoke", "")


def test_the_hidden_layer_of_a_yoke_is_neither_trimmed_nor_turned_in() -> None:
    """Plain arithmetic: one outer yoke on the fold takes its edge twice, and 40 mm for the ends of the braid."""
    shirt = draft_garment(bdims()[3], WOVEN, "shirt", {"back_shaping": "yoke"})
    yoke = shirt.draft["back-yoke"]
    (laid,) = laid_trims(replace(shirt, trims=(TrimWish("back-yoke", "yoke", "braid", 10.0),)))
    assert (laid.count, laid.total) == (1, pytest.approx(2 * yoke["yoke"].length + 40.0))
    assert hands(yoke) == 2
    assert hands(replace(yoke, copies=1)) == 2


def test_the_seams_of_a_double_yoke_go_up_into_it_and_lie_inside() -> None:
    """Common practice: both allowances are pressed into the yoke; ease is pinned in before the row is sewn."""
    shirt = draft_garment(bdims()[0], WOVEN, "shirt", {"back_shaping": "yoke"})
    costume = costume_of(shirt, WOVEN)
    told = settings(costume)
    for name in ("back yoke", "shoulder"):
        one = told[shirt.name, name]
        assert one.press == "to one side"
        assert one.onto is not None
        assert dict(one.onto.facts)["piece"] == "back-yoke"
    (step,) = [s for s in order_of(costume) if s.seams == ("shoulder",)]
    assert [one.key for one in step.say] == ["do.ease", "do.join_yoke_front", "do.turn_yoke_front"]


@pytest.mark.parametrize(("sort", "extra"), [("sheer", {"do.trim_yoke"}), ("sequinned", set()), ("plain", set())])
def test_a_double_yoke_asked_for_takes_its_cloth(sort: Sort, extra: set[str]) -> None:
    """Sheer: 15 mm for French seams is too wide between two layers. Sequins: what lies inside is not bound."""
    cloth = replace(WOVEN, sort=sort)
    asked: dict[str, object] = {"back_shaping": "yoke", "yoke_layers": "double"}
    costume = costume_of(draft_garment(bdims()[3], cloth, "shirt", asked), cloth)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    for step in steps:
        keys = {one.key for one in step.say}
        if any("join_yoke" in key for key in keys):
            assert {key for key in keys if "trim" in key} == extra
            assert step.setting is not None
            assert not any("bound" in one.key for one in step.setting.why)


def test_a_zip_in_a_shaped_centre_has_its_edges_tape_and_thread() -> None:
    """Both edges of the opening of a skirt in gores, not turned in a second time once the zip is in."""
    steps = [s for s in planned(laid("ferrywoman")).steps if s.garment == "skirt"]
    (zipped,) = [s for s in steps if any(n.startswith("zip") for n in s.notions)]
    draft = laid("ferrywoman")["skirt"].draft
    opening = 2 * sum(draft.edge(ref).length for ref in zipped.edges)
    assert opening == pytest.approx(2 * 180.0, abs=1.0)  # the zip's notch lies 180 mm below the waist
    assert zipped.length == pytest.approx(opening)
    assert sum(one.amount for one in zipped.takes if one.what == "tape") >= opening
    below = next(s for s in steps if any(name.startswith("centre back") for name in s.seams))
    assert "notch where the opening ends" in plan_sentence(below.say[0])
    others = [ref for s in steps if s is not zipped for ref in s.edges]
    assert not set(zipped.edges) & set(others)


def test_no_overedge_sews_a_dart_or_the_inside_of_a_woven_collar_and_cuff() -> None:
    """It would cut the fold of a dart off, and bulk in a collar's turned edge (common practice)."""
    for name in ("toll-keeper", "ferrywoman"):
        made, sewn = laid(name), planned(laid(name)).settings
        for garment in made.garments:
            fabric = made.costume.fabrics[garment.fabric]
            for seam in garment.draft.seams:
                stitch = sewn[garment.name, seam.name].stitch
                inside = seam.kind is SeamKind.MADE_UP and fabric.weave == "woven"
                assert not (stitch in ("504", "514") and (inside or seam.kind is SeamKind.DART)), seam.name


@pytest.mark.parametrize("by", [8.0, 14.0, 20.0])
def test_a_steep_shoulder_is_no_panel_that_hangs(by: float) -> None:
    """The garment hangs from it: it is neither starched nor hung for a day, and both hands are sewn as body."""
    garment = draft_garment(uneven(bdims()[0], by), WOVEN, "coat", {})
    costume = costume_of(garment, WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    assert not [s for s in steps if s.verb == "hang" or any(one.key == "do.starch" for one in s.say)]
    (fused,) = [s for s in steps if s.makes.startswith("coat: front stiffened")]
    assert len(fused.pieces) == 4


@pytest.mark.parametrize(("block", "name"), [("skirt", "tier 1 to tier 2"), ("knee-breeches", "knee band")])
def test_what_is_gathered_is_told_whole_where_it_runs_over_the_middle_else_by_hand(block: str, name: str) -> None:
    """Drawn over held is the ratio told: 1.5 times the whole tier above; 1.2 times one knee band."""
    asked: dict[str, object] = {"skirt_cut": "tiered"} if block == "skirt" else {}
    costume = costume_of(draft_garment(bdims()[3], WOVEN, block, asked), WOVEN)
    (step,) = [s for s in order_of(costume) if s.seams == (name,)]
    facts = dict(next(one for one in step.say if one.key.startswith("do.gather")).facts)
    held = seam_lengths(costume.garments[0])[name] / (1 if block == "skirt" else 2)
    assert facts["drawn"] == pytest.approx(facts["ratio"] * held, rel=1e-6)
