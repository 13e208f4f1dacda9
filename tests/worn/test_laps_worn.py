"""Fronts that lap: the lap is part of what is worn, buttons meet their holes, and in pictures a lap lies on the
other hand as wide as it was cut. Widths and heights are read off the drafts and summed by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from drafting.body import Body, wearer
from drafting.draft.draft import Draft
from drafting.draft.level_closings import level_closings
from drafting.draft.piece import Piece
from drafting.draft.roles import LevelKind
from drafting.worn.form import wearers_form
from drafting.worn.nouns import AtRest, Reals, SewnMesh
from drafting.worn.picture.dressed import whole_cloth
from drafting.worn.picture.lapels import laid_on
from drafting.worn.picture.laps import under_other
from drafting.worn.sewn import sewn_mesh
from drafting.worn.sewn.buttoned import level_pairs
from tests.worn.dressed import on_form, the_form, trial_wearer
from tests.worn.garments import PLIES, drafted
from tests.worn.unusual import PLAIN, made_up

DOUBLE: dict[str, Any] = {"breasted": "double"}


def uneven() -> Body:
    return next(body for body in made_up() if body.title == "uneven shoulders")


def laid(rest: AtRest, body: Body) -> AtRest:
    form = the_form() if body is trial_wearer() else wearers_form(body)
    return laid_on(rest, np.zeros(len(rest.mesh.sewn), bool), form.distance)


def heights(piece: Piece) -> dict[str, list[float]]:
    """Return how high over the waist the middles of buttons and holes lie, from the lowest up, mm."""
    waist = next(level.paths[0].start.imag for level in piece.levels if level.kind is LevelKind.WAIST)
    return {
        what: sorted(m.path.at(m.path.length / 2).imag - waist for m in piece.placements if m.what == what)
        for what in ("button", "buttonhole")
    }


def test_a_double_breasted_waistcoat_is_worn_with_its_lap() -> None:
    """It was cut off at the centre front, 62 mm short at the end of the V."""
    body = trial_wearer()
    draft = drafted("waistcoat", body, DOUBLE)
    edge = draft["front"]["edge"].path
    form = the_form()
    rest = on_form(draft, "waistcoat", form, mesh=40.0)
    assert rest.settled
    shown = laid_on(rest, np.zeros(len(rest.mesh.sewn), bool), form.distance)
    across = shown.points[shown.mesh.edges["front", "edge"], 0]
    assert edge.start.real == pytest.approx(-62.0, abs=3.0)  # drafted, left of the middle for this hand
    # Round the body's front a lap reaches a little less far across than it is wide.
    assert across.min() == pytest.approx(edge.start.real, abs=8.0)
    assert across.max() < edge.end.real + 12.0


@pytest.mark.parametrize(
    ("block", "choices"),
    [("waistcoat", {}), ("waistcoat", DOUBLE), ("coat", {}), ("tailcoat", {}), ("spencer", {})],
    ids=lambda value: value if isinstance(value, str) else "double" if value else "as it comes",
)
def test_buttons_of_uneven_hands_are_level_with_their_holes(block: str, choices: dict[str, Any]) -> None:
    """A waistcoat's were 20 mm apart, a coat's 9: buttoned, the fronts pulled each other out of level."""
    draft = drafted(block, uneven(), choices)
    left, right = heights(draft["front-left"]), heights(draft["front-right"])
    holes = left["buttonhole"]
    assert holes
    # What has more buttons than holes has some for show, above the others.
    assert right["button"][: len(holes)] == pytest.approx(holes, abs=0.01)
    if left["button"]:
        assert left["button"] == pytest.approx(right["button"], abs=0.01)


def test_even_hands_and_other_numbers_of_buttons_stay_as_they_are() -> None:
    draft = drafted("waistcoat", trial_wearer())
    assert level_closings(draft, draft)[0]["front"].placements == draft["front"].placements
    fewer = draft["front"].placements[:-1]
    less = draft.with_pieces([replace(draft["front"], placements=fewer)])
    assert level_closings(draft, less)[1]["front"].placements == fewer


def vertices_on(mesh: SewnMesh, name: str) -> dict[int, int]:
    """Return the flat vertices of a piece by their sewn ones."""
    index = next(number for number, piece in enumerate(mesh.pieces) if piece.name == name)
    corners = np.unique(mesh.triangles[mesh.piece == index])
    return dict(zip(mesh.merged[corners].tolist(), corners.tolist(), strict=True))


def vertices_at_buttons(draft: Draft, mesh: SewnMesh, name: str) -> list[float]:
    """Return how far from the next button of its piece each vertex that is buttoned lies, mm up or down."""
    marks = [m.path for m in draft[name].placements if m.what in ("button", "buttonhole")]
    buttons = np.array([path.at(path.length / 2).imag for path in marks])
    flat = vertices_on(mesh, name)
    own = [flat[vertex] for vertex in mesh.tied.ravel().tolist() if vertex in flat]
    return [float(np.abs(buttons - mesh.flat[vertex, 1]).min()) for vertex in own]


def lower(hand: str) -> Body:
    """Return a wearer one of whose shoulders lies 20 mm lower."""
    return wearer(
        {**PLAIN, "shoulder_drop": (70.0, 50.0) if hand == "left" else (50.0, 70.0)}, title=f"lower {hand}"
    )


BUTTONED: list[tuple[str, dict[str, Any], int]] = [
    ("waistcoat", DOUBLE, 3),
    ("waistcoat", {}, 5),
    ("coat", {}, 2),
    ("coat", {"coat_buttons": 3}, 3),
    ("coat", DOUBLE, 2),
]
"""What is buttoned by how many: a double-breasted coat's topmost button is for show."""


@pytest.mark.parametrize(("block", "choices", "count"), BUTTONED)
@pytest.mark.parametrize("hand", ["left", "right"])
def test_what_is_buttoned_together_is_the_place_of_the_button(
    block: str, choices: dict[str, Any], count: int, hand: str
) -> None:
    """Of a mesh of 25 mm the nearest vertex lay up to 12 mm off: two fronts so tied were drawn into creases.

    Where one hand has holes alone and the other buttons nothing held the two together, and a coat was buttoned
    one button off, 36 mm, where the top one of one hand lay over its break.
    """
    draft = drafted(block, lower(hand), choices)
    mesh = sewn_mesh(draft, block, PLIES, 25.0)
    off = [*vertices_at_buttons(draft, mesh, "front-left"), *vertices_at_buttons(draft, mesh, "front-right")]
    assert len(off) == 2 * count  # each on two fronts
    assert max(off) < 0.5
    left, right = (vertices_on(mesh, f"front-{hand}") for hand in ("left", "right"))
    apart = [
        mesh.flat[left[a], 1] - mesh.flat[right[b], 1] for a, b in mesh.tied.tolist() if a in left and b in right
    ]
    assert len(apart) == count
    assert np.abs(apart).max() < 1.0  # both hands' waists are drawn level


@pytest.mark.parametrize("hand", ["left", "right"])
def test_an_uneven_wearers_coat_closes_at_or_below_the_break_of_either_hand(hand: str) -> None:
    """Common practice: a lapel turns over from its break up. The top hole lay 4 mm above one hand's."""
    draft = drafted("coat", lower(hand), {"coat_buttons": 3})
    for piece in (draft["front-left"], draft["front-right"]):
        ends = [end.imag for m in piece.placements if m.what == "roll line" for end in (m.path.start, m.path.end)]
        middles = [
            m.path.at(m.path.length / 2).imag for m in piece.placements if m.what in ("button", "buttonhole")
        ]
        assert len(middles) == 3
        assert max(middles) < min(ends) + 0.01


def test_hands_with_other_numbers_of_buttons_are_buttoned_where_they_are_level() -> None:
    """By hand: the top one of three has nothing to meet."""
    own, other = level_pairs(np.array([60.0, 31.0, 1.0]), np.array([0.0, 30.0]))
    assert (own.tolist(), other.tolist()) == ([1, 2], [1, 0])


def middle_at(shown: AtRest, heights: Reals) -> Reals:
    """Return (N, 2): where the middle in front lies at these heights, across and forward."""
    middle = shown.points[shown.mesh.front]
    middle = middle[np.argsort(middle[:, 2])]
    return np.column_stack([np.interp(heights, middle[:, 2], middle[:, axis]) for axis in (0, 1)])


def test_the_fronts_of_an_uneven_wearer_lie_on_each_other_left_over_right() -> None:
    body = lower("left")
    draft = drafted("waistcoat", body, DOUBLE)
    rest = on_form(draft, "waistcoat", wearers_form(body), mesh=40.0)
    assert rest.settled
    assert not rest.mesh.halved
    shown = laid(rest, body)
    left, right = (shown.points[shown.mesh.edges[f"front-{hand}", "edge"]] for hand in ("left", "right"))
    # Each hand's edge lies beyond the middle, on the other hand, by more than 40 of the 50 to 62 mm as cut.
    for edge, way in ((left, -1.0), (right, 1.0)):
        off = edge[:, :2] - middle_at(shown, edge[:, 2])
        assert (way * off[:, 0] > 0.0).all()
        assert np.linalg.norm(off, axis=1).min() > 40.0
    right_edge, left_edge = (shown.mesh.edges[f"front-{hand}", "edge"] for hand in ("right", "left"))
    under = under_other(shown)
    assert under[right_edge].all()
    assert not under[left_edge].any()
    # Closed right over left the same cloth lies the other way: the hand with the buttonholes is on top.
    other = sewn_mesh(
        drafted("waistcoat", body, {**DOUBLE, "closing": "right over left"}), "waistcoat", PLIES, 40.0
    )
    under = under_other(replace(shown, mesh=replace(shown.mesh, pieces=other.pieces)))
    assert under[left_edge].all()
    assert not under[right_edge].any()


@pytest.mark.parametrize(
    ("closing", "hands"), [("left over right", (False, True)), ("right over left", (True, False))]
)
def test_the_hand_with_the_buttonholes_is_drawn_on_top(closing: str, hands: tuple[bool, bool]) -> None:
    """The left was always on top: of a halved coat, laid flat, only the hand beneath is behind."""
    mesh = sewn_mesh(drafted("coat", trial_wearer(), {"closing": closing}), "coat", PLIES, 40.0)
    flat = np.zeros((mesh.count, 3))
    flat[mesh.merged, 0], flat[mesh.merged, 2] = mesh.flat[:, 0], mesh.flat[:, 1]
    rest = AtRest(mesh=mesh, points=flat, slip=flat, residual=0.0, settled=True, steps=0, seconds=0.0)
    whole = whole_cloth(rest)
    behind = whole.behind > 0.0
    assert (behind[: mesh.count].any(), behind[mesh.count :].any()) == hands
