"""What was wrong in plans of six costumes in twelve cloths that were read from end to end, each once.

All that is asked is common practice of the workroom; lengths and counts are taken from the draft.
"""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import pytest

from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.lays import laid_out
from drafting.costume.workroom import Workroom
from drafting.draft.bias import on_bias
from drafting.draft.by_role import edges_as
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import FACINGS, EdgeRole, SeamKind
from drafting.fabric import Fabric
from drafting.fabric.sorts import Sort
from drafting.ground.errors import DraftError
from drafting.making.cutting_work import cutting_steps
from drafting.making.fit.ease import ease_rows
from drafting.making.model import Step, said
from drafting.making.order import in_waiting_time, sewing_steps
from drafting.making.rules import unsound
from drafting.making.settings import setting_said, settings
from drafting.making.words import text
from drafting.reading.trimming import TrimWish
from tests.bodies import bdims
from tests.making.orders import KNIT, WOVEN, costume_of, order_of, uneven

SHEER = replace(WOVEN, title="Voile, invented", sort="sheer", takes_starch=False)
FELT = replace(WOVEN, title="Melton, invented", sort="felted", takes_starch=False)
PILE = replace(WOVEN, title="Plush, invented", sort="pile", takes_starch=False)


@cache
def worked(block: str, cloth: Fabric = WOVEN, **asked: str) -> tuple[MadeGarment, tuple[Step, ...]]:
    garment = draft_garment(bdims()[3], cloth, block, asked)
    return garment, order_of(costume_of(garment, cloth))


def keys(*steps: Step) -> list[str]:
    return [one.key.partition(".")[2] for step in steps for one in step.say]


@pytest.mark.parametrize("closing", ["left over right", "right over left"])
def test_a_mark_meant_for_one_hand_lies_on_that_hands_piece_alone(closing: str) -> None:
    """A coat of uneven shoulders had the same holes worked in both fronts."""
    garment = draft_garment(uneven(bdims()[3]), WOVEN, "tailcoat", {"closing": closing})
    meant = [(p.hand, mark.hand) for p in garment.draft.pieces for mark in p.placements if p.hand and mark.hand]
    assert meant
    assert all(piece == mark for piece, mark in meant)
    steps = order_of(costume_of(garment, WOVEN))
    (worked_holes,) = [step for step in steps if step.verb == "buttonhole"]
    (even,) = [s for s in worked("tailcoat", closing=closing)[1] if s.verb == "buttonhole"]
    assert worked_holes.count == even.count


def test_each_hands_shoulder_is_measured_on_its_own_half_of_a_whole_front() -> None:
    body = uneven(bdims()[3])
    garment = draft_garment(body, WOVEN, "fitted-top")
    rows = [row for row in ease_rows(garment, body, WOVEN) if row.level == "shoulder_length"]
    assert rows
    assert all(abs(row.drawn - body.hand("shoulder_length", row.side or "left")) < 20 for row in rows)


def test_a_facing_is_sewn_on_in_one_round_before_it_is_turned() -> None:
    garment, steps = worked("sleeveless-top")
    turned = [step for step in steps if "turns" in step.does and "understitch" in keys(step)]
    assert len(turned) == 2  # the neck, and the armholes as a pair
    whole = next(step for step in turned if len(step.seams) > 1)
    at = steps.index(whole)
    first, second = (replace(whole, seams=(name,), key=f"{whole.key} {name}") for name in whole.seams[:2])
    split = (*steps[:at], first, second, *steps[at + 1 :])
    assert any("whose round goes on" in one for one in unsound(costume_of(garment, WOVEN), split))


@pytest.mark.parametrize(("block", "cloth", "drawn"), [("shirt", WOVEN, True), ("close-top", KNIT, False)])
def test_long_stitches_are_taken_out_only_where_they_were_sewn(block: str, cloth: Fabric, drawn: bool) -> None:
    _, steps = worked(block, cloth)
    found = keys(*steps)
    assert ("cap_ease" in found) is drawn
    assert ("long_out" in found) is drawn


@pytest.mark.parametrize("block", ["fitted-top", "trousers", "skirt", "peplum-top"])
@pytest.mark.parametrize("feet", [("all-purpose",), ("all-purpose", "zip")])
def test_a_zip_is_sewn_with_a_zip_foot_or_it_is_said_how_without(block: str, feet: tuple[str, ...]) -> None:
    garment = draft_garment(bdims()[3], WOVEN, block)
    made = costume_of(garment, WOVEN)
    sewn = settings(made, Workroom(feet=feet))
    steps = in_waiting_time(list(sewing_steps(garment, {garment.fabric: WOVEN}, sewn)))
    (zipped,) = [s for s in steps if any(n.startswith("zip:") for n in s.notions)]
    assert zipped.setting is not None
    assert zipped.setting.foot == feet[-1]
    assert any(one.key == "set.no_zip_foot" for one in zipped.setting.why) is (len(feet) == 1)


@pytest.mark.parametrize("zip_kind", ["invisible", "lapped"])
@pytest.mark.parametrize("block", ["peplum-top", "fitted-top"])
def test_a_zip_under_a_yoke_goes_through_both(block: str, zip_kind: str) -> None:
    garment, steps = worked(block, back_shaping="yoke", zip_kind=zip_kind)
    draft = garment.draft
    opened = {
        (piece.name, edge.name): edge
        for piece in draft.pieces
        for edge in edges_as(piece, EdgeRole.CENTRE)
        if edge.kind is EdgeKind.OPENING and not piece.material and piece.role not in FACINGS
    }
    (zipped,) = [n for n in draft.notions if n.what == "zip"]
    along = [edge for (piece, _), edge in opened.items() if not piece.startswith("peplum")]
    assert len(along) == 2
    reach = math.fsum(edge.length for edge in along)
    assert zipped.cut_length is not None
    assert reach - 10 <= zipped.cut_length <= reach + 50  # sold every 5 cm, 8 mm below the neck
    assert {edge.allowance for edge in opened.values()} == {20.0}
    (step,) = [s for s in steps if any(n.startswith("zip:") for n in s.notions)]
    assert {piece for piece, _ in step.edges} == {"back", "back-yoke"}


def test_buttons_under_a_yoke_are_refused_in_words() -> None:
    with pytest.raises(DraftError, match="closed by a zip through both"):
        draft_garment(bdims()[3], WOVEN, "fitted-top", {"back_shaping": "yoke", "fastening": "buttons"})


@pytest.mark.parametrize("opening", ["front", "back", "none"])
@pytest.mark.parametrize("length", ["waist", "hip"])
def test_a_close_top_that_opens_has_something_that_closes_it(opening: str, length: str) -> None:
    garment, steps = worked("close-top", KNIT, opening=opening, length=length)
    draft = garment.draft
    zips = [n for n in draft.notions if n.what == "zip"]
    assert len(zips) == (opening != "none")
    assert not any("nothing to close" in f.message for f in draft.findings)
    assert unsound(costume_of(garment, KNIT), steps) == ()
    if zips:
        assert not any(step.setting and step.setting.cause == "passes" for step in steps)


def test_a_front_whose_flat_collar_ends_at_the_centre_is_folded_once() -> None:
    garment, steps = worked("shirt", collar="flat")
    found = keys(*steps)
    assert found.count("fold_back_stand") == 1
    assert not {"fold_back", "fold_across"} & set(found)
    assert unsound(costume_of(garment, WOVEN), steps) == ()


def test_a_lacing_is_drawn_in_when_every_eyelet_is_set() -> None:
    garment = draft_garment(uneven(bdims()[3]), WOVEN, "sleeveless-top", {"fastening": "laced"})
    steps = order_of(costume_of(garment, WOVEN))
    eyelets = [i for i, step in enumerate(steps) if "eyelets" in keys(step)]
    (lace,) = [i for i, step in enumerate(steps) if "lace" in keys(step)]
    assert len(eyelets) == 2
    assert max(eyelets) < lace


@pytest.mark.parametrize("block", ["breeches", "trousers", "trouser"])
def test_a_crotch_never_counts_as_panels_that_hang_on_the_bias(block: str) -> None:
    for body in bdims()[:20]:
        draft = draft_garment(body, KNIT if block != "trousers" else WOVEN, block).draft
        assert not any(on_bias(draft, seam) for seam in draft.seams if seam.kind is SeamKind.CROTCH)


def test_an_edge_that_hangs_on_nothing_is_not_said_to_drop() -> None:
    """The seam of a collar to a coat's neck was."""
    garment = draft_garment(uneven(bdims()[3]), WOVEN, "tailcoat")
    held = {s.name for s in garment.draft.seams if s.kind in (SeamKind.ATTACHED, SeamKind.MADE_UP)}
    found = settings(costume_of(garment, WOVEN))
    assert held
    assert not [name for name in held if found[garment.name, name].cause == "bias"]


def test_only_a_seam_below_a_fly_begins_there() -> None:
    _, steps = worked("trousers")
    crotch = [key for key in keys(*steps) if key.startswith("join_crotch")]
    assert sorted(crotch) == ["join_crotch", "join_crotch_fly"]


HEMS = {("spencer", FELT): "hem_caught", ("shirt", SHEER): "hem_rolled", ("shirt", WOVEN): "hem_overcast"}


@pytest.mark.parametrize(("asked", "wanted"), HEMS.items())
def test_a_hem_says_what_becomes_of_its_raw_edge(asked: tuple[str, Fabric], wanted: str) -> None:
    _, steps = worked(*asked)
    hems = [step for step in steps if step.verb == "hem"]
    assert hems
    for step in hems:
        assert wanted in keys(step)
        by_hand = step.setting is not None and step.setting.foot == "no"
        assert by_hand is (wanted == "hem_caught")


def test_the_vent_lies_on_the_top_sleeve_and_its_corner_waits_for_the_length() -> None:
    _, steps = worked("spencer")
    vents = {step.pieces[0].rpartition(".")[2]: keys(step) for step in steps if step.verb == "bind"}
    assert "slit_vent" in vents["top-sleeve"]
    assert "slit_underlap" in vents["under-sleeve"]
    tried = max(i for i, step in enumerate(steps) if "fit_sleeves" in keys(step))
    (mitred,) = [i for i, step in enumerate(steps) if "mitre" in keys(step)]
    assert mitred > tried


def test_gathers_are_drawn_up_before_their_seam_is_joined() -> None:
    _, steps = worked("skirt", skirt_cut="tiered")
    tiers = [keys(s) for s in steps if s.verb == "join" and "gather" in keys(s)]
    assert tiers
    assert all(found.index("gather") < found.index("join") for found in tiers)


def test_a_french_seam_is_not_first_laid_right_sides_together() -> None:
    _, steps = worked("shirt", SHEER)
    enclosed = [step for step in steps if "french" in keys(step)]
    assert len(enclosed) >= 2  # sides and sleeves
    for step in enclosed:
        words = " ".join(map(text, step.say))
        assert words.index("wrong sides together") < words.index("right sides together")


def test_less_than_an_hour_is_no_hour() -> None:
    shown = [text(said("time.start", stage="Shaping", hours=hours, days=2)) for hours in (0.1, 0.5, 0.9, 2.2)]
    assert [one.partition("about ")[2].partition(" of work")[0] for one in shown] == [
        "a quarter of an hour",
        "half an hour",
        "1 hour",
        "2 hours",
    ]


@pytest.mark.parametrize("edge", ["lower", "tip"])
@pytest.mark.parametrize("kind", ["braid", "piping"])
def test_a_strap_is_trimmed_before_it_is_made_up(edge: str, kind: str) -> None:
    garment = draft_garment(bdims()[3], WOVEN, "waistcoat")
    garment = replace(garment, trims=(TrimWish("strap", edge, kind, 12.0),))
    costume = costume_of(garment, WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    (trim,) = [i for i, step in enumerate(steps) if step.along]
    (made,) = [i for i, step in enumerate(steps) if f"strap {edge}" in step.seams]
    assert trim < made


def test_what_is_sewn_onto_a_piece_has_its_needle_and_stitch() -> None:
    garment = draft_garment(bdims()[3], WOVEN, "shirt", {"sleeve_opening": "bound"})
    garment = replace(garment, trims=(TrimWish("front", "shoulder", "braid", 10.0),))
    steps = [step for step in order_of(costume_of(garment, WOVEN)) if step.verb == "trim"]
    assert len(steps) == 2  # the slit's strip, the braid
    assert all(step.setting is not None for step in steps)


@pytest.mark.parametrize(("cloth", "wanted"), [(WOVEN, 1), (replace(WOVEN, iron_dots=0), 0)])
def test_a_seam_says_once_how_it_is_pressed(cloth: Fabric, wanted: int) -> None:
    """Words and setting both said it, and a seam that no iron may touch was told twice how it is opened."""
    _, steps = worked("shirt", cloth)
    (side,) = [step for step in steps if "side" in step.seams]
    sentences = [text(one) for one in setting_said(side.setting, pressed="presses" in side.does)]
    assert sum("iron" in one.lower() for one in sentences) == wanted
    assert not any(one.startswith(("Press it", "No iron")) for one in sentences)


@pytest.mark.parametrize(("thickness", "fur"), [(1.1, False), (12.0, True)])
def test_fur_is_cut_from_its_back(thickness: float, fur: bool) -> None:
    garment = draft_garment(bdims()[3], replace(PILE, thickness=thickness), "cape")
    made = costume_of(garment, replace(PILE, thickness=thickness))
    sewn = settings(made)
    assert any(one.key == "set.long_pile" for found in sewn.values() for one in found.why) is fur
    cuts = {step.key: step for step in cutting_steps(laid_out(made, count=20, table=False))}
    cut = cuts[f"{garment.fabric}/cut"]
    assert any(one.key == "cut.long_pile" for one in cut.say) is fur
    told = " ".join(text(one) for one in cut.say)
    assert ("wrong side up" in told) is fur  # its back has to be reached
    assert ("Fold" in told) is not fur
    assert ("draw nothing on the cloth" in told) is not fur


@pytest.mark.parametrize("sort", ["sequinned", "coated", "foiled", "lace", "satin"])
def test_what_is_drawn_on_from_the_wrong_side_does_not_lie_right_side_up(sort: Sort) -> None:
    """Sequins and vinyl were spread right side up, and the next sentence drew on their wrong side."""
    cloth = replace(WOVEN, sort=sort)
    made = costume_of(draft_garment(bdims()[3], cloth, "cape"), cloth)
    for blade in ("shears", "rotary"):
        for cut in cutting_steps(laid_out(made, count=20, table=False), blade):
            told = " ".join(text(one) for one in cut.say)
            behind = "on the wrong side" in told.replace("tape on the wrong side", "")
            assert not (behind and "right side up" in told)
