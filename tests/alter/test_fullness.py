"""Gathers, puffs, elastic and slash-and-spread against handbook arithmetic and over bodies."""

from __future__ import annotations

import cmath
import math

import pytest

from drafting.alter.fullness import Wish, fuller
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.draft import Draft
from drafting.draft.walk import walk
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.shaping.flare.elastic import elastic_loop
from drafting.shaping.flare.fullness import (
    bulk_said,
    flat_length,
    gathered,
    gathers_thickness,
    ratio_of_percentage,
)
from tests.blocks.figures import chart_woman
from tests.bodies import bdims
from tests.drawn_bodies import drawn, far

JERSEY = Fabric("jersey", weave="knit", stretch_across=0.5, stretch_along=0.3, recovery=0.95, eases="none")


def shirt(**choices: object) -> MadeGarment:
    return draft_garment(chart_woman(), None, "shirt", choices)


def sound(made: MadeGarment) -> None:
    assert [f.message for f in made.findings if f.level == "error"] == []


@pytest.mark.parametrize(("ratio", "flat"), [(1.5, 15), (2.0, 20), (3.0, 30)])
def test_ten_inches_gathered(ratio: float, flat: float) -> None:
    # Common practice: a ruffle-gauge tutorial cuts 15, 20 and 30 in for 10 in.
    assert flat_length(254.0, ratio) == pytest.approx(flat * 25.4)


def test_a_theatres_hundred_percent_is_two_to_one() -> None:
    assert ratio_of_percentage(100) == 2.0


def test_thick_cloth_gathered_three_to_one_is_warned_of_and_chiffon_is_not() -> None:
    # Common practice: wool of 2 mm stacks to 6 mm, chiffon of 0.2 mm is no matter.
    assert gathers_thickness(3.0, 2.0) == 6.0
    (said,) = bulk_said("band", 3.0, 2.0)
    assert said.level == "warning"
    assert "1.5" in said.message
    assert "pleats" in said.message
    assert bulk_said("band", 3.0, 0.2) == ()


def test_a_gathered_edge_is_quartered() -> None:
    # Common practice: 80 gathered to 32 is marked at 20, 40, 60.
    draft = Draft((shirt().draft["sleeve"],))
    length = draft.edge(("sleeve", "hem")).length
    pulled = gathered(draft, ("sleeve", "hem"), sewn=length / 2.5)
    edge = pulled.edge(("sleeve", "hem"))
    assert edge.sewn_length == pytest.approx(length / 2.5)
    marks = [n.at / length for n in edge.notches if n.name.startswith("quarter")]
    assert marks == pytest.approx([0.25, 0.5, 0.75])
    with pytest.raises(DraftError, match="cannot be gathered"):
        gathered(draft, ("sleeve", "hem"), sewn=2 * length)


def test_elastic_arithmetic_of_waist_and_ankle() -> None:
    # Common practice (tutorials on elastic): 72 x 0.85 + 2.5 = 63.7; a loop of 61.2
    # opens to 91.8 at 1.5 and to 110.2 at 1.8; ankle loop 20 at 1.5 opens to 30 < 33.
    waist = elastic_loop(720, 980, 1.8, factor=0.85)
    assert (waist.cut, waist.loop) == pytest.approx((637, 612))
    assert waist.passes == pytest.approx(1101.6)
    with pytest.raises(DraftError, match=r"918 mm.*654"):  # 653 x 1.5 = 979.5 does not pass 980
        elastic_loop(720, 980, 1.5, fixed=612)
    with pytest.raises(DraftError, match=r"220 mm.*1\.65"):
        elastic_loop(240, 330, 1.5, fixed=200)
    assert elastic_loop(750, 0, 2.0, factor=0.90).cut == pytest.approx(700)


def test_a_full_sleeve_is_gathered_onto_its_cuff() -> None:
    made = shirt(hem_fullness=2.0, overhang=40)
    sound(made)
    hem, cuff = made.draft["sleeve"]["hem"], made.draft["cuff"]["sleeve"]
    assert hem.length == pytest.approx(2 * hem.sewn_length, abs=0.1)
    assert hem.sewn_length == pytest.approx(cuff.length, abs=0.5)
    plain = shirt().draft["sleeve"]["underarm_front"].length
    assert made.draft["sleeve"]["underarm_front"].length > plain


@pytest.mark.parametrize(("width", "height"), [(60, 0), (120, 40), (200, 90), (0, 50)])
def test_a_puffed_cap_is_added_between_the_notches_only(width: float, height: float) -> None:
    puffed = draft_garment(chart_woman(), JERSEY, "puffed-top", {"puff_width": width, "puff_height": height})
    plain = draft_garment(chart_woman(), JERSEY, "puffed-top", {"puff_width": 0, "puff_height": 0})
    sound(puffed)
    for name in ("front armhole", "back armhole"):
        seam = next(s for s in puffed.draft.seams if s.name == name)
        old = next(s for s in plain.draft.seams if s.name == name)
        found, before = walk(puffed.draft, seam), walk(plain.draft, old)
        assert found.difference == pytest.approx(0, abs=0.5)
        assert found.b_sewn == pytest.approx(before.b_sewn)  # the armhole does not change
        below = -1 if name == "front armhole" else 0  # the span from the notch to the underarm
        assert found.spans[below] == pytest.approx(before.spans[below], abs=1e-6)
        assert found.a_length > before.a_length


def test_puffs_and_breeches_hold_on_many_bodies() -> None:
    for body in (*drawn(6), *far()[::7], *bdims()[::25]):
        sound(draft_garment(body, JERSEY, "puffed-top"))
        sound(draft_garment(body, JERSEY, "breeches"))


def test_a_gathered_hem_must_pass_the_hand_flat() -> None:
    # Common practice: flat cloth at least hand girth + 1 cm, whatever the elastic opens to.
    narrow = draft_garment(
        chart_woman().changed(hand_girth=380), JERSEY, "puffed-top", {"puff_width": 0, "puff_height": 0}
    )
    said = [f.message for f in narrow.findings if f.check == "elastic" and f.level == "warning"]
    assert any("390 mm or more of cloth" in text for text in said)
    plain = draft_garment(chart_woman(), JERSEY, "puffed-top")
    assert not any("more of cloth" in f.message for f in plain.findings)


def test_a_puffed_caps_gathers_are_marked_half_way_on_both_sides() -> None:
    # Common practice: marks on the cap face marks on the armhole, evenly.
    draft = draft_garment(chart_woman(), JERSEY, "puffed-top").draft
    for name in ("front armhole", "back armhole"):
        seam = next(s for s in draft.seams if s.name == name)
        found = walk(draft, seam)
        (half,) = (n for n in seam.notches if n.name.endswith("half"))
        notch = next(n for n in seam.notches if not n.name.endswith("half"))
        above = (half.a - notch.a, found.a_length - half.a) if half.a > notch.a else (half.a, notch.a - half.a)
        below = (half.b - notch.b, found.b_length - half.b) if half.b > notch.b else (half.b, notch.b - half.b)
        assert above[0] == pytest.approx(above[1], abs=0.01)
        assert below[0] == pytest.approx(below[1], abs=0.01)


def test_elastic_much_shorter_than_a_limb_is_a_caution_for_the_blood() -> None:
    # Common practice (limbs from memory): limbs 3-8 %, wrist and ankle 5-12 % shorter; past 15 % it warns.
    def warned(factor: float) -> list[str]:
        made = draft_garment(chart_woman(), JERSEY, "puffed-top", {"elastic_factor": factor})
        return [f.message for f in made.findings if f.level == "warning" and "blood" in f.message]

    assert warned(0.94) == []
    assert warned(0.86) == []
    (said,) = warned(0.80)
    assert "20 % shorter" in said


@pytest.mark.parametrize(
    ("block", "choices", "ref", "kept"),
    [
        ("shirt", {}, ("front", "neck"), "facing"),
        ("shirt", {}, ("front", "hem"), "facing"),
        ("fitted-top", {}, ("back", "neck"), "centre"),
        ("fitted-top", {}, ("back", "hem"), "centre"),
        ("skirt", {}, ("back", "hem"), "centre"),
        ("skirt", {}, ("front", "hem"), "centre"),
    ],
)
def test_a_front_edge_or_a_centre_stays_on_the_warp_when_a_piece_is_opened(
    block: str, choices: dict[str, object], ref: tuple[str, str], kept: str
) -> None:
    """Common practice: the centre lies on the warp, or it stretches. It turned by up to 8 degrees."""
    draft = draft_garment(chart_woman(), None, block, choices).draft
    opened = fuller(draft, Wish(ref, ratio=1.4, gather=True))
    before, after = (d[ref[0]][kept].path for d in (draft, opened))
    assert opened.edge(ref).length > 1.3 * draft.edge(ref).length
    assert opened[ref[0]].grain == draft[ref[0]].grain
    turned = cmath.phase((after.end - after.start) / (before.end - before.start))
    assert math.degrees(abs(turned)) < 0.01
