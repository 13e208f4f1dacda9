"""Wrong girths, darts, curves and caps are found; the demands are those of the blocks' rules."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.checks import check_draft
from drafting.checks.girths import finished_girth
from drafting.draft.draft import Draft, Girth
from drafting.draft.piece import InnerDart
from drafting.geometry import Cubic, Path, line
from drafting.ground.findings import Finding
from tests.checks.figures import ADULT, cubic, darted, sound, with_edge, with_seam


def not_ok(draft: Draft, check: str) -> list[Finding]:
    found = check_draft(draft, ADULT)
    return [f for f in found if f.level != "ok" and f.check == check]


def test_a_half_piece_is_doubled_a_pair_counts_twice_and_a_limb_is_half_of_that() -> None:
    assert finished_girth(sound(), "bust") == 960.0
    assert finished_girth(sound(), "upper_arm") == 340.0
    assert finished_girth(sound(), "hip") is None


def test_a_left_and_a_right_piece_are_added_and_each_side_can_be_asked_for() -> None:
    sleeve = sound()["sleeve"]
    left = replace(sleeve, name="sleeve_left", hand="left", pair=False)
    right = replace(sleeve.mirrored(), name="sleeve_right", hand="right", pair=False)
    draft = Draft((left, right))
    assert finished_girth(draft, "upper_arm", "left") == 340.0
    assert finished_girth(sound(), "upper_arm", "right") == 340.0


@pytest.mark.parametrize(("settled", "found"), [(100.9, 0), (101.1, 1), (98.9, 1), (99.1, 0)])
def test_a_finished_girth_may_be_off_by_one_millimetre(settled: float, found: int) -> None:
    draft = replace(sound(), girths=(Girth("bust", 860, settled, settled),))
    assert len(not_ok(draft, "finished girth")) == found


def test_a_level_that_no_piece_draws_is_an_error() -> None:
    draft = replace(sound(), girths=(Girth("waist", 700, 80, 80),))
    (error,) = not_ok(draft, "finished girth")
    assert "no piece draws this level" in error.message


def test_settled_ease_differs_from_asked_only_with_a_finding() -> None:
    moved = replace(sound(), girths=(Girth("bust", 860, 90, 100),))
    (error,) = not_ok(moved, "settled ease")
    assert "90 mm of ease was asked for, 100 mm was drafted" in error.message
    why = Finding("arm room", "note", "bust", 100, 90, "10 mm more for the arm")
    assert not not_ok(replace(moved, findings=(why,)), "settled ease")
    elsewhere = replace(why, where="waist")
    assert not_ok(replace(moved, findings=(elsewhere,)), "settled ease")


@pytest.mark.parametrize(("longer", "found"), [(0.15, 0), (0.25, 1), (-0.25, 1)])
def test_dart_legs_may_differ_by_a_fifth_of_a_millimetre(longer: float, found: int) -> None:
    assert len(not_ok(Draft((darted(legs=longer),)), "dart legs")) == found


def test_the_legs_of_a_dart_inside_the_outline_are_compared_too() -> None:
    dart = InnerDart("waist_dart", line(50j, 60 + 0j, 100j), line(50j, 40 + 0j, 100j))
    even = replace(sound()["front"], darts=(replace(dart, leg_b=dart.leg_a),))
    odd = replace(sound()["front"], darts=(dart,))
    assert not not_ok(Draft((even,)), "dart legs")
    assert [f.where for f in not_ok(Draft((odd,)), "dart legs")] == ["front.waist_dart"]


@pytest.mark.parametrize(("short", "found"), [(19.9, 1), (20, 0), (35, 0), (35.1, 1)])
def test_a_bust_dart_ends_20_to_35_mm_short_of_the_bust_point(short: float, found: int) -> None:
    assert len(not_ok(Draft((darted(short),)), "dart tip")) == found


def test_on_a_doll_the_tip_stands_nearer() -> None:
    doll = {"bust_girth": 450.0}  # half an adult of 900: 10 to 17.5 mm
    levels = {
        s: {f.level for f in check_draft(Draft((darted(s),)), doll) if f.check == "dart tip"} for s in (12.0, 25.0)
    }
    assert levels == {12.0: {"ok"}, 25.0: {"error"}}


def test_a_bust_dart_that_aims_past_the_bust_point_is_found() -> None:
    assert not not_ok(Draft((darted(),)), "dart aim")
    (error,) = not_ok(Draft((darted(aim=8),)), "dart aim")
    assert error.value == pytest.approx(3.98, abs=0.05)  # atan(8 / 115)


WAVY = {
    "armhole": cubic(240 + 200j, 208 + 200j, 240 + 330j, 200 + 400j),
    "neck": cubic(80 + 400j, 80 + 330j, 55 + 360j, 330j),
}


@pytest.mark.parametrize("name", list(WAVY))
def test_a_wave_in_an_armhole_or_neck_is_found(name: str) -> None:
    edge = replace(sound()["front"][name], path=WAVY[name])
    (error,) = not_ok(with_edge(sound(), "front", edge), "inflections")
    assert error.where == f"front.{name}"
    assert "its runs turn" in error.message


def test_a_cap_half_without_its_s_is_found() -> None:
    sleeve = sound()["sleeve"]
    flat = replace(sleeve["cap_back"], path=Path((Cubic(170 + 0j, 170 + 60j, 90 + 120j, 120j),)))
    crown = replace(sleeve["cap_front"], path=line(120j, -170 + 0j))
    found = not_ok(sound().with_pieces([sleeve.with_edges(flat, crown)]), "inflections")
    assert {f.where for f in found} == {"sleeve.cap_back", "sleeve.cap_front"}


def test_a_cap_that_leaves_its_armhole_below_the_notch_is_found() -> None:
    draft = sound()
    armhole = cubic(240 + 200j, 200 + 200j, 200 + 220j, 200 + 400j)
    draft = with_edge(draft, "front", replace(draft["front"]["armhole"], path=armhole))
    (error,) = not_ok(draft, "cap on armhole")
    assert error.where == "front_armhole"


def test_a_notch_nearer_than_30_mm_to_the_underarm_is_a_warning() -> None:
    seam = next(s for s in sound().seams if s.name == "front_armhole")
    near = replace(seam.notches[0], a=25.0, b=25.0)
    (warning,) = not_ok(with_seam(sound(), "front_armhole", notches=(near,)), "cap notch")
    assert (warning.level, warning.value) == ("warning", pytest.approx(25.0))
