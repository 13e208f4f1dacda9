"""Arms raised: the form turns its arms and nothing else, sleeves go along as they are, hems go up with them."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.costume.make import Made
from drafting.costume.wearing.raised import arms_raised
from drafting.costume.wearing.worn import Worn, worn
from drafting.output.worn import worn_record, worn_text
from drafting.worn.form import RAISING, STANDING, arms_held, wearers_form
from drafting.worn.nouns import Limb
from drafting.worn.placed.lifted import lifted
from drafting.worn.stands.risen import Reached, Risen, risen_told
from drafting.worn.stands.words import worded
from tests.blocks.figures import chart_woman
from tests.making.orders import WOVEN, costume_of, uneven

RAISED = RAISING[-1]
TURNED = math.radians(RAISED.out - STANDING.out)


def costume(block: str, **choices: object) -> Made:
    return costume_of(draft_garment(chart_woman(), WOVEN, block, choices), WOVEN)


@cache
def both(block: str, drop: float = 0.0) -> tuple[Worn, Worn]:
    """Return a garment with the arms a little out, and raised."""
    asked = {"armhole_drop": drop} if drop else {}
    hanging = worn(costume(block, **asked), mesh=40.0, treat=False)
    return hanging, arms_raised(hanging)


def rise(block: str, drop: float = 0.0) -> float:
    """Return how far the middle of the hem goes up, mm, read from the meshes."""
    hanging, raised = (one.garments[0].rest for one in both(block, drop))
    assert hanging.settled
    assert raised.settled
    mesh = hanging.mesh
    trunk = {piece.name for piece in mesh.pieces if piece.limb is not Limb.ARM}
    hem = np.unique(
        np.concatenate([v for (piece, edge), v in mesh.edges.items() if edge == "hem" and piece in trunk])
    )
    return float((raised.points[hem] - hanging.points[hem])[:, 2].mean())


@pytest.mark.parametrize("body", [chart_woman(), uneven(chart_woman())], ids=["even", "uneven"])
def test_the_arms_lie_level_and_are_as_long_and_nothing_else_has_moved(body: Body) -> None:
    standing = wearers_form(body)
    raised = arms_held(standing, RAISED)
    for hand in ("left", "right"):
        before, after = standing.arm_of(hand), raised.arm_of(hand)
        assert np.linalg.norm(np.diff(after, axis=0), axis=1) == pytest.approx(
            np.linalg.norm(np.diff(before, axis=0), axis=1), abs=0.01
        )
        assert abs(after[2, 2] - after[0, 2]) < 0.045 * (after[2, 0] - after[0, 0])  # level within 2.5 degrees
    for level in ("bust", "waist", "hip", "knee"):
        height, limb = standing.levels[level], Limb.LEG if level == "knee" else Limb.TRUNK
        found = [form.contour(height, limb) for form in (standing, raised)]
        assert np.abs(found[0] - found[1]).max() < 0.5


def test_a_sleeve_goes_along_as_it_is_and_the_trunk_and_legs_stay() -> None:
    form = wearers_form(chart_woman())
    for block in ("fitted-top", "trousers"):
        mesh = worn(costume(block), mesh=40.0, treat=False).garments[0].rest
        points, now = mesh.points, arms_held(form, RAISING[0])
        moved = lifted(mesh.mesh, points, form, now)
        joint, elbow, _ = form.arm
        if block == "trousers":
            assert np.array_equal(moved, points)
            continue
        thick = form.left.sizes.wanted["upper_arm_girth"] / (2 * math.pi)
        below = (points - joint) @ ((elbow - joint) / np.linalg.norm(elbow - joint)) > 1.5 * thick
        arm = below & (points[:, 0] > 1.3 * joint[0])
        sides = np.linalg.norm(points[arm][:, None] - points[arm][None], axis=2)
        assert np.linalg.norm(moved[arm][:, None] - moved[arm][None], axis=2) == pytest.approx(sides, abs=1e-6)
        inside = points[:, 0] < 0.5 * joint[0]
        assert moved[inside] == pytest.approx(points[inside], abs=1e-9)


def test_a_hem_goes_up_with_the_arms_and_no_farther_than_the_skin_at_the_armpit_is_drawn() -> None:
    """Plane geometry: skin and cloth at the arm's root go along an arc of the arm's radius, and what lies below
    the armpit by the armhole's drop along a longer one."""
    form = both("shirt")[0].form
    thick = form.left.sizes.wanted["upper_arm_girth"] / (2 * math.pi)
    drop = max(draft_garment(chart_woman(), WOVEN, "shirt", {}).draft.facts["armhole_drop"], 0.0)
    assert 5.0 < rise("shirt") < TURNED * (thick + drop)


def test_a_deeper_armhole_takes_the_garment_farther_along() -> None:
    """Common practice: the deeper the armhole, the more the garment rises with the arm."""
    assert rise("fitted-top", 45.0) > rise("fitted-top", 10.0) + 3.0


def test_what_has_no_sleeve_hardly_rises_and_trousers_do_not_at_all() -> None:
    assert abs(rise("waistcoat")) < rise("shirt") - 3.0
    hanging, raised = both("trousers")
    assert np.array_equal(hanging.garments[0].rest.points, raised.garments[0].rest.points)
    assert [one.key for one in raised.garments[0].words] == ["raised.apart"]


def test_it_is_told_and_recorded_with_the_arms_up() -> None:
    _, raised = both("shirt")
    text = worn_text(raised)
    assert "its hem rises: in front by" in text
    assert "A living shoulder" in text
    assert "As at a fitting" not in text  # a fitting looks for its signs with the arms down
    assert worn_record(raised)["arms"] == "raised"
    assert "arms" not in worn_record(both("shirt")[0])


def test_what_it_no_longer_covers_is_told_with_how_far() -> None:
    up = Risen(front=30.0, back=42.0, front_at=1012.0, back_at=1030.0, cuff=None)
    said = [worded(one, "cm") for one in risen_told(up, [Reached("trousers", 1018.0, has_rise=True)])]
    assert said[0].endswith("in front by 3 cm, behind by 4.2 cm.")
    assert "1.2 cm above the upper edge of the trousers" in said[1]
    assert [one.key for one in risen_told(up, [Reached("trousers", 1040.0)])] == ["raised.hem"]


def test_what_is_advised_is_of_this_garment_and_of_the_one_below() -> None:
    """A cape has no armhole, a skirt no rise (common practice)."""
    up = Risen(front=130.0, back=180.0, front_at=1012.0, back_at=1060.0, cuff=None)

    def said(*, armhole: bool, has_rise: bool) -> str:
        told = risen_told(up, [Reached("skirt", 1018.0, has_rise=has_rise)], armhole=armhole)
        return worded(list(told)[1], "cm")

    assert "armhole" not in said(armhole=False, has_rise=False)
    assert "rise below" not in said(armhole=True, has_rise=False)
    assert "armhole that lies higher, or a longer rise" in said(armhole=True, has_rise=True)
    assert "shows: draft it longer." in said(armhole=False, has_rise=False)


def test_what_another_garment_still_covers_is_not_bared() -> None:
    """A cape that rises over a waistcoat bares the waistcoat, not what is worn under the skirt's waist."""
    body = chart_woman()
    alone = [draft_garment(body, WOVEN, block, {}) for block in ("skirt", "waistcoat", "cape")]
    skirt, waistcoat, cape = (replace(one, name=one.block) for one in alone)
    bared = []
    for garments in ((skirt, cape), (skirt, waistcoat, cape)):
        made = replace(costume_of(garments[0], WOVEN), garments=garments)
        up = arms_raised(worn(made, mesh=40.0, treat=False))
        (over,) = [one for one in up.garments if one.name == "cape"]
        assert over.found.settled
        bared.append([one.key for one in over.words if one.key == "raised.bares"])
    assert bared == [["raised.bares"], []]
