"""The tails: sweep, waist, grain, vent and pleat, and living with them.

Sources stand beside each test: common practice, a published work, or plane geometry.
"""

from __future__ import annotations

import itertools
import math

import pytest

from drafting.blocks import all_blocks
from drafting.costume.choices import choose
from drafting.costume.garment import drafted
from drafting.draft.draft import Draft
from drafting.geometry import Path
from drafting.geometry.area import is_simple
from drafting.ground.errors import DraftError
from drafting.reading.given import Given, Origin
from drafting.shaping.coat.skirt import WAYS
from tests.blocks.coats import coat, lamplighter, panels, said
from tests.published import single, span_mm


@pytest.fixture(scope="module")
def plain() -> Draft:
    return coat(lamplighter())


def outline_of_tail(draft: Draft) -> tuple[Path, Path]:
    """Return the whole waist edge and the whole hem of the tail, from the back, pleat left out."""
    waist = Path.joined(p["waist"].path for p in panels(draft))
    hems = [p["hem"].path.reversed() for p in panels(draft)]
    hems[0] = Path(hems[0].segments[1:])  # the pleat's own hem
    return waist, Path.joined(hems)


# ------------------------------------------------------------------------------------------ tails


@pytest.mark.parametrize("count", range(1, 7))
@pytest.mark.parametrize("flare", [0.0, 60.0, 400.0])
def test_the_sweep_is_exact_and_the_waist_edge_stays(count: int, flare: float) -> None:
    draft = coat(lamplighter(), panels=count, flare=flare, hem_bone="none", stiff_tails="none")
    waist, hem = outline_of_tail(draft)
    assert hem.length == pytest.approx(draft.facts["tail_sweep_plain"] + flare * (count - 1), abs=0.1)
    body = draft["side-body"]["waist"].length + draft["front"]["waist"].length
    assert waist.length == pytest.approx(body, abs=0.1)
    for one, two in itertools.pairwise(panels(draft)):
        assert one["front"].length == pytest.approx(two["back"].length, abs=0.01)


def test_without_flare_the_joined_panels_are_the_plain_tail() -> None:
    one, four = (outline_of_tail(coat(lamplighter(), panels=n, flare=0.0)) for n in (1, 4))
    for whole, parted in zip(one, four, strict=True):
        shares = [i / 40 for i in range(41)]
        apart = [abs(whole.at(whole.length * s) - parted.at(parted.length * s)) for s in shares]
        assert max(apart) < 0.01


def test_each_seam_may_have_a_flare_of_its_own() -> None:
    draft = coat(lamplighter(), panels=4, flare=50.0, flare_2=200.0, flare_3=0.0)
    assert draft.facts["tail_sweep"] - draft.facts["tail_sweep_plain"] == pytest.approx(250, abs=0.1)


def test_the_right_tail_mirrors_the_left_with_its_warp(plain: Draft) -> None:
    for piece in panels(plain):
        other = piece.mirrored()
        seam, twin = piece["waist"].path, other["waist"].path
        to_seam = piece.grain - math.degrees(math.atan2(seam.leave.imag, seam.leave.real))
        arrive = -twin.arrive
        to_twin = math.degrees(math.atan2(arrive.imag, arrive.real)) - other.grain
        assert (to_seam - to_twin) % 180 == pytest.approx(0, abs=1e-6) or abs(
            (to_seam - to_twin) % 180 - 180
        ) < 1e-6
        assert piece.pair


def test_both_angles_of_every_seam_are_told_and_true_bias_where_it_was_chosen(plain: Draft) -> None:
    told = said(plain, "seam bias")
    assert len(told) == 3
    for number in (1, 3):
        assert plain.facts[f"tail_seam_{number}_bias_back"] == pytest.approx(45, abs=1)
        assert plain.facts[f"tail_seam_{number}_bias_front"] == pytest.approx(45, abs=1)
    assert abs(plain.facts["tail_seam_2_bias_back"] - 45) > 1
    assert any("twill" in message for message in said(plain, "mirrored bias"))


def test_the_drawn_warp_makes_the_angles_that_are_told(plain: Draft) -> None:
    # Read off the finished pieces: seam direction against the piece's own grain.
    for number, (one, two) in enumerate(itertools.pairwise(panels(plain)), 1):
        for piece, edge, side in ((one, "front", "back"), (two, "back", "front")):
            way = piece[edge].path
            angle = math.degrees(math.atan2(way.leave.imag, way.leave.real)) - piece.grain
            found = min(angle % 180, 180 - angle % 180)
            assert found == pytest.approx(plain.facts[f"tail_seam_{number}_bias_{side}"], abs=1e-6)


def test_pairs_take_twice_the_panels_and_make_every_flared_seam_true() -> None:
    draft = coat(lamplighter(), panels=4, grain="pairs")
    assert len(panels(draft)) == 6
    for number in (1, 3, 5):
        for side in ("back", "front"):
            assert draft.facts[f"tail_seam_{number}_bias_{side}"] == pytest.approx(45, abs=1)


def test_the_bias_on_every_seam_is_refused() -> None:
    with pytest.raises(DraftError, match="alternate"):
        coat(lamplighter(), grain="everywhere")


def test_from_a_plain_tail_to_a_full_half_circle() -> None:
    # A half circle turns by 180 degrees: the flare of all seams is pi times the ruling's length.
    draft = coat(lamplighter(), tail_length=800.0, panels=6)
    drop = panels(draft)[2]["front"].length
    half = coat(lamplighter(), tail_length=800.0, panels=6, flare=math.pi * drop / 5)
    assert half.facts["tail_turned"] == pytest.approx(180, abs=4)
    assert all(is_simple(p.outline) for p in half.pieces)


@pytest.mark.parametrize("way", WAYS)
def test_every_way_gives_the_same_hem(way: str) -> None:
    draft = coat(lamplighter(), panels=4, flare=60.0, flare_way=way, grain="plumb")
    added = draft.facts["tail_sweep"] - draft.facts["tail_sweep_plain"]
    assert added == pytest.approx(180, abs=0.5)
    shell = [p for p in draft.pieces if p.name.split("-")[0] in ("tail", "godet") and not p.material]
    hems = sum(p["hem"].length for p in shell)
    pleat = panels(draft)[0]["hem"].path.segments[-1].length
    assert hems - pleat == pytest.approx(draft.facts["tail_sweep"], abs=0.1)


def test_a_level_hem_lengthens_every_seam_alike_and_keeps_the_sweep() -> None:
    limp, level = (coat(lamplighter(), tail_hem=hem) for hem in ("seam length", "level"))
    longer = level.facts["tail_longer"]
    assert 1.0 < longer < 1.2
    assert longer == pytest.approx(1 / math.cos(math.radians(level.facts["tail_lean"])), abs=1e-6)
    for one, two in zip(panels(limp)[:-1], panels(level)[:-1], strict=True):
        assert two["front"].length == pytest.approx(longer * one["front"].length, abs=0.05)
    assert level.facts["tail_sweep"] == pytest.approx(limp.facts["tail_sweep"], abs=0.1)


def test_vent_and_pleat_are_drawn_with_their_folds(plain: Draft) -> None:
    back, tail = plain["back"], plain["tail-1"]
    assert {mark.name for mark in back.placements} == {"vent_fold", "pleat_fold", "button_pleat"}
    assert back["pleat"].length == pytest.approx(tail["pleat"].length, abs=0.01)
    fold = next(m.path for m in back.placements if m.name == "pleat_fold")
    other = next(m.path for m in tail.placements if m.name == "pleat_fold")
    assert fold.length == pytest.approx(other.length, abs=0.01)


# --------------------------------------------------------------------------------- living in it


def test_tails_longer_than_the_wearer_is_tall_are_warned_about() -> None:
    # Arithmetic: nape to floor 143 cm, tail length 150: 7 cm below the floor.
    body = lamplighter(nape_height=1430.0)
    draft = coat(body, tail_length=1500.0)
    (message,) = said(draft, "hem clearance")
    assert "70 mm below the floor" in message
    assert "hollow of the knee" in message
    assert next(f.level for f in draft.findings if f.check == "hem clearance") == "warning"


def test_tails_end_at_the_hollow_of_the_knee_unless_asked_otherwise() -> None:
    # From memory: nape to knee hollow = (0.863 - 0.285) H at H = 178, within 5 cm.
    draft = coat(lamplighter(height=1780.0))
    assert draft.facts["tail_length"] == pytest.approx(single("tail-length") * 10, abs=50)
    assert "hollow of the knee" in said(draft, "hem clearance")[0]


def test_a_hem_that_nearly_touches_the_floor_is_warned_about() -> None:
    # Common practice: 2-4 cm above the floor.
    low, high = span_mm("hem-clearance")
    assert low <= 25 <= high
    draft = coat(lamplighter(nape_height=1430.0), tail_length=1420.0)
    assert "only 10 mm above the floor" in said(draft, "hem clearance")[0]


def test_sweep_seat_and_doorway_are_told_with_numbers(plain: Draft) -> None:
    assert f"{2 * (plain.facts['tail_sweep'] - plain.facts['tail_sweep_plain']):.0f}" in said(plain, "sweep")[0]
    assert said(plain, "seat")
    wide = coat(lamplighter(), flare=250.0)
    assert "800" in said(wide, "doorway")[0]
    assert not said(plain, "doorway")


def test_bias_tails_hang_before_they_are_hemmed_and_plain_ones_need_not() -> None:
    # Common practice: hang at least 24 h, then level the hem; not for straight-grain pieces.
    assert "24 hours" in said(coat(lamplighter()), "hang before hemming")[0]
    assert not said(coat(lamplighter(), panels=1, flare=0.0), "hang before hemming")


def test_let_out_allowances_are_advised_as_costume_shops_do(plain: Draft) -> None:
    low, high = span_mm("let-out")
    assert f"{low:.0f} mm to {high:.0f} mm" in said(plain, "letting out")[0]


# ------------------------------------------------------------------------------------ where they start


@pytest.mark.parametrize("asked", [0.30, 0.16])
def test_tails_that_start_nearer_the_front_than_asked_are_told_in_full(asked: float) -> None:
    # The drawn bottom edge, from the centre front to where it is parted, is what the sentence must say (geometry).
    draft = coat(lamplighter(), cutaway=asked)
    parted, half = draft["front"]["bottom"].path, draft.facts["waist_half"]
    drawn = max(parted.start.real, parted.end.real)
    (told_of,) = (finding for finding in draft.findings if finding.check == "cutaway")
    assert (told_of.value, told_of.wanted) == pytest.approx((drawn, asked * half), abs=0.5)
    for words in (f"`cutaway` {asked:.2f}", f"{drawn:.0f} mm", f"{asked * half:.0f} mm", "`bust_ease`"):
        assert words in told_of.message


def test_tails_that_start_as_asked_are_not_told_of() -> None:
    draft = coat(lamplighter(), cutaway=0.05)
    parted = draft["front"]["bottom"].path
    assert max(parted.start.real, parted.end.real) == pytest.approx(0.05 * draft.facts["waist_half"], abs=0.01)
    assert said(draft, "cutaway") == []


def test_the_cutaway_that_the_sentence_names_is_drafted_as_asked() -> None:
    (told_of,) = said(coat(lamplighter(), cutaway=0.30), "cutaway")
    most = float(told_of.split("up to ")[1].split(" ")[0])
    assert said(coat(lamplighter(), cutaway=most), "cutaway") == []
    assert said(coat(lamplighter(), cutaway=most + 0.02), "cutaway")


def test_nothing_is_said_of_where_tails_start_on_a_coat_without_them() -> None:
    given = {"cutaway": Given(0.30)}
    spencer = all_blocks()["spencer"]
    draft = drafted(lamplighter(), None, spencer, choose(spencer, given, 1.0, Origin()))
    assert said(draft, "cutaway") == []
