"""A coat's fronts: the shawl, one row of buttons or two on a full lap, and the stand on a front without a lapel.

Checked against plane geometry (one line of lapel and collar, middle on middle, lengths that meet) and common
practice (a stand closes with a finger and more of room). Bodies as in the other block tests.
"""

from __future__ import annotations

import cmath
import itertools
import math

import pytest

from drafting.body import Body, wearer
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import PieceRole
from drafting.draft.walk import walk
from drafting.making.rules import unsound
from drafting.making.words import text
from tests.blocks.figures import chart_woman, errors
from tests.blocks.test_contact_sheets_of_settings import six
from tests.blocks.test_lapels import coat, sample
from tests.making.orders import WOVEN, costume_of, order_of

FRONTS = {
    "shawl": {"lapel_style": "shawl", "breasted": "single"},
    "shawl on a full lap": {"lapel_style": "shawl", "front_overlap": 75.0, "overlap_above": 1.1},
    "double": {"front_overlap": 75.0, "overlap_above": 1.1},
    "stand": {"lapel_style": "none", "breasted": "single", "collar_stand": 42.0},
    "stand on a full lap": {"lapel_style": "none", "front_overlap": 75.0, "overlap_above": 1.1},
}
BODIES = ("largest", "smallest")


def front_of(name: str, body: Body, **more: object) -> Draft:
    return coat(body, "spencer", **FRONTS[name], **more).draft


def roll(front: Piece) -> complex:
    (mark,) = [mark for mark in front.placements if mark.what == "roll line"]
    return mark.path.end - mark.path.start


@pytest.mark.parametrize("name", FRONTS)
def test_every_front_on_the_sample_has_no_error_and_a_sound_order(name: str) -> None:
    for body in sample():
        made = coat(body, "spencer", **FRONTS[name])
        assert errors(made) == [], (body.title, errors(made))
    costume = costume_of(made, WOVEN)
    assert unsound(costume, order_of(costume)) == ()


@pytest.mark.parametrize("who", BODIES)
def test_a_shawl_runs_from_the_break_to_the_centre_back_in_one_line(who: str) -> None:
    facing = front_of("shawl", six()[who])["front-facing"]
    lapel, fall, centre = (facing[name].path for name in ("lapel", "fall", "centre"))
    assert abs(math.degrees(cmath.phase(fall.leave / lapel.arrive))) < 0.01
    assert abs(lapel.end - fall.start) < 1e-6
    assert abs(math.degrees(cmath.phase(centre.leave / fall.arrive))) == pytest.approx(90.0, abs=0.01)


@pytest.mark.parametrize("width", [70.0, 105.0])
def test_a_shawl_is_as_wide_as_asked_square_to_its_roll_line(width: float) -> None:
    front = front_of("shawl", chart_woman(), lapel_width=width)["front"]
    way = roll(front) / abs(roll(front))
    far = [abs(((p - front.points["break"]) / way).imag) for p in front["lapel"].path.flattened(0.01)]
    assert max(far) == pytest.approx(width, abs=0.02)


def test_a_shawls_facing_goes_round_the_neck_as_far_as_under_collar_and_back_do() -> None:
    for body in (chart_woman(), six()["largest"]):
        draft = front_of("shawl", body)
        under, facing = draft["under-collar"], draft["front-facing"]
        assert not [p for p in draft.pieces if p.role is PieceRole.TOP_COLLAR]
        for name in ("fall", "centre", "back_neck"):
            assert facing[name].length == pytest.approx(under[name].length, abs=1e-6)
        assert facing["back_neck"].length == pytest.approx(draft["back"]["neck"].length, abs=0.01)


def test_a_shawls_facings_are_joined_behind_before_they_are_laid_on_the_fronts() -> None:
    steps = order_of(costume_of(coat(chart_woman(), "spencer", **FRONTS["shawl"]), WOVEN))
    at = {name: i for i, step in enumerate(steps) for name in step.seams}
    assert at["collar"] < at["facing centre back"] < at["front edge"] == at["collar edge"]
    assert any("in one line" in text(said) for said in steps[at["collar edge"]].say)


def middles(front: Piece) -> tuple[list[complex], list[complex]]:
    """Return the middles of a front's buttons, and the ends of its holes that the buttons draw to."""
    buttons = [complex(*_mean(m.path.flattened(0.05))) for m in front.placements if m.what == "button"]
    return buttons, [m.path.start for m in front.placements if m.what == "buttonhole"]


def _mean(points: object) -> tuple[float, float]:
    pts = list(points)  # type: ignore[call-overload]
    xs, ys = [p.real for p in pts], [p.imag for p in pts]
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


@pytest.mark.parametrize("who", BODIES)
def test_two_rows_lie_on_each_other_when_the_centres_do(who: str) -> None:
    """A button shows through the hole that is its mirror image in the centre front, but for the pull of 3 mm."""
    front = front_of("stand on a full lap", six()[who])["front"]
    bottom = front["bottom"].path.start
    lower, upper = front.frame.front[1], front.frame.front[0]  # type: ignore[union-attr]
    buttons, holes = middles(front)
    assert len(buttons) == len(holes) >= 4
    for at, hole in zip(buttons, holes, strict=True):
        assert hole.imag == pytest.approx(at.imag)
        centre = (at.real + hole.real + 3.0) / 2
        assert min(lower.real, upper.real) - 0.01 <= centre <= max(lower.real, upper.real) + 0.01
        assert bottom.real < hole.real < centre < at.real


def test_one_row_stands_on_the_centre_and_is_cut_on_one_hand_only() -> None:
    for closing in ("left over right", "right over left"):
        made = coat(chart_woman(), "spencer", **FRONTS["stand"], closing=closing)
        front = made.draft["front"]
        over, under = closing.split()[0], closing.split()[-1]
        assert {m.hand for m in front.placements if m.what == "buttonhole"} == {over}
        assert {m.hand for m in front.placements if m.what == "button"} == {under}
        (bought,) = [n for n in made.draft.notions if n.what == "button"]
        assert bought.count == len(middles(front)[0]), "one button a hole, none for show, none behind"


@pytest.mark.parametrize("ratio", [1.0, 1.4])
def test_a_lap_is_as_wide_as_asked_at_waist_and_break(ratio: float) -> None:
    front = coat(chart_woman(), "spencer", front_overlap=70.0, overlap_above=ratio).draft["front"]
    assert front["bottom"].path.start.real == pytest.approx(-70.0, abs=0.01)
    assert front.points["break"].real == pytest.approx(-70.0 * ratio, abs=0.01)


def test_a_lapel_breaks_where_it_is_asked_to() -> None:
    high, low = (coat(chart_woman(), "spencer", lapel_break=at).draft["front"] for at in (0.3, 0.9))
    levels = {level.name: level.paths[0].start.imag for level in low.levels}
    assert levels["waist"] < low.points["break"].imag < high.points["break"].imag


@pytest.mark.parametrize("who", BODIES)
def test_a_stand_walks_the_neck_and_closes_with_room(who: str) -> None:
    body = six()[who]
    draft = front_of("stand", body)
    stand, neck = draft["collar-stand"], draft["front"]["neck"].path
    assert neck.end.real == pytest.approx(0.0, abs=0.01), "it ends at the centre front"
    assert stand["front_neck"].length == pytest.approx(neck.length, abs=0.05)
    assert stand["back_neck"].length == pytest.approx(draft["back"]["neck"].length, abs=0.05)
    assert 2 * stand["top"].length > body["neck_girth"], "a neck goes into it"
    assert stand["top"].length < stand["front_neck"].length + stand["back_neck"].length, "it leans in"


def test_a_spencer_has_no_buttons_behind_and_a_tailcoat_two() -> None:
    for block, count in (("spencer", 0), ("tailcoat", 2)):
        draft = coat(chart_woman(), block).draft
        assert sum(n.count for n in draft.notions if (n.what, n.piece) == ("button", "back")) == count


@pytest.mark.parametrize("who", BODIES)
def test_one_row_follows_the_guides_for_holes_and_spacing(who: str) -> None:
    """A level buttonhole starts 3 mm (1/8 in) beyond the centre, buttons stand span / (n - 1) apart, the stand
    is as wide as asked (sewing guides and a pattern-making tutorial)."""
    front = front_of("stand", six()[who], coat_buttons=6, front_overlap=24.0)["front"]
    buttons, holes = middles(front)
    for at, hole in zip(buttons, holes, strict=True):
        assert at.real - hole.real == pytest.approx(3.0, abs=0.05)
    heights = [at.imag for at in buttons]
    apart = [b - a for a, b in itertools.pairwise(heights)]
    assert apart == pytest.approx([(heights[-1] - heights[0]) / 5] * 5, abs=0.01)
    stand = front["stand_neck"].path
    assert stand.length == pytest.approx(24.0, abs=0.01)


def test_an_uneven_body_gets_every_front_sewn_left_to_right() -> None:
    """Its right shoulder 20 mm lower: what meets on the middle is equally long, the facings of a shawl too."""
    body = wearer({**EVEN, "shoulder_drop": (40.0, 60.0)})
    for name in ("shawl", "stand"):
        made = coat(body, "spencer", **FRONTS[name])
        assert errors(made) == []
        middle = [s for s in made.draft.seams if made.draft[s.a[0][0]].hand != made.draft[s.b[0][0]].hand]
        assert all(abs(walk(made.draft, seam).difference) < 0.2 for seam in middle)
        assert ("facing centre back" in {seam.name for seam in middle}) is (name == "shawl")


EVEN = {"height": 1700.0, "bust_girth": 900.0, "waist_girth": 720.0, "hip_girth": 970.0}
