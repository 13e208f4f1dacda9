"""Two rows of a coat's buttons stand beside the centre front, also where a belly moves it out.

Common practice: the rows of a dress coat lean outwards from the waist; two buttons never lie on each other.
"""

from __future__ import annotations

import itertools

import pytest
import shapely

from drafting.body import Body, wearer
from drafting.costume.garment import draft_garment
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path
from tests.blocks.figures import chart_woman
from tests.bodies import ansur, bdims
from tests.making.orders import WOVEN

ACROSS, SEAT = 20.0, 3.0
"""mm: the button's diameter where none is typed, and how far the hole runs past the middle of its button."""


def great() -> Body:
    """Return an invented woman whose waist is the widest."""
    tape = {"height": 1680, "bust_girth": 991, "waist_girth": 1100, "hip_girth": 1060, "high_bust_girth": 930}
    return wearer({**tape, "back_waist_length": 395, "front_waist_length": 480})


def apart(draft: Draft) -> list[float]:
    """Return how far each button stands from the button that the hole beside it holds, from the waist up, mm."""
    marks = draft["front"].placements
    buttons, holes = (
        sorted((m.path.start for m in marks if m.what == kind), key=lambda start: start.imag)
        for kind in ("button", "buttonhole")
    )
    pairs = zip(buttons, holes, strict=False)  # those above the break have no hole
    return [(button.real - ACROSS / 2) - (hole.real + SEAT) for button, hole in pairs]


@pytest.mark.parametrize("style", ["none", "peaked", "step"])
@pytest.mark.parametrize("block", ["coat", "tailcoat", "spencer"])
def test_the_rows_lean_apart_and_never_meet_on_any_figure(block: str, style: str) -> None:
    """Over a belly they ran together: 28, 11 and 5 mm apart from the waist up, with buttons of 20."""
    for body in (great(), bdims()[3], bdims()[300]):
        draft = draft_garment(body, WOVEN, block, {"breasted": "double", "lapel_style": style}).draft
        found = apart(draft)
        assert found[0] >= ACROSS
        assert all(low <= high + 0.1 for low, high in itertools.pairwise(found))
        assert not [f for f in draft.findings if f.check == "button rows"]


def test_buttons_that_would_lie_on_each_other_are_told_with_what_keeps_them_apart() -> None:
    asked = {"breasted": "double", "front_overlap": 26.0, "button_diameter": 36.0}
    draft = draft_garment(bdims()[3], WOVEN, "coat", asked).draft
    (said,) = [f for f in draft.findings if f.check == "button rows"]
    assert said.level == "warning"
    wider = {**asked, "front_overlap": float(said.wanted or 0.0)}
    assert said.wanted == 36.0
    assert not [
        f for f in draft_garment(bdims()[3], WOVEN, "coat", wider).draft.findings if f.check == "button rows"
    ]


def centres(draft: Draft, piece: str = "front") -> list[float]:
    """Return the heights of a front's buttons, mm, from the highest down."""
    marks = [m.path.bounds for m in draft[piece].placements if m.what == "button"]
    return sorted({round((b[1] + b[3]) / 2, 3) for b in marks}, reverse=True)


@pytest.mark.parametrize("block", ["spencer", "coat", "tailcoat"])
@pytest.mark.parametrize("breasted", ["single", "double"])
def test_buttons_that_nobody_counted_stand_a_button_apart_at_least(block: str, breasted: str) -> None:
    """Common practice: what closes one hole leaves a finger room at the next. Three of 20 mm stood 25 apart below
    a spencer's break."""
    for body in (chart_woman(), bdims()[3]):
        draft = draft_garment(body, WOVEN, block, {"breasted": breasted}).draft
        found = centres(draft)
        assert 1 <= len(found) <= 3
        assert all(a - b >= 2 * 20.0 - 0.01 for a, b in itertools.pairwise(found)), (block, breasted)
        assert not [f for f in draft.findings if f.check == "button rows"]


def test_more_buttons_than_find_room_are_told() -> None:
    draft = draft_garment(chart_woman(), WOVEN, "spencer", {"breasted": "single", "coat_buttons": 6}).draft
    assert len(centres(draft)) == 6
    (said,) = [f for f in draft.findings if f.check == "button rows"]
    assert said.level == "warning"
    assert "take fewer" in said.sentence


@pytest.mark.parametrize("overlap", [26.0, 50.0, 75.0])
@pytest.mark.parametrize("block", ["spencer", "tailcoat"])
@pytest.mark.parametrize("breasted", ["single", "double"])
def test_no_button_hangs_over_the_edge_below_it(block: str, breasted: str, overlap: float) -> None:
    """Common practice: half a button's width and more lies free below it. A rim stood 0.2 mm over a spencer's hem,
    as that rises from the corner towards the side."""
    asked = {"breasted": breasted, "front_overlap": overlap, "overlap_above": 1.2}
    for body in (great(), chart_woman(), *ansur(6)):
        front = draft_garment(body, WOVEN, block, asked).draft["front"]
        foot = [edge for edge in front.edges if edge.role in (EdgeRole.BOTTOM, EdgeRole.HEM, EdgeRole.WAIST)]
        below = shapely.MultiLineString([shapes(edge.path) for edge in foot])
        rims = [shapely.LineString(shapes(m.path)) for m in front.placements if m.what in ("button", "buttonhole")]
        assert min(below.distance(rim) for rim in rims) >= ACROSS / 2


def shapes(path: Path) -> list[tuple[float, float]]:
    return [(p.real, p.imag) for p in path.flattened(0.05)]


@pytest.mark.parametrize("block", ["coat", "tailcoat", "spencer"])
def test_a_row_that_leans_past_the_corner_below_it_is_drafted(block: str) -> None:
    # With a wide lap no place of the bottom lay under the row: 18 of 24 such drafts broke off.
    for body, (overlap, above) in itertools.product((bdims()[0], bdims()[3]), ((50.0, 3.0), (76.0, 2.0))):
        asked = {"breasted": "double", "front_overlap": overlap, "overlap_above": above}
        front = draft_garment(body, WOVEN, block, asked).draft["front"]
        lowest = min(mark.path.start.imag for mark in front.placements if mark.what == "button")
        assert lowest > min(edge.path.end.imag for edge in front.edges)


@pytest.mark.parametrize("block", ["coat", "tailcoat", "spencer"])
def test_no_hole_of_two_rows_comes_near_the_edge_where_it_runs_hollow_towards_a_belly(block: str) -> None:
    """Common practice: a button lies whole on the front, some 5 mm and more inside its edge. On stout people the
    rim of the top one stood 1 mm inside, as the row was set in from the edge's chord."""
    stout = wearer({"height": 1750, "bust_girth": 1150, "waist_girth": 1150, "hip_girth": 1120}, figure="mens")
    for body in (stout, great(), chart_woman()):
        asked = {"breasted": "double", "lapel_style": "none", "front_overlap": 80.0, "overlap_above": 1.05}
        front = draft_garment(body, WOVEN, block, asked).draft["front"]
        edge = shapely.LineString([(p.real, p.imag) for p in front["edge"].path.evenly(400)])
        for mark in front.placements:
            if mark.what == "buttonhole":
                middle = mark.path.at(SEAT)
                assert edge.distance(shapely.Point(middle.real, middle.imag)) >= ACROSS / 2 + 5.0, body.title
