"""The figure drawn from a wearer's measures: its girths, levels, lengths and tape lines.

What a girth is, is measured on the drawn section by summing chords of its own equation, and against
the perimeter of an ellipse by its elliptic integral; heights come from the measures.
"""

from __future__ import annotations

import math
import re

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.special import ellipe

from drafting.body import DIMENSIONS, Body, wearer
from drafting.body.heights import ALONG, standing_rise
from drafting.body.reader import read_body
from drafting.geometry import Path
from drafting.ground.shipped import shipped
from drafting.sheet.wearer import draw_wearer, figure_build
from drafting.sheet.wearer.curves import flowing, stretch_between
from drafting.sheet.wearer.front import half_figure
from drafting.sheet.wearer.words import WAYS
from drafting.worn.section import LIMB, TRUNK, Section, section
from tests.bodies import as_wearer
from tests.body.survey import as_taken
from tests.drawn_bodies import drawn_people
from tests.shared_data import shared

FIGURES: dict[str, Body] = {  # invented
    "stout": wearer({"height": 1680, "bust": 1240, "waist": 1280, "hip": 1240, "shoulder_drop": 40}),
    "slim": wearer({"height": 1760, "bust": 820, "waist": 620, "hip": 860}),
    "tall": wearer({"height": 1980, "bust": 1040, "waist": 880, "hip": 1020, "shoulder": 160}),
    "short": wearer({"height": 1480, "bust": 980, "waist": 860, "hip": 1080}),
    "full bust": wearer(
        {
            "height": 1650,
            "bust": 1120,
            "high_bust": 980,
            "underbust": 880,
            "waist": 820,
            "hip": 1060,
            "bust_point_depth": 310,
        }
    ),
    "teenager": wearer({"height": 1500, "bust": 740, "waist": 620, "hip": 780}),
    "lamplighter": read_body(shipped("measurements") / "bodies" / "lamplighter.toml"),
}

sizes = st.builds(
    lambda height, bust, waist, hip: wearer(
        {"height": height, "bust": bust * height, "waist": waist * height, "hip": hip * height}
    ),
    st.floats(380.0, 2100.0),
    st.floats(0.47, 0.80),
    st.floats(0.36, 0.80),
    st.floats(0.47, 0.80),
)


def chords(cut: Section, count: int = 20_000) -> float:
    """Return the girth of |x/a|^n + |y/b|^n = 1, its chords spaced by angle, not by parameter."""
    a, b, n = cut.width / 2, cut.depth / 2, cut.power
    angle = np.linspace(0.0, math.pi / 2, count)
    radius = ((np.cos(angle) / a) ** n + (np.sin(angle) / b) ** n) ** (-1 / n)
    points = radius * np.exp(1j * angle)
    return float(4 * np.abs(np.diff(points)).sum())


@pytest.mark.parametrize("name", FIGURES)
def test_every_section_has_the_girth_that_was_measured(name: str) -> None:
    body = FIGURES[name]
    form = figure_build(body)
    girths = {n for n, d in DIMENSIONS.items() if d.kind == "girth"}
    assert girths == set(form.sections)
    for girth in girths & set(body.measures):
        assert chords(form.sections[girth]) == pytest.approx(body[girth], abs=1.0)


@given(st.floats(50, 2000), st.floats(0.2, 0.4), st.sampled_from([LIMB, TRUNK]))
@settings(max_examples=60, deadline=None)
def test_a_section_keeps_its_girth_and_width_whatever_its_shape(girth: float, share: float, power: float) -> None:
    cut = section(girth, share, power)
    assert chords(cut) == pytest.approx(girth, abs=1.0)
    assert cut.width == pytest.approx(share * girth)


def test_a_limb_is_an_ellipse() -> None:
    """Perimeter of an ellipse: 4 a E(e2), complete elliptic integral of the second kind (scipy)."""
    cut = section(600.0, 0.285)
    long, short = sorted((cut.width / 2, cut.depth / 2), reverse=True)
    assert 4 * long * ellipe(1 - (short / long) ** 2) == pytest.approx(600.0, abs=0.05)


@pytest.mark.parametrize("name", FIGURES)
def test_the_levels_lie_where_the_measures_say(name: str) -> None:
    body = FIGURES[name]
    lv = figure_build(body).levels
    assert lv.falling()
    assert lv.crown == body["height"]
    assert lv.nape == body["nape_height"]
    assert lv.nape - lv.waist == pytest.approx(body["back_waist_length"] / ALONG)
    seat = lv.waist - lv.crotch - 0.02 * body["height"]
    assert lv.waist - lv.hip == pytest.approx(min(body["waist_to_hip"], seat))
    assert lv.nape - lv.armpit == pytest.approx(body["axilla_depth"])
    assert lv.nape - lv.scye == pytest.approx(body["scye_depth"])
    assert lv.knee == pytest.approx(body["knee_height"])
    measured = body.measured("inside_leg_length")
    assert lv.crotch == pytest.approx(body["inside_leg_length"] if measured else lv.waist - standing_rise(body))


@given(sizes)
@settings(max_examples=40, deadline=None)
def test_any_body_can_be_drawn_and_stands_on_the_floor(body: Body) -> None:
    drawing = draw_wearer(body)
    for view in drawing.views:
        floor = view.box[1]
        low = min(path.bounds[1] for path in view.shapes)
        high = max(path.bounds[3] for path in view.shapes)
        assert low == pytest.approx(floor, abs=0.02 * body["height"])
        assert high - floor == pytest.approx(body["height"], rel=0.01)
        assert 0 <= view.box[0] < view.box[2] <= drawing.width


@pytest.mark.parametrize("name", FIGURES)
def test_every_body_dimension_has_a_tape_line_or_is_named_as_having_none(name: str) -> None:
    drawing = draw_wearer(FIGURES[name])
    assert set(drawing.taped) == set(DIMENSIONS)
    assert set(WAYS) == {*DIMENSIONS, "weight"}
    for measure in DIMENSIONS:
        assert all(lines.seen for lines in drawing.tape(measure))


def test_the_contract_lists_no_dimension_without_a_tape() -> None:
    text = shared("design/contracts.md").read_text("utf-8")
    listed = re.search(r"ISO 8559-1 or trade names: `(.*?)`", text, re.S)
    assert listed
    assert set(listed[1].split()) == {*WAYS}


@pytest.mark.parametrize("name", FIGURES)
def test_a_tape_on_the_drawing_is_as_long_as_the_measure_where_it_runs_straight(name: str) -> None:
    """Heights, depths and shoulders lie in the plane of the drawing, so their lines are true."""
    body, drawing = FIGURES[name], draw_wearer(FIGURES[name])

    def longest(measure: str) -> float:
        return max(path.length for lines in drawing.tape(measure) for path in lines.seen)

    for measure in (
        "height",
        "nape_height",
        "knee_height",
        "back_waist_length",
        "axilla_depth",
        "scye_depth",
        "bust_point_width",
        "across_front_width",
        "shoulder_length",
        "shoulder_drop",
        "upper_arm_length",
        "waist_to_hip",
    ):
        assert longest(measure) == pytest.approx(body[measure], rel=0.08), measure


def test_a_girth_is_a_ring_solid_on_the_near_side_and_dashed_on_the_far_one() -> None:
    drawing = draw_wearer(FIGURES["lamplighter"])
    front, side, _ = (view for view in drawing.views)
    form = figure_build(FIGURES["lamplighter"])
    for view, wide in ((front, "width"), (side, "depth")):
        lines = view.tapes["waist_girth"]
        x0, _, x1, _ = lines.seen[0].bounds
        assert x1 - x0 == pytest.approx(getattr(form.sections["waist_girth"], wide), abs=0.1)
        assert lines.seen[0].bounds[1] < lines.far[0].bounds[1]  # the near half hangs lower


def test_shoulders_that_differ_show_and_only_they() -> None:
    even = FIGURES["slim"]
    uneven = even.changed(shoulder_drop=(40.0, 70.0))
    form = figure_build(uneven)
    left, right = half_figure(uneven, form, "left"), half_figure(uneven, form, "right")
    assert left.side_neck == right.side_neck
    assert left.shoulder.imag - right.shoulder.imag == pytest.approx(30.0)
    assert left.trunk.end == right.trunk.end
    same = figure_build(even)
    assert half_figure(even, same, "left").contour == half_figure(even, same, "right").contour


def test_the_section_of_waist_and_hip_comes_near_what_a_survey_measured() -> None:
    """ANSUR II, drawn from its spread: breadth and depth of waist and hips, kept out of the input."""
    people = drawn_people()
    rows = as_taken(people.iloc[::50]).to_dict("records")
    forms = [figure_build(as_wearer(row, "drawn")) for row in rows]
    for at in ("waist", "hip"):
        sections = [form.sections[f"{at}_girth"] for form in forms]
        width = np.median([section.width for section in sections])
        depth = np.median([section.depth for section in sections])
        assert width == pytest.approx(people[f"{at}_width"].median(), rel=0.04)
        assert depth == pytest.approx(people[f"{at}_depth"].median(), rel=0.08)


def test_a_stretch_between_two_heights_is_cut_where_they_are() -> None:
    path = flowing([100j, 5 + 60j, 2 + 30j, 0j])
    cut = stretch_between(path, 80.0, 20.0)
    assert cut.start.imag == pytest.approx(80.0, abs=0.3)
    assert cut.end.imag == pytest.approx(20.0, abs=0.3)


def test_a_flowing_line_passes_through_its_points_without_a_corner() -> None:
    points = [0j, 30 + 40j, 80 + 50j, 120 + 0j]
    path = flowing(points)
    assert isinstance(path, Path)
    assert [path.start, *(s.end for s in path)] == points
    for before, after in zip(path.segments, path.segments[1:], strict=False):
        turn = after.tangent(0.0) / before.tangent(1.0)
        assert abs(np.angle(turn)) < 1e-6
