"""The wearer's form: the tape on its surface, read again here from its own sections and triangles."""

from __future__ import annotations

from collections import Counter
from functools import cache

import numpy as np
import pytest
from scipy.spatial import ConvexHull

from drafting.body import Body, read_body, wearer
from drafting.ground.shipped import shipped
from drafting.worn.form import HANGING, Form, wearers_form
from drafting.worn.nouns import Limb, Surface
from tests.drawn_bodies import drawn

TRUNK = {
    "hip_girth": "hip",
    "waist_girth": "waist",
    "under_bust_girth": "under_bust",
    "bust_girth": "bust",
    "high_bust_girth": "armpit",
}
LEG = {"thigh_girth": "thigh", "knee_girth": "knee", "calf_girth": "calf", "ankle_girth": "ankle"}
BODIES = ("lamplighter", "kite", "drawn")


@cache
def body(name: str) -> Body:
    return drawn(1)[0] if name == "drawn" else read_body(shipped("measurements") / "bodies" / f"{name}.toml")


@cache
def form(name: str) -> Form:
    return wearers_form(body(name))


def taped(points: np.ndarray) -> float:
    """The girth of the convex hull of a section (scipy calls a 2-D hull's girth its area)."""
    return float(ConvexHull(points).area)


@pytest.mark.parametrize("name", BODIES)
def test_the_tape_reads_on_the_surface_what_it_read_on_the_wearer(name: str) -> None:
    made = form(name)
    for limb, girths in ((Limb.TRUNK, TRUNK), (Limb.LEG, LEG)):
        for girth, level in girths.items():
            if girth == "under_bust_girth" and not body(name).measured(girth):
                continue  # a guess, which gives way to an even trunk where there are no breasts
            got = taped(made.contour(made.levels[level], limb, 360))
            wanted = body(name)[girth]
            assert got == pytest.approx(wanted, abs=max(3.0, 0.003 * wanted)), girth


@pytest.mark.parametrize("name", BODIES)
def test_the_skin_is_closed_and_looks_outward(name: str) -> None:
    """Each edge of a closed surface is run as often either way; what it holds is some body's weight."""
    skin = form(name).surface
    edges = np.concatenate([skin.triangles[:, [i, (i + 1) % 3]] for i in range(3)])
    ways = Counter(map(tuple, edges.tolist()))
    assert all(ways[b, a] == times for (a, b), times in ways.items())
    assert sum(times > 1 for times in ways.values()) < 40
    a, b, c = (skin.points[skin.triangles[:, i]] for i in range(3))
    litres = float(np.einsum("ij,ij->", a, np.cross(b, c))) / 6e6
    weight = 22.5 * (body(name)["height"] / 1000) ** 2
    assert 0.6 * weight < litres < 1.8 * weight


@pytest.mark.parametrize("name", BODIES)
def test_the_field_is_a_distance_near_the_skin(name: str) -> None:
    made = form(name)
    points = made.surface.points[::17]
    near = made.distance.near(points, 30.0, curved=False)
    assert len(near.places) == len(points)
    assert np.quantile(np.abs(near.distance), 0.95) < 1.5
    assert np.quantile(np.abs(np.linalg.norm(near.gradient, axis=1) - 1.0), 0.9) < 0.2


def test_arms_that_hang_leave_the_trunk_as_it_is() -> None:
    out, hanging = form("lamplighter"), wearers_form(body("lamplighter"), HANGING)
    assert hanging.arm[2][0] < out.arm[2][0] - 60
    for level in ("waist", "hip"):
        sections = [taped(one.contour(one.levels[level])) for one in (out, hanging)]
        assert sections[0] == pytest.approx(sections[1], abs=1.0)


def test_the_form_says_which_measure_gave_way() -> None:
    least = {"height": 1700.0, "bust_girth": 920.0, "waist_girth": 760.0, "hip_girth": 980.0}
    legs = {"outside_leg_length": 1050.0, "inside_leg_length": 800.0, "total_crotch_length": 780.0}
    made = wearers_form(wearer({**least, **legs}))
    assert made.levels["waist"] > 1060.0
    assert made.levels["crotch"] == 800.0
    assert any("crotch length" in one.message for one in made.said)


def test_left_and_right_shoulders_stand_as_each_was_measured() -> None:
    least = {"height": 1700.0, "bust_girth": 920.0, "waist_girth": 760.0, "hip_girth": 980.0}
    made = wearers_form(wearer({**least, "shoulder_length": (125.0, 120.0), "shoulder_drop": (35.0, 60.0)}))
    assert not made.even
    assert not made.distance.mirror
    lower = made.points["shoulder"][2] - made.points["right shoulder"][2]
    assert lower == pytest.approx(25.0, abs=4.0)
    section = made.contour(made.levels["hip"])
    assert taped(section) == pytest.approx(980.0, abs=3.0)
    at = np.array([[0.0, 0.0], [made.points["front waist"][1]] * 2, [made.levels["waist"]] * 2])
    assert abs(made(at)).max() < 1.0


def test_an_arm_and_a_waist_cut_out_of_the_triangles_have_the_girths_that_were_measured() -> None:
    """The skin is cut here by planes, triangle by triangle: nothing of the form's own reading is used."""
    made = form("lamplighter")
    joint, elbow, _ = made.arm
    way = (elbow - joint) / np.linalg.norm(elbow - joint)
    middle = joint + 0.42 * (elbow - joint)
    near = cut(made.surface, middle, way)
    near = near[np.linalg.norm(near - middle, axis=1) < 90.0]
    out = np.cross(way, [0.0, 1.0, 0.0])
    out /= np.linalg.norm(out)
    flat = np.stack([(near - middle) @ out, (near - middle) @ np.cross(way, out)], axis=1)
    assert taped(flat) == pytest.approx(body("lamplighter")["upper_arm_girth"], abs=3.0)
    level = cut(made.surface, np.array([0.0, 0.0, made.levels["waist"]]), np.array([0.0, 0.0, 1.0]))
    trunk = level[np.abs(level[:, 0]) < 200.0]
    assert taped(trunk[:, :2]) == pytest.approx(body("lamplighter")["waist_girth"], abs=3.0)


def cut(skin: Surface, through: np.ndarray, way: np.ndarray) -> np.ndarray:
    """Where the edges of the triangles pass a plane: points (n, 3)."""
    height = (skin.points - through) @ way
    edges = np.concatenate([skin.triangles[:, [i, (i + 1) % 3]] for i in range(3)])
    a, b = height[edges[:, 0]], height[edges[:, 1]]
    crossed = (a < 0) != (b < 0)
    share = (a / (a - b + 1e-30))[crossed, None]
    start, end = (skin.points[edges[crossed, i]] for i in (0, 1))
    return np.asarray(start + share * (end - start))
