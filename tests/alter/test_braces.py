"""Braces: who needs them, and where their buttons stand, measured by a general geometry library."""

from __future__ import annotations

import pytest
import shapely

from drafting import draft_garment
from drafting.body import Body
from drafting.draft.draft import Draft
from drafting.fitting.mock_up import tried
from drafting.fitting.words import order_at_the_body
from drafting.ground.findings import Finding
from tests.making.figures import made

BELLY = {"waist_girth": 1320.0, "hip_girth": 1220.0}
BLOCKS = ("trousers", "knee-breeches")


def wearer(**measures: float) -> Body:
    return made("lamplighter").costume.wearer.changed(**measures)


def drafted(block: str, body: Body, **choices: object) -> Draft:
    return draft_garment(body, None, block, choices).draft


def marks(draft: Draft) -> list[shapely.Polygon]:
    """Return the brace buttons of one hand as they are drawn on the waistband."""
    found = [m.path for m in draft["waistband"].placements if m.what == "brace button"]
    return [shapely.Polygon([(p.real, p.imag) for p in path.points(0.01)]) for path in found]


def told_of(draft: Draft) -> list[Finding]:
    return [finding for finding in draft.findings if finding.check == "braces"]


@pytest.mark.parametrize("fall", [False, True], ids=["fly", "fall"])
@pytest.mark.parametrize("block", BLOCKS)
def test_a_belly_wider_than_the_hip_buys_six_brace_buttons_and_says_why(block: str, fall: bool) -> None:
    """Common practice: two over each front, 70 to 80 apart, and two behind, 70 to 80 apart."""
    draft = drafted(block, wearer(**BELLY), fall_front=fall)
    assert [(n.count, n.size) for n in draft.notions if n.what == "brace button"] == [(6, 17.0)]
    assert [finding.level for finding in told_of(draft)] == ["note"]
    first, second, behind = marks(draft)
    assert 70 <= first.centroid.distance(second.centroid) <= 80
    band = draft["waistband"]
    _, y0, _, y1 = band.outline.bounds
    fold = shapely.LineString([(p.real, p.imag) for p in band["centre"].path.points(0.1)])
    assert 70 <= 2 * fold.distance(behind.centroid) <= 80
    ring = shapely.Polygon([(p.real, p.imag) for p in band.outline.points(0.1)])
    assert all(ring.contains(button) for button in (first, second, behind))
    sewn = shapely.LineString([(p.real, p.imag) for p in band["waist"].path.points(0.1)])
    quarter = (y1 - y0) / 4  # the band is cut double: half-way up its outside
    assert all(sewn.distance(b.centroid) == pytest.approx(quarter, abs=0.1) for b in (first, second, behind))


def test_who_is_wider_below_the_waist_needs_none_and_may_have_them() -> None:
    slim = made("lamplighter").costume.wearer
    draft = drafted("trousers", slim)
    assert not marks(draft)
    assert not told_of(draft)
    assert len(marks(drafted("trousers", slim, brace_buttons="yes"))) == 3


def test_who_wants_none_is_warned_that_they_slide_down() -> None:
    draft = drafted("trousers", wearer(**BELLY), brace_buttons="none")
    assert not [notion for notion in draft.notions if notion.what == "brace button"]
    (finding,) = told_of(draft)
    assert finding.level == "warning"
    assert "slide down" in finding.said("cm")


def test_a_mock_up_on_braces_says_so() -> None:
    said = " ".join(order_at_the_body(tried(drafted("trousers", wearer(**BELLY)))))
    assert "worn on braces" in said
    slim = order_at_the_body(tried(drafted("trousers", made("lamplighter").costume.wearer, brace_buttons="yes")))
    assert "worn on braces" in " ".join(slim)
    assert "holds it up" not in " ".join(slim)  # whoever only likes braces has hips that hold them
    assert "braces" not in " ".join(
        order_at_the_body(tried(drafted("trousers", made("lamplighter").costume.wearer)))
    )


@pytest.mark.parametrize("bust", [540.0, 600.0, 760.0])
def test_a_childs_brace_buttons_are_those_that_braces_button_on(bust: float) -> None:
    """Common practice: braces are made for buttons of 16 to 18 mm, a child's too; they shrank to 11."""
    child = wearer(height=1160.0, bust_girth=bust, waist_girth=0.94 * bust, hip_girth=1.04 * bust)
    draft = drafted("knee-breeches", child, brace_buttons="yes", band_fastening="hook and bar")
    (size,) = {n.size for n in draft.notions if n.what == "brace button"}
    assert 16 <= size <= 18
    assert [mark.bounds[3] - mark.bounds[1] for mark in marks(draft)] == pytest.approx(3 * [size], abs=0.1)
    (hook,) = {n.size for n in draft.notions if n.what == "hook and bar"}
    assert 10 <= hook <= 15


@pytest.mark.parametrize("bust", [540.0, 600.0, 640.0, 760.0])
def test_a_childs_waist_elastic_is_of_a_width_that_is_sold(bust: float) -> None:
    """From memory: elastic is sold 6, 8, 10, 12, 15, 20, 25 and 30 mm wide; 16.7 mm were to be bought."""
    child = wearer(height=1160.0, bust_girth=bust, waist_girth=0.94 * bust, hip_girth=1.04 * bust)
    notions = drafted("breeches", child).notions
    (waist,) = [n for n in notions if n.what == "elastic" and n.where == "waist"]
    assert waist.size in {12, 15, 20, 25}
