"""Waistcoats on many bodies: what the trade asks of one, and the rules of every block.

Bodies: drawn and far ones (tests/drawn_bodies.py), the six of the contact sheets, a child. Lengths are
measured by shapely on fine polylines. Figures of the trade are common practice: a waistcoat's armhole is cut
25 mm and more below a shirt's, its points hang 110 to 130 mm below the waist, its back is shorter than its front,
buttons stand evenly, no closer than they are wide.
"""

from __future__ import annotations

import itertools
from functools import cache

import pytest
import shapely

from drafting.body import Body, wearer
from drafting.costume.file import read_costume
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.lays import laid_out
from drafting.costume.make import make
from drafting.costume.wearing.seen import goes_over
from drafting.costume.wearing.sewn import plies_of
from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fabric import Fabric
from drafting.fitting.mock_up import tried
from drafting.ground.errors import DraftError
from drafting.making import planned
from drafting.making.rules import unsound
from drafting.making.words import plan_sentence
from drafting.worn.sewn.mesh import sewn_mesh
from tests.blocks.figures import FULL, chart_man, chart_woman, errors, full_bust
from tests.blocks.small_pieces import made, ruled
from tests.blocks.test_contact_sheets_of_settings import six
from tests.bodies import ansur, bdims
from tests.drawn_bodies import drawn, far
from tests.making.figures import ROOT
from tests.making.orders import WOVEN, costume_of, order_of
from tests.worn.unusual import child

CHOICES: tuple[dict[str, object], ...] = (
    {},
    {"breasted": "double"},
    {"bust_dart": "side", "v_above_bust": -60.0},
    {"back_cloth": "own", "back_strap": False, "lining": "none", "stiff_front": "facing"},
)


def waistcoat(body: Body, **choices: object) -> MadeGarment:
    return draft_garment(body, WOVEN, "waistcoat", choices)


@cache
def sample() -> tuple[Body, ...]:
    return (*drawn(3), *far()[::10], *six().values(), child(1160.0))


def found(garment: MadeGarment) -> list[str]:
    return [*errors(garment), *(f.message for f in garment.findings if f.level == "error")]


def level(piece: Piece, kind: LevelKind) -> float:
    """Return the height of a level where it starts at the centre."""
    return next(v.paths[0].start.imag for v in piece.levels if v.kind is kind)


@pytest.mark.parametrize("choices", CHOICES)
def test_the_sample_has_waistcoats_without_an_error(choices: dict[str, object]) -> None:
    for body in sample():
        assert found(waistcoat(body, **choices)) == [], body.title


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("choices", CHOICES[:3])
def test_three_hundred_people_of_the_survey_have_a_waistcoat_without_an_error(choices: dict[str, object]) -> None:
    wrong = [f"{b.title}: {said}" for b in (*ansur(300), *bdims(100)) for said in found(waistcoat(b, **choices))]
    assert wrong == []


@pytest.mark.parametrize("choices", CHOICES)
@pytest.mark.parametrize("body", [chart_woman(), chart_man(), full_bust(1120.0)], ids=lambda b: b.title or "full")
def test_the_order_of_work_is_sound(body: Body, choices: dict[str, object]) -> None:
    costume = costume_of(waistcoat(body, **choices), WOVEN)
    assert unsound(costume, order_of(costume)) == ()


def test_its_armhole_is_cut_lower_than_a_shirts_and_its_shoulder_in_from_the_tip() -> None:
    # Common practice: at least 25 mm lower; the shoulder is shorter by what was asked.
    for body in (chart_woman(), chart_man()):
        shirt = draft_garment(body, WOVEN, "bodice", {"length": "hip", "opening": "front"}).draft
        own = waistcoat(body).draft
        under = [draft["back"].points["underarm"].imag for draft in (shirt, own)]
        assert under[1] <= under[0] - 20.0
        assert ruled(own["front"]["shoulder"].path) == pytest.approx(body["shoulder_length"] - 12.0, abs=0.1)


def test_no_sleeve_moves_its_armhole() -> None:
    # A sleeve's armhole follows the arm's girth; one without does not.
    thin, thick = (waistcoat(wearer({**FULL, "bust_girth": 960.0, "upper_arm_girth": arm})) for arm in (270, 330))
    assert thin.draft.facts["armhole_drop"] == thick.draft.facts["armhole_drop"] == 65.0


def test_the_points_hang_below_the_back_which_covers_the_trousers_waist_when_the_arms_rise() -> None:
    # Common practice: points 110 to 130 mm below the waist, back and sides 60 to 80; arms raise it by 25 to 40.
    for body in (chart_woman(), chart_man()):
        draft = waistcoat(body).draft
        front, back = draft["front"], draft["back"]
        point = level(front, LevelKind.WAIST) - min(e.path.end.imag for e in front.edges)
        behind = level(back, LevelKind.WAIST) - min(e.path.end.imag for e in back.edges)
        assert 110 <= point <= 130
        assert 60 <= behind <= 80 < point
        assert behind - 40 > 0


def test_a_waistcoat_too_short_for_raised_arms_is_told() -> None:
    said = {f.check: f.level for f in waistcoat(chart_man(), below_waist=40.0).findings}
    assert said["length"] == "warning"
    assert {f.check: f.level for f in waistcoat(chart_man()).findings}["length"] == "note"


@pytest.mark.parametrize(("breasted", "rows", "count"), [("single", 1, 5), ("double", 2, 3)])
def test_buttons_are_counted_and_stand_evenly_and_as_many_are_bought(breasted: str, rows: int, count: int) -> None:
    # Common practice: single-breasted five or six, double-breasted two rows of three or four; hole = diameter and
    # thickness.
    draft = waistcoat(chart_man(), breasted=breasted).draft
    front, (notion,) = draft["front"], [n for n in draft.notions if n.what == "button"]
    holes = [m.path for m in front.placements if m.what == "buttonhole"]
    buttons = [m for m in front.placements if m.what == "button"]
    assert (len(holes), len(buttons), notion.count) == (count, count, rows * count)
    steps = [a.start.imag - b.start.imag for a, b in itertools.pairwise(holes)]
    assert max(steps) - min(steps) < 1e-6
    assert min(steps) > 15.0
    assert {round(ruled(path), 3) for path in holes} == {18.0}
    if rows == 1:
        assert all(abs(shapely.Polygon(list(map(xy, m.path.flattened(0.1)))).centroid.x) < 0.01 for m in buttons)


def xy(p: complex) -> tuple[float, float]:
    return p.real, p.imag


def test_where_fronts_lap_a_hole_lies_on_the_other_fronts_button() -> None:
    # Plane geometry: closed, the fronts lie centre on centre, so a hole's outer end mirrors a button's middle.
    front = waistcoat(chart_woman(), breasted="double").draft["front"]
    middles = [shapely.Polygon(list(map(xy, m.path.flattened(0.1)))).centroid for m in front.placements
               if m.what == "button"]  # fmt: skip
    holes = [m.path for m in front.placements if m.what == "buttonhole"]
    for middle, hole in zip(middles, holes, strict=True):
        assert hole.start.imag == pytest.approx(middle.y, abs=0.01)
        assert -hole.start.real - 3.0 == pytest.approx(middle.x, abs=0.01)  # 3 mm past the button's middle
    assert min(e.path.end.real for e in edges_as(front, EdgeRole.FRONT_EDGE)) < -45


def test_buttons_that_would_crowd_are_fewer_and_told() -> None:
    crowded = waistcoat(child(1160.0), waistcoat_buttons=12)
    (said,) = [f for f in crowded.findings if f.check == "buttons"]
    assert isinstance(said.value, float)
    assert said.value < 12
    assert said.value == sum(m.what == "buttonhole" for m in crowded.draft["front"].placements)


def test_what_the_centre_seam_takes_the_dart_gives() -> None:
    # Arithmetic: the back's waist is as wide as the bodice's, whose back has no centre seam.
    body = chart_woman()
    same: dict[str, object] = {"bust_ease": 80.0, "waist_ease": 60.0, "hip_ease": 70.0}
    plain = draft_garment(
        body, WOVEN, "bodice", {**same, "across_ease": 0.0, "length": "hip", "opening": "front"}
    ).draft["back"]
    own = waistcoat(body, armhole_in=0.0).draft["back"]
    widths = [next(v.length for v in p.levels if v.kind is LevelKind.WAIST) for p in (plain, own)]
    assert widths[1] == pytest.approx(widths[0], abs=0.5)
    centre = edges_as(own, EdgeRole.CENTRE_SEAM)[0].path
    assert 3.0 < max(abs(p.real) for p in centre.flattened(0.5)) <= 15.01


def test_its_back_and_straps_are_cut_from_the_linings_cloth_and_are_no_second_layer() -> None:
    draft = waistcoat(chart_man()).draft
    assert {p.name for p in draft.pieces if p.cloth == "lining"} == {"back", "strap"}
    assert (draft["back"].material, draft["back"].cut_from, draft["front"].cut_from) == ("", "lining", "")
    own = waistcoat(chart_man(), back_cloth="own").draft
    assert not any(piece.cloth for piece in own.pieces)


def test_a_mock_up_is_cut_from_one_cloth_back_and_all() -> None:
    draft = tried(waistcoat(chart_man()).draft)
    assert {piece.name: piece.cut_from for piece in draft.pieces} == {"back": "", "front": ""}


def test_the_lining_is_as_wide_as_the_shell_less_the_facing() -> None:
    # Areas by shapely: front and its facing overlap only along nothing; the lining starts where the facing ends.
    draft = waistcoat(chart_man()).draft
    front, facing, lining = (area(draft, name) for name in ("front", "front-facing", "front-lining"))
    assert facing + lining == pytest.approx(front, rel=0.002)


def area(draft: Draft, name: str) -> float:
    return float(shapely.Polygon(list(map(xy, draft[name].outline.flattened(0.05)))).area)


def test_it_goes_over_a_shirt_in_the_worn_view() -> None:
    plies = plies_of({"": Fabric("flannel"), "lining": Fabric("lining"), "interfacing": Fabric("interfacing")})
    draft = waistcoat(chart_man()).draft
    mesh = sewn_mesh(draft, "waistcoat", plies, 40.0)
    assert goes_over(draft, mesh)
    assert {piece.name: piece.material for piece in mesh.pieces} == {"front": "", "back": "lining"}


def test_a_waistcoats_inside_wants_a_waistcoat() -> None:
    with pytest.raises(DraftError, match="waistcoat"):
        made(chart_woman(), {"bodice": {"opening": "front"}, "waistcoat-inside": {}})


def test_the_toll_keeper_is_made_and_planned_without_an_error() -> None:
    costume = laid_out(make(read_costume(ROOT / "measurements" / "costumes" / "toll-keeper.toml")), table=False)
    assert [f.message for f in costume.findings if f.level == "error"] == []
    back = [one.part.cut.piece.name for lay in costume.lays if lay.role == "lining" for one in lay.outlines]
    assert {"back", "back-lining"} <= set(back)
    plan = planned(costume)
    said = " ".join(plan_sentence(one) for step in plan.steps for one in step.say)
    assert "felled by hand all round" in said
    assert "buckle" in said
    assert any(row.what == "buckle" for row in plan.shopping)
