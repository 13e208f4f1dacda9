"""What turns over when it is worn: wings of a collar, lapels and their feet, long laps, hoods.

A roll line is a fold of the mesh, and what a picture lays on cloth lies on it. Lines are read off the drafts.
"""

from __future__ import annotations

import itertools
from typing import Any

import numpy as np
import pytest
from scipy.spatial import cKDTree

from drafting.body import Body
from drafting.draft.roles import PieceRole
from drafting.worn.form import wearers_form
from drafting.worn.nouns import SewnMesh
from drafting.worn.picture.lapels import laid_on, turned_over
from drafting.worn.picture.laps import under_other
from drafting.worn.placed import placed
from drafting.worn.rolls import laid_back, turned_from
from drafting.worn.sewn import sewn_mesh
from drafting.worn.sewn.sheet import FlatMesh
from drafting.worn.sewn.sides_along import sides_along
from tests.worn.dressed import on_form, the_form, trial_wearer
from tests.worn.garments import PLIES, chart_body, drafted
from tests.worn.unusual import made_up

WING: dict[str, Any] = {"collar": "wing"}
LONG_DOUBLE: dict[str, Any] = {"breasted": "double", "lapel_style": "peaked", "coat_length": 520.0}


def named(title: str) -> Body:
    return next(body for body in made_up() if body.title == title)


ROLLED: list[tuple[str, dict[str, Any]]] = [
    ("shirt", WING),
    ("coat", LONG_DOUBLE),
    ("tailcoat", {}),
    ("spencer", {}),
    ("coat", {"turned_cuff": 70.0}),
]


def sides(mesh: SewnMesh) -> set[tuple[int, int]]:
    faces = mesh.sewn
    both = np.concatenate([faces[:, pair] for pair in ([0, 1], [1, 2], [2, 0])])
    return {(a, b) for a, b in np.sort(both, axis=1).tolist()}


@pytest.mark.parametrize("size", [20.0, 40.0])
@pytest.mark.parametrize(("block", "choices"), ROLLED)
@pytest.mark.parametrize("who", ["chart", "uneven shoulders"])
def test_every_roll_line_is_folded_from_end_to_end(
    block: str, choices: dict[str, Any], who: str, size: float
) -> None:
    """A wing's was not: its line had no vertex inside, or triangles lay across it, and the wing stood up."""
    body = chart_body() if who == "chart" else named(who)
    draft = drafted(block, body, choices)
    mesh = sewn_mesh(draft, block, PLIES, size)
    folds = {(min(pair), max(pair)) for pair in mesh.folds.tolist()} & sides(mesh)
    found = 0
    for index, piece in enumerate(mesh.pieces):
        own = np.unique(mesh.triangles[mesh.piece == index])
        for start, end in piece.rolls:
            ways = (mesh.flat[own] @ np.array([1.0, 1j]) - start) / (end - start)
            on = own[(np.abs(ways.imag) * abs(end - start) < 0.5) & (ways.real > -0.01) & (ways.real < 1.01)]
            line = mesh.merged[on[np.argsort(ways.real[np.isin(own, on)])]].tolist()
            assert len(line) > 1, piece.name
            steps = {(min(a, b), max(a, b)) for a, b in itertools.pairwise(line)}
            # A lapel's line may begin beyond its cloth: one step of the mesh is not asked for.
            assert len(steps - folds) <= 1, (piece.name, steps - folds)
            found += 1
    assert found


def test_a_side_across_a_line_is_turned_along_it() -> None:
    """By hand: a square, its short diagonal across the line from corner to corner."""
    points = np.array([[0.0, 0.0], [10.0, 0.0], [12.0, 12.0], [0.0, 10.0]])
    sheet = FlatMesh(points, np.array([[0, 1, 3], [1, 2, 3]]), np.zeros((0, 2), np.int64))
    turned = sides_along(sheet, [np.array([0, 2])])
    assert {tuple(sorted(face)) for face in turned.triangles.tolist()} == {(0, 1, 2), (0, 2, 3)}
    kept = sides_along(sheet, [np.array([0, 1, 2])])  # these are joined already
    assert (kept.triangles == sheet.triangles).all()


def test_two_roll_lines_each_turn_what_lies_next_to_them() -> None:
    """By hand: two wings over a band between x = -100 and 100, 20 mm high; two points over each, more below."""
    rolls = ((-100 + 20j, -60 + 20j), (100 + 20j, 60 + 20j))
    flat = np.array([-80 + 30j, 80 + 35j, -90 + 5j, 90 + 5j, 0j, -50 + 0j, 50 + 0j, -95 + 15j, 95 + 15j])
    assert turned_from(rolls, flat)[:2] == pytest.approx([10.0, 15.0])
    assert (turned_from(rolls, flat)[2:] < 0.0).all()
    assert laid_back(rolls, flat[:2]) == pytest.approx([-80 + 10j, 80 + 5j])


@pytest.mark.parametrize("who", ["chart", "uneven shoulders"])
def test_both_wings_of_a_collar_lie_turned_down(who: str) -> None:
    """Of uneven hands the collar is one piece with two roll lines, of which the first alone was known."""
    body = chart_body() if who == "chart" else named(who)
    form = wearers_form(body)
    draft = drafted("shirt", body, WING)
    rest = on_form(draft, "shirt", form, mesh=30.0)
    mesh = rest.mesh
    stands = [i for i, piece in enumerate(mesh.pieces) if piece.role is PieceRole.COLLAR_STAND]
    over = turned_over(rest, {mesh.pieces[i].name for i in stands}, form.distance)
    wings = 0
    for index in stands:
        own = np.unique(mesh.triangles[mesh.piece == index])
        flat = mesh.flat[own] @ np.array([1.0, 1j])
        heights = rest.points[mesh.merged[own], 2]
        for roll in mesh.pieces[index].rolls:
            assert heights[_tip(flat, roll)] < _height_on(flat, heights, roll) - 10.0  # the wing is 34 mm long
            wings += 1
    assert wings == (1 if mesh.halved else 2)
    assert over.any()


def _tip(flat: np.ndarray, roll: tuple[complex, complex]) -> int:
    """Return which of the places beside a roll line lies farthest past it."""
    middle = (roll[0] + roll[1]) / 2
    beside = np.abs(flat - middle) < 2.0 * abs(roll[1] - roll[0])
    past = np.full(len(flat), -np.inf)
    past[beside] = turned_from((roll,), flat[beside])
    return int(past.argmax())


def _height_on(flat: np.ndarray, heights: np.ndarray, roll: tuple[complex, complex]) -> float:
    ways = (flat - roll[0]) / (roll[1] - roll[0])
    on = (np.abs(ways.imag) * abs(roll[1] - roll[0]) < 0.5) & (ways.real > -0.01) & (ways.real < 1.01)
    return float(heights[on].mean())


def test_an_uneven_wearers_long_lap_lies_on_the_other_hand_down_to_the_hem() -> None:
    """Below the last button the fronts crossed by more than 30 mm, and both laps stood out 40 mm there."""
    body = named("uneven shoulders")
    form = wearers_form(body)
    draft = drafted("coat", body, LONG_DOUBLE)
    rest = on_form(draft, "coat", form, mesh=30.0)
    assert rest.settled
    over = turned_over(rest, {"front-left", "front-right"}, form.distance)
    shown = laid_on(rest, over, form.distance)
    mesh, middle = rest.mesh, float(rest.points[rest.mesh.front, 0].mean())
    index = {piece.name: number for number, piece in enumerate(mesh.pieces)}
    for hand, other, beyond in (("left", "right", -1.0), ("right", "left", 1.0)):
        own = np.setdiff1d(mesh.sewn[mesh.piece == index[f"front-{hand}"]], mesh.sewn[over])
        lap = own[beyond * (shown.points[own, 0] - middle) > 15.0]  # 26 mm are drafted at the hem
        assert len(lap) > 5
        assert shown.points[lap, 2].min() < shown.points[own, 2].min() + 20.0  # down to the hem
        cloth = shown.points[np.unique(mesh.sewn[mesh.piece == index[f"front-{other}"]])]
        gap = cKDTree(cloth).query(shown.points[lap])[0]
        assert gap.max() < 0.75 * 30.0  # of a mesh of 30 mm no place lies farther from a vertex
    under = np.flatnonzero(under_other(shown))
    # The right hand lies beneath where it is beyond the middle, nowhere far on its own side.
    assert (shown.points[under, 0] > middle - 25.0).all()


@pytest.mark.parametrize("who", ["trial", "child of 104 cm"])
def test_a_hood_starts_drawn_up_over_the_head(who: str) -> None:
    """It started as a tube round the neck and was pushed out of the head from within: children's fell back."""
    body = trial_wearer() if who == "trial" else named(who)
    form = the_form() if who == "trial" else wearers_form(body)
    mesh = sewn_mesh(drafted("cape", body, {"cape_neck": "hood"}), "cape", PLIES, 40.0)
    start = placed(mesh, form)
    index = next(i for i, piece in enumerate(mesh.pieces) if piece.role is PieceRole.HOOD)
    hood = start[np.unique(mesh.sewn[mesh.piece == index])]
    head = form.surface.points[form.surface.points[:, 2] > form.levels["nape"] + 50.0]
    assert hood[:, 2].max() > head[:, 2].max()
    assert hood[:, 1].max() > head[:, 1].max()
    assert np.abs(hood[:, 0]).max() > np.abs(head[:, 0]).max()
    face = form.surface.points[form.surface.points[:, 2] > form.levels["nape"], 1].min()
    assert hood[:, 1].min() > face - 40.0
