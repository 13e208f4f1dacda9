"""Every shipped garment finds its own place on a wearer: outside the body, near it, each leg on its side."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from drafting.body import wearer
from drafting.draft.frame import Limb
from drafting.worn.form import Form, wearers_form
from drafting.worn.nouns import Reals, SewnMesh
from drafting.worn.placed import placed
from drafting.worn.sewn import sewn_mesh
from tests.worn.garments import PLIES, SHIPPED, chart_body, drafted, uneven_body
from tests.worn.unusual import child


@cache
def form() -> Form:
    return wearers_form(chart_body())


@cache
def started(block: str) -> tuple[SewnMesh, Reals]:
    mesh = sewn_mesh(drafted(block), block, PLIES)
    return mesh, placed(mesh, form())


@pytest.mark.parametrize("block", SHIPPED)
def test_garment_starts_outside_the_body_and_near_it(block: str) -> None:
    _, points = started(block)
    gaps = form().distance.distance(points)
    assert gaps.min() > 0.0
    assert np.quantile(gaps, 0.01) > 4.0
    assert np.median(gaps) < 40.0
    assert gaps.max() < 250.0


@pytest.mark.parametrize("block", SHIPPED)
def test_a_half_starts_with_its_middle_in_the_middle(block: str) -> None:
    mesh, points = started(block)
    assert mesh.halved
    assert np.abs(points[mesh.on_middle, 0]).max() == 0.0


@pytest.mark.parametrize("block", ["trousers", "breeches"])
def test_no_leg_starts_on_the_other_side(block: str) -> None:
    mesh, points = started(block)
    legs = [i for i, piece in enumerate(mesh.pieces) if piece.limb is Limb.LEG]
    of_legs = np.unique(mesh.sewn[np.isin(mesh.piece, legs)])
    assert points[of_legs, 0].min() >= 0.0
    low = of_legs[points[of_legs, 2] < form().levels["knee"]]
    assert points[low, 0].min() >= 3.0


@pytest.mark.parametrize("block", [b for b in SHIPPED if b not in ("trousers", "breeches")])
def test_front_starts_in_front_and_back_behind(block: str) -> None:
    mesh, points = started(block)
    assert points[mesh.front, 1].max() < points[mesh.back, 1].min()


def test_no_hem_starts_lower_than_the_ankle() -> None:
    """A long hem started round the foot, which then stuck through the front of a child's trousers."""
    body = child(1280.0)
    mesh, form = sewn_mesh(drafted("trousers", body), "trousers", PLIES), wearers_form(body)
    points, hem = placed(mesh, form), np.concatenate([mesh.edges[name, "hem"] for name in ("front", "back")])
    assert form.leg[0][2] > form.leg[1][2] > points[hem, 2].mean() > form.levels["ankle"] - 10.0


def test_sleeves_start_round_the_arm_with_the_cuff_at_the_wrist() -> None:
    mesh, points = started("shirt")
    wrist = np.array(form().arm[2])
    cuff = points[np.unique(mesh.sewn[mesh.piece == [p.name for p in mesh.pieces].index("cuff")])]
    assert np.linalg.norm(cuff.mean(axis=0) - wrist) < 90.0


def test_bands_go_on_away_from_what_carries_them() -> None:
    mesh, points = started("trousers")
    names = [piece.name for piece in mesh.pieces]
    band = points[np.unique(mesh.sewn[mesh.piece == names.index("waistband")])]
    legs = points[np.unique(mesh.sewn[mesh.piece == names.index("front")])]
    assert band[:, 2].max() > legs[:, 2].max() + 20.0


@pytest.mark.parametrize("block", SHIPPED)
def test_hardly_any_cloth_starts_stretched_out_of_shape(block: str) -> None:
    mesh, points = started(block)
    ends = mesh.triangles[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2)
    flat = np.linalg.norm(mesh.flat[ends[:, 0]] - mesh.flat[ends[:, 1]], axis=1)
    start = np.linalg.norm(points[mesh.merged[ends[:, 0]]] - points[mesh.merged[ends[:, 1]]], axis=1)
    assert (
        0.85 < np.median(start / flat) < (1.35 if block.startswith("close") else 1.2)
    )  # drafted smaller than the body
    assert np.quantile(start / flat, 0.95) < 2.2


def test_a_close_top_starts_pulled_down_until_its_levels_lie_on_the_wearers() -> None:
    mesh, points = started("close-top")
    lying = {one.name: points[mesh.sewn[one.triangles]] for one in mesh.levels}
    for level in ("bust", "waist", "hip"):
        assert lying[level][..., 2].mean() == pytest.approx(form().levels[level], abs=10.0), level  # half a mesh


def test_an_uneven_wearer_has_each_hand_on_its_side() -> None:
    body = uneven_body()
    mesh = sewn_mesh(drafted("shirt", body), "shirt", PLIES)
    points = placed(mesh, wearers_form(body))
    for index, piece in enumerate(mesh.pieces):
        middle = points[np.unique(mesh.sewn[mesh.piece == index])][:, 0].mean()
        assert {"left": middle > 0.0, "right": middle < 0.0, "": abs(middle) < 20.0}[piece.hand], piece.name
    apart = np.linalg.norm(points[mesh.tied[:, 0]] - points[mesh.tied[:, 1]], axis=1)
    assert np.median(apart) < 30.0


def test_both_fronts_of_an_uneven_double_coat_have_their_middle_up_to_the_neck() -> None:
    """A middle ends by plain drawing where x = 0 meets the neck. The right hand's was read 0.7 mm aside there, and
    lost: that chest started at its armhole, and the coat slid off the shoulder."""
    uneven = {"shoulder_length": (152.0, 140.0), "shoulder_drop": (46.0, 64.0)}
    body = wearer({"height": 1810, "bust_girth": 1040, "waist_girth": 940, "hip_girth": 1050} | uneven)
    chosen = {"breasted": "double", "lapel_style": "peaked", "bust_ease": 140.0, "waist_ease": 120.0}
    draft = drafted("coat", body, chosen | {"front_overlap": 73.0, "overlap_above": 1.15, "lapel_width": 99.0})
    mesh = sewn_mesh(draft, "coat", PLIES, 40.0)
    names = [piece.name for piece in mesh.pieces]
    for name in ("front-left", "front-right"):
        own = np.unique(mesh.triangles[mesh.piece == names.index(name)])
        middle = own[np.isin(mesh.merged[own], mesh.front)]
        outline = np.concatenate([edge.path.points(0.01) for edge in draft[name].edges])
        over = np.flatnonzero(np.sign(outline.real[:-1]) != np.sign(outline.real[1:]))
        assert mesh.flat[middle, 1].max() == pytest.approx(outline.imag[over].max(), abs=40.0), name  # a mesh


def test_a_slanting_sleeve_hem_starts_as_a_ring_round_the_wrist() -> None:
    """A ring of a length has radius length / 2 pi by geometry. Read where part of the slanting hem had ended,
    the sleeve started with cloth across the wrist, and a thumb came 3 mm through it."""
    mesh, points = started("fitted-top")
    _, elbow, wrist = form().arm
    along = (wrist - elbow) / np.linalg.norm(wrist - elbow)
    hem = mesh.edges["sleeve", "hem"]
    flat = np.array([mesh.flat[np.flatnonzero(mesh.merged == one)] for one in hem[1:-1]])[:, 0]
    radius = np.linalg.norm(np.diff(flat, axis=0), axis=1).sum() * (len(hem) - 1) / (len(hem) - 3) / (2 * np.pi)
    middles = (points[hem[1:]] + points[hem[:-1]]) / 2 - wrist
    off = np.linalg.norm(middles - (middles @ along)[:, None] * along, axis=1)
    assert off.min() > 0.8 * radius
    assert off.max() < 1.25 * radius
