"""Button rows, holes, stand, facing and interfacing of a front that opens.

Where a figure has no source beside it, it is invented.
"""

from __future__ import annotations

import itertools
import math

import pytest
import shapely

from drafting.costume.garment import MadeGarment
from drafting.draft.roles import LevelKind
from drafting.draft.walk import walk
from drafting.shaping.details.buttons import Button, button_row
from drafting.sheet.marks import piece_strokes
from tests.blocks.figures import chart_woman, errors
from tests.blocks.small_pieces import made, many, marks, middle
from tests.bodies import ansur
from tests.published import single


@pytest.fixture(scope="module")
def shirt() -> MadeGarment:
    return made(chart_woman(), button_diameter=14.0)


# ----------------------------------------------------------------------------------------- buttons


def test_one_button_stands_on_the_bust_line() -> None:
    # A worked example of makers' tutorials (common practice): cm below the neck, bust line at 24.
    assert button_row(2.0, 50.0, 5, 24.0) == pytest.approx([2, 13, 24, 35, 46])
    assert button_row(2.0, 50.0, 5) == pytest.approx([2, 14, 26, 38, 50])  # plain, in the same example


def test_a_sixth_button_is_added_where_there_is_room() -> None:
    row = button_row(20.0, 500.0, 5, 120.0)  # the bust line is 100 below the first of a step of 120
    assert row == pytest.approx([20, 120, 220, 320, 420])
    assert button_row(20.0, 525.0, 5, 120.0) == pytest.approx([20, 120, 220, 320, 420, 520])


def test_a_bust_line_close_to_the_first_button_takes_that_button() -> None:
    assert button_row(50.0, 450.0, 5, 80.0) == pytest.approx([80, 172.5, 265, 357.5, 450])


@pytest.mark.parametrize("count", range(2, 15))
def test_a_row_has_as_many_buttons_as_were_asked_for(count: int) -> None:
    """Common practice: a maker who names a number has so many. Of five on a bust line eight were drawn."""
    for body in ansur(6):
        front = made(body, button_count=float(count)).draft["front"]
        row = sorted(middle(mark.path).imag for mark in front.placements if mark.what == "button")
        steps = [b - a for a, b in itertools.pairwise(row)]
        assert steps == pytest.approx([steps[0]] * (count - 1), abs=0.01)
        bust = next(v for v in front.levels if v.kind is LevelKind.BUST).paths[0].start.imag
        assert min(abs(y - bust) for y in row) < 0.1
        assert row[0] > front.outline.bounds[1] + 40.0  # half of what stays free below the last


def test_without_a_bust_line_buttons_stand_evenly() -> None:
    row = button_row(0.0, 36.0, 10)
    steps = [b - a for a, b in itertools.pairwise(row)]
    assert steps == pytest.approx([single("ten-buttons")] * 9)


def test_a_buttonhole_is_as_long_as_diameter_and_thickness() -> None:
    assert Button(1.0, 0.25).hole == pytest.approx(single("buttonhole-inch"))
    assert Button(1.0, 0.25, "shank").hole == pytest.approx(1.25)
    assert Button(12.0, 12.0, "ball").hole == pytest.approx(math.pi * 12 / 2)  # half the girth (sewing guide)


def test_the_stand_is_a_diameter_wide_or_one_and_a_half_of_a_very_small_one() -> None:
    # Pattern-making tutorial: a diameter, 1.5 of it for very small ones.
    assert Button(20.0, 3.0).stand == 20.0
    assert Button(10.0, 2.0).stand == 15.0


def test_a_stand_narrower_than_the_button_is_said() -> None:
    said = made(chart_woman(), button_diameter=20.0, button_stand=12.0).findings
    assert [f.level for f in said if f.check == "button stand"] == ["warning"]


def test_a_level_buttonhole_starts_past_the_centre_towards_the_edge() -> None:
    front = made(chart_woman(), buttonhole="level").draft["front"]
    holes = [mark.path for mark in marks(front, "buttonhole")]
    past = 10 * single("buttonhole-past-centre")
    assert [hole.start.real for hole in holes] == pytest.approx([-past] * len(holes))
    assert all(hole.end.real > 0 for hole in holes)


def test_on_every_body_a_button_stands_on_the_bust_line_and_all_on_the_centre_front() -> None:
    for garment in many():
        front = garment.draft["front"]
        bust = next(v.paths[0].start for v in front.levels if v.name == "bust")
        at = [middle(mark.path) for mark in marks(front, "button")]
        assert min(abs(p - bust) for p in at) < 1e-6
        assert max(abs(p.real) for p in at) < 1e-6
        top, low = front["neck"].path.end.imag, front["stand_hem"].path.end.imag
        assert all(low < p.imag < top for p in at)


def test_the_side_on_top_has_the_holes_and_is_free_to_choose() -> None:
    # Common practice: left over right has its holes in the wearer's left front.
    for closing, holes in (("left over right", "left"), ("right over left", "right")):
        garment = made(chart_woman(), closing=closing)
        for name in ("front", "collar-stand"):
            found = marks(garment.draft[name], "buttonhole")
            assert found
            assert all(f"_{holes}" in mark.name for mark in found)
            assert all(f"_{holes}" not in mark.name for mark in marks(garment.draft[name], "button"))
        said = next(f.message for f in garment.findings if f.check == "closing")
        assert f"wearer's {holes} front" in said


def test_the_buttons_to_buy_are_those_that_are_marked(shirt: MadeGarment) -> None:
    bought = {n.where: n.count for n in shirt.draft.notions if n.what == "button"}
    marked = {p.name: len(marks(p, "button")) for p in shirt.draft.pieces if marks(p, "button")}
    assert bought == {**marked, "cuff": 2 * marked["cuff"]}  # a cuff on each arm


# ---------------------------------------------------------------------------------- stand and facing


@pytest.mark.parametrize("facing", ["cut on", "separate"])
def test_levels_end_at_the_centre_front_and_girths_stay(facing: str) -> None:
    plain, front = made(chart_woman(), {"bodice": {}}), made(chart_woman(), facing=facing)
    for a, b in zip(plain.draft["front"].levels, front.draft["front"].levels, strict=True):
        assert a.length == pytest.approx(b.length, abs=1e-9)
        assert min(path.bounds[0] for path in b.paths) == pytest.approx(0.0, abs=1e-9)
    assert errors(front) == []


def test_a_cut_on_facing_folds_onto_the_neckline_and_hem(shirt: MadeGarment) -> None:
    front, edge = shirt.draft["front"], -shirt.draft.facts["button_stand"]
    folded = [front[name].path.mapped(lambda p: 2 * edge - p.conjugate()) for name in FACING]
    outline = shapely.LineString([(p.real, p.imag) for p in front.outline.flattened(1e-3)])
    for path in folded:
        points = [shapely.Point(p.real, p.imag) for p in path.flattened(0.01)]
        assert max(outline.distance(point) for point in points) < 0.01


FACING = ("facing_neck", "facing_hem")


def test_a_separate_facing_is_sewn_to_the_front_edge() -> None:
    draft = made(chart_woman(), facing="separate").draft
    assert draft["front-facing"]["facing"].kind == "free"
    seam = next(s for s in draft.seams if s.name == "front edge")
    assert walk(draft, seam).difference == pytest.approx(0.0, abs=1e-9)


def test_interfacing_is_a_piece_of_its_own_to_the_stitching_line_and_3_mm(shirt: MadeGarment) -> None:
    # Common practice of makers' tutorials: to the stitching line plus at most 3 mm (1/8 in).
    stiff = [cut for cut in shirt.pattern.pieces if cut.piece.material == "interfacing"]
    names = {"front-facing", "cuff", "collar", "collar-stand"}
    assert {cut.piece.name for cut in stiff} == {f"{name}-interfacing" for name in names}
    assert all(max(cut.allowances.values()) == 3.0 for cut in stiff)
    grain = {p.name: p.grain for p in shirt.draft.pieces}
    for cut in stiff:
        of = cut.piece.name.removesuffix("-interfacing")
        assert cut.piece.grain == grain.get(of, grain["front"])
    listed = {n.where: n.count for n in shirt.draft.notions if n.what == "interfacing"}
    assert listed == {cut.piece.name: cut.piece.count for cut in stiff}


def test_a_front_that_does_not_open_gets_no_buttons_and_says_so() -> None:
    garment = made(chart_woman(), opening="back")
    assert not marks(garment.draft["front"], "button")
    assert any(f.check == "closing" and f.level == "warning" for f in garment.findings)
    assert errors(garment) == []


def test_marks_are_drawn_in_the_placement_layer_under_their_names(shirt: MadeGarment) -> None:
    strokes = {s.id: s.layer for s in piece_strokes(shirt.pattern["front"])}
    for mark in shirt.draft["front"].placements:
        assert strokes[f"front.placement.{mark.name}"] == "placement"
