"""The trouser in cloth that stretches, and the elastic that holds it up."""

from __future__ import annotations

import itertools

import pytest

from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.ground.lengths import in_unit
from drafting.shaping.flare.elastic import elastic_loop
from drafting.shaping.stretch import settle_stretch
from tests.blocks.trousers import KNIT, LEGGINGS, draft, errors, legs, length, width
from tests.published import single

WOVEN = Fabric("drill, invented")


def hip(fabric: Fabric, share: float, girth: float = 1000.0) -> float:
    """Return the finished hip, mm, of leggings in this cloth."""
    made = draft(legs(hip_girth=girth), fabric, **{**LEGGINGS, "stretch_share": share})
    return 2 * (width(made["front"], "hip") + width(made["back"], "hip"))


def test_a_share_of_the_stretch_makes_the_girth_of_the_formula() -> None:
    # arithmetic: body 96, stretch 50 %, share 0.4 -> 80 cm.
    assert hip(KNIT, 0.4, 960.0) == pytest.approx(10 * single("stretch-share-girth"), abs=0.01)


@pytest.mark.parametrize("stretch", [0.18, 0.25, 0.50, 1.00])
def test_no_girth_is_ever_cut_smaller_than_the_cloth_can_reach(stretch: float) -> None:
    # Armstrong, Patternmaking for Fashion Design (from memory): four classes of knit;
    # arithmetic: at most 1 - 1 / (1 + s) smaller.
    cloth = Fabric("knit, invented", weave="knit", stretch_across=stretch, stretch_along=0.1)
    body = legs()
    made = draft(body, cloth, stretch_share=0.6, leg="tapered")
    assert errors(body, made) == []
    for girth in made.girths:
        if girth.level in ("waist", "hip", "thigh", "knee"):
            assert (girth.body + girth.settled_ease) * (1 + stretch) >= girth.body


@pytest.mark.parametrize("stretch", [0.25, 0.5])
def test_what_is_pulled_on_is_drawn_past_half_of_its_stretch_and_not_past_two_thirds(stretch: float) -> None:
    # Common practice: stitches and knit last where a third of the stretch is left at the pulling on.
    cloth = Fabric("knit, invented", weave="knit", stretch_across=stretch, stretch_along=0.1)
    assert 1 + stretch / 2 <= settle_stretch(cloth, 0.0).pull <= 1 + stretch * 2 / 3


def test_more_stretch_never_makes_a_larger_girth() -> None:
    # Logic, over 20 steps of stretch.
    found = [
        hip(Fabric("knit", weave="knit", stretch_across=0.2 + 0.04 * k, stretch_along=0.1), 0.4) for k in range(20)
    ]
    assert all(b <= a for a, b in itertools.pairwise(found))


def test_leggings_smaller_than_the_body_are_refused_in_a_cloth_that_does_not_stretch() -> None:
    # Arithmetic: hip 96, ease -10 %: 86.4 must stretch 11.1 %, the cloth gives 0.
    with pytest.raises(DraftError, match=r"11\.1 %") as caught:
        draft(legs(hip_girth=960.0), WOVEN, hip_ease=-96.0)
    assert "woven" in caught.value.turn
    with pytest.raises(DraftError, match="stretch"):
        draft(legs(), WOVEN, stretch_share=0.3)
    with pytest.raises(DraftError, match="no cloth"):
        draft(legs(), None, stretch_share=0.3)


def test_pieces_are_turned_where_the_cloth_stretches_more_along_and_it_is_said() -> None:
    # Common practice: greatest stretch goes around; swapped numbers turn the pieces by 90 degrees.
    across = Fabric("knit", weave="knit", stretch_across=0.60, stretch_along=0.15)
    along = Fabric("knit", weave="knit", stretch_across=0.15, stretch_along=0.60)
    straight, turned = (draft(legs(), cloth, **LEGGINGS) for cloth in (across, along))
    for made, grain in ((straight, 90), (turned, 0)):
        for piece in made.pieces:
            assert piece.grain % 180 == grain
            assert piece.stretch % 180 == 0
    assert any(f.check == "stretch direction" for f in turned.findings)
    assert not any(f.check == "stretch direction" for f in straight.findings)


def test_poor_recovery_and_too_little_stretch_left_for_sitting_are_warned() -> None:
    # Common practice: recovery under 90 %. Kirk and Ibrahim 1966, from memory: the seat's skin takes
    # 25-30 % sitting down.
    lazy = Fabric("lazy", weave="knit", stretch_across=0.5, stretch_along=0.2, recovery=0.8)
    firm = Fabric("firm", weave="knit", stretch_across=0.25, stretch_along=0.1, recovery=0.95)
    warned = {f.check for f in draft(legs(), lazy, **LEGGINGS).findings if f.level == "warning"}
    assert "recovery" in warned
    warned = {f.check for f in draft(legs(), firm, **LEGGINGS).findings if f.level == "warning"}
    assert "stretch left" in warned
    calm = {f.check for f in draft(legs(), KNIT, **LEGGINGS).findings if f.level == "warning"}
    assert not calm & {"recovery", "stretch left"}


def test_a_casing_passes_the_hip_and_the_pieces_have_no_fly() -> None:
    made = draft(legs(), KNIT, **LEGGINGS)
    waist = 2 * (length(made["front"], "waist") + length(made["back"], "waist"))
    assert waist * 1.5 >= 1000
    assert not any("fly" in piece for piece in made.pieces)
    (elastic,) = made.notions
    assert elastic.cut_length == pytest.approx(made.facts["waist_elastic_cut"])


def test_the_waist_elastic_names_its_width_its_lap_and_its_quarters() -> None:
    # Common practice: a lap of 25 mm; quarters spread evenly. 25 mm wide at adult scale.
    (elastic,) = draft(legs(), KNIT, **LEGGINGS).notions
    assert elastic.size == pytest.approx(25, abs=1)
    note = in_unit(elastic.note, "mm")
    assert "25 mm wide" in note
    assert "lapped 25 mm" in note
    assert "quarter to quarter" in note


def test_elastic_is_cut_with_its_overlap() -> None:
    # Arithmetic: waist 72, factor 0.85, overlap 2.5: loop 61.2, cut 63.7.
    found = elastic_loop(720, 700, 1.8, factor=0.85, overlap=25)
    assert (found.loop, found.cut) == pytest.approx((612, 637))


def test_a_loop_that_cannot_open_over_the_hip_is_refused_and_a_softer_one_taken() -> None:
    # Arithmetic: loop 61.2, hip 98: opens to 91.8 at 1.5, refused; 110.2 at 1.8.
    with pytest.raises(DraftError, match="918 mm"):
        elastic_loop(720, 980, 1.5, fixed=612)
    assert elastic_loop(720, 980, 1.8, fixed=612).passes == pytest.approx(1101.6)
    with pytest.raises(DraftError, match="elastic"):
        draft(legs(waist_girth=620.0), None, waist_finish="casing", elastic_opens=1.5)


def test_ankle_elastic_that_does_not_pass_the_heel_names_the_least_loop_and_the_softer_one() -> None:
    # Arithmetic: ankle 24, heel 33, loop 20, opens 1.5: least loop 22.0, or 1.65 times.
    with pytest.raises(DraftError) as caught:
        elastic_loop(240, 330, 1.5, fixed=200, where="ankle")
    assert "220 mm" in in_unit(caught.value.reach, "mm")
    assert "1.65" in caught.value.reach
    raised = elastic_loop(240, 330, 1.5)
    assert raised.loop == pytest.approx(220.8)  # 0.92 of the girth: passes already
    assert elastic_loop(240, 360, 1.5, slit=True).loop == pytest.approx(0.98 * 240)
    assert elastic_loop(240, 360, 1.5, slit=True).slit > 0


@pytest.mark.parametrize("hem", [640.0, 760.0])
def test_a_hem_asked_for_after_another_is_drafted_as_if_it_were_the_first(hem: float) -> None:
    # what a body's last draft left remembered may only save time: an equal body is drafted anew
    body, choices = legs(), {**LEGGINGS, "leg": "flared"}
    draft(body, KNIT, **choices, hem_width=700.0)
    after, anew = (draft(b, KNIT, **choices, hem_width=hem) for b in (body, legs()))
    assert after.facts == anew.facts
    assert [p.outline for p in after.pieces] == [p.outline for p in anew.pieces]
    assert after.facts["hem_width"] == pytest.approx(hem, abs=1e-6)
